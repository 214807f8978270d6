package schedule

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/steel"
	"galewright/plan/units"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// cells splits a table into lines of trimmed cells; two spaces part cells. The
// caution over it and the empty line after that are left out.
func cells(text string) (out [][]string) {
	_, text, _ = strings.Cut(text, "\n\n")
	for line := range strings.Lines(text) {
		var row []string
		for _, c := range strings.Split(strings.TrimRight(line, "\n"), "  ") {
			if c = strings.TrimSpace(c); c != "" {
				row = append(row, c)
			}
		}
		out = append(out, row)
	}
	return out
}

func TestCountTableByWall(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, Count(&b, small(t), "wall", "table"))
	// The heading of a wall stands once over its items; pieces and nails as in
	// small: 4 x 18 = 72, 2 x 20 = 40, 2 x 18 = 36, 3 x 12 = 36.
	assert.Equal(t, [][]string{
		{"no.", "mark", "kind", "size", "coating", "install", "pieces", "fasteners"},
		{"wall 1S"},
		{"2", "wall-strap", "strap", `3'-0" x 1 3/8" x 19 ga`, "G185", "before sheathing", "4", "72 10d x 1 1/2 (0.148 x 1 1/2), coating blank"},
		{"wall 2S"},
		{"1", "hold-down-pair", "hold-down pair", `10 5/8" x 5/8" rod`, "blank", "inside", "2", "40 10d x 1 1/2 (0.148 x 1 1/2), coating blank, by hand only"},
		{"2", "wall-strap", "strap", `3'-0" x 1 3/8" x 19 ga`, "G185", "before sheathing", "2", "36 10d x 1 1/2 (0.148 x 1 1/2), coating blank"},
		{"roof main"},
		{"3", "coil", "coil strap", `2'-6" x 1 3/8" x 19 ga`, "blank", "before sheathing", "3", "36 10d x 1 1/2 (0.148 x 1 1/2), coating blank"},
		{"all", "11", "184"},
	}, cells(b.String()))
	b.Reset()
	require.NoError(t, Count(&b, small(t), "item", "table"))
	assert.NotContains(t, b.String(), "item ", "items have no heading over them")
}

// uncautioned takes the last column off: each line ends with the caution.
func uncautioned(t *testing.T, text string) string {
	t.Helper()
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	require.NoError(t, err)
	var b strings.Builder
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	for i, r := range rows {
		last := r[len(r)-1]
		assert.Equal(t, i == 0, last == "caution")
		assert.Equal(t, i > 0, strings.Contains(last, "engineer of record"), last)
		require.NoError(t, w.Write(r[:len(r)-1]))
	}
	w.Flush()
	return b.String()
}

// twoNails is one clip that takes five nails of one size and four of another,
// by hand, and one generic piece without nails.
func twoNails(t *testing.T) *Schedule {
	c, ds := hardware.New([]*plan.Item{
		{Mark: "clip", Kind: "clip", Fasteners: []plan.Fasteners{{Part: "to stud", Nail: "8d common", Count: 5, Coating: plan.HotDip}, {Part: "to plate", Nail: "10d common", Count: 4, HandOnly: true}}},
		{Mark: "shim", Kind: "generic"},
	})
	require.Empty(t, ds)
	p := &placement.Placement{House: &framing.House{Plan: &plan.Plan{}}, Catalog: c}
	for _, it := range c.Items {
		p.Pieces = append(p.Pieces, &placement.Piece{Item: it, Joint: &framing.Joint{Host: "1S"}, Rule: &plan.Rule{}})
	}
	return New(steel.New(p))
}

func TestFurtherNailsHaveRowsWithoutPieces(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, Count(&b, twoNails(t), "item", "csv"))
	assert.Equal(t, strings.Join([]string{
		"number,mark,kind,size,phase,pieces,fastener,driven,fasteners,coating,fastener_coating",
		"1,clip,clip,,before sheathing,1,8d common (0.131 x 2 1/2),any,5,,hot-dip zinc",
		"1,clip,clip,,before sheathing,0,10d common (0.148 x 3),hand,4,,",
		"2,shim,generic,,before sheathing,1,,,0,,", "",
	}, "\r\n"), uncautioned(t, b.String()))
	b.Reset()
	require.NoError(t, Count(&b, twoNails(t), "item", "table"))
	assert.Equal(t, [][]string{
		{"no.", "mark", "kind", "size", "coating", "install", "pieces", "fasteners"},
		{"1", "clip", "clip", "blank", "before sheathing", "1", "5 8d common (0.131 x 2 1/2), hot-dip zinc"},
		{"4 10d common (0.148 x 3), coating blank, by hand only"},
		{"2", "shim", "generic", "blank", "before sheathing", "1", "none"},
		{"all", "2", "9"},
	}, cells(b.String()))
	b.Reset()
	require.NoError(t, Count(&b, twoNails(t), "level", "csv"))
	assert.Contains(t, b.String(), "\r\nfoundation,1,clip", "a joint of no level and no roof")
}

func TestOrderTable(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, Order(&b, small(t), 0.10, "table"))
	rows := cells(b.String())
	assert.Equal(t, []string{"no.", "what", "detail", "coating", "count", "with 10%", "order", "packs", "source"}, rows[0])
	var sections []string
	for _, r := range rows[1:] {
		if len(r) == 1 {
			sections = append(sections, r[0])
		}
	}
	require.Greater(t, len(sections), 8)
	assert.Equal(t, []string{"pieces", "coil", "nails", "rods", "nuts", "washers", "panels", "hours"}, sections[:8], "each once")
	for _, key := range sections[8:] {
		assert.Contains(t, key, "source ", "the key of the sources' grades follows")
	}
	// Numbers as worked out beside TestOrderList.
	assert.Contains(t, rows, []string{"2", "wall-strap", `3'-0" x 1 3/8" x 19 ga`, "G185", "6", "7", "8 each", "2 packs of 4"})
	assert.Contains(t, rows, []string{"1", "hold-down-pair", `10 5/8" x 5/8" rod, 2 bodies each`, "blank", "4", "5", "5 each"})
	// Four cuts of 30 in are 120 in; 120 / 70 = 1.7, no cutting needs fewer than 2.
	assert.Contains(t, rows, []string{"3", "coil", `10'-0" of strap, 2'-6" x 1 3/8" x 19 ga`, "blank", "3", "4", "2 rolls", `2 rolls of 5'-10"`, "cut longest first, best fit; at least 2 needed however they are cut"})
	assert.Contains(t, rows, []string{`washer for 5/8" rod`, `2" square plate, 1/4" thick`, "blank", "4", "5", "5 each"})
	// Rods of 22 1/8 in are bought to the next quarter: 22 1/4.
	assert.Contains(t, rows, []string{`5/8" threaded rod`, `1'-10 1/4" long`, "blank", "2", "2", "2 each"})
	assert.Contains(t, rows, []string{"install inside", "without 2 pieces that have no minutes", "0", "0", "0 hours", "minutes from the catalog"})
}

func TestJSONOfOneAndOfMany(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, Count(&b, small(t), "wall", "json"))
	text := b.String()
	var all struct{ Rows []map[string]any }
	require.NoError(t, json.Unmarshal([]byte(text), &all))
	require.Len(t, all.Rows, 4)
	assert.Contains(t, text, "{\"wall\": \"1S\", \"number\": 2, ")
	assert.Equal(t, "main", all.Rows[3]["wall"])
	assert.EqualValues(t, 3, all.Rows[3]["pieces"])
}

func TestCellsThatLookLikeFormulas(t *testing.T) {
	for in, want := range map[string]string{"=1+1": "'=1+1", "+5": "'+5", "-5": "'-5", "@x": "'@x", "\tx": "'\tx", "1S": "1S", "": ""} {
		assert.Equal(t, want, plain(in), in)
	}
	assert.Equal(t, "12", plain(12))
	assert.Equal(t, "1.3", plain(1.3))
	assert.Equal(t, "true", plain(true))
}

func TestSizeSaysWhatIsKnown(t *testing.T) {
	for want, it := range map[string]plan.Item{
		`0.05"`:                   {Thickness: 0.05},
		`16 ga`:                   {Gauge: "16ga", Thickness: 0.0598},
		`18 ga`:                   {Gauge: "18 ga"},
		`1'-0" x 2" x 1/2" rod`:   {Length: 12, Width: 2, Rod: 0.5},
		`1'-0" x 0.048" x 1" rod`: {Length: 12, Thickness: 0.048, Rod: 1},
		``:                        {},
	} {
		assert.Equal(t, want, Size(units.Imperial, &hardware.Item{Item: &it}))
	}
	for v, want := range map[float64]string{5: "5", 10: "10", 0.05: "0.05", 1.2345: "1.234", 100: "100", 0: "0"} {
		assert.Equal(t, want, number(v))
	}
}

func TestRollsBestFit(t *testing.T) {
	// Rolls of 100: 70, 60, 40, 30 in that order: 70 opens one (30 left), 60 another
	// (40 left); 40 fits only the second, which it fills; 30 fills the first.
	rolls, bound := Rolls([]float64{30, 60, 40, 70}, 100)
	assert.Equal(t, 2, bound)
	require.Len(t, rolls, 2)
	assert.Equal(t, []float64{70, 30}, rolls[0].Cuts)
	assert.Equal(t, []float64{60, 40}, rolls[1].Cuts)
	// Of two rolls that have it, the fuller: 60 leaves 40 and 70 leaves 30, so 25
	// goes to the second with 5 left.
	rolls, _ = Rolls([]float64{70, 60, 25}, 100)
	assert.Equal(t, []float64{70, 25}, rolls[0].Cuts)
	assert.InDelta(t, 5, rolls[0].Left, 1e-9)
	// 110 in of cuts from rolls of 100 need 2 at least, 100 in just 1.
	_, bound = Rolls([]float64{60, 50}, 100)
	assert.Equal(t, 2, bound)
	_, bound = Rolls([]float64{60, 40}, 100)
	assert.Equal(t, 1, bound)
	rolls, bound = Rolls(nil, 100)
	assert.Empty(t, rolls)
	assert.Zero(t, bound)
	rolls, _ = Rolls([]float64{5}, 0)
	assert.Empty(t, rolls)
}

func TestNailsOfPanels(t *testing.T) {
	// Panels of 48 x 96, edges 4 in, field 12 in, studs at 16; a wall of 96 high and
	// a segment of 48: 2 x 12 + 2 x 24 = 72 round the edges, two studs between
	// with 96 / 12 - 1 = 7 each: 86.
	seg := func(to, edge, field float64, both bool) *Sheathing {
		h := &Sheathing{Wall: &plan.Wall{Spacing: 16}, Shear: &plan.Shear{To: to, Edge: edge, Field: field, BothFaces: both}, Size: [2]float64{48, 96}}
		h.count(96)
		return h
	}
	h := seg(48, 4, 12, false)
	assert.Equal(t, [2]int{1, 86}, [2]int{h.Panels, h.Nails})
	h = seg(48, 4, 12, true)
	assert.Equal(t, [2]int{2, 172}, [2]int{h.Panels, h.Nails})
	// 50 in: another panel 2 in wide, 2 x 1 + 2 x 24 = 50 and no stud between.
	h = seg(50, 4, 12, false)
	assert.Equal(t, [2]int{2, 136}, [2]int{h.Panels, h.Nails})
	assert.Zero(t, seg(48, 0, 12, false).Nails, "no spacing known, no nails counted")
	assert.Zero(t, seg(48, 4, 0, false).Nails)
}

// One nail in two coatings is two lines of the order list, and so are nuts and
// washers of one rod.
func TestOrderKeepsCoatingsApart(t *testing.T) {
	c, ds := hardware.New([]*plan.Item{
		{Mark: "clip", Kind: plan.ClipItem, Coating: plan.G185, Fasteners: []plan.Fasteners{{Part: "each leg", Parts: 2, Nail: "8d common", Count: 5, Coating: plan.HotDip}}},
		{Mark: "clip-outside", Kind: plan.ClipItem, Coating: plan.Stainless316, Fasteners: []plan.Fasteners{{Part: "each leg", Parts: 2, Nail: "8d common", Count: 5, Coating: plan.Stainless316}}},
		{Mark: "bolt", Kind: plan.AnchorBoltItem, Length: 12, Rod: 0.625, Coating: plan.HotDip},
		{Mark: "bolt-outside", Kind: plan.AnchorBoltItem, Length: 12, Rod: 0.625, Coating: plan.Stainless316},
	})
	require.Empty(t, ds)
	sill := &framing.Member{Role: plan.SillPlate, A: geom.Vec3{Y: 2.75, Z: 0.75}, B: geom.Vec3{X: 96, Y: 2.75, Z: 0.75}, Solid: []geom.Solid{geom.Box(geom.Vec3{}, geom.Vec3{X: 96}, geom.Vec3{Y: 5.5}, geom.Vec3{Z: 1.5})}}
	p := &placement.Placement{House: &framing.House{Plan: &plan.Plan{}, Members: []*framing.Member{sill}}, Catalog: c}
	for _, it := range c.Items {
		q := &placement.Piece{Item: it, Joint: &framing.Joint{Host: "1S"}, Rule: &plan.Rule{}}
		if it.Rod > 0 {
			q.Rod = &placement.Axis{A: geom.Vec3{X: 40, Y: 2.75, Z: 3}, B: geom.Vec3{X: 40, Y: 2.75, Z: -9}}
		}
		p.Pieces = append(p.Pieces, q)
	}
	got := map[string][]string{}
	for _, r := range New(steel.New(p)).Orders(0) {
		got[r.Section] = append(got[r.Section], fmt.Sprintf("%s, %s: %d", r.Name, r.Coating, r.Count))
	}
	assert.Equal(t, []string{"clip, G185: 1", "clip-outside, stainless 316: 1", "bolt, hot-dip zinc: 1", "bolt-outside, stainless 316: 1"}, got["pieces"])
	assert.Equal(t, []string{"8d common (0.131 x 2 1/2), hot-dip zinc: 10", "8d common (0.131 x 2 1/2), stainless 316: 10"}, got["nails"])
	assert.Equal(t, []string{`nut for 5/8" rod, hot-dip zinc: 1`, `nut for 5/8" rod, stainless 316: 1`}, got["nuts"])
	assert.Len(t, got["washers"], 2)
}
