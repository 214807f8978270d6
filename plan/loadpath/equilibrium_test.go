package loadpath

import (
	"math"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/wind"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// near asserts two forces agree to a part of the larger and a pound.
func near(t require.TestingT, want, got, part float64, msg string, args ...any) {
	assert.InDelta(t, want, got, 1+part*math.Max(math.Abs(want), math.Abs(got)), append([]any{msg}, args...)...)
}

// roofUplift sums the wind on the roof over a fine grid of its faces, by the
// figure itself: no rafter, width or statics in it.
func roofUplift(a *analysis, c windCase) (up float64) {
	const step = 2.0 // walls and overhangs of generated houses are multiples of it
	for _, f := range a.house.Roof {
		area, _ := wallExtent(a.plan, f.Roof.Over)
		e := noExtent()
		for _, p := range f.Outline {
			e.hold(p.Flat())
		}
		for x := step*math.Floor(e.lo.X/step) + step/2; x < e.hi.X; x += step {
			for y := step*math.Floor(e.lo.Y/step) + step/2; y < e.hi.Y; y += step {
				if p := (geom.Vec2{X: x, Y: y}); f.Over(p) {
					up += pressureUp(a, f, area, p, c) * step * step / 144
				}
			}
		}
	}
	return up
}

// pressureUp is the uplift pressure at one place of a generated house, psf:
// the roof is over the whole house, so zones follow from the walls, whose
// extent is area.
func pressureUp(a *analysis, f *framing.Face, area extent, p geom.Vec2, c windCase) float64 {
	q, top, soffit := a.q, 0.0, 0.7
	if c.proc == plan.Directional {
		q, soffit = a.basis.Direct().QKd, 0.85*0.8
		top = directTop(a, f, area, p, c)
	} else {
		top = envelopeTop(a, f, area, p, c)
	}
	outside, windward := false, false
	for ax := range 2 {
		low, high := axis(p, ax) < axis(area.lo, ax), axis(p, ax) > axis(area.hi, ax)
		outside = outside || low || high
		from := -c.sign // the side that meets the wind: where it comes from, and the corner's
		if ax != c.axis {
			from = c.corner
		}
		if ax != c.axis && c.calm {
			continue // that side is left without pressure below
		}
		windward = windward || low && from < 0 || high && from > 0
	}
	switch {
	case !outside:
		return q * (c.pi*wind.GCpi(a.basis.Enclosure) - top)
	case windward:
		return q * (soffit - top)
	}
	return -q * top
}

// envelopeTop is GCpf of the figure.
func envelopeTop(a *analysis, f *framing.Face, area extent, p geom.Vec2, c windCase) float64 {
	ax := f.Roof.RidgeAxis()
	lo, hi := axis(area.lo, 1-ax), axis(area.hi, 1-ax)
	across, along := axis(p, 1-ax), axis(p, ax)
	coefs, nearHigh, endHigh := wind.CaseB, c.corner > 0, c.sign < 0
	if c.axis != ax {
		coefs, nearHigh, endHigh = wind.CaseA(a.basis.Theta), c.sign < 0, c.corner > 0
	}
	roof := area // that of the walls under it
	if f.Roof.Area[0] != f.Roof.Area[1] {
		roof = roofArea(a.plan, f.Roof)
	}
	mid := (axis(roof.lo, 1-ax) + axis(roof.hi, 1-ax)) / 2
	edge := lo
	if nearHigh {
		edge = hi
	}
	zone := 2
	switch hipEnd := math.Abs(axis(f.Slope, ax)) > 0.5; {
	case (across > mid) != nearHigh:
		zone = 3
	case !hipEnd && (across-edge)*(float64(1)-2*factor(nearHigh)) > a.basis.ZoneTwoReach(c.axis == ax)*12:
		zone = 3
	}
	strip := 24 * a.basis.EdgeStrip()
	if endHigh && along > axis(area.hi, ax)-strip || !endHigh && along < axis(area.lo, ax)+strip {
		return coefs.End[zone-1]
	}
	return coefs.Interior[zone-1]
}

// directTop is G Cp of the figure.
func directTop(a *analysis, f *framing.Face, area extent, p geom.Vec2, c windCase) float64 {
	l := area.span(c.axis) / 12
	d := axis(p, c.axis) - axis(area.lo, c.axis)
	if c.sign < 0 {
		d = axis(area.hi, c.axis) - axis(p, c.axis)
	}
	h := a.basis.Height
	far, list := 0.0, wind.StripCp(h/l)
	switch d /= 12; {
	case d < h/2:
		far = list[0]
	case d < h:
		far = list[1]
	case d < 2*h:
		far = list[2]
	default:
		far = list[3]
	}
	if c.second {
		far = -0.18
	}
	uphill := -axis(f.Slope, c.axis) // a face names the way its water runs
	if math.Abs(uphill) < 0.5 || a.basis.Theta < 10 {
		return 0.85 * far
	}
	first, second, leeward := wind.SlopeCp(a.basis.Theta, h/l)
	own := first
	if c.second {
		own = second
	}
	if uphill*c.sign < 0 {
		own = leeward
	}
	switch {
	case c.axis != f.Roof.RidgeAxis():
		return 0.85 * own
	case c.second:
		return 0.85 * math.Max(own, far)
	}
	return 0.85 * math.Min(own, far)
}

func TestRoofUpliftReachesThePlates(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBox(t)
		b.piles, b.stories = false, 1
		b.floor = 0
		a := analyzed(t, b.plan())
		all := a.cases()
		for range 4 {
			i := rapid.IntRange(0, len(all)-1).Draw(t, "case")
			c := all[i]
			got := a.balances[i*len(a.plan.Levels)].Roof.W
			want := roofUplift(a, c)
			// Gable and shed rafters share the roof exactly: what is left is the
			// grid and the corners where eave and rake overhang meet. The jacks of
			// a hip stand for strips of a triangle: the area is right, but the end
			// zone is shared out by the strip.
			part := 0.01
			if b.kind == "hip" {
				part = 0.05
			}
			area := (b.length + 2*b.overhang) * (b.width + 2*b.overhang) / 144
			assert.InDelta(t, want, got, part*area*a.q, "%s %s", b.kind, c)
		}
	})
}

// What the wind does to a roof that reaches over a porch, by the figure over a
// grid of the roof, eaves, rakes and porch in it, comes down at plates and
// posts in every case.
func TestPorchRoofUpliftReachesPlatesAndPosts(t *testing.T) {
	a := analyzed(t, porchHouse)
	require.Len(t, a.cases(), 72)
	for i, c := range a.cases() {
		if i%5 != 0 { // a fifth of them, all directions and procedures among it
			continue
		}
		s := a.run(c)
		got := 0.0
		for _, p := range a.paths {
			got += s.walls[p.n].roof.W
		}
		for _, x := range a.porches {
			got += s.posts[x.n].W
		}
		area := 26.0 * 26
		assert.InDelta(t, roofUplift(a, c), got, 0.003*area*a.q, c.String())
	}
	assert.Zero(t, sumOf(a.unheld))
}

// On every house that may be drawn the uplift of each story is what the roof brings
// less the relief of what is over it, and its shear the wind on it.
func TestForcesCloseFromRoofToGround(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBox(t)
		a := analyzed(t, b.plan())
		require.Zero(t, sumOf(a.unheld))
		require.Zero(t, sumOf(a.ridgeLost))
		list := a.cases() // a fifth of them, of another fifth in each house
		for i := rapid.IntRange(0, 4).Draw(t, "case"); i < len(list); i += 5 {
			account(t, a, a.run(list[i]), b)
		}
		shears(t, a, b)
	})
}

// account follows one case down the house, joint by joint.
func account(t *rapid.T, a *analysis, s *caseState, b box) {
	roof, top := Force{}, len(a.plan.Levels)-1
	weight := 0.0
	feet := make([]Force, top+1)
	tops := make([]Force, top+1)
	for _, p := range a.paths {
		roof.take(s.walls[p.n].roof)
		// Weight of the wall from its own face, apart from the shares of studs.
		weight += p.w.TopHeight() * p.w.Length() / 144 * a.dead.wall(p.w) * factor(p.w.Level.Index == top)
		for _, k := range p.carriers {
			feet[p.w.Level.Index].take(s.foot(k))
			tops[p.top.Index].take(s.carriers[k.n].top.add(s.carriers[k.n].head))
		}
	}
	near(t, roof.W, tops[top].W, 1e-9, "wind through the top joints")
	near(t, roof.D, tops[top].D, 1e-9, "roof's weight through the top joints")
	near(t, roof.W, feet[top].W, 1e-9, "wind at the feet of the top story")
	near(t, roof.D+weight, feet[top].D, 1e-9, "weight at the feet of the top story")
	near(t, ASD.W*roof.W-ASD.D*(roof.D+weight), feet[top].net(ASD), 1e-9, "sum of joint uplifts is roof uplift less relief")
	near(t, roof.W, feet[0].W, 1e-9, "wind at the feet of the lowest story")
	if b.piles {
		piles, floor := Force{}, 0.0
		for _, g := range a.piles.girders {
			for _, x := range g.piles {
				piles.take(s.piles[x.n])
				floor += x.weight
			}
		}
		near(t, feet[0].W, piles.W, 1e-9, "wind at the piles")
		near(t, feet[0].D+floor, piles.D, 1e-9, "weight at the piles")
	}
}

func factor(yes bool) float64 {
	if yes {
		return 1
	}
	return 0
}

// shears holds the shear of each story against the wind on it.
func shears(t *rapid.T, a *analysis, b box) {
	for _, g := range a.gusts() {
		above := 0.0
		blown := a.blow(g)
		for i, s := range blown.stories {
			part := 1e-9
			if b.kind == "shed" && g.axis != a.main.RidgeAxis() {
				part = 0.015 // from which height on the wind's mean pressure on the slope is taken is left to the program
			}
			near(t, windOn(a, b, i, g), s.Deck, part, "%s story %s: wind on the deck", g, s.Level.Name)
			near(t, above, s.Above, 1e-9, "from above")
			near(t, s.Total, s.ByLines, 1e-9, "%s story %s: lines carry the story", g, s.Level.Name)
			above = s.Total
			for _, x := range a.decks[i].lines[g.axis] {
				closes(t, blown, x)
			}
		}
	}
}

// windOn works the level wind on a deck out from areas: i counts from the
// top. The end zone is as long as the figure says on every generated house.
func windOn(a *analysis, b box, i int, g gust) float64 {
	face := b.width / 12
	if g.axis == 1 {
		face = b.length / 12
	}
	strip := 2 * a.basis.EdgeStrip()
	spread := func(height, in, end float64) float64 { return height * (in*(face-strip) + end*strip) }
	const plate, floor = 109.0 / 12, 1.0
	top := a.plan.Levels[len(a.plan.Levels)-1-i].Top() / 12
	wall := func(z0, z1, part float64) float64 {
		if g.least() {
			return wind.LeastWall * face * (z1 - z0) * part
		}
		in, end := a.wallPressure(g, [2]float64{z0 * 12, z1 * 12})
		return spread((z1-z0)*part, in, end)
	}
	if i > 0 {
		return wall(top-plate/2, top, 1) + wall(top, top+floor+plate/2, 1)
	}
	return wall(top-plate/2, top, 1) + roofOn(a, b, g, top, face, strip)
}

// roofOn is the level wind on a roof, worked from what of it stands against the wind
// in elevation, ft: the box's 2x8 rafters are 7.25 in deep, and plumb deeper by the
// slope. Across the ridge the rectangle from the eaves' lower edges, or from the
// plates where those lie higher, up to the ridge, as long as the walls and the rakes,
// with the depth of the edges there. Along it a gable over the walls, from what the
// roof is over the plates at the eaves' walls to the ridge, and past them boxed
// eaves; of a hip the triangle from eave to eave.
func roofOn(a *analysis, b box, g gust, top, face, strip float64) float64 {
	across := b.width / 12
	if a.main.RidgeAxis() == 1 {
		across = b.length / 12
	}
	tan, eave, rake, hip := b.pitch/12, b.overhang/12, b.rake/12, b.kind == "hip"
	if hip {
		rake = 0
	}
	ridge := a.house.RidgeHeight(a.main) / 12
	atWall := ridge - across/2*tan
	if b.kind == "shed" { // the ridge is its high edge, past the wall; that overhang is not boxed
		atWall = ridge - (across+eave)*tan
	}
	low, deep := math.Min(top, atWall-eave*tan), 7.25/12*math.Hypot(1, tan)
	in, end := a.wallPressure(g, [2]float64{top * 12, ridge * 12})
	switch {
	case g.axis == a.main.RidgeAxis() && hip:
		return (ridge - low) / 2 * (in*(face+2*eave-strip) + end*strip)
	case g.axis == a.main.RidgeAxis() && b.kind == "shed":
		lowSide := in
		if g.corner < 0 {
			lowSide = end
		}
		return (atWall+ridge-2*top)/2*(in*(face-strip)+end*strip) + eave*(deep*(in+end)+tan*eave/2*lowSide)
	case g.axis == a.main.RidgeAxis():
		return (atWall+ridge-2*top)/2*(in*(face-strip)+end*strip) + eave*(deep+tan*eave/2)*(in+end)
	}
	sIn, sEnd := slopesLevel(a, b, g, top, ridge-top)
	return (ridge-low)*(sIn*(face-strip)+sEnd*strip) + rake*((ridge-low)*(sIn+sEnd)+deep*(in+end))
}

// slopesLevel is the level pressure on the vertical projection of both slopes, psf,
// in the interior and the end zone.
func slopesLevel(a *analysis, b box, g gust, top, rise float64) (in, end float64) {
	switch {
	case g.least():
		return wind.LeastRoof, wind.LeastRoof
	case g.proc == plan.Directional:
		in = math.Max(0, levelOnSlopes(a, b, g, top, rise))
		return in, in
	}
	c := wind.CaseA(a.main.Angle())
	return math.Max(0, a.q*(c.Interior[1]-c.Interior[2])), math.Max(0, a.q*(c.End[1]-c.End[2]))
}

// levelOnSlopes is the level pressure of the directional procedure across the
// ridge, psf of the vertical projection.
func levelOnSlopes(a *analysis, b box, g gust, top, rise float64) float64 {
	q, theta := a.basis.Direct().QKd, a.main.Angle()
	l, w := b.width, b.length
	if b.ridge == "y" {
		l, w = w, l
	}
	hL := a.basis.Height / (l / 12)
	windward, second, leeward := wind.SlopeCp(theta, hL)
	if theta < 10 {
		windward, second, leeward = wind.StripCp(hL)[0], -0.18, wind.StripCp(hL)[0]
	}
	if g.second {
		windward = second
	}
	switch {
	case b.kind != "shed" && theta < 10:
		return 0
	case b.kind != "shed":
		return 0.85 * q * (windward - leeward)
	case g.sign < 0: // from N, at the high wall
		return 0.85 * (0.8*a.basis.MeanQKd(top, top+rise) - q*leeward)
	}
	return 0.85 * q * (windward - wind.LeewardWallCp(l, w))
}

// closes asserts that a line's collector force starts and ends at zero and
// changes only by what flows in and out.
func closes(t *rapid.T, s *gustState, x *ShearLine) {
	d := s.drag(x)
	require.NotEmpty(t, d)
	near(t, 0, d[0].Force, 0, "line %s starts at zero", x.Name)
	assert.InDelta(t, 0, d[len(d)-1].Force, 1e-6*(1+math.Abs(s.force(x))), "line %s ends at zero", x.Name)
	for _, p := range d {
		assert.LessOrEqual(t, math.Abs(p.Force), math.Abs(s.force(x))*(1+1e-9)+1, "no more than the line's force")
	}
}

func TestEnvelopeIsNoLessThanAnyCase(t *testing.T) {
	b := box{
		length: 480, width: 288, stories: 2, kind: "gable", ridge: "x", pitch: 6, overhang: 12, rake: 12, spacing: 16, piles: true, windows: 2, shear: true,
		wind: "wind_speed = \"150 mph\"\nexposure = \"D\"", floor: 120,
	}
	a := analyzed(t, b.plan())
	kept := map[*framing.Joint]float64{}
	for j, p := range a.peaks {
		kept[j] = p.demand
	}
	for _, c := range a.cases() {
		s := a.run(c)
		for _, p := range a.paths {
			for _, k := range p.carriers {
				require.LessOrEqual(t, s.foot(k).net(ASD), kept[k.base]+1e-9)
			}
		}
	}
}

func TestSymmetricHouseHasSymmetricDemands(t *testing.T) {
	b := box{
		length: 480, width: 288, stories: 1, kind: "gable", ridge: "x", pitch: 6, overhang: 12, rake: 12, spacing: 16, shear: true,
		wind: "wind_speed = \"150 mph\"\nexposure = \"D\"",
	}
	a := analyzed(t, b.plan())
	most := map[string]float64{}
	for j, p := range a.peaks {
		if j.Kind == plan.RafterPlate {
			most[j.Host] = math.Max(most[j.Host], p.demand)
		}
	}
	require.Len(t, most, 2)
	near(t, most["1S"], most["1N"], 1e-9, "both eaves")
}

func TestEndTensionReachesThePiles(t *testing.T) {
	// Statics: each end of each lowest segment pulls with its tension and with the
	// couple of its shear over the floor of 12 in and half of the 3-2x12 girder, and all of it is
	// shared out over piles, one sense of the wind for each end; past the last pile
	// more than all on that one, and the rest as push on the one before.
	a := analyzed(t, sample.plan())
	want := [2]float64{}
	for _, x := range a.lateral.lines {
		for _, s := range x.Segments {
			if s.base && s.Wall.Level.Index == 0 {
				want[x.Axis] += ASD.W * (s.Lifts + s.V*(12+11.25/2)/s.Lever)
			}
		}
	}
	got := [2][2]float64{}
	for _, p := range a.pilePulls() {
		got[p.axis][p.sense] += p.lb
	}
	for ax := range 2 {
		require.Positive(t, want[ax])
		for i := range 2 {
			near(t, want[ax], got[ax][i], 1e-9, "wind along %d, sense %d", ax, i)
		}
	}
	r, _ := loadsOf(placed(t, sample.plan()))
	for _, l := range r.Links {
		if l.Check.ID == "pile-overturning" {
			assert.Greater(t, l.Demand, 0.0, l.ID)
		}
	}
}
