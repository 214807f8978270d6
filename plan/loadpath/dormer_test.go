package loadpath

import (
	"os"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/placement"
	"galewright/plan/steel"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// dormerHouses are the odd houses with four dormers each.
var dormerHouses = []string{"dormers", "dormers-shed"}

// dormers is one of them, in wind.
func dormers(t *testing.T, name string) *placement.Placement {
	src, err := os.ReadFile("../framing/testdata/odd/" + name + ".toml")
	require.NoError(t, err)
	src = append(src, "[site]\nwind_speed = \"140 mph\"\nexposure = \"C\"\n[deck]\npanel = \"15/32\"\nnail = \"8d common\"\nedge = \"6in\"\nfield = \"6in\"\n[nailing]\nvalley_board_to_rafter = { nail = \"16d common\", count = 2 }\n"...)
	return placed(t, string(src))
}

// In each wind case what lifts the roofs, the dormers' with them, comes down on the plates
// of the walls: none of it is lost in a header, a valley board, a cheek or a trimmer.
func TestDormersLoseNoUplift(t *testing.T) {
	for _, name := range dormerHouses {
		t.Run(name, func(t *testing.T) { losesNone(t, dormers(t, name)) })
	}
}

func losesNone(t *testing.T, pl *placement.Placement) {
	m := newModel(pl, fittingsOf(steel.New(pl)))
	require.Len(t, pl.House.Dormers, 4)
	for _, c := range m.cases() {
		s := m.run(c)
		require.Empty(t, s.unheld, "%s", c)
		wind, walls, own := 0.0, 0.0, 0.0
		for _, x := range m.rafters {
			m.roofLoads(x, s.roofs[x.roof], func(p patch) {
				wind += p.force.W
				if x.roof != m.plan.Roofs[0] {
					own += p.force.W
				}
			})
		}
		for _, w := range s.walls {
			walls += w.roof.W
		}
		near(t, wind, walls, 1e-6, "%s", c)
		require.NotZero(t, own, "%s: the dormers' own roofs have wind", c)
	}
}

// A stud of a dormer hands on at its foot what comes to it from its plates, and each kind
// of joint below a dormer's rafters is checked with a demand.
func TestADormersStudsHandDown(t *testing.T) {
	for _, name := range dormerHouses {
		t.Run(name, func(t *testing.T) { handsDown(t, dormers(t, name)) })
	}
}

func handsDown(t *testing.T, pl *placement.Placement) {
	r, _ := Run(pl)
	head, foot, board := map[*framing.Member]float64{}, map[*framing.Member]float64{}, 0
	for _, l := range r.Links {
		if l.Check.ID != "dormer-uplift" {
			continue
		}
		switch l.Joint.Kind {
		case plan.DormerTop:
			head[l.Joint.Members[1]] = l.Demand
		case plan.DormerFoot:
			if m := l.Joint.First(); m.Role != plan.Rafter {
				foot[m] = l.Demand
			}
		case plan.BoardRafter:
			board++
			require.NotNil(t, l.Capacity, l.ID)
			assert.Positive(t, l.Capacity.Value, "%s: the ordered nails hold", l.ID)
		}
	}
	require.NotEmpty(t, head)
	require.Equal(t, head, foot)
	require.NotZero(t, board)
}

// Explain lists at each stud of a dormer what comes onto the plate over it, or the pressures on
// the rafter that is its plate; at an end of a header and at a trimmer's foot each stud and
// rafter that brings something.
func TestADormersLinksAreExplained(t *testing.T) {
	for _, name := range dormerHouses {
		r, _ := Run(dormers(t, name))
		seen := 0
		for _, l := range r.Links {
			j := l.Joint
			switch {
			case j == nil || j.Dormer == nil:
			case j.Kind == plan.DormerTop || j.Kind == plan.DormerFoot:
				assert.Regexp(t, "brings it at|up the plan: ", r.Explain(j.ID), j.ID)
				seen++
			case j.Kind == plan.RafterRidge && j.First().Role == plan.RoofHeader && j.First() == j.Dormer.Headers[0]:
				assert.Contains(t, r.Explain(j.ID), "brings it at", j.ID)
			}
		}
		require.NotZero(t, seen)
	}
	r, _ := Run(dormers(t, "dormers-shed"))
	text := r.Explain("S-79-RP")
	for _, s := range []string{"trimmer@78.5 carries what rests on it", "D1/lower header brings it at", "D1/upper header brings it at", "D1/postW, from D1/cap, brings it at", "D1/sideW/stud@32, from D1/S/rafter@0.75, brings it at"} {
		assert.Contains(t, text, s)
	}
}

// The tension at the ridge is that of two bars hinged there on feet of different heights:
// worked out here by moments about one foot of the whole and about the hinge of each half.
// What passes the ridge is as if on level feet: by those statics less came to the higher
// foot, for a level force there that is not followed.
func TestAPairOnUnevenFeet(t *testing.T) {
	for _, p := range []*pair{
		{apex: 100, span: 200, high: [2]float64{60, 60}},
		{apex: 40, span: 150, high: [2]float64{30, 82.5}},
		{apex: 90, span: 120, high: [2]float64{70, 20}},
	} {
		la, lb := p.apex, p.span-p.apex
		p.rise = (p.high[0]*lb + p.high[1]*la) / p.span
		ma, mb := Force{W: 1000}, Force{W: 700}
		over := (ma.W*p.high[1] - mb.W*p.high[0]) / (p.high[0]*lb + p.high[1]*la)
		pull := p.tension(ma, mb).W
		assert.InDelta(t, 0, ma.W-over*la-pull*p.high[0], 1e-6)
		assert.InDelta(t, 0, mb.W+over*lb-pull*p.high[1], 1e-6)
		assert.InDelta(t, 300/p.span, p.across(ma, mb).W, 1e-9)
	}
	// The rise of shape is the lesser of both ways: a gable of one pitch whose one foot is at
	// a valley, 40 in from the ridge where the other is 140 in.
	strips := func(tan, run float64) *strip { return &strip{Share: &framing.Share{Tan: tan, Run: run}} }
	p := &pair{a: strips(0.5, 40), b: strips(0.5, 140)}
	p.shape()
	assert.InDelta(t, 2*0.5*40*140/180, p.rise, 1e-9, "not the mean of 20 and 70")
	p = &pair{a: strips(0.5, 80), b: strips(0.25, 160)}
	p.shape()
	assert.InDelta(t, 40, p.rise, 1e-9)
	assert.Equal(t, [2]float64{}, p.high, "feet at one height")
}
