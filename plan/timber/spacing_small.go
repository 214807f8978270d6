package timber

// SmallSpacing is what the commentary of the standard advises for nails and
// wood screws under 1/4 in, in diameters.
type SmallSpacing struct {
	Edge           float64
	EndTension     float64 // load along the grain toward the end
	EndCompression float64 // load along the grain away from the end
	RowAlong       float64 // spacing in a row, load along the grain
	RowAcross      float64 // spacing in a row, load across the grain
	Rows           float64 // between rows, fasteners in line
	RowsStaggered  float64 // between rows, fasteners staggered
}

// smallSpacings is NDS 2018 Commentary Tables C12.1.5.7 p.254 and C12.1.6.6
// p.255 (transcribed; the cells of both are the same). Advisory: the standard
// gives no number below 1/4 in.
var smallSpacings = []struct {
	steel, prebored bool
	SmallSpacing
}{
	{false, false, SmallSpacing{2.5, 15, 10, 15, 10, 5, 2.5}},
	{false, true, SmallSpacing{2.5, 10, 5, 10, 5, 3, 2.5}},
	{true, false, SmallSpacing{2.5, 10, 5, 10, 5, 3, 2.5}},
	{true, true, SmallSpacing{2.5, 5, 3, 5, 2.5, 2.5, 2.5}},
}

// SmallSpacingOf returns the advised distances in diameters under a wood or
// steel side member, with holes bored ahead or not.
func SmallSpacingOf(steelSide, prebored bool) SmallSpacing {
	for _, s := range smallSpacings {
		if s.steel == steelSide && s.prebored == prebored {
			return s.SmallSpacing
		}
	}
	panic("a row of the table of spacings is missing")
}

// SmallPlace is where a fastener under 1/4 in stands; distances in inches, Far
// where there is nothing.
type SmallPlace struct {
	D         float64 // diameter
	SteelSide bool
	Prebored  bool
	Angle     float64 // of load to grain, degrees
	TowardEnd bool    // the load has a part along the grain toward the end
	Edge      float64 // to the nearest edge
	End       float64 // to the nearest end, along the grain
	InRow     float64 // to the next fastener of its row
	Rows      float64 // to the next row
	Staggered bool
}

// Check returns what the commentary advises and the fastener has not. Cdelta
// is 1 below 1/4 in, whatever is told here (NDS 2018 12.5.1, transcribed).
func (p SmallPlace) Check() []Unmet {
	s := SmallSpacingOf(p.SteelSide, p.Prebored)
	r := rules{source: "NDS 2018 Commentary Tables C12.1.5.7 and C12.1.6.6", advisory: true}
	r.want("edge distance", p.Edge, s.Edge*p.D, "")
	if p.TowardEnd && along(p.Angle) {
		r.want("end distance, load toward the end", p.End, s.EndTension*p.D, "")
	} else {
		r.want("end distance, load away from the end", p.End, s.EndCompression*p.D, "")
	}
	if along(p.Angle) {
		r.want("spacing in a row along the grain", p.InRow, s.RowAlong*p.D, "")
	} else {
		r.want("spacing in a row across the grain", p.InRow, s.RowAcross*p.D, "")
	}
	if p.Staggered {
		r.want("between staggered rows", p.Rows, s.RowsStaggered*p.D, "")
	} else {
		r.want("between rows in line", p.Rows, s.Rows*p.D, "")
	}
	return r.unmet
}
