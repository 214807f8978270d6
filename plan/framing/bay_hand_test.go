package framing

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"galewright/plan"
	"galewright/plan/geom"
)

// Walls of 2x6 around a house with a bay, walls at (24, -32), (60, 0), (42, 14) and (54, 18): it turns by
// 53.130 degrees at 50 and 90, by 18.435 at 134; on to (230, 0) it goes straight, and from there by
// 71.565. The cut is at half of that, and takes 5.5 times its tangent, 1/2, 0.16228 and 0.72076: 2.75,
// 0.8925 and 3.964 in: out of 4x6, 2x6 and 6x6, which are 3 1/2, 1 1/2 and 5 1/2. At an inside corner, 1A's and 1B's, the plates
// go so far past their point, and so does the filler; at an outside one they end there. All is as
// long as other studs, 104.625; each pair is a joint at the top, at the wall that ends there.
//
// In 2x4 18.435 degrees take 3.5 x 0.16228 = 0.568 in, less than half of a stud: the end studs
// are beveled themselves.
func TestABayByHand(t *testing.T) {
	bay := func(studs plan.Lumber) (members []*Member, corners []*Joint) {
		p := onSlabPlan()
		for _, w := range ring(p, 0, geom.Vec2{}, geom.Vec2{X: 50}, geom.Vec2{X: 74, Y: -32}, geom.Vec2{X: 134, Y: -32}, geom.Vec2{X: 176, Y: -18}, geom.Vec2{X: 230}, geom.Vec2{X: 230, Y: 96}, geom.Vec2{Y: 96}) {
			w.Studs = studs
		}
		h := frame(t, p)
		for _, m := range h.Members {
			if m.Wall.Name < "1F" && (m.Bevel != 0 || m.Role == plan.UpperPlate) {
				members = append(members, m)
			}
		}
		for _, j := range h.Joints {
			if j.Kind == plan.WallCorner {
				corners = append(corners, j)
			}
		}
		return members, corners
	}
	members, corners := bay(twoBySix)
	assert.Equal(t, strings.TrimSpace(`
1A/beveled stud@51.38, 4x6: 50 to 52.75, 121.5 to 226.125, 104.625 long, first, at 26.565°
1A/sill plate@5.5, 2x6: 5.5 to 52.75, 120 to 121.5, 47.25 long, first, at 26.565°
1A/top plate@5.5, 2x6: 5.5 to 52.75, 226.125 to 227.625, 47.25 long, first, at 26.565°
1A/upper plate@0, 2x6: 0 to 52.75, 227.625 to 229.125, 52.75 long, first, at 26.565°
1B/beveled stud@0, 4x6: -2.75 to 0, 121.5 to 226.125, 104.625 long, first, at 26.565°
1B/beveled stud@38.63, 4x6: 37.25 to 40, 121.5 to 226.125, 104.625 long, first, at 26.565°
1B/sill plate@0, 2x6: -2.75 to 40, 120 to 121.5, 42.75 long, first, at 26.565°
1B/top plate@0, 2x6: -2.75 to 40, 226.125 to 227.625, 42.75 long, first, at 26.565°
1B/upper plate@0, 2x6: -2.75 to 40, 227.625 to 229.125, 42.75 long, first, at 26.565°
1C/beveled stud@1.38, 4x6: 0 to 2.75, 121.5 to 226.125, 104.625 long, first, at 26.565°
1C/beveled stud@59.55, 2x6: 59.107 to 60, 121.5 to 226.125, 104.625 long, first, at 9.217°
1C/sill plate@0, 2x6: 0 to 60, 120 to 121.5, 60 long, first, at 9.217°
1C/top plate@0, 2x6: 0 to 60, 226.125 to 227.625, 60 long, first, at 9.217°
1C/upper plate@0, 2x6: 0 to 60, 227.625 to 229.125, 60 long, first, at 9.217°
1D/beveled stud@0.45, 2x6: 0 to 0.893, 121.5 to 226.125, 104.625 long, first, at 9.217°
1D/sill plate@0, 2x6: 0 to 44.272, 120 to 121.5, 44.272 long, first, at 9.217°
1D/top plate@0, 2x6: 0 to 44.272, 226.125 to 227.625, 44.272 long, first, at 9.217°
1D/upper plate@0, 2x6: 0 to 44.272, 227.625 to 229.125, 44.272 long, first, at 9.217°
1E/beveled stud@54.94, 6x6: 52.957 to 56.921, 121.5 to 226.125, 104.625 long, first, at 35.783°
1E/sill plate@0, 2x6: 0 to 56.921, 120 to 121.5, 56.921 long, first, at 35.783°
1E/top plate@0, 2x6: 0 to 56.921, 226.125 to 227.625, 56.921 long, first, at 35.783°
1E/upper plate@0, 2x6: 0 to 56.921, 227.625 to 229.125, 56.921 long, first, at 35.783°`), wallMembers(members))
	assert.Equal(t, strings.TrimSpace(`
1A-50-WC at 50 2.75 226.125, gap 0, off 0, serves 0: 1B/beveled stud@0 1A/beveled stud@51.38 1A/upper plate@0
1B-40-WC at 76.2 -30.35 226.125, gap 0, off 0, serves 0: 1C/beveled stud@1.38 1B/beveled stud@38.63 1B/upper plate@0
1C-60-WC at 134 -29.25 226.125, gap 0, off 0, serves 0: 1D/beveled stud@0.45 1C/beveled stud@59.55 1C/upper plate@0
1D-44-WC at 175.13 -15.391 226.125, gap 0, off 0, serves 0: 1E/post@0.75 1D/post@43.52 1D/upper plate@0
1E-57-WC at 229.13 2.609 226.125, gap 0, off 0, serves 0: 1F/beveled stud@1.98 1E/beveled stud@54.94 1E/upper plate@0
1G-0-WC at 230 93.25 226.125, gap 0, off 0, serves 0: 1F/post@89.75 1G/post@0.75
1G-230-WC at 0 93.25 226.125, gap 0, off 0, serves 0: 1H/post@6.25 1G/post@229.25
1H-96-WC at 2.75 0 226.125, gap 0, off 0, serves 0: 1A/post@6.25 1H/post@95.25`), wallJoints(corners))
	members, corners = bay(twoByFour)
	assert.Equal(t, strings.TrimSpace(`
1C/sill plate@0, 2x4: 0 to 60, 120 to 121.5, 60 long, first, at 9.217°
1C/top plate@0, 2x4: 0 to 60, 226.125 to 227.625, 60 long, first, at 9.217°
1C/upper plate@0, 2x4: 0 to 60, 227.625 to 229.125, 60 long, first, at 9.217°
1D/post@0.75, 2x4: 0 to 1.5, 121.5 to 226.125, 104.625 long, first, at 9.217°
1D/sill plate@0, 2x4: 0 to 44.272, 120 to 121.5, 44.272 long, first, at 9.217°
1D/top plate@0, 2x4: 0 to 44.272, 226.125 to 227.625, 44.272 long, first, at 9.217°
1D/upper plate@0, 2x4: 0 to 44.272, 227.625 to 229.125, 44.272 long, first, at 9.217°
1E/beveled stud@55.66, 4x4: 54.398 to 56.921, 121.5 to 226.125, 104.625 long, first, at 35.783°
1E/sill plate@0, 2x4: 0 to 56.921, 120 to 121.5, 56.921 long, first, at 35.783°
1E/top plate@0, 2x4: 0 to 56.921, 226.125 to 227.625, 56.921 long, first, at 35.783°
1E/upper plate@0, 2x4: 0 to 56.921, 227.625 to 229.125, 56.921 long, first, at 35.783°`), wallMembers(members[len(members)-11:]))
	assert.Equal(t, strings.TrimSpace(`
1C-60-WC at 134 -30.25 226.125, gap 0, off 0, serves 0: 1D/post@0.75 1C/post@59.25 1C/upper plate@0
1D-44-WC at 175.447 -16.34 226.125, gap 0, off 0, serves 0: 1E/post@0.75 1D/post@43.52 1D/upper plate@0`), wallJoints(corners[2:4]))
}
