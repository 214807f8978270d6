package floorplan

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/placement"
	"galewright/render/label"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/render/table"
)

// holeRow is one hole in a subfloor with its distances from two walls.
type holeRow struct {
	hole  *placement.Hole
	n     int // number on its sheet, from 1
	fromX string
	fromY string
	wallX *plan.Wall // the wall that fromX is from, nil without one
	wallY *plan.Wall
}

// name is how the plan speaks of the hole: in words, since letter and number
// look like a mark.
func (r holeRow) name() string { return fmt.Sprintf("hole %d", r.n) }

// holesOf lists the holes of a level's subfloor from south-west to
// north-east, each measured from the outside faces of two walls: the deck's
// edge, which is there before any wall is.
func holesOf(c *page.Context, l *plan.Level) (rows []holeRow) {
	for _, h := range c.Placement.Holes {
		if h.Level == l {
			rows = append(rows, holeRow{hole: h})
		}
	}
	slices.SortStableFunc(rows, func(a, b holeRow) int {
		return cmp.Or(cmp.Compare(math.Round(a.hole.At.Y), math.Round(b.hole.At.Y)), cmp.Compare(a.hole.At.X, b.hole.At.X))
	})
	for i := range rows {
		r := &rows[i]
		r.n = i + 1
		p := r.hole.At.Flat()
		r.wallX, r.wallY = wallNear(c, l, p, true), wallNear(c, l, p, false)
		r.fromX, r.fromY = offWall(c, r.wallX, p), offWall(c, r.wallY, p)
	}
	return rows
}

// wallNear returns the nearest wall to a point that runs along y (or along
// x), exterior walls first, or nil.
func wallNear(c *page.Context, l *plan.Level, p geom.Vec2, alongY bool) (best *plan.Wall) {
	least := math.Inf(1)
	for _, w := range c.WallsOn(l) {
		d := w.Frame().D
		if alongY != (math.Abs(d.X) < 1e-6) || !alongY && math.Abs(d.Y) > 1e-6 {
			continue
		}
		_, t := w.Frame().Local(p)
		if t = math.Abs(t); !w.Exterior {
			t += 1e5
		}
		if t < least {
			best, least = w, t
		}
	}
	return best
}

// offWall says how far a point is from the face of a wall.
func offWall(c *page.Context, w *plan.Wall, p geom.Vec2) string {
	if w == nil {
		return ""
	}
	_, t := w.Frame().Local(p)
	return c.Length(math.Abs(t)) + " from " + w.Name
}

// drawHoles marks and names the holes.
func (v *planView) drawHoles(rows []holeRow) {
	for _, r := range rows {
		at := r.hole.At.Flat()
		if !v.sees(at) {
			continue
		}
		p := v.pt(at)
		v.Use("sym-hole", p, 0, 0.8, nil)
		b := sheet.Rect{X: p.X - 1.8, Y: p.Y - 1.8, W: 3.6, H: 3.6}
		v.board.Block(b)
		w, h := page.TextWidth(r.name(), v.Size.Note, false)+0.8, v.Size.Note*1.4
		var near []sheet.Pt
		for _, d := range []sheet.MM{0.5, 3, 6} {
			near = append(near, aroundPoint(p, w, h, 1.8+d)...)
		}
		v.words(r.name(), page.Lettered{Role: "label"}, near, []sheet.Pt{p})
	}
}

// holeTable lists the holes with their size and two distances.
func holeTable(c *page.Context, l *plan.Level, rows []holeRow) *table.Table {
	t := &table.Table{
		Title: "Holes in the " + l.Name + " subfloor",
		Cols:  []table.Column{{Head: "Hole"}, {Head: "For", Align: sheet.Middle}, {Head: "Size"}, {Head: "Center, from two walls", Wrap: true, Grow: true}},
	}
	for _, r := range rows {
		size := c.Length(r.hole.Size[0]) + " x " + c.Length(r.hole.Size[1])
		if r.hole.Round {
			size = c.Length(r.hole.Size[0]) + " dia."
		}
		from := r.fromX
		if r.fromX != "" && r.fromY != "" {
			from += ", "
		}
		t.Rows = append(t.Rows, table.Row{Cells: []table.Cell{{S: fmt.Sprint(r.n)}, {Legend: c.Legend(r.hole.Piece)}, {S: size}, {S: from + r.fromY}}})
	}
	return t
}

// dimHoles draws the dimensions of the holes from their two walls, wherever
// line and figure fit between what stands on the plan already. The table
// gives them all.
func (v *planView) dimHoles(rows []holeRow) {
	lettering := label.NewBoard(v.Frame)
	for _, b := range v.Boxes {
		lettering.Block(b.Rect)
	}
	for _, r := range rows {
		for _, w := range []*plan.Wall{r.wallX, r.wallY} {
			if w != nil && v.sees(r.hole.At.Flat()) {
				v.dimHole(r.hole.At.Flat(), w, lettering)
			}
		}
	}
}

// holeDim is a dimension from a wall's face to a hole, shifted along the wall
// to where it is free.
type holeDim struct {
	foot, hole sheet.Pt // on the wall's line, at the hole
	from, to   sheet.Pt // the dimension's ends
	text       sheet.Rect
	words      string
	angle      float64
}

// dimHole draws a hole's dimension from a wall where it fits; lettering is
// what the lines out to it may not cross.
func (v *planView) dimHole(p geom.Vec2, w *plan.Wall, lettering *label.Board) {
	f := w.Frame()
	s, t := f.Local(p)
	foot := f.At(s, 0, 0).Flat()
	base := v.pt(foot)
	d := holeDim{words: v.Length(math.Abs(t)), angle: v.angleOn(f.In)}
	long := v.vp.Len(math.Abs(t))
	if !v.sees(foot) || page.TextWidth(d.words, v.Size.Note, false)+4 > long {
		return
	}
	n, in := v.dir(f.D), v.dir(f.In.Mul(math.Copysign(1, t)))
	for off := sheet.MM(4); off <= 34; off += 1.5 {
		for _, side := range []sheet.MM{off, -off} {
			by := stretched(n, side)
			d.hole = v.pt(p)
			d.from, d.to = base.Add(by), d.hole.Add(by)
			// the wall's face itself stops the dimension where it goes on
			if at := s + float64(side)/v.vp.Scale.K(); at >= 0 && at <= w.Length() {
				d.foot = d.from
			} else {
				d.foot = v.pt(f.At(min(max(s, 0), w.Length()), 0, 0).Flat())
			}
			if v.holeDimFits(&d, stretched(in, v.vp.Len(w.Depth())), long, lettering) {
				v.setHoleDim(d)
				lettering.Block(d.text)
				return
			}
		}
	}
}

// holeDimFits tells whether a dimension crosses nothing beyond the wall it
// starts at, and places its figure.
func (v *planView) holeDimFits(d *holeDim, wall sheet.Pt, long sheet.MM, lettering *label.Board) bool {
	start := d.from
	if d.foot == d.from {
		start = d.from.Add(wall)
	}
	way := d.to.Add(stretched(start, -1))
	if n := max(way.X, -way.X, way.Y, -way.Y); !v.board.Free(thinRect(start.Add(stretched(way, 0.9/n)), d.to)) {
		return false // a grid line may run through its start
	}
	var ok1, ok2 bool
	d.hole, ok1 = freeFrom(lettering, d.hole, d.to)
	d.foot, ok2 = freeFrom(lettering, d.foot, d.from)
	if !ok1 || !ok2 {
		return false
	}
	z := v.Size.Note
	w := page.TextWidth(d.words, z, false)
	for _, t := range []sheet.MM{0.5, 0.35, 0.65, 0.2, 0.8} {
		if room := min(t, 1-t) * long; room < w/2+1 {
			continue
		}
		m := sheet.Pt{X: d.from.X + (d.to.X-d.from.X)*t, Y: d.from.Y + (d.to.Y-d.from.Y)*t}
		d.text = sheet.Rect{X: m.X - w/2, Y: m.Y - 0.8 - z*1.2, W: w, H: z * 1.2}
		if math.Abs(d.angle) > 45 {
			d.text = sheet.Rect{X: m.X - 0.8 - z*1.2, Y: m.Y - w/2, W: z * 1.2, H: w}
		}
		if v.board.Free(d.text) {
			return true
		}
	}
	return false
}

// freeFrom returns where a line out to a dimension may begin: at what is
// measured, or beyond the symbols that stand before it.
func freeFrom(b *label.Board, from, to sheet.Pt) (sheet.Pt, bool) {
	way := to.Add(stretched(from, -1))
	long := max(way.X, -way.X, way.Y, -way.Y)
	for _, skip := range []sheet.MM{0, 5, 8, 12, 16, 20, 25} {
		if skip > max(0, long-2) {
			break
		}
		start := from
		if skip > 0 {
			start = from.Add(stretched(way, skip/long))
		}
		if b.Free(thinRect(start, to).Inset(0.29)) {
			return start, true
		}
	}
	return from, false
}

// thinRect is a level or upright line as a rectangle a hair wide.
func thinRect(a, b sheet.Pt) sheet.Rect {
	return sheet.Rect{X: min(a.X, b.X), Y: min(a.Y, b.Y), W: max(a.X-b.X, b.X-a.X), H: max(a.Y-b.Y, b.Y-a.Y)}.Inset(-0.3)
}

func (v *planView) setHoleDim(d holeDim) {
	v.Line(sheet.PenDim, sheet.LayerDimension, d.from, d.to)
	v.Line(sheet.PenDim, sheet.LayerDimension, d.hole, d.to)
	if d.foot != d.from {
		v.Line(sheet.PenDim, sheet.LayerDimension, d.foot, d.from)
	}
	v.Tick(d.from)
	v.Tick(d.to)
	v.board.Block(thinRect(d.from, d.to).Inset(-0.6))
	v.board.BlockLine(d.hole, d.to)
	z, c := v.Size.Note, d.text.Center()
	at := sheet.Pt{X: c.X, Y: d.text.Y + z*1.1}
	if math.Abs(d.angle) > 45 {
		at = sheet.Pt{X: d.text.X + z*1.1, Y: c.Y}
	}
	v.dimText(d.words, at, z, d.angle)
}
