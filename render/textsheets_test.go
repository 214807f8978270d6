package render

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/schedule"
	"galewright/render/sheet"
)

// textModel returns an invented house of two levels whose pieces are put down
// by hand, so that the text sheets are tested apart from framing and rules.
func textModel() *Model {
	p := &plan.Plan{
		Project: plan.Project{
			Name: "Heron Point, lot 4", Number: "24-017", Site: "Sandbar Lane, lot 4", Date: "2026-03-02", Revision: "0",
			DrawnBy: "site office", CheckedBy: "lead framer", Engineer: "structural engineer of record", Notes: []string{"Piles by others."},
		},
		Site: plan.Site{WindSpeed: 150, Exposure: "D", Risk: "II", Edition: "7-22", Enclosure: "enclosed", Kzt: 1, Assumed: []string{`enclosure = "enclosed"`}},
	}
	for i, name := range []string{"first", "second"} {
		p.Levels = append(p.Levels, &plan.Level{Name: name, Index: i, Floor: 120 + 122*float64(i), PlateHeight: 109.125})
	}
	for i, l := range p.Levels {
		for _, w := range []struct {
			name           string
			x0, y0, x1, y1 float64
		}{{"S", 0, 0, 44, 0}, {"E", 44, 0, 44, 28}, {"N", 44, 28, 0, 28}, {"W", 0, 28, 0, 0}, {"A", 20, 0, 20, 28}, {"stair", 8, 14, 8, 28}} {
			p.Walls = append(p.Walls, &plan.Wall{
				Name: fmt.Sprintf("%d%s", i+1, w.name), Level: l, ToLevel: l, Exterior: len(w.name) == 1 && w.name != "A",
				From: geom.Vec2{X: w.x0 * 12, Y: w.y0 * 12}, To: geom.Vec2{X: w.x1 * 12, Y: w.y1 * 12}, Studs: plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 5.5}, Spacing: 16,
			})
		}
	}
	p.Roofs = []*plan.Roof{{Name: "main", Over: p.Levels[1]}}
	p.Items = textItems()
	c, _ := hardware.New(p.Items)
	m := &Model{House: &framing.House{Plan: p}}
	m.Placement = &placement.Placement{House: m.House, Catalog: c}
	for _, w := range p.Walls {
		for s := 0.75; s < w.Length(); s += 16 {
			m.put(w, s, plan.StudTop, "stud-clip", "inside", w.Level.Top())
			if w.Exterior {
				m.put(w, s, plan.StudBase, "strap-48", "outside", w.Level.Floor)
			}
		}
		m.put(w, 1.5, plan.WallEnd, "long-strap-60", "inside", w.Level.Floor)
		m.put(w, 4.5, plan.WallEnd, "hold-down-pair-8", "inside", w.Level.Floor)
	}
	for i := range 34 {
		j := &framing.Joint{Kind: plan.RafterRidge, Host: "main", Roof: p.Roofs[0], Station: float64(i * 16)}
		m.Placement.Pieces = append(m.Placement.Pieces, &placement.Piece{Tag: fmt.Sprintf("main-%d-RR-ridge", i*16), Joint: j, Item: c.Item("ridge-strap-30"), Face: "top", Station: j.Station})
	}
	m.Schedule = schedule.New(m.Placement)
	return m
}

func textItems() []*plan.Item {
	nails := func(part, nail string, count, parts int, hand bool) plan.Fasteners {
		return plan.Fasteners{Part: part, Nail: nail, Count: count, Parts: parts, HandOnly: hand}
	}
	return []*plan.Item{
		{Mark: "stud-clip", Kind: "clip", Length: 4, Gauge: "20", Fasteners: []plan.Fasteners{nails("to stud", "8d x 1 1/2", 4, 1, false), nails("to plate", "8d x 1 1/2", 5, 1, false)}},
		{Mark: "ridge-strap-30", Kind: "ridge strap", Length: 30, Width: 1.25, Gauge: "20", Fasteners: []plan.Fasteners{nails("each end", "10d x 1 1/2", 8, 2, false)}},
		{Mark: "strap-48", Kind: "strap", Length: 48, Width: 1.25, Gauge: "18", Fasteners: []plan.Fasteners{nails("each end", "10d x 1 1/2", 11, 2, false)}},
		{Mark: "unused-strap", Kind: "strap", Length: 99, Width: 1.25, Gauge: "18", Fasteners: []plan.Fasteners{nails("each end", "10d x 1 1/2", 11, 2, false)}},
		{Mark: "long-strap-60", Kind: "long strap", Length: 60, Width: 2, Gauge: "14", Fasteners: []plan.Fasteners{nails("above", "10d common", 14, 1, true), nails("below", "10d common", 13, 1, true)}},
		{Mark: "hold-down-pair-8", Kind: "hold-down pair", Rod: .625, Gauge: "12", Standoff: 1.5, Fasteners: []plan.Fasteners{nails("each body", "screw 1/4 x 3", 10, 2, false)}},
	}
}

func (m *Model) put(w *plan.Wall, s float64, k plan.JointKind, mark string, face plan.Face, z float64) {
	it := m.Placement.Catalog.Item(mark)
	j := &framing.Joint{Kind: k, Host: w.Name, Wall: w, Level: w.Level, Station: s, At: w.Frame().At(s, 0, z)}
	m.Placement.Pieces = append(m.Placement.Pieces, &placement.Piece{
		Tag: fmt.Sprintf("%s-%.0f-%s-%s", w.Name, s, k.Code(), it.Kind.Code), Joint: j, Item: it, Face: face, Station: s, Z0: z, Z1: z + it.Length,
	})
}

var textPapers = []string{"letter", "a4", "tabloid", "arch-c", "arch-d"}

// textContext returns a context on a paper.
func textContext(t require.TestingT, m *Model, paper string) *context {
	c, ok := newContext(m, Options{Paper: paper})
	require.True(t, ok)
	return c
}

// textSet draws the views of this file's subject alone.
func textSet(t require.TestingT, m *Model, paper string) (*context, []*page) {
	c := textContext(t, m, paper)
	c.foreseen = outlook{
		{number: "S-001", name: "Cover: legend, index, key plan", scale: "none"},
		{number: "S-201", name: "Wall 1S", scale: `1/2" = 1'-0"`, series: 2, keys: []string{"wall 1S"}},
	}
	var pages []*page
	for _, v := range []view{{Series: 0, Pages: coverPages}, {Series: 6, Pages: schedulePages}, {Series: 7, Pages: checkPages}} {
		for _, p := range v.Pages(c) {
			p.series = v.Series
			pages = append(pages, p)
		}
	}
	number(pages)
	c.Pages = pages
	for _, p := range pages {
		p.drawFrame()
		p.Draw(p)
	}
	return c, pages
}

func series(pages []*page, n int) (out []*page) {
	for _, p := range pages {
		if p.series == n {
			out = append(out, p)
		}
	}
	return out
}

// strings returns the text of the pages, each line of lettering apart.
func lines(pages []*page) (out []string) {
	for _, p := range pages {
		for _, m := range p.Marks {
			if t, ok := m.(sheet.Text); ok {
				out = append(out, t.S)
			}
		}
	}
	return out
}

func TestTextSheetsStayInTheirFrameAndNothingLiesOnAnother(t *testing.T) {
	m := textModel()
	for _, paper := range textPapers {
		_, pages := textSet(t, m, paper)
		for _, p := range pages {
			var texts []sheet.Text
			var boxes []sheet.Rect
			for _, mk := range p.Marks {
				if !p.frame.Holds(sheet.Bounds(mk, nil), 0.3) {
					t.Errorf("%s %s: %#v leaves the frame", paper, p.Number, mk)
				}
				if x, ok := mk.(sheet.Text); ok {
					texts, boxes = append(texts, x), append(boxes, x.Box().Inset(0.05))
				}
			}
			for i, a := range texts {
				require.GreaterOrEqual(t, float64(a.Size*sheet.CapHeight), float64(minLetter)-1e-9, "%s %s: %q", paper, p.Number, a.S)
				for k := range texts[:i] {
					if boxes[i].Overlaps(boxes[k]) {
						t.Errorf("%s %s: %q lies on %q", paper, p.Number, a.S, texts[k].S)
					}
				}
			}
			for i, a := range p.Boxes {
				for _, b := range p.Boxes[i+1:] {
					require.False(t, a.Inset(0.01).Overlaps(b.Inset(0.01)), "%s %s: %s lies on %s", paper, p.Number, a.What, b.What)
				}
			}
		}
	}
}

func TestEveryPieceHasOneBoxToTick(t *testing.T) {
	m := textModel()
	for _, paper := range textPapers {
		_, pages := textSet(t, m, paper)
		checks := series(pages, 7)
		seen := map[string]int{}
		for _, s := range lines(checks) {
			seen[s]++
		}
		boxes := 0
		for _, p := range checks {
			for _, mk := range p.Marks {
				q, ok := mk.(sheet.Polyline)
				if ok && q.Closed && q.Fill == sheet.White && q.Pen == sheet.PenMember && q.Layer == sheet.LayerNote {
					b := sheet.Bounds(q, nil)
					require.GreaterOrEqual(t, float64(min(b.W, b.H)), 5.0, "a carpenter's pencil needs room")
					boxes++
				}
			}
		}
		require.Equal(t, len(m.Placement.Pieces), boxes, paper)
		for _, pc := range m.Placement.Pieces {
			require.Equal(t, 1, seen[pc.Tag], "%s: %s", paper, pc.Tag)
		}
		require.Positive(t, seen["Put on by"])
		require.Equal(t, seen["Put on by"], seen["Seen by"])
		require.Equal(t, len(m.Placement.Pieces), footTotal(t, lines(checks)), paper)
	}
}

// footTotal adds up "N pieces:" at the foot of all lists.
func footTotal(t require.TestingT, ss []string) (n int) {
	for _, s := range ss {
		var k int
		if c, _ := fmt.Sscanf(s, "%d piece", &k); c == 1 && strings.Contains(s, ": ") {
			n += k
		}
	}
	return n
}

func TestSchedulesCountWhatIsPlaced(t *testing.T) {
	m := textModel()
	c := textContext(t, m, "arch-d")
	count, nails := c.countTable(), 0
	for _, p := range m.Placement.Pieces {
		for _, f := range p.Item.Fasteners {
			nails += f.Total()
		}
	}
	last := count.Rows[len(count.Rows)-1].Cells
	require.Equal(t, fmt.Sprint(len(m.Placement.Pieces)), last[7].S)
	require.Equal(t, fmt.Sprint(nails), last[10].S)
	var numbers []int
	for _, r := range count.Rows {
		if r.Cells[0].Legend > 0 {
			numbers = append(numbers, r.Cells[0].Legend)
		}
	}
	require.Equal(t, []int{1, 2, 3, 4, 5}, numbers, "without gaps, the unused mark not among them")

	all := c.nailTable()
	require.Equal(t, fmt.Sprint(nails), all.Rows[len(all.Rows)-1].Cells[3].S)
	hosts := c.hostTable()
	foot := hosts.Rows[len(hosts.Rows)-1].Cells
	require.Equal(t, fmt.Sprint(len(m.Placement.Pieces)), foot[len(foot)-1].S)
	for i, l := range m.Schedule.Lines {
		require.Equal(t, fmt.Sprint(len(l.Pieces)), foot[i+1].S)
	}
}

func TestCoverTellsWhatWasAssumed(t *testing.T) {
	_, pages := textSet(t, textModel(), "letter")
	text := strings.Join(lines(series(pages, 0)), "\n")
	for _, s := range []string{"150 mph", "enclosed (assumed", "ASCE 7-22", "S-201", "structural engineer of record", "first issue", "stud-clip", "S-001 to S-00"} {
		require.Contains(t, text, s)
	}
	require.NotContains(t, text, "unused-strap")
}

// A table of any text, on any width, parted at any height: each row stands
// once and in order, no text leaves its part, and parts are not too high.
func TestTableHoldsItsTextHoweverNarrow(t *testing.T) {
	m := textModel()
	rapid.Check(t, func(t *rapid.T) {
		c := textContext(t, m, "letter")
		words := rapid.StringMatching(`[a-zA-Z0-9'"/ -]{0,40}`)
		tb := &table{Title: "T", Cols: []tableColumn{{Head: "No.", Align: sheet.Middle}, {Head: "What it is", Wrap: true}, {Head: "Count", Align: sheet.Right}}}
		n := rapid.IntRange(1, 30).Draw(t, "rows")
		for i := range n {
			tb.Rows = append(tb.Rows, tableRow{
				Join:  i > 0 && rapid.IntRange(0, 4).Draw(t, "join") == 0,
				Cells: []tableCell{{S: fmt.Sprintf("r%d", i)}, {S: words.Draw(t, "text")}, {S: fmt.Sprint(i)}},
			})
		}
		w := sheet.MM(rapid.Float64Range(40, 200).Draw(t, "width"))
		h := sheet.MM(rapid.Float64Range(60, 200).Draw(t, "height"))
		rest := tb.lay(c, w)
		var seen []string
		for rest != nil {
			var part laid
			part, rest = rest.split(h)
			if part == nil {
				return // a run of joined rows higher than the part
			}
			require.LessOrEqual(t, float64(part.height()), float64(h)+1e-9)
			p := c.newPage("", "")
			part.draw(p, sheet.Pt{X: 10, Y: 10})
			box := sheet.Rect{X: 10, Y: 10, W: w, H: part.height()}
			for _, mk := range p.Marks {
				x, ok := mk.(sheet.Text)
				if !ok {
					continue
				}
				require.True(t, box.Holds(x.Box(), 0.1), "%q in %v, not %v", x.S, x.Box(), box)
				if strings.HasPrefix(x.S, "r") && x.Anchor == sheet.Middle {
					seen = append(seen, x.S)
				}
			}
		}
		require.Len(t, seen, n)
		for i, s := range seen {
			require.Equal(t, fmt.Sprintf("r%d", i), s)
		}
	})
}

func TestTableFootIsNeverAlone(t *testing.T) {
	c := textContext(t, textModel(), "letter")
	tb := &table{Title: "T", Cols: []tableColumn{{Head: "A"}}, Foot: &figure{W: 20, H: 20, Draw: func(*page, sheet.Pt) {}}}
	for range 10 {
		tb.Rows = append(tb.Rows, tableRow{Cells: texts("x")})
	}
	whole := tb.lay(c, 50)
	first, rest := whole.split(whole.height() - 1)
	require.NotNil(t, first)
	l := rest.(*laidTable)
	require.Positive(t, l.to-l.from, "a row goes along with the foot")
	require.Positive(t, float64(l.footH()))
	require.Zero(t, float64(first.(*laidTable).footH()))
}

func TestEveryJointKindHasAFramersWords(t *testing.T) {
	for _, k := range plan.JointKinds {
		require.NotEmpty(t, jointWords[k], k)
	}
}
