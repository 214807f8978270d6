package floorplan

import (
	"fmt"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/render/table"
)

// stairwells lists the openings in the floor of a level.
func stairwells(c *page.Context, l *plan.Level) (out []*plan.FloorOpening) {
	for _, x := range c.House.Plan.FloorOpenings {
		if x.Level == l {
			out = append(out, x)
		}
	}
	return out
}

// joistsAround lists the joists around an opening, without doubles: of each end of a
// header the header and the trimmers, of each tail joist that joist.
func joistsAround(c *page.Context, x *plan.FloorOpening) (headers, trimmers, tails []*framing.Member) {
	add := func(list []*framing.Member, m *framing.Member) []*framing.Member {
		if slices.Contains(list, m) {
			return list
		}
		return append(list, m)
	}
	for _, j := range c.House.Joints {
		switch {
		case j.Host != x.Name:
		case j.Kind == plan.HeaderTrimmer:
			headers, trimmers = add(headers, j.Members[0]), add(trimmers, j.Members[1])
		case j.Kind == plan.TailHeader:
			tails = add(tails, j.Members[0])
		}
	}
	return headers, trimmers, tails
}

// drawStairwells draws the openings in a level's floor: the clear opening with its
// diagonals, and dashed, since the subfloor hides them, the joists around it.
func (v *planView) drawStairwells(l *plan.Level) {
	for _, x := range stairwells(v.Context, l) {
		headers, trimmers, tails := joistsAround(v.Context, x)
		for _, m := range slices.Concat(headers, trimmers, tails) {
			v.dashedJoist(m)
		}
		se, nw := geom.Vec2{X: x.Hi.X, Y: x.Lo.Y}, geom.Vec2{X: x.Lo.X, Y: x.Hi.Y}
		v.shape(sheet.Style{Pen: sheet.PenCut, Fill: sheet.White, Layer: sheet.LayerMember}, x.Lo, se, x.Hi, nw)
		v.stroke(sheet.PenDim, sheet.LayerMember, x.Lo, x.Hi)
		v.stroke(sheet.PenDim, sheet.LayerMember, se, nw)
		v.labelStairwell(x)
	}
	var spots []spot
	for _, pc := range v.Placement.Pieces {
		if page.HomeOf(pc) == page.OnFloor && pc.Joint.Level == l {
			m, away := pc.Joint.First(), geom.Vec2{X: 1} // of a post to the east
			if d := m.B.Sub(m.A).Flat(); d.Len() > 1 {
				away = d.Unit()
			}
			spots = append(spots, spot{piece: pc, at: pc.Joint.At.Flat(), away: away, home: true})
		}
	}
	v.drawSpots(spots)
}

// dashedJoist draws both edges of a joist and the joints between its plies.
func (v *planView) dashedJoist(m *framing.Member) {
	a, b := m.A.Flat(), m.B.Flat()
	n := b.Sub(a).Unit().Left()
	for i := range m.Section.Ply + 1 {
		off := n.Mul(m.Section.Width() * (float64(i)/float64(m.Section.Ply) - 0.5))
		v.stroke(sheet.PenHidden, sheet.LayerMember, a.Add(off), b.Add(off))
	}
}

// labelStairwell queues the opening's name with its size, and where its corner is.
func (v *planView) labelStairwell(x *plan.FloorOpening) {
	mid := v.pt(x.Lo.Add(x.Hi).Mul(0.5))
	if !v.sees(x.Lo.Add(x.Hi).Mul(0.5)) {
		return
	}
	wide, high := v.vp.Len(x.Hi.X-x.Lo.X), v.vp.Len(x.Hi.Y-x.Lo.Y)
	if v.turned {
		wide, high = high, wide
	}
	lines := wellWords(v.Context, x, wide-2)
	for i, s := range lines {
		at := sheet.Pt{X: mid.X, Y: mid.Y + (sheet.MM(i)-sheet.MM(len(lines)-1)/2)*v.Size.Note*1.6}
		v.words(s, page.Lettered{Role: "label"}, []sheet.Pt{
			at, {X: at.X, Y: at.Y - high/2 - v.Size.Note*4}, {X: at.X, Y: at.Y + high/2 + v.Size.Note*4}, {X: at.X, Y: at.Y + high + v.Size.Note*4},
		}, []sheet.Pt{mid})
	}
}

// wellWords are an opening's lines: what it is, and its place from the outside faces
// of the walls at the west and the south; more and shorter ones where there is less room.
func wellWords(c *page.Context, x *plan.FloorOpening, room sheet.MM) (out []string) {
	size, from := x.Hi.Sub(x.Lo), x.Lo
	if lo, _, ok := c.WallBounds(); ok {
		from = x.Lo.Sub(lo)
	}
	for _, pair := range [][2]string{
		{x.Name + ",", fmt.Sprintf("clear %s by %s", c.Length(size.X), c.Length(size.Y))},
		{c.Length(from.X) + " from west,", c.Length(from.Y) + " from south"},
	} {
		if one := pair[0] + " " + pair[1]; page.TextWidth(one, c.Size.Note, false) <= room {
			out = append(out, one)
		} else {
			out = append(out, pair[:]...)
		}
	}
	return out
}

// wellTable lists the openings in a level's floor with the joists around them.
func wellTable(c *page.Context, l *plan.Level) *table.Table {
	t := &table.Table{
		Title: "Openings in the floor of " + l.Name,
		Cols:  []table.Column{{Head: "Clear, east by north", Wrap: true}, {Head: "Corner", Wrap: true}, {Head: "Joists around it", Wrap: true, Grow: true}},
	}
	lo, _, _ := c.WallBounds()
	for _, x := range stairwells(c, l) {
		headers, trimmers, tails := joistsAround(c, x)
		size, from := x.Hi.Sub(x.Lo), x.Lo.Sub(lo)
		t.Rows = append(t.Rows, table.Row{Cells: []table.Cell{
			{S: fmt.Sprintf("%s, %s by %s", x.Name, c.Length(size.X), c.Length(size.Y))},
			{S: fmt.Sprintf("%s from west, %s from south", c.Length(from.X), c.Length(from.Y))},
			{S: fmt.Sprintf("headers: %s; trimmers: %s; %s", sections(headers), sections(trimmers), plan.Counted(len(tails), "tail joist"))},
		}})
	}
	return t
}

// sections says how many members there are and of what section: "2 of 2-2x12".
func sections(list []*framing.Member) string {
	if len(list) == 0 {
		return "none"
	}
	return fmt.Sprintf("%d of %s", len(list), list[0].Section.Text)
}
