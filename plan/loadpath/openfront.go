package loadpath

import (
	"fmt"
	"math"

	"galewright/plan"
)

// openFronts tells where a deck reaches past its last shear wall line, and
// what twist that leaves.
func (l *lateral) openFronts() {
	for _, d := range l.m.decks {
		for ax := range 2 {
			lines := d.lines[ax]
			dir := plan.Axes[ax]
			if len(lines) == 0 {
				l.torsion = append(l.torsion, fmt.Sprintf("story %s: no sheathed segment runs along %s; nothing resists wind in that direction", d.level.Name, dir))
				continue
			}
			l.cantilever(d, lines, ax, dir)
		}
	}
}

// openLimit is how far, in parts of the deck's width, a deck may reach past
// its last line before it is told: a matter of judgment, no published source.
const openLimit = 0.10

func (l *lateral) cantilever(d *diaphragm, lines []*ShearLine, ax int, dir plan.Axis) {
	lo, hi := axis(d.extent.lo, 1-ax), axis(d.extent.hi, 1-ax)
	depth := math.Max(axis(d.extent.hi, ax)-axis(d.extent.lo, ax), 1)
	if len(lines) == 1 {
		x := l.lines[lines[0].n]
		e := math.Abs((lo+hi)/2 - x.At)
		l.tell(d, dir, fmt.Sprintf("one line only, %s, %s from the middle of the diaphragm", x.Name, l.m.u.Length(e)), ASD.W*x.Deck*e, depth)
		return
	}
	n := len(lines) - 1
	for i, past := range []float64{lines[0].At - lo, hi - lines[n].At} {
		if past < openLimit*(hi-lo) {
			continue
		}
		x, next := l.lines[lines[0].n], lines[1]
		if i == 1 {
			x, next = l.lines[lines[n].n], lines[n-1]
		}
		load := x.Deck * past / (past + math.Abs(next.At-x.At)/2)
		l.tell(d, dir, fmt.Sprintf("the diaphragm reaches %s past line %s on side %s, %.2f of its depth along the wind",
			l.m.u.Length(past), x.Name, sides[1-ax][i], past/depth), ASD.W*load*past/2, depth)
	}
}

// tell notes one open front with its twist (lb in, ASD) and the couple that
// balances it over the depth of the deck.
func (l *lateral) tell(d *diaphragm, dir plan.Axis, what string, twist, depth float64) {
	l.torsion = append(l.torsion, l.m.u.Sprintf("story %s, wind along %s: %s; torsion %.0f lb-ft, a couple of %.0f lb on the lines across the wind, reported, not added",
		d.level.Name, dir, what, twist/12, twist/depth))
}
