package loadpath

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/source"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is written by hand of the check: each link with a demand has its line, under the
// heading of its check, which counts all links and those with demand.
func TestCheckOfTextAndJSONAgree(t *testing.T) {
	bothOutputs(t, func(t *testing.T, r *Report, _ map[string][]string, _ rec) {
		for _, limit := range []float64{0.5, 1} {
			var b, j bytes.Buffer
			failed, err := r.WriteCheck(&b, limit, "text")
			require.NoError(t, err)
			failedToo, err := r.WriteCheck(&j, limit, "json")
			require.NoError(t, err)
			assert.Equal(t, failed, failedToo)
			data := rec{}
			require.NoError(t, json.Unmarshal(j.Bytes(), &data))
			text := sectionsOf(b.String())
			all, gaps, above := 0, 0, 0
			for _, c := range ChecksFor(r.work.plan) {
				links, asked := 0, 0
				for _, x := range data.list("joints") {
					if x.str("check") == c.ID {
						links++
						if x.num("demand") > 0 {
							asked++
						}
					}
				}
				all += links
				if links == 0 {
					continue
				}
				lines := under(t, text, fmt.Sprintf("%s (%s): %s, %d with demand", c.Title, c.ID, plan.Counted(links, "place"), asked))
				said(t, lines, []string{"  " + c.Doc}, 0)
				rows := 0
				for _, x := range data.list("joints") {
					if x.str("check") == c.ID && (x.num("demand") > 0) {
						rows++
						linkSays(t, x, lines, limit)
					}
				}
			}
			for _, x := range data.list("joints") {
				gaps += int(factor(x.str("gap") != ""))
				above += int(factor(x["above_limit"].(bool)))
			}
			assert.Equal(t, all, len(data.list("joints")))
			assert.Equal(t, gaps+above > 0, failed)
			assert.Equal(t, []float64{limit, float64(gaps), float64(above)}, []float64{data.num("limit"), data.num("gaps"), data.num("above_limit")})
			said(t, strings.Split(b.String(), "\n"), []string{fmt.Sprintf("joints and segments checked: %d, %s, %s above %.2f", all, plan.Counted(gaps, "gap"), plan.Counted(above, "ratio"), limit)}, 0)
			chains(t, r, text, data)
		}
	})
}

// linkSays compares the line of a link with its record.
func linkSays(t *testing.T, x rec, lines []string, limit float64) {
	ratio, mark := "   gap", ">"
	if v, ok := x["ratio"].(float64); ok {
		ratio = fmt.Sprintf("%6.2f", v)
		if v > 1 && v < 1.005 || v == 1 && x["above_limit"].(bool) {
			ratio = " 1.00" // and a digit more
		}
		if !x["above_limit"].(bool) {
			mark = " "
		}
		assert.False(t, x["above_limit"].(bool) != (v > limit) && math.Abs(v-limit) > 0.005, "%v", x)
	} else {
		assert.NotEmpty(t, x.str("gap"))
	}
	off, nums := 0.05, []float64{x.num("demand")}
	if c, ok := x["capacity"].(float64); ok {
		nums = append(nums, c)
	}
	for _, s := range lines {
		if strings.HasPrefix(s, "  "+x.str("id")+" ") && strings.Contains(s, ratio) && strings.HasSuffix(s, x.str("governs")+"; "+x.str("where")) &&
			says(strings.TrimPrefix(s, "  "+x.str("id")), nil, off, nums...) {
			before, _, _ := strings.Cut(strings.TrimPrefix(s, "  "+x.str("id")), x.str("governs"))
			assert.Equal(t, mark == ">", strings.Contains(before, ">"), s)
			return
		}
	}
	assert.Fail(t, "no line of the link", "%v", x)
}

// chains compares the chains; the weakest link of each is marked, and no other.
func chains(t *testing.T, r *Report, text map[string][]string, data rec) {
	lines := under(t, text, "Chains from ridge to foundation")
	at := 0
	for _, c := range data.list("chains") {
		at += said(t, lines[at:], []string{"  line " + c.str("line") + "; weakest: "}, 0) + 1
		for _, g := range c.list("links") {
			s := lines[at]
			at++
			assert.Equal(t, g["weakest"], strings.HasPrefix(s, "   > "), s)
			assert.Contains(t, s, " "+g.str("title")+" ")
			assert.Contains(t, s, plan.Counted(int(g.num("gaps")), "gap")+";")
			assert.Equal(t, g["followed"], strings.Contains(s, "; "+g.str("worst")+": "), s)
			assert.Equal(t, !g["followed"].(bool), strings.Contains(s, "not checked"), s)
		}
	}
	assert.Equal(t, len(r.Chains), len(data.list("chains")))
}

// Signs that web pages would escape stay as they are.
func TestJSONEscapesNoSigns(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, writeJSON(&b, map[string]string{"case": "w < 3 & h > 2"}))
	assert.Equal(t, "{\n  \"case\": \"w < 3 & h > 2\"\n}\n", b.String())
}

// What the numbers rest on is told in both outputs, each line of it.
func TestWhatIsAssumedIsToldInTextAndJSON(t *testing.T) {
	bothOutputs(t, func(t *testing.T, r *Report, text map[string][]string, data rec) {
		sources := under(t, text, "Sources: what each word means")
		for i, g := range source.Grades() {
			x := data.list("grades")[i]
			assert.Equal(t, []string{string(g), g.Meaning()}, []string{x.str("grade"), x.str("meaning")})
			said(t, sources, []string{"  " + x.str("grade") + " ", " " + x.str("meaning")}, 0)
		}
		for head, key := range map[string]string{"Assumptions": "assumptions", "Not checked": "not_checked"} {
			list := data[key].([]any)
			require.Greater(t, len(list), 5)
			assert.Equal(t, map[string]int{"Assumptions": len(r.Assumed), "Not checked": len(r.Unchecked)}[head], len(list))
			for _, s := range list {
				said(t, under(t, text, head), []string{"  - " + s.(string)}, 0)
			}
		}
		for i, s := range r.Limits {
			assert.Equal(t, s, data["limits"].([]any)[i])
			said(t, under(t, text, "Wind basis"), []string{"  limit: " + s}, 0)
		}
		for i, s := range r.ZoneWidths() {
			assert.Equal(t, s, data["cladding_widths"].([]any)[i])
		}
		p := rec(data["procedure"].(map[string]any))
		said(t, under(t, text, "Wind basis"), []string{"procedure: ", ": " + p.str("why")}, 0)
		said(t, under(t, text, "Wind basis"), []string{"enclosure: " + p.str("enclosure")}, 0)
		assert.Len(t, p["used"], len(r.Choice.Use))
		for h := range text {
			if strings.HasPrefix(h, "Uplift at ") {
				assert.Equal(t, r.Basis.Edition != plan.ASCE716, strings.HasSuffix(h, "(second-hand; "+string(r.Basis.Edition)+" not read)"), h)
				assert.Contains(t, h, "0.6 D + 0.6 W, ASCE 7-16 2.4.1 (second-hand")
			}
		}
	})
}

// The list of what wind overtakes first: in the order of speed, numbered from 1, ten from
// any side and five from each, each with its check, its place and what holds there; then how
// many by which speed.
func TestSpeedsOfTheTextAreThoseOfTheList(t *testing.T) {
	r, other := exampleReport(t, "shed.toml"), reportOf(placed(t, porchHouse))
	var b, beside bytes.Buffer
	require.NoError(t, r.WriteSpeeds(&b, nil, ""))
	require.NoError(t, r.WriteSpeeds(&beside, other, "other steel"))
	text, with := sectionsOf(b.String()), sectionsOf(beside.String())
	first := func(lines []string, list []Overtaken, most int) {
		rows := 0
		for _, s := range lines {
			if strings.HasPrefix(s, "  ") {
				rows++
			}
		}
		require.Equal(t, min(most, len(list)), rows)
		for i, o := range list[:rows] {
			hold := o.Capacity.Mark
			if hold == "" {
				hold = o.Capacity.Governs
			}
			at := said(t, lines, []string{"  " + o.Check.Title + " ", "  " + o.ID + " ", "  " + hold}, 0, float64(i+1), o.Speed)
			assert.Equal(t, fmt.Sprintf("  %2d  ", i+1), lines[at][:6])
			assert.Equal(t, map[bool]string{true: "<"}[o.Under]+map[bool]string{true: ">"}[o.Over], strings.TrimRight(strings.TrimLeft(lines[at][6:7], " "), "0123456789"))
			if i > 0 {
				assert.GreaterOrEqual(t, o.Speed, list[i-1].Speed)
			}
		}
	}
	clean := func(lines []string) (out []string) {
		for _, s := range lines {
			if s != "" && !strings.HasPrefix(s, "---") {
				out = append(out, s)
			}
		}
		return out
	}
	first(clean(text["What wind overtakes first, from any side"]), r.Speeds(""), 10)
	for _, side := range plan.Sides {
		first(clean(text["Wind from "+string(side)]), r.Speeds(side), 5)
	}
	assert.NotContains(t, text, "With other steel")
	first(clean(with["With other steel"]), other.Speeds(""), 10)
	all, theirs := r.Speeds(""), other.Speeds("")
	reached := under(t, with, fmt.Sprintf("Links overtaken by a speed, of %d", len(all)))
	designs, last := 0, 0
	for _, s := range clean(reached) {
		v, ok := figures(regexp.MustCompile(`^  +(\d+) mph +(\d+) +(\d+) with other steel`), s)
		if !ok {
			continue
		}
		for i, list := range [][]Overtaken{all, theirs} {
			least, most := 0.0, 0.0 // by the speed as it is printed
			for _, o := range list {
				least, most = least+factor(!o.Over && o.Speed < v[0]-0.5), most+factor(!o.Over && o.Speed <= v[0]+0.5)
			}
			assert.True(t, least <= v[1+i] && v[1+i] <= most, "%v, %v: %s", least, most, s)
		}
		assert.GreaterOrEqual(t, int(v[1]), last, "faster wind overtakes no fewer")
		last = int(v[1])
		if strings.HasSuffix(s, "  design") {
			designs++
			assert.InDelta(t, r.work.plan.Site.WindSpeed, v[0], 0.5)
		}
	}
	assert.Equal(t, 1, designs)
}
