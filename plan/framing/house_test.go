package framing

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
)

// The builders below make plans without the TOML reader, so that a test says
// only what it is about.

var (
	twoBySix   = plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 5.5, Text: "2x6"}
	twoByFour  = plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 3.5, Text: "2x4"}
	twoByTen   = plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 9.25, Text: "2x10"}
	headerWide = plan.Lumber{Ply: 3, Breadth: 1.5, Depth: 9.25, Text: "3-2x10"}
	headerThin = plan.Lumber{Ply: 2, Breadth: 1.5, Depth: 9.25, Text: "2-2x10"}
)

// stories returns a plan of n empty levels on piles.
func stories(n int) *plan.Plan {
	p := &plan.Plan{
		Foundation: plan.Foundation{Kind: "piles", Pile: plan.Lumber{Ply: 1, Breadth: 7.5, Depth: 7.5, Text: "8x8"}},
		Lumber:     plan.LumberYard{Plate: 192, Stud: 240, Stock: []float64{96, 120, 144, 168, 192, 216, 240}},
	}
	floor := 120.0
	for i := range n {
		p.Levels = append(p.Levels, &plan.Level{
			Name: []string{"first", "second", "third"}[i], Index: i, Floor: floor, PlateHeight: 109.125,
			FloorDepth: 10, Subfloor: 0.75, Joists: twoByTen, JoistSpace: 16, JoistRun: "y", Rim: 1.5, Pos: plan.Pos{File: "plan.toml", Line: 2 + i},
		})
		floor += 109.125 + 10
	}
	return p
}

// ring adds exterior walls round an outline given counterclockwise.
func ring(p *plan.Plan, level int, pts ...geom.Vec2) []*plan.Wall {
	var out []*plan.Wall
	for i, a := range pts {
		w := wall(p, fmt.Sprintf("%d%c", level+1, 'A'+i), level, a, pts[(i+1)%len(pts)])
		w.Exterior, w.Bearing = true, true
		out = append(out, w)
	}
	return out
}

// wall adds one interior wall.
func wall(p *plan.Plan, name string, level int, a, z geom.Vec2) *plan.Wall {
	l := p.Levels[level]
	w := &plan.Wall{
		Name: name, Level: l, ToLevel: l, From: a, To: z, Studs: twoBySix, Spacing: 16, Top: "plate",
		Pos: plan.Pos{File: "plan.toml", Line: 10 + len(p.Walls)},
	}
	p.Walls = append(p.Walls, w)
	return w
}

// girders adds girders along x at the given heights of y.
func girders(p *plan.Plan, x0, x1 float64, ys ...float64) {
	for i, y := range ys {
		p.Girders = append(p.Girders, &plan.Girder{
			Name: fmt.Sprintf("G%d", i+1), From: geom.Vec2{X: x0, Y: y}, To: geom.Vec2{X: x1, Y: y},
			Member: plan.Lumber{Ply: 3, Breadth: 1.5, Depth: 11.25, Text: "3-2x12"}, Piles: []float64{6, (x1 - x0) / 2, x1 - x0 - 6},
		})
	}
}

func rect(x0, y0, x1, y1 float64) []geom.Vec2 {
	return []geom.Vec2{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}
}

// window returns an opening with a header that fits a wall of 2x6.
func window(name string, at, width float64) *plan.Opening {
	return &plan.Opening{Name: name, Kind: "window", At: at, Width: width, Height: 54, Sill: 30, Header: headerThin, Pos: plan.Pos{File: "plan.toml", Line: 99}}
}

func door(name string, at, width float64) *plan.Opening {
	o := window(name, at, width)
	o.Kind, o.Sill, o.Height = "door", 0, 82
	return o
}

// frame frames p and wants no fault and no overlap.
func frame(t testing.TB, p *plan.Plan) *House {
	t.Helper()
	h, faults := Frame(p)
	require.Empty(t, faults)
	sound(t, h)
	return h
}

// sound wants a house in which no two members overlap and IDs are unique.
func sound(t testing.TB, h *House) {
	t.Helper()
	for _, pair := range h.Overlaps(0.01) {
		t.Errorf("%s reaches into %s", pair[0].ID, pair[1].ID)
	}
	ids := map[string]bool{}
	for _, m := range h.Members {
		require.False(t, ids[m.ID], "two members %s", m.ID)
		ids[m.ID] = true
	}
	for _, j := range h.Joints {
		require.False(t, ids[j.ID], "two joints %s", j.ID)
		ids[j.ID] = true
	}
}

// of returns the members of a wall in one of the roles.
func of(h *House, wall string, roles ...plan.Role) (out []*Member) {
	for _, m := range h.Members {
		for _, r := range roles {
			if m.Wall != nil && m.Wall.Name == wall && m.Role == r {
				out = append(out, m)
			}
		}
	}
	return out
}

// joints returns the joints of one kind at a host.
func joints(h *House, host string, k plan.JointKind) (out []*Joint) {
	for _, j := range h.Joints {
		if j.Host == host && j.Kind == k {
			out = append(out, j)
		}
	}
	return out
}
