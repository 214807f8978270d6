package loadpath

import (
	"bufio"
	"bytes"
	"math"
	"slices"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/placement"
	"galewright/plan/units"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// printed is what a report writes of itself, a line each, without the rules under headings.
func printed(t *testing.T, u units.System, write func(printer)) []string {
	t.Helper()
	var out bytes.Buffer
	w := bufio.NewWriter(&out)
	write(printer{w, u})
	require.NoError(t, w.Flush())
	lines := strings.Split(strings.TrimSpace(out.String()), "\n")
	return slices.DeleteFunc(lines, func(s string) bool { return s != "" && strings.Trim(s, "-") == "" })
}

// A ratio has two places; one that is over 1 by a hair has three, and never reads 1.00. A gap
// has none, and is over any limit; a ratio at the limit is not over it.
func TestRatiosInWords(t *testing.T) {
	for _, c := range []struct {
		ratio       float64
		gap         string
		cell, text  string
		flag        string // against a limit of 1
		over, above bool
	}{
		{0.5, "", "0.50", "0.50", "  ", false, false},
		{0.996, "", "1.00", "1.00", "  ", false, false},
		{1, "", "1.00", "1.00", "  ", false, false},
		{1.0001, "", "1.001", "1.001", " >", true, true},
		{1.004, "", "1.004", "1.004", " >", true, true},
		{1.006, "", "1.01", "1.01", " >", true, true},
		{2.345, "", "2.35", "2.35", " >", true, true},
		{math.Inf(1), "none", "gap", "gap", " >", true, false},
		{0.4, "not known", "0.40", "gap", " >", true, false},
	} {
		l := &Link{Ratio: c.ratio, Gap: c.gap}
		if c.gap == "" {
			l.Capacity = &Capacity{Value: 1}
		}
		assert.Equal(t, c.cell, ratioCell(l), "%v", c)
		assert.Equal(t, c.text, l.RatioText(), "%v", c)
		assert.Equal(t, c.flag, flag(l, 1), "%v", c)
		assert.Equal(t, c.over, l.Over(1), "%v", c)
		assert.Equal(t, c.above, l.above(1), "%v", c)
		want := "ratio " + c.text
		if c.gap != "" {
			want = "gap"
		}
		assert.Equal(t, want, ratioText(l))
	}
	for _, c := range []struct {
		held *Capacity
		want string
	}{{nil, "-"}, {&Capacity{Unknown: "no nails"}, "-"}, {&Capacity{Value: 1234.6}, "1235"}} {
		assert.Equal(t, c.want, strings.ReplaceAll(capText(units.Imperial, &Link{Unit: "lb", Capacity: c.held}), ",", ""))
	}
}

// Of five links two are gaps and one is over 1: that fails at 1, and without gaps at 1 but
// not at 1.5; a report without numbers fails.
func TestWhatALimitCounts(t *testing.T) {
	held := &Capacity{Value: 1}
	ok, over := &Link{Ratio: 1, Capacity: held}, &Link{Ratio: 1.2, Capacity: held}
	gap := &Link{Ratio: math.Inf(1), Gap: "none"}
	for _, c := range []struct {
		links       []*Link
		missing     string
		limit       float64
		gaps, above int
		failed      bool
	}{
		{[]*Link{ok, gap, over, gap, ok}, "", 1, 2, 1, true},
		{[]*Link{ok, gap, over, gap, ok}, "", 1.5, 2, 0, true},
		{[]*Link{ok, over}, "", 1, 0, 1, true},
		{[]*Link{ok, over}, "", 1.5, 0, 0, false},
		{[]*Link{ok}, "", 1, 0, 0, false},
		{nil, "no wind speed", 1, 0, 0, true},
	} {
		r := &Report{Links: c.links, Missing: c.missing}
		gaps, above := r.measured(c.limit)
		assert.Equal(t, [2]int{c.gaps, c.above}, [2]int{gaps, above}, "%v", c)
		assert.Equal(t, c.failed, r.Failed(c.limit), "%v", c)
	}
	r := &Report{Links: []*Link{ok, gap, over, gap}}
	assert.Equal(t, "2 gaps beside these: check --loads", r.gapLine())
}

// A check's list counts its places and those with demand, and has a line of each of these; a
// check without places is left out, one without demand has its heading alone.
func TestAChecksListInWords(t *testing.T) {
	c, other := &Check{ID: "x-tie", Title: "Ties", Doc: "What ties."}, &Check{ID: "y-tie"}
	link := func(c *Check, id string, lb float64) *Link {
		return &Link{Check: c, ID: id, Unit: "lb", Demand: lb, Ratio: lb / 400, Capacity: &Capacity{Value: 400, Governs: "nails"}, Where: "wall S", Notes: []string{"a note"}}
	}
	r := &Report{Links: []*Link{link(c, "A", 200), link(other, "B", 300), link(c, "C", 0), link(c, "D", 600)}}
	got := printed(t, units.Imperial, func(p printer) { r.writeCheck(p, c, 1) })
	require.Len(t, got, 7, "%q", got)
	assert.Contains(t, got[0], "Ties (x-tie): 3 places, 2 with demand")
	assert.Contains(t, got[1], "What ties.")
	assert.Equal(t, []string{"A", "200", "400", "0.50", "nails;", "wall", "S"}, strings.Fields(got[3]))
	assert.Equal(t, []string{"a", "note"}, strings.Fields(got[4]))
	assert.Equal(t, []string{"D", "600", "400", "1.50", ">", "nails;", "wall", "S"}, strings.Fields(got[5]))
	assert.Equal(t, []string{""}, printed(t, units.Imperial, func(p printer) { r.writeCheck(p, &Check{ID: "z"}, 1) }))
	r.Links = []*Link{link(c, "C", 0)}
	got = printed(t, units.Imperial, func(p printer) { r.writeCheck(p, c, 1) })
	assert.Len(t, got, 2)
	assert.Contains(t, got[0], "1 place, 0 with demand")
}

// Forces are printed whole, pressures to the tenth and all else to the hundredth; shares in
// whole percent.
func TestNumbersByTheirUnit(t *testing.T) {
	for unit, want := range map[string]string{"psf": "12.3", "lb": "12", "plf": "12", "lb-ft": "12", "stories": "12", "in": "12.35", "": "12.35"} {
		assert.Equal(t, want, Number(units.Imperial, 12.346, unit), unit)
	}
	assert.Equal(t, "33%", percent(1./3))
	assert.Equal(t, "150%", percent(1.5))
}

// Speeds at which wind overtakes what: under the least and over the most that was looked at
// are marked; what is never overtaken within these is not counted.
func TestOvertakenInWords(t *testing.T) {
	list := []Overtaken{{Speed: 60, Under: true}, {Speed: 98.6}, {Speed: 150}, {Speed: 375, Over: true}}
	for i, want := range []string{"<  60", "   99", "  150", "> 375"} {
		assert.Contains(t, list[i].speedText(units.Imperial), want)
	}
	for mph, n := range map[float64]int{50: 0, 60: 1, 100: 2, 149: 2, 150: 3, 375: 3, 400: 3} {
		assert.Equal(t, n, Reached(list, mph), "%v", mph)
	}
	got := printed(t, units.Imperial, func(p printer) { writeReached(p, 150, list, list[:2], "a shutter out") })
	require.Len(t, got, 11, "%q", got)
	assert.Contains(t, got[0], "of 4")
	assert.Equal(t, "105 mph 2 2 with a shutter out", strings.Join(strings.Fields(got[1]), " "), "0.7 of 150")
	assert.Equal(t, "150 mph 3 2 with a shutter out design", strings.Join(strings.Fields(got[4]), " "))
	for i := range list {
		list[i].Link = &Link{Check: &Check{Title: "tie"}, ID: "J", Capacity: &Capacity{Mark: "clip", Governs: "steel"}}
	}
	list[1].Link = &Link{Check: &Check{Title: "a longer tie"}, ID: "JJ-12", Capacity: &Capacity{Governs: "steel"}}
	r := &Report{}
	got = printed(t, units.Imperial, func(p printer) { r.writeFirst(p, "First", list, 2) })
	require.Len(t, got, 3, "the heading and two")
	assert.True(t, strings.HasSuffix(got[1], "  tie           J      clip"), got[1])
	assert.True(t, strings.HasSuffix(got[2], "  a longer tie  JJ-12  steel"), got[2])
	assert.Contains(t, got[2], " 2 ")
	got = printed(t, units.Imperial, func(p printer) { r.writeFirst(p, "First", nil, 2) })
	assert.Equal(t, "  nothing that has a capacity", got[1])
}

// Links of one check at one place are told apart by their order.
func TestLinksOfOneNameAreKept(t *testing.T) {
	c := &Check{ID: "x"}
	a, b, d := &Link{Check: c, ID: "A"}, &Link{Check: c, ID: "A"}, &Link{Check: c, ID: "A", Host: "H"}
	got := keyed([]*Link{a, b, d})
	require.Len(t, got, 3)
	assert.Same(t, a, got[linkKey{check: "x", id: "A"}])
	assert.Same(t, b, got[linkKey{check: "x", id: "A", nth: 1}])
	assert.Same(t, d, got[linkKey{check: "x", id: "A", host: "H"}])
}

// A rafter 30 in along a porch beam with posts at 0 and 100 gives seven tenths to the joints of
// the first post and three tenths to the other's; past an end all to one. It is what the
// workings say of a reaction.
func TestTheShareOfAPost(t *testing.T) {
	porch := &plan.Porch{Name: "P"}
	a, b := &porchPost{porch: porch, cap: &framing.Joint{}, base: &framing.Joint{}}, &porchPost{n: 1, porch: porch, station: 100, cap: &framing.Joint{}}
	m := &model{porches: []*porchPost{a, b}}
	for at, want := range map[float64][2]float64{30: {0.7, 0.3}, 0: {1, 0}, 100: {0, 1}, 120: {0, 1}, -9: {1, 0}} {
		rafter := &framing.Joint{Host: "P", Station: at}
		assert.InDelta(t, want[0], m.shareOfPost(rafter, a.cap), 1e-9, "%v", at)
		assert.InDelta(t, want[0], m.shareOfPost(rafter, a.base), 1e-9, "%v", at)
		assert.InDelta(t, want[1], m.shareOfPost(rafter, b.cap), 1e-9, "%v", at)
		assert.Zero(t, m.shareOfPost(rafter, &framing.Joint{}), "of no post")
		assert.Zero(t, m.shareOfPost(&framing.Joint{Host: "Q", Station: at}, a.cap), "of another porch")
	}
}

// How a stretch of deck goes: between two lines, or past one.
func TestSpansOfADeckInWords(t *testing.T) {
	for lines, want := range map[[2]string]string{
		{"W", "E"}: "a simple beam between the lines W and E", {"", "E"}: "a cantilever past the line E", {"W", ""}: "a cantilever past the line W",
	} {
		assert.Equal(t, want, Bay{Lines: lines}.spans())
	}
	assert.Equal(t, `x = 1'-0" to 8'-0"`, Bay{Axis: 1, Lo: 12, Hi: 96}.stretch(units.Imperial))
	assert.Equal(t, `y = 1'-0" to 8'-0"`, Bay{Axis: 0, Lo: 12, Hi: 96}.stretch(units.Imperial))
	r := &Report{Placement: &placement.Placement{House: &framing.House{Plan: &plan.Plan{}}}}
	r.Placement.House.Plan.Site.WindSpeed = 150
	assert.InDelta(t, 150, r.design(), 0)
}
