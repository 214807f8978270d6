package framing

import (
	"slices"

	"galewright/plan"
)

// sillEnd is how far from the end of a piece of sill plate its first joint is: a
// bolt goes within 12 in of each end and no nearer to it than seven diameters (IRC
// 2006 R403.1.6, read), in.
const sillEnd = 9

// sillJoints finds where bolts may hold the sill plates down to stem wall or slab:
// near both ends of each piece, and between them in the middle of each bay of the
// wall's module, where no stud stands over it. A door cuts the plate on a slab and
// leaves it whole under a floor, so under the one are none and under the other some.
func (b *builder) sillJoints() {
	for _, w := range b.walls {
		for _, m := range slices.Concat(w.sills, w.bottoms) {
			if m.Role != plan.SillPlate {
				continue
			}
			at := sillStations(w, m)
			for _, s := range at {
				j := b.newJoint(w, plan.SillFoundation, s, m.Z0, m)
				j.Tributary = shareOf(at, s, m.S0, m.S1)
			}
		}
	}
}

// sillStations returns the stations of the joints of a piece of sill plate in
// their order; one in the middle of a piece with no room for two.
func sillStations(w *framedWall, m *Member) []float64 {
	lo, hi := m.S0+sillEnd, m.S1-sillEnd
	if hi-lo < sillEnd {
		return []float64{m.Mid()}
	}
	at := []float64{lo}
	for _, s := range moduleOf(w) {
		if s += w.Spacing / 2; s > lo+sillEnd && s < hi-sillEnd {
			at = append(at, s)
		}
	}
	return append(at, hi)
}
