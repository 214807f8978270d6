package placement

import (
	"fmt"
	"slices"

	"galewright/plan"
	"galewright/plan/hardware"
)

// avoid moves pieces that have a choice of faces and that meet another piece,
// or that another member covers, to the first of their faces that is clear.
// A clip that a rule wants on a covered face goes where it can be nailed;
// what the engineer asks for by place and face stays. Tags do not change.
func (x *placer) avoid() {
	x.fill()
	for _, a := range x.asked {
		for _, p := range a.pieces {
			if x.clear(p, p.bands) && !x.covered(p) {
				continue
			}
			x.move(p, a)
		}
	}
	x.fill()
}

// move takes a piece to the first of its other faces that is clear.
func (x *placer) move(p *Piece, a *ask) {
	if a.joint.Kind.Lies() == plan.LiesAtRafter && a.item.Kind.Shape == hardware.Body && a.count == 1 {
		x.try(p, a.face, true)
		return
	}
	faces := a.item.Kind.Faces
	if a.face != "" && (a.rule == nil || a.item.Kind.Shape != hardware.Body || !x.covered(p)) {
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
	p.onTop = true
	if p.onTop = x.try(p, plan.Top, false); p.onTop {
		p.moved = fmt.Sprintf("it does not reach the %s that breaks here: other pieces take the faces that do", p.Joint.First().Role)
	}
}

// try lays a piece on another face and keeps it there when it is clear.
func (x *placer) try(p *Piece, face plan.Face, other bool) bool {
	q := *p
	q.Path, q.bands, q.Laid, q.Cut, q.room = nil, nil, nil, 0, [2]float64{}
	q.Face, q.other = face, other
	if x.shape(&q, 0, 1) != nil || !x.clear(p, q.bands) || x.covered(&q) {
		return false
	}
	if q.Item.Bodies > 0 && !x.holds(&q, x.through(q.Joint), q.Face) {
		return false
	}
	q.extent()
	if lack := missing(&q); max(lack[0], lack[1]) > touch {
		return false // there its nails would find no room
	}
	if (q.Face == plan.Left || q.Face == plan.Right) && len(q.Laid) > 0 && inOpening(q.Laid[0], q.Face, (q.Z0+q.Z1)/2) {
		return false
	}
	if o := x.blocker(p, p.bands); o != nil {
		q.moved = fmt.Sprintf("moved there because %s lies in its first place", o.Tag)
	} else if m, _ := x.coverOf(p); m != nil {
		q.moved = fmt.Sprintf("moved there because a %s covers its first place", m.Role)
	}
	*p = q
	x.space.add(p)
	return true
}

// clear tells whether no other piece lies where the bands would.
func (x *placer) clear(p *Piece, bands []band) bool {
	return x.blocker(p, bands) == nil
}

// blocker returns a piece that lies where the bands of p would, or nil. The
// index still has the first places of pieces that have moved; those do not
// count.
func (x *placer) blocker(p *Piece, bands []band) (other *Piece) {
	for _, b := range bands {
		pl, r := b.flat()
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
	for _, b := range p.bands {
		if q, s := b.flat(); q == pl && s.overlaps(r) {
			return true
		}
	}
	return false
}
