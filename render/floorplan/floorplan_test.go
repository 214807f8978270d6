package floorplan

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/placement"
	"galewright/plan/units"
	"galewright/render/page"
	"galewright/render/page/pagetest"
	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Each level's plan shows every mark at every stud of its walls, on one part
// or another: a symbol for each piece, or one for its like on the same stud.
func TestLevelPlansShowEveryMarkAtEveryStud(t *testing.T) {
	m := pagetest.Example(t, "marsh-wren.toml")
	for _, paper := range []string{"arch-d", "letter"} {
		c := pagetest.Context(t, m, paper)
		shown := map[string]bool{}
		for _, s := range pagetest.Drawn(c, FloorPages(c)) {
			for _, mk := range s.Marks {
				if u, ok := mk.(sheet.Use); ok && u.Piece != nil {
					shown[u.Piece.Tag] = true
				}
			}
		}
		for _, pc := range m.Placement.Pieces {
			if w := page.HomeWall(pc.Joint); w == nil || page.HomeOf(pc) != page.OnElevation || pc.Joint.Kind == plan.RafterPlate {
				continue
			}
			ok := shown[pc.Tag]
			for _, o := range m.Placement.Pieces {
				ok = ok || shown[o.Tag] && o.Item == pc.Item && page.HomeWall(o.Joint) == page.HomeWall(pc.Joint) && math.Abs(o.Station-pc.Station) < sameStud
			}
			assert.True(t, ok, "%s: %s", paper, pc.Tag)
		}
	}
}

// A symbol in a lane stands beside its stud: moved along the wall no farther
// than its neighbors push it.
func TestSymbolsStandBesideTheirStuds(t *testing.T) {
	m := pagetest.Example(t, "marsh-wren.toml")
	c := pagetest.Context(t, m, "arch-d")
	lo, hi, _ := c.WallBounds()
	_, _, mg := planMargins(c, 0)
	pages := FloorPages(c)
	pagetest.Drawn(c, pages)
	s := layPlan(c, lo, hi, mg, leastPlanScale(c))[0]
	k := s.scale.K()
	for _, p := range pages {
		// the wall's own place on this sheet, from its symbols' middle
		for _, mk := range p.Marks {
			u, ok := mk.(sheet.Use)
			if !ok || u.Piece == nil {
				continue
			}
			pc := m.Placement.Piece(u.Piece.Tag)
			w := page.HomeWall(pc.Joint)
			if pc.Joint.Kind == plan.Collector || w == nil || math.Abs(w.Frame().D.X) < 0.5 {
				continue
			}
			other := neighbor(m, pc)
			if other == nil || byCrossing(c, w, pc) || byCrossing(c, w, other) {
				continue
			}
			for _, mk2 := range p.Marks {
				u2, ok := mk2.(sheet.Use)
				if !ok || u2.Piece == nil || u2.Piece.Tag != other.Tag {
					continue
				}
				got := math.Abs(float64(u2.At.X - u.At.X))
				want := math.Abs(other.Station-pc.Station) * k
				assert.InDelta(t, want, got, 2*float64(laneSlack)+0.01, "%s to %s", pc.Tag, other.Tag)
			}
		}
	}
}

// byCrossing tells whether another wall crosses a piece's lane: there it
// stands beside that wall.
func byCrossing(c *page.Context, w *plan.Wall, pc *placement.Piece) bool {
	for _, x := range crossings(c, w, pc.Face == "outside" || pc.Face != "inside" && !w.Exterior) {
		if pc.Station > x.lo-16 && pc.Station < x.hi+16 {
			return true
		}
	}
	return false
}

// neighbor returns the next piece of the same mark, wall and face.
func neighbor(m *page.Model, pc *placement.Piece) *placement.Piece {
	for _, o := range m.Placement.Pieces {
		if o != pc && o.Item == pc.Item && page.HomeWall(o.Joint) == page.HomeWall(pc.Joint) && o.Face == pc.Face && o.Station > pc.Station+30 {
			return o
		}
	}
	return nil
}

func TestHolesAreMeasuredFromTwoWalls(t *testing.T) {
	l := &plan.Level{Name: "second"}
	wall := func(name string, a, b geom.Vec2) *plan.Wall {
		return &plan.Wall{Name: name, Level: l, From: a, To: b, Exterior: true, Studs: plan.Lumber{Depth: 5.5}}
	}
	walls := []*plan.Wall{
		wall("S", geom.Vec2{}, geom.Vec2{X: 300}), wall("E", geom.Vec2{X: 300}, geom.Vec2{X: 300, Y: 200}),
		wall("N", geom.Vec2{X: 300, Y: 200}, geom.Vec2{Y: 200}), wall("W", geom.Vec2{Y: 200}, geom.Vec2{}),
	}
	c := &page.Context{Model: &page.Model{
		House:     &framing.House{Plan: &plan.Plan{Walls: walls, Levels: []*plan.Level{l}}},
		Placement: &placement.Placement{Holes: []*placement.Hole{{Level: l, At: geom.Vec3{X: 290.5, Y: 30}}}},
	}}
	rows := holesOf(c, l)
	require.Len(t, rows, 1)
	assert.Equal(t, `9 1/2" from E`, rows[0].fromX)
	assert.Equal(t, `2'-6" from S`, rows[0].fromY)
}

// Dimensions drawn to holes say what the table of holes says, and are as long
// on paper as they say.
func TestHolesAreDimensionedWhereLinesFit(t *testing.T) {
	m := pagetest.Example(t, "marsh-wren.toml")
	c := pagetest.Context(t, m, "arch-d")
	l := m.House.Plan.Levels[0]
	lo, hi, _ := c.WallBounds()
	pages := levelPages(c, l, c.WallsOn(l), lo, hi)
	pagetest.Drawn(c, pages)
	table := map[string]bool{}
	for _, r := range holesOf(c, l) {
		for _, from := range []string{r.fromX, r.fromY} {
			s, _, _ := strings.Cut(from, " from ")
			table[s] = true
		}
	}
	n := 0
	for _, mk := range pages[0].Marks {
		x, ok := mk.(sheet.Text)
		if !ok || x.Role != "dimension" || x.Size != sheet.Em(c.Size.Note) {
			continue
		}
		n++
		assert.True(t, table[x.S], "%s is no hole's distance", x.S)
	}
	assert.GreaterOrEqual(t, n, 4)
}

func TestGridLettersLeaveOutIAndO(t *testing.T) {
	var all []string
	for i := range 24 {
		all = append(all, gridLetter(i))
	}
	assert.Equal(t, "ABCDEFGHJKLMNPQRSTUVWXYZ", strings.Join(all, ""))
	assert.Equal(t, "A1", gridLetter(24))
}

func TestPlanTurnsOrGoesOverSheetsWhereThatKeepsItReadable(t *testing.T) {
	m := pagetest.Example(t, "marsh-wren.toml")
	m.House.Plan.Project.Units = units.Imperial
	c := pagetest.Context(t, m, "arch-d")
	tall := layPlan(c, geom.Vec2{}, geom.Vec2{X: 300, Y: 800}, margins{}, leastPlanScale(c))
	require.Len(t, tall, 1)
	assert.True(t, tall[0].turned, "a plan that is high lies down on paper that is wide")
	c = pagetest.Context(t, m, "letter")
	parts := layPlan(c, geom.Vec2{}, geom.Vec2{X: 1200, Y: 400}, margins{20, 20, 20, 20}, leastPlanScale(c))
	require.Greater(t, len(parts), 1)
	covered := 0.0
	for _, p := range parts {
		assert.LessOrEqual(t, p.scale.Ratio, leastPlanScale(c))
		covered += (p.u1 - p.u0) * (p.v1 - p.v0)
	}
	assert.InDelta(t, 1200*400, covered, 1e-6, "parts tile the plan")
}

// The counts of a level's legends, over all its parts, are its pieces.
func TestTheLegendOfAPlanCountsItsPieces(t *testing.T) {
	m := pagetest.Example(t, "marsh-wren.toml")
	for _, l := range m.House.Plan.Levels {
		c := pagetest.Context(t, m, "letter")
		lo, hi, _ := c.WallBounds()
		got, want := map[string]int{}, map[string]int{}
		for _, s := range pagetest.Drawn(c, levelPages(c, l, c.WallsOn(l), lo, hi)) {
			for _, mk := range s.Marks {
				if x, ok := mk.(sheet.Text); ok && x.Role == "note" {
					var n int
					if mark, rest, ok := strings.Cut(x.S, ": "); ok && m.Schedule.Number(mark) > 0 {
						_, err := fmt.Sscan(rest, &n)
						require.NoError(t, err)
						got[mark] += n
					}
				}
			}
		}
		for _, pc := range m.Placement.Pieces {
			if onPlan(c, pc, l) != nil || page.HomeOf(pc) == page.OnFloor && pc.Joint.Level == l || pc.Joint.Kind == plan.Collector && m.House.Story(pc.Joint) == l {
				want[pc.Item.Mark]++
			}
		}
		assert.Equal(t, want, got, l.Name)
	}
}

// The demo's stair wall stands on the first floor and runs up past the second: what is
// nailed at its top a framer looks for on the second floor's plan.
func TestATallWallsTopIsOnTheUpperPlan(t *testing.T) {
	m := pagetest.Example(t, "marsh-wren.toml")
	c := pagetest.Context(t, m, "arch-d")
	first, second := m.House.Plan.Levels[0], m.House.Plan.Levels[1]
	tops := 0
	for _, pc := range m.Placement.Pieces {
		if pc.Joint.Host != "ST" || pc.Joint.Kind != plan.StudTop {
			continue
		}
		tops++
		require.Nil(t, onPlan(c, pc, first), pc.Tag)
		require.NotNil(t, onPlan(c, pc, second), pc.Tag)
	}
	assert.Positive(t, tops)
}
