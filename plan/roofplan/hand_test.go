package roofplan

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/plantest"
)

func pt(x, y float64) geom.Vec2 { return geom.Vec2{X: x, Y: y} }

func square(x0, y0, x1, y1 float64) []geom.Vec2 {
	return []geom.Vec2{pt(x0, y0), pt(x1, y0), pt(x1, y1), pt(x0, y1)}
}

func areas(list [][]geom.Vec2) (sum float64) {
	for _, p := range list {
		sum += Area(p)
	}
	return sum
}

func TestPolygonsByHand(t *testing.T) {
	s := square(0, 0, 4, 4)
	assert.InDelta(t, 16, Area(s), 1e-12)
	assert.InDelta(t, -16, Area([]geom.Vec2{s[3], s[2], s[1], s[0]}), 1e-12)
	// x + y <= 2 leaves the corner triangle of 2, with a normal of any length.
	for _, k := range []float64{1, 10, 0.001} {
		assert.InDelta(t, 2, Area(clip(s, pt(k, k), 2*k)), 1e-9, "%v", k)
	}
	assert.InDelta(t, 14, Area(clip(s, pt(-1, -1), -2)), 1e-9)
	assert.Nil(t, clip(s, pt(1, 0), -1))
	assert.Nil(t, clip(s, pt(1, 0), 0), "an edge is no part")
	assert.Equal(t, s, clip(s, pt(0, 0), 1), "0 <= 1 everywhere")
	assert.Nil(t, clip(s, pt(0, 0), -1), "0 <= -1 nowhere")
	assert.InDelta(t, 4, Area(intersect(s, square(2, 2, 9, 9))), 1e-9)
	assert.Nil(t, intersect(s, square(4, 0, 8, 4)), "they only touch")
	// A hole of 1 in the middle leaves 15, a corner of 2 x 2 leaves 12.
	assert.InDelta(t, 15, areas(subtract([][]geom.Vec2{s}, square(1, 1, 2, 2))), 1e-9)
	left := subtract([][]geom.Vec2{s, square(10, 0, 12, 2)}, square(2, 2, 9, 9))
	assert.InDelta(t, 12+4, areas(left), 1e-9, "what is aside stays whole")
	assert.Empty(t, subtract([][]geom.Vec2{s}, square(-1, -1, 5, 5)))
}

func TestUnionDropsWhatIsShared(t *testing.T) {
	// Two squares side by side, the edge between them gone and no corner left on
	// the straight sides.
	out := union([][]geom.Vec2{square(0, 0, 2, 2), square(2, 0, 4, 2)})
	require.Len(t, out, 1)
	assert.Len(t, out[0], 4)
	assert.InDelta(t, 8, Area(out[0]), 1e-12)
	// A smaller one against the middle of a side makes eight corners.
	out = union([][]geom.Vec2{square(0, 0, 2, 6), square(2, 2, 4, 4)})
	require.Len(t, out, 1)
	assert.Len(t, out[0], 8)
	assert.InDelta(t, 16, Area(out[0]), 1e-12)
	// Squares that touch in a corner stay two loops.
	out = union([][]geom.Vec2{square(0, 0, 2, 2), square(2, 2, 4, 4)})
	require.Len(t, out, 2)
	plantest.Near(t, []float64{4, 4}, []float64{Area(out[0]), Area(out[1])}, 1e-12)
	// Four bars round a hole of 2 x 2 in 6 x 6: 36 outside, -4 for the hole.
	out = union([][]geom.Vec2{square(0, 0, 6, 2), square(4, 2, 6, 4), square(0, 4, 6, 6), square(0, 2, 2, 4)})
	require.Len(t, out, 2)
	assert.ElementsMatch(t, []float64{36, -4}, []float64{Area(out[0]), Area(out[1])})
}

func TestInsideAndDistance(t *testing.T) {
	l := []geom.Vec2{pt(0, 0), pt(6, 0), pt(6, 2), pt(2, 2), pt(2, 6), pt(0, 6)}
	for _, c := range []struct {
		p  geom.Vec2
		in bool
	}{{pt(1, 1), true}, {pt(5, 1), true}, {pt(1, 5), true}, {pt(4, 4), false}, {pt(-1, 1), false}, {pt(7, 1), false}, {pt(2, 4), true}, {pt(3, 2), true}, {pt(0, 0), true}} {
		assert.Equal(t, c.in, contains(l, c.p), "%v", c.p)
	}
	assert.InDelta(t, 3, distance(pt(2, 3), pt(0, 0), pt(4, 0)), 1e-12)
	assert.InDelta(t, 5, distance(pt(7, 4), pt(0, 0), pt(4, 0)), 1e-12, "past the end, 3 and 4 off")
	assert.InDelta(t, 5, distance(pt(-3, 4), pt(0, 0), pt(4, 0)), 1e-12)
	assert.InDelta(t, 5, distance(pt(3, 4), pt(0, 0), pt(0, 0)), 1e-12)
}

// stationsOf lists where a face's rafters stand, those over gable end walls
// apart.
func stationsOf(f *Face) (at, flush []float64) {
	for _, s := range f.stations() {
		at = append(at, s.at)
		if s.flush {
			flush = append(flush, s.at)
		}
	}
	return at, flush
}

func TestRaftersOfAGableByHand(t *testing.T) {
	// 100 in long, rafters 1.5 thick at 16 in: the first and the last flush with the
	// ends, middles at 0.75 and 99.25; the module 16 to 96 from the low end. The
	// one at 0 would stand in the first.
	for _, axis := range []plan.Axis{"x", "y"} {
		lo, hi := pt(0, 0), pt(100, 60)
		if axis == "y" {
			hi = pt(60, 100)
		}
		r, faults := New([]*Body{body(t, "a", "gable", axis, lo, hi, 6, 12)})
		require.Empty(t, faults)
		require.Len(t, r.Faces, 2)
		for _, f := range r.Faces {
			at, flush := stationsOf(f)
			assert.Equal(t, []float64{0.75, 16, 32, 48, 64, 80, 96, 99.25}, at)
			assert.Equal(t, []float64{0.75, 99.25}, flush)
		}
		// 8 on each side, each from its tail 12 out to the ridge 30 in: 42 on plan,
		// times sqrt(5)/2 at 6 in 12: 46.957.
		runs := r.Runs()
		require.Len(t, runs, 16)
		for _, run := range runs {
			assert.Equal(t, Common, run.Kind)
			assert.InDelta(t, 46.957, run.Length(), 5e-4)
			assert.Equal(t, Ridge, run.HighEnd.Kind)
			assert.NotNil(t, run.HighEnd.Line)
			assert.Equal(t, Eave, run.LowEnd.Kind)
		}
	}
}

func TestLastRafterNeedsItsThickness(t *testing.T) {
	// Of 97.7 in the flush rafter stands at 96.95 and the module's at 96 would be
	// 0.95 from it, less than 1.5: it goes. Of 98.3 they are 1.55 apart: it stays.
	for length, n := range map[float64]int{97.7: 7, 98.3: 8} {
		r, _ := New([]*Body{body(t, "a", "gable", "x", pt(0, 0), pt(length, 60), 6, 12)})
		at, _ := stationsOf(r.Faces[0])
		assert.Len(t, at, n, "%v", at)
	}
}

func TestRaftersOfAHipByHand(t *testing.T) {
	// 200 by 80, equal slopes: the ridge runs from 40 to 160. On the long faces the
	// module goes up and down from 40, ... 8, 24, 40, 56 ... 152, and from 160 up.
	r, _ := New([]*Body{body(t, "a", "hip", "x", pt(0, 0), pt(200, 80), 6, 0)})
	require.Len(t, r.Faces, 4)
	ridge := firstOf(r, Ridge)
	assert.InDelta(t, 40, ridge.A.X, 1e-9)
	assert.InDelta(t, 160, ridge.B.X, 1e-9)
	assert.InDelta(t, 120, ridge.A.Z, 1e-9, "100 and half of 40")
	for _, f := range r.Faces {
		at, flush := stationsOf(f)
		assert.Empty(t, flush)
		if f.Side == South || f.Side == North {
			plantest.Near(t, []float64{8, 24, 40, 56, 72, 88, 104, 120, 136, 152, 160, 176, 192}, at, 1e-9)
		} else {
			// On the hip's own face from the ridge's end at y = 40 both ways.
			plantest.Near(t, []float64{8, 24, 40, 56, 72}, at, 1e-9)
		}
	}
	kinds := kinds2(r)
	// Commons: 9 on each long face (40 to 160), and one on each end. Jacks: 2 at
	// each end of the long faces, 4 on each end face.
	assert.Equal(t, map[RunKind]int{Common: 20, HipJack: 16}, kinds)
	// The jack at 8 of the south face runs up 8 in of plan, 8.944 true.
	for _, run := range r.Runs() {
		if run.Face.Side == South && run.Station == 8 {
			assert.InDelta(t, 8, run.High.Y, 1e-9)
			assert.InDelta(t, 8.944, run.Length(), 5e-4)
			assert.Equal(t, Hip, run.HighEnd.Kind)
		}
		if run.Station == 40 && run.Face.Side == South {
			assert.Equal(t, Ridge, run.HighEnd.Kind, "it meets the very end of the ridge")
		}
	}
}

func TestRaftersOfAShedByHand(t *testing.T) {
	// High side N, 64 in along x, 48 deep at 3 in 12, overhang 12: flush at 0.75 and
	// 63.25, module 16 32 48. The high edge has no ridge.
	r, _ := New([]*Body{body(t, "a", "shed", "x", pt(0, 0), pt(64, 48), 3, 12)})
	require.Len(t, r.Faces, 1)
	at, flush := stationsOf(r.Faces[0])
	assert.Equal(t, []float64{0.75, 16, 32, 48, 63.25}, at)
	assert.Equal(t, []float64{0.75, 63.25}, flush)
	z, f, ok := r.Height(pt(30, 24))
	require.True(t, ok)
	assert.InDelta(t, 106, z, 1e-9, "24 in up at 3 in 12 over 100")
	assert.Same(t, r.Faces[0], f)
	for _, run := range r.Runs() {
		assert.Equal(t, Common, run.Kind)
		assert.Nil(t, run.HighEnd.Line)
		p, b, side := run.Bearing()
		require.NotNil(t, b)
		assert.Equal(t, South, side)
		assert.InDelta(t, 0, p.Y, 1e-9, "it bears on the wall's outside face")
		assert.InDelta(t, -12, run.Low.Y, 1e-9)
		assert.True(t, run.Outside())
	}
	_, _, ok = r.Height(pt(30, 80))
	assert.False(t, ok)
}

func TestUnequalGableAndHipEnd(t *testing.T) {
	// South climbs 6 in 12 and north 12 in 12 from walls 120 apart at one height:
	// x/2 = 120 - x at x = 80 from the south, 40 up.
	slopes, err := Slopes("gable", Shape{Axis: "x", Slope: 0.5, Other: 1})
	require.NoError(t, err)
	assert.Equal(t, [4]float64{South: 0.5, North: 1}, slopes)
	b := &Body{Axis: "x", Hi: pt(200, 120), Spacing: 16, Thick: 1.5}
	for i, m := range slopes {
		b.Sides[i] = Side{Slope: m, Height: 100}
	}
	p, z, ok := b.Ridge()
	require.True(t, ok)
	assert.InDelta(t, 80, p.Y, 1e-9)
	assert.InDelta(t, 140, z, 1e-9)
	h, side := b.Height(pt(100, 100))
	assert.InDelta(t, 120, h, 1e-9)
	assert.Equal(t, North, side)

	// A hip at the high end alone.
	slopes, err = Slopes("gable", Shape{Axis: "x", Slope: 0.5, HipEnd: [2]bool{false, true}})
	require.NoError(t, err)
	assert.Equal(t, [4]float64{South: 0.5, North: 0.5, East: 0.5}, slopes)
	slopes, _ = Slopes("gable", Shape{Axis: "y", Slope: 0.5, HipEnd: [2]bool{true, false}})
	assert.Equal(t, [4]float64{East: 0.5, West: 0.5, South: 0.5}, slopes)
	for _, s := range []Shape{{Axis: "z", Slope: 1}, {Axis: "x"}, {Axis: "y", Slope: -1}} {
		_, err := Slopes("gable", s)
		assert.Error(t, err, "%+v", s)
	}
}

func TestRaftersOfAWingThatRunsIntoTheMainRoof(t *testing.T) {
	// Main 0..360 by 0..192, wing 120..240 by -120..0, one pitch: the wing's ridge
	// dies at y = 60. The wing's module is counted from its own gable at -120:
	// flush at -119.25, then -104 ... -8, 8, 24, 40, 56, those from 8 on between the
	// valleys (jacks that start on a valley).
	r, faults := New([]*Body{
		body(t, "main", "gable", "x", pt(0, 0), pt(360, 192), 6, 0),
		body(t, "wing", "gable", "y", pt(120, -120), pt(240, 0), 6, 0),
	})
	require.Empty(t, faults)
	for _, f := range r.Faces {
		if f.Body.Name != "wing" {
			continue
		}
		at, flush := stationsOf(f)
		assert.Equal(t, []float64{-119.25}, flush)
		plantest.Near(t, []float64{-119.25, -104, -88, -72, -56, -40, -24, -8, 8, 24, 40, 56}, at, 1e-9)
		assert.InDelta(t, 60*120+60*60/2, Area(f.Outline), 1e-6, "60 wide over 120, and the triangle to the valley")
	}
	for _, run := range r.Runs() {
		if run.Face.Body.Name == "wing" && run.Station > 0 {
			assert.Equal(t, ValleyJack, run.Kind, "at %v", run.Station)
			assert.False(t, run.Outside())
		}
	}
}

func TestCrossingsWithinAnInchAreOne(t *testing.T) {
	c := func(h float64, kind EdgeKind) crossing { return crossing{h: h, kind: kind} }
	// The ridge carries more than a valley that comes up to it 0.9 in before.
	assert.Equal(t, []crossing{c(0, Eave), c(50.9, Ridge)}, thinned([]crossing{c(0, Eave), c(50, Valley), c(50.9, Ridge)}))
	assert.Equal(t, []crossing{c(0, Eave), c(50, Ridge)}, thinned([]crossing{c(0, Eave), c(50, Ridge), c(50.9, Valley)}))
	assert.Equal(t, []crossing{c(0, Eave), c(50, Valley), c(51, Ridge)}, thinned([]crossing{c(0, Eave), c(50, Valley), c(51, Ridge)}))
	two, three := []crossing{c(0, Eave), c(9, Hip)}, []crossing{c(0, Eave), c(4, Valley), c(9, Hip)}
	ridge := []crossing{c(0, Eave), c(9, Ridge)}
	assert.True(t, better(three, two) && better(ridge, two))
	assert.False(t, better(two, three) || better(two, two) || better(two, ridge) || better(nil, nil))
}
