package framing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
)

func jointAt(h *House, host string, k plan.JointKind, s float64) *Joint {
	for _, j := range joints(h, host, k) {
		if j.Station == s {
			return j
		}
	}
	return nil
}

func TestStudBaseGoesToTheRim(t *testing.T) {
	h := frame(t, elevated(1))
	j := jointAt(h, "1A", plan.StudBase, 16)
	require.NotNil(t, j)
	assert.Equal(t, "1A-16-SB", j.ID)
	assert.Equal(t, []plan.Role{plan.Stud, plan.Rim, plan.BottomPlate, plan.GirderBeam}, rolesOf(j))
	assert.InDelta(t, 1.5+0.75, j.Gap, 1e-9, "plate and subfloor")
	assert.InDelta(t, 13.125, j.Tributary, 1e-9, "half way to the post at 5.75 and to the stud at 32")
}

func TestStudBaseOnSlabGoesToTheSillPlate(t *testing.T) {
	p, _ := straight(96)
	j := jointAt(frame(t, p), "1A", plan.StudBase, 16)
	assert.Equal(t, []plan.Role{plan.Stud, plan.SillPlate}, rolesOf(j))
	assert.Zero(t, j.Gap)
}

func TestStoriesStack(t *testing.T) {
	p := elevated(2)
	p.Walls[0].Openings = []*plan.Opening{window("w", 50, 60)}
	h := frame(t, p)
	j := jointAt(h, "2A", plan.StudStud, 16)
	require.NotNil(t, j)
	assert.Equal(t, "1A/stud@16", j.Members[1].ID)
	assert.True(t, j.Below)
	assert.Zero(t, j.Offset)
	assert.InDelta(t, 3+10+1.5, j.Gap, 1e-9, "plates, floor and plate")
	over := jointAt(h, "2A", plan.StudStud, 80)
	require.NotNil(t, over)
	assert.Equal(t, plan.Header, over.Members[1].Role, "a stud over an opening goes to its header")
	assert.InDelta(t, 120+30+54+9.25, over.First().Z0-over.Gap, 1e-9)
	off := jointAt(h, "2A", plan.StudStud, 48)
	assert.Equal(t, plan.King, off.Members[1].Role)
	assert.InDelta(t, -0.25, off.Offset, 1e-9)
	assert.Empty(t, joints(h, "2A", plan.StudBase))
}

func TestNothingBelowIsSaid(t *testing.T) {
	p := elevated(2)
	p.Walls[0].Spacing = 96
	h := frame(t, p)
	assert.False(t, jointAt(h, "2A", plan.StudStud, 144).Below && jointAt(h, "2A", plan.StudStud, 144).Offset == 0)
	p.Walls[0].Spacing = 48
	j := jointAt(frame(t, p), "2A", plan.StudStud, 64)
	assert.True(t, j.Below)
	assert.InDelta(t, -16, j.Offset, 1e-9)
}

func TestUpperWallSetBackStandsOnItsFloor(t *testing.T) {
	p := stories(2)
	girders(p, 0, 336, 3, 120, 237)
	ring(p, 0, rect(0, 0, 336, 240)...)
	ring(p, 1, rect(0, 48, 336, 240)...)
	h, faults := Frame(p)
	require.Len(t, faults, 1)
	assert.Equal(t, plan.Code("joist-in-the-air"), faults[0].Code, "its joists end at its rim, 48 in inside the plates below")
	assert.Empty(t, joints(h, "2A", plan.StudStud))
	j := jointAt(h, "2A", plan.StudBase, 16)
	require.NotNil(t, j)
	assert.Equal(t, []plan.Role{plan.Stud, plan.Rim, plan.BottomPlate}, rolesOf(j))
	assert.NotEmpty(t, joints(h, "2C", plan.StudStud))
}

func TestLines(t *testing.T) {
	p := elevated(2)
	wall(p, "1P", 0, geom.Vec2{X: 120, Y: 5.5}, geom.Vec2{X: 120, Y: 150})
	h := frame(t, p)
	var names []string
	for _, l := range h.Lines {
		names = append(names, l.Name)
	}
	assert.Equal(t, []string{"1A/2A", "1B/2B", "1C/2C", "1D/2D", "1P"}, names)
}

func TestLineShiftsStationsOfAShorterUpperWall(t *testing.T) {
	p := stories(2)
	girders(p, 0, 336, 3, 120, 237)
	ring(p, 0, rect(0, 0, 336, 240)...)
	ring(p, 1, rect(96, 0, 336, 240)...)
	h := frame(t, p)
	assert.Equal(t, []float64{0, 96}, h.Lines[0].Shift)
	assert.Equal(t, "1A/stud@112", jointAt(h, "2A", plan.StudStud, 16).Members[1].ID)
}

func TestShearWallEndsAndCollectors(t *testing.T) {
	p := elevated(2)
	for _, w := range []*plan.Wall{p.Walls[0], p.Walls[4]} {
		w.Shear = []*plan.Shear{{Name: "S1", From: 0, To: 90}}
	}
	h := frame(t, p)
	ends := joints(h, "2A", plan.WallEnd)
	require.Len(t, ends, 2)
	assert.InDelta(t, 0.75, ends[0].Station, 1e-9)
	assert.InDelta(t, 90-0.75, ends[1].Station, 1e-9, "a post is set at the segment's end")
	assert.Equal(t, plan.Post, ends[1].Members[1].Role, "over a post below")
	assert.InDelta(t, 90, ends[1].Tributary, 1e-9)
	co := joints(h, "1A", plan.Collector)
	require.Len(t, co, 1, "only where the line goes on")
	assert.True(t, co[0].Below)
}

func TestFreeEndOfAnInteriorShearWallWantsACollector(t *testing.T) {
	for _, c := range []struct {
		run   plan.Axis
		below bool
	}{{"y", true}, {"x", false}} {
		p := elevated(2)
		p.Levels[1].JoistRun = c.run
		p.Lumber.Stock = []float64{480}
		w := wall(p, "1P", 0, geom.Vec2{X: 120, Y: 5.5}, geom.Vec2{X: 120, Y: 150})
		w.Shear = []*plan.Shear{{Name: "S", From: 0, To: w.Length()}}
		co := joints(frame(t, p), "1P", plan.Collector)
		require.Len(t, co, 1)
		assert.Equal(t, c.below, co[0].Below, "joists along %s", c.run)
		if c.below {
			assert.Equal(t, plan.Joist, co[0].Members[1].Role)
		}
	}
}

func TestBalloonWall(t *testing.T) {
	p := stories(2)
	girders(p, 0, 336, 3, 120, 237)
	ring(p, 0, rect(0, 0, 336, 240)...)
	p.Walls[0].ToLevel = p.Levels[1]
	p.Walls[0].Spacing = 8
	upper := ring(p, 1, rect(0, 0, 336, 240)...)
	p.Walls = append(p.Walls[:4], p.Walls[5:]...) // 2A is the balloon wall
	p.Lumber.Stock = []float64{336}
	h := frame(t, p)
	top := p.Levels[1].Top()
	for _, m := range of(h, "1A", plan.Stud) {
		assert.InDelta(t, top-3-121.5, m.Length, 1e-9)
	}
	assert.Len(t, of(h, "1A", plan.Ledger), 1)
	assert.Empty(t, of(h, upper[0].Name, plan.Rim))
	blocks := of(h, "1A", plan.Blocking)
	assert.Len(t, blocks, len(of(h, "1A", plan.Stud, plan.Post))-1, "each bay is closed at the floor")
	lo, _ := extent(of(h, "2B", plan.TopPlate))
	assert.InDelta(t, 5.5, lo, 1e-9, "the upper wall butts against it")
	for _, m := range roles(h, plan.Joist) {
		if m.Level == p.Levels[1] {
			assert.InDelta(t, 5.5+1.5, m.A.Y, 1e-9, "joists stop at the ledger")
		}
	}
	assert.Empty(t, joints(h, "1A", plan.StudStud))
}

func TestInnerBalloonWallInterruptsTheFloor(t *testing.T) {
	p := elevated(2)
	p.Lumber.Stock = []float64{480}
	w := wall(p, "ST", 0, geom.Vec2{X: 80, Y: 120}, geom.Vec2{X: 240, Y: 120})
	w.ToLevel = p.Levels[1]
	h := frame(t, p)
	assert.Len(t, of(h, "ST", plan.Ledger), 2)
}

func TestStudsLongerThanStockAreTold(t *testing.T) {
	p := elevated(2)
	p.Walls[0].ToLevel = p.Levels[1]
	p.Walls = append(p.Walls[:4], p.Walls[5:]...)
	p.Lumber.Stud = 192
	_, faults := Frame(p)
	require.NotEmpty(t, faults)
	assert.Equal(t, "stud-too-long", string(faults[0].Code))
}

func TestOverlapsFindsMembersInOnePlace(t *testing.T) {
	p, _ := straight(96)
	h := frame(t, p)
	twin := *h.Members[3]
	h.Members = append(h.Members, &twin)
	assert.Len(t, h.Overlaps(0.01), 1)
}

func TestAJointWithoutARowIsTold(t *testing.T) {
	b := newBuilder(&plan.Plan{File: "house.toml"})
	b.joint(&Joint{Kind: "roof-sky", Host: "1S", Station: 12})
	b.joint(&Joint{Kind: plan.StudTop, Host: "1S", Station: 12})
	b.finish()
	require.Len(t, b.faults, 1)
	assert.EqualValues(t, "unknown-word", b.faults[0].Code)
	assert.Contains(t, b.faults[0].Summary, `"roof-sky"`)
	require.Len(t, b.house.Joints, 1)
	assert.Equal(t, "1S-12-ST", b.house.Joints[0].ID)
}
