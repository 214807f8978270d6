package schedule

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/units"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What to buy in words, with packs where it comes in any.
func TestWhatToBuyInWords(t *testing.T) {
	for _, c := range []struct {
		row  OrderRow
		want string
	}{
		{OrderRow{Order: 15.4, Unit: "lb", Packs: 4, Pack: "box of 5 lb"}, "15.4 lb, 4 boxes of 5 lb"},
		{OrderRow{Order: 4.9, Unit: "lb", Packs: 1, Pack: "box of 5 lb"}, "4.9 lb, 1 box of 5 lb"},
		{OrderRow{Order: 34, Unit: "panel"}, "34 panels"},
		{OrderRow{Order: 1, Unit: "panel"}, "1 panel"},
		{OrderRow{Order: 2, Unit: "roll", Packs: 2, Pack: "roll of 100'"}, "2 rolls"},
		{OrderRow{Order: 21, Unit: "each"}, "21"},
		{OrderRow{Order: 100, Unit: "each", Packs: 4, Pack: "pack of 25"}, "100, 4 packs of 25"},
	} {
		assert.Equal(t, c.want, c.row.Buy())
	}
}

// A coating that the plan does not give is blank where a thing has one; panels and hours
// have none.
func TestCoatingsInWords(t *testing.T) {
	for _, section := range coated {
		assert.Equal(t, "coating blank", OrderRow{Section: section}.Material(), section)
		assert.Equal(t, string(plan.G185), OrderRow{Section: section, Coating: plan.G185}.Material(), section)
	}
	assert.Empty(t, OrderRow{Section: "panels"}.Material())
	assert.Empty(t, OrderRow{Section: "hours"}.Material())
}

// Columns are named in their order, none twice, and counts in CSV have caution besides.
func TestColumnsInTheirOrder(t *testing.T) {
	count, order := CountColumns(), OrderColumns()
	require.Len(t, count, len(countColumns))
	for i, c := range countColumns {
		assert.Equal(t, c.name, count[i])
	}
	for i, c := range orderColumns {
		assert.Equal(t, c.name, order[i])
	}
	assert.NotContains(t, append(count, order...), cautionColumn)
}

// Groups as a reader names them.
func TestGroupsInWords(t *testing.T) {
	s := &Schedule{Placement: &placement.Placement{House: &framing.House{Plan: &plan.Plan{
		Levels: []*plan.Level{{Name: "first"}}, Walls: []*plan.Wall{{Name: "1S"}}, Girders: []*plan.Girder{{Name: "GS"}}, Porches: []*plan.Porch{{Name: "south"}},
	}}}}
	for _, c := range [][3]string{
		{"wall", "1S", "wall 1S"},
		{"wall", "GS", "girder GS"},
		{"wall", "porch south", "roof porch south"},
		{"wall", "south", "porch south"},
		{"wall", "main", "roof main"},
		{"level", "first", "level first"},
		{"level", "foundation", "foundation"},
		{"phase", "before floor", "before floor"},
		{"phase", "first", "first"},
	} {
		assert.Equal(t, c[2], s.groupWords(c[0], c[1]), "%v", c)
	}
}

// Screws and bolts in the plural, and what holds the hand to it.
func TestNailsInWords(t *testing.T) {
	for _, c := range []struct {
		n    NailCount
		want string
	}{
		{NailCount{}, "none"},
		{NailCount{Nail: "10d", Count: 3}, "3 10d, coating blank"},
		{NailCount{Nail: "bolt 3/4 x 8", Count: 1}, "1 bolt 3/4 x 8, coating blank"},
		{NailCount{Nail: "bolt 3/4 x 8", Count: 2}, "2 bolts 3/4 x 8, coating blank"},
		{NailCount{Nail: "screw 0.25 x 3", Count: 2, Hand: true, Size: hardware.Nail{Coating: plan.HotDip}}, "2 screws 0.25 x 3, " + string(plan.HotDip) + ", by hand only"},
	} {
		assert.Equal(t, c.want, nailText(units.Imperial, c.n))
	}
	for name, want := range map[string]string{"No. 10 x 1 1/2": "screws", "screw 0.25 x 3": "screws", "bolt 3/4 x 8": "bolts", "lag 3/8 x 4": "screws"} {
		n, err := hardware.ParseNail(name)
		require.NoError(t, err, name)
		assert.Equal(t, want, threaded(n), name)
	}
}

// A panel of the catalog by its thickness, within a thousandth of an inch.
func TestThePanelOfTheCatalog(t *testing.T) {
	sheet := &hardware.Item{Item: &plan.Item{Mark: "sheet", Thickness: 15.0 / 32}, Kind: hardware.KindNamed(plan.SheathingItem)}
	strap := &hardware.Item{Item: &plan.Item{Mark: "strap", Thickness: 7.0 / 16}, Kind: hardware.KindNamed(plan.StrapItem)}
	c := &hardware.Catalog{Items: []*hardware.Item{strap, sheet}}
	assert.Same(t, sheet, panelItem(c, "15/32"))
	assert.Nil(t, panelItem(c, "7/16"), "a strap is no panel")
	assert.Nil(t, panelItem(c, "1/2"))
	assert.Nil(t, panelItem(c, "thick"))
}

// Rods are listed to the next quarter of an inch.
func TestRodsAreCutToTheNextQuarter(t *testing.T) {
	for long, want := range map[float64]float64{12: 12, 12.01: 12.25, 12.25: 12.25, 12.26: 12.5, 29.6875: 29.75, 11.99: 12} {
		assert.InDelta(t, want, CutRod(long), 1e-9, "%v", long)
	}
	for _, c := range []struct {
		n     int
		spare float64
		want  int
	}{{100, 0.05, 105}, {101, 0.05, 107}, {1, 0, 1}, {1, 0.05, 2}, {0, 0.05, 0}, {40, 0.1, 44}} {
		assert.Equal(t, c.want, more(c.n, c.spare), "%+v", c)
	}
}

// A nail by its name is told with its size; one named by its size, and a bolt, by its name.
func TestLabelsOfNails(t *testing.T) {
	for name, want := range map[string]string{
		"8d common": "8d common (0.131 x 2 1/2)", "0.148 x 3": "0.148 x 3", ".148 x 3": ".148 x 3", "": "", "bolt 3/4 x 8": "bolt 3/4 x 8", "ring 0.113 x 2 1/2": "ring 0.113 x 2 1/2",
	} {
		n := hardware.Nail{Name: name, Diameter: 0.131, Length: 2.5}
		assert.Equal(t, want, nailLabel(n), name)
	}
}

// A segment from 20 to 120 in of a wall 97 in high takes three panels of 48 by 96 side by side,
// the last 4 in wide, and three more 1 in high on top of them; hours are minutes over 60.
func TestPanelsOfASegmentThatStartsLater(t *testing.T) {
	h := &Sheathing{Wall: &plan.Wall{Spacing: 16}, Shear: &plan.Shear{From: 20, To: 120, Edge: 6, Field: 12}, Size: [2]float64{48, 96}}
	h.count(97)
	assert.Equal(t, 6, h.Panels)
	// 48 x 96: 2 x 8 + 2 x 16 round it, 2 studs of 7: 62, twice; 4 x 96: 2 x 1 + 2 x 16 = 34; on top
	// 48 x 1: 2 x 8 + 2 x 1 = 18, twice; 4 x 1: 4.
	assert.Equal(t, 62+62+34+18+18+4, h.Nails)
	hours := 0.0
	for _, r := range small(t).Orders(0) {
		if r.Section == "hours" {
			hours += r.Order
		}
	}
	assert.InDelta(t, 0.3, hours, 1e-9, "6 straps of 3 minutes")
}
