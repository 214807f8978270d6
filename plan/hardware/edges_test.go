package hardware

import (
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func codesOf(ds plan.Diagnostics) (out []string) {
	for _, d := range ds {
		out = append(out, string(d.Code))
	}
	return out
}

// What is just allowed is no fault.
func TestNewTakesWhatJustFits(t *testing.T) {
	for name, edit := range map[string]func(*plan.Item){
		"two laps that use the strap up":        func(i *plan.Item) { i.Lap = 18 },
		"as many nails as holes":                func(i *plan.Item) { i.Fasteners[0].Holes = 9 },
		"a strap as long as its roll":           func(i *plan.Item) { i.Kind, i.Coil = "coil strap", 36 },
		"a lap stands for a coil's length":      func(i *plan.Item) { i.Kind, i.Coil, i.Length, i.Lap = "coil strap", 300, 0, 12 },
		"a strap of another kind off a coil":    func(i *plan.Item) { i.Kind, i.Coil, i.Length, i.Lap = "ridge strap", 300, 0, 12 },
		"a thickness instead of a gauge":        func(i *plan.Item) { i.Gauge, i.Thickness = "", 0.05 },
		"rows that use the width up: 4 x 0.296": func(i *plan.Item) { i.Fasteners[0].Rows, i.Width = 4, 8*0.148 },
		"nails that use the length up":          func(i *plan.Item) { i.Length = 13 }, // 0.5 + 8 x 0.75 = 6.5 each end
		"a load with its source":                func(i *plan.Item) { i.Load.Uplift, i.Load.Source = 500, "test 2026" },
		"generic pieces need no nails":          func(i *plan.Item) { i.Kind, i.Fasteners, i.Gauge = "generic", nil, "" },
		"a clip needs no length":                func(i *plan.Item) { i.Kind, i.Length, i.Width, i.Gauge = "clip", 0, 0, "" },
		"a bolt needs no nails":                 func(i *plan.Item) { i.Kind, i.Rod, i.Fasteners, i.Gauge = "anchor bolt", .5, nil, "" },
		"a panel needs no count":                func(i *plan.Item) { i.Kind, i.Fasteners[0].Count = "sheathing", 0 },
	} {
		t.Run(name, func(t *testing.T) {
			it := good()
			edit(it)
			_, ds := New([]*plan.Item{it})
			assert.Empty(t, ds)
		})
	}
}

func TestNewTellsWhatJustDoesNotFit(t *testing.T) {
	for name, c := range map[string]struct {
		edit func(*plan.Item)
		code string
	}{
		"a coil of a clip":             {func(i *plan.Item) { i.Kind, i.Coil = "clip", 300 }, "coil-of-no-strap"},
		"a coil with neither":          {func(i *plan.Item) { i.Kind, i.Coil, i.Length = "coil strap", 300, 0 }, "strap-without-length"},
		"two rows wider than the band": {func(i *plan.Item) { i.Fasteners[0].Rows, i.Width = 2, 4*0.148-0.01 }, "rows-exceed-width"},
		"nails 1/4 in too long":        {func(i *plan.Item) { i.Length = 12.5 }, "nails-do-not-fit"},
		"a washer as wide as its rod": {func(i *plan.Item) {
			i.Kind, i.Length, i.Rod, i.Standoff, i.Washer, i.Center = "hold-down pair", 10, .625, 1.5, .625, 1.3125
		}, "washer-too-small"},
		"a hold-down without a rod": {func(i *plan.Item) { i.Kind, i.Center = "hold-down", 1.3125 }, "no-rod"},
		"a hold-down of two bodies": {func(i *plan.Item) { i.Kind, i.Rod, i.Bodies, i.Center = "hold-down", .625, 2, 1.3125 }, "wrong-bodies"},
		"a clip without nails":      {func(i *plan.Item) { i.Kind, i.Fasteners = "clip", nil }, "no-nails"},
		"a pair without nails": {func(i *plan.Item) {
			i.Kind, i.Rod, i.Standoff, i.Center, i.Fasteners = "hold-down pair", .625, 1.5, 1.3125, nil
		}, "no-nails"},
		"a load along only":          {func(i *plan.Item) { i.Load.Along = 1 }, "load-without-source"},
		"a load across only":         {func(i *plan.Item) { i.Load.Across = 1 }, "load-without-source"},
		"a panel without a width":    {func(i *plan.Item) { i.Kind, i.Width = "sheathing", 0 }, "panel-without-size"},
		"a negative offset":          {func(i *plan.Item) { i.Fasteners[0].Offset = -1 }, "bad-pattern"},
		"a negative end distance":    {func(i *plan.Item) { i.Fasteners[0].EndDist = -1 }, "bad-pattern"},
		"a negative number of rows":  {func(i *plan.Item) { i.Fasteners[0].Rows = -1 }, "bad-pattern"},
		"a strap of its own no roll": {func(i *plan.Item) { i.Kind, i.Coil = "ridge strap", 30 }, "longer-than-roll"},
	} {
		t.Run(name, func(t *testing.T) {
			it := good()
			c.edit(it)
			_, ds := New([]*plan.Item{it})
			assert.Equal(t, []string{c.code}, codesOf(ds), "%v", ds)
		})
	}
}

func TestSpreadOfNailsByWidth(t *testing.T) {
	// From 2 in of width two rows fit: 9 nails are rows of 5 and 4, 0.5 + 4 x 0.75 =
	// 3.5 in; under it one row, 0.5 + 8 x 0.75 = 6.5.
	f := plan.Fasteners{Count: 9}
	assert.InDelta(t, 3.5, Spread(f, 2), 1e-9)
	assert.InDelta(t, 6.5, Spread(f, 1.99), 1e-9)
	// One row has nothing to be staggered against.
	f.Stagger, f.Rows = true, 1
	assert.InDelta(t, 6.5, Spread(f, 1.25), 1e-9)
	// Two rows, half the pitch: 3.5 + 0.375.
	f.Rows = 2
	assert.InDelta(t, 3.875, Spread(f, 1.25), 1e-9)
	// One nail takes its end distance.
	assert.InDelta(t, 0.5, Spread(plan.Fasteners{Count: 1}, 1.25), 1e-9)
}

func TestWhatEachKindIs(t *testing.T) {
	// The kinds by what they do: a strap is a band with two lapped ends.
	straps := map[plan.ItemKind]Shape{
		"ridge strap": Over, "wrap strap": Over, "opening strap": Over,
		"strap": Band, "coil strap": Band, "long strap": Band, "collector strap": Band,
	}
	for _, k := range Kinds {
		shape, ok := straps[k.Name]
		assert.Equal(t, ok, k.Strap, k.Name)
		if ok {
			assert.Equal(t, shape, k.Shape, k.Name)
		}
	}
	for name, shape := range map[plan.ItemKind]Shape{"clip": Body, "hold-down": Body, "hold-down pair": Pair, "anchor bolt": Rod, "anchor rod": Rod, "sheathing": Sheet, "generic": Body} {
		assert.Equal(t, shape, KindNamed(name).Shape, name)
	}
	assert.Nil(t, KindNamed("belt"))
	assert.Nil(t, PhaseNamed("later"))
	for i, p := range Phases {
		assert.Equal(t, i, p.Order())
	}
	assert.Equal(t, len(Phases), (&Phase{}).Order(), "what is no phase comes last")
}

func TestBodiesOfHoldDowns(t *testing.T) {
	// One body and two; where its rod stands off the post the item itself must say.
	pair := good()
	pair.Kind, pair.Rod, pair.Standoff, pair.Center = "hold-down pair", .625, 1.5, 1.4375
	single := good()
	single.Mark, single.Kind, single.Rod, single.Center = "one", "hold-down", .625, 2
	c, ds := New([]*plan.Item{pair, single})
	require.Empty(t, ds)
	assert.Equal(t, 2, c.Items[0].Bodies)
	assert.Equal(t, 1, c.Items[1].Bodies)
	strap, _ := New([]*plan.Item{good()})
	assert.Zero(t, strap.Items[0].Bodies)
	for _, it := range []*plan.Item{pair, single} {
		it.Center = 0
		_, ds := New([]*plan.Item{it})
		assert.Equal(t, []string{"no-center"}, codesOf(ds))
	}
}

func TestSizesThatTheItemGivesCount(t *testing.T) {
	it := good()
	it.Fasteners[0].Nail, it.Fasteners[0].Diameter, it.Fasteners[0].Length, it.Fasteners[0].Parts = "our own", 0.2, 2, 2
	c, ds := New([]*plan.Item{it})
	require.Empty(t, ds)
	n := c.Items[0].Nails[0]
	assert.Equal(t, [2]float64{0.2, 2}, [2]float64{n.Diameter, n.Length})
	clip := good()
	clip.Kind, clip.Fasteners[0].Part, clip.Fasteners[0].Parts = "clip", "to stud", 0
	c, ds = New([]*plan.Item{clip})
	require.Empty(t, ds)
	assert.Equal(t, 1, c.Items[0].Fasteners[0].Parts, "one part unless said")
	assert.Zero(t, clip.Fasteners[0].Parts, "the plan's own item is left as it was")
}
