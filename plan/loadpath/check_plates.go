package loadpath

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/nailing"
	"galewright/plan/steel"
)

// platesCheck is the ID of the check between the two top plates.
const platesCheck = "plates-uplift"

// ownLink tells whether a link at a joint is one of its own in the chain, and not
// of the joint's kind.
func ownLink(l *Link) bool { return l.Check.ID == sillCheck || l.Check.ID == platesCheck }

// doubled is the two top plates of a wall as uplift crosses between them.
type doubled struct {
	a    *analysis
	path *wallPath
	line *nailing.Line // nails of the upper plate; nil where the plan orders none
}

// platesApart checks at each stud that what rafters' ties bring into the upper top
// plate gets into the top plate, where the stud's own tie does not reach up to
// it: by the ordered nails between the two, drawn out.
func platesApart(c *Check, a *analysis) (out []*Link) {
	for _, p := range a.paths {
		d := &doubled{a, p, a.nails.Line(plan.TopPlates)}
		for _, k := range p.carriers {
			if l := d.link(c, k); l != nil {
				out = append(out, l)
			}
		}
	}
	return out
}

// link is the link at one stud; nil where nothing enters the upper plate.
func (d *doubled) link(c *Check, k *carrier) *Link {
	in, terms := d.enters(k)
	p := d.a.peaks[k.st]
	if in <= least || p == nil {
		return nil
	}
	l := &Link{
		Check: c, ID: k.st.ID + ", upper plate", Joint: k.st, Wall: d.path.w, Host: k.st.HostName(), Where: whereOf(k.st), Unit: "lb",
		Case: "each joint in its own worst case", Terms: terms,
	}
	upper, lower := d.grips(k.st)
	direct := 0.0
	if upper > 0 {
		direct = math.Min(in, math.Max(0, p.demand)*float64(upper)/float64(upper+lower))
		l.Terms = append(l.Terms, Term{fmt.Sprintf("less what the stud's own tie takes from the upper plate: %d of its %d fasteners there are in it", upper, upper+lower), direct, "lb"})
	}
	l.Demand = in - direct
	l.Strength = l.Demand / ASD.W
	l.Terms = append(l.Terms, Term{"from the upper plate to the top plate, ASD", l.Demand, "lb"})
	l.close(d.nails(k))
	if l.Gap != "" {
		l.Gap = "nothing ordered holds the upper plate to the top plate: order top_plates, or ties that reach both plates"
	}
	return l
}

// enters adds up what comes into the upper plate on its way to a stud, lb ASD: of
// each rafter's tie the part of its fasteners that is in that plate.
func (d *doubled) enters(k *carrier) (lb float64, terms []Term) {
	for _, j := range d.a.joints[d.path.w] {
		p := d.a.peaks[j]
		if !bears(j.Kind) || p == nil || p.demand <= least {
			continue
		}
		for _, on := range d.path.places(j.Station) {
			upper, lower := d.grips(j)
			if on.joint() != k.st || on.k < 1e-3 || upper == 0 {
				continue
			}
			f := p.demand * on.k * float64(upper) / float64(upper+lower)
			lb += f
			terms = append(terms, Term{fmt.Sprintf("from %s: %.0f lb, %.3f of it by lever arm, %d of %d fasteners in the plates in the upper one", j.ID, p.demand, on.k, upper, upper+lower), f, "lb"})
		}
	}
	return lb, terms
}

// grips counts the fasteners of a joint's pieces that hold in the upper plate and
// in the top plate. A band that runs over the upper plate holds it by its bend, as
// good as all fasteners.
func (d *doubled) grips(j *framing.Joint) (upper, lower int) {
	for _, p := range d.a.placed.At(j) {
		b := d.a.steel.Body(p)
		for _, m := range b.Over {
			if m.Role == plan.UpperPlate {
				upper++
			}
		}
		for _, f := range b.Fasteners {
			switch {
			case len(f.Runs) == 0 || steel.SplitsOut(f):
			case f.Runs[0].Member.Role == plan.UpperPlate:
				upper++
			case f.Runs[0].Member.Role == plan.TopPlate && len(b.Over) == 0:
				lower++
			}
		}
	}
	return upper, lower
}

// nails is what the ordered nails hold between the plates over the length of wall
// that a stud serves; nil where none are ordered.
func (d *doubled) nails(k *carrier) *Capacity {
	if d.line == nil || d.line.Order == nil || d.line.Order.Spacing <= 0 {
		return nil
	}
	for _, s := range d.line.Spots {
		if s.Wall != d.path.w {
			continue
		}
		one, how := d.line.Uplift(s, d.a.species)
		n := float64(d.line.Order.Rows) * k.share / d.line.Order.Spacing
		return &Capacity{
			Value: n * one, Source: "ordered nailing", Pieces: 1, Mark: d.line.Mark(), Governs: fmt.Sprintf("nails %s of the top plates, drawn out", d.line.Mark()),
			Terms: ofCapacity(Term{"one nail, " + how, one, "lb"}, Term{"length of wall that the stud serves", k.share / 12, "ft"}, Term{"nails in that length, by their spacing", n, ""}, Term{"together", n * one, "lb"}),
		}
	}
	return nil
}
