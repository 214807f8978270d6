package sheet

// Struck is lettering that a line runs through.
type Struck struct {
	Text Text
	Line Line
}

// StruckTexts returns the lettering of one role that a straight line drawn
// after nothing hides it runs through, by more than tol inside its box, in
// order of the marks. A line that a white shape covers afterwards does not
// count: the shape is taken as whatever holds the whole lettering.
func StruckTexts(sh *Sheet, role string, tol MM) (out []Struck) {
	for i, m := range sh.Marks {
		t, ok := m.(Text)
		if !ok || t.Role != role {
			continue
		}
		level := t
		level.Angle = 0
		box := level.Box().Inset(tol)
		for k, n := range sh.Marks {
			l, ok := n.(Line)
			if ok && l.Pen != NoPen && crosses(box, t.levelled(l.A), t.levelled(l.B)) && !covered(sh.Marks, k, i, t.Box().Inset(tol)) {
				out = append(out, Struck{t, l})
				break
			}
		}
	}
	return out
}

// levelled turns a point about the text's own point as if the text stood level.
func (t Text) levelled(p Pt) Pt {
	if t.Angle == 0 {
		return p
	}
	sin, cos := sincos(t.Angle)
	return Turn(Pt{p.X - t.At.X, p.Y - t.At.Y}, -sin, cos, 1).Add(t.At)
}

// covered tells whether a white shape over the whole box comes between the
// line at mark k and the lettering at mark i.
func covered(ms []Mark, k, i int, box Rect) bool {
	for j := k + 1; j < i; j++ {
		switch m := ms[j].(type) {
		case Polyline:
			if m.Closed && m.Fill == White && Bounds(m, nil).Holds(box, 0.01) {
				return true
			}
		case Circle:
			if m.Fill == White && Bounds(m, nil).Holds(box, 0.01) {
				return true
			}
		}
	}
	return false
}

// crosses tells whether the line from a to b has a part inside r (Liang and
// Barsky's clipping, 1984, from memory).
func crosses(r Rect, a, b Pt) bool {
	t0, t1 := MM(0), MM(1)
	d := Pt{b.X - a.X, b.Y - a.Y}
	for _, e := range [4][2]MM{{-d.X, a.X - r.X}, {d.X, r.X + r.W - a.X}, {-d.Y, a.Y - r.Y}, {d.Y, r.Y + r.H - a.Y}} {
		switch p, q := e[0], e[1]; {
		case p == 0 && q < 0:
			return false
		case p < 0:
			t0 = max(t0, q/p)
		case p > 0:
			t1 = min(t1, q/p)
		}
	}
	return t0 < t1
}
