package framing

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"galewright/plan"
	"galewright/plan/geom"
)

// outlines are footprints in feet, counterclockwise, all on the 4 ft module
// so that the stud layout of a mirrored wall is the mirrored layout.
var outlines = map[string][]geom.Vec2{
	"rectangle": {{X: 0, Y: 0}, {X: 24, Y: 0}, {X: 24, Y: 36}, {X: 0, Y: 36}},
	"L":         {{X: 0, Y: 0}, {X: 32, Y: 0}, {X: 32, Y: 16}, {X: 20, Y: 16}, {X: 20, Y: 40}, {X: 0, Y: 40}},
	"T":         {{X: 0, Y: 0}, {X: 36, Y: 0}, {X: 36, Y: 16}, {X: 24, Y: 16}, {X: 24, Y: 32}, {X: 12, Y: 32}, {X: 12, Y: 16}, {X: 0, Y: 16}},
	"U":         {{X: 0, Y: 0}, {X: 44, Y: 0}, {X: 44, Y: 28}, {X: 32, Y: 28}, {X: 32, Y: 12}, {X: 12, Y: 12}, {X: 12, Y: 28}, {X: 0, Y: 28}},
	"bay":       {{X: 0, Y: 0}, {X: 12, Y: 0}, {X: 16, Y: -4}, {X: 24, Y: -4}, {X: 28, Y: 0}, {X: 40, Y: 0}, {X: 40, Y: 24}, {X: 0, Y: 24}},
	"round":     {{X: 0, Y: 0}, {X: 12, Y: -2}, {X: 24, Y: -2}, {X: 36, Y: 0}, {X: 40, Y: 10}, {X: 40, Y: 22}, {X: 0, Y: 22}},
	"kite":      {{X: 0, Y: 0}, {X: 28, Y: -4}, {X: 40, Y: 16}, {X: 12, Y: 28}, {X: -4, Y: 16}},
}

var outlineNames = []string{"rectangle", "L", "T", "U", "bay", "kite", "round"}

// shape is one drawn house, kept apart from its plan so that the same house
// can be built mirrored, moved or turned.
type shape struct {
	outline  []geom.Vec2
	stories  int
	spacing  float64
	posts    []int
	joins    []plan.Join
	studs    []plan.Lumber
	openings [][]*plan.Opening // by wall, all levels alike
	run      plan.Axis
	balloon  int // exterior wall that goes up through all stories, or -1
	inner    bool
}

func drawShape(t *rapid.T) shape {
	return drawShapeOf(t, outlineNames, []float64{12, 16, 19.2, 24})
}

func drawShapeOf(t *rapid.T, names []string, spacings []float64) shape {
	s := shape{
		stories: rapid.IntRange(1, 2).Draw(t, "stories"),
		spacing: rapid.SampledFrom(spacings).Draw(t, "spacing"),
		run:     rapid.SampledFrom(plan.Axes).Draw(t, "run"),
		inner:   rapid.Bool().Draw(t, "inner"),
		balloon: -1,
	}
	for _, p := range outlines[rapid.SampledFrom(names).Draw(t, "outline")] {
		s.outline = append(s.outline, p.Mul(12))
	}
	n := len(s.outline)
	if rapid.IntRange(0, 2).Draw(t, "balloon") == 0 && s.stories > 1 {
		s.balloon = rapid.IntRange(0, n-1).Draw(t, "balloon wall")
	}
	for i := range n {
		s.posts = append(s.posts, rapid.SampledFrom([]int{0, 2, 3, 4}).Draw(t, "post"))
		s.joins = append(s.joins, rapid.SampledFrom([]plan.Join{"", plan.JoinThrough, plan.JoinButt}).Draw(t, "join"))
		s.studs = append(s.studs, rapid.SampledFrom([]plan.Lumber{twoBySix, twoByFour}).Draw(t, "studs"))
		s.openings = append(s.openings, drawOpenings(t, s.outline[(i+1)%n].Sub(s.outline[i]).Len()))
	}
	return s
}

// drawOpenings fills a wall with openings far enough apart for jacks and one
// king.
func drawOpenings(t *rapid.T, length float64) (out []*plan.Opening) {
	at := 12 + rapid.Float64Range(0, 96).Draw(t, "gap")
	for k := 0; ; k++ {
		width := rapid.SampledFrom([]float64{18, 30.5, 38.5, 62, 98}).Draw(t, "width")
		if at+width > length-12 || k > 3 {
			return out
		}
		name := fmt.Sprintf("o%d", k)
		o := window(name, at, width)
		if rapid.Bool().Draw(t, "door") {
			o = door(name, at, width)
		}
		if rapid.Bool().Draw(t, "tight") { // header tight to the plates
			o.Height = 109.125 - 3 - o.Sill - o.Header.Depth
		}
		out = append(out, o)
		at += width + rapid.SampledFrom([]float64{7.5, 9, 12.25, 30, 90}).Draw(t, "gap")
	}
}

// plan builds the shape, each point moved by place; mirrored tells that place
// turns the outline round.
func (s shape) plan(place func(geom.Vec2) geom.Vec2, mirrored bool) *plan.Plan {
	p := stories(s.stories)
	p.Lumber.Stock = []float64{1e6}
	n := len(s.outline)
	for l := range s.stories {
		p.Levels[l].JoistRun = s.run
		for i := range n {
			if i == s.balloon && l > 0 {
				continue
			}
			a, z := place(s.outline[i]), place(s.outline[(i+1)%n])
			if mirrored {
				a, z = z, a
			}
			w := wall(p, fmt.Sprintf("%d%c", l+1, 'A'+i), l, a, z)
			w.Exterior, w.Bearing, w.Spacing, w.Studs = true, true, s.spacing, s.studs[i]
			if i == s.balloon {
				w.ToLevel = p.Levels[s.stories-1]
			}
			// the corner at point i is named by the wall that starts there
			start, end := plan.End{Post: s.posts[i], Join: s.joins[i]}, plan.End{}
			if mirrored {
				start, end = end, start
			}
			w.Start, w.End = start, end
			for _, o := range s.openings[i] {
				c := *o
				if mirrored {
					c.At = w.Length() - o.At - o.Width
				}
				w.Openings = append(w.Openings, &c)
			}
		}
		if s.inner {
			s.innerWall(p, l, place, mirrored)
		}
	}
	return p
}

// innerWall runs a partition from the inside face of the first wall to the
// last corner but one, somewhere in the room, ending free.
func (s shape) innerWall(p *plan.Plan, l int, place func(geom.Vec2) geom.Vec2, mirrored bool) {
	d := s.outline[1].Sub(s.outline[0]).Unit()
	a := s.outline[0].Add(d.Mul(64))
	z := a.Add(d.Left().Mul(96))
	a, z = place(a), place(z)
	if mirrored {
		a, z = z, a
	}
	w := wall(p, fmt.Sprintf("%dP", l+1), l, a, z)
	w.Studs, w.Spacing = twoByFour, s.spacing
	w.Shear = []*plan.Shear{{Name: "s", From: 0, To: 48}}
}

func same(p geom.Vec2) geom.Vec2 { return p }

// frameDrawn frames a drawn plan and lets pass only faults that tell truly that
// a partition and an opening want one place.
func frameDrawn(t *rapid.T, p *plan.Plan) *House {
	h, faults := Frame(p)
	for _, f := range faults {
		if f.Code != "wall-in-opening" && f.Code != "opening-near-end" && f.Code != "joist-in-the-air" {
			t.Fatalf("fault: %v", f)
		}
	}
	return h
}

func TestNoTwoMembersOverlap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawShape(t)
		turn := rapid.SampledFrom([]float64{0, 0, math.Pi / 4, 0.3}).Draw(t, "turn")
		h := frameDrawn(t, s.plan(turned(turn), false))
		for _, pair := range h.Overlaps(0.01) {
			t.Errorf("%s reaches into %s", pair[0].ID, pair[1].ID)
		}
	})
}

func turned(a float64) func(geom.Vec2) geom.Vec2 {
	sin, cos := math.Sincos(a)
	return func(p geom.Vec2) geom.Vec2 { return geom.Vec2{X: cos*p.X - sin*p.Y, Y: sin*p.X + cos*p.Y} }
}

func TestEveryFullStudIsTiedTopAndBottom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := frameDrawn(t, drawShape(t).plan(same, false))
		top, foot := map[*Member]int{}, map[*Member]int{}
		for _, j := range h.Joints {
			switch j.Kind {
			case plan.StudTop:
				top[j.First()]++
				if len(j.Members) < 2 {
					t.Fatalf("%s meets no plate", j.ID)
				}
			case plan.StudBase, plan.StudStud:
				foot[j.First()]++
			}
		}
		for _, m := range h.Members {
			if m.Role.FullHeight() && (top[m] != 1 || foot[m] != 1) {
				t.Fatalf("%s has %d joints at its top and %d at its foot", m.ID, top[m], foot[m])
			}
		}
	})
}

// The plates of a wall cover its length without a gap, the lower plates and
// bottom plates (openings added) alike.
func TestWallLengthsClose(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawShape(t).plan(same, false)
		h := frameDrawn(t, p)
		for _, w := range h.Plan.Walls {
			lower, bottom := 0.0, 0.0
			for _, m := range h.Members {
				switch {
				case m.Wall != w:
				case m.Role == plan.TopPlate:
					lower += m.Length
				case m.Role == plan.BottomPlate:
					bottom += m.Length
				}
			}
			for _, o := range w.Openings {
				if o.Sill == 0 && len(openingMembersOf(h, w, o)) > 0 {
					bottom += o.Width
				}
			}
			if math.Abs(lower-bottom) > 1e-6 || math.Abs(lower-w.Length()) > 16 {
				t.Fatalf("wall %s, %v long, has %v of top and %v of bottom plate", w.Name, w.Length(), lower, bottom)
			}
		}
	})
}

// Where two walls meet at a right angle around the house, the rim of the one whose plates run through to
// the corner does so too, and the other's stops at it.
func TestRimsMeetAsTheWallsDo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawShapeOf(t, outlineNames[:4], []float64{16})
		if rapid.Bool().Draw(t, "square") { // its first wall and its last have equal claims to run through
			s = shape{outline: rect(0, 0, 288, 288), stories: 1, spacing: 16, balloon: -1, run: plan.AxisX, posts: s.posts, joins: make([]plan.Join, 4), studs: s.studs, openings: make([][]*plan.Opening, 4)}
		}
		h := frameDrawn(t, s.plan(same, false))
		far := map[[2]string]float64{} // how far members of a wall reach along it, by wall and role
		for _, m := range h.Members {
			if (m.Role == plan.TopPlate || m.Role == plan.Rim) && m.Wall.Level == m.Level && !m.Wall.Balloon() {
				for end, at := range map[string]float64{"/tail": m.S1, "": -m.S0} {
					k := [2]string{m.Wall.Name + end, string(m.Role)}
					if was, ok := far[k]; !ok || at > was {
						far[k] = at
					}
				}
			}
		}
		n := 0
		for i, w := range h.Plan.Walls {
			next := h.Plan.Walls[(i+1)%len(h.Plan.Walls)]
			if w.To != next.From || w.Frame().D.Cross(next.Frame().D) < 0.9 || !w.Exterior || w.Balloon() || next.Balloon() || w.Level != next.Level {
				continue
			}
			n++
			rim, other := far[[2]string{w.Name + "/tail", string(plan.Rim)}], -far[[2]string{next.Name, string(plan.Rim)}]
			if through := far[[2]string{w.Name + "/tail", string(plan.TopPlate)}] > w.Length()-1e-6; through {
				require.InDelta(t, w.Length(), rim, 1e-6, "%s through %s", w.Name, next.Name)
				require.InDelta(t, next.Hook+1.5, other, 1e-6, "%s stops at %s", next.Name, w.Name)
			} else {
				require.InDelta(t, w.Length()-1.5, rim, 1e-6, "%s stops at %s", w.Name, next.Name)
				require.InDelta(t, next.Hook, other, 1e-6, "%s through %s", next.Name, w.Name)
			}
		}
		require.NotZero(t, n)
	})
}

func openingMembersOf(h *House, w *plan.Wall, o *plan.Opening) (out []*Member) {
	for _, m := range h.Members {
		if m.Wall == w && m.Opening == o {
			out = append(out, m)
		}
	}
	return out
}

func TestMovingTheHouseMovesEveryJoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawShape(t)
		by := geom.Vec2{X: rapid.Float64Range(-5000, 5000).Draw(t, "dx"), Y: rapid.Float64Range(-5000, 5000).Draw(t, "dy")}
		a, b := frameDrawn(t, s.plan(same, false)), frameDrawn(t, s.plan(by.Add, false))
		if len(a.Joints) != len(b.Joints) {
			t.Fatalf("%d joints, moved %d", len(a.Joints), len(b.Joints))
		}
		for i, j := range a.Joints {
			k := b.Joints[i]
			if j.ID != k.ID || k.At.Sub(j.At.Add(by.Up(0))).Len() > 1e-6 || len(j.Members) != len(k.Members) {
				t.Fatalf("%s at %v became %s at %v", j.ID, j.At, k.ID, k.At)
			}
		}
	})
}

// A mirrored plan gives the mirrored members. Plates are left out, whose
// splices are chosen from the measuring end, and the partition, which is
// measured from its other face when mirrored.
func TestMirroredPlanGivesMirroredMembers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawShapeOf(t, outlineNames[:4], []float64{12, 16, 24})
		s.inner = false
		flip := func(p geom.Vec2) geom.Vec2 { return geom.Vec2{X: -p.X, Y: p.Y} }
		a, b := places(frameDrawn(t, s.plan(same, false)), 1), places(frameDrawn(t, s.plan(flip, true)), -1)
		for i := range min(len(a), len(b)) {
			if a[i] != b[i] {
				t.Fatalf("%d and %d members; first differ %s and %s", len(a), len(b), a[i], b[i])
			}
		}
		if len(a) != len(b) {
			t.Fatalf("%d and %d members", len(a), len(b))
		}
	})
}

// places lists role and middle of the members that stand.
func places(h *House, flip float64) (out []string) {
	for _, m := range h.Members {
		switch m.Role {
		case plan.Stud, plan.King, plan.Jack, plan.Cripple, plan.Post, plan.Header, plan.Sill:
			c := m.A.Add(m.B).Mul(0.5)
			out = append(out, fmt.Sprintf("%s %.2f %.2f %.2f", m.Role, c.X*flip+0.0001, c.Y, c.Z))
		}
	}
	slices.Sort(out)
	return out
}
