package framing

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The L of ell, its numbers those of TestAGableByHand and TestAHipByHand. Its valleys come up from
// the inside corners, (36, -12) and (132, -12) at the eaves, to the wing's ridge at (84, 36): the
// main one is carried on to the main ridge, the other ends at its side. Where the main one is
// carried on it lies in the main roof's plane, so it is 0.3977 lower all along.
//
// Lines: main ridge 196 with its rakes; 1.5 x 9.25 x 196, less what it is ripped over the rake walls,
// 2 + 5.5 long and 0.75 high at each end (its underside is at 262.109, the rafters' at the peak
// 271.922 - 9.0625 = 262.859). The wing's from -62 to 0.75 sqrt 2 short of 36 in its middle, 0.75
// farther on one side: 97.689 long; 1.5 x 9.25 x 96.939 - 8.4375 = 1336.60. The main valley runs
// 59.25 on each axis, to the ridge's side; the other 47.25, to the side of the wing's ridge.
//
// Rafters: S@48 starts at the main valley, 1.0607 in from the wall's face, runs 46.189 to the ridge
// and keeps of its notch (1.9601² + 0.75²/3) x 3/8 x 1.5 = 2.267. S@72 starts at 24 + 1.0607. S@96
// starts there too and ends at the main valley's side, 46.939 in its middle, but for 0.439 of its
// thickness that comes to the ridge at 47.25: 46.875 in the mean. W@48 starts 1.0607 up from the
// eave, W@72 25.0607. The flush ones stand on the rake walls' sloping plates and have no notch,
// but where an eave's wall runs through to the corner, as 1G at both ends. 1.5 x 9.0625 an inch of run.
//
// A rafter at a corner of which a rake wall runs through is tied to that wall's plate, its station
// still on the eave's wall. Gable studs are tied where the rafter passes them, at the sloping
// plate's top: 229.125 + 9.0625 - 2.2656 - 9.0625 = 226.859 at the face, and 3/4 an inch from there.
//
// Shares: S@48 from 36 to 60 has 96 - x of the face, 48 in the mean; S@72 24 in the mean of 24; W@48
// from -24 to -12 48 and from there 42 in the mean; W@72 36²/2.
func TestAnEllByHand(t *testing.T) {
	h := roofed(t, ell())
	assert.Equal(t, strings.TrimSpace(`
main/ridge@-2, 2x10 : -2 48 271.359 to 194 48 271.359, 262.109 to 271.359 high, 196 long, 2702.625 in³
wing/ridge@-2, 2x10 : 84 -62 262.359 to 84 34.939 262.359, 253.109 to 262.359 high, 97.689 long, 1336.596 in³
main/valley@36, 2x10 1: 36 -12 226.524 to 95.25 47.25 270.962, 216.054 to 271.359 high, 100.601 long, 1287.749 in³
wing/valley@132, 2x10 2: 132 -12 226.922 to 84.75 35.25 262.359, 216.452 to 262.524 high, 80.894 long, 1025.012 in³
main/S/rafter@0.75, 2x8 3: 0.75 -12 226.922 to 0.75 47.25 271.359, 217.859 to 271.359 high, 79.5 long, 805.43 in³
main/S/rafter@24, 2x8 4: 24 -12 226.922 to 24 47.25 271.359, 217.859 to 271.359 high, 79.5 long, 800.297 in³
main/S/rafter@48, 2x8 5: 48 1.061 236.717 to 48 47.25 271.359, 229.125 to 271.359 high, 62.892 long, 625.62 in³
main/S/rafter@72, 2x8 6: 72 25.061 254.717 to 72 47.25 271.359, 245.092 to 271.359 high, 34.112 long, 301.636 in³
main/S/rafter@96, 2x8 7: 96 25.061 254.717 to 96 46.939 271.126, 245.092 to 271.359 high, 34.112 long, 296.539 in³
main/S/rafter@120, 2x8 8: 120 1.061 236.717 to 120 47.25 271.359, 229.125 to 271.359 high, 62.892 long, 625.62 in³
main/S/rafter@144, 2x8 9: 144 -12 226.922 to 144 47.25 271.359, 217.859 to 271.359 high, 79.5 long, 800.297 in³
main/S/rafter@168, 2x8 10: 168 -12 226.922 to 168 47.25 271.359, 217.859 to 271.359 high, 79.5 long, 800.297 in³
main/S/rafter@191.25, 2x8 11: 191.25 -12 226.922 to 191.25 47.25 271.359, 217.859 to 271.359 high, 79.5 long, 805.43 in³
main/N/rafter@0.75, 2x8 12: 0.75 108 226.922 to 0.75 48.75 271.359, 217.859 to 271.359 high, 79.5 long, 800.297 in³
main/N/rafter@24, 2x8 13: 24 108 226.922 to 24 48.75 271.359, 217.859 to 271.359 high, 79.5 long, 800.297 in³
main/N/rafter@48, 2x8 14: 48 108 226.922 to 48 48.75 271.359, 217.859 to 271.359 high, 79.5 long, 800.297 in³
main/N/rafter@72, 2x8 15: 72 108 226.922 to 72 48.75 271.359, 217.859 to 271.359 high, 79.5 long, 800.297 in³
main/N/rafter@96, 2x8 16: 96 108 226.922 to 96 48.75 271.359, 217.859 to 271.359 high, 79.5 long, 800.297 in³
main/N/rafter@120, 2x8 17: 120 108 226.922 to 120 48.75 271.359, 217.859 to 271.359 high, 79.5 long, 800.297 in³
main/N/rafter@144, 2x8 18: 144 108 226.922 to 144 48.75 271.359, 217.859 to 271.359 high, 79.5 long, 800.297 in³
main/N/rafter@168, 2x8 19: 168 108 226.922 to 168 48.75 271.359, 217.859 to 271.359 high, 79.5 long, 800.297 in³
main/N/rafter@191.25, 2x8 20: 191.25 108 226.922 to 191.25 48.75 271.359, 217.859 to 271.359 high, 79.5 long, 800.297 in³
wing/E/rafter@0.75, 2x8 21: 132 -59.25 226.922 to 84.75 -59.25 262.359, 217.859 to 262.359 high, 64.5 long, 642.305 in³
wing/E/rafter@24, 2x8 22: 132 -36 226.922 to 84.75 -36 262.359, 217.859 to 262.359 high, 64.5 long, 637.172 in³
wing/E/rafter@48, 2x8 23: 130.939 -12 227.717 to 84.75 -12 262.359, 218.092 to 262.359 high, 64.112 long, 622.753 in³
wing/E/rafter@72, 2x8 24: 106.939 12 245.717 to 84.75 12 262.359, 236.092 to 262.359 high, 34.112 long, 301.636 in³
wing/W/rafter@0.75, 2x8 25: 36 -59.25 226.922 to 83.25 -59.25 262.359, 217.859 to 262.359 high, 64.5 long, 642.305 in³
wing/W/rafter@24, 2x8 26: 36 -36 226.922 to 83.25 -36 262.359, 217.859 to 262.359 high, 64.5 long, 637.172 in³
wing/W/rafter@48, 2x8 27: 37.061 -12 227.717 to 83.25 -12 262.359, 218.092 to 262.359 high, 64.112 long, 622.753 in³
wing/W/rafter@72, 2x8 28: 61.061 12 245.717 to 83.25 12 262.359, 236.092 to 262.359 high, 34.112 long, 301.636 in³
main/tie@25.5, 2x6 : 25.5 0 234.625 to 25.5 96 234.625, 229.125 to 234.625 high, 96 long, 792 in³
main/tie@142.5, 2x6 : 142.5 0 234.625 to 142.5 96 234.625, 229.125 to 234.625 high, 96 long, 792 in³
main/tie@166.5, 2x6 : 166.5 0 234.625 to 166.5 96 234.625, 229.125 to 234.625 high, 96 long, 792 in³
wing/tie@25.5, 2x6 : 120 -34.5 234.625 to 48 -34.5 234.625, 229.125 to 234.625 high, 72 long, 594 in³
wing/tie@46.5, 2x6 : 120 -13.5 234.625 to 48 -13.5 234.625, 229.125 to 234.625 high, 72 long, 594 in³`), roofMembers(h))
	assert.Equal(t, strings.TrimSpace(`
1A-1-RP at 0.75 0 229.125, station 0.75, serves 12.375: main/S/rafter@0.75 1H/upper plate@48
1A-24-RP at 24 1.51 229.125, station 24, serves 23.625: main/S/rafter@24 1A/upper plate@5.5
1A-48-RP at 50.449 2.449 229.125, station 48, serves 12: main/valley@36 1A/upper plate@5.5
1A-48b-RP at 48 1.666 229.125, station 48, serves 12: main/S/rafter@48 1A/upper plate@5.5
1B-18-RP at 49.51 -12 229.125, station 17.5, serves 24: wing/W/rafter@48 1B/upper plate@5.5
1B-42-RP at 49.51 -36 229.125, station 41.5, serves 23.625: wing/W/rafter@24 1B/upper plate@5.5
1B-65-RP at 48 -59.25 229.125, station 64.75, serves 12.375: wing/W/rafter@0.75 1C/upper plate@0
1C-1-GT at 48.75 -57.25 227.422, station 0.75, serves 3.25: wing/W/rafter@0.75 1C/upper plate@0 1C/post@0.75
1C-6-GT at 53.75 -57.25 231.172, station 5.75, serves 7.625: wing/W/rafter@0.75 1C/upper plate@0 1C/post@5.75
1C-16-GT at 64 -57.25 238.859, station 16, serves 13.125: wing/W/rafter@0.75 1C/upper plate@0 1C/stud@16
1C-32-GT at 80 -57.25 250.859, station 32, serves 16: wing/W/rafter@0.75 1C/upper plate@0 1C/stud@32
1C-48-GT at 96 -57.25 244.859, station 48, serves 16: wing/E/rafter@0.75 1C/upper plate@36 1C/stud@48
1C-64-GT at 112 -57.25 232.859, station 64, serves 9.125: wing/E/rafter@0.75 1C/upper plate@36 1C/stud@64
1C-66-GT at 114.25 -57.25 231.172, station 66.25, serves 3.625: wing/E/rafter@0.75 1C/upper plate@36 1C/post@66.25
1C-71-GT at 119.25 -57.25 227.422, station 71.25, serves 3.25: wing/E/rafter@0.75 1C/upper plate@36 1C/post@71.25
1D-1-RP at 120 -59.25 229.125, station 0.75, serves 12.375: wing/E/rafter@0.75 1C/upper plate@36
1D-24-RP at 118.49 -36 229.125, station 24, serves 23.625: wing/E/rafter@24 1D/upper plate@5.5
1D-48-RP at 118.49 -12 229.125, station 48, serves 18: wing/E/rafter@48 1D/upper plate@5.5
1D-60-RP at 117.816 2.184 229.125, station 60, serves 6: wing/valley@132 1D/upper plate@5.5
1E-6-RP at 120 1.666 229.125, station 5.5, serves 12: main/S/rafter@120 1E/upper plate@5.5
1E-30-RP at 144 1.51 229.125, station 29.5, serves 24: main/S/rafter@144 1E/upper plate@5.5
1E-54-RP at 168 1.51 229.125, station 53.5, serves 23.625: main/S/rafter@168 1E/upper plate@5.5
1E-77-RP at 191.25 0 229.125, station 76.75, serves 12.375: main/S/rafter@191.25 1F/upper plate@0
1F-1-GT at 189.25 0.75 227.422, station 0.75, serves 3.25: main/S/rafter@191.25 1F/upper plate@0 1F/post@0.75
1F-6-GT at 189.25 5.75 231.172, station 5.75, serves 7.625: main/S/rafter@191.25 1F/upper plate@0 1F/post@5.75
1F-16-GT at 189.25 16 238.859, station 16, serves 13.125: main/S/rafter@191.25 1F/upper plate@0 1F/stud@16
1F-32-GT at 189.25 32 250.859, station 32, serves 16: main/S/rafter@191.25 1F/upper plate@0 1F/stud@32
1F-64-GT at 189.25 64 250.859, station 64, serves 16: main/N/rafter@191.25 1F/upper plate@48 1F/stud@64
1F-80-GT at 189.25 80 238.859, station 80, serves 12.875: main/N/rafter@191.25 1F/upper plate@48 1F/stud@80
1F-90-GT at 189.25 89.75 231.547, station 89.75, serves 11.125: main/N/rafter@191.25 1F/upper plate@48 1F/post@89.75
1G-1-RP at 191.25 94.49 229.125, station 0.75, serves 12.375: main/N/rafter@191.25 1G/upper plate@0
1G-24-RP at 168 94.49 229.125, station 24, serves 23.625: main/N/rafter@168 1G/upper plate@0
1G-48-RP at 144 94.49 229.125, station 48, serves 24: main/N/rafter@144 1G/upper plate@0
1G-72-RP at 120 94.49 229.125, station 72, serves 24: main/N/rafter@120 1G/upper plate@0
1G-96-RP at 96 94.49 229.125, station 96, serves 24: main/N/rafter@96 1G/upper plate@0
1G-120-RP at 72 94.49 229.125, station 120, serves 24: main/N/rafter@72 1G/upper plate@0
1G-144-RP at 48 94.49 229.125, station 144, serves 24: main/N/rafter@48 1G/upper plate@0
1G-168-RP at 24 94.49 229.125, station 168, serves 23.625: main/N/rafter@24 1G/upper plate@0
1G-191-RP at 0.75 94.49 229.125, station 191.25, serves 12.375: main/N/rafter@0.75 1G/upper plate@0
1H-6-GT at 2.75 89.75 231.547, station 6.25, serves 11.125: main/N/rafter@0.75 1H/upper plate@5.5 1H/post@6.25
1H-16-GT at 2.75 80 238.859, station 16, serves 12.875: main/N/rafter@0.75 1H/upper plate@5.5 1H/stud@16
1H-32-GT at 2.75 64 250.859, station 32, serves 16: main/N/rafter@0.75 1H/upper plate@5.5 1H/stud@32
1H-64-GT at 2.75 32 250.859, station 64, serves 16: main/S/rafter@0.75 1H/upper plate@48 1H/stud@64
1H-80-GT at 2.75 16 238.859, station 80, serves 13.125: main/S/rafter@0.75 1H/upper plate@48 1H/stud@80
1H-90-GT at 2.75 5.75 231.172, station 90.25, serves 7.625: main/S/rafter@0.75 1H/upper plate@48 1H/post@90.25
1H-95-GT at 2.75 0.75 227.422, station 95.25, serves 3.25: main/S/rafter@0.75 1H/upper plate@48 1H/post@95.25
main-1-RR at 0.75 48 271.359, station 0.75, serves 23.625: main/S/rafter@0.75 main/N/rafter@0.75 main/ridge@-2
main-24-RR at 24 48 271.359, station 24, serves 23.625: main/S/rafter@24 main/N/rafter@24 main/ridge@-2
main-48-RR at 48 48 271.359, station 48, serves 24: main/S/rafter@48 main/N/rafter@48 main/ridge@-2
main-72-RR at 72 48 271.359, station 72, serves 24: main/S/rafter@72 main/N/rafter@72 main/ridge@-2
main-96-RR at 96 48 271.359, station 96, serves 24: main/S/rafter@96 main/N/rafter@96 main/ridge@-2
main-96b-RR at 96 48 271.359, station 96, serves 24: main/valley@36 main/ridge@-2
main-120-RR at 120 48 271.359, station 120, serves 24: main/S/rafter@120 main/N/rafter@120 main/ridge@-2
main-144-RR at 144 48 271.359, station 144, serves 24: main/S/rafter@144 main/N/rafter@144 main/ridge@-2
main-168-RR at 168 48 271.359, station 168, serves 23.625: main/S/rafter@168 main/N/rafter@168 main/ridge@-2
main-191-RR at 191.25 48 271.359, station 191.25, serves 23.625: main/S/rafter@191.25 main/N/rafter@191.25 main/ridge@-2
main/valleySW-35-RR at 61.061 12 245.717, station 34.691, serves 20.485: wing/W/rafter@72 main/valley@36
main/valleySW-52-RR at 72 25.061 254.717, station 51.662, serves 20.485: main/S/rafter@72 main/valley@36
wing-1-RR at 84 -59.25 262.359, station 0.75, serves 23.625: wing/E/rafter@0.75 wing/W/rafter@0.75 wing/ridge@-2
wing-24-RR at 84 -36 262.359, station 24, serves 23.625: wing/E/rafter@24 wing/W/rafter@24 wing/ridge@-2
wing-48-RR at 84 -12 262.359, station 48, serves 24: wing/E/rafter@48 wing/W/rafter@48 wing/ridge@-2
wing-72-RR at 84 12 262.359, station 72, serves 24: wing/E/rafter@72 wing/W/rafter@72 wing/ridge@-2
wing-96-RR at 84 36 262.359, station 96, serves 24: wing/valley@132 wing/ridge@-2
wing/valleySE-35-RR at 106.939 12 245.717, station 34.691, serves 20.485: wing/E/rafter@72 wing/valley@132
wing/valleySE-52-RR at 96 25.061 254.717, station 51.662, serves 20.485: main/S/rafter@96 wing/valley@132`), roofJoints(h))
	assert.Equal(t, strings.TrimSpace(`
main/S/rafter@0.75 from 0.75 -12, run 60 at 0.75: -2 to 12.375, 14.375 wide
main/S/rafter@24 from 24 -12, run 60 at 0.75: 12.375 to 36, 23.625 wide
main/S/rafter@48 from 48 1.061, run 46.939 at 0.75: 36 to 60, 24.542 wide
main/S/rafter@72 from 72 25.061, run 22.939 at 0.75: 60 to 84, 25.11 wide
main/S/rafter@96 from 96 25.061, run 22.939 at 0.75: 84 to 108, 25.11 wide
main/S/rafter@120 from 120 1.061, run 46.939 at 0.75: 108 to 132, 24.542 wide
main/S/rafter@144 from 144 -12, run 60 at 0.75: 132 to 156, 24 wide
main/S/rafter@168 from 168 -12, run 60 at 0.75: 156 to 179.625, 23.625 wide
main/S/rafter@191.25 from 191.25 -12, run 60 at 0.75: 179.625 to 194, 14.375 wide
main/N/rafter@0.75 from 0.75 108, run 60 at 0.75: -2 to 12.375, 14.375 wide
main/N/rafter@24 from 24 108, run 60 at 0.75: 12.375 to 36, 23.625 wide
main/N/rafter@48 from 48 108, run 60 at 0.75: 36 to 60, 24 wide
main/N/rafter@72 from 72 108, run 60 at 0.75: 60 to 84, 24 wide
main/N/rafter@96 from 96 108, run 60 at 0.75: 84 to 108, 24 wide
main/N/rafter@120 from 120 108, run 60 at 0.75: 108 to 132, 24 wide
main/N/rafter@144 from 144 108, run 60 at 0.75: 132 to 156, 24 wide
main/N/rafter@168 from 168 108, run 60 at 0.75: 156 to 179.625, 23.625 wide
main/N/rafter@191.25 from 191.25 108, run 60 at 0.75: 179.625 to 194, 14.375 wide
wing/E/rafter@0.75 from 132 -59.25, run 48 at 0.75: -62 to -47.625, 14.375 wide
wing/E/rafter@24 from 132 -36, run 48 at 0.75: -47.625 to -24, 23.625 wide
wing/E/rafter@48 from 130.939 -12, run 46.939 at 0.75: -24 to 0, 23.008 wide
wing/E/rafter@72 from 106.939 12, run 22.939 at 0.75: 0 to 36, 28.248 wide
wing/W/rafter@0.75 from 36 -59.25, run 48 at 0.75: -62 to -47.625, 14.375 wide
wing/W/rafter@24 from 36 -36, run 48 at 0.75: -47.625 to -24, 23.625 wide
wing/W/rafter@48 from 37.061 -12, run 46.939 at 0.75: -24 to 0, 23.008 wide
wing/W/rafter@72 from 61.061 12, run 22.939 at 0.75: 0 to 36, 28.248 wide`), roofShares(h))
}
