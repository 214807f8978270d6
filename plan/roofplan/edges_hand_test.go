package roofplan

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan/geom"
)

// two is a roof of two faces 100 by 50 that meet at y = 50: the south one climbs 1 in 2 from 100 to it, the other is as
// told over it.
func two(slope, at50 float64) (*Roof, *Face, *Face) {
	a := &Face{Plane: Plane{G: pt(0, 0.5), C: 100}, Outline: square(0, 0, 100, 50)}
	b := &Face{Plane: Plane{G: pt(0, slope), C: at50 - 50*slope}, Outline: square(0, 50, 100, 100)}
	return &Roof{Faces: []*Face{a, b}}, a, b
}

// What the edge between two faces is: a ridge where the other falls away, a valley where it climbs, a wall where it stands
// more than 1/10 in higher, and free, as at the top of a shed, where it lies more than that lower.
func TestTheEdgeBetweenTwoFaces(t *testing.T) {
	for _, c := range []struct {
		slope, at50 float64
		want, back  EdgeKind
		ridge       bool
	}{
		{-0.5, 125, Ridge, Ridge, true},
		{-0.5, 125.002, Ridge, Ridge, true},
		{-0.5, 124.998, Ridge, Ridge, true},
		{-0.5, 125.2, Wall, Ridge, false},
		{-0.5, 124.8, Ridge, Wall, false},
		{0.25, 90, Ridge, Wall, false},
		{0.25, 150, Wall, Eave, false},
		{1, 125, Valley, Valley, true},
	} {
		r, a, b := two(c.slope, c.at50)
		assert.Equal(t, c.want, r.kind(a, pt(100, 50), pt(0, 50)), "%+v", c)
		assert.Equal(t, c.back, r.kind(b, pt(0, 50), pt(100, 50)), "%+v", c)
		r.ridge(a, pt(100, 50), pt(0, 50))
		if !c.ridge {
			assert.Empty(t, r.ridged, "%+v", c)
			assert.True(t, r.single(a, pt(100, 50), pt(0, 50)), "%+v", c)
			continue
		}
		require.Len(t, r.ridged, 1, "%+v", c)
		assert.Same(t, a, r.ridged[0][0])
		assert.Same(t, b, r.ridged[0][1])
		assert.False(t, r.single(a, pt(100, 50), pt(0, 50)), "%+v", c)
	}
	r, a, _ := two(-0.5, 125)
	for _, c := range []struct {
		a, b geom.Vec2
		want EdgeKind
	}{{pt(0, 0), pt(100, 0), Eave}, {pt(100, 0), pt(100, 50), Rake}, {pt(0, 50), pt(0, 0), Rake}} {
		assert.Equal(t, c.want, r.kind(a, c.a, c.b), "%v to %v", c.a, c.b)
		r.ridge(a, c.a, c.b)
		assert.Empty(t, r.ridged)
		assert.True(t, r.single(a, c.a, c.b))
	}
}

// Two faces meet at an edge where they are no more than 1/10 in of height and 1/100 in of plan apart: the planes fall
// 1/100 in toward each other from the edge to where the neighbor is looked for.
func TestHowFarApartFacesMeet(t *testing.T) {
	for _, c := range []struct {
		at50 float64
		meet bool
	}{{125.095, true}, {125.105, true}, {125.115, false}, {124.925, true}, {124.915, true}, {124.905, false}} {
		r, a, _ := two(-0.5, c.at50)
		r.ridge(a, pt(100, 50), pt(0, 50))
		assert.Equal(t, c.meet, len(r.ridged) == 1, "%v", c.at50)
		assert.Equal(t, c.meet, !r.single(a, pt(100, 50), pt(0, 50)), "%v", c.at50)
	}
	for gap, meet := range map[float64]bool{0.009: true, 0.0115: false} {
		r, a, b := two(-0.5, 125)
		b.Outline = square(0, 50+gap, 100, 100)
		assert.Equal(t, meet, !r.single(a, pt(100, 50), pt(0, 50)), "%v", gap)
	}
}

// Beyond an edge without a roof: sloping it is a rake, level and low an eave, level and high a ridge.
func TestFreeEdges(t *testing.T) {
	for _, c := range []struct {
		level bool
		climb float64
		want  EdgeKind
	}{{false, -1, Rake}, {false, 1, Rake}, {true, -1, Eave}, {true, 1, Ridge}} {
		assert.Equal(t, c.want, free(c.level, c.climb), "%+v", c)
	}
}

// The line on an edge is the one of its kind through the edge's middle, else none.
func TestTheLineOnAnEdge(t *testing.T) {
	line := func(k EdgeKind, x0, x1, y float64) *Line {
		return &Line{Kind: k, A: geom.Vec3{X: x0, Y: y, Z: 100}, B: geom.Vec3{X: x1, Y: y, Z: 100}}
	}
	low, high, hip := line(Ridge, 0, 100, 0), line(Ridge, 0, 100, 50), line(Hip, 0, 100, 50)
	r := &Roof{Lines: []*Line{low, hip, high}}
	for _, c := range []struct {
		kind EdgeKind
		a, b geom.Vec2
		want *Line
	}{
		{Ridge, pt(20, 0), pt(80, 0), low},
		{Ridge, pt(80, 50), pt(20, 50), high},
		{Hip, pt(0, 50), pt(100, 50), hip},
		{Hip, pt(0, 0), pt(100, 0), nil},
		{Ridge, pt(0, 25), pt(100, 25), nil},
		{Ridge, pt(0, 0), pt(0, 100), high},
		{Ridge, pt(100, 0), pt(140, 0), nil},
		{Ridge, pt(0, 0), pt(198, 0), low},
		{Valley, pt(20, 0), pt(80, 0), nil},
	} {
		assert.True(t, c.want == r.lineOn(c.kind, c.a, c.b), "%+v", c)
	}
	// Corners are each off by up to 1/10000 in: an edge within 1/1000 in of a line lies on it.
	assert.True(t, high == r.lineOn(Ridge, pt(0, 50.00095), pt(100, 50.00095)))
	assert.Nil(t, r.lineOn(Ridge, pt(0, 50.00105), pt(100, 50.00105)))
}

// What may end a rafter of a face: its edges, and a valley carried on across it, from where it would have ended; not
// one carried on elsewhere, nor one that runs above.
func TestWhatEndsARafter(t *testing.T) {
	f := &Face{
		Plane: Plane{G: pt(0, 0.5), C: 100}, Outline: square(0, 0, 100, 80),
		Edges: []EdgeKind{Eave, Rake, Ridge, Rake},
	}
	carried := func(from, to geom.Vec2, z float64) *Line {
		return &Line{Kind: Valley, A: pt(0, 0).Up(100), B: to.Up(z), Carried: &from}
	}
	on := carried(pt(20, 20), pt(80, 80), 140)
	ridge := &Line{Kind: Ridge, A: pt(0, 80).Up(140), B: pt(100, 80).Up(140)}
	r := &Roof{Lines: []*Line{
		ridge, on, carried(pt(20, 20), pt(80, 80), 141), carried(pt(120, 20), pt(160, 60), 130),
		carried(pt(60, 60), pt(260, 260), 230),
		{Kind: Valley, A: pt(0, 0).Up(100), B: pt(60, 60).Up(130)},
	}}
	got := r.boundsOf(f)
	require.Len(t, got, 5)
	for i, c := range []bound{
		{pt(0, 0), pt(100, 0), 0, 100, Eave, nil},
		{pt(100, 0), pt(100, 80), 100, 100, Rake, nil},
		{pt(100, 80), pt(0, 80), 100, 0, Ridge, ridge},
		{pt(0, 80), pt(0, 0), 0, 0, Rake, nil},
		{pt(20, 20), pt(80, 80), 20, 80, Valley, on},
	} {
		assert.Equal(t, c, got[i])
		assert.True(t, c.line == got[i].line, "bound %d", i)
	}
	f.Edges = nil
	assert.Len(t, r.boundsOf(f), 5, "worked out once")
	// A line at 50 crosses the eave, the valley at 50 and the ridge: two rafters.
	runs := r.RunsAt(f, 50)
	require.Len(t, runs, 2)
	for i, c := range []struct {
		low, high float64
		from, to  EdgeKind
		kind      RunKind
	}{{0, 50, Eave, Valley, Common}, {50, 80, Valley, Ridge, ValleyJack}} {
		assert.InDelta(t, 0, runs[i].Low.Sub(pt(50, c.low)).Len(), 1e-9)
		assert.InDelta(t, 0, runs[i].High.Sub(pt(50, c.high)).Len(), 1e-9)
		assert.Equal(t, []EdgeKind{c.from, c.to}, []EdgeKind{runs[i].LowEnd.Kind, runs[i].HighEnd.Kind})
		assert.Equal(t, c.kind, runs[i].Kind)
	}
	assert.True(t, runs[0].HighEnd.Line == on && runs[1].LowEnd.Line == on && runs[1].HighEnd.Line == ridge)
}

// The lines of a roof in order: ridges, hips, valleys, each from west to east by their lower ends. A hip of 240 by 144 with
// a gabled wing 96 wide on its south from 72 to 168: the wing's ridge dies 48 in in.
func TestLinesComeInOrder(t *testing.T) {
	r, faults := New([]*Body{body(t, "a", "hip", "x", pt(0, 0), pt(240, 144), 6, 0), body(t, "w", "gable", "y", pt(72, -100), pt(168, 0), 6, 0)})
	require.Empty(t, faults)
	type row struct {
		kind       EdgeKind
		x0, y0, x1 float64
	}
	var got []row
	for _, l := range r.Lines {
		got = append(got, row{l.Kind, l.A.X, l.A.Y, l.B.X})
	}
	want := []row{
		{Ridge, 72, 72, 168},
		{Ridge, 120, -100, 120},
		{Hip, 0, 0, 72},
		{Hip, 0, 144, 72},
		{Hip, 240, 0, 168},
		{Hip, 240, 144, 168},
		{Valley, 72, 0, 144},
		{Valley, 168, 0, 120},
	}
	require.Len(t, got, len(want))
	for i, w := range want {
		assert.Equal(t, w.kind, got[i].kind, "%d", i)
		assert.InDeltaSlice(t, []float64{w.x0, w.y0, w.x1}, []float64{got[i].x0, got[i].y0, got[i].x1}, 1e-6, "%d: %+v", i, got[i])
	}
}
