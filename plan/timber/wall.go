package timber

import "math"

// MaxAspect is the largest height to width of a sheathed segment that counts
// as a shear wall: SDPWS Table 4.3.4, blocked wood structural panels (read in
// the American Wood Council's answer on that table, which names no edition).
const MaxAspect = 3.5

// SegmentFactor returns the factor on the unit shear of a segmented wall's
// segment of height h and width b (same unit): 1 up to an aspect of 2:1,
// then 1.25 - 0.125 h/b to 3.5:1 (SDPWS 2015 4.3.4.2, from memory), 0 beyond.
func SegmentFactor(h, b float64) float64 {
	switch r := h / b; {
	case r <= 2:
		return 1
	case r <= MaxAspect+1e-9:
		return 1.25 - 0.125*r
	}
	return 0
}

// PerforatedLength returns the length of a full-height segment that counts
// in a perforated wall: the whole up to 2:1, b(2b/h) to 3.5:1, 0 beyond
// (SDPWS 2021 4.3.3.4, transcribed).
func PerforatedLength(h, b float64) float64 {
	switch r := h / b; {
	case r <= 2:
		return b
	case r <= MaxAspect+1e-9:
		return b * 2 * b / h
	}
	return 0
}

// Perforated is the shear capacity adjustment of a perforated shear wall.
type Perforated struct {
	Ao     float64 // area of openings, each at least a third of the height tall
	H      float64 // height of the wall
	SumLi  float64 // length of full-height sheathing, PerforatedLength of each
	Length float64 // total length, openings included
	R      float64 // sheathing area ratio
	Co     float64 // adjustment factor, at most 1
}

// PerforatedFactor returns Co by SDPWS 2015 equations 4.3-5 and 4.3-6 (2021:
// 4.3.5.6); transcribed. Lengths are of one unit, ao its square.
func PerforatedFactor(ao, h, sumLi, length float64) Perforated {
	p := Perforated{Ao: ao, H: h, SumLi: sumLi, Length: length}
	p.R = 1 / (1 + ao/(h*sumLi))
	p.Co = math.Min(1, p.R/(3-2*p.R)*length/sumLi)
	return p
}

// PerforatedLimit is the largest nominal unit shear of a perforated wall,
// lb/ft (SDPWS 2021 4.3.2.3, transcribed).
const PerforatedLimit = 2_435

// OpeningArea returns what an opening of the width and height counts in Ao
// of a wall of height h.
func OpeningArea(width, height, h float64) float64 { return width * math.Max(height, h/3) }
