package wind

import (
	"math"

	"galewright/plan"
)

// Gust is the gust-effect factor G of a rigid building: ASCE 7-16 and 7-22
// 26.11.1 (transcribed); a low-rise building may be taken as rigid.
const Gust = 0.85

// SoffitCp is Cp on the underside of a windward overhang, to be added to
// the pressure on its top: ASCE 7-16 and 7-22 27.3.3 (transcribed).
const SoffitCp = 0.8

// SecondStrip is the second value of Cp on a roof by distance from the
// windward edge, in all strips: ASCE 7-10 Fig. 27.4-1 (read).
const SecondStrip = -0.18

// SideWallCp and WindwardWallCp are Cp of walls; the leeward wall's goes by
// the plan: ASCE 7-10 Fig. 27.4-1 (read), the same in 7-16 and 7-22 Fig.
// 27.3-1 (transcribed).
const (
	WindwardWallCp = 0.8
	SideWallCp     = -0.7
)

// LeewardWallCp returns Cp of the leeward wall of a building l along the wind
// and b across it: ASCE 7-10 Fig. 27.4-1 (read), linear between rows.
func LeewardWallCp(l, b float64) float64 {
	return between(l/b, []float64{1, 2, 4}, []float64{-0.5, -0.3, -0.2})
}

// between interpolates ys over ascending xs, flat outside.
func between(x float64, xs, ys []float64) float64 {
	if x <= xs[0] {
		return ys[0]
	}
	for i := 1; i < len(xs); i++ {
		if x <= xs[i] {
			return ys[i-1] + (ys[i]-ys[i-1])*(x-xs[i-1])/(xs[i]-xs[i-1])
		}
	}
	return ys[len(ys)-1]
}

// slopeAngles are the columns of the roof table, degrees; slopeHeights its
// rows, h/L.
var (
	slopeAngles  = []float64{10, 15, 20, 25, 30, 35, 45}
	slopeHeights = []float64{0.25, 0.5, 1}
)

// The roof table for wind normal to the ridge: ASCE 7-10 Fig. 27.4-1 (read;
// cell by cell the same in 7-16 and 7-22, transcribed). A value of 0.0 in it
// is there to interpolate to, and the blank cell at 45 degrees is 0.0 by the
// figure's rule: values are interpolated among those of one sign only.
var (
	windwardFirst = [][]float64{
		{-0.7, -0.5, -0.3, -0.2, -0.2, 0, 0},
		{-0.9, -0.7, -0.4, -0.3, -0.2, -0.2, 0},
		{-1.3, -1.0, -0.7, -0.5, -0.3, -0.2, 0},
	}
	windwardSecond = [][]float64{
		{-0.18, 0, 0.2, 0.3, 0.3, 0.4, 0.4},
		{-0.18, -0.18, 0, 0.2, 0.2, 0.3, 0.4},
		{-0.18, -0.18, -0.18, 0, 0.2, 0.2, 0.3},
	}
	leewardAngles = []float64{10, 15, 20}
	leewardSlope  = [][]float64{
		{-0.3, -0.5, -0.6},
		{-0.5, -0.5, -0.6},
		{-0.7, -0.6, -0.6},
	}
)

// SlopeCp returns Cp of the windward slope of a roof, two values that are
// cases of their own, and of the leeward slope, for wind normal to the ridge
// at an angle of 10 degrees or more. hL is mean roof height over the
// building's length along the wind. -1.3 is not reduced for area, as it may be.
func SlopeCp(theta, hL float64) (first, second, leeward float64) {
	at := func(table [][]float64, angles []float64) float64 {
		var col []float64
		for _, row := range table {
			col = append(col, between(theta, angles, row))
		}
		return between(hL, slopeHeights, col)
	}
	first, second, leeward = at(windwardFirst, slopeAngles), at(windwardSecond, slopeAngles), at(leewardSlope, leewardAngles)
	switch {
	case theta > 80:
		first, second = 0.8, 0.8
	case theta >= 60:
		first, second = 0.01*theta, 0.01*theta
	case theta > 45: // toward 0.6 at 60; the first value has no neighbor of its sign
		first, second = 0, second+(0.6-second)*(theta-45)/15
	}
	return first, second, leeward
}

// StripCp returns Cp, first value, of the roof from the windward edge to h/2,
// to h, to 2h and beyond: ASCE 7-10 Fig. 27.4-1 (read; the same in 7-16 and
// 7-22, transcribed). It is for wind along the ridge, and for wind normal to
// the ridge of a roof under 10 degrees. -1.3 is not reduced for area.
func StripCp(hL float64) (cp [4]float64) {
	low, high := [4]float64{-0.9, -0.9, -0.5, -0.3}, [4]float64{-1.3, -0.7, -0.7, -0.7}
	for i := range cp {
		cp[i] = between(hL, []float64{0.5, 1}, []float64{low[i], high[i]})
	}
	return cp
}

// StripEnds are the far ends of the first three strips of StripCp, ft from
// the windward edge.
func (b Basis) StripEnds() [3]float64 { return [3]float64{b.Height / 2, b.Height, 2 * b.Height} }

// Flat is the roof angle under which wind normal to the ridge takes the
// strips: ASCE 7-10 Fig. 27.4-1 (read), degrees.
const Flat = 10.0

// Along returns the building's length along the wind and across it, ft, for
// wind along the ridge or across it.
func (b Basis) Along(ridge bool) (l, across float64) {
	if ridge {
		return b.Length, b.Width
	}
	return b.Width, b.Length
}

// Direct returns the velocity pressure of the directional procedure at mean
// roof height: Kz is that of the table, without the least value of 0.70 that
// is the envelope procedure's (ASCE 7-16 and 7-22 Table 26.10-1, transcribed).
func (b Basis) Direct() Velocity { return b.At(b.Height) }

// MeanQKd returns the mean of q with Kd between two heights above grade, ft.
func (b Basis) MeanQKd(lo, hi float64) float64 {
	if hi-lo < 1e-9 {
		return b.At(hi).QKd
	}
	t := terrain[b.Edition]
	p := 2 / t.alpha[b.Exposure]
	sum := max(0, min(hi, 15)-lo) * b.At(15).QKd
	if hi > 15 {
		from := max(lo, 15)
		// The integral of z^p, scaled to q at hi.
		sum += b.At(hi).QKd * (hi - from*math.Pow(from/hi, p)) / (p + 1)
	}
	return sum / (hi - lo)
}

// Surface is a wall or a part of a roof in the directional procedure, psf at
// strength level.
type Surface struct {
	Name        string // "windward wall to 15 ft"
	Cp          float64
	Q           float64 // with Kd, that the external pressure acts with, psf
	External    float64
	Plus, Minus float64 // net, with internal pressure and with suction
}

// Surfaces lists the surfaces for wind along the ridge or across it, of a
// roof of the kind.
func (b Basis) Surfaces(ridge bool, kind plan.RoofKind) (out []Surface) {
	l, across := b.Along(ridge)
	qh, gi := b.Direct().QKd, GCpi(b.Enclosure)
	add := func(name string, cp, q float64) {
		out = append(out, Surface{name, cp, q, q * Gust * cp, q*Gust*cp - qh*gi, q*Gust*cp + qh*gi})
	}
	for _, z := range wallHeights(b.Height) {
		add("windward wall at "+b.feet(z), WindwardWallCp, b.At(z).QKd)
	}
	add("leeward wall", LeewardWallCp(l, across), qh)
	add("side walls", SideWallCp, qh)
	if !ridge && b.Theta >= Flat || ridge && kind == plan.HipRoof && b.Theta >= Flat {
		first, second, leeward := SlopeCp(b.Theta, b.Height/l)
		add("windward slope, first", first, qh)
		add("windward slope, second", second, qh)
		add("leeward slope", leeward, qh)
	}
	if ridge || b.Theta < Flat {
		e := b.StripEnds()
		for i, cp := range StripCp(b.Height / l) {
			name := "roof beyond " + b.feet(e[2])
			if i < 3 {
				name = "roof to " + b.feet(e[i])
			}
			add(name, cp, qh)
		}
		add("roof, second", SecondStrip, qh)
	}
	soffit := qh * Gust * SoffitCp // no inside
	return append(out, Surface{"soffit, windward", SoffitCp, qh, soffit, soffit, soffit})
}

// Heights are the heights at which velocity pressure is told, ft.
func (b Basis) Heights() []float64 { return wallHeights(b.Height) }

// wallHeights are the heights at which the windward wall is told: 15 ft,
// every 5 ft, and h.
func wallHeights(h float64) (out []float64) {
	for z := 15.0; z < h-0.5; z += 5 {
		out = append(out, z)
	}
	return append(out, max(h, 15))
}
