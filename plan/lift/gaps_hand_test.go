package lift

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
)

// at is a lying member at a height.
func at(id string, z float64) *framing.Member {
	return &framing.Member{ID: id, Role: plan.Joist, A: geom.Vec3{Z: z}, B: geom.Vec3{X: 10, Z: z}}
}

// Force from three members that end at one is told once for each, in the order
// of the house, the member itself left out; members are told in that order too.
func TestGapsAreToldInTheOrderOfTheHouse(t *testing.T) {
	a, b, c, low, high := at("a", 90), at("b", 90), at("c", 90), at("low", 10), at("high", 50)
	g := New([]*framing.Member{a, b, c, high, low}, []Tie{{a, low, ""}, {b, low, ""}, {c, low, ""}, {c, high, ""}})
	assert.Equal(t, []Gap{{high, []*framing.Member{c}}, {low, []*framing.Member{a, b, c}}}, g.Gaps([]*framing.Member{c, low, b, a, b}))
	assert.Empty(t, g.Gaps(nil))
}

// Members that only hold each other: the gap is the lowest, of those at one
// height the first of the house.
func TestAGapAmongMembersThatHoldEachOther(t *testing.T) {
	a, b, c := at("a", 20), at("b", 19.8), at("c", 19.8)
	g := New([]*framing.Member{a, b, c}, []Tie{{a, c, ""}, {a, b, ""}, {b, c, ""}})
	assert.Equal(t, []Gap{{b, []*framing.Member{a}}}, g.Gaps([]*framing.Member{a}))
	assert.False(t, g.Ends(a))
	assert.False(t, g.Ends(c))
}

// Ties name members twice and the ground not at all; each is listed once.
func TestMembersOfTies(t *testing.T) {
	a, b, c := at("a", 20), at("b", 10), at("c", 0)
	assert.Equal(t, []*framing.Member{a, b, c}, MembersOf([]Tie{{a, b, ""}, {b, a, ""}, {b, nil, ""}, {c, nil, ""}}))
	assert.Empty(t, MembersOf(nil))
	assert.Empty(t, MembersOf([]Tie{{nil, nil, ""}}))
}

// Half an inch is level, more is up. A tie joins two either way; one to the member
// itself is none, and one said twice is one.
func TestWhereForceMayGo(t *testing.T) {
	a, b, c := at("a", 20), at("b", 20.5), at("c", 20.6)
	g := New([]*framing.Member{a, b, c}, []Tie{{a, b, ""}, {a, b, "again"}, {c, a, ""}, {b, b, ""}})
	assert.True(t, g.Leads(a, b))
	assert.False(t, g.Leads(a, c))
	assert.True(t, g.Leads(c, a))
	assert.True(t, g.Tied(a, b) && g.Tied(b, a) && g.Tied(a, c) && g.Tied(c, a))
	assert.False(t, g.Tied(b, c) || g.Tied(b, b))
	assert.Len(t, g.down[a], 1)
	assert.Len(t, g.over[b], 1)
	// By their ties to the ground: b is held, and what is over it; c is not.
	d := at("d", 0)
	h := New([]*framing.Member{a, b, c, d}, []Tie{{b, nil, ""}, {a, b, ""}, {nil, nil, ""}})
	assert.True(t, h.Held(a) && h.Held(b))
	assert.False(t, h.Held(c) || h.Held(d))
}

// A stud that stands low on a rafter hands its force to it, though the rafter's middle, at 120, lies
// higher than its foot at 106, and takes none of it; one whose head meets the rafter gets force from it.
func TestAStudThatStandsOnASlope(t *testing.T) {
	rafter := &framing.Member{ID: "rafter", Role: plan.Rafter, A: geom.Vec3{Z: 100}, B: geom.Vec3{X: 100, Z: 140}}
	on := &framing.Member{ID: "on", Role: plan.Stud, A: geom.Vec3{X: 10, Z: 106}, B: geom.Vec3{X: 10, Z: 150}}
	under := &framing.Member{ID: "under", Role: plan.Stud, A: geom.Vec3{X: 90, Z: 40}, B: geom.Vec3{X: 90, Z: 134}}
	beside := &framing.Member{ID: "beside", Role: plan.Stud, A: geom.Vec3{X: -10, Z: 106}, B: geom.Vec3{X: -10, Z: 150}}
	g := New([]*framing.Member{rafter, on, under, beside}, []Tie{{on, rafter, ""}, {under, rafter, ""}, {rafter, nil, ""}})
	assert.True(t, g.Leads(on, rafter) && g.Held(on))
	assert.False(t, g.Leads(rafter, on))
	assert.True(t, g.Leads(rafter, under))
	assert.False(t, g.Leads(under, rafter))
	assert.False(t, g.Leads(beside, rafter), "it has its foot past the rafter's end")
}

// What stands is as low as its foot, whichever end that is; what lies or slopes
// as its middle; what hangs is over all, a fly rafter over its outlookers.
func TestHowLowAMemberIs(t *testing.T) {
	stud := &framing.Member{Role: plan.Stud, A: geom.Vec3{Z: 100}, B: geom.Vec3{Z: 8}}
	rafter := &framing.Member{Role: plan.Rafter, A: geom.Vec3{Z: 100}, B: geom.Vec3{X: 50, Z: 140}}
	look, fly := at("look", 100), at("fly", 100)
	look.Role, fly.Role = plan.Outlooker, plan.FlyRafter
	assert.InDelta(t, 8, Rank(stud), 1e-9)
	assert.InDelta(t, 120, Rank(rafter), 1e-9)
	assert.Greater(t, Rank(look), 1e5)
	assert.Greater(t, Rank(fly), Rank(look)+level)
}
