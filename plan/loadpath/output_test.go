package loadpath

import (
	"bytes"
	"encoding/json"
	"math"
	"regexp"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/placement"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var sample = box{
	length: 480, width: 288, stories: 2, kind: "gable", ridge: "x", pitch: 6, overhang: 12, rake: 12, spacing: 16, piles: true, windows: 2, shear: true,
	wind: "wind_speed = \"150 mph\"\nexposure = \"D\"", floor: 120,
}

func TestEveryOutputIsHonest(t *testing.T) {
	r, ds := loadsOf(placed(t, sample.plan()))
	require.False(t, ds.Errors())
	outs := map[string]string{"explain": r.Explain("2S-1-RP")}
	for _, format := range []string{"text", "json"} {
		var wind, check bytes.Buffer
		require.NoError(t, r.WriteWind(&wind, format))
		_, err := r.WriteCheck(&check, 1, format)
		require.NoError(t, err)
		outs["wind "+format], outs["check "+format] = wind.String(), check.String()
	}
	verdict := regexp.MustCompile(`(?i)\b(safe|passes|pass|ok|adequate|complies|compliant|code-approved)\b`)
	for name, s := range outs {
		if name != "explain" { // the command adds it, once
			assert.Contains(t, s, plan.Caution, name)
		}
		assert.NotContains(t, s, "NaN", name)
		assert.NotContains(t, s, "Inf", name)
		assert.Empty(t, verdict.FindString(s), name)
		if name != "explain" {
			assert.Contains(t, s, "Pile embedment", name)
			assert.Contains(t, s, "directional (chapter 27)", name)
			assert.Contains(t, s, "over the least horizontal dimension", name)
			assert.Contains(t, s, "lood, wave", name)
		}
	}
	for _, table := range []string{"Table 26.10-1", "Table 26.11-1", "Table 26.6-1", "Table 26.13-1", "Fig. 27.3-1", "Fig. 30.3-1", "Enclosure: enclosed, GCpi 0.18", "partially enclosed", "a = 3'-0\": wall zone 5"} {
		assert.Contains(t, outs["wind text"], table)
	}
}

func TestLowRiseListsBothProcedures(t *testing.T) {
	var b bytes.Buffer
	r := reportOf(placed(t, porchHouse))
	require.NoError(t, r.WriteWind(&b, "text"))
	for _, s := range []string{"Fig. 28.3-1", "Fig. 27.3-1", "allows both", "envelope procedure only", "directional procedure only", "partially enclosed"} {
		assert.Contains(t, b.String(), s)
	}
}

// What partial enclosure would do is what the plan would get with that class.
func TestComparisonIsTheOtherPlansOwn(t *testing.T) {
	with := func(more string) *Comparison {
		return reportOf(placed(t, strings.Replace(porchHouse, "exposure = \"D\"\n", "exposure = \"D\"\n"+more, 1))).compare()
	}
	c := with("")
	require.Len(t, c.Alts, 3)
	for i, more := range []string{`enclosure = "partially enclosed"`, `procedure = "envelope"`, `procedure = "directional"`} {
		other := with(more + "\n")
		for k, want := range other.As {
			if math.IsNaN(want) {
				assert.True(t, math.IsNaN(c.Alts[i].Values[k]))
				continue
			}
			assert.InDelta(t, want, c.Alts[i].Values[k], 1e-9, "%s: %s", more, c.Rows[k].Name)
		}
	}
	assert.Greater(t, c.Alts[0].Values[0], c.As[0], "internal pressure lifts")
}

func TestJSONIsRead(t *testing.T) {
	r, _ := loadsOf(placed(t, sample.plan()))
	var b bytes.Buffer
	failed, err := r.WriteCheck(&b, 1, "json")
	require.NoError(t, err)
	assert.True(t, failed)
	var got struct {
		Gaps   int `json:"gaps"`
		Above  int `json:"above_limit"`
		Joints []struct {
			ID     string   `json:"id"`
			Demand float64  `json:"demand"`
			Ratio  *float64 `json:"ratio"`
			Gap    string   `json:"gap"`
			Above  bool     `json:"above_limit"`
		} `json:"joints"`
	}
	require.NoError(t, json.Unmarshal(b.Bytes(), &got))
	require.Len(t, got.Joints, len(r.Links))
	for i, l := range r.Links {
		assert.Equal(t, l.ID, got.Joints[i].ID)
		assert.Equal(t, l.Gap == "", got.Joints[i].Ratio != nil, "a gap has no ratio")
		assert.Equal(t, l.Gap == "" && l.Ratio > 1, got.Joints[i].Above)
		if got.Joints[i].Gap != "" {
			got.Gaps--
		}
		if got.Joints[i].Above {
			got.Above--
		}
	}
	assert.Zero(t, got.Gaps, "counted one by one")
	assert.Zero(t, got.Above, "counted one by one")
}

func TestRunsAlike(t *testing.T) {
	var first string
	for range 3 {
		r, _ := loadsOf(placed(t, sample.plan()))
		var b bytes.Buffer
		require.NoError(t, r.WriteWind(&b, "json"))
		_, err := r.WriteCheck(&b, 1, "text")
		require.NoError(t, err)
		if first == "" {
			first = b.String()
		}
		require.Equal(t, first, b.String())
	}
}

func TestLimitDecides(t *testing.T) {
	r := &Report{Links: []*Link{{Ratio: 0.9}, {Ratio: 1.2}}}
	assert.True(t, r.Failed(1))
	assert.False(t, r.Failed(1.2))
	r.Links = append(r.Links, &Link{Gap: "no hardware at this joint"})
	assert.True(t, r.Failed(9), "a gap is above any limit")
}

func TestGapsAreTold(t *testing.T) {
	// The sample has clips at rafters and straps between stories, nothing at
	// stud tops, headers or the lowest studs.
	r, _ := loadsOf(placed(t, sample.plan()))
	gaps := map[string]int{}
	for _, l := range r.Links {
		if l.Gap != "" {
			gaps[l.Check.ID]++
		}
	}
	assert.Zero(t, gaps["rafter-uplift"])
	assert.Zero(t, gaps["story-uplift"])
	for _, id := range []string{"ridge-tie", "stud-top-uplift", "header-uplift", "base-uplift", "girder-pile-uplift", "overturning"} {
		assert.Positive(t, gaps[id], id)
	}
	for _, c := range r.Chains {
		if c.Weak >= 0 {
			assert.NotEmpty(t, c.Links[c.Weak].Worst.Gap, "a gap is the weakest of %s", c.Name)
		}
	}
}

func TestNoWindNoNumbers(t *testing.T) {
	b := sample
	text := strings.Replace(b.plan(), "[site]\n"+b.wind+"\n", "", 1)
	r, ds := loadsOf(placed(t, text))
	require.True(t, ds.Errors())
	var out bytes.Buffer
	require.NoError(t, r.WriteWind(&out, "text"))
	failed, err := r.WriteCheck(&out, 1, "text")
	require.NoError(t, err)
	assert.True(t, failed)
	assert.Contains(t, out.String(), "wind_speed")
	assert.NotContains(t, out.String(), "NaN")
}

func TestNoShearWallIsTold(t *testing.T) {
	b := sample
	b.shear = false
	_, ds := loadsOf(placed(t, b.plan()))
	codes := map[string]int{}
	for _, d := range ds {
		codes[string(d.Code)]++
	}
	assert.Equal(t, 4, codes["no-shear-wall"], "two stories, two directions")
}

func TestOpenFrontIsTold(t *testing.T) {
	// Shear walls along x in the south wall only: one line, the deck's middle
	// 12 ft off.
	b := sample
	b.stories, b.piles, b.floor = 1, false, 0
	text := b.plan()
	at := strings.Index(text, `name = "1N"`)
	cut := text[at:]
	end := strings.Index(cut, "shear = ")
	line := cut[end : end+strings.IndexByte(cut[end:], '\n')]
	r, _ := loadsOf(placed(t, text[:at]+strings.Replace(cut, line, "", 1)))
	require.Len(t, r.Torsion, 1)
	assert.Contains(t, r.Torsion[0], "one line only, 1S")
	assert.Contains(t, r.Torsion[0], `12'-0"`)
}

func TestMakersValueIsTaken(t *testing.T) {
	text := strings.Replace(sample.plan(), "to_plate = 7 }", "to_plate = 7 }\nloads = { uplift = \"617 lb\", along = \"187 lb\", across = \"143 lb\", source = \"invented sheet\" }", 1)
	r, _ := loadsOf(placed(t, text))
	l := r.Joint("2S-32-RP")[0]
	assert.Equal(t, 617.0, l.Capacity.Value)
	assert.Contains(t, l.Governs(), "maker")
	assert.Greater(t, l.Ratio, l.Demand/617, "uplift and lateral load by linear interaction")
	assert.Contains(t, r.Explain("2S-32-RP"), "lateral load across the wall")
}

func TestChecksAreDocumented(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range Checks() {
		assert.False(t, seen[c.ID], c.ID)
		seen[c.ID] = true
		assert.NotEmpty(t, c.Title)
		assert.NotEmpty(t, c.Doc)
		assert.NotNil(t, c.run)
	}
}

func BenchmarkRun(b *testing.B) {
	p := placed(b, sample.plan())
	for b.Loop() {
		if _, ds := Run(p); ds.Errors() {
			b.Fatal(ds)
		}
	}
}

// BenchmarkThousandHouses runs the load path of 1,000 houses of a dozen
// sizes and shapes, each a plan of its own.
func BenchmarkThousandHouses(b *testing.B) {
	var houses []*placement.Placement
	for i := range 12 {
		h := sample
		h.length, h.width, h.pitch = 384+float64(i)*24, 264+float64(i%4)*24, 4+float64(i%7)
		h.stories, h.windows = 1+i%2, i%4
		h.kind = []string{"gable", "hip", "gable"}[i%3]
		houses = append(houses, placed(b, h.plan()))
	}
	for b.Loop() {
		for i := range 1000 {
			if _, ds := Run(houses[i%len(houses)]); ds.Errors() {
				b.Fatal(ds)
			}
		}
	}
	b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N)/1000, "µs/house")
}
