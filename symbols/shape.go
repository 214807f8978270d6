package symbols

import (
	"math"

	"galewright/render/sheet"
)

// steel is solid black without an outline.
var steel = sheet.Style{Fill: sheet.Black, Layer: sheet.LayerHardware}

// pts makes points of x, y pairs, mm.
func pts(xy ...float64) []sheet.Pt {
	out := make([]sheet.Pt, len(xy)/2)
	for i := range out {
		out[i] = sheet.Pt{X: sheet.MM(xy[2*i]), Y: sheet.MM(xy[2*i+1])}
	}
	return out
}

// solid is a steel shape of x, y pairs.
func solid(xy ...float64) sheet.Mark {
	return sheet.Polyline{Style: steel, Pts: pts(xy...), Closed: true}
}

// bar is a steel rectangle between two corners.
func bar(x0, y0, x1, y1 float64) sheet.Mark {
	return solid(x0, y0, x1, y0, x1, y1, x0, y1)
}

// nails are white dots at x, y pairs.
func nails(r float64, xy ...float64) (out []sheet.Mark) {
	for _, p := range pts(xy...) {
		out = append(out, sheet.Circle{Style: sheet.Style{Fill: sheet.White, Layer: sheet.LayerHardware}, C: p, R: sheet.MM(r)})
	}
	return out
}

// outline is a closed thin outline, white inside, of x, y pairs.
func outline(pen sheet.Pen, xy ...float64) sheet.Mark {
	return sheet.Polyline{Style: sheet.Style{Pen: pen, Fill: sheet.White, Layer: sheet.LayerHardware}, Pts: pts(xy...), Closed: true}
}

// stroke is a straight line.
func stroke(pen sheet.Pen, x0, y0, x1, y1 float64) sheet.Mark {
	p := pts(x0, y0, x1, y1)
	return sheet.Line{Style: sheet.Style{Pen: pen, Layer: sheet.LayerHardware}, A: p[0], B: p[1]}
}

// Bounds returns the extent of marks, pens included, mm. Texts and uses of
// other symbols, which no symbol holds, are left out.
func Bounds(marks []sheet.Mark) sheet.Rect {
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	add := func(p sheet.Pt, r sheet.MM) {
		x0, y0 = min(x0, float64(p.X-r)), min(y0, float64(p.Y-r))
		x1, y1 = max(x1, float64(p.X+r)), max(y1, float64(p.Y+r))
	}
	for _, m := range marks {
		switch m := m.(type) {
		case sheet.Line:
			add(m.A, m.Pen.Width()/2)
			add(m.B, m.Pen.Width()/2)
		case sheet.Polyline:
			for _, p := range m.Pts {
				add(p, m.Pen.Width()/2)
			}
		case sheet.Circle:
			add(m.C, m.R+m.Pen.Width()/2)
		}
	}
	if math.IsInf(x0, 1) {
		return sheet.Rect{}
	}
	return sheet.Rect{X: sheet.MM(x0), Y: sheet.MM(y0), W: sheet.MM(x1 - x0), H: sheet.MM(y1 - y0)}
}
