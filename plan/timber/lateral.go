package timber

import (
	"fmt"
	"math"

	"galewright/plan/source"
)

// Lateral is one fastener in single shear as it really sits: what it passes,
// how much wood it finds, how the load lies to the grain.
type Lateral struct {
	Fastener  Fastener
	Side      Part    // the part under the head
	SideAngle float64 // of load to grain of a wood side, degrees
	Gap       float64 // between side and main member, in: sheathing under steel counts as air
	Main      Part    // its Thickness is the wood along the fastener, 0 where there is none
	MainAngle float64 // of load to grain, degrees
	Condition Condition
	// Group and Geometry are Cg and Cdelta of a fastener of 1/4 in and more;
	// where they are left out 1 is taken, and the chain says that it was assumed.
	Group, Geometry Factor
	// OneRow is one fastener, or one row along the grain, or separate splice
	// plates for each row: matters to CM of a joint that dries, D >= 1/4 in.
	OneRow bool
}

// LateralValue is what one fastener is allowed, with all it was made of.
type LateralValue struct {
	Yield           // reference value: that of the way which governs
	Dowel  GapDowel // the input of the equations with the true lengths
	Driven Driven
	Least  float64 // least penetration, in
	Full   float64 // full penetration of the tables, in
	// Equation is the yield equations with the true lengths, lb; Table the
	// same at full penetration, times p over full, where p is short of full
	// (else 0). Way tells which governs.
	Equation, Table float64
	Way             string
	Factors         Adjust
	Allow           float64 // lb
	// Nothing says why the fastener counts for nothing; "" where it counts.
	Nothing string
}

// Value returns the allowable lateral value. A fastener that finds too little
// wood is worth nothing and says why; an error is input that has no answer.
func (l Lateral) Value() (LateralValue, error) {
	if err := l.wrong(); err != nil {
		return LateralValue{}, err
	}
	f := l.Fastener
	v := LateralValue{Least: f.LeastPenetration(), Full: f.FullPenetration()}
	v.Driven = f.Drive(l.Side.Thickness+l.Gap, l.Main.Thickness)
	if v.Nothing = l.nothing(v); v.Nothing != "" {
		return v, nil
	}
	v.Dowel = l.dowel(v.Driven.Bearing)
	v.Yield = v.Dowel.SingleShear()
	v.Equation = v.Z
	depth := l.reduce(&v)
	v.Factors = append(Adjust{depth}, l.chain()...)
	v.Allow = v.Z * v.Factors.Product()
	return v, nil
}

// wrong names input that the equations have no answer for.
func (l Lateral) wrong() error {
	f := l.Fastener
	switch {
	case l.Main.Steel:
		return fmt.Errorf("%s: the main member has to be wood", f)
	case f.Fyb <= 0 || f.Root <= 0 || f.D < f.Root:
		return fmt.Errorf("%s: diameter %.3f in, root %.3f in, bending yield %.0f psi do not make a fastener", f, f.D, f.Root, f.Fyb)
	case l.Side.Thickness <= 0 || l.Gap < 0:
		return fmt.Errorf("%s: side part %.3f in thick with a gap of %.3f in behind it", f, l.Side.Thickness, l.Gap)
	case l.Main.G <= 0 || !l.Side.Steel && l.Side.G <= 0:
		return fmt.Errorf("%s: the specific gravity of the wood is not known", f)
	case l.Condition.Duration <= 0:
		return fmt.Errorf("%s: the load duration is not given", f)
	case l.Condition.ToeNail:
		return fmt.Errorf("%s: a toe-nail has its own geometry, see ToeNail", f)
	}
	return nil
}

// nothing says why the fastener holds no lateral load, "" where it does.
func (l Lateral) nothing(v LateralValue) string {
	f := l.Fastener
	if f.Kind == BoltKind {
		if v.Driven.Reach < l.Main.Thickness-1e-9 || l.Main.Thickness <= 0 {
			return fmt.Sprintf("the bolt reaches %.2f in into %.2f in of wood: it does not come through for a nut", v.Driven.Reach, l.Main.Thickness)
		}
		return ""
	}
	if v.Driven.P < v.Least-1e-9 {
		return fmt.Sprintf("%.2f in of penetration, least %.2f in = %gD (%s)", v.Driven.P, v.Least, f.penetration().least,
			cite("NDS 2018 "+f.penetration().clause, source.Transcribed))
	}
	return ""
}

// reduce takes the lower of the two ways that the standard leaves open for a
// short fastener, and returns the penetration factor that goes with it.
func (l Lateral) reduce(v *LateralValue) Factor {
	depth := l.Fastener.penetration()
	name := fmt.Sprintf("p/%gD", depth.full)
	v.Way = "full penetration"
	if l.Fastener.Kind == BoltKind || v.Driven.P >= v.Full-1e-9 {
		return Factor{name, 1, cite("NDS 2018 "+depth.note+", full penetration", source.Transcribed)}
	}
	table := l.dowel(l.fullBearing()).SingleShear()
	ratio := v.Driven.P / v.Full
	v.Table = table.Z * ratio
	if v.Table < v.Equation {
		v.Way, v.Yield = "table value times "+name, table
		return Factor{name, ratio, cite("NDS 2018 "+depth.note, source.Transcribed)}
	}
	v.Way = "yield equations with the true length"
	return Factor{name, 1, cite("NDS 2018 "+depth.note+", equations instead", source.Transcribed)}
}

// fullBearing is the bearing length at full penetration, in. That p leaves
// the tip of a lag screw out here too is our reading, the safe one.
func (l Lateral) fullBearing() float64 {
	f := l.Fastener
	if f.Kind == LagScrew {
		return f.FullPenetration() + f.Tip/2
	}
	return f.FullPenetration() - f.Tip/2
}

// dowel sets up the equations for a bearing length in the main member.
func (l Lateral) dowel(lm float64) GapDowel {
	f := l.Fastener
	main, side := l.MainAngle, l.SideAngle
	if l.Condition.EndGrain {
		main = 90 // NDS 2018 12.5.2.2 and the note at Ceg: Fe across the grain
	}
	d := GapDowel{Gap: l.Gap, Nominal: f.D}
	d.Dowel = Dowel{D: f.Root, Fyb: f.Fyb, Lm: lm, Ls: l.Side.Thickness, Fem: DowelBearing(l.Main.G, f.D, main), Angle: main}
	if l.Side.Steel {
		d.Fes, _ = SteelBearing(l.Side.Thickness)
		return d
	}
	d.Fes, d.Angle = DowelBearing(l.Side.G, f.D, side), math.Max(main, side)
	return d
}
