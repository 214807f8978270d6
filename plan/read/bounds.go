package read

import (
	"fmt"
	"strconv"

	"galewright/plan"
	"galewright/plan/units"
)

// Bounds are the least and most that a key may measure, and what is usual on houses;
// High 0 = nothing is said of that. Inches, or the first unit of the key's kind.
// Bounds are physical ones or those that the figures and tables behind the numbers
// were made for; what is usual is common practice, no published source.
type Bounds struct{ Least, Most, Low, High float64 }

// Text says the bounds, with a way to print a measure.
func (b *Bounds) Text(print func(float64) string) string {
	s := fmt.Sprintf("from %s to %s", print(b.Least), print(b.Most))
	if b.High > 0 {
		s += fmt.Sprintf(", usually %s to %s", print(b.Low), print(b.High))
	}
	return s
}

// Limits says a key's bounds in US units, "" where it has none.
func (k Key) Limits() string {
	switch {
	case k.Bounds == nil:
		return ""
	case k.Type == "speed":
		return k.Bounds.Text(inUnit(speeds[0]))
	}
	return k.Bounds.Text(units.Imperial.Length)
}

// bounded tells whether a measure, as the plan writes it, is within the bounds of the key that is read, and
// warns of an unusual one.
func (v value) bounded(x float64, written string, print func(float64) string) bool {
	b := v.bounds
	const slack = 1e-6
	switch {
	case b == nil:
	case x < b.Least-slack || x > b.Most+slack:
		v.bad("out-of-range", "", "%s is not between %s and %s", written, print(b.Least), print(b.Most))
		return false
	case b.High > 0 && (x < b.Low-slack || x > b.High+slack):
		v.r.add(plan.Diagnostic{
			Severity: plan.Warning, Code: "unusual", Where: v.where, Pos: v.place(),
			Summary: fmt.Sprintf("%s: %s is unusual: most are %s to %s", v.key, written, print(b.Low), print(b.High)),
			Mend:    "correct it if it is a slip of the pen; else leave it",
		})
	}
	return true
}

// inUnit prints a measure in a unit.
func inUnit(u unit) func(float64) string {
	return func(x float64) string { return strconv.FormatFloat(x/u.factor, 'f', -1, 64) + " " + u.name }
}
