package placement

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
)

// matches returns those of some joints at which all conditions of r hold, in
// their order.
func (w *world) matches(r *plan.Rule, joints []*framing.Joint) (hit []*framing.Joint) {
	for _, j := range joints {
		if w.fails(&r.Where, j) == nil && w.excepted(r, j) == nil {
			hit = append(hit, j)
		}
	}
	return hit
}

// choose thins matching joints, host by host, as every and at_most ask.
func (w *world) choose(r *plan.Rule, hit []*framing.Joint) []*framing.Joint {
	if r.Every <= 1 && r.AtMost <= 0 {
		return hit
	}
	in := make(map[*framing.Joint]bool, len(hit))
	for _, j := range hit {
		in[j] = true
	}
	keep := map[*framing.Joint]bool{}
	seen := map[string]bool{}
	for _, j := range hit {
		if seen[j.Host] {
			continue
		}
		seen[j.Host] = true
		var run []*framing.Joint
		for _, x := range w.byHost[hostKind{j.Host, j.Kind}] {
			if in[x] {
				run = append(run, x)
			}
		}
		for _, part := range stretches(run) {
			for _, x := range w.thin(r, part) {
				keep[x] = true
			}
		}
	}
	var out []*framing.Joint
	for _, j := range hit {
		if keep[j] {
			out = append(out, j)
		}
	}
	return out
}

// shortPlate is the longest plate that one bolt holds by itself, in its middle
// (IRC R403.1.6, exception for walls of 24 in or less, from memory), in.
const shortPlate = 24

// basePlate returns the plate at a stud's base or of a sill's own joint, or nil
// at another joint.
func basePlate(j *framing.Joint) *framing.Member {
	switch j.Kind {
	case plan.StudBase, plan.SillFoundation:
		return role(j, plan.SillPlate, plan.BottomPlate)
	}
	return nil
}

// stretches cuts a run of base joints where the plate below is cut, as at a
// door: each length of plate is held down by itself, at both its ends (IRC
// R403.1.6 asks for bolts near each end of each plate, from memory).
func stretches(run []*framing.Joint) (out [][]*framing.Joint) {
	var last *framing.Member
	for i, j := range run {
		plate := basePlate(j)
		if i == 0 || plate != last {
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], j)
		last = plate
	}
	return out
}

// thin takes every nth joint of a run from its first; with at_most the first,
// the last, and between them the fewest that are never farther apart than
// that, where the joints allow it, spread as evenly as they can be.
func (w *world) thin(r *plan.Rule, run []*framing.Joint) (out []*framing.Joint) {
	n := max(r.Every, 1)
	var nth []*framing.Joint
	for i := 0; i < len(run); i += n {
		nth = append(nth, run[i])
	}
	if r.AtMost <= 0 {
		return nth
	}
	if p := basePlate(run[0]); p != nil && p.S1-p.S0 <= shortPlate {
		return nth[len(nth)/2 : len(nth)/2+1]
	}
	for i, j := range nth {
		last := i == len(nth)-1
		if len(out) == 0 || last || w.apart(out[len(out)-1], nth[i+1]) > r.AtMost+touch {
			out = append(out, j)
		}
	}
	if even := w.evenly(nth, len(out)); w.widest(even) <= max(r.AtMost+touch, w.widest(out)) {
		return even
	}
	return out
}

// evenly takes the first, the last and n-2 joints of a run, each nearest to
// its place at equal distances.
func (w *world) evenly(run []*framing.Joint, n int) (out []*framing.Joint) {
	if n < 3 {
		return append(out, run[0], run[len(run)-1])[:n]
	}
	from, to := w.house.AsWritten(run[0]), w.house.AsWritten(run[len(run)-1])
	i := 0
	for k := range n {
		want := from + (to-from)*float64(k)/float64(n-1)
		for i+1 < len(run) && math.Abs(w.house.AsWritten(run[i+1])-want) <= math.Abs(w.house.AsWritten(run[i])-want) {
			i++
		}
		if len(out) == 0 || out[len(out)-1] != run[i] {
			out = append(out, run[i])
		}
	}
	return out
}

// apart is how far b comes after a, in.
func (w *world) apart(a, b *framing.Joint) float64 {
	return w.house.AsWritten(b) - w.house.AsWritten(a)
}

// widest returns the largest distance between neighbors, in.
func (w *world) widest(run []*framing.Joint) (d float64) {
	for i := 1; i < len(run); i++ {
		d = max(d, w.apart(run[i-1], run[i]))
	}
	return d
}

// whyNot says why r puts nothing at j, a joint of its kind, or "".
func (w *world) whyNot(r *plan.Rule, j *framing.Joint) string {
	if c := w.fails(&r.Where, j); c != nil {
		return fmt.Sprintf("condition %s = %s does not hold, it is %s", c.key, c.want(j.Units, &r.Where), c.have(w, j))
	}
	if x := w.excepted(r, j); x != nil {
		return "excluded by except: " + describe(j.Units, x)
	}
	// Joints are thinned host by host, so those of j's host are enough.
	if slices.Contains(w.choose(r, w.matches(r, w.byHost[hostKind{j.Host, j.Kind}])), j) {
		return ""
	}
	if r.AtMost > 0 {
		return fmt.Sprintf("not needed: spacing stays within at_most = %s without it", j.Units.Length(r.AtMost))
	}
	return fmt.Sprintf("skipped: every = %d", r.Every)
}
