package lift

import (
	"testing"

	"galewright/plan/framing"
	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func line(id string, a, b geom.Vec3) *framing.Member { return &framing.Member{ID: id, A: a, B: b} }

// chain is two rafters on a plate on two studs, each with its strap to the
// rim and the rim tied to a girder on a pile.
func chain() (members []*framing.Member, ties []Tie) {
	rafter1 := line("rafter1", geom.Vec3{Y: -24, Z: 186}, geom.Vec3{Y: 120, Z: 260}) // its tail hangs below the plate
	rafter2 := line("rafter2", geom.Vec3{X: 16, Y: -24, Z: 186}, geom.Vec3{X: 16, Y: 120, Z: 260})
	plate := line("plate", geom.Vec3{Z: 197}, geom.Vec3{X: 32, Z: 197})
	stud1 := line("stud1", geom.Vec3{Z: 101.5}, geom.Vec3{Z: 196.25})
	stud2 := line("stud2", geom.Vec3{X: 16, Z: 101.5}, geom.Vec3{X: 16, Z: 196.25})
	rim := line("rim", geom.Vec3{Z: 94}, geom.Vec3{X: 32, Z: 94})
	girder := line("girder", geom.Vec3{Z: 82}, geom.Vec3{X: 32, Z: 82})
	pile := line("pile", geom.Vec3{Z: -60}, geom.Vec3{Z: 76})
	members = []*framing.Member{rafter1, rafter2, plate, stud1, stud2, rim, girder, pile}
	ties = []Tie{
		{rafter1, plate, "clip1"},
		{rafter2, plate, "clip2"},
		{stud1, plate, "top1"},
		{stud2, plate, "top2"},
		{stud1, rim, "base1"},
		{stud2, rim, "base2"},
		{rim, girder, "rim tie"},
		{girder, pile, "pile strap"},
		{pile, nil, "ground"},
	}
	return members, ties
}

func without(ties []Tie, by string) (out []Tie) {
	for _, t := range ties {
		if t.By != by {
			out = append(out, t)
		}
	}
	return out
}

func TestAClosedChainHasNoGap(t *testing.T) {
	members, ties := chain()
	assert.Empty(t, New(members, ties).Gaps(members))
}

// Every tie of the chain that has no double is missed, at the member it held.
func TestATieTakenAwayIsMissedWhereItWas(t *testing.T) {
	members, ties := chain()
	for by, at := range map[string]string{
		"clip1": "rafter1", "clip2": "rafter2", "base1": "stud1", "base2": "stud2",
		"rim tie": "rim", "pile strap": "girder", "ground": "pile",
	} {
		gaps := New(members, without(ties, by)).Gaps(members)
		require.Len(t, gaps, 1, by)
		assert.Equal(t, at, gaps[0].Member.ID, by)
	}
}

// A stud that lost its strap is not held by its neighbor's through the plate.
func TestNoWayDownClimbs(t *testing.T) {
	members, ties := chain()
	g := New(members, without(ties, "base1"))
	assert.False(t, g.Held(members[3]), "stud1")
	assert.True(t, g.Held(members[2]), "the plate still hangs on stud2")
}

func TestAGapNamesAllThatEndsThere(t *testing.T) {
	members, ties := chain()
	gaps := New(members, without(ties, "rim tie")).Gaps(members)
	require.Len(t, gaps, 1)
	var ids []string
	for _, m := range gaps[0].Above {
		ids = append(ids, m.ID)
	}
	assert.Equal(t, []string{"rafter1", "rafter2", "plate", "stud1", "stud2"}, ids)
}

func TestTwoThatOnlyHoldEachOtherAreOneGapAtTheLower(t *testing.T) {
	a := line("joist", geom.Vec3{Z: 94.5}, geom.Vec3{Y: 96, Z: 94.5})
	b := line("beam", geom.Vec3{Z: 94}, geom.Vec3{X: 96, Z: 94})
	gaps := New([]*framing.Member{a, b}, []Tie{{a, b, "hanger"}}).Gaps([]*framing.Member{a, b})
	require.Len(t, gaps, 1)
	assert.Equal(t, "beam", gaps[0].Member.ID)
}

// Against brute force: a member is held when some way of ties, each step no
// higher than half an inch above the one before, ends at the ground.
func TestHeldAgainstEveryWay(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		n := rapid.IntRange(2, 7).Draw(r, "members")
		members := make([]*framing.Member, n)
		for i := range members {
			z := rapid.Float64Range(0, 6).Draw(r, "z")
			members[i] = line("m", geom.Vec3{Z: z}, geom.Vec3{X: 10, Z: z})
		}
		pick := rapid.IntRange(0, n-1)
		ties := []Tie{{members[pick.Draw(r, "ground")], nil, "ground"}}
		for range rapid.IntRange(0, 12).Draw(r, "ties") {
			ties = append(ties, Tie{members[pick.Draw(r, "a")], members[pick.Draw(r, "b")], "tie"})
		}
		g := New(members, ties)
		for _, m := range members {
			require.Equal(r, walk(m, ties, map[*framing.Member]bool{}), g.Held(m))
		}
	})
}

func walk(m *framing.Member, ties []Tie, been map[*framing.Member]bool) bool {
	if been[m] {
		return false
	}
	been[m] = true
	for _, t := range ties {
		if t.A == m && t.B == nil {
			return true
		}
		for _, o := range [][2]*framing.Member{{t.A, t.B}, {t.B, t.A}} {
			if o[0] == m && o[1] != nil && Rank(o[1]) <= Rank(m)+level && walk(o[1], ties, been) {
				return true
			}
		}
	}
	return false
}

// A bottom plate that a strapped stud holds does not hold the stud beside it.
func TestABottomPlateIsNoWayToTheNextStud(t *testing.T) {
	strapped := line("strapped", geom.Vec3{Z: 101.5}, geom.Vec3{Z: 196})
	loose := line("loose", geom.Vec3{X: 16, Z: 101.5}, geom.Vec3{X: 16, Z: 196})
	plate := line("plate", geom.Vec3{Z: 100.75}, geom.Vec3{X: 32, Z: 100.75})
	g := New([]*framing.Member{strapped, loose, plate}, []Tie{{strapped, nil, "strap"}, {strapped, plate, "clip"}, {loose, plate, "clip"}})
	assert.False(t, g.Held(loose))
}
