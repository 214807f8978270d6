package loadpath

import (
	"galewright/plan"
	"galewright/plan/wind"
)

// windCase is one direction of wind with its reference corner and the sign
// of the internal pressure.
type windCase struct {
	axis   int     // the wind blows along x (0) or y (1)
	sign   float64 // +1 toward growing coordinates
	corner float64 // +1: the reference corner is at the high end across the wind
	pi     float64 // sign of the internal pressure
	local  bool    // none of these: the worst of components and cladding
}

// cases lists all of them: four directions, both corners, both signs.
func cases() (out []windCase) {
	for _, ax := range []int{0, 1} {
		for _, sign := range []float64{1, -1} {
			for _, corner := range []float64{-1, 1} {
				for _, pi := range []float64{1, -1} {
					out = append(out, windCase{axis: ax, sign: sign, corner: corner, pi: pi})
				}
			}
		}
	}
	return out
}

// sides are the low and the high side of a house across each axis: x, then y.
var sides = [2][2]plan.Side{{plan.West, plan.East}, {plan.South, plan.North}}

// String names the case as a reader on site would say it.
func (c windCase) String() string {
	if c.local {
		return "components and cladding, the worst zone of the roof"
	}
	from := [2][2]plan.Side{{plan.East, plan.West}, {plan.North, plan.South}}[c.axis]
	ends := sides[1-c.axis]
	f, e := from[0], ends[0]
	if c.sign > 0 {
		f = from[1]
	}
	if c.corner > 0 {
		e = ends[1]
	}
	pi := "internal pressure"
	if c.pi < 0 {
		pi = "internal suction"
	}
	return "wind from " + string(f) + ", corner " + string(e) + ", " + pi
}

// roofCase is what a wind case asks of one roof.
type roofCase struct {
	coefs  wind.Coefs
	across bool // wind across the ridge: load case A
	gcpi   float64
	q      float64 // psf, strength
	// the end zone lies along the ridge axis between end0 and end1, in
	end0, end1 float64
	// nearHigh: the high side across the ridge is the windward (or, along the
	// ridge, the reference) side
	nearHigh bool
}

// onRoof returns the case for a roof. A shed is read as a flat roof, whose
// zones 2 and 3 both lift.
func (m *model) onRoof(c windCase, r *plan.Roof) roofCase {
	ax, area := r.RidgeAxis(), roofArea(m.plan, r)
	theta := r.Angle()
	if r.Kind == plan.ShedRoof {
		theta = 0
	}
	rc := roofCase{coefs: wind.CaseB, across: c.axis != ax, gcpi: c.pi * wind.GCpi(m.basis.Enclosure), q: m.q}
	zone := 24 * m.basis.EdgeStrip() // 2a in inches
	low := c.corner < 0
	rc.nearHigh = c.corner > 0
	if rc.across {
		rc.coefs = wind.CaseA(theta)
		rc.nearHigh = c.sign < 0
	} else {
		low = c.sign > 0
	}
	lo, hi := axis(area.lo, ax), axis(area.hi, ax)
	rc.end0, rc.end1 = lo-r.Rake, lo+zone
	if !low {
		rc.end0, rc.end1 = hi-zone, hi+r.Rake
	}
	return rc
}

// roofCoef returns GCpf of a stretch s0..s1 along the ridge in roof zone 2
// or 3, the end zone in proportion.
func (rc roofCase) roofCoef(zone int, s0, s1 float64) float64 {
	in, end := rc.coefs.Interior[zone-1], rc.coefs.End[zone-1]
	if s1 <= s0 {
		return in
	}
	f := overlap(s0, s1, rc.end0, rc.end1) / (s1 - s0)
	return in + f*(end-in)
}

// overlap returns the length that a0..a1 and b0..b1 share.
func overlap(a0, a1, b0, b1 float64) float64 { return max(0, min(a1, b1)-max(a0, b0)) }
