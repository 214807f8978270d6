package placement

import (
	"testing"

	"galewright/plan/framing"
	"galewright/plan/geom"

	"github.com/stretchr/testify/require"
)

// Plates that climb 3 in 4 to a ridge at station 80 and fall again, in two
// pieces on the first slope: an inch of station is 1 1/4 in of plate.
func TestStrapFollowsTheSlopeOfARakeWall(t *testing.T) {
	f := geom.NewFrame(geom.Vec2{}, geom.Vec2{X: 160})
	stick := func(s0, z0, s1, z1 float64) *framing.Member {
		return &framing.Member{S0: s0, S1: s1, A: geom.Vec3{X: s0, Z: z0}, B: geom.Vec3{X: s1, Z: z1}}
	}
	row := []*framing.Member{stick(0, 0, 40, 30), stick(40, 30, 80, 60), stick(80, 60, 160, 0)}
	for _, x := range []struct {
		name            string
		station, length float64
		want            []geom.Vec3
	}{
		{"within one slope, over a splice: 20 in of stations each way", 40, 50, []geom.Vec3{{X: 20, Z: 15}, {X: 60, Z: 45}}},
		{"over the ridge: 50 in each way", 80, 100, []geom.Vec3{{X: 40, Z: 30}, {X: 80, Z: 60}, {X: 120, Z: 30}}},
		{"bent beyond its middle: 12.5 in to the ridge, 12.5 in down", 70, 50, []geom.Vec3{{X: 50, Z: 37.5}, {X: 80, Z: 60}, {X: 90, Z: 52.5}}},
		{"past the wall's end it goes straight on", 160, 50, []geom.Vec3{{X: 140, Z: 15}, {X: 180, Z: -15}}},
		{"so past its start", 0, 50, []geom.Vec3{{X: -20, Z: -15}, {X: 20, Z: 15}}},
	} {
		t.Run(x.name, func(t *testing.T) {
			got := alongSlope(f, row, x.station, 0, 0, x.length)
			require.Len(t, got, len(x.want))
			total := 0.0
			for i, p := range got {
				require.InDelta(t, 0, p.Sub(x.want[i]).Len(), 1e-9, "point %d: %v", i, p)
				if i > 0 {
					total += p.Sub(got[i-1]).Len()
				}
			}
			require.InDelta(t, x.length, total, 1e-9, "no steel is lost in the bend")
		})
	}
	top := alongSlope(f, row, 40, 2.75, 0.75, 50)
	require.InDelta(t, 15+0.75*1.25, top[0].Z, 1e-9, "3/4 in over the middle, square to the slope, is 15/16 in plumb")
	require.InDelta(t, 2.75, top[0].Y, 1e-9)
}
