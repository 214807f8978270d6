package framing

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"galewright/plan"
	"galewright/plan/read"
)

// dormered returns a house 40 ft by 28 ft under a gable roof, with dormers written as TOML.
func dormered(t require.TestingT, pitch string, dormers ...string) (*House, plan.Diagnostics) {
	src := fmt.Sprintf(`
level = [{ name = "one", plate_height = "8' 1 1/8in", studs = "2x4 @ 16in" }]
wall = [
  { name = "S", from = ["0'", "0'"], to = ["40'", "0'"] },
  { name = "E", to = ["40'", "28'"], top = "rake" },
  { name = "N", to = ["0'", "28'"] },
  { name = "W", to = ["0'", "0'"], top = "rake" },
]
roof = [{ name = "main", kind = "gable", ridge = "x", pitch = %q, rafters = "2x8 @ 16in", ceiling_splice = "2'" }]
dormer = [%s]
[project]
name = "Dormers"
date = 2026-03-02
[lumber]
stud = "40'"
`, pitch, strings.Join(dormers, ", "))
	p, faults := read.Plan("dormers.toml", []byte(src), os.ReadFile)
	require.False(t, faults.Errors(), "%v\n%s", faults, src)
	return Frame(p)
}

// named returns a member of a house by its ID.
func named(t *testing.T, h *House, id string) *Member {
	for _, m := range h.Members {
		if m.ID == id {
			return m
		}
	}
	require.Fail(t, "no member "+id)
	return nil
}

// A framing square gives for 9 in 12 a common rafter of 15.00 in for each foot of run, a
// valley of 19.21 in for each foot of the common's run (the root of 288 + 81), and jacks
// at 16 in that differ by 20 in (rows of the square, from memory; the first two are the
// theorem of Pythagoras). The dormer of 6 ft has 3 ft of run, less half the ridge of 1 1/2
// in, and 8 in of overhang.
func TestADormerByTheFramingSquare(t *testing.T) {
	h, faults := dormered(t, "9:12", `{ name = "D", side = "S", center = "20'", width = "6'", set_back = "3'", plate_height = "6'", pitch = "9:12" }`)
	require.Empty(t, faults)
	long := func(id string) float64 { m := named(t, h, id); return m.B.Sub(m.A).Len() }
	run := (36 - 0.75 + 8) / 12.0
	for _, side := range []string{"W", "E"} {
		assert.InDelta(t, 15.00*run, long("D/"+side+"/rafter@16"), 0.01)
		assert.InDelta(t, 20, long("D/"+side+"/jack@64")-long("D/"+side+"/jack@80"), 0.01)
		assert.InDelta(t, 19.21*run, long("D/valley board"+side), 0.03)
		// Cheek studs at 16 in differ by the main roof's rise in 16 in: 12 in at 9 in 12.
		assert.InDelta(t, 12, named(t, h, "D/side"+side+"/stud@16").Length-named(t, h, "D/side"+side+"/stud@32").Length, 0.01)
	}
	// Both planes meet the main one above the plates: the ridge of a dormer as steep as the
	// roof dies as far in from the cheeks' valleys as the dormer is half wide.
	d := h.Dormers[0]
	size := d.Own.Area[1].Sub(d.Own.Area[0])
	low := h.Dormers[0].Upper
	require.Greater(t, size.Y, low-36)
	for _, f := range h.Roof {
		if f.Roof == d.Own {
			top, foot := math.Inf(-1), math.Inf(-1)
			for _, p := range f.Outline {
				if math.Abs(p.X-240) < 0.01 {
					top = max(top, p.Y)
				} else {
					foot = max(foot, p.Y)
				}
			}
			assert.InDelta(t, 36+8, top-foot, 0.01)
		}
	}
}

// The opening: doubled trimmers from plate to ridge under both cheeks, doubled headers that
// hang between them, and each common rafter between in two pieces that end there.
func TestADormersOpeningIsTrimmed(t *testing.T) {
	h, faults := dormered(t, "9:12", `{ name = "D", side = "S", center = "20'", width = "6'", set_back = "3'", plate_height = "6'", pitch = "9:12" }`)
	require.Empty(t, faults)
	d := h.Dormers[0]
	require.Len(t, d.Headers, 2)
	for i, x := range []float64{240 - 36 + 1.5, 240 + 36 - 1.5} {
		m := d.Trimmers[i]
		require.Equal(t, 2, m.Section.Ply)
		assert.InDelta(t, x, m.A.X, 0.01)
	}
	ends := map[*Member]int{}
	for _, j := range h.Joints {
		if j.Kind == plan.RafterRidge && j.Dormer != nil && strings.HasSuffix(j.Host, "/opening") {
			ends[j.Members[0]]++
			ends[j.Members[1]]++
		}
	}
	for _, m := range d.Headers {
		assert.Equal(t, 2, m.Section.Ply)
		assert.InDelta(t, 66, m.Length, 0.01) // 6 ft less two trimmers of 3 in
		assert.Equal(t, 2+3, ends[m], "two trimmers and the rafters at 224, 240, 256: those at 208 and 272 stand hard by a trimmer and are left out")
	}
	for _, m := range d.Trimmers {
		assert.Equal(t, 2, ends[m])
	}
}

// A shed dormer of 3 in 12 on a roof of 9 in 12, by trigonometry: the framing square gives for
// 3 in 12 12.37 in for each foot of run, and where the planes meet the run is the height of the
// shed's eave over the main roof there over the difference of the slopes, 1/2.
func TestAShedDormerByTrigonometry(t *testing.T) {
	h, faults := dormered(t, "9:12", `{ name = "D", kind = "shed", side = "S", center = "20'", width = "8'", set_back = "3'", plate_height = "6'", pitch = "3:12" }`)
	require.Empty(t, faults)
	d := h.Dormers[0]
	require.Equal(t, plan.ShedRoof, d.Own.Kind)
	require.Equal(t, plan.North, d.Own.High)
	// Main rafter's top over the outside face of the wall: a 2x8 of 7 1/4 in square depth,
	// 9.0625 in plumb, its notch a quarter of that deep: 6.7969 in over the plates. 3 ft in
	// 27 in more. The dormer's: a 2x6 of 5 1/2 in, 5.6692 in plumb, seated 3 1/2 in, over plates
	// at 72 in: 72 + 5.6692 - 0.875 = 76.7942.
	over := 72 + 5.5*math.Sqrt(17)/4 - 3.5*0.25 - (7.25*1.25*3/4 + 27)
	run := over / (0.75 - 0.25)
	assert.InDelta(t, 36+run, d.Upper, 0.01)
	m := named(t, h, "D/S/rafter@48")
	assert.InDelta(t, 12.37*(run+8)/12, m.B.Sub(m.A).Len(), 0.05)
	assert.InDelta(t, (run+8)*math.Sqrt(17)/4, m.B.Sub(m.A).Len(), 0.01)
	assert.InDelta(t, 8*12-1.5, named(t, h, "D/S/rafter@95.25").A.X-named(t, h, "D/S/rafter@0.75").A.X, 0.01)
	// Studs of its side walls at 16 in differ by the difference of the slopes in 16 in.
	assert.InDelta(t, 8, named(t, h, "D/sideE/stud@16").Length-named(t, h, "D/sideE/stud@32").Length, 0.01)
	for _, m := range h.Members {
		require.False(t, m.Roof == d.Own && (m.Role == plan.Ridge || m.Role == plan.ValleyBoard || m.Role == plan.Joist), m.ID)
	}
}

// Whatever dormer fits its roof: no two members share room, and each rafter, stud and header
// is held at both ends.
func TestAnyDormerIsSound(t *testing.T) {
	framed := map[plan.RoofKind]int{}
	rapid.Check(t, func(t *rapid.T) {
		one := func(name, side string) string {
			back := rapid.SampledFrom([]int{0, 0, 24, 30, 36, 45}).Draw(t, "back")
			kind := rapid.SampledFrom(plan.DormerKinds).Draw(t, "kind")
			return fmt.Sprintf(`{ name = %q, kind = %q, side = %q, center = "%din", width = "%din", set_back = "%din", plate_height = "%din", pitch = "%d:12", overhang = "%din", rake = "%din", rafters = "2x%d @ 16in" }`,
				name, kind, side, rapid.IntRange(90, 390).Draw(t, "center"), rapid.IntRange(40, 130).Draw(t, "width"), back,
				30+back*3/4+rapid.IntRange(0, 40).Draw(t, "high"), map[plan.RoofKind]*rapid.Generator[int]{plan.GableRoof: rapid.IntRange(3, 14), plan.ShedRoof: rapid.IntRange(1, 7)}[kind].Draw(t, "pitch"), rapid.IntRange(0, 16).Draw(t, "overhang"), rapid.IntRange(0, 16).Draw(t, "rake"), rapid.SampledFrom([]int{6, 8}).Draw(t, "deep"))
		}
		h, faults := dormered(t, fmt.Sprintf("%d:12", rapid.IntRange(6, 14).Draw(t, "main")), one("A", "S"), one("B", "N"))
		if faults.Errors() {
			for _, d := range faults {
				if d.Severity == plan.Error {
					require.Contains(t, string(d.Code), "dormer", d.String())
				}
			}
			return
		}
		for _, d := range h.Dormers {
			framed[d.Kind]++
		}
		for _, pair := range h.Overlaps(sixteenth) {
			require.Fail(t, pair[0].ID+" reaches into "+pair[1].ID)
		}
		first, second := map[*Member]int{}, map[*Member]int{}
		for _, j := range h.Joints {
			for i, m := range j.Members {
				if i == 0 {
					first[m]++
				} else {
					second[m]++
				}
			}
		}
		for _, d := range h.Dormers {
			for _, m := range d.Headers {
				require.GreaterOrEqual(t, first[m], 2, m.ID)
			}
			for _, m := range h.Members {
				if m.Roof != d.Own {
					continue
				}
				switch {
				case m.Role == plan.Rafter:
					require.GreaterOrEqual(t, first[m]+second[m], 2, "%s is held at one end or none", m.ID)
				case (m.Role == plan.Stud || m.Role == plan.Post) && !strings.Contains(m.ID, "gable stud"):
					require.Equal(t, 1, first[m], "the foot of %s", m.ID)
					require.Equal(t, 1, second[m], "the head of %s", m.ID)
				case m.Role == plan.ValleyBoard:
					require.GreaterOrEqual(t, first[m], 1, "%s lies on no rafter", m.ID)
				}
			}
		}
	})
	for _, kind := range plan.DormerKinds {
		require.NotZero(t, framed[kind], "no %s dormer drawn was framed", kind)
	}
}
