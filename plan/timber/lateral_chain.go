package timber

// chain returns the factors of Z, NDS 2018 Table 11.3.1 (transcribed): those
// of a nail, with what differs from 1/4 in diameter up.
func (l Lateral) chain() Adjust {
	c, large := l.Condition, l.Fastener.D >= 0.25
	c.ForWithdraw = false
	c.Diaphragm = c.Diaphragm && l.Fastener.Kind == NailKind
	a := c.Chain()
	if !large {
		return a
	}
	for i, f := range a {
		switch f.Name {
		case "CM":
			a[i].Value = l.moisture()
		case "Cg":
			a[i] = given(l.Group, "Cg", "1 assumed: one fastener in the row")
		case "Cdelta":
			a[i] = given(l.Geometry, "Cdelta", "1 assumed: full end distance and spacing")
		}
	}
	return a
}

// given returns the factor, or 1 with a word that it was assumed.
func given(f Factor, name, assumed string) Factor {
	if f.Name == "" {
		return Factor{name, 1, assumed}
	}
	return f
}

// moisture is CM of a fastener of 1/4 in and more, NDS 2018 Table 11.3.3,
// p.67 (transcribed).
func (l Lateral) moisture() float64 {
	switch c := l.Condition; {
	case c.WetUse:
		return 0.7
	case c.WetMade:
		return pick(l.OneRow, 1, 0.4)
	}
	return 1
}
