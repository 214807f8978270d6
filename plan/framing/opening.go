package framing

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/units"
)

// framedOpening is a rough opening with what has been found for it.
type framedOpening struct {
	*plan.Opening
	jacks, kings int
	lo, hi       float64 // jacks' inside faces
	h0, h1       float64 // ends of the header: faces of the inner kings
	sill, head   float64 // above grade: top of the sill (or subfloor), foot of the header
	top          float64 // top of the header
	header       *Member
	sillPlate    *Member
	jack         []*Member
}

// upright notes a member that stands beside the opening.
func (o *framedOpening) upright(m *Member) {
	if m.Role == plan.Jack {
		o.jack = append(o.jack, m)
	}
}

// openings checks the wall's openings and puts their kings and jacks into l.
func (b *builder) openings(w *framedWall, l *layout) {
	list := slices.Clone(w.Openings)
	slices.SortStableFunc(list, func(x, y *plan.Opening) int { return cmp.Compare(x.At, y.At) })
	for _, o := range list {
		f := b.openingOf(w, o)
		if f == nil {
			continue
		}
		if n := len(w.openings); n > 0 && f.lo < w.openings[n-1].hi+plate {
			b.openingFault(w, o, "openings-overlap", fmt.Sprintf("opening %s meets opening %s beside, above or below it", o.Name, w.openings[n-1].Name),
				"leave room for a jack on each side and a king between them")
			continue
		}
		w.openings = append(w.openings, f)
	}
	if len(w.openings) == 0 {
		return
	}
	w.openings = slices.DeleteFunc(w.openings, func(o *framedOpening) bool { return !b.fits(w, o) })
	w.openings = b.apart(w)
	for i, o := range w.openings {
		l.put(slot{span: span{o.lo, o.hi}})
		if i == 0 {
			leftEnd(w, l, o)
		} else {
			between(l, w.openings[i-1], o)
		}
	}
	if n := len(w.openings); n > 0 {
		rightEnd(w, l, w.openings[n-1])
	}
}

// openingOf resolves heights and numbers of one opening, or faults it.
func (b *builder) openingOf(w *framedWall, o *plan.Opening) *framedOpening {
	f := &framedOpening{Opening: o, lo: o.At, hi: o.End(), jacks: b.jacks(w, o), kings: kings(w, o)}
	f.sill = w.floor + max(o.Sill, 0)
	f.head = f.sill + o.Height
	f.top = f.head + headerDepth(w, o)
	f.h0, f.h1 = f.lo-plate*float64(f.jacks), f.hi+plate*float64(f.jacks)
	for _, t := range openingTests {
		if what, mend := t.run(b.plan.Project.Units, w, f); what != "" {
			b.openingFault(w, o, t.code, what, mend)
			return nil
		}
	}
	return f
}

// headerDepth returns the height of the header over o: a plate laid flat
// where a wall that bears nothing names none (common practice, no published
// source).
func headerDepth(w *framedWall, o *plan.Opening) float64 {
	if o.Header.Ply == 0 {
		return plate
	}
	return o.Header.Depth
}

// openingTests are the ways in which an opening cannot be framed by itself.
var openingTests = []struct {
	code plan.Code
	run  func(units.System, *framedWall, *framedOpening) (what, mend string)
}{
	{"opening-no-size", func(u units.System, w *framedWall, o *framedOpening) (string, string) {
		if o.Width < plate || o.Height < plate {
			return fmt.Sprintf("opening %s is %s wide and %s high", o.Name, u.Length(o.Width), u.Length(o.Height)), "give it a width and a height"
		}
		return "", ""
	}},
	{"header-missing", func(u units.System, w *framedWall, o *framedOpening) (string, string) {
		if o.Header.Ply == 0 && (w.Bearing || w.Exterior) {
			return fmt.Sprintf("opening %s has no header in a wall that carries load", o.Name), `name one: header = "2-2x10"`
		}
		return "", ""
	}},
	{"header-too-high", func(u units.System, w *framedWall, o *framedOpening) (string, string) {
		if over := o.top - w.head; !w.rake() && over > geom.Eps {
			return fmt.Sprintf("the header over %s reaches %s into the top plates", o.Name, u.Length(over)),
				fmt.Sprintf("lower its head by that, or take a header no deeper than %s", u.Length(w.head-o.head))
		}
		return "", ""
	}},
	{"header-too-thick", func(u units.System, w *framedWall, o *framedOpening) (string, string) {
		if over := o.Header.Width() - w.Depth(); over > geom.Eps {
			return fmt.Sprintf("the header over %s is %s thick in a wall %s deep", o.Name, u.Length(o.Header.Width()), u.Length(w.Depth())),
				"take fewer plies"
		}
		return "", ""
	}},
	{"sill-too-low", func(u units.System, w *framedWall, o *framedOpening) (string, string) {
		if o.Sill > geom.Eps && o.Sill < 2*plate-geom.Eps {
			return fmt.Sprintf("the sill of %s lies %s above the floor, within the bottom plate and the sill itself (%s)", o.Name, u.Length(o.Sill), u.Length(2*plate)),
				"raise it, or leave sill out to open it to the floor"
		}
		return "", ""
	}},
}

// fits faults an opening that another wall meets, or that lies too near the
// wall's end for jack and king.
func (b *builder) fits(w *framedWall, o *framedOpening) bool {
	for _, m := range w.meets {
		if m.end == 0 && o.sill < m.other.top && m.other.floor < o.top && (span{m.lo, m.hi}).meets(span{o.lo, o.hi}) {
			b.openingFault(w, o.Opening, "wall-in-opening", fmt.Sprintf("wall %s meets wall %s in opening %s", m.other.Name, w.Name, o.Name),
				"move the wall or the opening")
			return false
		}
	}
	need := plate * float64(o.jacks+1)
	room, end := o.lo-w.s0, "start"
	if r := w.s1 - o.hi; r < room {
		room, end = r, "end"
	}
	if room < need-geom.Eps {
		b.openingFault(w, o.Opening, "opening-near-end",
			fmt.Sprintf("opening %s leaves %s to the %s of wall %s; %s and the end stud need %s", o.Name, b.inches(room), end, w.Name, number(o.jacks, "jack"), b.inches(need)),
			fmt.Sprintf("move it by %s or more, or make it narrower", b.inches(need-room)))
		return false
	}
	return true
}

// apart returns the openings that leave room for their jacks and one king
// between each other, and faults the rest.
func (b *builder) apart(w *framedWall) (out []*framedOpening) {
	for _, o := range w.openings {
		if len(out) > 0 {
			last := out[len(out)-1]
			if need := last.jacks + o.jacks + 1; fit(o.lo-last.hi) < need {
				b.openingFault(w, o.Opening, "openings-too-near",
					fmt.Sprintf("openings %s and %s leave %s between them; their jacks and one king need %s", last.Name, o.Name,
						b.inches(o.lo-last.hi), b.inches(plate*float64(need))), "move them apart")
				continue
			}
		}
		out = append(out, o)
	}
	return out
}

// leftEnd frames between the wall's start and its first opening. The end
// stud serves as king where there is no room for one of its own.
func leftEnd(w *framedWall, l *layout, o *framedOpening) {
	n := min(o.kings, fit(o.lo-w.s0-plate)-o.jacks)
	o.h0 = stack(l, o, o.lo, -1, n)
	if n <= 0 {
		o.h0 = w.s0 + plate
	}
}

// between frames between two openings, which share kings where there is no
// room for both sets.
func between(l *layout, before, o *framedOpening) {
	kings := fit(o.lo-before.hi) - o.jacks - before.jacks
	if kings >= o.kings+before.kings {
		before.h1 = stack(l, before, before.hi, 1, before.kings)
		o.h0 = stack(l, o, o.lo, -1, o.kings)
		return
	}
	before.h1 = stack(l, before, before.hi, 1, kings)
	stack(l, o, o.lo, -1, 0)
	o.h0 = before.h1 + plate*float64(kings)
}

// rightEnd frames between o and the wall's end.
func rightEnd(w *framedWall, l *layout, o *framedOpening) {
	n := min(o.kings, fit(w.s1-plate-o.hi)-o.jacks)
	o.h1 = stack(l, o, o.hi, 1, n)
	if n <= 0 {
		o.h1 = w.s1 - plate
	}
}

// fit returns how many studs stand side by side in a space.
func fit(space float64) int { return int(math.Floor((space + geom.Eps) / plate)) }

// stack puts o's jacks and then n kings from the edge of the opening outward
// (dir 1 to the right) and returns the inner face of the first king.
func stack(l *layout, o *framedOpening, edge, dir float64, n int) float64 {
	face := edge + dir*plate*float64(o.jacks)
	for i := range o.jacks + n {
		role := plan.Jack
		if i >= o.jacks {
			role = plan.King
		}
		a, z := edge, edge+dir*plate
		l.put(slot{span: span{min(a, z), max(a, z)}, role: role, opening: o})
		edge = z
	}
	return face
}

// openingFault notes an error of an opening.
func (b *builder) openingFault(w *framedWall, o *plan.Opening, code plan.Code, what, mend string) {
	b.fault(plan.Diagnostic{Code: code, Pos: o.Pos, Where: fmt.Sprintf("wall %s, opening %s", w.Name, o.Name), Summary: what, Mend: mend})
}
