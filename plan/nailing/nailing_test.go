package nailing

import (
	"os"
	"path/filepath"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/read"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// everything orders nails at each connection.
const everything = `
[nailing]
rafter_to_ridge = { nail = "16d common", count = 3, drive = "end" }
rafter_to_plate = { nail = "10d common", count = 3 }
top_plates = { nail = "10d common", spacing = "16in" }
top_plate_splice = { nail = "16d common", count = 8 }
top_plate_lap = { nail = "16d common", count = 3 }
top_plate_to_stud = { nail = "16d common", count = 2 }
built_up_studs = { nail = "10d common", spacing = "12in", rows = 2 }
corner_studs = { nail = "16d common", spacing = "12in" }
jack_to_king = { nail = "10d common", spacing = "8in", rows = 2 }
header_to_king = { nail = "16d common", count = 4 }
header_plies = { nail = "16d common", spacing = "16in", rows = 2 }
cripple_to_plate = { nail = "16d common", count = 2 }
cripple_to_header = { nail = "8d common", count = 4 }
sole_to_stud = { nail = "16d common", count = 2 }
joist_to_support = { nail = "8d common", count = 3 }
`

// framed frames an example with text added.
func framed(t *testing.T, name, more string) *framing.House {
	t.Helper()
	dir := filepath.Join("..", "..", "examples")
	src, err := os.ReadFile(filepath.Join(dir, name))
	require.NoError(t, err)
	p, ds := read.Plan(name, append(src, more...), func(n string) ([]byte, error) { return os.ReadFile(filepath.Join(dir, n)) })
	require.False(t, ds.Errors(), "%v", ds)
	h, ds := framing.Frame(p)
	require.False(t, ds.Errors(), "%v", ds)
	return h
}

// The garden shed by hand: 12 by 10 ft, studs at 16 in, a door of 3'-2" at
// 4'-6" in wall S, rafters and ties at 16 in, rake walls E and W.
func TestTheShedCountedByHand(t *testing.T) {
	n := New(framed(t, "shed.toml", everything))
	for c, want := range map[plan.Connection]struct {
		spots, nails int
		how          string
	}{
		plan.RafterToRidge:   {10, 60, "10 pairs of rafters, 3 nails in each of 20"},
		plan.RafterToPlate:   {20, 60, "20 rafters, 3 nails in each"},
		plan.TopPlates:       {6, 34, "S and N 144 in at 16: 9 each; 4 rakes of 56.5 in x 13/12 = 61.2 at 16: 4 each"},
		plan.CornerStuds:     {4, 32, "4 corners, 92 5/8 in at 12: 8 each"},
		plan.JackToKing:      {2, 44, "2 jacks of 80 1/2 in at 8: 11, two rows"},
		plan.HeaderToKing:    {2, 8, "2 ends, 4 each"},
		plan.HeaderPlies:     {1, 6, "two plies, 41 in at 16: 3, two rows"},
		plan.CrippleToPlate:  {2, 4, "cripples at 64 and 80 in, 2 each"},
		plan.CrippleToHeader: {2, 8, "the same, 4 each"},
		plan.JoistToSupport:  {16, 48, "8 ties on two plates, 3 each"},
	} {
		l := n.Line(c)
		require.NotNil(t, l, c)
		assert.Len(t, l.Spots, want.spots, "%s: %s", c, want.how)
		assert.Equal(t, want.nails, l.Nails, "%s: %s", c, want.how)
	}
	s := n.House.Plan.Walls[0]
	// S: two posts at each end, kings at 51 3/4 and 94 1/4 in, studs at 16, 32,
	// 48, 96, 112, 128: 12 under the plate; the two jacks stand on it besides.
	assert.Equal(t, 12*2, n.Line(plan.TopPlateToStud).NailsOn(s))
	assert.Equal(t, 14*2, n.Line(plan.SoleToStud).NailsOn(s))
}

// Under the peak of a rake both plates break: there is no lap to nail. The
// shed has no other splice.
func TestASpliceWithoutALapTakesNoNails(t *testing.T) {
	n := New(framed(t, "shed.toml", everything))
	assert.Empty(t, n.Line(plan.TopPlateSplice).Spots)
	for _, l := range n.Lines {
		assert.NotEqual(t, plan.TopPlateSplice, l.Row.Connection, "a line with no place is on no sheet")
	}
}

// Lines are numbered without gaps, in the order of the table, whatever the
// order they are written in.
func TestLinesAreNumberedInTheOrderOfTheTable(t *testing.T) {
	n := New(framed(t, "marsh-wren.toml", ""))
	last := -1
	for i, l := range n.Lines {
		assert.Equal(t, i+1, l.Number)
		at := -1
		for k, r := range plan.NailedConnections {
			if r == l.Row {
				at = k
			}
		}
		assert.Greater(t, at, last, l.Mark())
		last = at
	}
	assert.Empty(t, n.Missing, "the demo house orders all")
}

// What the plan does not order is missing, and no line has it.
func TestWhatIsNotOrderedIsMissing(t *testing.T) {
	n := New(framed(t, "shed.toml", ""))
	assert.Empty(t, n.Lines)
	missing := map[plan.Connection]int{}
	for _, m := range n.Missing {
		missing[m.Row.Connection] = m.Spots
	}
	assert.Equal(t, 2, missing[plan.JackToKing])
	assert.Nil(t, n.Line(plan.JackToKing))
	assert.NotContains(t, missing, plan.GirderPlies, "the shed has no girder")
}

// Wall 1S of the demo house lies along its rim, 44 ft with a door of 3'-4":
// shear segments of 8 ft and 6'-8" at 3 in in two rows, one for each spacing
// begun of a plate on a rim. The first is one stretch: 96 / 3 = 32. In the second
// the plate breaks at 39'-6" and the rim at 40 ft: 26, 6 and 48 in, up to 9, 2 and
// 16. The rest, 14'-2" in two plates and 13'-10", goes at 16 in.
func TestBottomPlatesAreNailedByTheirSegments(t *testing.T) {
	h := framed(t, "marsh-wren.toml", "")
	n := New(h)
	s := h.Plan.Walls[0]
	require.Equal(t, "1S", s.Name)
	assert.Equal(t, 2*(32+9+2+16), n.Line(plan.SoleAtShearWall).NailsOn(s))
	touch := 0.0
	for _, x := range append(n.Line(plan.SoleAtShearWall).On(s), n.Line(plan.SoleToFloor).On(s)...) {
		touch += x.Touch
		assert.Equal(t, plan.Rim, x.Main.Role)
		assert.InDelta(t, s.Level.Subfloor, x.Gap, 1e-9)
	}
	assert.InDelta(t, 528-40, touch, 0.1, "the wall less its door")
}

// Without a line of their own, shear walls take that of the rest.
func TestShearWallsTakeTheCommonLine(t *testing.T) {
	h := framed(t, "marsh-wren.toml", "")
	h.Plan.Nailing = []*plan.NailLine{{At: plan.SoleToFloor, Nail: "16d common", Size: plan.NailDim{Diameter: 0.162, Length: 3.5}, Spacing: 8, Rows: 1, Drive: plan.FaceNail}}
	n := New(h)
	sum := 0.0
	for _, x := range n.Line(plan.SoleToFloor).On(h.Plan.Walls[0]) {
		sum += x.Touch
	}
	assert.InDelta(t, 488, sum, 0.1)
}

// An inner wall across the joists is nailed into each that it crosses, with
// the nails of the way between them; none is counted where nothing lies under
// the subfloor.
func TestInnerWallsAreNailedToTheJoistsTheyCross(t *testing.T) {
	h := framed(t, "marsh-wren.toml", "")
	n := New(h)
	for _, w := range h.Plan.Walls {
		if w.Name != "1C" {
			continue
		}
		for _, x := range n.Line(plan.SoleToFloor).On(w) {
			assert.Equal(t, plan.Joist, x.Main.Role)
			assert.LessOrEqual(t, x.Touch, 24.0)
		}
		assert.NotEmpty(t, n.Line(plan.SoleToFloor).On(w))
	}
}

// Nails of all walls and of what is on none add up to the line.
func TestNailsByWallAddUp(t *testing.T) {
	h := framed(t, "marsh-wren.toml", "")
	for _, l := range New(h).Lines {
		sum := l.NailsOn(nil)
		for _, w := range h.Plan.Walls {
			sum += l.NailsOn(w)
		}
		assert.Equal(t, l.Nails, sum, l.Mark())
		assert.Positive(t, sum)
	}
}

func TestANailForEachSpacingBegun(t *testing.T) {
	row := plan.JackToKing.Row()
	for _, c := range []struct {
		touch float64
		want  int
	}{{80, 10}, {80.5, 11}, {4, 1}, {8, 1}, {8.01, 2}} {
		s := &Spot{Row: row, Touch: c.touch, Times: 1}
		assert.Equal(t, c.want, s.Nails(&plan.NailLine{Spacing: 8, Rows: 1}), c.touch)
		assert.Equal(t, 2*c.want, s.Nails(&plan.NailLine{Spacing: 8, Rows: 2}), c.touch)
	}
	assert.Zero(t, (&Spot{Row: row, Touch: 80, Times: 1}).Nails(nil))
}

func TestAShortNailIsTold(t *testing.T) {
	n := New(framed(t, "shed.toml", "\n[nailing]\ntop_plates = { nail = \"6d common\", spacing = \"16in\" }\n"))
	ds := n.Faults()
	require.Len(t, ds, 1) // 2 in through 1 1/2: 0.50 in, under 6 x 0.113
	assert.Equal(t, plan.Code("short-nail"), ds[0].Code)
	assert.Contains(t, ds[0].Summary, "0.50 in of penetration, least 0.68 in")
	assert.Empty(t, New(framed(t, "shed.toml", everything)).Faults())
}
