package wind

import "galewright/plan"

// Free is one case of a roof on posts without walls: net coefficients CN of
// its halves, positive down on the top. ASCE 7-16 Eq. 27.3-2, p = qh G CN, Kd
// in q; 7-22 with Kd in p (transcribed).
type Free struct {
	Case          string // "A, clear"
	Windward, Lee float64
}

// freeRow is a row of the figures: clear A, clear B, obstructed A, obstructed
// B, each windward and leeward half.
type freeRow [4][2]float64

// freeNames name the four; clear is wind flow with up to half of the opening
// under the roof blocked.
var freeNames = [4]string{"A, clear", "B, clear", "A, obstructed", "B, obstructed"}

// freeAngles are the rows of the figures, degrees; under the first the row
// of 0 holds.
var freeAngles = []float64{7.5, 15, 22.5, 30, 37.5, 45}

// The figures: ASCE 7-16 Figs. 27.3-4 (monoslope, wind at the high and at the
// low eave) and 27.3-5 (pitched), the same in 7-22 (transcribed: four copies
// agree in every cell).
var (
	freeFlat = freeRow{{1.2, 0.3}, {-1.1, -0.1}, {-0.5, -1.2}, {-1.1, -0.6}}
	freeHigh = []freeRow{
		{{-0.6, -1.0}, {-1.4, 0}, {-1.0, -1.5}, {-1.7, -0.8}},
		{{-0.9, -1.3}, {-1.9, 0}, {-1.1, -1.5}, {-2.1, -0.6}},
		{{-1.5, -1.6}, {-2.4, -0.3}, {-1.5, -1.7}, {-2.3, -0.9}},
		{{-1.8, -1.8}, {-2.5, -0.5}, {-1.5, -1.8}, {-2.3, -1.1}},
		{{-1.8, -1.8}, {-2.4, -0.6}, {-1.5, -1.8}, {-2.2, -1.1}},
		{{-1.6, -1.8}, {-2.3, -0.7}, {-1.3, -1.8}, {-1.9, -1.2}},
	}
	freeLow = []freeRow{
		{{0.9, 1.5}, {1.6, 0.3}, {-0.2, -1.2}, {0.8, -0.3}},
		{{1.3, 1.6}, {1.8, 0.6}, {0.4, -1.1}, {1.2, -0.3}},
		{{1.7, 1.8}, {2.2, 0.7}, {0.5, -1.0}, {1.3, 0}},
		{{2.1, 2.1}, {2.6, 1.0}, {0.6, -1.0}, {1.6, 0.1}},
		{{2.1, 2.2}, {2.7, 1.1}, {0.7, -0.9}, {1.9, 0.3}},
		{{2.2, 2.5}, {2.6, 1.4}, {0.8, -0.9}, {2.1, 0.4}},
	}
	freePitched = []freeRow{
		{{1.1, -0.3}, {0.2, -1.2}, {-1.6, -1.0}, {-0.9, -1.7}},
		{{1.1, -0.4}, {0.1, -1.1}, {-1.2, -1.0}, {-0.6, -1.6}},
		{{1.1, 0.1}, {-0.1, -0.8}, {-1.2, -1.2}, {-0.8, -1.7}},
		{{1.3, 0.3}, {-0.1, -0.9}, {-0.7, -0.7}, {-0.2, -1.1}},
		{{1.3, 0.6}, {-0.2, -0.6}, {-0.6, -0.6}, {-0.3, -0.9}},
		{{1.1, 0.9}, {-0.3, -0.5}, {-0.5, -0.5}, {-0.3, -0.7}},
	}
)

// freeAlong is ASCE 7-16 Fig. 27.3-7, wind along the ridge or eaves, to h, to
// 2h and beyond from the windward edge (transcribed).
var freeAlong = [4][3]float64{{-0.8, -0.6, -0.3}, {0.8, 0.5, 0.3}, {-1.2, -0.9, -0.6}, {0.5, 0.5, 0.3}}

// FreeSlope returns the cases of an open roof for wind across its ridge or
// eaves. Of a shed, high tells that the wind meets its high eave. A hip is
// read as pitched: there is no figure of its own.
func FreeSlope(kind plan.RoofKind, theta float64, high bool) (out []Free) {
	rows := freePitched
	switch {
	case kind == plan.ShedRoof && high:
		rows = freeHigh
	case kind == plan.ShedRoof:
		rows = freeLow
	}
	for i, name := range freeNames {
		f := Free{Case: name, Windward: freeFlat[i][0], Lee: freeFlat[i][1]}
		if theta >= freeAngles[0] {
			var w, l []float64
			for _, r := range rows {
				w, l = append(w, r[i][0]), append(l, r[i][1])
			}
			f.Windward, f.Lee = between(theta, freeAngles, w), between(theta, freeAngles, l)
		}
		out = append(out, f)
	}
	return out
}

// FreeStrip is one case of an open roof for wind along its ridge or eaves.
type FreeStrip struct {
	Case string
	CN   [3]float64 // to h, to 2h and beyond from the windward edge
}

// FreeAlong returns the cases of an open roof for wind along its ridge or
// eaves.
func FreeAlong() (out []FreeStrip) {
	for i, name := range freeNames {
		out = append(out, FreeStrip{name, freeAlong[i]})
	}
	return out
}

// The figures of open roofs hold for these h/L, h the roof's own mean
// height, and to 45 degrees (transcribed).
const (
	FreeLeast = 0.25
	FreeMost  = 1.0
	FreeTheta = 45.0
)

// FreePressure is the net pressure of an open roof at mean roof height, psf
// at strength level, positive down.
func (b Basis) FreePressure(cn float64) float64 { return b.Direct().QKd * Gust * cn }
