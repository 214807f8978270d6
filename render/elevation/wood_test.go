package elevation

import (
	"math"
	"testing"

	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/render/page"
	"galewright/render/page/pagetest"
	"galewright/render/project"
	"galewright/render/scene"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// elevationsOf returns the elevations of every example.
func elevationsOf(t *testing.T) (out []*elev) {
	for _, file := range pagetest.ExampleFiles() {
		c, ok := page.NewContext(pagetest.Model(file), page.Options{Paper: "arch-d"})
		require.True(t, ok)
		out = append(out, elevations(c)...)
	}
	return out
}

// extentOf is the extent of a member along a line and in height, from the member alone.
func extentOf(f geom.Frame, m *framing.Member) (lo, hi geom.Vec2) {
	lo, hi = geom.Vec2{X: math.Inf(1), Y: math.Inf(1)}, geom.Vec2{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, s := range m.Solid {
		s.Points(func(p geom.Vec3) {
			u, _ := f.Local(p.Flat())
			lo = geom.Vec2{X: min(lo.X, u), Y: min(lo.Y, p.Z)}
			hi = geom.Vec2{X: max(hi.X, u), Y: max(hi.Y, p.Z)}
		})
	}
	return lo, hi
}

// Each member is drawn at its true place: no line of it outside of its own extent, and of
// an upright of the wall, seen or hidden, more than one of its sides.
func TestMembersAreDrawnAtTheirPlaces(t *testing.T) {
	lines, uprights := 0, 0
	for _, e := range elevationsOf(t) {
		drawn := map[*framing.Member]float64{}
		for _, l := range e.drawn {
			part, ok := l.Owner.(scene.Part)
			if !ok {
				continue
			}
			lines++
			lo, hi := extentOf(e.line.Frame, part.Member)
			for _, q := range []geom.Vec2{l.A, l.B} {
				in := q.X > lo.X-1e-3 && q.X < hi.X+1e-3 && q.Y > lo.Y-1e-3 && q.Y < hi.Y+1e-3
				require.True(t, in, "%s at %v is outside of %v to %v", part.Member.ID, q, lo, hi)
			}
			if abs(l.A.X-l.B.X) < level {
				drawn[part.Member] += abs(l.A.Y - l.B.Y)
			}
		}
		for _, h := range e.shapes {
			if h.m.Wall == nil || !standing(h.m) || len(h.m.Solid) > 1 {
				continue
			}
			uprights++
			lo, hi := extentOf(e.line.Frame, h.m)
			assert.Greater(t, drawn[h.m], hi.Y-lo.Y, "%s: seen or hidden, one side at least", h.m.ID)
		}
	}
	assert.Greater(t, lines, 5000)
	assert.Greater(t, uprights, 500)
}

// Nothing seen lies behind anything: of each seen line the middle can be seen from outside
// past every other member of the picture, asked of their solids one by one.
func TestSeenMembersAreInFront(t *testing.T) {
	asked := 0
	for _, e := range elevationsOf(t) {
		for k, l := range e.drawn {
			part, ok := l.Owner.(scene.Part)
			if !ok || l.State != project.Seen || k%7 != 0 {
				continue
			}
			asked++
			mid := l.A.Add(l.B).Mul(0.5)
			for _, h := range e.shapes {
				if h.m == part.Member {
					continue
				}
				t0 := -l.Depth - e.line.Frame.Origin.Dot(e.line.Frame.In)
				at := e.line.Frame.At(mid.X, t0, mid.Y)
				from, to, hit := geom.Within(planesOf(h.solid), at, e.line.Frame.In.Mul(-1).Up(0), 0.05, 1e4)
				require.False(t, hit && to-from > 0.05, "%s at %v is behind %s", part.Member.ID, mid, h.m.ID)
			}
		}
	}
	assert.Greater(t, asked, 500)
}

// planesOf returns the faces of a solid, a hair inside of it.
func planesOf(s geom.Solid) []geom.Plane {
	out := s.Planes()
	for i := range out {
		out[i].C -= 0.01
	}
	return out
}
