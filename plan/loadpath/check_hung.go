package loadpath

import (
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
)

// hungOn is the part of a hip's or valley's pull that its hanger hands to a rafter
// beside it.
type hungOn struct {
	joint *framing.Joint // of the hip or valley
	k     float64        // share of the hanger's nails in the rafter
}

// hungOnRafters finds which rafters hold the upper ends of hips and valleys: those
// that the flanges of their hangers are nailed to, each by its share of the nails that
// are not in the hip itself.
func (a *analysis) hungOnRafters() map[*framing.Member][]hungOn {
	out := map[*framing.Member][]hungOn{}
	for _, j := range a.house.Joints {
		if j.Kind != plan.RafterRidge || j.First() == nil || j.First().Role != plan.HipRafter && j.First().Role != plan.ValleyRafter {
			continue
		}
		in, total := map[*framing.Member]int{}, 0
		var order []*framing.Member
		for _, p := range a.placed.At(j) {
			b := a.steel.Body(p)
			if p.Item.Kind.Shape != hardware.Body || b == nil {
				continue
			}
			for _, f := range b.Fasteners {
				m, _, _, ok := f.Bite(p.Item.Thickness)
				if !ok || m == j.First() {
					continue
				}
				if in[m]++; in[m] == 1 {
					order = append(order, m)
				}
				total++
			}
		}
		for _, m := range order {
			if m.Role == plan.Rafter {
				out[m] = append(out[m], hungOn{j, float64(in[m]) / float64(total)})
			}
		}
	}
	return out
}

// withHung adds to what a rafter asks of its tie at the ridge the pull of the hips and
// valleys that hang on it, each in its own worst case. A pair of rafters has that in its
// own forces already: what comes to a ridge board goes to the nearest pair, whole.
func (a *analysis) withHung(l *Link, on map[*framing.Member][]hungOn) {
	j := l.Joint
	if a.pairAt[j] != nil {
		return
	}
	for _, h := range on[j.First()] {
		p := a.peaks[h.joint]
		if p == nil || p.demand <= 0 {
			continue
		}
		lb := h.k * p.demand
		l.Demand += lb
		l.Strength += h.k * math.Max(0, p.force.net(Strength))
		l.Terms = append(l.Terms, Term{a.u.Sprintf("of the %s at %s, whose hanger has %.0f%% of its nails in this rafter, in its own worst case", h.joint.First().Role, h.joint.ID, 100*h.k), lb, "lb"})
	}
	if len(on[j.First()]) > 0 {
		l.Terms = append(l.Terms, Term{"together, ASD", l.Demand, "lb"})
	}
}
