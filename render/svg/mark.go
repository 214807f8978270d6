package svg

import (
	"fmt"
	"strings"

	"galewright/render/sheet"
)

// class returns the class attribute of a style.
func class(s sheet.Style) string {
	return `class="` + penClass[s.Pen] + " " + fillClass[s.Fill] + `"`
}

// mark writes one mark.
func (w *writer) mark(m sheet.Mark) {
	switch m := m.(type) {
	case sheet.Line:
		w.svg.Line(w.num(float64(m.A.X)), w.num(float64(m.A.Y)), w.num(float64(m.B.X)), w.num(float64(m.B.Y)), class(m.Style))
	case sheet.Polyline:
		w.polyline(m)
	case sheet.Path:
		w.svg.Path(w.path(m.Segs), class(m.Style))
	case sheet.Circle:
		w.svg.Circle(w.num(float64(m.C.X)), w.num(float64(m.C.Y)), w.num(float64(m.R)), class(m.Style))
	case sheet.Text:
		w.text(m)
	case sheet.Use:
		w.use(m)
	case sheet.Window:
		w.window(m)
	default:
		w.fail(fmt.Errorf("%T is no mark that can be written", m))
	}
}

func (w *writer) polyline(m sheet.Polyline) {
	if len(m.Pts) < 2 {
		w.fail(fmt.Errorf("a polyline has %d points", len(m.Pts)))
		return
	}
	x, y := w.points(m.Pts)
	if m.Closed {
		w.svg.Polygon(x, y, class(m.Style))
		return
	}
	w.svg.Polyline(x, y, class(m.Style))
}

func (w *writer) path(segs []sheet.Seg) string {
	var b strings.Builder
	for _, s := range segs {
		if !strings.ContainsRune("MLCZ", s.Op) {
			w.fail(fmt.Errorf("unknown step %q in a path", s.Op))
			continue
		}
		b.WriteRune(s.Op)
		for i, p := range s.Points() {
			if i > 0 {
				b.WriteByte(' ')
			}
			b.WriteString(number(w.num(float64(p.X))) + "," + number(w.num(float64(p.Y))))
		}
	}
	return b.String()
}

func (w *writer) text(m sheet.Text) {
	c := "t " + fillClass[m.Fill]
	if m.Fill == sheet.NoFill {
		c = "t"
	}
	if m.Bold {
		c += " b"
	}
	attrs := []string{attr("class", c+anchors[m.Anchor]), attr("font-size", number(w.num(float64(m.Size))))}
	if m.Role != "" {
		attrs = append(attrs, attr("data-role", m.Role))
	}
	x, y := w.num(float64(m.At.X)), w.num(float64(m.At.Y))
	if a := w.num(m.Angle); a != 0 {
		attrs = append(attrs, attr("transform", "rotate("+short(-a)+" "+number(x)+" "+number(y)+")"))
	}
	if m.Link != "" {
		w.svg.Link(escape(w.href(m.Link)), m.Link)
		defer w.svg.LinkEnd()
	}
	w.svg.Text(x, y, m.S, attrs...)
}

func (w *writer) href(number string) string {
	if w.o.Href != nil {
		return w.o.Href(number)
	}
	return number + ".svg"
}

func (w *writer) use(m sheet.Use) {
	if _, ok := w.symbols[m.Symbol]; !ok || !sheet.GoodID(m.Symbol) {
		w.fail(fmt.Errorf("symbol %q is not in the set", m.Symbol))
		return
	}
	x, y := w.num(float64(m.At.X)), w.num(float64(m.At.Y))
	a, k := w.num(m.Angle), w.num(m.Scale)
	if k <= 0 {
		w.fail(fmt.Errorf("symbol %q has scale %v", m.Symbol, m.Scale))
	}
	if a == 0 && k == 1 && !m.Mirror {
		w.svg.Use(x, y, "#"+m.Symbol)
		return
	}
	t := "translate(" + number(x) + " " + number(y) + ")"
	if a != 0 {
		t += " rotate(" + short(-a) + ")"
	}
	switch {
	case m.Mirror:
		t += " scale(" + short(-k) + " " + short(k) + ")"
	case k != 1:
		t += " scale(" + short(k) + ")"
	}
	w.svg.Use(0, 0, "#"+m.Symbol, attr("transform", t))
}

// window writes marks moved and clipped. Its clip path stands beside it, with
// an id counted on this sheet.
func (w *writer) window(m sheet.Window) {
	w.windows++
	id := fmt.Sprintf("window-%d", w.windows)
	x, y := w.num(float64(m.Rect.X)), w.num(float64(m.Rect.Y))
	w.svg.ClipPath(attr("id", id))
	w.svg.Rect(x, y, w.num(float64(m.Rect.W)), w.num(float64(m.Rect.H)))
	w.svg.ClipEnd()
	w.svg.Group(attr("clip-path", "url(#"+id+")"))
	w.svg.Group(attr("transform", "translate("+number(w.num(float64(m.Shift.X)))+" "+number(w.num(float64(m.Shift.Y)))+")"))
	w.marks(m.Marks)
	w.svg.Gend()
	w.svg.Gend()
}
