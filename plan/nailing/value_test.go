package nailing

import (
	"math"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/timber"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// lineOf is a line of one nail at one connection.
func lineOf(c plan.Connection, nail string, drive plan.Drive) (*Line, *Spot) {
	d, long, err := plan.NailSize(nail)
	if err != nil {
		panic(err)
	}
	stud := &framing.Member{S0: 0, S1: 1.5, Section: plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 5.5}}
	other := &framing.Member{S0: 1.5, S1: 3, Section: plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 11.25}}
	return &Line{Row: c.Row(), Order: &plan.NailLine{At: c, Nail: nail, Size: plan.NailDim{Diameter: d, Length: long}, Drive: drive}},
		&Spot{Row: c.Row(), Side: stud, Main: other, Times: 1}
}

// Through a king (1-1/2 in) into the end of a header a 16d common nail has
// full penetration: NDS 2018 Table 12N, ts 1-1/2: 120 lb at G 0.42
// (transcribed), 141 lb at G 0.50 (NDS 2005 Table 11N, second-hand); CD 1.6
// (Table 2.3.2, transcribed); end grain 0.67 (12.5.2.2, transcribed), nothing
// drawn out of it (12.2.3.3, transcribed).
func TestEndNailsIntoAHeader(t *testing.T) {
	for g, table := range map[float64]float64{0.42: 120, 0.50: 141} {
		l, s := lineOf(plan.HeaderToKing, "16d common", plan.EndNail)
		wood := timber.Species{Name: "test", G: g}
		v := l.One(s, wood)
		require.Empty(t, v.Nothing)
		assert.InDelta(t, table*1.6*0.67, v.Lateral, 0.5*1.6*0.67)
		assert.Zero(t, v.Pull)
		assert.Contains(t, v.PullBy, "end grain")
		lb, _ := l.Uplift(s, wood)
		assert.InDelta(t, v.Lateral, lb, 1e-9, "uplift loads them across")
	}
}

// A 10d common nail through a jack just reaches through the king: 1-1/2 in of
// 10 x 0.148. Mode IV, 128 lb at G 0.55, by NDS 2018 equation 12.3-6 (transcribed) with Fe
// 16,600 x 0.55^1.84 to the nearest 50, Fyb 90,000, Rd 2.2: worked here.
func TestFaceNailsFromJackToKing(t *testing.T) {
	l, s := lineOf(plan.JackToKing, "10d common", plan.FaceNail)
	fe := math.Round(16600*math.Pow(0.55, 1.84)/50) * 50
	z := 0.148 * 0.148 / 2.2 * math.Sqrt(2*fe*90_000/(3*2))
	lb, how := l.Uplift(s, timber.Species{G: 0.55})
	assert.InDelta(t, z*1.6, lb, 0.1)
	assert.Contains(t, how, "1.50 in of penetration")
}

// Toe-nails: NDS 2018 12.1.6.3 (transcribed): 16d common, bearing L/3 = 1.1667
// in the stud and L cos 30 - L/3 = 1.8644 in the rest, here 1-1/2 at most; Ctn
// 0.83 (12.5.4, transcribed). No uplift (FEMA P-499 Fact Sheet 4.3, read).
func TestToeNailsHoldNoUplift(t *testing.T) {
	l, s := lineOf(plan.SoleToStud, "16d common", plan.ToeNail)
	v := l.One(s, timber.Species{G: 0.50})
	d := timber.Dowel{D: 0.162, Fyb: 90_000, Fem: 4650, Fes: 4650, Lm: 3.5*math.Cos(math.Pi/6) - 3.5/3, Ls: 3.5 / 3}
	assert.InDelta(t, d.SingleShear().Z*1.6*0.83, v.Lateral, 0.1)
	assert.Zero(t, v.Pull)
	l, s = lineOf(plan.HeaderToKing, "16d common", plan.ToeNail)
	lb, _ := l.Uplift(s, timber.Species{G: 0.50})
	assert.Zero(t, lb)
}

// In wet wood a nail holds 0.7 across its shank, straight or slanting, and a quarter drawn
// out, its head pulled through 0.7 of it (NDS 2018 Table 11.3.3, transcribed: dry when
// nailed, wet in service).
func TestNailsInWetWood(t *testing.T) {
	wood := timber.Species{G: 0.55}
	for _, c := range []struct {
		at    plan.Connection
		nail  string
		drive plan.Drive
		pull  float64
	}{
		{plan.GirderPlies, "16d common", plan.FaceNail, 0.25},
		{plan.SoleAtShearWall, "20d common", plan.FaceNail, 0.25},
		{plan.RimToSupport, "10d common", plan.ToeNail, 0},
		{plan.HeaderToKing, "16d common", plan.EndNail, 0},
	} {
		l, s := lineOf(c.at, c.nail, c.drive)
		dry := l.One(s, wood)
		s.Wet = true
		wet := l.One(s, wood)
		require.Positive(t, dry.Lateral, c.at)
		assert.InDelta(t, 0.7*dry.Lateral, wet.Lateral, 1e-9, c.at)
		assert.InDelta(t, c.pull*dry.Pull, wet.Pull, 1e-9, c.at)
		assert.Contains(t, wet.Text, "CM 0.7", c.at)
		assert.NotContains(t, dry.Text, "CM", c.at)
	}
}

// Bottom plates: 16d common through 1-1/2 in and 23/32 of subfloor leave
// 1.281 in in the rim. Withdrawal 1380 G^2.5 D (NDS 2018 12.2-3, transcribed)
// on that, CD 1.6. Across, the subfloor counts as air: less than the same nail
// without it.
func TestBottomPlatesOverASubfloor(t *testing.T) {
	l, s := lineOf(plan.SoleToFloor, "16d common", plan.FaceNail)
	s.Gap = 23.0 / 32
	wood := timber.Species{G: 0.55}
	lb, how := l.Uplift(s, wood)
	assert.InDelta(t, 1380*math.Pow(0.55, 2.5)*0.162*(3.5-1.5-23.0/32)*1.6, lb, 0.1)
	assert.Contains(t, how, "drawn out")
	v := l.One(s, wood)
	s.Gap = 0
	assert.Less(t, v.Lateral, l.One(s, wood).Lateral)
	s.Gap = 23.0 / 32
	short, _ := lineOf(plan.SoleToFloor, "8d common", plan.FaceNail)
	assert.NotEmpty(t, short.One(s, wood).Nothing, "8d reaches 0.28 in")
	lb, _ = short.Uplift(s, wood)
	assert.Zero(t, lb)
}

// Connections whose nails hold no uplift say so whatever is ordered.
func TestOtherConnectionsHoldNoUplift(t *testing.T) {
	for _, row := range plan.NailedConnections {
		if row.Holds {
			continue
		}
		l, s := lineOf(row.Connection, "16d common", row.Drives[0])
		lb, _ := l.Uplift(s, timber.Species{G: 0.55})
		assert.Zero(t, lb, row.Connection)
	}
}

// What the equations have no answer for holds nothing and says why: a nail through no wood,
// wood of no known or of too little gravity, a nail of no known bending strength. Of wood
// lighter than G 0.31 withdrawal alone is not known.
func TestNailsThatHaveNoValue(t *testing.T) {
	pine := timber.Species{G: 0.55}
	thin := func(s *Spot) { s.Side = &framing.Member{S0: 4, S1: 4, Section: s.Side.Section} }
	for _, c := range []struct {
		name          string
		at            plan.Connection
		change        func(*Spot)
		wood          timber.Species
		nothing, pull string
	}{
		{"as it is", plan.JackToKing, func(*Spot) {}, pine, "", "withdrawal governs"},
		{"through no wood", plan.JackToKing, thin, pine, "side part 0.000 in thick", ""},
		{"wood of no gravity", plan.JackToKing, func(*Spot) {}, timber.Species{}, "specific gravity", "not 0.00"},
		{"light wood", plan.JackToKing, func(*Spot) {}, timber.Species{G: 0.30}, "", "not 0.30"},
		{"into end grain", plan.HeaderToKing, func(*Spot) {}, pine, "", "end grain"},
	} {
		drive := plan.FaceNail
		if c.at == plan.HeaderToKing {
			drive = plan.EndNail
		}
		l, s := lineOf(c.at, "10d common", drive)
		c.change(s)
		v := l.One(s, c.wood)
		if c.nothing == "" {
			assert.Empty(t, v.Nothing, c.name)
			assert.Positive(t, v.Lateral, c.name)
			assert.Contains(t, v.Text, "through 1.50 in", c.name)
		} else {
			assert.Contains(t, v.Nothing, c.nothing, c.name)
			assert.Zero(t, v.Lateral, c.name)
			assert.Empty(t, v.Text, c.name)
		}
		assert.Contains(t, v.PullBy, c.pull, c.name)
		assert.Equal(t, c.name == "as it is", v.Pull > 0, c.name)
	}
	l, s := lineOf(plan.JackToKing, "10d common", plan.FaceNail)
	l.Order.Size.Diameter = 0.5
	assert.Contains(t, l.One(s, pine).Nothing, "no bending yield strength is known for a nail of 0.500 in")
	assert.Empty(t, gapped(l.Units, 0))
	assert.Contains(t, gapped(l.Units, 0.719), "0.719 in of subfloor")
}

// How thick the wood is that a nail meets on both sides, in: the plies of a beam theirs,
// studs theirs along the wall, a corner's no more than a 2-by of it, plates and toe-nailed
// wood 1-1/2, an end of a member as long as the nail.
func TestWoodOnBothSidesOfANail(t *testing.T) {
	stud := &framing.Member{S0: 0, S1: 1.5, Section: plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 5.5}}
	post := &framing.Member{S0: 0, S1: 3.5, Section: plan.Lumber{Ply: 1, Breadth: 3.5, Depth: 5.5}}
	joist := &framing.Member{Section: plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 9.25}}
	header := &framing.Member{Section: plan.Lumber{Ply: 3, Breadth: 1.5, Depth: 9.25}}
	rim := &framing.Member{Section: plan.Lumber{Ply: 1, Breadth: 1.125, Depth: 11.25}}
	for _, c := range []struct {
		at         plan.Connection
		side, main *framing.Member
		want       [2]float64
	}{
		{plan.HeaderPlies, header, header, [2]float64{1.5, 1.5}},
		{plan.JackToKing, stud, post, [2]float64{1.5, 3.5}},
		{plan.BuiltUpStuds, post, stud, [2]float64{3.5, 1.5}},
		{plan.CornerStuds, post, stud, [2]float64{1.5, 1.5}},
		{plan.TopPlates, stud, stud, [2]float64{1.5, 1.5}},
		{plan.HeaderToKing, stud, header, [2]float64{1.5, 24}},
		{plan.SoleToFloor, stud, joist, [2]float64{1.5, 9.25}},
		{plan.SoleToFloor, stud, &framing.Member{}, [2]float64{1.5, 1.5}},
		{plan.RafterToJoist, joist, header, [2]float64{1.5, 4.5}},
		{plan.RimToJoist, rim, joist, [2]float64{1.125, 24}},
	} {
		side, main := (&Spot{Row: c.at.Row(), Side: c.side, Main: c.main}).sides()
		assert.Equal(t, c.want, [2]float64{side, main}, c.at)
	}
	// A beveled stud 4x6 ripped at 22.5 degrees: half way through 5.5 in it has lost 2.75 tan
	// 22.5 = 1.139 of 3.5 in, and square to the bevel 2.361 x cos 22.5 = 2.181.
	assert.InDelta(t, 2.181, breadth(&framing.Member{S1: 3.5, Bevel: 22.5, Section: plan.Lumber{Depth: 5.5}}), 1e-3)
	assert.Zero(t, breadth(&framing.Member{S1: 1, Bevel: 45, Section: plan.Lumber{Depth: 5.5}}))
}
