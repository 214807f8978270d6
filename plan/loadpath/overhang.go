package loadpath

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/wind"
)

// overhangs notes the uplift at the joints of gable overhangs. It is taken
// there alone: the end rafter's own share of roof reaches to the edge already.
func (u *uplift) overhangs(m *model) {
	for _, j := range m.house.Joints {
		if j.Overhang == nil {
			continue
		}
		f := m.onOverhang(j)
		u.note(j, windCase{local: true}, f, [4]Force{f})
	}
}

// onOverhang returns the uplift at one joint of an outlooker, by statics: the
// fly rafter takes half of the width; the outlooker turns about its inner end,
// so that the gable holds the overhang times (1 + out / 2 back), and half of the
// roof over the part inside. There that roof pulls the inner end up, from which
// nothing is taken off for the lever that pushes it down. A rung has no part
// inside: the end rafter holds all of it.
func (m *model) onOverhang(j *framing.Joint) Force {
	o := j.Overhang
	space, out, back := o.Space/12, o.Out/12, o.Back/12
	eave, inside := m.eavePressure(j.Roof, wind.EffectiveArea(out, space)), 0.0
	if back > 0 {
		inside = m.roofSuction(j.Roof, wind.EffectiveArea(back, space))
	}
	weight := m.dead.roof(j.Roof) * math.Hypot(1, j.Roof.Pitch/12)
	over := Force{W: eave, D: weight}.times(space * out)
	within := Force{W: inside, D: weight}.times(space * back / 2)
	switch {
	case j.Kind == plan.FlyOutlooker:
		return over.times(0.5)
	case j.Kind == plan.OutlookerGable:
		return over.times(1 + out/(2*back)).add(within)
	case back == 0:
		return over
	}
	return within
}

// eavePressure returns the net upward pressure on an overhang of an effective
// area (ft²), psf at strength level: the suction on top with what pushes on the
// wall below, which acts on the soffit too (ASCE 7-16 30.9, from memory).
func (m *model) eavePressure(r *plan.Roof, area float64) float64 {
	walls := wind.WallFigure(m.basis.Edition, m.basis.Theta)
	push := 0.0
	for _, z := range walls.Zones {
		push = math.Max(push, z.Positive.At(area))
	}
	return m.basis.At(m.basis.Height).QKd * (push - m.suction(r, area))
}

// roofSuction returns the net upward pressure on the roof within the walls, psf
// at strength level.
func (m *model) roofSuction(r *plan.Roof, area float64) float64 {
	return m.basis.At(m.basis.Height).QKd * (wind.GCpi(m.basis.Enclosure) - m.suction(r, area))
}

// suction returns the largest suction coefficient of all zones of a roof at an
// effective area, ft²; where there is no figure of components and cladding, that
// of the envelope procedure's end zone.
func (m *model) suction(r *plan.Roof, area float64) (worst float64) {
	f, err := wind.RoofFigure(m.basis.Edition, r.Kind, r.Angle(), m.basis.Height/m.basis.Width)
	if err != nil {
		a := wind.CaseA(r.Angle())
		return slices.Min(append(append(a.End[1:3:3], wind.CaseB.End[1:3]...), 0))
	}
	for _, z := range f.Zones {
		worst = math.Min(worst, z.Negative.At(area))
	}
	return worst
}

// overhangUplift checks each joint of the outlookers of gable overhangs.
func overhangUplift(c *Check, a *analysis) (out []*Link) {
	for _, j := range a.house.Joints {
		if j.Overhang != nil && a.peaks[j] != nil {
			out = append(out, a.upliftLink(c, j))
		}
	}
	return out
}
