package hardware

import (
	"math"
	"testing"

	"galewright/plan"
	"galewright/plan/units"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// How many ends a piece of each kind has: two, but for what a rod or a footing
// holds, which has one, and for panels, nailed all round.
func TestHowManyEndsAKindHas(t *testing.T) {
	one := map[plan.ItemKind]int{plan.HoldDownItem: 1, plan.AnchorBoltItem: 1, plan.AnchorRodItem: 1, plan.BraceRodItem: 1, plan.PostBaseItem: 1, plan.SheathingItem: 0}
	for _, k := range Kinds {
		want, ok := one[k.Name]
		if !ok {
			want = 2
		}
		assert.Equal(t, want, k.places(), k.Name)
	}
}

// Each end has its own count and holes: of two flanges of a post base, both nailed to
// the one post, 4 nails in 6 holes are 8 in 12; of a cap's two halves they are 4 in 6
// each.
func TestCountAndHolesOfEachEnd(t *testing.T) {
	type end struct{ count, holes, parts int }
	for _, c := range []struct {
		kind plan.ItemKind
		f    plan.Fasteners
		want []end
	}{
		{plan.PostBaseItem, plan.Fasteners{Part: "each flange", Count: 4, Holes: 6, Parts: 2}, []end{{8, 12, 1}}},
		{plan.PostBaseItem, plan.Fasteners{Part: "each flange", Count: 4, Holes: 6, Parts: 3}, []end{{12, 18, 1}}},
		{plan.PostBaseItem, plan.Fasteners{Part: "to post", Count: 4, Holes: 6}, []end{{4, 6, 1}}},
		{plan.HoldDownItem, plan.Fasteners{Part: "to post", Count: 14, Holes: 20, Parts: 1}, []end{{14, 20, 1}}},
		{plan.PostCapItem, plan.Fasteners{Part: "each half", Count: 4, Holes: 6, Parts: 2}, []end{{4, 6, 1}, {4, 6, 1}}},
		{plan.StrapItem, plan.Fasteners{Part: "all", Count: 14, Holes: 20, Parts: 1}, []end{{7, 10, 1}, {7, 10, 1}}},
		{plan.SheathingItem, plan.Fasteners{Part: "edge", Count: 9, Holes: 12, Parts: 2}, []end{{9, 12, 1}, {9, 12, 1}}},
	} {
		it, _ := made(t, c.kind, c.f)
		var got []end
		for _, e := range it.Ends() {
			got = append(got, end{e.Count, e.Holes, e.Parts})
		}
		assert.Equal(t, c.want, got, "%s: %+v", c.kind, c.f)
	}
}

// An item made without the checks, whose nails were never read, tells of their size
// what its fasteners say.
func TestSizeOfAnUncheckedEnd(t *testing.T) {
	f := plan.Fasteners{Part: "to stud", Nail: "our own", Diameter: 0.2, Length: 2, Coating: plan.HotDip, Count: 3, Parts: 1}
	read := Nail{Name: "read", Diameter: 0.148, Length: 3}
	for _, c := range []struct {
		nails []Nail
		want  []Nail
	}{
		{nil, []Nail{{Name: "our own", Diameter: 0.2, Length: 2, Coating: plan.HotDip}, {Name: "our own", Diameter: 0.2, Length: 2, Coating: plan.HotDip}}},
		{[]Nail{read}, []Nail{read, {Name: "our own", Diameter: 0.2, Length: 2, Coating: plan.HotDip}}},
		{[]Nail{read, read}, []Nail{read, read}},
	} {
		it := &Item{Item: &plan.Item{Fasteners: []plan.Fasteners{f, f}}, Nails: c.nails}
		var got []Nail
		for _, e := range it.Ends() {
			got = append(got, e.Size)
		}
		assert.Equal(t, c.want, got)
	}
}

// Which counts are taken as of the whole piece and halved: one that names no place, or
// all of it, of a piece of two ends. What names its place, or is given twice, is left;
// a strap or a pair then wants two.
func TestWhichCountsAreHalved(t *testing.T) {
	for _, c := range []struct {
		name  string
		kind  plan.ItemKind
		fs    []plan.Fasteners
		each  []int // fasteners of each end
		codes []string
		mend  string
	}{
		{"no place named", "clip", []plan.Fasteners{{Count: 8, Parts: 1}}, []int{4, 4}, []string{"count-shared"}, "if that is so, write each_leg = 4"},
		{"all of it", "hanger", []plan.Fasteners{{Part: "all", Count: 10, Parts: 1}}, []int{5, 5}, []string{"count-shared"}, `to_joist and to_beam, or part = "each half", count = 5, parts = 2`},
		{"of a cap", "post cap", []plan.Fasteners{{Count: 6}}, []int{3, 3}, []string{"count-shared"}, `to_post and to_beam, or part = "each half", count = 3, parts = 2`},
		{"of a generic piece", "generic", []plan.Fasteners{{Count: 6}}, []int{3, 3}, []string{"count-shared"}, `write part = "each half", count = 3, parts = 2`},
		{"of a ridge strap", "ridge strap", []plan.Fasteners{{Count: 6}}, []int{3, 3}, []string{"count-shared"}, "each_end = 3"},
		{"two at each, no place named", "clip", []plan.Fasteners{{Count: 8, Parts: 2}}, []int{8, 8}, nil, ""},
		{"one leg named", "clip", []plan.Fasteners{{Part: "to stud", Count: 8, Parts: 1}}, []int{8}, nil, ""},
		{"two counts", "clip", []plan.Fasteners{{Part: "all", Count: 8, Parts: 1}, {Part: "to stud", Count: 3, Parts: 1}}, []int{8, 3}, nil, ""},
		{"of a hold-down", "hold-down", []plan.Fasteners{{Part: "all", Count: 8, Parts: 1}}, []int{8}, nil, ""},
		{"one end of a pair", "hold-down pair", []plan.Fasteners{{Part: "to post", Count: 8, Parts: 1}}, []int{8}, []string{"not-two-ends"}, `write part = "each body", count = 8, parts = 2, or one count for each end`},
		{"three ends of a strap", "strap", []plan.Fasteners{{Part: "each end", Count: 5, Parts: 2}, {Part: "to plate", Count: 3, Parts: 1}}, []int{5, 5, 3}, []string{"not-two-ends"}, "write each_end = 5, or one count for each end"},
		{"no count at all", "strap", []plan.Fasteners{{Part: "to stud", Parts: 1}}, []int{0}, []string{"no-count"}, "give the number of nails in that part"},
		{"one of two without a count", "strap", []plan.Fasteners{{Part: "to stud", Count: 4, Parts: 2}, {Part: "to plate", Parts: 1}}, []int{4, 4, 0}, []string{"no-count"}, "give the number of nails in that part"},
		{"no count of the whole", "strap", []plan.Fasteners{{Part: "all", Parts: 1}}, []int{0}, []string{"no-count"}, ""},
	} {
		src := &plan.Item{Mark: "it", Kind: c.kind, Width: 2.25, Gauge: "20", Rod: 0.5, Standoff: 1.25, Center: 1.3125, Fasteners: c.fs, Pos: plan.Pos{File: "t.toml", Line: 7, Col: 1}}
		if KindNamed(c.kind).Strap {
			src.Length = 33
		}
		for i := range src.Fasteners {
			src.Fasteners[i].Nail = "10d x 1 1/2"
		}
		cat, ds := New([]*plan.Item{src})
		require.Equal(t, c.codes, codesOf(ds), "%s: %v", c.name, ds)
		var each []int
		for _, e := range cat.Items[0].Ends() {
			each = append(each, e.Count)
		}
		assert.Equal(t, c.each, each, c.name)
		if len(ds) > 0 {
			assert.Contains(t, ds[0].Mend, c.mend, c.name)
			assert.Equal(t, 7, ds[0].Pos.Line, "%s: fasteners without a line of their own are told at the item's", c.name)
		}
	}
}

// What does not divide is left as it was written, so that nothing is counted that the
// plan does not say.
func TestAnOddCountIsLeft(t *testing.T) {
	for _, c := range []struct {
		count, holes int
		says         string
	}{{13, 0, "13 fasteners"}, {13, 15, "13 fasteners"}, {12, 15, "15 holes"}, {13, 16, "13 fasteners"}} {
		it, codes := made(t, "strap", plan.Fasteners{Part: "all", Count: c.count, Holes: c.holes, Parts: 1})
		assert.Equal(t, []string{"odd-count"}, codes)
		f := it.Fasteners[0]
		assert.Equal(t, [3]int{c.count, c.holes, 1}, [3]int{f.Count, f.Holes, f.Parts})
		assert.Equal(t, "all", f.Part)
	}
}

// A fault of the fasteners is told where they are written.
func TestFaultsOfNailsAreToldAtTheNails(t *testing.T) {
	at := plan.Pos{File: "t.toml", Line: 12, Col: 3}
	it := good()
	it.Fasteners = []plan.Fasteners{{Part: "to stud", Nail: "10d x 1 1/2", Count: 5, Parts: 1, Pos: at}}
	_, ds := New([]*plan.Item{it})
	require.Equal(t, []string{"not-two-ends"}, codesOf(ds))
	assert.Equal(t, at, ds[0].Pos)
	assert.Contains(t, ds[0].Summary, "a strap has two ends, and its nails are given for 1")
}

// Of two items of one mark in one file the first stands, also before a third; a later
// file's takes its place in the order.
func TestWhichOfTwoItemsStands(t *testing.T) {
	item := func(mark, file string, line int, length float64) *plan.Item {
		it := good()
		it.Mark, it.Length, it.Pos = mark, length, plan.Pos{File: file, Line: line, Col: 1}
		return it
	}
	c, ds := New([]*plan.Item{item("a", "t.toml", 1, 36), item("a", "t.toml", 2, 48), item("b", "t.toml", 3, 30), item("a", "t.toml", 4, 60)})
	require.Equal(t, []string{"mark-twice", "mark-twice"}, codesOf(ds))
	assert.Equal(t, []string{"a", "b"}, c.Marks())
	assert.Equal(t, 36.0, c.Item("a").Length)
	assert.Equal(t, 36.0, c.Items[0].Length)
	for i, line := range []int{2, 4} {
		assert.Equal(t, line, ds[i].Pos.Line)
		assert.Contains(t, ds[i].Summary, "first at line 1")
	}

	c, ds = New([]*plan.Item{item("a", "catalog.toml", 1, 36), item("b", "catalog.toml", 2, 30), item("a", "plan.toml", 9, 48)})
	require.Empty(t, ds)
	assert.Equal(t, []string{"a", "b"}, c.Marks(), "in the place of the one that it stands for")
	assert.Equal(t, 48.0, c.Items[0].Length)
	assert.Equal(t, 48.0, c.Item("a").Length)
}

// An item that cannot be known is left out, with all that can be said of it; what
// follows is read.
func TestItemsThatCannotBeKnownAreLeftOut(t *testing.T) {
	bare := good()
	bare.Mark, bare.Kind = "", "strp"
	c, ds := New([]*plan.Item{bare, good()})
	assert.Equal(t, []string{"no-mark", "unknown-word"}, codesOf(ds))
	for _, d := range ds {
		assert.Equal(t, "item without a mark", d.Where)
	}
	assert.Equal(t, []string{"wall-strap"}, c.Marks())
	odd := good()
	odd.Phase, odd.Face = "later", plan.Inside
	c, ds = New([]*plan.Item{odd})
	require.Equal(t, []string{"unknown-word"}, codesOf(ds))
	assert.Equal(t, "item wall-strap", ds[0].Where)
	assert.Equal(t, plan.BeforeSheathing, c.Items[0].Phase.Name, "the kind's phase is taken meanwhile")
	assert.Equal(t, plan.Inside, c.Items[0].Face, "the item's own face counts")
}

// 20 gauge plain sheet is 0.0359 in (manufacturers' standard gauge, transcribed), however it
// is written; where the item gives a thickness that counts.
func TestThicknessOfAGauge(t *testing.T) {
	for _, c := range []struct {
		gauge string
		given float64
		want  float64
	}{{"20", 0, 0.0359}, {"20 ga", 0, 0.0359}, {"20ga", 0, 0.0359}, {"20", 0.05, 0.05}, {"", 0.05, 0.05}} {
		it := good()
		it.Gauge, it.Thickness = c.gauge, c.given
		cat, ds := New([]*plan.Item{it})
		require.Empty(t, ds, "%+v", c)
		assert.InDelta(t, c.want, cat.Items[0].Thickness, 1e-9, "%+v", c)
	}
}

// A size that the item gives stands for that of its name; a name that says nothing needs
// a diameter, and a length alone is none.
func TestWhichSizeOfANailCounts(t *testing.T) {
	for _, c := range []struct {
		nail             string
		diameter, length float64
		want             [2]float64
		codes            []string
	}{
		{"10d x 1 1/2", 0, 0, [2]float64{0.148, 1.5}, nil},
		{"10d x 1 1/2", 0, 2.5, [2]float64{0.148, 2.5}, nil},
		{"10d x 1 1/2", 0.135, 0, [2]float64{0.135, 1.5}, nil},
		{"our own", 0.2, 2, [2]float64{0.2, 2}, nil},
		{"our own", 0.2, 0, [2]float64{0.2, 0}, nil},
		{"our own", 0, 2, [2]float64{0, 2}, []string{"unknown-nail"}},
	} {
		it := good()
		it.Fasteners[0].Nail, it.Fasteners[0].Diameter, it.Fasteners[0].Length, it.Fasteners[0].Coating = c.nail, c.diameter, c.length, plan.HotDip
		cat, ds := New([]*plan.Item{it})
		require.Equal(t, c.codes, codesOf(ds), "%+v", c)
		n, f := cat.Items[0].Nails[0], cat.Items[0].Fasteners[0]
		assert.Equal(t, c.want, [2]float64{n.Diameter, n.Length}, "%+v", c)
		assert.Equal(t, c.want, [2]float64{f.Diameter, f.Length}, "%+v", c)
		assert.Equal(t, plan.HotDip, n.Coating)
	}
}

// Numbers that every item may have, each below zero, and none at all.
func TestLengthsAreRefusedBelowZero(t *testing.T) {
	for key, set := range map[string]func(*plan.Item, float64){
		"length": func(i *plan.Item, v float64) { i.Length = v },
		"width":  func(i *plan.Item, v float64) { i.Width = v },
		"lap":    func(i *plan.Item, v float64) { i.Lap = v },
		"coil":   func(i *plan.Item, v float64) { i.Kind, i.Coil = plan.CoilStrapItem, v },
	} {
		for _, bad := range []float64{-0.001, math.NaN(), math.Inf(1), math.Inf(-1)} {
			it := good()
			set(it, bad)
			_, ds := New([]*plan.Item{it})
			n := 0
			for _, d := range ds {
				if d.Code == "bad-number" && d.Summary == key+" is not a usable number" {
					n++
				}
			}
			assert.Equal(t, 1, n, "%s = %v: %v", key, bad, ds)
		}
	}
	// A load of 1 lb is a load, whichever way.
	for _, l := range []plan.Load{{Uplift: 0.5}, {Along: 0.5}, {Across: 0.5}} {
		it := good()
		it.Load = l
		_, ds := New([]*plan.Item{it})
		assert.Equal(t, []string{"load-without-source"}, codesOf(ds))
	}
}

// A rod, its washer and its seat: what each kind wants, and what is just wide enough.
func TestWhatRodsWant(t *testing.T) {
	for name, c := range map[string]struct {
		kind  plan.ItemKind
		edit  func(*plan.Item)
		codes []string
		says  string
	}{
		"a bolt":                     {plan.AnchorBoltItem, func(*plan.Item) {}, nil, ""},
		"a bolt without a rod":       {plan.AnchorBoltItem, func(i *plan.Item) { i.Rod = 0 }, []string{"no-rod"}, "an anchor bolt without the diameter"},
		"a bolt needs no seat":       {plan.AnchorRodItem, func(i *plan.Item) { i.Standoff, i.Center = 0, 0 }, nil, ""},
		"a bolt without a length":    {plan.AnchorRodItem, func(i *plan.Item) { i.Length = 0 }, []string{"rod-without-length"}, "an anchor rod without a length"},
		"a bolt dipped in zinc":      {plan.AnchorBoltItem, func(i *plan.Item) { i.Coating = plan.HotDip }, nil, ""},
		"a bolt zinced as sheet is":  {plan.AnchorBoltItem, func(i *plan.Item) { i.Coating = plan.G185 }, []string{"sheet-coating"}, "not on an anchor bolt"},
		"a pair zinced as sheet is":  {plan.HoldDownPairItem, func(i *plan.Item) { i.Coating = plan.G185 }, nil, ""},
		"a hold-down needs no seat":  {plan.HoldDownItem, func(i *plan.Item) { i.Standoff = 0 }, nil, ""},
		"a pair needs one":           {plan.HoldDownPairItem, func(i *plan.Item) { i.Standoff = 0 }, []string{"no-standoff"}, "rod length inside a body"},
		"a pair needs no length":     {plan.HoldDownPairItem, func(i *plan.Item) { i.Length = 0 }, nil, ""},
		"a washer narrower":          {plan.AnchorBoltItem, func(i *plan.Item) { i.Washer = 0.5 }, []string{"washer-too-small"}, `a washer of 1/2" on a rod of 5/8"`},
		"a washer a little wider":    {plan.AnchorBoltItem, func(i *plan.Item) { i.Washer = 0.75 }, nil, ""},
		"no washer is a cut one":     {plan.AnchorBoltItem, func(i *plan.Item) { i.Washer = 0 }, nil, ""},
		"a strap needs none of them": {plan.StrapItem, func(i *plan.Item) { i.Rod, i.Standoff, i.Center = 0, 0, 0 }, nil, ""},
	} {
		it := good()
		it.Kind, it.Rod, it.Standoff, it.Center = c.kind, 0.625, 1.5, 1.4375
		if it.Kind != plan.StrapItem && it.Kind != plan.HoldDownPairItem {
			it.Fasteners[0].Parts = 1
		}
		c.edit(it)
		_, ds := New([]*plan.Item{it})
		assert.Equal(t, c.codes, codesOf(ds), "%s: %v", name, ds)
		if len(ds) > 0 {
			assert.Contains(t, ds[0].Summary, c.says, name)
		}
	}
}

// Steel of 2 in takes rows whose nails are twice their diameter apart: of 0.148 in six
// rows, 1.776 in; seven, 2.072, do not fit. One row always does, and where no width is
// given there is nothing to compare.
func TestRowsOnTheWidth(t *testing.T) {
	for _, c := range []struct {
		rows  int
		width float64
		fits  bool
	}{{6, 2, true}, {7, 2, false}, {1, 0.25, true}, {2, 0.59, false}, {2, 0.6, true}} {
		it := good()
		it.Length, it.Width, it.Fasteners[0].Rows = 60, c.width, c.rows
		_, ds := New([]*plan.Item{it})
		if c.fits {
			assert.Empty(t, ds, "%+v", c)
		} else {
			assert.Equal(t, []string{"rows-exceed-width"}, codesOf(ds), "%+v", c)
		}
	}
	clip := good()
	clip.Kind, clip.Width, clip.Fasteners[0].Rows = plan.ClipItem, 0, 5
	_, ds := New([]*plan.Item{clip})
	assert.Empty(t, ds)
}

// Faults speak the units of the plan: two laps of 24 in, 610 mm, on a strap of 36, 914 mm.
func TestFaultsSpeakThePlansUnits(t *testing.T) {
	it := good()
	it.Lap = 24
	_, ds := NewIn(units.Metric, []*plan.Item{it})
	require.Equal(t, []string{"laps-exceed-length"}, codesOf(ds))
	assert.Contains(t, ds[0].Summary, "two laps of 610 mm")
	assert.Contains(t, ds[0].Summary, "the strap is 914 mm long")
}

// What a fault names: the part that it is about, and both legs.
func TestFaultsNameTheirParts(t *testing.T) {
	for part, says := range map[string]string{"": "no count of 10d x 1 1/2 for the piece", "each end": "no count of 10d x 1 1/2 for each end"} {
		it := good()
		it.Kind, it.Fasteners[0].Part, it.Fasteners[0].Count = plan.GenericItem, part, 0
		_, ds := New([]*plan.Item{it})
		require.Equal(t, []string{"no-count"}, codesOf(ds))
		assert.Equal(t, says, ds[0].Summary)
	}
	it := good()
	it.Kind, it.Length, it.Legs = plan.ClipItem, 5, [2]float64{3.25, 2.25}
	_, ds := New([]*plan.Item{it})
	require.Len(t, ds, 1)
	assert.Equal(t, `two legs of 3 1/4" and 2 1/4" need 5 1/2", it has 5"`, ds[0].Summary)
	it = good()
	it.Fasteners[0].Holes = 8
	_, ds = New([]*plan.Item{it})
	require.Len(t, ds, 1)
	assert.Equal(t, "9 nails for 8 holes in each end", ds[0].Summary)
	it = good()
	it.Kind, it.Rod, it.Standoff, it.Center, it.Bodies = plan.HoldDownPairItem, 0.625, 1.5, 1.4375, 1
	_, ds = New([]*plan.Item{it})
	require.Len(t, ds, 1)
	assert.Equal(t, "a hold-down pair has 2 bodies, not 1", ds[0].Summary)
}
