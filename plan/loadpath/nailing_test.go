package loadpath_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/loadpath"
	"galewright/plan/nailing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// without runs the load path of an example with lines of its nailing taken
// out.
func without(t *testing.T, example string, lines ...plan.Connection) *loadpath.Report {
	t.Helper()
	src := loadpath.Source(t, example)
	if example == "marsh-wren.toml" {
		src = loadpath.HungOnJacks(t, src)
	}
	for _, c := range lines {
		line := regexp.MustCompile(`(?m)^` + string(c) + ` = .*\n`)
		require.True(t, line.Match(src), c)
		src = line.ReplaceAll(src, nil)
	}
	return reportOf(t, example, string(src))
}

// state says how each link of a check stands: its ID with what governs.
func state(r *loadpath.Report) map[string]string {
	out := map[string]string{}
	for _, l := range r.Links {
		mark := regexp.MustCompile(`\bN\d+\b`).ReplaceAllString(l.Governs(), "N")
		id := regexp.MustCompile(`, N\d+ .*`).ReplaceAllString(l.ID, "")
		if l.Gap != "" {
			mark = "gap"
		}
		out[l.Check.ID+" "+id] = mark
	}
	return out
}

// changed lists the links of two reports that differ.
func changed(a, b map[string]string) (out []string) {
	for id, s := range a {
		if b[id] != s {
			out = append(out, id)
		}
	}
	for id := range b {
		if _, ok := a[id]; !ok {
			out = append(out, id)
		}
	}
	slices.Sort(out)
	return out
}

// sheathed tells whether a wall has segments that count.
func sheathed(r *loadpath.Report, w *plan.Wall) bool {
	return slices.ContainsFunc(r.Lines, func(x *loadpath.LineShear) bool {
		return slices.ContainsFunc(x.Segments, func(g *loadpath.SegmentShear) bool { return g.Wall == w })
	})
}

// One line taken out of the demo house's nailing is missed exactly where it
// held something (headers not nailed to kings, which would hold them in place
// of the jacks): jacks at their kings, bottom plates at shear walls, splices
// in the top plates, rafters on the plates of the eaves. A line that no check counts changes nothing.
func TestANailingLineTakenOutIsMissedWhereItHeld(t *testing.T) {
	whole := without(t, "marsh-wren.toml", plan.HeaderToKing)
	before := state(whole)
	held := map[plan.Connection][]string{}
	for _, l := range whole.Links {
		switch c := l.Capacity; {
		case c == nil || c.Source != "ordered nailing":
		case l.Check.ID == "nailing-uplift":
			id, _, _ := strings.Cut(l.ID, ",")
			held[plan.JackToKing] = append(held[plan.JackToKing], "lift "+id, "nailing-uplift "+id)
		case l.Check.ID == "deck-shear" && strings.Contains(c.Governs, plan.RafterToPlate.Row().One):
			held[plan.RafterToPlate] = append(held[plan.RafterToPlate], "deck-shear "+l.ID)
		case l.Check.ID == "sole-shear":
			held[plan.SoleAtShearWall] = append(held[plan.SoleAtShearWall], "sole-shear "+l.ID)
		case l.Check.ID == "chord-splice":
			held[plan.TopPlateSplice] = append(held[plan.TopPlateSplice], "chord-splice "+l.ID)
			if sheathed(whole, l.Wall) { // the line's plates are then in two
				held[plan.TopPlateSplice] = append(held[plan.TopPlateSplice], "twist "+l.ID)
			}
		}
	}
	for _, c := range []plan.Connection{plan.JackToKing, plan.SoleAtShearWall, plan.TopPlateSplice, plan.RafterToPlate} {
		require.NotEmpty(t, held[c], c)
	}
	for _, c := range []plan.Connection{plan.JackToKing, plan.SoleAtShearWall, plan.TopPlateSplice, plan.CrippleToSill, plan.RafterToPlate, plan.RimToJoist} {
		slices.Sort(held[c])
		less := without(t, "marsh-wren.toml", plan.HeaderToKing, c)
		assert.Equal(t, held[c], changed(before, state(less)), c)
		if c != plan.SoleAtShearWall { // sole_to_floor takes its place
			assert.Regexp(t, "Not ordered, and counted for nothing: .*"+c.Row().One, strings.Join(less.Assumed, "\n"), c)
		}
	}
}

// Without jack to king nails each jack that a header hangs on is a gap, and
// with them each has a capacity and a ratio.
func TestJacksHangOnOrderedNails(t *testing.T) {
	whole, less := without(t, "marsh-wren.toml", plan.HeaderToKing), without(t, "marsh-wren.toml", plan.HeaderToKing, plan.JackToKing)
	jacks := 0
	for _, l := range whole.Links {
		if l.Check.ID != "nailing-uplift" {
			continue
		}
		jacks++
		require.NotNil(t, l.Capacity)
		assert.Contains(t, l.ID, "/jack@")
		assert.Positive(t, l.Demand)
		assert.Empty(t, l.Gap)
		assert.InDelta(t, l.Demand/l.Capacity.Value, l.Ratio, 1e-9)
		// One 10d common nail, mode IV at G 0.55: 128 lb (by equation, see
		// package nailing) x 1.6.
		assert.InDelta(t, 205, l.Capacity.Value/float64(l.Capacity.Pieces), 1)
	}
	require.Positive(t, jacks)
	assert.Zero(t, liftGapsOf(whole, "/jack@"))
	assert.Equal(t, jacks, liftGapsOf(less, "/jack@"))
}

func liftGapsOf(r *loadpath.Report, what string) (n int) {
	for _, l := range r.Links {
		if l.Check.ID == "lift" && strings.Contains(l.ID, what) && l.Demand > 0 {
			n++
		}
	}
	return n
}

// The load of two jacks goes to the king once, not twice.
func TestTwoJacksHandOneHeadersLoadOn(t *testing.T) {
	r := without(t, "marsh-wren.toml", plan.HeaderToKing)
	at := map[string]float64{}
	for _, l := range r.Links {
		if l.Check.ID == "nailing-uplift" {
			id, _, _ := strings.Cut(l.ID, ",")
			at[id] = l.Demand
		}
	}
	require.Positive(t, at["2N/jack@204.75"])
	assert.InDelta(t, at["2N/jack@204.75"], at["2N/jack@206.25"], 1e-9)
}

// With neither line, every segment on a floor is a gap; with the common line
// alone fewer nails hold them.
func TestBottomPlatesNeedOrderedNails(t *testing.T) {
	whole := without(t, "marsh-wren.toml")
	common := without(t, "marsh-wren.toml", plan.SoleAtShearWall)
	none := without(t, "marsh-wren.toml", plan.SoleAtShearWall, plan.SoleToFloor)
	count := func(r *loadpath.Report) (n, gaps int, least float64) {
		least = 1e9
		for _, l := range r.Links {
			if l.Check.ID != "sole-shear" {
				continue
			}
			n++
			if l.Gap != "" {
				gaps++
				assert.Contains(t, l.Gap, "sole_at_shear_wall")
			} else {
				least = min(least, l.Capacity.Value/l.Demand)
			}
		}
		return n, gaps, least
	}
	n, gaps, much := count(whole)
	assert.Positive(t, n)
	assert.Zero(t, gaps)
	m, gaps, little := count(common)
	assert.Equal(t, n, m)
	assert.Zero(t, gaps)
	assert.Less(t, little, much)
	m, gaps, _ = count(none)
	assert.Equal(t, n, m)
	assert.Equal(t, n, gaps)
}

// A splice in the lap by hand: 12 of 16d common through 1-1/2 in into 1-1/2 in.
// NDS 2018 12.3-6, mode IV, with p/10D = 1.5/1.62 on the table value (Table 12N
// footnote 3, transcribed), CD 1.6.
func TestSpliceNailsInTheLap(t *testing.T) {
	r := without(t, "marsh-wren.toml")
	n := 0
	for _, l := range r.Links {
		if l.Check.ID == "chord-splice" && l.Capacity != nil && l.Capacity.Source == "ordered nailing" {
			n++
			assert.InDelta(t, 12*154*1.5/1.62*1.6, l.Capacity.Value, 12*0.5*1.6)
		}
	}
	assert.Positive(t, n)
}

// Clips that end at a bottom plate over a floor go on through its nails, each
// stud's in the length that it serves; without an order that is a gap.
func TestClipsThatEndAtTheBottomPlate(t *testing.T) {
	whole, less := without(t, "sanderling.toml"), without(t, "sanderling.toml", plan.SoleToFloor)
	find := func(r *loadpath.Report) (out []*loadpath.Link) {
		for _, l := range r.Links {
			if l.Check.ID == "sill-anchors" && strings.HasSuffix(l.ID, ", bottom plate") {
				out = append(out, l)
			}
		}
		return out
	}
	with, bare := find(whole), find(less)
	require.NotEmpty(t, with)
	require.Len(t, bare, len(with))
	for i, l := range with {
		require.NotNil(t, l.Capacity, l.ID)
		assert.Equal(t, "ordered nailing", l.Capacity.Source)
		assert.Contains(t, bare[i].Gap, "sole_to_floor")
	}
}

// What a check counts of nails is on the schedule: same line, same number.
func TestCountedNailsAreOnTheSchedule(t *testing.T) {
	r := without(t, "marsh-wren.toml")
	marks := map[string]bool{}
	for _, l := range nailing.New(r.Placement.House).Lines {
		marks[l.Mark()] = true
	}
	n := 0
	for _, l := range r.Links {
		if l.Capacity != nil && l.Capacity.Source == "ordered nailing" {
			n++
			var text []string
			for _, x := range l.Capacity.Terms {
				text = append(text, x.Text)
			}
			said := regexp.MustCompile(`\bN\d+\b`).FindAllString(l.Capacity.Governs+" "+strings.Join(text, " "), -1)
			if l.Capacity.Mark != "" { // nails of one line; of several the terms name each
				said = append(said, l.Capacity.Mark)
			}
			assert.NotEmpty(t, said, l.ID)
			for _, mark := range said {
				assert.True(t, marks[mark], mark)
			}
		}
	}
	assert.Positive(t, n)
}

// The shed orders nothing: its report says that no nails count.
func TestNothingOrderedIsSaid(t *testing.T) {
	r := reported(t, "shed.toml", "")
	assert.Contains(t, strings.Join(r.Assumed, "\n"), "The plan orders none")
	for _, l := range r.Links {
		if l.Capacity != nil {
			assert.NotEqual(t, "ordered nailing", l.Capacity.Source)
		}
	}
}
