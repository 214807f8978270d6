package timber

import (
	"fmt"
	"math"
	"strings"
)

// Nail is a nail's size.
type Nail struct {
	Name     string  // "10d common"
	Length   float64 // in
	Diameter float64 // of the shank, in
	Head     float64 // diameter of the head, in; 0 = not known
	Root     float64 // of a screw: diameter under its thread, in; 0 = a nail
}

func (n Nail) String() string {
	return strings.TrimSpace(fmt.Sprintf("%s (%.3f x %s)", n.Name, n.Diameter, trim(n.Length)))
}

func trim(x float64) string {
	return strings.TrimRight(strings.TrimRight(fmt.Sprintf("%.3f", x), "0"), ".")
}

// nails is NDS 2018 Table L4, p.182 (transcribed), and the short strap nail of
// IRC 2018 R602.6.1 (read).
var nails = []Nail{
	{"6d common", 2, 0.113, 0.266, 0},
	{"7d common", 2.25, 0.113, 0.266, 0},
	{"8d common", 2.5, 0.131, 0.281, 0},
	{"10d common", 3, 0.148, 0.312, 0},
	{"12d common", 3.25, 0.148, 0.312, 0},
	{"16d common", 3.5, 0.162, 0.344, 0},
	{"20d common", 4, 0.192, 0.406, 0},
	{"6d box", 2, 0.099, 0.266, 0},
	{"7d box", 2.25, 0.099, 0.266, 0},
	{"8d box", 2.5, 0.113, 0.297, 0},
	{"10d box", 3, 0.128, 0.312, 0},
	{"12d box", 3.25, 0.128, 0.312, 0},
	{"16d box", 3.5, 0.135, 0.344, 0},
	{"20d box", 4, 0.148, 0.375, 0},
	{"7d sinker", 2.125, 0.099, 0.250, 0},
	{"8d sinker", 2.375, 0.113, 0.266, 0},
	{"10d sinker", 2.875, 0.120, 0.281, 0},
	{"12d sinker", 3.125, 0.135, 0.312, 0},
	{"16d sinker", 3.25, 0.148, 0.344, 0},
	{"20d sinker", 3.75, 0.177, 0.375, 0},
	{"10d x 1-1/2", 1.5, 0.148, 0.312, 0},
}

// NailOf finds a nail of the table by its name, "10d common"; a bare penny
// size is a common nail.
func NailOf(name string) (Nail, bool) {
	want := strings.ToLower(strings.TrimSpace(name))
	for _, n := range nails {
		if n.Name == want || n.Name == want+" common" {
			return n, true
		}
	}
	return Nail{}, false
}

// ScrewRoot returns the root diameter of the wood screw of the diameter, in;
// 0 when the table has none. The yield equations take the root (NDS 2018
// 12.3.7.1), everything else the diameter, Fyb too: so the published values
// of Tables 12L and 12M come out (transcribed).
func ScrewRoot(d float64) float64 {
	for _, s := range woodScrews {
		if math.Abs(s.d-d) < sameSize {
			return s.root
		}
	}
	return 0
}

// BendingYield returns Fyb, the bending yield strength of a common, box or
// sinker nail of low carbon steel, psi: NDS 2018 Table I1, p.175 (transcribed).
// It is 0 outside the table's range of 0.099 to 0.375 in.
func BendingYield(d float64) float64 {
	for _, r := range []struct{ upTo, fyb float64 }{
		{0.142, 100_000},
		{0.177, 90_000},
		{0.236, 80_000},
		{0.273, 70_000},
		{0.344, 60_000},
		{0.375, 45_000},
	} {
		if d >= 0.099-1e-9 && d <= r.upTo+1e-9 {
			return r.fyb
		}
	}
	return 0
}

// Reduction returns Rd for a dowel of diameter d at the angle to grain
// (degrees) in the three groups of modes, I, II and III with IV: NDS 2018
// Table 12.3.1B, p.84 (transcribed).
func Reduction(d, angle float64) (one, two, three float64) {
	switch {
	case d <= 0.17:
		return 2.2, 2.2, 2.2
	case d < 0.25:
		kd := 10*d + 0.5
		return kd, kd, kd
	}
	k := 1 + 0.25*angle/90
	return 4 * k, 3.6 * k, 3.2 * k
}
