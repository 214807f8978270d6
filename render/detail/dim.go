package detail

import (
	"math"
	"slices"

	"galewright/plan/geom"
	"galewright/plan/length"
	"galewright/render/page"
	"galewright/render/sheet"
)

// tell is how near two stops of a chain may stand: what a tape tells apart, in,
// and what two lines take on paper, mm.
const (
	tellTape  = 1.0 / 16
	tellPaper = 0.55
)

// stopsOf sorts places and drops those that a tape or the paper cannot tell
// apart from another. The first two are the ends of the steel itself and stay: a
// figure from the steel's edge on one side to the wood's on the other would be that
// of neither.
func stopsOf(xs []float64, paper func(float64) sheet.MM) (out []float64) {
	near := func(a, b float64) bool {
		return math.Abs(b-a) < tellTape-geom.Eps || math.Abs(float64(paper(b)-paper(a))) < tellPaper
	}
	add := func(x float64) {
		if !slices.ContainsFunc(out, func(o float64) bool { return near(o, x) }) {
			out = append(out, x)
		}
	}
	n := min(2, len(xs))
	for _, x := range xs[:n] {
		add(x)
	}
	rest := slices.Clone(xs[n:])
	slices.Sort(rest)
	for _, x := range rest {
		add(x)
	}
	slices.Sort(out)
	return out
}

// chain returns the figures between stops, which close: running places from the
// first are rounded to what the sheet prints, then subtracted.
func chain(stops []float64, metric bool) (out []float64) {
	mark := length.Tape
	if metric {
		mark = 1 / 25.4
	}
	running := func(i int) float64 { return math.Round((stops[i]-stops[0])/mark) * mark }
	for i := 1; i < len(stops); i++ {
		out = append(out, running(i)-running(i-1))
	}
	return out
}

// dimV dimensions heights at the left of everything drawn so far.
func (d *draft) dimV(stops ...float64) {
	stops = stopsOf(stops, func(v float64) sheet.MM { return d.at(0, v).Y })
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
	figures := chain(stops, d.Metric())
	for i, y := range page.Spread(mids, sizes) {
		n := len(stops) - 1 - i
		tx := x - 1.8
		if moved := y - mids[i]; moved > h*0.4 || moved < -h*0.4 {
			tx = x - 5
			d.Line(sheet.PenDim, sheet.LayerDimension, sheet.Pt{X: x, Y: mids[i]}, sheet.Pt{X: tx + 0.4, Y: y})
		}
		d.BoxedText("dimension", page.Lettered{S: d.Length(figures[n-1]), At: sheet.Pt{X: tx, Y: y + h/2}, Anchor: sheet.Right, Role: "dimension"})
	}
}

// dimU dimensions widths of the present view below y on paper.
func (d *draft) dimU(below sheet.MM, stops ...float64) {
	stops = stopsOf(stops, func(u float64) sheet.MM { return d.at(u, 0).X })
	if len(stops) < 2 {
		return
	}
	y, h := below+5, d.Size.Note
	var mids, sizes []sheet.MM
	var words []string
	for i, v := range chain(stops, d.Metric()) {
		i++
		s := d.Length(v)
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

// setHeads sets the names of the views over them.
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

// setNotes sets the notes at the right of the views, with their leaders.
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
		d.ArrowHead(n.at, sheet.Pt{X: x - 3, Y: y})
		d.Polyline(sheet.PenDim, sheet.LayerLabel, n.at, sheet.Pt{X: x - 3, Y: y}, sheet.Pt{X: x - 0.8, Y: y})
		top := y - (sizes[i]-h*0.6)/2
		for j, s := range n.lines {
			d.BoxedText("label", page.Lettered{S: s, At: sheet.Pt{X: x, Y: top + h*1.25 + sheet.MM(j)*h*1.5}, Role: "label"})
		}
	}
}
