package pdf

import (
	"math"

	"galewright/render/sheet"
)

// placing moves the marks of a symbol to where it is used.
type placing struct {
	at       sheet.Pt
	sin, cos float64
	deg, k   float64
	mirror   bool // left for right, before all else
}

var identity = placing{cos: 1, k: 1}

func (p placing) pt(q sheet.Pt) sheet.Pt {
	if p == identity {
		return q
	}
	if p.mirror {
		q.X = -q.X
	}
	return sheet.Turn(q, p.sin, p.cos, p.k).Add(p.at)
}

// num returns x as the library takes it and notes when it is no number.
func (w *writer) num(x sheet.MM) float64 {
	if v := float64(x); !math.IsNaN(v) && math.Abs(v) < 1e6 {
		return v
	}
	w.fail("%v is no number to draw with", float64(x))
	return 0
}

func (w *writer) xy(q sheet.Pt) (x, y float64) { return w.num(q.X), w.num(q.Y) }

// mark writes one mark; at is the identity except inside a symbol.
func (w *writer) mark(m sheet.Mark, at placing) {
	switch m := m.(type) {
	case sheet.Line:
		w.chain(m.Style, []sheet.Pt{m.A, m.B}, false, at)
	case sheet.Polyline:
		if len(m.Pts) < 2 {
			w.fail("a polyline has %d points", len(m.Pts))
			return
		}
		w.chain(m.Style, m.Pts, m.Closed, at)
	case sheet.Path:
		w.path(m, at)
	case sheet.Circle:
		if how := w.style(m.Style, at.k); how != "" {
			x, y := w.xy(at.pt(m.C))
			w.pdf.Circle(x, y, w.num(m.R)*at.k, how)
		}
	case sheet.Text:
		w.text(m, at)
	case sheet.Use:
		w.use(m, at)
	case sheet.Window:
		w.window(m)
	default:
		w.fail("%T is no mark that can be written", m)
	}
}

func (w *writer) chain(s sheet.Style, pts []sheet.Pt, closed bool, at placing) {
	how := w.style(s, at.k)
	if how == "" {
		return
	}
	for i, p := range pts {
		x, y := w.xy(at.pt(p))
		if i == 0 {
			w.pdf.MoveTo(x, y)
		} else {
			w.pdf.LineTo(x, y)
		}
	}
	if closed {
		w.pdf.ClosePath()
	}
	w.pdf.DrawPath(how)
}

func (w *writer) path(m sheet.Path, at placing) {
	how := w.style(m.Style, at.k)
	if how == "" {
		return
	}
	for _, s := range m.Segs {
		switch s.Op {
		case 'M':
			w.pdf.MoveTo(w.xy(at.pt(s.P[0])))
		case 'L':
			w.pdf.LineTo(w.xy(at.pt(s.P[0])))
		case 'C':
			x0, y0 := w.xy(at.pt(s.P[0]))
			x1, y1 := w.xy(at.pt(s.P[1]))
			x, y := w.xy(at.pt(s.P[2]))
			w.pdf.CurveBezierCubicTo(x0, y0, x1, y1, x, y)
		case 'Z':
			w.pdf.ClosePath()
		default:
			w.fail("unknown step %q in a path", s.Op)
		}
	}
	w.pdf.DrawPath(how)
}

// grays are the fills as levels of gray, 255 = paper.
var grays = map[sheet.Fill]int{sheet.White: 255, sheet.Black: 0, sheet.Pale: 217, sheet.Mid: 153}

// style sets pen and fill and returns how the library draws the mark: "D", "F",
// "FD", or "" when there is nothing to draw. Lines of a symbol grow with it.
func (w *writer) style(s sheet.Style, k float64) string {
	if s.Pen != sheet.NoPen && (s.Pen != w.pen.Pen || k != w.scale) {
		w.pdf.SetLineWidth(float64(s.Pen.Width()) * k)
		dash := make([]float64, 0, 4)
		for _, d := range s.Pen.Dash() {
			dash = append(dash, float64(d)*k)
		}
		w.pdf.SetDashPattern(dash, 0)
		w.pen.Pen, w.scale = s.Pen, k
	}
	if s.Fill != sheet.NoFill && s.Fill != w.pen.Fill {
		g := grays[s.Fill]
		w.pdf.SetFillColor(g, g, g)
		w.pen.Fill = s.Fill
	}
	switch {
	case s.Pen != sheet.NoPen && s.Fill != sheet.NoFill:
		return "FD"
	case s.Pen != sheet.NoPen:
		return "D"
	case s.Fill != sheet.NoFill:
		return "F"
	}
	return ""
}

func (w *writer) text(m sheet.Text, at placing) {
	s := sheet.Latin(m.S)
	if s == "" {
		return
	}
	face := ""
	if m.Bold {
		face = "B"
	}
	size := w.num(m.Size) * at.k
	w.pdf.SetFont("Helvetica", face, size*72/25.4)
	gray := grays[m.Fill] // no fill: black
	w.pdf.SetTextColor(gray, gray, gray)
	x, y := w.xy(at.pt(m.At))
	left := x
	switch wd := float64(sheet.TextWidth(s, sheet.MM(size), m.Bold)); m.Anchor {
	case sheet.Middle:
		left -= wd / 2
	case sheet.Right:
		left -= wd
	}
	if a := w.num(sheet.MM(m.Angle + at.deg)); a == 0 {
		w.pdf.Text(left, y, w.latin(s))
	} else {
		w.pdf.TransformBegin()
		w.pdf.TransformRotate(a, x, y)
		w.pdf.Text(left, y, w.latin(s))
		w.pdf.TransformEnd()
	}
	if id, ok := w.links[m.Link]; ok && m.Link != "" {
		b := m.Box().Inset(-0.5)
		b.X, b.Y = b.X+at.at.X, b.Y+at.at.Y
		w.pdf.Link(float64(b.X), float64(b.Y), float64(b.W), float64(b.H), id)
	}
}

func (w *writer) use(m sheet.Use, moved placing) {
	s, ok := w.symbols[m.Symbol]
	if !ok || !(m.Scale > 0) {
		w.fail("symbol %q with scale %v cannot be drawn", m.Symbol, m.Scale)
		return
	}
	x, y := w.xy(moved.pt(m.At))
	deg := w.num(sheet.MM(m.Angle))
	sin, cos := math.Sincos(deg * math.Pi / 180)
	at := placing{at: sheet.Pt{X: sheet.MM(x), Y: sheet.MM(y)}, sin: sin, cos: cos, deg: deg, k: w.num(sheet.MM(m.Scale)), mirror: m.Mirror}
	for _, part := range s.Marks {
		if _, nested := part.(sheet.Use); nested {
			w.fail("symbol %q uses another", m.Symbol)
			continue
		}
		w.mark(part, at)
	}
}

// window draws marks moved and clipped.
func (w *writer) window(m sheet.Window) {
	x, y := w.xy(sheet.Pt{X: m.Rect.X, Y: m.Rect.Y})
	w.pdf.ClipRect(x, y, w.num(m.Rect.W), w.num(m.Rect.H), false)
	for _, part := range m.Marks {
		w.mark(part, placing{at: m.Shift, cos: 1, k: 1})
	}
	w.pdf.ClipEnd()
	w.pen, w.scale = sheet.Style{}, 0 // the library's own state went back with the clip
}
