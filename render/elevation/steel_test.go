package elevation

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"galewright/plan/geom"
	"galewright/plan/steel"
	"galewright/render/page"
	"galewright/render/page/pagetest"
	"galewright/render/project"
	"galewright/render/scene"
	"galewright/render/sheet"
	"galewright/symbols"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// box2 is an extent along a line and in height.
type box2 struct{ u0, u1, v0, v1 float64 }

func (b *box2) add(u, v float64) {
	*b = box2{min(b.u0, u), max(b.u1, u), min(b.v0, v), max(b.v1, v)}
}

func none() box2 {
	inf := math.Inf(1)
	return box2{inf, -inf, inf, -inf}
}

// extentOfSteel is where the plates and rods of a body are, from the body alone: each
// plate's edges, each rod's axis.
func extentOfSteel(f geom.Frame, b *steel.Body) box2 {
	out := none()
	add := func(p geom.Vec3) {
		u, _ := f.Local(p.Flat())
		out.add(u, p.Z)
	}
	for _, band := range b.Bands {
		for _, p := range band {
			for _, across := range []float64{-p.Width / 2, p.Width / 2} {
				add(p.At(0, across))
				add(p.At(p.Len(), across))
			}
		}
	}
	for _, r := range b.Rods {
		if r.For == b.Piece {
			add(r.A)
			add(r.B)
		}
	}
	return out
}

// bulk is what nuts, washers, seats and the steel's own thickness go beyond edges and
// axes, in: the most is the seat of a hold-down on a rod that is the anchor's, twice as far
// out as the rod.
const bulk = 3.5

// The steel of each piece is drawn where its body is: it reaches to all edges of its
// plates and ends of its rods, and no farther than what turns on them.
func TestSteelIsDrawnAtItsPlace(t *testing.T) {
	n := 0
	for _, e := range elevationsOf(t) {
		for _, pc := range e.pieces {
			if len(e.metal[pc]) == 0 {
				continue
			}
			n++
			is, want := none(), extentOfSteel(e.line.Frame, e.Schedule.Steel.Body(pc))
			for _, m := range e.metal[pc] {
				for _, q := range m.pts {
					is.add(q.X, q.Y)
				}
			}
			for i, d := range []float64{want.u0 - is.u0, is.u1 - want.u1, want.v0 - is.v0, is.v1 - want.v1} {
				assert.Greater(t, d, -1e-3, "%s, side %d: short of its steel", pc.Tag, i)
				assert.Less(t, d, bulk, "%s, side %d: beyond its steel", pc.Tag, i)
			}
		}
	}
	assert.Greater(t, n, 500)
}

// A rod is drawn from end to end, seen or hidden, as long as it is cut.
func TestRodsAreAsLongAsCut(t *testing.T) {
	rods, nuts, hidden := 0, 0, 0
	for _, e := range elevationsOf(t) {
		for _, pc := range e.pieces {
			want, embedded, dashed := 0.0, 0.0, 0.0
			for _, r := range e.Schedule.Steel.Body(pc).Rods {
				if r.For == pc {
					require.InDelta(t, 0, r.A.Sub(r.B).Flat().Len(), 1e-6, "%s: this test knows upright rods", pc.Tag)
					want += r.Length()
					embedded += r.Ends[1].Embed
				}
			}
			is := 0.0
			for _, m := range e.metal[pc] {
				switch m.kind {
				case scene.Nut:
					nuts++
				case scene.Rod:
					rods++
					for _, l := range m.axis {
						is += l.B.Sub(l.A).Len()
						if l.State == project.Hidden {
							hidden++
							dashed += l.B.Sub(l.A).Len()
						}
					}
				}
			}
			assert.InDelta(t, want, is, 1e-6, pc.Tag)
			assert.GreaterOrEqual(t, dashed, embedded-0.01, "%s: what is cast in is dashed", pc.Tag)
		}
	}
	assert.Greater(t, rods, 100)
	assert.Greater(t, hidden, 20, "rods that go through floors")
	assert.GreaterOrEqual(t, nuts, rods, "a nut at one end at least")
}

// The symbol of a clip that is an angle stands with its corner in the corner where its
// steel is bent, and its legs on the sides on which the steel's are.
func TestClipsLieInTheirCorners(t *testing.T) {
	turned := map[float64]int{}
	for _, e := range elevationsOf(t) {
		for _, p := range e.split() {
			for _, pc := range p.pieces {
				b := e.Schedule.Steel.Body(pc)
				corner, _, angle := bend(e, b)
				line := p.centerLine(p.vp, pc)
				if !angle || len(line) == 0 {
					continue
				}
				q := p.pose(p.vp, pc)
				turned[q.angle]++
				r := q.rect(line)
				right, up := cornerOf(p, q, r)
				at := p.vp.Pt(corner.X, corner.Y)
				x, y := r.X, r.Y+r.H
				if !right {
					x = r.X + r.W
				}
				if !up {
					y = r.Y
				}
				assert.InDelta(t, 0, dist(at, sheet.Pt{X: x, Y: y}), 1e-6, pc.Tag)
				for _, plate := range b.Bands[0] {
					mid := e.flat(plate.At(plate.Len()/2, 0)).Sub(corner)
					switch {
					case abs(plate.N.Dot(e.view().Toward)) > edgeOn:
					case abs(mid.X) > abs(mid.Y): // on a plate that may slope
						assert.Equal(t, right, mid.X > 0, "%s: a leg on the other side", pc.Tag)
					default:
						assert.Equal(t, up, mid.Y > 0, "%s: a leg the other way up", pc.Tag)
					}
				}
			}
		}
	}
	assert.Len(t, turned, 4, "all four ways: %v", turned)
}

// cornerOf tells which way the legs of a clip's symbol go on paper, from where its ink is:
// the quarter of its box without any is away from its corner.
func cornerOf(p *part, q pose, r sheet.Rect) (right, up bool) {
	s, _ := symbols.For(q.symbol)
	ink := s.Marks[0].(sheet.Polyline)
	use := q.use(r.Center(), nil)
	sin, cos := math.Sincos(q.angle * math.Pi / 180)
	var pts []sheet.Pt
	for _, v := range ink.Pts {
		pts = append(pts, sheet.Turn(v, sin, cos, q.k).Add(use.At))
	}
	far := func(dx, dy sheet.MM) bool { // is a corner of the box one of the ink's?
		c := sheet.Pt{X: r.X + dx*r.W, Y: r.Y + dy*r.H}
		return slices.ContainsFunc(pts, func(v sheet.Pt) bool { return dist(v, c) < 1e-6 })
	}
	for _, c := range [][2]sheet.MM{{0, 0}, {0, 1}, {1, 0}, {1, 1}} {
		if !far(c[0], c[1]) { // the open corner, away from the bend
			return c[0] == 1, c[1] == 0
		}
	}
	return false, false
}

// A symbol along a strap lies along it and is never upside down.
func TestSymbolsLieAlongStraps(t *testing.T) {
	high, wide := sheet.Rect{W: 1, H: 5}, sheet.Rect{W: 5, H: 1}
	for _, c := range []struct {
		to   geom.Vec2
		box  sheet.Rect
		want float64
	}{
		{geom.Vec2{Y: 1}, high, 0},
		{geom.Vec2{Y: -1}, high, 0},
		{geom.Vec2{X: 1}, high, 90},
		{geom.Vec2{X: -1}, wide, 0},
		{geom.Vec2{X: 1, Y: 1}, wide, 45},
		{geom.Vec2{X: -1, Y: 1}, wide, -45},
		{geom.Vec2{X: 1, Y: 1}, high, -45},
	} {
		assert.InDelta(t, c.want, slopeOf([]geom.Vec2{{}, c.to}, c.box), 1e-9, "%v", c.to)
	}
}

// In the mirrored house the steel of each wall is the mirrored steel, plate by plate, rod
// by rod, face by face.
func TestMirroredSteelIsDrawnMirrored(t *testing.T) {
	list := func(m *page.Model, mirrored bool) (out []string) {
		c, ok := page.NewContext(m, page.Options{Paper: "arch-d"})
		require.True(t, ok)
		for _, e := range elevations(c) {
			for _, pc := range e.pieces {
				for _, x := range e.metal[pc] {
					u0, u1, v0, v1 := shape{pts: x.pts}.bounds()
					if mirrored {
						u0, u1 = e.long()-u1, e.long()-u0
					}
					out = append(out, fmt.Sprintf("%s %d %v %.2f %.2f %.2f %.2f", e.line.Name, x.kind, x.face, u0+1e-4, u1+1e-4, v0+1e-4, v1+1e-4))
				}
			}
		}
		slices.Sort(out)
		return out
	}
	first := "catalog = "
	is := list(pagetest.Example(t, "marsh-wren.toml"), false)
	of := list(pagetest.Edited(t, "marsh-wren.toml", first, "mirror = \"x\"\n"+first), true)
	assert.Greater(t, len(is), 500)
	assert.Equal(t, is, of)
}

// Steel is dashed where lumber hides it: the ends of its line are in ink, and dashes are
// no longer than those of hidden lines.
func TestDashesOfSteel(t *testing.T) {
	for _, long := range []sheet.MM{0.5, 3.9, 4, 5.3, 40} {
		s := strip{b: sheet.Pt{X: long}, w: 1}
		lo, hi, ink := long, sheet.MM(0), sheet.MM(0)
		segs := s.dashes()
		for i := 0; i < len(segs); i += 5 { // four corners and the end of an outline
			a, b := segs[i].P[0].X, segs[i+1].P[0].X
			lo, hi, ink = min(lo, a), max(hi, b), ink+b-a
			assert.Less(t, float64(b-a), 2.001)
		}
		assert.InDelta(t, 0, float64(lo), 1e-9)
		assert.InDelta(t, float64(long), float64(hi), 1e-9)
		assert.True(t, long < 2 || ink < long, "%v mm has gaps", long)
	}
}
