package wind

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/source"
	"galewright/plan/units"
)

// Basis is what the pressures of one building are computed from.
type Basis struct {
	Edition   plan.Edition
	Speed     float64 // basic wind speed, 3 s gust, mph
	Exposure  plan.Exposure
	Enclosure plan.Enclosure // "" = enclosed
	Kzt       float64        // topographic factor
	Elevation float64        // of the ground above sea level, ft
	Height    float64        // mean roof height h, ft
	Eave      float64        // eave height, ft
	Theta     float64        // roof angle, degrees
	Length    float64        // plan dimension along the ridge, ft
	Width     float64        // plan dimension across the ridge, ft
	Units     units.System   // of the words about it
}

// Coefficient is one number of a computation and where it comes from.
type Coefficient struct {
	Name  string
	Value float64
	Unit  string // "", "ft", "psf", "mph"
	Table string // "ASCE 7-22 Table 26.10-1"
	Grade source.Grade
}

// terrain holds the constants of ASCE 7-16 and 7-22 Table 26.11-1: exponent and gradient
// height, and the factor of the Kz formula (7-16 Table 26.10-1 footnote 1;
// 7-22 likewise). Second-hand.
var terrain = map[plan.Edition]struct {
	factor float64
	alpha  map[plan.Exposure]float64
	zg     map[plan.Exposure]float64 // ft
}{
	plan.ASCE716: {
		2.01,
		map[plan.Exposure]float64{plan.ExposureB: 7.0, plan.ExposureC: 9.5, plan.ExposureD: 11.5},
		map[plan.Exposure]float64{plan.ExposureB: 1200, plan.ExposureC: 900, plan.ExposureD: 700},
	},
	plan.ASCE722: {
		2.41,
		map[plan.Exposure]float64{plan.ExposureB: 7.5, plan.ExposureC: 9.8, plan.ExposureD: 11.5},
		map[plan.Exposure]float64{plan.ExposureB: 3280, plan.ExposureC: 2460, plan.ExposureD: 1935},
	},
}

// Kz returns the velocity pressure exposure coefficient at height z (ft; 15
// ft at least): ASCE 7-16 and 7-22 Table 26.10-1, formula (second-hand).
func Kz(edition plan.Edition, exposure plan.Exposure, z float64) float64 {
	t := terrain[edition]
	return t.factor * math.Pow(max(z, 15)/t.zg[exposure], 2/t.alpha[exposure])
}

// Kd is the directionality factor of buildings, ASCE 7-16 and 7-22
// Table 26.6-1 (second-hand).
const Kd = 0.85

// Ke returns the ground elevation factor for ground at z ft above sea level:
// ASCE 7-16 and 7-22 Table 26.9-1, formula (second-hand). Both editions use one formula.
func Ke(z float64) float64 { return math.Exp(-0.0000362 * z) }

// internal holds the internal pressure coefficients: ASCE 7-16 and 7-22
// Table 26.13-1 (second-hand).
var internal = map[plan.Enclosure]float64{
	"": 0.18, plan.Enclosed: 0.18, plan.PartiallyEnclosed: 0.55, plan.Open: 0, plan.PartiallyOpen: 0.18,
}

// GCpi returns the internal pressure coefficient, to be taken with both
// signs; of a class that is not known, which Check refuses, no number.
func GCpi(enclosure plan.Enclosure) float64 {
	g, ok := internal[enclosure]
	if !ok {
		return math.NaN()
	}
	return g
}

// Velocity is the velocity pressure at one height.
type Velocity struct {
	Z, Kz, Kzt, Ke float64
	Floor          bool    // Kz was raised to the least value of the envelope procedure
	Q              float64 // as the edition defines q: 7-16 with Kd, 7-22 without
	QKd            float64 // with Kd, whatever the edition
}

// At returns the velocity pressure at height z, ft: ASCE 7-16 equation
// 26.10-1 with Kd in q; 7-22 without, where Kd stands in the pressure
// equations 28.3-1 and 30.3-1 (transcribed).
func (b Basis) At(z float64) Velocity { return b.velocity(z, Kz(b.Edition, b.Exposure, z)) }

// Envelope returns the velocity pressure of the envelope procedure, at mean
// roof height; in Exposure B Kz is 0.70 at least. For 7-16 that is a footnote
// of Table 26.10-1 for heights under 30 ft (second-hand); of 7-22 the sources
// differ and the larger value is taken, up to where the formula passes it.
func (b Basis) Envelope() Velocity {
	k := Kz(b.Edition, b.Exposure, b.Height)
	if b.Exposure == plan.ExposureB && k < 0.70 {
		v := b.velocity(b.Height, 0.70)
		v.Floor = true
		return v
	}
	return b.velocity(b.Height, k)
}

func (b Basis) velocity(z, kz float64) Velocity {
	kzt := b.Kzt
	if kzt == 0 {
		kzt = 1
	}
	v := Velocity{Z: z, Kz: kz, Kzt: kzt, Ke: Ke(b.Elevation)}
	v.QKd = 0.00256 * kz * kzt * Kd * v.Ke * b.Speed * b.Speed
	v.Q = v.QKd
	if b.Edition == plan.ASCE722 {
		v.Q = v.QKd / Kd
	}
	return v
}

// Check tells what makes the basis unusable, or nil.
func (b Basis) Check() error {
	t, ok := terrain[b.Edition]
	if !ok {
		return fmt.Errorf("no wind edition %q; there are 7-16 and 7-22", b.Edition)
	}
	if _, ok := t.zg[b.Exposure]; !ok {
		return fmt.Errorf("no exposure %q; there are B, C and D", b.Exposure)
	}
	if _, ok := internal[b.Enclosure]; !ok {
		return fmt.Errorf("no enclosure class %q; a house is enclosed or partially enclosed", b.Enclosure)
	}
	if !(b.Speed > 0) || !(b.Height > 0) || !(b.Length > 0) || !(b.Width > 0) {
		return fmt.Errorf("wind speed, mean roof height and plan dimensions must be above 0")
	}
	return nil
}

// Coefficients lists the numbers of the velocity pressure with their tables,
// then those of each procedure that is used.
func (b Basis) Coefficients(c Choice) []Coefficient {
	out := b.general()
	if c.Has(plan.Envelope) {
		out = append(out, b.envelopeCoefficients()...)
	}
	if c.Has(plan.Directional) {
		out = append(out, b.directCoefficients()...)
	}
	return out
}

// qEquation cites the velocity pressure.
func (b Basis) qEquation() string {
	if b.Edition == plan.ASCE722 {
		return "ASCE 7-22 Eq. 26.10-1, Kd not in q but in Eqs. 27.3-1 and 28.3-1"
	}
	return "ASCE " + string(b.Edition) + " Eq. 26.10-1, Kd in q"
}

// general lists what both procedures have.
func (b Basis) general() []Coefficient {
	v, e := b.Direct(), "ASCE "+string(b.Edition)+" "
	t := terrain[b.Edition]
	return []Coefficient{
		{"V", b.Speed, "mph", "plan", ""},
		{"h, mean roof height", b.Height, "ft", "plan", ""},
		{"eave, top of plates", b.eave(), "ft", "plan", ""},
		{"roof angle", b.Theta, "deg", "plan", ""},
		{"length along the ridge", b.Length, "ft", "plan", ""},
		{"width across the ridge", b.Width, "ft", "plan", ""},
		{"alpha", t.alpha[b.Exposure], "", e + "Table 26.11-1", source.SecondHand},
		{"zg", t.zg[b.Exposure], "ft", e + "Table 26.11-1", source.SecondHand},
		{"Kzt", v.Kzt, "", "plan", ""},
		{"Kd", Kd, "", e + "Table 26.6-1", source.SecondHand},
		{"Ke", v.Ke, "", e + "Table 26.9-1", source.SecondHand},
		{"GCpi, both signs", GCpi(b.Enclosure), "", e + "Table 26.13-1", source.SecondHand},
		{"a", b.EdgeStrip(), "ft", e + "Figs. 28.3-1 and 30.3-1 notes", source.SecondHand},
	}
}

// envelopeCoefficients lists what the envelope procedure adds.
func (b Basis) envelopeCoefficients() []Coefficient {
	v, e := b.Envelope(), "ASCE "+string(b.Edition)+" "
	kz := e + "Table 26.10-1"
	if v.Floor {
		kz += ", least value of chapter 28"
	}
	return []Coefficient{
		{"envelope Kh", v.Kz, "", kz, source.Transcribed},
		{"envelope qh", v.Q, "psf", b.qEquation(), source.Transcribed},
		{"envelope qh Kd", v.QKd, "psf", b.qEquation(), source.Transcribed},
		{"end zone 2a", 2 * b.EdgeStrip(), "ft", e + "Fig. 28.3-1 notes", source.SecondHand},
		{"zone 2, wind across ridge", b.ZoneTwoReach(false), "ft", e + "low-rise note 8", source.Transcribed},
		{"zone 2, wind along ridge", b.ZoneTwoReach(true), "ft", e + "low-rise note 8", source.Transcribed},
		{"envelope soffit GCp", OverhangGCp, "", e + "28.3.3", source.FromMemory},
	}
}

// directCoefficients lists what the directional procedure adds.
func (b Basis) directCoefficients() []Coefficient {
	v, e := b.Direct(), "ASCE "+string(b.Edition)+" "
	return []Coefficient{
		{"directional Kh", v.Kz, "", e + "Table 26.10-1, formula", source.Transcribed},
		{"directional qh", v.Q, "psf", b.qEquation(), source.Transcribed},
		{"directional qh Kd", v.QKd, "psf", b.qEquation(), source.Transcribed},
		{"G", Gust, "", e + "26.11.1", source.Transcribed},
		{"h/L, wind across ridge", b.Height / b.Width, "", "plan", ""},
		{"h/L, wind along ridge", b.Height / b.Length, "", "plan", ""},
		{"L/B, wind across ridge", b.Width / b.Length, "", "plan", ""},
		{"L/B, wind along ridge", b.Length / b.Width, "", "plan", ""},
		{"directional soffit Cp", SoffitCp, "", e + "27.3.3", source.Transcribed},
	}
}
