package wind

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/source"
	"galewright/plan/units"
)

// Bound is one limit of a method and where the building lies.
type Bound struct {
	What        string  // "h/L of open roof porch"
	Value       float64 // of the building, in Unit
	Least, Most float64 // what the method holds for, in Unit; 0 for no such end
	Unit        string  // "deg", "ft", "stories"; "" of a ratio
	Beyond      string  // what lies past it means, and what was done all the same
	Source      string  // document and clause, or "" where the limit is this program's own
	Grade       source.Grade
}

// Outside tells whether the building lies outside the bound.
func (b Bound) Outside() bool { return b.Ratio() > 1 }

// Ratio is how far the building uses the bound up: over 1 is outside. Of a
// least value it is the value over it, turned about.
func (b Bound) Ratio() float64 {
	r := 0.0
	if b.Most > 0 {
		r = b.Value / b.Most
	}
	if b.Least > 0 && b.Value > 0 {
		r = math.Max(r, b.Least/b.Value)
	}
	return r
}

// Range says in words what the method holds for: "0.25 to 1", "at most 45 deg".
func (b Bound) Range(u units.System) string {
	unit := u.Unit(b.Unit)
	if unit != "" {
		unit = " " + unit
	}
	least, most := round(u.Value(b.Least, b.Unit)), round(u.Value(b.Most, b.Unit))
	switch {
	case b.Least > 0 && b.Most > 0:
		return fmt.Sprintf("%g to %g%s", least, most, unit)
	case b.Least > 0:
		return fmt.Sprintf("at least %g%s", least, unit)
	}
	return fmt.Sprintf("at most %g%s", most, unit)
}

// round keeps the decimals that a limit is read with.
func round(v float64) float64 { return math.Round(v*1000) / 1000 }

// Told tells of a bound that the building is outside of.
func (b Bound) Told(u units.System) string {
	unit := u.Unit(b.Unit)
	if unit != "" {
		unit = " " + unit
	}
	return fmt.Sprintf("%s %.4g%s is outside of what the method holds for, %s: %s", b.What, u.Value(b.Value, b.Unit), unit, b.Range(u), u.Words(b.Beyond))
}

// Bounds lists the limits of the procedures that are used, and of components
// and cladding, for this building.
func (b Basis) Bounds(c Choice) []Bound {
	least, most := math.Min(b.Length, b.Width), math.Max(b.Length, b.Width)
	out := []Bound{
		{"height, cladding figures", b.Height, 0, 60, "ft", "the figures of components and cladding used here are for up to {60 ft}", "ASCE 7-16 30.3", source.SecondHand},
		{"length over width of the plan", most / least, 0, 3, "", "the limit of the prescriptive high wind guides: the deflection of diaphragms is not checked", "the high wind guide for 110 mph, Exposure B", source.Read},
	}
	if c.Has(plan.Envelope) {
		out = append(out,
			Bound{"height, low-rise", b.Height, 0, 60, "ft", "mean roof height: the building is not low-rise", "ASCE 7-16 26.2", source.Read},
			Bound{"height over width, low-rise", b.Height / least, 0, 1, "", "mean roof height over the least horizontal dimension: the building is not low-rise", "ASCE 7-16 26.2", source.Read})
	}
	if c.Has(plan.Directional) {
		out = append(out, Bound{"height over width, rigid", b.Height / least, 0, 4, "", "mean roof height over the least horizontal dimension: G 0.85 is for rigid buildings; its frequency wants to be worked out", "ASCE 7-10 commentary C26.9", source.FromMemory})
	}
	if b.Kzt == 1 || b.Kzt == 0 {
		out = append(out, Bound{"elevation at Kzt 1", b.Elevation, 0, 1000, "ft", "hills and ridges are not checked", "", ""})
	}
	return out
}

// Untreated tells what class of building neither procedure is worked out for
// here; "" where it is.
func (b Basis) Untreated() string {
	if b.Enclosure == plan.Open {
		return "the building is open: neither procedure is worked out here for one without walls"
	}
	return ""
}

// Stories is the limit of leaving the torsional cases out for a light frame of n
// stories.
func Stories(n int) Bound {
	return Bound{"stories, no torsional cases", float64(n), 0, 2, "stories", "the torsional cases are left out only for light frames of up to two stories, and they are not run", "ASCE 7-05 low-rise note 5 and 7-22 Appendix D.1", source.Transcribed}
}

// CladAngle is the limit of the figures of components and cladding by the angle
// of a roof, degrees.
func CladAngle(what string, kind plan.RoofKind, theta float64) Bound {
	most := 45.0
	if kind == plan.ShedRoof {
		most = 30
	}
	return Bound{what, theta, 0, most, "deg", "no figure of components and cladding; where one is needed, the roof's deck is a gap, and its overhangs take the envelope procedure's end zone", "ASCE 7-16 Figs. 30.3-2 and 30.3-5", source.SecondHand}
}

// freeBeyond is what is done with an open roof outside of the figures.
const freeBeyond = "the figures of free roofs were not made for it; their values are still run beside those of an overhang, and the larger uplift is taken"

// FreeBound is the limit of the figures of free roofs by height over length along
// the wind.
func FreeBound(what string, hL float64) Bound {
	return Bound{what, hL, FreeLeast, FreeMost, "", freeBeyond, "ASCE 7-16 Figs. 27.3-4 to 27.3-7", source.Transcribed}
}

// FreeAngle is their limit by the angle of the roof, degrees.
func FreeAngle(what string, theta float64) Bound {
	return Bound{what, theta, 0, FreeTheta, "deg", freeBeyond, "ASCE 7-16 Figs. 27.3-4 to 27.3-7", source.Transcribed}
}
