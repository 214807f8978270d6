package nailing

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/timber"
	"galewright/plan/units"
)

// Spot is one connection: the nails go through Side into Main. Of plies the
// two are the same member.
type Spot struct {
	Row        *plan.ConnectionRow
	Side, Main *framing.Member
	Wall       *plan.Wall // nil of floors, roofs and girders
	Station    float64    // along the wall, in: of a spaced connection its middle
	// Touch is the length along which nails at a spacing go, in; 0 where they
	// are counted.
	Touch float64
	Times int     // how many times the nails go in: both sides of a break, each ply to the next
	Panel float64 // thickness of the panel that the nails go through into Side and Main, which are one member, in
	Gap   float64 // between the members, in: the subfloor under a bottom plate, the sheathing behind a ledger
	Wet   bool    // one of the members is taken as wet when nailed or in service
}

// Nails returns how many nails the line puts into the connection: its count,
// or one for each spacing begun and row.
func (s *Spot) Nails(l *plan.NailLine) int {
	if l == nil {
		return 0
	}
	if !s.Row.Spaced {
		return l.Count * s.Times
	}
	if l.Spacing <= 0 {
		return 0
	}
	return l.Rows * s.Times * int(math.Ceil(s.Touch/l.Spacing-1e-9))
}

// Line is one line of the nailing schedule.
type Line struct {
	Number int // 1.. without gaps, in the order of plan.NailedConnections; 0 where the house has no such connection
	Order  *plan.NailLine
	Row    *plan.ConnectionRow
	Spots  []*Spot      // where it goes, in the order of the house; none where the house has no such connection
	Nails  int          // in all of them
	Units  units.System // of what is told of its nails
}

// Mark is how sheets speak of the line: "N4".
func (l *Line) Mark() string { return fmt.Sprintf("N%d", l.Number) }

// Each says how the nails go: "2 each, end", "8 in o.c., 2 rows, face"; in
// prints a spacing.
func (l *Line) Each(in func(float64) string) string {
	how := fmt.Sprintf("%d each", l.Order.Count)
	switch {
	case l.Row.Connection == plan.TopPlateSplice:
		how = fmt.Sprintf("%d each side of the break", l.Order.Count)
	case l.Row.Spaced:
		how = in(l.Order.Spacing) + " o.c."
		if l.Order.Rows > 1 {
			how = fmt.Sprintf("%s, %d rows", how, l.Order.Rows)
		}
	}
	return how
}

// Missing is a connection that the house has and the plan orders no nails for.
type Missing struct {
	Row   *plan.ConnectionRow
	Spots int
}

// Nailing is all nailing between the members of a house.
type Nailing struct {
	House   *framing.House
	Lines   []*Line // that the plan orders and the house has a place for
	Missing []Missing
	at      map[plan.Connection]*Line
}

// New finds the connections of a house and counts the plan's nails in them.
func New(h *framing.House) *Nailing {
	n := &Nailing{House: h, at: map[plan.Connection]*Line{}}
	found := connections(h)
	for _, known := range plan.NailedConnections {
		row := known.For(h.Plan)
		spots := found[row.Connection]
		order := h.Plan.Ordered(row.Connection)
		if order == nil {
			if len(spots) > 0 {
				n.Missing = append(n.Missing, Missing{row, len(spots)})
			}
			continue
		}
		l := &Line{Order: order, Row: row, Spots: spots, Units: h.Plan.Project.Units}
		for _, s := range spots {
			l.Nails += s.Nails(order)
			s.Wet = h.Wet(s.Side) || h.Wet(s.Main)
		}
		n.at[row.Connection] = l
		if len(spots) > 0 {
			n.Lines = append(n.Lines, l)
			l.Number = len(n.Lines)
		}
	}
	return n
}

// Line returns the line of a connection, nil where the plan orders none.
func (n *Nailing) Line(c plan.Connection) *Line { return n.at[c] }

// Faults tells of nails that are too short for where they are ordered.
func (n *Nailing) Faults() (out plan.Diagnostics) {
	wood, ok := timber.SpeciesOf(n.House.Plan.Lumber.Species)
	if !ok {
		wood, _ = timber.SpeciesOf("southern pine")
	}
	for _, l := range n.Lines {
		if v := l.One(l.Spots[0], wood); v.Nothing != "" {
			out = append(out, plan.Diagnostic{
				Severity: plan.Warning, Code: "short-nail", Pos: l.Order.Pos, Where: "nailing " + string(l.Row.Connection),
				Summary: fmt.Sprintf("%s holds nothing there: %s", l.Order.Nail, v.Nothing), Mend: "order a longer nail",
			})
		}
	}
	return out
}

// On returns the connections of the line on a wall; nil for those of none.
func (l *Line) On(w *plan.Wall) (out []*Spot) {
	for _, s := range l.Spots {
		if s.Wall == w {
			out = append(out, s)
		}
	}
	return out
}

// NailsOn returns how many nails of the line go into a wall; nil for floors,
// roofs and girders.
func (l *Line) NailsOn(w *plan.Wall) (n int) {
	for _, s := range l.On(w) {
		n += s.Nails(l.Order)
	}
	return n
}
