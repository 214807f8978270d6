package lift

import (
	"testing"

	"galewright/plan/framing"
	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
)

// lying is a level member at a height, in.
func lying(id string, z float64) *framing.Member {
	return line(id, geom.Vec3{Z: z}, geom.Vec3{X: 48, Z: z})
}

// told returns the gaps as the members they are at, each with what ends there.
func told(gaps []Gap) map[string][]string {
	out := map[string][]string{}
	for _, g := range gaps {
		ids := []string{}
		for _, m := range g.Above {
			ids = append(ids, m.ID)
		}
		out[g.Member.ID] = ids
	}
	return out
}

// Where uplift goes that nothing holds down: to the last member below that a
// tie leads to, and to each of them where it parts.
func TestWhereUpliftEnds(t *testing.T) {
	header, left, right := lying("header", 90), lying("left jack", 40), lying("right jack", 44)
	low, high := lying("low joist", 90), lying("high joist", 90.25)
	for name, c := range map[string]struct {
		members []*framing.Member
		ties    []Tie
		gaps    map[string][]string
	}{
		"a header on two jacks without straps ends at both": {
			[]*framing.Member{header, left, right},
			[]Tie{{header, left, "nails"}, {header, right, "nails"}},
			map[string][]string{"left jack": {"header"}, "right jack": {"header"}},
		},
		"a header tied twice over to one jack ends there once": {
			[]*framing.Member{header, left},
			[]Tie{{header, left, "nails"}, {header, left, "strap"}, {left, header, "clip"}},
			map[string][]string{"left jack": {"header"}},
		},
		"joists side by side hold each other and nothing holds them": {
			[]*framing.Member{lying("rafter", 120), high, low},
			[]Tie{{high, low, "nails"}},
			map[string][]string{"rafter": {}, "low joist": {"high joist"}},
		},
		"a tie of no member at one end ties nothing": {
			[]*framing.Member{header},
			[]Tie{{nil, header, "a strap that found no wood"}, {nil, nil, "nor this"}},
			map[string][]string{"header": {}},
		},
	} {
		assert.Equal(t, c.gaps, told(New(c.members, c.ties).Gaps(c.members)), name)
	}
}

// A stud on two joists that only hold each other: its force ends at the lower.
func TestUpliftEndsAtTheLowerOfTwoBelow(t *testing.T) {
	stud := line("stud", geom.Vec3{Z: 92}, geom.Vec3{Z: 188})
	high, low := lying("high joist", 90.25), lying("low joist", 90)
	members := []*framing.Member{stud, high, low}
	ties := []Tie{{stud, high, "strap"}, {high, low, "nails"}}
	assert.Equal(t, map[string][]string{"low joist": {"stud", "high joist"}}, told(New(members, ties).Gaps(members)))
}

// Joists side by side may hold each other though one is crowned up to half an
// inch over the other; what stands half a plate, 3/4 in, higher is no way down.
func TestHowMuchHigherTheNextMayLie(t *testing.T) {
	for up, held := range map[float64]bool{0: true, 7.0 / 16: true, 0.5: true, 9.0 / 16: false, 0.75: false} {
		joist, strapped := lying("joist", 90), lying("strapped joist", 90+up)
		g := New([]*framing.Member{joist, strapped}, []Tie{{joist, strapped, "nails"}, {strapped, nil, "anchor"}})
		assert.Equal(t, held, g.Held(joist), "%v in higher", up)
	}
}

// A stud ranks by its foot, a rafter of 12 in 12 by its middle as a joist does.
func TestRankOfWhatStandsAndWhatLies(t *testing.T) {
	assert.Equal(t, 100.0, Rank(line("stud", geom.Vec3{Z: 196}, geom.Vec3{Z: 100})), "either way up")
	assert.Equal(t, 90.0, Rank(lying("joist", 90)))
	assert.Equal(t, 260.0, Rank(line("rafter", geom.Vec3{Z: 200}, geom.Vec3{X: 121, Z: 320})))
}

// Gaps are told in the order of the house, whichever is found first.
func TestGapsComeInTheOrderOfTheHouse(t *testing.T) {
	var members []*framing.Member
	var want, got []string
	for _, id := range []string{"h", "c", "a", "f", "b", "g", "e", "d"} {
		members = append(members, lying(id, 90))
		want = append(want, id)
	}
	for _, g := range New(members, nil).Gaps(members) {
		got = append(got, g.Member.ID)
	}
	assert.Equal(t, want, got)
}
