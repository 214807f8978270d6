package framing

import (
	"galewright/plan"
	"galewright/plan/geom"
)

// wallJoints finds the joints within and between walls.
func (b *builder) wallJoints() {
	for _, w := range b.walls {
		b.studTops(w)
		b.openingJoints(w)
		b.gableJoints(w)
		b.spliceJoints(w)
		b.cornerJoints(w)
	}
}

// newJoint makes a joint of w at station s and height z, on the middle of
// the wall's depth.
func (b *builder) newJoint(w *framedWall, k plan.JointKind, s, z float64, members ...*Member) *Joint {
	var with []*Member
	for _, m := range members {
		if m != nil {
			with = append(with, m)
		}
	}
	return b.joint(&Joint{
		Kind: k, Host: w.Name, Wall: w.Wall, Level: w.Level, Station: s,
		At: w.frame.At(s, w.Depth()/2, z), Members: with, Below: true,
	})
}

// studTops ties full-height members to the top plates and jacks to their
// headers.
func (b *builder) studTops(w *framedWall) {
	share := tributary(w)
	for _, m := range w.uprights {
		if m.Role.FullHeight() {
			j := b.newJoint(w, plan.StudTop, m.Mid(), m.Z1, m, w.memberAt(w.plates, m.Mid()), w.capAt(m.Mid()))
			j.Tributary = share[m]
		}
	}
	for _, o := range w.openings {
		for _, m := range o.jack {
			j := b.newJoint(w, plan.StudTop, m.Mid(), m.Z1, m, o.header)
			j.Tributary = (o.h1 - o.h0) / 2
		}
	}
}

// tributary returns the length of wall that each full-height member serves:
// half way to its neighbors, the outer ones to the ends of the wall's line;
// kings half of their opening too.
func tributary(w *framedWall) map[*Member]float64 {
	share := map[*Member]float64{}
	var full []*Member
	for _, m := range w.uprights {
		if m.Role.FullHeight() {
			full = append(full, m)
		}
	}
	for i, m := range full {
		lo, hi := min(w.Hook, m.Mid()), max(w.Length(), m.Mid())
		if i > 0 {
			lo = (full[i-1].Mid() + m.Mid()) / 2
		}
		if i < len(full)-1 {
			hi = (m.Mid() + full[i+1].Mid()) / 2
		}
		share[m] = hi - lo
	}
	return share
}

// openingJoints finds both ends of each header and sill.
func (b *builder) openingJoints(w *framedWall) {
	for _, o := range w.openings {
		for _, side := range []struct {
			king *Member
			s    float64
			sill float64
		}{{w.leftOf(o.h0), o.h0, o.lo}, {w.rightOf(o.h1), o.h1, o.hi}} {
			j := b.newJoint(w, plan.OpeningHead, side.s, o.head, o.header, side.king, w.memberAt(w.plates, side.s), w.capAt(side.s))
			j.Tributary, j.Gap = (o.h1-o.h0)/2, max(0, w.head-o.top)
			if o.sillPlate != nil {
				j := b.newJoint(w, plan.OpeningSill, side.sill, o.sill, o.sillPlate, o.jackAt(side.sill), side.king)
				j.Tributary = (o.hi - o.lo) / 2
			}
		}
		b.headerJoints(w, o)
	}
}

// leftOf returns the full-height member whose right face is nearest to
// station s, rightOf the one whose left face is.
func (w *framedWall) leftOf(s float64) *Member {
	var hit *Member
	for _, m := range w.uprights {
		if m.Role.FullHeight() && m.S1 <= s+geom.Eps {
			hit = m
		}
	}
	return hit
}

func (w *framedWall) rightOf(s float64) *Member {
	for _, m := range w.uprights {
		if m.Role.FullHeight() && m.S0 >= s-geom.Eps {
			return m
		}
	}
	return nil
}

// jackAt returns the jack whose face is at station s.
func (o *framedOpening) jackAt(s float64) *Member { return memberAt(o.jack, s) }

// spliceJoints finds each break in a top plate that is no corner or lap. The
// two pieces of the plate that breaks come first, then the plate that runs
// past; Faces says where the break is in reach.
func (b *builder) spliceJoints(w *framedWall) {
	for _, rows := range [][2][]*Member{{w.plates, w.caps}, {w.caps, w.plates}} {
		for i, m := range rows[0] {
			if i > 0 && m.S0-rows[0][i-1].S1 < geom.Eps {
				first, second := rows[0][i-1], m
				if w.mirrored {
					first, second = second, first
				}
				s := (rows[0][i-1].S1 + m.S0) / 2 // plates that a ridge at a slant parts lie past each other
				j := b.newJoint(w, plan.PlateSplice, s, topAt(m, s)-plate/2, first, second, w.memberAt(rows[1], s))
				j.Faces = []plan.Face{plan.Outside, plan.Inside}
				if m.Role == plan.UpperPlate || j.Members[len(j.Members)-1] == m {
					j.Faces = []plan.Face{plan.Top, plan.Outside, plan.Inside}
				}
			}
		}
	}
}

// cornerJoints finds where w meets a wall: the joint belongs to the wall
// that runs through.
func (b *builder) cornerJoints(w *framedWall) {
	for _, m := range w.miters {
		b.miterJoint(w, m)
	}
	for _, m := range w.meets {
		first := 1 // of two walls in line the joint is the first one's
		if w.mirrored {
			first = -1
		}
		if !m.over && !(m.line && m.end == first) {
			continue
		}
		if m.cross {
			b.crossJoints(w, m)
			continue
		}
		s := (m.lo + m.hi) / 2
		switch {
		case m.end > 0:
			s = w.s1
		case m.end < 0:
			s = w.s0
		}
		b.newJoint(w, plan.WallCorner, s, min(w.head, m.other.head), m.other.nearest(m.other.uprights, m.other.endStation(m.tail)), w.nearest(w.uprights, s), w.capAt(s))
	}
}

func (w *framedWall) endStation(tail bool) float64 {
	if tail {
		return w.s1
	}
	return w.s0
}

// nearest returns the full-height member nearest to station s: of two as near the first, in
// a mirrored house the second.
func (w *framedWall) nearest(list []*Member, s float64) (hit *Member) {
	tie := -geom.Eps
	if w.mirrored {
		tie = geom.Eps
	}
	for _, m := range list {
		if m.Role.FullHeight() && (hit == nil || abs(m.Mid()-s) < abs(hit.Mid()-s)+tie) {
			hit = m
		}
	}
	return hit
}

func abs(v float64) float64 { return max(v, -v) }
