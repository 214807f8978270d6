package detail

import (
	"cmp"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/render/sheet"
)

// woodShape draws a member of any convex or notched outline.
func (d *draft) woodShape(ps ...geom.Vec2) {
	d.Polygon(sheet.Style{Pen: sheet.PenMember, Fill: sheet.White, Layer: sheet.LayerMember}, d.pts(ps...)...)
}

// thin draws a grain line.
func (d *draft) thin(a, b geom.Vec2) {
	q := d.pts(a, b)
	d.Line(sheet.PenDim, sheet.LayerMember, q[0], q[1])
}

// drawPostShoe draws a post base or a post cap: front and side.
func drawPostShoe(d *draft, it detailItem) {
	post, beam := it.shoeMembers()
	tall, wide := cmp.Or(it.Length, 6), cmp.Or(it.Width, 3)
	cap := it.Kind.Symbol == "sym-post-cap"
	if cap {
		tall /= 2 // the half on the beam, the half on the post
	}
	postBreadth, postDepth := it.section(post)
	beamBreadth, beamDepth := it.section(beam)
	held, other := it.parts()
	for i, breadth := range [2]float64{postBreadth, postDepth} {
		d.du = float64(i) * (max(postBreadth, beamDepth) + 12)
		d.head(0, [...]string{"front", "side"}[i])
		switch {
		case !cap:
			d.postBaseView(it, i, breadth, tall, wide, held)
		case i == 0:
			d.postCapFront(it, breadth, beamBreadth, beamDepth, tall, wide, held, other)
		default:
			d.postCapSide(breadth, beamDepth, tall, wide, held, other)
			d.say(breadth/2-0.3, -tall-3, it.memberName(post))
		}
	}
	drawn := d.extent()
	d.dimU(drawn.Y+drawn.H, -wide/2, wide/2)
	if !cap { // its foot takes a rod, or what is below, without nails of its own
		d.sayParts(plan.Fasteners{}, other, 0, 0, -cmp.Or(it.Standoff, 1)/2)
		other = plan.Fasteners{}
	}
	d.farFlange(d.du+postDepth/2+wide/2+8, tall, wide, held, other)
	d.du = max(postBreadth, beamDepth) + 12
	if cap {
		d.sayBothSides(held, tall*0.6)
		d.sayBothSides(other, -tall*0.6)
		d.du = 0
		d.dimU(drawn.Y+drawn.H, -postBreadth/2, postBreadth/2)
		d.dimV(-tall, 0, tall)
		return
	}
	d.sayBothSides(held, tall*0.7)
	d.du = 0
	d.dimU(drawn.Y+drawn.H, -postBreadth/2, postBreadth/2)
	d.dimV(-cmp.Or(it.Standoff, 1), 0, tall)
}

// farFlange draws what the post and beam hide of a shoe, its flange on the far
// side: the half above the seat and, of a cap, the half on the post.
func (d *draft) farFlange(du, h, w float64, held, other plan.Fasteners) {
	d.du = du
	d.head(0, "far flange")
	_, far := sides(held)
	d.leaf(far, 0, h/2, w, h)
	if _, low := sides(other); other.Count > 0 {
		d.leaf(low, 0, -h/2, w, h)
	}
}

// sayBothSides names fasteners that are shared out over two sides.
func (d *draft) sayBothSides(f plan.Fasteners, v float64) {
	if f.Count > 0 {
		d.say(0, v, nailWords(f)+", half on each side")
	}
}

// shoeMembers returns which member of the joint is the post and which is not.
func (it detailItem) shoeMembers() (post, beam int) {
	for k, m := range it.Joint.Members {
		if m.Role == plan.PorchPost || m.Role == plan.Pile || m.Role.FullHeight() {
			return k, 1 - min(k, 1)
		}
	}
	return 0, 1
}

// postBaseView draws view i of a base: cup, standoff and foot.
func (d *draft) postBaseView(it detailItem, i int, b, h, w float64, held plan.Fasteners) {
	off := cmp.Or(it.Standoff, 1)
	d.wood(-b/2-4, b/2+4, -off-5, -off, plain)
	d.ragged(-b/2-4, b/2+4, -off-5, false)
	d.wood(-b/2, b/2, 0, h+5, alongV)
	d.ragged(-b/2, b/2, h+5, true)
	d.steel(box2(-b/2, b/2, -off, 0)...)
	if i == 0 {
		d.edge(geom.Vec2{X: -b / 2, Y: h}, geom.Vec2{X: -b / 2, Y: 0}, geom.Vec2{X: b / 2, Y: 0}, geom.Vec2{X: b / 2, Y: h})
		d.nailBothSides(held, b/2, h/2, w, h)
		d.say(b/2-0.3, h+3, it.memberName(0))
		return
	}
	near, _ := sides(held)
	d.leaf(near, 0, h/2, w, h)
	d.say(b/2+3, -off-2, cmp.Or(it.memberName(1), "footing or pile"))
	if it.Rod > 0 {
		d.rod(0, -off-4, -off, it.Rod)
		d.say(0, -off-3, d.Length(it.Rod)+" anchor")
	}
}

// postCapFront draws a cap with the beam's plies in its saddle, nailed from
// both sides into beam and post.
func (d *draft) postCapFront(it detailItem, b, bb, bd, h, w float64, held, other plan.Fasteners) {
	_, beam := it.shoeMembers()
	d.wood(-b/2, b/2, -h-5, 0, alongV)
	d.ragged(-b/2, b/2, -h-5, false)
	n := float64(max(it.ply(beam), 1))
	for i := range int(n) {
		d.wood(-bb/2+bb*float64(i)/n, -bb/2+bb*float64(i+1)/n, 0, bd, endGrain)
	}
	d.edge(geom.Vec2{X: -bb / 2, Y: h}, geom.Vec2{X: -bb / 2}, geom.Vec2{X: bb / 2}, geom.Vec2{X: bb / 2, Y: h})
	d.edge(geom.Vec2{X: -b / 2, Y: -h}, geom.Vec2{X: -b / 2})
	d.edge(geom.Vec2{X: b / 2, Y: -h}, geom.Vec2{X: b / 2})
	d.nailBothSides(held, bb/2, h/2, w, h)
	d.nailBothSides(other, b/2, -h/2, w, h)
	d.say(bb/2-0.3, bd*0.8, it.memberName(beam))
}

// nailBothSides drives a leaf's fasteners about height v into a member from
// its two faces, u off the middle.
func (d *draft) nailBothSides(f plan.Fasteners, u, v, w, h float64) {
	near, far := sides(f)
	for i, side := range []plan.Fasteners{near, far} {
		k := float64(2*i - 1)
		for _, n := range leafHoles(side, w, h) {
			if n.filled {
				d.nail(k*u, v+n.along, cmp.Or(f.Length, 1.5), right.Mul(-k))
			}
		}
	}
}

// postCapSide draws a cap's leaf on the beam and on the post.
func (d *draft) postCapSide(b, bd, h, w float64, held, other plan.Fasteners) {
	d.wood(-b/2, b/2, -h-5, 0, alongV)
	d.ragged(-b/2, b/2, -h-5, false)
	d.wood(-b/2-5, b/2+5, 0, bd, alongU)
	near, _ := sides(held)
	low, _ := sides(other)
	d.leaf(near, 0, h/2, w, h)
	d.leaf(low, 0, -h/2, w, h)
}

// drawHanger draws a joist in its stirrup: its end, and from the side.
func drawHanger(d *draft, it detailItem) {
	breadth, depth := it.section(0)
	tall, flange := cmp.Or(it.Length, depth*0.7), cmp.Or(it.Width, 1.5)
	thick, carry := it.section(1)
	carry = max(carry, depth)
	held, other := it.parts()
	d.head(0, it.roleName()+"'s end")
	half := breadth/2 + flange + 3
	d.wood(-half, half, depth-carry, depth, alongU)
	d.leafPair(other, breadth/2+flange/2, tall/2, flange, tall)
	d.wood(-breadth/2, breadth/2, 0, depth, endGrain)
	d.edge(geom.Vec2{X: -breadth / 2, Y: tall}, geom.Vec2{X: -breadth / 2}, geom.Vec2{X: breadth / 2}, geom.Vec2{X: breadth / 2, Y: tall})
	d.du = half + 6
	d.head(2, "from the side")
	d.wood(-thick, 0, depth-carry, depth, endGrain)
	d.wood(0, 6, 0, depth, alongU)
	near, far := sides(held)
	d.leaf(near, 1.2, tall/2, 2, tall)
	d.say(5, depth*0.8, it.memberName(0))
	d.say(-thick/3, depth*0.9, it.memberName(1))
	if held.Count > 0 {
		d.say(1.2, tall*0.6, nailWords(held)+", half on each side")
	}
	d.du += 6.8
	d.head(1.2, "far side")
	d.leaf(far, 1.2, tall/2, 2, tall)
	d.du = 0
	if other.Part != held.Part {
		d.sayParts(other, plan.Fasteners{}, breadth/2+flange/2, tall*0.35, 0)
	}
	drawn := d.extent()
	d.dimU(drawn.Y+drawn.H, -breadth/2-flange, -breadth/2, breadth/2, breadth/2+flange)
	d.dimV(0, tall, depth)
}

// roleName names the member held.
func (it detailItem) roleName() string {
	if m := it.member(0); m != nil {
		return string(m.Role)
	}
	return string(plan.Joist)
}

// leafPair draws a leaf at each side of the middle, the holes shared out.
func (d *draft) leafPair(f plan.Fasteners, u, v, w, h float64) {
	near, far := sides(f)
	d.leaf(near, -u, v, w, h)
	d.leaf(far, u, v, w, h)
}
