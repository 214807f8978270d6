package loadpath

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// over writes a one-story house over an outline, corners in inches, under
// roofs.
func over(outline [][2]float64, roofs ...string) string {
	var b strings.Builder
	b.WriteString("level = [{ name = \"floor\", plate_height = \"9'\", studs = \"2x6 @ 16in\" }]\nwall = [\n")
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		fmt.Fprintf(&b, "  { name = \"W%d\", from = [\"%gin\", \"%gin\"], to = [\"%gin\", \"%gin\"] },\n", i, p[0], p[1], q[0], q[1])
	}
	b.WriteString("]\nroof = [\n" + strings.Join(roofs, "") + "]\n[project]\nname = \"roofs\"\ndate = 2026-01-05\n[site]\nwind_speed = \"150 mph\"\nexposure = \"D\"\n")
	return b.String()
}

// roof writes one roof over the area x0, y0 to x1, y1, in.
func roof(name, kind, ridge string, area [4]float64, more string) string {
	return fmt.Sprintf("  { name = %q, kind = %q, ridge = %q, pitch = \"6:12\", area = [[\"%gin\", \"%gin\"], [\"%gin\", \"%gin\"]], overhang = \"12in\", rafters = \"2x8 @ 16in\"%s },\n",
		name, kind, ridge, area[0], area[1], area[2], area[3], more)
}

var (
	square  = [][2]float64{{0, 0}, {240, 0}, {240, 240}, {0, 240}}
	winged  = [][2]float64{{0, 0}, {120, 0}, {120, -120}, {264, -120}, {264, 0}, {360, 0}, {360, 192}, {0, 192}}
	flush   = [][2]float64{{0, 0}, {216, 0}, {216, -120}, {360, -120}, {360, 192}, {0, 192}}
	main    = [4]float64{0, 0, 360, 192}
	wing    = [4]float64{120, -120, 264, 0}
	atEnd   = [4]float64{216, -120, 360, 0}
	pyramid = over(square, roof("main", "hip", "x", [4]float64{0, 0, 240, 240}, ""))
)

// roofs are those whose members rest on hips, valleys and each other.
var roofs = map[string]string{
	"pyramid":                pyramid,
	"hip":                    over([][2]float64{{0, 0}, {360, 0}, {360, 192}, {0, 192}}, roof("main", "hip", "x", main, "")),
	"gables with a valley":   over(winged, roof("main", "gable", "x", main, ""), roof("wing", "gable", "y", wing, "")),
	"hips with a valley":     over(winged, roof("main", "hip", "x", main, ""), roof("wing", "hip", "y", wing, "")),
	"hips on a ridge beam":   over(winged, roof("main", "hip", "x", main, `, ridge_member = "3.5x14", ridge_beam = true`), roof("wing", "hip", "y", wing, "")),
	"hips, the wing flush":   over(flush, roof("main", "hip", "x", main, ""), roof("wing", "hip", "y", atEnd, "")),
	"gables, the wing flush": over(flush, roof("main", "gable", "x", main, ""), roof("wing", "gable", "y", atEnd, "")),
}

func TestRoofsOfAllKindsLoseNothing(t *testing.T) {
	// Every support comes from a joint of framing's: what the wind lifts reaches
	// plates.
	for name, text := range roofs {
		t.Run(name, func(t *testing.T) {
			a := analyzed(t, text)
			require.Zero(t, sumOf(a.unheld))
			require.Zero(t, sumOf(a.ridgeLost))
			for _, c := range a.cases() {
				state, lifted, reached := a.run(c), Force{}, Force{}
				for _, s := range a.rafters {
					a.roofLoads(s, state.roofs[s.roof], func(p patch) { lifted.take(p.force) })
				}
				for _, p := range a.paths {
					reached.take(state.walls[p.n].roof)
				}
				lifted.take(down(hung(a)))
				assert.InDelta(t, lifted.W, reached.W, 1e-6*math.Abs(lifted.W), "%s: wind", c)
				assert.InDelta(t, lifted.D, reached.D, 1e-6*lifted.D, "%s: weight", c)
			}
		})
	}
}

func TestPeakOfAPyramidStandsOnAllFourCorners(t *testing.T) {
	// Statics of a roof alike on four sides: four hips lean on each other, and
	// each corner holds as much weight as any other.
	a := analyzed(t, pyramid)
	state, corners := a.run(a.cases()[0]), []float64{}
	for _, j := range a.house.Joints {
		if j.Kind == plan.RafterPlate && j.First().Role == plan.HipRafter {
			corners = append(corners, state.rafters[j].D)
		}
	}
	require.Len(t, corners, 4)
	for _, lb := range corners {
		assert.InEpsilon(t, corners[0], lb, 0.02, "jacks of two sides meet a hip a little apart")
	}
}

func TestHipHasNoWidthOfItsOwn(t *testing.T) {
	r := reportOf(placed(t, pyramid))
	hips := 0
	for _, u := range r.Uplift {
		for _, l := range r.Joint(u.At) {
			if l.Joint.First().Role == plan.HipRafter {
				hips++
				assert.Zero(t, u.PerFoot)
			} else {
				assert.Positive(t, u.PerFoot)
			}
		}
	}
	assert.Positive(t, hips, "the corners of a pyramid are asked for most")
	assert.Contains(t, wholeOf(t, r), `"asd_plf": null`)
}
