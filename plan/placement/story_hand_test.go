package placement

import (
	"strings"
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWholeStoryOfAPiece(t *testing.T) {
	p, _ := placed(t, standard().with(
		plan.Rule{Name: "story", At: "stud-stud", Use: "story-strap"},
		plan.Rule{Name: "never", At: "stud-stud", Use: "short-strap", Where: plan.Where{From: 50}},
		plan.Place{Use: "floor-strap", Wall: "2S", On: "stud-stud", At: []float64{16}, Action: "add", Note: "see detail 3"}))
	got, err := p.Explain("2S-16-SS-strap")
	require.NoError(t, err)
	// Laps() of 12.3125 and 17.375 between, as in TestStoryStrapIsCenteredOnTheGap: from
	// 213.8125 to 255.8125.
	assert.Equal(t, `2S-16-SS-strap
  story-strap, strap: a flat band lapped on two members in line
  on the outside face at 1'-4", 17'-9 13/16" to 21'-3 13/16" above grade
  3'-6" of steel: 1'-0 5/16" on the stud, 1'-5 3/8" between, 1'-0 5/16" on the stud
  install before sheathing
  nails: 9 of 10d x 1 1/2 each end, 18 in all
  placed by rule "story", t.toml:100
joint 2S-16-SS: stud-stud, wall 2S, stud at 1'-4"
  stud 2S/stud@16 (2x6)
  stud 1S/stud@16 (2x6)
  1'-5 3/8" between the members a strap laps
  the studs line up
rules and places here:
  used      rule "story" (t.toml:100), story-strap
  not used  rule "never" (t.toml:101), short-strap: condition from, to = from 4'-2" does not hold, it is 1'-4"
  used      engineer's place (t.toml:200), floor-strap
`, got)
	got, err = p.Explain("2S-16-SS-long")
	require.NoError(t, err)
	assert.Contains(t, got, "placed by engineer's place (see detail 3), t.toml:200\n")
	got, err = p.Explain("1S-16-SB")
	require.NoError(t, err)
	assert.Contains(t, got, "  nothing is placed here\nno rule covers stud-base joints\n")
	got, err = p.Explain("2S-64-SS")
	require.NoError(t, err)
	assert.True(t, strings.HasPrefix(got, "joint 2S-64-SS: "), got)
	assert.Contains(t, got, "\n2S-64-SS-strap\n", "what is placed at a joint is told with it")
	_, err = p.Explain("2S-64-SX")
	assert.ErrorContains(t, err, `did you mean "2S-64-S`)
	_, err = p.Explain("quite another thing")
	assert.ErrorContains(t, err, "tags are on the sheets")
}

func TestStoryOfAWall(t *testing.T) {
	p, _ := placed(t, standard().with(
		plan.Rule{Name: "b", At: "stud-base", Use: "base-strap", Where: plan.Where{To: 20}},
		plan.Place{Use: "base-strap", Wall: "1S", On: "stud-base", At: []float64{16}, Action: "remove"}))
	got, err := p.ExplainWall("1S")
	require.NoError(t, err)
	// Seven bases and seven tops; only the base at 3/4 has its strap.
	lines := strings.Split(strings.TrimSuffix(got, "\n"), "\n")
	assert.Equal(t, "1S: 13 of 14 joints have no hardware", lines[0])
	require.Len(t, lines, 14)
	assert.Contains(t, got, `  1S-16-SB       stud-base    at 1'-4"        rule "b": removed by the engineer's place (t.toml:200)`)
	assert.Contains(t, got, `  1S-1-ST        stud-top     at 3/4"         no rule covers such joints`)
	assert.Contains(t, got, `at 2'-8"        rule "b": condition from, to = 0" to 1'-8" does not hold, it is 2'-8"`)
	assert.NotContains(t, got, "1S-1-SB ")
	_, err = p.ExplainWall("3S")
	assert.ErrorContains(t, err, `no wall, roof, girder or porch "3S" has joints`)
}

func TestWhyARulePassesAJointOver(t *testing.T) {
	h := standard().with(
		plan.Rule{Name: "second", At: "stud-base", Use: "base-strap", Every: 2},
		plan.Rule{Name: "far", At: "stud-base", Use: "coil", Purpose: "x", AtMost: 48},
		plan.Rule{Name: "but", At: "stud-base", Use: "short-strap", Purpose: "y", Except: []plan.Where{{From: 10, To: 20}}})
	p, _ := placed(t, h)
	var why []string
	for _, v := range p.Verdicts(p.world.byID["1S-16-SB"]) {
		assert.False(t, v.Won)
		why = append(why, v.Why)
	}
	assert.Equal(t, []string{"skipped: every = 2", `not needed: spacing stays within at_most = 4'-0" without it`, `excluded by except: from, to = 10" to 1'-8"`}, why)
}
