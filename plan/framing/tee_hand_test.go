package framing

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"galewright/plan"
	"galewright/plan/geom"
)

// The L of ell in trusses of 2x4, whose wing runs into the main roof: every truss stands as if its
// roof were alone, and frames fill the space over the main roof. Trusses have no seat: over the face
// the roof is at 229.125 + 3.5 x 5/4 = 233.5, at the eave 224.5, at the main peak 269.5 and the
// wing's 260.5. Of two top chords and a bottom chord each has 1.5 x 60 x 4.375 = 393.75 twice and
// 96 less two corners of 3.5 x 4.667/2 under the chords, 1.5 x 3.5 x 91.333 = 479.5: 1267. The tails
// at 48 ... 120 that lie under the wing are cut off at y = 0: 315 of 393.75; where the valley
// comes up at 48 and 120 a corner of 0.75²/2 x 4.375 = 1.23 more.
//
// Gable trusses at the main roof's ends are dropped by an outlooker's 1.5: 1.875 plumb, to 231.625 at
// the face; 14 - 0.75 out stands the fly rafter, its outlookers reach in to the side of the truss at
// 24. Their chords bear on the plates, which take them at 229.125. Studs, 3.5 wide at 24, 48, 72, run
// from the bottom chord up to under the chords: 1.5 x 3.5 x 12.625 at 24 in its middle, 29.97 at 48,
// where the two chords cut it like a roof.
//
// The frame 72 from the wing's south face is at y = 12, over main's plane at 233.5 + 3/4 y: from 48 + y
// to 120 - y, 49.5 at its outer side, y = 11.25, up to the wing's peak, (36 - y)² x 3/4 of it; hollow,
// 4.375 in from each side: (24.333 - y)² x 3/4. From 11.25 to 12.75 that is 648.20 - 171.32.
//
// Joints are over the middle of the walls, 2.75 in; M carries the two that the south wall does not. A
// gable truss of the wing is tied to 1B and 1D at its ends and to 1C's studs between, those under its
// bottom chord; main's truss at 48 lies over the end of 1B.
//
// Shares: each truss 24, the outer ones to the rake's edge: 14 + 12.375. South, the wing's valley comes up
// from x = 36 and 132 as far as it goes in: those at 48 and 120 have 24 x 60 less 24²/2 = 1152 over 60, those
// at 72 and 96, whose tails the wing covers, 24 x 60 less 24 x 36 = 576; the frame stands on these two, 12.75
// and 36.75 from its end, and brings them what is over it. The wing's at 48 have 12 x 48 + 12 x 42 over 48, the frame 36²/2 over
// its run of 24.75.
func TestATeeOfTrussesByHand(t *testing.T) {
	p := ell()
	for _, w := range p.Walls {
		w.Top = plan.PlateTop
	}
	wall(p, "M", 0, geom.Vec2{X: 53.5}, geom.Vec2{X: 114.5}).Bearing = true
	for _, r := range p.Roofs {
		r.Trusses, r.GableEnd, r.Rafters = true, [2]plan.GableEnd{plan.TrussEnd, plan.TrussEnd}, twoByFour
	}
	p.Roofs[0].Rake = 14
	h := roofed(t, p)
	assert.Equal(t, strings.TrimSpace(`
main/S/outlooker@204.5/0, 2x4 : 168.75 1.4 234.55 to 204.5 1.4 234.55, 232.3 to 235.6 high, 35.75 long, 187.688 in³
main/S/outlooker@204.5/24, 2x4 : 168.75 25.4 252.55 to 204.5 25.4 252.55, 250.3 to 253.6 high, 35.75 long, 187.688 in³
main/S/fly@205.25, 2x4 : 205.25 -12 224.5 to 205.25 48 269.5, 220.125 to 269.5 high, 77.625 long, 393.75 in³
main/N/outlooker@204.5/-96, 2x4 : 168.75 94.6 234.55 to 204.5 94.6 234.55, 232.3 to 235.6 high, 35.75 long, 187.688 in³
main/N/outlooker@204.5/-72, 2x4 : 168.75 70.6 252.55 to 204.5 70.6 252.55, 250.3 to 253.6 high, 35.75 long, 187.688 in³
main/N/fly@205.25, 2x4 : 205.25 108 224.5 to 205.25 48 269.5, 220.125 to 269.5 high, 77.625 long, 393.75 in³
main/S/outlooker@-12.5/0, 2x4 : 23.25 1.4 234.55 to -12.5 1.4 234.55, 232.3 to 235.6 high, 35.75 long, 187.688 in³
main/S/outlooker@-12.5/24, 2x4 : 23.25 25.4 252.55 to -12.5 25.4 252.55, 250.3 to 253.6 high, 35.75 long, 187.688 in³
main/S/fly@-13.25, 2x4 : -13.25 -12 224.5 to -13.25 48 269.5, 220.125 to 269.5 high, 77.625 long, 393.75 in³
main/N/outlooker@-12.5/-96, 2x4 : 23.25 94.6 234.55 to -12.5 94.6 234.55, 232.3 to 235.6 high, 35.75 long, 187.688 in³
main/N/outlooker@-12.5/-72, 2x4 : 23.25 70.6 252.55 to -12.5 70.6 252.55, 250.3 to 253.6 high, 35.75 long, 187.688 in³
main/N/fly@-13.25, 2x4 : -13.25 108 224.5 to -13.25 48 269.5, 220.125 to 269.5 high, 77.625 long, 393.75 in³
main/truss@191.25, 2x4 1: 191.25 -12 222.625 to 191.25 108 222.625, 218.25 to 267.625 high, 96 long, 1523.617 in³
main/truss@0.75, 2x4 2: 0.75 -12 222.625 to 0.75 108 222.625, 218.25 to 267.625 high, 96 long, 1523.617 in³
wing/truss@0.75, 2x4 3: 132 -59.25 224.5 to 36 -59.25 224.5, 220.125 to 260.5 high, 72 long, 1135.75 in³
main/truss@24, 2x4 4: 24 -12 224.5 to 24 108 224.5, 220.125 to 269.5 high, 96 long, 1267 in³
main/truss@48, 2x4 5: 48 -12 224.5 to 48 108 224.5, 220.125 to 269.5 high, 96 long, 1187.02 in³
main/truss@72, 2x4 6: 72 -12 224.5 to 72 108 224.5, 220.125 to 269.5 high, 96 long, 1188.25 in³
main/truss@96, 2x4 7: 96 -12 224.5 to 96 108 224.5, 220.125 to 269.5 high, 96 long, 1188.25 in³
main/truss@120, 2x4 8: 120 -12 224.5 to 120 108 224.5, 220.125 to 269.5 high, 96 long, 1187.02 in³
main/truss@144, 2x4 9: 144 -12 224.5 to 144 108 224.5, 220.125 to 269.5 high, 96 long, 1267 in³
main/truss@168, 2x4 10: 168 -12 224.5 to 168 108 224.5, 220.125 to 269.5 high, 96 long, 1267 in³
wing/truss@24, 2x4 11: 132 -36 224.5 to 36 -36 224.5, 220.125 to 260.5 high, 72 long, 983.5 in³
wing/truss@48, 2x4 12: 132 -12 224.5 to 36 -12 224.5, 220.125 to 260.5 high, 72 long, 981.039 in³
wing/valley frame@72, 2x4 13: 108.75 12 241.938 to 59.25 12 241.938, 241.938 to 260.5 high, 49.5 long, 476.875 in³`), roofMembers(h))
	assert.Equal(t, strings.TrimSpace(`
0 -12 218.25 to 1.5 0 231.625, 78.75 in³
0 2.5 229.125 to 1.5 48 267.625, 298.594 in³
0 0 229.125 to 1.5 2.5 233.5, 12.891 in³
0 96 218.25 to 1.5 108 231.625, 78.75 in³
0 48 229.125 to 1.5 93.5 267.625, 298.594 in³
0 93.5 229.125 to 1.5 96 233.5, 12.891 in³
0 2.5 229.125 to 1.5 93.5 232.625, 453.25 in³
0 22.25 232.625 to 1.5 25.75 246.563, 66.281 in³
0 46.25 232.625 to 1.5 49.75 263.25, 157.336 in³
0 70.25 232.625 to 1.5 73.75 246.563, 66.281 in³`), solids(byID(t, h, "main/truss@0.75")))
	assert.Equal(t, strings.TrimSpace(`
47.25 0 229.125 to 48.75 48 269.5, 313.77 in³
47.25 48 220.125 to 48.75 108 269.5, 393.75 in³
47.25 0 229.125 to 48.75 96 232.625, 479.5 in³`), solids(byID(t, h, "main/truss@48")))
	assert.Equal(t, strings.TrimSpace(`
59.25 11.25 241.938 to 86.917 12.75 260.5, 147.93 in³
84 11.25 241.938 to 108.75 12.75 258.313, 128.789 in³
65.083 11.25 241.938 to 102.917 12.75 247.438, 200.156 in³`), solids(byID(t, h, "wing/valley frame@72")))
	assert.Equal(t, strings.TrimSpace(`
1A-1-RP at 0.75 2.75 229.125, station 0.75, serves 12.375: main/truss@0.75 1A/upper plate@0
1A-24-RP at 24 2.75 229.125, station 24, serves 23.625: main/truss@24 1A/upper plate@0
1A-48-RP at 48 2.75 229.125, station 48, serves 12: main/truss@48 1A/upper plate@0
1B-6-GT at 50.75 -0.25 229.125, station 5.75, serves 10.375: main/truss@48 1B/upper plate@5.5 1B/post@5.75
1B-18-RP at 50.75 -12 229.125, station 17.5, serves 24: wing/truss@48 1B/upper plate@5.5
1B-42-RP at 50.75 -36 229.125, station 41.5, serves 23.625: wing/truss@24 1B/upper plate@5.5
1B-65-RP at 50.75 -59.25 229.125, station 64.75, serves 12.375: wing/truss@0.75 1B/upper plate@5.5
1C-6-GT at 53.75 -57.25 229.125, station 5.75, serves 7.625: wing/truss@0.75 1C/upper plate@5.5 1C/post@5.75
1C-16-GT at 64 -57.25 229.125, station 16, serves 13.125: wing/truss@0.75 1C/upper plate@5.5 1C/stud@16
1C-32-GT at 80 -57.25 229.125, station 32, serves 16: wing/truss@0.75 1C/upper plate@5.5 1C/stud@32
1C-48-GT at 96 -57.25 229.125, station 48, serves 16: wing/truss@0.75 1C/upper plate@5.5 1C/stud@48
1C-64-GT at 112 -57.25 229.125, station 64, serves 9.125: wing/truss@0.75 1C/upper plate@5.5 1C/stud@64
1C-66-GT at 114.25 -57.25 229.125, station 66.25, serves 3.625: wing/truss@0.75 1C/upper plate@5.5 1C/post@66.25
1D-1-RP at 117.25 -59.25 229.125, station 0.75, serves 12.375: wing/truss@0.75 1D/upper plate@0
1D-24-RP at 117.25 -36 229.125, station 24, serves 23.625: wing/truss@24 1D/upper plate@0
1D-48-RP at 117.25 -12 229.125, station 48, serves 24: wing/truss@48 1D/upper plate@0
1E-6-RP at 120 2.75 229.125, station 5.5, serves 12: main/truss@120 1E/upper plate@5.5
1E-30-RP at 144 2.75 229.125, station 29.5, serves 24: main/truss@144 1E/upper plate@5.5
1E-54-RP at 168 2.75 229.125, station 53.5, serves 23.625: main/truss@168 1E/upper plate@5.5
1E-77-RP at 191.25 2.75 229.125, station 76.75, serves 12.375: main/truss@191.25 1E/upper plate@5.5
1F-6-GT at 189.25 5.75 229.125, station 5.75, serves 7.625: main/truss@191.25 1F/upper plate@5.5 1F/post@5.75
1F-16-GT at 189.25 16 229.125, station 16, serves 13.125: main/truss@191.25 1F/upper plate@5.5 1F/stud@16
1F-32-GT at 189.25 32 229.125, station 32, serves 16: main/truss@191.25 1F/upper plate@5.5 1F/stud@32
1F-48-GT at 189.25 48 229.125, station 48, serves 16: main/truss@191.25 1F/upper plate@5.5 1F/stud@48
1F-64-GT at 189.25 64 229.125, station 64, serves 16: main/truss@191.25 1F/upper plate@5.5 1F/stud@64
1F-80-GT at 189.25 80 229.125, station 80, serves 12.875: main/truss@191.25 1F/upper plate@5.5 1F/stud@80
1F-90-GT at 189.25 89.75 229.125, station 89.75, serves 11.125: main/truss@191.25 1F/upper plate@5.5 1F/post@89.75
1G-1-RP at 191.25 93.25 229.125, station 0.75, serves 12.375: main/truss@191.25 1G/top plate@0
1G-24-RP at 168 93.25 229.125, station 24, serves 23.625: main/truss@168 1G/upper plate@5.5
1G-48-RP at 144 93.25 229.125, station 48, serves 24: main/truss@144 1G/upper plate@5.5
1G-72-RP at 120 93.25 229.125, station 72, serves 24: main/truss@120 1G/upper plate@5.5
1G-96-RP at 96 93.25 229.125, station 96, serves 24: main/truss@96 1G/upper plate@5.5
1G-120-RP at 72 93.25 229.125, station 120, serves 24: main/truss@72 1G/upper plate@5.5
1G-144-RP at 48 93.25 229.125, station 144, serves 24: main/truss@48 1G/upper plate@5.5
1G-168-RP at 24 93.25 229.125, station 168, serves 23.625: main/truss@24 1G/upper plate@5.5
1G-191-RP at 0.75 93.25 229.125, station 191.25, serves 12.375: main/truss@0.75 1G/top plate@0
1H-6-GT at 2.75 89.75 229.125, station 6.25, serves 11.125: main/truss@0.75 1H/upper plate@0 1H/post@6.25
1H-16-GT at 2.75 80 229.125, station 16, serves 12.875: main/truss@0.75 1H/upper plate@0 1H/stud@16
1H-32-GT at 2.75 64 229.125, station 32, serves 16: main/truss@0.75 1H/upper plate@0 1H/stud@32
1H-48-GT at 2.75 48 229.125, station 48, serves 16: main/truss@0.75 1H/upper plate@0 1H/stud@48
1H-64-GT at 2.75 32 229.125, station 64, serves 16: main/truss@0.75 1H/upper plate@0 1H/stud@64
1H-80-GT at 2.75 16 229.125, station 80, serves 13.125: main/truss@0.75 1H/upper plate@0 1H/stud@80
1H-90-GT at 2.75 5.75 229.125, station 90.25, serves 7.625: main/truss@0.75 1H/upper plate@0 1H/post@90.25
M-19-RP at 72 2.75 229.125, station 18.5, serves 24: main/truss@72 M/upper plate@0
M-43-RP at 96 2.75 229.125, station 42.5, serves 24: main/truss@96 M/upper plate@0
main/rakeNE-1-FO at 204.5 94.15 233.95, station 1.4, serves 25.4: main/N/fly@205.25 main/N/outlooker@204.5/-96; 14.75 out, 23.25 back
main/rakeNE-1-OG at 191.25 94.15 233.95, station 1.4, serves 25.4: main/N/outlooker@204.5/-96 main/truss@191.25; 14.75 out, 23.25 back
main/rakeNE-1-OR at 168.75 94.15 233.95, station 1.4, serves 25.4: main/N/outlooker@204.5/-96 main/truss@168; 14.75 out, 23.25 back
main/rakeNE-25-FO at 204.5 70.15 251.95, station 25.4, serves 34.6: main/N/fly@205.25 main/N/outlooker@204.5/-72; 14.75 out, 23.25 back
main/rakeNE-25-OG at 191.25 70.15 251.95, station 25.4, serves 34.6: main/N/outlooker@204.5/-72 main/truss@191.25; 14.75 out, 23.25 back
main/rakeNE-25-OR at 168.75 70.15 251.95, station 25.4, serves 34.6: main/N/outlooker@204.5/-72 main/truss@168; 14.75 out, 23.25 back
main/rakeNW-1-FO at -12.5 94.15 233.95, station 1.4, serves 25.4: main/N/fly@-13.25 main/N/outlooker@-12.5/-96; 14.75 out, 23.25 back
main/rakeNW-1-OG at 0.75 94.15 233.95, station 1.4, serves 25.4: main/N/outlooker@-12.5/-96 main/truss@0.75; 14.75 out, 23.25 back
main/rakeNW-1-OR at 23.25 94.15 233.95, station 1.4, serves 25.4: main/N/outlooker@-12.5/-96 main/truss@24; 14.75 out, 23.25 back
main/rakeNW-25-FO at -12.5 70.15 251.95, station 25.4, serves 34.6: main/N/fly@-13.25 main/N/outlooker@-12.5/-72; 14.75 out, 23.25 back
main/rakeNW-25-OG at 0.75 70.15 251.95, station 25.4, serves 34.6: main/N/outlooker@-12.5/-72 main/truss@0.75; 14.75 out, 23.25 back
main/rakeNW-25-OR at 23.25 70.15 251.95, station 25.4, serves 34.6: main/N/outlooker@-12.5/-72 main/truss@24; 14.75 out, 23.25 back
main/rakeSE-1-FO at 204.5 1.85 233.95, station 1.4, serves 25.4: main/S/fly@205.25 main/S/outlooker@204.5/0; 14.75 out, 23.25 back
main/rakeSE-1-OG at 191.25 1.85 233.95, station 1.4, serves 25.4: main/S/outlooker@204.5/0 main/truss@191.25; 14.75 out, 23.25 back
main/rakeSE-1-OR at 168.75 1.85 233.95, station 1.4, serves 25.4: main/S/outlooker@204.5/0 main/truss@168; 14.75 out, 23.25 back
main/rakeSE-25-FO at 204.5 25.85 251.95, station 25.4, serves 34.6: main/S/fly@205.25 main/S/outlooker@204.5/24; 14.75 out, 23.25 back
main/rakeSE-25-OG at 191.25 25.85 251.95, station 25.4, serves 34.6: main/S/outlooker@204.5/24 main/truss@191.25; 14.75 out, 23.25 back
main/rakeSE-25-OR at 168.75 25.85 251.95, station 25.4, serves 34.6: main/S/outlooker@204.5/24 main/truss@168; 14.75 out, 23.25 back
main/rakeSW-1-FO at -12.5 1.85 233.95, station 1.4, serves 25.4: main/S/fly@-13.25 main/S/outlooker@-12.5/0; 14.75 out, 23.25 back
main/rakeSW-1-OG at 0.75 1.85 233.95, station 1.4, serves 25.4: main/S/outlooker@-12.5/0 main/truss@0.75; 14.75 out, 23.25 back
main/rakeSW-1-OR at 23.25 1.85 233.95, station 1.4, serves 25.4: main/S/outlooker@-12.5/0 main/truss@24; 14.75 out, 23.25 back
main/rakeSW-25-FO at -12.5 25.85 251.95, station 25.4, serves 34.6: main/S/fly@-13.25 main/S/outlooker@-12.5/24; 14.75 out, 23.25 back
main/rakeSW-25-OG at 0.75 25.85 251.95, station 25.4, serves 34.6: main/S/outlooker@-12.5/24 main/truss@0.75; 14.75 out, 23.25 back
main/rakeSW-25-OR at 23.25 25.85 251.95, station 25.4, serves 34.6: main/S/outlooker@-12.5/24 main/truss@24; 14.75 out, 23.25 back
wing/frame72-13-VT at 96 12 242.5, station 12.75, serves 24: wing/valley frame@72 main/truss@96
wing/frame72-37-VT at 72 12 242.5, station 36.75, serves 24: wing/valley frame@72 main/truss@72`), roofJoints(h))
	assert.Equal(t, strings.TrimSpace(`
main/truss@191.25 from 191.25 -12, run 60 at 0.75: 179.625 to 206, 26.375 wide
main/truss@191.25 from 191.25 108, run 60 at 0.75: 179.625 to 206, 26.375 wide
main/truss@0.75 from 0.75 -12, run 60 at 0.75: -14 to 12.375, 26.375 wide
main/truss@0.75 from 0.75 108, run 60 at 0.75: -14 to 12.375, 26.375 wide
wing/truss@0.75 from 132 -59.25, run 48 at 0.75: -62 to -47.625, 14.375 wide
wing/truss@0.75 from 36 -59.25, run 48 at 0.75: -62 to -47.625, 14.375 wide
main/truss@24 from 24 -12, run 60 at 0.75: 12.375 to 36, 23.625 wide
main/truss@24 from 24 108, run 60 at 0.75: 12.375 to 36, 23.625 wide
main/truss@48 from 48 -12, run 60 at 0.75: 36 to 60, 19.2 wide
main/truss@48 from 48 108, run 60 at 0.75: 36 to 60, 24 wide
main/truss@72 from 72 -12, run 60 at 0.75: 60 to 84, 9.6 wide
main/truss@72 from 72 108, run 60 at 0.75: 60 to 84, 24 wide
main/truss@96 from 96 -12, run 60 at 0.75: 84 to 108, 9.6 wide
main/truss@96 from 96 108, run 60 at 0.75: 84 to 108, 24 wide
main/truss@120 from 120 -12, run 60 at 0.75: 108 to 132, 19.2 wide
main/truss@120 from 120 108, run 60 at 0.75: 108 to 132, 24 wide
main/truss@144 from 144 -12, run 60 at 0.75: 132 to 156, 24 wide
main/truss@144 from 144 108, run 60 at 0.75: 132 to 156, 24 wide
main/truss@168 from 168 -12, run 60 at 0.75: 156 to 179.625, 23.625 wide
main/truss@168 from 168 108, run 60 at 0.75: 156 to 179.625, 23.625 wide
wing/truss@24 from 132 -36, run 48 at 0.75: -47.625 to -24, 23.625 wide
wing/truss@24 from 36 -36, run 48 at 0.75: -47.625 to -24, 23.625 wide
wing/truss@48 from 132 -12, run 48 at 0.75: -24 to 0, 22.5 wide
wing/truss@48 from 36 -12, run 48 at 0.75: -24 to 0, 22.5 wide
wing/valley frame@72 from 108.75 12, run 24.75 at 0.75: 0 to 36, 26.182 wide
wing/valley frame@72 from 59.25 12, run 24.75 at 0.75: 0 to 36, 26.182 wide`), roofShares(h))
}
