package placement

import (
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func yes() *bool { b := true; return &b }

func tags(p *Placement) (out []string) {
	for _, q := range p.Pieces {
		out = append(out, q.Tag)
	}
	return out
}

func TestStoryStrapIsCenteredOnTheGap(t *testing.T) {
	// 42 in of strap, gap 1.5 + 12.875 + 3 = 17.375: laps (42 - 17.375) / 2 = 12.3125.
	// The stud above starts at 242 + 1.5 = 243.5, the one below ends at 229.125 - 3 = 226.125.
	p, ds := placed(t, standard().with(plan.Rule{Name: "story", At: "stud-stud", Use: "story-strap"}))
	require.Empty(t, ds)
	require.Len(t, p.Pieces, 7)
	q := p.Piece("2S-16-SS-strap")
	require.NotNil(t, q)
	assert.Equal(t, [2]float64{12.3125, 12.3125}, q.Laps())
	require.Len(t, q.Path, 2)
	assert.InDelta(t, 226.125-12.3125, q.Path[0].Z, 1e-9)
	assert.InDelta(t, 243.5+12.3125, q.Path[1].Z, 1e-9)
	assert.InDelta(t, 16, q.Path[0].X, 1e-9)
	assert.InDelta(t, 0, q.Path[0].Y, 1e-9, "the outside face of the studs")
	assert.Equal(t, plan.Outside, q.Face)
}

func TestBaseStrapTakesWhatTheRimGives(t *testing.T) {
	// 36 in of strap over a gap of 2.25: half of the rest is 16.875, but the
	// rim is 11.25 deep; the stud gets 36 - 2.25 - 11.25 = 22.5.
	p, ds := placed(t, standard().with(plan.Rule{Name: "base", At: "stud-base", Use: "base-strap"}))
	require.Empty(t, ds)
	q := p.Piece("1S-32-SB-strap")
	require.NotNil(t, q)
	assert.Equal(t, [2]float64{22.5, 11.25}, q.Laps())
	assert.InDelta(t, floor1-0.75-rimDeep, q.Z0, 1e-9)
	assert.InDelta(t, floor1+1.5+22.5, q.Z1, 1e-9)
}

func TestWrapGoesOverThePlatesByItsTrueGirth(t *testing.T) {
	// 30 in of strap: 5.5 over the wall leaves legs of 12.25, 3 of which lie
	// on the two plates: 9.25 on the stud.
	p, ds := placed(t, standard().with(plan.Rule{Name: "wrap", At: "stud-top", Use: "wrap-strap", Where: plan.Where{Level: []string{"second"}}}))
	require.Empty(t, ds)
	q := p.Piece("2S-48-ST-wrap")
	require.NotNil(t, q)
	require.Len(t, q.Path, 4)
	sum := 0.0
	for i := range q.Path[1:] {
		sum += q.Path[i+1].Sub(q.Path[i]).Len()
	}
	assert.InDelta(t, 30, sum, 1e-9, "the path is as long as the steel")
	assert.Equal(t, [2]float64{9.25, 9.25}, q.Laps())
	assert.InDelta(t, top2, q.Z1, 1e-9)
	assert.InDelta(t, 5.5, q.Path[3].Y, 1e-9, "the inside face")
}

func TestWrapGoesDownTheInsideWhereTheOutsideIsTaken(t *testing.T) {
	// The story strap covers the outside of the lower stud's top and plates;
	// the wrap goes over the plates, 5.5, and the other 24.5 down the inside:
	// 21.5 of it on the stud.
	p, ds := placed(t, standard().with(
		plan.Rule{Name: "story", At: "stud-stud", Use: "story-strap"},
		plan.Rule{Name: "wrap", At: "stud-top", Use: "wrap-strap", Where: plan.Where{Level: []string{"first"}}}))
	require.Empty(t, ds)
	q := p.Piece("1S-48-ST-wrap")
	require.NotNil(t, q)
	assert.Equal(t, plan.Inside, q.Face)
	assert.Equal(t, [2]float64{21.5, 5.5}, q.Laps())
	require.Len(t, q.Path, 3)
	assert.InDelta(t, top1-24.5, q.Path[2].Z, 1e-9)
	story, err := p.Explain(q.Tag)
	require.NoError(t, err)
	assert.Contains(t, story, "moved there because 2S-48-SS-strap lies in its first place")
}

func TestCoilIsCutToItsJoint(t *testing.T) {
	// Two laps of 15 and the gap of 17.375: 47.375. At the base 15 on the
	// stud, 2.25, and the rim's 11.25: 28.5.
	p, ds := placed(t, standard().with(
		plan.Rule{Name: "story", At: "stud-stud", Use: "coil"},
		plan.Rule{Name: "base", At: "stud-base", Use: "coil"}))
	require.Empty(t, ds)
	assert.InDelta(t, 47.375, p.Piece("2S-64-SS-coil").Cut, 1e-9)
	assert.InDelta(t, 28.5, p.Piece("1S-64-SB-coil").Cut, 1e-9)
}

func TestLongStrapFromInsideCutsTheSubfloor(t *testing.T) {
	// 2.125 in of strap and half an inch to thread it: 2.625 along the wall;
	// 0.0673 of steel and half an inch across: 0.5673.
	p, ds := placed(t, standard().with(plan.Place{Use: "floor-strap", Wall: "2S", At: []float64{80.5}}))
	require.Empty(t, ds)
	require.Len(t, p.Pieces, 1)
	q := p.Pieces[0]
	assert.Equal(t, "2S-80-SS-long", q.Tag)
	assert.Equal(t, plan.Inside, q.Face)
	require.Len(t, p.Holes, 1)
	h := p.Holes[0]
	assert.Equal(t, "second", h.Level.Name)
	assert.InDeltaSlice(t, []float64{2.625, 0.5673}, h.Size[:], 1e-9)
	assert.InDelta(t, 80, h.At.X, 1e-9)
	assert.InDelta(t, 5.5+0.5673/2, h.At.Y, 1e-9)
	assert.InDelta(t, floor2, h.At.Z, 1e-9)
}

func TestHoldDownPairHasItsRodToLength(t *testing.T) {
	// Rod: gap 17.375 + two standoffs of 1.5 + at each end a plate washer of
	// 0.25, a nut of 0.625 and 0.25 of thread: 17.375 + 3 + 2.25 = 22.625. Rod line 1.4375 from the
	// stud's right side, 0.75 + 0.75 + 1.4375 = 2.9375 from the wall's start.
	p, ds := placed(t, standard().with(plan.Place{Use: "hold-down-pair", Wall: "2S", On: "stud-stud", At: []float64{0.75}}))
	require.Empty(t, ds)
	q := p.Piece("2S-1-SS-pair")
	require.NotNil(t, q)
	assert.InDelta(t, 22.625, q.Cut, 1e-9)
	assert.Equal(t, plan.Right, q.Face, "toward the wall")
	require.Len(t, q.Path, 4)
	assert.InDelta(t, 2.9375, q.Path[0].X, 1e-9)
	assert.InDelta(t, 226.125-10.625, q.Z0, 1e-9)
	assert.InDelta(t, 243.5+10.625, q.Z1, 1e-9)
	require.Len(t, p.Holes, 1)
	assert.True(t, p.Holes[0].Round)
	assert.InDelta(t, 0.6875, p.Holes[0].Size[0], 1e-9)
}

func TestEachEveryAndAtMost(t *testing.T) {
	// Studs at 0.75 16 32 48 64 80 95.25.
	for name, c := range map[string]struct {
		rule plan.Rule
		want []string
	}{
		"each":           {plan.Rule{}, []string{"1S-1", "1S-16", "1S-32", "1S-48", "1S-64", "1S-80", "1S-95"}},
		"every second":   {plan.Rule{Every: 2}, []string{"1S-1", "1S-32", "1S-64", "1S-95"}},
		"at most 32":     {plan.Rule{AtMost: 32}, []string{"1S-1", "1S-32", "1S-64", "1S-95"}},
		"at most 48":     {plan.Rule{AtMost: 48}, []string{"1S-1", "1S-48", "1S-95"}},
		"under spacing":  {plan.Rule{AtMost: 10}, []string{"1S-1", "1S-16", "1S-32", "1S-48", "1S-64", "1S-80", "1S-95"}},
		"from and to":    {plan.Rule{Where: plan.Where{From: 16, To: 48}}, []string{"1S-16", "1S-32", "1S-48"}},
		"near a corner":  {plan.Rule{Where: plan.Where{Corner: [2]float64{0, 24}}}, []string{"1S-1", "1S-16", "1S-80", "1S-95"}},
		"except":         {plan.Rule{Except: []plan.Where{{From: 1, To: 90}}}, []string{"1S-1", "1S-95"}},
		"other level":    {plan.Rule{Where: plan.Where{Level: []string{"second"}}}, nil},
		"end zone, 3 ft": {plan.Rule{Where: plan.Where{EndZone: yes()}}, []string{"1S-1", "1S-16", "1S-32", "1S-64", "1S-80", "1S-95"}},
		"stud and role":  {plan.Rule{Every: 6, Where: plan.Where{Stud: []string{"2x6"}, Role: []plan.Role{plan.Stud}}}, []string{"1S-1", "1S-95"}},
		"height":         {plan.Rule{Where: plan.Where{Height: [2]float64{20, 90}}}, nil},
	} {
		t.Run(name, func(t *testing.T) {
			c.rule.Name, c.rule.At, c.rule.Use = "base", "stud-base", "base-strap"
			p, _ := placed(t, standard().with(c.rule))
			var got []string
			for _, x := range tags(p) {
				got = append(got, x[:len(x)-len("-SB-strap")])
			}
			assert.Equal(t, c.want, got)
		})
	}
}

func TestLaterRuleBeatsEarlierForOnePurpose(t *testing.T) {
	h := standard().with(
		plan.Rule{Name: "all", At: "stud-stud", Use: "story-strap"},
		plan.Rule{Name: "ends", At: "stud-stud", Use: "coil", Where: plan.Where{Corner: [2]float64{0, 4}}},
		plan.Rule{Name: "inside too", At: "stud-stud", Use: "story-strap", Purpose: "second", Face: "inside", Where: plan.Where{To: 4}})
	p, ds := placed(t, h)
	require.Empty(t, ds)
	assert.Equal(t, []string{
		"2S-1-SS-strap", "2S-1-SS-coil", "2S-16-SS-strap", "2S-32-SS-strap", "2S-48-SS-strap",
		"2S-64-SS-strap", "2S-80-SS-strap", "2S-95-SS-coil",
	}, tags(p))
}

func TestEngineerBeatsRules(t *testing.T) {
	base := plan.Rule{Name: "all", At: "stud-stud", Use: "story-strap"}
	for name, c := range map[string]struct {
		place plan.Place
		want  []string
	}{
		"replace is the default": {plan.Place{Use: "coil", At: []float64{16}}, []string{"2S-16-SS-coil"}},
		"a long strap replaces":  {plan.Place{Use: "floor-strap", At: []float64{16}, Action: "replace"}, []string{"2S-16-SS-long"}},
		"add keeps the rule's":   {plan.Place{Use: "floor-strap", At: []float64{16}, Action: "add"}, []string{"2S-16-SS-strap", "2S-16-SS-long"}},
		"remove by mark":         {plan.Place{Use: "story-strap", At: []float64{16}, Action: "remove"}, nil},
		"remove whatever is":     {plan.Place{On: "stud-stud", At: []float64{16}, Action: "remove"}, nil},
		"another purpose stays":  {plan.Place{Use: "hold-down-pair", On: "stud-stud", At: []float64{16}}, []string{"2S-16-SS-pair", "2S-16-SS-strap"}},
		"within half and an inch": {
			plan.Place{Use: "coil", At: []float64{17.7}},
			[]string{"2S-16-SS-coil"},
		},
	} {
		t.Run(name, func(t *testing.T) {
			c.place.Wall = "2S"
			p, ds := placed(t, standard().with(base, c.place))
			require.Empty(t, ds)
			var got []string
			for _, q := range p.At(p.world.byID["2S-16-SS"]) {
				got = append(got, q.Tag)
			}
			assert.Equal(t, c.want, got)
		})
	}
}

func TestBothFacesAndCount(t *testing.T) {
	p, ds := placed(t, standard().with(plan.Rule{Name: "both", At: "stud-stud", Use: "story-strap", Face: "both", Where: plan.Where{To: 4}}))
	require.Empty(t, ds)
	assert.Equal(t, []string{"2S-1-SS-strap", "2S-1-SS-strap-2"}, tags(p))
	assert.Equal(t, plan.Outside, p.Pieces[0].Face)
	assert.Equal(t, plan.Inside, p.Pieces[1].Face)

	// Two clips at one stud: one on each side, right first at the wall's start,
	// where the other finds no plate at the left and goes inside.
	p, ds = placed(t, standard().with(plan.Rule{Name: "two", At: "stud-top", Use: "plate-clip", Count: 2, Where: plan.Where{Level: []string{"first"}, To: 20}}))
	require.Empty(t, ds)
	require.Len(t, p.Pieces, 4)
	assert.Equal(t, []plan.Face{"right", "inside", "left", "right"}, []plan.Face{p.Pieces[0].Face, p.Pieces[1].Face, p.Pieces[2].Face, p.Pieces[3].Face})
}

func TestPiecesGiveWayToTheirNextFace(t *testing.T) {
	faces := func(p *Placement) (out []string) {
		for _, q := range p.Pieces {
			out = append(out, q.Item.Mark+" "+string(q.Face))
		}
		return out
	}
	at := []float64{16}
	// Two hold-down pairs at one post: one on each side.
	p, ds := placed(t, standard().with(
		plan.Place{Use: "hold-down-pair", Wall: "2S", On: "stud-stud", At: at},
		plan.Place{Use: "hold-down-pair", Wall: "2S", On: "stud-stud", At: at, Action: "add"}))
	require.Empty(t, ds)
	assert.ElementsMatch(t, []string{"hold-down-pair right", "hold-down-pair left"}, faces(p))

	// A long strap goes inside; a second one outside; with a strap of a rule
	// there too, the second goes to the side.
	two := []any{
		plan.Place{Use: "floor-strap", Wall: "2S", On: "stud-stud", At: at},
		plan.Place{Use: "floor-strap", Wall: "2S", On: "stud-stud", At: at, Action: "add"},
	}
	p, ds = placed(t, standard().with(two...))
	require.Empty(t, ds)
	assert.ElementsMatch(t, []string{"floor-strap inside", "floor-strap outside"}, faces(p))
	r := plan.Rule{Name: "s", At: "stud-stud", Use: "story-strap", Purpose: "other", Where: plan.Where{From: 15, To: 17}}
	p, ds = placed(t, standard().with(append(two, r)...))
	require.Empty(t, only(ds, "face-taken"))
	assert.ElementsMatch(t, []string{"story-strap outside", "floor-strap inside", "floor-strap left"}, faces(p))
}

func TestCoveredClipOfARuleGoesWhereItCanBeNailed(t *testing.T) {
	// A stud of a wall that butts stands against the inside of the stud at 16.
	h := standard()
	m := h.member(1, plan.Stud, 15.25, 16.75, floor2+1.5, top2-3)
	m.Wall = &plan.Wall{Name: "2P", Level: h.walls[1].Level}
	m.Solid[0] = h.walls[1].Frame().Box(15.25, 16.75, 5.5, 7, floor2+1.5, top2-3)
	r := plan.Rule{Name: "c", At: "stud-top", Use: "plate-clip", Face: "inside", Where: plan.Where{Level: []string{"second"}, To: 40}}
	p, ds := placed(t, h.with(r))
	require.Empty(t, ds)
	assert.Equal(t, plan.Inside, p.Piece("2S-32-ST-clip").Face)
	assert.Equal(t, plan.Left, p.Piece("2S-16-ST-clip").Face)
	story, err := p.Explain("2S-16-ST-clip")
	require.NoError(t, err)
	assert.Contains(t, story, "a stud covers its first place")

	// The engineer's own face stays, and is reported.
	_, ds = placed(t, h.with(plan.Place{Use: "plate-clip", Wall: "2S", On: "stud-top", At: []float64{16}, Face: "inside"}))
	require.Len(t, ds, 1)
	assert.Equal(t, "face-covered", string(ds[0].Code))
	assert.Contains(t, ds[0].Mend, `face = "outside"`)
}

func TestAnchorRodStandsUnderItsHoldDown(t *testing.T) {
	// The hold-down's rod is 1.4375 from the side of the post at 0.75, whose
	// half is 0.75: at 2.9375.
	h := standard()
	end := h.joint(h.walls[0], plan.WallEnd, 0.75, floor1+1.5, h.Members[0])
	end.ID = "1S-1-WE"
	h.Joints = append(h.Joints, end)
	p, _ := placed(t, h.with(
		plan.Rule{Name: "hd", At: "wall-end", Use: "hd"},
		plan.Rule{Name: "rod", At: "wall-end", Use: "cast-in-rod"}),
		func(m map[string]*plan.Item) {
			*m["plate-clip"] = plan.Item{Mark: "hd", Kind: "hold-down", Length: 12.375, Width: 2.375, Rod: .625, Standoff: 2, Center: 1.4375, Fasteners: nails("all", 11, 1), Pos: m["plate-clip"].Pos}
			*m["hold-down-pair"] = plan.Item{Mark: "cast-in-rod", Kind: "anchor rod", Length: 20, Rod: .625, Pos: m["hold-down-pair"].Pos}
		})
	hd, rod := p.Piece("1S-1-WE-hold-down"), p.Piece("1S-1-WE-rod")
	require.NotNil(t, hd)
	require.NotNil(t, rod)
	assert.InDelta(t, 2.9375, hd.Station, 1e-9)
	assert.InDelta(t, 2.9375, rod.Station, 1e-9)
	assert.InDelta(t, 2.9375, rod.Path[1].X, 1e-9)
	// Cut: gap 2.25, rim 11.25, standoff 2, a washer of 0.1875, a nut
	// of 0.625 and 0.25 of thread at each end.
	assert.InDelta(t, 2.25+11.25+2+2.125, hd.Cut, 1e-9)
}
