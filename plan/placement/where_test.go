package placement_test

import (
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/read"

	"github.com/stretchr/testify/require"
)

// variedHouse has of each thing that a rule can ask for some joints that have
// it and some that do not: two stories, a wall in one piece, an interior wall
// that bears nothing, studs of two sections and two spacings, openings of two
// widths, a shear segment, two roofs.
const variedHouse = `
level = [{ name = "first", plate_height = "9' 1 1/8in" }, { name = "second", plate_height = "8' 1 1/8in" }]
lumber = { stud = "24'" }
wall = [
  { name = "1S", level = "first", from = ["0'", "0'"], to = ["28'", "0'"], shear = [{ to = "8'" }], opening = [
    { name = "door", at = "10'", width = "3' 2in", height = "6' 8in", header = "3-2x8" },
    { name = "gate", at = "18'", width = "8'", height = "6' 8in", header = "3-2x10" } ] },
  { name = "1E", level = "first", to = ["28'", "16'"], balloon_to = "second", top = "rake" },
  { name = "1N", level = "first", to = ["0'", "16'"] },
  { name = "1W", level = "first", to = ["0'", "0'"], studs = "2x4 @ 12in" },
  { name = "1A", level = "first", interior = true, from = ["16'", "5.5in"], to = ["16'", "10'"] },
  { name = "1B", level = "first", interior = true, from = ["15'", "-6'"], to = ["15'", "0'"] },
  { name = "2S", level = "second", from = ["0'", "0'"], to = ["28'", "0'"], layout = "8in" },
  { name = "2N", level = "second", from = ["28'", "16'"], to = ["0'", "16'"] },
  { name = "2W", level = "second", to = ["0'", "0'"] },
]
roof = [
  { name = "west", kind = "gable", ridge = "x", pitch = "6:12", gable_ends = ["hip", "gable truss"], area = [["0'", "0'"], ["14'", "16'"]] },
  { name = "east", kind = "gable", ridge = "x", pitch = "6:12", gable_ends = ["gable truss", "rake"], area = [["14'", "0'"], ["28'", "16'"]] },
]
girder = [
  { name = "GS", from = ["0'", "3in"], to = ["28'", "3in"], member = "3-2x10", piles = "@ 8'" },
  { name = "GN", from = ["28'", "15' 9in"], to = ["0'", "15' 9in"], member = "3-2x10", piles = "@ 8'" },
]
item = [{ mark = "thing", kind = "generic" }]
project = { name = "Check", date = 2026-03-02 }
site = { wind_speed = "150 mph", exposure = "C" }
`

// met counts the joints at which a rule puts a piece.
func met(t *testing.T, at, where string) int { return metIn(t, variedHouse, at, where) }

func metIn(t *testing.T, house, at, where string) int {
	t.Helper()
	src := house + "rule = [{ at = \"" + at + "\", use = \"thing\", where = { " + where + " } }]\n"
	p, ds := read.Plan("plan.toml", []byte(src), nil)
	require.False(t, ds.Errors(), "%v", ds)
	h, ds := framing.Frame(p)
	require.False(t, ds.Errors(), "%v", ds)
	c, _ := hardware.New(p.Items)
	pl, _ := placement.Place(h, c)
	joints := map[*framing.Joint]bool{}
	for _, x := range pl.Pieces {
		joints[x.Joint] = true
	}
	return len(joints)
}

// Every condition that a plan can write picks some joints and leaves others:
// one that is read and then forgotten would pick all or none.
func TestEachConditionPicks(t *testing.T) {
	cases := map[string]struct {
		at    plan.JointKind
		where []string // together they pick each joint once
	}{
		"level":         {plan.StudTop, []string{`level = "first"`, `level = "second"`}},
		"wall":          {plan.StudBase, []string{`wall = "1S"`, `wall = ["1E", "1N", "1W", "1A", "1B"]`}},
		"roof":          {plan.RafterPlate, []string{`roof = "west"`, `roof = "east"`}},
		"girder":        {plan.GirderPile, []string{`girder = "GS"`, `girder = "GN"`}},
		"exterior":      {plan.StudBase, []string{`exterior = true`, `exterior = false`}},
		"bearing":       {plan.StudBase, []string{`bearing = true`, `bearing = false`}},
		"balloon":       {plan.StudBase, []string{`balloon = true`, `balloon = false`}},
		"shear":         {plan.StudBase, []string{`shear = true`, `shear = false`}},
		"covered":       {plan.StudBase, []string{`covered = true`, `covered = false`}},
		"end_zone":      {plan.StudBase, []string{`end_zone = true`, `end_zone = false`}},
		"lines_up":      {plan.StudStud, []string{`lines_up = true`, `lines_up = false`}},
		"role":          {plan.StudBase, []string{`role = "king"`, `role = ["stud", "jack", "post", "cripple"]`}},
		"against":       {plan.RafterRidge, []string{`against = "ridge"`, `against = "hip rafter"`}},
		"stud":          {plan.StudBase, []string{`stud = "2x4"`, `stud = "2x6"`}},
		"spacing":       {plan.StudBase, []string{`spacing = "12in"`, `spacing = "over 13in"`}},
		"corner":        {plan.StudBase, []string{`corner = "under 4'"`, `corner = "over 4' 1in"`}},
		"opening":       {plan.StudBase, []string{`wall = "1S", opening = "under 12in"`, `wall = "1S", opening = "over 13in"`, `wall = ["1E", "1N", "1W", "1A", "1B"]`}},
		"opening_width": {plan.OpeningHead, []string{`opening_width = "under 6'"`, `opening_width = "over 6'"`}},
		"height":        {plan.StudTop, []string{`height = "under 8' 6in"`, `height = "over 8' 6in"`}},
		"from":          {plan.StudBase, []string{`from = "6' 4in"`, `to = "6' 3in"`}},
		"to":            {plan.StudBase, []string{`to = "6' 3in"`, `from = "6' 4in"`}},
	}
	for _, k := range read.Keys() {
		if k.Table != "rule.where" {
			continue
		}
		c, ok := cases[k.Name]
		require.True(t, ok, "the condition %s has no case", k.Name)
		t.Run(k.Name, func(t *testing.T) {
			all, sum := met(t, string(c.at), ""), 0
			for _, where := range c.where {
				n := met(t, string(c.at), where)
				require.Positive(t, n, where)
				require.Less(t, n, all, where)
				sum += n
			}
			require.Equal(t, all, sum)
		})
	}
}

// The studs of 1E stand from the first floor to the second story's plates in one
// piece: it runs through at both corners, so that a post of two stands at either end (0.75 and 5.75, 186.25 and 191.25), and the module
// from 16 to 176 between them, 15 in all. Their tops are the second story's, their feet the
// first's, and so with openings by where they are.
func TestTopOfABalloonWallIsTheUpperStorys(t *testing.T) {
	const e1 = `balloon_to = "second", top = "rake"`
	require.Contains(t, variedHouse, e1)
	house := strings.Replace(variedHouse, e1, e1+`, opening = [
    { name = "low", at = "2' 6in", width = "2'", height = "6' 8in", header = "3-2x8", jacks = 1, kings = 1 },
    { name = "high", at = "11' 6in", width = "2'", height = "3'", sill = "12'", header = "3-2x8", jacks = 1, kings = 1 } ]`, 1)
	const wall = `wall = "1E", level = `
	for _, c := range []struct {
		house, at     string
		first, second int
	}{
		{variedHouse, "stud-top", 0, 15},
		{variedHouse, "stud-base", 15, 0},
		{house, "opening-head", 2, 2},
	} {
		require.Equal(t, c.first, metIn(t, c.house, c.at, wall+`"first"`), c.at)
		require.Equal(t, c.second, metIn(t, c.house, c.at, wall+`"second"`), c.at)
	}
	require.Equal(t, 0, met(t, "stud-stud", wall+`"second"`), "no strap where nothing breaks")
}
