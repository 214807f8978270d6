package framing

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"galewright/plan"
	"galewright/plan/geom"
)

// drawInside puts partitions into a rectangle: some from wall to wall, some
// from those to the next, and closets of two walls that meet at an angle,
// written in any direction.
func drawInside(t *rapid.T, p *plan.Plan, level int, w, d float64) {
	add := func(a, z geom.Vec2) {
		if rapid.Bool().Draw(t, "turned round") {
			a, z = z, a
		}
		i := wall(p, fmt.Sprintf("%dP%d", level+1, len(p.Walls)), level, a, z)
		i.Studs = rapid.SampledFrom([]plan.Lumber{twoBySix, twoByFour}).Draw(t, "studs")
		i.Bearing = rapid.Bool().Draw(t, "bearing")
		i.Height = rapid.SampledFrom([]float64{0, 0, 0, 42}).Draw(t, "height")
		if rapid.Bool().Draw(t, "shear") {
			i.Shear = []*plan.Shear{{Name: "s", From: 0, To: i.Length()}}
		}
	}
	x := 60.0
	var xs []float64
	for {
		x += rapid.Float64Range(40, 130).Draw(t, "room")
		if x > w-60 {
			break
		}
		xs = append(xs, x)
		add(geom.Vec2{X: x, Y: 0}, geom.Vec2{X: x, Y: d})
	}
	for i := 1; i < len(xs); i++ {
		y := rapid.Float64Range(40, d-40).Draw(t, "cross wall")
		add(geom.Vec2{X: xs[i-1], Y: y}, geom.Vec2{X: xs[i], Y: y})
	}
	if rapid.Bool().Draw(t, "closet") && xs != nil && xs[0] > 80 {
		at := geom.Vec2{X: 40, Y: rapid.Float64Range(50, 90).Draw(t, "closet depth")}
		add(geom.Vec2{X: 40, Y: 0}, at)
		add(at, geom.Vec2{X: 0, Y: at.Y + rapid.SampledFrom([]float64{0, 20, -20}).Draw(t, "slant")})
	}
}

func TestPartitionsDoNotOverlap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := stories(2)
		p.Lumber.Stock = []float64{1e6}
		for l := range 2 {
			ring(p, l, rect(0, 0, 384, 288)...)
			p.Levels[l].JoistRun = rapid.SampledFrom(plan.Axes).Draw(t, "run")
			drawInside(t, p, l, 384, 288)
		}
		h, faults := Frame(p)
		for _, f := range faults {
			if f.Code != "under-bearing-wall" { // those along the joists
				t.Fatalf("fault: %v", f)
			}
		}
		for _, pair := range h.Overlaps(0.01) {
			t.Errorf("%s reaches into %s", pair[0].ID, pair[1].ID)
		}
	})
}

// An upper story set back from the lower one or hanging over it.
func TestUpperStorySetBackOrHangingOver(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := stories(2)
		p.Lumber.Stock = []float64{1e6}
		ring(p, 0, rect(0, 0, 384, 288)...)
		by := func(name string) float64 { return rapid.SampledFrom([]float64{0, 0, 24, -24, 60}).Draw(t, name) }
		upper := ring(p, 1, rect(by("W"), by("S"), 384-by("E"), 288-by("N"))...)
		h, faults := Frame(p)
		for _, f := range faults {
			if f.Code != "joist-in-the-air" && f.Code != "joist-overhang" { // set back, or hanging over far
				t.Fatalf("fault: %v", f)
			}
		}
		for _, pair := range h.Overlaps(0.01) {
			t.Errorf("%s reaches into %s", pair[0].ID, pair[1].ID)
		}
		feet := 0
		for _, j := range h.Joints {
			if (j.Kind == plan.StudBase || j.Kind == plan.StudStud) && j.Level == p.Levels[1] && j.First().Role.FullHeight() {
				feet++
			}
		}
		studs := 0
		for _, w := range upper {
			studs += len(of(h, w.Name, plan.Stud, plan.King, plan.Post))
		}
		if feet != studs {
			t.Errorf("%d feet of %d studs", feet, studs)
		}
	})
}
