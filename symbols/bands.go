package symbols

import "galewright/render/sheet"

// The bands: everything that is a strip of steel.

func strap() []sheet.Mark {
	return append([]sheet.Mark{bar(-0.75, -2.9, 0.75, 2.9)},
		nails(0.33, 0, -2.3, 0, -1.3, 0, 1.3, 0, 2.3)...)
}

func longStrap() []sheet.Mark {
	m := []sheet.Mark{
		bar(-0.75, -2.95, 0.75, -0.9), bar(-0.75, 0.9, 0.75, 2.95),
		bar(-2.3, -1.25, 2.3, -0.8), bar(-2.3, 0.8, 2.3, 1.25),
		bar(-0.3, -0.9, 0.3, 0.9),
	}
	return append(m, nails(0.36, 0, -2.1, 0, 2.1)...)
}

func wrap() []sheet.Mark {
	m := []sheet.Mark{
		outline(sheet.PenDim, -0.85, -1.5, 0.85, -1.5, 0.85, -0.4, -0.85, -0.4),
		solid(-2.1, -2.7, 2.1, -2.7, 2.1, 0.6, 0.95, 0.6, 0.95, -1.6, -0.95, -1.6, -0.95, 2.7, -2.1, 2.7),
	}
	return append(m, nails(0.3, -1.52, 2.1, -1.52, 1.2, 1.52, 0)...)
}

func ridgeStrap() []sheet.Mark {
	m := []sheet.Mark{
		outline(sheet.PenDim, -0.5, -0.2, 0.5, -0.2, 0.5, 2.2, -0.5, 2.2),
		solid(0, -1.9, 2.9, 0.4, 2.9, 1.8, 0, -0.5, -2.9, 1.8, -2.9, 0.4),
	}
	return append(m, nails(0.3, -2.3, 0.65, -1.4, -0.07, 1.4, -0.07, 2.3, 0.65)...)
}

func coil() []sheet.Mark {
	ring := sheet.Style{Pen: sheet.PenHardware, Fill: sheet.White, Layer: sheet.LayerHardware}
	return []sheet.Mark{
		sheet.Circle{Style: ring, C: sheet.Pt{X: -0.6}, R: 1.9},
		sheet.Circle{Style: steel, C: sheet.Pt{X: -0.6}, R: 0.8},
		bar(-0.6, 1.55, 2.9, 2.25),
	}
}

func collector() []sheet.Mark {
	return []sheet.Mark{
		solid(-3, 0, -1.3, -1.5, -1.3, -0.55, -0.3, -0.55, -0.3, 0.55, -1.3, 0.55, -1.3, 1.5),
		solid(3, 0, 1.3, -1.5, 1.3, -0.55, 0.3, -0.55, 0.3, 0.55, 1.3, 0.55, 1.3, 1.5),
	}
}
