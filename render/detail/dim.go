package detail

import (
	"math"
	"slices"

	"galewright/plan/geom"
	"galewright/render/page"
	"galewright/render/sheet"
)

// stopsOf sorts places and drops those that a tape cannot tell apart.
func stopsOf(xs []float64) []float64 {
	xs = slices.Clone(xs)
	slices.Sort(xs)
	return slices.CompactFunc(xs, func(a, b float64) bool { return math.Abs(b-a) < 1.0/16 })
}

// dimV dimensions heights at the left of everything drawn so far.
func (d *draft) dimV(stops ...float64) {
	stops = stopsOf(stops)
	if len(stops) < 2 {
		return
	}
	x, h := d.extent().X-5, d.Size.Note
	var mids, sizes []sheet.MM
	for i := len(stops) - 1; i > 0; i-- { // paper y runs down
		mids = append(mids, (d.at(0, stops[i]).Y+d.at(0, stops[i-1]).Y)/2)
		sizes = append(sizes, h*1.75)
	}
	for _, v := range stops {
		y := d.at(0, v).Y
		d.Line(sheet.PenDim, sheet.LayerDimension, sheet.Pt{X: x + 3.5, Y: y}, sheet.Pt{X: x - 1, Y: y})
		d.Tick(sheet.Pt{X: x, Y: y})
	}
	d.Line(sheet.PenDim, sheet.LayerDimension, sheet.Pt{X: x, Y: d.at(0, stops[0]).Y}, sheet.Pt{X: x, Y: d.at(0, stops[len(stops)-1]).Y})
	for i, y := range page.Spread(mids, sizes) {
		n := len(stops) - 1 - i
		tx := x - 1.8
		if moved := y - mids[i]; moved > h*0.4 || moved < -h*0.4 {
			tx = x - 5
			d.Line(sheet.PenDim, sheet.LayerDimension, sheet.Pt{X: x, Y: mids[i]}, sheet.Pt{X: tx + 0.4, Y: y})
		}
		d.BoxedText("dimension", page.Lettered{S: d.Length(stops[n] - stops[n-1]), At: sheet.Pt{X: tx, Y: y + h/2}, Anchor: sheet.Right, Role: "dimension"})
	}
}

// dimU dimensions widths of the present view below y on paper.
func (d *draft) dimU(below sheet.MM, stops ...float64) {
	stops = stopsOf(stops)
	if len(stops) < 2 {
		return
	}
	y, h := below+5, d.Size.Note
	var mids, sizes []sheet.MM
	var words []string
	for i := 1; i < len(stops); i++ {
		s := d.Length(stops[i] - stops[i-1])
		mids = append(mids, (d.at(stops[i], 0).X+d.at(stops[i-1], 0).X)/2)
		sizes = append(sizes, page.TextWidth(s, h, false)+2)
		words = append(words, s)
	}
	for _, u := range stops {
		x := d.at(u, 0).X
		d.Line(sheet.PenDim, sheet.LayerDimension, sheet.Pt{X: x, Y: y - 3.5}, sheet.Pt{X: x, Y: y + 1})
		d.Tick(sheet.Pt{X: x, Y: y})
	}
	d.Line(sheet.PenDim, sheet.LayerDimension, sheet.Pt{X: d.at(stops[0], 0).X, Y: y}, sheet.Pt{X: d.at(stops[len(stops)-1], 0).X, Y: y})
	for i, x := range page.Spread(mids, sizes) {
		ty := y + 2 + h
		if moved := x - mids[i]; moved > sizes[i]*0.3 || moved < -sizes[i]*0.3 {
			ty += 2
			d.Line(sheet.PenDim, sheet.LayerDimension, sheet.Pt{X: mids[i], Y: y}, sheet.Pt{X: x, Y: ty - h - 0.4})
		}
		d.BoxedText("dimension", page.Lettered{S: words[i], At: sheet.Pt{X: x, Y: ty}, Anchor: sheet.Middle, Role: "dimension"})
	}
}

// dimAlong dimensions the slanting length from a to b of the present view,
// off by off mm to the left of the way from a to b.
func (d *draft) dimAlong(a, b geom.Vec2, off sheet.MM) {
	dir := b.Sub(a).Unit()
	n := sheet.Pt{X: sheet.MM(-dir.Y) * off, Y: sheet.MM(-dir.X) * off}
	p, q := d.at(a.X, a.Y).Add(n), d.at(b.X, b.Y).Add(n)
	d.Line(sheet.PenDim, sheet.LayerDimension, p, q)
	d.Tick(p)
	d.Tick(q)
	deg := page.AngleOf(dir)
	s := d.Length(b.Sub(a).Len())
	gap := float64(1.2)
	m := sheet.Pt{X: (p.X+q.X)/2 + sheet.MM(-dir.Y*gap), Y: (p.Y+q.Y)/2 + sheet.MM(-dir.X*gap)}
	d.BoxedText("dimension", page.Lettered{S: s, At: m, Anchor: sheet.Middle, Angle: deg, Role: "dimension"})
}

// finish sets the heads over the views and the notes at their right.
func (d *draft) finish() {
	d.setHeads()
	d.setNotes()
}

func (d *draft) setHeads() {
	if len(d.heads) == 0 {
		return
	}
	y := d.extent().Y - 2.5
	var mids, sizes []sheet.MM
	for _, h := range d.heads {
		mids, sizes = append(mids, h.x), append(sizes, page.TextWidth(h.s, d.Size.Note, false)+3)
	}
	for i, x := range page.Spread(mids, sizes) {
		d.BoxedText("label", page.Lettered{S: d.heads[i].s, At: sheet.Pt{X: x, Y: y}, Anchor: sheet.Middle, Role: "note"})
	}
}

func (d *draft) setNotes() {
	slices.SortStableFunc(d.notes, func(a, b callout) int {
		switch {
		case a.at.Y < b.at.Y-0.5:
			return -1
		case a.at.Y > b.at.Y+0.5:
			return 1
		}
		return 0
	})
	r := d.extent()
	x, h := r.X+r.W+7, d.Size.Note
	var mids, sizes []sheet.MM
	for _, n := range d.notes {
		mids, sizes = append(mids, n.at.Y), append(sizes, sheet.MM(len(n.lines))*h*1.5+h*0.6)
	}
	for i, y := range page.Spread(mids, sizes) {
		n := d.notes[i]
		d.arrow(n.at, sheet.Pt{X: x - 3, Y: y})
		d.Polyline(sheet.PenDim, sheet.LayerLabel, n.at, sheet.Pt{X: x - 3, Y: y}, sheet.Pt{X: x - 0.8, Y: y})
		top := y - (sizes[i]-h*0.6)/2
		for j, s := range n.lines {
			d.BoxedText("label", page.Lettered{S: s, At: sheet.Pt{X: x, Y: top + h*1.25 + sheet.MM(j)*h*1.5}, Role: "label"})
		}
	}
}

// arrow draws the head of a leader that comes from a point to at.
func (d *draft) arrow(at, from sheet.Pt) {
	v := geom.Vec2{X: float64(from.X - at.X), Y: float64(from.Y - at.Y)}.Unit()
	if v.Len() == 0 {
		return
	}
	w := v.Left().Mul(0.45)
	foot := v.Mul(1.9)
	to := func(q geom.Vec2) sheet.Pt { return at.Add(sheet.Pt{X: sheet.MM(q.X), Y: sheet.MM(q.Y)}) }
	d.Polygon(sheet.Style{Fill: sheet.Black, Layer: sheet.LayerLabel}, at, to(foot.Add(w)), to(foot.Sub(w)))
}
