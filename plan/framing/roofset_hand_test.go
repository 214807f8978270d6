package framing

import (
	"math"
	"testing"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A set of frames over a lower roof carries a wing of equal slopes on to the valleys: each
// is a triangle under both slopes, its middle under the wing's ridge, and half as long as
// it is high over the slope, but for what the roof below climbs in its thickness.
func TestValleyFramesAreTrianglesUnderTheRidge(t *testing.T) {
	seen := 0
	for _, c := range roofHouses {
		h := roofed(t, c.plan())
		for _, m := range withRole(h, plan.ValleyFrame) {
			if m.Roof.PitchOther > 0 {
				continue
			}
			seen++
			slope, ax := m.Roof.Pitch/12, 1-m.Roof.RidgeAxis()
			assert.True(t, m.B.Sub(m.A).Flat().RunsAlong(ax), "%s stands across the ridge", m.ID)
			assert.InDelta(t, m.Length, m.B.Sub(m.A).Len(), 1e-6, m.ID)
			assert.InDelta(t, m.Length/2*slope, m.Z1-m.Z0, 1.5, "%s %s", c.name, m.ID)
			if area := m.Roof.Area; area[0] != area[1] {
				mid := m.A.Add(m.B).Mul(0.5).Flat().Along(ax)
				assert.InDelta(t, (area[0].Along(ax)+area[1].Along(ax))/2, mid, 1e-6, "%s %s", c.name, m.ID)
			}
		}
	}
	require.Greater(t, seen, 3)
}

// run is a line of a roof in plan, from a to b, level.
func run(kind roofplan.EdgeKind, a, b geom.Vec2) *roofLine {
	line := &roofplan.Line{Kind: kind, A: a.Up(0), B: b.Up(0)}
	return &roofLine{bar: bar{at: a, dir: line.Dir(), half: 0.75}, line: line, member: &Member{}}
}

// Over the corner of an L two ridges end at one place, one from the west and one from the
// south. What comes up northward meets the one from the west squarely, what comes up
// eastward the other; a hip that bisects them goes to the first; where one alone holds the
// place it is that, and beside both none.
func TestWhichRidgeWhatComesUpMeets(t *testing.T) {
	v := func(x, y float64) geom.Vec2 { return geom.Vec2{X: x, Y: y} }
	west, south := run(roofplan.Ridge, v(0, 100), v(100, 100)), run(roofplan.Ridge, v(100, 0), v(100, 100))
	valley := run(roofplan.Valley, v(100, 100), v(150, 150))
	for _, lines := range [][]*roofLine{{west, south, valley}, {south, west, valley}} {
		f := &roofFrame{linesAt: geom.NewGrid[*roofLine]()}
		for _, l := range lines {
			lo, hi := l.line.A.Sub(geom.Vec3{X: 1, Y: 1, Z: 1}), l.line.B.Add(geom.Vec3{X: 1, Y: 1, Z: 1})
			f.linesAt.Add(l, lo, hi, nil)
		}
		assert.Same(t, west, f.ridgeOf(v(100, 100), v(0, 1)))
		assert.Same(t, south, f.ridgeOf(v(100, 100), v(1, 0)))
		assert.Same(t, south, f.ridgeOf(v(100, 100), v(-1, 0)), "from either side")
		assert.Contains(t, []*roofLine{west, south}, f.ridgeOf(v(100, 100), v(math.Sqrt2/2, math.Sqrt2/2)))
		assert.Same(t, west, f.ridgeOf(v(40, 100), v(1, 0)))
		assert.Nil(t, f.ridgeOf(v(40, 40), v(0, 1)))
		assert.Nil(t, f.ridgeOf(v(150, 150), v(0, 1)), "a valley is no ridge")
	}
}

// The foot or top of a hip or valley rests on the line that runs on past it, else on a ridge
// that ends there, else at its top on an earlier one that ends there too; a top at a ridge
// asks for none, nor does a line lean on one that goes its own way.
func TestWhatCarriesTheEndOfAValley(t *testing.T) {
	v := func(x, y float64) geom.Vec2 { return geom.Vec2{X: x, Y: y} }
	me := run(roofplan.Valley, v(0, 0), v(50, 50))
	top, foot := me.line.B, me.line.A
	past := run(roofplan.Valley, v(80, 20), v(20, 80)) // through the top, 45 degrees the other way
	ends := run(roofplan.Valley, v(100, 0), v(50, 50)) // ends at the top as well
	ridge := run(roofplan.Ridge, v(50, 50), v(200, 50))
	below := run(roofplan.Ridge, v(-100, 0), v(0, 0))
	alike := run(roofplan.Valley, v(20, 20), v(90, 90))
	for _, c := range []struct {
		name  string
		lines []*roofLine // before it, it, after it
		at    geom.Vec3
		want  *roofLine
	}{
		{"alone", []*roofLine{me}, top, nil},
		{"one runs on past it", []*roofLine{me, past}, top, past},
		{"one runs on past it, though an earlier one ends there", []*roofLine{ends, me, past}, top, past},
		{"an earlier one ends there", []*roofLine{ends, me}, top, ends},
		{"a later one leans on it", []*roofLine{me, ends}, top, nil},
		{"at a ridge", []*roofLine{me, ridge}, top, nil},
		{"its foot at the end of a ridge", []*roofLine{me, below}, foot, below},
		{"one that goes its way", []*roofLine{alike, me}, top, nil},
	} {
		i := 0
		for c.lines[i] != me {
			i++
		}
		assert.Same(t, c.want, (&roofFrame{lines: c.lines}).carrierOf(i, c.at), c.name)
	}
}
