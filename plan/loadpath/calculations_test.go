package loadpath_test

import (
	"bytes"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/loadpath"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The cabin: 24 by 16 ft, 8 ft to its plates, 4:12 = 18.43 degrees, qh 26.6 psf (worked in
// Example), a 3 ft. Between 5 and 20 degrees GCpf of case A goes 13.43/15 of the way (ASCE
// 7-16 Fig. 28.3-1, second-hand): zone 1 0.40 to 0.53 is 0.516, 1E 0.61 to 0.80 is 0.780.
// Zone 2 ends half the building's dimension along the wind in, 8 and 12 ft. Directional: h
// 9.58 ft; across the ridge L/B is under 1, -0.5 at the leeward wall, along it 1.5, -0.4,
// and the strips end at h/2, h and 2h (Fig. 27.3-1, second-hand).
func TestWindRowsOfTheCabin(t *testing.T) {
	const (
		protected = "GCpi +/-0.18; enclosed, GCpi 0.18 of both signs"
		widths    = "a = 3'-0\": wall zone 5 lies within a of a corner of the house, zone 4 between; roof: edge, ridge and corner zones lie within 3'-0\" of eaves, rakes, ridges and hips as the figure draws them; zone 1 between"
	)
	envelope := [][2]string{
		{"Envelope", `qh Kd 26.6 psf; end zone 2a = 6'-0"; zone 2 to 8'-0" from the walls across the ridge, to 12'-0" along it; undersides +0.70`},
		{"GCpf, wind across the ridge", "1 +0.52, 2 -0.69, 3 -0.47, 4 -0.42, 1E +0.78, 2E -1.07, 3E -0.67, 4E -0.62"},
		{"GCpf, wind along the ridge", "1 -0.45, 2 -0.69, 3 -0.37, 4 -0.45, 5 +0.40, 6 -0.29, 1E -0.48, 2E -1.07, 3E -0.53, 4E -0.48, 5E +0.61, 6E -0.43"},
	}
	direct := [][2]string{
		{"Directional", "qh Kd 26.6 psf, G 0.85, h 9.6 ft"},
		{"Cp, wind across the ridge", "windward wall +0.80, leeward wall -0.50, side walls -0.70, windward slope, first -0.55, windward slope, second -0.08, leeward slope -0.57, soffit, windward +0.80"},
		{"Cp, wind along the ridge", "windward wall +0.80, leeward wall -0.40, side walls -0.70, roof to 4.8 ft -0.90, roof to 9.6 ft -0.90, roof to 19.2 ft -0.50, roof beyond 19.2 ft -0.30, roof, second -0.18, soffit, windward +0.80"},
	}
	for procedure, want := range map[string][][2]string{
		`procedure = "envelope"`:    envelope,
		`procedure = "directional"`: direct,
		"":                          append(append([][2]string{}, envelope...), direct...),
	} {
		rows := cabinWith(`procedure = "envelope"`, procedure).WindRows()
		require.Len(t, rows, 3+len(want), procedure)
		assert.Equal(t, "Procedure", rows[0][0])
		assert.True(t, strings.HasPrefix(rows[0][1], "ASCE 7-16, "), rows[0][1])
		assert.Equal(t, "Internal", rows[1][0])
		assert.True(t, strings.HasPrefix(rows[1][1], protected), rows[1][1])
		assert.Equal(t, want, rows[2:len(rows)-1], procedure)
		assert.Equal(t, [2]string{"Cladding zones", widths}, rows[len(rows)-1])
	}
	assert.Nil(t, windless().WindRows(), "no wind, no rows")
}

// windless is the cabin whose plan tells no wind.
func windless() *loadpath.Report {
	return cabinWith("[site]\nwind_speed = \"120 mph\"\nexposure = \"C\"\nedition = \"7-16\"\nprocedure = \"envelope\"\n", "")
}

// Wind across the ridge of the cabin blows along y, wind along it along x; of a procedure
// that is not used there are no cases. Zone 1 of case A: 26.6 psf x 0.516 = 13.7, with
// internal pressure 0.18 x 26.6 = 4.8 less, with suction as much more.
func TestCasesOfBothProcedures(t *testing.T) {
	both := cabinWith("procedure = \"envelope\"\n", "")
	a, b := both.EnvelopeCases()[0], both.EnvelopeCases()[1]
	assert.Equal(t, []any{"load case A", "across the ridge", plan.AxisY, 8}, []any{a.Name, a.Wind, a.Axis, len(a.Zones)})
	assert.Equal(t, []any{"load case B", "along the ridge", plan.AxisX, 12}, []any{b.Name, b.Wind, b.Axis, len(b.Zones)})
	assert.InDelta(t, 13.7, a.Zones[0].External, 0.05)
	assert.InDelta(t, 13.7-4.8, a.Zones[0].Plus, 0.1)
	assert.InDelta(t, 13.7+4.8, a.Zones[0].Minus, 0.1)
	d := both.DirectionalCases()
	require.Len(t, d, 2)
	assert.Equal(t, []any{"across the ridge", plan.AxisY, "along the ridge", plan.AxisX}, []any{d[0].Wind, d[0].Axis, d[1].Wind, d[1].Axis})
	assert.InDelta(t, 0.85*0.8*26.6, d[0].Surfaces[0].External, 0.02, "windward wall")
	assert.Empty(t, cabinReport().DirectionalCases())
	assert.Empty(t, cabinWith(`procedure = "envelope"`, `procedure = "directional"`).EnvelopeCases())
	figures := both.Figures()
	require.Len(t, figures, 2, "walls and a gable roof")
	assert.Contains(t, figures[0].Name, "Fig. 30.3-1")
	assert.Len(t, both.Overhangs(), len(figures[1].Zones)*2, "each zone at two areas")
	for _, o := range both.Overhangs() { // 10 and 20 ft²
		assert.Contains(t, []float64{10, 20}, o.Area)
	}
	assert.Equal(t, []float64{10, 32, 100}, loadpath.CladAreas())
	assert.Empty(t, both.OpenRoofs())
}

// The dead weights that are used: the cabin's by its plan, 10 psf of the slope are 10 x
// sqrt(1 + 1/9) = 10.54 psf on plan, and no floor over the ground.
func TestMassesOfTheCabin(t *testing.T) {
	assert.Equal(t, []loadpath.Mass{
		{Part: plan.DeadRoof, On: "roof roof", Psf: 10, How: "of the slope; 10.54 psf on plan"},
		{Part: plan.DeadCeiling, On: "ceiling under roof roof", Psf: 0, How: "between the walls; on ceiling joists, as simple spans from plate to plate: it relieves plates and what is below them, no rafter and no ridge, and nothing where no joist is framed"},
		{Part: plan.DeadWall, On: `exterior walls, 2x6 at 1'-4"`, Psf: 5, How: "of the face, openings counted as wall"},
	}, cabinReport().Masses())
	parts := map[plan.DeadPart]int{}
	for _, m := range reported(t, "marsh-wren.toml", "").Masses() {
		parts[m.Part]++
	}
	assert.Equal(t, 2, parts[plan.DeadFloor], "two floors over piles")
	assert.Positive(t, parts[plan.DeadInteriorWall])
}

// What a storm overtakes, in five characters of speed: under the lowest and over the
// highest speed looked at they have a sign. A link is counted by a speed that is met.
func TestSpeedsInWords(t *testing.T) {
	list := []loadpath.Overtaken{{Speed: 60, Under: true}, {Speed: 120}, {Speed: 150.4}, {Speed: 375, Over: true}}
	for mph, want := range map[float64]int{59: 0, 60: 1, 119.9: 1, 120: 2, 150: 2, 151: 3, 400: 3} {
		assert.Equal(t, want, loadpath.Reached(list, mph), "%v mph", mph)
	}
	var b bytes.Buffer
	missing := windless()
	require.NoError(t, missing.WriteSpeeds(&b, nil, ""))
	assert.Contains(t, b.String(), "wind_speed")
	assert.NotContains(t, b.String(), "Speeds are")
	assert.Nil(t, missing.Speeds(""))
	b.Reset()
	r := cabinReport()
	require.NoError(t, r.WriteSpeeds(&b, nil, ""))
	text := b.String()
	for _, side := range plan.Sides {
		assert.Contains(t, text, "Wind from "+string(side))
	}
	assert.NotContains(t, text, "With ")
	assert.Contains(t, text, "  design")
	assert.Regexp(t, `\n\d+ gaps beside these: check --loads`, text)
	// Twice: the limit of a link at 120 mph by the numbers printed beside the design speed.
	all, reached := r.Speeds(""), 0
	for _, o := range all {
		if o.Ratio > 1 {
			reached++
		}
	}
	assert.Equal(t, reached, loadpath.Reached(all, 120), "at the design wind those over 1")
}

// The bounds that the cabin lies within: 9.58 ft high of 60, 24 by 16 ft of 3 to 1, 9.58 /
// 16 = 0.60 of 1, one story of two, 18.43 of 45 degrees.
func TestBoundsOfTheCabin(t *testing.T) {
	got := map[string][2]float64{}
	for _, b := range cabinReport().Bounds() {
		got[b.What] = [2]float64{b.Value, b.Most}
		assert.False(t, b.Outside(), b.What)
	}
	for what, want := range map[string][2]float64{
		"height, low-rise": {9.58, 60}, "length over width of the plan": {1.5, 3}, "height over width, low-rise": {0.598, 1},
		"stories, no torsional cases": {1, 2}, "angle of roof roof": {18.43, 45},
	} {
		assert.InDeltaSlice(t, want[:], []float64{got[what][0], got[what][1]}, 0.01, what)
	}
}
