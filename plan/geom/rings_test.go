package geom

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// outline returns the sides of a polygon.
func outline(p ...Vec2) (out [][2]Vec2) {
	for i, a := range p {
		out = append(out, [2]Vec2{a, p[(i+1)%len(p)]})
	}
	return out
}

// Whatever sides there are, closed or not, inside is what counting all of them
// says.
func TestRingsCountAsAllSidesDo(t *testing.T) {
	ell := outline(Vec2{0, 0}, Vec2{400, 0}, Vec2{400, 200}, Vec2{150, 200}, Vec2{150, 300}, Vec2{0, 300})
	far := outline(Vec2{900, 20}, Vec2{1300, 120}, Vec2{1000, 280})
	yard := outline(Vec2{50, 50}, Vec2{80, 50}, Vec2{80, 90}, Vec2{50, 90})
	openEnd := [][2]Vec2{{{600, 260}, {600, 350}}, {{600, 350}, {700, 350}}}
	all := append(append(append(append([][2]Vec2{}, ell...), far...), yard...), openEnd...)
	r := NewRings(all)
	assert.Len(t, r.open, 2)
	rnd := rand.New(rand.NewPCG(1, 2))
	inside := 0
	for range 20000 {
		p := Vec2{X: rnd.Float64()*1500 - 100, Y: rnd.Float64()*400 - 50}
		want := odd(all, p)
		assert.Equal(t, want, r.Inside(p), "%v", p)
		if want {
			inside++
		}
	}
	assert.Greater(t, inside, 1000)
	assert.True(t, r.Inside(Vec2{300, 150}))
	assert.False(t, r.Inside(Vec2{65, 70}), "in the yard")
	assert.False(t, NewRings(nil).Inside(Vec2{}))
}
