package framing

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/geom"
)

// framedGirder is a girder with its resolved extent.
type framedGirder struct {
	*plan.Girder
	body     body      // along the outer face, stations from the plan's point From
	lo, hi   geom.Vec2 // extent on plan
	z0, z1   float64
	lines    []span    // across the body: one, or one on each of two faces of the piles
	pieces   []*Member // line by line
	mirrored bool      // the house is
	told     bool      // that its notch is deep
}

// layGirders resolves where girders meet, before joists look for supports.
func (b *builder) layGirders() {
	if len(b.plan.Levels) == 0 {
		return
	}
	l := b.plan.Levels[0]
	top := l.Floor - l.FloorDepth
	b.girdersAt = geom.NewGrid[*framedGirder]()
	for _, g := range b.plan.Girders {
		f := geom.NewFrame(g.From, g.To)
		length, lines := g.To.Sub(g.From).Len(), linesOf(g, b.plan.Foundation.Pile)
		width := lines[len(lines)-1].hi
		f.Origin = f.At(0, -width/2, 0).Flat()
		fg := &framedGirder{Girder: g, mirrored: b.plan.Lay.Mirrored, body: body{f, 0, length, width}, lines: lines, z0: top - g.Member.Depth, z1: top}
		lo, hi := column(f, 0, length, 0, width).Bounds()
		fg.lo, fg.hi = lo.Flat(), hi.Flat()
		if length < width {
			b.girderFault(g, "girder-too-short", fmt.Sprintf("girder %s has no length", g.Name), "give it two ends that lie apart")
			continue
		}
		for _, o := range b.girdersNear(fg.lo, fg.hi) {
			b.meetGirders(o, fg)
		}
		b.girders = append(b.girders, fg)
		b.girdersAt.Add(fg, fg.lo.Up(0), fg.hi.Up(0), geom.Slant(g.From, g.To, width))
	}
}

// linesOf returns what of a girder lies across its width: all of it, or a half on each
// of two faces of a pile, as far apart as the wood left between their seats.
func linesOf(g *plan.Girder, pile plan.Lumber) []span {
	w := g.Line()
	if g.Seat != plan.SeatAstride {
		return []span{{0, w}}
	}
	between := g.Left(pile.Depth)
	return []span{{0, w}, {w + between, w + between + w}}
}

// meetGirders lets one girder end at the other's side: the later one where
// both could.
func (b *builder) meetGirders(o, g *framedGirder) {
	if g.body.inLine(o.body) {
		if lo, hi, ok := g.body.crossing(o.body); ok && lo < g.body.s1-near && hi > g.body.s0+near {
			b.girderFault(g.Girder, "girders-overlap", fmt.Sprintf("girder %s lies in girder %s", g.Name, o.Name), "join them into one or move one")
		}
		return
	}
	if endAt(&g.body, o.body) || endAt(&o.body, g.body) {
		return
	}
	if _, _, ok := g.body.crossing(o.body); ok && inReach(g.body, o.body) && inReach(o.body, g.body) {
		b.girderFault(g.Girder, "girders-cross", fmt.Sprintf("girders %s and %s cross at one height", g.Name, o.Name), "end one at the other's side and continue with a third")
	}
}

// girdersNear returns the girders within an inch of a rectangle.
func (b *builder) girdersNear(lo, hi geom.Vec2) []*framedGirder {
	if b.girdersAt == nil {
		return nil
	}
	by := geom.Vec2{X: 1, Y: 1}
	return b.girdersAt.Within(lo.Sub(by).Up(0), hi.Add(by).Up(0))
}

func inReach(a, o body) bool {
	lo, hi, ok := a.crossing(o)
	return ok && lo < a.s1 && hi > a.s0
}

// endAt trims the end of a that lies in o, if one does and o reaches there.
func endAt(a *body, o body) bool {
	lo, hi, ok := a.crossing(o)
	if !ok {
		return false
	}
	switch {
	case a.s0 > lo-near && a.s0 < hi+near:
		a.s0 = hi
	case a.s1 > lo-near && a.s1 < hi+near:
		a.s1 = lo
	default:
		return false
	}
	return true
}

func (b *builder) girderFault(g *plan.Girder, code plan.Code, what, mend string) {
	b.fault(plan.Diagnostic{Code: code, Pos: g.Pos, Where: "girder " + g.Name, Summary: what, Mend: mend})
}

// foundation adds girders and piles.
func (b *builder) foundation() {
	b.pileTops()
	for _, g := range b.girders {
		b.girder(g)
		b.piles(g)
	}
}

// pileTops warns of a height of the piles that is not that of the girders
// they carry. Piles are drawn up to their girder in any case.
func (b *builder) pileTops() {
	f := b.plan.Foundation
	if f.Kind != plan.Piles || f.PileTop == 0 || len(b.girders) == 0 {
		return
	}
	for _, g := range b.girders {
		if math.Abs(g.z0-f.PileTop) < sixteenth {
			return
		}
	}
	b.fault(plan.Diagnostic{
		Severity: plan.Warning, Code: "pile-top", Pos: f.Pos, Where: "foundation",
		Summary: fmt.Sprintf("the piles' tops are given at %s and the underside of girder %s is at %s", b.inches(f.PileTop), b.girders[0].Name, b.inches(b.girders[0].z0)),
		Mend:    "leave pile_top out, and the piles end under their girders",
	})
}

// girder adds the girder, broken over piles where longer than the stock: line by line.
func (b *builder) girder(g *framedGirder) {
	for i, line := range g.lines {
		sec := g.Member
		if len(g.lines) > 1 {
			sec = halved(sec)
		}
		var pieces []*Member
		b.eachPart(append(append([]float64{g.body.s0}, b.cutsOver(g.Piles, g.body.s0, g.body.s1)...), g.body.s1), func(from, to float64) {
			m := b.lying(plan.GirderBeam, g.body.f, from, to, line.lo, line.hi, g.z0, g.z1)
			m.ID, m.Section, m.Level = fmt.Sprintf("%s/girder@%s%s", g.Name, at(from), suffix(i+1)), sec, b.plan.Levels[0]
			pieces = append(pieces, b.member(m))
			if i == 0 {
				b.packing(g, from, to)
			}
		})
		g.pieces = append(g.pieces, b.inOrder(pieces)...)
	}
}

// halved returns the section of half of the plies.
func halved(l plan.Lumber) plan.Lumber {
	l.Ply /= 2
	_, one, _ := strings.Cut(l.Text, "-")
	if l.Text = one; l.Ply > 1 {
		l.Text = fmt.Sprintf("%d-%s", l.Ply, one)
	}
	return l
}

// byLine returns the pieces of each line, in order.
func (g *framedGirder) byLine() [][]*Member {
	if len(g.lines) < 2 {
		return [][]*Member{g.pieces}
	}
	n := len(g.pieces) / 2
	return [][]*Member{g.pieces[:n], g.pieces[n:]}
}

// packing adds the boards on the girder's right face that bring it out to what
// stands over it. Straps of the girder that are there first are cut out of them.
func (b *builder) packing(g *framedGirder, from, to float64) {
	if g.Packing <= 0 {
		return
	}
	m := b.lying(plan.Packing, g.body.f, from, to, -g.Packing, 0, g.z0, g.z1)
	deep := g.z1 - g.z0
	m.ID, m.Level = fmt.Sprintf("%s/packing@%s", g.Name, at(from)), b.plan.Levels[0]
	m.Section = plan.Lumber{Ply: 1, Breadth: g.Packing, Depth: deep, Text: b.inches(g.Packing) + " x " + b.inches(deep)}
	b.member(m)
}

// cutsOver returns the places of supports over which something from lo to hi
// is spliced, where it is longer than the stock; none once it must be had in
// one length because there is no support to break over.
func (b *builder) cutsOver(supports []float64, lo, hi float64) []float64 {
	return fromStart(b.plan.Lay.Mirrored, lo, hi, func(lo, hi, way float64) []float64 {
		at := slices.Clone(supports)
		for i := range at {
			at[i] *= way
		}
		return cutsOver(at, lo, hi, b.longest())
	})
}

// cutsOver is that from lo on.
func cutsOver(supports []float64, lo, hi, longest float64) (cuts []float64) {
	at := slices.Sorted(slices.Values(supports))
	for from := lo; hi-from > longest+geom.Eps; {
		next := from
		for _, p := range at {
			if p > next+geom.Eps && p <= from+longest+geom.Eps && p < hi {
				next = p
			}
		}
		if next == from {
			return cuts
		}
		cuts, from = append(cuts, next), next
	}
	return cuts
}

// piles stands a pile under each station of g, unless another girder has one
// there, and ties girder to pile.
func (b *builder) piles(g *framedGirder) {
	sec := b.plan.Foundation.Pile
	line := geom.NewFrame(g.From, g.To)
	for _, s := range g.Piles {
		if s < -near || s > g.To.Sub(g.From).Len()+near {
			b.girderFault(g.Girder, "pile-off-girder", fmt.Sprintf("a pile at %s is off girder %s", b.inches(s), g.Name), "give stations along the girder, from its start")
			continue
		}
		if sec.Depth == 0 {
			continue
		}
		p := line.At(s, 0, 0)
		pile := b.pileAt(line.At(s, g.aside(sec), 0).Flat(), max(sec.Breadth, sec.Depth)/2)
		if pile == nil {
			pile = b.pile(g, line, s, sec)
		}
		var members []*Member
		for _, pieces := range g.byLine() {
			members = append(members, b.inOrder(g.over(pieces, s))...)
		}
		b.joint(&Joint{
			Seat: g.seatOn(members, pile),
			Kind: plan.GirderPile, Host: g.Name, Level: b.plan.Levels[0], Station: s, At: geom.Vec3{X: p.X, Y: p.Y, Z: g.z0},
			Members: append(members, pile), Below: true, Gap: max(g.z0-pile.Z1, 0), Tributary: shareOf(g.Piles, s, g.body.s0, g.body.s1),
		})
	}
}

// over returns those of a line's pieces that lie over the pile at station s; where the
// end was cut back to another girder, the last one before it.
func (g *framedGirder) over(pieces []*Member, s float64) (out []*Member) {
	for _, m := range pieces {
		if x, _ := g.body.f.Local(m.A.Flat()); s >= x-near && s <= x+m.Length+near {
			out = append(out, m)
		}
	}
	if len(out) == 0 && len(pieces) > 0 {
		out = append(out, pieces[min(1, int(math.Round(s/g.body.s1)))*(len(pieces)-1)])
	}
	return out
}

// inOrder returns members along something in the order of the house as written.
func (b *builder) inOrder(list []*Member) []*Member {
	if b.plan.Lay.Mirrored {
		slices.Reverse(list)
	}
	return list
}

// written returns the pieces in the order of the house as written.
func (g *framedGirder) written() (list []*Member) {
	for _, line := range g.byLine() {
		line = slices.Clone(line)
		if g.mirrored {
			slices.Reverse(line)
		}
		list = append(list, line...)
	}
	return list
}

// seatOn tells how the pieces of a girder sit on a pile, by their solids.
func (g *framedGirder) seatOn(pieces []*Member, pile *Member) Seat {
	over, beside := false, false
	if g.astride(pieces, pile) {
		return Astride
	}
	for _, m := range pieces {
		lo, hi := m.Bounds()
		a, z := pile.Bounds()
		wide := func(d float64) bool {
			return lo.X < z.X+d && a.X < hi.X+d && lo.Y < z.Y+d && a.Y < hi.Y+d
		}
		over, beside = over || wide(-sixteenth), beside || wide(sixteenth)
	}
	gap := g.z0 - pile.Z1
	switch {
	case over && math.Abs(gap) < sixteenth:
		return OnTop
	case over && gap > 0:
		return Clear
	case over:
		return Notched
	case beside && gap < 0:
		return Beside
	}
	return Apart
}

// astride tells whether pieces of both lines lie against a pile that stands between them.
func (g *framedGirder) astride(pieces []*Member, pile *Member) bool {
	reach := make([]bool, len(g.lines))
	for _, m := range pieces {
		_, t := g.body.f.Local(m.A.Flat())
		for i, line := range g.lines {
			lo, hi := m.Bounds()
			a, z := pile.Bounds()
			touch := lo.X < z.X+sixteenth && a.X < hi.X+sixteenth && lo.Y < z.Y+sixteenth && a.Y < hi.Y+sixteenth
			reach[i] = reach[i] || line.lo < t && t < line.hi && touch && pile.Z1 > g.z0
		}
	}
	return len(reach) > 1 && !slices.Contains(reach, false)
}

// shareOf returns the length between lo and hi that the support at s carries,
// one of those at the given places: half way to its neighbors.
func shareOf(supports []float64, s, lo, hi float64) float64 {
	for _, p := range supports {
		if p < s-geom.Eps {
			lo = max(lo, (p+s)/2)
		}
		if p > s+geom.Eps {
			hi = min(hi, (p+s)/2)
		}
	}
	return hi - lo
}

// pileAt returns the pile that stands within r of p, or nil.
func (b *builder) pileAt(p geom.Vec2, r float64) *Member {
	lo := geom.Vec3{X: p.X - r, Y: p.Y - r, Z: math.Inf(-1)}
	hi := geom.Vec3{X: p.X + r, Y: p.Y + r, Z: math.Inf(1)}
	for _, m := range b.index.Within(lo, hi) {
		if m.Role == plan.Pile && m.A.Flat().Sub(p).Len() <= r {
			return m
		}
	}
	return nil
}

// aside returns how far the middle of a pile of a section stands to the left of
// the girder's center line, in: none of it where the girder sits on top or astride;
// in a notch its outer face is flush with the girder's, or behind it by what the
// notch is less deep, and beside it touches.
func (g *framedGirder) aside(sec plan.Lumber) float64 {
	switch g.Seat {
	case plan.SeatNotch:
		return g.body.d/2 - g.Cut() + sec.Depth/2
	case plan.SeatBeside:
		return (sec.Depth + g.body.d) / 2
	}
	return 0
}

// pile adds one pile, from grade (or a foot below the girder, if that is
// lower) to the girder's underside, or up behind it where it is notched for the
// girder, stands beside it or between its halves.
func (b *builder) pile(g *framedGirder, line geom.Frame, s float64, sec plan.Lumber) *Member {
	z0, z1 := min(0, g.z0-12), g.z0+g.Behind()
	w, t := sec.Width(), g.aside(sec)
	lo, hi := t-sec.Depth/2, t+sec.Depth/2
	solid := []geom.Solid{line.Box(s-w/2, s+w/2, lo, hi, z0, z1)}
	if cut := g.Cut(); cut > 0 {
		up, down := lo+cut, hi
		if g.Seat == plan.SeatAstride {
			down -= cut
		}
		solid = []geom.Solid{line.Box(s-w/2, s+w/2, lo, hi, z0, g.z0), line.Box(s-w/2, s+w/2, up, down, g.z0, z1)}
		b.checkNotch(g, sec)
	}
	return b.member(&Member{
		ID: fmt.Sprintf("%s/pile@%s", g.Name, at(s)), Role: plan.Pile, Level: b.plan.Levels[0], Section: sec, Length: z1 - z0, Z0: z0, Z1: z1,
		A: line.At(s, t, z0), B: line.At(s, t, z1), Solid: solid,
	})
}

// NotchSource is where it is read that a notch takes half of a pile's section at most.
const NotchSource = "FEMA P-499 fact sheet 3.3, 12/2010, read"

// checkNotch warns once of seats that take more than half of the section of a
// girder's piles (FEMA P-55 vol. II Fig. 13-4 and P-499 fact sheet 3.3, 12/2010, read).
func (b *builder) checkNotch(g *framedGirder, sec plan.Lumber) {
	left := g.Left(sec.Depth)
	if left >= sec.Depth/2-near/2 || g.told {
		return
	}
	g.told = true
	notch := "its notch of " + b.inches(g.Cut()) + " leaves"
	if g.Seat == plan.SeatAstride {
		notch = "its seats of " + b.inches(g.Cut()) + " in both faces leave"
	}
	b.fault(plan.Diagnostic{
		Severity: plan.Warning, Code: "notch-past-half", Pos: g.Pos, Where: "girder " + g.Name,
		Summary: fmt.Sprintf("girder %s: %s %s of piles %s thick, less than half (%s)", g.Name, notch, b.inches(left), b.inches(sec.Depth), NotchSource),
		Mend:    "cut less, take a girder of fewer plies, larger piles, or another seat",
	})
}

// sillPlates runs the sill plate on a stem wall under the rim, cut out where
// a girder lies in its pocket.
func (b *builder) sillPlates(d *deck) {
	sill := b.plan.Foundation.Sill
	if sill.Depth == 0 {
		return
	}
	for _, loop := range d.loops {
		for i, s := range stripsOf(loop, sill.Depth) {
			w := loop[i].w
			runs := []span{{s.s0, s.s1}}
			for _, g := range b.girdersNear(w.extent()) {
				if lo, hi, ok := s.crossing(g.body); ok {
					runs = without(runs, span{lo, hi})
				}
			}
			for _, r := range runs {
				if r.hi-r.lo > plate {
					w.sills = append(w.sills, b.strip(w, d.level, plan.SillPlate, body{s.f, r.lo, r.hi, s.d}, sill, d.z0-sill.Width(), d.z0)...)
				}
			}
		}
	}
}
