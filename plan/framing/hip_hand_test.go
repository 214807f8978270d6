package framing

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"galewright/plan"
)

// A hip of 9 in 12 over 120 by 96, 2x8 at 16, a ridge of 1 1/2 and eaves of 12; slopes, seats and
// heights are those of TestAGableByHand: over the wall's face 235.9219, at the eave 226.9219.
//
// Lines: the planes meet over 120 - 96 = 24, from 48 to 72; the ridge goes on half a rafter, 0.75,
// to the commons of the ends, 25.5: there these are as high as it is, 0.75 x 3/4 under the peak of 271.9219.
// Hips, 2x10, are at 45 degrees: 0.75 x 0.75 sin 45 = 0.3977 under the roof, rise 0.53033 an inch
// and are 1.13192 long for each; they end at the sides of two commons, 0.75 before 48, so run
// 59.25 on either axis, 83.792: 83.792 x 1.13192 + 9.25 x 0.46852 = 99.752 from long point to long
// point, where 0.53033/1.13192 = 0.46852 and the depth's share is 10.4703 x 0.46852. Wood: 1.5 x
// 83.792 less four corners of 0.75²/2, times 9.25 x 1.13192 = 10.4703, less the notch: the underside
// at the corner is 235.5241 - 10.4703 = 225.0538, 4.0712 under the plate: 4.0712²/2/0.53033 x 1.5
// = 23.44: 1280.77. The seat is 7.677 long, its middle 3.838 from the corner: 2.714 on each axis.
//
// Rafters: the commons of the long sides are cut at the ridge, run 59.25; those of the ends are
// cut back 0.75 to the ridge's end and run 59.25 too: 59.25 x 5/4 + 5.4375 = 79.5. Jacks at 16 and 32 end at the hip's side, 0.75
// sqrt 2 = 1.0607 short of the hip: run 26.939 and 42.939, 0.75 more on the long side of the cheek,
// so (27.689 x 5/4) + 5.4375 = 40.049. Wood: 1.5 x run x 9.0625, less 3.0208 x 2.2656/2 x 1.5 = 5.133.
//
// Joints at plates: the middle of the seat, 1.5104; each serves half way to its neighbors, 13.286
// from jack to hip, the outer ones 2.714 to the wall's end. A hip is joined to the wall written
// first, and its station on the hip's own line is (28 + 26.939)/sqrt 2 = 38.848 of the first jack.
//
// Shares: the jack at 16 has the triangle from the corner to 24, 36²/2 over its run; the one at 32
// 16 x 44; the common at 48 8 x 56 and 8 x 60; the end's common two of 8 x 56.
func TestAHipByHand(t *testing.T) {
	p := stories(1)
	ring(p, 0, rect(0, 0, 120, 96)...)
	r := roofOn(p, "main", plan.HipRoof, plan.AxisX, 9, rect(0, 0, 120, 96))
	r.Overhang, r.RidgeMember = 12, plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 9.25, Text: "2x10"}
	h := roofed(t, p)
	assert.Equal(t, strings.TrimSpace(`
main/ridge@48, 2x10 : 47.25 48 271.359 to 72.75 48 271.359, 262.109 to 271.359 high, 25.5 long, 353.813 in³
main/hip@-12, 2x10 1: -12 -12 226.524 to 47.25 47.25 270.962, 216.054 to 270.962 high, 99.752 long, 1280.773 in³
main/hip@-12b, 2x10 2: -12 108 226.524 to 47.25 48.75 270.962, 216.054 to 270.962 high, 99.752 long, 1280.773 in³
main/hip@132, 2x10 3: 132 -12 226.524 to 72.75 47.25 270.962, 216.054 to 270.962 high, 99.752 long, 1280.773 in³
main/hip@132b, 2x10 4: 132 108 226.524 to 72.75 48.75 270.962, 216.054 to 270.962 high, 99.752 long, 1280.773 in³
main/S/rafter@16, 2x8 5: 16 -12 226.922 to 16 14.939 247.126, 217.859 to 247.689 high, 40.049 long, 361.074 in³
main/S/rafter@32, 2x8 6: 32 -12 226.922 to 32 30.939 259.126, 217.859 to 259.689 high, 60.049 long, 578.574 in³
main/S/rafter@48, 2x8 7: 48 -12 226.922 to 48 47.25 271.359, 217.859 to 271.359 high, 79.5 long, 800.297 in³
main/S/rafter@64, 2x8 8: 64 -12 226.922 to 64 47.25 271.359, 217.859 to 271.359 high, 79.5 long, 800.297 in³
main/S/rafter@72, 2x8 9: 72 -12 226.922 to 72 47.25 271.359, 217.859 to 271.359 high, 79.5 long, 800.297 in³
main/S/rafter@88, 2x8 10: 88 -12 226.922 to 88 30.939 259.126, 217.859 to 259.689 high, 60.049 long, 578.574 in³
main/S/rafter@104, 2x8 11: 104 -12 226.922 to 104 14.939 247.126, 217.859 to 247.689 high, 40.049 long, 361.074 in³
main/E/rafter@16, 2x8 12: 132 16 226.922 to 105.061 16 247.126, 217.859 to 247.689 high, 40.049 long, 361.074 in³
main/E/rafter@32, 2x8 13: 132 32 226.922 to 89.061 32 259.126, 217.859 to 259.689 high, 60.049 long, 578.574 in³
main/E/rafter@48, 2x8 14: 132 48 226.922 to 72.75 48 271.359, 217.859 to 271.359 high, 79.5 long, 800.297 in³
main/E/rafter@64, 2x8 15: 132 64 226.922 to 89.061 64 259.126, 217.859 to 259.689 high, 60.049 long, 578.574 in³
main/E/rafter@80, 2x8 16: 132 80 226.922 to 105.061 80 247.126, 217.859 to 247.689 high, 40.049 long, 361.074 in³
main/N/rafter@16, 2x8 17: 16 108 226.922 to 16 81.061 247.126, 217.859 to 247.689 high, 40.049 long, 361.074 in³
main/N/rafter@32, 2x8 18: 32 108 226.922 to 32 65.061 259.126, 217.859 to 259.689 high, 60.049 long, 578.574 in³
main/N/rafter@48, 2x8 19: 48 108 226.922 to 48 48.75 271.359, 217.859 to 271.359 high, 79.5 long, 800.297 in³
main/N/rafter@64, 2x8 20: 64 108 226.922 to 64 48.75 271.359, 217.859 to 271.359 high, 79.5 long, 800.297 in³
main/N/rafter@72, 2x8 21: 72 108 226.922 to 72 48.75 271.359, 217.859 to 271.359 high, 79.5 long, 800.297 in³
main/N/rafter@88, 2x8 22: 88 108 226.922 to 88 65.061 259.126, 217.859 to 259.689 high, 60.049 long, 578.574 in³
main/N/rafter@104, 2x8 23: 104 108 226.922 to 104 81.061 247.126, 217.859 to 247.689 high, 40.049 long, 361.074 in³
main/W/rafter@16, 2x8 24: -12 16 226.922 to 14.939 16 247.126, 217.859 to 247.689 high, 40.049 long, 361.074 in³
main/W/rafter@32, 2x8 25: -12 32 226.922 to 30.939 32 259.126, 217.859 to 259.689 high, 60.049 long, 578.574 in³
main/W/rafter@48, 2x8 26: -12 48 226.922 to 47.25 48 271.359, 217.859 to 271.359 high, 79.5 long, 800.297 in³
main/W/rafter@64, 2x8 27: -12 64 226.922 to 30.939 64 259.126, 217.859 to 259.689 high, 60.049 long, 578.574 in³
main/W/rafter@80, 2x8 28: -12 80 226.922 to 14.939 80 247.126, 217.859 to 247.689 high, 40.049 long, 361.074 in³
main/tie@49.5, 2x6 : 49.5 0 234.625 to 49.5 96 234.625, 229.125 to 234.625 high, 96 long, 792 in³
main/tie@62.5, 2x6 : 62.5 0 234.625 to 62.5 96 234.625, 229.125 to 234.625 high, 96 long, 792 in³
main/tie@70.5, 2x6 : 70.5 0 234.625 to 70.5 96 234.625, 229.125 to 234.625 high, 96 long, 792 in³`), roofMembers(h))
	assert.Equal(t, strings.TrimSpace(`
1A-3-RP at 2.714 2.714 229.125, station 2.714, serves 9.357: main/hip@-12 1A/top plate@0
1A-16-RP at 16 1.51 229.125, station 16, serves 14.643: main/S/rafter@16 1A/upper plate@5.5
1A-32-RP at 32 1.51 229.125, station 32, serves 16: main/S/rafter@32 1A/upper plate@5.5
1A-48-RP at 48 1.51 229.125, station 48, serves 16: main/S/rafter@48 1A/upper plate@5.5
1A-64-RP at 64 1.51 229.125, station 64, serves 12: main/S/rafter@64 1A/upper plate@5.5
1A-72-RP at 72 1.51 229.125, station 72, serves 12: main/S/rafter@72 1A/upper plate@5.5
1A-88-RP at 88 1.51 229.125, station 88, serves 16: main/S/rafter@88 1A/upper plate@5.5
1A-104-RP at 104 1.51 229.125, station 104, serves 14.643: main/S/rafter@104 1A/upper plate@5.5
1A-117-RP at 117.286 2.714 229.125, station 117.286, serves 9.357: main/hip@132 1A/top plate@0
1B-16-RP at 118.49 16 229.125, station 16, serves 16: main/E/rafter@16 1B/upper plate@0
1B-32-RP at 118.49 32 229.125, station 32, serves 16: main/E/rafter@32 1B/upper plate@0
1B-48-RP at 118.49 48 229.125, station 48, serves 16: main/E/rafter@48 1B/upper plate@0
1B-64-RP at 118.49 64 229.125, station 64, serves 16: main/E/rafter@64 1B/upper plate@0
1B-80-RP at 118.49 80 229.125, station 80, serves 14.643: main/E/rafter@80 1B/upper plate@0
1B-93-RP at 117.286 93.286 229.125, station 93.286, serves 9.357: main/hip@132b 1B/upper plate@0
1C-16-RP at 104 94.49 229.125, station 16, serves 16: main/N/rafter@104 1C/upper plate@5.5
1C-32-RP at 88 94.49 229.125, station 32, serves 16: main/N/rafter@88 1C/upper plate@5.5
1C-48-RP at 72 94.49 229.125, station 48, serves 12: main/N/rafter@72 1C/upper plate@5.5
1C-56-RP at 64 94.49 229.125, station 56, serves 12: main/N/rafter@64 1C/upper plate@5.5
1C-72-RP at 48 94.49 229.125, station 72, serves 16: main/N/rafter@48 1C/upper plate@5.5
1C-88-RP at 32 94.49 229.125, station 88, serves 16: main/N/rafter@32 1C/upper plate@5.5
1C-104-RP at 16 94.49 229.125, station 104, serves 14.643: main/N/rafter@16 1C/upper plate@5.5
1C-117-RP at 2.714 93.286 229.125, station 117.286, serves 9.357: main/hip@-12b 1C/top plate@0
1D-16-RP at 1.51 80 229.125, station 16, serves 16: main/W/rafter@80 1D/upper plate@0
1D-32-RP at 1.51 64 229.125, station 32, serves 16: main/W/rafter@64 1D/upper plate@0
1D-48-RP at 1.51 48 229.125, station 48, serves 16: main/W/rafter@48 1D/upper plate@0
1D-64-RP at 1.51 32 229.125, station 64, serves 16: main/W/rafter@32 1D/upper plate@0
1D-80-RP at 1.51 16 229.125, station 80, serves 16: main/W/rafter@16 1D/upper plate@0
main-48-RR at 48 48 271.359, station 48, serves 16: main/S/rafter@48 main/N/rafter@48 main/ridge@48
main-48b-RR at 48 48 271.359, station 48, serves 16: main/W/rafter@48 main/ridge@48
main-48c-RR at 48 48 271.359, station 48, serves 16: main/hip@-12 main/ridge@48
main-48d-RR at 48 48 271.359, station 48, serves 16: main/hip@-12b main/ridge@48
main-64-RR at 64 48 271.359, station 64, serves 12: main/S/rafter@64 main/N/rafter@64 main/ridge@48
main-72-RR at 72 48 271.359, station 72, serves 12: main/S/rafter@72 main/N/rafter@72 main/ridge@48
main-72b-RR at 72 48 271.359, station 72, serves 12: main/E/rafter@48 main/ridge@48
main-72c-RR at 72 48 271.359, station 72, serves 12: main/hip@132 main/ridge@48
main-72d-RR at 72 48 271.359, station 72, serves 12: main/hip@132b main/ridge@48
main/hipNE-39-RR at 105.061 80 247.126, station 38.848, serves 16: main/E/rafter@80 main/hip@132b
main/hipNE-39b-RR at 104 81.061 247.126, station 38.848, serves 16: main/N/rafter@104 main/hip@132b
main/hipNE-61-RR at 89.061 64 259.126, station 61.475, serves 16: main/E/rafter@64 main/hip@132b
main/hipNE-61b-RR at 88 65.061 259.126, station 61.475, serves 16: main/N/rafter@88 main/hip@132b
main/hipNW-39-RR at 16 81.061 247.126, station 38.848, serves 16: main/N/rafter@16 main/hip@-12b
main/hipNW-39b-RR at 14.939 80 247.126, station 38.848, serves 16: main/W/rafter@80 main/hip@-12b
main/hipNW-61-RR at 32 65.061 259.126, station 61.475, serves 16: main/N/rafter@32 main/hip@-12b
main/hipNW-61b-RR at 30.939 64 259.126, station 61.475, serves 16: main/W/rafter@64 main/hip@-12b
main/hipSE-39-RR at 104 14.939 247.126, station 38.848, serves 16: main/S/rafter@104 main/hip@132
main/hipSE-39b-RR at 105.061 16 247.126, station 38.848, serves 16: main/E/rafter@16 main/hip@132
main/hipSE-61-RR at 88 30.939 259.126, station 61.475, serves 16: main/S/rafter@88 main/hip@132
main/hipSE-61b-RR at 89.061 32 259.126, station 61.475, serves 16: main/E/rafter@32 main/hip@132
main/hipSW-39-RR at 16 14.939 247.126, station 38.848, serves 16: main/S/rafter@16 main/hip@-12
main/hipSW-39b-RR at 14.939 16 247.126, station 38.848, serves 16: main/W/rafter@16 main/hip@-12
main/hipSW-61-RR at 32 30.939 259.126, station 61.475, serves 16: main/S/rafter@32 main/hip@-12
main/hipSW-61b-RR at 30.939 32 259.126, station 61.475, serves 16: main/W/rafter@32 main/hip@-12`), roofJoints(h))
	assert.Equal(t, strings.TrimSpace(`
main/S/rafter@16 from 16 -12, run 26.939 at 0.75: -12 to 24, 24.054 wide
main/S/rafter@32 from 32 -12, run 42.939 at 0.75: 24 to 40, 16.395 wide
main/S/rafter@48 from 48 -12, run 60 at 0.75: 40 to 56, 15.467 wide
main/S/rafter@64 from 64 -12, run 60 at 0.75: 56 to 68, 12 wide
main/S/rafter@72 from 72 -12, run 60 at 0.75: 68 to 80, 11.467 wide
main/S/rafter@88 from 88 -12, run 42.939 at 0.75: 80 to 96, 16.395 wide
main/S/rafter@104 from 104 -12, run 26.939 at 0.75: 96 to 132, 24.054 wide
main/E/rafter@16 from 132 16, run 26.939 at 0.75: -12 to 24, 24.054 wide
main/E/rafter@32 from 132 32, run 42.939 at 0.75: 24 to 40, 16.395 wide
main/E/rafter@48 from 132 48, run 60 at 0.75: 40 to 56, 14.933 wide
main/E/rafter@64 from 132 64, run 42.939 at 0.75: 56 to 72, 16.395 wide
main/E/rafter@80 from 132 80, run 26.939 at 0.75: 72 to 108, 24.054 wide
main/N/rafter@16 from 16 108, run 26.939 at 0.75: -12 to 24, 24.054 wide
main/N/rafter@32 from 32 108, run 42.939 at 0.75: 24 to 40, 16.395 wide
main/N/rafter@48 from 48 108, run 60 at 0.75: 40 to 56, 15.467 wide
main/N/rafter@64 from 64 108, run 60 at 0.75: 56 to 68, 12 wide
main/N/rafter@72 from 72 108, run 60 at 0.75: 68 to 80, 11.467 wide
main/N/rafter@88 from 88 108, run 42.939 at 0.75: 80 to 96, 16.395 wide
main/N/rafter@104 from 104 108, run 26.939 at 0.75: 96 to 132, 24.054 wide
main/W/rafter@16 from -12 16, run 26.939 at 0.75: -12 to 24, 24.054 wide
main/W/rafter@32 from -12 32, run 42.939 at 0.75: 24 to 40, 16.395 wide
main/W/rafter@48 from -12 48, run 60 at 0.75: 40 to 56, 14.933 wide
main/W/rafter@64 from -12 64, run 42.939 at 0.75: 56 to 72, 16.395 wide
main/W/rafter@80 from -12 80, run 26.939 at 0.75: 72 to 108, 24.054 wide`), roofShares(h))
}
