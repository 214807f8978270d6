package render

import (
	"math"
	"slices"
	"testing"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/render/page"
	"galewright/render/page/pagetest"
	"galewright/render/project"
	"galewright/render/scene"
	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// stroke is a line of a drawing.
type stroke struct {
	a, b geom.Vec2
	what string
}

// holds tells whether a point lies on the stroke.
func (s stroke) holds(p geom.Vec2, play float64) bool {
	d := s.b.Sub(s.a)
	t := min(max(p.Sub(s.a).Dot(d)/max(d.Dot(d), 1e-12), 0), 1)
	return p.Sub(s.a.Add(d.Mul(t))).Len() < play
}

// mirroredAt is a stroke mirrored at x.
func (s stroke) mirroredAt(x float64) stroke {
	s.a.X, s.b.X = 2*x-s.a.X, 2*x-s.b.X
	return s
}

// missing returns those strokes of a list of which a part is not drawn in another: at both fifths and the
// middle of each a stroke of its kind must be, however the lines are parted.
func missing(list, in []stroke, play float64) (out []stroke) {
	for _, s := range list {
		for _, t := range []float64{0.2, 0.5, 0.8} {
			p := s.a.Add(s.b.Sub(s.a).Mul(t))
			if !slices.ContainsFunc(in, func(o stroke) bool { return o.what == s.what && o.holds(p, play) }) {
				out = append(out, s)
				break
			}
		}
	}
	return out
}

// strokes lists the lines of lumber on a sheet but for hatching and the marks of breaks, which lean one
// way always.
func strokes(s *sheet.Sheet) (wood []stroke) {
	at := func(p sheet.Pt) geom.Vec2 { return geom.Vec2{X: float64(p.X), Y: float64(p.Y)} }
	add := func(style sheet.Style, p, q sheet.Pt) {
		d := at(q).Sub(at(p))
		hatching := math.Abs(math.Abs(d.X)-math.Abs(d.Y)) < 0.02
		breaks := math.Abs(d.X-1.2) < 0.01 && math.Abs(d.Y+2.6) < 0.01
		if style.Layer == sheet.LayerMember && style.Pen != sheet.NoPen && !hatching && !breaks {
			wood = append(wood, stroke{at(p), at(q), "wood"})
		}
	}
	for _, m := range s.Marks {
		switch m := m.(type) {
		case sheet.Line:
			add(m.Style, m.A, m.B)
		case sheet.Polyline:
			for i := 1; i < len(m.Pts); i++ {
				add(m.Style, m.Pts[i-1], m.Pts[i])
			}
			if m.Closed {
				add(m.Style, m.Pts[len(m.Pts)-1], m.Pts[0])
			}
		}
	}
	return wood
}

// middleOf is half-way between the leftmost and the rightmost end.
func middleOf(list []stroke) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, s := range list {
		lo, hi = math.Min(lo, math.Min(s.a.X, s.b.X)), math.Max(hi, math.Max(s.a.X, s.b.X))
	}
	return (lo + hi) / 2
}

// asMirrored returns a list mirrored at the middle of its wood and moved to that of another.
func asMirrored(list []stroke, from, to float64) (out []stroke) {
	for _, s := range list {
		s = s.mirroredAt(from)
		s.a.X, s.b.X = s.a.X+to-from, s.b.X+to-from
		out = append(out, s)
	}
	return out
}

// mirroredExample runs an example as written and mirrored, east for west.
func mirroredExample(t *testing.T, name, first string) (a, b *page.Model) {
	t.Helper()
	return pagetest.Example(t, name+".toml"), pagetest.Edited(t, name+".toml", first, "mirror = \"x\"\n"+first)
}

// A view of the mirrored house is the mirrored view, its lumber line by line: elevations, seen from
// outside, and plans. (Where several views share a sheet their order is
// that of the walls, so the shed is drawn on small sheets.)
func TestAMirroredHouseIsDrawnMirrored(t *testing.T) {
	for _, c := range []struct {
		name, first, paper string
		series             []string
		lines              int
	}{
		{"shed", "level = [{", "letter", []string{"1xx", "2xx"}, 900},
		{"dunlin", "catalog = ", "arch-d", []string{"1xx"}, 1600},
	} {
		m, w := mirroredExample(t, c.name, c.first)
		a, _ := Draw(m, Options{Paper: c.paper, Sheets: c.series})
		b, _ := Draw(w, Options{Paper: c.paper, Sheets: c.series})
		require.Len(t, b.Sheets, len(a.Sheets))
		n := 0
		for i, s := range a.Sheets {
			wood, is := strokes(s), strokes(b.Sheets[i])
			want := asMirrored(wood, middleOf(wood), middleOf(is))
			assert.Empty(t, missing(want, is, 0.06), "%s %s", c.name, s.Title.Sheet)
			assert.Empty(t, missing(is, want, 0.06), "%s %s", c.name, s.Title.Sheet)
			n += len(wood)
		}
		assert.Greater(t, n, c.lines, c.name)
	}
}

// In space too: what is seen, and what is hidden, of the lumber and the steel of the mirrored house is
// the mirrored picture, from above and from the south.
func TestAMirroredHouseIsSeenMirrored(t *testing.T) {
	a, b := mirroredExample(t, "shed", "level = [{")
	lines := func(m *page.Model, v project.View) (out []stroke) {
		for _, l := range project.Project(scene.All(m.House, m.Schedule.Steel.Bodies...), v).Lines() {
			what := map[project.State]string{project.Seen: "seen ", project.Hidden: "hidden "}[l.State]
			if p, ok := l.Owner.(scene.Part); ok && p.Kind != scene.Wood {
				what += "steel"
			}
			out = append(out, stroke{l.A, l.B, what})
		}
		return out
	}
	for name, v := range map[string]project.View{"from above": project.Plan(), "from the south": project.Looking(geom.Vec3{Y: 1}, geom.Vec3{Z: 1})} {
		was, is := lines(a, v), lines(b, v)
		require.Greater(t, len(was), 300)
		want := asMirrored(was, middleOf(was), middleOf(is))
		assert.Empty(t, missing(want, is, 0.01), name)
		assert.Empty(t, missing(is, want, 0.01), name)
	}
	assert.Equal(t, plan.MirrorX, b.House.Plan.Lay)
}
