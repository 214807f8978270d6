package loadpath_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"galewright/plan/loadpath"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// reported runs the load path of an example with text added to its plan.
func reported(t *testing.T, example, more string) *loadpath.Report {
	t.Helper()
	return reportOf(t, example, string(loadpath.Source(t, example))+more)
}

// reportOf runs the load path of a plan that stands among the examples.
func reportOf(t *testing.T, example, src string) *loadpath.Report {
	t.Helper()
	w := loadpath.WorkOut(example, src)
	require.False(t, w.Faults.Errors(), "%v", w.Faults)
	report, _ := w.Loads()
	return report
}

// gapsAt counts the gaps of a check, "" of all.
func gapsAt(r *loadpath.Report, check string) (n int) {
	for _, l := range r.Links {
		if l.Gap != "" && (check == "" || l.Check.ID == check) {
			n++
		}
	}
	return n
}

// One piece taken out of the demo house is missed, whatever it was: at its own
// joint, and where it was the only tie of a member, by the lift test too.
func TestAPieceTakenAwayIsMissed(t *testing.T) {
	whole := reported(t, "marsh-wren.toml", "")
	for name, c := range map[string]struct{ place, lift string }{
		"a ridge strap": {`use = "ridge-strap"
roof = "main"
on = "rafter-ridge"
at = "20'"
`, ""},
		"a rafter clip": {`use = "rafter-clip"
wall = "2S"
on = "rafter-plate"
at = "20'"
`, ""}, // the ridge strap and the other rafter still hold it: its own joint tells
		"a story strap": {`use = "story-strap"
wall = "2S"
on = "stud-stud"
at = "5' 4in"
`, "2S/stud@64"},
		"a base strap": {`use = "base-strap"
wall = "1S"
on = "stud-base"
at = "5' 4in"
`, "1S/stud@64"},
	} {
		t.Run(name, func(t *testing.T) {
			less := reported(t, "marsh-wren.toml", "\n[[place]]\naction = \"remove\"\n"+c.place)
			assert.Greater(t, gapsAt(less, ""), gapsAt(whole, ""))
			if c.lift != "" {
				assert.Greater(t, gapsAt(less, "lift"), gapsAt(whole, "lift"), "%s hangs on nothing", c.lift)
			}
		})
	}
}

// Without its girders' part the demo house lacks, by hand: base straps that end
// on the rims, where nothing ties a rim to its girder: six rims on the two long
// walls. Hold-down rods go on down to the girders in either case.
func TestTheLiftTestFindsRimsThatNothingHolds(t *testing.T) {
	src, err := os.ReadFile(filepath.Join("..", "..", "examples", "marsh-wren.toml"))
	require.NoError(t, err)
	for to, want := range map[string]int{"to = \"girder\"\n": 0, "": 6} {
		edited := strings.Replace(string(src), "to = \"girder\"\n", to, 1)
		require.Equal(t, to == "", len(edited) < len(src))
		r := reportOf(t, "marsh-wren.toml", edited)
		rims, rods := 0, 0
		for _, l := range r.Links {
			if l.Check.ID == "lift" && l.Wall != nil && len(l.ID) > 6 && l.ID[2:6] == "/rim" {
				rims++
				assert.Positive(t, l.Demand, l.ID)
			}
			if l.Check.ID == "overturning" && l.Capacity != nil && l.Capacity.Mark == "hold-down-heavy" {
				rods++
				assert.Empty(t, l.Gap, l.ID)
			}
		}
		assert.Equal(t, want, rims)
		assert.Equal(t, want, gapsAt(r, "lift"), "all else is tied")
		assert.Positive(t, rods)
	}
}
