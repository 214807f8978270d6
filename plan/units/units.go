package units

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"galewright/plan/length"
)

// System is what a plan writes as project.units; the zero value is Imperial.
type System string

// The systems.
const (
	Imperial System = "imperial" // feet and inches, lb, psf
	Metric   System = "metric"   // mm and m, kN, kPa
)

// Systems lists them, that of a plan that says none first.
var Systems = []System{Imperial, Metric}

// Is tells whether numbers come out metric.
func (s System) Is() bool { return s == Metric }

// kind is one US unit and how its quantities read in the metric system.
type kind struct {
	us, si string
	factor float64                     // of one us in si
	places func(v float64, us int) int // decimals of v, of a number with so many in the US system
}

// lbf is 1 lb as force in N: 0.45359237 kg (international yard and pound agreement,
// 1959) at 9.80665 m/s² (3rd CGPM, 1901). 1 in is 25.4 mm.
const (
	lbf = kg * 9.80665
	mm  = 25.4
	ft  = 0.3048
)

// kinds lists the units, a longer name before one that it begins with.
var kinds = []kind{
	{"million psi", "GPa", lbf / (mm * mm) * 1000, fixed(1)},
	{"lb per in", "N/mm", lbf / mm, bySize},
	{"lb an inch", "N a millimeter", lbf / mm, bySize},
	{"kip/in", "kN/mm", lbf / mm, bySize},
	{"lb/in3", "kg/m³", kg / (mm * mm * mm * 1e-9), fixed(0)},
	{"lb/in", "kN/m", lbf / mm, bySize},
	{"lb-in", "kN·m", lbf * mm * 1e-6, bySize},
	{"lb-ft", "kN·m", lbf * ft * 1e-3, bySize},
	{"lb", "kN", lbf * 1e-3, bySize},
	{"psf", "kPa", lbf / (ft * ft) * 1e-3, func(_ float64, us int) int { return max(2, us+1) }},
	{"psi", "MPa", lbf / (mm * mm), bySize},
	{"plf", "kN/m", lbf / ft * 1e-3, bySize},
	{"mph", "m/s", 0.44704, func(_ float64, us int) int { return max(1, us) }},
	{"ft²", "m²", ft * ft, func(_ float64, us int) int { return min(3, us+2) }},
	{"in²", "mm²", mm * mm, fixed(0)},
	{"ft", "m", ft, func(_ float64, us int) int { return min(3, us+1) }},
	{"in", "mm", mm, func(_ float64, us int) int { return max(0, us-1) }},
	{"kg", "kg", 1, func(_ float64, us int) int { return us }}, // what is converted already
}

// fixed gives every number the same decimals.
func fixed(n int) func(float64, int) int { return func(float64, int) int { return n } }

// bySize gives a number about three figures that count, a force to 10 N and
// below 1 kN to 1 N.
func bySize(v float64, _ int) int {
	switch v = math.Abs(v); {
	case v == 0 || v >= 1 && v < 100:
		return 2
	case v < 1:
		return 3
	case v < 1000:
		return 1
	}
	return 0
}

// find returns the unit of a name.
func find(us string) (kind, bool) {
	for _, k := range kinds {
		if k.us == us {
			return k, true
		}
	}
	return kind{}, false
}

// Unit returns the word for a US unit; one without a metric fellow stays.
func (s System) Unit(us string) string {
	if k, ok := find(us); ok && s.Is() {
		return k.si
	}
	return us
}

// Key says which units stand in tables without them; "" in the US system, where
// they are those of the trade.
func (s System) Key() string {
	if s.Is() {
		return "Forces in kN, along walls kN/m, pressures kPa, lengths mm or m, converted from the US units that the standards are written in."
	}
	return ""
}

// Value converts a number in a US unit.
func (s System) Value(v float64, us string) float64 {
	if k, ok := find(us); ok && s.Is() {
		return v * k.factor
	}
	return v
}

// Number prints a number in a US unit without the unit, with so many decimals in the
// US system and what that is worth in the metric one.
func (s System) Number(v float64, us string, decimals int) string {
	if k, ok := find(us); ok && s.Is() {
		v *= k.factor
		decimals = k.places(v, decimals)
		if v != 0 && math.Abs(v) < 0.5*math.Pow10(-decimals) {
			v = 0 // no "-0.00"
		}
	}
	return strconv.FormatFloat(v, 'f', decimals, 64)
}

// Amount is Number with the unit behind it.
func (s System) Amount(v float64, us string, decimals int) string {
	return strings.TrimSpace(s.Number(v, us, decimals) + " " + s.Unit(us))
}

// Length prints inches as feet and inches to the tape's 1/16, or as whole
// millimeters.
func (s System) Length(in float64) string { return length.Print(in, s.Is()) }

// Spacing prints a spacing of members or fasteners: in inches, as framers name
// it, or in millimeters.
func (s System) Spacing(in float64) string {
	if s.Is() {
		return length.MM(in)
	}
	return strconv.FormatFloat(in, 'f', -1, 64) + `"`
}

// Bought prints the inches of what is bought by a US size: 5/8", in the
// metric system 5/8 in (16 mm).
func (s System) Bought(in float64) string {
	if !s.Is() {
		return length.Feet(in)
	}
	return inches(in) + " (" + length.MM(in) + ")"
}

// Beside prints the name of what is bought by a US size, in the metric system with
// what it measures behind it: 2x6 (38 x 140 mm).
func (s System) Beside(name string, in ...float64) string {
	if !s.Is() || len(in) == 0 || strings.HasSuffix(name, "mm") {
		return name
	}
	return name + " (" + millimeters(in) + ")"
}

// Stock prints a length that the yard sells: 16'-0"; 16 ft (4877 mm), or 4800 mm
// where it is no whole foot.
func (s System) Stock(in float64) string {
	if feet := in / 12; s.Is() && feet == math.Trunc(feet) {
		return s.Beside(strconv.FormatFloat(feet, 'f', 0, 64)+" ft", in)
	}
	return s.Length(in)
}

// Sized names what has its size in its US name, in the metric system by its bare
// name with millimeters beside it; sizes of 0 are not known.
func (s System) Sized(us, name string, in ...float64) string {
	if !s.Is() {
		return us
	}
	return s.Beside(name, slices.DeleteFunc(in, func(v float64) bool { return v <= 0 })...)
}

// Literal turns a length as a plan writes it, in quotes, into one of the system; any
// other text stays.
func (s System) Literal(text string) string {
	in, err := length.Parse(strings.Trim(text, `"`))
	if err != nil || !s.Is() {
		return text
	}
	return `"` + strings.ReplaceAll(length.MM(in), " ", "") + `"`
}

// millimeters prints sizes with one unit: 38 x 140 mm; under 10 mm to the tenth.
func millimeters(in []float64) string {
	parts := make([]string, len(in))
	for i, v := range in {
		places := 0
		if v *= mm; v < 10 {
			places = 1
		}
		parts[i] = strconv.FormatFloat(v, 'f', places, 64)
	}
	return strings.Join(parts, " x ") + " mm"
}

// inches prints a size in inches, without feet: 5/8 in, 24 in.
func inches(in float64) string {
	whole := math.Floor(length.Snap(in))
	part := strings.TrimSuffix(length.Feet(length.Snap(in)-whole), `"`)
	switch {
	case part == "0":
		return strconv.FormatFloat(whole, 'f', 0, 64) + " in"
	case whole == 0:
		return part + " in"
	}
	return strconv.FormatFloat(whole, 'f', 0, 64) + " " + part + " in"
}

// kg is the mass of 1 lb.
const kg = 0.45359237

// MassOf returns what pounds weigh to the tenth, rounded up, and the unit.
func (s System) MassOf(lb float64) (float64, string) {
	if s.Is() {
		return math.Ceil(lb*kg*10-1e-9) / 10, "kg"
	}
	return lb, "lb"
}

// BoughtMass prints the pounds of a box that is sold by them.
func (s System) BoughtMass(lb float64) string {
	us := strconv.FormatFloat(lb, 'f', -1, 64) + " lb"
	if s.Is() {
		return us + " (" + strconv.FormatFloat(lb*kg, 'f', 2, 64) + " kg)"
	}
	return us
}

// PerMass prints a count for each pound.
func (s System) PerMass(perLb float64) string {
	if s.Is() {
		return strconv.FormatFloat(perLb/kg, 'f', 0, 64) + " per kg"
	}
	return strconv.FormatFloat(perLb, 'f', 0, 64) + " per lb"
}

// Thickness prints that of steel: 0.036", 0.9 mm.
func (s System) Thickness(in float64) string {
	if s.Is() {
		return millimeters([]float64{in})
	}
	text := strconv.FormatFloat(in, 'f', 3, 64)
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".") + `"`
}

// Speed prints a wind speed given in mph, in the metric system with the other
// beside it, which tables of the standard are read by.
func (s System) Speed(mph float64) string {
	us := fmt.Sprintf("%.4g mph", mph)
	if s.Is() {
		return fmt.Sprintf("%.4g m/s (%s)", s.Value(mph, "mph"), us)
	}
	return us
}

// Feet prints a height given in feet.
func (s System) Feet(v float64) string {
	if s.Is() {
		return s.Amount(v, "ft", 0)
	}
	return fmt.Sprintf("%.4g ft", v)
}

// Away prints a distance over land given in feet.
func (s System) Away(v float64) string {
	switch {
	case s.Is():
		return fmt.Sprintf("%.4g km", v*ft/1000)
	case v > 5280:
		return fmt.Sprintf("%.4g miles", v/5280)
	}
	return fmt.Sprintf("%.0f ft", v)
}
