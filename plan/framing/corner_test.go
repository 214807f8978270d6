package framing

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/plantest"
)

// onSlabPlan is one story on a slab, so that nothing but walls is framed.
func onSlabPlan() *plan.Plan {
	p := stories(1)
	p.Foundation.Kind = "slab"
	p.Levels[0].Joists = plan.Lumber{}
	return p
}

func stations(list []*Member) (out []float64) {
	for _, m := range list {
		out = append(out, m.S0)
	}
	return out
}

func extent(list []*Member) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, m := range list {
		lo, hi = min(lo, m.S0), max(hi, m.S1)
	}
	return lo, hi
}

func TestLongWallRunsThrough(t *testing.T) {
	p := onSlabPlan()
	ring(p, 0, rect(0, 0, 336, 240)...)
	h := frame(t, p)
	lo, hi := extent(of(h, "1A", plan.TopPlate))
	assert.InDelta(t, 0, lo, 1e-9)
	assert.InDelta(t, 336, hi, 1e-9)
	lo, hi = extent(of(h, "1B", plan.TopPlate))
	assert.InDelta(t, 5.5, lo, 1e-9)
	assert.InDelta(t, 234.5, hi, 1e-9)
}

func TestUpperPlateLapsOverTheButtJoint(t *testing.T) {
	p := onSlabPlan()
	ring(p, 0, rect(0, 0, 336, 240)...)
	h := frame(t, p)
	lo, hi := extent(of(h, "1A", plan.UpperPlate))
	assert.InDelta(t, 5.5, lo, 1e-9, "through wall's upper plate is cut back")
	assert.InDelta(t, 330.5, hi, 1e-9)
	lo, hi = extent(of(h, "1B", plan.UpperPlate))
	assert.InDelta(t, 0, lo, 1e-9, "butting wall's upper plate runs over")
	assert.InDelta(t, 240, hi, 1e-9)
}

func TestJoinKeyTurnsTheCornerRound(t *testing.T) {
	p := onSlabPlan()
	walls := ring(p, 0, rect(0, 0, 336, 240)...)
	walls[1].Start.Join = "through"
	h := frame(t, p)
	_, hi := extent(of(h, "1A", plan.TopPlate))
	assert.InDelta(t, 330.5, hi, 1e-9)
	lo, _ := extent(of(h, "1B", plan.TopPlate))
	assert.InDelta(t, 0, lo, 1e-9)
}

func TestContradictingJoinIsToldWithBothPlaces(t *testing.T) {
	for _, word := range plan.Joins {
		p := onSlabPlan()
		walls := ring(p, 0, rect(0, 0, 336, 240)...)
		walls[0].End = plan.End{Join: word, Pos: plan.Pos{File: "plan.toml", Line: 12, Col: 5}}
		walls[1].Start = plan.End{Join: word, Pos: plan.Pos{File: "plan.toml", Line: 20, Col: 5}}
		_, faults := Frame(p)
		require.Len(t, faults, 1)
		assert.Equal(t, "corner-contradicts", string(faults[0].Code))
		assert.Equal(t, []int{20, 12}, []int{faults[0].Pos.Line, faults[0].Related[0].Line})
		assert.NotContains(t, faults[0].Mend, string(word), "the other word mends it")
	}
}

// Three studs make the post: the through wall's end stud and backing, one
// inch past the butting wall's inner face, and the butting wall's end stud.
func TestCornerPosts(t *testing.T) {
	for _, c := range []struct {
		name    string
		post    int
		through []float64 // left faces of the through wall's posts at its end
	}{
		{"default is three studs", 0, []float64{329.5, 334.5}},
		{"two studs have no backing", 2, []float64{334.5}},
		{"three", 3, []float64{329.5, 334.5}},
		{"four double the end stud", 4, []float64{329.5, 333, 334.5}},
		{"six go on past the backing", 6, []float64{328, 329.5, 331.5, 333, 334.5}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := onSlabPlan()
			walls := ring(p, 0, rect(0, 0, 336, 240)...)
			walls[0].End.Post = c.post
			h := frame(t, p)
			var got []float64
			for _, m := range of(h, "1A", plan.Post) {
				if m.S0 > 168 {
					got = append(got, m.S0)
				}
			}
			plantest.Near(t, c.through, got, 1e-9)
			assert.InDelta(t, 5.5, of(h, "1B", plan.Post)[0].S0, 1e-9)
		})
	}
}

// Plates for 148 ft of wall: 148 ft at the bottom, 296 ft at the top.
// Source: Estimating in Building Construction, ch. 13, example 13-10 (rule of
// the example; its quantities are not legible; read).
func TestTakeOffOfPlates(t *testing.T) {
	p, _ := straight(148 * 12)
	h := frame(t, p)
	sum := func(roles ...plan.Role) (l float64) {
		for _, m := range of(h, "1A", roles...) {
			l += m.Length
		}
		return l / 12
	}
	assert.InDelta(t, 148, sum(plan.SillPlate), 1e-9)
	assert.InDelta(t, 296, sum(plan.TopPlate, plan.UpperPlate), 1e-9)
}

// A three-stud corner takes two studs more than the one that the spacing
// count gives it; a wall meeting along the length takes two more.
// Source: take-off rules of Estimating in Building Construction, ch. 13
// (example 13-12: 4 corners, 8 extra studs; intersections 2 each; read).
func TestTakeOffOfCornersAndIntersections(t *testing.T) {
	count := func(inner bool) int {
		p := onSlabPlan()
		walls := ring(p, 0, rect(0, 0, 28*12, 20*12)...)
		for _, w := range walls {
			w.Studs = twoByFour
		}
		if inner {
			w := wall(p, "1P", 0, geom.Vec2{X: 168 + 1.75 + 8, Y: 0}, geom.Vec2{X: 168 + 1.75 + 8, Y: 100})
			w.Studs = twoByFour
		}
		h := frame(t, p)
		n := 0
		for _, w := range walls {
			n += len(of(h, w.Name, plan.Stud, plan.Post))
		}
		return n
	}
	spaces := (28 + 20) * 2 * 12 / 16 // a closed ring has as many studs as spaces
	assert.Equal(t, spaces+4*2, count(false))
	assert.Equal(t, spaces+4*2+2, count(true))
}

func TestBackingAtATee(t *testing.T) {
	p := onSlabPlan()
	ring(p, 0, rect(0, 0, 336, 240)...)
	w := wall(p, "1P", 0, geom.Vec2{X: 120, Y: 5.5}, geom.Vec2{X: 120, Y: 150})
	w.Studs = twoByFour
	h := frame(t, p)
	var backing []float64
	for _, m := range of(h, "1A", plan.Post) {
		if m.S0 > 100 && m.S1 < 140 {
			backing = append(backing, m.S0, m.S1)
		}
	}
	// the partition's faces are at 116.5 and 120
	plantest.Near(t, []float64{115.5, 117, 119.5, 121}, backing, 1e-9)
	assert.Len(t, of(h, "1A", plan.UpperPlate), 3, "the upper plate is broken for the partition's, and spliced once")
	lo, _ := extent(of(h, "1P", plan.UpperPlate))
	assert.InDelta(t, -5.5, lo, 1e-9, "the partition's upper plate laps over the wall")
	require.Len(t, joints(h, "1A", plan.WallCorner), 3)
}

func TestTeeMayBeWrittenToTheOutsideFace(t *testing.T) {
	for name, y := range map[string]float64{"inside face": 5.5, "outside face": 0, "a hair short": 5.9} {
		t.Run(name, func(t *testing.T) {
			p := onSlabPlan()
			ring(p, 0, rect(0, 0, 336, 240)...)
			wall(p, "1P", 0, geom.Vec2{X: 120, Y: y}, geom.Vec2{X: 120, Y: 150})
			h := frame(t, p)
			m := of(h, "1P", plan.Stud)[0]
			assert.InDelta(t, 5.5, m.A.Y-plate/2, 1e-9)
		})
	}
}

func TestCrossingWallsAreTold(t *testing.T) {
	p := onSlabPlan()
	ring(p, 0, rect(0, 0, 336, 240)...)
	wall(p, "1P", 0, geom.Vec2{X: 120, Y: 5.5}, geom.Vec2{X: 120, Y: 150}).Exterior = true
	wall(p, "1Q", 0, geom.Vec2{X: 60, Y: 80}, geom.Vec2{X: 200, Y: 80})
	_, faults := Frame(p)
	require.NotEmpty(t, faults)
	for _, f := range faults {
		assert.Equal(t, "walls-cross", string(f.Code))
	}
}

func TestReentrantCornerRunsOnToTheInnerFace(t *testing.T) {
	p := onSlabPlan()
	ring(p, 0, geom.Vec2{}, geom.Vec2{X: 360}, geom.Vec2{X: 360, Y: 180}, geom.Vec2{X: 240, Y: 180}, geom.Vec2{X: 240, Y: 420}, geom.Vec2{Y: 420})
	h := frame(t, p)
	d := h.Plan.Walls[3] // the longer, it runs through; its tape hooks where its plates begin
	lo, hi := extent(of(h, "1D", plan.TopPlate))
	assert.InDelta(t, 0, lo, 1e-9)
	assert.InDelta(t, 245.5, hi, 1e-9, "240 and the depth of 1C")
	assert.InDelta(t, 174.5, d.Frame().At(lo, 0, 0).Y, 1e-9, "1C's outside face at 180, its inside 5.5 south of it")
	_, hi = extent(of(h, "1C", plan.TopPlate))
	assert.InDelta(t, 120, hi, 1e-9)
}

func TestBayAt45Degrees(t *testing.T) {
	p := onSlabPlan()
	ring(p, 0, geom.Vec2{}, geom.Vec2{X: 120}, geom.Vec2{X: 156, Y: -36}, geom.Vec2{X: 240, Y: -36}, geom.Vec2{X: 276}, geom.Vec2{X: 400}, geom.Vec2{X: 400, Y: 240}, geom.Vec2{Y: 240})
	h := frame(t, p)
	require.NotEmpty(t, of(h, "1B", plan.Stud))
	for _, w := range []string{"1A", "1B", "1C", "1D", "1E"} {
		lo, hi := extent(of(h, w, plan.TopPlate))
		assert.Greater(t, hi-lo, 30.0, w)
	}
}

func TestWallsOfDifferentHeightDoNotLap(t *testing.T) {
	p := onSlabPlan()
	ring(p, 0, rect(0, 0, 336, 240)...)
	w := wall(p, "half", 0, geom.Vec2{X: 120, Y: 5.5}, geom.Vec2{X: 120, Y: 100})
	w.Height = 42
	h := frame(t, p)
	lo, _ := extent(of(h, "half", plan.UpperPlate))
	assert.InDelta(t, 0, lo, 1e-9)
	for _, m := range of(h, "half", plan.Stud) {
		assert.InDelta(t, 42-3*plate, m.Length, 1e-9)
	}
}

func TestHigherWallRunsThrough(t *testing.T) {
	p := onSlabPlan()
	walls := ring(p, 0, rect(0, 0, 336, 240)...)
	walls[1].Height = 120
	h := frame(t, p)
	lo, hi := extent(of(h, "1B", plan.TopPlate))
	assert.InDelta(t, 0, lo, 1e-9)
	assert.InDelta(t, 240, hi, 1e-9)
	_, hi = extent(of(h, "1A", plan.UpperPlate))
	assert.InDelta(t, 330.5, hi, 1e-9, "plates of different height do not lap")
}

func TestOpenOutlineIsTold(t *testing.T) {
	p := stories(1)
	girders(p, 0, 336, 3, 120, 237)
	walls := ring(p, 0, rect(0, 0, 336, 240)...)
	walls[2].To.X = 4
	_, faults := Frame(p)
	require.Len(t, faults, 1)
	assert.Equal(t, "walls-open", string(faults[0].Code))
	assert.Contains(t, faults[0].Summary, `wall 1C ends 4" from the start of wall 1D`)
}

func TestClockwiseOutlineIsTold(t *testing.T) {
	p := onSlabPlan()
	ring(p, 0, geom.Vec2{}, geom.Vec2{Y: 240}, geom.Vec2{X: 336, Y: 240}, geom.Vec2{X: 336})
	_, faults := Frame(p)
	require.Len(t, faults, 1)
	assert.Equal(t, "walls-clockwise", string(faults[0].Code))
}

// In the court of an L the line of a wall goes on past the inside corner: the other
// exterior wall there goes off to the outside. At an outside corner it goes in.
func TestInsideCornersOfAnL(t *testing.T) {
	h := exampleHouse(t, "sanderling.toml")
	for name, want := range map[string][2]bool{"C": {false, true}, "D": {true, false}, "S": {false, false}, "N": {false, false}} {
		for i, w := range h.Plan.Walls {
			if w.Name != name {
				continue
			}
			fw := &framedWall{Wall: w, frame: w.Frame()}
			n := len(h.Plan.Walls)
			before, after := h.Plan.Walls[(i+n-1)%n], h.Plan.Walls[(i+1)%n]
			fw.meets = []meeting{{other: &framedWall{Wall: before, frame: before.Frame()}, end: -1}, {other: &framedWall{Wall: after, frame: after.Frame()}, end: 1}}
			require.Equal(t, want, [2]bool{fw.insideCorner(-1), fw.insideCorner(1)}, name)
		}
	}
}
