package roofplan

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/plantest"
)

// Of two facets over one square of 100 by 96 the higher hides the lower, the whole of it or where it is higher; of two in
// one plane the first hides the other, and not the other way about.
func TestWhatOneFacetHidesOfAnother(t *testing.T) {
	side := func(lo, hi geom.Vec2, slope, height float64) facet {
		b := &Body{Axis: plan.AxisX, Lo: lo, Hi: hi}
		b.Sides[South] = Side{Slope: slope, Height: height}
		return facet{body: b, side: South, polys: b.domain()}
	}
	low := side(pt(0, 0), pt(100, 96), 0.25, 100)
	for name, c := range map[string]struct {
		over   facet
		first  bool
		hidden float64 // area, in²
	}{
		"higher":                        {side(pt(0, 0), pt(100, 96), 0.25, 110), false, 9600},
		"higher, and the first":         {side(pt(0, 0), pt(100, 96), 0.25, 110), true, 9600},
		"lower":                         {side(pt(0, 0), pt(100, 96), 0.25, 90), false, 0},
		"lower, and the first":          {side(pt(0, 0), pt(100, 96), 0.25, 90), true, 0},
		"steeper, 12 lower at the wall": {side(pt(0, 0), pt(100, 96), 0.5, 88), true, 4800}, // equal at y = 48
		"in one plane, the first":       {side(pt(60, 0), pt(200, 96), 0.25, 100), true, 40 * 96},
		"in one plane, the other":       {side(pt(60, 0), pt(200, 96), 0.25, 100), false, 0},
		"beside":                        {side(pt(100, 0), pt(200, 96), 0.25, 110), true, 0},
	} {
		assert.InDelta(t, c.hidden, areas(hides(c.over, low, c.first)), 1e-6, name)
	}
}

// Where two roofs lie over each other in one plane the first as written is whole and the other is cut: the outline
// starts at the south west corner of the first, or where the first has no corner, at the one that the cut leaves.
func TestTheFirstOfTwoRoofsInOnePlaneIsWhole(t *testing.T) {
	for _, c := range []struct {
		a, b  [2]float64
		start geom.Vec2
	}{{[2]float64{0, 300}, [2]float64{100, 200}, pt(-12, -12)}, {[2]float64{100, 200}, [2]float64{0, 300}, pt(312, -12)}} {
		r, faults := New([]*Body{
			body(t, "a", "gable", "x", pt(c.a[0], 0), pt(c.a[1], 144), 6, 12),
			body(t, "b", "gable", "x", pt(c.b[0], 0), pt(c.b[1], 144), 6, 12),
		})
		require.Empty(t, faults)
		south := faceOf(t, r, "a", South)
		assert.Equal(t, c.start, south.Outline[0])
		assert.InDelta(t, 324*84, Area(south.Outline), 1e-6)
	}
}

// A face of one roof alone has its own side, and no side of a roof elsewhere.
func TestAFaceHasItsOwnSides(t *testing.T) {
	a, b := body(t, "a", "gable", "x", pt(0, 0), pt(100, 80), 6, 0), body(t, "b", "gable", "x", pt(0, 200), pt(100, 280), 6, 0)
	r, _ := New([]*Body{a, b})
	for _, f := range r.Faces {
		for _, x := range []*Body{a, b} {
			for i := range x.Sides {
				assert.Equal(t, f.Body == x && f.Side == i, f.Has(x, i), "side %d of %s on side %d of %s", i, x.Name, f.Side, f.Body.Name)
			}
		}
	}
}

// A point is taken to a thousandth of an inch, in the house as written.
func TestAPlaceWithoutRounding(t *testing.T) {
	for _, c := range []struct {
		lay  plan.Lay
		want geom.Vec2
	}{{plan.Lay{}, pt(100000, 240001)}, {plan.MirrorX, pt(-100000, 240001)}, {plan.Turned(1), pt(240001, -100000)}} {
		got := (&Roof{lay: c.lay}).rough(geom.Vec3{X: 99.99997, Y: 240.0009, Z: 5})
		assert.Equal(t, c.want, got, "%+v", c.lay)
	}
}

// The ridge is asked for at the low end of its axis: west, or south, and at no end of it elsewhere.
func TestTheLowEndOfARidge(t *testing.T) {
	for _, kind := range []plan.RoofKind{plan.GableRoof, plan.HipRoof} {
		p, z, ok := body(t, "a", kind, plan.AxisX, pt(10, 20), pt(210, 100), 6, 12).Ridge()
		assert.True(t, ok)
		plantest.Near(t, []float64{10, 60, 120}, []float64{p.X, p.Y, z}, 1e-9)
		p, z, ok = body(t, "a", kind, plan.AxisY, pt(10, 20), pt(90, 220), 6, 12).Ridge()
		assert.True(t, ok)
		plantest.Near(t, []float64{50, 20, 120}, []float64{p.X, p.Y, z}, 1e-9)
	}
}

// A layout of 5 is counted up from the low end, at 30: 35, 51 ... 115, beside the rafters flush with the gables.
func TestALayoutCountsFromTheLowEnd(t *testing.T) {
	five := 5.0
	for _, axis := range []plan.Axis{plan.AxisX, plan.AxisY} {
		b := body(t, "a", plan.GableRoof, axis, pt(30, 30), pt(130, 130), 6, 12)
		b.Layout = &five
		r, faults := New([]*Body{b})
		require.Empty(t, faults)
		for _, f := range r.Faces {
			at, _ := stationsOf(f)
			plantest.Near(t, append(append([]float64{30.75}, every(35, 115)...), 129.25), at, 1e-9)
		}
	}
}
