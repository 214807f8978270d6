package elevation

import (
	"strings"

	"galewright/render/page"
	"galewright/render/sheet"
)

// keySize returns the place a part's key map takes beside its title: none
// when the stack is drawn whole.
func (p *part) keySize() (w, h sheet.MM) {
	if !p.broken {
		return 0, 0
	}
	h = 2*p.Size.Note + 6
	w = h * sheet.MM((p.elev.u1-p.elev.u0)/(p.elev.v1-p.elev.v0))
	return max(min(w, 60), 14*sheet.MM(min(max(3, p.lengths), 5))), h
}

// drawKey draws the whole stack small, with the part shown here dark and the
// sheets of the others written in where there is room; r is its place.
func (p *part) drawKey(r sheet.Rect) {
	u := func(x float64) sheet.MM { return r.X + r.W*sheet.MM((x-p.elev.u0)/(p.elev.u1-p.elev.u0)) }
	v := func(y float64) sheet.MM { return r.Y + r.H - r.H*sheet.MM((y-p.elev.v0)/(p.elev.v1-p.elev.v0)) }
	for _, q := range p.siblings {
		z0, z1 := q.share()
		box := sheet.Rect{X: u(q.from), Y: v(z1), W: u(q.to) - u(q.from), H: v(z0) - v(z1)}
		st := sheet.Style{Pen: sheet.PenDim, Fill: sheet.White, Layer: sheet.LayerNote}
		if q == p {
			st.Fill = sheet.Mid
		}
		p.page.Rect(st, box)
		number, text := q.page.Number, q.page.Number
		if page.TextWidth(text, p.Size.Note, false)+1 > box.W {
			text = strings.TrimPrefix(number, "S-")
		}
		if q == p || page.TextWidth(text, p.Size.Note, false)+1 > box.W || p.Size.Note+1 > box.H {
			continue
		}
		c := box.Center()
		p.page.Text(page.Lettered{S: text, At: sheet.Pt{X: c.X, Y: c.Y + p.Size.Note/2}, Anchor: sheet.Middle, Role: "label", Link: number})
	}
	p.page.Box("label", "key map", r)
}

// share returns the heights of the stack that the part shows as its own,
// without what it shows again of its neighbors.
func (p *part) share() (z0, z1 float64) {
	z0, z1 = p.elev.v0, p.elev.v1
	if !p.alone() {
		return z0, z1
	}
	for _, q := range p.siblings {
		if q.level.Floor > p.level.Floor {
			z1 = min(z1, q.level.Floor-q.level.FloorDepth)
		}
		if q.level.Floor < p.level.Floor {
			z0 = max(z0, p.level.Floor-p.level.FloorDepth)
		}
	}
	return z0, z1
}
