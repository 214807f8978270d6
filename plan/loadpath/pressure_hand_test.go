package loadpath

import (
	"math"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/wind"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// upNorth is a strip of a roof with its ridge along x that climbs north from y = low, 100 long
// at 6 in 12, over the stretch of its eave from x = 0 to 16.
func upNorth(low float64) *strip {
	return &strip{
		Share: &framing.Share{Low: geom.Vec2{X: 8, Y: low}, Up: geom.Vec2{Y: 1}, Run: 100, Tan: 0.5, From: 0, To: 16, Width: 16},
		roof:  &plan.Roof{Ridge: plan.AxisX}, along1: 16,
	}
}

// upEast is a strip of the same roof's hip end, that climbs east from x = low.
func upEast(low float64) *strip {
	s := upNorth(0)
	s.Low, s.Up = geom.Vec2{X: low, Y: 8}, geom.Vec2{X: 1}
	return s
}

// Values of 1, 2 and 4 that change at 10 and 30 in from an edge: the mean over a stretch by
// lengths; before the edge the first, beyond the last bound the last holds on; of a place the
// value there; along wind from the other side the distances run the other way.
func TestMeanOverStrips(t *testing.T) {
	bounds, values := []float64{10, 30}, []float64{1, 2, 4}
	for _, c := range []struct {
		edge, sign, x0, x1 float64
		want               float64
	}{
		{0, 1, 0, 10, 1},
		{0, 1, -20, 0, 1},
		{0, 1, 10, 30, 2},
		{0, 1, 30, 99, 4},
		{0, 1, 5, 15, 1.5},
		{0, 1, 0, 40, (10*1 + 20*2 + 10*4) / 40.0},
		{0, 1, 20, 40, 3},
		{0, 1, 40, 0, 2.25}, // either way round
		{0, 1, 20, 20, 2},
		{0, 1, 35, 35, 4},
		{100, 1, 105, 115, 1.5},
		{100, -1, 95, 85, 1.5},
		{100, -1, 60, 100, 2.25},
		{100, -1, 120, 110, 1},
	} {
		assert.InDelta(t, c.want, stripMean(c.edge, c.sign, bounds, values, c.x0, c.x1), 1e-6, "%+v", c)
	}
}

// A coordinate along the way a strip climbs is a place on it, held to its ends; along the
// other way it is none, 0.
func TestPlaceOnAStripOfACoordinate(t *testing.T) {
	n := upNorth(20)
	for y, want := range map[float64]float64{20: 0, 50: 30, 120: 100, 150: 100, 0: 0} {
		assert.InDelta(t, want, n.uOf(y, 1), 1e-9, "%v", y)
	}
	assert.Zero(t, n.uOf(70, 0))
	south := upNorth(120)
	south.Up.Y = -1
	assert.InDelta(t, 30.0, south.uOf(90, 1), 1e-9)
}

// Outside of walls from (0, 0) to (200, 100) the underside of a roof takes the pressure of a
// windward wall, 0.7, on the side that the wind comes from and on that of its corner, but that
// one not in a case without pressure under eaves there; on the others nothing. Inside a house
// with walls nothing presses up there either, in an open roof the pressure does.
func TestWhatPressesUnderARoof(t *testing.T) {
	rc := roofCase{soffit: 0.7, walls: extent{geom.Vec2{}, geom.Vec2{X: 200, Y: 100}}, wind: windCase{axis: 1, sign: 1, corner: -1}}
	v := func(x, y float64) geom.Vec2 { return geom.Vec2{X: x, Y: y} }
	for _, c := range []struct {
		p    geom.Vec2
		wind windCase
		want float64
	}{
		{v(100, -1), windCase{axis: 1, sign: 1, corner: -1}, 0.7}, // from the south, corner west
		{v(100, 101), windCase{axis: 1, sign: 1, corner: -1}, 0},
		{v(-1, 50), windCase{axis: 1, sign: 1, corner: -1}, 0.7},
		{v(201, 50), windCase{axis: 1, sign: 1, corner: -1}, 0},
		{v(-1, 101), windCase{axis: 1, sign: 1, corner: -1}, 0.7},
		{v(201, 101), windCase{axis: 1, sign: 1, corner: -1}, 0},
		{v(-1, 50), windCase{axis: 1, sign: 1, corner: -1, calm: true}, 0},
		{v(100, -1), windCase{axis: 1, sign: 1, corner: -1, calm: true}, 0.7},
		{v(100, 101), windCase{axis: 1, sign: -1, corner: 1}, 0.7}, // from the north, corner east
		{v(201, 50), windCase{axis: 1, sign: -1, corner: 1}, 0.7},
		{v(-1, 50), windCase{axis: 1, sign: -1, corner: 1}, 0},
		{v(-1, 50), windCase{axis: 0, sign: 1, corner: 1}, 0.7}, // from the west, corner north
		{v(100, 101), windCase{axis: 0, sign: 1, corner: 1}, 0.7},
		{v(100, -1), windCase{axis: 0, sign: 1, corner: 1}, 0},
		{v(100, 50), windCase{axis: 0, sign: 1, corner: 1}, 0},
	} {
		rc.wind = c.wind
		assert.Equal(t, c.want, rc.under(c.p), "%+v", c)
		rc.open = &openRoof{}
		want := c.want
		if c.p == v(100, 50) {
			want = 0.7
		}
		assert.Equal(t, want, rc.under(c.p), "open: %+v", c)
		rc.open = nil
	}
}

// Past a gable's wall the place is an inch outside of it, beside where the strip is.
func TestPlaceBesideAGable(t *testing.T) {
	rc := roofCase{walls: extent{geom.Vec2{X: 10, Y: 20}, geom.Vec2{X: 200, Y: 100}}}
	s := upNorth(20)
	assert.Equal(t, geom.Vec2{X: 9, Y: 50}, s.beyond(30, -1, rc))
	assert.Equal(t, geom.Vec2{X: 201, Y: 50}, s.beyond(30, 1, rc))
	rc.ridge = 1
	e := upEast(10)
	assert.Equal(t, geom.Vec2{X: 40, Y: 19}, e.beyond(30, -1, rc))
	assert.Equal(t, geom.Vec2{X: 40, Y: 101}, e.beyond(30, 1, rc))
}

// The pressure along a strip may change at its ends, the walls it passes, and by the envelope
// procedure at the middle of the roof and where zone 2 ends, unless it climbs along the ridge;
// by the directional one, along the wind, at h/2, h and 2h from the windward edge.
func TestWhereThePressureChangesAlongAStrip(t *testing.T) {
	s := upNorth(0)
	s.inside, s.passes = [2]float64{12, 90}, []float64{40}
	env := roofCase{wind: windCase{proc: plan.Envelope, axis: 1, sign: 1}, zones: envelopeRoof{mid: 70, reach: 55}}
	assert.Equal(t, []float64{0, 12, 40, 55, 70, 90, 100}, s.cuts(env))
	e := upEast(0)
	e.inside, e.passes = s.inside, nil
	assert.Equal(t, []float64{0, 12, 90, 100}, e.cuts(env))
	dir := roofCase{wind: windCase{proc: plan.Directional, axis: 1, sign: 1}, slopes: directRoof{edge: 10, bounds: [3]float64{20, 40, 80}}}
	assert.Equal(t, []float64{0, 12, 30, 40, 50, 90, 90, 100}, s.cuts(dir))
	dir.wind.sign, dir.slopes.edge = -1, 110 // from the other side, in from 110
	assert.Equal(t, []float64{0, 12, 30, 40, 70, 90, 90, 100}, s.cuts(dir))
	assert.Equal(t, []float64{0, 12, 90, 100}, e.cuts(dir), "across the wind nothing changes")
	dir.open = &openRoof{mid: 60, edge: 110, bounds: []float64{45}}
	assert.Equal(t, []float64{0, 12, 30, 40, 60, 65, 70, 90, 90, 100}, s.cuts(dir))
}

// Zone 2 is on the windward side of the middle, no farther than its reach; a strip that climbs
// along the ridge is told by the middle alone. What stands in the middle is of zone 2.
func TestEnvelopeZonesOnAStrip(t *testing.T) {
	for _, c := range []struct {
		high     bool
		mid, end float64 // middle, reach
		along    bool
		u        float64
		want     int
	}{
		{false, 70, 55, false, 54, 2},
		{false, 70, 55, false, 56, 3},
		{false, 70, 90, false, 69, 2},
		{false, 70, 90, false, 70, 2},
		{false, 70, 90, false, 71, 3},
		{true, 30, 55, false, 56, 2},
		{true, 30, 55, false, 54, 3},
		{true, 30, 10, false, 31, 2},
		{true, 30, 10, false, 30, 2},
		{true, 30, 10, false, 29, 3},
		{false, 8, 0, true, 50, 2},
		{false, 7.9, 99, true, 50, 3},
		{true, 8, 99, true, 50, 2},
		{true, 8.1, 0, true, 50, 3},
	} {
		s := upNorth(0)
		if c.along {
			s = upEast(0) // its y is 8
		}
		rc := roofCase{zones: envelopeRoof{nearHigh: c.high, mid: c.mid, reach: c.end}}
		assert.Equal(t, c.want, s.zone(c.u, rc), "%+v", c)
	}
}

// Of the envelope figure a stretch takes the end zone in the proportion that lies in it.
func TestEnvelopeCoefficientOverAStretch(t *testing.T) {
	e := envelopeRoof{coefs: wind.CaseB, end0: math.Inf(-1), end1: 40}
	for zone, c := range map[int][2]float64{2: {-0.69, -1.07}, 3: {-0.37, -0.53}} { // ASCE 7-16 Fig. 28.3-1, case B, from memory
		for _, s := range []struct{ s0, s1, end float64 }{{0, 16, 1}, {32, 48, 0.5}, {36, 52, 0.25}, {48, 64, 0}, {20, 20, 0}} {
			assert.InDelta(t, c[0]+s.end*(c[1]-c[0]), e.roofCoef(zone, s.s0, s.s1), 1e-9, "zone %d, %+v", zone, s)
		}
	}
}

// The directional procedure on a roof of 6 in 12 with its ridge along x: wind from the south
// meets a strip that climbs north, -0.3, and sucks at one that climbs south, -0.5. Along the
// ridge the strips by distance count over its width, 0.9 to 10 in and 0.5 from there; a hip's
// end slope has the lower of both by the first value, the higher by the second. A flat one, and
// that of the roof's other pitch, by its own.
func TestDirectionalCoefficients(t *testing.T) {
	d := directRoof{pitch: 0.5, bounds: [3]float64{10, 1000, 2000}, strips: [4]float64{-0.9, -0.5, -0.5, -0.5}, slope: [2]slopeValues{{windward: -0.3, leeward: -0.6}}}
	north, south, east, west := upNorth(0), upNorth(200), upEast(0), upEast(200)
	south.Up.Y, west.Up.X = -1, -1
	other := func(pitch float64, v slopeValues) directRoof {
		o := d
		o.pitch, o.slope[1] = pitch, v
		return o
	}
	flat := d
	flat.slope[0].flat = true
	for i, c := range []struct {
		s      *strip
		axis   int
		sign   float64
		second bool
		d      directRoof
		coef   float64
		name   string
	}{
		{north, 1, 1, false, d, -0.3, "windward slope"},
		{south, 1, 1, false, d, -0.6, "leeward slope"},
		{north, 1, -1, false, d, -0.6, "leeward slope"},
		{south, 1, -1, false, d, -0.3, "windward slope"},
		// Across the wind, over x from 0 to 16: 10 of 0.9 and 6 of 0.5.
		{north, 0, 1, false, d, -0.75, "by distance from the windward edge"},
		// A hip's end over u from 0 to 20: 10 of 0.9 and 10 of 0.5.
		{east, 0, 1, false, d, -0.7, "hip end, windward slope"},
		{east, 0, 1, true, d, -0.3, "hip end, windward slope"},
		{west, 0, 1, false, d, -0.6, "hip end, leeward slope"},
		{west, 0, 1, true, d, -0.5, "hip end, leeward slope"},
		{north, 1, 1, false, flat, -0.7, "by distance from the windward edge"},
		{north, 1, 1, false, other(0.25, slopeValues{windward: 0.1}), 0.1, "windward slope"},
		{north, 1, 1, false, other(0.5, slopeValues{windward: 0.1}), -0.3, "windward slope"},
		{north, 1, 1, false, other(0.25, slopeValues{}), -0.3, "windward slope"},
	} {
		rc := roofCase{wind: windCase{proc: plan.Directional, axis: c.axis, sign: c.sign, second: c.second}, slopes: c.d}
		rc.across = c.axis != rc.ridge
		coef, name := rc.top(c.s, 0, 20)
		assert.InDelta(t, c.coef, coef, 1e-6, "%d", i)
		assert.Equal(t, c.name, name, "%d", i)
	}
	rc := roofCase{wind: windCase{proc: plan.Envelope}, zones: envelopeRoof{coefs: wind.CaseB, mid: 50, reach: 50, end1: math.Inf(-1)}}
	coef, name := rc.top(north, 20, 40)
	assert.InDelta(t, -0.69, coef, 1e-9)
	assert.Equal(t, "zone 2", name)
	coef, name = rc.top(north, 60, 80)
	assert.InDelta(t, -0.37, coef, 1e-9)
	assert.Equal(t, "zone 3", name)
}

// A strip 16 wide, 3 of it past the gable's wall at its low end and 5 at its high end: 1.0 lifts
// the top of all of it. Over the house 0.18 presses up inside, under 8 of it, and 0.7 under the 3
// on the side of the wind's corner, nothing under the 5 on the other; before the eave's wall,
// that meets the wind, 0.7 presses under all of it. Weights: the roof's on the slope, 6 in 12,
// over all its width, the ceiling's between the walls where it hangs on the rafters.
func TestLiftAndWeightOfAPatch(t *testing.T) {
	s := upNorth(-10)
	s.out0, s.out1, s.inside = 3, 5, [2]float64{10, 100}
	s.passes = nil
	v := func(x, y float64) geom.Vec2 { return geom.Vec2{X: x, Y: y} }
	e := envelopeRoof{end0: math.Inf(-1), end1: math.Inf(1), mid: 500, reach: 500}
	e.coefs.End[1] = -1.0
	rc := roofCase{
		wind: windCase{proc: plan.Envelope, axis: 1, sign: 1, corner: -1}, gcpi: 0.18, soffit: 0.7, q: 30, zones: e,
		walls: extent{v(3, 0), v(11, 100)}, outline: outline{{v(3, 0), v(11, 0)}, {v(11, 0), v(11, 100)}, {v(11, 100), v(3, 100)}, {v(3, 100), v(3, 0)}},
	}
	m := &model{givens: givens{fittings: &fittings{dead: &deadLoads{fixed: map[plan.DeadPart]float64{plan.DeadRoof: 10, plan.DeadCeiling: 4}}}}}
	for _, ties := range []bool{false, true} { // with ceiling joists nothing hangs on the rafters
		s.roof.CeilingTies = ties
		var got []patch
		m.roofLoads(s, rc, func(p patch) { got = append(got, p) })
		require.Len(t, got, 2)
		for i, c := range []struct {
			u0, u1, lift float64
			in           bool
			ends         [2]float64
		}{{0, 10, 16*0.7 + 16, false, [2]float64{0.7, 0.7}}, {10, 100, 8*0.18 + 3*0.7 + 16, true, [2]float64{0.7, 0}}} {
			p := got[i]
			assert.Equal(t, []float64{c.u0, c.u1}, []float64{p.u0, p.u1})
			assert.Equal(t, c.in, p.in)
			assert.Equal(t, c.ends, p.ends)
			assert.Equal(t, "zone 2", p.zone)
			assert.InDelta(t, -1.0, p.top, 1e-9)
			area := (c.u1 - c.u0) / 144 // ft² for an inch of width
			assert.InDelta(t, c.lift*30*area, p.force.W, 1e-9)
			want := 10 * math.Sqrt(1.25) * 16 * area
			if c.in && !ties {
				want += 4 * 8 * area
			}
			assert.InDelta(t, want, p.force.D, 1e-9)
			assert.Empty(t, p.free)
		}
	}
	s.Width = 0
	m.roofLoads(s, rc, func(patch) { t.Error("what gathers only has no load of its own") })
}

// An open roof 100 long under wind from the south has 1.2 on its windward half and 0.3 on the
// other by case A, 0.8 on both by case B; along its eaves 0.8 to 60 in and 0.4 from there. Of
// each stretch the case that lifts most counts; of top, 0.5, and soffit, 0.7, together 1.2, only
// what is more.
func TestNetUpliftOfAnOpenRoof(t *testing.T) {
	o := &openRoof{edge: 0, mid: 50, across: true, bounds: []float64{60}, halves: []openCase{{"A", []float64{1.2, 0.3}}, {"B", []float64{0.8, 0.8}}}, strips: []openCase{{"C", []float64{0.8, 0.4}}}}
	s := upNorth(0)
	for _, c := range []struct {
		axis   int
		across bool
		u0, u1 float64
		want   float64
		name   string
	}{
		{1, true, 0, 50, 1.2, "A"},
		{1, true, 50, 100, 0.8, "B"},
		{1, true, 40, 60, 0.8, "B"},
		{1, true, 25, 55, (25*1.2 + 5*0.3) / 30, "A"},
		{1, false, 0, 100, (60*0.8 + 40*0.4) / 100, "C"},
		{0, false, 0, 100, 0.8, "C"}, // across the strip: over its x from 0 to 16
	} {
		o.across = c.across
		up, name := roofCase{wind: windCase{axis: c.axis, sign: 1}, open: o}.free(s, c.u0, c.u1)
		assert.InDelta(t, c.want, up, 1e-9, "%+v", c)
		assert.Equal(t, c.name, name)
	}
	e := envelopeRoof{end0: math.Inf(-1), end1: math.Inf(1), mid: 500, reach: 500}
	e.coefs.End[1] = -0.5
	rc := roofCase{wind: windCase{proc: plan.Envelope, axis: 1, sign: 1, corner: -1}, soffit: 0.7, zones: e, open: o, walls: extent{geom.Vec2{X: -100, Y: -100}, geom.Vec2{X: 200, Y: 200}}}
	o.across = true
	for lifts, free := range map[float64]bool{1.1: false, 1.3: true} {
		o.halves[0].up[0] = lifts
		p := patch{u0: 0, u1: 10}
		got := s.lift(&p, rc)
		if free {
			assert.InDelta(t, 16*1.3, got, 1e-9)
			assert.Equal(t, "A", p.free)
		} else {
			assert.InDelta(t, 16*1.2, got, 1e-9)
			assert.Empty(t, p.free)
		}
	}
}
