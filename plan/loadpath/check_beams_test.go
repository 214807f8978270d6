package loadpath

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan/framing"
	"galewright/plan/geom"
)

// A flush beam in the middle of 16 ft carries half of 8 ft on both sides over its 285 in, 190
// ft2, at what the floor weighs and 40 psf of live load; half of it at each end. There 3 in of
// it lie 4 in on the plate: 12 in2 at 565 psi (southern pine, NDS 2018 Supplement Table 4B, from
// memory) are 6,780 lb.
func TestABeamOnPlatesByHand(t *testing.T) {
	r, ds := Run(placed(t, beamWith("flush", "0'", "24'", "")))
	require.False(t, ds.Errors())
	psf := analyzed(t, beamWith("flush", "0'", "24'", "")).dead.floor(r.Placement.House.Plan.Levels[1])
	links := beamLinks(r)
	require.Len(t, links, 2)
	for _, l := range links {
		assert.InDelta(t, 190.0/2*(psf+40), l.Demand, 1, l.ID)
		assert.InDelta(t, 190.0/2*(1.2*psf+1.6*40), l.Strength, 1, l.ID)
		assert.InDelta(t, 6780, l.Capacity.Value, 1, l.ID)
		assert.InDelta(t, l.Demand/6780, l.Ratio, 1e-3, l.ID)
	}
}

// The plan's live load counts; a post in the middle under a beam that goes on over it takes
// half and a quarter of that more.
func TestABeamGoesOnOverItsPost(t *testing.T) {
	plan := func(more string) string { return beamWith("flush", "0'", "24'", more) }
	heavy := strings.Replace(plan(""), "lumber =", "loads = { floor_live = \"50 psf\" }\nlumber =", 1)
	r, _ := Run(placed(t, heavy))
	light, _ := Run(placed(t, plan("")))
	assert.InDelta(t, 190.0/2*10, beamLinks(r)[0].Demand-beamLinks(light)[0].Demand, 0.5)

	over, _ := Run(placed(t, plan("posts = [\"12'\"]\n")))
	links := beamLinks(over)
	require.Len(t, links, 3)
	most := 0.0
	for _, l := range links {
		most = max(most, l.Demand)
	}
	assert.InDelta(t, 1.25*light.sumOf(beamCheck)*0.5, most, 0.02*most)
	assert.Contains(t, fmt.Sprint(links[0].Capacity.Terms), "Fc perpendicular")
}

// Of a beam in one piece over the middle of three supports, 100 in apart, 10 lb an inch: 500,
// 1000 and 500 lb by lever; 5/4 of 1000 at the middle one. Two that end there bring 1000.
func TestReactionsOfABeam(t *testing.T) {
	at := func(x float64) geom.Vec3 { return geom.Vec3{X: x} }
	x := &framing.Beam{Frame: geom.NewFrame(geom.Vec2{}, geom.Vec2{X: 200}), Supports: []framing.BeamSupport{{Along: 0}, {Along: 100}, {Along: 200}}}
	loads := []beamPush{{"", 50, 600, 400}, {"", 150, 600, 400}}
	x.Pieces = []*framing.Member{{A: at(0), B: at(200)}}
	assert.InDelta(t, 500, reactionOf(x, 0, loads, beamPush.asd), 1e-9)
	assert.InDelta(t, 1250, reactionOf(x, 1, loads, beamPush.asd), 1e-9)
	assert.InDelta(t, 1.25*(1.2*600+1.6*400), reactionOf(x, 1, loads, beamPush.strength), 1e-9)
	x.Pieces = []*framing.Member{{A: at(0), B: at(100)}, {A: at(200), B: at(100)}}
	assert.InDelta(t, 1000, reactionOf(x, 1, loads, beamPush.asd), 1e-9)
}

// beamLinks are the links of beams on what carries them.
func beamLinks(r *Report) (out []*Link) {
	for _, l := range r.Links {
		if l.Check.ID == beamCheck {
			out = append(out, l)
		}
	}
	return out
}

// sumOf adds the demands of a check.
func (r *Report) sumOf(check string) (lb float64) {
	for _, l := range r.Links {
		if l.Check.ID == check {
			lb += l.Demand
		}
	}
	return lb
}
