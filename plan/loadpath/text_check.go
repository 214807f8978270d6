package loadpath

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/capacity"
	"galewright/plan/units"
)

// Failed tells whether a gap or a ratio above the limit is left, or there
// are no numbers at all.
func (r *Report) Failed(limit float64) bool {
	gaps, above := r.measured(limit)
	return r.Missing != "" || gaps+above > 0
}

// measured counts the gaps and the ratios above the limit.
func (r *Report) measured(limit float64) (gaps, above int) {
	for _, l := range r.Links {
		switch {
		case l.Gap != "":
			gaps++
		case l.above(limit):
			above++
		}
	}
	return gaps, above
}

// above tells whether the link has a ratio, and it is above the limit.
func (l *Link) above(limit float64) bool { return l.Gap == "" && l.Ratio > limit }

// Over tells whether the link is a gap or above the limit.
func (l *Link) Over(limit float64) bool { return l.Gap != "" || l.Ratio > limit }

// ratioText prints a ratio; a gap has none.
func ratioText(l *Link) string {
	if l.Gap != "" {
		return "gap"
	}
	return "ratio " + ratioCell(l) + l.Capacity.Starred()
}

// WriteCheck writes each joint on the load path with demand, capacity, ratio
// and what governs, as "text" or "json", and tells whether a gap or a ratio
// above the limit is left.
func (r *Report) WriteCheck(w io.Writer, limit float64, format string) (failed bool, err error) {
	failed = r.Failed(limit)
	if format == "json" {
		return failed, writeJSON(w, r.checkJSON(limit))
	}
	b := bufio.NewWriter(w)
	p := printer{b, r.Units()}
	p.opening()
	if r.Missing != "" {
		p.line("%s", r.Missing)
		return failed, b.Flush()
	}
	for _, c := range ChecksFor(r.Placement.House.Plan) {
		r.writeCheck(p, c, limit)
	}
	r.writeChains(p)
	if slices.ContainsFunc(r.Links, func(l *Link) bool { return l.Capacity.Starred() != "" }) {
		p.line("\n%s", capacity.StarNote)
	}
	gaps, above := r.measured(limit)
	r.writeHonest(p)
	p.line("\njoints and segments checked: %d, %s, %s above %.2f", len(r.Links), plan.Counted(gaps, "gap"), plan.Counted(above, "ratio"), limit)
	return failed, b.Flush()
}

func (r *Report) writeCheck(p printer, c *Check, limit float64) {
	var links []*Link
	asked := 0
	for _, l := range r.Links {
		if l.Check.ID == c.ID {
			links = append(links, l)
			if l.Demand > 0 {
				asked++
			}
		}
	}
	if len(links) == 0 {
		return
	}
	p.head(fmt.Sprintf("%s (%s): %s, %d with demand", c.Title, c.ID, plan.Counted(len(links), "place"), asked))
	p.line("  %s", c.Doc)
	if asked == 0 {
		return
	}
	p.line("  %-24s %9s %9s %6s  %s", "place", "demand", "capacity", "ratio", "governs; where")
	for _, l := range links {
		if l.Demand == 0 {
			continue
		}
		p.line("  %-24s %9s %9s %6s%-1s%s %s; %s", l.ID, Number(p.u, l.Demand, l.Unit), capText(p.u, l), ratioCell(l), l.Capacity.Starred(), flag(l, limit), l.Governs(), l.Where)
		for _, n := range l.Notes {
			p.line("  %-24s   %s", "", n)
		}
	}
}

func capText(u units.System, l *Link) string {
	if l.Capacity == nil || l.Capacity.Unknown != "" {
		return "-"
	}
	return Number(u, l.Capacity.Value, l.Unit)
}

// RatioText prints the ratio with the mark of one that is not a maker's; a gap has
// none.
func (l *Link) RatioText() string {
	if l.Gap != "" {
		return "gap"
	}
	return ratioCell(l) + l.Capacity.Starred()
}

func ratioCell(l *Link) string {
	if math.IsInf(l.Ratio, 1) {
		return "gap"
	}
	if l.Ratio > 1 && l.Ratio < 1.005 { // over 1 by a hair must not read 1.00
		return fmt.Sprintf("%.3f", math.Max(l.Ratio, 1.001))
	}
	return fmt.Sprintf("%.2f", l.Ratio)
}

func flag(l *Link, limit float64) string {
	if l.Over(limit) {
		return " >"
	}
	return "  "
}

func (r *Report) writeChains(p printer) {
	p.head("Chains from ridge to foundation, one for each bearing line; the controlling joint of each step")
	for _, c := range r.Chains {
		p.line("  line %s; weakest: %s", c.Name, c.Weakest())
		for i, g := range c.Links {
			mark := " "
			if i == c.Weak {
				mark = ">"
			}
			p.line("   %s %-46s %11s, %8s; %s", mark, g.Title, g.Places(), plan.Counted(g.Gaps, "gap"), g.text(p.u))
		}
	}
}

// text prints what a link of a chain is asked and holds at its worst joint.
func (g ChainLink) text(u units.System) string {
	if !g.Followed {
		return "no wind uplift is followed to it: not checked"
	}
	return fmt.Sprintf("%s: %s of %s %s, %s", g.Worst.ID, u.Number(g.Worst.Demand, g.Worst.Unit, 0), capText(u, g.Worst), u.Unit(g.Worst.Unit), ratioText(g.Worst))
}
