package loadpath

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
)

// pole is a post under a ridge, on a footing of its own.
type pole struct {
	n         int
	at        float64 // along the ridge
	cap, base *framing.Joint
}

// poles finds the posts under ridges.
func (b *builder) poles() {
	for _, j := range b.house.Joints {
		if j.Kind != plan.PostCap || j.Roof == nil {
			continue
		}
		x := &pole{n: b.poleCount, at: axis(j.At.Flat(), j.Roof.RidgeAxis()), cap: j, base: b.footOfPole(j)}
		b.poleCount++
		for _, r := range b.ridges {
			if r.roof == j.Roof && math.Abs(axis(j.At.Flat(), 1-j.Roof.RidgeAxis())-r.cross) < 1 {
				r.poles = append(r.poles, x)
			}
		}
	}
	for _, r := range b.ridges {
		slices.SortStableFunc(r.poles, func(x, y *pole) int { return cmpFloat(x.at, y.at) })
	}
}

// footOfPole is the joint at the foot of the post of a cap.
func (b *builder) footOfPole(top *framing.Joint) *framing.Joint {
	for _, j := range b.byFirst[top.Members[1]] {
		if j.Kind == plan.PostBase {
			return j
		}
	}
	return nil
}

// holder is what holds a ridge at one place: a pair of rafters that stands on plates with
// both feet, a post, or under a ridge beam a wall.
type holder struct {
	at   float64 // along the ridge
	pair *pair
	pole *pole
	wall *ridgeEnd
}

// holders lists what holds a ridge, by place along it: pairs hold a board, walls a beam,
// posts both.
func (r *ridge) holders() (out []holder) {
	for _, p := range r.pairs {
		if !r.bearing && p.onPlates() {
			out = append(out, holder{at: p.along, pair: p})
		}
	}
	for i := range r.ends {
		if r.bearing {
			out = append(out, holder{at: r.ends[i].at, wall: &r.ends[i]})
		}
	}
	for _, p := range r.poles {
		out = append(out, holder{at: p.at, pole: p})
	}
	slices.SortStableFunc(out, func(x, y holder) int { return cmpFloat(x.at, y.at) })
	return out
}

// part is what of a force one holder takes.
type part struct {
	holder
	k float64
}

// held shares a force at a place along a ridge to what holds it: to the nearer of two
// pairs, which stand close, and else by lever to the holders on both sides. Past the last
// it takes a lever back to one before it: to the next post or wall, or of pairs to the
// one that stands about as far back as the force is out, since the board is stiff beside
// them (a matter of judgment, no published source).
func (r *ridge) held(at float64) []part {
	list := r.holders()
	i, _ := slices.BinarySearchFunc(list, at, func(h holder, v float64) int { return cmpFloat(h.at, v) })
	switch {
	case len(list) == 0:
		return nil
	case len(list) == 1:
		return []part{{list[0], 1}}
	case i == 0:
		return past(list[0], list[1:], at)
	case i == len(list):
		before := slices.Clone(list[:i-1])
		slices.Reverse(before)
		return past(list[i-1], before, at)
	}
	return between(list[i-1], list[i], at)
}

// between shares a force to the holders on both sides of it.
func between(l, h holder, at float64) []part {
	k := 0.5
	if h.at-l.at > 1e-9 {
		k = (at - l.at) / (h.at - l.at)
	}
	if l.pair != nil && h.pair != nil { // a tie goes to the lower
		if k <= 0.5 {
			return []part{{l, 1}}
		}
		return []part{{h, 1}}
	}
	return []part{{l, 1 - k}, {h, k}}
}

// past shares a force beyond the last holder to it and one of those before it, the nearest
// to it first.
func past(last holder, before []holder, at float64) []part {
	out := math.Abs(at - last.at)
	back := before[0]
	if last.pair != nil {
		for _, h := range before {
			if math.Abs(math.Abs(h.at-last.at)-out) < math.Abs(math.Abs(back.at-last.at)-out)-1e-9 {
				back = h
			}
		}
	}
	long := math.Abs(back.at - last.at)
	if long < 1 {
		return []part{{last, 1}}
	}
	return []part{{last, 1 + out/long}, {back, -out / long}}
}

// poleWorkings tells what comes to a post under a ridge.
func (s *caseState) poleWorkings(j *framing.Joint) (out []string) {
	for _, r := range s.m.ridges {
		for _, p := range r.poles {
			if p.cap != j && p.base != j {
				continue
			}
			for _, e := range s.m.onRidge(r) {
				for _, x := range r.held(axis(e.at, r.roof.RidgeAxis())) {
					if f := s.rafters[e.joint]; x.pole == p && math.Abs(x.k) > 0.0005 {
						out = append(out, s.m.u.Sprintf("from %s: wind %.0f{lb}, dead %.0f lb, times %.3f by lever arm along the ridge", e.joint.ID, f.W, whole(f.D), x.k))
					}
				}
			}
		}
	}
	return out
}

// onRidge lists the joints at which hips, valleys and single rafters rest on a ridge, each
// once, in the order of the rafters.
func (m *model) onRidge(r *ridge) (out []support) {
	for _, s := range m.rafters {
		for _, e := range s.ends {
			if e.ridge == r && e.joint != nil && !slices.ContainsFunc(out, func(o support) bool { return o.joint == e.joint }) {
				out = append(out, e)
			}
		}
	}
	return out
}

// hold gives a holder its part of a force.
func (s *caseState) hold(h part, f Force) {
	f = f.times(h.k)
	switch {
	case h.pair != nil:
		s.lift(h.pair, f)
	case h.pole != nil:
		s.poles[h.pole.n].take(f)
	default:
		s.roofLoad(h.wall.wall, h.wall.station, f)
	}
}
