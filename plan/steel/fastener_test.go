package steel

import (
	"math"
	"testing"

	"galewright/plan/framing"
	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestAPatternIsLaidFromTheEnd(t *testing.T) {
	p := Pattern{Count: 5, Holes: 6, Rows: 2, Spacing: 1, EndDist: 0.5, Stagger: true, Offset: 0.5}
	h := p.Lay(2)
	require.Len(t, h, 6)
	assert.Equal(t, Hole{0.5, -0.5, true}, h[0])
	assert.Equal(t, Hole{1, 0.5, true}, h[1])
	assert.Equal(t, Hole{1.5, -0.5, true}, h[2])
	assert.False(t, h[5].Filled)
	assert.InDelta(t, 3, p.Need(), 1e-9, "0.5 + 2 steps of 1 + the stagger")
}

// A 0.148 x 1 1/2 nail through steel of 0.05 in into a stud's edge goes
// 1.45 in deep; behind 7/16 in of sheathing 1.0125 in; beside the stud it
// finds nothing.
func TestANailFindsTheWoodItIsDrivenInto(t *testing.T) {
	m := stick("stud", geom.Vec3{}, geom.Vec3{X: 1.5, Y: 5.5, Z: 96})
	w := NewWood([]*framing.Member{m})
	p := geom.Plate{A: geom.Vec3{X: 0.75}, B: geom.Vec3{X: 0.75, Z: 20}, N: geom.Vec3{Y: -1}, Width: 1.25, Thickness: 0.05}
	f := w.Drive(p, p.At(4, 0), 1.5)
	got, deep, air, ok := f.Bite(p.Thickness)
	require.True(t, ok)
	assert.Same(t, m, got)
	assert.InDelta(t, 1.45, deep, 1e-9)
	assert.InDelta(t, 0, air, 1e-9)
	assert.Zero(t, f.Beyond())
	assert.InDelta(t, 0.75, f.Margin.Edge, 1e-9)
	assert.InDelta(t, 4, f.Margin.End, 1e-9)

	off := p
	off.A, off.B = off.A.Add(geom.Vec3{Y: -0.4375}), off.B.Add(geom.Vec3{Y: -0.4375})
	_, deep, air, _ = w.Drive(off, off.At(4, 0), 1.5).Bite(p.Thickness)
	assert.InDelta(t, 1.0125, deep, 1e-9)
	assert.InDelta(t, 0.4375, air, 1e-9)

	_, _, _, ok = w.Drive(p, p.At(4, 0).Add(geom.Vec3{X: 2}), 1.5).Bite(p.Thickness)
	assert.False(t, ok)
}

func TestATipThatComesOutIsMeasured(t *testing.T) {
	m := stick("stud", geom.Vec3{}, geom.Vec3{X: 1.5, Y: 5.5, Z: 96})
	w := NewWood([]*framing.Member{m})
	p := geom.Plate{A: geom.Vec3{Y: 2.75}, B: geom.Vec3{Y: 2.75, Z: 20}, N: geom.Vec3{X: -1}, Width: 1.25}
	assert.InDelta(t, 1, w.Drive(p, p.At(4, 0), 2.5).Beyond(), 1e-9)
}

// Against sampled points: the least distance of two segments is never more
// than between any two points of them, and some pair comes as near.
func TestApartAgainstPoints(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		c := rapid.Float64Range(-3, 3)
		v := func() geom.Vec3 { return geom.Vec3{X: c.Draw(r, "x"), Y: c.Draw(r, "y"), Z: c.Draw(r, "z")} }
		f, g := Fastener{Head: v(), Tip: v()}, Fastener{Head: v(), Tip: v()}
		best := math.Inf(1)
		const n = 60
		for i := range n + 1 {
			for k := range n + 1 {
				p := f.Head.Add(f.Tip.Sub(f.Head).Mul(float64(i) / n))
				q := g.Head.Add(g.Tip.Sub(g.Head).Mul(float64(k) / n))
				best = math.Min(best, p.Sub(q).Len())
			}
		}
		d := Apart(f, g)
		require.LessOrEqual(r, d, best+1e-9)
		require.Greater(r, d, best-0.3, "a step of a sixtieth of up to 10 in each way")
	})
}
