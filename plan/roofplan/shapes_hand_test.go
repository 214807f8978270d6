package roofplan

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/plantest"
)

// edgeAt returns the kind of a face's edge that a point lies on.
func edgeAt(f *Face, p geom.Vec2) EdgeKind {
	for i, a := range f.Outline {
		if distance(p, a, f.Outline[(i+1)%len(f.Outline)]) < snap {
			return f.Edges[i]
		}
	}
	return ""
}

// faceOf returns the face that side i of a body makes.
func faceOf(t *testing.T, r *Roof, name string, i int) *Face {
	t.Helper()
	for _, f := range r.Faces {
		if f.Body.Name == name && f.Side == i {
			return f
		}
	}
	t.Fatalf("no face on side %d of %s", i, name)
	return nil
}

// What a framer calls the edges: low and free an eave, sloping and free a rake,
// the free top of a shed a ridge, and a wall where it stops under or against
// what stands higher.
func TestEdgesAreNamed(t *testing.T) {
	gable := func() *Body { return body(t, "main", "gable", "x", pt(0, 0), pt(240, 144), 6, 12) }
	against := gable()
	against.Sides[East].Against = true
	porch := body(t, "porch", "shed", "x", pt(0, -96), pt(240, 0), 3, 12)
	for i := range porch.Sides {
		porch.Sides[i].Height = 50
	}
	for name, c := range map[string]struct {
		bodies []*Body
		face   string
		side   int
		at     geom.Vec2
		want   EdgeKind
	}{
		"eave of a gable":                        {[]*Body{gable()}, "main", South, pt(100, -12), Eave},
		"eave on its other side":                 {[]*Body{gable()}, "main", North, pt(100, 156), Eave},
		"rake at the low end":                    {[]*Body{gable()}, "main", South, pt(-12, 30), Rake},
		"rake at the high end":                   {[]*Body{gable()}, "main", South, pt(252, 30), Rake},
		"ridge":                                  {[]*Body{gable()}, "main", South, pt(100, 72), Ridge},
		"a gable against a wall has no overhang": {[]*Body{against}, "main", South, pt(240, 30), Wall},
		"and a rake at its other end":            {[]*Body{against}, "main", South, pt(-12, 30), Rake},
		"the free top of a shed":                 {[]*Body{body(t, "s", "shed", "x", pt(0, 0), pt(64, 48), 3, 12)}, "s", South, pt(30, 60), Ridge},
		"rake of a shed":                         {[]*Body{body(t, "s", "shed", "x", pt(0, 0), pt(64, 48), 3, 12)}, "s", South, pt(-12, 20), Rake},
		// The main roof's tail hangs at 94 in over the porch, which is at 71 there.
		"a porch ends under the main eave": {[]*Body{gable(), porch}, "porch", South, pt(100, -12), Wall},
		"the main eave over it is free":    {[]*Body{gable(), porch}, "main", South, pt(100, -12), Eave},
	} {
		r, faults := New(c.bodies)
		require.Empty(t, faults, name)
		assert.Equal(t, c.want, edgeAt(faceOf(t, r, c.face, c.side), c.at), name)
	}
}

// Equal slopes: a hip's ridge begins half the width in from its end. Ends that
// climb past each other by up to 6 in still make a point; past a gable end the
// ridge has the overhang of 12 in as well.
func TestWhereARidgeHasRoom(t *testing.T) {
	for name, c := range map[string]struct {
		hips  [2]bool
		width float64 // across the ridge, of a roof 100 in long
		mend  string  // "" where it has room
	}{
		"hips meet 5 in past each other":   {[2]bool{true, true}, 105, ""},
		"hips meet 7 in past each other":   {[2]bool{true, true}, 107, `write ridge = "y"`},
		"a hip at the low end, with room":  {[2]bool{true, false}, 234, ""}, // 117 of 112 + 6
		"a hip at the low end, without":    {[2]bool{true, false}, 238, "or a gable at both ends"},
		"a hip at the high end, with room": {[2]bool{false, true}, 234, ""},
		"a hip at the high end, without":   {[2]bool{false, true}, 238, "give it a longer area along x"},
		"gables always have":               {[2]bool{false, false}, 900, ""},
	} {
		slopes, err := Slopes(plan.GableRoof, Shape{Axis: plan.AxisX, Slope: 0.5, HipEnd: c.hips})
		require.NoError(t, err)
		b := &Body{Name: "a", Axis: plan.AxisX, Hi: pt(100, c.width), Spacing: 16, Thick: 1.5}
		for i, m := range slopes {
			b.Sides[i] = Side{Slope: m, Height: 100, Over: 12}
		}
		faults := b.checkRidge()
		if c.mend == "" {
			assert.Empty(t, faults, name)
			continue
		}
		require.Len(t, faults, 1, name)
		assert.Equal(t, "ridge-has-no-room", string(faults[0].Code), name)
		assert.Contains(t, faults[0].Mend, c.mend, name)
	}
}

// A ridge at 6 in 12 comes under the main roof's plane, 100 in high at the wall,
// twice its height over that in; over the main ridge, 148, it never does.
func TestWhereARidgeDies(t *testing.T) {
	main := body(t, "main", "gable", "x", pt(0, 0), pt(360, 192), 6, 0)
	for _, c := range []struct {
		from, way geom.Vec2
		z, run    float64
		dies      bool
	}{
		{pt(180, 0), pt(0, 1), 130, 60, true},
		{pt(180, 192), pt(0, -1), 130, 60, true},
		{pt(180, 0), pt(0, 1), 148, 96, true},
		{pt(180, 0), pt(0, 1), 148.1, 0, false},
		{pt(180, 0), pt(0, 1), 90, 0, true}, // under it from the start
		{pt(0, 50), pt(1, 0), 125, 0, true}, // from the gable end, at the plane's own height
		{pt(0, 50), pt(1, 0), 126, 0, false},
	} {
		run, ok := main.dies(c.from, c.way, c.z)
		assert.Equal(t, c.dies, ok, "%+v", c)
		assert.InDelta(t, c.run, run, 1e-9, "%+v", c)
	}
}

// A wing 120 in square on each side of a main roof: its ridge, 60 in in from its
// walls, runs on 60 in; rafters are counted from its own gable, whose flush one
// stands 3/4 in in.
func TestRaftersOfAWingOnEachSide(t *testing.T) {
	up := func(from, to float64) (out []float64) {
		for s := from; s <= to; s += 16 {
			out = append(out, s)
		}
		return out
	}
	for name, c := range map[string]struct {
		axis   plan.Axis // of the main roof
		lo, hi geom.Vec2 // of the wing
		joins  int       // the wing's end that runs in
		at     []float64
		flush  float64
	}{
		"south": {"x", pt(120, -120), pt(240, 0), North, append([]float64{-119.25}, up(-104, 56)...), -119.25},
		"north": {"x", pt(120, 192), pt(240, 312), South, append(up(136, 296), 311.25), 311.25},
		"west":  {"y", pt(-120, 120), pt(0, 240), East, append([]float64{-119.25}, up(-104, 56)...), -119.25},
		"east":  {"y", pt(192, 120), pt(312, 240), West, append(up(136, 296), 311.25), 311.25},
	} {
		mainTo, wingAxis := pt(360, 192), plan.AxisY
		if c.axis == plan.AxisY {
			mainTo, wingAxis = pt(192, 360), plan.AxisX
		}
		wing := body(t, "wing", "gable", wingAxis, c.lo, c.hi, 6, 0)
		r, faults := New([]*Body{body(t, "main", "gable", c.axis, pt(0, 0), mainTo, 6, 0), wing})
		require.Empty(t, faults, name)
		for i, s := range wing.Sides {
			assert.Equal(t, i == c.joins, s.RunsIn, "%s, side %d", name, i)
		}
		assert.InDelta(t, 60, wing.Reach(c.joins), 1e-9, name)
		assert.Zero(t, wing.Alone().Reach(c.joins), "%s: alone it ends at its wall", name)
		assert.InDelta(t, 60, wing.Reach(c.joins), 1e-9, "%s: and the wing is as it was", name)
		for _, f := range r.Faces {
			if f.Body == wing {
				at, flush := stationsOf(f)
				plantest.Near(t, c.at, at, 1e-9, name)
				assert.Equal(t, []float64{c.flush}, flush, name)
			}
		}
	}
}

// A wing whose wall is flush with the main gable's keeps its overhang outside
// and has none of it on the main roof; one 5 in in has 5 in of it there.
func TestOverhangOfAWingStopsAtTheMainWalls(t *testing.T) {
	for in, west := range map[float64]float64{0: 0, 5: 5, 12: 12, 30: 12} {
		wing := body(t, "wing", "gable", "y", pt(in, -120), pt(in+120, 0), 6, 12)
		_, faults := New([]*Body{body(t, "main", "gable", "x", pt(0, 0), pt(360, 192), 6, 12), wing})
		require.Empty(t, faults)
		parts := wing.domain()
		require.Len(t, parts, 2)
		assert.Equal(t, square(in-12, -132, in+132, 0), parts[0], "%v in from the corner", in)
		assert.Equal(t, square(in-west, 0, in+132, 60), parts[1], "%v in from the corner", in)
	}
}

// Overhangs of 12 in: the valley begins at the tails, 12 in outside both walls. A
// wing rafter 8 in outside the main wall starts on it, 8 in outside the wing's
// own wall: it bears on the plate and is a common rafter. 8 in inside it is a jack.
func TestATailThatDiesInAValleyIsACommonRafter(t *testing.T) {
	wing := body(t, "wing", "gable", "y", pt(120, -120), pt(240, 0), 6, 12)
	r, faults := New([]*Body{body(t, "main", "gable", "x", pt(0, 0), pt(360, 192), 6, 12), wing})
	require.Empty(t, faults)
	for at, want := range map[float64]struct {
		kind    RunKind
		outside bool
	}{-8: {Common, true}, 8: {ValleyJack, false}} {
		runs := r.RunsAt(faceOf(t, r, "wing", West), at)
		require.Len(t, runs, 1)
		assert.Equal(t, Valley, runs[0].LowEnd.Kind)
		assert.Equal(t, want.kind, runs[0].Kind, "at %v", at)
		assert.Equal(t, want.outside, runs[0].Outside(), "at %v", at)
		p, b, side := runs[0].Bearing()
		if !want.outside {
			assert.Nil(t, b)
			continue
		}
		assert.Same(t, wing, b)
		assert.Equal(t, West, side)
		assert.InDelta(t, 120, p.X, 1e-9)
		assert.InDelta(t, -8, p.Y, 1e-9)
	}
}

// Two roofs end to end in one plane are one face, with the rafters of both
// counted from the first one's gable: 16 on center from 0 to 400, and one flush
// with the far gable, at 405 less half of 1.5.
func TestRoofsInOnePlaneAreOneFace(t *testing.T) {
	a, b := body(t, "a", "gable", "x", pt(0, 0), pt(240, 144), 6, 12), body(t, "b", "gable", "x", pt(240, 0), pt(405, 144), 6, 12)
	r, faults := New([]*Body{a, b})
	require.Empty(t, faults)
	require.Len(t, r.Faces, 2)
	south := faceOf(t, r, "a", South)
	assert.InDelta(t, (405+24)*(72+12), Area(south.Outline), 1e-6)
	for _, x := range []*Body{a, b} {
		assert.True(t, south.Has(x, South), x.Name)
		assert.False(t, south.Has(x, North), x.Name)
	}
	want := []float64{0.75}
	for s := 16.0; s <= 400; s += 16 {
		want = append(want, s)
	}
	at, flush := stationsOf(south)
	plantest.Near(t, append(want, 404.25), at, 1e-9)
	assert.Equal(t, []float64{0.75, 404.25}, flush)
}

// Two roofs 100 in apart with their ridges on one straight line have two ridges;
// a third between them, of their height, makes them one.
func TestRidgesOnOneLine(t *testing.T) {
	west, east := func() *Body { return body(t, "west", "gable", "x", pt(0, 0), pt(100, 80), 6, 0) }, func() *Body { return body(t, "east", "gable", "x", pt(200, 0), pt(300, 80), 6, 0) }
	r, _ := New([]*Body{west(), east()})
	require.Len(t, r.Lines, 2)
	plantest.Near(t, []float64{0, 100, 200, 300}, []float64{r.Lines[0].A.X, r.Lines[0].B.X, r.Lines[1].A.X, r.Lines[1].B.X}, 1e-9)
	r, _ = New([]*Body{west(), east(), body(t, "between", "gable", "x", pt(100, 0), pt(200, 80), 6, 0)})
	require.Len(t, r.Lines, 1)
	plantest.Near(t, []float64{0, 300}, []float64{r.Lines[0].A.X, r.Lines[0].B.X}, 1e-9)
}

// A cupola that stands wholly within one face of the roof leaves a hole in it.
func TestARoofWithinARoofIsTold(t *testing.T) {
	cupola := body(t, "cupola", "shed", "x", pt(150, 30), pt(200, 60), 6, 2)
	for i := range cupola.Sides {
		cupola.Sides[i].Height = 300
	}
	_, faults := New([]*Body{body(t, "main", "shed", "x", pt(0, 0), pt(400, 200), 3, 12), cupola})
	require.Len(t, faults, 1)
	assert.Equal(t, "roof-within-roof", string(faults[0].Code))
	assert.Equal(t, "main", faults[0].Body.Name)
}

// Valleys that end where two ridges meet need nothing to carry them.
func TestValleysOfEqualRidgesAreCarriedByThem(t *testing.T) {
	r, _ := New([]*Body{
		body(t, "a", "gable", "x", pt(0, 0), pt(384, 144), 6, 12),
		body(t, "b", "gable", "y", pt(120, -120), pt(264, 264), 6, 12),
	})
	for _, l := range r.Lines {
		assert.Nil(t, l.Carried, "%s from %v", l.Kind, l.A)
	}
}

// A hip over a corner of 200 by 80 in at 6 in 12 runs 40 in in and in, and up 20.
func TestPointsOfALine(t *testing.T) {
	r, _ := New([]*Body{body(t, "a", "hip", "x", pt(0, 0), pt(200, 80), 6, 0)})
	var hip *Line
	for _, l := range r.Lines {
		if l.Kind == Hip && l.A.Flat() == pt(0, 0) {
			hip = l
		}
	}
	require.NotNil(t, hip)
	assert.InDelta(t, 56.569, hip.Run(), 5e-4)
	for u, want := range map[float64]geom.Vec3{0: {Z: 100}, 28.2843: {X: 20, Y: 20, Z: 110}, 56.5685: {X: 40, Y: 40, Z: 120}} {
		assert.InDelta(t, 0, hip.At(u).Sub(want).Len(), 1e-3, "at %v", u)
	}
	assert.InDelta(t, 0.5, faceOf(t, r, "a", East).Slope(), 1e-12)
	assert.Equal(t, pt(-1, 0), faceOf(t, r, "a", East).Uphill())
}
