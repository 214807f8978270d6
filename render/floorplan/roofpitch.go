package floorplan

import (
	"cmp"
	"slices"

	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/render/label"
	"galewright/render/page"
	"galewright/render/sheet"
)

// faceWords sets a face's fall with an arrow downhill, its pitch, and the
// rafters under it, on each sheet where they fit inside it.
func (v *planView) faceWords(f *framing.Face) {
	if f.Roof == nil {
		return
	}
	var c geom.Vec2
	outline := make([]sheet.Pt, len(f.Outline))
	for i, p := range f.Outline {
		c = c.Add(p.Flat().Mul(1 / float64(len(f.Outline))))
		outline[i] = v.pt(p.Flat())
	}
	p := v.pitchWords(f)
	l := v.pitchLabel(v.pt(c), p)
	l.Near = placesInside(outline, v.vp.Rect(v.vp.U0, v.vp.U1, v.vp.V0, v.vp.V1), l.W, l.H, v.pt(c))
	if !v.sees(c) && len(l.Near) > 0 {
		l.Anchors = l.Near[:1]
	}
	if len(l.Near) > 0 || v.sees(c) {
		v.later(l, func(r sheet.Rect) { v.setPitch(r, p) })
	}
}

// placesInside lists the centers of boxes of w by h that lie in an outline
// and on a part of the sheet, on a raster, the nearest to a point first.
func placesInside(outline []sheet.Pt, on sheet.Rect, w, h sheet.MM, to sheet.Pt) (out []sheet.Pt) {
	const step, most = 4, 80
	b := page.Bounds(outline)
	for y := b.Y + h/2; y <= b.Y+b.H-h/2; y += step {
		for x := b.X + w/2; x <= b.X+b.W-w/2; x += step {
			r := sheet.Rect{X: x - w/2, Y: y - h/2, W: w, H: h}
			if on.Holds(r, 0) && holdsRect(outline, r) {
				out = append(out, sheet.Pt{X: x, Y: y})
			}
		}
	}
	if r := (sheet.Rect{X: to.X - w/2, Y: to.Y - h/2, W: w, H: h}); on.Holds(r, 0) && holdsRect(outline, r) {
		out = append(out, to)
	}
	slices.SortStableFunc(out, func(p, q sheet.Pt) int {
		return cmp.Compare(distance(p, []sheet.Pt{to}), distance(q, []sheet.Pt{to}))
	})
	return out[:min(len(out), most)]
}

// holdsRect tells whether a rectangle lies in an outline: its middle does,
// and no edge runs through it.
func holdsRect(outline []sheet.Pt, r sheet.Rect) bool {
	in, c := false, r.Center()
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if label.Crosses(a, b, r) {
			return false
		}
		if (a.Y > c.Y) != (b.Y > c.Y) && c.X < a.X+(c.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

// fall is the lettering of a face: its pitch, and lines on the rafters.
type fall struct {
	words string
	under []string
	d     sheet.Pt // downhill on paper
}

// across tells whether the fall runs across the sheet.
func (p fall) across() bool { return p.d.X*p.d.X > p.d.Y*p.d.Y }

func (v *planView) pitchWords(f *framing.Face) fall {
	rise := trimFloat(f.Roof.Pitch)
	p := fall{words: rise + " in 12", d: v.dir(f.Slope)}
	if v.Metric() {
		p.words = rise + " : 12"
	}
	what, at := f.Roof.Rafters.Text+" rafters", "at "+v.Spacing(f.Roof.Spacing)+" o.c."
	if f.Roof.Trusses {
		what = "trusses"
	}
	p.under = []string{what, at} // narrow, for the ends of hips
	return p
}

// fallArrow is the length of the arrow downhill, and beside what its head
// takes, mm.
const fallArrow, fallHead sheet.MM = 13, 4

// pitchLabel measures the lettering of a face whose middle is at a point: the
// arrow stands below the words where it runs across, beside them where it
// runs up or down.
func (v *planView) pitchLabel(at sheet.Pt, p fall) label.Label {
	w, h := v.fallWords(p)
	l := label.Label{Name: "pitch " + p.words, W: w + fallHead, H: max(h, fallArrow+1), Anchors: []sheet.Pt{at}, Reach: 110}
	if p.across() {
		l.W, l.H = max(w, fallArrow+2), h+fallHead
	}
	return l
}

// fallWords returns the size of a face's words.
func (v *planView) fallWords(p fall) (w, h sheet.MM) {
	z := v.Size
	w = page.TextWidth(p.words, z.Dim, true)
	for _, u := range p.under {
		w = max(w, page.TextWidth(u, z.Note, false))
	}
	return w + 1.5, z.Dim*1.6 + sheet.MM(len(p.under))*z.Note*1.6 + 1
}

// setPitch draws what pitchLabel laid out.
func (v *planView) setPitch(r sheet.Rect, p fall) {
	z := v.Size
	w, h := v.fallWords(p)
	v.Rect(sheet.Style{Fill: sheet.White, Layer: sheet.LayerLabel}, r)
	x, y, m := r.X+w/2, r.Y+(r.H-h)/2, sheet.Pt{X: r.X + r.W - fallHead/2, Y: r.Y + r.H/2}
	if p.across() {
		x, y, m = r.X+r.W/2, r.Y, sheet.Pt{X: r.X + r.W/2, Y: r.Y + r.H - fallHead/2}
	}
	y += z.Dim * 1.3
	v.Text(page.Lettered{S: p.words, Cap: z.Dim, At: sheet.Pt{X: x, Y: y}, Anchor: sheet.Middle, Bold: true, Role: "label"})
	for _, u := range p.under {
		y += z.Note * 1.6
		v.Text(page.Lettered{S: u, At: sheet.Pt{X: x, Y: y}, Anchor: sheet.Middle, Role: "label"})
	}
	v.Box("label", "pitch "+p.words, r)
	a, b := m.Add(stretched(p.d, -fallArrow/2)), m.Add(stretched(p.d, fallArrow/2))
	v.Line(sheet.PenMember, sheet.LayerNote, a, b)
	v.arrowHead(b, p.d)
}
