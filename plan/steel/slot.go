package steel

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/length"
)

// Slot is what a strap on the side of an upright takes out of a member that it
// passes, as a plate of a wall.
type Slot struct {
	Member *framing.Member
	At     geom.Vec3 // middle of the slot where the steel enters the member
	Deep   float64   // of the member along the steel, in
	// Size is the slot along and across the member's grain, in, the play to thread
	// the steel included; Across its unit direction across the grain.
	Size   [2]float64
	Across geom.Vec3
	// Left is the wood beside the slot across the grain, on the side against Across
	// and on that along it, in: 0 where the slot is open to the edge.
	Left [2]float64
}

// Open tells whether the slot is a notch, open to an edge of its member.
func (s Slot) Open() bool { return s.Left[0] == 0 || s.Left[1] == 0 }

// Cut returns the part of the member's breadth there that the slot takes.
func (s Slot) Cut() float64 { return s.Size[1] / (s.Left[0] + s.Size[1] + s.Left[1]) }

// slotPlay is how much wider and thicker than the steel a slot in a member is, in
// (common practice, no published source).
const slotPlay = 0.25

// across are the lines, in parts of its width, along which steel is followed.
var across = []float64{-0.49, -0.25, 0, 0.25, 0.49}

// slots finds what an upright strap passes through: members that it goes in and
// out of, across their grain. What stands against the steel along its whole length
// is in its way and told by the checks of faces; what bears on a strap that lies
// flat goes on after it.
func (s *Steel) slots(b *Body) {
	if !b.Piece.Item.Kind.Strap {
		return
	}
	for _, band := range b.Bands {
		for _, p := range band {
			if geom.Upright(p.B.Sub(p.A).Unit()) {
				b.Slots = append(b.Slots, s.Wood.slotsOf(p)...)
			}
		}
	}
}

// inside is the steel of a plate that lies in one member.
type inside struct{ lo, hi, from, to float64 }

// slotsOf returns the slots of one plate, in its order from A to B.
func (w *Wood) slotsOf(p geom.Plate) (out []Slot) {
	mid := p.N.Mul(p.Thickness / 2)
	found := map[*framing.Member]*inside{}
	var order []*framing.Member
	for _, k := range across {
		off := k * p.Width
		for _, r := range w.Through(p.At(0, off).Add(mid), p.At(p.Len(), off).Add(mid)) {
			if r.EndGrain() || r.Len() < hair || r.From < hair || r.To > p.Len()-hair {
				continue
			}
			x := found[r.Member]
			if x == nil {
				x = &inside{off, off, r.From, r.To}
				found[r.Member] = x
				order = append(order, r.Member)
			}
			x.lo, x.hi, x.from, x.to = min(x.lo, off), max(x.hi, off), min(x.from, r.From), max(x.to, r.To)
		}
	}
	for _, m := range order {
		out = append(out, w.slot(p, m, *found[m]))
	}
	return out
}

// slot is the hole for a plate in a member: as wide as the steel there with
// play, and to the member's edge where less is left than the play.
func (w *Wood) slot(p geom.Plate, m *framing.Member, x inside) Slot {
	down, grain := p.B.Sub(p.A).Unit(), Grain(m)
	cross := grain.Cross(down).Unit()
	half := p.N.Mul(p.Thickness / 2)
	mid := p.A.Add(half) // only across it matters
	in := p.At((x.from+x.to)/2, (x.lo+x.hi)/2).Add(half)
	back, on := w.Ways(m, in, cross)
	lo, hi := in.Sub(mid).Dot(cross)-back, in.Sub(mid).Dot(cross)+on
	size := func(d geom.Vec3) float64 {
		wide, thick := math.Abs(d.Dot(p.Across())), math.Abs(d.Dot(p.N))
		return taped(wide*p.Width + thick*p.Thickness + slotPlay)
	}
	s := Slot{Member: m, At: p.At(x.from, 0).Add(half), Deep: x.to - x.from, Across: cross, Size: [2]float64{size(grain), size(cross)}}
	a, b := max(lo, -s.Size[1]/2), min(hi, s.Size[1]/2)
	switch { // no more is left at an edge than the play: it is open there
	case a-lo < slotPlay:
		a, b = lo, min(hi, lo+taped(b-lo))
	case hi-b < slotPlay:
		a, b = max(lo, hi-taped(hi-a)), hi
	}
	s.At = s.At.Add(cross.Mul((a + b) / 2))
	s.Size[1], s.Left = b-a, [2]float64{a - lo, hi - b}
	return s
}

// taped returns a size up to the next mark of a tape, in.
func taped(in float64) float64 { return math.Ceil(in/length.Tape-1e-6) * length.Tape }

// Words says what to cut, with lengths as text prints them: "a slot 2 3/8" across
// and 3/8" along it, through 1 1/2", 1 9/16" left on either side".
func (s Slot) Words(text func(float64) string) string {
	if s.Open() {
		return fmt.Sprintf("a notch %s into its edge and %s along it", text(s.Size[1]), text(s.Size[0]))
	}
	left := text(s.Left[0]) + " left on either side"
	if a, b := min(s.Left[0], s.Left[1]), max(s.Left[0], s.Left[1]); b-a > length.Tape {
		left = fmt.Sprintf("%s left on one side and %s on the other", text(a), text(b))
	}
	return fmt.Sprintf("a slot %s across and %s along it, %s", text(s.Size[1]), text(s.Size[0]), left)
}

// chord tells whether a member is a top plate of a wall, which as chord or
// collector is pulled along.
func chord(m *framing.Member) bool { return m.Role == plan.TopPlate || m.Role == plan.UpperPlate }
