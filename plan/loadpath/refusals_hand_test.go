package loadpath

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/placement"
	"galewright/plan/wind"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What keeps loads from being computed is one fault that names it; a house with all of it has
// none. Without [site] the fault is told of the file's first line.
func TestWhatKeepsLoadsFromBeingComputed(t *testing.T) {
	whole := placed(t, sample.plan()).House
	for _, c := range []struct {
		code   plan.Code
		said   string
		change func(h *framing.House, p *plan.Plan)
	}{
		{"", "", func(*framing.House, *plan.Plan) {}},
		{"no-wind-basis", "no wind speed", func(_ *framing.House, p *plan.Plan) { p.Site.WindSpeed = 0 }},
		{"no-joints", "no joints", func(h *framing.House, _ *plan.Plan) { h.Joints = nil }},
		{"bad-wind-basis", `no exposure "E"`, func(_ *framing.House, p *plan.Plan) { p.Site.Exposure = "E" }},
		{"envelope-not-allowed", "", func(_ *framing.House, p *plan.Plan) { p.Site.Procedure = "envelope" }},
	} {
		h, p := *whole, *whole.Plan
		h.Plan = &p
		c.change(&h, &p)
		ds := basisFaults(&h)
		if c.code == "" {
			assert.Empty(t, ds)
			continue
		}
		require.Len(t, ds, 1, c.code)
		assert.Equal(t, c.code, ds[0].Code)
		assert.Contains(t, ds[0].Summary, c.said)
		assert.Equal(t, p.Site.Pos, ds[0].Pos, c.code)
		assert.NotEmpty(t, ds[0].Mend)
	}
	h, p := *whole, *whole.Plan
	h.Plan = &p
	p.Site = plan.Site{}
	p.File = "house.toml"
	assert.Equal(t, plan.Pos{File: "house.toml", Line: 1, Col: 1}, basisFaults(&h)[0].Pos)
}

// What is lost on the way is told with its wall, roof or story, above half a pound: uplift of
// a stud over nothing, roof members that bear on nothing (the first of them by name), a ridge
// beam without walls, a story without shear walls.
func TestWhatIsLostOnTheWayIsTold(t *testing.T) {
	w := &plan.Wall{Name: "2S"}
	roof, sound := &plan.Roof{Name: "main"}, &plan.Roof{Name: "wing"}
	l := &plan.Level{Name: "first"}
	one, two, of := &framing.Member{Role: plan.Rafter, Roof: roof}, &framing.Member{Role: plan.Rafter, Roof: roof}, &framing.Member{Role: plan.Rafter, Roof: sound}
	run := func(orphan, first, second, ridge, story float64, noLine bool) map[plan.Code]plan.Diagnostic {
		a := &analysis{
			model: &model{givens: givens{plan: &plan.Plan{Walls: []*plan.Wall{w}, Roofs: []*plan.Roof{roof, sound}}, house: &framing.House{Members: []*framing.Member{of, one, two}}}},
			uplift: &uplift{
				orphan: map[*plan.Wall]float64{w: orphan}, unheld: map[*framing.Member]float64{one: first, two: second}, ridgeLost: map[*plan.Roof]float64{roof: ridge},
			},
		}
		r := &Report{Stories: []StoryShear{{Level: l, Axis: plan.AxisX, Total: story, ASD: 0.6 * story, NoLine: noLine}}, Placement: &placement.Placement{}}
		out := map[plan.Code]plan.Diagnostic{}
		for _, d := range r.tell(a) {
			assert.Equal(t, plan.Warning, d.Severity)
			assert.Empty(t, out[d.Code].Code, "once")
			out[d.Code] = d
		}
		return out
	}
	assert.Empty(t, run(0.5, 0.5, 0.5, 0.5, 0.5, true), "half a pound is rounding")
	assert.Empty(t, run(0, 0, 0, 0, 5000, false), "lines hold the story")
	for code, got := range map[plan.Code]map[plan.Code]plan.Diagnostic{
		"uplift-without-path": run(700, 0, 0, 0, 0, false), "rafter-without-support": run(0, 0, 90, 0, 0, false),
		"ridge-without-support": run(0, 0, 0, 90, 0, false), "no-shear-wall": run(0, 0, 0, 0, 5000, true),
	} {
		require.Len(t, got, 1, code)
		require.Contains(t, got, code)
	}
	assert.Contains(t, run(700, 0, 0, 0, 0, false)["uplift-without-path"].Summary, "up to 700 lb per stud")
	assert.Contains(t, run(0, 0, 0, 0, 5000, true)["no-shear-wall"].Summary, "wind along x: 3000 lb (ASD)")
	single, both := run(0, 90, 0, 0, 0, false)["rafter-without-support"].Where, run(0, 90, 80, 0, 0, false)["rafter-without-support"].Where
	assert.True(t, strings.HasPrefix(single, "roof main, "), single)
	assert.NotContains(t, single, "more")
	assert.Equal(t, single+", and 1 more", both)
}

// The uplift of a wall's rafters in one line: how many, their sum with none below nothing, the
// largest with its place, and that over the width of its rafter; a hip's end has no width.
func TestUpliftOfAWallInOneLine(t *testing.T) {
	roof := &plan.Roof{Name: "main"}
	j := func(host, id string, kind plan.JointKind, width float64) *framing.Joint {
		x := &framing.Joint{ID: id, Host: host, Kind: kind, Roof: roof}
		if width != 0 {
			x.Share = &framing.Share{Width: width}
		}
		return x
	}
	a1, a2, a3 := j("S", "S-1", plan.RafterPlate, 16), j("S", "S-2", plan.RafterPlate, 24), j("S", "S-3", plan.RafterPlate, 16)
	b1, foot, dry := j("N", "N-1", plan.RafterPlate, 0), j("S", "S-1-SB", plan.StudBase, 16), j("S", "S-4", plan.RafterPlate, 16)
	b1.Roof = nil
	a := &analysis{
		model: &model{givens: givens{house: &framing.House{Joints: []*framing.Joint{a1, foot, a2, a3, b1, dry}}}},
		uplift: &uplift{peaks: map[*framing.Joint]*peak{
			a1: {force: Force{500, 0}, demand: 300}, a2: {force: Force{1000, 100}, demand: 540}, a3: {force: Force{10, 100}, demand: -54},
			b1: {force: Force{200, 0}, demand: 120}, foot: {force: Force{9000, 0}, demand: 5400},
		}},
	}
	r := &Report{}
	r.upliftLines(a)
	require.Len(t, r.Uplift, 2)
	s, n := r.Uplift[0], r.Uplift[1]
	assert.Equal(t, []any{3, "S-2", "main", 24.0, Force{1000, 100}}, []any{s.Joints, s.At, s.Roof, s.Width, s.Largest})
	assert.InDeltaSlice(t, []float64{840, 270, 910}, []float64{s.SumASD, s.PerFoot, s.Strength}, 1e-9)
	assert.Equal(t, []any{1, "N-1", "", 0.0, 0.0}, []any{n.Joints, n.At, n.Roof, n.Width, n.PerFoot})
}

// An open shed is listed in wind at its high eave and at its low one, each case with both
// halves; any other open roof across alike from both sides. Angles past the figure's last are
// read as the last.
func TestOpenRoofsAreListedByTheirWinds(t *testing.T) {
	for _, kind := range []plan.RoofKind{plan.ShedRoof, plan.GableRoof} {
		for _, pitch := range []float64{3, 20} {
			roof := &plan.Roof{Name: "carport", Kind: kind, Pitch: pitch}
			m := &model{givens: givens{plan: &plan.Plan{Roofs: []*plan.Roof{{Name: "house"}, roof}}}}
			m.open = map[*plan.Roof]bool{roof: true}
			var want, got []string
			add := func(high bool, name string) {
				for _, f := range wind.FreeSlope(kind, math.Min(roof.Angle(), 45), high) {
					want = append(want, fmt.Sprintf("%s %s windward half %.3f", name, f.Case, f.Windward), fmt.Sprintf("%s %s leeward half %.3f", name, f.Case, f.Lee))
				}
			}
			if kind == plan.ShedRoof {
				add(true, "at the high eave")
				add(false, "at the low eave")
			} else {
				add(true, "across")
			}
			for _, f := range wind.FreeAlong() {
				want = append(want, fmt.Sprintf("along %s to h %.3f", f.Case, f.CN[0]), fmt.Sprintf("along %s h to 2h %.3f", f.Case, f.CN[1]), fmt.Sprintf("along %s beyond 2h %.3f", f.Case, f.CN[2]))
			}
			for _, x := range (&Report{work: &analysis{model: m}}).openRoofs() {
				assert.Equal(t, "carport", x.roof)
				got = append(got, fmt.Sprintf("%s %s %s %.3f", x.wind, x.name, x.part, x.cn))
			}
			assert.Equal(t, want, got, "%s %v", kind, pitch)
		}
	}
}
