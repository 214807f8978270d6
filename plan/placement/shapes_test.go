package placement_test

import (
	"fmt"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/read"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// hut is one story of 24 by 12 ft on girders and piles, 2x4 at 16 in:
// subfloor's top at 60, plates from 60 + 97.125 - 3 = 154.125 to 157.125. A
// window of 40 in stands in S from station 96, so its sill's ends are at 96
// and 136; a wall of 24 ft on 16 ft stock has its plates spliced.
const hut = `
[project]
name = "Hut"
date = 2026-03-02
[site]
wind_speed = "150 mph"
exposure = "D"
[foundation]
kind = "piles"
pile = "10x10"
[[level]]
name = "main"
floor = "60in"
plate_height = "97 1/8in"
joists = "2x10 @ 16in"
joist_run = "y"
studs = "2x4 @ 16in"
[[wall]]
name = "S"
from = ["0'", "0'"]
to = ["24'", "0'"]
opening = [{ name = "w1", at = "8'", width = "40in", height = "4'", sill = "2' 6in", header = "2-2x8" }]
shear = [{ from = "0'", to = "4'" }]
[[wall]]
name = "E"
to = ["24'", "12'"]
[[wall]]
name = "N"
to = ["0'", "12'"]
[[wall]]
name = "W"
to = ["0'", "0'"]
[[roof]]
name = "main"
kind = "gable"
ridge = "x"
pitch = "5:12"
rafters = "2x6 @ 16in"
[[girder]]
name = "GS"
from = ["0'", "2 1/4in"]
to = ["24'", "2 1/4in"]
member = "3-2x10"
piles = ["6in", "12'", "23' 6in"]
[[girder]]
name = "GN"
from = ["0'", "141 3/4in"]
to = ["24'", "141 3/4in"]
member = "3-2x10"
piles = ["6in", "12'", "23' 6in"]
[[porch]]
name = "P"
from = ["6'", "-6'"]
to = ["18'", "-6'"]
beam = "2-2x10"
post = "6x6"
posts = ["6in", "11' 6in"]
base = "1'"
top = "11'"
[[item]]
mark = "strap"
kind = "strap"
length = "20in"
width = "1 3/8in"
thickness = "19 ga"
nails = { type = "10d x 1 1/2", each_end = 5 }
[[item]]
mark = "wrap"
kind = "wrap strap"
length = "30in"
width = "1 3/8in"
thickness = "19 ga"
nails = { type = "10d x 1 1/2", each_leg = 5 }
[[item]]
mark = "bolt"
kind = "anchor bolt"
length = "16in"
rod = "3/4in"
[[item]]
mark = "base"
kind = "post base"
nails = { type = "16d sinker", to_post = 11 }
[[item]]
mark = "cap"
kind = "post cap"
nails = { type = "16d sinker", to_post = 9, to_beam = 13 }
`

// hutWith places one item at all joints of a kind, with further keys.
func hutWith(t *testing.T, at, use, more string) (*placement.Placement, plan.Diagnostics) {
	t.Helper()
	src := hut + fmt.Sprintf("[[rule]]\nat = %q\nuse = %q\n%s\n", at, use, more)
	p, ds := read.Plan("hut.toml", []byte(src), nil)
	require.False(t, ds.Errors(), "%v", ds)
	h, ds := framing.Frame(p)
	require.False(t, ds.Errors(), "%v", ds)
	c, ds := hardware.New(p.Items)
	require.Empty(t, ds)
	return placement.Place(h, c)
}

func path(t *testing.T, p *placement.Placement, tag string) []geom.Vec3 {
	t.Helper()
	q := p.Piece(tag)
	require.NotNil(t, q, "%s of %d pieces", tag, len(p.Pieces))
	return q.Path
}

func assertPath(t *testing.T, want []geom.Vec3, got []geom.Vec3) {
	t.Helper()
	require.Len(t, got, len(want))
	for i := range want {
		assert.InDelta(t, 0, want[i].Sub(got[i]).Len(), 1e-6, "point %d: %v, not %v", i, got[i], want[i])
	}
}

func TestStrapAtAStudsTopLiesOnThePlates(t *testing.T) {
	// 20 in down from 157.125, 3 of them on the plates' edges.
	p, _ := hutWith(t, "stud-top", "strap", `where = { wall = "S" }`)
	assertPath(t, []geom.Vec3{{X: 16, Z: 137.125}, {X: 16, Z: 157.125}}, path(t, p, "S-16-ST-strap"))
	assert.Equal(t, [2]float64{17, 3}, p.Piece("S-16-ST-strap").Laps())
}

func TestStrapAtASillLiesAlongIt(t *testing.T) {
	// The sill's top is at 60 + 30 = 90, the middle of its edge at 89.25; 10 in
	// to each side of its end at 96.
	p, _ := hutWith(t, "opening-sill", "strap", "")
	assertPath(t, []geom.Vec3{{X: 86, Z: 89.25}, {X: 106, Z: 89.25}}, path(t, p, "S-96-OS-strap"))
}

func TestStrapAtASpliceIsCenteredOnIt(t *testing.T) {
	p, _ := hutWith(t, "plate-splice", "strap", `where = { wall = "S" }`)
	require.NotEmpty(t, p.Pieces)
	for _, q := range p.Pieces {
		// On the plate's own edge: the lower from 154.125, the upper from 155.625.
		z := q.Joint.First().Z0 + 0.75
		s := q.Joint.Station
		assertPath(t, []geom.Vec3{{X: s - 10, Z: z}, {X: s + 10, Z: z}}, q.Path)
	}
	// On top it lies on the upper plate.
	p, _ = hutWith(t, "plate-splice", "strap", "where = { wall = \"S\" }\nface = \"top\"")
	assert.InDelta(t, 157.125, p.Pieces[0].Path[0].Z, 1e-9)
	assert.InDelta(t, 1.75, p.Pieces[0].Path[0].Y, 1e-9)
}

func TestStrapRoundACornerBends(t *testing.T) {
	// 10 in along each wall, where the two plates meet: 157.125 - 1.5.
	p, ds := hutWith(t, "wall-corner", "strap", "")
	assert.Empty(t, codes(ds, "face-taken", "corner-of-one"))
	got := path(t, p, "S-0-WC-strap")
	assertPath(t, []geom.Vec3{{X: 10, Z: 155.625}, {Z: 155.625}, {Y: 10, Z: 155.625}}, got)
}

func TestWrapOverARafterHangsOnBothItsSides(t *testing.T) {
	// 30 in: 1.5 over the rafter's back, 14.25 down each side.
	p, _ := hutWith(t, "rafter-plate", "wrap", `where = { wall = "S" }`)
	got := path(t, p, "S-32-RP-wrap")
	require.Len(t, got, 4)
	assert.InDelta(t, 31.25, got[0].X, 1e-9)
	assert.InDelta(t, 32.75, got[3].X, 1e-9)
	assert.InDelta(t, 14.25, got[1].Z-got[0].Z, 1e-9)
	assert.InDelta(t, got[1].Z, got[2].Z, 1e-9)
	// The back of the rafter over the outside face: plumb cut of 5.5 in at 5:12 is
	// 5.5 * 13/12 = 5.958, less the birdsmouth.
	assert.Greater(t, got[1].Z, 157.125)
	assert.Less(t, got[1].Z, 157.125+5.958)
}

func TestStrapBesideARafter(t *testing.T) {
	p, _ := hutWith(t, "rafter-plate", "strap", `where = { wall = "S" }`)
	assertPath(t, []geom.Vec3{{X: 31.25, Z: 147.125}, {X: 31.25, Z: 167.125}}, path(t, p, "S-32-RP-strap"))
}

func TestGirderStrapAndBolt(t *testing.T) {
	// The girder, 4.5 wide, stands on a pile of 9.25: its face is 2.375 behind the
	// pile's. The strap of 20 bends out over the pile's top and has half of the
	// rest, 8.8125, on each.
	p, _ := hutWith(t, "girder-pile", "strap", "both_faces = true")
	require.Len(t, p.Pieces, 12, "6 piles, both faces")
	q := p.Piece("GS-6-GP-strap")
	require.NotNil(t, q)
	g := q.Joint.First()
	laps := q.Laps()
	assert.InDeltaSlice(t, []float64{8.8125, 8.8125}, laps[:], 1e-9)
	assertPath(t, []geom.Vec3{{X: 6, Y: -2.375, Z: g.Z0 - 8.8125}, {X: 6, Y: -2.375, Z: g.Z0}, {X: 6, Z: g.Z0}, {X: 6, Z: g.Z0 + 8.8125}}, q.Path)
	in := p.Piece("GS-6-GP-strap-2").Path
	assert.InDelta(t, 6.875, in[0].Y, 1e-9)
	assert.InDelta(t, 4.5, in[2].Y, 1e-9, "3 plies of 1.5")

	p, _ = hutWith(t, "girder-pile", "bolt", "")
	// 16 in of bolt across a girder whose outer face is y = 0, half-way up it: its
	// head stands off by a cut washer of 3/16.
	mid := g.Z0 + 9.25/2
	assertPath(t, []geom.Vec3{{X: 6, Y: -0.1875, Z: mid}, {X: 6, Y: 15.8125, Z: mid}}, path(t, p, "GS-6-GP-anchor"))
}

func TestPorchBasesAndCaps(t *testing.T) {
	p, _ := hutWith(t, "post-base", "base", "")
	require.Len(t, p.Pieces, 2)
	assert.InDelta(t, 12, p.Pieces[0].Path[0].Z, 1e-9, "the posts' foot")
	p, _ = hutWith(t, "post-cap", "cap", "")
	require.Len(t, p.Pieces, 2)
	assert.InDelta(t, 132-9.25, p.Pieces[0].Path[0].Z, 1e-9, "under the beam")
}

func TestConditionsOnWhatAJointKnows(t *testing.T) {
	for where, want := range map[string]int{
		`wall = "S", shear = true`:                             5,  // 0.75 and 3.75 of the post, 16, 32, 48
		`wall = "S", opening = "under 3in"`:                    4,  // jack and king on each side
		`wall = "S", role = "jack"`:                            2,  // one each side
		`roof = "main", wall = "S"`:                            0,  // studs have no roof
		`stud = "2x4", wall = "W", spacing = "16in"`:           10, // two posts, 8 studs between: 16 to 128
		`wall = "S", corner = "under 12in", end_zone = true`:   4,  // post of two at each end
		`wall = "S", role = "king", opening_width = "over 3'"`: 2,
		`wall = "S", height = "over 3'"`:                       0, // the foot of a stud is 1.5 above the floor
		`balloon = true`:                                       0,
		`bearing = true, exterior = true, wall = "S"`:          -1, // all of S
	} {
		p, _ := hutWith(t, "stud-base", "strap", "where = { "+where+" }")
		if want < 0 {
			all, _ := hutWith(t, "stud-base", "strap", `where = { wall = "S" }`)
			want = len(all.Pieces)
		}
		assert.Len(t, p.Pieces, want, where)
	}
}

// codes picks diagnostics by code.
func codes(ds plan.Diagnostics, codes ...string) (out []plan.Diagnostic) {
	for _, d := range ds {
		for _, c := range codes {
			if string(d.Code) == c {
				out = append(out, d)
			}
		}
	}
	return out
}
