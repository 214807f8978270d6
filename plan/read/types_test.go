package read_test

import (
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/read"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// typedHouse is a box whose south wall takes its openings and segments from types.
const typedHouse = `
[project]
name = "Invented house"
date = 2026-03-02
[site]
wind_speed = "150 mph"
exposure = "C"
[[level]]
name = "first"
plate_height = "8' 1 1/8in"

[[opening_type]]
name = "W1"
width = "3'"
height = "5'"
sill = "2'"
header = "2-2x10"
jacks = 2
[[shear_type]]
name = "P4"
edge = "4in"
nail = "10d common"
both_faces = true

[[wall]]
name = "S"
from = ["0'", "0'"]
to = ["30'", "0'"]
opening = [
  { name = "a", type = "W1", at = "10'" },
  { name = "b", type = "W1", at = "15'", width = "4'", sill = "0in", jacks = 1 },
  { name = "c", at = "22'", width = "2'", height = "3'" },
]
shear = [
  { type = "P4", to = "8'" },
  { type = "P4", from = "26'", edge = "3in", both_faces = false },
]
[[wall]]
name = "E"
to = ["30'", "20'"]
[[wall]]
name = "N"
to = ["0'", "20'"]
[[wall]]
name = "W"
to = ["0'", "0'"]
`

// An opening or segment has what it writes itself, then what its type gives, then
// the key's own default.
func TestTypesGiveWhatIsNotWritten(t *testing.T) {
	p, ds := read.Plan("plan.toml", []byte(typedHouse), nil)
	require.False(t, ds.Errors(), "%v", ds)
	type rough struct {
		width, height, sill float64
		header              string
		jacks               int
		kind                plan.OpeningKind
	}
	var got []rough
	for _, o := range p.Walls[0].Openings {
		got = append(got, rough{o.Width, o.Height, o.Sill, o.Header.Text, o.Jacks, o.Kind})
	}
	assert.Equal(t, []rough{
		{36, 60, 24, "2-2x10", 2, plan.Window},
		{48, 60, 0, "2-2x10", 1, plan.Door},
		{24, 36, 0, "3-2x10", 0, plan.Door},
	}, got)
	a, b := p.Walls[0].Shear[0], p.Walls[0].Shear[1]
	assert.Equal(t, []any{"SA", 4.0, 12.0, "10d common", true, 96.0}, []any{a.Name, a.Edge, a.Field, a.Nail, a.BothFaces, a.To})
	assert.Equal(t, []any{"SB", 3.0, 12.0, "10d common", false, 360.0}, []any{b.Name, b.Edge, b.Field, b.Nail, b.BothFaces, b.To})
}

// A fault of a type is told once, in its own line, and nothing that follows from it
// in the openings that take it; what an opening lacks is told there.
func TestFaultsOfTypes(t *testing.T) {
	for _, c := range []struct {
		name, from, to string
		want           []string
	}{
		{"a length of a type", `width = "3'"`, `width = "three"`, []string{`14:1: error: width: "three" is not a length`}},
		{"a key that a type has not", `jacks = 2`, `jack = 2`, []string{`18:1: error: unknown key "jack" (opening type W1)`}},
		{"a place in a type", `jacks = 2`, `at = "2'"`, []string{`18:1: error: unknown key "at"`}},
		{"no such type", `type = "W1", at = "15'"`, `type = "W2", at = "15'"`, []string{`31:17: error: type: there is no [[opening_type]] "W2"`}},
		{"a type of the other kind", `{ type = "P4", to`, `{ type = "W1", to`, []string{`35:5: error: type: there is no [[shear_type]] "W1"`}},
		{"two of one name", "[[shear_type]]\nname = \"P4\"", "[[shear_type]]\nname = \"P4\"\nedge = \"6in\"\n[[shear_type]]\nname = \"P4\"", []string{`23:1: error: a second type of shear is named "P4"`}},
		{"neither gives a width", `width = "3'"` + "\n", "", []string{`29:3: error: width is missing (wall S, opening a)`}},
	} {
		src := strings.Replace(typedHouse, c.from, c.to, 1)
		require.NotEqual(t, typedHouse, src, c.name)
		_, ds := read.Plan("plan.toml", []byte(src), nil)
		var errs []string
		for _, d := range ds {
			if d.Severity == plan.Error {
				errs = append(errs, strings.TrimPrefix(d.String(), "plan.toml:"))
			}
		}
		require.Len(t, errs, len(c.want), "%s: %v", c.name, errs)
		for i, w := range c.want {
			assert.True(t, strings.HasPrefix(errs[i], w), "%s: %s", c.name, errs[i])
		}
	}
}
