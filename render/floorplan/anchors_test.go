package floorplan

import (
	"math"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/steel"
	"galewright/render/page"
	"galewright/render/page/pagetest"
	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The foundation plan shows each rod that is cast into the concrete once, within
// the width of a pencil line of its true place, and letters its station; the
// table counts them all. On no paper does lettering lie on lettering.
func TestFoundationPlanShowsEveryAnchor(t *testing.T) {
	for _, file := range []string{"sanderling.toml", "curlew-row.toml", "turnstone.toml", "shed.toml"} {
		m := pagetest.Example(t, file)
		cast := map[string]*steel.Rod{}
		for _, r := range m.Schedule.Steel.Rods() {
			if r.Ends[1].Kind == steel.CastIn {
				cast[r.For.Tag] = r
			}
		}
		require.NotEmpty(t, cast, file)
		for _, paper := range []string{"arch-d", "tabloid", "letter"} {
			c := pagetest.Context(t, m, paper)
			pages := FoundationPages(c)
			shown, texts := map[string]int{}, map[string]bool{}
			for i, s := range pagetest.Drawn(c, pages) {
				pagetest.OnPaper(t, s)
				pagetest.NoOverlaps(t, s, paper)
				for _, mk := range s.Marks {
					if x, ok := mk.(sheet.Text); ok && x.Role == "dimension" {
						texts[x.S] = true
					}
					if u, ok := mk.(sheet.Use); ok && u.Piece != nil && cast[u.Piece.Tag] != nil {
						shown[u.Piece.Tag]++
						assert.NotEmpty(t, pages[i].Name)
					}
				}
			}
			for tag, r := range cast {
				assert.Equal(t, 1, shown[tag], "%s %s %s", file, paper, tag)
				s, _ := page.HomeWall(r.For.Joint).Frame().Local(r.B.Flat())
				assert.True(t, texts[c.Length(s)], "%s %s %s: %s", file, paper, tag, c.Length(s))
			}
			n := 0
			for _, a := range anchorsOf(c) {
				n++
				assert.InDelta(t, cast[a.piece.Tag].Length(), a.above+a.in, 1e-9)
			}
			assert.Len(t, cast, n)
		}
	}
}

// An anchor in a wall of 5 1/2 in, 3 in beside its middle, in figures by hand: a rod
// of 12 in with 9 3/8 in cast stands 2 5/8 in out of the concrete: the sill of 1 1/2,
// washer, nut and thread.
func TestAnchorFiguresByHand(t *testing.T) {
	c := pagetest.Context(t, pagetest.Example(t, "sanderling.toml"), "arch-d")
	var bolt *anchor
	for _, a := range anchorsOf(c) {
		if a.piece.Item.Mark == "sill-bolt" && a.wall.Name == "S" {
			bolt = &a
			break
		}
	}
	require.NotNil(t, bolt)
	assert.InDelta(t, 12, bolt.above+bolt.in, 1e-9)
	assert.InDelta(t, 2.75, bolt.face, 1e-9, "middle of the sill, clear of the rim")
	assert.InDelta(t, 14.5, bolt.station, 5.6, "within 12 in of the sill's end, which begins behind the side wall or at its face")
	sum := 0
	for _, r := range anchorTable(c, anchorsOf(c)).Rows {
		if !r.Group {
			sum += int(math.Round(number(t, r.Cells[len(r.Cells)-1].S)))
		}
	}
	assert.Len(t, anchorsOf(c), sum)
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	n := 0.0
	for _, r := range s {
		require.True(t, strings.ContainsRune("0123456789", r), s)
		n = n*10 + float64(r-'0')
	}
	return n
}

// A house on piles has no concrete under its walls: its foundation plan is that of
// girders and piles, by its old name.
func TestPilesHaveNoAnchorPlan(t *testing.T) {
	c := pagetest.Context(t, pagetest.Example(t, "marsh-wren.toml"), "arch-d")
	require.Equal(t, plan.Piles, c.House.Plan.Foundation.Kind)
	assert.Empty(t, anchorsOf(c))
	for _, p := range FoundationPages(c) {
		assert.Contains(t, p.Name, "Foundation plan")
	}
}
