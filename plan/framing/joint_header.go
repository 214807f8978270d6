package framing

import (
	"math"

	"galewright/plan"
	"galewright/plan/geom"
)

// headerJoints ties each end of the header to the king beside it, and the
// cripples over it to header and plates.
func (b *builder) headerJoints(w *framedWall, o *framedOpening) {
	if o.header == nil {
		return
	}
	h := o.header
	_, mid := w.frame.Local(h.A.Flat())
	for _, side := range []struct {
		s    float64
		king *Member
		face float64
	}{{o.h0, w.leftOf(o.h0), -1}, {o.h1, w.rightOf(o.h1), 1}} {
		king := side.king
		if king != nil && math.Abs(king.Mid()+plate/2*-side.face-side.s) > sixteenth {
			king = nil // it stands off
		}
		j := b.newJoint(w, plan.HeaderKing, side.s, (h.Z0+h.Z1)/2, h, king)
		j.At = w.frame.At(side.s, mid, (h.Z0+h.Z1)/2)
		j.Below, j.Tributary = king != nil, (o.h1-o.h0)/2
	}
	b.cripplesOver(w, o)
}

// cripplesOver ties the cripples above the header of o: down to the header,
// and up to the plates.
func (b *builder) cripplesOver(w *framedWall, o *framedOpening) {
	var over []*Member
	var stations []float64
	for _, m := range w.uprights {
		if m.Role == plan.Cripple && m.Opening == o.Opening && m.Z0 > o.top-sixteenth {
			over, stations = append(over, m), append(stations, m.Mid())
		}
	}
	for _, m := range over {
		share := shareOf(stations, m.Mid(), o.h0, o.h1)
		b.newJoint(w, plan.CrippleHeader, m.Mid(), m.Z0, m, o.header).Tributary = share
		b.newJoint(w, plan.CripplePlate, m.Mid(), m.Z1, m, w.memberAt(w.plates, m.Mid()), w.capAt(m.Mid())).Tributary = share
	}
}

// gableJoints ties the end rafter or gable truss that lies along the wall on
// its top plates, at each full-height member: rafter-plate joints are at its
// eaves alone, and stud-top joints end at the plates. A stud under the ridge
// itself has neither over it.
func (b *builder) gableJoints(w *framedWall) {
	share := tributary(w)
	for _, m := range w.uprights {
		top := w.plateUnder(m.Mid())
		if !m.Role.FullHeight() || top == nil {
			continue
		}
		z := topAt(top, m.Mid())
		if on := b.alongTop(w, m, z); on != nil {
			j := b.newJoint(w, plan.GableStud, m.Mid(), z, on, top, m)
			j.Roof, j.Tributary = on.Roof, share[m]
		}
	}
}

// alongTop returns the rafter or truss that runs the wall's way on its plates
// over m, their top at height z, or nil.
func (b *builder) alongTop(w *framedWall, m *Member, z float64) *Member {
	box := w.frame.Box(m.Mid()-near, m.Mid()+near, 0, w.Depth(), z-near, z+near)
	lo, hi := box.Bounds()
	for _, o := range b.index.Within(lo, hi) {
		if o.Roof == nil || o.Role != plan.Rafter && !o.Role.IsTruss() || !w.alongside(o) {
			continue
		}
		for _, s := range o.Solid {
			if geom.Overlap(box, s, 0.1) {
				return o
			}
		}
	}
	return nil
}

// alongside tells whether a member runs the wall's way on plan.
func (w *framedWall) alongside(m *Member) bool {
	d := m.B.Sub(m.A).Flat()
	return d.Len() > near && geom.InLine(d.Unit(), w.frame.D)
}
