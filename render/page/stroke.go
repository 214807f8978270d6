package page

import (
	"math"

	"galewright/plan/geom"
	"galewright/render/sheet"
)

// shortest is the shortest line of a picture that is drawn, mm.
const shortest sheet.MM = 0.15

// Stroke adds a line of a picture to a path, unless it is too short to be seen.
func Stroke(to *sheet.Path, a, b sheet.Pt) {
	if math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y)) >= float64(shortest) {
		to.Segs = append(to.Segs, sheet.Seg{Op: 'M', P: [3]sheet.Pt{a}}, sheet.Seg{Op: 'L', P: [3]sheet.Pt{b}})
	}
}

// Strokes draws paths in their order, those without a line left out.
func (p *Page) Strokes(paths ...sheet.Path) {
	for _, path := range paths {
		if len(path.Segs) > 0 {
			p.Add(path)
		}
	}
}

// ArrowHead draws the head of an arrow at a place, coming from another.
func (p *Page) ArrowHead(at, from sheet.Pt) {
	v := geom.Vec2{X: float64(from.X - at.X), Y: float64(from.Y - at.Y)}.Unit()
	if v.Len() == 0 {
		return
	}
	w := v.Left().Mul(0.45)
	foot := v.Mul(1.9)
	to := func(q geom.Vec2) sheet.Pt { return at.Add(sheet.Pt{X: sheet.MM(q.X), Y: sheet.MM(q.Y)}) }
	p.Polygon(sheet.Style{Fill: sheet.Black, Layer: sheet.LayerLabel}, at, to(foot.Add(w)), to(foot.Sub(w)))
}

// BreakLine draws the thin line, with a zigzag where it is long enough, at which a member is
// broken off.
func (p *Page) BreakLine(a, b sheet.Pt) {
	v := sheet.Pt{X: b.X - a.X, Y: b.Y - a.Y}
	long := sheet.MM(math.Hypot(float64(v.X), float64(v.Y)))
	if long < 4 {
		p.Line(sheet.PenDim, sheet.LayerMember, a, b)
		return
	}
	u := sheet.Pt{X: v.X / long, Y: v.Y / long}
	on := func(along, off sheet.MM) sheet.Pt {
		return sheet.Pt{X: a.X + u.X*along - u.Y*off, Y: a.Y + u.Y*along + u.X*off}
	}
	m := long / 2
	p.Polyline(sheet.PenDim, sheet.LayerMember, a, on(m-0.9, 0), on(m-0.3, -1.1), on(m+0.3, 1.1), on(m+0.9, 0), b)
}

// Stations dimensions places across a picture, each with its figure turned below a line at
// height y, the lowest first or last: ticks at xs, texts beside them. It returns how far down
// the figures go.
func (p *Page) Stations(y sheet.MM, xs []sheet.MM, texts []string) (low sheet.MM) {
	z := p.Size.Dim
	var sizes []sheet.MM
	for _, x := range xs {
		p.Line(sheet.PenDim, sheet.LayerDimension, sheet.Pt{X: x, Y: y - 5}, sheet.Pt{X: x, Y: y + 1})
		p.Tick(sheet.Pt{X: x, Y: y})
		sizes = append(sizes, z*1.6)
	}
	p.Line(sheet.PenDim, sheet.LayerDimension, sheet.Pt{X: xs[0], Y: y}, sheet.Pt{X: xs[len(xs)-1], Y: y})
	low = y
	for i, x := range Spread(xs, sizes) {
		w := TextWidth(texts[i], z, false)
		p.Line(sheet.PenDim, sheet.LayerDimension, sheet.Pt{X: xs[i], Y: y + 1}, sheet.Pt{X: x, Y: y + 3})
		p.BoxedText("dimension", Lettered{S: texts[i], Cap: z, At: sheet.Pt{X: x + z/2, Y: y + 3.6 + w}, Angle: 90, Role: "dimension"})
		low = max(low, y+3.6+w)
	}
	return low
}

// Heights dimensions what is level, the highest first: from x, beside a picture, a line from
// each of ys to its text. It returns the boxes of those.
func (p *Page) Heights(x sheet.MM, ys []sheet.MM, texts []string) (out []sheet.Rect) {
	var sizes []sheet.MM
	for range ys {
		sizes = append(sizes, p.Size.Dim*1.6)
	}
	for i, y := range Spread(ys, sizes) {
		p.Polyline(sheet.PenDim, sheet.LayerDimension, sheet.Pt{X: x, Y: ys[i]}, sheet.Pt{X: x + 3, Y: ys[i]}, sheet.Pt{X: x + 6, Y: y})
		out = append(out, p.BoxedText("dimension", Lettered{S: texts[i], Cap: p.Size.Dim, At: sheet.Pt{X: x + 7, Y: y + p.Size.Dim/2}, Role: "dimension"}))
	}
	return out
}
