package loadpath

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/wind"
)

// porchWorkings tells which rafters bring a porch post its load.
func (s *caseState) porchWorkings(j *framing.Joint) (out []string) {
	for _, x := range s.m.house.Joints {
		f, ok := s.rafters[x]
		if !ok {
			continue
		}
		if k := s.m.shareOfPost(x, j); k > 0.0005 {
			out = append(out, s.m.u.Sprintf("from %s at %s: wind %.0f{lb}, dead %.0f lb, times %.3f by lever arm along the beam", x.ID, s.m.u.Length(x.Station), f.W, whole(f.D), k))
		}
	}
	return out
}

// shareOfPost returns the part of a rafter's reaction that goes to the post of
// a joint, as onPorch hands it out.
func (m *model) shareOfPost(rafter, post *framing.Joint) float64 {
	of := func(x *porchPost) bool {
		return x != nil && (x.cap == post || x.base == post || slices.ContainsFunc(m.porches, func(o *porchPost) bool {
			return o.base == post && slices.Contains(o.brings, x)
		}))
	}
	l, r := m.postsBeside(rafter)
	switch {
	case l == nil || r == nil || l == r:
		if of(l) || of(r) {
			return 1
		}
		return 0
	}
	k := (rafter.Station - l.station) / (r.station - l.station)
	switch {
	case of(l):
		return 1 - k
	case of(r):
		return k
	}
	return 0
}

// overhangWorkings tells the pressures and areas at a joint of an outlooker.
func (m *model) overhangWorkings(j *framing.Joint) []string {
	o := j.Overhang
	space, reach, back := o.Space/12, o.Out/12, o.Back/12
	q := m.basis.At(m.basis.Height).QKd
	area := wind.EffectiveArea(reach, space)
	eave, worst := m.eavePressure(j.Roof, area), m.suction(j.Roof, area)
	out := []string{
		m.u.Sprintf("overhang: qh Kd %.2f psf x (GCp from below %+.3f - GCp on top %+.3f at %.1f ft²) = %.1f psf up; it reaches %.2f ft past the end rafter, %.2f ft to each outlooker", q, eave/q+worst, worst, area, eave, reach, space),
		m.u.Sprintf("weight of the roof on plan %.2f psf", m.dead.roof(j.Roof)*math.Hypot(1, j.Roof.Pitch/12)),
	}
	if back > 0 {
		in := wind.EffectiveArea(back, space)
		out = append(out, m.u.Sprintf("inside: qh Kd %.2f psf x (GCpi %.2f - GCp on top %+.3f at %.1f ft²) = %.1f psf up; the outlooker goes %.2f ft back", q, wind.GCpi(m.basis.Enclosure), m.suction(j.Roof, in), in, m.roofSuction(j.Roof, in), back))
	}
	return append(out, overhangRule(j, reach, back))
}

// overhangRule says what part of overhang and roof a joint takes, as onOverhang
// has it.
func overhangRule(j *framing.Joint, reach, back float64) string {
	switch {
	case j.Kind == plan.FlyOutlooker:
		return "the fly rafter takes half of the overhang's width"
	case j.Kind == plan.OutlookerGable:
		return fmt.Sprintf("the gable takes the overhang times 1 + out / 2 back = %.3f, and half of the roof inside", 1+reach/(2*back))
	case back == 0:
		return "the end rafter holds all of the overhang"
	}
	return "the rafter at the inner end takes half of the roof inside, and nothing is taken off for the lever"
}
