package loadpath

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The text and the JSON of a report are written by code of their own. Here each number of
// the one is looked for in the other, in the line that names the same thing.

// rec is a table of JSON as it is read back.
type rec map[string]any

func (x rec) num(key string) float64 { v, _ := x[key].(float64); return v }
func (x rec) str(key string) string  { v, _ := x[key].(string); return v }

func (x rec) list(key string) (out []rec) {
	v, _ := x[key].([]any)
	for _, y := range v {
		out = append(out, rec(y.(map[string]any)))
	}
	return out
}

// sectionsOf parts a text at its underlined headings.
func sectionsOf(text string) map[string][]string {
	out, head := map[string][]string{}, ""
	lines := strings.Split(text, "\n")
	for i, s := range lines {
		if i+1 < len(lines) && s != "" && lines[i+1] == strings.Repeat("-", len(s)) {
			head = s
			continue
		}
		out[head] = append(out[head], s)
	}
	return out
}

// under returns the lines under headings that begin so; there is one at least.
func under(t *testing.T, sections map[string][]string, head string) (out []string) {
	for h, lines := range sections {
		if strings.HasPrefix(h, head) {
			out = append(out, lines...)
		}
	}
	require.NotEmpty(t, out, head)
	return out
}

var numeral = regexp.MustCompile(`-?\d+(?:\.\d+)?`)

// says tells whether a line has all of these words, and these numbers in their order, each
// as far as its own decimals go; off is what the numbers themselves were rounded by.
func says(line string, words []string, off float64, nums ...float64) bool {
	for _, w := range words {
		if !strings.Contains(line, w) {
			return false
		}
	}
	for _, s := range numeral.FindAllString(line, -1) {
		if len(nums) == 0 {
			break
		}
		x, _ := strconv.ParseFloat(s, 64)
		_, after, _ := strings.Cut(s, ".")
		if math.Abs(x-nums[0]) <= 0.501*math.Pow(10, -float64(len(after)))+off {
			nums = nums[1:]
		}
	}
	return len(nums) == 0
}

// said asserts that one of the lines says it, and returns its place.
func said(t *testing.T, lines []string, words []string, off float64, nums ...float64) int {
	for i, s := range lines {
		if says(s, words, off, nums...) {
			return i
		}
	}
	assert.Fail(t, "no line says it", "%q %v in\n%s", words, nums, strings.Join(lines, "\n"))
	return 0
}

// bothOutputs hands out reports of many kinds with their text and JSON.
func bothOutputs(t *testing.T, f func(t *testing.T, r *Report, text map[string][]string, data rec)) {
	strong, wide := sample, sample
	strong.loads, strong.kind = "[loads]\ncombination = \"strength\"\ndistribution = \"stiffness\"\n", "hip"
	wide.beam, wide.stories, wide.piles, wide.floor = true, 1, false, 0
	reports := map[string]*Report{
		"porch": reportOf(placed(t, porchHouse)), "hip by strength": reportOf(placed(t, strong.plan())), "ridge beam": reportOf(placed(t, wide.plan())),
	}
	for _, name := range sheetExamples {
		reports[name] = exampleReport(t, name)
	}
	for name, r := range reports {
		t.Run(name, func(t *testing.T) {
			var text, data bytes.Buffer
			require.NoError(t, r.WriteWind(&text, "text"))
			require.NoError(t, r.WriteWind(&data, "json"))
			x := rec{}
			require.NoError(t, json.Unmarshal(data.Bytes(), &x))
			f(t, r, sectionsOf(text.String()), x)
		})
	}
}

func TestPressuresOfTextAndJSONAgree(t *testing.T) {
	bothOutputs(t, func(t *testing.T, r *Report, text map[string][]string, data rec) {
		for _, c := range data.list("coefficients") {
			said(t, under(t, text, "Wind basis"), []string{c.str("name"), c.str("unit"), c.str("table"), c.str("grade")}, 0.0005, c.num("value"))
		}
		assert.Len(t, data.list("coefficients"), len(r.Basis.Coefficients(r.Choice)))
		n := 0
		for _, e := range data.list("envelope") {
			lines := under(t, text, "Envelope procedure, "+e.str("case")+", wind "+e.str("wind"))
			for _, z := range e.list("zones") {
				n++
				said(t, lines, []string{"  " + z.str("zone") + " "}, 0.05, z.num("gcpf"), z.num("external_psf"), z.num("net_with_internal_pressure_psf"), z.num("net_with_internal_suction_psf"))
			}
		}
		assert.Equal(t, r.Choice.Has(plan.Envelope), n == 20, "8 zones across the ridge and 12 along it")
		for _, d := range data.list("directional") {
			n++
			lines := under(t, text, "Directional procedure, wind "+d.str("wind"))
			for _, s := range d.list("surfaces") {
				said(t, lines, []string{"  " + s.str("surface") + " "}, 0.05, s.num("cp"), s.num("external_psf"), s.num("net_with_internal_pressure_psf"), s.num("net_with_internal_suction_psf"))
			}
		}
		assert.Equal(t, r.Choice.Has(plan.Directional), n%20 == 2, "across the ridge and along it")
		for _, o := range data.list("open_roofs") {
			said(t, under(t, text, "Open roofs"), []string{" " + o.str("roof") + " ", " " + o.str("wind") + " ", " " + o.str("case") + " ", " " + o.str("part") + " "}, 0.05, o.num("cn"), o.num("down_psf"))
		}
		for _, f := range data.list("cladding") {
			lines := under(t, text, "Components and cladding, "+f.str("figure")+" ("+f.str("grade")+")")
			if f.str("note") != "" {
				said(t, lines, []string{"  " + f.str("note")}, 0)
			}
			for _, z := range f.list("zones") {
				said(t, lines, []string{"  " + z.str("zone") + " "}, 0.05, z.num("area_sq_ft"), z.num("gcp_positive"), z.num("gcp_negative"), z.num("positive_psf"), z.num("negative_psf"))
			}
			assert.Zero(t, len(f.list("zones"))%3, "each zone for three areas")
			assert.NotEmpty(t, f.list("zones"))
		}
		for _, o := range data.list("overhangs") {
			lines := under(t, text, "Components and cladding, overhangs")
			said(t, lines, []string{"  " + o.str("zone") + " "}, 0.05, o.num("area_sq_ft"), o.num("gcp_net"), o.num("up_psf"))
			said(t, lines, []string{o.str("source") + " (" + o.str("grade") + ")"}, 0)
		}
		for _, d := range data.list("dead_loads") {
			words := []string{"  " + d.str("part") + " ", d.str("name"), d.str("source")}
			if d.num("weight_psf") == 0 {
				said(t, under(t, text, "Dead loads"), append(words, "  plan  "), 0)
				continue
			}
			said(t, under(t, text, "Dead loads"), words, 0.005, d.num("weight_psf"))
		}
		gables(t, r, text, data)
	})
}

// gables compares the gable ends, whose lengths JSON gives in feet.
func gables(t *testing.T, r *Report, text map[string][]string, data rec) {
	list := r.GableEnds()
	require.Len(t, data.list("gable_ends"), len(list))
	for i, g := range data.list("gable_ends") {
		x := list[i]
		assert.InDelta(t, x.Tall/12, g.num("tallest_stud_ft"), 0.00501)
		assert.InDelta(t, x.Rake/12, g.num("rake_ft"), 0.00501)
		lines := under(t, text, "Gable walls and rakes")
		at := said(t, lines, []string{"wall " + g.str("wall") + ": ", "tallest stud " + length.Feet(x.Tall) + ",", "(zone " + g.str("zone") + ")"}, 0.05, g.num("stud_end_out_of_plane_asd_lb"))
		if x.Rake > 0 {
			said(t, lines[at+1:at+2], []string{"roof " + g.str("roof") + ", " + length.Feet(x.Rake) + ":"}, 0.05, g.num("rake_up_psf"), g.num("rake_asd_plf"))
			assert.InDelta(t, 0.6*g.num("rake_up_psf")*g.num("rake_ft"), g.num("rake_asd_plf"), 0.02*g.num("rake_asd_plf")+0.2, "0.6 of the pressure by its width")
		}
	}
}

func TestUpliftOfTextAndJSONAgree(t *testing.T) {
	thrusts, widths := 0, 0
	bothOutputs(t, func(t *testing.T, r *Report, text map[string][]string, data rec) {
		var head string
		for h := range text {
			if strings.HasPrefix(h, "Uplift at ") {
				head = h
			}
		}
		lines := under(t, text, head)
		strength := r.work.plan.Loads.Combination == plan.Strength
		require.Len(t, data.list("uplift"), len(r.Uplift))
		for i, u := range data.list("uplift") {
			wall := "wall " + u.str("wall")
			if u.str("wall") == "" {
				wall = "porch beam"
			}
			f := rec(u["largest"].(map[string]any))
			nums := []float64{u.num("joints"), f.num("wind_lb"), f.num("dead_lb"), u.num("largest_asd_lb")}
			if u["asd_plf"] != nil {
				widths++
				nums = append(nums, u.num("asd_plf"))
				assert.InDelta(t, u.num("largest_asd_lb")/r.Uplift[i].Width*12, u.num("asd_plf"), 0.06+0.05/r.Uplift[i].Width*12)
			}
			at := said(t, lines, []string{wall + " ", "largest " + u.str("largest_at") + ":", u.str("case")}, 0.05, nums...)
			assert.Equal(t, u["asd_plf"] != nil, strings.Contains(lines[at], " plf)"), lines[at])
			assert.InDelta(t, f.num("wind_lb")-0.9*f.num("dead_lb"), u.num("strength_lb"), 0.2)
			if strength {
				said(t, lines[at+1:at+2], []string{"by 0.9 D + 1.0 W:"}, 0.05, u.num("strength_lb"))
			} else {
				assert.NotContains(t, lines[at+1], "1.0 W")
			}
		}
		require.Len(t, data.list("ridges"), len(r.Ridges))
		for i, x := range data.list("ridges") {
			what := map[bool]string{true: "uplift on the ridge beam ", false: "tension across the ridge board "}[x["ridge_beam"].(bool)]
			at := said(t, lines, []string{"ridge of roof " + x.str("roof") + ",", what, x.str("case")}, 0.05, x.num("joints"), x.num("largest_asd_lb"))
			assert.Equal(t, r.Ridges[i].Bearing, x["ridge_beam"])
			if x.num("dead_thrust_lb") > 0 {
				thrusts++
				said(t, lines[at+1:at+2], []string{"thrust at the plates", x.str("note")}, 0.05, x.num("dead_thrust_lb"))
			} else {
				assert.NotContains(t, strings.Join(lines[at+1:min(at+2, len(lines))], ""), "thrust")
			}
		}
	})
	assert.Positive(t, thrusts)
	assert.Positive(t, widths)
}

func TestLateralForcesOfTextAndJSONAgree(t *testing.T) {
	drifts := 0
	bothOutputs(t, func(t *testing.T, r *Report, text map[string][]string, data rec) {
		lines := under(t, text, "Story shear")
		for _, s := range data.list("story_shear") {
			said(t, lines, []string{"  " + s.str("story") + " ", " " + s.str("along") + " ", "  " + s.str("case")}, 0.05,
				s.num("walls_lb"), s.num("roofs_lb"), s.num("above_lb"), s.num("total_lb"), s.num("asd_lb"))
		}
		for _, b := range data.list("foundation_shear") {
			at := said(t, lines, []string{"  foundation ", " " + b.str("along") + " ", b.str("case")}, 0.05, b.num("total_lb"), b.num("asd_lb"))
			said(t, lines[at+1:at+2], []string{"lowest story", "floor edge"}, 0.05, b.num("lowest_story_lb"), b.num("walls_lb"), b.num("floor_edge_lb"), b.num("girders_lb"))
			assert.InDelta(t, b.num("total_lb"), b.num("lowest_story_lb")+b.num("walls_lb")+b.num("floor_edge_lb")+b.num("girders_lb"), 0.3)
		}
		bands := 0
		for _, s := range r.Stories {
			across := map[plan.Axis]plan.Axis{plan.AxisX: plan.AxisY, plan.AxisY: plan.AxisX}[s.Axis]
			for _, b := range s.Bands {
				bands++
				said(t, lines, []string{fmt.Sprintf("story %s, wind along %s: %s from %s = %s to %s:", s.Level.Name, s.Axis, b.From, across, length.Feet(b.Lo), length.Feet(b.Hi))}, 0, b.Load)
			}
		}
		assert.Equal(t, bands, strings.Count(strings.Join(lines, "\n"), ", wind along "))
		decks := under(t, text, "Decks between the lines")
		for i, b := range data.list("diaphragms") {
			words := []string{"  " + b.str("story") + " ", " " + b.str("along") + " "}
			for k, at := range []float64{r.Bays[i].Lo, r.Bays[i].Hi} {
				words = append(words, fmt.Sprintf("%s = %s ", orFree(b.str([]string{"from_line", "to_line"}[k])), length.Feet(at)))
				assert.InDelta(t, at/12, b.num([]string{"from_ft", "to_ft"}[k]), 0.00501)
				assert.InDelta(t, r.Bays[i].Ends[k], b.num([]string{"from_lb", "to_lb"}[k]), 0.0501)
			}
			said(t, decks, words, 0.05, b.num("depth_ft"), b.num("unit_shear_plf"), b.num("chord_lb"))
		}
		shear := under(t, text, "Shear wall lines")
		require.Len(t, data.list("shear_lines"), len(r.Lines))
		for i, x := range data.list("shear_lines") {
			drifts += lineSays(t, r.Lines[i], x, shear)
		}
		for i, s := range r.Torsion {
			said(t, shear, []string{"  torsion: " + s}, 0)
			assert.Equal(t, s, data["twist"].([]any)[i])
		}
	})
	assert.Positive(t, drifts)
}

func orFree(line string) string {
	if line == "" {
		return "free edge"
	}
	return line
}

// lineSays compares one shear wall line; 1 where it has a drift.
func lineSays(t *testing.T, x *LineShear, data rec, shear []string) (drifts int) {
	across := map[string]string{"x": "y", "y": "x"}[data.str("axis")]
	at := said(t, shear, []string{"story " + data.str("story") + ", line " + data.str("line") + " at " + across + " = " + length.Feet(x.At) + ":", data.str("case")}, 0.05, data.num("force_lb"), x.Deck, x.Brought)
	assert.InDelta(t, x.At/12, data.num("at_ft"), 0.00501)
	assert.InDelta(t, x.Force, math.Abs(x.Deck+x.Brought), 1e-6, "its deck and what is brought")
	end := at + 1
	for end < len(shear) && strings.HasPrefix(shear[end], "    ") {
		end++
	}
	own := shear[at+1 : end]
	if x.Floor != 0 {
		said(t, own, []string{"with the wind that comes to the floor under it", x.UnderCase}, 0, x.Floor, x.Under)
	} else {
		assert.NotContains(t, strings.Join(own, "\n"), "floor under it")
	}
	require.Len(t, data.list("segments"), len(x.Segments))
	share := 0.0
	for k, g := range data.list("segments") {
		s := x.Segments[k]
		said(t, own, []string{"    " + g.str("name") + " ", length.Feet(s.Length) + " long"}, 0.05, g.num("counts_ft"), g.num("share"), g.num("shear_lb"), g.num("asd_plf"), g.num("lever_arm_ft"), g.num("end_tension_lb"))
		assert.InDelta(t, s.Length/12, g.num("length_ft"), 0.00501)
		assert.InDelta(t, s.Stiff, g.num("stiffness_lb_per_in"), 0.0501)
		assert.InDelta(t, s.arm()/12, g.num("lever_arm_ft"), 0.00501)
		share += s.Share
	}
	if len(x.Segments) > 0 {
		assert.InDelta(t, 1, share, 1e-9, x.Name)
	}
	said(t, own, []string{"    shared " + data.str("shared")}, 0)
	if d := x.Drift(); d > 0 {
		drifts = 1
		assert.InDelta(t, d, data.num("drift_in"), 0.00501)
		said(t, own, []string{"drift of the story here", "ASD"}, 0.006, d, 1, x.Level.PlateHeight/d)
	}
	most, where := 0.0, 0.0
	for _, d := range x.Drag {
		if math.Abs(d.Force) > most {
			most, where = math.Abs(d.Force), d.At
		}
	}
	said(t, own, []string{"collector: largest", " at " + data.str("axis") + " = " + length.Feet(where)}, 0, most)
	require.Len(t, data.list("collector"), len(x.Drag))
	for k, d := range data.list("collector") {
		assert.InDelta(t, x.Drag[k].At/12, d.num("at_ft"), 0.00501)
		assert.InDelta(t, x.Drag[k].Force, d.num("force_lb"), 0.0501)
	}
	return drifts
}

func TestAccountAndComparisonOfTextAndJSONAgree(t *testing.T) {
	bothOutputs(t, func(t *testing.T, r *Report, text map[string][]string, data rec) {
		force := func(x rec, key string) Force {
			y := rec(x[key].(map[string]any))
			return Force{y.num("wind_lb"), y.num("dead_lb")}
		}
		lines, worst, most := under(t, text, "Balance of uplift"), "", 0.0
		for _, b := range data.list("account") {
			if w := force(b, "roof").W; w > most+0.5 { // the first of those that are alike
				worst, most = b.str("case"), w
			}
		}
		require.Positive(t, most)
		said(t, lines, []string{"  case: " + worst}, 0)
		n := 0
		for i, b := range data.list("account") {
			assert.InDelta(t, r.Balance[i].Tops.W, force(b, "tops").W, 0.0501)
			assert.InDelta(t, r.Balance[i].Tops.D, force(b, "tops").D, 0.0501)
			if b.str("case") != worst {
				continue
			}
			n++
			roof, above, weight, bases, lost := force(b, "roof"), force(b, "above"), force(b, "weight"), force(b, "bases"), force(b, "no_way_down")
			said(t, lines, []string{"  " + b.str("story") + " "}, 0.05, roof.W, roof.D, above.W, above.D, weight.D, bases.W, bases.D, lost.W, lost.D)
			assert.InDelta(t, roof.W+above.W, bases.W+lost.W, 1, "what goes in comes out")
		}
		assert.Equal(t, len(r.work.plan.Levels), n)
		other := data.list("other_assumptions")
		if len(other) == 0 {
			return
		}
		lines = under(t, text, "What other assumptions would ask")
		for _, c := range other {
			nums := []float64{c.num("as_planned_asd_lb")}
			for _, o := range c.list("others") {
				said(t, lines, []string{o.str("assumption")}, 0)
				if v, ok := o["largest_asd_lb"].(float64); ok {
					nums = append(nums, v)
					if nums[0] > 100 {
						nums = append(nums, math.Round(100*(v/nums[0]-1)))
					}
				}
			}
			said(t, lines, []string{"  " + c.str("what") + ", "}, 0.15, nums...)
		}
	})
}
