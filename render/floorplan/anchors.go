package floorplan

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/steel"
	"galewright/render/label"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/render/table"
	"galewright/symbols"
)

// anchor is a rod whose foot is in the concrete under a wall: what the concrete's
// crew sets before any wall is there. Lengths in inches.
type anchor struct {
	piece     *placement.Piece
	wall      *plan.Wall
	at        geom.Vec2
	station   float64 // from the wall's zero
	face      float64 // from the wall's outside face, the edge of the concrete
	above, in float64 // of the rod over the concrete and in it
	diameter  float64
}

// anchorsOf lists the rods cast into the foundation, wall by wall along it.
func anchorsOf(c *page.Context) (out []anchor) {
	order := map[*plan.Wall]int{}
	for i, w := range c.House.Plan.Walls {
		order[w] = i
	}
	for _, r := range c.Schedule.Steel.Rods() {
		w := page.HomeWall(r.For.Joint)
		if foot := r.Ends[1]; w != nil && foot.Kind == steel.CastIn {
			s, t := w.Frame().Local(r.B.Flat())
			out = append(out, anchor{r.For, w, r.B.Flat(), s, t, r.Length() - foot.Embed, foot.Embed, r.Diameter})
		}
	}
	slices.SortStableFunc(out, func(a, b anchor) int {
		return cmp.Or(cmp.Compare(order[a.wall], order[b.wall]), cmp.Compare(a.station, b.station))
	})
	return out
}

// anchorFrom and anchorJog are how far outside a wall the line to an anchor's figure
// begins to slant and ends, mm.
const (
	anchorFrom sheet.MM = 1.5
	anchorJog  sheet.MM = 6
)

// usual returns the item of most anchors: their figures stand alone, the others
// carry their number.
func usual(list []anchor) (most *hardware.Item) {
	n := map[*hardware.Item]int{}
	for _, a := range list {
		if n[a.piece.Item]++; most == nil || n[a.piece.Item] > n[most] {
			most = a.piece.Item
		}
	}
	return most
}

// anchorRoom is what figures and numbers beside a wall take, mm.
func anchorRoom(c *page.Context, list []anchor) (room sheet.MM) {
	for _, a := range list {
		room = max(room, anchorJog+2+page.TextWidth(c.Length(a.station), c.Size.Note, false)+2*c.LegendRadius())
	}
	return room
}

// drawAnchors draws the anchors at their places and a running figure to each from
// its wall's zero.
func (v *planView) drawAnchors(list []anchor, room sheet.MM, s planSheet) {
	d := &anchorDrawing{v, usual(list), label.NewBoard(v.Frame), nil}
	for _, w := range v.House.Plan.Walls {
		if r, ok := v.boxOf(wallPoly(w.Frame(), 0, w.Length(), 0, w.Depth())); ok && w.Level.Index == 0 {
			d.taken.Block(r)
			d.board.Block(r)
		}
	}
	for _, m := range v.House.Members {
		if onFoundationPlan(m.Role) {
			a, b := m.Bounds()
			if r, ok := v.boxOf([]geom.Vec2{a.Flat(), {X: b.X, Y: a.Y}, b.Flat(), {X: a.X, Y: b.Y}}); ok {
				d.taken.Block(r)
			}
		}
	}
	for _, e := range s.openEdges(v.vp.Clip) {
		d.taken.BlockLine(e[0], e[1])
	}
	list = d.symbols(list)
	for _, b := range v.Boxes {
		d.taken.Block(b.Rect)
	}
	for len(list) > 0 {
		w := list[0].wall
		n := 1
		for n < len(list) && list[n].wall == w {
			n++
		}
		d.figures(w, list[:n])
		v.labelWall(w, room)
		list = list[n:]
	}
}

// anchorDrawing is the anchors' part of a plan while it is drawn.
type anchorDrawing struct {
	*planView
	usual *hardware.Item
	taken *label.Board // by walls, pieces, figures and their lines
	boxes []sheet.Rect // of the figures
}

// anchorSize is the height of an anchor's symbol at its place, mm.
const anchorSize sheet.MM = 3.2

// anchorFigure is one figure beside a wall, with the number of its mark where it has one.
type anchorFigure struct {
	station float64
	number  int
}

// figureSize is what a figure takes along its wall, with a number or without, mm.
func figureSize(c *page.Context, numbered bool) sheet.MM {
	if numbered {
		return max(c.Size.Note*1.6, 2*c.LegendRadius()+0.4)
	}
	return c.Size.Note * 1.6
}

// anchorScale returns the smallest scale at which the figures of each wall have
// room along it on its two sides, inches of house to one of paper.
func anchorScale(c *page.Context, list []anchor) float64 {
	least, most := math.Inf(1), usual(list)
	need := map[*plan.Wall]sheet.MM{}
	for _, a := range list {
		need[a.wall] += figureSize(c, a.piece.Item != most) / 2
	}
	for w, mm := range need {
		least = min(least, w.Length()*page.Scale{Ratio: 1}.K()/float64(mm))
	}
	return least
}

// symbols draws the anchors that this sheet shows and returns them.
func (d *anchorDrawing) symbols(list []anchor) (seen []anchor) {
	for _, a := range list {
		if sym, ok := symbols.For(a.piece.Item.Kind.Symbol); ok && d.sees(a.at) {
			d.drawPiece(sym, d.pt(a.at), float64(anchorSize/max(sym.Box.W, sym.Box.H)), a.piece, false)
			seen = append(seen, a)
		}
	}
	return seen
}

// figures letters the stations of one wall's anchors and its zero.
func (d *anchorDrawing) figures(w *plan.Wall, list []anchor) {
	figures := []anchorFigure{{}}
	for _, a := range list {
		f := anchorFigure{station: a.station}
		if a.piece.Item != d.usual {
			f.number = d.Schedule.Number(a.piece.Item.Mark)
		}
		figures = append(figures, f)
	}
	var centers, sizes []sheet.MM
	for _, f := range figures {
		size := figureSize(d.Context, f.number > 0)
		centers, sizes = append(centers, d.vp.Len(f.station)), append(sizes, size)
	}
	// beside the grid's lines at both ends, not on them
	centers[0] += d.Size.Note
	centers, sizes = append(centers, d.vp.Len(w.Length())+d.Size.Note*0.5), append(sizes, d.Size.Note*2)
	places := page.Spread(centers, sizes)
	for i, f := range figures {
		if d.sees(w.Frame().At(f.station, 0, 0).Flat()) {
			d.figure(w, f, places[i], sizes[i])
		}
	}
}

// figure letters one figure at the end of a line from its anchor, near at mm along
// the wall, where it is clear of walls, girders and other figures.
func (d *anchorDrawing) figure(w *plan.Wall, x anchorFigure, at, size sheet.MM) {
	f := w.Frame()
	text := d.Length(x.station)
	long := page.TextWidth(text, d.Size.Note, false)
	room := anchorJog + 2 + long
	if x.number > 0 {
		room += 2 * d.LegendRadius()
	}
	p := d.clear(w, x.station, at, size, room)
	d.anchorLine(p.line...)
	to := p.line[2]
	d.alongText(text, to.Add(stretched(p.out, 0.7+long/2)), d.angleOn(f.In))
	if x.number > 0 {
		d.LegendCircle(x.number, to.Add(stretched(p.out, 1.5+long+d.LegendRadius())), "legend of "+text+" on "+w.Name, nil)
	}
	d.board.Block(p.box)
	d.taken.Block(p.box)
	d.boxes = append(d.boxes, p.box)
	for i := 1; i < len(p.line); i++ {
		d.taken.BlockLine(p.line[i-1], p.line[i])
	}
}

// besideWall is a place for a figure: from a face of its wall outward or inward.
type besideWall struct {
	base, out sheet.Pt // the wall's zero on that face, and the way from it
	at, off   sheet.MM // along the wall; farther from it than others
	box       sheet.Rect
	line      []sheet.Pt // from the wall's face to the figure
}

// clear returns the place for a figure of a size along the wall and a room across
// it: outside, else inside, else moved along to the nearest that is free, else the
// same farther from the wall. Where there is none its line may run through others;
// the first where none is free of lettering either.
func (d *anchorDrawing) clear(w *plan.Wall, station float64, at, size, room sheet.MM) besideWall {
	f := w.Frame()
	outside := besideWall{base: d.pt(f.Origin), out: d.dir(f.In.Mul(-1))}
	inside := besideWall{base: d.pt(f.At(0, w.Depth(), 0).Flat()), out: d.dir(f.In)}
	along, own := d.dir(f.D), d.vp.Len(station)
	for _, free := range []func(besideWall) bool{d.free, d.roomy} {
		for try := range 3 * 2 * mostMoves {
			row, i := try/(2*mostMoves), try%(2*mostMoves)
			by := sheet.MM((i+1)/2) * size / 2
			if i%2 == 0 {
				by = -by
			}
			for _, p := range []besideWall{outside, inside} {
				p.lay(along, own, at+by, sheet.MM(row)*(room-anchorJog), size, room)
				if free(p) {
					return p
				}
			}
		}
	}
	outside.lay(along, own, at, 0, size, room)
	return outside
}

// free tells whether a figure and the line to it are clear of all that stands there.
func (d *anchorDrawing) free(p besideWall) bool {
	return d.roomy(p) && !slices.ContainsFunc(d.boxes, func(r sheet.Rect) bool {
		return label.Crosses(p.line[0], p.line[1], r) || label.Crosses(p.line[1], p.line[2], r)
	})
}

// mostMoves is how many halves of its size a figure moves along its wall, each way.
const mostMoves = 16

// roomy tells whether a figure is clear of all that stands there.
func (d *anchorDrawing) roomy(p besideWall) bool { return d.taken.Free(p.box.Inset(label.Gap + 0.02)) }

// lay places a figure of a size along the wall and a room across it at mm along it and
// off farther out, for an anchor at its own mm along.
func (p *besideWall) lay(along sheet.Pt, own, at, off, size, room sheet.MM) {
	p.at, p.off = at, off
	from, to := p.base.Add(stretched(along, own)), p.base.Add(stretched(along, at)).Add(stretched(p.out, anchorJog+off))
	p.line = []sheet.Pt{from, from.Add(stretched(p.out, anchorFrom)), to}
	near := p.base.Add(stretched(along, at)).Add(stretched(p.out, anchorJog+off+0.1))
	far := near.Add(stretched(p.out, room-anchorJog))
	half := stretched(along, size/2)
	p.box = page.Bounds([]sheet.Pt{near.Add(half), near.Add(stretched(half, -1)), far.Add(half), far.Add(stretched(half, -1))})
}

// anchorLine draws the line to a figure.
func (v *planView) anchorLine(pts ...sheet.Pt) {
	v.Polyline(sheet.PenDim, sheet.LayerDimension, pts...)
	for i := 1; i < len(pts); i++ {
		v.board.BlockLine(pts[i-1], pts[i])
	}
}

// alongText letters a figure about a point, read along an angle.
func (v *planView) alongText(s string, mid sheet.Pt, angle float64) {
	z := v.Size.Note
	sin, cos := math.Sincos(angle * math.Pi / 180)
	v.ground(around(mid, 0), angle, page.TextWidth(s, z, false)+0.6, z*1.3)
	v.dimText(s, mid.Add(sheet.Pt{X: z * 0.5 * sheet.MM(sin), Y: z * 0.5 * sheet.MM(cos)}), z, angle)
}

// anchorTable lists the anchors that are set alike.
func anchorTable(c *page.Context, list []anchor) *table.Table {
	t := &table.Table{Title: "Anchors to set in the concrete", Cols: []table.Column{
		{Head: "No.", Align: sheet.Middle}, {Head: "Rod"}, {Head: "Center from face"}, {Head: "Above concrete"}, {Head: "In concrete"}, {Head: "Pieces", Align: sheet.Right},
	}}
	type row struct {
		item   *hardware.Item
		cells  [4]string
		pieces int
	}
	var rows []*row
	for _, a := range list {
		cells := [4]string{c.Units().Bought(a.diameter), c.Length(a.face), c.Length(a.above), c.Length(a.in)}
		i := slices.IndexFunc(rows, func(r *row) bool { return r.item == a.piece.Item && r.cells == cells })
		if i < 0 {
			i = len(rows)
			rows = append(rows, &row{item: a.piece.Item, cells: cells})
		}
		rows[i].pieces++
	}
	slices.SortStableFunc(rows, func(a, b *row) int {
		return cmp.Or(cmp.Compare(c.Schedule.Number(a.item.Mark), c.Schedule.Number(b.item.Mark)), cmp.Compare(b.pieces, a.pieces))
	})
	for _, r := range rows {
		t.Rows = append(t.Rows, table.Row{Cells: append([]table.Cell{{Legend: c.Schedule.Number(r.item.Mark)}}, table.Texts(append(r.cells[:], fmt.Sprint(r.pieces))...)...)})
	}
	if n := c.Schedule.Number(usual(list).Mark); len(rows) > 1 {
		t.Rows = append(t.Rows, table.Row{Group: true, Cells: table.Texts(fmt.Sprintf("Figures on the plan without a number are of No. %d.", n))})
	}
	return t
}

// anchorNote says how the figures beside the walls are measured.
const anchorNote = "Figures outside the walls are the stations of the anchors' centers: hook the tape at the wall's 0, on its outside face. The other face is in the table. Elevations count these pieces; set them before the walls stand, and check them against the engineer's foundation drawings."
