package read_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/read"
)

// Slips of the pen that were once taken without a word, each against its sound form.
func TestSlipsAreTold(t *testing.T) {
	const two = `
project = { name = "Invented house", date = 2026-03-02 }
site = { wind_speed = "130 mph", exposure = "B", shore = "4 mi" }
[[level]]
name = "one"
plate_height = "8' 1 1/8in"
[[wall]]
name = "W1"
from = ["0'", "0'"]
to = ["20'", "0'"]
shear = [{ to = "6'" }, { from = "6'", to = "12'" }]
[[wall]]
name = "W2"
to = ["20'", "12'"]
[[wall]]
name = "W3"
to = ["0'", "12'"]
[[wall]]
name = "W4"
to = ["0'", "0'"]
[[item]]
mark = "tie"
kind = "strap"
length = "25in"
width = "1 3/8in"
thickness = "19 ga"
nails = { type = "10d x 1 1/2", each_end = 6 }
[[rule]]
at = "stud-base"
use = "tie"
where = { wall = ["W1"], level = "one", role = ["stud", "king"] }
`
	told := func(src string) (out []string) {
		_, ds := read.Plan("plan.toml", []byte(src), nil)
		for _, d := range ds {
			if d.Severity == plan.Error {
				out = append(out, string(d.Code)+": "+d.Summary)
			}
		}
		return out
	}
	require.Empty(t, told(two))
	for _, c := range []struct{ from, to, want string }{
		{`from = "6'", to = "12'"`, `from = "5' 6in", to = "12'"`, `segments-overlap: it runs from 5'-6" to 12'-0" and overlaps W1A, which runs from 0" to 6'-0", by 6"`},
		{`name = "W2"`, `name = "w1"`, `same-name: the name "w1" is "W1" of the wall in line 7 but for capitals`},
		{`date = 2026-03-02`, `date = 07:32:00`, "bad-date: date: 07:32:00 is a time of day"},
		{`wall = ["W1"]`, `wall = []`, "empty-list: wall = [] holds for nothing"},
		{`role = ["stud", "king"]`, `role = []`, "empty-list: role = [] holds for nothing"},
	} {
		src := strings.Replace(two, c.from, c.to, 1)
		require.NotEqual(t, two, src)
		got := told(src)
		require.Len(t, got, 1, "%s: %v", c.to, got)
		assert.True(t, strings.HasPrefix(got[0], c.want), "%s: %s", c.to, got[0])
	}
}
