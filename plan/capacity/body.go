package capacity

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/placement"
	"galewright/plan/steel"
	"galewright/plan/timber"
	"galewright/plan/wood"
)

// endTerms adds what each end of a body holds: its fasteners in the member it
// is meant for, as they find it. A fastener in any other wood, or in none,
// holds nothing of the joint. An end that a bend of the steel holds down needs
// no fasteners of its own.
func (a *Allowables) endTerms(c *Capacity, b *steel.Body, dir Direction) {
	for i, e := range b.Piece.Item.Ends() {
		if i >= len(b.Piece.Ends) || e.Count <= 0 {
			continue
		}
		a.endTerm(c, b, i, &b.Piece.Laid[b.Piece.Ends[i].Laid], dir)
	}
	if m := onlyOne(b); m != nil {
		c.Unknown = fmt.Sprintf("all its ends are for the %s: it ties that to nothing", m.Role)
	}
}

// onlyOne returns the member that all ends of a body are for, where it has more
// than one, wraps nothing and has no rod: fasteners in it alone hold nothing to it.
// A collector's strap may lie on one plate that runs on, and strengthen it.
func onlyOne(b *steel.Body) (m *framing.Member) {
	if b.Piece.Joint.Kind == plan.Collector {
		return nil
	}
	ends := 0
	for i, e := range b.Piece.Item.Ends() {
		if i >= len(b.Piece.Ends) || e.Count <= 0 {
			continue
		}
		meant := b.Piece.Laid[b.Piece.Ends[i].Laid].Member
		if ends++; m != nil && m != meant {
			return nil
		}
		m = meant
	}
	if ends < 2 || len(b.Over) > 0 || len(b.Rods) > 0 {
		return nil
	}
	return m
}

// endTerm adds what one end holds of the members it is meant for.
func (a *Allowables) endTerm(c *Capacity, b *steel.Body, end int, on *placement.Laid, dir Direction) {
	meant := on.Member
	var good []steel.Fastener
	stray := map[string]int{}
	for _, f := range b.Fasteners {
		switch {
		case f.End != end:
		case len(f.Runs) == 0:
			stray["no wood"]++
		case together(f.Runs[0].Member, meant) || slices.Contains(on.Others, f.Runs[0].Member):
			good = append(good, f)
		default:
			stray["the "+string(f.Runs[0].Member.Role)]++
		}
	}
	if n := b.Piece.LeftOut(end); n > 0 {
		c.Terms = append(c.Terms, Term{steel.LeftOutText(n, b.Piece.Item.Ends()[end]) + ": nothing", 0, "lb"})
	}
	h := a.fasten.hold(b, meant, good, func(f steel.Fastener) geom.Vec3 { return force(b, f, dir) })
	if len(good) > 0 && good[0].Diameter >= steel.Large {
		a.grouped(&h, b, good, dir)
	}
	c.Terms = append(c.Terms, ofHeld(h, stray)...)
	name := b.Piece.Item.Ends()[end].Part
	c.least(Term{fmt.Sprintf("fasteners %s, %s", name, inWood(good, meant)+idle(h.None)), h.Value, "lb"},
		cmp.Or(fmt.Sprintf("fasteners %s in the %s, %s", name, meant.Role, h.Mode), h.Why))
	if h.Value == 0 {
		c.Unknown = fmt.Sprintf("no fastener %s holds the %s: %s", name, meant.Role, cmp.Or(h.Why, strays(stray), "there is none"))
	}
}

// inWood says how many fasteners are in which members, the one they are meant
// for first: "4 in the upper plate and 3 in the top plate".
func inWood(list []steel.Fastener, meant *framing.Member) string {
	count, order := map[plan.Role]int{}, []plan.Role{meant.Role}
	for _, f := range list {
		r := f.Runs[0].Member.Role
		if count[r]++; !slices.Contains(order, r) {
			order = append(order, r)
		}
	}
	words := make([]string, len(order))
	for i, r := range order {
		words[i] = fmt.Sprintf("%d in the %s", count[r], r)
	}
	return strings.Join(words, " and ")
}

// idle says how many of an end's fasteners hold nothing.
func idle(n int) string {
	if n == 0 {
		return ""
	}
	return fmt.Sprintf(", %d of them for nothing", n)
}

// endToEnd are the members that go on in the next of their role, spliced or over a
// support. Any other, as a stud, a truss or a header, carries a force of its own.
var endToEnd = []plan.Role{
	plan.BottomPlate, plan.SillPlate, plan.TopPlate, plan.UpperPlate, plan.Rim, plan.Ledger, plan.Ridge, plan.GirderBeam, plan.Beam,
}

// together tells whether a fastener in m is as good as one in the member that
// its end is meant for: the same, or one that goes on from it or lies on it.
func together(m, meant *framing.Member) bool {
	plate := func(x *framing.Member) bool { return x.Role == plan.TopPlate || x.Role == plan.UpperPlate }
	switch {
	case m == meant:
		return true
	case plate(m) && plate(meant):
		return true
	}
	return m.Role == meant.Role && slices.Contains(endToEnd, m.Role)
}

// force returns the direction of the force where a fastener is, unit: along
// the steel of a strap, upward or along the plate of anything else.
func force(b *steel.Body, f steel.Fastener, dir Direction) geom.Vec3 {
	p := b.PlateOf(f)
	if b.Piece.Item.Kind.Strap || dir == Endways {
		return p.B.Sub(p.A).Unit()
	}
	return geom.Vec3{Z: 1}
}

// ofHeld returns the terms of an end, with the fasteners that missed.
func ofHeld(h Held, stray map[string]int) []Term {
	out := slices.Clone(h.Terms)
	for _, where := range slices.Sorted(maps.Keys(stray)) {
		out = append(out, Term{fmt.Sprintf("%d fasteners in %s: nothing", stray[where], where), 0, "lb"})
	}
	return out
}

// strays says where the fasteners of an end are that miss its member.
func strays(stray map[string]int) string {
	for _, where := range slices.Sorted(maps.Keys(stray)) {
		return fmt.Sprintf("%d are in %s", stray[where], where)
	}
	return ""
}

// where takes the capacity that the catalog gives a piece down to what its
// body holds where it is: the fasteners of each end in the member that the end
// is meant for, and a bearing at both ends of its rod. It never raises it.
func (a *Allowables) where(p *placement.Piece, c Capacity, dir Direction) Capacity {
	if c.Unknown != "" {
		return c
	}
	c.Terms = slices.Clone(c.Terms)
	if upTheSlope(p, dir) {
		c.Unknown, c.Value = "a strap over the ridge pulls a rafter that has none opposite up its slope, not down", 0
		return c
	}
	b := a.steel.Body(p)
	a.endTerms(&c, b, dir)
	a.sectionTerm(&c, b)
	for _, r := range b.Rods {
		if !r.Bears() {
			c.Unknown = "its rod bears on nothing at one end: " + r.Why
		}
		if p.Joint.Kind == plan.GirderPile && !passesPile(r) {
			c.Unknown = "the bolt does not pass the pile; it goes through: " + wood.Passed(r.Passes)
		}
		for _, e := range r.Ends {
			if e.Kind == steel.OnWasher && p.Joint.Kind != plan.GirderPile { // there the bolt works across
				c.least(a.washer(e), "bearing under the washer")
			}
		}
	}
	if c.Unknown != "" {
		c.Value = 0
	}
	return c
}

// upTheSlope tells whether a strap over a ridge is asked to hold down a rafter that
// leans on no other one: it pulls along the rafter toward the ridge, which is up, and
// is peeled off where the rafter's end lifts (statics).
func upTheSlope(p *placement.Piece, dir Direction) bool {
	if dir != Upward || p.Joint.Kind != plan.RafterRidge || p.Item.Kind.Name != plan.RidgeStrapItem {
		return false
	}
	rafters := 0
	for _, m := range p.Joint.Members {
		if m.Role == plan.Rafter {
			rafters++
		}
	}
	return rafters < 2
}

// wetBearing is CM of Fc perpendicular to grain where the wood is wet (NDS 2018
// Supplement Table 4A, from memory).
const wetBearing = 0.67

// washer returns what the wood under a washer bears.
func (a *Allowables) washer(e steel.Bearing) Term {
	psi, wet := a.fasten.Species.FcPerp, ""
	if a.fasten.wet(e.Member) {
		psi, wet = psi*wetBearing, ", CM 0.67 wet"
	}
	return Term{a.units.Sprintf("washer on the %s: it bears on %.2f in² of wood, Fc perpendicular %.0f psi from memory%s", e.Member.Role, e.Area, psi, wet), e.Area * psi, "lb"}
}

// sectionTerm adds the tension of a strap through its holes where they are: at
// each row the whole force, straight across or in zigzag.
func (a *Allowables) sectionTerm(c *Capacity, b *steel.Body) {
	it := b.Piece.Item
	t := baseThickness(it)
	if !it.Kind.Strap || it.Width == 0 || t == 0 || strings.HasPrefix(c.Source, "maker") {
		return
	}
	metal, of := grade(it)
	bands := make([][]timber.Hole, len(b.Bands))
	for _, h := range b.Holes() {
		bands[h.Band] = append(bands[h.Band], timber.Hole{X: h.Along, Y: h.Across + it.Width/2, D: h.Diameter + hole})
	}
	for _, holes := range bands {
		v, err := timber.StrapTensionAt(it.Width, t, holes, metal)
		if err != nil {
			c.Unknown = err.Error()
			return
		}
		if v.Least < 0 {
			continue
		}
		row := v.Rows[v.Least]
		c.least(Term{a.units.Sprintf("strap %.3f{in} x %.4f in%s through %s %.2f in along it, %.3f in of width lost: gross yielding %.0f{lb}, net rupture %.0f lb (%s)",
			it.Width, t, of, plan.Counted(row.Holes, "hole"), row.X, row.Removed, v.Yield, v.Rupture, v.Source), v.Allow, "lb"}, "strap, "+v.Governs)
	}
}

// passesPile tells whether a bolt goes through a pile.
func passesPile(r *steel.Rod) bool {
	return slices.ContainsFunc(r.Passes, func(x steel.Run) bool { return x.Member.Role == plan.Pile })
}
