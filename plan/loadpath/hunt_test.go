package loadpath

import (
	"math"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The tests of this file guard against mistakes that would lower a demand or
// raise a capacity; the reason is statics unless a source is named.

func TestWeightRelievesAPileOnce(t *testing.T) {
	// Heavy walls have weight left over from uplift. It reaches the pile with
	// the studs' forces; taken off the end tension too it would count twice.
	heavy := sample
	heavy.loads = "[loads]\ndead = [{ part = \"wall\", name = \"stucco\", weight = \"30 psf\" }]\n"
	a := analyzed(t, heavy.plan())
	left := 0.0
	for _, x := range a.lateral.lines {
		for _, s := range x.Segments {
			if s.base && s.Wall.Level.Index == 0 {
				left += a.relief(s.Segment)
			}
		}
	}
	require.Greater(t, left, 1000.0, "the walls are heavy enough to tell")
	checked := 0
	pulls := a.overturnedPiles()
	for _, l := range overturnedAtPiles(&Check{}, a) {
		lifts := 0.0
		for _, row := range pulls[l.Joint] {
			lifts = math.Max(lifts, math.Max(row[0], row[1]))
		}
		rows := pulls[l.Joint]
		// Case 3 of the directional procedure: 0.75 of both axes.
		lifts = math.Max(lifts, 0.75*(math.Max(rows[0][0], rows[0][1])+math.Max(rows[1][0], rows[1][1])))
		p := a.peaks[l.Joint]
		near(t, math.Max(0, lifts+ASD.W*p.force.W-ASD.D*p.force.D), l.Demand, 1e-9, l.ID)
		checked++
	}
	require.Positive(t, checked)
}

func TestPileUnderACornerTakesBothWinds(t *testing.T) {
	// ASCE 7-10 Fig. 27.4-8 (read), case 3: 0.75 of the full pressure on both axes.
	o := overturned{{1000, 400}, {200, 800}}
	lb, wind := o.most(true)
	assert.InDelta(t, 0.75*1800, lb, 1e-9)
	assert.Contains(t, wind, "both axes")
	lb, wind = o.most(false)
	assert.Equal(t, 1000.0, lb)
	assert.Equal(t, "wind from W", wind)
	lb, _ = overturned{{1000, 0}, {100, 0}}.most(true)
	assert.Equal(t, 1000.0, lb, "825 is less")
}

func TestRidgeTieFollowsTheSlope(t *testing.T) {
	// Statics: a tie bent over the ridge lies along the rafters, so its level
	// part is its tension times cos of the slope.
	r, _ := loadsOf(placed(t, sample.plan()))
	k := math.Hypot(1, sample.pitch/12)
	seen := 0
	for _, l := range r.Links {
		if l.Check.ID == "ridge-tie" && l.Demand > 0 {
			near(t, r.work.peaks[l.Joint].demand*k, l.Demand, 1e-9, l.ID)
			seen++
		}
	}
	require.Positive(t, seen)
}

func TestCornerZonePushesHarder(t *testing.T) {
	// ASCE 7-22 Fig. 30.3-1: zone 5 lies within a of the corners.
	a := analyzed(t, sample.plan())
	var w *plan.Wall
	for _, x := range a.plan.Walls {
		if x.Name == "2S" {
			w = x
		}
	}
	at := func(s float64) float64 {
		return a.acrossWall(&framing.Joint{Wall: w, Station: s, Tributary: 16})
	}
	assert.Greater(t, at(12), 1.05*at(w.Length()/2))
	assert.Greater(t, at(w.Length()-12), 1.05*at(w.Length()/2))
}

// onSlab is a one-story house on a slab with clips and bolts at its sill.
func onSlab(shear string) string {
	b := sample
	b.stories, b.piles, b.floor, b.windows, b.shear = 1, false, 0, 0, false
	text := strings.Replace(b.plan(), "[[roof]]", "[foundation]\nkind = \"slab\"\n[[roof]]", 1)
	text = strings.Replace(text, "studs = \"2x6 @ 16in\"\n", "studs = \"2x6 @ 16in\"\n"+shear, 1)
	return text + `
[[item]]
mark = "sill-clip"
kind = "clip"
thickness = "19 ga"
nails = { type = "8d x 1 1/2", to_stud = 4, to_plate = 7 }
[[rule]]
at = "stud-base"
use = "sill-clip"
`
}

const sillBolts = `
[[item]]
mark = "bolt"
kind = "anchor bolt"
length = "12in"
rod = "5/8in"
washer = "3in"
[[rule]]
at = "stud-base"
use = "bolt"
at_most = "4'"
`

func TestBoltsTakeWhatTheClipsBring(t *testing.T) {
	r, _ := loadsOf(placed(t, onSlab("")+sillBolts))
	brought, held := map[string]float64{}, map[string]float64{}
	for _, l := range r.Links {
		switch l.Check.ID {
		case "base-uplift":
			brought[l.Wall.Name] += l.Demand
			assert.NotContains(t, l.Governs(), "washer", "%s: a bolt holds no stud", l.ID)
		case "sill-anchors":
			held[l.Wall.Name] += l.Demand
		}
	}
	require.Greater(t, brought["1S"], 1000.0)
	require.Positive(t, pried(t, r, "1S"))
	for w, lb := range brought {
		near(t, lb+pried(t, r, w), held[w], 1e-9, "wall %s", w)
	}
	r, _ = loadsOf(placed(t, onSlab("")))
	gaps := 0
	for _, l := range r.Links {
		if l.Check.ID == "sill-anchors" && l.Gap != "" {
			gaps++
		}
	}
	assert.GreaterOrEqual(t, gaps, 2, "clips end at a plate that nothing holds")
}

// pried is what the plate of a wall presses down where it turns about a bolt: what its ends
// beyond the outer bolts pull by their lever, over themselves.
func pried(t *testing.T, r *Report, wall string) (lb float64) {
	a := r.work
	for _, w := range a.plan.Walls {
		p := a.byWall[w]
		if w.Name != wall || p == nil {
			continue
		}
		for _, run := range a.plateRuns(w, a.bolts(w), a.plateLifts(p, a.piercedSegments()[w])) {
			n := len(run.bolts)
			if n < 2 {
				continue
			}
			first, second := run.bolts[0].Station, run.bolts[1].Station
			last, before := run.bolts[n-1].Station, run.bolts[n-2].Station
			for _, f := range run.lifts {
				lb += f.lb * math.Max(0, first-f.station) / (second - first)
				lb += f.lb * math.Max(0, f.station-last) / (last - before)
			}
		}
	}
	return lb
}

func TestPerforatedWallLiftsItsPlate(t *testing.T) {
	// SDPWS 2021 4.3.6.4.2.1 (transcribed): t equals the largest unit shear.
	sum := func(shear string) (lb float64) {
		r, _ := loadsOf(placed(t, onSlab(shear)+sillBolts))
		lb = -pried(t, r, "1S")
		for _, l := range r.Links {
			if l.Check.ID == "sill-anchors" && l.Wall.Name == "1S" {
				lb += l.Demand
			}
		}
		return lb
	}
	pierced := `shear = [{ name = "A", from = "0in", to = "240in", panel = "15/32", nail = "8d common", edge = "4in", perforated = true }]` + "\n"
	r, _ := loadsOf(placed(t, onSlab(pierced)+sillBolts))
	var seg *SegmentShear
	for _, x := range r.Lines {
		for _, s := range x.Segments {
			seg = s
		}
	}
	require.NotNil(t, seg)
	near(t, sum(strings.Replace(pierced, ", perforated = true", "", 1))+seg.Demand*20, sum(pierced), 1e-6, "20 ft of t besides the studs' uplift")
}

func TestRakeWallTakesShearAtItsSlope(t *testing.T) {
	// The roof's deck meets a gable wall along the rake: its shear turns the
	// segment over from there, not from the eaves' height.
	b := sample
	b.stories, b.windows, b.rake = 1, 0, 0
	text := b.plan()
	raked := strings.Replace(text, "name = \"1E\"\n", "name = \"1E\"\ntop = \"rake\"\n", 1)
	require.NotEqual(t, text, raked)
	find := func(a *analysis) *SegmentShear {
		for _, x := range a.lateral.lines {
			for _, s := range x.Segments {
				if s.Wall.Name == "1E" {
					return s
				}
			}
		}
		return nil
	}
	flat, rake := find(analyzed(t, text)), find(analyzed(t, raked))
	// From 6 in to a third of the wall's 288 in: the middle lies 51 in from the
	// corner, where a roof of 6:12 has risen 25-1/2 in.
	assert.InDelta(t, 25.5, rake.Height-flat.Height, 8)
	// Nothing is placed at its ends: from the middle of the post at 96 - 3/4 in to that
	// of the one beside the corner at 6-1/4.
	near(t, flat.V*rake.Height/(96-0.75-6.25), rake.Lifts, 1e-9, "end tension")
	assert.Greater(t, rake.Tallest, rake.Height)
}

func TestEndTensionOverNoSegmentGoesOnDown(t *testing.T) {
	// A segment of the upper story that stands over none: its end tension is
	// asked of the post below and of the piles.
	text := sample.plan()
	i := strings.Index(text, "name = \"1S\"")
	j := i + strings.Index(text[i:], "shear = ")
	k := j + strings.Index(text[j:], "\n")
	shifted := text[:j] + strings.Replace(text[j:k], "from = \"6in\"", "from = \"60in\"", 1) + text[k:]
	require.NotEqual(t, text, shifted)
	count := func(text string) (feet int, piles float64) {
		a := analyzed(t, text)
		for _, l := range overturning(&Check{}, a) {
			if strings.Contains(l.ID, "below its") {
				feet++
				assert.Positive(t, l.Demand, l.ID)
			}
		}
		for _, p := range a.pilePulls() {
			if p.axis == 0 && p.sense == 0 {
				piles += p.lb
			}
		}
		return feet, piles
	}
	feet, _ := count(text)
	assert.Zero(t, feet)
	feet, piles := count(shifted)
	assert.Equal(t, 2, feet)
	a := analyzed(t, shifted)
	want := 0.0
	for _, x := range a.lateral.lines {
		for _, s := range x.Segments {
			if x.Axis == 0 && (s.Wall.Level.Index == 0 || s.Wall.Name == "2S") {
				want += ASD.W * s.Lifts
				if s.Wall.Level.Index == 0 { // and the couple of its shear down to the girder's middle
					want += ASD.W * s.V * (12 + 11.25/2) / s.Lever
				}
			}
		}
	}
	near(t, want, piles, 1e-9, "both stories' tension reaches the piles")
}

func TestShearThatNothingHoldsIsAGap(t *testing.T) {
	gaps := func(text string) (out []string) {
		r, _ := loadsOf(placed(t, text))
		for _, l := range r.Links {
			if l.Check.ID == "story-shear" {
				assert.NotEmpty(t, l.Gap)
				assert.Positive(t, l.Demand)
				out = append(out, l.ID)
			}
		}
		return out
	}
	assert.Empty(t, gaps(sample.plan()))
	bare := sample
	bare.shear = false
	assert.ElementsMatch(t, []string{"story first, along x", "story first, along y", "story second, along x", "story second, along y"}, gaps(bare.plan()))
	// 24 in of a wall 109 in high is more than 3.5 to 1 and counts for nothing
	// (SDPWS Table 4.3.4, read in an answer on it that names no edition).
	narrow := strings.ReplaceAll(sample.plan(), `to = "160in"`, `to = "30in"`)
	assert.Contains(t, gaps(narrow), "line 1S")
}

func TestClipOverAFloorEndsAtThePlate(t *testing.T) {
	// A stud clipped to a bottom plate that lies on joists: the plate itself is
	// tied to nothing below, however strong the clip. A strap goes past it.
	clip := sample.plan() + `
[[item]]
mark = "foot-clip"
kind = "clip"
thickness = "19 ga"
nails = { type = "8d x 1 1/2", to_stud = 4, to_plate = 7 }
[[rule]]
at = "stud-base"
use = "foot-clip"
`
	count := func(text string) (n int) {
		r, _ := loadsOf(placed(t, text))
		for _, l := range r.Links {
			if l.Check.ID == sillCheck && strings.Contains(l.Gap, "clips end") {
				assert.Positive(t, l.Demand)
				n++
			}
		}
		return n
	}
	assert.GreaterOrEqual(t, count(clip), 2, "both eaves' walls")
	assert.Zero(t, count(strings.Replace(clip, "use = \"foot-clip\"", "use = \"strap\"", 1)))
}
