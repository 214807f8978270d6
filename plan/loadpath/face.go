package loadpath

import (
	"math"

	"galewright/plan"
	"galewright/plan/units"
	"galewright/plan/wind"
)

// face is what level wind on the edge of a deck blows on.
type face struct {
	z       [2]float64 // heights above grade, in
	high    float64    // its height, ft; of a triangle the mean of it
	roof    *plan.Roof // of slopes
	slopes  bool       // of a roof across its ridge
	heights [2]float64 // of slopes: those of the one that the wind meets and of the other, ft
	psf     float64    // windward and leeward together, strength level
	end     bool       // in the end zone of the envelope procedure
}

// with is the face under a pressure.
func (f face) with(psf float64, end bool) face {
	f.psf, f.end = psf, end
	return f
}

// faceWords tells what the pressure on a face is made of: it says in words and
// numbers what wallPressure and slopeLoad compute.
func (m *model) faceWords(g gust, f face) string {
	switch {
	case g.least() && f.slopes:
		return m.u.Sprintf("minimum load of %.0f psf on the vertical projection of roofs", wind.LeastRoof)
	case g.least():
		return m.u.Sprintf("minimum load of %.0f psf on walls", wind.LeastWall)
	case f.slopes:
		return m.slopeWords(g, f) + f.unequal(m.u)
	}
	return m.wallWords(g, f)
}

// unequal tells the heights of slopes that are not equally high: the pressure
// of each is on its own, and their sum is spread over the higher.
func (f face) unequal(u units.System) string {
	if f.psf == 0 || math.Abs(f.heights[0]-f.heights[1]) < 0.01 {
		return ""
	}
	return u.Sprintf("; windward on %.2f ft, leeward on %.2f ft, over the higher", f.heights[0], f.heights[1])
}

// wallWords is that of a wall, or of a gable triangle.
func (m *model) wallWords(g gust, f face) string {
	ridge := m.alongRidge(g.axis)
	if g.proc == plan.Directional {
		l, b := m.basis.Along(ridge)
		return m.u.Sprintf("G %.2f x (windward wall Cp %.2f x mean q Kd %.2f psf from %s to %s above grade - leeward wall Cp %.3f x qh Kd %.2f psf)",
			wind.Gust, wind.WindwardWallCp, m.basis.MeanQKd(f.z[0]/12, f.z[1]/12), m.u.Length(f.z[0]), m.u.Length(f.z[1]), wind.LeewardWallCp(l, b), m.basis.Direct().QKd)
	}
	if ridge && m.main != nil {
		return m.zonesWords(f, wind.CaseB, 4, 5)
	}
	return m.zonesWords(f, wind.CaseA(m.basis.Theta), 0, 3)
}

// zonesWords names two zones of the envelope figure with their coefficients.
func (m *model) zonesWords(f face, c wind.Coefs, i, k int) string {
	of, mark := c.Interior, ""
	if f.end {
		of, mark = c.End, "E"
	}
	return m.u.Sprintf("qh Kd %.2f psf x (GCpf zone %d%s %+.3f - zone %d%s %+.3f)", m.q, i+1, mark, of[i], k+1, mark, of[k])
}

// slopeWords is that of a roof across its ridge.
func (m *model) slopeWords(g gust, f face) string {
	if f.psf == 0 {
		return "the slopes together push against the wind: not counted"
	}
	r := f.roof
	if g.proc == plan.Envelope {
		return m.zonesWords(f, wind.CaseA(r.Angle()), 1, 2)
	}
	ridge := m.alongRidge(g.axis)
	l, b := m.basis.Along(ridge)
	qh, hL := m.basis.Direct().QKd, m.basis.Height/l
	v := slopeOf(math.Max(r.Pitch, r.PitchOther), hL, g.second)
	switch {
	case r.Kind != plan.ShedRoof:
		return m.u.Sprintf("qh Kd %.2f psf x (windward slope G Cp %.3f - leeward slope G Cp %.3f), h/L %.2f", qh, v.windward, v.leeward, hL)
	case string(r.High) == from(g.axis, g.sign):
		return m.u.Sprintf("the high side as a windward wall: G %.2f x Cp %.2f x mean q Kd %.2f psf from %s to %s above grade, less the slope in its lee, qh Kd %.2f psf",
			wind.Gust, wind.WindwardWallCp, m.basis.MeanQKd(f.z[0]/12, f.z[1]/12), m.u.Length(f.z[0]), m.u.Length(f.z[1]), qh)
	}
	return m.u.Sprintf("qh Kd %.2f psf x (slope - G %.2f x leeward wall Cp %.3f of the high side)", qh, wind.Gust, wind.LeewardWallCp(l, b))
}
