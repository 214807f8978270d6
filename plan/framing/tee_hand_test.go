package framing

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"galewright/plan"
	"galewright/plan/geom"
)

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
main/S/outlooker@204.5/0, 2x4 : 168.750 1.400 234.550 to 204.500 1.400 234.550, 232.300 to 235.600 high, 35.750 long, 187.69 in³
main/S/outlooker@204.5/24, 2x4 : 168.750 25.400 252.550 to 204.500 25.400 252.550, 250.300 to 253.600 high, 35.750 long, 187.69 in³
main/S/fly@205.25, 2x4 : 205.250 -12.000 224.500 to 205.250 48.000 269.500, 220.125 to 269.500 high, 77.625 long, 393.75 in³
main/N/outlooker@204.5/-96, 2x4 : 168.750 94.600 234.550 to 204.500 94.600 234.550, 232.300 to 235.600 high, 35.750 long, 187.69 in³
main/N/outlooker@204.5/-72, 2x4 : 168.750 70.600 252.550 to 204.500 70.600 252.550, 250.300 to 253.600 high, 35.750 long, 187.69 in³
main/N/fly@205.25, 2x4 : 205.250 108.000 224.500 to 205.250 48.000 269.500, 220.125 to 269.500 high, 77.625 long, 393.75 in³
main/S/outlooker@-12.5/0, 2x4 : 23.250 1.400 234.550 to -12.500 1.400 234.550, 232.300 to 235.600 high, 35.750 long, 187.69 in³
main/S/outlooker@-12.5/24, 2x4 : 23.250 25.400 252.550 to -12.500 25.400 252.550, 250.300 to 253.600 high, 35.750 long, 187.69 in³
main/S/fly@-13.25, 2x4 : -13.250 -12.000 224.500 to -13.250 48.000 269.500, 220.125 to 269.500 high, 77.625 long, 393.75 in³
main/N/outlooker@-12.5/-96, 2x4 : 23.250 94.600 234.550 to -12.500 94.600 234.550, 232.300 to 235.600 high, 35.750 long, 187.69 in³
main/N/outlooker@-12.5/-72, 2x4 : 23.250 70.600 252.550 to -12.500 70.600 252.550, 250.300 to 253.600 high, 35.750 long, 187.69 in³
main/N/fly@-13.25, 2x4 : -13.250 108.000 224.500 to -13.250 48.000 269.500, 220.125 to 269.500 high, 77.625 long, 393.75 in³
main/truss@191.25, 2x4 1: 191.250 -12.000 222.625 to 191.250 108.000 222.625, 218.250 to 267.625 high, 96.000 long, 1523.62 in³
main/truss@0.75, 2x4 2: 0.750 -12.000 222.625 to 0.750 108.000 222.625, 218.250 to 267.625 high, 96.000 long, 1523.62 in³
wing/truss@0.75, 2x4 3: 132.000 -59.250 224.500 to 36.000 -59.250 224.500, 220.125 to 260.500 high, 72.000 long, 1135.75 in³
main/truss@24, 2x4 4: 24.000 -12.000 224.500 to 24.000 108.000 224.500, 220.125 to 269.500 high, 96.000 long, 1267.00 in³
main/truss@48, 2x4 5: 48.000 -12.000 224.500 to 48.000 108.000 224.500, 220.125 to 269.500 high, 96.000 long, 1187.02 in³
main/truss@72, 2x4 6: 72.000 -12.000 224.500 to 72.000 108.000 224.500, 220.125 to 269.500 high, 96.000 long, 1188.25 in³
main/truss@96, 2x4 7: 96.000 -12.000 224.500 to 96.000 108.000 224.500, 220.125 to 269.500 high, 96.000 long, 1188.25 in³
main/truss@120, 2x4 8: 120.000 -12.000 224.500 to 120.000 108.000 224.500, 220.125 to 269.500 high, 96.000 long, 1187.02 in³
main/truss@144, 2x4 9: 144.000 -12.000 224.500 to 144.000 108.000 224.500, 220.125 to 269.500 high, 96.000 long, 1267.00 in³
main/truss@168, 2x4 10: 168.000 -12.000 224.500 to 168.000 108.000 224.500, 220.125 to 269.500 high, 96.000 long, 1267.00 in³
wing/truss@24, 2x4 11: 132.000 -36.000 224.500 to 36.000 -36.000 224.500, 220.125 to 260.500 high, 72.000 long, 983.50 in³
wing/truss@48, 2x4 12: 132.000 -12.000 224.500 to 36.000 -12.000 224.500, 220.125 to 260.500 high, 72.000 long, 981.04 in³
wing/valley frame@72, 2x4 13: 108.750 12.000 241.937 to 59.250 12.000 241.937, 241.937 to 260.500 high, 49.500 long, 476.87 in³`), roofMembers(h))
	assert.Equal(t, strings.TrimSpace(`
0.000 -12.000 218.250 to 1.500 0.000 231.625, 78.750 in³
0.000 2.500 229.125 to 1.500 48.000 267.625, 298.594 in³
0.000 0.000 229.125 to 1.500 2.500 233.500, 12.891 in³
0.000 96.000 218.250 to 1.500 108.000 231.625, 78.750 in³
0.000 48.000 229.125 to 1.500 93.500 267.625, 298.594 in³
0.000 93.500 229.125 to 1.500 96.000 233.500, 12.891 in³
0.000 2.500 229.125 to 1.500 93.500 232.625, 453.250 in³
0.000 22.250 232.625 to 1.500 25.750 246.562, 66.281 in³
0.000 46.250 232.625 to 1.500 49.750 263.250, 157.336 in³
0.000 70.250 232.625 to 1.500 73.750 246.562, 66.281 in³`), solids(byID(t, h, "main/truss@0.75")))
	assert.Equal(t, strings.TrimSpace(`
47.250 0.000 229.125 to 48.750 48.000 269.500, 313.770 in³
47.250 48.000 220.125 to 48.750 108.000 269.500, 393.750 in³
47.250 0.000 229.125 to 48.750 96.000 232.625, 479.500 in³`), solids(byID(t, h, "main/truss@48")))
	assert.Equal(t, strings.TrimSpace(`
59.250 11.250 241.937 to 86.917 12.750 260.500, 147.930 in³
84.000 11.250 241.937 to 108.750 12.750 258.312, 128.789 in³
65.083 11.250 241.937 to 102.917 12.750 247.438, 200.156 in³`), solids(byID(t, h, "wing/valley frame@72")))
	assert.Equal(t, strings.TrimSpace(`
1A-1-RP at 0.750 2.750 229.125, station 0.750, serves 12.375: main/truss@0.75 1A/upper plate@0
1A-24-RP at 24.000 2.750 229.125, station 24.000, serves 23.625: main/truss@24 1A/upper plate@0
1A-48-RP at 48.000 2.750 229.125, station 48.000, serves 12.000: main/truss@48 1A/upper plate@0
1B-6-GT at 50.750 -0.250 229.125, station 5.750, serves 10.375: main/truss@48 1B/upper plate@5.5 1B/post@5.75
1B-18-RP at 50.750 -12.000 229.125, station 17.500, serves 24.000: wing/truss@48 1B/upper plate@5.5
1B-42-RP at 50.750 -36.000 229.125, station 41.500, serves 23.625: wing/truss@24 1B/upper plate@5.5
1B-65-RP at 50.750 -59.250 229.125, station 64.750, serves 12.375: wing/truss@0.75 1B/upper plate@5.5
1C-6-GT at 53.750 -57.250 229.125, station 5.750, serves 7.625: wing/truss@0.75 1C/upper plate@5.5 1C/post@5.75
1C-16-GT at 64.000 -57.250 229.125, station 16.000, serves 13.125: wing/truss@0.75 1C/upper plate@5.5 1C/stud@16
1C-32-GT at 80.000 -57.250 229.125, station 32.000, serves 16.000: wing/truss@0.75 1C/upper plate@5.5 1C/stud@32
1C-48-GT at 96.000 -57.250 229.125, station 48.000, serves 16.000: wing/truss@0.75 1C/upper plate@5.5 1C/stud@48
1C-64-GT at 112.000 -57.250 229.125, station 64.000, serves 9.125: wing/truss@0.75 1C/upper plate@5.5 1C/stud@64
1C-66-GT at 114.250 -57.250 229.125, station 66.250, serves 3.625: wing/truss@0.75 1C/upper plate@5.5 1C/post@66.25
1D-1-RP at 117.250 -59.250 229.125, station 0.750, serves 12.375: wing/truss@0.75 1D/upper plate@0
1D-24-RP at 117.250 -36.000 229.125, station 24.000, serves 23.625: wing/truss@24 1D/upper plate@0
1D-48-RP at 117.250 -12.000 229.125, station 48.000, serves 24.000: wing/truss@48 1D/upper plate@0
1E-6-RP at 120.000 2.750 229.125, station 5.500, serves 12.000: main/truss@120 1E/upper plate@5.5
1E-30-RP at 144.000 2.750 229.125, station 29.500, serves 24.000: main/truss@144 1E/upper plate@5.5
1E-54-RP at 168.000 2.750 229.125, station 53.500, serves 23.625: main/truss@168 1E/upper plate@5.5
1E-77-RP at 191.250 2.750 229.125, station 76.750, serves 12.375: main/truss@191.25 1E/upper plate@5.5
1F-6-GT at 189.250 5.750 229.125, station 5.750, serves 7.625: main/truss@191.25 1F/upper plate@5.5 1F/post@5.75
1F-16-GT at 189.250 16.000 229.125, station 16.000, serves 13.125: main/truss@191.25 1F/upper plate@5.5 1F/stud@16
1F-32-GT at 189.250 32.000 229.125, station 32.000, serves 16.000: main/truss@191.25 1F/upper plate@5.5 1F/stud@32
1F-48-GT at 189.250 48.000 229.125, station 48.000, serves 16.000: main/truss@191.25 1F/upper plate@5.5 1F/stud@48
1F-64-GT at 189.250 64.000 229.125, station 64.000, serves 16.000: main/truss@191.25 1F/upper plate@5.5 1F/stud@64
1F-80-GT at 189.250 80.000 229.125, station 80.000, serves 12.875: main/truss@191.25 1F/upper plate@5.5 1F/stud@80
1F-90-GT at 189.250 89.750 229.125, station 89.750, serves 11.125: main/truss@191.25 1F/upper plate@5.5 1F/post@89.75
1G-1-RP at 191.250 93.250 229.125, station 0.750, serves 12.375: main/truss@191.25 1G/top plate@0
1G-24-RP at 168.000 93.250 229.125, station 24.000, serves 23.625: main/truss@168 1G/upper plate@5.5
1G-48-RP at 144.000 93.250 229.125, station 48.000, serves 24.000: main/truss@144 1G/upper plate@5.5
1G-72-RP at 120.000 93.250 229.125, station 72.000, serves 24.000: main/truss@120 1G/upper plate@5.5
1G-96-RP at 96.000 93.250 229.125, station 96.000, serves 24.000: main/truss@96 1G/upper plate@5.5
1G-120-RP at 72.000 93.250 229.125, station 120.000, serves 24.000: main/truss@72 1G/upper plate@5.5
1G-144-RP at 48.000 93.250 229.125, station 144.000, serves 24.000: main/truss@48 1G/upper plate@5.5
1G-168-RP at 24.000 93.250 229.125, station 168.000, serves 23.625: main/truss@24 1G/upper plate@5.5
1G-191-RP at 0.750 93.250 229.125, station 191.250, serves 12.375: main/truss@0.75 1G/top plate@0
1H-6-GT at 2.750 89.750 229.125, station 6.250, serves 11.125: main/truss@0.75 1H/upper plate@0 1H/post@6.25
1H-16-GT at 2.750 80.000 229.125, station 16.000, serves 12.875: main/truss@0.75 1H/upper plate@0 1H/stud@16
1H-32-GT at 2.750 64.000 229.125, station 32.000, serves 16.000: main/truss@0.75 1H/upper plate@0 1H/stud@32
1H-48-GT at 2.750 48.000 229.125, station 48.000, serves 16.000: main/truss@0.75 1H/upper plate@0 1H/stud@48
1H-64-GT at 2.750 32.000 229.125, station 64.000, serves 16.000: main/truss@0.75 1H/upper plate@0 1H/stud@64
1H-80-GT at 2.750 16.000 229.125, station 80.000, serves 13.125: main/truss@0.75 1H/upper plate@0 1H/stud@80
1H-90-GT at 2.750 5.750 229.125, station 90.250, serves 7.625: main/truss@0.75 1H/upper plate@0 1H/post@90.25
M-19-RP at 72.000 2.750 229.125, station 18.500, serves 24.000: main/truss@72 M/upper plate@0
M-43-RP at 96.000 2.750 229.125, station 42.500, serves 24.000: main/truss@96 M/upper plate@0
main/rakeNE-1-FO at 204.500 94.150 233.950, station 1.400, serves 25.400: main/N/fly@205.25 main/N/outlooker@204.5/-96; 14.750 out, 23.250 back
main/rakeNE-1-OG at 191.250 94.150 233.950, station 1.400, serves 25.400: main/N/outlooker@204.5/-96 main/truss@191.25; 14.750 out, 23.250 back
main/rakeNE-1-OR at 168.750 94.150 233.950, station 1.400, serves 25.400: main/N/outlooker@204.5/-96 main/truss@168; 14.750 out, 23.250 back
main/rakeNE-25-FO at 204.500 70.150 251.950, station 25.400, serves 34.600: main/N/fly@205.25 main/N/outlooker@204.5/-72; 14.750 out, 23.250 back
main/rakeNE-25-OG at 191.250 70.150 251.950, station 25.400, serves 34.600: main/N/outlooker@204.5/-72 main/truss@191.25; 14.750 out, 23.250 back
main/rakeNE-25-OR at 168.750 70.150 251.950, station 25.400, serves 34.600: main/N/outlooker@204.5/-72 main/truss@168; 14.750 out, 23.250 back
main/rakeNW-1-FO at -12.500 94.150 233.950, station 1.400, serves 25.400: main/N/fly@-13.25 main/N/outlooker@-12.5/-96; 14.750 out, 23.250 back
main/rakeNW-1-OG at 0.750 94.150 233.950, station 1.400, serves 25.400: main/N/outlooker@-12.5/-96 main/truss@0.75; 14.750 out, 23.250 back
main/rakeNW-1-OR at 23.250 94.150 233.950, station 1.400, serves 25.400: main/N/outlooker@-12.5/-96 main/truss@24; 14.750 out, 23.250 back
main/rakeNW-25-FO at -12.500 70.150 251.950, station 25.400, serves 34.600: main/N/fly@-13.25 main/N/outlooker@-12.5/-72; 14.750 out, 23.250 back
main/rakeNW-25-OG at 0.750 70.150 251.950, station 25.400, serves 34.600: main/N/outlooker@-12.5/-72 main/truss@0.75; 14.750 out, 23.250 back
main/rakeNW-25-OR at 23.250 70.150 251.950, station 25.400, serves 34.600: main/N/outlooker@-12.5/-72 main/truss@24; 14.750 out, 23.250 back
main/rakeSE-1-FO at 204.500 1.850 233.950, station 1.400, serves 25.400: main/S/fly@205.25 main/S/outlooker@204.5/0; 14.750 out, 23.250 back
main/rakeSE-1-OG at 191.250 1.850 233.950, station 1.400, serves 25.400: main/S/outlooker@204.5/0 main/truss@191.25; 14.750 out, 23.250 back
main/rakeSE-1-OR at 168.750 1.850 233.950, station 1.400, serves 25.400: main/S/outlooker@204.5/0 main/truss@168; 14.750 out, 23.250 back
main/rakeSE-25-FO at 204.500 25.850 251.950, station 25.400, serves 34.600: main/S/fly@205.25 main/S/outlooker@204.5/24; 14.750 out, 23.250 back
main/rakeSE-25-OG at 191.250 25.850 251.950, station 25.400, serves 34.600: main/S/outlooker@204.5/24 main/truss@191.25; 14.750 out, 23.250 back
main/rakeSE-25-OR at 168.750 25.850 251.950, station 25.400, serves 34.600: main/S/outlooker@204.5/24 main/truss@168; 14.750 out, 23.250 back
main/rakeSW-1-FO at -12.500 1.850 233.950, station 1.400, serves 25.400: main/S/fly@-13.25 main/S/outlooker@-12.5/0; 14.750 out, 23.250 back
main/rakeSW-1-OG at 0.750 1.850 233.950, station 1.400, serves 25.400: main/S/outlooker@-12.5/0 main/truss@0.75; 14.750 out, 23.250 back
main/rakeSW-1-OR at 23.250 1.850 233.950, station 1.400, serves 25.400: main/S/outlooker@-12.5/0 main/truss@24; 14.750 out, 23.250 back
main/rakeSW-25-FO at -12.500 25.850 251.950, station 25.400, serves 34.600: main/S/fly@-13.25 main/S/outlooker@-12.5/24; 14.750 out, 23.250 back
main/rakeSW-25-OG at 0.750 25.850 251.950, station 25.400, serves 34.600: main/S/outlooker@-12.5/24 main/truss@0.75; 14.750 out, 23.250 back
main/rakeSW-25-OR at 23.250 25.850 251.950, station 25.400, serves 34.600: main/S/outlooker@-12.5/24 main/truss@24; 14.750 out, 23.250 back`), roofJoints(h))
	assert.Equal(t, strings.TrimSpace(`
main/truss@191.25 from 191.250 -12.000, run 60.000 at 0.75: 179.625 to 206.000, 26.375 wide
main/truss@191.25 from 191.250 108.000, run 60.000 at 0.75: 179.625 to 206.000, 26.375 wide
main/truss@0.75 from 0.750 -12.000, run 60.000 at 0.75: -14.000 to 12.375, 26.375 wide
main/truss@0.75 from 0.750 108.000, run 60.000 at 0.75: -14.000 to 12.375, 26.375 wide
wing/truss@0.75 from 132.000 -59.250, run 48.000 at 0.75: -62.000 to -47.625, 14.375 wide
wing/truss@0.75 from 36.000 -59.250, run 48.000 at 0.75: -62.000 to -47.625, 14.375 wide
main/truss@24 from 24.000 -12.000, run 60.000 at 0.75: 12.375 to 36.000, 23.625 wide
main/truss@24 from 24.000 108.000, run 60.000 at 0.75: 12.375 to 36.000, 23.625 wide
main/truss@48 from 48.000 -12.000, run 60.000 at 0.75: 36.000 to 84.000, 28.800 wide
main/truss@48 from 48.000 108.000, run 60.000 at 0.75: 36.000 to 60.000, 24.000 wide
main/truss@72 from 72.000 -12.000, run 60.000 at 0.75: 60.000 to 84.000, 24.000 wide
main/truss@72 from 72.000 108.000, run 60.000 at 0.75: 60.000 to 84.000, 24.000 wide
main/truss@96 from 96.000 -12.000, run 60.000 at 0.75: 84.000 to 108.000, 24.000 wide
main/truss@96 from 96.000 108.000, run 60.000 at 0.75: 84.000 to 108.000, 24.000 wide
main/truss@120 from 120.000 -12.000, run 60.000 at 0.75: 84.000 to 132.000, 28.800 wide
main/truss@120 from 120.000 108.000, run 60.000 at 0.75: 108.000 to 132.000, 24.000 wide
main/truss@144 from 144.000 -12.000, run 60.000 at 0.75: 132.000 to 156.000, 24.000 wide
main/truss@144 from 144.000 108.000, run 60.000 at 0.75: 132.000 to 156.000, 24.000 wide
main/truss@168 from 168.000 -12.000, run 60.000 at 0.75: 156.000 to 179.625, 23.625 wide
main/truss@168 from 168.000 108.000, run 60.000 at 0.75: 156.000 to 179.625, 23.625 wide
wing/truss@24 from 132.000 -36.000, run 48.000 at 0.75: -47.625 to -24.000, 23.625 wide
wing/truss@24 from 36.000 -36.000, run 48.000 at 0.75: -47.625 to -24.000, 23.625 wide
wing/truss@48 from 132.000 -12.000, run 48.000 at 0.75: -24.000 to 0.000, 22.500 wide
wing/truss@48 from 36.000 -12.000, run 48.000 at 0.75: -24.000 to 0.000, 22.500 wide
wing/valley frame@72 from 108.750 12.000, run 24.750 at 0.75: 0.000 to 36.000, 26.182 wide
wing/valley frame@72 from 59.250 12.000, run 24.750 at 0.75: 0.000 to 36.000, 26.182 wide`), roofShares(h))
}
