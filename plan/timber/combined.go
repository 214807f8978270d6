package timber

import (
	"math"

	"galewright/plan/source"
)

// Resultant is one fastener under lateral load and withdrawal at once.
type Resultant struct {
	Load   float64 // resultant of both, lb
	Angle  float64 // of the resultant to the wood's face, degrees
	Allow  float64 // Z'alpha along it, lb
	Ratio  float64 // Load over Allow; +Inf where a load meets no capacity
	Source string
}

// Together returns the allowable resultant of one fastener of the kind from
// its adjusted lateral value z and withdrawal w (whole fastener, lb) under
// lateral load v and withdrawal load t: NDS 2018 12.4.1, equation 12.4-1 with
// squares for lag screws, and wood screws; 12.4.2, equation 12.4-2 for nails
// (transcribed).
func Together(kind FastenerKind, z, w, v, t float64) Resultant {
	r := Resultant{Load: math.Hypot(v, t), Source: cite("NDS 2018 12.4-1", source.Transcribed)}
	angle := math.Atan2(t, v)
	r.Angle = angle * 180 / math.Pi
	sin, cos := math.Sincos(angle)
	if kind == NailKind {
		r.Source = cite("NDS 2018 12.4-2", source.Transcribed)
	} else {
		sin, cos = sin*sin, cos*cos
	}
	if need := share(cos, z) + share(sin, w); need > 0 && !math.IsInf(need, 1) {
		r.Allow = 1 / need
	}
	if r.Load > 0 {
		r.Ratio = r.Load / r.Allow
	}
	return r
}

// share is part over capacity: the equations written as 1 = Z (cos/z + sin/w),
// which holds where one capacity is 0 and nothing asks for it.
func share(part, capacity float64) float64 {
	if part < 1e-12 {
		return 0
	}
	return part / capacity
}
