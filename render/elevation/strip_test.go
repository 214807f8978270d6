package elevation

import (
	"slices"
	"strings"
	"testing"

	"galewright/plan/geom"
	"galewright/plan/placement"
	"galewright/render/page"
	"galewright/render/page/pagetest"
	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// stripOf returns the entries of all strips of a wall's pieces on a part.
func stripOf(p *part, wall string) (out []entry, title string) {
	for _, r := range p.plan.rows {
		if s := strings.Join(r.title, " "); strings.HasPrefix(s, wall+": ") && !strings.Contains(s, "studs, near") {
			out, title = append(out, r.entries...), s
		}
	}
	return out, title
}

// entered tells whether a strip gives a piece's number at its place.
func entered(p *part, list []entry, pc *placement.Piece) bool {
	return slices.ContainsFunc(list, func(e entry) bool {
		return abs(e.u-p.station(pc)) < 1.0/16 && slices.Contains(e.numbers, p.Legend(pc))
	})
}

// A complete strip gives every piece of its wall at its place; one that is not
// leaves out only what lies at a stud's center or edge, and says so.
func TestStripGivesEveryPieceOrSaysWhichNot(t *testing.T) {
	c, ok := page.NewContext(pagetest.Example(t, "marsh-wren.toml"), page.Options{Paper: "tabloid"})
	require.True(t, ok)
	given, left := 0, 0
	for _, e := range elevations(c) {
		for _, p := range e.split() {
			for _, p.full = range []bool{true, false} {
				p.settle(p.scale)
				for _, pc := range p.pieces {
					if !p.owns(pc) {
						continue
					}
					wall := page.HomeWall(pc.Joint).Name
					list, title := stripOf(p, wall)
					if entered(p, list, pc) {
						given++
						continue
					}
					left++
					i := slices.IndexFunc(p.stories, func(s story) bool { return s.wall.Name == wall })
					assert.False(t, p.full, "%s is not in the complete strip", pc.Tag)
					assert.True(t, near(p.studsOf(i), p.station(pc)), "%s is left out", pc.Tag)
					assert.True(t, title == "" || strings.Contains(title, "except those at a stud's center or edge"), title)
				}
			}
		}
	}
	assert.Positive(t, given)
	assert.Positive(t, left)
}

// A wall is drawn at the largest scale that a sheet of its own takes, or at no
// less than half of that beside others, and never larger.
func TestPackingKeepsScales(t *testing.T) {
	for _, paper := range pagetest.Papers {
		c, _ := page.NewContext(pagetest.Example(t, "marsh-wren.toml"), page.Options{Paper: paper})
		var parts []*part
		for _, e := range elevations(c) {
			own := e.split()
			for _, p := range own {
				p.siblings, p.best = own, p.scale
			}
			parts = append(parts, own...)
		}
		pages := pack(c, parts)
		assert.LessOrEqual(t, len(pages), len(parts))
		for _, p := range parts {
			require.NotNil(t, p.page)
			assert.GreaterOrEqual(t, p.scale.Ratio, p.best.Ratio, p.line.Name)
			assert.LessOrEqual(t, p.scale.Ratio, 2*p.best.Ratio, p.line.Name)
			w, h := p.size()
			assert.True(t, p.page.Area.Holds(sheet.Rect{X: p.at.X, Y: p.at.Y, W: w, H: h}, 0.01), "%s on %s", p.line.Name, paper)
		}
	}
}

// Notes stand whole or not at all.
func TestNotesOfElevationsAreNotCut(t *testing.T) {
	whole := map[string]bool{}
	for _, s := range append(slices.Clone(readingNotes), shortNotes...) {
		whole[s] = true
	}
	for _, file := range pagetest.ExampleFiles() {
		for _, s := range onEveryPaper(t, pagetest.Model(file)) {
			var lines []string
			for _, k := range s.Marks {
				if x, ok := k.(sheet.Text); ok && x.Role == "note" && !x.Bold {
					lines = append(lines, x.S)
				}
			}
			text := strings.Join(lines, " ")
			for _, list := range [][]string{readingNotes, shortNotes} {
				for _, n := range list {
					start := strings.Join(strings.Fields(n)[:3], " ")
					if strings.Contains(text, start) && !strings.Contains(text, n) {
						other := slices.ContainsFunc(append(slices.Clone(readingNotes), shortNotes...), func(o string) bool {
							return o != n && strings.HasPrefix(o, start) && strings.Contains(text, o)
						})
						assert.True(t, other, "%s: %q is cut", s.Title.Sheet, n)
					}
				}
			}
		}
	}
}

// onEveryPaper draws the elevations of a house on all papers looked at.
func onEveryPaper(t *testing.T, m *page.Model) (out []*sheet.Sheet) {
	for _, paper := range pagetest.Papers {
		c := pagetest.Context(t, m, paper)
		sheets := pagetest.Drawn(c, Pages(c))
		require.NotEmpty(t, sheets)
		out = append(out, sheets...)
	}
	return out
}

func TestLinesTooNearToPrintApartBecomeOne(t *testing.T) {
	p := newPlaces(0.5, 0, 10)
	p.take(10.3)
	p.take(12)
	assert.Equal(t, []float64{0, 10, 12}, p.taken)
	assert.Equal(t, 10.0, p.of(10.3), "what ends there goes with it")
	assert.Equal(t, 11.0, p.of(11), "where no line is")
	assert.Equal(t, 9.4, onto([]float64{0, 10}, 9.4, 0.5), "far enough apart stays")
	assert.Equal(t, 10.0, onto([]float64{0, 10, 10.9}, 10.4, 0.6), "the nearest is taken")
}

// Of two lines on one track the heavier is drawn, and of the lighter what goes beyond.
func TestLinesOnEachOtherAreDrawnOnce(t *testing.T) {
	at := func(u0, u1, v float64) segment { return segment{geom.Vec2{X: u0, Y: v}, geom.Vec2{X: u1, Y: v}} }
	over := map[track][]span{}
	assert.Equal(t, []segment{at(0, 10, 5)}, once([]segment{at(0, 10, 5)}, over))
	got := once([]segment{at(20, -5, 5), at(2, 8, 5), at(2, 8, 6), {geom.Vec2{X: 5, Y: 0}, geom.Vec2{X: 5, Y: 9}}}, over)
	assert.Equal(t, []segment{at(-5, 0, 5), at(10, 20, 5), at(2, 8, 6), {geom.Vec2{X: 5, Y: 0}, geom.Vec2{X: 5, Y: 9}}}, got)
	assert.Equal(t, []span{{-5, 20}}, over[track{across, mil(5)}])
}
