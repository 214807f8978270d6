package loadpath

import (
	"math"
	"slices"
)

// push is a force on a beam at a place along it, lb at in.
type push struct{ at, lb float64 }

// spanned is the largest moment, lb-in, and shear, lb, of a beam and where the moment is.
type spanned struct{ moment, shear, at float64 }

// take keeps the larger of both.
func (s *spanned) take(o spanned) {
	if o.moment > s.moment {
		s.moment, s.at = o.moment, o.at
	}
	s.shear = math.Max(s.shear, o.shear)
}

// simple is a beam on two supports, lo and hi, under the forces between them. Of a
// force nearer to a support than the beam is deep, in, only that part of the distance
// counts for shear there (NDS 2018 3.4.3.1, from memory).
func simple(lo, hi, deep float64, loads []push) (out spanned) {
	left, right := 0.0, 0.0
	shear := [2]float64{}
	for _, p := range loads {
		if p.at > lo && p.at < hi {
			k := (p.at - lo) / (hi - lo)
			left, right = left+(1-k)*p.lb, right+k*p.lb
			shear[0] += (1 - k) * p.lb * math.Min(1, (p.at-lo)/deep)
			shear[1] += k * p.lb * math.Min(1, (hi-p.at)/deep)
		}
	}
	out.shear = math.Max(shear[0], shear[1])
	for _, at := range loads {
		if at.at <= lo || at.at >= hi {
			continue
		}
		m := left * (at.at - lo)
		for _, p := range loads {
			if p.at > lo && p.at < at.at {
				m -= p.lb * (at.at - p.at)
			}
		}
		if m > out.moment {
			out.moment, out.at = m, at.at
		}
	}
	return out
}

// overhanging is what lies past the last support of a beam, at the support.
// A span reaches from the face of a support and half the bearing that it needs in (NDS
// 2018 3.2.1, from memory): face is how far that is from the support's middle, in.
func overhanging(support, face, deep float64, loads []push, side float64) (out spanned) {
	out.at = support
	for _, p := range loads {
		if d := (p.at-support)*side - face; d > 0 {
			out.moment += d * p.lb
			out.shear += p.lb * math.Min(1, d/deep)
		}
	}
	return out
}

// onSupports is a beam on supports, each stretch between two of them by itself, with
// overhangs past the outer ones: no moment is taken to go over a support.
func onSupports(supports []float64, face, deep float64, loads []push) (out spanned) {
	slices.Sort(supports)
	for i := 1; i < len(supports); i++ {
		if supports[i]-supports[i-1] > 1e-6 {
			out.take(simple(supports[i-1], supports[i], deep, loads))
		}
	}
	out.take(overhanging(supports[0], face, deep, loads, -1))
	out.take(overhanging(supports[len(supports)-1], face, deep, loads, 1))
	return out
}

// reactions shares forces to supports by lever, those past the outer ones to them.
func reactions(supports []float64, loads []push) []float64 {
	out := make([]float64, len(supports))
	for _, p := range loads {
		i, _ := slices.BinarySearch(supports, p.at)
		switch {
		case i == 0:
			out[0] += p.lb
		case i == len(supports):
			out[i-1] += p.lb
		default:
			k := (p.at - supports[i-1]) / (supports[i] - supports[i-1])
			out[i-1] += (1 - k) * p.lb
			out[i] += k * p.lb
		}
	}
	return out
}
