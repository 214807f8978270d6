package loadpath

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/capacity"
	"galewright/plan/framing"
)

// bendingCheck is the ID of the check of plates between what holds them down.
const bendingCheck = "plate-bending"

// bendingDoc says what the check looks at and what it leaves out.
const bendingDoc = "bending and shear, flat, of top plates between the studs that they are tied to, of sill plates between their bolts, and over openings of the top plates between kings and tied cripples, with the header that those pull at, upright: the worst stretch of a wall and all others that are over what they bear, each as a simple beam under the uplift of the rafters or studs on it, each in its own worst case; No. 2 lumber, stable by itself, two top plates side by side where neither breaks there. Cripples count where a piece ties them to the plate and another to the header"

// plateBending checks plates and headers in bending under uplift, the worst stretch of
// each wall's plates and all others over what they bear, and each opening.
func plateBending(c *Check, a *analysis) (out []*Link) {
	pierced := a.piercedSegments()
	for _, w := range a.plan.Walls {
		p := a.byWall[w]
		if p == nil {
			continue
		}
		b := &bent{a: a, c: c, p: p, loads: a.rafterPushes(w)}
		if len(b.loads) > 0 {
			out = append(out, b.bays()...)
			for _, o := range p.openings {
				out = append(out, b.opening(o)...)
			}
		}
		if bolts := a.bolts(w); len(bolts) > 0 {
			out = append(out, b.sill(bolts, a.withoutHoldDowns(p, a.plateLifts(p, pierced[w])))...)
		}
	}
	return out
}

// flatDeep is how deep a plate is flat, in: a dressed 2x (PS 20).
const flatDeep = 1.5

// bent is one wall's plates under uplift.
type bent struct {
	a     *analysis
	c     *Check
	p     *wallPath
	loads []push // of the rafters on the plates, lb ASD
}

// rafterPushes lists what the rafters on a wall's plates pull up, lb ASD.
func (a *analysis) rafterPushes(w *plan.Wall) (out []push) {
	for _, j := range a.joints[w] {
		if q := a.peaks[j]; bears(j.Kind) && q != nil && q.demand > least {
			out = append(out, push{j.Station, q.demand})
		}
	}
	slices.SortFunc(out, func(x, y push) int { return cmpFloat(x.at, y.at) })
	return out
}

// wood is a rectangle of lumber in bending: so many pieces, each wide across the load and
// deep along it, in.
type wood struct {
	n          int
	wide, deep float64
	depth      float64 // of the lumber, whose values count
	why        string
	factor     float64
}

// bend is a piece of a wall's plates, or a part of it between two supports, with what
// bends it and what it is of.
type bend struct {
	spanned
	id, where string // the place for its links when it is told beside the worst
	of        wood
	terms     []Term
}

// links are those of bending and shear of a beam against its wood.
func (b *bent) links(id string, s bend) []*Link {
	return []*Link{b.link(id, "bending", s), b.link(id, "shear", s)}
}

// link is that of bending or of shear of a beam.
func (b *bent) link(id, what string, s bend) *Link {
	demand, of, unit := s.moment, "moment", "lb-in"
	if what == "shear" {
		demand, of, unit = s.shear, "shear", "lb"
	}
	l := &Link{
		Check: b.c, ID: id + ", " + what, Wall: b.p.w, Host: "wall " + b.p.w.Name, Where: s.where, Unit: unit, Case: "each rafter or stud in its own worst case",
		Demand: demand, Strength: demand / ASD.W,
	}
	l.Terms = append(append(l.Terms, s.terms...), Term{"largest " + of + ", ASD", demand, unit})
	l.close(b.a.inBending(s.of, what))
	return l
}

// told are the links of the worst of a wall's bendes under id, of bending and of shear
// each for itself, and of every other one that is over what it bears, under its own.
func (b *bent) told(id string, all []bend) (out []*Link) {
	for _, what := range []string{"bending", "shear"} {
		var worst *Link
		var at int
		links := make([]*Link, len(all))
		for i, s := range all {
			if links[i] = b.link(s.id, what, s); worse(links[i], worst) {
				worst, at = links[i], i
			}
		}
		for i, l := range links {
			switch {
			case i == at:
				l.ID = id + ", " + what
				out = append(out, l)
			case l.Ratio > 1:
				out = append(out, l)
			}
		}
	}
	return out
}

// inBending is what wood bears in bending, lb-in, or in shear, lb.
func (a *analysis) inBending(of wood, what string) *Capacity {
	v, ok := a.species.Bend(of.depth)
	if !ok {
		return &Capacity{Unknown: "no bending value is carried for " + a.species.Name}
	}
	one, fiber, unit := v.Moment(of.wide, of.deep), v.Fb, "lb-in"
	if what == "shear" {
		one, fiber, unit = v.Shear(of.wide, of.deep), v.Fv, "lb"
	}
	one *= of.factor
	held := &Capacity{Value: float64(of.n) * one, Source: "computed", Pieces: 1, Governs: what + " of " + of.why}
	held.Terms = ofCapacity(Term{a.u.Sprintf("%s of %.2f in by %.2f in, No. 2 %s, %.0f psi (NDS 2018 Supplement, from memory), CD 1.6%s: each", what, of.wide, of.deep, a.species.Name, fiber, map[bool]string{true: "", false: ", incised 0.80 (from memory)"}[of.factor == 1]), one, unit},
		Term{fmt.Sprintf("%d of them", of.n), held.Value, unit})
	return held
}

// flat is so many plates of the wall, flat.
func (b *bent) flat(n int, why string) wood {
	return wood{n: n, wide: b.p.w.Studs.Depth, deep: flatDeep, depth: b.p.w.Studs.Depth, why: why, factor: 1}
}

// plates counts the top plates that run from one place of the wall to another in one
// piece.
func (b *bent) plates(lo, hi float64) (n int) {
	for _, role := range []plan.Role{plan.TopPlate, plan.UpperPlate} {
		for _, m := range b.a.house.In(b.p.w) {
			if m.Role == role && m.S0 <= lo+1 && m.S1 >= hi-1 {
				n++
				break
			}
		}
	}
	return n
}

// bays are the links of the top plates between full-height members: the worst of them, and
// all that are over what they bear.
func (b *bent) bays() []*Link {
	var all []bend
	u := b.a.u
	for i := 1; i < len(b.p.carriers); i++ {
		lo, hi := b.p.carriers[i-1].station, b.p.carriers[i].station
		if s := simple(lo, hi, flatDeep, b.loads); s.moment > least && !b.p.opens(lo, hi) {
			n := max(1, b.plates(lo, hi))
			all = append(all, bend{
				s, fmt.Sprintf("%s-%.0f, top plates", b.p.w.Name, lo), fmt.Sprintf("wall %s, top plates from %s to %s", b.p.w.Name, u.Length(lo), u.Length(hi)),
				b.flat(n, plan.Counted(n, "top plate")+", flat"), b.between(lo, hi),
			})
		}
	}
	return b.told(b.p.w.Name+", top plates", all)
}

// between lists the forces between two places.
func (b *bent) between(lo, hi float64) (out []Term) {
	for _, p := range b.loads {
		if p.at > lo && p.at < hi {
			out = append(out, Term{b.a.u.Sprintf("rafter at %s, %s from the left end of the stretch, ASD", b.a.u.Length(p.at), b.a.u.Length(p.at-lo)), p.lb, "lb"})
		}
	}
	return out
}

// held tells of a beam's supports.
func (b *bent) held(what string, supports []float64) Term {
	at := make([]string, len(supports))
	for i, s := range supports {
		at[i] = b.a.u.Length(s)
	}
	return Term{what + " at " + strings.Join(at, ", "), float64(len(supports)), ""}
}

// opens tells whether an opening lies between two stations.
func (p *wallPath) opens(l, r float64) bool {
	return slices.ContainsFunc(p.openings, func(o *opened) bool { return o.lo < r-1 && o.hi > l+1 })
}

// opening are the links over an opening: of the plates, of the cripples that hold them
// and of the header.
func (b *bent) opening(o *opened) (out []*Link) {
	supports, tied := []float64{o.lo, o.hi}, []*framing.Member{}
	for _, m := range b.a.house.In(b.p.w) {
		if m.Role == plan.Cripple && m.Mid() > o.lo && m.Mid() < o.hi && b.a.crippleHeld(m) != nil {
			supports, tied = append(supports, m.Mid()), append(tied, m)
		}
	}
	slices.Sort(supports)
	in := b.inside(o)
	if len(in) == 0 {
		return nil
	}
	u := b.a.u
	where := fmt.Sprintf("wall %s, over the opening from %s to %s", b.p.w.Name, u.Length(o.lo), u.Length(o.hi))
	id := fmt.Sprintf("%s-%.0f, plates over the opening", b.p.w.Name, o.lo)
	terms := append(b.between(o.lo, o.hi), b.held("kings and tied cripples", supports))
	out = b.told(id, b.stretches(supports, in, where, terms))
	if len(tied) == 0 {
		return out
	}
	on := reactions(supports, in)
	var pulls []push
	for i, at := range supports {
		if at > o.lo && at < o.hi {
			pulls = append(pulls, push{at, on[i]})
		}
	}
	out = append(out, b.cripple(tied, pulls, where))
	return append(out, b.header(o, pulls, where)...)
}

// stretches are the plates between each two supports over an opening, as many as run
// through there.
func (b *bent) stretches(supports []float64, in []push, where string, terms []Term) (out []bend) {
	for i := 1; i < len(supports); i++ {
		lo, hi := supports[i-1], supports[i]
		n := max(1, b.plates(lo, hi))
		out = append(out, bend{simple(lo, hi, flatDeep, in), fmt.Sprintf("%s-%.0f, plates over the opening", b.p.w.Name, lo), where, b.flat(n, plan.Counted(n, "top plate")+", flat"), terms})
	}
	return out
}

// inside lists the forces between the kings of an opening.
func (b *bent) inside(o *opened) (out []push) {
	for _, p := range b.loads {
		if p.at > o.lo && p.at < o.hi {
			out = append(out, p)
		}
	}
	return out
}

// crippleHeld is what ties a cripple to the plate and to the header, the lesser of both;
// nil where one of them is missing.
func (a *analysis) crippleHeld(m *framing.Member) (held *Capacity) {
	for _, kind := range []plan.JointKind{plan.CripplePlate, plan.CrippleHeader} {
		var at *Capacity
		for _, j := range a.byFirst[m] {
			if j.Kind == kind {
				at = a.allowed.At(j, capacity.Upward)
			}
		}
		if at == nil || at.Unknown != "" || at.Value <= 0 {
			return nil
		}
		if held == nil || at.Value < held.Value {
			held = at
		}
	}
	return held
}

// cripple is the link of the cripple over an opening that is pulled most for what holds it.
func (b *bent) cripple(tied []*framing.Member, pulls []push, where string) (worst *Link) {
	for _, p := range pulls {
		i := slices.IndexFunc(tied, func(m *framing.Member) bool { return math.Abs(m.Mid()-p.at) < 0.01 })
		if i < 0 {
			continue
		}
		l := &Link{
			Check: b.c, ID: tied[i].ID + ", ties", Wall: b.p.w, Host: "wall " + b.p.w.Name, Where: where, Unit: "lb", Case: "each rafter in its own worst case", Demand: p.lb, Strength: p.lb / ASD.W,
			Terms: []Term{{"what the plates bring to the cripple by lever arm, ASD", p.lb, "lb"}},
		}
		l.close(b.a.crippleHeld(tied[i]))
		if worse(l, worst) {
			worst = l
		}
	}
	return worst
}

// header are the links of the header under an opening's cripples.
func (b *bent) header(o *opened, pulls []push, where string) []*Link {
	j := o.ends[0]
	if j == nil || j.First() == nil {
		return nil
	}
	s := j.First().Section
	of := wood{n: max(1, s.Ply), wide: s.Breadth, deep: s.Depth, depth: s.Depth, why: "the header " + s.Text, factor: 1}
	var terms []Term
	for _, p := range pulls {
		terms = append(terms, Term{"from the cripple at " + b.a.u.Length(p.at) + ", ASD", p.lb, "lb"})
	}
	return b.links(fmt.Sprintf("%s-%.0f, header", b.p.w.Name, o.lo), bend{spanned: simple(o.lo, o.hi, s.Depth, pulls), where: where, of: of, terms: terms})
}
