package detail

import (
	"fmt"

	"galewright/plan"
	"galewright/plan/geom"
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

// ends returns the two ends' patterns of a band, see bandEnds.
func (it detailItem) ends() (low, high []punch, guessed bool) {
	if len(it.Fasteners) == 0 {
		return nil, nil, false
	}
	e := it.bandEnds()
	low, g0 := pattern(e[0].Fasteners, it.Width)
	high, g1 := pattern(e[1].Fasteners, it.Width)
	return low, high, g0 || g1
}

// bandEnds returns the ends of a band: on the lower of the two members that
// it ties and on the higher, or where they stand at one height on the first
// and on the other.
func (it detailItem) bandEnds() (ends [2]hardware.End) {
	a, b := it.member(0), it.member(1)
	if it.Piece != nil && len(it.Piece.Laid) > 1 {
		a, b = it.Piece.Laid[0].Member, it.Piece.Laid[1].Member
	}
	onA, onB := it.EndsOn(a, b)
	if a != nil && b != nil && b.Z0+b.Z1 < a.Z0+a.Z1-geom.Eps {
		return [2]hardware.End{onB, onA}
	}
	return [2]hardware.End{onA, onB}
}

// told returns the ends whose nails are said, at the low and the high end:
// where both are alike the low one is empty.
func (it detailItem) told() (ends [2]hardware.End) {
	ends = it.bandEnds()
	if ends[0] == ends[1] {
		ends[0] = hardware.End{}
	}
	return ends
}

// nailAt returns the length of the nail of end i, 0 low, 1 high.
func (it detailItem) nailAt(i int) float64 { return it.bandEnds()[i].Length }

// holeAt returns the diameter of the holes of end i, 0 low, 1 high.
func (it detailItem) holeAt(i int) float64 { return it.bandEnds()[i].Diameter }

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
