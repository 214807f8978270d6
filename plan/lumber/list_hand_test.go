package lumber

import (
	"bytes"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/units"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// yardOf lists members cut from stock.
func yardOf(stock []float64, members ...*framing.Member) *Cut {
	return List(&framing.House{Plan: &plan.Plan{Lumber: plan.LumberYard{Stock: stock}}, Members: members})
}

func piece(r plan.Role, text string, depth, long float64) *framing.Member {
	return &framing.Member{ID: string(r), Role: r, Section: plan.Lumber{Ply: 1, Breadth: 1.5, Depth: depth, Text: text}, Length: long}
}

// A yard has 8 to 20 ft by 2 ft unless the plan says what it has, in any order.
func TestWhatTheYardHas(t *testing.T) {
	assert.Equal(t, []float64{96, 120, 144, 168, 192, 216, 240}, yardOf(nil).Stock)
	assert.Equal(t, []float64{96, 144}, yardOf([]float64{144, 96, 144}).Stock)
}

// One ply of a built-up member is what the yard sells.
func TestSectionOfOnePly(t *testing.T) {
	for _, c := range []struct {
		l    plan.Lumber
		want string
	}{
		{plan.Lumber{Ply: 3, Breadth: 1.5, Depth: 9.25, Text: "3-2x10"}, "2x10"},
		{plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 5.5, Text: "2x6"}, "2x6"},
		{plan.Lumber{Ply: 1, Breadth: 1.75, Depth: 11.875}, "1.75x11.875"},
		{plan.Lumber{Ply: 2, Breadth: 1.5, Depth: 9.25, Text: "3-2x10"}, "3-2x10"}, // not its plies: left as written
	} {
		assert.Equal(t, c.want, onePly(c.l), "%+v", c.l)
	}
}

// A member as long as the longest stock is cut from it; 1/16 in more must be
// ordered to length. What has no length is no piece.
func TestLongestStock(t *testing.T) {
	c := yardOf([]float64{96, 192}, piece(plan.Joist, "2x10", 9.25, 192), piece(plan.Joist, "2x10", 9.25, 192.0625), piece(plan.Blocking, "2x10", 9.25, 0))
	require.Len(t, c.Long, 1)
	assert.Equal(t, 192.0625, c.Long[0].Length)
	require.Len(t, c.Sections, 1)
	assert.Equal(t, []Order{{"2x10", 192, 1}}, c.Orders())
	assert.Zero(t, c.Sections[0].Waste())
	assert.Zero(t, (&Section{}).Waste(), "nothing bought, nothing wasted")
	girder, ridge := piece(plan.GirderBeam, "3-2x12", 11.25, 300), piece(plan.Ridge, "1.75x14", 14, 300)
	girder.Section.Ply, ridge.Section.Ply = 3, 0
	c = yardOf([]float64{96, 192}, girder, ridge)
	require.Len(t, c.Long, 2)
	assert.Equal(t, map[string]int{"2x12": 3, "1.75x14": 1}, map[string]int{c.Long[0].Section: c.Long[0].Count, c.Long[1].Section: c.Long[1].Count}, "ply by ply; of no number one")
}

// Sections come thinnest and shallowest first; in each parts by role, and of a
// role longest first. What is long or made up is sorted alike.
func TestOrderOfTheLists(t *testing.T) {
	made := func(depth, long float64) *framing.Member { return piece(plan.Truss, "2x4", depth, long) }
	thin := piece(plan.Blocking, "1x6", 5.5, 90)
	thin.Section.Breadth = 0.75
	c := yardOf(
		[]float64{96},
		piece(plan.Stud, "2x6", 5.5, 80), piece(plan.Stud, "2x4", 3.5, 80), thin,
		piece(plan.Cripple, "2x4", 3.5, 12), piece(plan.Stud, "2x4", 3.5, 90),
		made(3.5, 200), made(3.5, 300), piece(plan.Ridge, "2x8", 7.25, 100), piece(plan.Ridge, "2x8", 7.25, 130), piece(plan.Ridge, "2x6", 5.5, 110),
	)
	var names []string
	for _, s := range c.Sections {
		names = append(names, s.Name)
	}
	assert.Equal(t, []string{"1x6", "2x4", "2x6"}, names)
	of := func(parts []*Part) (out [][2]any) {
		for _, p := range parts {
			out = append(out, [2]any{p.Section, p.Length})
		}
		return out
	}
	assert.Equal(t, [][2]any{{"2x4", 12.0}, {"2x4", 90.0}, {"2x4", 80.0}}, of(c.Sections[1].Parts), "cripples, then studs")
	assert.Equal(t, [][2]any{{"2x6", 110.0}, {"2x8", 130.0}, {"2x8", 100.0}}, of(c.Long))
	assert.Equal(t, [][2]any{{"2x4", 300.0}, {"2x4", 200.0}}, of(c.Made))
}

// Four studs of 60 in and two of 40 in from 102 in: 60 + 40 and a kerf of 1/8 in
// are 100 1/8, twice; the other studs take a stick each. That is four sticks to
// buy and two ways to cut them, 408 in for 320: 21.6 percent left over.
func TestSticksCutAlikeAreCounted(t *testing.T) {
	var members []*framing.Member
	for _, l := range []float64{60, 60, 60, 60, 40, 40} {
		members = append(members, piece(plan.Stud, "2x4", 3.5, l))
	}
	c := yardOf([]float64{102}, members...)
	require.Len(t, c.Sections, 1)
	s := c.Sections[0]
	assert.Equal(t, []*Stick{
		{Length: 102, Count: 2, Cuts: []float64{60, 40}, Left: 1.875},
		{Length: 102, Count: 2, Cuts: []float64{60}, Left: 42},
	}, s.Sticks)
	assert.Equal(t, []Order{{"2x4", 102, 4}}, c.Orders())
	assert.Equal(t, [2]float64{320, 408}, [2]float64{s.Need, s.Bought})
	assert.InDelta(t, 21.57, s.Waste(), 0.005)
}

// Stock of two lengths is two lines of an order.
func TestOrdersByLength(t *testing.T) {
	c := yardOf([]float64{96, 144}, piece(plan.Stud, "2x4", 3.5, 90), piece(plan.Stud, "2x4", 3.5, 140), piece(plan.Stud, "2x6", 5.5, 90))
	assert.Equal(t, []Order{{"2x4", 144, 1}, {"2x4", 96, 1}, {"2x6", 96, 1}}, c.Orders())
}

func TestFormatsOfTheList(t *testing.T) {
	c := yardOf(nil, piece(plan.Stud, "2x4", 3.5, 90))
	for format, write := range map[string]func(*bytes.Buffer) error{
		"table": func(b *bytes.Buffer) error { return c.Text(b) },
		"csv":   func(b *bytes.Buffer) error { return c.CSV(b) },
		"json":  func(b *bytes.Buffer) error { return c.JSON(b) },
	} {
		var got, want bytes.Buffer
		require.NoError(t, c.Write(&got, format))
		require.NoError(t, write(&want))
		assert.NotEmpty(t, got.String(), format)
		assert.Equal(t, want.String(), got.String(), format)
	}
	assert.ErrorContains(t, c.Write(&bytes.Buffer{}, "xml"), `not "xml"`)
}

// First fit from sticks of 100 sixteenths, two of them lost in each cut: 70 and 60 open two;
// for 25, another length, the search starts again at the first, which has room for one; the
// second 25 goes on from there.
func TestFirstFitStartsAgainForAnotherLength(t *testing.T) {
	assert.Equal(t, []stick{{stock: 100, cuts: []int{70, 25}}, {stock: 100, cuts: []int{60, 25}}}, firstFit([]int{70, 60, 25, 25}, 100))
	assert.Equal(t, []stick{{stock: 100, cuts: []int{49, 49}}}, firstFit([]int{49, 49}, 100))
	assert.Len(t, firstFit([]int{50, 49}, 100), 2, "a cut takes two")
	assert.Equal(t, 300, cost([]stick{{stock: 100}, {stock: 200}}))
}

// One stick of 100 sixteenths for the longest piece, with what fills it best; a cut
// takes 2. Beside 60: 38 leaves nothing, 60 + 2 + 38; of 30 and 28, and of what goes with
// them, 28 and 8 do, 60 + 2 + 28 + 2 + 8, though 30 alone comes first. Five hundred pieces
// of 30, which do not lead there, are one length and tried once.
func TestCompanionsFillTheStick(t *testing.T) {
	many := func(n, long int, more ...int) []int {
		out := []int{60}
		for range n {
			out = append(out, long)
		}
		return append(out, more...)
	}
	for _, c := range []struct {
		name       string
		left, want []int
	}{
		{"alone", []int{60}, []int{60}},
		{"what fits to the dot", []int{60, 40, 38, 30}, []int{60, 38}},
		{"nothing fits beside it", []int{60, 39, 39}, []int{60}},
		{"two small ones before one that leaves more", []int{60, 30, 28, 8}, []int{60, 28, 8}},
		{"two alike", []int{60, 18, 18}, []int{60, 18, 18}},
		{"many alike are tried once", many(500, 30, 28, 8), []int{60, 28, 8}},
		{"one is as long as the stick", []int{100, 1}, []int{100}},
	} {
		assert.Equal(t, c.want, companions(c.left, 100), c.name)
	}
}

// In a metric plan each section is named with its own size: a 2x4 is 38 x 89 mm, a 2x10
// 38 x 235.
func TestSectionsAreBoughtByTheirMetricSize(t *testing.T) {
	h := &framing.House{Plan: &plan.Plan{}, Members: []*framing.Member{piece(plan.Stud, "2x4", 3.5, 90), piece(plan.Joist, "2x10", 9.25, 190)}}
	h.Plan.Project.Units = units.Metric
	c := List(h)
	assert.Equal(t, "2x4 (38 x 89 mm)", c.bought("2x4"))
	assert.Equal(t, "2x10 (38 x 235 mm)", c.bought("2x10"))
	assert.Equal(t, "2x8", c.bought("2x8"), "not in the list")
	assert.Equal(t, "2x4", yardOf(nil, piece(plan.Stud, "2x4", 3.5, 90)).bought("2x4"), "in inches its name is its size")
}
