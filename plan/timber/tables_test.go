package timber

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestEveryCellOfTheSheathingTable(t *testing.T) {
	// SDPWS 2008/2015 Table 4.3A (read, a scan of the page with both columns; two
	// transcriptions agree): nominal seismic and wind, lb/ft, at 6, 4, 3, 2 in.
	want := map[string][8]float64{
		"structural I 5/16 6d":   {400, 560, 600, 840, 780, 1090, 1020, 1430},
		"structural I 3/8 8d":    {460, 645, 720, 1010, 920, 1290, 1220, 1710},
		"structural I 7/16 8d":   {510, 715, 790, 1105, 1010, 1415, 1340, 1875},
		"structural I 15/32 8d":  {560, 785, 860, 1205, 1100, 1540, 1460, 2045},
		"structural I 15/32 10d": {680, 950, 1020, 1430, 1330, 1860, 1740, 2435},
		"sheathing 5/16 6d":      {360, 505, 540, 755, 700, 980, 900, 1260},
		"sheathing 3/8 6d":       {400, 560, 600, 840, 780, 1090, 1020, 1430},
		"sheathing 3/8 8d":       {440, 615, 640, 895, 820, 1150, 1060, 1485},
		"sheathing 7/16 8d":      {480, 670, 700, 980, 900, 1260, 1170, 1640},
		"sheathing 15/32 8d":     {520, 730, 760, 1065, 980, 1370, 1280, 1790},
		"sheathing 15/32 10d":    {620, 870, 920, 1290, 1200, 1680, 1540, 2155},
		"sheathing 19/32 10d":    {680, 950, 1020, 1430, 1330, 1860, 1740, 2435},
	}
	// Least penetration of the same table: 6d 1-1/4, 8d 1-3/8, 10d 1-1/2 in.
	least := map[string]float64{"6d": 1.25, "8d": 1.375, "10d": 1.5}
	require.Len(t, panels, len(want))
	for _, p := range panels {
		name := p.Grade + " " + p.Thickness + " " + p.Nail
		w, ok := want[name]
		require.True(t, ok, name)
		for i := range 4 {
			assert.Equal(t, [2]float64{w[2*i], w[2*i+1]}, [2]float64{p.Seismic[i], p.Wind[i]}, "%s, column %d", name, i)
		}
		assert.Equal(t, least[p.Nail], p.Nailing, name)
	}
	assert.Equal(t, [4]float64{6, 4, 3, 2}, edges)
}

func TestEveryNailOfTheTable(t *testing.T) {
	// NDS 2018 Table L4 p.182 (transcribed): length, shank, head, in. The short nail
	// of straps is 0.148 x 1-1/2 (IRC 2018 R602.6.1, read); its head is that of 10d.
	want := map[string][3]float64{
		"6d common": {2, 0.113, 0.266}, "7d common": {2.25, 0.113, 0.266}, "8d common": {2.5, 0.131, 0.281},
		"10d common": {3, 0.148, 0.312}, "12d common": {3.25, 0.148, 0.312}, "16d common": {3.5, 0.162, 0.344},
		"20d common": {4, 0.192, 0.406},
		"6d box":     {2, 0.099, 0.266}, "7d box": {2.25, 0.099, 0.266}, "8d box": {2.5, 0.113, 0.297},
		"10d box": {3, 0.128, 0.312}, "12d box": {3.25, 0.128, 0.312}, "16d box": {3.5, 0.135, 0.344},
		"20d box":   {4, 0.148, 0.375},
		"7d sinker": {2.125, 0.099, 0.250}, "8d sinker": {2.375, 0.113, 0.266}, "10d sinker": {2.875, 0.120, 0.281},
		"12d sinker": {3.125, 0.135, 0.312}, "16d sinker": {3.25, 0.148, 0.344}, "20d sinker": {3.75, 0.177, 0.375},
		"10d x 1-1/2": {1.5, 0.148, 0.312},
	}
	for name, w := range want {
		n, ok := NailOf(name)
		require.True(t, ok, name)
		assert.Equal(t, w, [3]float64{n.Length, n.Diameter, n.Head}, name)
	}
}

func TestEverySpecies(t *testing.T) {
	// NDS 2018 Table 12.3.3A p.87 (transcribed): specific gravity.
	for name, g := range map[string]float64{
		"Douglas fir-larch": 0.50, "Douglas fir-larch (north)": 0.49, "Douglas fir-south": 0.46,
		"hem-fir": 0.43, "hem-fir (north)": 0.46, "spruce-pine-fir": 0.42, "spruce-pine-fir (south)": 0.36,
		"southern pine": 0.55, "mixed southern pine": 0.51, "western cedars": 0.36, "western woods": 0.36,
		"redwood": 0.37, "eastern softwoods": 0.36, "northern species": 0.35,
	} {
		s, ok := SpeciesOf(name)
		require.True(t, ok, name)
		assert.Equal(t, g, s.G, name)
	}
	// Compression across the grain, psi: NDS 2018 Supplement Tables 4A and 4B, from
	// memory.
	for name, fc := range map[string]float64{"Douglas fir-larch": 625, "southern pine": 565, "spruce-pine-fir": 425, "hem-fir": 405} {
		s, _ := SpeciesOf(name)
		assert.Equal(t, fc, s.FcPerp, name)
	}
}

func TestWetAndHotChains(t *testing.T) {
	// NDS 2018 Table 11.3.3 (transcribed): 0.7 lateral when wet as made or in use;
	// withdrawal 0.25 when it changes between the two. Table 11.3.4: 0.8 dry and
	// 0.7 wet to 125 degrees, 0.7 and 0.5 beyond; 1 to 100.
	for _, c := range []struct {
		name string
		cond Condition
		want float64
	}{
		{"made wet, lateral", Condition{Duration: 1, WetMade: true}, 0.7},
		{"100 degrees", Condition{Duration: 1, Temperature: 100}, 1},
		{"125 degrees", Condition{Duration: 1, Temperature: 125}, 0.8},
		{"126 degrees", Condition{Duration: 1, Temperature: 126}, 0.7},
		{"125 and wet", Condition{Duration: 1, Temperature: 125, WetUse: true}, 0.7 * 0.7},
		{"126 and wet", Condition{Duration: 1, Temperature: 126, WetUse: true}, 0.7 * 0.5},
		{"withdrawal, wet throughout", Condition{Duration: 1, WetMade: true, WetUse: true, ForWithdraw: true}, 1},
		{"withdrawal, wetted later", Condition{Duration: 1, WetUse: true, ForWithdraw: true}, 0.25},
		{"toe lateral", Condition{Duration: 1, ToeNail: true}, 0.83},
		{"toe withdrawal", Condition{Duration: 1, ToeNail: true, ForWithdraw: true}, 0.67},
	} {
		assert.InDelta(t, c.want, c.cond.Chain().Product(), 1e-12, c.name)
	}
}

// NDS 2018 Commentary Tables C12.1.5.7 p.254 and C12.1.6.6 p.255 (transcribed), in
// diameters: edge; end in tension and in compression; in a row along and across; between
// rows in line and staggered.
func TestEveryCellOfTheSmallSpacings(t *testing.T) {
	for _, c := range []struct {
		steel, prebored bool
		want            [7]float64
	}{
		{false, false, [7]float64{2.5, 15, 10, 15, 10, 5, 2.5}},
		{false, true, [7]float64{2.5, 10, 5, 10, 5, 3, 2.5}},
		{true, false, [7]float64{2.5, 10, 5, 10, 5, 3, 2.5}},
		{true, true, [7]float64{2.5, 5, 3, 5, 2.5, 2.5, 2.5}},
	} {
		s := SmallSpacingOf(c.steel, c.prebored)
		assert.Equal(t, c.want, [7]float64{s.Edge, s.EndTension, s.EndCompression, s.RowAlong, s.RowAcross, s.Rows, s.RowsStaggered}, "steel %v, prebored %v", c.steel, c.prebored)
	}
}

// A column may be 50 times as long as deep (NDS 2018 3.7.1.4, from memory): there FcE is 0.822
// x 510,000 / 2,500 = 167.7 psi, and a little longer it bears nothing.
func TestTheSlimmestColumn(t *testing.T) {
	w := Along{Fc: 1400, Emin: 510_000}
	v := Column{Along: w, Length: 275, Depth: 5.5, Duration: WindDuration}.Value()
	assert.InDelta(t, 167.7, v.FcE, 0.05)
	assert.Positive(t, v.Stress)
	assert.Zero(t, Column{Along: w, Length: 275.1, Depth: 5.5, Duration: WindDuration}.Value().Stress)
}

// No. 2 lumber along its grain, psi (NDS 2018 Supplement Tables 4A and 4B, from memory): Ft,
// Fv, Fc, Emin.
func TestLumberAlongItsGrain(t *testing.T) {
	want := map[string]Along{
		"Douglas fir-larch":       {500, 180, 1350, 580e3},
		"hem-fir":                 {525, 150, 1300, 470e3},
		"spruce-pine-fir":         {450, 135, 1150, 510e3},
		"spruce-pine-fir (south)": {350, 135, 1000, 400e3},
		"southern pine":           {600, 175, 1400, 510e3},
	}
	assert.Equal(t, want, alongGrain)
	_, ok := Species{Name: "driftwood"}.Along()
	assert.False(t, ok)
}

// Apparent stiffness Ga of SDPWS 2008/2015 Table 4.3A, kip/in, OSB and plywood at 6, 4, 3
// and 2 in (transcribed); the rows for 3/8 in sheathing were not seen.
func TestEveryStiffnessOfTheSheathingTable(t *testing.T) {
	want := map[string][2][4]float64{
		"structural I 5/16 6d":   {{13, 18, 23, 35}, {10, 13, 16, 22}},
		"structural I 3/8 8d":    {{19, 24, 30, 43}, {14, 17, 20, 24}},
		"structural I 7/16 8d":   {{16, 21, 27, 40}, {13, 16, 19, 24}},
		"structural I 15/32 8d":  {{14, 18, 24, 37}, {11, 14, 17, 23}},
		"structural I 15/32 10d": {{22, 29, 36, 51}, {16, 20, 22, 28}},
		"sheathing 5/16 6d":      {{13, 18, 24, 37}, {9.5, 12, 14, 18}},
		"sheathing 3/8 6d":       {},
		"sheathing 3/8 8d":       {},
		"sheathing 7/16 8d":      {{15, 22, 28, 42}, {11, 14, 17, 21}},
		"sheathing 15/32 8d":     {{13, 19, 25, 39}, {10, 13, 15, 20}},
		"sheathing 15/32 10d":    {{22, 30, 37, 52}, {14, 17, 19, 23}},
		"sheathing 19/32 10d":    {{19, 26, 33, 48}, {13, 16, 18, 22}},
	}
	for _, p := range panels {
		name := p.Grade + " " + p.Thickness + " " + p.Nail
		assert.Equal(t, want[name], [2][4]float64{p.OSB, p.Plywood}, name)
	}
}
