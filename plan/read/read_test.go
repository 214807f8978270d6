package read_test

import (
	"io/fs"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"galewright/plan"
	"galewright/plan/read"
)

// parse reads a plan that lies in memory.
func parse(src string, files map[string]string) (*plan.Plan, plan.Diagnostics) {
	return read.Plan("plan.toml", []byte(src), func(name string) ([]byte, error) {
		if s, ok := files[name]; ok {
			return []byte(s), nil
		}
		return nil, &fs.PathError{Op: "open", Path: "/somewhere/" + name, Err: fs.ErrNotExist}
	})
}

// lines prints diagnostics, one a line.
func lines(ds plan.Diagnostics) []string {
	out := make([]string, len(ds))
	for i, d := range ds {
		out[i] = d.String()
	}
	return out
}

const house = `
[project]
name = "Test House"
date = 2026-03-02
[site]
wind_speed = "150 mph"
exposure = "D"
elevation = "8' 6in"
[[level]]
name = "first"
floor = "10'"
plate_height = "9' 1 1/8in"
[[level]]
name = "second"
plate_height = "8' 1 1/8in"
joists = "2x10 @ 12in"
[[wall]]
name = "1S"
level = "first"
from = ["0'", "0'"]
to = ["28'", "0'"]
  [[wall.opening]]
  name = "w1"
  at = "5' 4in"
  width = "3' 2 1/2in"
  height = "5' 2 1/2in"
  sill = "2'"
  [[wall.shear]]
  to = "4'"
[[wall]]
name = "1E"
level = "first"
to = ["28'", "44'"]
start = { join = "butt", post = 4 }
end = "through"
[[wall]]
name = "1N"
level = "first"
to = ["0'", "44'"]
[[wall]]
name = "1W"
level = "first"
to = ["0'", "0'"]
balloon_to = "second"
studs = "2x6 @ 8in"
[[wall]]
name = "2S"
level = "second"
from = ["0'", "0'"]
to = ["28'", "0'"]
[[wall]]
name = "2E"
level = "second"
to = ["28'", "44'"]
[[wall]]
name = "2N"
level = "second"
to = ["0'", "44'"]
[[roof]]
kind = "gable"
pitch = "7:12"
[[girder]]
name = "G1"
from = ["0'", "0'"]
to = ["28'", "0'"]
member = "3-2x12"
piles = "@ 8'"
[[item]]
mark = "story-strap"
kind = "strap"
length = "42in"
thickness = "19 ga"
nails = { type = "10d x 1 1/2", each_end = 9 }
loads = { uplift = "2 kN", source = "maker's page, 2025-01" }
[[rule]]
at = "stud-stud"
use = "story-strap"
where = { exterior = true, corner = "over 4'", spacing = "16in", height = ["1'", "2'"], role = "king" }
except = { wall = "2N" }
[[place]]
use = "story-strap"
wall = "2S"
at = ["3in", "27' 9in"]
`

func TestReadFillsTheModel(t *testing.T) {
	p, ds := parse(house, nil)
	require.Empty(t, lines(ds))

	require.Equal(t, "2026-03-02", p.Project.Date)
	require.Equal(t, "0", p.Project.Revision)
	require.Equal(t, 8.5, p.Site.Elevation)
	require.Equal(t, []plan.Assumption{{Key: "risk", Value: `"II"`}, {Key: "edition", Value: `"7-22"`}, {Key: "enclosure", Value: `"enclosed"`}, {Key: "kzt", Value: "1.0"}}, p.Site.Assumed)
	require.Equal(t, "kzt = 1.0", p.Site.Assumed[3].String())

	first, second := p.Levels[0], p.Levels[1]
	require.Equal(t, 120.0, first.Floor)
	require.InDelta(t, 11.25+23.0/32, first.FloorDepth, 1e-9, "2x12 and the subfloor")
	require.InDelta(t, 120+109.125+9.25+23.0/32, second.Floor, 1e-9, "floor, plates, 2x10, subfloor")
	require.Equal(t, 12.0, second.JoistSpace)
	require.Equal(t, plan.AxisX, second.JoistRun, "28 ft is the shorter way")

	s, e, w := p.Walls[0], p.Walls[1], p.Walls[3]
	require.True(t, s.Exterior && s.Bearing)
	require.Equal(t, plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 5.5, Text: "2x6"}, s.Studs)
	require.Equal(t, 16.0, s.Spacing)
	require.Equal(t, 192.0, s.Stock)
	require.Same(t, first, s.ToLevel)
	require.Equal(t, s.To, e.From, "a wall begins where the one before it ends")
	require.Equal(t, plan.JoinButt, e.Start.Join)
	require.Equal(t, 4, e.Start.Post)
	require.Equal(t, plan.JoinThrough, e.End.Join)
	require.True(t, w.Balloon())
	require.Equal(t, 8.0, w.Spacing)

	o := s.Openings[0]
	require.Equal(t, []float64{64, 38.5, 62.5, 24}, []float64{o.At, o.Width, o.Height, o.Sill})
	require.Equal(t, plan.Window, o.Kind)
	require.Equal(t, plan.Lumber{Ply: 3, Breadth: 1.5, Depth: 9.25, Text: "3-2x10"}, o.Header)
	require.Equal(t, "1SA", s.Shear[0].Name)
	require.Equal(t, []float64{0, 48, 6, 12}, []float64{s.Shear[0].From, s.Shear[0].To, s.Shear[0].Edge, s.Shear[0].Field})

	r := p.Roofs[0]
	require.Same(t, second, r.Over)
	require.Equal(t, plan.AxisY, r.Ridge, "along the longer side")
	require.Equal(t, 528.0, r.Area[1].Y)
	require.Equal(t, [2]plan.GableEnd{plan.TrussEnd, plan.TrussEnd}, r.GableEnd, "its walls stop at the plate")
	raked, _ := parse(strings.Replace(house, `name = "2N"`, "name = \"2N\"\ntop = \"rake\"", 1), nil)
	require.Equal(t, [2]plan.GableEnd{plan.TrussEnd, plan.RakeEnd}, raked.Roofs[0].GableEnd)
	require.Equal(t, "2x10", r.RidgeMember.Text, "a 2x8 cut at 7:12 is 8.39 in")

	require.Equal(t, plan.Piles, p.Foundation.Kind)
	require.InDelta(t, 120-first.FloorDepth-11.25, p.Foundation.PileTop, 1e-9)
	require.Equal(t, []float64{0, 84, 168, 252, 336}, p.Girders[0].Piles, "28 ft in four bays of 7 ft")

	it := p.Items[0]
	require.Equal(t, 0.0418, it.Thickness)
	require.Equal(t, 18, it.Fasteners[0].Total())
	require.Equal(t, []float64{0.148, 1.5}, []float64{it.Fasteners[0].Diameter, it.Fasteners[0].Length})
	require.InDelta(t, 449.6, it.Load.Uplift, 0.05)

	rule := p.Rules[0]
	require.Equal(t, "story-strap at stud-stud", rule.Name)
	require.True(t, *rule.Where.Exterior)
	require.Equal(t, 48.0, rule.Where.Corner[0])
	require.Equal(t, [2]float64{16, 16}, rule.Where.Spacing)
	require.Equal(t, [2]float64{12, 24}, rule.Where.Height)
	require.Equal(t, []plan.Role{plan.King}, rule.Where.Role)
	require.Equal(t, []string{"2N"}, rule.Except[0].Wall)
	require.Equal(t, 1, rule.Every)
	require.Contains(t, rule.Where.Given, "corner")

	place := p.Places[0]
	require.Equal(t, []float64{3, 333}, place.At)
	require.Equal(t, plan.Replace, place.Action)
	require.Equal(t, 14, place.AtPos[1].Col)
	require.Equal(t, place.Pos.Line+3, place.AtPos[1].Line)
}

// Each case changes the house above in one place; the fault must come out
// with the place, the thing's name in the house and the mend.
func TestFaults(t *testing.T) {
	for _, c := range []struct{ name, old, new, want string }{
		{"bare number", `at = "5' 4in"`, `at = 64`, `24:3: error: at: 64 has no unit (wall 1S, opening w1); write "64'", "64in" or "64mm" [no-unit]`},
		{"number in quotes", `at = "5' 4in"`, `at = "64"`, `24:3: error: at: "64" has no unit; write 64', 64in or 64mm (wall 1S, opening w1) [bad-length]`},
		{"negative", `sill = "2'"`, `sill = "-2'"`, `27:3: error: sill: "-2'" is negative; a length here is 0 or more (wall 1S, opening w1) [bad-length]`},
		{"unknown key", `sill = "2'"`, `sil = "2'"`, `27:3: error: unknown key "sil" (wall 1S, opening w1); did you mean "sill"? [unknown-key]`},
		{"missing key", `width = "3' 2 1/2in"`, ``, `22:5: error: width is missing (wall 1S, opening w1); add width = "3' 2 1/2in" [missing-key]`},
		{"unknown level", `level = "second"` + "\nfrom", `level = "secnd"` + "\nfrom", `48:1: error: level: there is no level "secnd" (wall 2S); did you mean "second"? [unknown-level]`},
		{"wrong type", `name = "1E"`, `name = 1`, `31:1: error: name: must be a string, not a number (wall no. 2); write it like name = "1S" [wrong-type]`},
		{"not finite", `exposure = "D"`, "exposure = \"D\"\nkzt = nan", `8:1: error: kzt: NaN is not between 1 and 3 (site) [out-of-range]`},
		{"infinite", `exposure = "D"`, "exposure = \"D\"\nkzt = inf", `8:1: error: kzt: +Inf is not between 1 and 3 (site) [out-of-range]`},
		{"unknown word", `kind = "gable"`, `kind = "gabel"`, `60:1: error: kind: "gabel" is not one of gable, hip, shed (roof no. 1); did you mean "gable"? [unknown-word]`},
		{"opening past the end", `at = "5' 4in"`, `at = "26'"`, `22:5: error: it runs from 26'-0" to 29'-2 1/2", and the wall ends at 28'-0" (wall 1S, opening w1); move it, narrow it, or lengthen the wall [opening-off-wall]`},
		// room under the plates: 9'-1 1/8" less 3"; sill 24, opening 62.5, header 9.25 in: 95.75 in. At sill 3' 6in it is 113.75 in, 7 5/8 in too much.
		{"header through the plate", `sill = "2'"`, `sill = "3' 6in"`, `22:5: error: sill 3'-6", opening 5'-2 1/2" and header 9 1/4" reach 9'-5 3/4"; under the plates there are 8'-10 1/8": 7 5/8" too much (wall 1S, opening w1); lower the opening, or take a shallower header [header-through-plate]`},
		{"floor does not follow", "name = \"second\"\n", "name = \"second\"\nfloor = \"20'\"\n", `15:1: error: floor is 20'-0", but level first has its plates at 19'-1 1/8" and this floor is 10" deep, which makes 19'-11 1/8" (level second); correct one of them, or leave floor out: it is computed [floor-height]`},
		{"wall of no length", `to = ["28'", "0'"]` + "\n  ", `to = ["0'", "0'"]` + "\n  ", `21:1: error: the wall is 0" long (wall 1S); from and to must lie apart [short-wall]`},
		{"unknown mark", `use = "story-strap"` + "\nwall", `use = "stroy-strap"` + "\nwall", `81:1: error: there is no item "stroy-strap" in the catalog (place no. 1, stroy-strap); did you mean "story-strap"? [unknown-mark]`},
		{"unknown wall", `wall = "2S"`, `wall = "3S"`, `82:1: error: there is no wall "3S" (place no. 1, story-strap); known: 1S, 1E, 1N, 1W, 2S, 2E, 2N [unknown-wall]`},
		{"unknown wall in a condition", `except = { wall = "2N" }`, `except = { wall = "2Q" }`, `79:12: error: there is no wall "2Q" (rule story-strap at stud-stud); known: 1S, 1E, 1N, 1W, 2S, 2E, 2N [unknown-wall]`},
		{"same name twice", `name = "1E"`, `name = "1S"`, `30:3: error: the name "1S" is that of the wall in line 17 (wall 1S); tags are made from names: give it one of its own [same-name]`},
		{"bad lumber", `member = "3-2x12"`, `member = "3-2by12"`, `66:1: error: member: "3-2by12" is not a lumber size; write it like 2x6, 3-2x10, 1.75x11.875 or 45x240mm (girder G1) [bad-lumber]`},
		{"bad nail", `type = "10d x 1 1/2"`, `type = "11d"`, `73:11: error: type: "11d" is not a fastener; write it like "10d x 1 1/2", "8d common", "16d sinker", "0.131 x 2 1/2", "No. 14 x 2", "bolt 5/8 x 8" or "8d x 38mm" (item story-strap) [bad-nail]`},
		{"bad gauge", `thickness = "19 ga"`, `thickness = "21 ga"`, `72:1: error: thickness: "21 ga" is not a gauge in the table: 7 to 20, 22, 24, 26 ga (item story-strap) [bad-thickness]`},
		{"load without source", `, source = "maker's page, 2025-01"`, ``, `74:1: error: source is missing (item story-strap); add source = "maker's page, edition 2025-01" [missing-key]`},
		{"place on nothing", `wall = "2S"`, ``, `80:3: error: a place is on one wall, roof, girder or porch; this names 0 (place no. 1, story-strap); add one of wall = "...", roof = "...", girder = "...", porch = "..." [missing-key]`},
		{"single brackets", "[[girder]]", "[girder]", `62:2: error: girder: is one table; write [[girder]] with two brackets: there can be several [wrong-type]`},
		{"shed without its high side", `kind = "gable"`, `kind = "shed"`, `59:3: error: high is missing: a shed roof needs the side of its high wall (roof no. 1); add high = "N" (or E, S, W) [missing-key]`},
		{"balloon downwards", "balloon_to = \"second\"", "balloon_to = \"cellar\"", `44:1: error: balloon_to: there is no level "cellar" (wall 1W); known: first, second [unknown-level]`},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, 1, strings.Count(house, c.old), "the case must change one place")
			_, ds := parse(strings.Replace(house, c.old, c.new, 1), nil)
			require.Contains(t, lines(ds), "plan.toml:"+c.want)
		})
	}
}

func TestAllFaultsComeAtOnceInOrderOfPlace(t *testing.T) {
	src := strings.NewReplacer(`at = "5' 4in"`, `at = 64`, `pitch = "7:12"`, `pitch = "steep"`, `exposure = "D"`, `exposure = "E"`).Replace(house)
	_, ds := parse(src, nil)
	var codes []string
	for _, d := range ds {
		codes = append(codes, string(d.Code))
	}
	require.Equal(t, []string{"unknown-word", "no-unit", "bad-pitch"}, codes)
}

func TestOutline(t *testing.T) {
	square := func(points ...string) string {
		src := "[project]\nname = \"x\"\n[[level]]\nname = \"g\"\nplate_height = \"8'\"\n"
		for i, q := range points {
			src += "[[wall]]\nname = \"w" + string(rune('0'+i)) + "\"\nfrom = " + q + "\nto = " + points[(i+1)%len(points)] + "\n"
		}
		return src
	}
	a, b, c, d := `["0'", "0'"]`, `["20'", "0'"]`, `["20'", "10'"]`, `["0'", "10'"]`
	_, ds := parse(square(a, b, c, d), nil)
	require.Empty(t, lines(ds))

	_, ds = parse(square(a, d, c, b), nil)
	require.Equal(t, "clockwise", string(ds[0].Code))

	// A court inside the house: its walls, seen from the court, go clockwise round it.
	court := square(a, b, c, d)
	for i, q := range []string{`["5'", "4'"]`, `["5'", "6'"]`, `["9'", "6'"]`, `["9'", "4'"]`} {
		to := []string{`["5'", "6'"]`, `["9'", "6'"]`, `["9'", "4'"]`, `["5'", "4'"]`}[i]
		court += "[[wall]]\nname = \"c" + string(rune('0'+i)) + "\"\nfrom = " + q + "\nto = " + to + "\n"
	}
	_, ds = parse(court, nil)
	require.Empty(t, lines(ds))

	turned := strings.Replace(square(a, b, c, d), "from = "+b+"\nto = "+c, "from = "+c+"\nto = "+b, 1)
	_, ds = parse(turned, nil)
	require.Contains(t, strings.Join(lines(ds), "\n"), "it ends where wall w0 ends (wall w1); swap from and to of one of them")

	short := strings.Replace(square(a, b, c, d), "to = "+b, `to = ["19' 9in", "0'"]`, 1)
	_, ds = parse(short, nil)
	require.Contains(t, strings.Join(lines(ds), "\n"), `it ends 3" from where wall w1 begins (wall w0); let one begin where the other ends [corner-apart]`)
}

func TestCatalogFiles(t *testing.T) {
	const file = "[[item]]\nmark = \"clip\"\nkind = \"clip\"\nlength = \"5in\"\nnails = { type = \"8d\", count = 6 }\n" +
		"[[item]]\nmark = \"spare\"\nkind = \"clip\"\n"
	const use = "\n[[rule]]\nat = \"stud-top\"\nuse = \"clip\"\n"
	head := "catalog = \"hw.toml\"\n" + house + use

	t.Run("read before the plan's own", func(t *testing.T) {
		p, ds := parse(head, map[string]string{"hw.toml": file})
		require.Empty(t, lines(ds), "an unused item of a shared file is no fault")
		require.Len(t, p.Items, 3)
		require.Equal(t, "clip", p.Items[0].Mark)
		require.Equal(t, "hw.toml:1:3", p.Items[0].Pos.String())
	})
	t.Run("override keeps what it does not give", func(t *testing.T) {
		p, ds := parse(head+"[[item]]\nmark = \"clip\"\noverride = true\nlength = \"6in\"\n", map[string]string{"hw.toml": file})
		require.Empty(t, lines(ds))
		require.Equal(t, 6.0, p.Items[0].Length)
		require.Equal(t, 6, p.Items[0].Fasteners[0].Total())
		require.Equal(t, "plan.toml", p.Items[0].Pos.File)
	})
	t.Run("same mark without override", func(t *testing.T) {
		_, ds := parse(head+"[[item]]\nmark = \"clip\"\nkind = \"clip\"\n", map[string]string{"hw.toml": file})
		require.Contains(t, strings.Join(lines(ds), "\n"), `mark "clip" is defined already, at hw.toml:1:3 (item clip); if the plan is to change the catalog's item, add override = true [same-mark]`)
	})
	t.Run("override of nothing", func(t *testing.T) {
		_, ds := parse(house+"[[item]]\nmark = \"clop\"\nkind = \"clip\"\noverride = true\n", nil)
		require.Contains(t, strings.Join(lines(ds), "\n"), `no catalog file has an item "clop"`)
	})
	t.Run("missing file, without its absolute path", func(t *testing.T) {
		_, ds := parse(head, nil)
		require.Contains(t, strings.Join(lines(ds), "\n"), `plan.toml:1:1: error: catalog: cannot read "hw.toml": file does not exist; the name is relative to the plan [no-file]`)
	})
	t.Run("fault in the file", func(t *testing.T) {
		_, ds := parse(head, map[string]string{"hw.toml": file + "lenght = \"5in\"\n"})
		require.Contains(t, strings.Join(lines(ds), "\n"), `hw.toml:9:1: error: unknown key "lenght" (catalog hw.toml, item spare); did you mean "length"? [unknown-key]`)
	})
}

func TestExamplesReadWithoutFault(t *testing.T) {
	files, err := fs.Glob(os.DirFS("../../examples"), "*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, f := range files {
		if f == "hardware.toml" {
			continue
		}
		t.Run(f, func(t *testing.T) {
			src, err := os.ReadFile("../../examples/" + f)
			require.NoError(t, err)
			_, ds := read.Plan(f, src, func(n string) ([]byte, error) { return os.ReadFile("../../examples/" + n) })
			require.Empty(t, lines(ds))
		})
	}
}

func FuzzRead(f *testing.F) {
	f.Add(house)
	f.Add("wall = 3\nlevel = [1, {}]\n[project]\nname = nan\n")
	f.Add("[[level]]\nname=\"a\"\nplate_height=\"9'\"\n[[wall]]\nname=\"w\"\nto=[\"1'\",\"2'\"]\n")
	f.Fuzz(func(t *testing.T, src string) {
		p, ds := parse(src, nil)
		require.NotNil(t, p)
		for _, d := range ds {
			require.Positive(t, d.Pos.Line)
			require.NotContains(t, d.String(), "\n")
			require.NotEmpty(t, string(d.Code))
		}
		if !ds.Errors() {
			require.NotEmpty(t, p.Levels)
			require.NotEmpty(t, p.Walls)
		}
	})
}

// Whatever slips a plan has together, each is told: none hides another.
func TestNoFaultHidesAnother(t *testing.T) {
	slips := []struct{ old, new, code string }{
		{`exposure = "D"`, `exposure = "Q"`, "unknown-word"},
		{`elevation = "8' 6in"`, `elevation = 8.5`, "no-unit"},
		{`start = { join = "butt", post = 4 }`, `start = { join = "butt", posts = 4 }`, "unknown-key"},
		{`pitch = "7:12"`, `pitch = "7"`, "bad-pitch"},
		{`member = "3-2x12"`, `member = "12"`, "bad-lumber"},
		{`thickness = "19 ga"`, `thickness = "thin"`, "bad-thickness"},
		{`type = "10d x 1 1/2"`, `type = "spike"`, "bad-nail"},
		{`except = { wall = "2N" }`, `except = { wall = "9N" }`, "unknown-wall"},
		{`uplift = "2 kN"`, `uplift = "2"`, "bad-quantity"},
		{`date = 2026-03-02`, `date = "March"`, "bad-date"},
		{`mark = "story-strap"`, `mark = "story strap"`, "bad-name"},
		{`from = ["0'", "0'"]` + "\nto = [\"28'\", \"0'\"]\nmember", `from = ["0'"]` + "\nto = [\"28'\", \"0'\"]\nmember", "wrong-type"},
		{`sill = "2'"`, `sill = "4'"`, "header-through-plate"},
	}
	rapid.Check(t, func(t *rapid.T) {
		src := house
		var want []string
		for _, s := range slips {
			if rapid.Bool().Draw(t, s.code) {
				src = strings.Replace(src, s.old, s.new, 1)
				want = append(want, s.code)
			}
		}
		_, ds := parse(src, nil)
		for _, code := range want {
			require.True(t, slices.ContainsFunc(ds, func(d plan.Diagnostic) bool { return string(d.Code) == code }), "%s among %v", code, lines(ds))
		}
		if len(want) == 0 {
			require.Empty(t, lines(ds))
		}
	})
}

// A segment without to ends where its wall does, also where that begins at the
// last wall's end: 40 ft, less the 10 before the segment.
func TestShearWithoutToEndsAtTheWallsEnd(t *testing.T) {
	p, ds := parse(`
level = [{ name = "floor", plate_height = "8' 1 1/8in" }]
wall = [
  { name = "S", from = ["0'", "0'"], to = ["40'", "0'"], shear = [{ from = "10'" }] },
  { name = "E", to = ["40'", "30'"], shear = [{ from = "4'" }, { to = "3'" }] },
  { name = "N", to = ["0'", "30'"], shear = [{ from = "10'" }] },
  { name = "W", to = ["0'", "0'"] },
]
roof = [{ kind = "gable", ridge = "x", pitch = "5:12" }]
project = { name = "Check", date = 2026-03-02 }
`, nil)
	require.False(t, ds.Errors(), "%v", ds)
	for i, want := range []float64{40 * 12, 30 * 12, 40 * 12} {
		require.InDelta(t, want, p.Walls[i].Shear[0].To, 1e-9, p.Walls[i].Name)
	}
	require.InDelta(t, 36, p.Walls[1].Shear[1].To, 1e-9)
}
