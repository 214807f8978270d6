package roofplan

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/plantest"
)

func kinds2(r *Roof) map[RunKind]int {
	out := map[RunKind]int{}
	for _, run := range r.Runs() {
		out[run.Kind]++
	}
	return out
}

func lines(r *Roof) map[EdgeKind]int {
	out := map[EdgeKind]int{}
	for _, l := range r.Lines {
		out[l.Kind]++
	}
	return out
}

func TestShapes(t *testing.T) {
	v := func(x, y float64) geom.Vec2 { return geom.Vec2{X: x, Y: y} }
	for _, c := range []struct {
		name   string
		bodies []*Body
		faces  int
		lines  map[EdgeKind]int
	}{
		{"gable", []*Body{body(t, "a", "gable", "x", v(0, 0), v(240, 144), 6, 12)}, 2, map[EdgeKind]int{Ridge: 1}},
		{"hip", []*Body{body(t, "a", "hip", "x", v(0, 0), v(240, 144), 6, 12)}, 4, map[EdgeKind]int{Ridge: 1, Hip: 4}},
		{"pyramid", []*Body{body(t, "a", "hip", "x", v(0, 0), v(144, 144), 6, 12)}, 4, map[EdgeKind]int{Hip: 4}},
		{"shed", []*Body{body(t, "a", "shed", "x", v(0, 0), v(144, 96), 3, 12)}, 1, map[EdgeKind]int{}},
		{"lower wing", []*Body{
			body(t, "a", "gable", "x", v(0, 0), v(360, 192), 6, 12),
			body(t, "b", "gable", "y", v(120, -120), v(240, 0), 6, 12),
		}, 4, map[EdgeKind]int{Ridge: 2, Valley: 2}},
		{"hips round an L", []*Body{
			body(t, "a", "hip", "x", v(0, 0), v(288, 192), 6, 12),
			body(t, "b", "hip", "y", v(144, -120), v(288, 0), 6, 12),
		}, 6, map[EdgeKind]int{Ridge: 2, Hip: 6, Valley: 1}},
		{"equal ridges cross", []*Body{
			body(t, "a", "gable", "x", v(0, 0), v(384, 144), 6, 12),
			body(t, "b", "gable", "y", v(120, -120), v(264, 264), 6, 12),
		}, 8, map[EdgeKind]int{Ridge: 2, Valley: 4}},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, faults := New(c.bodies)
			require.Empty(t, faults)
			require.Len(t, r.Faces, c.faces)
			require.Equal(t, c.lines, lines(r))
		})
	}
}

// The lower ridge of a wing dies where the main roof reaches its height: with
// equal pitches half the wing's width inside the main wall. One of its
// valleys is carried on to the main ridge.
func TestLowerRidgeDiesInThePlane(t *testing.T) {
	r, faults := New([]*Body{
		body(t, "main", "gable", "x", geom.Vec2{}, geom.Vec2{X: 360, Y: 192}, 6, 12),
		body(t, "wing", "gable", "y", geom.Vec2{X: 120, Y: -120}, geom.Vec2{X: 240}, 6, 12),
	})
	require.Empty(t, faults)
	var wing *Line
	carried := 0
	for _, l := range r.Lines {
		if l.Kind == Ridge && math.Abs(l.Dir().Y) > 0.5 {
			wing = l
		}
		if l.Carried != nil {
			carried++
			require.InDelta(t, 96, l.B.Y, 1e-6, "on the main ridge")
			require.InDelta(t, 60, l.Carried.Y, 1e-6)
		}
	}
	require.InDelta(t, 60, wing.B.Y, 1e-6)
	require.Equal(t, 1, carried)
	require.Positive(t, kinds2(r)[Cripple], "rafters between the two valleys")
}

func TestRidgeThatDoesNotDieIsToldWithTheRoof(t *testing.T) {
	_, faults := New([]*Body{
		body(t, "main", "gable", "x", geom.Vec2{}, geom.Vec2{X: 360, Y: 96}, 6, 12),
		body(t, "wing", "gable", "y", geom.Vec2{X: 60, Y: -120}, geom.Vec2{X: 300}, 6, 12),
	})
	require.Len(t, faults, 1)
	require.Equal(t, "ridge-does-not-die", string(faults[0].Code))
	require.Equal(t, "wing", faults[0].Body.Name)
}

func TestUnknownShapes(t *testing.T) {
	for _, c := range []struct {
		kind plan.RoofKind
		s    Shape
		want string
	}{
		{"dome", Shape{Axis: "x", Slope: 1}, `a roof of the kind "dome" is not known`},
		{"", Shape{Axis: "x", Slope: 1}, `a roof of the kind "" is not known`},
		{"gable", Shape{Axis: "z", Slope: 1}, `a ridge that runs along "z", which is no axis`},
		{"shed", Shape{Axis: "x", Slope: 1}, `a shed roof whose high wall is on side "", which is none`},
		{"hip", Shape{Axis: "x"}, "a hip roof without a pitch"},
	} {
		_, err := Slopes(c.kind, c.s)
		require.EqualError(t, err, c.want)
	}
}

// What the reader accepts has a shape here, and nothing else has.
func TestEveryRoofKindOfAPlanHasAShape(t *testing.T) {
	for _, kind := range plan.RoofKinds {
		slopes, err := Slopes(kind, Shape{Axis: plan.AxisX, Slope: 0.5, High: plan.North})
		require.NoError(t, err)
		sloped := 0
		for _, s := range slopes {
			if s > 0 {
				sloped++
			}
		}
		require.Equal(t, map[plan.RoofKind]int{plan.GableRoof: 2, plan.HipRoof: 4, plan.ShedRoof: 1}[kind], sloped, kind)
	}
	require.Len(t, kinds, len(plan.RoofKinds))
}

// drawRoof draws a main roof with up to two wings, one to the south and one
// to the north, each within its length and narrower.
func drawRoof(t *rapid.T) []*Body {
	foot := func(lo, hi int, name string) float64 { return 12 * float64(rapid.IntRange(lo, hi).Draw(t, name)) }
	kind := rapid.SampledFrom([]plan.RoofKind{plan.GableRoof, plan.HipRoof})
	pitch := func(n string) float64 { return float64(rapid.IntRange(3, 12).Draw(t, n)) }
	over := 6 * float64(rapid.IntRange(0, 4).Draw(t, "overhang"))
	w, d := foot(30, 50, "width"), foot(12, 30, "depth") // a hip needs room for its ridge
	p := pitch("pitch")
	out := []*Body{body(t, "main", kind.Draw(t, "kind"), "x", geom.Vec2{}, geom.Vec2{X: w, Y: d}, p, over)}
	for i, name := range []string{"south", "north"} {
		if !rapid.Bool().Draw(t, name) {
			continue
		}
		ww := min(foot(8, 12, name+" width"), d)
		x := 12 * float64(rapid.IntRange(int(over/12)+1, int((w-ww-over)/12)-1).Draw(t, name+" place"))
		l := foot(6, 20, name+" length")
		lo, hi := geom.Vec2{X: x, Y: -l}, geom.Vec2{X: x + ww}
		if i == 1 {
			lo, hi = geom.Vec2{X: x, Y: d}, geom.Vec2{X: x + ww, Y: d + l}
		}
		out = append(out, body(t, name, kind.Draw(t, name+" kind"), "y", lo, hi, p, over))
	}
	return out
}

// covered returns the area of the union of rectangles, by their grid.
func covered(rects [][2]geom.Vec2) (area float64) {
	var xs, ys []float64
	for _, r := range rects {
		xs, ys = append(xs, r[0].X, r[1].X), append(ys, r[0].Y, r[1].Y)
	}
	slices.Sort(xs)
	slices.Sort(ys)
	for i := 1; i < len(xs); i++ {
		for j := 1; j < len(ys); j++ {
			x, y := (xs[i]+xs[i-1])/2, (ys[j]+ys[j-1])/2
			if slices.ContainsFunc(rects, func(r [2]geom.Vec2) bool { return r[0].X < x && x < r[1].X && r[0].Y < y && y < r[1].Y }) {
				area += (xs[i] - xs[i-1]) * (ys[j] - ys[j-1])
			}
		}
	}
	return area
}

// The faces tile the plan of all bodies with their overhangs: their areas add
// up to the area of the rectangles' union, and each point lies in one face.
func TestFacesTileThePlan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bodies := drawRoof(t)
		r, faults := New(bodies)
		require.Empty(t, faults)
		var rects [][2]geom.Vec2
		for _, b := range bodies {
			lap := func(i int) float64 {
				if b.Sides[i].RunsIn {
					return 0
				}
				return b.Sides[i].Over
			}
			rects = append(rects, [2]geom.Vec2{{X: b.Lo.X - lap(West), Y: b.Lo.Y - lap(South)}, {X: b.Hi.X + lap(East), Y: b.Hi.Y + lap(North)}})
		}
		total := 0.0
		for _, f := range r.Faces {
			require.Positive(t, Area(f.Outline))
			total += Area(f.Outline)
		}
		require.InDelta(t, covered(rects), total, 0.01)
		for k := range 200 {
			// a spread of points that never falls on a line of the roof
			i := k % len(rects)
			u, v := math.Mod(float64(k)*0.6180339887, 1), math.Mod(float64(k)*0.7548776662, 1)
			p := geom.Vec2{X: rects[i][0].X + u*(rects[i][1].X-rects[i][0].X), Y: rects[i][0].Y + v*(rects[i][1].Y-rects[i][0].Y)}
			in := 0
			for _, f := range r.Faces {
				if contains(f.Outline, p) {
					in++
				}
			}
			require.GreaterOrEqual(t, in, 1, "nothing over %v", p)
		}
	})
}

// The area of a roof is its plan area over the cosine of its slope: for equal
// pitches that is one factor for the whole roof, whatever its faces are.
func TestSurfaceIsPlanOverCosine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, _ := New(drawRoof(t))
		surface, flat := 0.0, 0.0
		for _, f := range r.Faces {
			flat += Area(f.Outline)
			var n geom.Vec3 // twice the area, by the cross products of its corners in space
			for i, p := range f.Outline {
				q := f.Outline[(i+1)%len(f.Outline)]
				n = n.Add(p.Up(f.Plane.At(p)).Cross(q.Up(f.Plane.At(q))))
			}
			surface += n.Len() / 2
		}
		cos := 1 / math.Hypot(1, r.Faces[0].Slope())
		require.InDelta(t, flat/cos, surface, 0.01)
	})
}

// Every inner edge is shared: where one face has a ridge, hip or valley,
// the other side has the same kind, and no line hangs free.
func TestInnerEdgesComeInPairs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, _ := New(drawRoof(t))
		sum := map[EdgeKind]float64{}
		for _, f := range r.Faces {
			for i, a := range f.Outline {
				sum[f.Edges[i]] += f.Outline[(i+1)%len(f.Outline)].Sub(a).Len()
			}
		}
		once := map[EdgeKind]float64{}
		for _, l := range r.Lines {
			end := l.B.Flat()
			if l.Carried != nil {
				end = *l.Carried
			}
			once[l.Kind] += end.Sub(l.A.Flat()).Len()
		}
		for _, kind := range []EdgeKind{Ridge, Hip, Valley} {
			require.InDelta(t, 2*once[kind], sum[kind], 0.01, kind)
		}
	})
}

// mirrored returns the bodies mirrored at the y axis.
func mirrored(bodies []*Body) (out []*Body) {
	for _, b := range bodies {
		c := *b
		c.Lo.X, c.Hi.X = -b.Hi.X, -b.Lo.X
		c.Sides[East], c.Sides[West] = b.Sides[West], b.Sides[East]
		out = append(out, &c)
	}
	return out
}

func TestMirroredPlanMirrorsTheRoof(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bodies := drawRoof(t)
		twin := mirrored(bodies)
		a, _ := New(bodies)
		b, _ := New(twin)
		require.Equal(t, lines(a), lines(b))
		lengths := func(r *Roof, k float64) (out []float64) {
			for _, l := range r.Lines {
				if l.Kind != Valley { // either of two equal valleys may be the carried one
					out = append(out, math.Round((k*(l.A.X+l.B.X)+1000*(l.A.Y+l.B.Y))*100)/100)
				}
			}
			slices.Sort(out)
			return out
		}
		plantest.Near(t, lengths(a, 1), lengths(b, -1), 0.02)
	})
}

// Every rafter line runs up its face from an eave or valley to a ridge, hip,
// valley or wall, and stays in the face.
func TestRunsStayInTheirFaces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, _ := New(drawRoof(t))
		for _, run := range r.Runs() {
			mid := run.Low.Add(run.High).Mul(0.5)
			require.True(t, contains(run.Face.Outline, mid))
			require.Greater(t, run.Face.Plane.At(run.High), run.Face.Plane.At(run.Low))
			require.Contains(t, []EdgeKind{Eave, Valley, Rake}, run.LowEnd.Kind)
			require.Contains(t, []EdgeKind{Ridge, Hip, Valley, Wall, Rake}, run.HighEnd.Kind)
			z, _, ok := r.Height(mid)
			require.True(t, ok)
			require.InDelta(t, run.Face.Plane.At(mid), z, 1e-6, "nothing lies over a rafter")
		}
	})
}
