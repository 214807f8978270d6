package lists

import (
	"fmt"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/render/page"
	"galewright/render/page/pagetest"
	"galewright/render/sheet"

	"github.com/stretchr/testify/require"
)

var textPapers = []string{"letter", "a4", "tabloid", "arch-c", "arch-d"}

// textSet draws the views of this file's subject alone.
func textSet(t require.TestingT, m *page.Model, paper string) (*page.Context, []*page.Page) {
	c := pagetest.Context(t, m, paper)
	c.Foreseen = page.Outlook{
		{Number: "S-001", Name: "Cover: legend, index, key plan", Scale: "none"},
		{Number: "S-201", Name: "Wall 1S", Scale: `1/2" = 1'-0"`, Series: 2, Keys: []string{"wall 1S"}},
	}
	var pages []*page.Page
	add := func(series int, more []*page.Page) {
		for _, p := range more {
			p.Series = series
		}
		pages = append(pages, more...)
	}
	add(0, CoverPages(c))
	add(6, SchedulePages(c))
	add(7, CheckPages(c))
	page.Number(pages)
	c.Pages = pages
	for _, p := range pages {
		p.DrawFrame()
		p.Draw(p)
	}
	return c, pages
}

func series(pages []*page.Page, n int) (out []*page.Page) {
	for _, p := range pages {
		if p.Series == n {
			out = append(out, p)
		}
	}
	return out
}

// strings returns the text of the pages, each line of lettering apart.
func lines(pages []*page.Page) (out []string) {
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
	m := pagetest.TextHouse()
	for _, paper := range textPapers {
		_, pages := textSet(t, m, paper)
		for _, p := range pages {
			var texts []sheet.Text
			var boxes []sheet.Rect
			for _, mk := range p.Marks {
				if !page.FrameOf(p.Sheet.Paper).Holds(sheet.Bounds(mk, nil), 0.3) {
					t.Errorf("%s %s: %#v leaves the frame", paper, p.Number, mk)
				}
				if x, ok := mk.(sheet.Text); ok {
					texts, boxes = append(texts, x), append(boxes, x.Box().Inset(0.05))
				}
			}
			for i, a := range texts {
				require.GreaterOrEqual(t, float64(a.Size*sheet.CapHeight), float64(page.MinLetter)-1e-9, "%s %s: %q", paper, p.Number, a.S)
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
	m := pagetest.TextHouse()
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
		require.Positive(t, seen["Installed by"])
		require.Equal(t, seen["Installed by"], seen["Inspected by"])
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
	m := pagetest.TextHouse()
	c := pagetest.Context(t, m, "arch-d")
	count, nails := countTable(c), 0
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

	all := nailTable(c)
	require.Equal(t, fmt.Sprint(nails), all.Rows[len(all.Rows)-1].Cells[3].S)
	hosts := hostTable(c)
	foot := hosts.Rows[len(hosts.Rows)-1].Cells
	require.Equal(t, fmt.Sprint(len(m.Placement.Pieces)), foot[len(foot)-1].S)
	for i, l := range m.Schedule.Lines {
		require.Equal(t, fmt.Sprint(len(l.Pieces)), foot[i+1].S)
	}
}

func TestCoverTellsWhatWasAssumed(t *testing.T) {
	_, pages := textSet(t, pagetest.TextHouse(), "letter")
	text := strings.Join(lines(series(pages, 0)), "\n")
	for _, s := range []string{"150 mph", "enclosed (assumed", "ASCE 7-22", "S-201", "structural engineer of record", "first issue", "stud-clip", "S-001 to S-00"} {
		require.Contains(t, text, s)
	}
	require.NotContains(t, text, "unused-strap")
}

// The schedule says which holes take a nail.
func TestWhichHolesTakeANailIsSaid(t *testing.T) {
	f := plan.Fasteners{Part: "to post", Nail: "No. 14 x 2", Count: 13, Parts: 1, Holes: 26, Fill: "every second hole"}
	require.Equal(t, "to post: 13 of No. 14 x 2, coating blank, in every second hole", fastenerText(f))
}
