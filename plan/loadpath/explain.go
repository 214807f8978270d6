package loadpath

import (
	"fmt"
	"math"
	"strings"

	"galewright/plan/capacity"
	"galewright/plan/framing"
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
			b.WriteString(termLine("demand", t))
		}
		fmt.Fprintf(&b, "  %s\n", l.demandText())
		if c := l.Capacity; c != nil && c.Unknown == "" {
			for _, t := range c.Terms {
				b.WriteString(termLine("capacity", Term(t)))
			}
			fmt.Fprintf(&b, "  capacity %s%s, %s; governs: %s\n", Amount(c.Value, l.Unit), c.Starred(), c.Source, c.Governs)
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
func (l *Link) demandText() string {
	if l.Check.ID == limitCheck {
		return "of the house " + Amount(l.Demand, l.Unit)
	}
	return fmt.Sprintf("demand %s (%.0f at strength level)", Amount(l.Demand, l.Unit), l.Strength)
}

// Number prints a number of a unit: forces whole, pressures to the tenth, all else to the
// hundredth.
func Number(v float64, unit string) string {
	switch unit {
	case "psf":
		return fmt.Sprintf("%.1f", v)
	case "lb", "plf", "lb-ft", "stories":
		return fmt.Sprintf("%.0f", v)
	}
	return fmt.Sprintf("%.2f", v)
}

// Amount prints a number with its unit.
func Amount(v float64, unit string) string { return strings.TrimSpace(Number(v, unit) + " " + unit) }

func termLine(what string, t Term) string {
	return fmt.Sprintf("    %-9s %10s %-5s %s\n", what, Number(t.Value, t.Unit), t.Unit, t.Text)
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
			here = here || e.joint == j
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
