package loadpath

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/capacity"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
)

// hungOn is the part of a hip's or valley's pull that its hanger hands to a rafter
// beside it.
type hungOn struct {
	joint *framing.Joint // of the hip or valley
	k     float64        // share of the hanger's nails in the rafter
}

// hangings are who hands what to whom where hips and valleys are hung on rafters.
type hangings struct {
	on map[*framing.Member][]hungOn // by the rafter that holds
	// by are the hips whose hangers hold the end of a rafter in line with the ridge, by
	// its joint: nothing else does, so it holds nothing of theirs.
	by map[*framing.Joint][]*framing.Joint
	// less are the rafters that hold nothing of a hip, by its joint.
	less map[*framing.Joint]*framing.Member
}

// hungOnRafters finds which rafters hold the upper ends of hips and valleys: those
// that the flanges of their hangers are nailed to, each by its share of the nails that
// are not in the hip itself. One that nothing of its own holds down at the ridge is held
// by these nails itself, and the others carry both.
func (a *analysis) hungOnRafters() hangings {
	out := hangings{map[*framing.Member][]hungOn{}, map[*framing.Joint][]*framing.Joint{}, map[*framing.Joint]*framing.Member{}}
	loose := a.inLine()
	for _, j := range a.house.Joints {
		if j.Kind != plan.RafterRidge || j.First() == nil || j.First().Role != plan.HipRafter && j.First().Role != plan.ValleyRafter {
			continue
		}
		order, in := a.nailedAt(j)
		total, held := 0, []*framing.Joint{}
		for _, m := range order {
			if king := loose[m]; king != nil && len(order) > 1 {
				held = append(held, king)
				out.by[king], out.less[j] = append(out.by[king], j), m
				continue
			}
			total += in[m]
		}
		for _, m := range order {
			if m.Role != plan.Rafter || loose[m] != nil && len(order) > 1 {
				continue
			}
			k := float64(in[m]) / float64(total)
			out.on[m] = append(out.on[m], hungOn{j, k})
			for _, king := range held { // two hips hold it, one on each side
				out.on[m] = append(out.on[m], hungOn{king, k / 2})
			}
		}
	}
	return out
}

// nailedAt counts the nails of a hip's hangers in each member but the hip.
func (a *analysis) nailedAt(j *framing.Joint) (order []*framing.Member, in map[*framing.Member]int) {
	in = map[*framing.Member]int{}
	for _, p := range a.hangers(j) {
		for _, f := range a.steel.Body(p).Fasteners {
			m, _, _, ok := f.Bite(p.Item.Thickness)
			if !ok || m == j.First() {
				continue
			}
			if in[m]++; in[m] == 1 {
				order = append(order, m)
			}
		}
	}
	return order, in
}

// hangers are the pieces at a joint that are bodies, not straps.
func (a *analysis) hangers(j *framing.Joint) (out []*placement.Piece) {
	for _, p := range a.placed.At(j) {
		if p.Item.Kind.Shape == hardware.Body && a.steel.Body(p) != nil {
			out = append(out, p)
		}
	}
	return out
}

// inLine finds the rafters in line with a ridge whose end nothing of its own holds
// down there, with the joint of that end.
func (a *analysis) inLine() map[*framing.Member]*framing.Joint {
	out := map[*framing.Member]*framing.Joint{}
	for _, j := range a.house.Joints {
		m := j.First()
		if j.Kind != plan.RafterRidge || m == nil || m.Role != plan.Rafter || a.pairAt[j] != nil {
			continue
		}
		for _, o := range j.Members[1:] {
			if o.Role != plan.Ridge || !geom.Skims(o.B.Sub(o.A).Flat().Unit(), m.B.Sub(m.A).Flat().Unit()) {
				continue
			}
			if held := a.allowed.At(j, capacity.Upward); held == nil || held.Unknown != "" {
				out[m] = j
			}
		}
	}
	return out
}

// holdKing puts what the hips' hangers hold of a rafter in line with the ridge in the
// place of its own pieces: its nails in each, no more than those in the pair beside can
// carry over what the hip asks of them.
func (a *analysis) holdKing(l *Link, by []*framing.Joint) {
	c := &Capacity{Source: "computed", NotMakers: true, Governs: "the hips' hangers, by their nails in this rafter, with what those in the pair beside have over"}
	for _, j := range by {
		own, others := a.heldAt(j, l.Joint.First())
		over := others
		if q := a.peaks[j]; q != nil {
			over = math.Max(0, others-math.Max(0, q.demand))
		}
		v := math.Min(own, over)
		c.Value += v
		c.Terms = append(c.Terms, ofCapacity(Term{a.u.Sprintf("hanger of the hip at %s: its nails in this rafter hold %.0f{lb}, those in the pair %.0f lb, %.0f lb of it over what the hip asks", j.ID, own, others, over), v, "lb"})...)
		for _, p := range a.hangers(j) {
			c.Mark, c.Pieces = p.Item.Mark, c.Pieces+1
		}
	}
	if len(by) > 1 {
		c.Terms = append(c.Terms, ofCapacity(Term{"all of them", c.Value, "lb"})...)
	}
	l.Gap, l.Ratio = "", 0
	l.close(c)
}

// heldAt is what the nails of a hip's hangers hold of one rafter, and of all others
// but the hip, lb ASD.
func (a *analysis) heldAt(j *framing.Joint, king *framing.Member) (own, others float64) {
	for _, p := range a.hangers(j) {
		b := a.steel.Body(p)
		for _, m := range b.Members() {
			switch v := a.allowed.Held(b, m, geom.Vec3{Z: 1}).Value; m {
			case j.First():
			case king:
				own += v
			default:
				others += v
			}
		}
	}
	return own, others
}

// withoutKing takes from what holds a hip the nails in the rafter that the hip's
// hanger holds itself.
func (a *analysis) withoutKing(l *Link, king *framing.Member) {
	if king == nil || l.Capacity == nil || l.Capacity.Unknown != "" {
		return
	}
	_, others := a.heldAt(l.Joint, king)
	if others >= l.Capacity.Value {
		return
	}
	c := *l.Capacity
	c.Value, c.Governs = others, "the hanger's nails in the pair at the ridge: the rafter in line is held by them, and holds nothing"
	c.Terms = append(slices.Clip(c.Terms), ofCapacity(Term{"the hanger's nails in the pair alone", others, "lb"})...)
	l.close(&c)
}

// withHung adds to what a rafter asks of its tie at the ridge the pull of the hips and
// valleys that hang on it, each in its own worst case. The pair of rafters that takes
// what comes to a ridge board there has all of it in its own forces already.
func (a *analysis) withHung(l *Link, on map[*framing.Member][]hungOn) {
	members := l.Joint.Members[:1]
	p := a.pairAt[l.Joint]
	if p != nil {
		members = l.Joint.Members
	}
	added := false
	for _, m := range members {
		for _, h := range on[m] {
			added = a.addHung(l, p, h) || added
		}
	}
	if added {
		l.Terms = append(l.Terms, Term{"together, ASD", l.Demand, "lb"})
	}
}

// addHung adds what one hanger hands on: as it is where the tie of one rafter holds it
// up, as level tension across the ridge where two lean on each other (a pull P at the
// peak of two bars hinged there and at their plates: P a b / (L f)).
func (a *analysis) addHung(l *Link, p *pair, h hungOn) bool {
	q := a.peaks[h.joint]
	if q == nil || q.demand <= 0 || p != nil && (a.takes(p, h.joint) || p.rise <= 1) {
		return false
	}
	k, as := h.k, ""
	if p != nil {
		k *= p.apex * (p.span - p.apex) / p.span / p.rise
		as = ", as level tension across the ridge"
	}
	lb := k * q.demand
	l.Demand += lb
	l.Strength += k * math.Max(0, q.force.net(Strength))
	l.Terms = append(l.Terms, Term{a.u.Sprintf("%.0f%% of the %s at %s, by the nails of its hanger in this rafter, in its own worst case%s", 100*h.k, h.joint.First().Role, h.joint.ID, as), lb, "lb"})
	return true
}

// takes tells whether all of the pull that a hip or valley brings to a ridge board is in
// the forces of this pair, which may stand bays away where the rafters beside end at a
// valley.
func (a *analysis) takes(p *pair, j *framing.Joint) bool {
	for _, s := range a.rafters {
		for _, e := range s.ends {
			if e.joint == j && e.ridge != nil && !e.ridge.bearing && e.ridge.gives(e.at, p) {
				return true
			}
		}
	}
	return false
}
