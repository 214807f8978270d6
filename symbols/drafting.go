package symbols

import "galewright/render/sheet"

// The drafting marks: not hardware, common drafting practice.

func north() []sheet.Mark {
	n := sheet.Polyline{Style: sheet.Style{Pen: sheet.PenMember, Layer: sheet.LayerHardware}, Pts: pts(-0.55, -1.45, -0.55, -2.75, 0.55, -1.45, 0.55, -2.75)}
	return []sheet.Mark{
		n,
		outline(sheet.PenDim, 0, -1.05, 1.3, 2.8, 0, 2.1, -1.3, 2.8),
		solid(0, -1.05, 0, 2.1, -1.3, 2.8),
	}
}

func needle() []sheet.Mark {
	return []sheet.Mark{
		outline(sheet.PenDim, 0, -2.9, 1.6, 2.8, 0, 1.8, -1.6, 2.8),
		solid(0, -2.9, 0, 1.8, -1.6, 2.8),
	}
}

func revision() []sheet.Mark {
	return []sheet.Mark{outline(sheet.PenMember, 0, -2.9, 2.8, 2, -2.8, 2)}
}

func viewArrow() []sheet.Mark {
	return []sheet.Mark{solid(0, -2.4, 1.5, 0.9, -1.5, 0.9), bar(-2.2, 1.5, 2.2, 1.85)}
}

func splice() []sheet.Mark {
	return []sheet.Mark{
		sheet.Polyline{Style: sheet.Style{Fill: sheet.White, Layer: sheet.LayerHardware}, Pts: pts(-1.1, 1.9, 0.3, -1.9, 1.1, -1.9, -0.3, 1.9), Closed: true},
		stroke(sheet.PenMember, -1.1, 1.9, 0.3, -1.9), stroke(sheet.PenMember, -0.3, 1.9, 1.1, -1.9),
	}
}

func hole() []sheet.Mark {
	ring := sheet.Style{Pen: sheet.PenMember, Fill: sheet.White, Layer: sheet.LayerHardware}
	return []sheet.Mark{
		sheet.Circle{Style: ring, R: 1.5},
		stroke(sheet.PenDim, -2.2, 0, 2.2, 0), stroke(sheet.PenDim, 0, -2.2, 0, 2.2),
	}
}
