package framing

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// RimReach is how far past a joist's end a wall may stand that the rim brings to it, in.
const RimReach = 6

// joistPlates ties the joists of upper floors down to the plates that they lie on, where a
// wall stands on joists off the walls below: past the last plate or between two. The rims
// that run with such joists are tied down where those are.
func (b *builder) joistPlates() {
	feet := b.feetOnJoists()
	for _, l := range b.plan.Levels {
		if len(feet[l]) == 0 {
			continue
		}
		var rims []*Member
		var found []*Joint
		for _, m := range b.house.Members {
			along := m.Level == l && m.B.Sub(m.A).Flat().Unit().Leans(joistAxis(l))
			switch {
			case m.Role == plan.Joist && m.Level == l && m.Roof == nil && along && standsOn(m, feet[l], l.JoistSpace):
				found = append(found, b.platesUnder(m, nil)...)
			case m.Role == plan.Rim && along && standsOn(m, feet[l], l.JoistSpace):
				rims = append(rims, m)
			}
		}
		for _, m := range rims {
			b.platesUnder(m, found)
		}
	}
}

// joistAxis is the axis that a level's joists run along.
func joistAxis(l *plan.Level) int {
	if l.JoistRun == plan.AxisY {
		return 1
	}
	return 0
}

// feetOnJoists lists by level where the studs of its outer and bearing walls stand off the
// walls below.
func (b *builder) feetOnJoists() map[*plan.Level][]geom.Vec2 {
	out := map[*plan.Level][]geom.Vec2{}
	for _, j := range b.house.Joints {
		if w := j.Wall; j.Kind == plan.StudBase && w != nil && w.Level.Index > 0 && (w.Exterior || w.Bearing) {
			out[w.Level] = append(out[w.Level], j.At.Flat())
		}
	}
	return out
}

// standsOn tells whether one of the feet comes to a joist: it stands over its length, no
// farther across than the joists are apart.
func standsOn(m *Member, feet []geom.Vec2, space float64) bool {
	f := geom.NewFrame(m.A.Flat(), m.B.Flat())
	long := m.B.Sub(m.A).Len()
	return slices.ContainsFunc(feet, func(p geom.Vec2) bool {
		s, t := f.Local(p)
		return s > -RimReach && s < long+RimReach && math.Abs(t) < space+sixteenth
	})
}

// platesUnder adds the joints of a joist and the plates that it crosses; of a rim those at the
// places of the joints of joists beside it, for it lies along its plate.
func (b *builder) platesUnder(m *Member, beside []*Joint) (out []*Joint) {
	f, long := geom.NewFrame(m.A.Flat(), m.B.Flat()), m.B.Sub(m.A).Len()
	if beside == nil {
		for _, s := range b.bearings(m) {
			out = append(out, b.overPlate(m, f, s)...)
		}
		return out
	}
	var at []float64
	for _, j := range nearestJoists(f, beside) {
		s, _ := f.Local(j.At.Flat())
		if s > 0 && s < long && !slices.ContainsFunc(at, func(o float64) bool { return math.Abs(o-s) < plate }) {
			at = append(at, s)
			out = append(out, b.overPlate(m, f, span{s - plate/2, s + plate/2})...)
		}
	}
	return out
}

// nearestJoists are the joints of those joists that lie nearest to a rim's line.
func nearestJoists(f geom.Frame, list []*Joint) (out []*Joint) {
	least := math.Inf(1)
	away := func(j *Joint) float64 {
		_, t := f.Local(j.First().Middle())
		return math.Abs(t)
	}
	for _, j := range list {
		least = min(least, away(j))
	}
	for _, j := range list {
		if away(j) < least+sixteenth {
			out = append(out, j)
		}
	}
	return out
}

// overPlate adds the joint of a joist over the stretch s of it and the wall whose plates
// most of it lies on there; none where that is no wall's.
func (b *builder) overPlate(m *Member, f geom.Frame, s span) []*Joint {
	half := m.Section.Width() / 2
	foot := f.Box(s.lo, s.hi, -half, half, m.Z0-1, m.Z0)
	lo, hi := foot.Bounds()
	var parts []geom.Solid
	on := map[*plan.Wall]float64{}
	for _, o := range b.index.Within(lo, hi) {
		if o.Role == plan.UpperPlate && o.Wall != nil && math.Abs(o.Z1-m.Z0) < sixteenth {
			part := common(foot, o)
			if v := part.Volume(); v > geom.Eps {
				parts, on[o.Wall] = append(parts, part), on[o.Wall]+v
			}
		}
	}
	var best *plan.Wall
	for _, w := range b.plan.Walls {
		if v := on[w]; v > half*leastBearing && (best == nil || v > on[best]+geom.Eps) {
			best = w
		}
	}
	if best == nil {
		return nil
	}
	w, at := b.byWall[best], middleOf(parts)
	station, _ := w.frame.Local(at)
	upper := w.capAt(station)
	if upper == nil {
		return nil
	}
	j := b.newJoint(w, plan.JoistPlate, station, m.Z0, m, upper)
	j.At, j.Tributary = at.Up(m.Z0), m.Level.JoistSpace
	return []*Joint{j}
}

// middleOf is the plan point in the middle of the extent of some solids.
func middleOf(parts []geom.Solid) geom.Vec2 {
	lo, hi := parts[0].Bounds()
	for _, p := range parts {
		a, z := p.Bounds()
		lo = geom.Vec3{X: min(lo.X, a.X), Y: min(lo.Y, a.Y)}
		hi = geom.Vec3{X: max(hi.X, z.X), Y: max(hi.Y, z.Y)}
	}
	return lo.Add(hi).Mul(0.5).Flat()
}
