package detail

import (
	"cmp"
	"math"
	"strings"

	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/render/sheet"
)

// body is what the catalog tells of one hold-down body, in.
type body struct {
	h, w     float64 // along the post, across it
	standoff float64 // of the seat's top from the wood it stands on
	center   float64 // of the rod from the post
	rod      float64
}

func (it detailItem) body() body {
	return body{
		h: cmp.Or(it.Length, 10), w: cmp.Or(it.Width, 2.5),
		standoff: cmp.Or(it.Standoff, 1.5), center: it.Center, rod: cmp.Or(it.Rod, 0.625),
	}
}

// bodySide draws a body from its side: back plate on the post's face at u = 0,
// seat at v, gusset between. up is -1 for the body below a floor.
func (d *draft) bodySide(b body, v, up float64) {
	seat := v + up*b.standoff
	t := 0.3
	d.steel(geom.Vec2{Y: v}, geom.Vec2{X: t, Y: v}, geom.Vec2{X: t, Y: seat - up*t}, geom.Vec2{X: 2 * b.center, Y: seat - up*t},
		geom.Vec2{X: 2 * b.center, Y: seat}, geom.Vec2{X: t, Y: v + up*b.h*0.55}, geom.Vec2{X: t, Y: v + up*b.h}, geom.Vec2{Y: v + up*b.h})
}

// bodyFront draws a body from its face with its holes.
func (d *draft) bodyFront(it detailItem, b body, v, up float64) {
	d.steel(box2(-b.w/2, b.w/2, min(v, v+up*b.h), max(v, v+up*b.h))...)
	seat := v + up*b.standoff
	d.edge(geom.Vec2{X: -b.w / 2, Y: seat}, geom.Vec2{X: b.w / 2, Y: seat})
	for _, n := range it.bodyHoles(b, up) {
		d.hole(n.across, v+up*n.along, it.bodyEnd(up).Diameter, n.filled)
	}
}

// bodyEnd returns the fasteners of a body: up is -1 for the one below a floor.
func (it detailItem) bodyEnd(up float64) hardware.End {
	above, below := it.EndsOn(it.member(0), it.member(1))
	if up < 0 {
		return below
	}
	return above
}

// bodyHoles returns the holes above the seat, along counted from the foot.
func (it detailItem) bodyHoles(b body, up float64) []punch {
	from := b.standoff + 0.8
	h := leafHoles(it.bodyEnd(up).Fasteners, b.w, b.h-from-0.4)
	for i := range h {
		h[i].along += from + (b.h-from-0.4)/2
	}
	return h
}

// bodyNails drives a body's fasteners into the post at its left.
func (d *draft) bodyNails(it detailItem, b body, v, up float64) {
	for _, n := range it.bodyHoles(b, up) {
		if n.filled {
			d.nail(0.3, v+up*n.along, cmp.Or(it.bodyEnd(up).Length, 3), right.Mul(-1))
		}
	}
}

// beside makes the layers of a stack into what a hold-down sees along its wall:
// lapped studs left of u = 0, everything else on both sides.
func (d *draft) beside(s stack, post, half float64) {
	for _, l := range s.layers {
		u0, u1 := -post-2, half
		if l.lapped && l.front == alongV {
			u0, u1 = -post, 0
		}
		if l.breadth < 0 {
			continue
		}
		d.wood(u0, u1, l.v0, l.v1, l.front)
		d.goesOn(l, u0, u1)
		if l.name != "" {
			d.say(u1-0.3, (l.v0+l.v1)/2, l.name)
		}
	}
}

// drawHoldDown draws one body: along the wall from its side, and its face.
func drawHoldDown(d *draft, it detailItem) {
	b := it.body()
	s := floorStack(it, 60)
	post, _ := it.section(0)
	foot := s.bottom
	end := foot - 5
	if it.ownRod() {
		end = it.Piece.Rod.B.Z - s.ref
	}
	s.trim(min(foot-6, end-2), plateThick+b.h+4)
	half := 2*b.center + 4
	d.head(0, "along the wall")
	d.beside(s, post, half)
	d.bodySide(b, plateThick, 1)
	seat := plateThick + b.standoff
	d.rod(b.center, end, seat+hardware.Past(b.rod, 0), b.rod)
	d.nut(b.center, seat, b.rod)
	d.underside(it, b, b.center, end)
	d.bodyNails(it, b, plateThick, 1)
	d.rodNotes(it, b, foot-4)
	r := d.extent()
	d.dimU(r.Y+r.H, 0, b.center)

	d.du = half + post + 9
	d.head(0, "its face")
	d.drawFront(s, b.w/2+2)
	d.bodyFront(it, b, plateThick, 1)
	d.rod(0, end, plateThick+0.2, b.rod)
	d.underside(it, b, 0, end)
	d.bodyWords(it, b, plateThick, 1)
	r = d.extent()
	d.dimU(r.Y+r.H, -b.w/2, b.w/2)
	d.du = 0
	d.dimV(foot, -it.Joint.Level.FloorDepth, 0, plateThick, seat, plateThick+b.h)
}

// ownRod tells whether a hold-down has a rod of its own, not an anchor's.
func (it detailItem) ownRod() bool { return it.Piece.Cut > 0 && it.Piece.Rod != nil }

// underside draws washer and nut under the member that a hold-down's rod of
// its own comes out of.
func (d *draft) underside(it detailItem, b body, u, end float64) {
	if !it.ownRod() {
		return
	}
	w, thick := it.Washer, hardware.WasherThick(it.Washer)
	if w == 0 {
		w = hardware.CutWasher(b.rod)
	} else if u > 0 { // said once
		d.say(u+w/2-0.1, end+hardware.Past(b.rod, it.Washer)-thick/2, "plate washer "+d.Length(w)+" square, nut")
	}
	face := end + hardware.Past(b.rod, it.Washer)
	d.washer(u-w/2, u+w/2, face-thick, face)
	d.nut(u, face-thick-0.85*b.rod, b.rod)
}

// drawHoldDownPair draws two bodies joined by a rod through the floor.
func drawHoldDownPair(d *draft, it detailItem) {
	b := it.body()
	s := floorStack(it, 60)
	post, _ := it.section(0)
	low := s.bottom
	s.trim(low-b.h-4, plateThick+b.h+4)
	half := 2*b.center + 4
	d.head(0, "along the wall")
	d.beside(s, post, half)
	up, down := plateThick+b.standoff, low-b.standoff
	d.bodySide(b, plateThick, 1)
	d.bodySide(b, low, -1)
	d.rod(b.center, down-1.6*b.rod, up+1.6*b.rod, b.rod)
	d.nut(b.center, up, b.rod)
	d.nut(b.center, down-0.85*b.rod, b.rod)
	d.bodyNails(it, b, plateThick, 1)
	d.bodyNails(it, b, low, -1)
	d.rodNotes(it, b, (low+plateThick)/2)
	r := d.extent()
	d.dimU(r.Y+r.H, 0, b.center)

	d.du = half + post + 9
	d.head(0, "their faces")
	d.drawFront(s, b.w/2+2)
	d.bodyFront(it, b, plateThick, 1)
	d.bodyFront(it, b, low, -1)
	d.bodyWords(it, b, plateThick, 1)
	r = d.extent()
	d.dimU(r.Y+r.H, -b.w/2, b.w/2)
	d.du = 0
	d.dimV(low-b.h, low, low-1e-3, -it.Joint.Level.FloorDepth, 0, plateThick, plateThick+b.h)
	d.dimV(down, up)
}

func (d *draft) rodNotes(it detailItem, b body, v float64) {
	words := d.Length(b.rod) + " threaded rod"
	if it.Piece.Cut > 0 {
		words += ", cut " + d.Length(it.Piece.Cut)
	}
	if it.Bodies == 2 {
		words += ", nut at each end; the two bodies in line"
	}
	d.say(b.center, v, words)
	d.say(b.center, plateThick+b.standoff+b.rod*0.4, "nut")
}

func (d *draft) bodyWords(it detailItem, b body, v, up float64) {
	for i, f := range it.Fasteners {
		d.say(0, v+up*b.h*(0.8-0.25*float64(i)), nailWords(f))
	}
}

// drawAnchor draws a bolt or rod through what it holds down, cut across.
func drawAnchor(d *draft, it detailItem) {
	if p := it.Piece.Path; len(p) > 1 && p[len(p)-1].Sub(p[0]).Unit().Z > -0.7 && p[len(p)-1].Sub(p[0]).Unit().Z < 0.7 {
		drawThroughBolt(d, it)
		return
	}
	if it.Joint.Wall != nil && it.Joint.Level != nil && len(it.Piece.Path) > 1 {
		drawSillBolt(d, it)
		return
	}
	b := it.body()
	length := cmp.Or(it.Length, it.Piece.Cut, 10)
	bm, dm := it.section(0)
	held, name := dm, it.memberName(0)
	half := max(bm/2+3, 4)
	top := held + 0.25 + 1.8*b.rod
	below := min(-(length - top), -3)
	d.head(0, "cut across")
	d.wood(-half, half, below-3, 0, plain)
	d.ragged(-half, half, below-3, false)
	d.wood(-bm/2, bm/2, 0, held, endGrain)
	d.rod(0, below, top, b.rod)
	if w := it.Washer; w > 0 {
		d.washer(-w/2, w/2, held, held+0.25)
		d.say(-w/2+0.1, held+0.12, "plate washer "+d.Length(w)+" square")
	}
	d.nut(0, held+0.25, b.rod)
	d.say(bm/2-0.2, held/2, name)
	d.say(half-0.5, below*0.8, cmp.Or(it.memberName(1), "concrete"))
	d.say(0, below*0.5, d.Length(b.rod)+" rod, "+d.Length(length)+" long")
	for _, f := range it.Fasteners {
		d.say(0, held+0.5, nailWords(f))
	}
	r := d.extent()
	d.dimU(r.Y+r.H, -bm/2, 0, bm/2)
	d.dimV(below, 0, held, top)
}

// drawSillBolt draws a bolt down through a wall's plate into what it reaches,
// cut across the wall beside the stud.
func drawSillBolt(d *draft, it detailItem) {
	b := it.body()
	s := floorStack(it, 60)
	s.layers = s.layers[1:] // the stud stands behind the cut
	v0, v1 := it.Piece.Z0-s.ref, it.Piece.Z1-s.ref
	seat, foot := s.seat(v1)
	s.trim(v0-3, v1+2)
	d.head(s.depth/2, "cut across")
	d.drawSide(s)
	mid := s.depth / 2
	d.rod(mid, v0, v1, b.rod)
	if w := it.Washer; w > 0 {
		d.washer(mid-w/2, mid+w/2, seat, seat+0.25)
		d.say(mid+w/2-0.1, seat+0.12, "plate washer "+d.Length(w)+" square")
	}
	d.nut(mid, seat+0.25, b.rod)
	for _, l := range s.layers {
		if l.name != "" {
			d.say(l.t1-(l.t1-l.t0)*0.1, max(l.v0, v0-2)*0.6+min(l.v1, v1+2)*0.4, l.name)
		}
	}
	d.say(mid, max(v0*0.6+seat*0.4, v0+1), d.Length(b.rod)+" rod, "+d.Length(v1-v0)+" long")
	r := d.extent()
	d.dimU(r.Y+r.H, 0, mid, s.depth)
	d.dimV(v0, foot, seat, v1)
}

// seat returns the top and the underside of the plate that a bolt ending at v
// holds down: the highest one below its end.
func (s stack) seat(v float64) (top, foot float64) {
	top, foot = plateThick, 0
	least := math.Inf(1)
	for _, l := range s.layers {
		if d := v - l.v1; strings.Contains(l.name, "plate") && d > -geom.Eps && d < least {
			top, foot, least = l.v1, l.v0, d
		}
	}
	return top, foot
}

// drawThroughBolt draws a bolt that lies: through a girder beside its pile or
// post, cut along the bolt, and from its head.
func drawThroughBolt(d *draft, it detailItem) {
	if g, p := it.member(0), it.member(it.carrier()); g != nil && p != nil && grainOf(g) == alongU && grainOf(p) == alongV && p.Z1 < it.Piece.Path[0].Z {
		drawCheekBolt(d, it)
		return
	}
	b := it.body()
	length := cmp.Or(it.Length, it.Piece.Cut, 10)
	b0, d0 := it.section(0)
	b1, _ := it.section(1)
	d.head((b0+b1)/2, "cut along the bolt")
	d.wood(b0, b0+b1, -d0/2-5, d0/2, alongV)
	d.ragged(b0, b0+b1, -d0/2-5, false)
	ply := 1
	if m := it.member(0); m != nil {
		ply = max(m.Section.Ply, 1)
	}
	for i := range ply {
		w := b0 / float64(ply)
		d.wood(float64(i)*w, float64(i+1)*w, -d0/2, d0/2, endGrain)
	}
	from := (b0 + b1 - length) / 2
	d.steel(box2(from, from+length, -b.rod/2, b.rod/2)...)
	d.boltEnds(it, b, 0, b0+b1, 0)
	d.say(b0*0.8, d0*0.35, it.memberName(0))
	d.say(b0+b1*0.6, -d0/2-2, it.memberName(1))
	d.say(b0+b1*0.5, 0, d.Length(b.rod)+" bolt, "+d.Length(length)+" long")
	r := d.extent()
	d.dimU(r.Y+r.H, 0, b0, b0+b1)
	d.dimV(-d0/2, 0, d0/2)
}

// drawCheekBolt draws a bolt that lies through a girder which stands on its
// pile: it holds by the cheeks of a pile that is cut to take the girder.
func drawCheekBolt(d *draft, it detailItem) {
	b := it.body()
	length := cmp.Or(it.Length, it.Piece.Cut, 10)
	s := twoMembers(it, 8)
	girder, pile := s.layers[0], s.layers[1]
	v := it.Piece.Path[0].Z - s.ref
	d.head(s.depth/2, "cut along the bolt")
	d.drawSide(s)
	for _, c := range [][2]float64{{pile.t0, 0}, {s.depth, pile.t1}} {
		if c[1]-c[0] > 0.25 {
			d.Polyline(sheet.PenHidden, sheet.LayerHidden, d.pts(geom.Vec2{X: c[0], Y: pile.v1}, geom.Vec2{X: c[0], Y: girder.v1}, geom.Vec2{X: c[1], Y: girder.v1}, geom.Vec2{X: c[1], Y: pile.v1})...)
		}
	}
	mid := s.depth / 2
	d.steel(box2(mid-length/2, mid+length/2, v-b.rod/2, v+b.rod/2)...)
	t0, t1 := min(0, pile.t0), max(s.depth, pile.t1)
	d.boltEnds(it, b, t0, t1, v)
	d.say(pile.t1-0.4, girder.v1*0.8, pile.name+" notched at girder, as the engineer details it")
	d.say(s.depth*0.9, girder.v1*0.25, girder.name)
	d.say(pile.t1*0.8, -5, pile.name)
	d.say(t1+length/2-(t1-t0)/2-0.2, v, d.Length(b.rod)+" bolt, "+d.Length(length)+" long")
	r := d.extent()
	d.dimU(r.Y+r.H, pile.t0, 0, s.depth, pile.t1)
	d.dimV(0, v, girder.v1)
}

// boltEnds draws washer and nut at both ends of a level bolt at height v that
// grips from t0 to t1.
func (d *draft) boltEnds(it detailItem, b body, t0, t1, v float64) {
	thick := 0.0
	if w := it.Washer; w > 0 {
		thick = 0.25
		d.washer(t0-thick, t0, v-w/2, v+w/2)
		d.washer(t1, t1+thick, v-w/2, v+w/2)
		d.say(t1+0.2, v+w/2-0.2, "plate washer "+d.Length(w)+" square, under head and nut")
	}
	for _, u := range []float64{t0 - thick - 0.85*b.rod, t1 + thick} {
		d.Polygon(sheet.Style{Fill: sheet.Black, Layer: sheet.LayerHardware}, d.pts(box2(u, u+0.85*b.rod, v-0.9*b.rod, v+0.9*b.rod)...)...)
	}
}

// washer draws a plate on its edge: solid where its two faces would run into
// one line.
func (d *draft) washer(u0, u1, v0, v1 float64) {
	if thin := min(u1-u0, v1-v0) * d.k; sheet.MM(thin) < sheet.PenHardware.Width()*1.5 {
		d.Polygon(sheet.Style{Fill: sheet.Black, Layer: sheet.LayerHardware}, d.pts(box2(u0, u1, v0, v1)...)...)
		return
	}
	d.steel(box2(u0, u1, v0, v1)...)
}
