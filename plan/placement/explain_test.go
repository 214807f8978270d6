package placement

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestExplainTellsTheWholeStory(t *testing.T) {
	p, _ := placed(t, standard().with(
		plan.Rule{Name: "old", At: "stud-stud", Use: "story-strap"},
		plan.Rule{Name: "west end", At: "stud-stud", Use: "coil", Where: plan.Where{To: 20}},
		plan.Rule{Name: "attic", At: "stud-stud", Use: "coil", Where: plan.Where{Level: []string{"attic"}}},
		plan.Rule{Name: "but not here", At: "stud-stud", Use: "coil", Purpose: "x", Except: []plan.Where{{From: 10}}},
		plan.Place{Use: "floor-strap", Wall: "2S", At: []float64{16}, Note: "S4 detail 7"}))
	story, err := p.Explain("2S-16-SS-long")
	require.NoError(t, err)
	for _, want := range []string{
		"2S-16-SS-long", "floor-strap, long strap",
		// 60 in over a gap of 17.375: (60 - 17.375) / 2 = 21.3125 on each stud
		`5'-0" of steel: 1'-9 5/16" on the stud, 1'-5 3/8" between, 1'-9 5/16" on the stud`,
		"placed by engineer's place (S4 detail 7), t.toml:200",
		`joint 2S-16-SS: stud-stud, wall 2S, stud at 1'-4"`, "the studs line up", "stud 1S/stud@16 (2x6)",
		`not used  rule "old" (t.toml:100), story-strap: overridden by rule "west end" (t.toml:101), a later one`,
		`not used  rule "west end" (t.toml:101), coil: overridden by the engineer's place (t.toml:200)`,
		`not used  rule "attic" (t.toml:102), coil: condition level = attic does not hold, it is second`,
		`not used  rule "but not here" (t.toml:103), coil: excluded by except: from, to = from 10"`,
		"used      engineer's place (t.toml:200), floor-strap",
	} {
		assert.Contains(t, story, want)
	}
	joint, err := p.Explain("1S-16-SB")
	require.NoError(t, err)
	assert.Contains(t, joint, "nothing is placed here")
	assert.Contains(t, joint, "no rule covers stud-base joints")

	_, err = p.Explain("2S-16-SS-lnog")
	assert.ErrorContains(t, err, `did you mean "2S-16-SS-long"?`)
}

func TestExplainWallListsWhatHasNothing(t *testing.T) {
	p, _ := placed(t, standard().with(plan.Rule{Name: "base", At: "stud-base", Use: "base-strap", Every: 2}))
	text, err := p.ExplainWall("1S")
	require.NoError(t, err)
	assert.Contains(t, text, "1S: 10 of 14 joints have no hardware", "7 stud tops, and 3 of 7 bases are passed over")
	assert.Contains(t, text, `skipped: every = 2`)
	assert.NotContains(t, text, "1S-32-SB ")
	_, err = p.ExplainWall("1s")
	assert.ErrorContains(t, err, `did you mean "1S"?`)
}

func TestABoltIsExplainedAsABolt(t *testing.T) {
	q := &Piece{Item: &hardware.Item{Item: &plan.Item{Rod: 0.5, Washer: 3, Length: 12}}}
	assert.Equal(t, `1/2" diameter, 1'-0" long; nut on a 3" square plate washer; hole in the wood 9/16" at most (NDS 2018 12.1.3.2, transcribed)`, boltText(q))
	j := &framing.Joint{Members: []*framing.Member{{Role: plan.Post}, {Role: plan.SillPlate}}}
	assert.Equal(t, "sill plate", throughText(j))
	j.Members[1].Role = plan.Pile
	assert.Equal(t, "post and pile", throughText(j))
	for name, want := range map[string]string{"screw No. 12 x 1 1/2": "screws", "bolt 5/8 x 8": "bolts", "10d common": "nails"} {
		assert.Equal(t, want, fastenerWord(hardware.Nail{Name: name}), name)
	}
}
