package project

import (
	"math"
	"testing"

	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func block3(x0, y0, z0, x1, y1, z1 float64) geom.Solid {
	return geom.Box(geom.Vec3{X: x0, Y: y0, Z: z0}, geom.Vec3{X: x1 - x0}, geom.Vec3{Y: y1 - y0}, geom.Vec3{Z: z1 - z0})
}

// lengths adds the lines of a picture by state, in.
func lengths(lines []Line) map[State]float64 {
	out := map[State]float64{}
	for _, l := range lines {
		out[l.State] += l.B.Sub(l.A).Len()
	}
	return out
}

var south = Looking(geom.Vec3{Y: 1}, geom.Vec3{Z: 1}) // from the south: x to the right, z up

func TestViewAxes(t *testing.T) {
	assert.Equal(t, geom.Vec3{X: 1}, south.Right)
	assert.Equal(t, geom.Vec3{Z: 1}, south.Up)
	assert.Equal(t, geom.Vec3{Y: -1}, south.Toward)
	assert.Equal(t, geom.Vec3{X: 1}, Plan().Right, "east is to the right on plans")
}

// A box of 4 by 2 by 3 from the south is a rectangle of 4 by 3: four edges of
// 14 in together; its far edges fall on them and its depth is no line.
func TestBoxIsItsOutline(t *testing.T) {
	var s Scene
	s.Add(Thing{Solids: []geom.Solid{block3(0, 0, 0, 4, 2, 3)}, Owner: "box"})
	lines := Project(&s, south).Lines()
	assert.Len(t, lines, 4)
	assert.InDelta(t, 14, lengths(lines)[Seen], 1e-9)
	assert.Zero(t, lengths(lines)[Hidden], "what falls on a seen edge is not hidden")
}

// A stud of 1 1/2 by 10 stands 1 in behind a board 4 high that covers its
// middle: of its two long edges of 10, 4 each are hidden.
func TestWhatStandsInFrontHides(t *testing.T) {
	var s Scene
	s.Add(Thing{Solids: []geom.Solid{block3(2, 2, 0, 3.5, 7.5, 10)}, Owner: "stud"},
		Thing{Solids: []geom.Solid{block3(0, 0, 3, 6, 1, 7)}, Owner: "board"})
	var hidden, seen float64
	for _, l := range Project(&s, south).Lines() {
		if l.Owner != "stud" {
			assert.Equal(t, Seen, l.State)
			continue
		}
		switch l.State {
		case Hidden:
			hidden += l.B.Sub(l.A).Len()
		case Seen:
			seen += l.B.Sub(l.A).Len()
		}
	}
	assert.InDelta(t, 8, hidden, 0.01)
	assert.InDelta(t, 2*6+2*1.5, seen, 0.01)
}

// What only touches hides nothing: a plate of steel 0.05 thick on the face of
// a stud, seen along the face, is two lines beside the stud's edge.
func TestFlushFacesDoNotHide(t *testing.T) {
	var s Scene
	s.Add(Thing{Solids: []geom.Solid{block3(0, 0, 0, 1.5, 5.5, 10)}, Owner: "stud"},
		Thing{Solids: []geom.Solid{block3(-0.05, 0, 2, 0, 5.5, 8)}, Owner: "steel"})
	assert.Zero(t, lengths(Project(&s, south).Lines())[Hidden])
}

// A rafter with a seat is two solids: the seam between them is no line where
// wood goes on, and is one where the corner of the seat is.
func TestSeamsAreNoLines(t *testing.T) {
	var s Scene // an L of 6 by 6 with arms 2 thick, cut as 6x2 and 2x4
	s.Add(Thing{Solids: []geom.Solid{block3(0, 0, 0, 6, 1, 2), block3(0, 0, 2, 2, 1, 6)}, Owner: "L"})
	lines := Project(&s, south).Lines()
	assert.InDelta(t, 6+6+2+4+4+2, lengths(lines)[Seen], 1e-3, "the outline of the L")
	assert.Zero(t, lengths(lines)[Hidden])
	for _, l := range lines {
		onSeam := math.Abs(l.A.Y-2) < 1e-6 && math.Abs(l.B.Y-2) < 1e-6
		assert.False(t, onSeam && min(l.A.X, l.B.X) < 2-1e-6, "a line over the seam from %v to %v", l.A, l.B)
	}
}

// A box cut open toward the eye shows its cut; where the sides of the scene
// break it off is no edge of it.
func TestClipCutsAndBreaks(t *testing.T) {
	var s Scene
	s.Add(Thing{Solids: []geom.Solid{block3(-100, 0, 0, 100, 4, 3)}, Owner: "plate"})
	cut := s.Clip(geom.PlaneAt(geom.Vec3{Y: 1}, geom.Vec3{Y: -1}), geom.PlaneAt(geom.Vec3{X: 5}, geom.Vec3{X: 1}), geom.PlaneAt(geom.Vec3{X: -5}, geom.Vec3{X: -1}))
	l := lengths(Project(cut, south).Lines())
	assert.InDelta(t, 20, l[Cut], 1e-6, "its two long edges, 10 in each")
	assert.InDelta(t, 6, l[Broken], 1e-6, "its two ends, 3 in each")
	assert.Zero(t, l[Seen]+l[Hidden])
}

// A rod of 16 sides is its outline from the side and its circle from its end.
func TestRoundBodies(t *testing.T) {
	var ring []geom.Vec3
	for i := range 16 {
		sin, cos := math.Sincos(float64(i) * math.Pi / 8)
		ring = append(ring, geom.Vec3{X: cos, Z: sin})
	}
	var s Scene
	s.Add(Thing{Solids: []geom.Solid{geom.Prism(ring, geom.Vec3{Y: 10})}, Round: true, Owner: "rod"})
	assert.Len(t, Project(&s, south).Lines(), 16, "its end")
	side := lengths(Project(&s, Looking(geom.Vec3{X: 1}, geom.Vec3{Z: 1})).Lines())
	assert.InDelta(t, 2*10+2*2, side[Seen], 1e-6, "two sides of 10, two ends of 2")
}

func TestSees(t *testing.T) {
	var s Scene
	s.Add(Thing{Solids: []geom.Solid{block3(0, 0, 0, 4, 1, 4)}})
	p := Project(&s, south)
	assert.True(t, p.Sees(geom.Vec3{X: 2, Y: 0, Z: 2}), "on its face")
	assert.False(t, p.Sees(geom.Vec3{X: 2, Y: 3, Z: 2}), "behind it")
	assert.True(t, p.Sees(geom.Vec3{X: 5, Y: 3, Z: 2}), "beside it")
	parts := p.Parts(geom.Vec3{X: 2, Y: 3, Z: 2}, geom.Vec3{X: 6, Y: 3, Z: 2}, nil)
	require.Len(t, parts, 2)
	assert.InDelta(t, 2, lengths(parts)[Hidden], 0.01)
}

// any draws a random box in the house's corner of the world, turned about z.
func anyBox(t *rapid.T, name string) geom.Solid {
	num := func(what string, lo, hi int) float64 {
		return float64(rapid.IntRange(lo, hi).Draw(t, name+what)) / 4
	}
	sin, cos := math.Sincos(float64(rapid.IntRange(0, 35).Draw(t, name+"turn")) * math.Pi / 18)
	o := geom.Vec3{X: num("x", -40, 40), Y: num("y", -40, 40), Z: num("z", -40, 40)}
	return geom.Box(o, geom.Vec3{X: cos, Y: sin}.Mul(num("l", 2, 40)), geom.Vec3{X: -sin, Y: cos}.Mul(num("w", 2, 40)), geom.Vec3{Z: num("h", 2, 40)})
}

// Against brute force: a point is hidden when one of many points between it
// and the eye lies inside a solid. Points within reach of an edge of the
// picture of anything are left out: there rounding decides.
func TestHiddenAgainstRays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var s Scene
		var solids []geom.Solid
		for i := range rapid.IntRange(1, 5).Draw(t, "n") {
			solids = append(solids, anyBox(t, string(rune('a'+i))))
			s.Add(Thing{Solids: solids[i : i+1], Owner: i})
		}
		view := Looking(geom.Vec3{X: float64(rapid.IntRange(-3, 3).Draw(t, "dx")), Y: 2, Z: float64(rapid.IntRange(-2, 2).Draw(t, "dz"))}, geom.Vec3{Z: 1})
		p := Project(&s, view)
		for _, e := range p.blocks[0].edges {
			hidden := p.hidden(e.a, e.b)
			for k := range 4 {
				at := (float64(k) + 0.5) / 4
				want, sure := walkOut(solids, e.at(at), view.Toward)
				if sure && clear(hidden, at) {
					require.Equal(t, want, covers(hidden, at), "%v at %v of %v to %v", hidden, at, e.a, e.b)
				}
			}
		}
	})
}

// walkOut steps from a point toward the eye and tells whether it comes through
// a solid by more than it may miss; sure is false when it is a near thing.
func walkOut(solids []geom.Solid, at, toward geom.Vec3) (inside, sure bool) {
	sure = true
	for s := 0.03; s < 60; s += 0.03 {
		q := at.Add(toward.Mul(s))
		for _, x := range solids {
			deep := math.Inf(1)
			for _, f := range x.Planes() {
				deep = min(deep, f.C-f.N.Dot(q))
			}
			switch {
			case deep > 0.02:
				return true, true
			case deep > -0.02:
				sure = false
			}
		}
	}
	return false, sure
}

func covers(list []span, at float64) bool {
	for _, s := range list {
		if s.from <= at && at <= s.to {
			return true
		}
	}
	return false
}

// clear tells whether a place is not close to where seen turns to hidden.
func clear(list []span, at float64) bool {
	for _, s := range list {
		if math.Abs(s.from-at) < 1e-3 || math.Abs(s.to-at) < 1e-3 {
			return false
		}
	}
	return true
}

// The picture of a mirrored scene is the mirrored picture.
func TestMirroredSceneMirroredPicture(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var s, m Scene
		for i := range rapid.IntRange(1, 4).Draw(t, "n") {
			x := anyBox(t, string(rune('a'+i)))
			s.Add(Thing{Solids: []geom.Solid{x}, Owner: i})
			m.Add(Thing{Solids: []geom.Solid{mirrored(x)}, Owner: i})
		}
		a, b := lengths(Project(&s, south).Lines()), lengths(Project(&m, south).Lines())
		for _, state := range []State{Seen, Hidden} {
			require.InDelta(t, a[state], b[state], 0.05)
		}
	})
}

func mirrored(s geom.Solid) (out geom.Solid) {
	for _, loop := range s.Faces {
		n := len(loop)
		back := make([]geom.Vec3, n)
		for i, p := range loop {
			back[n-1-i] = geom.Vec3{X: -p.X, Y: p.Y, Z: p.Z}
		}
		out.Faces = append(out.Faces, back)
	}
	return out
}
