package framing

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"galewright/plan"
)

// sticks lists members by ID: role, section and, of each, what print says.
func sticks(list []*Member, print func(*Member) string) string {
	var out []string
	for _, m := range list {
		out = append(out, fmt.Sprintf("%s, %s: %s", m.ID, m.Section.Text, print(m)))
	}
	return strings.Join(out, "\n")
}

// jointsOf lists joints: ID, place, gap, tributary length and members.
func jointsOf(list []*Joint) string {
	var out []string
	for _, j := range list {
		s := fmt.Sprintf("%s at %g %g %g, gap %g, serves %g:", j.ID, j.At.X, j.At.Y, j.At.Z, j.Gap, j.Tributary)
		for _, m := range j.Members {
			s += " " + m.ID
		}
		out = append(out, s)
	}
	return strings.Join(out, "\n")
}

// A wall of 100 on a slab at 120, 109.125 high, with a window of 30 by 54 at 40, its sill 30
// up. Plates of 1.5: studs from 121.5 to 226.125. One jack, 38.5 to 40, from the sill plate to
// the head at 204, the header of 9.25 on it from jack's to jack's outer face; kings beside. The
// rough sill is 1.5 under 150, cripples under it at its ends and where the module, 48 and 64,
// falls; over the header, at 213.25, 12.875 are left to the plates. Each full-height stud serves
// half way to the next, past the opening the kings half of it each.
func TestAWallWithAWindowByHand(t *testing.T) {
	p, _ := straight(100, window("w", 40, 30))
	h := frame(t, p)
	assert.Equal(t, strings.TrimSpace(`
1A/header@38.5, 2-2x10: 38.5 to 71.5, 204 to 213.25, 33 long
1A/cripple@48, 2x6: 47.25 to 48.75, 213.25 to 226.125, 12.875 long
1A/cripple@64, 2x6: 63.25 to 64.75, 213.25 to 226.125, 12.875 long
1A/sill@40, 2x6: 40 to 70, 148.5 to 150, 30 long
1A/sill cripple@40.75, 2x6: 40 to 41.5, 121.5 to 148.5, 27 long
1A/sill cripple@69.25, 2x6: 68.5 to 70, 121.5 to 148.5, 27 long
1A/sill cripple@48, 2x6: 47.25 to 48.75, 121.5 to 148.5, 27 long
1A/sill cripple@64, 2x6: 63.25 to 64.75, 121.5 to 148.5, 27 long
1A/stud@0.75, 2x6: 0 to 1.5, 121.5 to 226.125, 104.625 long
1A/stud@16, 2x6: 15.25 to 16.75, 121.5 to 226.125, 104.625 long
1A/stud@32, 2x6: 31.25 to 32.75, 121.5 to 226.125, 104.625 long
1A/king@37.75, 2x6: 37 to 38.5, 121.5 to 226.125, 104.625 long
1A/jack@39.25, 2x6: 38.5 to 40, 121.5 to 204, 82.5 long
1A/jack@70.75, 2x6: 70 to 71.5, 121.5 to 204, 82.5 long
1A/king@72.25, 2x6: 71.5 to 73, 121.5 to 226.125, 104.625 long
1A/stud@80, 2x6: 79.25 to 80.75, 121.5 to 226.125, 104.625 long
1A/stud@96, 2x6: 95.25 to 96.75, 121.5 to 226.125, 104.625 long
1A/stud@99.25, 2x6: 98.5 to 100, 121.5 to 226.125, 104.625 long
1A/sill plate@0, 2x6: 0 to 100, 120 to 121.5, 100 long
1A/top plate@0, 2x6: 0 to 100, 226.125 to 227.625, 100 long
1A/upper plate@0, 2x6: 0 to 100, 227.625 to 229.125, 100 long`),
		sticks(h.Members, func(m *Member) string {
			return fmt.Sprintf("%g to %g, %g to %g, %g long", m.S0, m.S1, m.Z0, m.Z1, m.Length)
		}))
	var list []*Joint
	for _, j := range h.Joints {
		if j.Station < 60 && j.Kind != plan.SillFoundation {
			list = append(list, j)
		}
	}
	assert.Equal(t, strings.TrimSpace(`
1A-1-ST at 0.75 2.75 226.125, gap 0, serves 8.375: 1A/stud@0.75 1A/top plate@0 1A/upper plate@0
1A-1-SB at 0.75 2.75 121.5, gap 0, serves 8.375: 1A/stud@0.75 1A/sill plate@0
1A-16-ST at 16 2.75 226.125, gap 0, serves 15.625: 1A/stud@16 1A/top plate@0 1A/upper plate@0
1A-16-SB at 16 2.75 121.5, gap 0, serves 15.625: 1A/stud@16 1A/sill plate@0
1A-32-ST at 32 2.75 226.125, gap 0, serves 10.875: 1A/stud@32 1A/top plate@0 1A/upper plate@0
1A-32-SB at 32 2.75 121.5, gap 0, serves 10.875: 1A/stud@32 1A/sill plate@0
1A-38-ST at 37.75 2.75 226.125, gap 0, serves 20.125: 1A/king@37.75 1A/top plate@0 1A/upper plate@0
1A-38-SB at 37.75 2.75 121.5, gap 0, serves 20.125: 1A/king@37.75 1A/sill plate@0
1A-39-OH at 38.5 2.75 204, gap 12.875, serves 16.5: 1A/header@38.5 1A/king@37.75 1A/top plate@0 1A/upper plate@0
1A-39-HK at 38.5 1.5 208.625, gap 0, serves 16.5: 1A/header@38.5 1A/king@37.75
1A-39-ST at 39.25 2.75 204, gap 0, serves 16.5: 1A/jack@39.25 1A/header@38.5
1A-39-SB at 39.25 2.75 121.5, gap 0, serves 0: 1A/jack@39.25 1A/sill plate@0
1A-40-OS at 40 2.75 150, gap 0, serves 15: 1A/sill@40 1A/jack@39.25 1A/king@37.75
1A-48-CP at 48 2.75 226.125, gap 0, serves 17.5: 1A/cripple@48 1A/top plate@0 1A/upper plate@0
1A-48-CH at 48 2.75 213.25, gap 0, serves 17.5: 1A/cripple@48 1A/header@38.5`), jointsOf(list))
}

// A house of 96 by 72 over girders of 4.5 in whose outer sides are flush with its walls at y = 0
// and 72, on three piles of 7.5. Joists of 9.25 lie between the rims from 110 to 119.25, the
// girders of 11.25 under them from 98.75. The rim is held to its girder at each stud's foot,
// across the girder where it lies over its end: 1B's rim, which ends 1.5 in from 0, over the
// middle of 1.5 to 4.5. A joist lies on a girder from the rim's inner face on: over the middle
// of that, y = 3. Piles at 6, 48 and 90 share the girder at 27 and 69.
func TestAFloorOverGirdersByHand(t *testing.T) {
	p := stories(1)
	ring(p, 0, rect(0, 0, 96, 72)...)
	girders(p, 0, 96, 2.25, 69.75)
	h := frame(t, p)
	var list []*Member
	for _, m := range h.Members {
		switch m.Role {
		case plan.BottomPlate, plan.Rim, plan.Joist, plan.GirderBeam, plan.Pile:
			list = append(list, m)
		}
	}
	assert.Equal(t, strings.TrimSpace(`
1A/bottom plate@0, 2x6: 0 0 120 to 96 5.5 121.5, 96 long
1B/bottom plate@5.5, 2x6: 90.5 5.5 120 to 96 66.5 121.5, 61 long
1C/bottom plate@0, 2x6: 0 66.5 120 to 96 72 121.5, 96 long
1D/bottom plate@5.5, 2x6: 0 5.5 120 to 5.5 66.5 121.5, 61 long
1A/rim@0, 2x10: 0 0 110 to 96 1.5 119.25, 96 long
1B/rim@1.5, 2x10: 94.5 1.5 110 to 96 70.5 119.25, 69 long
1C/rim@0, 2x10: 0 70.5 110 to 96 72 119.25, 96 long
1D/rim@1.5, 2x10: 0 1.5 110 to 1.5 70.5 119.25, 69 long
first/joist@16, 2x10: 15.25 1.5 110 to 16.75 70.5 119.25, 69 long
first/joist@32, 2x10: 31.25 1.5 110 to 32.75 70.5 119.25, 69 long
first/joist@48, 2x10: 47.25 1.5 110 to 48.75 70.5 119.25, 69 long
first/joist@64, 2x10: 63.25 1.5 110 to 64.75 70.5 119.25, 69 long
first/joist@80, 2x10: 79.25 1.5 110 to 80.75 70.5 119.25, 69 long
G1/girder@0, 3-2x12: 0 0 98.75 to 96 4.5 110, 96 long
G1/pile@6, 8x8: 2.25 -1.5 0 to 9.75 6 98.75, 98.75 long
G1/pile@48, 8x8: 44.25 -1.5 0 to 51.75 6 98.75, 98.75 long
G1/pile@90, 8x8: 86.25 -1.5 0 to 93.75 6 98.75, 98.75 long
G2/girder@0, 3-2x12: 0 67.5 98.75 to 96 72 110, 96 long
G2/pile@6, 8x8: 2.25 66 0 to 9.75 73.5 98.75, 98.75 long
G2/pile@48, 8x8: 44.25 66 0 to 51.75 73.5 98.75, 98.75 long
G2/pile@90, 8x8: 86.25 66 0 to 93.75 73.5 98.75, 98.75 long`),
		sticks(list, func(m *Member) string {
			lo, hi := m.Bounds()
			return fmt.Sprintf("%g %g %g to %g %g %g, %g long", lo.X, lo.Y, lo.Z, hi.X, hi.Y, hi.Z, m.Length)
		}))
	var at []*Joint
	for _, j := range h.Joints {
		if j.Host == "G1" || j.Host == "1A" && j.Station < 20 && j.Kind != plan.StudTop || j.Host == "1B" && (j.Kind == plan.RimGirder || j.Kind == plan.SoleRim && j.Station < 20) {
			at = append(at, j)
		}
	}
	assert.Equal(t, strings.TrimSpace(`
1A-0-WC at 0 2.75 226.125, gap 0, serves 0: 1D/post@65.75 1A/post@0.75
1A-1-SB at 0.75 2.75 120.375, gap 2.25, serves 3.25: 1A/post@0.75 1A/rim@0 1A/bottom plate@0 G1/girder@0
1A-1-SR at 0.75 2.75 119.625, gap 0.75, serves 3.25: 1A/bottom plate@0 1A/rim@0
1A-1-RG at 0.75 0.75 110, gap 0, serves 3.25: 1A/rim@0 G1/girder@0
1A-6-SB at 5.75 2.75 120.375, gap 2.25, serves 7.625: 1A/post@5.75 1A/rim@0 1A/bottom plate@0 G1/girder@0
1A-6-SR at 5.75 2.75 119.625, gap 0.75, serves 7.625: 1A/bottom plate@0 1A/rim@0
1A-6-RG at 5.75 0.75 110, gap 0, serves 7.625: 1A/rim@0 G1/girder@0
1A-16-SB at 16 2.75 120.375, gap 2.25, serves 13.125: 1A/stud@16 1A/rim@0 1A/bottom plate@0 G1/girder@0
1A-16-SR at 16 2.75 119.625, gap 0.75, serves 13.125: 1A/bottom plate@0 1A/rim@0
1A-16-RG at 16 0.75 110, gap 0, serves 13.125: 1A/rim@0 G1/girder@0
1B-3-RG at 95.25 3 110, gap 0, serves 34.5: 1B/rim@1.5 G1/girder@0
1B-6-SR at 93.25 6.25 119.625, gap 0.75, serves 11.125: 1B/bottom plate@5.5 1B/rim@1.5
1B-16-SR at 93.25 16 119.625, gap 0.75, serves 12.875: 1B/bottom plate@5.5 1B/rim@1.5
1B-69-RG at 95.25 69 110, gap 0, serves 34.5: 1B/rim@1.5 G2/girder@0
G1-6-GP at 6 2.25 98.75, gap 0, serves 27: G1/girder@0 G1/pile@6
G1-16-JG at 16 3 110, gap 0, serves 16: first/joist@16 G1/girder@0
G1-32-JG at 32 3 110, gap 0, serves 16: first/joist@32 G1/girder@0
G1-48-JG at 48 3 110, gap 0, serves 16: first/joist@48 G1/girder@0
G1-48-GP at 48 2.25 98.75, gap 0, serves 42: G1/girder@0 G1/pile@48
G1-64-JG at 64 3 110, gap 0, serves 16: first/joist@64 G1/girder@0
G1-80-JG at 80 3 110, gap 0, serves 16: first/joist@80 G1/girder@0
G1-90-GP at 90 2.25 98.75, gap 0, serves 27: G1/girder@0 G1/pile@90`), jointsOf(at))
}

// A house of two stories of 96 by 72 whose south wall runs past the second floor, at 239.125: the
// joists there, 229.125 to 238.375, stop at a ledger 1.5 thick on its inside face, between the
// studs at its ends (y = 7), and 2B's and 2D's rims at the wall (y = 5.5). Blocks of 1.5 close its
// bays at the joists' foot, but for one of a quarter of an inch between king and stud; a cripple
// over the window parts one. The ledger, 1.5 to 94.5, is bolted to each full-height stud it passes,
// half-way up, and each serves half way to the next and the outer ones to its ends.
func TestAWallThatPassesAFloorByHand(t *testing.T) {
	p := stories(2)
	w := ring(p, 0, rect(0, 0, 96, 72)...)
	w[0].ToLevel, w[0].Openings = p.Levels[1], []*plan.Opening{window("o", 40, 20)}
	u := ring(p, 1, rect(0, 0, 96, 72)...)
	p.Walls = append(p.Walls[:4], u[1:]...)
	girders(p, 0, 96, 2.25, 69.75)
	h := frame(t, p)
	var list []*Member
	for _, m := range h.Members {
		switch m.Role {
		case plan.Rim, plan.Joist, plan.Ledger, plan.Blocking:
			if m.Level == p.Levels[1] {
				list = append(list, m)
			}
		}
	}
	assert.Equal(t, strings.TrimSpace(`
2B/rim@5.5, 2x10: 94.5 5.5 229.125 to 96 70.5 238.375, 65 long
2C/rim@0, 2x10: 0 70.5 229.125 to 96 72 238.375, 96 long
2D/rim@1.5, 2x10: 0 5.5 229.125 to 1.5 70.5 238.375, 65 long
1A/second ledger@1.5, 2x10: 1.5 5.5 229.125 to 94.5 7 238.375, 93 long
1A/blocking@1.5, 2x6: 1.5 0 229.125 to 5 5.5 230.625, 3.5 long
1A/blocking@6.5, 2x6: 6.5 0 229.125 to 15.25 5.5 230.625, 8.75 long
1A/blocking@16.75, 2x6: 16.75 0 229.125 to 31.25 5.5 230.625, 14.5 long
1A/blocking@32.75, 2x6: 32.75 0 229.125 to 37 5.5 230.625, 4.25 long
1A/blocking@38.5, 2x6: 38.5 0 229.125 to 47.25 5.5 230.625, 8.75 long
1A/blocking@48.75, 2x6: 48.75 0 229.125 to 61.5 5.5 230.625, 12.75 long
1A/blocking@64.75, 2x6: 64.75 0 229.125 to 79.25 5.5 230.625, 14.5 long
1A/blocking@80.75, 2x6: 80.75 0 229.125 to 89.5 5.5 230.625, 8.75 long
1A/blocking@91, 2x6: 91 0 229.125 to 94.5 5.5 230.625, 3.5 long
second/joist@16, 2x10: 15.25 7 229.125 to 16.75 70.5 238.375, 63.5 long
second/joist@32, 2x10: 31.25 7 229.125 to 32.75 70.5 238.375, 63.5 long
second/joist@48, 2x10: 47.25 7 229.125 to 48.75 70.5 238.375, 63.5 long
second/joist@64, 2x10: 63.25 7 229.125 to 64.75 70.5 238.375, 63.5 long
second/joist@80, 2x10: 79.25 7 229.125 to 80.75 70.5 238.375, 63.5 long`),
		sticks(list, func(m *Member) string {
			lo, hi := m.Bounds()
			return fmt.Sprintf("%g %g %g to %g %g %g, %g long", lo.X, lo.Y, lo.Z, hi.X, hi.Y, hi.Z, m.Length)
		}))
	assert.Equal(t, strings.TrimSpace(`
1A-6-LW at 5.75 5.5 233.75, gap 0, serves 9.375: 1A/second ledger@1.5 1A/post@5.75
1A-16-LW at 16 5.5 233.75, gap 0, serves 13.125: 1A/second ledger@1.5 1A/stud@16
1A-32-LW at 32 5.5 233.75, gap 0, serves 10.875: 1A/second ledger@1.5 1A/stud@32
1A-38-LW at 37.75 5.5 233.75, gap 0, serves 15.125: 1A/second ledger@1.5 1A/king@37.75
1A-62-LW at 62.25 5.5 233.75, gap 0, serves 13.125: 1A/second ledger@1.5 1A/king@62.25
1A-64-LW at 64 5.5 233.75, gap 0, serves 8.875: 1A/second ledger@1.5 1A/stud@64
1A-80-LW at 80 5.5 233.75, gap 0, serves 13.125: 1A/second ledger@1.5 1A/stud@80
1A-90-LW at 90.25 5.5 233.75, gap 0, serves 9.375: 1A/second ledger@1.5 1A/post@90.25`), jointsOf(joints(h, "1A", plan.LedgerWall)))
	for _, m := range of(h, "1A", plan.Stud, plan.King, plan.Post) {
		assert.Equal(t, [2]float64{121.5, 345.25}, [2]float64{m.Z0, m.Z1}, m.ID)
	}
}
