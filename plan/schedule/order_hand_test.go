package schedule

import (
	"bytes"
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
	// As long a segment that starts further on is covered alike.
	late := &Sheathing{Wall: h.Wall, Shear: &plan.Shear{From: 140, To: 240, Edge: 6, Field: 12}, Size: h.Size}
	late.count(97)
	assert.Equal(t, [2]int{h.Panels, h.Nails}, [2]int{late.Panels, late.Nails})
	hours := 0.0
	for _, r := range small(t).Orders(0) {
		if r.Section == "hours" {
			hours += r.Order
		}
	}
	assert.InDelta(t, 0.3, hours, 1e-9, "6 straps of 3 minutes")
}

// What is bought by weight is a nail whose size is known; by the piece a bolt or a screw,
// however long, and a nail of no length or no diameter.
func TestWhatIsBoughtByWeight(t *testing.T) {
	for _, c := range []struct {
		n    hardware.Nail
		want float64
	}{
		{hardware.Nail{Name: "8d common", Diameter: 0.131, Length: 2.5}, 100},
		{hardware.Nail{Name: "bolt 3/4 x 8", Diameter: 0.75, Length: 8}, 0},
		{hardware.Nail{Name: "bolt 3/4", Diameter: 0.75}, 0},
		{hardware.Nail{Name: "screw 0.25 x 3", Diameter: 0.25, Length: 3}, 0},
		{hardware.Nail{Name: "No. 10 x 1 1/2", Diameter: 0.19, Length: 1.5}, 0},
		{hardware.Nail{Name: "nail", Diameter: 0.131}, 0},
		{hardware.Nail{Name: "nail", Length: 2.5}, 0},
		// pi/4 x 0.12² x 3 x 0.2836 = 0.009622 lb of shank; 0.95 / 0.009622 = 98.7.
		{hardware.Nail{Name: "0.120 x 3", Diameter: 0.12, Length: 3}, 98},
	} {
		got, source := PerPound(c.n)
		assert.Equal(t, c.want, got, c.n.Name)
		assert.Equal(t, c.want == 0, source == "", c.n.Name)
	}
}

// Each row of the order says what it is: nails how they are driven, a rod its length, a
// panel its size, hours what has none.
func TestDetailsOfTheOrder(t *testing.T) {
	var got [][2]string
	for _, r := range small(t).Orders(0) {
		switch r.Section {
		case "nails", "panels", "rods", "hours":
			got = append(got, [2]string{r.Section, r.Detail})
		}
	}
	assert.Equal(t, [][2]string{
		{"nails", "by hand or gun"},
		{"nails", "by hand or gun"},
		{"nails", "by hand only"},
		{"rods", `1'-10 1/4" long`},
		{"panels", `4'-0" x 8'-0"`},
		{"hours", "without 3 pieces that have no minutes"},
		{"hours", "without 2 pieces that have no minutes"},
	}, got)
}

// Panels of one thickness and two sizes are two rows, each with its own count: two walls of
// 96 in, 97.125 high. One has panels of 4 by 8 ft, two columns of two; the other of 4 by 9,
// two of one; and a third, of the first size again, adds to the first row.
func TestPanelsAreOrderedBySize(t *testing.T) {
	s := small(t)
	s.Sheathing = nil
	for _, tall := range []float64{96, 108, 96} {
		h := &Sheathing{Wall: &plan.Wall{Spacing: 16}, Shear: &plan.Shear{To: 96, Panel: "15/32", Edge: 6, Field: 12}, Size: [2]float64{48, tall}}
		h.count(97.125)
		s.Sheathing = append(s.Sheathing, h)
	}
	var got [][3]any
	for _, r := range s.orderPanels(0.10, units.Imperial) {
		got = append(got, [3]any{r.Detail, r.Count, r.Spare})
	}
	assert.Equal(t, [][3]any{{`4'-0" x 8'-0"`, 8, 9}, {`4'-0" x 9'-0"`, 2, 3}}, got)
}

// A metric plan's order is in kilograms and millimeters, its JSON in US units, as its keys
// say: 1.4 lb are 0.64, so 0.7 kg; 100 a pound are 220 a kilogram.
func TestAMetricOrder(t *testing.T) {
	s := small(t)
	s.Placement.House.Plan.Project.Units = units.Metric
	nails := func(rows []OrderRow) OrderRow {
		for _, r := range rows {
			if r.Section == "nails" {
				return r
			}
		}
		return OrderRow{}
	}
	r := nails(s.Orders(0.10))
	assert.Equal(t, "0.7 kg", r.amount())
	assert.Equal(t, "1 box of 5 lb (2.27 kg)", r.packs())
	assert.Contains(t, r.Source, "220 per kg")
	assert.Equal(t, "8d common (3.3 x 64 mm)", r.Name)
	for format, want := range map[string]units.System{"json": units.Imperial, "csv": units.Metric, "table": units.Metric} {
		assert.Equal(t, want, s.units(format), format)
	}
	var b bytes.Buffer
	require.NoError(t, Order(&b, s, 0.10, "json"))
	assert.Contains(t, b.String(), `"8d common (0.131 x 2 1/2)"`)
	assert.Contains(t, b.String(), `"lb"`)
}
