package loadpath

import (
	"testing"

	"galewright/plan/framing"

	"github.com/stretchr/testify/assert"
)

// Studs of a row, each nailed to the next: what comes in at one end gets on only as far
// as the nails let it, and the last has to come through all of them.
func TestForceSpreadsThroughTheNailsBetweenStuds(t *testing.T) {
	r := demoWith(t, `corner_studs = { nail = "16d common", spacing = "4in" }`, `corner_studs = { nail = "16d common", spacing = "12in" }`)
	a := r.work
	for _, x := range r.Lines {
		for _, s := range x.Segments {
			if s.Name != "1W/B" {
				continue
			}
			post := s.posts[1] // two tight studs of 1W and the corner's of 1S
			at := s.ends[1].First()
			one := 8.25 * 565.0
			tight, _ := a.nailsBetween(post[0], post[1])
			corner, _ := a.nailsBetween(post[1], post[2])
			none, _ := a.nailsBetween(post[0], post[2])
			assert.InDelta(t, 28*128.5*1.6, tight, 5, "10d at 8 in in two rows, 1.5 in deep: 10D, all of 128.5 x 1.6 lb each")
			assert.InDelta(t, 9*228.1, corner, 5)
			assert.Zero(t, none)
			lb, _ := a.reached(at, post, map[*framing.Member]bool{})
			assert.InDelta(t, one+min(tight, one+min(corner, one)), lb, 1)
			lb, _ = a.reached(post[2], post, map[*framing.Member]bool{})
			assert.InDelta(t, one+min(corner, one+min(tight, one)), lb, 1)

			held := &Capacity{Value: 3 * one}
			a.nailedTogether(held, post, arrival{post[2], 100})
			assert.InDelta(t, one+corner, held.Value, 1)
			held = &Capacity{Value: 3 * one}
			a.nailedTogether(held, post[:1], arrival{post[0], 100})
			assert.InDelta(t, 3*one, held.Value, 1e-9, "a stud alone is not nailed to any")
		}
	}
}
