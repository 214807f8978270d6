package framing

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// extraJoist is a joist beside those at the spacing, in its floor.
type extraJoist struct {
	*plan.FloorJoist
	section plan.Lumber
	wide    span   // across the joists
	asked   span   // along them, as the plan has it
	long    []span // what of it lies in each bay
}

// extraJoists finds the joists that a plan adds to one floor; of those that cannot lie
// there it tells.
func (b *builder) extraJoists(d *deck) {
	runs := b.runOf(d.level)
	for _, x := range b.plan.FloorJoists {
		mid := x.From.Add(x.To).Mul(0.5)
		if x.Level != d.level || d.level.Joists.Depth == 0 || !d.holds(mid) {
			continue
		}
		b.placed[x.Name] = true
		s0, t0 := runs.Local(x.From)
		s1, t1 := runs.Local(x.To)
		e := &extraJoist{FloorJoist: x, section: x.Member, asked: span{min(s0, s1), max(s0, s1)}}
		if e.section.Depth == 0 {
			e.section = d.level.Joists
		}
		half := e.section.Width() / 2
		e.wide = span{(t0+t1)/2 - half, (t0+t1)/2 + half}
		switch {
		case math.Abs(t1-t0) > sixteenth:
			b.joistFault(x, "joist-off-run", fmt.Sprintf("joist %s does not run along the joists of level %s", x.Name, d.level.Name), "give its two ends one place across them; what lies across joists is [[blocking]] or a [[beam]]")
		case math.Abs(e.section.Depth-d.level.Joists.Depth) > sixteenth:
			b.joistFault(x, "joist-depth", fmt.Sprintf("joist %s is %s deep and the joists of level %s %s", x.Name, b.inches(e.section.Depth), d.level.Name, b.inches(d.level.Joists.Depth)), "take lumber as deep as the joists")
		case b.bearsExtra(d, e):
			d.extra = append(d.extra, e)
		}
	}
}

// bearsExtra cuts a joist into the bays that it reaches, and to what joists end at where
// it reaches past that; false where an end lies over nothing, or in the way of an opening
// or another such joist, which it tells.
func (b *builder) bearsExtra(d *deck, e *extraJoist) bool {
	band, bays := d.free(e.wide.lo, e.wide.hi)
	for _, bay := range bays {
		one := span{max(bay.lo, e.asked.lo), min(bay.hi, e.asked.hi)}
		if one.hi-one.lo < 2*plate {
			continue
		}
		for i, end := range [2]*float64{&one.lo, &one.hi} {
			stop := []float64{bay.lo, bay.hi}[i]
			at, ok := d.carriedAt(band, *end)
			switch {
			case math.Abs(stop-*end) < near:
				*end = stop
			case ok:
				*end = at
			default:
				b.joistFault(e.FloorJoist, "joist-in-the-air", fmt.Sprintf("an end of joist %s, at %s along the joists, lies over no girder, bearing wall or dropped beam", e.Name, b.inches(*end)),
					fmt.Sprintf("let it reach to what joists end at, %s, or end it over what carries them", b.inches(stop)))
				return false
			}
		}
		e.long = append(e.long, one)
	}
	if len(e.long) == 0 {
		b.joistFault(e.FloorJoist, "joist-off-floor", fmt.Sprintf("joist %s does not lie free in the floor of level %s", e.Name, d.level.Name), "keep it clear of rims, ledgers, beams and walls along it")
		return false
	}
	return b.clearExtra(d, e)
}

// clearExtra tells of an opening or another added joist in a joist's way.
func (b *builder) clearExtra(d *deck, e *extraJoist) bool {
	for _, h := range d.wells {
		if h.over().meets(e.wide) && anyMeets(e.long, h.cut()) {
			b.joistFault(e.FloorJoist, "joists-meet", fmt.Sprintf("joist %s lies in floor opening %s or its trimmers", e.Name, h.Name), "move it; the trimmers' size is a key of the opening")
			return false
		}
	}
	for _, o := range d.extra {
		if o.wide.meets(e.wide) && slices.ContainsFunc(e.long, func(s span) bool { return anyMeets(o.long, s) }) {
			b.joistFault(e.FloorJoist, "joists-meet", fmt.Sprintf("joists %s and %s take the same place", o.Name, e.Name), "move one, or write one of more plies")
			return false
		}
	}
	return true
}

// carriedAt returns the middle of the girder, bearing wall or dropped beam that lies under
// a band at a station of it, over which joists meet; false where there is none.
func (d *deck) carriedAt(band body, s float64) (float64, bool) {
	for _, o := range d.supports {
		if lo, hi, ok := band.crossing(o); ok && !band.inLine(o) && s > lo-near && s < hi+near {
			return (lo + hi) / 2, true
		}
	}
	return 0, false
}

// aroundExtra takes out of the spans of one joist at the spacing what the added joists
// take.
func (d *deck) aroundExtra(spans []span, lo, hi float64) []span {
	for _, e := range d.extra {
		if e.wide.meets(span{lo, hi}) {
			for _, s := range e.long {
				spans = without(spans, s)
			}
		}
	}
	return spans
}

// layExtra adds the joists.
func (b *builder) layExtra(d *deck) {
	for _, e := range d.extra {
		band, _ := d.free(e.wide.lo, e.wide.hi)
		from := len(b.house.Members)
		for _, s := range e.long {
			b.joistRun(d, band, s, fmt.Sprintf("%s/%s joist@%s", d.level.Name, e.Name, at(e.wide.mid())), e.section)
		}
		b.house.Added = append(b.house.Added, &Added{e.Name, d.level, false, slices.Clone(b.house.Members[from:])})
	}
}

// floorBlocks adds the rows of blocks that a plan asks for between the joists of a floor:
// one in each bay that the row crosses, from joist to joist.
func (b *builder) floorBlocks(d *deck) {
	runs := b.runOf(d.level)
	for _, x := range b.plan.FloorBlocks {
		mid := x.From.Add(x.To).Mul(0.5)
		if x.Level != d.level || d.level.Joists.Depth == 0 || !d.holds(mid) {
			continue
		}
		b.placed[x.Name] = true
		s0, t0 := runs.Local(x.From)
		s1, t1 := runs.Local(x.To)
		if math.Abs(s1-s0) > sixteenth {
			b.blockFault(x, "blocking-off-square", fmt.Sprintf("blocking %s does not lie square across the joists of level %s", x.Name, d.level.Name), "give its two ends one place along them")
			continue
		}
		half := d.level.Joists.Breadth / 2
		f := geom.Frame{Origin: runs.At((s0+s1)/2-half, 0, 0).Flat(), D: runs.In, In: runs.D}
		row := body{f, min(t0, t1), max(t0, t1), 2 * half}
		list := b.layBlocks(d, x.Name, row, func(span) bool { return true })
		b.house.Added = append(b.house.Added, &Added{x.Name, d.level, true, list})
		if len(list) == 0 {
			b.blockFault(x, "blocking-no-bay", fmt.Sprintf("blocking %s crosses no bay between two joists of level %s", x.Name, d.level.Name), "let it reach from joist to joist, clear of openings")
		}
	}
}

// layBlocks adds the blocks of one row that are kept and returns them.
func (b *builder) layBlocks(d *deck, name string, row body, keep func(span) bool) (out []*Member) {
	box := row.f.Box(row.s0-1, row.s1+1, 0, row.d, d.z0, d.z1)
	lo, hi := box.Bounds()
	spans, edges := []span{{row.s0 - 1, row.s1 + 1}}, []span{}
	for _, m := range b.index.Within(lo, hi) {
		for _, s := range m.Solid {
			if !geom.Overlap(box, s, 0.01) {
				continue
			}
			part := clipTo(box, s.Planes())
			a, z := part.Along(row.f.D.Up(0))
			from := row.f.Origin.Dot(row.f.D)
			cut := span{a - from, z - from}
			spans = without(spans, cut)
			if m.Role == plan.Joist || m.Role == plan.Rim || m.Role == plan.Ledger || m.Role == plan.FlushBeam {
				edges = append(edges, cut)
			}
		}
	}
	for _, h := range d.wells {
		runs := b.runOf(d.level)
		if at, _ := runs.Local(row.f.Origin); h.cut().meets(span{at, at + row.d}) {
			spans = without(spans, h.wide)
		}
	}
	for _, s := range spans {
		if !keep(s) || s.hi-s.lo < 2*plate || !touchesAny(edges, s.lo) || !touchesAny(edges, s.hi) {
			continue
		}
		m := b.lying(plan.Blocking, row.f, s.lo, s.hi, 0, row.d, d.z0, d.z1)
		m.ID, m.Level = fmt.Sprintf("%s/%s block@%s", d.level.Name, name, at(s.mid()-row.s0)), d.level
		m.Section = plan.Lumber{Ply: 1, Breadth: d.level.Joists.Breadth, Depth: d.level.Joists.Depth, Text: d.level.Joists.Times(1).Text}
		out = append(out, b.member(m))
	}
	return out
}

// touchesAny tells whether an end of what lies in a row meets a face of one of the
// members across it.
func touchesAny(edges []span, s float64) bool {
	for _, e := range edges {
		if math.Abs(e.lo-s) < sixteenth || math.Abs(e.hi-s) < sixteenth {
			return true
		}
	}
	return false
}

// lostJoists tells of joists and blocks that lie in no floor.
func (b *builder) lostJoists() {
	for _, x := range b.plan.FloorJoists {
		if !b.placed[x.Name] {
			b.joistFault(x, "joist-off-floor", fmt.Sprintf("joist %s does not lie in a floor with joists of level %s", x.Name, x.Level.Name), "give points inside its walls, [east, north]")
		}
	}
	for _, x := range b.plan.FloorBlocks {
		if !b.placed[x.Name] {
			b.blockFault(x, "blocking-off-floor", fmt.Sprintf("blocking %s does not lie in a floor with joists of level %s", x.Name, x.Level.Name), "give points inside its walls, [east, north]")
		}
	}
}

func (b *builder) joistFault(x *plan.FloorJoist, code plan.Code, what, mend string) {
	b.fault(plan.Diagnostic{Code: code, Pos: x.Pos, Where: "joist " + x.Name, Summary: what, Mend: mend})
}

func (b *builder) blockFault(x *plan.FloorBlocks, code plan.Code, what, mend string) {
	b.fault(plan.Diagnostic{Code: code, Pos: x.Pos, Where: "blocking " + x.Name, Summary: what, Mend: mend})
}
