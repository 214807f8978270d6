package framing

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"galewright/plan"
	"galewright/plan/geom"
)

// storyPlan is a house of two stories over 112 by 96 from (10, 20), on two girders; stock of 60
// and plates of 72. A door with two jacks and kings a side in 1A, over it a window in 2A; a wall I
// from the north to the middle of the first story; a shear segment at the end of 1A.
func storyPlan() *plan.Plan {
	p := stories(2)
	p.Lumber.Plate, p.Lumber.Stock = 72, []float64{60, 96}
	pts := rect(10, 20, 122, 116)
	low, up := ring(p, 0, pts...), ring(p, 1, pts...)
	d := door("d", 24, 36)
	d.Jacks, d.Kings = 2, 2
	low[0].Openings, up[0].Openings = []*plan.Opening{d}, []*plan.Opening{window("w", 28, 30)}
	wall(p, "I", 0, geom.Vec2{X: 60, Y: 110.5}, geom.Vec2{X: 60, Y: 70})
	low[0].Shear = []*plan.Shear{{Name: "s", From: 76, To: 112, Posts: 2}}
	girders(p, 10, 122, 22.25, 113.75)
	for _, g := range p.Girders {
		g.Piles = []float64{6, 54, 106}
	}
	return p
}

// The first story's studs are from 121.5 to 226.125, the second's 119.125 higher; joists and rims lie
// from 110 to 119.25 and from 229.125. Stations are from x = 10 of 1A, 1A runs through at both ends.
//
// The door, 24 to 60, has its head at 202, a header of 9.25 from 21 to 63 on two jacks a side and
// two kings outside of them; the bottom plate stops at it. The window over it, 28 to 58, its head at
// 239.125 + 30 + 54. Cripples fall at 32 and 48. The segment from 76 on has a stud inside of its end
// and a second outside of it, 74.5 to 77.5; at the wall's end the corner's post does it. 1A's ends:
// end stud and one an inch past the butting wall's inner face, 5 to 6.5. I meets 1C at x = 60 to 65.5,
// 56.5 to 62 of its stations: posts an inch past both faces, and its upper plate laps over.
//
// Plates of 72: 1A's lower one is spliced over the king at 63.75, the longest first piece. The upper
// one has no place 24 off that which leaves two pieces of 72, so it has three; first pieces from 24 to
// 36 do, and the longer is taken; the third begins at the last post within 72 of that. Rims are cut at
// 96. 2A's butts at both ends under 2B's and 2D's laps, 5.5 to 106.5.
//
// Each full-height stud serves half way to its neighbors, kings half of their opening too. A stud of
// the second story stands over plates, floor and plate, 3 + 10 + 1.5; over the door's header, at
// 211.25, 29.375 higher, half way down which the joint is. The girder of 112 is broken over its pile
// at 54; JG joints lie over the girder from the rim's inner face on, 21.5 to 24.5. I stands between
// the joists at 48 and 64: nothing but the subfloor is below it.
func TestTwoStoriesByHand(t *testing.T) {
	h := frame(t, storyPlan())
	list := func(hosts ...string) (members []*Member, joints []*Joint) {
		for _, m := range h.Members {
			for _, n := range hosts {
				if strings.HasPrefix(m.ID, n+"/") {
					members = append(members, m)
				}
			}
		}
		for _, j := range h.Joints {
			for _, n := range hosts {
				if j.Host == n {
					joints = append(joints, j)
				}
			}
		}
		return members, joints
	}
	m, j := list("1A", "2A")
	assert.Equal(t, strings.TrimSpace(`
1A/header@21, 2-2x10: 21 to 63, 202 to 211.25, 42 long, first, of d
1A/cripple@32, 2x6: 31.25 to 32.75, 211.25 to 226.125, 14.875 long, first, of d
1A/cripple@48, 2x6: 47.25 to 48.75, 211.25 to 226.125, 14.875 long, first, of d
1A/post@0.75, 2x6: 0 to 1.5, 121.5 to 226.125, 104.625 long, first
1A/post@5.75, 2x6: 5 to 6.5, 121.5 to 226.125, 104.625 long, first
1A/stud@16, 2x6: 15.25 to 16.75, 121.5 to 226.125, 104.625 long, first
1A/king@18.75, 2x6: 18 to 19.5, 121.5 to 226.125, 104.625 long, first, of d
1A/king@20.25, 2x6: 19.5 to 21, 121.5 to 226.125, 104.625 long, first, of d
1A/jack@21.75, 2x6: 21 to 22.5, 121.5 to 202, 80.5 long, first, of d
1A/jack@23.25, 2x6: 22.5 to 24, 121.5 to 202, 80.5 long, first, of d
1A/jack@60.75, 2x6: 60 to 61.5, 121.5 to 202, 80.5 long, first, of d
1A/jack@62.25, 2x6: 61.5 to 63, 121.5 to 202, 80.5 long, first, of d
1A/king@63.75, 2x6: 63 to 64.5, 121.5 to 226.125, 104.625 long, first, of d
1A/king@65.25, 2x6: 64.5 to 66, 121.5 to 226.125, 104.625 long, first, of d
1A/post@75.25, 2x6: 74.5 to 76, 121.5 to 226.125, 104.625 long, first
1A/post@76.75, 2x6: 76 to 77.5, 121.5 to 226.125, 104.625 long, first
1A/stud@80, 2x6: 79.25 to 80.75, 121.5 to 226.125, 104.625 long, first
1A/stud@96, 2x6: 95.25 to 96.75, 121.5 to 226.125, 104.625 long, first
1A/post@106.25, 2x6: 105.5 to 107, 121.5 to 226.125, 104.625 long, first
1A/post@111.25, 2x6: 110.5 to 112, 121.5 to 226.125, 104.625 long, first
1A/bottom plate@0, 2x6: 0 to 24, 120 to 121.5, 24 long, first
1A/bottom plate@60, 2x6: 60 to 112, 120 to 121.5, 52 long, first
1A/top plate@0, 2x6: 0 to 63.75, 226.125 to 227.625, 63.75 long, first
1A/top plate@63.75, 2x6: 63.75 to 112, 226.125 to 227.625, 48.25 long, first
1A/upper plate@0, 2x6: 0 to 36, 227.625 to 229.125, 36 long, first
1A/upper plate@36, 2x6: 36 to 106.25, 227.625 to 229.125, 70.25 long, first
1A/upper plate@106.25, 2x6: 106.25 to 112, 227.625 to 229.125, 5.75 long, first
2A/header@26.5, 2-2x10: 26.5 to 59.5, 323.125 to 332.375, 33 long, second, of w
2A/cripple@32, 2x6: 31.25 to 32.75, 332.375 to 345.25, 12.875 long, second, of w
2A/cripple@48, 2x6: 47.25 to 48.75, 332.375 to 345.25, 12.875 long, second, of w
2A/sill@28, 2x6: 28 to 58, 267.625 to 269.125, 30 long, second, of w
2A/sill cripple@28.75, 2x6: 28 to 29.5, 240.625 to 267.625, 27 long, second, of w
2A/sill cripple@57.25, 2x6: 56.5 to 58, 240.625 to 267.625, 27 long, second, of w
2A/sill cripple@32, 2x6: 31.25 to 32.75, 240.625 to 267.625, 27 long, second, of w
2A/sill cripple@48, 2x6: 47.25 to 48.75, 240.625 to 267.625, 27 long, second, of w
2A/post@0.75, 2x6: 0 to 1.5, 240.625 to 345.25, 104.625 long, second
2A/post@5.75, 2x6: 5 to 6.5, 240.625 to 345.25, 104.625 long, second
2A/stud@16, 2x6: 15.25 to 16.75, 240.625 to 345.25, 104.625 long, second
2A/king@25.75, 2x6: 25 to 26.5, 240.625 to 345.25, 104.625 long, second, of w
2A/jack@27.25, 2x6: 26.5 to 28, 240.625 to 323.125, 82.5 long, second, of w
2A/jack@58.75, 2x6: 58 to 59.5, 240.625 to 323.125, 82.5 long, second, of w
2A/king@60.25, 2x6: 59.5 to 61, 240.625 to 345.25, 104.625 long, second, of w
2A/stud@64, 2x6: 63.25 to 64.75, 240.625 to 345.25, 104.625 long, second
2A/stud@80, 2x6: 79.25 to 80.75, 240.625 to 345.25, 104.625 long, second
2A/stud@96, 2x6: 95.25 to 96.75, 240.625 to 345.25, 104.625 long, second
2A/post@106.25, 2x6: 105.5 to 107, 240.625 to 345.25, 104.625 long, second
2A/post@111.25, 2x6: 110.5 to 112, 240.625 to 345.25, 104.625 long, second
2A/bottom plate@0, 2x6: 0 to 72, 239.125 to 240.625, 72 long, second
2A/bottom plate@72, 2x6: 72 to 112, 239.125 to 240.625, 40 long, second
2A/top plate@0, 2x6: 0 to 64, 345.25 to 346.75, 64 long, second
2A/top plate@64, 2x6: 64 to 112, 345.25 to 346.75, 48 long, second
2A/upper plate@5.5, 2x6: 5.5 to 17.5, 346.75 to 348.25, 12 long, second
2A/upper plate@17.5, 2x6: 17.5 to 89.5, 346.75 to 348.25, 72 long, second
2A/upper plate@89.5, 2x6: 89.5 to 106.5, 346.75 to 348.25, 17 long, second
1A/rim@0, 2x10: 0 to 96, 110 to 119.25, 96 long, first
1A/rim@96, 2x10: 96 to 112, 110 to 119.25, 16 long, first
2A/rim@0, 2x10: 0 to 96, 229.125 to 238.375, 96 long, second
2A/rim@96, 2x10: 96 to 112, 229.125 to 238.375, 16 long, second`), wallMembers(m))
	assert.Equal(t, strings.TrimSpace(`
1A-0-WC at 10 22.75 226.125, gap 0, off 0, serves 0: 1D/post@89.75 1A/post@0.75 1A/upper plate@0
1A-1-ST at 10.75 22.75 226.125, gap 0, off 0, serves 3.25: 1A/post@0.75 1A/top plate@0 1A/upper plate@0
1A-1-SB at 10.75 22.75 120.375, gap 2.25, off 0, serves 3.25: 1A/post@0.75 1A/rim@0 1A/bottom plate@0 G1/girder@0
1A-1-SR at 10.75 22.75 119.625, gap 0.75, off 0, serves 3.25: 1A/bottom plate@0 1A/rim@0
1A-1-RG at 10.75 20.75 110, gap 0, off 0, serves 3.25: 1A/rim@0 G1/girder@0
1A-6-ST at 15.75 22.75 226.125, gap 0, off 0, serves 7.625: 1A/post@5.75 1A/top plate@0 1A/upper plate@0
1A-6-SB at 15.75 22.75 120.375, gap 2.25, off 0, serves 7.625: 1A/post@5.75 1A/rim@0 1A/bottom plate@0 G1/girder@0
1A-6-SR at 15.75 22.75 119.625, gap 0.75, off 0, serves 7.625: 1A/bottom plate@0 1A/rim@0
1A-6-RG at 15.75 20.75 110, gap 0, off 0, serves 7.625: 1A/rim@0 G1/girder@0
1A-16-ST at 26 22.75 226.125, gap 0, off 0, serves 6.5: 1A/stud@16 1A/top plate@0 1A/upper plate@0
1A-16-SB at 26 22.75 120.375, gap 2.25, off 0, serves 6.5: 1A/stud@16 1A/rim@0 1A/bottom plate@0 G1/girder@0
1A-16-SR at 26 22.75 119.625, gap 0.75, off 0, serves 6.5: 1A/bottom plate@0 1A/rim@0
1A-16-RG at 26 20.75 110, gap 0, off 0, serves 6.5: 1A/rim@0 G1/girder@0
1A-19-ST at 28.75 22.75 226.125, gap 0, off 0, serves 2.125: 1A/king@18.75 1A/top plate@0 1A/upper plate@0
1A-19-SB at 28.75 22.75 120.375, gap 2.25, off 0, serves 2.125: 1A/king@18.75 1A/rim@0 1A/bottom plate@0 G1/girder@0
1A-19-SR at 28.75 22.75 119.625, gap 0.75, off 0, serves 2.125: 1A/bottom plate@0 1A/rim@0
1A-19-RG at 28.75 20.75 110, gap 0, off 0, serves 2.125: 1A/rim@0 G1/girder@0
1A-20-ST at 30.25 22.75 226.125, gap 0, off 0, serves 22.5: 1A/king@20.25 1A/top plate@0 1A/upper plate@0
1A-20-SB at 30.25 22.75 120.375, gap 2.25, off 0, serves 22.5: 1A/king@20.25 1A/rim@0 1A/bottom plate@0 G1/girder@0
1A-20-SR at 30.25 22.75 119.625, gap 0.75, off 0, serves 22.5: 1A/bottom plate@0 1A/rim@0
1A-20-RG at 30.25 20.75 110, gap 0, off 0, serves 22.5: 1A/rim@0 G1/girder@0
1A-21-OH at 31 22.75 202, gap 14.875, off 0, serves 21: 1A/header@21 1A/king@20.25 1A/top plate@0 1A/upper plate@0
1A-21-HK at 31 21.5 206.625, gap 0, off 0, serves 21: 1A/header@21 1A/king@20.25
1A-22-ST at 31.75 22.75 202, gap 0, off 0, serves 21: 1A/jack@21.75 1A/header@21
1A-22-SB at 31.75 22.75 120.375, gap 2.25, off 0, serves 0: 1A/jack@21.75 1A/rim@0 1A/bottom plate@0 G1/girder@0
1A-23-ST at 33.25 22.75 202, gap 0, off 0, serves 21: 1A/jack@23.25 1A/header@21
1A-23-SB at 33.25 22.75 120.375, gap 2.25, off 0, serves 0: 1A/jack@23.25 1A/rim@0 1A/bottom plate@0 G1/girder@0
1A-32-CP at 42 22.75 226.125, gap 0, off 0, serves 19: 1A/cripple@32 1A/top plate@0 1A/upper plate@0
1A-32-CH at 42 22.75 211.25, gap 0, off 0, serves 19: 1A/cripple@32 1A/header@21
1A-36-PS at 46 22.75 228.375, gap 0, off 0, serves 0: 1A/upper plate@0 1A/upper plate@36 1A/top plate@0; [top outside inside]
1A-48-CP at 58 22.75 226.125, gap 0, off 0, serves 23: 1A/cripple@48 1A/top plate@0 1A/upper plate@36
1A-48-CH at 58 22.75 211.25, gap 0, off 0, serves 23: 1A/cripple@48 1A/header@21
1A-61-ST at 70.75 22.75 202, gap 0, off 0, serves 21: 1A/jack@60.75 1A/header@21
1A-61-SB at 70.75 22.75 120.375, gap 2.25, off 0, serves 0: 1A/jack@60.75 1A/rim@0 1A/bottom plate@60 G1/girder@54
1A-62-ST at 72.25 22.75 202, gap 0, off 0, serves 21: 1A/jack@62.25 1A/header@21
1A-62-SB at 72.25 22.75 120.375, gap 2.25, off 0, serves 0: 1A/jack@62.25 1A/rim@0 1A/bottom plate@60 G1/girder@54
1A-63-OH at 73 22.75 202, gap 14.875, off 0, serves 21: 1A/header@21 1A/king@63.75 1A/top plate@0 1A/upper plate@36
1A-63-HK at 73 21.5 206.625, gap 0, off 0, serves 21: 1A/header@21 1A/king@63.75
1A-64-ST at 73.75 22.75 226.125, gap 0, off 0, serves 22.5: 1A/king@63.75 1A/top plate@0 1A/upper plate@36
1A-64-PS at 73.75 22.75 226.875, gap 0, off 0, serves 0: 1A/top plate@0 1A/top plate@63.75 1A/upper plate@36; [outside inside]
1A-64-SB at 73.75 22.75 120.375, gap 2.25, off 0, serves 22.5: 1A/king@63.75 1A/rim@0 1A/bottom plate@60 G1/girder@54
1A-64-SR at 73.75 22.75 119.625, gap 0.75, off 0, serves 22.5: 1A/bottom plate@60 1A/rim@0
1A-64-RG at 73.75 20.75 110, gap 0, off 0, serves 22.5: 1A/rim@0 G1/girder@54
1A-65-ST at 75.25 22.75 226.125, gap 0, off 0, serves 5.75: 1A/king@65.25 1A/top plate@63.75 1A/upper plate@36
1A-65-SB at 75.25 22.75 120.375, gap 2.25, off 0, serves 5.75: 1A/king@65.25 1A/rim@0 1A/bottom plate@60 G1/girder@54
1A-65-SR at 75.25 22.75 119.625, gap 0.75, off 0, serves 5.75: 1A/bottom plate@60 1A/rim@0
1A-65-RG at 75.25 20.75 110, gap 0, off 0, serves 5.75: 1A/rim@0 G1/girder@54
1A-75-ST at 85.25 22.75 226.125, gap 0, off 0, serves 5.75: 1A/post@75.25 1A/top plate@63.75 1A/upper plate@36
1A-75-SB at 85.25 22.75 120.375, gap 2.25, off 0, serves 5.75: 1A/post@75.25 1A/rim@0 1A/bottom plate@60 G1/girder@54
1A-75-SR at 85.25 22.75 119.625, gap 0.75, off 0, serves 5.75: 1A/bottom plate@60 1A/rim@0
1A-75-RG at 85.25 20.75 110, gap 0, off 0, serves 5.75: 1A/rim@0 G1/girder@54
1A-76-CO at 86 22.75 229.125, gap 0, off 0, serves 36: 1A/upper plate@36 1A/top plate@63.75
1A-77-ST at 86.75 22.75 226.125, gap 0, off 0, serves 2.375: 1A/post@76.75 1A/top plate@63.75 1A/upper plate@36
1A-77-WE at 86.75 22.75 120.375, gap 2.25, off 0, serves 36: 1A/post@76.75 1A/rim@0 1A/bottom plate@60 G1/girder@54
1A-77-SB at 86.75 22.75 120.375, gap 2.25, off 0, serves 2.375: 1A/post@76.75 1A/rim@0 1A/bottom plate@60 G1/girder@54
1A-77-SR at 86.75 22.75 119.625, gap 0.75, off 0, serves 2.375: 1A/bottom plate@60 1A/rim@0
1A-77-RG at 86.75 20.75 110, gap 0, off 0, serves 2.375: 1A/rim@0 G1/girder@54
1A-80-ST at 90 22.75 226.125, gap 0, off 0, serves 9.625: 1A/stud@80 1A/top plate@63.75 1A/upper plate@36
1A-80-SB at 90 22.75 120.375, gap 2.25, off 0, serves 9.625: 1A/stud@80 1A/rim@0 1A/bottom plate@60 G1/girder@54
1A-80-SR at 90 22.75 119.625, gap 0.75, off 0, serves 9.625: 1A/bottom plate@60 1A/rim@0
1A-80-RG at 90 20.75 110, gap 0, off 0, serves 9.625: 1A/rim@0 G1/girder@54
1A-96-ST at 106 22.75 226.125, gap 0, off 0, serves 13.125: 1A/stud@96 1A/top plate@63.75 1A/upper plate@36
1A-96-SB at 106 22.75 120.375, gap 2.25, off 0, serves 13.125: 1A/stud@96 1A/rim@0 1A/bottom plate@60 G1/girder@54
1A-96-SR at 106 22.75 119.625, gap 0.75, off 0, serves 13.125: 1A/bottom plate@60 1A/rim@0
1A-96-RG at 106 20.75 110, gap 0, off 0, serves 13.125: 1A/rim@0 G1/girder@54
1A-106-ST at 116.25 22.75 226.125, gap 0, off 0, serves 7.625: 1A/post@106.25 1A/top plate@63.75 1A/upper plate@36
1A-106-PS at 116.25 22.75 228.375, gap 0, off 0, serves 0: 1A/upper plate@36 1A/upper plate@106.25 1A/top plate@63.75; [top outside inside]
1A-106-SB at 116.25 22.75 120.375, gap 2.25, off 0, serves 7.625: 1A/post@106.25 1A/rim@96 1A/bottom plate@60 G1/girder@54
1A-106-SR at 116.25 22.75 119.625, gap 0.75, off 0, serves 7.625: 1A/bottom plate@60 1A/rim@96
1A-106-RG at 116.25 20.75 110, gap 0, off 0, serves 7.625: 1A/rim@96 G1/girder@54
1A-111-ST at 121.25 22.75 226.125, gap 0, off 0, serves 3.25: 1A/post@111.25 1A/top plate@63.75 1A/upper plate@106.25
1A-111-WE at 121.25 22.75 120.375, gap 2.25, off 0, serves 36: 1A/post@111.25 1A/rim@96 1A/bottom plate@60 G1/girder@54
1A-111-SB at 121.25 22.75 120.375, gap 2.25, off 0, serves 3.25: 1A/post@111.25 1A/rim@96 1A/bottom plate@60 G1/girder@54
1A-111-SR at 121.25 22.75 119.625, gap 0.75, off 0, serves 3.25: 1A/bottom plate@60 1A/rim@96
1A-111-RG at 121.25 20.75 110, gap 0, off 0, serves 3.25: 1A/rim@96 G1/girder@54
1A-112-WC at 122 22.75 226.125, gap 0, off 0, serves 0: 1B/post@6.25 1A/post@111.25 1A/upper plate@106.25
2A-0-WC at 10 22.75 345.25, gap 0, off 0, serves 0: 2D/post@89.75 2A/post@0.75
2A-1-ST at 10.75 22.75 345.25, gap 0, off 0, serves 3.25: 2A/post@0.75 2A/top plate@0
2A-1-SS at 10.75 22.75 233.375, gap 14.5, off 0, serves 3.25: 2A/post@0.75 1A/post@0.75 2A/bottom plate@0 2A/rim@0 1A/upper plate@0 1A/top plate@0
2A-1-SR at 10.75 22.75 238.75, gap 0.75, off 0, serves 3.25: 2A/bottom plate@0 2A/rim@0
2A-6-ST at 15.75 22.75 345.25, gap 0, off 0, serves 7.625: 2A/post@5.75 2A/top plate@0 2A/upper plate@5.5
2A-6-SS at 15.75 22.75 233.375, gap 14.5, off 0, serves 7.625: 2A/post@5.75 1A/post@5.75 2A/bottom plate@0 2A/rim@0 1A/upper plate@0 1A/top plate@0
2A-6-SR at 15.75 22.75 238.75, gap 0.75, off 0, serves 7.625: 2A/bottom plate@0 2A/rim@0
2A-16-ST at 26 22.75 345.25, gap 0, off 0, serves 10: 2A/stud@16 2A/top plate@0 2A/upper plate@5.5
2A-16-SS at 26 22.75 233.375, gap 14.5, off 0, serves 10: 2A/stud@16 1A/stud@16 2A/bottom plate@0 2A/rim@0 1A/upper plate@0 1A/top plate@0
2A-16-SR at 26 22.75 238.75, gap 0.75, off 0, serves 10: 2A/bottom plate@0 2A/rim@0
2A-18-PS at 27.5 22.75 347.5, gap 0, off 0, serves 0: 2A/upper plate@5.5 2A/upper plate@17.5 2A/top plate@0; [top outside inside]
2A-26-ST at 35.75 22.75 345.25, gap 0, off 0, serves 22.125: 2A/king@25.75 2A/top plate@0 2A/upper plate@17.5
2A-26-SS at 35.75 22.75 225.938, gap 29.375, off 0, serves 22.125: 2A/king@25.75 1A/header@21 2A/bottom plate@0 2A/rim@0 1A/upper plate@0 1A/top plate@0
2A-26-SR at 35.75 22.75 238.75, gap 0.75, off 0, serves 22.125: 2A/bottom plate@0 2A/rim@0
2A-27-OH at 36.5 22.75 323.125, gap 12.875, off 0, serves 16.5: 2A/header@26.5 2A/king@25.75 2A/top plate@0 2A/upper plate@17.5
2A-27-HK at 36.5 21.5 327.75, gap 0, off 0, serves 16.5: 2A/header@26.5 2A/king@25.75
2A-27-ST at 37.25 22.75 323.125, gap 0, off 0, serves 16.5: 2A/jack@27.25 2A/header@26.5
2A-28-OS at 38 22.75 269.125, gap 0, off 0, serves 15: 2A/sill@28 2A/jack@27.25 2A/king@25.75
2A-32-CP at 42 22.75 345.25, gap 0, off 0, serves 13.5: 2A/cripple@32 2A/top plate@0 2A/upper plate@17.5
2A-32-CH at 42 22.75 332.375, gap 0, off 0, serves 13.5: 2A/cripple@32 2A/header@26.5
2A-48-CP at 58 22.75 345.25, gap 0, off 0, serves 19.5: 2A/cripple@48 2A/top plate@0 2A/upper plate@17.5
2A-48-CH at 58 22.75 332.375, gap 0, off 0, serves 19.5: 2A/cripple@48 2A/header@26.5
2A-58-OS at 68 22.75 269.125, gap 0, off 0, serves 15: 2A/sill@28 2A/jack@58.75 2A/king@60.25
2A-59-ST at 68.75 22.75 323.125, gap 0, off 0, serves 16.5: 2A/jack@58.75 2A/header@26.5
2A-60-OH at 69.5 22.75 323.125, gap 12.875, off 0, serves 16.5: 2A/header@26.5 2A/king@60.25 2A/top plate@0 2A/upper plate@17.5
2A-60-HK at 69.5 21.5 327.75, gap 0, off 0, serves 16.5: 2A/header@26.5 2A/king@60.25
2A-60-ST at 70.25 22.75 345.25, gap 0, off 0, serves 19.125: 2A/king@60.25 2A/top plate@0 2A/upper plate@17.5
2A-60-SS at 70.25 22.75 225.938, gap 29.375, off 0, serves 19.125: 2A/king@60.25 1A/header@21 2A/bottom plate@0 2A/rim@0 1A/upper plate@36 1A/top plate@0
2A-60-SR at 70.25 22.75 238.75, gap 0.75, off 0, serves 19.125: 2A/bottom plate@0 2A/rim@0
2A-64-ST at 74 22.75 345.25, gap 0, off 0, serves 9.875: 2A/stud@64 2A/top plate@0 2A/upper plate@17.5
2A-64-PS at 74 22.75 346, gap 0, off 0, serves 0: 2A/top plate@0 2A/top plate@64 2A/upper plate@17.5; [outside inside]
2A-64-SS at 74 22.75 233.375, gap 14.5, off -0.25, serves 9.875: 2A/stud@64 1A/king@63.75 2A/bottom plate@0 2A/rim@0 1A/upper plate@36 1A/top plate@63.75
2A-64-SR at 74 22.75 238.75, gap 0.75, off 0, serves 9.875: 2A/bottom plate@0 2A/rim@0
2A-80-ST at 90 22.75 345.25, gap 0, off 0, serves 16: 2A/stud@80 2A/top plate@64 2A/upper plate@17.5
2A-80-SS at 90 22.75 233.375, gap 14.5, off 0, serves 16: 2A/stud@80 1A/stud@80 2A/bottom plate@72 2A/rim@0 1A/upper plate@36 1A/top plate@63.75
2A-80-SR at 90 22.75 238.75, gap 0.75, off 0, serves 16: 2A/bottom plate@72 2A/rim@0
2A-90-PS at 99.5 22.75 347.5, gap 0, off 0, serves 0: 2A/upper plate@17.5 2A/upper plate@89.5 2A/top plate@64; [top outside inside]
2A-96-ST at 106 22.75 345.25, gap 0, off 0, serves 13.125: 2A/stud@96 2A/top plate@64 2A/upper plate@89.5
2A-96-SS at 106 22.75 233.375, gap 14.5, off 0, serves 13.125: 2A/stud@96 1A/stud@96 2A/bottom plate@72 2A/rim@0 1A/upper plate@36 1A/top plate@63.75
2A-96-SR at 106 22.75 238.75, gap 0.75, off 0, serves 13.125: 2A/bottom plate@72 2A/rim@0
2A-106-ST at 116.25 22.75 345.25, gap 0, off 0, serves 7.625: 2A/post@106.25 2A/top plate@64 2A/upper plate@89.5
2A-106-SS at 116.25 22.75 233.375, gap 14.5, off 0, serves 7.625: 2A/post@106.25 1A/post@106.25 2A/bottom plate@72 2A/rim@96 1A/upper plate@36 1A/top plate@63.75
2A-106-SR at 116.25 22.75 238.75, gap 0.75, off 0, serves 7.625: 2A/bottom plate@72 2A/rim@96
2A-111-ST at 121.25 22.75 345.25, gap 0, off 0, serves 3.25: 2A/post@111.25 2A/top plate@64
2A-111-SS at 121.25 22.75 233.375, gap 14.5, off 0, serves 3.25: 2A/post@111.25 1A/post@111.25 2A/bottom plate@72 2A/rim@96 1A/upper plate@106.25 1A/top plate@63.75
2A-111-SR at 121.25 22.75 238.75, gap 0.75, off 0, serves 3.25: 2A/bottom plate@72 2A/rim@96
2A-112-WC at 122 22.75 345.25, gap 0, off 0, serves 0: 2B/post@6.25 2A/post@111.25`), wallJoints(j))
	m, j = list("1C", "I")
	assert.Equal(t, strings.TrimSpace(`
1C/post@0.75, 2x6: 0 to 1.5, 121.5 to 226.125, 104.625 long, first
1C/post@5.75, 2x6: 5 to 6.5, 121.5 to 226.125, 104.625 long, first
1C/stud@16, 2x6: 15.25 to 16.75, 121.5 to 226.125, 104.625 long, first
1C/stud@32, 2x6: 31.25 to 32.75, 121.5 to 226.125, 104.625 long, first
1C/stud@48, 2x6: 47.25 to 48.75, 121.5 to 226.125, 104.625 long, first
1C/post@56.25, 2x6: 55.5 to 57, 121.5 to 226.125, 104.625 long, first
1C/post@62.25, 2x6: 61.5 to 63, 121.5 to 226.125, 104.625 long, first
1C/stud@64, 2x6: 63.25 to 64.75, 121.5 to 226.125, 104.625 long, first
1C/stud@80, 2x6: 79.25 to 80.75, 121.5 to 226.125, 104.625 long, first
1C/stud@96, 2x6: 95.25 to 96.75, 121.5 to 226.125, 104.625 long, first
1C/post@106.25, 2x6: 105.5 to 107, 121.5 to 226.125, 104.625 long, first
1C/post@111.25, 2x6: 110.5 to 112, 121.5 to 226.125, 104.625 long, first
1C/bottom plate@0, 2x6: 0 to 72, 120 to 121.5, 72 long, first
1C/bottom plate@72, 2x6: 72 to 112, 120 to 121.5, 40 long, first
1C/top plate@0, 2x6: 0 to 64, 226.125 to 227.625, 64 long, first
1C/top plate@64, 2x6: 64 to 112, 226.125 to 227.625, 48 long, first
1C/upper plate@0, 2x6: 0 to 56.5, 227.625 to 229.125, 56.5 long, first
1C/upper plate@62, 2x6: 62 to 112, 227.625 to 229.125, 50 long, first
I/stud@0.75, 2x6: 0 to 1.5, 121.5 to 226.125, 104.625 long, first
I/stud@16, 2x6: 15.25 to 16.75, 121.5 to 226.125, 104.625 long, first
I/stud@32, 2x6: 31.25 to 32.75, 121.5 to 226.125, 104.625 long, first
I/stud@39.75, 2x6: 39 to 40.5, 121.5 to 226.125, 104.625 long, first
I/bottom plate@0, 2x6: 0 to 40.5, 120 to 121.5, 40.5 long, first
I/top plate@0, 2x6: 0 to 40.5, 226.125 to 227.625, 40.5 long, first
I/upper plate@0, 2x6: -5.5 to 40.5, 227.625 to 229.125, 46 long, first
1C/rim@0, 2x10: 0 to 96, 110 to 119.25, 96 long, first
1C/rim@96, 2x10: 96 to 112, 110 to 119.25, 16 long, first`), wallMembers(m))
	assert.Equal(t, strings.TrimSpace(`
1C-0-WC at 122 113.25 226.125, gap 0, off 0, serves 0: 1B/post@89.75 1C/post@0.75 1C/upper plate@0
1C-1-ST at 121.25 113.25 226.125, gap 0, off 0, serves 3.25: 1C/post@0.75 1C/top plate@0 1C/upper plate@0
1C-1-SB at 121.25 113.25 120.375, gap 2.25, off 0, serves 3.25: 1C/post@0.75 1C/rim@0 1C/bottom plate@0 G2/girder@54
1C-1-SR at 121.25 113.25 119.625, gap 0.75, off 0, serves 3.25: 1C/bottom plate@0 1C/rim@0
1C-1-RG at 121.25 115.25 110, gap 0, off 0, serves 3.25: 1C/rim@0 G2/girder@54
1C-6-ST at 116.25 113.25 226.125, gap 0, off 0, serves 7.625: 1C/post@5.75 1C/top plate@0 1C/upper plate@0
1C-6-SB at 116.25 113.25 120.375, gap 2.25, off 0, serves 7.625: 1C/post@5.75 1C/rim@0 1C/bottom plate@0 G2/girder@54
1C-6-SR at 116.25 113.25 119.625, gap 0.75, off 0, serves 7.625: 1C/bottom plate@0 1C/rim@0
1C-6-RG at 116.25 115.25 110, gap 0, off 0, serves 7.625: 1C/rim@0 G2/girder@54
1C-16-ST at 106 113.25 226.125, gap 0, off 0, serves 13.125: 1C/stud@16 1C/top plate@0 1C/upper plate@0
1C-16-SB at 106 113.25 120.375, gap 2.25, off 0, serves 13.125: 1C/stud@16 1C/rim@0 1C/bottom plate@0 G2/girder@54
1C-16-SR at 106 113.25 119.625, gap 0.75, off 0, serves 13.125: 1C/bottom plate@0 1C/rim@0
1C-16-RG at 106 115.25 110, gap 0, off 0, serves 13.125: 1C/rim@0 G2/girder@54
1C-32-ST at 90 113.25 226.125, gap 0, off 0, serves 16: 1C/stud@32 1C/top plate@0 1C/upper plate@0
1C-32-SB at 90 113.25 120.375, gap 2.25, off 0, serves 16: 1C/stud@32 1C/rim@0 1C/bottom plate@0 G2/girder@54
1C-32-SR at 90 113.25 119.625, gap 0.75, off 0, serves 16: 1C/bottom plate@0 1C/rim@0
1C-32-RG at 90 115.25 110, gap 0, off 0, serves 16: 1C/rim@0 G2/girder@54
1C-48-ST at 74 113.25 226.125, gap 0, off 0, serves 12.125: 1C/stud@48 1C/top plate@0 1C/upper plate@0
1C-48-SB at 74 113.25 120.375, gap 2.25, off 0, serves 12.125: 1C/stud@48 1C/rim@0 1C/bottom plate@0 G2/girder@54
1C-48-SR at 74 113.25 119.625, gap 0.75, off 0, serves 12.125: 1C/bottom plate@0 1C/rim@0
1C-48-RG at 74 115.25 110, gap 0, off 0, serves 12.125: 1C/rim@0 G2/girder@54
1C-56-ST at 65.75 113.25 226.125, gap 0, off 0, serves 7.125: 1C/post@56.25 1C/top plate@0 1C/upper plate@0
1C-56-SB at 65.75 113.25 120.375, gap 2.25, off 0, serves 7.125: 1C/post@56.25 1C/rim@0 1C/bottom plate@0 G2/girder@54
1C-56-SR at 65.75 113.25 119.625, gap 0.75, off 0, serves 7.125: 1C/bottom plate@0 1C/rim@0
1C-56-RG at 65.75 115.25 110, gap 0, off 0, serves 7.125: 1C/rim@0 G2/girder@54
1C-59-WC at 62.75 113.25 226.125, gap 0, off 0, serves 0: I/stud@0.75 1C/post@56.25
1C-62-ST at 59.75 113.25 226.125, gap 0, off 0, serves 3.875: 1C/post@62.25 1C/top plate@0 1C/upper plate@62
1C-62-SB at 59.75 113.25 120.375, gap 2.25, off 0, serves 3.875: 1C/post@62.25 1C/rim@0 1C/bottom plate@0 G2/girder@0
1C-62-SR at 59.75 113.25 119.625, gap 0.75, off 0, serves 3.875: 1C/bottom plate@0 1C/rim@0
1C-62-RG at 59.75 115.25 110, gap 0, off 0, serves 3.875: 1C/rim@0 G2/girder@0
1C-64-ST at 58 113.25 226.125, gap 0, off 0, serves 8.875: 1C/stud@64 1C/top plate@0 1C/upper plate@62
1C-64-PS at 58 113.25 226.875, gap 0, off 0, serves 0: 1C/top plate@0 1C/top plate@64 1C/upper plate@62; [outside inside]
1C-64-SB at 58 113.25 120.375, gap 2.25, off 0, serves 8.875: 1C/stud@64 1C/rim@0 1C/bottom plate@0 G2/girder@0
1C-64-SR at 58 113.25 119.625, gap 0.75, off 0, serves 8.875: 1C/bottom plate@0 1C/rim@0
1C-64-RG at 58 115.25 110, gap 0, off 0, serves 8.875: 1C/rim@0 G2/girder@0
1C-80-ST at 42 113.25 226.125, gap 0, off 0, serves 16: 1C/stud@80 1C/top plate@64 1C/upper plate@62
1C-80-SB at 42 113.25 120.375, gap 2.25, off 0, serves 16: 1C/stud@80 1C/rim@0 1C/bottom plate@72 G2/girder@0
1C-80-SR at 42 113.25 119.625, gap 0.75, off 0, serves 16: 1C/bottom plate@72 1C/rim@0
1C-80-RG at 42 115.25 110, gap 0, off 0, serves 16: 1C/rim@0 G2/girder@0
1C-96-ST at 26 113.25 226.125, gap 0, off 0, serves 13.125: 1C/stud@96 1C/top plate@64 1C/upper plate@62
1C-96-SB at 26 113.25 120.375, gap 2.25, off 0, serves 13.125: 1C/stud@96 1C/rim@0 1C/bottom plate@72 G2/girder@0
1C-96-SR at 26 113.25 119.625, gap 0.75, off 0, serves 13.125: 1C/bottom plate@72 1C/rim@0
1C-96-RG at 26 115.25 110, gap 0, off 0, serves 13.125: 1C/rim@0 G2/girder@0
1C-106-ST at 15.75 113.25 226.125, gap 0, off 0, serves 7.625: 1C/post@106.25 1C/top plate@64 1C/upper plate@62
1C-106-SB at 15.75 113.25 120.375, gap 2.25, off 0, serves 7.625: 1C/post@106.25 1C/rim@96 1C/bottom plate@72 G2/girder@0
1C-106-SR at 15.75 113.25 119.625, gap 0.75, off 0, serves 7.625: 1C/bottom plate@72 1C/rim@96
1C-106-RG at 15.75 115.25 110, gap 0, off 0, serves 7.625: 1C/rim@96 G2/girder@0
1C-111-ST at 10.75 113.25 226.125, gap 0, off 0, serves 3.25: 1C/post@111.25 1C/top plate@64 1C/upper plate@62
1C-111-SB at 10.75 113.25 120.375, gap 2.25, off 0, serves 3.25: 1C/post@111.25 1C/rim@96 1C/bottom plate@72 G2/girder@0
1C-111-SR at 10.75 113.25 119.625, gap 0.75, off 0, serves 3.25: 1C/bottom plate@72 1C/rim@96
1C-111-RG at 10.75 115.25 110, gap 0, off 0, serves 3.25: 1C/rim@96 G2/girder@0
1C-112-WC at 10 113.25 226.125, gap 0, off 0, serves 0: 1D/post@6.25 1C/post@111.25 1C/upper plate@62
I-1-ST at 62.75 109.75 226.125, gap 0, off 0, serves 8.375: I/stud@0.75 I/top plate@0 I/upper plate@0
I-1-SB at 62.75 109.75 121.5, gap 0, off 0, serves 8.375: I/stud@0.75 I/bottom plate@0
I-1-SR at 62.75 109.75 120, gap 0, off 0, serves 8.375: I/bottom plate@0; nothing below
I-16-ST at 62.75 94.5 226.125, gap 0, off 0, serves 15.625: I/stud@16 I/top plate@0 I/upper plate@0
I-16-SB at 62.75 94.5 121.5, gap 0, off 0, serves 15.625: I/stud@16 I/bottom plate@0
I-16-SR at 62.75 94.5 120, gap 0, off 0, serves 15.625: I/bottom plate@0; nothing below
I-32-ST at 62.75 78.5 226.125, gap 0, off 0, serves 11.875: I/stud@32 I/top plate@0 I/upper plate@0
I-32-SB at 62.75 78.5 121.5, gap 0, off 0, serves 11.875: I/stud@32 I/bottom plate@0
I-32-SR at 62.75 78.5 120, gap 0, off 0, serves 11.875: I/bottom plate@0; nothing below
I-40-ST at 62.75 70.75 226.125, gap 0, off 0, serves 4.625: I/stud@39.75 I/top plate@0 I/upper plate@0
I-40-SB at 62.75 70.75 121.5, gap 0, off 0, serves 4.625: I/stud@39.75 I/bottom plate@0
I-40-SR at 62.75 70.75 120, gap 0, off 0, serves 4.625: I/bottom plate@0; nothing below`), wallJoints(j))
	m, j = list("first", "second", "G1")
	assert.Equal(t, strings.TrimSpace(`
first/joist@16, 2x10: 25.25 21.5 110 to 26.75 114.5 119.25, 1290.375 in³
first/joist@32, 2x10: 41.25 21.5 110 to 42.75 114.5 119.25, 1290.375 in³
first/joist@48, 2x10: 57.25 21.5 110 to 58.75 114.5 119.25, 1290.375 in³
first/joist@64, 2x10: 73.25 21.5 110 to 74.75 114.5 119.25, 1290.375 in³
first/joist@80, 2x10: 89.25 21.5 110 to 90.75 114.5 119.25, 1290.375 in³
first/joist@96, 2x10: 105.25 21.5 110 to 106.75 114.5 119.25, 1290.375 in³
second/joist@16, 2x10: 25.25 21.5 229.125 to 26.75 114.5 238.375, 1290.375 in³
second/joist@32, 2x10: 41.25 21.5 229.125 to 42.75 114.5 238.375, 1290.375 in³
second/joist@48, 2x10: 57.25 21.5 229.125 to 58.75 114.5 238.375, 1290.375 in³
second/joist@64, 2x10: 73.25 21.5 229.125 to 74.75 114.5 238.375, 1290.375 in³
second/joist@80, 2x10: 89.25 21.5 229.125 to 90.75 114.5 238.375, 1290.375 in³
second/joist@96, 2x10: 105.25 21.5 229.125 to 106.75 114.5 238.375, 1290.375 in³
G1/girder@0, 3-2x12: 10 20 98.75 to 64 24.5 110, 2733.75 in³
G1/girder@54, 3-2x12: 64 20 98.75 to 122 24.5 110, 2936.25 in³
G1/pile@6, 8x8: 12.25 18.5 0 to 19.75 26 98.75, 5554.688 in³
G1/pile@54, 8x8: 60.25 18.5 0 to 67.75 26 98.75, 5554.688 in³
G1/pile@106, 8x8: 112.25 18.5 0 to 119.75 26 98.75, 5554.688 in³`), sticks(m, solids))
	assert.Equal(t, strings.TrimSpace(`
G1-6-GP at 16 22.25 98.75, gap 0, off 0, serves 30: G1/girder@0 G1/pile@6
G1-16-JG at 26 23 110, gap 0, off 0, serves 16: first/joist@16 G1/girder@0
G1-32-JG at 42 23 110, gap 0, off 0, serves 16: first/joist@32 G1/girder@0
G1-48-JG at 58 23 110, gap 0, off 0, serves 16: first/joist@48 G1/girder@0
G1-54-GX at 64 22.25 104.375, gap 0, off 0, serves 56: G1/girder@0 G1/girder@54 G1/pile@54
G1-54-GP at 64 22.25 98.75, gap 0, off 0, serves 50: G1/girder@0 G1/girder@54 G1/pile@54
G1-64-JG at 74 23 110, gap 0, off 0, serves 16: first/joist@64 G1/girder@54
G1-80-JG at 90 23 110, gap 0, off 0, serves 16: first/joist@80 G1/girder@54
G1-96-JG at 106 23 110, gap 0, off 0, serves 16: first/joist@96 G1/girder@54
G1-106-GP at 116 22.25 98.75, gap 0, off 0, serves 32: G1/girder@54 G1/pile@106`), wallJoints(j))
}
