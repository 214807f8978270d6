package lists

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/schedule"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/render/table"
)

// SchedulePages lays out the count, the nailing schedule, the nails, the count
// by wall, the shear walls and the order list.
func SchedulePages(c *page.Context) []*page.Page { return c.Largest(scheduleLaid) }

func scheduleLaid(c *page.Context) []*page.Page {
	f := c.NewFlow("Schedules: count, nails, order", "schedule")
	f.Put(countTable(c))
	blocks := []page.Block{nailTable(c), hostTable(c)}
	if t := nailingTable(c); t != nil {
		blocks = append([]page.Block{t}, blocks...)
	}
	if t := shearTable(c); t != nil {
		blocks = append(blocks, t)
	}
	blocks = append(blocks, orderTable(c))
	if c.Salt != nil {
		blocks = append(blocks, saltTable(c), saltNotes(c))
	}
	w := sheet.MM(0)
	for _, b := range blocks {
		w = max(w, b.Wanted(c))
	}
	f.ColumnsOf(min(w, f.Area.W))
	for _, b := range blocks {
		f.Put(b)
	}
	return f.Done()
}

// countTable is the schedule: one line a legend number, one row in it for
// each kind of nail.
func countTable(c *page.Context) *table.Table {
	t := &table.Table{Title: "Count schedule: the numbers are those in the circles", Cols: []table.Column{
		{Head: "No.", Align: sheet.Middle},
		{Head: "Symbol", Align: sheet.Middle},
		{Head: "Mark"},
		{Head: "Kind"},
		{Head: "Size", Wrap: true},
		{Head: "Install", Wrap: true},
		{Head: "Face", Wrap: true},
		{Head: "Pieces", Align: sheet.Right},
		{Head: "Nails per piece", Wrap: true},
		{Head: "Per piece", Align: sheet.Right},
		{Head: "Nails, total", Align: sheet.Right},
	}}
	pieces, nails := 0, 0
	for _, l := range c.Schedule.Lines {
		rows := lineRows(c, l)
		t.Rows = append(t.Rows, rows...)
		pieces += len(l.Pieces)
		for _, n := range l.Driven {
			nails += n
		}
	}
	t.Rows = append(t.Rows, table.Row{Bold: true, Cells: table.Texts("", "", "All", "", "", "", "", fmt.Sprint(pieces), "", "", fmt.Sprint(nails))})
	return t
}

// lineRows returns the rows of one schedule line.
func lineRows(c *page.Context, l *schedule.Line) []table.Row {
	it, n := l.Item, len(l.Pieces)
	head := []table.Cell{
		{Legend: l.Number},
		{Symbol: it.Kind.Symbol},
		{S: it.Mark},
		{S: string(it.Kind.Name)},
		{S: itemSize(c, it)},
		{S: string(it.Phase.Name)},
		{S: faces(l.Pieces)},
		{S: fmt.Sprint(n)},
	}
	if len(it.Fasteners) == 0 {
		return []table.Row{{Cells: append(head, table.Texts("none", "", "")...)}}
	}
	var rows []table.Row
	for i, f := range it.Fasteners {
		left := head
		if i > 0 {
			left = make([]table.Cell, len(head))
		}
		rows = append(rows, table.Row{Join: i > 0, Cells: append(slices.Clip(left),
			table.Texts(fastenerText(f)+fewer(l, i), fmt.Sprint(f.Total()), fmt.Sprint(l.Driven[i]))...)})
	}
	return rows
}

// fewer says at which pieces of a line fewer fasteners go in than the catalog has:
// "; 5 fewer at wing-312b-RR-hanger, one flange has no wood".
func fewer(l *schedule.Line, row int) string {
	var out string
	for _, p := range l.Pieces {
		if n := p.Item.Fasteners[row].Total() - p.Driven()[row]; n > 0 {
			out += fmt.Sprintf("; %d fewer at %s, one flange has no wood", n, p.Tag)
		}
	}
	return out
}

// fastenerText says which nails one part takes: "each end: 9 of 10d x 1 1/2",
// "each body: 15 screws No. 12 x 1 1/2".
func fastenerText(f plan.Fasteners) string {
	s := ""
	if f.Part != "" && f.Part != "all" {
		s = f.Part + ": "
	}
	s += plan.CountedFasteners(f.Count, f.Nail) + ", " + page.Coating(f.Coating)
	if f.Fill != "" {
		s += ", in " + f.Fill
	}
	if f.HandOnly {
		s += ", by hand only"
	}
	return s
}

// itemSize says how large the piece is: 1'-9" x 1 1/4" x 0.036".
func itemSize(c *page.Context, it *hardware.Item) string {
	var parts []string
	for _, in := range []float64{it.Length, it.Width} {
		if in > 0 {
			parts = append(parts, c.Length(in))
		}
	}
	s := strings.Join(parts, " x ")
	if it.Rod > 0 {
		s = page.Join(s, "rod "+c.Units().Bought(it.Rod))
	}
	switch {
	case it.Gauge != "":
		s = page.Join(s, page.GaugeText(it.Gauge))
	case it.Thickness > 0 && c.Metric():
		s = page.Join(s, fmt.Sprintf("%.1f mm thick", it.Thickness*25.4))
	case it.Thickness > 0:
		s = page.Join(s, fmt.Sprintf(`%.3f" thick`, it.Thickness))
	}
	if it.Bodies > 1 {
		s = page.Join(s, fmt.Sprintf("%d bodies", it.Bodies))
	}
	return page.Join(s, page.Material(it))
}

// faces counts the faces that pieces are on: "outside", or "inside 8, outside 12".
func faces(ps []*placement.Piece) string {
	count := map[string]int{}
	var names []string
	for _, p := range ps {
		name := cmp.Or(string(p.Face), "as drawn")
		if count[name] == 0 {
			names = append(names, name)
		}
		count[name]++
	}
	if len(names) == 1 {
		return names[0]
	}
	slices.Sort(names)
	for i, n := range names {
		names[i] = fmt.Sprintf("%s %d", n, count[n])
	}
	return strings.Join(names, ", ")
}

// nailTable sums the nails over all lines, those driven by hand apart.
func nailTable(c *page.Context) *table.Table {
	t := &table.Table{Title: "Nails, bolts and screws of the pieces", Cols: []table.Column{
		{Head: "Fastener", Wrap: true}, {Head: "Driven"}, {Head: "For No.", Wrap: true}, {Head: "Count", Align: sheet.Right},
	}}
	type key struct {
		nail    string
		coating plan.Coating
		hand    bool
	}
	count, users := map[key]int{}, map[key][]string{}
	var keys []key
	for _, l := range c.Schedule.Lines {
		for _, n := range l.Nails {
			k := key{n.Label(c.Units()), n.Size.Coating, n.Hand}
			if _, ok := count[k]; !ok {
				keys = append(keys, k)
			}
			count[k] += n.Count
			users[k] = append(users[k], fmt.Sprint(l.Number))
		}
	}
	slices.SortFunc(keys, func(a, b key) int {
		return cmp.Or(cmp.Compare(a.nail, b.nail), cmp.Compare(a.coating, b.coating), yes(a.hand)-yes(b.hand))
	})
	all := 0
	for _, k := range keys {
		how := "by hand or gun"
		if k.hand {
			how = "by hand only"
		}
		t.Rows = append(t.Rows, table.Row{Cells: table.Texts(page.Join(k.nail, page.Coating(k.coating)), how, strings.Join(slices.Compact(users[k]), ", "), fmt.Sprint(count[k]))})
		all += count[k]
	}
	t.Rows = append(t.Rows, table.Row{Bold: true, Cells: table.Texts("All", "", "", fmt.Sprint(all))})
	return t
}

func yes(b bool) int {
	if b {
		return 1
	}
	return 0
}

// hostTable counts the pieces of each wall, roof and girder by legend number.
func hostTable(c *page.Context) *table.Table {
	t := &table.Table{Title: "Pieces by wall, roof, girder and porch", Grid: true, Cols: []table.Column{{Head: "On"}}}
	for _, l := range c.Schedule.Lines {
		t.Cols = append(t.Cols, table.Column{Legend: l.Number, Align: sheet.Right})
	}
	t.Cols = append(t.Cols, table.Column{Head: "All", Align: sheet.Right})
	sums := make([]int, len(c.Schedule.Lines)+1)
	for _, h := range hosts(c) {
		counts := make([]int, len(sums))
		for _, p := range h.Pieces {
			counts[c.Legend(p)-1]++
			counts[len(counts)-1]++
		}
		t.Rows = append(t.Rows, table.Row{Cells: countCells(h.Name, counts)})
		for i, n := range counts {
			sums[i] += n
		}
	}
	t.Rows = append(t.Rows, table.Row{Bold: true, Cells: countCells("All", sums)})
	return t
}

// countCells prints counts, and nothing where there is none.
func countCells(name string, counts []int) []table.Cell {
	out := []table.Cell{{S: name}}
	for _, n := range counts {
		s := ""
		if n > 0 {
			s = fmt.Sprint(n)
		}
		out = append(out, table.Cell{S: s})
	}
	return out
}

// host is a wall, roof, girder or porch with its pieces in order of place.
type host struct {
	Name   string // "wall 1S", "roof main"
	Key    string // the plan's own name
	Wall   *plan.Wall
	Pieces []*placement.Piece
	roof   bool
}

// hosts returns what carries hardware from the ground up: girders and porches
// by name, walls as the plan has them, level by level, then roofs. The host is that of the piece's home sheet.
func hosts(c *page.Context) []*host {
	byName := map[string]*host{}
	var rest []*host
	for _, pc := range c.Placement.Pieces {
		h := hostOf(pc)
		if byName[h.Name] == nil {
			byName[h.Name] = h
			if h.Wall == nil {
				rest = append(rest, h)
			}
		}
		byName[h.Name].Pieces = append(byName[h.Name].Pieces, pc)
	}
	slices.SortStableFunc(rest, func(a, b *host) int { return cmp.Or(yes(a.roof)-yes(b.roof), cmp.Compare(a.Name, b.Name)) })
	roofs := slices.IndexFunc(rest, func(h *host) bool { return h.roof })
	if roofs < 0 {
		roofs = len(rest)
	}
	out := slices.Clone(rest[:roofs])
	for _, l := range c.House.Plan.Levels {
		for _, w := range c.House.Plan.Walls {
			if h := byName["wall "+w.Name]; h != nil && w.Level == l {
				out = append(out, h)
			}
		}
	}
	out = append(out, rest[roofs:]...)
	for _, h := range out {
		slices.SortStableFunc(h.Pieces, func(a, b *placement.Piece) int {
			return cmp.Or(cmp.Compare(a.Station, b.Station), cmp.Compare(a.Z0, b.Z0))
		})
	}
	return out
}

// hostOf names what a piece is nailed to: the wall on whose elevation it is
// at home, else the joint's own host.
func hostOf(p *placement.Piece) *host {
	j := p.Joint
	if page.HomeOf(p) == page.OnElevation {
		w := page.HomeWall(j)
		return &host{Name: "wall " + w.Name, Key: w.Name, Wall: w}
	}
	on := j.Place(j.Wall != nil).Host
	name := j.Host
	if name != string(on) { // a porch called "porch"
		name = j.HostName()
	}
	return &host{Name: name, Key: j.Host, roof: on == plan.RoofHost}
}
