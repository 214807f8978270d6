package loadpath

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
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
	a     *analysis
	path  *wallPath
	line  *nailing.Line      // nails of the upper plate; nil where the plan orders none
	bears [][]*framing.Joint // rafters that pull at the plates, by station; those of one place together
}

// onePlace is how near to each other rafters pull at one place of the plates, in.
const onePlace = 6

// platesApart checks at each rafter that what its tie brings into the upper top
// plate gets into the top plate, where the studs' own ties do not reach up to it:
// by the ordered nails between the two, drawn out. Where the tie's fasteners in the
// top plate hold all of it alone, nothing need go through the upper one. The two ways
// are not added: nails across and nails drawn out give way at different slips.
func platesApart(c *Check, a *analysis) (out []*Link) {
	for _, p := range a.paths {
		d := &doubled{a: a, path: p, line: a.nails.Line(plan.TopPlates)}
		d.gather()
		for i := range d.bears {
			if l := d.link(c, i); l != nil {
				out = append(out, l)
			}
		}
	}
	return out
}

// gather finds the rafters that pull at the plates.
func (d *doubled) gather() {
	var all []*framing.Joint
	for _, j := range d.a.joints[d.path.w] {
		if bears(j.Kind) && d.a.peaks[j] != nil {
			all = append(all, j)
		}
	}
	slices.SortStableFunc(all, func(x, y *framing.Joint) int { return cmpFloat(x.Station, y.Station) })
	for i, j := range all {
		if i > 0 && j.Station-all[i-1].Station < onePlace {
			last := len(d.bears) - 1
			d.bears[last] = append(d.bears[last], j)
			continue
		}
		d.bears = append(d.bears, []*framing.Joint{j})
	}
}

// link is the link at the rafters of one place; nil where nothing of them enters
// the upper plate.
func (d *doubled) link(c *Check, i int) *Link {
	j := named(d.bears[i])
	l := &Link{
		Check: c, ID: j.ID + ", upper plate", Joint: j, Wall: d.path.w, Host: j.HostName(), Where: whereOf(d.a.u, j), Unit: "lb", Case: "the rafter's own worst case", uplift: true,
	}
	for _, j := range d.bears[i] {
		lb := d.a.peaks[j].demand
		upper, lower := d.grips(j)
		if upper == 0 || lb <= least {
			continue
		}
		in := lb * float64(upper) / float64(upper+lower)
		direct, terms := d.direct(j, in)
		l.Demand += in - direct
		l.Terms = append(append(l.Terms, Term{d.a.u.Sprintf("%s: of %.0f lb of uplift %d of %d fasteners in the plates bring into the upper one, ASD", j.ID, lb, upper, upper+lower), in, "lb"}), terms...)
	}
	if len(l.Terms) == 0 {
		return nil
	}
	if len(l.Terms) > 1 {
		l.Terms = append(l.Terms, Term{"what the nails between the plates carry, ASD", l.Demand, "lb"})
	}
	l.Strength = l.Demand / ASD.W
	l.close(d.nails(d.length(i)))
	d.alone(l, d.bears[i])
	if l.Gap != "" {
		l.Gap = "nothing ordered holds the upper plate to the top plate: order top_plates, or ties that reach both plates"
	}
	return l
}

// named is the one of the rafters of one place that names their link: one on the plates,
// before what leans on a ledger there.
func named(at []*framing.Joint) *framing.Joint {
	for _, j := range at {
		if j.Kind.OnPlate() {
			return j
		}
	}
	return at[0]
}

// alone lets the fasteners in the top plate hold all of the uplift where that is
// the better of the two ways.
func (d *doubled) alone(l *Link, at []*framing.Joint) {
	lb, held := 0.0, &Capacity{Source: "computed", Pieces: 1, Governs: "the ties' fasteners in the top plate alone"}
	for _, j := range at {
		lb += math.Max(0, d.a.peaks[j].demand)
		for _, p := range d.a.placed.At(j) {
			b := d.a.steel.Body(p)
			for _, m := range b.Members() {
				if m.Role != plan.TopPlate {
					continue
				}
				h := d.a.allowed.Held(b, m, geom.Vec3{Z: 1})
				held.Value += h.Value
				held.Terms = append(held.Terms, h.Terms...)
				held.Mark = p.Item.Mark
			}
		}
	}
	if l.Demand <= least || held.Value <= 0 || lb/held.Value >= l.Ratio {
		return
	}
	l.Terms = append(l.Terms, Term{"all of it by the fasteners in the top plate, nothing through the upper one, ASD", lb, "lb"})
	l.Demand, l.Strength = lb, lb/ASD.W
	if len(held.Terms) > 1 {
		held.Terms = append(held.Terms, ofCapacity(Term{"together", held.Value, "lb"})...)
	}
	l.Gap = ""
	l.close(held)
}

// direct is what the ties of the studs beside a rafter take out of the upper
// plate by themselves, lb of in: the part of their fasteners that is in it.
func (d *doubled) direct(j *framing.Joint, in float64) (lb float64, terms []Term) {
	for _, on := range d.path.places(j.Station) {
		upper, lower := d.grips(on.joint())
		if on.header != nil || upper == 0 || on.k < 1e-3 {
			continue
		}
		f := in * on.k * float64(upper) / float64(upper+lower)
		lb += f
		terms = append(terms, Term{fmt.Sprintf("less what the tie at %s takes from the upper plate: %.3f of it by lever arm, %d of %d fasteners in the plates", on.joint().ID, on.k, upper, upper+lower), f, "lb"})
	}
	return lb, terms
}

// length is the stretch of plate that a rafter's uplift is spread on, in: half
// way to the rafters on both sides, at most to the wall's end.
func (d *doubled) length(i int) float64 {
	at := func(i int) float64 { g := d.bears[i]; return (g[0].Station + g[len(g)-1].Station) / 2 }
	lo, hi := 0.0, d.path.w.Length()
	if i > 0 {
		lo = (at(i-1) + at(i)) / 2
	}
	if i < len(d.bears)-1 {
		hi = (at(i) + at(i+1)) / 2
	}
	return math.Max(0, hi-lo)
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

// nails is what the ordered nails hold between the plates over a length of wall,
// in; nil where none are ordered.
func (d *doubled) nails(long float64) *Capacity {
	if d.line == nil || d.line.Order == nil || d.line.Order.Spacing <= 0 {
		return nil
	}
	for _, s := range d.line.Spots {
		if s.Wall != d.path.w {
			continue
		}
		one, how := d.line.Uplift(s, d.a.species)
		n := float64(d.line.Order.Rows) * long / d.line.Order.Spacing
		return &Capacity{
			Value: n * one, Source: "ordered nailing", Pieces: 1, Mark: d.line.Mark(), Governs: fmt.Sprintf("nails %s of the top plates, drawn out", d.line.Mark()),
			Terms: ofCapacity(Term{"one nail, " + how, one, "lb"}, Term{"length of plate, half way to the rafters beside it", long / 12, "ft"}, Term{"nails in that length, by their spacing", n, ""}, Term{"together", n * one, "lb"}),
		}
	}
	return nil
}
