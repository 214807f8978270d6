package detail

import (
	"math"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/render/sheet"
)

// wrapping is how a strap lies over the plates: top is the height it bends
// over, out and in its legs' lengths on the two faces, in.
type wrapping struct{ top, out, in float64 }

// drawWrap draws a strap bent over the plates: from its face, and cut across
// the wall, where both legs are seen.
func drawWrap(d *draft, it detailItem) {
	w := max(it.Width, 0.75)
	s := stackOf(it, 60)
	if it.Joint.Kind != plan.StudTop && it.Joint.Kind != plan.OpeningHead && it.Joint.Wall != nil {
		s = topStack(it, 60)
	}
	var wr wrapping
	for _, l := range s.layers {
		wr.top = max(wr.top, l.v1)
	}
	wr.out, wr.in = it.legs(it.bandLength(), s.depth)
	low, high, _ := it.ends()
	lo := wr.top - max(wr.out, wr.in) - 4
	s.trim(lo, wr.top+10)
	d.cutsV = clear(max(wr.top-wr.out+reach(low), wr.top-wr.in+reach(high))+1.5, s.bottom-2, s.bottom-2, s.bottom-2)
	const half = bandHalf + 0.5
	d.head(0, "from outside")
	d.headerBeside(it, s, half, lo)
	d.drawFront(s, half)
	d.steel(box2(-w/2, w/2, wr.top-wr.out, wr.top)...)
	for _, h := range low {
		d.hole(h.across, wr.top-wr.out+h.along, it.holeAt(0), h.filled)
	}
	d.broken(-half, half)
	d.du = half + 4
	d.wrapSide(it, s, low, high, wr)
	d.nameLayers(s, lo, wr.top)
	d.wrapLeg(it, high, half+4+s.depth+w/2+2, w, wr)
	d.du = half + 4
	d.wrapDims(it, s, low, w, wr)
}

// wrapLeg draws the leg on the far face by itself, with its holes: the wood
// hides it in the other views.
func (d *draft) wrapLeg(it detailItem, high []punch, du, w float64, wr wrapping) {
	d.du = du
	d.head(0, "inside leg")
	d.steel(box2(-w/2, w/2, wr.top-wr.in, wr.top)...)
	for _, h := range high {
		d.hole(h.across, wr.top-wr.in+h.along, it.holeAt(1), h.filled)
	}
	d.broken(-w/2, w/2)
}

// wrapSide draws the strap over the plates cut across, nailed on both faces.
func (d *draft) wrapSide(it detailItem, s stack, low, high []punch, wr wrapping) {
	d.head(s.depth/2, "across the wall")
	d.drawSide(s)
	d.edge(geom.Vec2{Y: wr.top - wr.out}, geom.Vec2{Y: wr.top}, geom.Vec2{X: s.depth, Y: wr.top}, geom.Vec2{X: s.depth, Y: wr.top - wr.in})
	for _, h := range low {
		if h.filled {
			d.nail(0, wr.top-wr.out+h.along, it.nailAt(0), right)
		}
	}
	for _, h := range high {
		if h.filled {
			d.nail(s.depth, wr.top-wr.in+h.along, it.nailAt(1), right.Mul(-1))
		}
	}
	d.broken(0, s.depth)
}

// wrapDims dimensions a wrap strap and names its nails.
func (d *draft) wrapDims(it detailItem, s stack, low []punch, w float64, wr wrapping) {
	r := d.extent()
	d.dimU(r.Y+r.H, 0, s.depth)
	d.du = 0
	d.dimU(r.Y+r.H, rowsOf(low, w)...)
	d.dimV(wr.top-wr.out, s.bottom, wr.top)
	d.dimV(wr.top-wr.in, wr.top)
	_, _, guessed := it.ends()
	d.sayNails(it, low, low, wr.top-wr.out, wr.top, guessed)
}

// legs returns the lengths of steel on the outside and the inside face: those
// of the piece placed, or even ones.
func (it detailItem) legs(length, depth float64) (out, in float64) {
	if p := it.Piece.Path; len(p) >= 4 {
		return p[1].Sub(p[0]).Len(), p[len(p)-1].Sub(p[len(p)-2]).Len()
	}
	leg := max(1, (length-depth)/2)
	return leg, leg
}

// headerBeside draws the header that ends at the king of an opening-head joint.
func (d *draft) headerBeside(it detailItem, s stack, half, lo float64) {
	if it.Joint.Kind != plan.OpeningHead {
		return
	}
	for k, m := range it.Joint.Members {
		if m.Role != plan.Header {
			continue
		}
		top := min(m.Z1-s.ref, s.bottom)
		if top < lo+3 {
			return // it stands lower than the view
		}
		d.wood(0.75, half, max(lo, top-m.Section.Depth), top, alongU)
		d.say(half-1, top-1, it.memberName(k))
		return
	}
}

// drawRidgeStrap draws a strap over the ridge: cut across the ridge, and the
// strap flat.
func drawRidgeStrap(d *draft, it detailItem) {
	length, w := it.bandLength(), max(it.Width, 0.75)
	low, high, _ := it.ends()
	pitch := 6.0
	if it.Joint.Roof != nil && it.Joint.Roof.Pitch > 0 {
		pitch = it.Joint.Roof.Pitch
	}
	slope := geom.Vec2{X: 12, Y: -pitch}.Unit()
	_, depth := it.section(0)
	rb, rd, name := it.ridge()
	far := length/2 + 4
	d.head(0, "across the ridge")
	d.ridgeRafter(slope, far, depth, rb, 1)
	d.ridgeRafter(slope, far, depth, rb, -1)
	top := slope.Y / slope.X * rb / 2
	d.wood(-rb/2, rb/2, top-rd, top, endGrain)
	end := slope.Mul(length / 2)
	d.edge(geom.Vec2{X: -end.X, Y: end.Y}, geom.Vec2{}, end)
	d.ridgeNails(it, low, high, slope, length)
	d.dimAlong(geom.Vec2{}, end, 5)
	d.dimAlong(geom.Vec2{X: -end.X, Y: end.Y}, geom.Vec2{}, 5)
	d.say(0, top-rd*0.8, name)
	in := slope.Mul(far * 0.8).Add(geom.Vec2{X: slope.Y, Y: -slope.X}.Mul(depth / 2))
	d.say(in.X, in.Y, it.memberName(0))
	d.flatRidgeStrap(it, low, high, length, w, math.Min(top-rd, slope.Y*far-depth)-4-w/2)
}

// ridge returns breadth, depth and name of the joint's ridge member.
func (it detailItem) ridge() (b, depth float64, name string) {
	for k, m := range it.Joint.Members {
		if m.Role == plan.Ridge {
			b, depth = it.section(k)
			return b, depth, it.memberName(k)
		}
	}
	if r := it.Joint.Roof; r != nil && r.RidgeMember.Depth > 0 {
		return r.RidgeMember.Width(), r.RidgeMember.Depth, "ridge " + r.RidgeMember.Text
	}
	return 1.5, 9.25, string(plan.Ridge)
}

// ridgeRafter draws one rafter from the ridge down, to the right or (side -1)
// to the left.
func (d *draft) ridgeRafter(slope geom.Vec2, far, depth, rb, side float64) {
	tan := slope.Y / slope.X
	plumb := depth / slope.X
	at := func(x, y float64) geom.Vec2 { return geom.Vec2{X: side * x, Y: y} }
	x0, x1 := rb/2, slope.X*far
	pts := d.pts(at(x0, x0*tan), at(x1, x1*tan), at(x1, x1*tan-plumb), at(x0, x0*tan-plumb))
	d.Polygon(sheet.Style{Pen: sheet.PenMember, Fill: sheet.White, Layer: sheet.LayerMember}, pts...)
	for i := 1; i <= 3; i++ {
		f, t := fiber(i)
		y := plumb * float64(i) / 4
		a, b := x0+(x1-x0)*f, x0+(x1-x0)*t
		q := d.pts(at(a, a*tan-y), at(b, b*tan-y))
		d.Line(sheet.PenDim, sheet.LayerMember, q[0], q[1])
	}
}

func (d *draft) ridgeNails(it detailItem, low, high []punch, slope geom.Vec2, length float64) {
	for _, h := range low {
		p := slope.Mul(length/2 - h.along)
		if h.filled {
			d.nail(p.X, p.Y, it.nailAt(0), geom.Vec2{X: slope.Y, Y: -slope.X})
		}
	}
	for _, h := range high {
		p := slope.Mul(length/2 - h.along)
		if h.filled {
			d.nail(-p.X, p.Y, it.nailAt(1), geom.Vec2{X: -slope.Y, Y: -slope.X})
		}
	}
}

// flatRidgeStrap draws the strap laid flat with its holes, v its middle line.
func (d *draft) flatRidgeStrap(it detailItem, low, high []punch, length, w, v float64) {
	d.steel(box2(-length/2, length/2, v-w/2, v+w/2)...)
	d.Line(sheet.PenGrid, sheet.LayerGrid, d.at(0, v-w/2-0.5), d.at(0, v+w/2+0.5))
	for _, h := range low {
		d.hole(length/2-h.along, v+h.across, it.holeAt(0), h.filled)
	}
	for _, h := range high {
		d.hole(-length/2+h.along, v+h.across, it.holeAt(1), h.filled)
	}
	d.say(0, v, "bend over the ridge")
	_, _, guessed := it.ends()
	d.sayFlat(it, low, high, -length/2, length/2, v, guessed)
	r := d.extent()
	d.dimU(r.Y+r.H, -length/2, 0, length/2)
	r = d.extent()
	d.dimU(r.Y+r.H, -length/2, length/2)
	stops := rowsOf(low, w)
	for i := range stops {
		stops[i] += v
	}
	d.dimV(stops...)
}
