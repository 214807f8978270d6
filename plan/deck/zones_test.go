package deck

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/wind"
)

// shaped is a house of 60 by 40 ft, walls 10 ft, with a roof of the words.
const shaped = `
level = [{ name = "floor", plate_height = "10'" }]
wall = [
  { name = "S", from = ["0'", "0'"], to = ["60'", "0'"] },
  { name = "E", to = ["60'", "40'"]%[1]s },
  { name = "N", to = ["0'", "40'"]%[2]s },
  { name = "W", to = ["0'", "0'"]%[1]s },
]
roof = [{ %[3]s, rafters = "2x8 @ 16in", overhang = "2'" }]
[project]
name = "Invented"
[site]
wind_speed = "150 mph"
exposure = "C"
edition = "%[4]s"
`

// Where a is 4 ft: the least of a tenth of 40 ft and 0.4 h. The outer edge of
// the roof is 2 ft outside of the walls, and strips are laid out from there.
func TestZonesWhereTheyLie(t *testing.T) {
	const ft = 12.0
	gable := [3]string{`, top = "rake"`, "", `kind = "gable", ridge = "x", pitch = "5:12"`}
	hip := [3]string{"", "", `kind = "hip", pitch = "5:12"`}
	shed := [3]string{`, top = "rake"`, `, top = "rake"`, `kind = "shed", high = "N", pitch = "3:12"`}
	for _, c := range []struct {
		house   [3]string
		edition plan.Edition
		x, y    float64 // ft
		zone    string
		over    bool
	}{
		{gable, "7-22", 30, 10, "1", false},
		{gable, "7-22", 30, 1.9, "2", false},
		{gable, "7-22", 30, 2.1, "1", false},
		{gable, "7-22", 30, -1, "2", true},
		{gable, "7-22", 1, 10, "2", false},
		{gable, "7-22", 1, 1, "3", false},
		{gable, "7-22", -1, -1, "3", true},
		{gable, "7-22", 30, 16.1, "2", false}, // ridge at 20
		{gable, "7-22", 1, 17, "3", false},
		{gable, "7-16", 30, 10, "1", false},
		{gable, "7-16", 1, 10, "2n", false},
		{gable, "7-16", 30, 17, "2r", false},
		{gable, "7-16", 1, 17, "3r", false},
		{hip, "7-22", 30, 10, "1", false},
		{hip, "7-22", 30, 1, "2", false},
		{hip, "7-22", 1, 1.1, "2", false}, // 22.6 degrees: zones 2 and 3 are one
		{hip, "7-22", 20, 14, "1", false},
		{hip, "7-22", 16, 12.1, "2", false}, // 2.8 ft from the hip
		{hip, "7-16", 30, 10, "1", false},
		{hip, "7-16", 30, 1, "2e", false},
		{hip, "7-16", 16, 12.1, "2r", false},
		{shed, "7-22", 30, 20, "1", false},
		{shed, "7-22", 30, 5, "2", false},  // 7 of 8 ft from the low edge
		{shed, "7-22", 30, 35, "2", false}, // 7 of 8 ft from the high edge
		{shed, "7-22", 5, 35, "3", false},  // within 4a = 16 ft of the side
		{shed, "7-22", 13, 35, "3", false},
		{shed, "7-22", 15, 35, "2", false},
		{shed, "7-22", 5, 5, "3", false},
		{shed, "7-22", 5, 20, "2", false},
	} {
		d := New(framed(t, fmt.Sprintf(shaped, c.house[0], c.house[1], c.house[2], c.edition), ""))
		b := basis(d.House)
		w := d.Blow(b)
		require.Empty(t, w.Faults)
		require.InDelta(t, 4*ft, w.A, 1e-6)
		p := geom.Vec2{X: c.x * ft, Y: c.y * ft}
		found := false
		for _, x := range d.Faces {
			if holds(x.plan, p, 0) {
				found = true
				z := w.At(x, p)
				// zones of one curve are named by the first of them
				assert.Equal(t, c.zone, z.Name, "%s %s at %v, %v", c.edition, c.house[2], c.x, c.y)
				assert.Equal(t, c.over, z.Over)
				break
			}
		}
		require.True(t, found, "%v, %v", c.x, c.y)
	}
}

// A roof to 7 degrees has zones by its mean height: 12 ft here, so 7.2 and 2.4
// ft, and 14.4 ft.
func TestZonesOfAFlatRoof(t *testing.T) {
	const ft = 12.0
	d := New(framed(t, fmt.Sprintf(shaped, `, top = "rake"`, "", `kind = "gable", ridge = "x", pitch = "1:12"`, "7-22"), ""))
	b := basis(d.House)
	b.Height = 12
	w := d.Blow(b)
	for _, c := range []struct {
		x, y float64
		zone string
	}{{-1, -1, "3"}, {0.3, 5, "3"}, {0.5, 5, "2"}, {5, 0.3, "3"}, {5, 5, "2"}, {30, 5, "2"}, {30, 5.3, "1"}, {30, 12.3, "1"}, {30, 12.5, "1'"}, {30, 19, "1'"}} {
		assert.Equal(t, c.zone, w.At(d.Faces[0], geom.Vec2{X: c.x * ft, Y: c.y * ft}).Name, "%v, %v", c.x, c.y)
	}
}

// Suction by hand. An overhang of a hip roof at 20 to 27 degrees, zone 2: -2.0 of ASCE
// 7-22 Fig. 30.3-2F (second-hand) less the wall's 1.0 of Fig. 30.3-1 (transcribed), which
// presses on its underside (ASCE 7-22 30.7, transcribed): -3.0. Inside, -2.0 and GCpi 0.18.
func TestSuctionInsideAndOnOverhangs(t *testing.T) {
	d := New(framed(t, fmt.Sprintf(shaped, "", "", `kind = "hip", pitch = "5:12"`, "7-22"), ""))
	b := basis(d.House)
	w := d.Blow(b)
	q := b.At(b.Height).QKd
	x := d.Faces[0]
	inside, over := w.At(x, geom.Vec2{X: 360, Y: 6}), w.At(x, geom.Vec2{X: 360, Y: -6})
	assert.InDelta(t, 2.18*q, inside.Suction, 1e-6)
	assert.InDelta(t, 3.0*q, over.Suction, 1e-6)
	// The figure of 7-16 for gables has curves for overhangs that hold both
	// faces: -2.0 in zone 2e at 20 to 27 degrees.
	g := New(framed(t, fmt.Sprintf(shaped, `, top = "rake"`, "", `kind = "gable", ridge = "x", pitch = "5:12"`, "7-16"), ""))
	w = g.Blow(basis(g.House))
	z := w.At(g.Faces[0], geom.Vec2{X: 360, Y: -6})
	assert.InDelta(t, 2.0*w.Basis.At(w.Basis.Height).QKd, z.Suction, 1e-6)
	assert.Zero(t, z.Below)
	// The least pressure of components and cladding, 16 psf.
	b.Speed = 40
	assert.InDelta(t, wind.LeastClad, d.Blow(b).At(x, geom.Vec2{X: 360, Y: 120}).Suction, 1e-6)
	assert.True(t, d.Blow(b).At(x, geom.Vec2{X: 360, Y: 120}).Raised)
}

// A roof too steep for any figure is told, not weighed.
func TestNoFigureIsAFault(t *testing.T) {
	d := New(framed(t, fmt.Sprintf(shaped, "", "", `kind = "gable", ridge = "x", pitch = "13:12"`, "7-22"), ""))
	w := d.Blow(basis(d.House))
	require.ErrorContains(t, w.Faults[d.House.Plan.Roofs[0]], "steepest is 45")
	assert.Zero(t, w.Most(d.House.Plan.Roofs[0]).Suction)
}
