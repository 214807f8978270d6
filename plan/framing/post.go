package framing

import (
	"fmt"

	"galewright/plan"
	"galewright/plan/geom"
)

// posts puts the studs beside the end studs that corner posts and meeting
// walls ask for. A three-stud post (the default where walls meet at an angle)
// is the through wall's end stud, the butting wall's end stud, and a backing
// stud of the through wall that stands one inch past the butting wall's
// inner face, for the inside boards to nail to. A wall that meets along the
// length gets two such backing studs (common practice, no published source;
// the numbers agree with the take-off rule of two extra studs at each).
func (b *builder) posts(w *framedWall, l *layout) {
	for _, m := range w.meets {
		switch {
		case !m.over:
		case m.end == 0:
			l.backing(m.lo, -1)
			l.backing(m.hi, 1)
		default:
			b.cornerPost(w, l, m)
		}
	}
}

// backing puts a stud that projects one inch past the face at station s,
// away from the meeting wall (dir 1: it lies below s).
func (l *layout) backing(s, dir float64) {
	a, z := s+dir, s+dir-dir*plate
	l.put(slot{span: span{min(a, z), max(a, z)}, role: Post})
}

// cornerPost puts the extra studs of the post where w runs through.
func (b *builder) cornerPost(w *framedWall, l *layout, m meeting) {
	n := b.postSize(w, m)
	if n < 3 {
		return
	}
	if m.end > 0 {
		if n > 3 {
			l.put(slot{span: span{w.s1 - 2*plate, w.s1 - plate}, role: Post})
		}
		l.backing(m.lo, -1)
		return
	}
	if n > 3 {
		l.put(slot{span: span{w.s0 + plate, w.s0 + 2*plate}, role: Post})
	}
	l.backing(m.hi, 1)
}

// postSize returns the number of studs in a corner's post.
func (b *builder) postSize(w *framedWall, m meeting) int {
	own := wallEnd{w, m.end > 0}.spec()
	its := wallEnd{m.other, m.tail}.spec()
	n, pos := own.Post, own.Pos
	switch {
	case n == 0:
		n, pos = its.Post, its.Pos
	case its.Post != 0 && its.Post != n:
		b.fault(plan.Diagnostic{Code: "post-contradicts", Pos: pos, Related: []plan.Pos{its.Pos}, Where: "wall " + w.Name,
			Summary: fmt.Sprintf("walls %s and %s ask for posts of %d and %d studs at one corner", w.Name, m.other.Name, n, its.Post),
			Mend:    "name the post at one of them only"})
	}
	if n != 0 && (n < 2 || n > 4) {
		b.fault(plan.Diagnostic{Code: "post-size", Pos: pos, Where: "wall " + w.Name,
			Summary: fmt.Sprintf("a corner post of %s", number(n, "stud")), Mend: "ask for 2, 3 or 4"})
	}
	if n == 0 {
		return 3
	}
	return n
}

// clear tells whether station s lies outside every opening's header by d.
func (w *framedWall) clear(s, d float64) bool {
	for _, o := range w.openings {
		if s > o.h0-d+geom.Eps && s < o.h1+d-geom.Eps {
			return false
		}
	}
	return true
}
