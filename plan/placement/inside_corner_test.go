package placement_test

import (
	"os"
	"strings"
	"testing"

	"galewright/plan/framing"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/read"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// lHouse is the L of testdata/strap-skipped.toml up to its rules, with others.
// Its walls 1D and 2D, 12 ft from the inside corner north, run through there and
// begin a wall's depth, 5 1/2 in, south of it.
func lHouse(t *testing.T, rules string) (*placement.Placement, []string) {
	t.Helper()
	src, err := os.ReadFile("testdata/strap-skipped.toml")
	require.NoError(t, err)
	head, _, _ := strings.Cut(string(src), "[[rule]]")
	p, ds := read.Plan("l.toml", []byte(head+rules), nil)
	require.False(t, ds.Errors(), "%v", ds)
	h, ds := framing.Frame(p)
	require.False(t, ds.Errors(), "%v", ds)
	c, ds := hardware.New(p.Items)
	require.Empty(t, ds)
	pl, ds := placement.Place(h, c)
	var told []string
	for _, d := range ds {
		told = append(told, d.String())
	}
	return pl, told
}

// The uprights of 2D over those of 1D, by the tape from the first stud: the post's
// end stud at 3/4 in; its backing, which laps 1 in past the face of 1C, at
// 5.5 + 1 - 0.75 = 5.75; the module from the corner, 5.5 + 16 and on to 5.5 + 128;
// and what 1E asks for at the far end. Two of them have 1C and 2C before them.
func TestStrapsAtAnInsideCornerAreSkippedAndCounted(t *testing.T) {
	pl, told := lHouse(t, "[[rule]]\nname = \"story\"\nat = \"stud-stud\"\nuse = \"story-strap\"\nface = \"outside\"\nwhere = { wall = \"2D\" }\n")
	require.Len(t, told, 1)
	assert.Contains(t, told[0], "warning: story-strap: the outside face is covered by wall 1C: nothing is placed")
	assert.Contains(t, told[0], `2 joints from 3/4" to 5 3/4": 2D-1-SS, 2D-6-SS`)
	var got []float64
	for _, x := range pl.Pieces {
		got = append(got, x.Station)
	}
	require.Greater(t, len(got), 8)
	for i, want := range []float64{21.5, 37.5, 53.5, 69.5, 85.5, 101.5, 117.5, 133.5} {
		assert.InDelta(t, want, got[i], 1e-9)
	}
	assert.Nil(t, pl.Piece("2D-1-SS-strap"))
	why, err := pl.Explain("2D-1-SS")
	require.NoError(t, err)
	assert.Contains(t, why, `not used  rule "story"`)
	assert.Contains(t, why, "the outside face is covered by the post of wall 1C")
}

// On the inside, where nothing is before them, each gets its strap, by a rule
// whose only bound is one that the tape reaches.
func TestRulesAndPlacesReachTheFirstStud(t *testing.T) {
	rule := func(where string) []string {
		pl, told := lHouse(t, "[[rule]]\nat = \"stud-stud\"\nuse = \"story-strap\"\nface = \"inside\"\nwhere = { wall = \"2D\", "+where+" }\n")
		require.Empty(t, told)
		var tags []string
		for _, x := range pl.Pieces {
			tags = append(tags, x.Tag)
		}
		return tags
	}
	first := []string{"2D-1-SS-strap", "2D-6-SS-strap"}
	assert.Equal(t, first, rule(`to = "12in"`))
	assert.Equal(t, first, rule(`corner = "under 1in"`), "behind the corner is at the corner")
	assert.Equal(t, "2D-22-SS-strap", rule(`from = "12in"`)[0])
	pl, told := lHouse(t, onInside+`at = ["3/4in", "5 3/4in"]`)
	require.Empty(t, told)
	require.Len(t, pl.Pieces, 2)
	assert.InDelta(t, 10*12-5.5+0.75, pl.Piece("2D-1-SS-strap").Path[0].Y, 1e-9, "the corner is 10 ft north")
}

// onInside is a place of the engineer that lacks its stations.
const onInside = "[[place]]\nuse = \"story-strap\"\nwall = \"2D\"\non = \"stud-stud\"\nface = \"inside\"\n"

// The message that a station hits nothing gives one that does.
func TestMissedPlaceNamesTheTape(t *testing.T) {
	_, told := lHouse(t, onInside+`at = "3in"`)
	require.Len(t, told, 1)
	assert.Contains(t, told[0], `the nearest is the post at 3/4" (2D-1-SS), 2 1/4" off: write that station`)
}
