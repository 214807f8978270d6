package elevation

import (
	"slices"
	"testing"

	"galewright/render/page"
	"galewright/render/page/pagetest"
	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The distance written at a stud's foot is the stud's own place: the figures
// of a wall, read in order, are the near edges of what stands on its plate.
func TestRunningDimensionsAreTheStudsNearEdges(t *testing.T) {
	m := pagetest.Example(t, "shed.toml")
	c, ok := page.NewContext(m, page.Options{Paper: "arch-d"})
	require.True(t, ok)
	for _, e := range elevations(c) {
		for _, p := range e.split() {
			for k, i := range p.own {
				var want []float64
				for _, mem := range m.House.Members {
					if mem.Wall == p.stories[i].wall && standing(mem) && mem.Z0 < p.stories[i].floor+3 {
						want = append(want, mem.S0)
					}
				}
				require.NotEmpty(t, want)
				for _, f := range p.plan.feet[k] {
					assert.Condition(t, func() bool {
						for _, w := range want {
							if abs(w-(f.u-p.stories[i].shift)) < 1.0/16 {
								return true
							}
						}
						return false
					}, "wall %s: a figure %s with no stud", p.stories[i].wall.Name, f.text)
				}
			}
		}
	}
}

// A strap is drawn where it lies and as long as it is: its length on paper is
// its length in the house at the sheet's scale (25.4 mm to the inch by
// definition).
func TestSteelIsDrawnToLength(t *testing.T) {
	m := pagetest.Example(t, "marsh-wren.toml")
	c, ok := page.NewContext(m, page.Options{Paper: "arch-d"})
	require.True(t, ok)
	seen := 0
	for _, e := range elevations(c) {
		for _, p := range e.split() {
			for _, pc := range p.pieces {
				if !pc.Item.Kind.Strap || len(pc.Path) != 2 || !p.owns(pc) || pc.Path[0].Flat() != pc.Path[1].Flat() {
					continue
				}
				seen++
				line := p.centerLine(p.vp, pc)
				require.Len(t, line, 2, pc.Tag)
				want := pc.Path[1].Sub(pc.Path[0]).Len() * 25.4 / p.scale.Ratio
				assert.InDelta(t, want, dist(line[0], line[1]), 1e-6, pc.Tag)
			}
		}
	}
	assert.Greater(t, seen, 50)
}

// Whoever stands outside sees stations grow from left to right on every wall.
func TestStationsGrowToTheRight(t *testing.T) {
	m := pagetest.Example(t, "marsh-wren.toml")
	c, ok := page.NewContext(m, page.Options{})
	require.True(t, ok)
	for _, e := range elevations(c) {
		for i, s := range e.stories {
			f := s.wall.Frame()
			a, b := e.flat(f.At(0, 0, s.floor)), e.flat(f.At(s.wall.Length(), 0, s.floor))
			assert.InDelta(t, e.stories[i].shift, a.X, 1e-6, s.wall.Name)
			assert.InDelta(t, s.wall.Length(), b.X-a.X, 1e-6, s.wall.Name)
		}
	}
}

// Parts of a wall that is too long for the paper leave nothing out and show
// nothing twice as their own, and each names the sheet the wall goes on on.
func TestMatchLinesCoverTheWall(t *testing.T) {
	m := pagetest.Example(t, "curlew-row.toml")
	c, ok := page.NewContext(m, page.Options{Paper: "letter"})
	require.True(t, ok)
	broken := 0
	for _, e := range elevations(c) {
		parts := e.split()
		for i, p := range parts {
			if p.left == nil {
				assert.LessOrEqual(t, p.from, e.u0)
			} else {
				broken++
				assert.Equal(t, p.from, parts[i-1].to)
				assert.Same(t, p, parts[i-1].right)
				assert.Less(t, p.su0, p.from, "some of the neighbor is shown again")
			}
			if p.right == nil {
				assert.GreaterOrEqual(t, p.to, e.u1)
			}
			for _, h := range p.shapes {
				u0, u1, _, _ := h.bounds()
				if standing(h.m) && p.left != nil {
					assert.False(t, u0 < p.from && p.from < u1, "match line through %s", h.m.ID)
				}
			}
		}
	}
	assert.Positive(t, broken)
}

// No near steel is covered: of every black length of steel some is seen under what
// is drawn after it, on every paper. The open steel of the far face is drawn first.
func TestNearSteelIsNotCovered(t *testing.T) {
	near := 0
	for _, file := range pagetest.ExampleFiles() {
		m := pagetest.Model(file)
		for _, paper := range []string{"arch-d", "letter"} {
			c := pagetest.Context(t, m, paper)
			for _, s := range pagetest.Drawn(c, Pages(c)) {
				for i, mk := range s.Marks {
					x, ok := mk.(sheet.Polyline)
					if !ok || x.Piece == nil || x.Fill != sheet.Black || len(x.Pts) != 4 {
						continue
					}
					near++
					assert.True(t, shows(x.Pts, x.Piece, s.Marks[i+1:]), "%s on %s: %s is covered", file, paper, x.Piece.Tag)
				}
			}
		}
	}
	assert.Greater(t, near, 500)
}

// shows tells whether a point along the middle of a band lies under none of the marks
// of other pieces that are filled with paper.
func shows(band []sheet.Pt, own *sheet.Piece, after []sheet.Mark) bool {
	for k := range 9 {
		f := (sheet.MM(k) + 0.5) / 9
		at := sheet.Pt{X: (band[0].X+band[3].X)/2*(1-f) + (band[1].X+band[2].X)/2*f, Y: (band[0].Y+band[3].Y)/2*(1-f) + (band[1].Y+band[2].Y)/2*f}
		if !slices.ContainsFunc(after, func(m sheet.Mark) bool {
			x, ok := m.(sheet.Polyline)
			return ok && x.Closed && x.Fill == sheet.White && x.Piece != nil && x.Piece.Tag != own.Tag && inside(x.Pts, at)
		}) {
			return true
		}
	}
	return false
}

// inside tells whether a point lies in a convex polygon.
func inside(pts []sheet.Pt, at sheet.Pt) bool {
	sign := 0.0
	for i, a := range pts {
		b := pts[(i+1)%len(pts)]
		c := float64((b.X-a.X)*(at.Y-a.Y) - (b.Y-a.Y)*(at.X-a.X))
		if c*sign < 0 {
			return false
		}
		if c != 0 {
			sign = c
		}
	}
	return true
}
