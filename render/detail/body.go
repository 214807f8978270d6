package detail

import (
	"cmp"
	"math"

	"galewright/plan"
	"galewright/plan/geom"
)

// leafHoles spreads the holes of one leaf of a bent piece over w by h inches,
// centered on the origin. A pattern the catalog gives is not stretched.
func leafHoles(f plan.Fasteners, w, h float64) (out []punch) {
	n := max(f.Count, f.Holes)
	if n == 0 {
		return nil
	}
	cols := cmp.Or(f.Rows, 1)
	if f.Rows == 0 && w >= 1.2 && n > 2 {
		cols = 2
	}
	rows := (n + cols - 1) / cols
	pitch := h / float64(rows)
	if f.Spacing > 0 && f.Spacing*float64(rows) <= h {
		pitch = f.Spacing
	}
	for i := range n {
		r, c := i/cols, i%cols
		out = append(out, punch{
			along:  (float64(r) - float64(rows-1)/2) * pitch,
			across: w * ((float64(c)+0.5)/float64(cols) - 0.5),
			filled: i < f.Count,
		})
	}
	return out
}

// parts returns the fasteners into the member held and into the other one.
func (it detailItem) parts() (held, other plan.Fasteners) {
	a, b := it.EndsOn(it.member(0), it.member(1))
	if len(it.Ends()) > 1 {
		return a.Fasteners, b.Fasteners
	}
	if m := it.member(0); m != nil && !a.Into(m) {
		return held, b.Fasteners
	}
	return a.Fasteners, other
}

// sides shares the fasteners of one end out over the two sides of its member:
// an odd one is on the near side.
func sides(f plan.Fasteners) (near, far plan.Fasteners) {
	near, far = f, f
	near.Count, near.Holes = (f.Count+1)/2, (f.Holes+1)/2
	far.Count, far.Holes = f.Count/2, f.Holes/2
	return near, far
}

// drawClip draws an angle between two members that cross: one leaf on the
// side of the member held, one on the face of the other.
func drawClip(d *draft, it detailItem) {
	h, w := cmp.Or(it.Length, 5), cmp.Or(it.Width, 1.5)
	b, _ := it.section(0)
	leaf := h / 2
	up := 1.0 // the member held is above
	if k := it.Joint.Kind; k == plan.StudTop || k == plan.OpeningHead {
		up = -1
	}
	held, other := it.parts()
	d.head(0, "from outside")
	d.clipFront(it, up, b, w, leaf)
	d.leaf(other, b/2+w/2+0.1, -up*leaf/2, w, leaf)
	d.edge(geom.Vec2{X: b/2 + 0.05}, geom.Vec2{X: b/2 + 0.05, Y: up * leaf})
	r := d.extent()
	d.dimU(r.Y+r.H, b/2, b/2+w)

	side := b/2 + w + 4.5
	if it.Joint.Kind.Lies() == plan.LiesAtRafter {
		side += 3 // its tail
	}
	d.du = side
	depth := 5.5
	if it.Joint.Wall != nil {
		depth = it.Joint.Wall.Depth()
	}
	d.head(depth/2, "across the wall")
	d.clipSide(it, up, depth)
	d.leaf(held, 0.2+w/2, up*leaf/2, w, leaf)
	d.edge(geom.Vec2{X: -0.05}, geom.Vec2{X: -0.05, Y: -up * leaf})
	for _, n := range leafHoles(other, w, leaf) {
		if n.filled {
			d.nail(-0.05, -up*leaf/2+n.along, other.Length, right)
		}
	}
	d.du = 0
	d.dimV(-leaf, 0, leaf)
	d.du = side
	d.sayParts(held, other, 0.2+w/2, up*leaf*0.6, -up*leaf*0.6)
}

// sayParts names the nails of the two leaves of a bent piece.
func (d *draft) sayParts(held, other plan.Fasteners, u, v0, v1 float64) {
	if held.Count > 0 {
		d.say(u, v0, nailWords(held))
	}
	if other.Count > 0 && other.Part != held.Part {
		d.say(u, v1, nailWords(other))
	}
}

// leaf draws a flat part of steel about u, v with its holes.
func (d *draft) leaf(f plan.Fasteners, u, v, w, h float64) {
	d.steel(box2(u-w/2, u+w/2, v-h/2, v+h/2)...)
	for _, n := range leafHoles(f, w, h) {
		d.hole(u+n.across, v+n.along, cmp.Or(f.Diameter, 0.15), n.filled)
	}
}

// clipBoards returns what the other leaf of a clip is nailed to, from the
// joint on: the plates of a wall so deep, or one board on edge.
func (it detailItem) clipBoards(depth float64) []layer {
	if m := it.member(1); m != nil && it.Joint.Kind.Lies() == plan.LiesAtRafter && m.Role != plan.TopPlate && m.Role != plan.UpperPlate && m.Z1-m.Z0 > 2*plateThick {
		return []layer{{v1: m.Section.Depth, t1: cmp.Or(m.Section.Width(), plateThick)}}
	}
	boards := []layer{{v1: plateThick, t1: depth}, {v0: plateThick, v1: 2 * plateThick, t1: depth}}
	if it.Joint.Kind == plan.StudBase || it.Joint.Kind == plan.OpeningSill {
		return boards[:1]
	}
	return boards
}

// clipFront draws the members of a clip as seen square to the wall.
func (d *draft) clipFront(it detailItem, up, b, w, leaf float64) {
	half := b/2 + w + 2
	for _, l := range it.clipBoards(0) {
		d.wood(-half, half, min(-up*l.v0, -up*l.v1), max(-up*l.v0, -up*l.v1), alongU)
	}
	far := up * max(leaf+1.5, 6)
	if it.Joint.Kind.Lies() == plan.LiesAtRafter {
		_, depth := it.section(0)
		d.wood(-b/2, b/2, 0, min(depth, max(leaf+1.5, 6)), endGrain)
		return
	}
	d.wood(-b/2, b/2, min(0, far), max(0, far), alongV)
	d.ragged(-b/2, b/2, far, up > 0)
}

// clipSide draws them cut across the wall; a rafter slopes up and inward.
func (d *draft) clipSide(it detailItem, up, depth float64) {
	boards := it.clipBoards(depth)
	for _, l := range boards {
		d.wood(0, l.t1, min(-up*l.v0, -up*l.v1), max(-up*l.v0, -up*l.v1), endGrain)
	}
	d.say(boards[0].t1*0.7, -up*boards[0].v1/2, it.memberName(1))
	if it.Joint.Kind.Lies() == plan.LiesAtRafter && it.Joint.Roof != nil && !it.Joint.Roof.Trusses {
		d.clipRafter(it, depth)
		return
	}
	far := up * max(it.Length/2+1.5, 6)
	d.wood(0, depth, min(0, far), max(0, far), alongV)
	d.ragged(0, depth, far, up > 0)
	d.say(depth*0.8, far*0.8, it.memberName(0))
}

// clipRafter draws a rafter over the plate with its birdsmouth, going on both ways.
func (d *draft) clipRafter(it detailItem, depth float64) {
	_, rd := it.section(0)
	tan := cmp.Or(it.Joint.Roof.Pitch, 6) / 12
	plumb := rd * math.Hypot(1, tan)
	seat := 3.5                                              // heel of the birdsmouth
	y := func(x float64) float64 { return (x - seat) * tan } // lower edge
	x0, x1 := -3.0, depth+3
	poly := []geom.Vec2{{X: x0, Y: y(x0)}, {X: 0, Y: y(0)}, {X: 0, Y: 0}, {X: seat, Y: 0}, {X: x1, Y: y(x1)}, {X: x1, Y: y(x1) + plumb}, {X: x0, Y: y(x0) + plumb}}
	d.woodShape(poly...)
	for i := 1; i <= 3; i++ {
		f, t := fiber(i)
		off := plumb * float64(i) / 4
		a, b := x0+(x1-x0)*f, x0+(x1-x0)*t
		d.thin(geom.Vec2{X: a, Y: y(a) + off}, geom.Vec2{X: b, Y: y(b) + off})
	}
	d.say(x1-1.5, y(x1-1.5)+plumb*0.7, it.memberName(0))
}

// drawPlate draws any other piece: a flat plate over two members.
func drawPlate(d *draft, it detailItem) {
	h, w := cmp.Or(it.Length, 6), cmp.Or(it.Width, 3)
	s := twoMembers(it, h)
	s.trim(-h/2-4, h/2+4)
	held, other := it.parts()
	d.head(0, "from its face")
	half := w/2 + 2
	d.drawFront(s, half)
	d.leaf(held, 0, h/4, w, h/2)
	d.leaf(other, 0, -h/4, w, h/2)
	d.du = half + 5
	d.head(s.depth/2, "from the side")
	d.drawSide(s)
	d.edge(geom.Vec2{Y: -h / 2}, geom.Vec2{Y: h / 2})
	for i, f := range []plan.Fasteners{held, other} {
		for _, n := range leafHoles(f, w, h/2) {
			if n.filled {
				d.nail(0, h/4*float64(1-2*i)+n.along, f.Length, right)
			}
		}
	}
	d.nameLayers(s, -h, h)
	d.du = 0
	r := d.extent()
	d.dimU(r.Y+r.H, -w/2, w/2)
	d.dimV(-h/2, h/2)
	d.sayParts(held, other, 0, h/4, -h/4)
}
