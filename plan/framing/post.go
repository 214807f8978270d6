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
		case m.miter:
			b.miterPost(w, l, m)
		case m.line:
			b.stepPost(w, l, m)
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
	l.put(slot{span: span{min(a, z), max(a, z)}, role: plan.Post})
}

// cornerPost puts the extra studs of the post where w runs through: the
// backing stud, and what the post has over three beside the end stud.
func (b *builder) cornerPost(w *framedWall, l *layout, m meeting) {
	n := b.postSize(w, m)
	if n < 3 {
		return
	}
	if m.end > 0 {
		l.backing(m.lo, -1)
		l.beside(w.s1-plate, -1, n-3)
		return
	}
	l.backing(m.hi, 1)
	l.beside(w.s0+plate, 1, n-3)
}

// miterPost puts what the post of a mitered corner has over three, the end studs
// of both walls and the beveled studs between them, beside the wall's own.
func (b *builder) miterPost(w *framedWall, l *layout, m meeting) {
	if n := b.postSize(w, m) - 3; n > 0 && m.end > 0 {
		l.beside(w.s1-plate, -1, n)
	} else if n > 0 {
		l.beside(w.s0+plate, 1, n)
	}
}

// stepPost puts the studs of the post where two walls of one story and different heights go
// on in one line beside the end stud of the higher one: of three studs, the end studs of both and one
// more of the higher, or of as many as the plan says at one of the two ends.
func (b *builder) stepPost(w *framedWall, l *layout, m meeting) {
	if w.rake() || m.other.rake() || w.TopLevel() != m.other.TopLevel() || w.top-m.other.top <= sixteenth {
		return
	}
	n := b.postSize(w, m) - 2
	if m.end > 0 {
		l.beside(w.s1-plate, -1, n)
		return
	}
	l.beside(w.s0+plate, 1, n)
}

// beside puts n studs from the face at station s on, each tight to the last,
// past whatever stands there.
func (l *layout) beside(s, dir float64, n int) {
	for n > 0 && s >= l.wall.lo && s <= l.wall.hi {
		one := span{min(s, s+dir*plate), max(s, s+dir*plate)}
		if l.put(slot{span: one, role: plan.Post}) {
			n, s = n-1, s+dir*plate
			continue
		}
		next := s + dir*plate
		for _, x := range l.slots {
			if x.meets(one) && dir > 0 {
				next = max(s+geom.Eps, x.hi)
			} else if x.meets(one) {
				next = min(s-geom.Eps, x.lo)
			}
		}
		s = next
	}
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
		b.fault(plan.Diagnostic{
			Code: "post-contradicts", Pos: pos, Related: []plan.Pos{its.Pos}, Where: "wall " + w.Name,
			Summary: fmt.Sprintf("walls %s and %s call for posts of %d and %d studs at one corner", w.Name, m.other.Name, n, its.Post),
			Mend:    "name the post at one of them only",
		})
	}
	if n != 0 && (n < 2 || n > 6) {
		b.fault(plan.Diagnostic{
			Code: "post-size", Pos: pos, Where: "wall " + w.Name,
			Summary: fmt.Sprintf("a corner post of %s", number(n, "stud")), Mend: "give 2 to 6",
		})
	}
	if n == 0 {
		return 3
	}
	return n
}
