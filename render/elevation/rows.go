package elevation

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"galewright/plan/placement"
	"galewright/render/label"
	"galewright/render/page"
	"galewright/render/sheet"
)

// row is a strip below an elevation: distances along a wall from its start,
// each standing below its place, with the numbers of the pieces there.
type row struct {
	title   []string
	entries []entry
	height  sheet.MM
	long    sheet.MM // of its longest figure
	stack   int      // most numbers at one place
}

type entry struct {
	u       float64
	text    string
	numbers []int
	x       sheet.MM
}

// rowJog is the height in which the lines of a row lead to their figures.
func rowJog(c *page.Context) sheet.MM {
	if page.Large(c.Paper) {
		return 5
	}
	return 3.5
}

// feetRow is the row of a story whose bays are too narrow for figures.
func (p *part) feetRow(i int, feet []foot) *row {
	r := &row{title: p.rowTitle(p.stories[i].wall.Name + ": studs, near edges")}
	for _, f := range feet {
		r.entries = append(r.entries, entry{u: f.u, text: f.text})
	}
	return r
}

// strip returns the row of a story's pieces in order along the wall, one
// entry a place. Unless it is to be complete it leaves out what is nailed at a
// stud's center or edge, which the stud's own dimension places.
func (p *part) strip(i int) *row {
	r := &row{}
	studs := p.studsOf(i)
	var at []*placement.Piece
	left := 0
	for _, pc := range p.pieces {
		switch {
		case page.HomeWall(pc.Joint) != p.stories[i].wall || !p.owns(pc):
		case !p.full && near(studs, p.station(pc)):
			left++
		default:
			at = append(at, pc)
		}
	}
	slices.SortStableFunc(at, func(a, b *placement.Piece) int { return cmp.Compare(p.station(a), p.station(b)) })
	for _, pc := range at {
		u := p.station(pc)
		r.add(u, p.Length(u-p.stories[i].shift), p.Legend(pc))
	}
	title := p.stories[i].wall.Name + ": every piece in order"
	if left > 0 {
		title = p.stories[i].wall.Name + ": pieces in order, except those at a stud's center or edge"
	}
	if p.addSplices(r, i) {
		title += "; // = break in a top plate"
	}
	r.title = p.rowTitle(title)
	return r
}

// station returns where a piece is along the line: the middle of its length.
func (p *part) station(pc *placement.Piece) float64 {
	path := p.path(pc)
	return (path[0].X + path[len(path)-1].X) / 2
}

// studsOf returns the centers and the edges of the uprights of a story, in
// order.
func (p *part) studsOf(i int) (out []float64) {
	for _, h := range p.shapes {
		if h.m.Wall == p.stories[i].wall && standing(h.m) {
			u0, u1, _, _ := h.bounds()
			out = append(out, u0, (u0+u1)/2, u1)
		}
	}
	slices.Sort(out)
	return out
}

// near tells whether u is one of the sorted places, within half a nail's
// diameter of a tape: 1/8 in.
func near(places []float64, u float64) bool {
	i, _ := slices.BinarySearch(places, u-0.125)
	return i < len(places) && places[i] <= u+0.125
}

// splice stands among the numbers of an entry for a break in a top plate.
const splice = 0

// addSplices adds the breaks in a story's top plates to its row and tells
// whether there are any.
func (p *part) addSplices(r *row, i int) bool {
	var us []float64
	for _, j := range p.splices {
		if j.Wall == p.stories[i].wall && p.holds(p.flat(j.At).X) {
			us = append(us, p.flat(j.At).X)
		}
	}
	slices.Sort(us)
	for _, u := range slices.CompactFunc(us, closeBy) {
		r.add(u, p.Length(u-p.stories[i].shift), splice)
	}
	slices.SortStableFunc(r.entries, func(a, b entry) int { return cmp.Compare(a.u, b.u) })
	return len(us) > 0
}

// add puts a number at a station: with the last one where that is the same.
func (r *row) add(u float64, text string, number int) {
	for k := range r.entries {
		if closeBy(r.entries[k].u, u) {
			if !slices.Contains(r.entries[k].numbers, number) {
				r.entries[k].numbers = append(r.entries[k].numbers, number)
			}
			return
		}
	}
	r.entries = append(r.entries, entry{u: u, text: text, numbers: []int{number}})
}

// rowTitle breaks a row's name to stand left of the drawing.
func (p *part) rowTitle(s string) []string {
	return page.Wrap(s, p.Size.Note, false, p.plan.left-1)
}

// settleRows makes the strips and the space they take.
func (p *part) settleRows() {
	rows := p.plan.rows
	for _, r := range rows { // made before the margin was known
		r.title = p.rowTitle(strings.Join(r.title, " "))
	}
	for _, i := range p.own {
		rows = append(rows, p.strip(i))
	}
	p.plan.rows = nil
	for _, r := range rows {
		if len(r.entries) > 0 {
			p.plan.rows = append(p.plan.rows, p.fitRow(r)...)
		}
	}
	p.plan.bottom = p.belowDrawing()
	for _, r := range p.plan.rows {
		p.plan.bottom += r.height
	}
	_, h := p.titleSize()
	p.plan.bottom += h + 3
}

// belowDrawing is the space under the drawing where numbers may go out to.
func (p *part) belowDrawing() sheet.MM {
	if page.Large(p.Paper) {
		return 2*p.LegendRadius() + 2
	}
	return 3
}

// fitRow spreads the figures of a row; where they do not fit on one line the
// row becomes several, dealt in turn so that each still runs along the wall.
func (p *part) fitRow(r *row) []*row {
	for n := 1; ; n++ {
		rows := make([]*row, n)
		for k := range rows {
			rows[k] = &row{title: r.title}
			if n > 1 {
				rows[k].title = p.rowTitle(fmt.Sprintf("%s (row %d of %d)", strings.Join(r.title, " "), k+1, n))
			}
		}
		for k, e := range r.entries {
			rows[k%n].entries = append(rows[k%n].entries, e)
		}
		fits := true
		for _, q := range rows {
			fits = q.spread(p) && fits
		}
		if fits || n >= len(r.entries) {
			return rows
		}
	}
}

// spread gives the entries their places and the row its height.
func (r *row) spread(p *part) bool {
	pitch := p.figureWidth()
	wish := make([]sheet.MM, len(r.entries))
	for k, e := range r.entries {
		wish[k] = p.vp.X(e.u)
		r.long = max(r.long, page.TextWidth(e.text, p.Size.Dim, false))
		r.stack = max(r.stack, len(e.numbers))
		if len(e.numbers) > 0 {
			pitch = max(pitch, 2*p.LegendRadius()+0.4)
		}
	}
	mid, ok := label.Row(wish, pitch, pitch/2, p.vp.Clip.W+p.plan.right-pitch/2)
	for k := range r.entries {
		r.entries[k].x = mid[k]
	}
	r.height = rowJog(p.Context) + r.long + sheet.MM(r.stack)*(2*p.LegendRadius()+0.4) + 1.8
	r.height = max(r.height, sheet.MM(len(r.title))*(p.Size.Note+1.3)+1.8)
	return ok
}

// drawRows draws the strips from y down and returns where they end.
func (p *part) drawRows(b *label.Board, y sheet.MM) sheet.MM {
	for _, r := range p.plan.rows {
		p.drawRow(b, r, y)
		y += r.height
	}
	return y
}

func (p *part) drawRow(b *label.Board, r *row, y sheet.MM) {
	pg, z, x0 := p.page, p.Size.Dim, p.vp.Clip.X
	pg.Line(sheet.PenDim, sheet.LayerDimension, sheet.Pt{X: x0, Y: y}, sheet.Pt{X: x0 + p.vp.Clip.W, Y: y})
	for k, s := range r.title {
		at := sheet.Pt{X: p.at.X, Y: y + sheet.MM(k)*(p.Size.Note+1.3) + p.Size.Note}
		pg.BoxedText("dimension", page.Lettered{S: s, At: at, Role: "note"})
	}
	for _, e := range r.entries {
		tick := sheet.Pt{X: p.vp.X(e.u), Y: y}
		foot := sheet.Pt{X: x0 + e.x, Y: y + rowJog(p.Context) - 0.5}
		pg.Line(sheet.PenMember, sheet.LayerDimension, tick.Add(sheet.Pt{X: -0.6, Y: 0.6}), tick.Add(sheet.Pt{X: 0.6, Y: -0.6}))
		pg.Polyline(sheet.PenDim, sheet.LayerDimension, tick, tick.Add(sheet.Pt{Y: 1}), foot.Add(sheet.Pt{Y: -1}), foot)
		t := page.Lettered{S: e.text, Cap: z, At: sheet.Pt{X: foot.X + z*0.36, Y: y + rowJog(p.Context)}, Anchor: sheet.Right, Angle: 90, Role: "dimension"}
		pg.BoxedText("dimension", t)
		cy := y + rowJog(p.Context) + r.long + 0.8
		for _, n := range e.numbers {
			cy += p.LegendRadius()
			if n == splice {
				spliceMark(pg, sheet.Pt{X: foot.X, Y: cy})
			} else {
				pg.NumberCircle(n, sheet.Pt{X: foot.X, Y: cy}, fmt.Sprintf("legend %d at %s", n, e.text))
			}
			cy += p.LegendRadius() + 0.4
		}
	}
}
