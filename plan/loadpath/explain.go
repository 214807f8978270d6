package loadpath

import (
	"fmt"
	"math"
	"strings"

	"galewright/plan/capacity"
	"galewright/plan/framing"
	"galewright/plan/units"
)

// Explain returns the arithmetic of every link that a name stands for (see
// Named), or "" when the load path has none. Whoever prints it adds the caution.
func (r *Report) Explain(name string) string {
	var b strings.Builder
	told := map[*LineShear]bool{}
	for _, l := range r.Named(name) {
		fmt.Fprintf(&b, "%s (%s), %s\n", l.Check.Title, l.Check.ID, l.Where)
		fmt.Fprintf(&b, "  %s\n  governing case: %s\n", l.Check.Doc, l.Case)
		if x := r.LineOf(l); x != nil && !told[x] {
			told[x] = true
			for _, s := range r.LineWorkings(x) {
				fmt.Fprintf(&b, "    %s\n", s)
			}
		}
		for _, s := range r.Workings(l) {
			fmt.Fprintf(&b, "    %s\n", s)
		}
		for _, t := range l.Terms {
			b.WriteString(termLine(r.Units(), "demand", t))
		}
		fmt.Fprintf(&b, "  %s\n", l.demandText(r.Units()))
		if c := l.Capacity; c != nil && c.Unknown == "" {
			for _, t := range c.Terms {
				b.WriteString(termLine(r.Units(), "capacity", Term(t)))
			}
			fmt.Fprintf(&b, "  capacity %s%s, %s; governs: %s\n", Amount(r.Units(), c.Value, l.Unit), c.Starred(), c.Source, c.Governs)
		}
		if l.Gap != "" {
			fmt.Fprintf(&b, "  gap: %s\n", l.Gap)
		} else if !math.IsInf(l.Ratio, 0) {
			fmt.Fprintf(&b, "  %s\n", ratioText(l))
		}
		if l.Capacity.Starred() != "" {
			fmt.Fprintf(&b, "  %s\n", capacity.StarNote)
		}
		for _, n := range l.Notes {
			fmt.Fprintf(&b, "  note: %s\n", n)
		}
	}
	return b.String()
}

// demandText is the demand of a link, a force at strength level too.
func (l *Link) demandText(u units.System) string {
	if l.Check.ID == limitCheck {
		return "of the house " + Amount(u, l.Demand, l.Unit)
	}
	return fmt.Sprintf("demand %s (%s at strength level)", Amount(u, l.Demand, l.Unit), u.Number(l.Strength, l.Unit, 0))
}

// Number prints a number of a unit in the words of a system; in the US one forces whole, pressures to the tenth, all else to the
// hundredth.
func Number(u units.System, v float64, unit string) string {
	switch unit {
	case "psf":
		return u.Number(v, unit, 1)
	case "lb", "plf", "lb-ft", "stories":
		return u.Number(v, unit, 0)
	}
	return u.Number(v, unit, 2)
}

// Amount prints a number with its unit.
func Amount(u units.System, v float64, unit string) string {
	return strings.TrimSpace(Number(u, v, unit) + " " + u.Unit(unit))
}

func termLine(u units.System, what string, t Term) string {
	return fmt.Sprintf("    %-9s %10s %-5s %s\n", what, Number(u, t.Value, t.Unit), u.Unit(t.Unit), t.Text)
}

// inEnd returns the part of a strip's stretch that lies in the end zone.
func (rc roofCase) inEnd(s *strip) float64 {
	if s.along1 <= s.along0 {
		return 0
	}
	return overlap(s.along0, s.along1, rc.zones.end0, rc.zones.end1) / (s.along1 - s.along0)
}

func percent(x float64) string { return fmt.Sprintf("%.0f%%", 100*x) }

// stripsAt returns the rafters that rest at a joint, with the other one of
// their pair; hips and valleys carry no roof of their own.
func (m *model) stripsAt(j *framing.Joint) (out []*strip) {
	for _, s := range m.rafters {
		here := s.pair != nil && s.pair.joint == j && s.pair.a == s
		for _, e := range s.ends {
			here = here || e.joint == j || e.foot == j
		}
		if !here || s.Gathers() {
			continue
		}
		out = append(out, s)
		if s.pair != nil {
			other := s.pair.a
			if other == s {
				other = s.pair.b
			}
			out = append(out, other)
		}
	}
	return out
}
