package framing

import (
	"math"

	"galewright/plan"
)

// Two walls that go on in one line part the chord of the house where they meet: both top
// plates break there. Where they lie at one height it is a splice like others, but
// without a plate that runs past. Where the wall's height changes, the plates lie at two
// heights, and nothing that lies on them ties one to the other.

// step returns how much higher the upper plate of the wall that w meets in line lies than
// w's own where they meet, in; zero within a mark of the tape.
func (m meeting) step(own, next *Member) float64 {
	far := -1
	if m.tail {
		far = 1
	}
	d := heightOf(next, far) - heightOf(own, m.end)
	if math.Abs(d) <= sixteenth {
		return 0
	}
	return d
}

// heightOf returns the height of the middle of a plate at one of its ends.
func heightOf(m *Member, side int) float64 {
	if side > 0 {
		return m.B.Z
	}
	return m.A.Z
}

// lineJoints finds where the top plates of two walls in one line meet, but where a
// collector is there already, which ties the same two.
func (b *builder) lineJoints() {
	for _, w := range b.walls {
		b.gapJoints(w)
		for _, m := range w.meets {
			first := 1
			if w.mirrored {
				first = -1
			}
			if m.line && m.end == first {
				b.lineJoint(w, m)
			}
		}
	}
}

// gapJoints finds where both top plates of a wall stop at a wall that crosses it.
func (b *builder) gapJoints(w *framedWall) {
	for _, g := range w.gaps {
		if w.capAt(g.mid()) != nil {
			continue
		}
		first, second := w.capAt(g.lo), w.capAt(g.hi)
		if w.mirrored {
			first, second = second, first
		}
		if first == nil || second == nil || b.collects(first, second) {
			continue
		}
		j := b.newJoint(w, plan.PlateSplice, g.mid(), w.top-plate/2, first, second)
		j.Gap, j.Faces = g.hi-g.lo, []plan.Face{plan.Top, plan.Outside, plan.Inside}
	}
}

func (b *builder) lineJoint(w *framedWall, m meeting) {
	own, next := nearCap(w, m.end > 0), nearCap(m.other, m.tail)
	if own == nil || next == nil || b.collects(own, next) {
		return
	}
	s, far := own.S0, next.A
	if m.end > 0 {
		s = own.S1
	}
	if m.tail {
		far = next.B
	}
	to, _ := w.frame.Local(far.Flat()) // where a third wall's plate laps over, past its breadth
	step := m.step(own, next)
	j := b.newJoint(w, plan.PlateSplice, (s+to)/2, heightOf(own, m.end)+min(0, step), own, next)
	j.Gap, j.Step = math.Abs(to-s), math.Abs(step)
	j.Faces = []plan.Face{plan.Top, plan.Outside, plan.Inside}
}

// collects tells whether a collector ties two plates.
func (b *builder) collects(x, y *Member) bool {
	for _, j := range b.house.Joints {
		if j.Kind == plan.Collector && len(j.Members) > 1 && (j.Members[0] == x && j.Members[1] == y || j.Members[0] == y && j.Members[1] == x) {
			return true
		}
	}
	return false
}
