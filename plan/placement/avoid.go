package placement

import (
	"fmt"

	"galewright/plan/framing"
	"galewright/plan/hardware"
)

// avoid moves pieces that have a choice and that meet another piece: a clip
// to the other side of its member, a strap that goes over a plate to the
// inside alone. It moves them only where that is clear. Tags do not change.
func (x *placer) avoid() {
	x.fill()
	for _, a := range x.asked {
		if len(a.pieces) != 1 || !a.choice() {
			continue
		}
		if p := a.pieces[0]; !x.clear(p, p.bands) {
			x.flip(p, a)
		}
	}
	x.fill()
}

// choice tells whether the ask leaves open where the piece goes.
func (a *ask) choice() bool {
	switch a.item.Kind.Shape {
	case hardware.Body:
		return a.face == "" || a.joint.Kind == framing.RafterPlate
	case hardware.Over:
		return a.face == "" && (a.joint.Kind == framing.StudTop || a.joint.Kind == framing.OpeningHead)
	}
	return false
}

// clear tells whether no other piece lies where the bands would.
func (x *placer) clear(p *Piece, bands []band) bool {
	return x.blocker(p, bands) == nil
}

// blocker returns a piece that lies where the bands of p would, or nil.
func (x *placer) blocker(p *Piece, bands []band) (other *Piece) {
	for _, b := range bands {
		pl, r := b.flat()
		x.space.near(pl, r, func(s spot) {
			if s.piece != p && other == nil {
				other = s.piece
			}
		})
	}
	return other
}

// flip takes a piece to its second place when it is clear there.
func (x *placer) flip(p *Piece, a *ask) {
	q := *p
	q.Path, q.bands, q.Laid, q.other, q.Cut = nil, nil, nil, true, 0
	q.Face = a.face
	if x.shape(&q, 0, 1) != nil || !x.clear(p, q.bands) {
		return
	}
	q.moved = fmt.Sprintf("moved there because %s lies in its first place", x.blocker(p, p.bands).Tag)
	q.extent()
	*p = q
	x.space.add(p)
}
