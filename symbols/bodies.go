package symbols

import "galewright/render/sheet"

// The bodies: everything bent, welded or cast that is no plain band.

func clip() []sheet.Mark {
	m := []sheet.Mark{solid(-2.2, -2.2, -0.9, -2.2, -0.9, 0.9, 2.2, 0.9, 2.2, 2.2, -2.2, 2.2)}
	return append(m, nails(0.35, -1.55, -1.3, 1.3, 1.55)...)
}

func holdDown() []sheet.Mark {
	m := []sheet.Mark{
		solid(-1.9, -2.9, -0.8, -2.9, -0.8, -0.9, 1.9, 0.2, 1.9, 1, -1.9, 1),
		bar(0.4, 0.9, 1.1, 2.9), bar(-0.2, 2.1, 1.7, 2.6),
	}
	return append(m, nails(0.3, -1.35, -2.2, -1.35, -1.2)...)
}

func holdDownPair() []sheet.Mark {
	m := []sheet.Mark{
		solid(-1.7, -2.95, -0.7, -2.95, -0.7, -1.9, 1.7, -1.4, 1.7, -0.7, -1.7, -0.7),
		solid(-1.7, 2.95, -0.7, 2.95, -0.7, 1.9, 1.7, 1.4, 1.7, 0.7, -1.7, 0.7),
		bar(0.35, -0.8, 0.95, 0.8),
	}
	return append(m, nails(0.28, -1.2, -2.3, -1.2, 2.3)...)
}

func postBase() []sheet.Mark {
	return []sheet.Mark{
		solid(-2.1, -2.4, -1.3, -2.4, -1.3, 0, 1.3, 0, 1.3, -2.4, 2.1, -2.4, 2.1, 0.8, -2.1, 0.8),
		bar(-0.45, 0.7, 0.45, 1.9), bar(-1.5, 1.8, 1.5, 2.4),
	}
}

func postCap() []sheet.Mark {
	return []sheet.Mark{
		solid(-2.6, -2.5, -1.8, -2.5, -1.8, -0.5, 1.8, -0.5, 1.8, -2.5, 2.6, -2.5, 2.6, 0.3, -2.6, 0.3),
		bar(-1.3, 0.2, -0.6, 2.5), bar(0.6, 0.2, 1.3, 2.5),
	}
}

func anchor() []sheet.Mark {
	return []sheet.Mark{
		solid(-0.85, -2.9, -0.05, -2.9, -0.05, 2, 0.95, 2, 0.95, 0.9, 1.75, 0.9, 1.75, 2.8, -0.85, 2.8),
		bar(-1.9, -1.5, 1, -0.9), bar(-1.2, -2.4, 0.3, -1.4),
	}
}

func hanger() []sheet.Mark {
	m := []sheet.Mark{solid(-2.8, -2.2, -1, -2.2, -1, 1.2, 1, 1.2, 1, -2.2, 2.8, -2.2, 2.8, -1.1,
		1.9, -1.1, 1.9, 2.1, -1.9, 2.1, -1.9, -1.1, -2.8, -1.1)}
	return append(m, nails(0.28, -2.1, -1.65, 2.1, -1.65)...)
}

func sheathing() []sheet.Mark {
	m := []sheet.Mark{outline(sheet.PenMember, -2.4, -2.4, 2.4, -2.4, 2.4, 2.4, -2.4, 2.4)}
	for _, p := range pts(-1.7, -1.7, 0, -1.7, 1.7, -1.7, 1.7, 0, 1.7, 1.7, 0, 1.7, -1.7, 1.7, -1.7, 0) {
		m = append(m, sheet.Circle{Style: steel, C: p, R: 0.36})
	}
	return m
}

func generic() []sheet.Mark {
	return append([]sheet.Mark{solid(0, -2.4, 2.4, 0, 0, 2.4, -2.4, 0)}, nails(0.6, 0, 0)...)
}
