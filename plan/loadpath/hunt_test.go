package loadpath

import (
	"math"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The tests of this file guard against mistakes that would lower a demand or
// raise a capacity; the reason is statics unless a source is named.

func TestWeightRelievesAPileOnce(t *testing.T) {
	// Heavy walls have weight left over from uplift. It reaches the pile with
	// the studs' forces; taken off the end tension too it would count twice.
	heavy := sample
	heavy.loads = "[loads]\ndead = [{ part = \"wall\", name = \"stucco\", weight = \"30 psf\" }]\n"
	a := analysed(t, heavy.plan())
	left := 0.0
	for _, x := range a.lateral.lines {
		for _, s := range x.Segments {
			if s.base && s.Wall.Level.Index == 0 {
				left += a.relief(s)
			}
		}
	}
	require.Greater(t, left, 1000.0, "the walls are heavy enough to tell")
	checked := 0
	pulls := a.overturnedPiles()
	for _, l := range overturnedAtPiles(&Check{}, a) {
		lifts := 0.0
		for _, row := range pulls[l.Joint] {
			lifts = math.Max(lifts, math.Max(row[0], row[1]))
		}
		p := a.peaks[l.Joint]
		near(t, math.Max(0, lifts+ASD.W*p.force.W-ASD.D*p.force.D), l.Demand, 1e-9, l.ID)
		checked++
	}
	require.Positive(t, checked)
}

func TestBoltThroughASillHoldsNoStud(t *testing.T) {
	// A bolt holds the plate down; the stud hangs on its clip. The stronger of
	// the two is not the capacity of the joint: they stand in a row.
	bolt := pieceOf(t, plan.Item{Mark: "bolt", Kind: "anchor bolt", Length: 12, Rod: 0.625, Washer: 3}, framing.StudBase, "through")
	clip := pieceOf(t, plan.Item{Mark: "clip", Kind: "clip", Gauge: "20 ga", Fasteners: []plan.Fasteners{
		{Part: "to stud", Nail: "8d x 1 1/2", Count: 5, Parts: 1}, {Part: "to plate", Nail: "8d x 1 1/2", Count: 5, Parts: 1}}}, framing.StudBase, "left")
	for _, k := range []framing.Kind{framing.StudBase, framing.WallEnd} {
		j := &framing.Joint{Kind: k}
		assert.False(t, holdsMember(bolt, j), k)
		assert.True(t, holdsMember(clip, j), k)
	}
	assert.True(t, holdsMember(bolt, &framing.Joint{Kind: framing.GirderPile}), "there it crosses both")
}

func TestNoNailsNoStrap(t *testing.T) {
	// Steel alone holds nothing to wood.
	for _, kind := range []string{"strap", "long strap"} {
		p := pieceOf(t, plan.Item{Mark: "s", Kind: kind, Length: 36, Width: 2, Gauge: "20 ga",
			Fasteners: []plan.Fasteners{{Part: "each end", Nail: "10d x 1 1/2", Count: 4, Parts: 2}}}, framing.StudStud, "outside")
		p.Item.Fasteners, p.Item.Nails = nil, nil
		got := pine().pieceCapacity(p, upward)
		assert.Contains(t, got.Unknown, "no nails", kind)
		assert.Zero(t, got.Value, kind)
	}
}

func TestMakersZeroIsZero(t *testing.T) {
	// A maker who gives a load sideways and none upward says that the piece
	// holds none upward; nails are not computed past him.
	clip := plan.Item{Mark: "c", Kind: "clip", Gauge: "18 ga", Fasteners: []plan.Fasteners{{Part: "to plate", Nail: "8d x 1 1/2", Count: 6, Parts: 1}},
		Load: plan.Load{Across: 200, Source: "invented sheet"}}
	assert.NotEmpty(t, pine().pieceCapacity(pieceOf(t, clip, framing.RafterPlate, "left"), upward).Unknown)
	clip.Load = plan.Load{Uplift: 500, Source: "invented sheet"}
	assert.NotEmpty(t, pine().pieceCapacity(pieceOf(t, clip, framing.RafterRidge, "left"), endways).Unknown, "uplift of a clip is no tension along the rafter")
	strap := plan.Item{Mark: "s", Kind: "ridge strap", Length: 24, Width: 1.25, Gauge: "20 ga", Load: plan.Load{Uplift: 450, Source: "invented sheet"},
		Fasteners: []plan.Fasteners{{Part: "each end", Nail: "10d x 1 1/2", Count: 4, Parts: 2}}}
	assert.Equal(t, 450.0, pine().pieceCapacity(pieceOf(t, strap, framing.RafterRidge, "top"), endways).Value, "a strap pulls along itself")
	strap.Load = plan.Load{Pos: plan.Pos{Line: 7}, Source: "invented sheet"}
	assert.NotEmpty(t, pine().pieceCapacity(pieceOf(t, strap, framing.RafterRidge, "top"), endways).Unknown, "a load of 0 lb is a load")
}

func TestSheathingTakesNailLength(t *testing.T) {
	// A strap over 7/16 in of sheathing: a nail of 1-1/2 in is left with 1.01
	// in of wood, a longer one is not the worse for it.
	strap := func(phase, nail string) float64 {
		it := plan.Item{Mark: "s", Kind: "strap", Length: 36, Width: 3, Gauge: "10 ga", Phase: phase,
			Fasteners: []plan.Fasteners{{Part: "each end", Nail: nail, Count: 8, Parts: 2}}}
		p := pieceOf(t, it, framing.StudStud, "outside")
		p.Joint.Wall = &plan.Wall{Exterior: true}
		c := pine().pieceCapacity(p, upward)
		require.Empty(t, c.Unknown)
		return c.Value
	}
	assert.Less(t, strap("after sheathing", "10d x 1 1/2"), strap("before sheathing", "10d x 1 1/2"))
	assert.InDelta(t, strap("after sheathing", "16d"), strap("before sheathing", "16d"), 1e-9)
}

func TestStaggeredNailsAllCount(t *testing.T) {
	// AISI S100 D3 asks for the worst chain of holes; with no pitch at hand the
	// zigzag is taken as straight.
	strap := func(stagger bool) float64 {
		return pine().pieceCapacity(pieceOf(t, plan.Item{Mark: "s", Kind: "long strap", Length: 60, Width: 2, Gauge: "14 ga",
			Fasteners: []plan.Fasteners{{Part: "each end", Nail: "10d x 1 1/2", Count: 40, Parts: 2, Rows: 2, Stagger: stagger}}}, framing.StudStud, "outside"), upward).Value
	}
	assert.Equal(t, strap(false), strap(true))
}

func TestThinnestMemberGovernsTheNails(t *testing.T) {
	// A strap from a stud 5-1/2 in deep down to a rim of 1-1/2 in: a nail of
	// 3-1/2 in finds 1-1/2 in at that end.
	p := pieceOf(t, plan.Item{Mark: "s", Kind: "strap", Length: 36, Width: 2, Gauge: "10 ga",
		Fasteners: []plan.Fasteners{{Part: "each end", Nail: "16d", Count: 8, Parts: 2}}}, framing.StudBase, "outside")
	stud := p.Joint.Members[0]
	rim := &framing.Member{Role: framing.Rim, Section: plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 11.25}}
	p.Laid = []*framing.Member{stud, rim}
	assert.Equal(t, 1.5, wood(p))
	p.Laid = []*framing.Member{stud, stud}
	assert.Equal(t, 5.5, wood(p))
}

func TestRidgeTieFollowsTheSlope(t *testing.T) {
	// Statics: a tie bent over the ridge lies along the rafters, so its level
	// part is its tension times cos of the slope.
	r, _ := Run(placed(t, sample.plan()))
	k := math.Hypot(1, sample.pitch/12)
	seen := 0
	for _, l := range r.Links {
		if l.Check.ID == "ridge-tie" && l.Demand > 0 {
			near(t, r.work.peaks[l.Joint].demand*k, l.Demand, 1e-9, l.ID)
			seen++
		}
	}
	require.Positive(t, seen)
}

func TestCornerZonePushesHarder(t *testing.T) {
	// ASCE 7 Fig. 30.3-1: zone 5 lies within a of the corners.
	a := analysed(t, sample.plan())
	var w *plan.Wall
	for _, x := range a.plan.Walls {
		if x.Name == "2S" {
			w = x
		}
	}
	at := func(s float64) float64 {
		return a.acrossWall(&framing.Joint{Wall: w, Station: s, Tributary: 16})
	}
	assert.Greater(t, at(12), 1.05*at(w.Length()/2))
	assert.Greater(t, at(w.Length()-12), 1.05*at(w.Length()/2))
}

