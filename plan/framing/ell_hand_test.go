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
main/ridge@-2, 2x10 : -2.000 48.000 271.359 to 194.000 48.000 271.359, 262.109 to 271.359 high, 196.000 long, 2702.62 in³
wing/ridge@-2, 2x10 : 84.000 -62.000 262.359 to 84.000 34.939 262.359, 253.109 to 262.359 high, 97.689 long, 1336.60 in³
main/valley@36, 2x10 1: 36.000 -12.000 226.524 to 95.250 47.250 270.962, 216.054 to 271.359 high, 100.601 long, 1287.75 in³
wing/valley@132, 2x10 2: 132.000 -12.000 226.922 to 84.750 35.250 262.359, 216.452 to 262.524 high, 80.894 long, 1025.01 in³
main/S/rafter@0.75, 2x8 3: 0.750 -12.000 226.922 to 0.750 47.250 271.359, 217.859 to 271.359 high, 79.500 long, 805.43 in³
main/S/rafter@24, 2x8 4: 24.000 -12.000 226.922 to 24.000 47.250 271.359, 217.859 to 271.359 high, 79.500 long, 800.30 in³
main/S/rafter@48, 2x8 5: 48.000 1.061 236.717 to 48.000 47.250 271.359, 229.125 to 271.359 high, 62.892 long, 625.62 in³
main/S/rafter@72, 2x8 6: 72.000 25.061 254.717 to 72.000 47.250 271.359, 245.092 to 271.359 high, 34.112 long, 301.64 in³
main/S/rafter@96, 2x8 7: 96.000 25.061 254.717 to 96.000 46.939 271.126, 245.092 to 271.359 high, 34.112 long, 296.54 in³
main/S/rafter@120, 2x8 8: 120.000 1.061 236.717 to 120.000 47.250 271.359, 229.125 to 271.359 high, 62.892 long, 625.62 in³
main/S/rafter@144, 2x8 9: 144.000 -12.000 226.922 to 144.000 47.250 271.359, 217.859 to 271.359 high, 79.500 long, 800.30 in³
main/S/rafter@168, 2x8 10: 168.000 -12.000 226.922 to 168.000 47.250 271.359, 217.859 to 271.359 high, 79.500 long, 800.30 in³
main/S/rafter@191.25, 2x8 11: 191.250 -12.000 226.922 to 191.250 47.250 271.359, 217.859 to 271.359 high, 79.500 long, 805.43 in³
main/N/rafter@0.75, 2x8 12: 0.750 108.000 226.922 to 0.750 48.750 271.359, 217.859 to 271.359 high, 79.500 long, 800.30 in³
main/N/rafter@24, 2x8 13: 24.000 108.000 226.922 to 24.000 48.750 271.359, 217.859 to 271.359 high, 79.500 long, 800.30 in³
main/N/rafter@48, 2x8 14: 48.000 108.000 226.922 to 48.000 48.750 271.359, 217.859 to 271.359 high, 79.500 long, 800.30 in³
main/N/rafter@72, 2x8 15: 72.000 108.000 226.922 to 72.000 48.750 271.359, 217.859 to 271.359 high, 79.500 long, 800.30 in³
main/N/rafter@96, 2x8 16: 96.000 108.000 226.922 to 96.000 48.750 271.359, 217.859 to 271.359 high, 79.500 long, 800.30 in³
main/N/rafter@120, 2x8 17: 120.000 108.000 226.922 to 120.000 48.750 271.359, 217.859 to 271.359 high, 79.500 long, 800.30 in³
main/N/rafter@144, 2x8 18: 144.000 108.000 226.922 to 144.000 48.750 271.359, 217.859 to 271.359 high, 79.500 long, 800.30 in³
main/N/rafter@168, 2x8 19: 168.000 108.000 226.922 to 168.000 48.750 271.359, 217.859 to 271.359 high, 79.500 long, 800.30 in³
main/N/rafter@191.25, 2x8 20: 191.250 108.000 226.922 to 191.250 48.750 271.359, 217.859 to 271.359 high, 79.500 long, 800.30 in³
wing/E/rafter@0.75, 2x8 21: 132.000 -59.250 226.922 to 84.750 -59.250 262.359, 217.859 to 262.359 high, 64.500 long, 642.30 in³
wing/E/rafter@24, 2x8 22: 132.000 -36.000 226.922 to 84.750 -36.000 262.359, 217.859 to 262.359 high, 64.500 long, 637.17 in³
wing/E/rafter@48, 2x8 23: 130.939 -12.000 227.717 to 84.750 -12.000 262.359, 218.092 to 262.359 high, 64.112 long, 622.75 in³
wing/E/rafter@72, 2x8 24: 106.939 12.000 245.717 to 84.750 12.000 262.359, 236.092 to 262.359 high, 34.112 long, 301.64 in³
wing/W/rafter@0.75, 2x8 25: 36.000 -59.250 226.922 to 83.250 -59.250 262.359, 217.859 to 262.359 high, 64.500 long, 642.30 in³
wing/W/rafter@24, 2x8 26: 36.000 -36.000 226.922 to 83.250 -36.000 262.359, 217.859 to 262.359 high, 64.500 long, 637.17 in³
wing/W/rafter@48, 2x8 27: 37.061 -12.000 227.717 to 83.250 -12.000 262.359, 218.092 to 262.359 high, 64.112 long, 622.75 in³
wing/W/rafter@72, 2x8 28: 61.061 12.000 245.717 to 83.250 12.000 262.359, 236.092 to 262.359 high, 34.112 long, 301.64 in³
main/tie@25.5, 2x6 : 25.500 0.000 234.625 to 25.500 96.000 234.625, 229.125 to 234.625 high, 96.000 long, 792.00 in³
main/tie@142.5, 2x6 : 142.500 0.000 234.625 to 142.500 96.000 234.625, 229.125 to 234.625 high, 96.000 long, 792.00 in³
main/tie@166.5, 2x6 : 166.500 0.000 234.625 to 166.500 96.000 234.625, 229.125 to 234.625 high, 96.000 long, 792.00 in³
wing/tie@25.5, 2x6 : 120.000 -34.500 234.625 to 48.000 -34.500 234.625, 229.125 to 234.625 high, 72.000 long, 594.00 in³
wing/tie@46.5, 2x6 : 120.000 -13.500 234.625 to 48.000 -13.500 234.625, 229.125 to 234.625 high, 72.000 long, 594.00 in³`), roofMembers(h))
	assert.Equal(t, strings.TrimSpace(`
1A-1-RP at 0.750 0.000 229.125, station 0.750, serves 12.375: main/S/rafter@0.75 1H/upper plate@48
1A-24-RP at 24.000 1.510 229.125, station 24.000, serves 23.625: main/S/rafter@24 1A/upper plate@5.5
1A-48-RP at 50.449 2.449 229.125, station 48.000, serves 12.000: main/valley@36 1A/upper plate@5.5
1A-48b-RP at 48.000 1.666 229.125, station 48.000, serves 12.000: main/S/rafter@48 1A/upper plate@5.5
1B-18-RP at 49.510 -12.000 229.125, station 17.500, serves 24.000: wing/W/rafter@48 1B/upper plate@5.5
1B-42-RP at 49.510 -36.000 229.125, station 41.500, serves 23.625: wing/W/rafter@24 1B/upper plate@5.5
1B-65-RP at 48.000 -59.250 229.125, station 64.750, serves 12.375: wing/W/rafter@0.75 1C/upper plate@0
1C-1-GT at 48.750 -57.250 227.422, station 0.750, serves 3.250: wing/W/rafter@0.75 1C/upper plate@0 1C/post@0.75
1C-6-GT at 53.750 -57.250 231.172, station 5.750, serves 7.625: wing/W/rafter@0.75 1C/upper plate@0 1C/post@5.75
1C-16-GT at 64.000 -57.250 238.859, station 16.000, serves 13.125: wing/W/rafter@0.75 1C/upper plate@0 1C/stud@16
1C-32-GT at 80.000 -57.250 250.859, station 32.000, serves 16.000: wing/W/rafter@0.75 1C/upper plate@0 1C/stud@32
1C-48-GT at 96.000 -57.250 244.859, station 48.000, serves 16.000: wing/E/rafter@0.75 1C/upper plate@36 1C/stud@48
1C-64-GT at 112.000 -57.250 232.859, station 64.000, serves 9.125: wing/E/rafter@0.75 1C/upper plate@36 1C/stud@64
1C-66-GT at 114.250 -57.250 231.172, station 66.250, serves 3.625: wing/E/rafter@0.75 1C/upper plate@36 1C/post@66.25
1C-71-GT at 119.250 -57.250 227.422, station 71.250, serves 3.250: wing/E/rafter@0.75 1C/upper plate@36 1C/post@71.25
1D-1-RP at 120.000 -59.250 229.125, station 0.750, serves 12.375: wing/E/rafter@0.75 1C/upper plate@36
1D-24-RP at 118.490 -36.000 229.125, station 24.000, serves 23.625: wing/E/rafter@24 1D/upper plate@5.5
1D-48-RP at 118.490 -12.000 229.125, station 48.000, serves 18.000: wing/E/rafter@48 1D/upper plate@5.5
1D-60-RP at 117.816 2.184 229.125, station 60.000, serves 6.000: wing/valley@132 1D/upper plate@5.5
1E-6-RP at 120.000 1.666 229.125, station 5.500, serves 12.000: main/S/rafter@120 1E/upper plate@5.5
1E-30-RP at 144.000 1.510 229.125, station 29.500, serves 24.000: main/S/rafter@144 1E/upper plate@5.5
1E-54-RP at 168.000 1.510 229.125, station 53.500, serves 23.625: main/S/rafter@168 1E/upper plate@5.5
1E-77-RP at 191.250 0.000 229.125, station 76.750, serves 12.375: main/S/rafter@191.25 1F/upper plate@0
1F-1-GT at 189.250 0.750 227.422, station 0.750, serves 3.250: main/S/rafter@191.25 1F/upper plate@0 1F/post@0.75
1F-6-GT at 189.250 5.750 231.172, station 5.750, serves 7.625: main/S/rafter@191.25 1F/upper plate@0 1F/post@5.75
1F-16-GT at 189.250 16.000 238.859, station 16.000, serves 13.125: main/S/rafter@191.25 1F/upper plate@0 1F/stud@16
1F-32-GT at 189.250 32.000 250.859, station 32.000, serves 16.000: main/S/rafter@191.25 1F/upper plate@0 1F/stud@32
1F-64-GT at 189.250 64.000 250.859, station 64.000, serves 16.000: main/N/rafter@191.25 1F/upper plate@48 1F/stud@64
1F-80-GT at 189.250 80.000 238.859, station 80.000, serves 12.875: main/N/rafter@191.25 1F/upper plate@48 1F/stud@80
1F-90-GT at 189.250 89.750 231.547, station 89.750, serves 11.125: main/N/rafter@191.25 1F/upper plate@48 1F/post@89.75
1G-1-RP at 191.250 94.490 229.125, station 0.750, serves 12.375: main/N/rafter@191.25 1G/upper plate@0
1G-24-RP at 168.000 94.490 229.125, station 24.000, serves 23.625: main/N/rafter@168 1G/upper plate@0
1G-48-RP at 144.000 94.490 229.125, station 48.000, serves 24.000: main/N/rafter@144 1G/upper plate@0
1G-72-RP at 120.000 94.490 229.125, station 72.000, serves 24.000: main/N/rafter@120 1G/upper plate@0
1G-96-RP at 96.000 94.490 229.125, station 96.000, serves 24.000: main/N/rafter@96 1G/upper plate@0
1G-120-RP at 72.000 94.490 229.125, station 120.000, serves 24.000: main/N/rafter@72 1G/upper plate@0
1G-144-RP at 48.000 94.490 229.125, station 144.000, serves 24.000: main/N/rafter@48 1G/upper plate@0
1G-168-RP at 24.000 94.490 229.125, station 168.000, serves 23.625: main/N/rafter@24 1G/upper plate@0
1G-191-RP at 0.750 94.490 229.125, station 191.250, serves 12.375: main/N/rafter@0.75 1G/upper plate@0
1H-6-GT at 2.750 89.750 231.547, station 6.250, serves 11.125: main/N/rafter@0.75 1H/upper plate@5.5 1H/post@6.25
1H-16-GT at 2.750 80.000 238.859, station 16.000, serves 12.875: main/N/rafter@0.75 1H/upper plate@5.5 1H/stud@16
1H-32-GT at 2.750 64.000 250.859, station 32.000, serves 16.000: main/N/rafter@0.75 1H/upper plate@5.5 1H/stud@32
1H-64-GT at 2.750 32.000 250.859, station 64.000, serves 16.000: main/S/rafter@0.75 1H/upper plate@48 1H/stud@64
1H-80-GT at 2.750 16.000 238.859, station 80.000, serves 13.125: main/S/rafter@0.75 1H/upper plate@48 1H/stud@80
1H-90-GT at 2.750 5.750 231.172, station 90.250, serves 7.625: main/S/rafter@0.75 1H/upper plate@48 1H/post@90.25
1H-95-GT at 2.750 0.750 227.422, station 95.250, serves 3.250: main/S/rafter@0.75 1H/upper plate@48 1H/post@95.25
main-1-RR at 0.750 48.000 271.359, station 0.750, serves 23.625: main/S/rafter@0.75 main/N/rafter@0.75 main/ridge@-2
main-24-RR at 24.000 48.000 271.359, station 24.000, serves 23.625: main/S/rafter@24 main/N/rafter@24 main/ridge@-2
main-48-RR at 48.000 48.000 271.359, station 48.000, serves 24.000: main/S/rafter@48 main/N/rafter@48 main/ridge@-2
main-72-RR at 72.000 48.000 271.359, station 72.000, serves 24.000: main/S/rafter@72 main/N/rafter@72 main/ridge@-2
main-96-RR at 96.000 48.000 271.359, station 96.000, serves 24.000: main/S/rafter@96 main/N/rafter@96 main/ridge@-2
main-96b-RR at 96.000 48.000 271.359, station 96.000, serves 24.000: main/valley@36 main/ridge@-2
main-120-RR at 120.000 48.000 271.359, station 120.000, serves 24.000: main/S/rafter@120 main/N/rafter@120 main/ridge@-2
main-144-RR at 144.000 48.000 271.359, station 144.000, serves 24.000: main/S/rafter@144 main/N/rafter@144 main/ridge@-2
main-168-RR at 168.000 48.000 271.359, station 168.000, serves 23.625: main/S/rafter@168 main/N/rafter@168 main/ridge@-2
main-191-RR at 191.250 48.000 271.359, station 191.250, serves 23.625: main/S/rafter@191.25 main/N/rafter@191.25 main/ridge@-2
main/valleySW-35-RR at 61.061 12.000 245.717, station 34.691, serves 20.485: wing/W/rafter@72 main/valley@36
main/valleySW-52-RR at 72.000 25.061 254.717, station 51.662, serves 20.485: main/S/rafter@72 main/valley@36
wing-1-RR at 84.000 -59.250 262.359, station 0.750, serves 23.625: wing/E/rafter@0.75 wing/W/rafter@0.75 wing/ridge@-2
wing-24-RR at 84.000 -36.000 262.359, station 24.000, serves 23.625: wing/E/rafter@24 wing/W/rafter@24 wing/ridge@-2
wing-48-RR at 84.000 -12.000 262.359, station 48.000, serves 24.000: wing/E/rafter@48 wing/W/rafter@48 wing/ridge@-2
wing-72-RR at 84.000 12.000 262.359, station 72.000, serves 24.000: wing/E/rafter@72 wing/W/rafter@72 wing/ridge@-2
wing-96-RR at 84.000 36.000 262.359, station 96.000, serves 24.000: wing/valley@132 wing/ridge@-2
wing/valleySE-35-RR at 106.939 12.000 245.717, station 34.691, serves 20.485: wing/E/rafter@72 wing/valley@132
wing/valleySE-52-RR at 96.000 25.061 254.717, station 51.662, serves 20.485: main/S/rafter@96 wing/valley@132`), roofJoints(h))
	assert.Equal(t, strings.TrimSpace(`
main/S/rafter@0.75 from 0.750 -12.000, run 60.000 at 0.75: -2.000 to 12.375, 14.375 wide
main/S/rafter@24 from 24.000 -12.000, run 60.000 at 0.75: 12.375 to 36.000, 23.625 wide
main/S/rafter@48 from 48.000 1.061, run 46.939 at 0.75: 36.000 to 60.000, 24.542 wide
main/S/rafter@72 from 72.000 25.061, run 22.939 at 0.75: 60.000 to 84.000, 25.110 wide
main/S/rafter@96 from 96.000 25.061, run 22.939 at 0.75: 84.000 to 108.000, 25.110 wide
main/S/rafter@120 from 120.000 1.061, run 46.939 at 0.75: 108.000 to 132.000, 24.542 wide
main/S/rafter@144 from 144.000 -12.000, run 60.000 at 0.75: 132.000 to 156.000, 24.000 wide
main/S/rafter@168 from 168.000 -12.000, run 60.000 at 0.75: 156.000 to 179.625, 23.625 wide
main/S/rafter@191.25 from 191.250 -12.000, run 60.000 at 0.75: 179.625 to 194.000, 14.375 wide
main/N/rafter@0.75 from 0.750 108.000, run 60.000 at 0.75: -2.000 to 12.375, 14.375 wide
main/N/rafter@24 from 24.000 108.000, run 60.000 at 0.75: 12.375 to 36.000, 23.625 wide
main/N/rafter@48 from 48.000 108.000, run 60.000 at 0.75: 36.000 to 60.000, 24.000 wide
main/N/rafter@72 from 72.000 108.000, run 60.000 at 0.75: 60.000 to 84.000, 24.000 wide
main/N/rafter@96 from 96.000 108.000, run 60.000 at 0.75: 84.000 to 108.000, 24.000 wide
main/N/rafter@120 from 120.000 108.000, run 60.000 at 0.75: 108.000 to 132.000, 24.000 wide
main/N/rafter@144 from 144.000 108.000, run 60.000 at 0.75: 132.000 to 156.000, 24.000 wide
main/N/rafter@168 from 168.000 108.000, run 60.000 at 0.75: 156.000 to 179.625, 23.625 wide
main/N/rafter@191.25 from 191.250 108.000, run 60.000 at 0.75: 179.625 to 194.000, 14.375 wide
wing/E/rafter@0.75 from 132.000 -59.250, run 48.000 at 0.75: -62.000 to -47.625, 14.375 wide
wing/E/rafter@24 from 132.000 -36.000, run 48.000 at 0.75: -47.625 to -24.000, 23.625 wide
wing/E/rafter@48 from 130.939 -12.000, run 46.939 at 0.75: -24.000 to 0.000, 23.008 wide
wing/E/rafter@72 from 106.939 12.000, run 22.939 at 0.75: 0.000 to 36.000, 28.248 wide
wing/W/rafter@0.75 from 36.000 -59.250, run 48.000 at 0.75: -62.000 to -47.625, 14.375 wide
wing/W/rafter@24 from 36.000 -36.000, run 48.000 at 0.75: -47.625 to -24.000, 23.625 wide
wing/W/rafter@48 from 37.061 -12.000, run 46.939 at 0.75: -24.000 to 0.000, 23.008 wide
wing/W/rafter@72 from 61.061 12.000, run 22.939 at 0.75: 0.000 to 36.000, 28.248 wide`), roofShares(h))
}
