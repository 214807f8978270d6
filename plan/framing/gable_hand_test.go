package framing

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"galewright/plan"
	"galewright/plan/geom"
)

// A gable of 9 in 12 over 96 in, 2x8 at 16, a ridge 1 1/2 thick, eaves of 12 and rakes of 14, on
// rake walls, with full blocks and ceiling joists. Lengths on the slope are 5/4, plumb depth is
// 7.25 x 5/4 = 9.0625; the seat 7.25/(4 x 0.6) = 3.0208. Over the wall's face the roof is at
// 229.125 + 9.0625 - 3.0208 x 3/4 = 235.9219; 9 lower 12 out, 36 higher at the middle, where the
// ridge lies 0.75 x 3/4 under it, at 271.359. A rafter is 59.25 on plan, 74.0625 on the slope,
// and 7.25 x 3/4 more from long point to long point: 79.5.
// The fly rafter's middle is 14 - 0.75 = 13.25 out. Outlookers lie flat from there, 12.5 out, to
// the side of the rafter at 16, their low edges on the module of 24 from the wall's face: 3.5 wide
// is 2.8 on plan, so the first one's middle is at 1.4. They are tied at the middle of their
// thickness of 1.5: 0.75 x 3/5 in and 0.75 x 4/5 down from there. The first serves from the eave,
// 12 out, to half way, 25.4; the second from there to the ridge, 34.6.
// A block stands at the wall's inside, 5.5 in, as high as the roof there, 240.047; between rafters
// of 1.5, and from 16 on beside a joist of 1.5 too. The ridge of 268 is cut at 224, the last
// rafter within 240 of its end. The end rafters lie on the sloping plates of the rake wall.
func TestAGableByHand(t *testing.T) {
	p := simple(9, 1.5, 12, 96)
	p.Roofs[0].Rake, p.Roofs[0].Blocking = 14, plan.FullBlocking
	h := roofed(t, p)
	var list []*Member
	for _, m := range h.Members {
		if lo, hi := m.Bounds(); m.Roof != nil && (hi.X < 40 && lo.Y < 48 || m.Role == plan.Ridge) {
			list = append(list, m)
		}
	}
	point := func(v geom.Vec3) string { return fmt.Sprintf("%.3f %.3f %.3f", v.X, v.Y, v.Z) }
	assert.Equal(t, strings.TrimSpace(`
main/ridge@-14, ridge: -14.000 48.000 271.359 to 224.000 48.000 271.359, 260.109 high, 238.000 long
main/ridge@224, ridge: 224.000 48.000 271.359 to 254.000 48.000 271.359, 260.109 high, 30.000 long
main/S/outlooker@-12.5/0, 2x4: 15.250 1.400 236.972 to -12.500 1.400 236.972, 234.722 high, 27.750 long
main/S/outlooker@-12.5/24, 2x4: 15.250 25.400 254.972 to -12.500 25.400 254.972, 252.722 high, 27.750 long
main/S/fly@-13.25, 2x8: -13.250 -12.000 226.922 to -13.250 47.250 271.359, 217.859 high, 79.500 long
main/S/rafter@0.75, 2x8: 0.750 -12.000 226.922 to 0.750 47.250 271.359, 217.859 high, 79.500 long
main/S/rafter@16, 2x8: 16.000 -12.000 226.922 to 16.000 47.250 271.359, 217.859 high, 79.500 long
main/S/rafter@32, 2x8: 32.000 -12.000 226.922 to 32.000 47.250 271.359, 217.859 high, 79.500 long
main/tie@17.5, 2x6: 17.500 0.000 234.625 to 17.500 96.000 234.625, 229.125 high, 96.000 long
main/tie@33.5, 2x6: 33.500 0.000 234.625 to 33.500 96.000 234.625, 229.125 high, 96.000 long
main/1A/block@8.38, 2x12: 1.500 4.750 234.750 to 15.250 4.750 234.750, 229.125 high, 13.750 long
main/1A/block@24.75, 2x12: 18.250 4.750 234.750 to 31.250 4.750 234.750, 229.125 high, 13.000 long`),
		sticks(list, func(m *Member) string {
			return fmt.Sprintf("%s to %s, %.3f high, %.3f long", point(m.A), point(m.B), m.Z0, m.Length)
		}))
	var got []string
	for _, j := range h.Joints {
		if j.Roof == nil || j.At.X > 40 || j.At.Y > 48.1 || j.Host == "main/rakeNW" {
			continue
		}
		s := fmt.Sprintf("%s at %s, serves %.3f:", j.ID, point(j.At), j.Tributary)
		for _, m := range j.Members {
			s += " " + m.ID
		}
		if o := j.Overhang; o != nil {
			s += fmt.Sprintf("; %.3f out, %.3f back", o.Out, o.Back)
		}
		got = append(got, s)
	}
	assert.Equal(t, strings.TrimSpace(`
1A-1-RP at 0.750 1.510 229.125, serves 8.375: main/S/rafter@0.75 1A/upper plate@0
1A-16-RP at 16.000 1.510 229.125, serves 15.625: main/S/rafter@16 1A/upper plate@0
1A-32-RP at 32.000 1.510 229.125, serves 16.000: main/S/rafter@32 1A/upper plate@0
1D-64-GT at 2.750 32.000 250.859, serves 16.000: main/S/rafter@0.75 1D/upper plate@48 1D/stud@64
1D-80-GT at 2.750 16.000 238.859, serves 12.875: main/S/rafter@0.75 1D/upper plate@48 1D/stud@80
1D-90-GT at 2.750 6.250 231.547, serves 11.125: main/S/rafter@0.75 1D/upper plate@48 1D/post@89.75
main-1-RR at 0.750 48.000 271.359, serves 15.625: main/S/rafter@0.75 main/N/rafter@0.75 main/ridge@-14
main-16-RR at 16.000 48.000 271.359, serves 15.625: main/S/rafter@16 main/N/rafter@16 main/ridge@-14
main-32-RR at 32.000 48.000 271.359, serves 16.000: main/S/rafter@32 main/N/rafter@32 main/ridge@-14
main/rakeSW-1-FO at -12.500 1.850 236.372, serves 25.400: main/S/fly@-13.25 main/S/outlooker@-12.5/0; 14.750 out, 15.250 back
main/rakeSW-1-OG at 0.750 1.850 236.372, serves 25.400: main/S/outlooker@-12.5/0 main/S/rafter@0.75; 14.750 out, 15.250 back
main/rakeSW-1-OR at 15.250 1.850 236.372, serves 25.400: main/S/outlooker@-12.5/0 main/S/rafter@16; 14.750 out, 15.250 back
main/rakeSW-25-FO at -12.500 25.850 254.372, serves 34.600: main/S/fly@-13.25 main/S/outlooker@-12.5/24; 14.750 out, 15.250 back
main/rakeSW-25-OG at 0.750 25.850 254.372, serves 34.600: main/S/outlooker@-12.5/24 main/S/rafter@0.75; 14.750 out, 15.250 back
main/rakeSW-25-OR at 15.250 25.850 254.372, serves 34.600: main/S/outlooker@-12.5/24 main/S/rafter@16; 14.750 out, 15.250 back`), strings.Join(got, "\n"))
}

// The same gable without walls under its ends: the outlookers are rungs between the fly and the
// end rafter, whose middle is 0.75 in, and reach no farther.
func TestAnOpenGablesOverhangByHand(t *testing.T) {
	p := simple(9, 1.5, 12, 96)
	p.Roofs[0].Rake = 14
	p.Walls = []*plan.Wall{p.Walls[0], p.Walls[2]}
	h, _ := Frame(p)
	n := 0
	for _, m := range h.Members {
		if m.Role == plan.Outlooker && m.A.X < 100 {
			n++
			assert.InDelta(t, 0, m.A.X, 1e-9, m.ID)
			assert.InDelta(t, -12.5, m.B.X, 1e-9, m.ID)
		}
	}
	assert.Equal(t, 4, n)
	for _, j := range joints(h, "main/rakeSW", plan.FlyOutlooker) {
		assert.InDelta(t, 14.75, j.Overhang.Out, 1e-9)
		assert.Zero(t, j.Overhang.Back, "a rung")
	}
	assert.Empty(t, joints(h, "main/rakeSW", plan.OutlookerGable))
	assert.Len(t, joints(h, "main/rakeSW", plan.OutlookerRafter), 2, "at the end rafter itself")
}

// Outlookers keep 2 in from the ends of the rafters that they pass: with eaves of 24 none lies at the
// eave itself, a module of 24 out from the wall's face; with eaves of more than 26 one does, its
// middle 1.4 in from there.
func TestOutlookersKeepOffTheEave(t *testing.T) {
	for overhang, first := range map[float64]float64{24: 1.4, 25.9: 1.4, 26.1: -22.6, 27: -22.6} {
		p := simple(9, 1.5, overhang, 192)
		p.Roofs[0].Rake = 14
		h, _ := Frame(p)
		lowest := 1000.0
		for _, m := range h.Members {
			if m.Role == plan.Outlooker {
				lowest = min(lowest, m.A.Y)
			}
		}
		assert.InDelta(t, first, lowest, 1e-9, "%v", overhang)
	}
}
