package deck

import (
	"cmp"
	"slices"
)

// Sheets returns how many panels the deck is cut from. Pieces of more than
// half a panel's width lie one after the other along a panel, narrower ones in
// two rows; the longest goes first, each into the first panel with room. What
// is left of a panel that is cut otherwise is not used again. The gap of 1/8 in
// between panels (FEMA P-499 Fact Sheet 7.1, read) takes the saw's kerf.
func (d *Deck) Sheets() int {
	var wide, narrow []float64
	for _, x := range d.Faces {
		for _, p := range x.Pieces {
			long := p.Hi.X - p.Lo.X
			if p.Hi.Y-p.Lo.Y > PanelWide/2+1e-6 {
				wide = append(wide, long)
			} else {
				narrow = append(narrow, long)
			}
		}
	}
	return rows(wide) + (rows(narrow)+1)/2
}

// rows returns how many rows of a panel's length take the pieces.
func rows(pieces []float64) int {
	slices.SortFunc(pieces, func(a, b float64) int { return cmp.Compare(b, a) })
	var left []float64
	for _, p := range pieces {
		i := slices.IndexFunc(left, func(room float64) bool { return p <= room+1e-6 })
		if i < 0 {
			left = append(left, PanelLong)
			i = len(left) - 1
		}
		left[i] -= p
	}
	return len(left)
}

// Pieces returns how many pieces the deck has, and how many are whole panels.
func (d *Deck) Pieces() (all, whole int) {
	for _, x := range d.Faces {
		for _, p := range x.Pieces {
			all++
			if p.Whole() {
				whole++
			}
		}
	}
	return all, whole
}

// Area returns the area of the deck along its slopes, ft².
func (d *Deck) Area() (a float64) {
	for _, x := range d.Faces {
		a += x.Area()
	}
	return a
}

// Waste returns what is bought over what is covered, as a part of the latter.
func (d *Deck) Waste() float64 {
	return float64(d.Sheets())*PanelWide*PanelLong/144/max(d.Area(), 1e-9) - 1
}
