package framing

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/plantest"
	"galewright/plan/roofplan"
)

// Of two lines that cross, the later is cut in two at the crossing, unless that is within an
// inch of an end of either, or it is a valley that is carried on, which is one stick.
func TestLinesThatCrossAreCutInTwo(t *testing.T) {
	v := func(x, y float64) geom.Vec3 { return geom.Vec3{X: x, Y: y} }
	first := &roofplan.Line{Kind: roofplan.Ridge, A: v(0, 50), B: v(100, 50)}
	from := geom.Vec2{X: 40, Y: 40}
	type ends [][2]geom.Vec3
	for _, c := range []struct {
		name string
		line *roofplan.Line
		want ends
	}{
		{"in the middle", &roofplan.Line{Kind: roofplan.Ridge, A: v(30, 0), B: v(30, 100)}, ends{{v(30, 0), v(30, 50)}, {v(30, 50), v(30, 100)}}},
		{"2 in from its end", &roofplan.Line{Kind: roofplan.Hip, A: v(30, 0), B: v(30, 52)}, ends{{v(30, 0), v(30, 50)}, {v(30, 50), v(30, 52)}}},
		{"an inch from its end", &roofplan.Line{Kind: roofplan.Ridge, A: v(30, 0), B: v(30, 51)}, ends{{v(30, 0), v(30, 51)}}},
		{"an inch from its start", &roofplan.Line{Kind: roofplan.Ridge, A: v(30, 49), B: v(30, 100)}, ends{{v(30, 49), v(30, 100)}}},
		{"an inch from the other's start", &roofplan.Line{Kind: roofplan.Ridge, A: v(1, 0), B: v(1, 100)}, ends{{v(1, 0), v(1, 100)}}},
		{"an inch from the other's end", &roofplan.Line{Kind: roofplan.Ridge, A: v(99, 0), B: v(99, 100)}, ends{{v(99, 0), v(99, 100)}}},
		{"carried on", &roofplan.Line{Kind: roofplan.Valley, A: v(30, 0), B: v(30, 100), Carried: &from}, ends{{v(30, 0), v(30, 100)}}},
		{"the same way", &roofplan.Line{Kind: roofplan.Ridge, A: v(0, 60), B: v(100, 60)}, ends{{v(0, 60), v(100, 60)}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := &roofFrame{roof: &roofplan.Roof{Lines: []*roofplan.Line{first, c.line}}}
			got := f.crossings()
			require.Len(t, got, 1+len(c.want))
			assert.Same(t, first, got[0])
			for i, l := range got[1:] {
				assert.Equal(t, c.want[i], [2]geom.Vec3{l.A, l.B})
				assert.Equal(t, c.line.Kind, l.Kind)
				assert.Equal(t, c.line.Carried, l.Carried)
			}
		})
	}
	second := &roofplan.Line{Kind: roofplan.Ridge, A: v(0, 80), B: v(100, 80)}
	f := &roofFrame{roof: &roofplan.Roof{Lines: []*roofplan.Line{first, second, {Kind: roofplan.Ridge, A: v(30, 0), B: v(30, 100)}}}}
	var cuts []float64
	for _, l := range f.crossings()[2:] {
		cuts = append(cuts, l.A.Y, l.B.Y)
	}
	assert.Equal(t, []float64{0, 50, 50, 80, 80, 100}, cuts, "twice, where it crosses two")
}

// In a main roof of 6 in 12, 2x8 at x 0 to 360, a lower wing's valley comes up from the inside
// corner. The ridge member is the plan's, where it names none a size deeper than the rafters,
// and so are hips and valleys. A ridge's top lies half its thickness times 6/12 under the
// peak: 0.4375 of 1 3/4. A hip of 1 1/2 between planes of 6 in 12 at 45 degrees loses 0.75 x
// 0.5 sin 45 = 0.2652; a valley nothing where it lies in the valley, and that much where
// it is carried on in the plane of the main roof.
func TestSticksOfLinesByHand(t *testing.T) {
	house := func(ridge plan.Lumber) map[plan.Role]*Member {
		p := stories(1)
		ring(p, 0, rect(0, 0, 288, 192)...)
		roofOn(p, "main", "hip", "x", 6, rect(0, 0, 288, 192)).RidgeMember = ridge
		out := map[plan.Role]*Member{}
		for _, m := range roofed(t, p).Members {
			out[m.Role] = m
		}
		return out
	}
	// Over the outside face: plates 229.125, 7.25 x sqrt 1.25 = 8.1057 plumb, less the seat's
	// 7.25/(4 x 0.44721) = 4.0529 x 0.5: 235.2043. The peak is 96 x 0.5 over that: 283.2043.
	const peak = 283.2043
	m := house(plan.Lumber{Ply: 1, Breadth: 1.75, Depth: 11.875, Text: "1.75x11.875"})
	ridge, hip := m[plan.Ridge], m[plan.HipRafter]
	assert.Equal(t, "1.75x11.875", ridge.Section.Text)
	assert.InDelta(t, peak-0.4375, ridge.A.Z, 1e-4)
	assert.InDelta(t, peak-0.4375-11.875, ridge.Z0, 1e-4)
	assert.Equal(t, "2x10", hip.Section.Text)
	// Its arris line: 0.2652 under the hip all along, which climbs 6 in 12 over each 12 sqrt 2.
	run := math.Abs(hip.B.X - hip.A.X)
	assert.InDelta(t, run/2, hip.B.Z-hip.A.Z, 1e-6)
	in := math.Min(hip.A.X, 288-hip.A.X) // inside of the wall's face, on both axes
	assert.InDelta(t, 235.2043+in/2-0.2652, hip.A.Z, 1e-4)
	m = house(plan.Lumber{})
	assert.Equal(t, "2x10", m[plan.Ridge].Section.Text)
	assert.InDelta(t, peak-0.375, m[plan.Ridge].A.Z, 1e-4)
}

// A ridge board is cut at the last rafter that the longest stock reaches: of 200 in, with
// rafters at 16, 32 ... 192, stock of 96 gives 96 and 192 and the rest; what is as long as
// the stock is one piece; where no rafter is near it is cut at the stock's length. Flush
// rafters, and those of another ridge, are no place for it.
func TestARidgeBoardIsCutAtRafters(t *testing.T) {
	runs := func(flush bool, y float64, kind roofplan.EdgeKind, at ...float64) (out []*roofplan.Run) {
		for _, x := range at {
			out = append(out, &roofplan.Run{High: geom.Vec2{X: x, Y: y}, Flush: flush, HighEnd: roofplan.End{Kind: kind}})
		}
		return out
	}
	module := []float64{16, 32, 48, 64, 80, 96, 112, 128, 144, 160, 176, 192}
	for _, c := range []struct {
		name   string
		stock  []float64
		runs   []*roofplan.Run
		u0, u1 float64
		want   []float64
	}{
		{"two cuts", []float64{48, 96}, runs(false, 0, roofplan.Ridge, module...), 0, 200, []float64{96, 192}},
		{"from its own start", []float64{96}, runs(false, 0, roofplan.Ridge, module...), -12, 200, []float64{80, 176}},
		{"as long as the stock", []float64{200}, runs(false, 0, roofplan.Ridge, module...), 0, 200, nil},
		{"no stock named: 20 ft", nil, runs(false, 0, roofplan.Ridge, 120, 130), 0, 241, []float64{130}},
		{"no stock named, 20 ft long", nil, runs(false, 0, roofplan.Ridge, 120), 0, 240, nil},
		{"no rafter", []float64{96}, nil, 0, 200, []float64{96, 192}},
		{"no rafter past the first inch", []float64{96}, runs(false, 0, roofplan.Ridge, 1), 0, 150, []float64{96}},
		{"flush ones", []float64{96}, runs(true, 0, roofplan.Ridge, module...), 0, 150, []float64{96}},
		{"of another ridge", []float64{96}, runs(false, 5, roofplan.Ridge, 48, 80), 0, 150, []float64{96}},
		{"jacks at a hip", []float64{96}, runs(false, 0, roofplan.Hip, 48, 80), 0, 150, []float64{96}},
	} {
		f, _ := emptyFrame()
		f.plan.Lumber.Stock, f.runs = c.stock, c.runs
		l := run(roofplan.Ridge, geom.Vec2{}, geom.Vec2{X: 200})
		l.u0, l.u1, l.owner = -50, 250, &roofBody{Roof: &plan.Roof{}}
		want := append(append([]float64{-50}, c.want...), 250)
		assert.Equal(t, want, f.splices(l, c.u0, c.u1), c.name)
	}
	f, _ := emptyFrame()
	f.plan.Lumber.Stock, f.runs = []float64{200}, runs(false, 0, roofplan.Ridge, module...)
	l := run(roofplan.Ridge, geom.Vec2{}, geom.Vec2{X: 200})
	l.u0, l.u1, l.owner = -50, 250, &roofBody{Roof: &plan.Roof{RidgeStock: 100}}
	assert.Equal(t, []float64{-50, 96, 192, 250}, f.splices(l, 0, 200), "shorter pieces than the stock, by the plan")
}

// Two lines that would take one place: in a straight line the later is cut square at its ends;
// of others the later one to the side of the earlier, but where the earlier one ends at the
// middle of the later, that one is cut.
func TestWhichLineYields(t *testing.T) {
	v := func(x, y float64) geom.Vec2 { return geom.Vec2{X: x, Y: y} }
	stick := func(a, b geom.Vec2, more float64) *roofLine {
		l := run(roofplan.Hip, a, b)
		l.u0, l.u1 = -more, l.line.Run()+more
		l.recut()
		return l
	}
	reach := func(l *roofLine) []float64 {
		lo, hi := l.column.Along(l.dir.Up(0))
		return []float64{lo - l.at.Dot(l.dir), hi - l.at.Dot(l.dir)}
	}
	for _, c := range []struct {
		name  string
		o, l  *roofLine
		wantO []float64 // from where to where each reaches along itself
		wantL []float64
	}{
		{"apart", stick(v(0, 0), v(100, 0), 2), stick(v(0, 10), v(100, 10), 2), []float64{-2, 102}, []float64{-2, 102}},
		// Up from y = -50 to the side of the first, at y = -0.75.
		{"the later ends at the earlier", stick(v(0, 0), v(100, 0), 2), stick(v(50, -50), v(50, 0), 2), []float64{-2, 102}, []float64{-2, 49.25}},
		{"the earlier ends at the later", stick(v(50, -50), v(50, 0), 2), stick(v(0, 0), v(100, 0), 2), []float64{-2, 49.25}, []float64{-2, 102}},
		{"both at their ends", stick(v(0, 0), v(100, 0), 2), stick(v(100, -50), v(100, 0), 2), []float64{-2, 102}, []float64{-2, 49.25}},
		{"in one straight line", stick(v(0, 0), v(100, 0), 2), stick(v(200, 0), v(100, 0), 2), []float64{-2, 102}, []float64{0, 100}},
	} {
		t.Run(c.name, func(t *testing.T) {
			yield(c.o, c.l)
			plantest.Near(t, c.wantO, reach(c.o), 1e-9)
			plantest.Near(t, c.wantL, reach(c.l), 1e-9)
		})
	}
}

// A ridge of 1 3/4 x 11 1/4 over rake walls 5.5 deep, rafters 2x8 at 7 in 12: within the walls
// it is whole, 11.25 under its top, which lies 0.875 x 7/12 = 0.5104 under the peak; from
// their inner faces out it is ripped to what the rafters have there, 7.25 x 13.892/12 =
// 8.3933 under the peak. At a gable truss it stops, 1 1/2 in inside the wall's face.
func TestARidgeOverItsGables(t *testing.T) {
	for _, axis := range []plan.Axis{plan.AxisX, plan.AxisY} {
		for _, gable := range []plan.WallTop{plan.RakeTop, plan.PlateTop} {
			p := stories(1)
			size := geom.Vec2{X: 240, Y: 200}
			ends := [2]int{1, 3}
			if axis == plan.AxisY {
				size, ends = geom.Vec2{X: 200, Y: 240}, [2]int{0, 2}
			}
			w := ring(p, 0, rect(0, 0, size.X, size.Y)...)
			w[ends[0]].Top, w[ends[1]].Top = gable, gable
			r := roofOn(p, "main", "gable", axis, 7, rect(0, 0, size.X, size.Y))
			r.RidgeMember = plan.Lumber{Ply: 1, Breadth: 1.75, Depth: 11.25, Text: "ridge"}
			if gable == plan.PlateTop {
				r.GableEnd = [2]plan.GableEnd{plan.TrussEnd, plan.TrussEnd}
			}
			var ridge []*Member
			for _, m := range roofed(t, p).Members {
				if m.Role == plan.Ridge {
					ridge = append(ridge, m)
				}
			}
			along := func(q geom.Vec3) float64 { return q.Flat().Along(p.Roofs[0].RidgeAxis()) }
			// 229.125 + 8.3933 - 7.25/(4 x 0.50387) x 7/12 + 100 x 7/12.
			peak := 229.125 + 8.3933 - 2.0983 + 58.3333
			low := map[float64]float64{} // the foot at places along the ridge
			var lo, hi float64
			for _, m := range ridge {
				for _, s := range m.Solid {
					a, b := s.Bounds()
					lo, hi = min(lo, along(a)), max(hi, along(b))
					for _, x := range []float64{-6, 1, 5.4, 5.6, 120, 234.4, 234.6, 239, 246} {
						if along(a) < x && along(b) > x {
							if z, ok := low[x]; !ok || a.Z < z {
								low[x] = a.Z
							}
						}
					}
				}
			}
			if gable == plan.PlateTop {
				assert.InDelta(t, 238.5, hi, 1e-6, "%v", axis)
				assert.Len(t, low, 5, "nothing of it at -6, 1 (it starts at 1.5), 239 and 246")
				continue
			}
			assert.InDelta(t, -12, lo, 1e-6)
			assert.InDelta(t, 252, hi, 1e-6)
			for x, z := range low {
				want := peak - 0.5104 - 11.25
				if x < 5.5 || x > 234.5 {
					want = peak - 8.3933
				}
				assert.InDelta(t, want, z, 1e-3, "%v at %v", axis, x)
			}
			assert.Len(t, low, 9)
		}
	}
}

func TestNamesOfDeepSections(t *testing.T) {
	// PS 20: 2x14 and 2x16 are dressed 13 1/4 and 15 1/4 deep.
	assert.Equal(t, "2x14", nominal(1.5, 13.25))
	assert.Equal(t, "2x16", nominal(1.5, 15.25))
	sizes := []float64{3.5, 5.5, 7.25, 9.25, 11.25, 13.25, 15.25}
	for i, d := range sizes[1:] {
		assert.Equal(t, d, deeper(sizes[i]), "the next size over it")
		assert.Equal(t, d, deeper(d-0.1))
	}
	assert.Equal(t, 3.5, deeper(1))
	assert.Equal(t, 16.0, deeper(16), "deeper than any: as it is")
}
