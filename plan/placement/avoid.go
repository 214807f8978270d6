package placement

import (
	"fmt"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/hardware"
)

// avoid moves pieces that have a choice of faces and that meet another piece,
// or that another member covers, to the first of their faces that is clear.
// A clip that a rule wants on a covered face goes where it can be nailed;
// what the engineer asks for by place and face stays. Tags do not change.
func (x *placer) avoid() {
	x.fill()
	for range 2 { // the second time what has moved meanwhile has left room
		for _, a := range x.asked {
			for _, p := range a.pieces {
				if !x.clear(p, p.nailed()) || !x.lies(p) {
					x.move(p, a)
				}
			}
		}
	}
	x.fill()
}

// move takes a piece to the first of its other faces that is clear.
func (x *placer) move(p *Piece, a *ask) {
	if a.joint.Kind.Lies() == plan.LiesAtRafter && a.item.Kind.Shape == hardware.Body && a.count == 1 {
		switch face := a.face; {
		case face != plan.Left && face != plan.Right:
			if !x.try(p, face, true) && a.rule != nil && !x.lies(p) && !x.try(p, plan.Inside, false) {
				x.try(p, plan.Inside, true)
			}
		case a.rule != nil && !x.lies(p) && !x.try(p, opposite(face), false):
			x.try(p, plan.Inside, false)
		}
		return
	}
	faces := a.item.Kind.Faces
	if a.face != "" && (a.rule == nil || a.item.Kind.Shape != hardware.Body || x.lies(p)) {
		return
	}
	for _, f := range faces[min(1, len(faces)):] {
		if (f != p.Face || p.around()) && x.try(p, f, false) {
			return
		}
	}
	x.backOnTop(p)
}

// backOnTop lays a piece whose break is covered at its top back over it where
// no face that reaches the break is clear, and says so.
func (x *placer) backOnTop(p *Piece) {
	faces := p.Joint.Faces
	if len(faces) == 0 || slices.Contains(faces, plan.Top) || !slices.Contains(p.Item.Kind.Faces, plan.Top) {
		return
	}
	x.tryTop(p)
}

// lies tells whether a piece lies on wood that nothing else covers.
func (x *placer) lies(p *Piece) bool { return !x.covered(p) && p.offWood() == nil }

// opposite returns the other side.
func opposite(side plan.Face) plan.Face {
	if side == plan.Left {
		return plan.Right
	}
	return plan.Left
}

// try lays a piece on another face and keeps it there when it is clear.
func (x *placer) try(p *Piece, face plan.Face, other bool) bool {
	w := want{joint: p.Joint, item: p.Item, face: face, n: 1, other: other, to: p.to()}
	lie, fault := x.shape(w)
	if fault != nil {
		return false
	}
	q := *p
	q.Lie = lie
	if !x.clear(p, q.nailed()) || !x.lies(&q) {
		return false
	}
	if q.Item.Bodies > 0 && !x.holds(w, x.through(q.Joint), q.Face) {
		return false
	}
	if lack := missing(&q); max(lack[0], lack[1]) > touch {
		return false // there its nails would find no room
	}
	if held := q.ties()[0].Member; (q.Face == plan.Left || q.Face == plan.Right) && inOpening(held, q.Face, (q.Z0+q.Z1)/2) {
		return false
	}
	p.Lie = x.movedFrom(p, lie)
	x.space.add(p)
	return true
}

// movedFrom returns a lie with why it is not the first of a piece.
func (x *placer) movedFrom(p *Piece, l Lie) Lie {
	if o := x.blocker(p, p.nailed()); o != nil {
		l.Moved = fmt.Sprintf("moved there because %s lies in its first place", o.Tag)
	} else if m, _ := x.coverOf(p); m != nil {
		l.Moved = fmt.Sprintf("moved there because a %s covers its first place", m.Role)
	} else if off := p.offWood(); off != nil {
		l.Moved = fmt.Sprintf("moved there because in its first place the %s ends under it", off.Member.Role)
	}
	return l
}

// clear tells whether no other piece lies where the plates would.
func (x *placer) clear(p *Piece, plates []geom.Plate) bool {
	return x.blocker(p, plates) == nil
}

// blocker returns a piece that lies where the plates of p would, or nil. The
// index still has the first places of pieces that have moved; those do not
// count.
func (x *placer) blocker(p *Piece, plates []geom.Plate) (other *Piece) {
	for _, b := range plates {
		pl, r := flat(b)
		x.space.near(pl, r, func(s spot) {
			if s.piece != p && other == nil && s.piece.at(pl, r) {
				other = s.piece
			}
		})
	}
	return other
}

// at tells whether the piece lies over r on the plane.
func (p *Piece) at(pl plane, r rect) bool {
	for _, b := range p.nailed() {
		if q, s := flat(b); pl.near(q) && s.overlaps(r) {
			return true
		}
	}
	return false
}
