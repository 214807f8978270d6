package wind

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/source"
)

// Point is a corner of a GCp curve: effective wind area in ft², coefficient.
type Point struct{ Area, GCp float64 }

// Curve is a GCp curve: straight lines in log10 of the area between its
// points, flat outside.
type Curve []Point

// At returns the coefficient for an effective wind area, ft².
func (c Curve) At(area float64) float64 {
	if len(c) == 0 {
		return 0
	}
	if area <= c[0].Area {
		return c[0].GCp
	}
	for i := 1; i < len(c); i++ {
		if p, q := c[i-1], c[i]; area < q.Area {
			f := math.Log10(area/p.Area) / math.Log10(q.Area/p.Area)
			return p.GCp + f*(q.GCp-p.GCp)
		}
	}
	return c[len(c)-1].GCp
}

func line(at10, end, area float64) Curve { return Curve{{10, at10}, {area, end}} }

// Clad is one zone of a figure of components and cladding.
type Clad struct {
	Zone               string
	Positive, Negative Curve
	Overhang           Curve // net on the overhang, from above; nil = not given
}

// Figure is a figure of components and cladding.
type Figure struct {
	Name  string // "ASCE 7-22 Fig. 30.3-2B"
	Grade source.Grade
	Note  string // what to know of its source
	Zones []Clad
}

// WallFigure returns wall zones 4 and 5 for h up to 60 ft, ASCE 7-22 Fig. 30.3-1
// (transcribed): the same in 7-10, 7-16 and 7-22. Up to a roof angle of 10
// degrees the coefficients are 0.9 of these (second-hand).
func WallFigure(edition plan.Edition, theta float64) Figure {
	f := 1.0
	if theta <= 10 {
		f = 0.9
	}
	pos := line(1*f, 0.7*f, 500)
	return Figure{Name: "ASCE " + string(edition) + " Fig. 30.3-1", Grade: source.Transcribed, Zones: []Clad{
		{"4", pos, line(-1.1*f, -0.8*f, 500), nil},
		{"5", pos, line(-1.4*f, -0.8*f, 500), nil},
	}}
}

// CladPressure is the design pressure of components and cladding.
type CladPressure struct {
	Zone                       string
	Area                       float64 // effective wind area, ft²
	GCpPositive, GCpNegative   float64
	Positive, Negative         float64 // psf, strength level
	RaisedPositive, RaisedDown bool    // the least pressure of 16 psf governs
}

// LeastClad is the least net pressure of components and cladding, psf either
// way at strength level: ASCE 7-10 30.2.2 (second-hand: as the Philippine
// code that follows it has it).
const LeastClad = 16.0

// Cladding returns the pressures of a zone on an effective wind area (ft²):
// ASCE 7-22 equation 30.3-1, at mean roof height.
func (b Basis) Cladding(z Clad, area float64) CladPressure {
	gi, q := GCpi(b.Enclosure), b.At(b.Height).QKd
	p := CladPressure{Zone: z.Zone, Area: area, GCpPositive: z.Positive.At(area), GCpNegative: z.Negative.At(area)}
	p.Positive, p.Negative = q*(p.GCpPositive+gi), q*(p.GCpNegative-gi)
	if p.Positive < LeastClad {
		p.Positive, p.RaisedPositive = LeastClad, true
	}
	if p.Negative > -LeastClad {
		p.Negative, p.RaisedDown = -LeastClad, true
	}
	return p
}

// EffectiveArea returns the effective wind area of a member of the span and
// tributary width, ft: the width need not be less than a third of the span
// (ASCE 7-16 26.2, from memory).
func EffectiveArea(span, width float64) float64 { return span * math.Max(width, span/3) }

// RoofFigure returns the figure of a roof for h up to 60 ft, angle in
// degrees. Only 7-16 hips ask for h over width.
func RoofFigure(edition plan.Edition, kind plan.RoofKind, theta, hOverB float64) (Figure, error) {
	if theta > 45+1e-9 {
		return Figure{}, fmt.Errorf("no figure of components and cladding for a roof angle of %.1f degrees; the steepest is 45", theta)
	}
	switch {
	case !slices.Contains(plan.RoofKinds, kind):
		return Figure{}, fmt.Errorf("no figure of components and cladding for a roof of the kind %q", kind)
	case kind == plan.ShedRoof && theta > 30:
		return Figure{}, fmt.Errorf("no figure of components and cladding for a shed roof of %.1f degrees; the steepest is 30", theta)
	case kind == plan.ShedRoof && theta > 3:
		f := shedFigure(theta)
		f.Name = "ASCE " + string(edition) + " " + f.Name
		if edition == plan.ASCE716 {
			f.Note = "coefficients of 7-22 taken for 7-16, whose figure was not read"
		}
		return f, nil
	case theta <= 7:
		f := flat
		f.Name = "ASCE " + string(edition) + " " + f.Name
		if edition == plan.ASCE716 {
			f.Grade, f.Note = source.FromMemory, "end points as in 7-22; zones measured by 0.6 h and 0.2 h"
		}
		return f, nil
	case edition == plan.ASCE716 && kind == plan.HipRoof:
		return hip16(theta, hOverB), nil
	case edition == plan.ASCE716 && kind == plan.GableRoof:
		return gable16(theta), nil
	case kind == plan.HipRoof:
		return hip22(theta), nil
	case kind == plan.GableRoof:
		return gable22(theta), nil
	}
	return Figure{}, fmt.Errorf("no figure of components and cladding for a %s roof of %.1f degrees by ASCE %s", kind, theta, edition)
}
