package timber

import (
	"fmt"

	"galewright/plan/source"
)

const (
	// concreteBearing is the dowel bearing strength of concrete, psi, and castDepth
	// the embedment, in, that NDS 2018 Table 12E is for (second-hand: its heading and
	// basis were read in a copy, its cells were not).
	concreteBearing = 7_500
	castDepth       = 6
)

// Root returns the diameter at the root of the thread, in: d - 1.2269/n (ASME B1.1,
// from memory).
func (r RodSize) Root() float64 { return r.D - 1.2269/r.Threads }

// SillBolt is a bolt cast in concrete that holds a wood plate on it against being
// pushed along: one bolt, in single shear.
type SillBolt struct {
	D         float64 // nominal diameter, in
	Plate     Part    // the wood on the concrete
	Angle     float64 // of load to the plate's grain, degrees
	Embed     float64 // depth in the concrete, in
	Condition Condition
}

// SillValue is what one such bolt is allowed in the wood and by its own bending.
type SillValue struct {
	Yield           // with the root of the thread
	Root    float64 // in
	Factors Adjust
	Allow   float64 // lb
	Shank   float64 // lb, the same where no thread lies in the plate
	// Nothing says why there is no value; "" where there is one.
	Nothing string
	Source  string
}

// Value returns the allowable lateral value by the yield equations with concrete for
// main member, as NDS 2018 Table 12E has it. An anchor bolt's thread reaches down into
// a plate of 1-1/2 in, so the root of the thread bends (12.3.7, transcribed), which is
// less than the table's full shank. Bearing goes by the nominal diameter. What the
// concrete itself holds is not in it.
func (b SillBolt) Value() SillValue {
	v := SillValue{Source: cite("NDS 2018 12.3.1 and Table 12E", source.SecondHand)}
	size, ok := RodSizeOf(b.D)
	switch {
	case !ok:
		v.Nothing = fmt.Sprintf("no thread is known for a bolt of %s in", trim(b.D))
		return v
	case b.Plate.Thickness <= 0 || b.Plate.G <= 0:
		v.Nothing = "the plate's thickness or specific gravity is not known"
		return v
	case b.Embed < castDepth-1e-9:
		v.Nothing = fmt.Sprintf("%.2f in in the concrete, and NDS 2018 Table 12E is for %d in", b.Embed, castDepth)
		return v
	}
	f := Bolt(b.D, b.Plate.Thickness+b.Embed)
	v.Factors = Lateral{Fastener: f, Condition: b.Condition}.chain()
	v.Root = size.Root()
	v.Yield = b.dowel(f, v.Root).SingleShear()
	v.Allow = v.Z * v.Factors.Product()
	v.Shank = b.dowel(f, b.D).SingleShear().Z * v.Factors.Product()
	return v
}

// dowel sets up the equations for a diameter that bends.
func (b SillBolt) dowel(f Fastener, d float64) GapDowel {
	return GapDowel{Nominal: b.D, Dowel: Dowel{
		D: d, Fyb: f.Fyb, Lm: castDepth, Ls: b.Plate.Thickness,
		Fem: concreteBearing, Fes: DowelBearing(b.Plate.G, b.D, b.Angle), Angle: b.Angle,
	}}
}
