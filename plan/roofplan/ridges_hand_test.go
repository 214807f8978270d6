package roofplan

import (
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Where the ridge of a gable with unequal slopes meets its ends: over walls 192 in apart and
// of one height, 6:12 from the south and 3:12 from the north, the planes meet a third of
// the way from the south, 64 in in and 32 in up; with a north wall 24 in higher where 0.5 y =
// 24 + 0.25 (192 - y), at 96 in and 48 in up.
func TestRidgeOfUnequalSlopes(t *testing.T) {
	for _, c := range []struct{ north, y, up float64 }{{100, 64, 32}, {124, 96, 48}} {
		b := &Body{Axis: plan.AxisX, Lo: pt(10, 20), Hi: pt(310, 212)}
		b.Sides[South], b.Sides[North] = Side{Slope: 0.5, Height: 100}, Side{Slope: 0.25, Height: c.north}
		for e, x := range map[int]float64{West: 10, East: 310} {
			p, z := b.ridgeEnd(e)
			assert.InDelta(t, x, p.X, 1e-9)
			assert.InDelta(t, 20+c.y, p.Y, 1e-9)
			assert.InDelta(t, 100+c.up, z, 1e-9)
		}
	}
}

// Segments of one kind in one straight line that touch or overlap are one line, from its
// lower end up, or from west to east where it is level; others stay apart.
func TestSegmentsOfOneLineAreJoined(t *testing.T) {
	type seg struct {
		kind           EdgeKind
		x0, y0, x1, y1 float64
	}
	for _, c := range []struct {
		name string
		add  []seg
		want [][4]float64
	}{
		{"one", []seg{{Ridge, 0, 0, 10, 0}}, [][4]float64{{0, 0, 10, 0}}},
		{"turned about", []seg{{Ridge, 10, 0, 0, 0}}, [][4]float64{{0, 0, 10, 0}}},
		{"end to end", []seg{{Ridge, 0, 0, 10, 0}, {Ridge, 10, 0, 30, 0}}, [][4]float64{{0, 0, 30, 0}}},
		{"overlapping", []seg{{Ridge, 5, 0, 30, 0}, {Ridge, 0, 0, 10, 0}}, [][4]float64{{0, 0, 30, 0}}},
		{"one within the other", []seg{{Ridge, 0, 0, 30, 0}, {Ridge, 5, 0, 10, 0}}, [][4]float64{{0, 0, 30, 0}}},
		{"a gap that the third closes", []seg{{Ridge, 0, 0, 10, 0}, {Ridge, 20, 0, 30, 0}, {Ridge, 10, 0, 20, 0}}, [][4]float64{{0, 0, 30, 0}}},
		{"apart", []seg{{Ridge, 0, 0, 10, 0}, {Ridge, 11, 0, 30, 0}}, [][4]float64{{0, 0, 10, 0}, {11, 0, 30, 0}}},
		{"beside each other", []seg{{Ridge, 0, 0, 10, 0}, {Ridge, 0, 1, 10, 1}}, [][4]float64{{0, 0, 10, 0}, {0, 1, 10, 1}}},
		{"round a corner", []seg{{Ridge, 0, 0, 10, 0}, {Ridge, 10, 0, 10, 10}}, [][4]float64{{0, 0, 10, 0}, {10, 0, 10, 10}}},
		{"of two kinds", []seg{{Ridge, 0, 0, 10, 0}, {Hip, 10, 0, 30, 0}}, [][4]float64{{0, 0, 10, 0}, {10, 0, 30, 0}}},
	} {
		r := &Roof{}
		for _, s := range c.add {
			r.addLine(s.kind, pt(s.x0, s.y0).Up(100), pt(s.x1, s.y1).Up(100))
		}
		var got [][4]float64
		for _, l := range r.Lines {
			got = append(got, [4]float64{l.A.X, l.A.Y, l.B.X, l.B.Y})
		}
		assert.Equal(t, c.want, got, c.name)
	}
	r := &Roof{}
	r.addLine(Valley, pt(0, 0).Up(120), pt(10, 10).Up(100))
	assert.Equal(t, 100.0, r.Lines[0].A.Z, "from its foot up")
}

// An edge is single where nothing is beyond it, or something at another height: the top of a
// shed is, and the ridge of a gable is not; nor is a rafter that starts on the wall's own
// face, without an overhang, outside of no wall.
func TestEdgesWithNothingBeyond(t *testing.T) {
	shed, faults := New([]*Body{body(t, "s", "shed", "x", pt(0, 0), pt(64, 48), 3, 0)})
	require.Empty(t, faults)
	top := shed.Faces[0]
	assert.True(t, shed.single(top, pt(64, 48), pt(0, 48)), "over the high wall there is nothing beyond")
	whole, faults := New([]*Body{body(t, "m", "gable", "x", pt(0, 0), pt(96, 48), 6, 0)})
	require.Empty(t, faults)
	south := faceOf(t, whole, "m", South)
	assert.False(t, whole.single(south, pt(96, 24), pt(0, 24)), "the other slope is beyond the ridge")
	assert.True(t, whole.single(south, pt(0, 0), pt(96, 0)), "the eave")
	// A wing 40 in higher beside it: over their common line the roof goes on, but not there.
	high := body(t, "h", "gable", "x", pt(96, 0), pt(192, 48), 6, 0)
	for i := range high.Sides {
		high.Sides[i].Height += 40
	}
	both, _ := New([]*Body{body(t, "m", "gable", "x", pt(0, 0), pt(96, 48), 6, 0), high})
	assert.True(t, both.single(faceOf(t, both, "m", South), pt(96, 0), pt(96, 24)), "the roof beyond lies 40 in higher")
	runs := whole.RunsAt(south, 32)
	require.Len(t, runs, 1)
	p, b, side := runs[0].Bearing()
	require.NotNil(t, b, "it bears on the wall at its own low end")
	assert.Equal(t, South, side)
	assert.InDelta(t, 0, p.Sub(pt(32, 0)).Len(), 1e-6)
	assert.True(t, runs[0].Outside())
}

// A wing 40 in wide dies 20 in inside a main roof 192 deep and 360 long of the same pitch, and one of its two
// valleys is carried on at 45 degrees: to the main ridge at y = 96 where one gets there, whichever it is, and
// to a rake, 12 in past the wall, only where both come to one, the first as written.
func TestAValleyIsCarriedToTheRidgeSoonerThanToARake(t *testing.T) {
	for _, c := range []struct {
		name         string
		long, middle float64
		x, y         float64 // where the valley is carried to
	}{
		{"in the middle of a long roof", 360, 180, 256, 96}, // 180 + 76
		{"near its east end", 360, 330, 254, 96},            // 330 - 76, and the other to 372
		{"near its west end", 360, 30, 106, 96},
		{"of a short roof", 60, 30, 72, 62}, // 20 + 42
	} {
		r, faults := New([]*Body{
			body(t, "main", "gable", "x", pt(0, 0), pt(c.long, 192), 6, 12),
			body(t, "wing", "gable", "y", pt(c.middle-20, -120), pt(c.middle+20, 0), 6, 12),
		})
		require.Empty(t, faults)
		n := 0
		for _, l := range r.Lines {
			if l.Carried == nil {
				continue
			}
			n++
			assert.InDelta(t, 0, l.Carried.Sub(pt(c.middle, 20)).Len(), 1e-6, c.name)
			assert.InDelta(t, 0, l.B.Flat().Sub(pt(c.x, c.y)).Len(), 1e-6, "%s: %v", c.name, l.B)
		}
		assert.Equal(t, 1, n, c.name)
	}
}

// The four hips of a mirrored roof come in the order in which the house as written has them: there its
// east end is the west one.
func TestLinesComeInTheOrderOfTheHouseAsWritten(t *testing.T) {
	for lay, first := range map[plan.Lay]float64{{}: -12, plan.MirrorX: 252} {
		b := body(t, "a", "hip", "x", pt(0, 0), pt(240, 144), 6, 12)
		b.Lay = lay
		r, faults := New([]*Body{b})
		require.Empty(t, faults)
		require.Equal(t, Ridge, r.Lines[0].Kind)
		assert.InDelta(t, first, r.Lines[1].A.X, 1e-6)
	}
}

// A shed against a gable has no ridge that would run on into it, whichever of its walls is the high one.
func TestAShedRunsIntoNothing(t *testing.T) {
	for _, low := range []int{South, North} {
		shed := &Body{Name: "shed", Axis: plan.AxisX, Lo: pt(300, 48), Hi: pt(420, 144), Spacing: 16, Thick: 1.5}
		for i := range shed.Sides {
			shed.Sides[i].Height = 100
		}
		shed.Sides[low].Slope = 0.25
		assert.Empty(t, shed.runIn([]*Body{body(t, "main", "gable", "y", pt(0, 0), pt(300, 192), 6, 0), shed}))
		for _, s := range shed.Sides {
			assert.False(t, s.RunsIn)
		}
	}
}

// Of no bodies there is no roof, and nothing to tell.
func TestARoofOfNothing(t *testing.T) {
	r, faults := New(nil)
	assert.Empty(t, faults)
	assert.Empty(t, r.Faces)
	assert.Empty(t, r.Lines)
}

// A gable from 10 to 310 counts its rafters from its west end, or from the east one where that runs into another
// roof; in a mirrored house, and one turned half round, the other way about. A hip 144 deep of equal slopes counts
// from the end of its ridge, 72 in. Of a body along y, from 20 to 164, it is the south end, also in the mirror.
func TestWhereTheModuleOfASideStarts(t *testing.T) {
	for _, c := range []struct {
		name   string
		kind   plan.RoofKind
		axis   plan.Axis
		lay    plan.Lay
		runsIn int // that end; -1 none
		want   float64
	}{
		{"a gable", "gable", plan.AxisX, plan.Lay{}, -1, 10},
		{"its far end runs in", "gable", plan.AxisX, plan.Lay{}, East, 10},
		{"its first end runs in", "gable", plan.AxisX, plan.Lay{}, West, 310},
		{"mirrored", "gable", plan.AxisX, plan.MirrorX, -1, 310},
		{"mirrored, its first end runs in", "gable", plan.AxisX, plan.MirrorX, East, 10},
		{"mirrored, its far end runs in", "gable", plan.AxisX, plan.MirrorX, West, 310},
		{"half round", "gable", plan.AxisX, plan.Lay{Quarters: 2}, -1, 310},
		{"a hip", "hip", plan.AxisX, plan.Lay{}, -1, 82},
		{"a mirrored hip", "hip", plan.AxisX, plan.MirrorX, -1, 238},
		{"along y", "gable", plan.AxisY, plan.Lay{}, -1, 20},
		{"along y, mirrored", "gable", plan.AxisY, plan.MirrorX, -1, 20},
		{"along y, half round", "gable", plan.AxisY, plan.Lay{Quarters: 2}, -1, 164},
	} {
		b := body(t, "b", c.kind, c.axis, pt(10, 20), pt(310, 164), 6, 12)
		b.Lay = c.lay
		if c.runsIn >= 0 {
			b.Sides[c.runsIn].RunsIn = true
		}
		sides, _ := eaves(c.axis)
		for _, i := range sides {
			assert.InDelta(t, c.want, b.start(i), 1e-9, "%s, side %d", c.name, i)
		}
	}
}

// A shed climbs from the side across from its high wall, and from no other; a high wall on no side is told.
func TestTheLowSideOfAShed(t *testing.T) {
	for high, low := range map[plan.Side]int{plan.South: North, plan.East: West, plan.North: South, plan.West: East} {
		var want [4]float64
		want[low] = 0.25
		got, err := shed(Shape{Slope: 0.25, High: high})
		require.NoError(t, err, high)
		assert.Equal(t, want, got, high)
	}
	_, err := shed(Shape{Slope: 0.25})
	assert.ErrorContains(t, err, `a shed roof whose high wall is on side "", which is none`)
}

// Of a module from 0 to 100 at 16 with rafters of their own at 5, 50 and 98 those count that lie from 20 to 60,
// its ends with them; a second zone adds what lies past the first.
func TestPlacesOfAModuleWithinAStretch(t *testing.T) {
	m := &module{fixed: []float64{5, 50, 98}, zones: []zone{{lo: 0, hi: 100, origin: 0, spacing: 16}, {lo: 90, hi: 140, origin: 4, spacing: 24}}}
	for _, c := range []struct {
		lo, hi float64
		want   []station
	}{
		{20, 60, []station{{at: 50, fixed: true}, {at: 32}, {at: 48}}},
		{50, 64, []station{{at: 50, fixed: true}, {at: 64}}},
		{20, 50, []station{{at: 50, fixed: true}, {at: 32}, {at: 48}}},
		{33, 47, nil},
		{99, 140, []station{{at: 124}}},
		{-20, 16, []station{{at: 5, fixed: true}, {at: 0}, {at: 16}}},
	} {
		assert.Equal(t, c.want, m.between(c.lo, c.hi), "%v to %v", c.lo, c.hi)
	}
}
