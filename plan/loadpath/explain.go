package loadpath

import (
	"fmt"
	"math"
	"strings"
)

// Explain returns the arithmetic of every link at the joint with the ID, or
// "" when the load path does not pass it.
func (r *Report) Explain(jointID string) string {
	var b strings.Builder
	for _, l := range r.Joint(jointID) {
		fmt.Fprintf(&b, "%s (%s), %s\n", l.Check.Title, l.Check.ID, l.Where)
		fmt.Fprintf(&b, "  %s\n  governing case: %s\n", l.Check.Doc, l.Case)
		for _, t := range l.Terms {
			b.WriteString(termLine("demand", t))
		}
		fmt.Fprintf(&b, "  demand %.0f %s (%.0f at strength level)\n", l.Demand, l.Unit, l.Strength)
		if c := l.Capacity; c != nil && c.Unknown == "" {
			for _, t := range c.Terms {
				b.WriteString(termLine("capacity", t))
			}
			fmt.Fprintf(&b, "  capacity %.0f %s, %s; governs: %s\n", c.Value, l.Unit, c.Source, c.Governs)
		}
		if l.Gap != "" {
			fmt.Fprintf(&b, "  gap: %s\n", l.Gap)
		} else if !math.IsInf(l.Ratio, 0) {
			fmt.Fprintf(&b, "  ratio %.2f\n", l.Ratio)
		}
		for _, n := range l.Notes {
			fmt.Fprintf(&b, "  note: %s\n", n)
		}
	}
	if b.Len() > 0 {
		fmt.Fprintf(&b, "%s\n", Caution)
	}
	return b.String()
}

func termLine(what string, t Term) string {
	number := "%.0f"
	if t.Unit == "" || t.Unit == "ft" {
		number = "%.2f"
	}
	return fmt.Sprintf("    %-9s %10s %-5s %s\n", what, fmt.Sprintf(number, t.Value), t.Unit, t.Text)
}
