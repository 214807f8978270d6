package detail

import (
	"fmt"

	"galewright/plan"
	"galewright/plan/hardware"
)

// punch is one hole of a band: along from the band's near end, across from
// its middle line, in.
type punch struct {
	along, across float64
	filled        bool
}

// pattern lays out the holes of one end of a band as the catalog gives
// them. Where it gives no pitch or end distance, the least that common
// practice allows is drawn and guessed is true.
func pattern(f plan.Fasteners, width float64) (holes []punch, guessed bool) {
	rows, pitch, end := f.Rows, f.Spacing, f.EndDist
	if rows == 0 {
		rows = 1
		if width >= 2 {
			rows = 2
		}
	}
	if pitch == 0 {
		pitch, guessed = hardware.MinPitch, true
	}
	if end == 0 {
		end, guessed = hardware.MinEnd, true
	}
	n := max(f.Count, f.Holes)
	for i := range n {
		row, step := i%rows, i/rows
		h := punch{along: end + float64(step)*pitch, filled: i < f.Count}
		h.across = width * ((float64(row)+0.5)/float64(rows) - 0.5)
		if f.Stagger && row%2 == 1 {
			if f.Offset > 0 {
				h.along += f.Offset
			} else {
				h.along += pitch / 2
			}
		}
		holes = append(holes, h)
	}
	return holes, guessed
}

// reach returns how far from the end of the steel the last hole is.
func reach(holes []punch) (far float64) {
	for _, h := range holes {
		far = max(far, h.along)
	}
	return far
}

// ends returns the two ends' patterns of a band: of the first part, and of
// the second when the catalog tells them apart.
func (it detailItem) ends() (low, high []punch, guessed bool) {
	fs := it.Fasteners
	if len(fs) == 0 {
		return nil, nil, false
	}
	first := fs[0]
	if len(fs) == 1 && first.Parts < 2 { // one count for the whole band
		first.Count, first.Holes = (first.Count+1)/2, (first.Holes+1)/2
	}
	low, guessed = pattern(first, it.Width)
	high = low
	if n := len(low); len(fs) == 1 && fs[0].Parts < 2 && 2*n > max(fs[0].Count, fs[0].Holes) {
		high = low[:n-1]
	}
	if fs[0].Parts < 2 && len(fs) > 1 {
		var g bool
		high, g = pattern(fs[1], it.Width)
		guessed = guessed || g
	}
	return low, high, guessed
}

// nailAt returns the length of the nail of end i, 0 low, 1 high.
func (it detailItem) nailAt(i int) float64 {
	fs := it.Fasteners
	if len(fs) == 0 {
		return 0
	}
	if i > 0 && fs[0].Parts < 2 && len(fs) > 1 {
		return fs[1].Length
	}
	return fs[0].Length
}

// nailWords says what a part takes: `9 - 10d x 1 1/2" each end, by hand`.
func nailWords(f plan.Fasteners) string {
	s := fmt.Sprintf("%d - %s", f.Count, f.Nail)
	if f.Part != "" && f.Part != "all" {
		s += " " + f.Part
	}
	if f.Holes > f.Count {
		s += fmt.Sprintf(", of %d holes", f.Holes)
	}
	if f.Fill != "" {
		s += ", in " + f.Fill
	}
	if f.HandOnly {
		s += ", driven by hand"
	}
	return s
}
