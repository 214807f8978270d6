package loadpath

import (
	"math"
	"strings"

	"galewright/plan"
	"galewright/plan/wind"
)

// windCase is one direction of wind by one procedure, with its windward
// corner and the sign of the internal pressure.
type windCase struct {
	proc   plan.Procedure
	axis   int     // the wind blows along x (0) or y (1)
	sign   float64 // +1 toward growing coordinates
	corner float64 // +1: the windward corner is at the high end across the wind
	pi     float64 // sign of the internal pressure
	none   bool    // no wind: dead load alone
	local  bool    // none of these: the worst of components and cladding
	second bool    // directional: the second of the roof's two values
	calm   bool    // undersides on the corner's side take no pressure
}

// cases lists all of them: by each procedure four directions, both corners,
// both signs, and by the directional one both values of the roof. What presses
// under the eave beside the wind lifts a rafter's plate and relieves what
// holds its top: with internal pressure it is left out once.
func (m *model) cases() (out []windCase) {
	for _, p := range m.choice.Use {
		values := []bool{false}
		if p == plan.Directional {
			values = []bool{false, true}
		}
		for _, ax := range []int{0, 1} {
			for _, sign := range []float64{1, -1} {
				if !m.blows(ax, sign) {
					continue
				}
				for _, corner := range []float64{-1, 1} {
					for _, second := range values {
						c := windCase{proc: p, axis: ax, sign: sign, corner: corner, pi: 1, second: second}
						out = append(out, c, c.beside(), c.sucked())
					}
				}
			}
		}
	}
	return out
}

// blows tells whether wind from the side is looked at.
func (m *model) blows(axis int, sign float64) bool {
	return m.side == "" || string(m.side) == from(axis, sign)
}

// beside is the case without pressure under eaves on the corner's side, sucked
// the one with suction inside.
func (c windCase) beside() windCase { c.calm = true; return c }
func (c windCase) sucked() windCase { c.pi = -1; return c }

// sides are the low and the high side of a house across each axis: x, then y.
var sides = [2][2]plan.Side{{plan.West, plan.East}, {plan.South, plan.North}}

// from names the side that wind along an axis comes from.
func from(axis int, sign float64) string {
	if sign > 0 {
		return string(sides[axis][0])
	}
	return string(sides[axis][1])
}

// String names the case as a reader on site would say it.
func (c windCase) String() string {
	if c.none {
		return "dead load alone"
	}
	if c.local {
		return "components and cladding, the worst zone of the roof"
	}
	end := sides[1-c.axis][0]
	if c.corner > 0 {
		end = sides[1-c.axis][1]
	}
	pi := "internal pressure"
	if c.pi < 0 {
		pi = "internal suction"
	}
	parts := []string{"wind from " + from(c.axis, c.sign), "corner " + string(end), pi, c.by()}
	if c.calm {
		parts = append(parts, "no pressure under eaves "+string(end))
	}
	return strings.Join(parts, ", ")
}

// by names the procedure of a case, with the roof's value.
func (c windCase) by() string {
	switch {
	case c.proc != plan.Directional:
		return string(c.proc)
	case c.second:
		return string(c.proc) + ", second Cp"
	}
	return string(c.proc) + ", first Cp"
}

// windward tells whether the low (-1) or high (+1) side across an axis meets
// the wind: the side it comes from, and of the two beside it that of the
// windward corner. Wind comes at a house from any quarter: by the envelope
// figure each corner in turn is the windward one, by the directional
// procedure a wind between two axes loads the walls of both (case 3).
func (c windCase) windward(axis int, side float64) bool {
	if axis == c.axis {
		return side == -c.sign
	}
	return side == c.corner && !c.calm
}

// roofCase is what a wind case asks of one roof.
type roofCase struct {
	wind    windCase
	ridge   int  // the roof's ridge axis
	shed    bool // a single slope
	across  bool // wind across the ridge
	gcpi    float64
	soffit  float64 // coefficient on the underside of a windward overhang
	q       float64 // psf, strength
	walls   extent  // outside of which a roof is open below
	outline outline // the walls themselves
	zones   envelopeRoof
	slopes  directRoof
	open    *openRoof // nil of a roof with walls below
}

// envelopeRoof is the envelope procedure on one roof.
type envelopeRoof struct {
	coefs wind.Coefs
	// the end zone lies along the ridge axis between end0 and end1, in
	end0, end1 float64
	// nearHigh: the high side across the ridge is the windward (or, along the
	// ridge, the windward corner's) side
	nearHigh bool
	reach    float64 // of zone 2, a coordinate across the ridge
	mid      float64 // of the roof across the ridge
}

// directRoof is the directional procedure on one roof; gust is in the values.
type directRoof struct {
	edge   float64    // windward edge of the walls, coordinate along the wind
	bounds [3]float64 // in from it
	strips [4]float64
	slope  [2]slopeValues // of the pitch, and of the other side's
	pitch  float64        // rise over run of the first
}

// slopeValues are those of a slope; flat has the strips instead.
type slopeValues struct {
	windward, leeward float64
	flat              bool
}

// onRoof returns the case for a roof.
func (m *model) onRoof(c windCase, r *plan.Roof) roofCase {
	rc := roofCase{wind: c, ridge: r.RidgeAxis(), shed: r.Kind == plan.ShedRoof, gcpi: c.pi * wind.GCpi(m.basis.Enclosure), walls: m.walled[r], outline: m.indoors[r.Over]}
	rc.across = c.axis != rc.ridge
	area := m.walled[r]
	if m.open[r] {
		area = roofArea(m.plan, r)
		rc.open = m.openCase(c, r, area)
		if e, ok := wallExtent(m.plan, r.Over); ok {
			rc.walls = e
		}
	}
	if c.proc == plan.Directional {
		rc.q, rc.soffit = m.basis.Direct().QKd, wind.Gust*wind.SoffitCp
		rc.slopes = m.directOn(c, r, area)
		return rc
	}
	rc.q, rc.soffit = m.q, wind.OverhangGCp
	rc.zones = m.envelopeOn(c, r, area)
	return rc
}

// envelopeOn returns the envelope procedure on a roof. A shed is read as a
// flat roof, whose zones 2 and 3 both lift.
func (m *model) envelopeOn(c windCase, r *plan.Roof, area extent) envelopeRoof {
	ax := r.RidgeAxis()
	across := c.axis != ax
	e := envelopeRoof{coefs: wind.CaseB, nearHigh: c.corner > 0}
	zone, low := 24*m.basis.EdgeStrip(), c.corner < 0 // 2a in inches
	if across {
		theta := r.Angle()
		if r.Kind == plan.ShedRoof {
			theta = 0
		}
		e.coefs, e.nearHigh = wind.CaseA(theta), c.sign < 0
	} else {
		low = c.sign > 0
	}
	// The end zone is measured from the walls; an overhang lies in it.
	if lo, hi := axis(area.lo, ax), axis(area.hi, ax); low {
		e.end0, e.end1 = math.Inf(-1), lo+zone
	} else {
		e.end0, e.end1 = hi-zone, math.Inf(1)
	}
	// So is the reach of zone 2: overhangs and porches are counted into it.
	full, reach := roofArea(m.plan, r), 12*m.basis.ZoneTwoReach(!across)
	e.mid, e.reach = (axis(full.lo, 1-ax)+axis(full.hi, 1-ax))/2, axis(area.lo, 1-ax)+reach
	if e.nearHigh {
		e.reach = axis(area.hi, 1-ax) - reach
	}
	return e
}

// directOn returns the directional procedure on a roof.
func (m *model) directOn(c windCase, r *plan.Roof, area extent) (d directRoof) {
	l, _ := m.basis.Along(m.alongRidge(c.axis))
	hL := m.basis.Height / l
	d.edge = axis(area.lo, c.axis)
	if c.sign < 0 {
		d.edge = axis(area.hi, c.axis)
	}
	for i, ft := range m.basis.StripEnds() {
		d.bounds[i] = 12 * ft
	}
	for i, cp := range wind.StripCp(hL) {
		d.strips[i] = wind.Gust * cp
		if c.second {
			d.strips[i] = wind.Gust * wind.SecondStrip
		}
	}
	d.pitch = r.Pitch / 12
	for i, pitch := range []float64{r.Pitch, r.PitchOther} {
		d.slope[i] = slopeOf(pitch, hL, c.second)
	}
	return d
}

func slopeOf(pitch, hL float64, second bool) (v slopeValues) {
	theta := math.Atan(pitch/12) * 180 / math.Pi
	v.flat = theta < wind.Flat
	first, other, leeward := wind.SlopeCp(theta, hL)
	v.windward, v.leeward = wind.Gust*first, wind.Gust*leeward
	if second {
		v.windward = wind.Gust * other
	}
	return v
}

// alongRidge tells whether wind along an axis is along the main ridge, or
// without one along the longer side.
func (m *model) alongRidge(ax int) bool {
	if m.main != nil {
		return ax == m.main.RidgeAxis()
	}
	e, _ := wallExtent(m.plan, nil)
	return (e.span(0) >= e.span(1)) == (ax == 0)
}

// roofCoef returns GCpf of a stretch s0..s1 along the ridge in roof zone 2
// or 3, the end zone in proportion.
func (e envelopeRoof) roofCoef(zone int, s0, s1 float64) float64 {
	in, end := e.coefs.Interior[zone-1], e.coefs.End[zone-1]
	if s1 <= s0 {
		return in
	}
	f := overlap(s0, s1, e.end0, e.end1) / (s1 - s0)
	return in + f*(end-in)
}

// overlap returns the length that a0..a1 and b0..b1 share.
func overlap(a0, a1, b0, b1 float64) float64 { return max(0, min(a1, b1)-max(a0, b0)) }
