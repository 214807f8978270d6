package hardware

import (
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func good() *plan.Item {
	return &plan.Item{
		Mark: "wall-strap", Kind: "strap", Length: 36, Width: 1.375, Gauge: "19",
		Fasteners: []plan.Fasteners{{Part: "each end", Nail: "10d x 1 1/2", Count: 9, Parts: 2}},
		Pos:       plan.Pos{File: "t.toml", Line: 7, Col: 1},
	}
}

func TestNewFillsInWhatTheKindImplies(t *testing.T) {
	c, ds := New([]*plan.Item{good()})
	require.Empty(t, ds)
	it := c.Item("wall-strap")
	require.NotNil(t, it)
	// Manufacturers' standard gauge, 19 ga: 0.0418 in (four charts agree, transcribed).
	assert.InDelta(t, 0.0418, it.Thickness, 1e-9)
	assert.Equal(t, plan.Outside, it.Face)
	assert.Equal(t, plan.BeforeSheathing, it.Phase.Name)
	// The short strap nail 10d = 0.148 x 1 1/2 is named in IRC 2018 R602.6.1 (read).
	assert.Equal(t, Nail{Name: "10d x 1 1/2", Diameter: 0.148, Length: 1.5}, it.Nails[0])
	assert.Nil(t, c.Item("other-strap"))
	assert.Equal(t, []string{"wall-strap"}, c.Marks())
}

func TestNewTellsEachFault(t *testing.T) {
	pair := func(i *plan.Item) {
		i.Kind, i.Length, i.Rod, i.Standoff = "hold-down pair", 36, .625, 1.5
		i.Center, i.Width = 1.4375, 2.375
	}
	for name, c := range map[string]struct {
		edit func(*plan.Item)
		code string
	}{
		"no mark":                   {func(i *plan.Item) { i.Mark = "" }, "no-mark"},
		"unknown kind":              {func(i *plan.Item) { i.Kind = "strp" }, "unknown-word"},
		"unknown phase":             {func(i *plan.Item) { i.Phase = "later" }, "unknown-word"},
		"unknown face":              {func(i *plan.Item) { i.Face = "front" }, "unknown-word"},
		"unknown nail":              {func(i *plan.Item) { i.Fasteners[0].Nail = "5d common" }, "unknown-nail"},
		"unknown gauge":             {func(i *plan.Item) { i.Gauge = "21" }, "unknown-gauge"},
		"strap without length":      {func(i *plan.Item) { i.Length = 0 }, "strap-without-length"},
		"strap without width":       {func(i *plan.Item) { i.Width = 0 }, "strap-without-width"},
		"strap without nails":       {func(i *plan.Item) { i.Fasteners = nil }, "no-nails"},
		"strap without steel":       {func(i *plan.Item) { i.Gauge = "" }, "no-thickness"},
		"laps longer than strap":    {func(i *plan.Item) { i.Lap = 18.5 }, "laps-exceed-length"},
		"nails without count":       {func(i *plan.Item) { i.Fasteners[0].Count = 0 }, "no-count"},
		"more nails than holes":     {func(i *plan.Item) { i.Fasteners[0].Holes = 8 }, "more-nails-than-holes"},
		"coil without roll":         {func(i *plan.Item) { i.Kind = "coil strap" }, "coil-without-roll"},
		"longer than its roll":      {func(i *plan.Item) { i.Kind, i.Coil = "coil strap", 30 }, "longer-than-roll"},
		"negative minutes":          {func(i *plan.Item) { i.Minutes = -1 }, "bad-number"},
		"load without source":       {func(i *plan.Item) { i.Load.Uplift = 523 }, "load-without-source"},
		"rows wider than the steel": {func(i *plan.Item) { i.Fasteners[0].Rows = 5 }, "rows-exceed-width"},
		"negative pattern":          {func(i *plan.Item) { i.Fasteners[0].Spacing = -1 }, "bad-pattern"},
		"pair without rod":          {func(i *plan.Item) { pair(i); i.Rod = 0 }, "no-rod"},
		"pair without standoff":     {func(i *plan.Item) { pair(i); i.Standoff = 0 }, "no-standoff"},
		"pair without center":       {func(i *plan.Item) { pair(i); i.Center = 0 }, "no-center"},
		"hold-down without center":  {func(i *plan.Item) { i.Kind, i.Rod = "hold-down", .625 }, "no-center"},
		"pair of one body":          {func(i *plan.Item) { pair(i); i.Bodies = 1 }, "wrong-bodies"},
		"washer under the nut":      {func(i *plan.Item) { pair(i); i.Washer = 0.5 }, "washer-too-small"},
		"bolt without length":       {func(i *plan.Item) { i.Kind, i.Rod, i.Length = "anchor bolt", .625, 0 }, "rod-without-length"},
		"panel without size":        {func(i *plan.Item) { i.Kind, i.Length = "sheathing", 0 }, "panel-without-size"},
	} {
		t.Run(name, func(t *testing.T) {
			it := good()
			c.edit(it)
			_, ds := New([]*plan.Item{it})
			require.Len(t, ds, 1, "%v", ds)
			assert.Equal(t, c.code, string(ds[0].Code))
			assert.NotEmpty(t, ds[0].Mend)
			assert.Equal(t, 7, ds[0].Pos.Line)
		})
	}
}

func TestNailsMustFitTheSteel(t *testing.T) {
	for name, c := range map[string]struct {
		f    plan.Fasteners
		need float64
	}{
		// one row, least pitch 0.75 after 0.5: 0.5 + 8*0.75 = 6.5
		"no pattern given": {plan.Fasteners{Count: 9}, 6.5},
		// two rows of ceil(9/2) = 5: 1 + 4*2 = 9
		"two rows": {plan.Fasteners{Count: 9, Rows: 2, Spacing: 2, EndDist: 1}, 9},
		// and half the spacing for the other row: 10
		"staggered": {plan.Fasteners{Count: 9, Rows: 2, Spacing: 2, EndDist: 1, Stagger: true}, 10},
		// or the offset that the maker gives: 9.5
		"with an offset": {plan.Fasteners{Count: 9, Rows: 2, Spacing: 2, EndDist: 1, Stagger: true, Offset: 0.5}, 9.5},
	} {
		t.Run(name, func(t *testing.T) { assert.InDelta(t, c.need, Spread(c.f, 1.25), 1e-9) })
	}
	// 9 nails at 3 in after 1: 1 + 8*3 = 25 in each end of 18: 7 missing.
	it := good()
	it.Fasteners[0].Rows, it.Fasteners[0].Spacing, it.Fasteners[0].EndDist = 1, 3, 1
	_, ds := New([]*plan.Item{it})
	require.Len(t, ds, 1)
	assert.Equal(t, "nails-do-not-fit", string(ds[0].Code))
	assert.Contains(t, ds[0].Summary, `short by 7"`)
}

func TestMarksOfOneFileAreUnique(t *testing.T) {
	a, b := good(), good()
	b.Pos.Line = 9
	_, ds := New([]*plan.Item{a, b})
	require.Len(t, ds, 1)
	assert.Equal(t, "mark-twice", string(ds[0].Code))
	assert.Equal(t, []plan.Pos{a.Pos}, ds[0].Related)

	b.Pos.File, b.Length = "catalog.toml", 48
	c, ds := New([]*plan.Item{a, b})
	require.Empty(t, ds, "a plan may change a catalog's item")
	require.Len(t, c.Items, 1)
	assert.Equal(t, 48.0, c.Item("wall-strap").Length)
}

func TestKindsAreWellFormed(t *testing.T) {
	names, codes := map[plan.ItemKind]bool{}, map[string]bool{}
	for _, k := range Kinds {
		assert.False(t, names[k.Name], k.Name)
		assert.False(t, codes[k.Code], k.Code)
		names[k.Name], codes[k.Code] = true, true
		assert.Regexp(t, `^[a-z]+(-[a-z]+)*$`, k.Code)
		assert.Regexp(t, `^sym-[a-z-]+$`, k.Symbol)
		assert.NotEmpty(t, k.Doc)
		assert.NotNil(t, PhaseNamed(k.Phase), k.Name)
		assert.NotEmpty(t, k.Purpose)
		assert.Same(t, k, KindNamed(k.Name))
		for _, j := range k.On {
			assert.NotEmpty(t, j.Code(), "%s at %s", k.Name, j)
			assert.True(t, k.Belongs(j))
		}
	}
	assert.False(t, KindNamed("ridge strap").Belongs(plan.StudBase))
	assert.True(t, KindNamed("generic").Belongs(plan.WallCorner))
	assert.False(t, KindNamed("sheathing").Belongs(plan.WallEnd))
}
