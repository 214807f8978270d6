package timber

import (
	"fmt"
	"math"
)

// FastenerKind is the kind of a fastener as NDS chapter 12 tells them apart.
type FastenerKind string

// The kinds.
const (
	NailKind  FastenerKind = "nail"
	WoodScrew FastenerKind = "wood screw"
	LagScrew  FastenerKind = "lag screw"
	BoltKind  FastenerKind = "bolt"
)

// Shank is the kind of a nail's shank or steel where withdrawal depends on it.
type Shank string

// The shanks; Smooth is bright or galvanized low carbon steel.
const (
	Smooth    Shank = ""
	Ring      Shank = "ring shank"
	Stainless Shank = "stainless"
)

// Fastener is one fastener's size. Lengths are inches.
type Fastener struct {
	Kind   FastenerKind
	Name   string
	D      float64 // nominal diameter
	Root   float64 // diameter that bends: the root of a screw, else D
	Length float64 // under the head to the tip
	Head   float64 // diameter of the head; 0 = not known
	Tip    float64 // length of the tapered tip
	Thread float64 // length of thread or rings from the tip, tip included; 0 = none, of a ring shank all of it
	Fyb    float64 // bending yield strength, psi
	Shank  Shank   // of a nail
}

func (f Fastener) String() string {
	if f.Name != "" {
		return f.Name
	}
	return fmt.Sprintf("%s %s x %s", f.Kind, trim(f.D), trim(f.Length))
}

// FastenerOf makes a fastener of a nail; ok is false where no bending yield
// strength is known for its diameter. The tip of a driven nail is 2D long
// (NDS 2018 12.3.5.3, transcribed).
func FastenerOf(n Nail) (Fastener, bool) {
	f := Fastener{
		Kind: NailKind, Name: n.Name, D: n.Diameter, Root: n.Diameter, Length: n.Length,
		Head: n.Head, Tip: 2 * n.Diameter, Fyb: BendingYield(n.Diameter),
	}
	return f, f.Fyb > 0
}

// Bolt makes a bolt of the diameter and length, in. Fyb 45,000 psi is that of
// NDS 2018 Tables 12A to 12G (transcribed). Thread is kept out of the bearing
// lengths; where it is not, NDS 2018 12.3.7 wants the root diameter.
func Bolt(d, length float64) Fastener {
	return Fastener{Kind: BoltKind, Name: fmt.Sprintf("%s in bolt", trim(d)), D: d, Root: d, Length: length, Fyb: 45_000}
}

// LeastPenetration returns the least penetration into the main member, in,
// below which a fastener counts for nothing: nail and wood screw 6D with the
// tip, lag screw 4D without it (NDS 2018 12.1.6.4, 12.1.5.6, 12.1.4.6,
// transcribed). A bolt has none: it goes through.
func (f Fastener) LeastPenetration() float64 { return f.D * f.penetration().least }

// FullPenetration returns the penetration from which the tables of the
// standard hold unreduced, in: 10D, lag screw 8D (NDS 2018 Tables 12J to 12P
// footnote 3, transcribed).
func (f Fastener) FullPenetration() float64 { return f.D * f.penetration().full }

// depths are a kind's penetrations in diameters.
type depths struct {
	least, full  float64
	clause, note string
}

func (f Fastener) penetration() depths {
	switch f.Kind {
	case NailKind:
		return depths{6, 10, "12.1.6.4", "Tables 12N and 12P footnote 3"}
	case WoodScrew:
		return depths{6, 10, "12.1.5.6", "Tables 12L and 12M footnote 3"}
	case LagScrew:
		return depths{4, 8, "12.1.4.6", "Tables 12J and 12K footnote 3"}
	}
	return depths{}
}

// Driven is how far a fastener gets into a main member.
type Driven struct {
	Reach   float64 // from the near face to the tip, in; negative where it falls short
	P       float64 // penetration that counts, in
	Bearing float64 // dowel bearing length lm, in
	Out     float64 // how far the tip comes through, in
}

// Drive returns how far the fastener gets into wood of the thickness (along
// the fastener) behind what lies before it, in. The tip of a lag screw counts
// for nothing in P; half of a tip that is inside the wood counts in the
// bearing length (NDS 2018 12.3.5.3, transcribed).
func (f Fastener) Drive(before, thickness float64) Driven {
	r := f.Length - before
	d := Driven{Reach: r, Out: math.Max(0, r-thickness)}
	p := r
	if f.Kind == LagScrew {
		p -= f.Tip
	}
	d.P = math.Max(0, math.Min(p, thickness))
	d.Bearing = math.Max(0, math.Min(r-f.Tip/2, thickness))
	return d
}

// threadIn returns the length of thread that stands in the wood, tip of a lag
// screw excluded, in (NDS 2018 12.2.1.2, 12.2.2.2, transcribed).
func (f Fastener) threadIn(before, thickness float64) float64 {
	from := math.Max(before, f.Length-f.Thread)
	to := math.Min(f.Length, before+thickness)
	if f.Kind == LagScrew {
		to = math.Min(to, f.Length-f.Tip)
	}
	return math.Max(0, to-from)
}
