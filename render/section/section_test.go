package section

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"galewright/plan/geom"
	"galewright/plan/loadpath"
	"galewright/render/excerpt"
	"galewright/render/page"
	"galewright/render/page/pagetest"
	"galewright/render/project"
	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// allSlices are the sections of an example.
func allSlices(t *testing.T, name string) (*page.Context, []*slice) {
	m := pagetest.Loaded(t, name)
	c := pagetest.Context(t, m, "arch-d")
	h := excerpt.New(c.Model)
	var list []*slice
	for _, ch := range c.Loads.Chains {
		list = append(list, slicesOf(c, h, ch)...)
	}
	return c, list
}

var houses = []string{"marsh-wren.toml", "dunlin.toml", "sanderling.toml", "turnstone.toml", "curlew-row.toml"}

// Each line that is asked anything has a section, its weakest joint is in one of them, and
// what a section says of a joint is what the load path says of the link with the least to
// spare there.
func TestSectionsShowTheWeakest(t *testing.T) {
	for _, name := range houses {
		c, list := allSlices(t, name)
		for _, ch := range c.Loads.Chains {
			if ch.Weak < 0 || ch.Links[ch.Weak].Worst.Joint == nil {
				continue
			}
			weak := ch.Links[ch.Weak].Worst
			assert.True(t, slices.ContainsFunc(list, func(s *slice) bool { return s.chain == ch && s.holds(weak) }), "%s: the weakest of %s, %s", name, ch.Name, weak.ID)
		}
		for _, s := range list {
			for _, r := range s.rows {
				for _, l := range c.Loads.Links {
					if l.Joint == r.link.Joint && asks(l) {
						assert.LessOrEqual(t, l.Ratio, r.link.Ratio, "%s at %s", name, l.ID)
					}
				}
			}
		}
	}
}

// A break takes out only what goes on unchanged: nothing of steel, no joint, no end of a
// line lies in it; across, what passes may slope, up, it is plumb. What is left of every
// line is as long as it is outside of the breaks.
func TestBreaksTakeOutNothingThatIsLookedAt(t *testing.T) {
	for _, name := range houses {
		c, list := allSlices(t, name)
		for _, s := range list {
			x := newCell(c, s, page.Scale{Name: "1", Ratio: 16})
			for a, breaks := range x.paper.breaks {
				a := axis(a)
				for _, b := range breaks {
					require.Less(t, b.from, b.to)
					inside := func(v float64) bool { return v > b.from+1e-6 && v < b.to-1e-6 }
					for _, r := range s.rows {
						require.False(t, inside(a.of(r.at)), "%s %s", name, r.link.ID)
					}
					for _, l := range s.lines {
						require.False(t, inside(a.of(l.A)) || inside(a.of(l.B)), "%s: a line ends in a break", name)
						crosses := min(a.of(l.A), a.of(l.B)) < b.from && max(a.of(l.A), a.of(l.B)) > b.to
						require.False(t, crosses && partOf(l).Body != nil, "%s: steel in a break", name)
						require.False(t, crosses && a == 1 && math.Abs(l.A.X-l.B.X) > 0.05, "%s: a sloped line is shortened", name)
					}
				}
			}
		}
	}
}

// At 1:10 an inch is 2.54 mm. Of a line 0..100 in with a break 20..60 in, 20 in come before
// it, 3 mm are between the zigzags, and 40 in after.
func TestPaperWithABreakByHand(t *testing.T) {
	p := &paper{scale: page.Scale{Ratio: 10}, breaks: [2][]stretch{nil, {{20, 60}}}}
	for _, x := range []struct {
		at   float64
		want sheet.MM
	}{{0, 0}, {20, 50.8}, {60, 53.8}, {100, 155.4}} {
		assert.InDelta(t, float64(x.want), float64(p.along(1, x.at)), 1e-9, "%v", x.at)
		assert.InDelta(t, x.at*2.54, float64(p.along(0, x.at)), 1e-9)
	}
	got := p.pieces(geom.Vec2{X: 1, Y: 100}, geom.Vec2{X: 1})
	assert.ElementsMatch(t, [][2]geom.Vec2{{{X: 1}, {X: 1, Y: 20}}, {{X: 1, Y: 60}, {X: 1, Y: 100}}}, got)
	assert.Equal(t, [][2]geom.Vec2{{{Y: 5}, {X: 9, Y: 5}}}, p.pieces(geom.Vec2{Y: 5}, geom.Vec2{X: 9, Y: 5}))
	assert.Empty(t, p.pieces(geom.Vec2{Y: 25}, geom.Vec2{Y: 50}))
}

// Two studs of 5 1/2 in, 16 in apart, are broken off by one zigzag line each, the edges of
// one by the same.
func TestEachMemberIsBrokenOffByItself(t *testing.T) {
	s := &slice{}
	for _, u := range []float64{0, 5.5, 21.5, 27} {
		s.lines = append(s.lines, project.Line{A: geom.Vec2{X: u}, B: geom.Vec2{X: u, Y: 100}})
	}
	s.lines = append(s.lines, project.Line{A: geom.Vec2{X: 50}, B: geom.Vec2{X: 50, Y: 40}})
	low, high := s.passing(1, stretch{30, 70})
	assert.Equal(t, []stretch{{0, 5.5}, {21.5, 27}}, low)
	assert.Equal(t, low, high)
}

// Notes keep their order, do not overlap, and stay in their column.
func TestNotesStayInTheirColumn(t *testing.T) {
	sizes := []sheet.MM{10, 10, 10}
	got := within(page.Spread([]sheet.MM{2, 3, 38}, sizes), sizes, 0, 40)
	assert.InDeltaSlice(t, []float64{5, 15, 35}, []float64{float64(got[0]), float64(got[1]), float64(got[2])}, 1e-9)
}

// Every section of every example stays on its paper and lies on nothing, and names the
// height of what it shows: the floor of its lowest wall, read off the picture.
func TestSectionsOfAllExamples(t *testing.T) {
	for _, name := range houses {
		m := pagetest.Loaded(t, name)
		for _, paper := range []string{"arch-d", "tabloid", "letter"} {
			c := pagetest.Context(t, m, paper)
			sheets := pagetest.Drawn(c, Pages(c))
			require.NotEmpty(t, sheets, name)
			for _, s := range sheets {
				pagetest.OnPaper(t, s)
				pagetest.NoOverlaps(t, s, paper)
			}
			boxed := 0
			for _, x := range pagetest.Texts(sheets) {
				if x.Bold && slices.ContainsFunc(c.Loads.Links, func(l *loadpath.Link) bool { return l.Joint != nil && asks(l) && force(c, l) == x.S }) {
					boxed++
				}
			}
			assert.Equal(t, count(c), boxed, "%s on %s: one boxed a section", name, paper)
		}
	}
}

func count(c *page.Context) (n int) {
	h := excerpt.New(c.Model)
	for _, ch := range c.Loads.Chains {
		n += len(slicesOf(c, h, ch))
	}
	return n
}

// A joint stands in the picture where it is: over its floor, beside its wall's face.
func TestJointsStandAtTheirPlaces(t *testing.T) {
	c, list := allSlices(t, "marsh-wren.toml")
	seen := 0
	for _, s := range list {
		for _, r := range s.rows {
			require.InDelta(t, r.link.Joint.At.Z, r.at.Y, 1e-9)
			if w := r.link.Joint.Wall; w != nil {
				seen++
				require.True(t, r.at.X > -1 && r.at.X < w.Depth()+1, "%s at %v", r.link.ID, r.at)
			}
		}
		for _, l := range s.levels(c) {
			found := slices.ContainsFunc(s.lines, func(x project.Line) bool { return math.Abs(x.A.Y-l.z) < 0.02 || math.Abs(x.B.Y-l.z) < 0.02 })
			assert.True(t, found, fmt.Sprintf("%s of line %s at %.2f is nowhere in its picture", l.name, s.chain.Name, l.z))
		}
	}
	assert.Greater(t, seen, 20)
}
