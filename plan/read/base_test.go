package read_test

import (
	"io/fs"
	"os"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/read"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// hut is a plan that others begin with: 12 ft by 8, a door and a window, rules and a place.
const hut = `catalog = "parts/hardware.toml"
level = [{ name = "floor", plate_height = "8'", studs = "2x4 @ 16in" }]
wall = [
  { name = "S", from = ["0'", "0'"], to = ["12'", "0'"], layout = "8in", end = "butt",
    opening = [{ name = "door", at = "2'", width = "3'", height = "6' 8in" }, { name = "w1", at = "8'", width = "2'", height = "3'", sill = "3'" }],
    shear = [{ from = "0'", to = "18in" }, { from = "10' 6in" }], post = [{ at = "7'" }] },
  { name = "E", to = ["12'", "8'"] },
  { name = "N", to = ["0'", "8'"] },
  { name = "W", to = ["0'", "0'"] },
]
roof = [{ name = "main", kind = "shed", high = "W", pitch = "3:12", rafters = "2x6 @ 16in" }]
[project]
name = "Hut"
date = 2026-01-05
[[rule]]
name = "clips"
at = "rafter-plate"
use = "clip"
face = "left"
[[rule]]
name = "tops"
at = "stud-top"
use = "clip"
[[place]]
use = "clip"
wall = "S"
on = "stud-top"
at = "8in"
face = "right"
`

// built reads a plan that begins with others, all in memory.
func built(t *testing.T, src string, files map[string]string) (*plan.Plan, []string) {
	t.Helper()
	p, ds := read.Plan("lot.toml", []byte(src), func(n string) ([]byte, error) {
		text, ok := files[n]
		if !ok {
			return nil, &fs.PathError{Op: "open", Path: n, Err: os.ErrNotExist}
		}
		return []byte(text), nil
	})
	var told []string
	for _, d := range ds {
		told = append(told, strings.TrimSpace(d.String()))
	}
	return p, told
}

var huts = map[string]string{
	"plans/hut.toml":            hut,
	"plans/parts/hardware.toml": "[[item]]\nmark = \"clip\"\nkind = \"clip\"\nnails = { type = \"8d\", to_rafter = 4, to_plate = 4 }\n",
}

// A difference changes what it names, takes out, and adds: all else is the base's.
func TestADifferenceChangesWhatItNames(t *testing.T) {
	p, told := built(t, `base = "plans/hut.toml"
[project]
name = "Lot 2"
[[wall]]
name = "S"
opening = [{ name = "door", width = "3' 6in" }, { name = "w1", remove = true }, { name = "w2", at = "7' 6in", width = "2'", height = "2'", sill = "4'" }]
shear = [{ name = "SB", edge = "3in" }]
[[rule]]
name = "tops"
face = "inside"
[[rule]]
name = "more"
at = "stud-base"
use = "clip"
[[place]]
use = "clip"
wall = "E"
on = "stud-top"
at = "4'"
`, huts)
	require.Empty(t, told)
	assert.Equal(t, "Lot 2", p.Project.Name)
	assert.Equal(t, "2026-01-05", p.Project.Date)
	s := p.Walls[0]
	require.Len(t, s.Openings, 2)
	assert.Equal(t, [3]any{"door", 24.0, 42.0}, [3]any{s.Openings[0].Name, s.Openings[0].At, s.Openings[0].Width})
	assert.Equal(t, "w2", s.Openings[1].Name)
	assert.Equal(t, 6.0, s.Shear[0].Edge)
	assert.Equal(t, 3.0, s.Shear[1].Edge)
	require.Len(t, p.Rules, 3)
	assert.Equal(t, plan.Inside, p.Rules[1].Face)
	require.Len(t, p.Places, 2)
	assert.Equal(t, "E", p.Places[1].Wall)
	assert.Equal(t, plan.Lay{}, p.Lay)
	// What is told of each stands where it is written.
	assert.Equal(t, "plans/hut.toml:4:3", s.Pos.String())
	assert.Equal(t, "plans/hut.toml:5:16", s.Openings[0].Pos.String())
	assert.Equal(t, "lot.toml:6:81", s.Openings[1].Pos.String())
	assert.Equal(t, "lot.toml:11:3", p.Rules[2].Pos.String())
	assert.Equal(t, "lot.toml:15:3", p.Places[1].Pos.String())
}

// Faults are told in the file in which the text stands, also where a difference makes one of
// what the base says.
func TestFaultsOfABaseAreToldWhereTheyStand(t *testing.T) {
	files := map[string]string{"plans/parts/hardware.toml": huts["plans/parts/hardware.toml"], "plans/hut.toml": strings.Replace(hut, `sill = "3'"`, `sill = "3"`, 1)}
	_, told := built(t, `base = "plans/hut.toml"
[[wall]]
name = "N"
opening = [{ name = "w4", at = "1'", width = "2", height = "3'" }]
[[wall]]
name = "S"
opening = [{ name = "door", width = "11'" }]
[[roof]]
name = "mane"
remove = true
`, files)
	require.Len(t, told, 5)
	assert.Regexp(t, `^lot.toml:4:38: error: width: "2" has no unit`, told[0])
	assert.Regexp(t, `^lot.toml:10:1: error: remove: the base has no roof "mane" .*known: main`, told[1])
	assert.Regexp(t, `^plans/hut.toml:5:16: error: it runs from 2'-0" to 13'-0", and the wall ends at 12'-0"`, told[2])
	assert.Regexp(t, `^plans/hut.toml:5:134: error: sill: "3" has no unit`, told[3])
	assert.Regexp(t, `^plans/hut.toml:6:44: error: opening door reaches 1'-6" into it`, told[4])
}

// A name of the base that a difference takes again is told with the file that has it.
func TestANameThatTheBaseHas(t *testing.T) {
	_, told := built(t, "base = \"plans/hut.toml\"\n[[wall]]\nname = \"s\"\nfrom = [\"0'\", \"4'\"]\nto = [\"12'\", \"4'\"]\ninterior = true\n", huts)
	require.Len(t, told, 1)
	assert.Contains(t, told[0], `lot.toml:2:3: error: the name "s" is "S" of the wall in line 4 of plans/hut.toml but for capitals`)
}

// What is taken out leaves the places of what comes after it as they were.
func TestWhatComesAfterATableTakenOutKeepsItsPlace(t *testing.T) {
	p, told := built(t, "base = \"plans/hut.toml\"\n[[rule]]\nname = \"clips\"\nremove = true\n", huts)
	require.Empty(t, told)
	require.Len(t, p.Rules, 1)
	assert.Equal(t, "plans/hut.toml:20:3", p.Rules[0].Pos.String())
}

// Bases stand on bases: each changes what is under it, and lies as its own file says.
func TestABaseMayHaveABase(t *testing.T) {
	files := map[string]string{"lots/second.toml": "base = \"../plans/hut.toml\"\nmirror = \"x\"\nmove = [\"10'\", \"0'\"]\n[[wall]]\nname = \"S\"\nopening = [{ name = \"door\", width = \"42in\" }]\n"}
	for n, s := range huts {
		files[n] = s
	}
	p, told := built(t, "base = \"lots/second.toml\"\nmirror = \"x\"\n[[wall]]\nname = \"S\"\nopening = [{ name = \"door\", height = \"80in\" }]\n", files)
	require.Empty(t, told)
	o := p.Walls[0].Openings[0]
	assert.Equal(t, [3]float64{24, 42, 80}, [3]float64{o.At, o.Width, o.Height})
	assert.Equal(t, plan.Lay{}, p.Lay, "mirrored twice it lies as written")
	assert.Equal(t, geom.Vec2{X: 120}, p.Walls[0].From, "and moved once")
	assert.Empty(t, p.Project.Notes)
}

func TestABaseThatIsNotThere(t *testing.T) {
	for src, want := range map[string]string{
		`base = "nope.toml"`: `lot.toml:1:1: error: base: cannot read "nope.toml"`,
		`base = "/hut.toml"`: `lot.toml:1:1: error: base: "/hut.toml" is a place on this machine only`,
		`base = 3`:           `lot.toml:1:1: error: base: must be a string, not a number`,
		`base = "lot.toml"`:  `lot.toml:1:1: error: base: "lot.toml" begins with the plan that begins with it`,
		`base = "a.toml"`:    `b.toml:1:1: error: base: "a.toml" begins with the plan that begins with it`,
		`base = "c.toml"`:    `c.toml:1:8: error:`,
	} {
		_, told := built(t, src+"\n", map[string]string{"a.toml": `base = "b.toml"`, "b.toml": `base = "a.toml"`, "c.toml": "base = \n"})
		require.NotEmpty(t, told, src)
		assert.Contains(t, told[0], want)
	}
}

// Mirrored, the south wall's door at 2' to 5' of 12' stands at 7' to 10'; its module starts at
// 12' less 8 in; what began ends; left is right; the high side of the roof in the west is in the east.
func TestAMirroredPlan(t *testing.T) {
	p, told := built(t, "base = \"plans/hut.toml\"\nmirror = \"x\"\n", huts)
	require.Empty(t, told)
	s := p.Walls[0]
	assert.Equal(t, [2]geom.Vec2{{}, {X: 144}}, [2]geom.Vec2{s.From, s.To})
	assert.Equal(t, 136.0, s.Layout)
	assert.Equal(t, [2]plan.Join{plan.JoinButt, ""}, [2]plan.Join{s.Start.Join, s.End.Join})
	assert.Equal(t, [2]float64{84, 24}, [2]float64{s.Openings[0].At, s.Openings[1].At})
	assert.Equal(t, [4]float64{126, 144, 0, 18}, [4]float64{s.Shear[0].From, s.Shear[0].To, s.Shear[1].From, s.Shear[1].To})
	assert.Equal(t, 60.0, s.Posts[0].At)
	assert.Equal(t, [2]geom.Vec2{{Y: 96}, {}}, [2]geom.Vec2{p.Walls[1].From, p.Walls[1].To}, "E is in the west now, and seen from outside")
	assert.Equal(t, plan.East, p.Roofs[0].High)
	assert.Equal(t, plan.Right, p.Rules[0].Face)
	assert.Equal(t, plan.Left, p.Places[0].Face)
	assert.Equal(t, []float64{8}, p.Places[0].At, "stations stay as the plan counts them")
	require.Len(t, p.Project.Notes, 1)
	assert.Contains(t, p.Project.Notes[0], "east and west have changed places")
}

// Turned to the left, what was south is east; the southwest corner of its box stays.
func TestATurnedPlan(t *testing.T) {
	p, told := built(t, "base = \"plans/hut.toml\"\nturn = 90\nmove = [\"1'\", \"2'\"]\n", huts)
	require.Empty(t, told)
	assert.Equal(t, [2]geom.Vec2{{X: 108, Y: 24}, {X: 108, Y: 168}}, [2]geom.Vec2{p.Walls[0].From, p.Walls[0].To})
	assert.Equal(t, 24.0, p.Walls[0].Openings[0].At)
	assert.Equal(t, plan.South, p.Roofs[0].High)
	assert.Equal(t, [2]geom.Vec2{{X: 12, Y: 24}, {X: 108, Y: 168}}, p.Roofs[0].Area)
	_, told = built(t, "base = \"plans/hut.toml\"\nturn = 45\n", huts)
	require.Len(t, told, 1)
	assert.Contains(t, told[0], "lot.toml:2:1: error: turn: 45 is not a number of right angles")
}
