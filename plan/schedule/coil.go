package schedule

import (
	"cmp"
	"math"
	"slices"
)

// Roll is one roll of coil strap and the lengths cut from it, in.
type Roll struct {
	Cuts []float64
	Left float64
}

// Rolls cuts lengths from rolls: longest first, each from the fullest roll
// that still has it (best fit decreasing). bound is the least number of rolls
// that any cutting needs, by length alone.
func Rolls(cuts []float64, roll float64) (rolls []Roll, bound int) {
	if roll <= 0 {
		return nil, 0
	}
	sorted := slices.Clone(cuts)
	slices.SortFunc(sorted, func(a, b float64) int { return cmp.Compare(b, a) })
	sum := 0.0
	for _, c := range sorted {
		sum += c
		best := -1
		for i, r := range rolls {
			if r.Left >= c-1e-9 && (best < 0 || r.Left < rolls[best].Left) {
				best = i
			}
		}
		if best < 0 {
			rolls = append(rolls, Roll{Left: roll})
			best = len(rolls) - 1
		}
		rolls[best].Cuts = append(rolls[best].Cuts, c)
		rolls[best].Left -= c
	}
	return rolls, int(math.Ceil(sum/roll - 1e-9))
}
