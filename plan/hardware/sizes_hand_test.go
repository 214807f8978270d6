package hardware

import (
	"math"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Which of two members each end's fasteners go into: 0 the one held, 1 what
// holds it. The first and last are at the two ends, whichever way they are
// written; what stands between goes by its name, else into the second.
func TestWhichMemberEachEndGoesInto(t *testing.T) {
	stud, girder := &framing.Member{Role: plan.King}, &framing.Member{Role: plan.GirderBeam}
	rafter, plate := &framing.Member{Role: plan.Rafter}, &framing.Member{Role: plan.UpperPlate}
	for _, c := range []struct {
		name  string
		parts []string
		a, b  *framing.Member
		on    []int
	}{
		{"as written", []string{"to stud", "to girder"}, stud, girder, []int{0, 1}},
		{"the other way round", []string{"to girder", "to stud"}, stud, girder, []int{1, 0}},
		{"each end", []string{"each end", "each end"}, stud, girder, []int{0, 1}},
		{"twice into the rafter", []string{"to rafter", "to rafter", "to plate"}, rafter, plate, []int{0, 0, 1}},
		{"one between that names none", []string{"to rafter", "each leg", "to plate"}, rafter, plate, []int{0, 1, 1}},
		{"one between that names both", []string{"to rafter", "to rafter or plate", "to plate"}, rafter, plate, []int{0, 1, 1}},
		{"its only end on the second", []string{"to stud"}, girder, stud, []int{1}},
		{"its only end on the first", []string{"to stud"}, stud, girder, []int{0}},
		{"one member alone", []string{"to girder", "to stud"}, stud, nil, []int{0, 0}},
		{"no fasteners", nil, stud, girder, []int{}},
	} {
		it := &Item{Item: &plan.Item{}, Kind: KindNamed(plan.GenericItem)}
		for _, p := range c.parts {
			it.Fasteners = append(it.Fasteners, plan.Fasteners{Part: p, Count: 3, Parts: 1})
		}
		assert.Equal(t, c.on, it.On(c.a, c.b), c.name)
	}
}

// A jack is a stud to whoever nails to it, a pile is a post; what names no
// member goes into any.
func TestWhatAnEndGoesInto(t *testing.T) {
	for _, c := range []struct {
		words string
		role  plan.Role
		into  bool
	}{
		{"to stud", plan.Stud, true},
		{"to stud", plan.Jack, true},
		{"to stud", plan.Cripple, false},
		{"to post", plan.Pile, true},
		{"to post", plan.Stud, true},
		{"to post", plan.Jack, false},
		{"to hip or valley", plan.ValleyRafter, true},
		{"to hip or valley", plan.Rafter, false},
		{"each end", plan.Ridge, true},
	} {
		e := End{Role: roleOf(c.words)}
		assert.Equal(t, c.into, e.Into(&framing.Member{Role: c.role}), "%s into a %s", c.words, c.role)
	}
	assert.False(t, End{Role: "stud"}.Into(nil))
	assert.True(t, End{}.Into(nil))
}

// Legs of a bent piece: those given; half its length each; of a hanger, whose
// length is its height, its width each; 1 1/2 in where nothing is known, and as
// wide as a stud's edge.
func TestLegsOfABentPiece(t *testing.T) {
	for name, c := range map[string]struct {
		it          plan.Item
		held, other float64
		across      float64
	}{
		"legs given":            {plan.Item{Kind: plan.ClipItem, Length: 6, Width: 2, Legs: [2]float64{4, 1.75}}, 4, 1.75, 2},
		"one leg given":         {plan.Item{Kind: plan.ClipItem, Length: 6, Legs: [2]float64{0, 2}}, 0, 2, 1.5},
		"length only":           {plan.Item{Kind: plan.ClipItem, Length: 5, Width: 2.25}, 2.5, 2.5, 2.25},
		"nothing given":         {plan.Item{Kind: plan.ClipItem}, 1.5, 1.5, 1.5},
		"a hanger":              {plan.Item{Kind: plan.HangerItem, Length: 7, Width: 1.25}, 1.25, 1.25, 1.25},
		"a hanger of no width":  {plan.Item{Kind: plan.HangerItem, Length: 7}, 1.5, 1.5, 1.5},
		"a hanger's legs given": {plan.Item{Kind: plan.HangerItem, Length: 7, Legs: [2]float64{3, 2}}, 3, 2, 1.5},
	} {
		it := &Item{Item: &c.it, Kind: KindNamed(c.it.Kind)}
		held, other := it.LegLengths()
		assert.Equal(t, [2]float64{c.held, c.other}, [2]float64{held, other}, name)
		assert.Equal(t, c.across, it.Across(), name)
	}
}

// What is bought by the piece, and what of that is driven with a driver.
func TestBoltsAndScrews(t *testing.T) {
	for name, want := range map[string][2]bool{
		"10d x 1 1/2": {false, false}, "0.148 x 3": {false, false}, "": {false, false}, "bolts": {false, false},
		"bolt 5/8 x 8": {true, false}, " rod 1/2": {true, false},
		"screw 1/4 x 3": {true, true}, "lag 3/8 x 4": {true, true}, "No. 14 x 1 1/2": {true, true},
	} {
		n := Nail{Name: name}
		assert.Equal(t, want, [2]bool{n.Bolt(), n.Screw()}, "%q", name)
	}
}

// Legs cannot be longer than the steel they are bent from; a hanger's length is
// its height and says nothing of them.
func TestLegsMustFitTheirSteel(t *testing.T) {
	for name, c := range map[string]struct {
		kind   plan.ItemKind
		length float64
		fits   bool
	}{
		"legs that use it up":   {plan.ClipItem, 5.5, true},
		"legs 1/16 in too long": {plan.ClipItem, 5.4375, false},
		"no length to compare":  {plan.ClipItem, 0, true},
		"a hanger":              {plan.HangerItem, 5, true},
	} {
		it := good()
		it.Kind, it.Length, it.Legs = c.kind, c.length, [2]float64{3.25, 2.25}
		_, ds := New([]*plan.Item{it})
		if c.fits {
			assert.Empty(t, ds, name)
			continue
		}
		assert.Equal(t, []string{"legs-exceed-length"}, codesOf(ds), name)
		assert.Contains(t, ds[0].Summary, `need 5 1/2"`, name)
	}
}

// Every number of an item is refused below zero, and where it is none.
func TestEveryNumberIsRefusedBelowZero(t *testing.T) {
	for key, set := range map[string]func(*plan.Item, float64){
		"thickness":   func(i *plan.Item, v float64) { i.Thickness = v },
		"rod":         func(i *plan.Item, v float64) { i.Rod = v },
		"washer":      func(i *plan.Item, v float64) { i.Washer = v },
		"standoff":    func(i *plan.Item, v float64) { i.Standoff = v },
		"center":      func(i *plan.Item, v float64) { i.Center = v },
		"minutes":     func(i *plan.Item, v float64) { i.Minutes = v },
		"load.uplift": func(i *plan.Item, v float64) { i.Load.Uplift = v },
		"load.along":  func(i *plan.Item, v float64) { i.Load.Along = v },
		"load.across": func(i *plan.Item, v float64) { i.Load.Across = v },
	} {
		for _, bad := range []float64{-0.001, math.NaN(), math.Inf(1)} {
			it := good()
			it.Load.Source = "test 2026"
			set(it, bad)
			_, ds := New([]*plan.Item{it})
			require.NotEmpty(t, ds, "%s = %v", key, bad)
			assert.Contains(t, ds[0].Summary, key, "%s = %v", key, bad)
		}
	}
	it := good()
	it.Pack = -1
	_, ds := New([]*plan.Item{it})
	assert.Equal(t, []string{"bad-number"}, codesOf(ds))
}

// What is asked for is a number to write, each for its kind and to the nail: of
// 13 the half is rounded up. It is told where the nails are written.
func TestSharedCountsSayWhatToWrite(t *testing.T) {
	at := plan.Pos{File: "t.toml", Line: 9, Col: 3}
	for _, c := range []struct {
		kind         plan.ItemKind
		count, holes int
		severity     plan.Severity
		summary      string
		mend         string
	}{
		{plan.StrapItem, 14, 0, plan.Warning, "14 fasteners for the whole strap are taken as 7 each end", "each_end = 7"},
		{plan.StrapItem, 13, 0, plan.Error, "13 fasteners for the whole strap", "each_end = 7"},
		{plan.StrapItem, 12, 15, plan.Error, "15 holes for the whole strap", "each_end = 6"},
		{plan.ClipItem, 7, 0, plan.Error, "7 fasteners for the whole clip", "each_leg = 4"},
		{plan.HoldDownPairItem, 18, 0, plan.Warning, "taken as 9 each body", `part = "each body", count = 9, parts = 2`},
	} {
		src := &plan.Item{
			Mark: "it", Kind: c.kind, Width: 2.25, Gauge: "20", Rod: 0.5, Standoff: 1.25, Center: 1.3125, Pos: plan.Pos{File: "t.toml", Line: 7, Col: 1},
			Fasteners: []plan.Fasteners{{Part: "all", Nail: "10d x 1 1/2", Count: c.count, Holes: c.holes, Parts: 1, Pos: at}},
		}
		if KindNamed(c.kind).Strap {
			src.Length = 33
		}
		_, ds := New([]*plan.Item{src})
		require.Len(t, ds, 1, "%v", ds)
		assert.Equal(t, c.severity, ds[0].Severity, c.summary)
		assert.Contains(t, ds[0].Summary, c.summary)
		assert.Contains(t, ds[0].Mend, c.mend)
		assert.Equal(t, at, ds[0].Pos, c.summary)
	}
}

// What only wants to be known is a warning; what cannot be built is an error.
func TestWarningsOfAnItem(t *testing.T) {
	for code, edit := range map[string]func(*plan.Item){
		"no-thickness":        func(i *plan.Item) { i.Gauge = "" },
		"load-without-source": func(i *plan.Item) { i.Load.Uplift, i.Load.Source = 523, "  " },
	} {
		it := good()
		edit(it)
		_, ds := New([]*plan.Item{it})
		require.Equal(t, []string{code}, codesOf(ds))
		assert.Equal(t, plan.Warning, ds[0].Severity, code)
	}
	it := good()
	it.Kind = "strp"
	_, ds := New([]*plan.Item{it})
	require.Len(t, ds, 1)
	assert.Equal(t, plan.Error, ds[0].Severity)
	assert.Contains(t, ds[0].Mend, `"strap" (did you mean it?)`)
	it.Kind = "zzzzzzzz"
	_, ds = New([]*plan.Item{it})
	assert.Contains(t, ds[0].Mend, "one of clip")
}

// Cut washers by the wide series of ASME B18.21.1 (from memory): 1 3/4 in across for 5/8, 2
// for 3/4 and so on, a rod between two sizes takes the larger, beyond 1 1/4 in 2 1/2 times the
// rod. A square plate is 1/4 in thick, from 3 1/2 in on 3/8, a cut washer 3/16; on its washer
// a rod takes its nut, as high as it is thick, and 1/4 in of thread. The hole in wood is 1/16
// in over the rod (NDS 2018 12.1.3.2, transcribed).
func TestWashersAndHolesOfRods(t *testing.T) {
	for _, c := range []struct{ rod, across, hole float64 }{
		{0.375, 1.375, 0.4375},
		{0.5, 1.375, 0.5625},
		{0.625, 1.75, 0.6875},
		{0.75, 2, 0.8125},
		{0.8, 2.25, 0.8625},
		{0.875, 2.25, 0.9375},
		{1, 2.5, 1.0625},
		{1.125, 2.75, 1.1875},
		{1.25, 3, 1.3125},
		{1.5, 3.75, 1.5625},
	} {
		assert.InDelta(t, c.across, CutWasher(c.rod), 1e-9, "%v", c.rod)
		assert.InDelta(t, c.hole, RodHole(c.rod), 1e-9, "%v", c.rod)
	}
	for _, c := range []struct{ washer, thick, past float64 }{
		{0, 0.1875, 1.0625},
		{2, 0.25, 1.125},
		{3, 0.25, 1.125},
		{3.5, 0.375, 1.25},
		{4, 0.375, 1.25},
	} {
		assert.InDelta(t, c.thick, WasherThick(c.washer), 1e-9, "%v", c.washer)
		assert.InDelta(t, c.past, Past(0.625, c.washer), 1e-9, "%v", c.washer)
	}
}
