package hardware

// thread is what a rod shows beyond its nut, in: three turns of a coarse
// thread (common practice, no published source). A nut is taken as high as
// the rod is thick.
const thread = 0.25

// The thickness of washers, in, as taken for the length of rods: a cut washer
// of the wide series is no thicker up to 1 1/4 in (ASME B18.21.1, from
// memory), plates by their side (common practice, no published source).
const (
	cutThick   = 3.0 / 16
	plateThick = 1.0 / 4
	wideThick  = 3.0 / 8
	wide       = 3.5
)

// Past returns the length of rod that one end takes beyond the face its washer
// lies on, in: washer, nut and thread. washer is the side of a square plate, 0
// a cut washer.
func Past(rod, washer float64) float64 { return WasherThick(washer) + rod + thread }

// WasherThick returns the thickness taken of a square plate of the side, or
// at 0 of a cut washer, in.
func WasherThick(washer float64) float64 {
	switch {
	case washer == 0:
		return cutThick
	case washer < wide:
		return plateThick
	}
	return wideThick
}

// CutWasher returns the outside diameter of a cut washer for a rod, in (ASME
// B18.21.1 type A plain, wide series, from memory).
func CutWasher(rod float64) float64 {
	for _, w := range []struct{ rod, od float64 }{{0.5, 1.375}, {0.625, 1.75}, {0.75, 2}, {0.875, 2.25}, {1, 2.5}, {1.125, 2.75}, {1.25, 3}} {
		if rod <= w.rod+1e-9 {
			return w.od
		}
	}
	return 2.5 * rod
}

// RodHole returns the diameter of the hole in wood for a rod or bolt, in: the
// most that NDS 2018 12.1.3.2 allows, 1/16 in over it (transcribed).
func RodHole(rod float64) float64 { return rod + 1.0/16 }
