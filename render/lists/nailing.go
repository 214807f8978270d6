package lists

import (
	"fmt"
	"strings"

	"galewright/plan"
	"galewright/plan/nailing"
	"galewright/plan/schedule"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/render/table"
)

// nailingTable is the nailing schedule: one line a connection that the plan
// orders nails for, and what it orders none for; nil where the plan orders
// none at all.
func nailingTable(c *page.Context) *table.Table {
	n := c.Schedule.Nailing
	if len(n.Lines) == 0 {
		return nil
	}
	t := &table.Table{Title: "Nailing schedule: nails between members", Cols: []table.Column{
		{Head: "No."}, {Head: "Connection", Wrap: true}, {Head: "Nail", Wrap: true}, {Head: "Driven"}, {Head: "Nails", Wrap: true}, {Head: "Places", Align: sheet.Right}, {Head: "Nails, total", Align: sheet.Right},
	}}
	all := 0
	for _, l := range n.Lines {
		t.Rows = append(t.Rows, table.Row{Cells: table.Texts(l.Mark(), l.Row.One, l.Order.Nail, string(l.Order.Drive), l.Each(c.Spacing), fmt.Sprint(len(l.Spots)), fmt.Sprint(l.Nails))})
		all += l.Nails
	}
	t.Rows = append(t.Rows, table.Row{Bold: true, Cells: table.Texts("", "All", "", "", "", "", fmt.Sprint(all))})
	if len(n.Missing) > 0 {
		t.Rows = append(t.Rows, table.Row{Group: true, Cells: table.Texts("No nails ordered here; none counted")})
		for _, m := range n.Missing {
			t.Rows = append(t.Rows, table.Row{Cells: table.Texts("", m.Row.One, "none", "", "", fmt.Sprint(m.Spots), "")})
		}
	}
	return t
}

// withNailing returns the hosts of the check sheets: those with pieces, and
// each wall in its place that has only nails or panels; what is on no wall comes last.
func withNailing(c *page.Context, list []*host) (out []*host) {
	has := map[*plan.Wall]bool{}
	for _, h := range list {
		has[h.Wall] = true
	}
	var bare []*host
	for _, l := range c.House.Plan.Levels {
		for _, w := range c.House.Plan.Walls {
			if w.Level == l && !has[w] && nailsOn(c, w)+len(ownSheathing(c, w)) > 0 {
				bare = append(bare, &host{Name: "wall " + w.Name, Key: w.Name, Wall: w})
			}
		}
	}
	out = append(list, bare...)
	if nailsOn(c, nil) > 0 {
		out = append(out, &host{Name: offWalls, Key: "nailing"})
	}
	return out
}

// offWalls names what is nailed and belongs to no wall.
const offWalls = "floors, roof and girders"

// nailsOn returns how many nails between members a wall takes; nil for floors,
// roofs and girders.
func nailsOn(c *page.Context, w *plan.Wall) (n int) {
	for _, l := range c.Schedule.Nailing.Lines {
		n += l.NailsOn(w)
	}
	return n
}

// nailingCheck lists the nailing of one wall to sign, or of what is on none;
// nil where there is none of it.
func nailingCheck(c *page.Context, h *host) *table.Table {
	if h.Wall == nil && h.Name != offWalls {
		return nil // girders, porches and roofs are checked together
	}
	t := &table.Table{Title: title(h.Name) + ", nails between members", RowH: table.TickSize + 1.8, Cols: []table.Column{
		{Head: "Done", Align: sheet.Middle}, {Head: "No."}, {Head: "Connection", Wrap: true}, {Head: "Nails", Wrap: true, Grow: true}, {Head: "Total", Align: sheet.Right},
	}}
	for _, l := range c.Schedule.Nailing.Lines {
		if n := l.NailsOn(h.Wall); n > 0 {
			t.Rows = append(t.Rows, table.Row{Cells: []table.Cell{{Tick: true}, {S: l.Mark()}, {S: l.Row.One}, {S: nailsText(c, l)}, {S: fmt.Sprint(n)}}})
		}
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return t
}

// ownSheathing returns the stretches of sheathing outside of shear segments of a wall.
func ownSheathing(c *page.Context, w *plan.Wall) (out []*schedule.Sheathing) {
	for _, s := range c.Schedule.Sheathing {
		if s.Own && w != nil && s.Wall == w {
			out = append(out, s)
		}
	}
	return out
}

// sheathingCheck lists the panels of a wall outside of its shear segments to sign; nil
// where the plan says nothing of them.
func sheathingCheck(c *page.Context, h *host, w sheet.MM) *table.Table {
	t := &table.Table{Title: title(h.Name) + ", sheathing outside of shear walls", RowH: table.TickSize + 1.8, Cols: []table.Column{
		{Head: "Done", Align: sheet.Middle}, {Head: "From"}, {Head: "To"}, {Head: "Panel and nails", Wrap: true, Grow: true}, {Head: "Nails", Align: sheet.Right},
	}}
	panels, nails := 0, 0
	for _, s := range ownSheathing(c, h.Wall) {
		x := s.Shear
		text := fmt.Sprintf("%s panel, %s, edges %s o.c., field %s o.c.", x.Panel, x.Nail, c.Spacing(x.Edge), c.Spacing(x.Field))
		t.Rows = append(t.Rows, table.Row{Cells: []table.Cell{{Tick: true}, {S: c.Length(x.From)}, {S: c.Length(x.To)}, {S: text}, {S: fmt.Sprint(s.Nails)}}})
		panels, nails = panels+s.Panels, nails+s.Nails
	}
	if len(t.Rows) == 0 {
		return nil
	}
	t.Foot = signLines(c, plan.Counted(panels, "panel")+" and "+plan.Counted(nails, "nail")+" in all", w)
	return t
}

// nailsText says which nails go in and how: "16d common, end, 2 each".
func nailsText(c *page.Context, l *nailing.Line) string {
	return strings.Join([]string{l.Order.Nail, string(l.Order.Drive), l.Each(c.Spacing)}, ", ")
}

// nailFoot counts the nails of a list and leaves lines for names and dates.
func nailFoot(c *page.Context, h *host, w sheet.MM) *page.Figure {
	return signLines(c, plan.Counted(nailsOn(c, h.Wall), "nail")+" in all", w)
}
