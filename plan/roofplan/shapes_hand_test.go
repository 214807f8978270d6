package roofplan

import (
	"slices"
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

// A body that climbs from one side alone has no ridge that might lack room, whichever
// side that is, and however its ends slope.
func TestOneSlopeHasNoRidge(t *testing.T) {
	for _, low := range []int{South, North} {
		b := &Body{Name: "a", Axis: plan.AxisX, Hi: pt(100, 900), Spacing: 16, Thick: 1.5}
		for _, i := range []int{low, East, West} {
			b.Sides[i] = Side{Slope: 0.5, Height: 100}
		}
		assert.Empty(t, b.checkRidge(), "low on side %v", SideNames[low])
		b.Sides[(low+2)%4] = b.Sides[low]
		assert.Len(t, b.checkRidge(), 1, "with the other side its hips climb past each other")
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

// What carries the upper end of a valley: a line that runs on past it, a hip that ends
// there, something that ends there and climbs on, or two ridges that meet there; not one
// ridge that dies there, nor another valley.
func TestWhatCarriesAValley(t *testing.T) {
	at := geom.Vec3{X: 40, Y: 40, Z: 120}
	line := func(k EdgeKind, dx, dy, dz float64) *Line {
		return &Line{Kind: k, A: at.Add(geom.Vec3{X: dx, Y: dy, Z: dz}), B: at}
	}
	past := &Line{Kind: Ridge, A: at.Add(geom.Vec3{X: -50}), B: at.Add(geom.Vec3{X: 50})}
	climbs := &Line{Kind: Valley, A: at, B: at.Add(geom.Vec3{X: 10, Y: 10, Z: 5})}
	for name, c := range map[string]struct {
		lines []*Line
		want  bool
	}{
		"nothing":                {nil, false},
		"a ridge that runs past": {[]*Line{past}, true},
		"a hip":                  {[]*Line{line(Hip, -40, 40, -20)}, true},
		"one ridge that ends":    {[]*Line{line(Ridge, 0, 60, 0)}, false},
		"two ridges that meet":   {[]*Line{line(Ridge, 0, 60, 0), line(Ridge, 60, 0, 0)}, true},
		"a ridge and a valley":   {[]*Line{line(Ridge, 0, 60, 0), line(Valley, 40, -40, -20)}, false},
		"a valley that climbs":   {[]*Line{climbs}, true},
		"a ridge elsewhere":      {[]*Line{{Kind: Ridge, A: at.Add(geom.Vec3{Y: 5}), B: at.Add(geom.Vec3{X: 50, Y: 5})}}, false},
	} {
		l := line(Valley, -40, -40, -20)
		r := &Roof{Lines: append(slices.Clone(c.lines), l)}
		assert.Equal(t, c.want, r.supported(l), name)
	}
}

// A run that meets a hip right at the end of a ridge ends at the ridge.
func TestARunAtTheVeryEndOfARidge(t *testing.T) {
	hip := &Line{Kind: Hip, B: geom.Vec3{X: 40, Y: 40, Z: 20}}
	ridge := &Line{Kind: Ridge, A: geom.Vec3{X: 40, Y: 40, Z: 20}, B: geom.Vec3{X: 160, Y: 40, Z: 20}}
	r := &Roof{Lines: []*Line{hip, ridge}}
	for _, c := range []struct {
		kind EdgeKind
		high geom.Vec2
		want EdgeKind
	}{
		{Hip, pt(40, 40), Ridge}, {Hip, pt(160, 40), Ridge}, {Hip, pt(39, 39), Hip}, {Hip, pt(0, 0), Hip}, {Valley, pt(40, 40), Valley},
	} {
		run := &Run{High: c.high, HighEnd: End{c.kind, hip}}
		r.atRidgeEnd(run)
		assert.Equal(t, c.want, run.HighEnd.Kind, "%v", c)
		if c.want == Ridge {
			assert.Same(t, ridge, run.HighEnd.Line)
		}
	}
}

// Edges of one kind on one straight line are one; a corner, and a change of kind, part them.
func TestStraightEdgesOfOneKindAreOne(t *testing.T) {
	pts := []geom.Vec2{pt(0, 0), pt(40, 0), pt(90, 0), pt(120, 0), pt(120, 50), pt(0, 50)}
	outline, edges := merge(pts, []EdgeKind{Eave, Eave, Wall, Wall, Rake, Ridge})
	assert.Equal(t, []geom.Vec2{pt(0, 0), pt(90, 0), pt(120, 0), pt(120, 50), pt(0, 50)}, outline)
	assert.Equal(t, []EdgeKind{Eave, Wall, Wall, Rake, Ridge}, edges)
}

// Two gables of one pitch and eave in one plane, from 0 to 200 and 120 to 300: both
// are counted from the first one's gable, where they overlap and beyond: 16, 32 ...
// 288 (300 less 1.5 is past it), and one flush with each far gable.
func TestTwoSidesOverOneLengthLayOutOneModule(t *testing.T) {
	r, faults := New([]*Body{body(t, "a", "gable", "x", pt(0, 0), pt(200, 144), 6, 12), body(t, "b", "gable", "x", pt(120, 0), pt(300, 144), 6, 12)})
	require.Empty(t, faults)
	for _, side := range []int{South, North} {
		at, flush := stationsOf(faceOf(t, r, "a", side))
		plantest.Near(t, append(append([]float64{0.75}, every(16, 288)...), 299.25), at, 1e-9)
		assert.Equal(t, []float64{0.75, 299.25}, flush)
	}
}

// Which of two faces is over a place: the higher; beside the roof none.
func TestTheHigherFaceIsTheRoof(t *testing.T) {
	low := &Face{Plane: Plane{C: 100}, Outline: []geom.Vec2{pt(0, 0), pt(80, 0), pt(80, 80), pt(0, 80)}}
	high := &Face{Plane: Plane{C: 120}, Outline: []geom.Vec2{pt(40, 0), pt(120, 0), pt(120, 80), pt(40, 80)}}
	for _, faces := range [][]*Face{{low, high}, {high, low}} {
		r := &Roof{Faces: faces}
		for _, c := range []struct {
			x    float64
			want *Face
		}{{20, low}, {60, high}, {100, high}, {130, nil}} {
			z, f, ok := r.Height(pt(c.x, 40))
			assert.Equal(t, c.want != nil, ok, "%v", c.x)
			assert.True(t, f == c.want, "%v", c.x)
			if ok {
				assert.InDelta(t, c.want.Plane.C, z, 1e-9)
			}
		}
	}
}

// Lines of one kind on one straight line that touch or overlap are one, whichever way and
// in whatever order they come; others stay apart.
func TestLinesThatTouchAreOne(t *testing.T) {
	at := func(x float64) geom.Vec3 { return geom.Vec3{X: x, Y: 10, Z: 120} }
	for name, c := range map[string]struct {
		spans [][2]float64
		want  [][2]float64
	}{
		"end to end":          {[][2]float64{{0, 40}, {40, 90}}, [][2]float64{{0, 90}}},
		"the later first":     {[][2]float64{{40, 90}, {0, 40}}, [][2]float64{{0, 90}}},
		"over each other":     {[][2]float64{{0, 60}, {40, 90}}, [][2]float64{{0, 90}}},
		"one in the other":    {[][2]float64{{0, 90}, {30, 40}}, [][2]float64{{0, 90}}},
		"one round the other": {[][2]float64{{30, 40}, {0, 90}}, [][2]float64{{0, 90}}},
		"apart":               {[][2]float64{{0, 40}, {50, 90}}, [][2]float64{{0, 40}, {50, 90}}},
		"joined by a third":   {[][2]float64{{0, 40}, {50, 90}, {40, 50}}, [][2]float64{{0, 90}}},
	} {
		r := &Roof{}
		for _, s := range c.spans {
			r.addLine(Ridge, at(s[1]), at(s[0]))
		}
		var got [][2]float64
		for _, l := range r.Lines {
			got = append(got, [2]float64{l.A.X, l.B.X})
		}
		assert.Equal(t, c.want, got, name)
	}
	r := &Roof{}
	r.addLine(Ridge, at(0), at(40))
	r.addLine(Hip, at(40), at(80))
	r.addLine(Ridge, geom.Vec3{X: 40, Y: 11, Z: 120}, geom.Vec3{X: 90, Y: 11, Z: 120})
	r.addLine(Valley, geom.Vec3{Z: 120}, geom.Vec3{X: 10, Y: 10, Z: 100})
	assert.Len(t, r.Lines, 4)
	assert.InDelta(t, 100, r.Lines[3].A.Z, 1e-9, "the lower end is A")
}

// The ridge of 200 by 80 in at 6 in 12: over the middle, 20 in up; a shed has none, on
// whichever side it slopes.
func TestWhichBodyHasARidge(t *testing.T) {
	for _, kind := range []plan.RoofKind{"gable", "hip"} {
		p, z, ok := body(t, "a", kind, "x", pt(0, 0), pt(200, 80), 6, 0).Ridge()
		assert.True(t, ok)
		assert.InDelta(t, 40, p.Y, 1e-9)
		assert.InDelta(t, 120, z, 1e-9)
	}
	_, _, ok := body(t, "a", "shed", "x", pt(0, 0), pt(200, 80), 6, 0).Ridge()
	assert.False(t, ok)
	for i := range 4 {
		b := body(t, "a", "gable", "x", pt(0, 0), pt(200, 80), 6, 0)
		b.Sides[i].Slope = 0
		_, _, ok := b.Ridge()
		assert.Equal(t, i == int(East) || i == int(West), ok, "side %d", i)
	}
}

// Corners on a segment part it, in order, each once; those beside it, and its ends, do not.
func TestCornersOnASegment(t *testing.T) {
	corners := []geom.Vec2{pt(30, 0), pt(10, 0), pt(30, 0), pt(20, 1), pt(0, 0), pt(40, 0), pt(50, 0), pt(-5, 0)}
	assert.Equal(t, []geom.Vec2{pt(0, 0), pt(10, 0), pt(30, 0), pt(40, 0)}, between(corners, pt(0, 0), pt(40, 0)))
	assert.Equal(t, []geom.Vec2{pt(40, 0), pt(30, 0), pt(10, 0), pt(0, 0)}, between(corners, pt(40, 0), pt(0, 0)))
}

// Crossings of a line that lies on a corner: more of them are better, else a ridge at the top.
func TestWhichCrossingsAreBetter(t *testing.T) {
	c := func(kinds ...EdgeKind) (out []crossing) {
		for _, k := range kinds {
			out = append(out, crossing{kind: k})
		}
		return out
	}
	assert.True(t, better(c(Eave, Hip), c(Eave)))
	assert.False(t, better(c(Eave), c(Eave, Hip)))
	assert.True(t, better(c(Eave, Ridge), c(Eave, Hip)))
	assert.False(t, better(c(Eave, Hip), c(Eave, Ridge)))
	assert.False(t, better(c(Eave, Ridge), c(Eave, Ridge)))
	assert.False(t, better(c(Eave, Hip), c(Eave, Hip)))
	assert.False(t, better(nil, nil))
}
