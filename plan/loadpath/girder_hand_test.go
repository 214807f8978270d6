package loadpath

import (
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
)

// hipOfTrusses is a house of 34 ft by 26 ft, walls of 2x6, under a hip of trusses of 2x4
// at 24 in, 5 in 12, 12 in of overhang, its girder trusses 8 ft in.
const hipOfTrusses = `
project = { name = "Invented house under a hip of trusses", date = 2026-03-02 }
site = { wind_speed = "140 mph", exposure = "C" }
foundation = { kind = "slab" }
level = [{ name = "one", plate_height = "9' 1 1/8in", studs = "2x6 @ 16in" }]
wall = [
  { name = "S", from = ["0'", "0'"], to = ["34'", "0'"] }, { name = "E", to = ["34'", "26'"] },
  { name = "N", to = ["0'", "26'"] }, { name = "W", to = ["0'", "0'"] },
]
roof = [{ name = "main", kind = "hip", ridge = "x", pitch = "5:12", rafters = "2x4 @ 24in", trusses = true, overhang = "12in", hip_girder = "8'" }]
loads = { dead = [{ part = "roof", name = "all of it", weight = "10 psf" }, { part = "ceiling", name = "none", weight = "0 psf" }] }
`

// jackOn is a jack truss as its reaction at what it hangs on is worked out by hand.
type jackOn struct {
	area     float64 // of roof, in²
	run, tip float64 // from its tail, on plan: to its tip; and along the corner jack, to where it hangs on that
}

// reaction of a uniform load of 1 for each in² of plan on supports 14.75 from the tail,
// over the middle of the plates, and at the tip.
func (j jackOn) reaction() float64 {
	const plate = 12 + 2.75
	return j.area * (j.run/2 - plate) / (j.run - plate)
}

// What comes to the bearing of a girder truss, from the weight of the roof, w for each in²
// of plan. x in from the west wall, y from the south one; the hip is over x = y; the girder's
// outer face is at 96 - 0.75 = 95.25, its middle at 96.75, the next hip truss's outer face at
// 119.25, its middle at 120, the side wall's jacks at 72, 48 and 24, those of the end wall at
// 156 and 24 in to each side of it, but for that at 12, whose bottom chord would be under 12
// long. Where a jack ends at the corner jack it is cut to its face, 1.0607 before the hip's
// line. Statics:
//
//	girder's level top: from 95.25 half way to 119.25, at 107.25, the mean of 312 - 2x: 12 (312 - 202.5) = 1314
//	each of its slopes: from 84.375, half way to 72, to 108.375, half way to 120: the mean of x + 12: 24 (96.375 + 12) = 2601
//	each of five jacks on it: 24 by 95.25 + 12 = 107.25: 2574 on that run
//	jack of the end wall at y: 24 wide, up to the hip: 24 (y + 12); that at 84 reaches past the girder from 95.25 to 96;
//	that at 36 has all south of it too, to the eave's corner: half of 60 by 60
//	jack of a side wall at x: 24 (x + 12); that at 72 from 60 to 84.375; that at 24 half of 48 by 48
//	corner jack: on the plates' corner at 3.0152 from the walls' corner, 15.0152 sqrt 2 from its tail, and on the
//	girder at 107.25 sqrt 2; what hangs on it at (tip, y) is as far along it as (tip + y + 24)/sqrt 2
func TestWhatAGirderTrussBringsToItsBearings(t *testing.T) {
	a := analyzed(t, hipOfTrusses)
	const cheek = 0.75 * math.Sqrt2
	corner := func(station, area float64) jackOn {
		return jackOn{area, station + 12 - cheek, (station - cheek + station + 24) / math.Sqrt2}
	}
	at84 := (107.25*107.25-84*84)/2 + 0.75*107.25
	hung := []jackOn{
		corner(84, at84), corner(60, 24*72), corner(36, 60*60/2),
		corner(72, (96.375*96.375-72*72)/2), corner(48, 24*60), corner(24, 48*48/2),
	}
	const foot, tip = 15.0152 * math.Sqrt2, 107.25 * math.Sqrt2
	onCorner := 0.0
	for _, j := range hung {
		onCorner += j.reaction() * (j.tip - foot) / (tip - foot)
	}
	five := jackOn{area: 2574, run: 107.25}
	bearing := 1314/2.0 + 2601 + onCorner + 2.5*five.reaction() // the north half is as the south one
	w := a.dead.roof(a.house.Roofs()[0]) * 13 / 12 / 144
	require.Positive(t, w)
	s := a.run(a.cases()[0])
	for _, id := range []string{"S-97-TG", "S-311-TG", "N-97-TG", "N-311-TG"} {
		assert.InDelta(t, bearing*w, s.rafters[jointOf(t, a.house, id)].D, 0.01, id)
	}
	assert.InDelta(t, onCorner*w, s.rafters[jointOf(t, a.house, "main/girderW-95-JT")].D, 0.01)
	assert.InDelta(t, five.reaction()*w, s.rafters[jointOf(t, a.house, "main/girderE-108-JT")].D, 0.01)
	assert.InDelta(t, hung[0].reaction()*w, s.rafters[jointOf(t, a.house, "main/cornerSW-135-JC")].D, 0.01)
	whole := 0.0 // all of the roof comes to the plates: 34 ft + 2 by 26 ft + 2
	for j, f := range s.rafters {
		if j.Kind.OnPlate() {
			whole += f.D
		}
	}
	assert.InDelta(t, 432*336*w, whole, 0.5)
}

// What a girder truss brings is more than a hip truss does, and a heavier tie is asked for at
// it: no piece of the rule for other trusses is placed there.
func TestAGirderTrussIsAJointOfItsOwn(t *testing.T) {
	a := analyzed(t, hipOfTrusses+`
item = [{ mark = "eave-clip", kind = "clip", thickness = "17 ga", nails = { type = "8d x 1 1/2", to_rafter = 4, to_plate = 7 } }]
rule = [{ at = "rafter-plate", use = "eave-clip" }]
`)
	n := 0
	for _, j := range a.house.Joints {
		switch j.Kind {
		case plan.GirderPlate:
			n++
			assert.Empty(t, a.placed.At(j), j.ID)
			assert.Greater(t, a.peaks[j].demand, 1.5*a.peaks[jointOf(t, a.house, "S-120-RP")].demand, j.ID)
		case plan.RafterPlate:
			assert.Len(t, a.placed.At(j), 1, j.ID)
		}
	}
	assert.Equal(t, 4, n)
}

// A wing of 18 ft by 13 ft opens into the south side: a girder truss of the wing carries the
// trusses of the main roof across its mouth, and the valley set stands on those. All of the
// roof's weight comes to plates, and what the girder's bearings hold is the girder's own roof
// and what hangs on it, by the lever of each.
func TestTheMouthOfAWingByStatics(t *testing.T) {
	src, err := os.ReadFile("../framing/testdata/odd/truss-wing.toml")
	require.NoError(t, err)
	a := analyzed(t, string(src)+`
[loads]
dead = [{ part = "roof", name = "all of it", weight = "10 psf" }, { part = "ceiling", name = "none", weight = "0 psf" }]
`)
	w := a.dead.roof(a.house.Roofs()[0]) * 13 / 12 / 144
	s := a.run(a.cases()[0])
	plates, area := 0.0, 0.0
	for _, j := range a.house.Joints {
		if j.Kind.OnPlate() {
			plates += s.rafters[j].D
		}
	}
	for _, f := range a.house.Roof {
		for i, p := range f.Outline {
			area += p.Flat().Cross(f.Outline[(i+1)%len(f.Outline)].Flat()) / 2
		}
	}
	assert.InDelta(t, area*w, plates, 0.001*plates)

	west, east := jointOf(t, a.house, "V-2-TG"), jointOf(t, a.house, "Q-154-TG")
	girder := west.First()
	require.Equal(t, plan.GirderTruss, girder.Role)
	require.Equal(t, 3, girder.Section.Ply)
	var right, all float64
	hung := 0
	for _, j := range a.house.Joints {
		if j.Kind == plan.JackGirder && j.Members[1] == girder {
			hung++
			k := (j.At.X - west.At.X) / (east.At.X - west.At.X)
			right, all = right+k*s.rafters[j].D, all+s.rafters[j].D
		}
	}
	assert.Equal(t, 9, hung) // trusses at 24 in over the 18 ft between the walls
	own := 0.0
	for _, x := range a.house.Shares {
		if x.Member == girder {
			own += x.Width * x.Run * w
		}
	}
	require.Greater(t, all, 2*own)
	assert.InDelta(t, right+own/2, s.rafters[east].D, 0.5)
	assert.InDelta(t, all-right+own/2, s.rafters[west].D, 0.5)
}
