package lists

import (
	"fmt"
	"slices"
	"strings"

	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/steel"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/render/table"
)

// CheckPages lays out a box to tick for each piece and each line of nailing,
// wall by wall, in the order of work. Walls share a sheet as long as they fit on it whole; a wall
// that takes more than one has its own, to hang where it is nailed.
func CheckPages(c *page.Context) []*page.Page { return c.Largest(checkLaid) }

func checkLaid(c *page.Context) (out []*page.Page) {
	lists := map[*host][]page.Laid{}
	f := checkFlow(c, "", nil)
	hosts := withNailing(c, hosts(c))
	for _, h := range hosts {
		lists[h] = hostLists(c, h, f.ColumnWidth)
	}
	for _, g := range checkGroups(c, hosts, lists) {
		f := checkFlow(c, "Check sheet: "+groupName(g), g)
		for _, h := range g {
			putLists(f, lists[h])
		}
		out = append(out, f.Done()...)
	}
	return out
}

// groupName names a sheet by its first and last host.
func groupName(g []*host) string {
	if len(g) == 1 {
		return g[0].Name
	}
	return g[0].Name + " to " + g[len(g)-1].Name
}

func checkFlow(c *page.Context, name string, hosts []*host) *page.Flow {
	var keys []string
	for _, h := range hosts {
		keys = append(keys, "check "+h.Key)
	}
	f := c.NewFlow(name, keys...)
	f.ColumnsOf(checkColumn(c))
	return f
}

// checkColumn is the width of a column of boxes.
func checkColumn(c *page.Context) sheet.MM { return 51 * c.ReadingCap() }

// checkGroups parts the hosts so that each group fills one large sheet.
func checkGroups(c *page.Context, hosts []*host, lists map[*host][]page.Laid) (groups [][]*host) {
	var f *page.Flow
	for _, h := range hosts {
		if f != nil {
			putLists(f, lists[h])
		}
		if f == nil || len(f.Pages) > 1 { // it begins a group
			f = checkFlow(c, "", nil)
			putLists(f, lists[h])
			groups = append(groups, nil)
		}
		last := &groups[len(groups)-1]
		*last = append(*last, h)
	}
	return groups
}

// putLists puts the lists of one host.
func putLists(f *page.Flow, lists []page.Laid) {
	for _, l := range lists {
		f.Keep(4 * (table.TickSize + 3))
		f.PutLaid(l)
	}
}

// hostLists lays out the lists of one host, phase by phase, each with its foot.
func hostLists(c *page.Context, h *host, w sheet.MM) (out []page.Laid) {
	for _, ph := range hardware.Phases {
		ps := h.inPhase(ph)
		if len(ps) == 0 {
			continue
		}
		t := checkTable(c, h, ph, ps)
		t.Foot = checkFoot(c, ps, w)
		out = append(out, t.Lay(c, w))
	}
	if t := nailingCheck(c, h); t != nil {
		t.Foot = nailFoot(c, h, w)
		out = append(out, t.Lay(c, w))
	}
	if t := sheathingCheck(c, h, w); t != nil {
		out = append(out, t.Lay(c, w))
	}
	return out
}

// inPhase returns the pieces that go on in a phase, in order of place.
func (h *host) inPhase(ph *hardware.Phase) (out []*placement.Piece) {
	for _, p := range h.Pieces {
		if p.Item.Phase == ph {
			out = append(out, p)
		}
	}
	return out
}

// checkTable lists the pieces of one host and phase, each with its box: mark
// by mark, so that one nail and one nailer go along the wall at a time.
func checkTable(c *page.Context, h *host, ph *hardware.Phase, ps []*placement.Piece) *table.Table {
	t := &table.Table{Title: title(h.Name) + ", " + string(ph.Name), RowH: table.TickSize + 1.8, Cols: []table.Column{
		{Head: "Done", Align: sheet.Middle}, {Head: "No.", Align: sheet.Middle}, {Head: "Place"}, {Head: "Joint", Wrap: true}, {Head: "Face", Wrap: true}, {Head: "Tag", Wrap: true, Grow: true},
	}}
	for _, l := range c.Schedule.Lines {
		first := true
		for _, p := range ps {
			if p.Item != l.Item {
				continue
			}
			if first {
				t.Rows = append(t.Rows, table.Row{Group: true, Cells: table.Texts(markLine(l.Item))})
				first = false
			}
			t.Rows = append(t.Rows, table.Row{Cells: []table.Cell{{Tick: true}, {Legend: l.Number}, {S: placeOn(c, h, p)}, {S: c.House.Plan.InRoofWords(p.Joint.Kind.Row().One) + leftOut(p)}, {S: string(p.Face)}, {S: p.Tag}}})
		}
	}
	return t
}

// leftOut says which fasteners of a piece's mark do not go in at its place.
func leftOut(p *placement.Piece) (out string) {
	for i, e := range p.Item.Ends() {
		if n := p.LeftOut(i); n > 0 {
			out += "; " + steel.LeftOutText(n, e)
		}
	}
	return out
}

// markLine names a mark with the nails of one piece.
func markLine(it *hardware.Item) string {
	s := page.Join(it.Mark, page.Material(it))
	for i, f := range it.Fasteners {
		sep := "; "
		if i == 0 {
			sep = ": "
		}
		s += sep + fastenerText(f)
	}
	return s
}

// title begins s with a capital.
func title(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// placeOn says where a piece is: its station from the measuring end of what
// it hangs on.
func placeOn(c *page.Context, h *host, p *placement.Piece) string {
	return c.Length(h.station(p))
}

// station returns where along the host the piece stands, in: along the wall
// of its home elevation, which need not be the joint's own host.
func (h *host) station(p *placement.Piece) float64 {
	if h.Wall == nil || p.Joint.Wall == h.Wall {
		return p.Station
	}
	s, _ := h.Wall.Frame().Local(p.Joint.At.Flat())
	return s
}

// checkFoot counts the pieces by number and leaves lines for names and dates.
func checkFoot(c *page.Context, ps []*placement.Piece, w sheet.MM) *page.Figure {
	return signLines(c, footCounts(c, ps)+classCounts(c, ps), w)
}

// signLines sets a count over lines for names and dates.
func signLines(c *page.Context, count string, w sheet.MM) *page.Figure {
	z := c.ReadingCap()
	lines := table.WrapHard(count, z, true, w-4)
	rows := [...][2]string{{"Installed by", "date"}, {"Inspected by", "date"}}
	const lineH sheet.MM = 9
	height := sheet.MM(len(lines))*table.Pitch(z) + sheet.MM(len(rows))*lineH + 4
	return &page.Figure{W: w, H: height, Draw: func(p *page.Page, at sheet.Pt) {
		y := at.Y + z + 2
		for _, s := range lines {
			p.Text(page.Lettered{S: s, Cap: z, At: sheet.Pt{X: at.X, Y: y}, Bold: true, Role: "note"})
			y += table.Pitch(z)
		}
		y -= z
		for _, r := range rows {
			y += lineH
			x := at.X
			for i, s := range r {
				to := at.X + w*0.64
				if i > 0 {
					to = at.X + w
				}
				b := p.Text(page.Lettered{S: s, Cap: z, At: sheet.Pt{X: x, Y: y}, Role: "note"})
				p.Line(sheet.PenMember, sheet.LayerNote, sheet.Pt{X: b.X + b.W + 1.5, Y: y + 0.4}, sheet.Pt{X: to, Y: y + 0.4})
				x = to + 3
			}
		}
	}}
}

// footCounts counts the pieces of a list by legend number: "24 pieces: 8 of
// No. 1, 16 of No. 3".
func footCounts(c *page.Context, ps []*placement.Piece) string {
	count := map[int]int{}
	var ns []int
	for _, p := range ps {
		n := c.Legend(p)
		if count[n] == 0 {
			ns = append(ns, n)
		}
		count[n]++
	}
	slices.Sort(ns)
	s := fmt.Sprintf("%d pieces: ", len(ps))
	if len(ps) == 1 {
		s = "1 piece: "
	}
	for i, n := range ns {
		if i > 0 {
			s += ", "
		}
		s += fmt.Sprintf("%d of No. %d", count[n], n)
	}
	return s
}
