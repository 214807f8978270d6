package timber

import (
	"fmt"
	"math"

	"galewright/plan/source"
)

// Washer is a plate or a round washer under a nut, bearing on wood across the
// grain. Lengths are inches, on the wood only: what overhangs the member is
// left out by whoever gives them.
type Washer struct {
	Along   float64 // along the grain; the diameter of a round one
	Across  float64 // across the grain; not used for a round one
	Round   bool
	Hole    float64 // diameter, the larger of plate and wood
	FcPerp  float64 // psi
	FromEnd float64 // edge of the washer to the end of the member, along the grain
	// Tight asks for the lower stress of 0.02 in of crush instead of 0.04 in:
	// 0.73 FcPerp.
	Tight bool
}

// Bearing is what wood bears across the grain.
type Bearing struct {
	Area    float64 // net, in²
	Stress  float64 // psi, after Cb and the limit of crush
	Factors Adjust  // CD never applies
	Allow   float64 // lb
}

// Value returns the allowable force under the washer: net area times FcPerp
// times Cb. The bending of the washer is not looked at.
func (w Washer) Value() (Bearing, error) {
	area := w.Along * w.Across
	if w.Round {
		area = math.Pi / 4 * w.Along * w.Along
	}
	b := Bearing{Area: area - math.Pi/4*w.Hole*w.Hole}
	if b.Area <= 0 || w.FcPerp <= 0 {
		return Bearing{}, fmt.Errorf("no bearing under a washer of %.2f in² over a hole of %.3f in at %.0f psi", area, w.Hole, w.FcPerp)
	}
	return b.stress(w.FcPerp, BearingFactor(w.Along, w.FromEnd), w.Tight), nil
}

func (b Bearing) stress(fcPerp float64, cb Factor, tight bool) Bearing {
	b.Factors = Adjust{cb}
	if tight {
		b.Factors = append(b.Factors, Factor{"0.02 in crush", 0.73, cite("course page on NDS bearing across the grain", source.Read)})
	}
	b.Stress = fcPerp * b.Factors.Product()
	b.Allow = b.Area * b.Stress
	return b
}

// BearingFactor returns Cb for a bearing lb long along the grain, in, whose
// edge stands fromEnd from the end of the member: (lb + 0.375)/lb under 6 in
// and 3 in or more from the end, else 1 (NDS 2018 3.10.4, read in a course
// page; a round washer's lb is its diameter).
func BearingFactor(lb, fromEnd float64) Factor {
	f := Factor{"Cb", 1, cite("NDS 2018 3.10.4", source.Read)}
	if lb > 0 && lb < 6 && fromEnd >= 3-slack {
		f.Value = (lb + 0.375) / lb
	}
	return f
}
