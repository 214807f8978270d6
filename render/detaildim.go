package render

import (
	"math"
	"slices"

	"galewright/plan/geom"
	"galewright/render/sheet"
)

// spread moves intervals of the given sizes, wanted about centers that run
// upward, apart until none overlaps, and as little as possible: touching
// ones are pooled and the pool centered on what its members want.
func spread(centers, sizes []sheet.MM) []sheet.MM {
	type pool struct {
		n         int
		want, len sheet.MM // sum of wanted starts of the pool, its length
	}
	var pools []pool
	for i, c := range centers {
		p := pool{1, c - sizes[i]/2, sizes[i]}
		for len(pools) > 0 {
			q := pools[len(pools)-1]
			if q.want/sheet.MM(q.n)+q.len <= p.want/sheet.MM(p.n) {
				break
			}
			p = pool{q.n + p.n, q.want + p.want - sheet.MM(p.n)*q.len, q.len + p.len}
			pools = pools[:len(pools)-1]
		}
		pools = append(pools, p)
	}
	out := make([]sheet.MM, 0, len(centers))
	for _, p := range pools {
		at := p.want / sheet.MM(p.n)
		for range p.n {
			i := len(out)
			out = append(out, at+sizes[i]/2)
			at += sizes[i]
		}
	}
	return out
}

// tick draws the slash that ends a dimension.
func (p *page) tick(at sheet.Pt) {
	p.line(sheet.PenMember, sheet.LayerDimension, sheet.Pt{X: at.X - 0.8, Y: at.Y + 0.8}, sheet.Pt{X: at.X + 0.8, Y: at.Y - 0.8})
}

// stopsOf sorts places and drops those that a tape cannot tell apart.
func stopsOf(xs []float64) []float64 {
	xs = slices.Clone(xs)
	slices.Sort(xs)
	return slices.CompactFunc(xs, func(a, b float64) bool { return math.Abs(b-a) < 1.0/64 })
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
		d.line(sheet.PenDim, sheet.LayerDimension, sheet.Pt{X: x + 3.5, Y: y}, sheet.Pt{X: x - 1, Y: y})
		d.tick(sheet.Pt{X: x, Y: y})
	}
	d.line(sheet.PenDim, sheet.LayerDimension, sheet.Pt{X: x, Y: d.at(0, stops[0]).Y}, sheet.Pt{X: x, Y: d.at(0, stops[len(stops)-1]).Y})
	for i, y := range spread(mids, sizes) {
		n := len(stops) - 1 - i
		tx := x - 1.8
		if moved := y - mids[i]; moved > h*0.4 || moved < -h*0.4 {
			tx = x - 5
			d.line(sheet.PenDim, sheet.LayerDimension, sheet.Pt{X: x, Y: mids[i]}, sheet.Pt{X: tx + 0.4, Y: y})
		}
		d.boxedText("dimension", lettered{S: d.length(stops[n] - stops[n-1]), At: sheet.Pt{X: tx, Y: y + h/2}, Anchor: sheet.Right, Role: "dimension"})
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
		s := d.length(stops[i] - stops[i-1])
		mids = append(mids, (d.at(stops[i], 0).X+d.at(stops[i-1], 0).X)/2)
		sizes = append(sizes, textWidth(s, h, false)+2)
		words = append(words, s)
	}
	for _, u := range stops {
		x := d.at(u, 0).X
		d.line(sheet.PenDim, sheet.LayerDimension, sheet.Pt{X: x, Y: y - 3.5}, sheet.Pt{X: x, Y: y + 1})
		d.tick(sheet.Pt{X: x, Y: y})
	}
	d.line(sheet.PenDim, sheet.LayerDimension, sheet.Pt{X: d.at(stops[0], 0).X, Y: y}, sheet.Pt{X: d.at(stops[len(stops)-1], 0).X, Y: y})
	for i, x := range spread(mids, sizes) {
		ty := y + 2 + h
		if moved := x - mids[i]; moved > sizes[i]*0.3 || moved < -sizes[i]*0.3 {
			ty += 2
			d.line(sheet.PenDim, sheet.LayerDimension, sheet.Pt{X: mids[i], Y: y}, sheet.Pt{X: x, Y: ty - h - 0.4})
		}
		d.boxedText("dimension", lettered{S: words[i], At: sheet.Pt{X: x, Y: ty}, Anchor: sheet.Middle, Role: "dimension"})
	}
}

// dimAlong dimensions the slanting length from a to b of the present view,
// off by off mm to the left of the way from a to b.
func (d *draft) dimAlong(a, b geom.Vec2, off sheet.MM) {
	dir := b.Sub(a).Unit()
	n := sheet.Pt{X: sheet.MM(-dir.Y) * off, Y: sheet.MM(-dir.X) * off}
	p, q := d.at(a.X, a.Y).Add(n), d.at(b.X, b.Y).Add(n)
	d.line(sheet.PenDim, sheet.LayerDimension, p, q)
	d.tick(p)
	d.tick(q)
	deg := angleOf(dir)
	s := d.length(b.Sub(a).Len())
	gap := float64(1.2)
	m := sheet.Pt{X: (p.X+q.X)/2 + sheet.MM(-dir.Y*gap), Y: (p.Y+q.Y)/2 + sheet.MM(-dir.X*gap)}
	d.boxedText("dimension", lettered{S: s, At: m, Anchor: sheet.Middle, Angle: deg, Role: "dimension"})
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
		mids, sizes = append(mids, h.x), append(sizes, textWidth(h.s, d.Size.Note, false)+3)
	}
	for i, x := range spread(mids, sizes) {
		d.boxedText("label", lettered{S: d.heads[i].s, At: sheet.Pt{X: x, Y: y}, Anchor: sheet.Middle, Role: "note"})
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
	for i, y := range spread(mids, sizes) {
		n := d.notes[i]
		d.circle(sheet.Style{Fill: sheet.Black, Layer: sheet.LayerLabel}, n.at, 0.5)
		d.polyline(sheet.PenDim, sheet.LayerLabel, n.at, sheet.Pt{X: x - 3, Y: y}, sheet.Pt{X: x - 0.8, Y: y})
		top := y - (sizes[i]-h*0.6)/2
		for j, s := range n.lines {
			d.boxedText("label", lettered{S: s, At: sheet.Pt{X: x, Y: top + h*1.25 + sheet.MM(j)*h*1.5}, Role: "label"})
		}
	}
}
