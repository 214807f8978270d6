package nailing

import (
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/timber"
	"galewright/plan/units"
)

// Value is what one nail of a line holds at one connection, ASD at wind
// duration.
type Value struct {
	Lateral float64 // lb, across the nail
	Pull    float64 // lb, drawn out of the member at its point
	Text    string  // how the lateral value came about
	PullBy  string  // how the pull did, or why there is none
	// Nothing says why the nail holds nothing across; "" where it does.
	Nothing string
}

// thick is the wood behind the face that a nail meets, in, where only the
// nail's length limits it: an end of a member, the depth of a rim or header.
const thick = 24

// dress is the thickness of one dressed 2-by, in (PS 20).
const dress = 1.5

// sides returns the thickness of wood along the nail in both members, in.
func (s *Spot) sides() (side, main float64) {
	switch s.Row.Connection {
	case plan.HeaderPlies, plan.GirderPlies, plan.JoistPlies:
		return s.Side.Section.Breadth, s.Main.Section.Breadth
	case plan.JackToKing, plan.BuiltUpStuds:
		return breadth(s.Side), breadth(s.Main)
	case plan.CornerStuds:
		return min(dress, breadth(s.Side)), min(dress, breadth(s.Main))
	case plan.TopPlates, plan.TopPlateSplice, plan.TopPlateLap:
		return dress, dress
	case plan.HeaderToKing, plan.TopPlateToStud, plan.SoleToStud, plan.CrippleToPlate, plan.CrippleToSill, plan.SillToJack:
		return dress, thick
	case plan.SoleToFloor, plan.SoleAtShearWall, plan.BoardToRafter:
		return dress, deep(s.Main)
	case plan.RafterToJoist, plan.CeilingSplice:
		return s.Side.Section.Breadth, s.Main.Section.Width()
	case plan.RimToJoist, plan.TrimmerToHeader, plan.HeaderToTail:
		return s.Side.Section.Breadth, thick
	case plan.DeckToBlocking:
		return s.Panel, deep(s.Main)
	case plan.BlockingToRafter:
		return dress, thick
	}
	return dress, dress
}

// breadth is how thick an upright is along its wall, in; of a beveled one half way through
// the wall, square to the bevel.
func breadth(m *framing.Member) float64 {
	wide := m.S1 - m.S0
	if m.Bevel == 0 {
		return wide
	}
	sin, cos := math.Sincos(m.Bevel * math.Pi / 180)
	return max(0, wide-m.Section.Depth*sin/cos/2) * cos
}

// deep is how deep a member stands, in.
func deep(m *framing.Member) float64 { return math.Max(m.Section.Depth, dress) }

// One returns what one nail of the line holds at the connection in wood of the
// species: NDS 2018 chapter 12 by package timber, the lower where it leaves two
// ways. A subfloor or sheathing between the members counts as air. Where a member is
// wet CM is in it: 0.7 across the nail, 0.25 drawn out (NDS 2018 Table 11.3.3,
// transcribed).
func (l *Line) One(s *Spot, wood timber.Species) Value {
	return l.OneFor(s, wood, timber.WindDuration)
}

// OneFor is One under a load of another duration; toe-nails are known for wind
// alone.
func (l *Line) OneFor(s *Spot, wood timber.Species, d timber.Duration) Value {
	nail := l.nail()
	side, main := s.sides()
	if l.Order.Drive == plan.ToeNail {
		return toe(l.Units, nail, side, main, wood, s.Wet)
	}
	f, ok := timber.FastenerOf(nail)
	if !ok {
		return Value{Nothing: l.Units.Sprintf("no bending yield strength is known for a nail of %.3f in", nail.Diameter)}
	}
	j := nailed{
		l.Units,
		f, nail,
		timber.Part{Thickness: side, G: sideG(s, wood)},
		timber.Part{Thickness: main, G: wood.G},
		s.Gap,
		timber.Condition{Duration: d, EndGrain: l.Order.Drive == plan.EndNail, WetUse: s.Wet},
	}
	out := Value{}
	j.across(&out)
	j.drawn(&out)
	return out
}

// PanelG is the specific gravity that panels of decks are taken to have on nails:
// that of plywood and OSB of NDS 2018 Table 12.3.3B (from memory).
const PanelG = 0.5

// sideG is the specific gravity of what a nail's head lies on.
func sideG(s *Spot, wood timber.Species) float64 {
	if s.Row.Connection == plan.DeckToBlocking {
		return PanelG
	}
	return wood.G
}

// nailed is one nail driven square through side into main, with a gap between.
type nailed struct {
	units      units.System
	f          timber.Fastener
	nail       timber.Nail
	side, main timber.Part
	gap        float64
	c          timber.Condition
}

// across fills in the lateral value.
func (j nailed) across(out *Value) {
	v, err := timber.Lateral{Fastener: j.f, Side: j.side, Gap: j.gap, Main: j.main, Condition: j.c}.Value()
	switch {
	case err != nil:
		out.Nothing = err.Error()
	case v.Nothing != "":
		out.Nothing = v.Nothing
	default:
		out.Lateral = v.Allow
		out.Text = j.units.Sprintf("%s through %.2f in%s, %.2f in of penetration: Z %.1f lb (mode %s), %s", label(j.units, j.nail), j.side.Thickness, gapped(j.units, j.gap), v.Driven.P, v.Z, v.Mode, v.Factors)
	}
}

// drawn fills in the pull.
func (j nailed) drawn(out *Value) {
	j.c.ForWithdraw = true
	p, err := timber.Pull{Fastener: j.f, Side: j.side, Gap: j.gap, Main: j.main, Condition: j.c}.Value()
	switch {
	case err != nil:
		out.PullBy = err.Error()
	case p.Nothing != "":
		out.PullBy = p.Nothing
	default:
		out.Pull = p.Allow
		out.PullBy = j.units.Sprintf("%s, %.2f in in side grain: W %.1f lb per in, %s governs, %s", label(j.units, j.nail), p.Length, p.PerInch, p.Governs, p.Factors)
	}
}

// nail returns the line's nail with its head where the table has it.
func (l *Line) nail() timber.Nail {
	n, ok := timber.NailOf(l.Order.Nail)
	if !ok || n.Diameter != l.Order.Size.Diameter || n.Length != l.Order.Size.Length {
		n = timber.Nail{Name: l.Order.Nail, Diameter: l.Order.Size.Diameter, Length: l.Order.Size.Length}
	}
	return n
}

// label names a nail with its size.
func label(u units.System, n timber.Nail) string {
	return u.Sized(n.String(), n.Name, n.Diameter, n.Length)
}

// gapped tells of what lies between.
func gapped(u units.System, gap float64) string {
	if gap == 0 {
		return ""
	}
	return u.Sprintf(" and %.3f in of subfloor or sheathing, counted as air", gap)
}

// toe returns what a toe-nail holds across: NDS 2018 12.1.6.3 and 12.5.4
// (transcribed). Its withdrawal is left out: toe-nails are not acceptable for
// uplift in high-wind areas (FEMA P-499 Fact Sheet 4.3, read).
func toe(u units.System, nail timber.Nail, side, main float64, wood timber.Species, wet bool) Value {
	out := Value{PullBy: "a toe-nail counts for no uplift in high wind (FEMA P-499 Fact Sheet 4.3, read)"}
	z, err := timber.ToeNail(nail, timber.Part{Thickness: side, G: wood.G}, timber.Part{Thickness: main, G: wood.G})
	if err != nil {
		out.Nothing = err.Error()
		return out
	}
	chain := timber.Condition{Duration: timber.WindDuration, ToeNail: true, WetUse: wet}.Chain()
	out.Lateral = z.Z * chain.Product()
	out.Text = u.Sprintf("%s, slanting: Z %.1f lb (mode %s), %s", label(u, nail), z.Z, z.Mode, chain)
	return out
}

// Uplift returns what one nail of the line holds of uplift at the connection,
// lb, and how; 0 where it holds none.
func (l *Line) Uplift(s *Spot, wood timber.Species) (lb float64, how string) {
	if !s.Row.Holds || l.Order.Drive == plan.ToeNail {
		return 0, ""
	}
	v := l.One(s, wood)
	switch s.Row.Connection {
	case plan.TopPlates, plan.SoleToFloor, plan.SoleAtShearWall:
		return v.Pull, "drawn out: " + v.PullBy
	}
	return v.Lateral, "across: " + v.Text
}
