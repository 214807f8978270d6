package floorplan

import (
	"fmt"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/hardware"
	"galewright/render/label"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/render/table"
	"galewright/symbols"
)

// NotePages carries the tables of all plans where they have no column of
// their own: on small paper.
func NotePages(c *page.Context) []*page.Page {
	if sideColumn(c) > 0 || len(c.House.Plan.Levels) == 0 {
		return nil
	}
	f := c.NewFlow("Notes to the plans", "plan notes")
	f.ColumnsOf(110)
	var notes []string
	for _, l := range c.House.Plan.Levels {
		if len(stairwells(c, l)) > 0 {
			f.Put(wellTable(c, l))
		}
		if len(beamsOf(c, l)) > 0 {
			f.Put(beamTable(c, l))
		}
		if rows := holesOf(c, l); len(rows) > 0 {
			f.Put(holeTable(c, l, rows))
			notes = append(notes, holeNote)
			notes = notes[:1]
		}
	}
	for _, l := range c.House.Plan.Levels {
		notes = append(notes, slices.Concat(besideNotes(c, l), miterNotes(c, l), floorNotes(c, l))...)
	}
	notes = append(append([]string{}, levelNotes...), notes...)
	notes = append(notes, foundationNotes(c)...)
	f.Put(table.Numbered("Notes", append(notes, roofNotes(c)...)))
	if list := anchorsOf(c); len(list) > 0 {
		f.Put(anchorTable(c, list))
	}
	for _, t := range append(nailTables(c), zoneTables(c)...) {
		f.Put(t)
	}
	return f.Done()
}

var levelNotes = []string{
	"Hardware is drawn in lanes beside its wall, each piece at its place along the wall; the elevation named at the arrow gives the exact place and height.",
	"Where a stud has several pieces of one mark, one symbol shows them all; counts are of pieces.",
	"Dark studs are full height, light ones carry headers. Hatched walls are shear walls with their edge and field nailing.",
	"Two slanting strokes: a break in the top plates. Dimensions are to the outside face of studs.",
}

const holeNote = "Holes are laid out from the outside faces of studs, which are the edge of the subfloor."

// levelTables are the tables beside a level's plan.
func levelTables(c *page.Context, l *plan.Level, holes []holeRow) []*table.Table {
	notes := slices.Concat(levelNotes, besideNotes(c, l), miterNotes(c, l), floorNotes(c, l))
	var out []*table.Table
	if len(stairwells(c, l)) > 0 {
		out = append(out, wellTable(c, l))
	}
	if len(beamsOf(c, l)) > 0 {
		out = append(out, beamTable(c, l))
	}
	if len(holes) > 0 {
		notes = append(notes, holeNote)
		out = append(out, holeTable(c, l, holes))
	}
	return append(out, table.Numbered("Notes", notes))
}

// planTables sets the view's title, the north arrow, the map of the parts and
// the tables.
func (v *planView) planTables(name string, s planSheet, tables []*table.Table) {
	zero := page.TextWidth(v.Length(0), v.Size.Note, false) / 2 // hangs over the scale bar's end
	v.board.BlockText(v.ViewTitle(sheet.Pt{X: v.Area.X + zero, Y: v.Area.Y + v.Area.H}, name, s.scale))
	v.board.Block(v.vp.Clip.Inset(-4))
	x, y := v.Area.X+v.Area.W-9, v.Area.Y+9
	v.planNorth(sheet.Pt{X: x, Y: y})
	if s.cols*s.rows > 1 {
		v.partMap(s, sheet.Rect{X: v.Area.X + v.Area.W - 20, Y: v.Area.Y + 20, W: 20, H: 20})
	}
	if sideColumn(v.Context) == 0 { // notes are on a sheet of their own
		v.looseLegend()
		return
	}
	if len(v.order) > 0 {
		tables = append([]*table.Table{v.sheetLegend()}, tables...)
	}
	if s.side > 0 {
		v.columnTables(tables)
		return
	}
	v.looseTables(tables)
}

// looseTables sets tables where a large sheet without a column has room.
func (v *planView) looseTables(tables []*table.Table) {
	spots := v.freeRoom()
	for _, t := range tables {
		w := t.Wanted(v.Context)
		laid := t.Lay(v.Context, w)
		r, ok := v.looseSpot(spots, w, laid.Height())
		if !ok {
			lost(v.Page, t.Title)
			continue
		}
		laid.DrawAt(v.Page, sheet.Pt{X: r.X, Y: r.Y})
		spots.Block(r.Inset(-3))
	}
}

// freeRoom is the sheet with all that stands on it blocked.
func (v *planView) freeRoom() *label.Board {
	spots := label.NewBoard(v.Frame.Inset(page.Gutter(v.Context.Paper)))
	for _, b := range v.Boxes {
		spots.Block(b.Rect.Inset(-max(1.5, page.Gutter(v.Context.Paper)-2)))
	}
	spots.Block(v.vp.Clip.Inset(-lanePitch(v.Context) * 3))
	return spots
}

// columnTables sets tables in the column at the right of a large sheet.
func (v *planView) columnTables(tables []*table.Table) {
	x, y := v.Area.X+v.Area.W-sideColumn(v.Context)+6, v.Area.Y+20
	for _, t := range tables {
		laid := t.Lay(v.Context, sideColumn(v.Context)-6)
		if y+laid.Height() > v.Area.Y+v.Area.H {
			lost(v.Page, t.Title)
			continue
		}
		laid.DrawAt(v.Page, sheet.Pt{X: x, Y: y})
		y += laid.Height() + 6
	}
}

// looseLegend sets the numbers and symbols of a small sheet where it has room
// left: first beside the title block, then round the plan, in as few columns
// as fit.
func (v *planView) looseLegend() {
	items := v.legendItems()
	if len(items) == 0 {
		return
	}
	spots := v.freeRoom()
	z := v.Size.Note
	var wide sheet.MM
	for _, it := range items {
		wide = max(wide, page.TextWidth(v.legendEntry(it), z, false))
	}
	wide += 2*v.LegendRadius() + 12
	const high sheet.MM = 7
	for cols := 1; cols <= max(len(items), 1); cols++ {
		rows := (len(items) + cols - 1) / cols
		r, ok := v.looseSpot(spots, sheet.MM(cols)*wide, sheet.MM(rows)*high+z*2)
		if !ok {
			continue
		}
		v.BoxedText("label", page.Lettered{S: "On this sheet", At: sheet.Pt{X: r.X, Y: r.Y + z*1.2}, Bold: true, Role: "note"})
		for i, it := range items {
			v.setLegendEntry(it, sheet.Rect{X: r.X + sheet.MM(i/rows)*wide, Y: r.Y + z*2 + sheet.MM(i%rows)*high, W: wide, H: high})
		}
		return
	}
	v.scatterLegend(spots, items, wide, high)
}

// scatterLegend sets the entries of a legend one by one where there is room:
// the last first, for places are filled from below.
func (v *planView) scatterLegend(spots *label.Board, items []*hardware.Item, wide, high sheet.MM) {
	for _, it := range slices.Backward(items) {
		r, ok := v.looseSpot(spots, wide, high)
		if !ok {
			lost(v.Page, "legend entry "+it.Mark)
			continue
		}
		v.setLegendEntry(it, r)
		spots.Block(r)
	}
}

// legendEntry says mark and count of an item on this sheet.
func (v *planView) legendEntry(it *hardware.Item) string {
	return fmt.Sprintf("%s: %d", it.Mark, v.shown[it])
}

// setLegendEntry draws one entry of the loose legend in its place.
func (v *planView) setLegendEntry(it *hardware.Item, r sheet.Rect) {
	rad, y, z := v.LegendRadius(), r.Y+r.H/2, v.Size.Note
	v.LegendCircle(v.Schedule.Number(it.Mark), sheet.Pt{X: r.X + rad, Y: y}, "legend entry "+it.Mark, nil)
	if s, ok := symbols.For(it.Kind.Symbol); ok {
		k := 4.6 / float64(max(s.Box.W, s.Box.H))
		v.Use(s.ID, sheet.Pt{X: r.X + 2*rad + 4, Y: y}, 0, k, nil)
	}
	v.BoxedText("label", page.Lettered{S: v.legendEntry(it), At: sheet.Pt{X: r.X + 2*rad + 8, Y: y + z/2}, Role: "note"})
}

// looseSpot finds a free place of a size, low ones first, from the left.
func (v *planView) looseSpot(spots *label.Board, w, h sheet.MM) (sheet.Rect, bool) {
	in := v.Frame.Inset(page.Gutter(v.Context.Paper) + label.Gap)
	for y := in.Y + in.H - h; y >= in.Y; y -= 2 {
		for x := in.X; x+w <= in.X+in.W; x += 2 {
			if r := (sheet.Rect{X: x, Y: y, W: w, H: h}); spots.Free(r) {
				return r, true
			}
		}
	}
	return sheet.Rect{}, false
}

// planNorth draws the north mark about a center; on a turned plan its letter
// stays upright.
func (v *planView) planNorth(at sheet.Pt) {
	if !v.turned {
		v.NorthArrow(at, 0)
		return
	}
	const k = 2
	z := v.Size.Dim
	c := sheet.Pt{X: at.X - z, Y: at.Y}
	v.Use("sym-needle", c, -90, k, nil)
	r := v.Text(page.Lettered{S: "N", Cap: z, At: sheet.Pt{X: c.X + 3*k + 0.8, Y: c.Y + z/2}, Bold: true, Role: "label"})
	v.Box("label", "north", r.Union(sheet.Rect{X: c.X - 3*k, Y: c.Y - 2*k, W: 6 * k, H: 4 * k}))
}

// partMap draws the outline of the house with the part this sheet shows.
func (v *planView) partMap(s planSheet, r sheet.Rect) {
	lo, hi, _ := v.WallBounds()
	u0, u1, v0, v1 := spanUV(lo, hi, s.turned)
	k := min(float64(r.W)/(u1-u0), float64(r.H)/(v1-v0))
	at := func(u, w float64) sheet.Pt {
		u, w = max(u0, min(u1, u)), max(v0, min(v1, w))
		return sheet.Pt{X: r.X + r.W - sheet.MM((u1-u)*k), Y: r.Y + sheet.MM((v1-w)*k)}
	}
	a, b := at(s.u0, s.v1), at(s.u1, s.v0)
	v.Rect(sheet.Style{Fill: sheet.Mid, Layer: sheet.LayerNote}, sheet.Rect{X: a.X, Y: a.Y, W: b.X - a.X, H: b.Y - a.Y})
	for _, w := range v.House.Plan.Walls {
		if w.Exterior {
			p, q := uv(w.From, s.turned), uv(w.To, s.turned)
			v.Line(sheet.PenMember, sheet.LayerNote, at(p.X, p.Y), at(q.X, q.Y))
		}
	}
	c := at(u0, v1)
	v.Box("label", "map of parts", sheet.Rect{X: c.X, Y: c.Y, W: r.X + r.W - c.X, H: sheet.MM((v1 - v0) * k)})
}

// floorNotes says how the panels of a level's floor are nailed, where the plan orders
// it.
func floorNotes(c *page.Context, l *plan.Level) (out []string) {
	for _, f := range c.Schedule.Floors {
		if f.Level == l {
			out = append(out, fmt.Sprintf("Floor of %s: panels of %s in %s, long side across the joists, joints staggered and over joists; %s at %s o.c. along ends of panels, over rims and along the floor's edge, %s o.c. over the joists between: %d pieces, %d nails.",
				l.Name, strings.TrimSuffix(plan.PanelOfInches(l.Subfloor).Text, " in"), f.Spec.Kind, f.Spec.Nail, c.Spacing(f.Spec.Edge), c.Spacing(f.Spec.Field), f.Pieces, f.Nails))
		}
	}
	return out
}
