package render

import (
	"fmt"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/render/sheet"
)

var _ = register(view{Series: 7, Order: 10, Name: "check sheets", Pages: checkPages})

// checkPages lays out a box to tick for each piece, wall by wall, in the
// order of work. Walls share a sheet as long as they fit on it whole; a wall
// that takes more than one has its own, to hang where it is nailed.
func checkPages(c *context) []*page { return c.largest(checkLaid) }

func checkLaid(c *context) (out []*page) {
	lists := map[*host][]laid{}
	f := c.checkFlow("", nil)
	hosts := c.hosts()
	for _, h := range hosts {
		lists[h] = c.hostLists(h, f.colW)
	}
	for _, g := range c.checkGroups(hosts, lists) {
		f := c.checkFlow("Check sheet: "+groupName(g), g)
		for _, h := range g {
			f.putLists(lists[h])
		}
		out = append(out, f.done()...)
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

func (c *context) checkFlow(name string, hosts []*host) *flow {
	var keys []string
	for _, h := range hosts {
		keys = append(keys, "check "+h.Key)
	}
	f := c.newFlow(name, keys...)
	f.columnsOf(c.checkColumn())
	return f
}

// checkColumn is the width of a column of boxes.
func (c *context) checkColumn() sheet.MM { return 51 * c.readingCap() }

// checkGroups parts the hosts so that each group fills one large sheet.
func (c *context) checkGroups(hosts []*host, lists map[*host][]laid) (groups [][]*host) {
	var f *flow
	for _, h := range hosts {
		if f != nil {
			f.putLists(lists[h])
		}
		if f == nil || len(f.pages) > 1 { // it begins a group
			f = c.checkFlow("", nil)
			f.putLists(lists[h])
			groups = append(groups, nil)
		}
		last := &groups[len(groups)-1]
		*last = append(*last, h)
	}
	return groups
}

// putLists puts the lists of one host.
func (f *flow) putLists(lists []laid) {
	for _, l := range lists {
		f.keep(4 * (tickSize + 3))
		f.putLaid(l)
	}
}

// hostLists lays out the lists of one host, phase by phase, each with its foot.
func (c *context) hostLists(h *host, w sheet.MM) (out []laid) {
	for _, ph := range hardware.Phases {
		ps := h.inPhase(ph)
		if len(ps) == 0 {
			continue
		}
		t := c.checkTable(h, ph, ps)
		t.Foot = c.checkFoot(ps, w)
		out = append(out, t.lay(c, w))
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
func (c *context) checkTable(h *host, ph *hardware.Phase, ps []*placement.Piece) *table {
	t := &table{Title: title(h.Name) + ", " + string(ph.Name), RowH: tickSize + 1.8, Cols: []tableColumn{
		{Head: "Done", Align: sheet.Middle}, {Head: "No.", Align: sheet.Middle}, {Head: "Place"}, {Head: "Joint", Wrap: true}, {Head: "Face", Wrap: true}, {Head: "Tag", Wrap: true, Grow: true},
	}}
	for _, l := range c.Schedule.Lines {
		first := true
		for _, p := range ps {
			if p.Item != l.Item {
				continue
			}
			if first {
				t.Rows = append(t.Rows, tableRow{Group: true, Cells: texts(markLine(l.Item))})
				first = false
			}
			t.Rows = append(t.Rows, tableRow{Cells: []tableCell{{Tick: true}, {Legend: l.Number}, {S: c.placeOn(h, p)}, {S: jointWords[p.Joint.Kind]}, {S: string(p.Face)}, {S: p.Tag}}})
		}
	}
	return t
}

// jointWords says in a framer's words what a joint is.
var jointWords = map[plan.JointKind]string{
	plan.RafterRidge: "rafters at ridge", plan.RafterPlate: "rafter to plate", plan.StudTop: "stud to top plate",
	plan.OpeningHead: "header end", plan.OpeningSill: "sill end", plan.PlateSplice: "plate splice",
	plan.Collector: "collector", plan.WallCorner: "corner", plan.StudStud: "stud to stud below",
	plan.WallEnd: "shear wall end", plan.StudBase: "stud foot", plan.PostCap: "beam on post",
	plan.PostBase: "post foot", plan.GirderPile: "girder on pile",
}

// markLine names a mark with the nails of one piece.
func markLine(it *hardware.Item) string {
	s := it.Mark
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
func (c *context) placeOn(h *host, p *placement.Piece) string {
	return c.length(h.station(p))
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
func (c *context) checkFoot(ps []*placement.Piece, w sheet.MM) *figure {
	z := c.readingCap()
	lines := wrapHard(footCounts(c, ps), z, true, w-4)
	rows := [...][2]string{{"Put on by", "date"}, {"Seen by", "date"}}
	const lineH sheet.MM = 9
	height := sheet.MM(len(lines))*pitch(z) + sheet.MM(len(rows))*lineH + 4
	return &figure{W: w, H: height, Draw: func(p *page, at sheet.Pt) {
		y := at.Y + z + 2
		for _, s := range lines {
			p.text(lettered{S: s, Cap: z, At: sheet.Pt{X: at.X, Y: y}, Bold: true, Role: "note"})
			y += pitch(z)
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
				b := p.text(lettered{S: s, Cap: z, At: sheet.Pt{X: x, Y: y}, Role: "note"})
				p.line(sheet.PenMember, sheet.LayerNote, sheet.Pt{X: b.X + b.W + 1.5, Y: y + 0.4}, sheet.Pt{X: to, Y: y + 0.4})
				x = to + 3
			}
		}
	}}
}

// footCounts counts the pieces of a list by legend number: "24 pieces: 8 of
// No. 1, 16 of No. 3".
func footCounts(c *context, ps []*placement.Piece) string {
	count := map[int]int{}
	var ns []int
	for _, p := range ps {
		n := c.legend(p)
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
