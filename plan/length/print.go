package length

import (
	"fmt"
	"math"
	"strconv"
)

// Tape is the finest mark of a tape measure, in.
const Tape = 1.0 / 16

// Snap returns in rounded to the nearest 1/16 in, halves away from zero.
func Snap(in float64) float64 { return math.Round(in/Tape) * Tape }

// Feet prints inches as framers say them, to the nearest 1/16 in:
// 12'-3 1/2", and under a foot 7 1/4".
func Feet(in float64) string {
	n := int64(math.Round(math.Abs(in) / Tape))
	sign := ""
	if in < 0 && n > 0 {
		sign = "-"
	}
	feet, n := n/192, n%192
	switch {
	case feet == 0:
		return sign + inches(n)
	case n > 0 && n < 16:
		return fmt.Sprintf("%s%d'-0 %s", sign, feet, inches(n))
	}
	return fmt.Sprintf("%s%d'-%s", sign, feet, inches(n))
}

// inches prints n sixteenths of an inch, fraction reduced.
func inches(n int64) string {
	whole, part := n/16, n%16
	if part == 0 {
		return fmt.Sprintf(`%d"`, whole)
	}
	d := int64(16)
	for part%2 == 0 {
		part, d = part/2, d/2
	}
	if whole == 0 {
		return fmt.Sprintf(`%d/%d"`, part, d)
	}
	return fmt.Sprintf(`%d %d/%d"`, whole, part, d)
}

// MM prints inches as whole millimeters: "3744 mm".
func MM(in float64) string {
	v := math.Round(in * 25.4)
	if v == 0 {
		v = 0 // no "-0"
	}
	return strconv.FormatFloat(v, 'f', 0, 64) + " mm"
}

// Print prints inches in the plan's own system.
func Print(in float64, metric bool) string {
	if metric {
		return MM(in)
	}
	return Feet(in)
}
