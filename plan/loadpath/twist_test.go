package loadpath_test

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// boxed is a small house on a slab under a hip roof: each wall has one segment
// with a hold-down over a cast-in rod at both ends, bolts along its sill plate,
// and plates in one length; rafters are clipped to the plates all round.
const boxed = `catalog = "hardware.toml"
[project]
name = "Boxed"
date = 2026-03-02
[site]
wind_speed = "150 mph"
exposure = "D"
[foundation]
kind = "slab"
[lumber]
plate = "60'"
stock = ["60'"]
[[level]]
name = "ground"
plate_height = "8' 1 1/8in"
studs = "2x6 @ 16in"
[[wall]]
name = "S"
level = "ground"
from = ["0'", "0'"]
to = ["28'", "0'"]
shear = [{ name = "A", from = "4'", to = "14'", edge = "4in" }]
[[wall]]
name = "E"
level = "ground"
to = ["28'", "20'"]
shear = [{ name = "A", from = "4'", to = "14'", edge = "4in" }]
[[wall]]
name = "N"
level = "ground"
to = ["0'", "20'"]
shear = [{ name = "A", from = "4'", to = "14'", edge = "4in" }]
[[wall]]
name = "W"
level = "ground"
to = ["0'", "0'"]
shear = [{ name = "A", from = "4'", to = "14'", edge = "4in" }]
[[roof]]
name = "main"
kind = "hip"
ridge = "x"
pitch = "6:12"
overhang = "1'"
rafters = "2x8 @ 16in"
[[rule]]
name = "clips"
at = "rafter-plate"
use = "rafter-clip"
where = { role = "rafter" }
[[rule]]
name = "bolts"
at = "stud-base"
use = "sill-bolt"
at_most = "4'"
where = { level = "ground" }
[[rule]]
name = "rods"
at = "wall-end"
use = "cast-in-rod"
where = { level = "ground" }
[[rule]]
name = "hold-downs"
at = "wall-end"
use = "hold-down-light"
where = { level = "ground" }
`

// twisted returns the gaps of the test of twist, by ID.
func twisted(t *testing.T, name, text string) map[string]string {
	out := map[string]string{}
	for _, l := range reportOf(t, name, text).Links {
		if l.Check.ID == "twist" {
			require.NotEmpty(t, l.Gap)
			assert.Positive(t, l.Demand, l.ID)
			assert.Empty(t, out[l.ID], "told twice")
			out[l.ID] = l.Gap
		}
	}
	return out
}

const segment = `{ name = "A", from = "4'", to = "14'", edge = "4in" }`

// Each edge of the closed house taken away in turn opens exactly its gap.
func TestATwistEdgeTakenAwayIsMissedThere(t *testing.T) {
	require.Empty(t, twisted(t, "boxed", boxed), "the house as it is")
	for _, c := range []struct {
		name     string
		old, new string
		gaps     map[string]string // ID to what the gap says
	}{
		{
			"clips of one wall", "where = { role = \"rafter\" }\n", "where = { role = \"rafter\", wall = [\"E\", \"N\", \"W\"] }\n",
			map[string]string{"deck to line S": "no fastener ties the deck to the plates of line S"},
		},
		{
			"one hold-down", "", "[[place]]\naction = \"remove\"\nuse = \"hold-down-light\"\nwall = \"S\"\non = \"wall-end\"\nat = \"4'\"\n",
			map[string]string{"S/A, first end": "no hold-down or long strap ties"},
		},
		{
			"the rod under one hold-down", "", "[[place]]\naction = \"remove\"\nuse = \"cast-in-rod\"\nwall = \"S\"\non = \"wall-end\"\nat = \"14'\"\n",
			map[string]string{"S/A, second end": "no hold-down or long strap ties"},
		},
		{
			"the segment of one side", "to = [\"28'\", \"0'\"]\nshear = [" + segment + "]", "to = [\"28'\", \"0'\"]",
			map[string]string{"deck over ground, side S": "no shear wall line on side S"},
		},
		{
			"sheathing that no table has", "to = [\"28'\", \"0'\"]\nshear = [" + segment, "to = [\"28'\", \"0'\"]\nshear = [" + strings.Replace(segment, "edge", "nail = \"6d common\", edge", 1),
			map[string]string{"S/A": "its sheathing holds nothing that is known"},
		},
		{
			"plates in two lengths", "plate = \"60'\"\nstock = [\"60'\"]", "plate = \"20'\"\nstock = [\"20'\"]",
			map[string]string{"-PS": "put a strap across"},
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := boxed + c.new
			if c.old != "" {
				require.Equal(t, 1, strings.Count(boxed, c.old))
				text = strings.Replace(boxed, c.old, c.new, 1)
			}
			got := twisted(t, "boxed", text)
			require.NotEmpty(t, got)
			for id, said := range got {
				i := slices.IndexFunc(keysOf(c.gaps), func(k string) bool { return id == k || k == "-PS" && strings.HasSuffix(id, k) })
				if assert.GreaterOrEqual(t, i, 0, "%s: %s is none of it", id, said) {
					assert.Contains(t, said, c.gaps[keysOf(c.gaps)[i]])
				}
			}
		})
	}
}

func keysOf(m map[string]string) (out []string) {
	for k := range m {
		out = append(out, k)
	}
	slices.Sort(out)
	return out
}

// Without bolts and rods nothing holds the sill plate or the ends of a segment.
func TestASoleThatNothingFastensIsMissed(t *testing.T) {
	text := boxed
	for _, rule := range []string{"use = \"sill-bolt\"\n", "use = \"cast-in-rod\"\n", "use = \"hold-down-light\"\n"} {
		text = strings.Replace(text, rule, rule+"except = { wall = \"S\" }\n", 1)
	}
	got := twisted(t, "boxed", text)
	require.Len(t, got, 3)
	assert.Contains(t, got["S/A, first end"], "no hold-down")
	assert.Contains(t, got["S/A, second end"], "no hold-down")
	delete(got, "S/A, first end")
	delete(got, "S/A, second end")
	for id, said := range got {
		assert.Contains(t, id, "S/A, S/sill plate")
		assert.Contains(t, said, "nothing fastens the sill plate")
	}
}

// Two walls in one line tied by straps over the wall between, and by the nails of
// the joist along them: with neither both collectors stop, and nothing else
// changes; with the straps alone neither does.
func TestCollectorStrapsTakenAwayAreMissed(t *testing.T) {
	src, err := os.ReadFile("../../examples/marsh-wren.toml")
	require.NoError(t, err)
	const strapless = `
[[place]]
action = "remove"
wall = "1P"
on = "collector"
at = "14'"
[[place]]
action = "remove"
wall = "1R"
on = "collector"
at = "0'"
`
	loose := regexp.MustCompile(`(?m)^joist_along_support = .*\n`).ReplaceAllString(string(src), "")
	require.Less(t, len(loose), len(src))
	before, after := twisted(t, "marsh-wren.toml", loose), twisted(t, "marsh-wren.toml", loose+strapless)
	// The joist over 1R, broken on girder GC, laps 2-3/4 in over 1P's plate and is nailed
	// to it: that side goes on. Nothing goes back over 1R's first end.
	nailed := twisted(t, "marsh-wren.toml", string(src)+strapless)
	assert.NotContains(t, nailed, "1P-168-CO", "the joist's nails")
	assert.Contains(t, nailed, "1R-0-CO")
	for _, id := range []string{"1P-168-CO", "1R-0-CO"} {
		assert.NotContains(t, before, id, "the straps")
	}
	for id, said := range after {
		if before[id] == "" {
			assert.Contains(t, []string{"1P-168-CO", "1R-0-CO"}, id, said)
		}
	}
	assert.Contains(t, after["1P-168-CO"], "put a strap across")
	assert.Contains(t, after["1R-0-CO"], "put a strap across")
	for id := range before {
		assert.Contains(t, after, id)
	}
}

// twoStory is the boxed house with a story on it, its bottom plates clipped to
// the rim or joists below.
func twoStory() string {
	story := "[[level]]\nname = \"upper\"\nplate_height = \"8' 1 1/8in\"\nstuds = \"2x6 @ 16in\"\njoists = \"2x10 @ 16in\"\njoist_run = \"y\"\n"
	text := strings.Replace(boxed, "[[wall]]\n", story+"[[wall]]\n", 1)
	i, j := strings.Index(boxed, "[[wall]]"), strings.Index(boxed, "[[roof]]")
	walls := strings.NewReplacer("[[wall]]\nname = \"", "[[wall]]\nname = \"2", "\"ground\"", "\"upper\"").Replace(boxed[i:j])
	text = strings.Replace(text, "[[roof]]\n", walls+"[[roof]]\nover = \"upper\"\n", 1)
	return text + "[[rule]]\nat = \"sole-rim\"\nuse = \"stud-clip\"\n"
}

// The shear of an upper wall goes through its bottom plate to the rim; where
// nothing ties the rim to the plates below it ends there, and where no segment
// stands below there is nothing to go to.
func TestAnUpperWallsShearGoesOnDown(t *testing.T) {
	got := twisted(t, "two", twoStory())
	assert.NotContains(t, got, "2S/A over nothing")
	below, sole := 0, 0
	for id, said := range got {
		if strings.HasPrefix(id, "2S/A, below ") {
			below++
			assert.Contains(t, said, "its shear ends at the rim")
		}
		if strings.HasPrefix(id, "2S/A, 2S/") {
			sole++
		}
	}
	assert.Positive(t, below, "%v", got)
	assert.Zero(t, sole)

	bare := twisted(t, "two", strings.Replace(twoStory(), "at = \"sole-rim\"\n", "at = \"sole-rim\"\nexcept = { wall = \"2S\" }\n", 1))
	for id := range bare {
		if strings.HasPrefix(id, "2S/A, 2S/") {
			sole++
			assert.Contains(t, bare[id], "nothing fastens the bottom plate")
		}
	}
	assert.Positive(t, sole)

	idle := twoStory()
	for _, w := range []string{"to = [\"28'\", \"0'\"]\n", "to = [\"0'\", \"20'\"]\n"} {
		idle = strings.Replace(idle, w+"shear = ["+segment+"]\n", w, 1)
	}
	over := twisted(t, "two", idle)
	assert.Contains(t, over["2S/A over nothing"], "no shear wall line stands below it")
	assert.Contains(t, over, "2N/A over nothing")
	assert.NotContains(t, over, "2E/A over nothing")
}

// A line beside the wing of an L runs on outside the house, where there is no deck
// to gather: sanderling's wall S is 20 ft of an L that is 40 ft wide.
func TestNothingIsGatheredOutsideTheHouse(t *testing.T) {
	r := reported(t, "sanderling.toml", "")
	for _, l := range r.Links {
		if l.Check.ID == "twist" {
			assert.Contains(t, l.ID, "deck past", "what its lines hand over the court's inside corner is another thing")
		}
		if l.Check.ID == "pile-overturning" {
			assert.LessOrEqual(t, l.Ratio, 1.0, "%s: its rods are cast into the stem wall", l.ID)
		}
	}
}
