package detail

import (
	"fmt"

	"galewright/plan"
	"galewright/plan/geom"
)

// bandPast is how much of a lapped member is drawn beyond a strap's end, and
// bandHalf half the width of what runs on both ways behind it, in.
const (
	bandPast = 4.0
	bandHalf = 5.0
)

// drawBand draws a strap on a joint: from its face, and cut across the wall.
func drawBand(d *draft, it detailItem) {
	s := stackOf(it, 60)
	v0, v1 := s.lie(it)
	s.endsIn(v0)
	low, high, guessed := it.ends()
	s.trim(v0-bandPast, v1+bandPast)
	if it.memberOf(plan.Header) < 0 { // a header beside the strap is shown whole
		d.cutsV = clear(v0+reach(low)+1.5, v1-reach(high)-1.5, s.bottom-2, s.top+2)
	}
	w := max(it.Width, 0.75)
	if it.Piece.Face == plan.Left || it.Piece.Face == plan.Right {
		s.turn()
	}
	d.head(0, "face of strap")
	d.headerBeside(it, s, bandHalf, v0-bandPast)
	d.drawFront(s, bandHalf)
	d.steel(box2(-w/2, w/2, v0, v1)...)
	d.endHoles(it, low, high, v0, v1)
	d.broken(-bandHalf, bandHalf)
	d.bandSide(it, s, low, high, v0, v1)
	bottom := d.extent()
	d.dimU(bottom.Y+bottom.H, rowsOf(low, w)...)
	d.dimV(v0, s.bottom, s.top, v1)
	d.dimV(v0, v1)
	d.sayNails(it, low, high, v0, v1, guessed)
}

// bandSide draws the strap on its edge beside the front view, its nails in
// the members.
func (d *draft) bandSide(it detailItem, s stack, low, high []punch, v0, v1 float64) {
	face, dir := 0.0, right
	if it.Piece.Face == plan.Inside {
		face, dir = s.depth, right.Mul(-1)
	}
	d.du = 2 * bandHalf
	d.head(s.depth/2, it.sideName())
	d.drawSide(s)
	d.passFloor(it, s, face, dir)
	foot := face // of the strap: where the lower member stands out it bends over it
	out, name := s.proud(face)
	if out > 0.25 {
		foot -= out * dir.X
	}
	d.edge(geom.Vec2{X: foot, Y: v0}, geom.Vec2{X: foot, Y: s.bottom}, geom.Vec2{X: face, Y: s.bottom}, geom.Vec2{X: face, Y: v1})
	d.endNails(it, low, nil, foot, v0, v1, dir)
	d.endNails(it, nil, high, face, v0, v1, dir)
	d.broken(min(0, face, foot), s.depth+5)
	d.nameLayers(s, v0-bandPast, v1+bandPast)
	if out > 0.25 {
		d.say(foot, d.shown((s.bottom+v0)/2, v0, s.bottom), fmt.Sprintf("%s projects %s past the face above: the strap bends over it and pulls straight under load, ask the engineer", name, d.Length(out)))
	}
	d.du = 0
}

// endsIn lets a strap that ends higher than the member it might have reached
// lap the one it does end in: a rim above a girder.
func (s *stack) endsIn(v0 float64) {
	for _, l := range s.layers {
		if l.v0 <= v0+geom.Eps && v0 < l.v1 && l.v1 > s.bottom && l.breadth >= 0 && l.v1 < s.top {
			s.bottom = l.v1
			return
		}
	}
}

// clear returns what may be left out of a band between the last nails of its
// ends, lo and hi: all but what lies between the members, from and to.
func clear(lo, hi, from, to float64) (cuts []cut) {
	const least = 5
	if b := min(hi, from); b-lo > least {
		cuts = append(cuts, cut{lo, b})
	}
	if a := max(lo, to); hi-a > least {
		cuts = append(cuts, cut{a, hi})
	}
	return cuts
}

// trim cuts the layers to what is shown.
func (s *stack) trim(lo, hi float64) {
	var kept []layer
	for _, l := range s.layers {
		if l.v0 >= hi || l.v1 <= lo {
			continue
		}
		if l.v1 > hi {
			l.v1, l.ragged = hi, 1
		}
		if l.v0 < lo {
			l.v0, l.ragged = lo, -1
		}
		kept = append(kept, l)
	}
	s.layers = kept
}

// turn lets the front show the wide face of upright members.
func (s *stack) turn() {
	for i := range s.layers {
		if l := &s.layers[i]; l.breadth > 0 {
			l.breadth, l.t1 = l.t1, l.t0+l.breadth
		}
	}
}

// sideName names the view at right angles to the first.
func (it detailItem) sideName() string {
	if it.Joint.Wall == nil {
		return "from the side"
	}
	return "across the wall"
}

// endHoles punches both ends of a vertical band.
func (d *draft) endHoles(it detailItem, low, high []punch, v0, v1 float64) {
	for _, h := range low {
		d.hole(h.across, v0+h.along, it.holeAt(0), h.filled)
	}
	for _, h := range high {
		d.hole(h.across, v1-h.along, it.holeAt(1), h.filled)
	}
}

// endNails drives the nails of both ends into the members.
func (d *draft) endNails(it detailItem, low, high []punch, t, v0, v1 float64, dir geom.Vec2) {
	for _, h := range low {
		if h.filled {
			d.nail(t, v0+h.along, it.nailAt(0), dir)
		}
	}
	for _, h := range high {
		if h.filled {
			d.nail(t, v1-h.along, it.nailAt(1), dir)
		}
	}
}

// passFloor opens the subfloor where a strap on the inside face goes through.
func (d *draft) passFloor(it detailItem, s stack, face float64, dir geom.Vec2) {
	if dir.X > 0 {
		return
	}
	for _, l := range s.layers {
		if l.name == "subfloor" {
			d.wood(face, face+0.6, l.v0, l.v1, plain)
			d.say(face+0.5, (l.v0+l.v1)/2, "hole cut in subfloor")
		}
	}
}

// rowsOf returns the edges and rows of a band across its width.
func rowsOf(holes []punch, w float64) []float64 {
	stops := []float64{-w / 2, w / 2}
	for _, h := range holes {
		stops = append(stops, h.across)
	}
	return stops
}

// sayNails names the nails at the holes of the front view, and the pattern.
func (d *draft) sayNails(it detailItem, low, high []punch, v0, v1 float64, guessed bool) {
	for i, e := range it.told() {
		h := middle(high)
		v := v1 - h.along
		if i == 0 {
			h = middle(low)
			v = v0 + h.along
		}
		if e.Count > 0 {
			d.sayFront(h.across, v, nailWords(e.Fasteners))
		}
	}
	if len(low) > 1 && !guessed {
		d.sayFront(low[0].across, v0+low[0].along, d.patternWords(it, low))
	}
}

// middle returns the hole in the middle of a pattern.
func middle(holes []punch) punch {
	if len(holes) == 0 {
		return punch{}
	}
	return holes[len(holes)/2]
}

// sayFront adds a note at u, v of the front view.
func (d *draft) sayFront(u, v float64, s string) {
	du := d.du
	d.du = 0
	d.say(u, v, s)
	d.du = du
}

// patternWords says how holes are spaced.
func (d *draft) patternWords(it detailItem, holes []punch) string {
	s := "first hole " + d.Length(holes[0].along) + " from the end"
	for _, h := range holes[1:] {
		if h.across == holes[0].across {
			return s + ", " + d.Length(h.along-holes[0].along) + " apart in a row"
		}
	}
	return s
}

// drawFlatBand draws a strap lying along plates or a collector: from above,
// and from the side.
func drawFlatBand(d *draft, it detailItem) {
	length, w := it.bandLength(), max(it.Width, 0.75)
	low, high, guessed := it.ends()
	_, depth := it.section(0)
	_, depth1 := it.section(1)
	depth, depth1 = max(depth, w+1), max(depth1, w+1)
	if it.spliced() {
		depth1 = depth
	}
	u0, u1 := -length/2, length/2
	d.cutsU = clear(u0+reach(low)+1.5, u1-reach(high)-1.5, -2, 2)
	v := max(depth, depth1)/2 + 14/d.k // the view from above stands over the one from the side
	d.wood(u0-4, 0, v-depth/2, v+depth/2, alongU)
	d.wood(0, u1+4, v-depth1/2, v+depth1/2, alongU)
	d.steel(box2(u0, u1, v-w/2, v+w/2)...)
	for _, h := range low {
		d.hole(u0+h.along, v+h.across, it.holeAt(0), h.filled)
	}
	for _, h := range high {
		d.hole(u1-h.along, v+h.across, it.holeAt(1), h.filled)
	}
	d.brokenU(v-max(depth, depth1)/2, v+max(depth, depth1)/2)
	d.say(u1+2, v+depth1/4, it.memberName(1))
	d.sayFlat(it, low, high, u0, u1, v, guessed)
	d.flatSide(it, low, high, u0, u1)
	r := d.extent()
	d.dimU(r.Y+r.H, u0, 0, u1)
	r = d.extent()
	d.dimU(r.Y+r.H, u0, u1)
	stops := rowsOf(low, w)
	for i := range stops {
		stops[i] += v
	}
	d.dimV(append(stops, v-depth/2, v+depth/2)...)
}

// spliced tells whether a flat strap joins two lengths of one plate, not a
// plate and a deeper member.
func (it detailItem) spliced() bool {
	m := it.member(1)
	return it.Joint.Kind == plan.PlateSplice || m != nil && (m.Role == plan.TopPlate || m.Role == plan.UpperPlate)
}

// bandLength is the length of steel, of the coil cut or the catalog's.
func (it detailItem) bandLength() float64 {
	switch {
	case it.Length > 0:
		return it.Length
	case it.Piece.Cut > 0:
		return it.Piece.Cut
	}
	return 12
}

func (d *draft) sayFlat(it detailItem, low, high []punch, u0, u1, v float64, guessed bool) {
	for i, e := range it.told() {
		h := middle(high)
		u := u1 - h.along
		if i == 0 {
			h = middle(low)
			u = u0 + h.along
		}
		if e.Count > 0 {
			d.say(u, v+h.across, nailWords(e.Fasteners))
		}
	}
	if len(low) > 1 && !guessed {
		d.say(u1-low[0].along, v-low[0].across, d.patternWords(it, low))
	}
}

// flatSide draws the flat strap from the side, nails going down.
func (d *draft) flatSide(it detailItem, low, high []punch, u0, u1 float64) {
	down := geom.Vec2{Y: -1}
	if it.spliced() {
		d.wood(u0-4, u1+4, -2*plateThick, -plateThick, alongU)
		d.wood(u0-4, 0, -plateThick, 0, alongU)
		d.wood(0, u1+4, -plateThick, 0, alongU)
	} else {
		_, deep := it.section(1)
		d.wood(u0-4, 0, -plateThick, 0, alongU)
		d.wood(u0-4, 0, -2*plateThick, -plateThick, alongU)
		d.wood(0, u1+4, -max(deep, 2*plateThick), 0, alongU)
	}
	d.say(-1.5, -plateThick*1.5, it.memberName(0))
	d.edge(geom.Vec2{X: u0}, geom.Vec2{X: u1})
	for _, h := range low {
		if h.filled {
			d.nail(u0+h.along, 0, it.nailAt(0), down)
		}
	}
	for _, h := range high {
		if h.filled {
			d.nail(u1-h.along, 0, it.nailAt(1), down)
		}
	}
	d.brokenU(-2*plateThick, 0.6)
}
