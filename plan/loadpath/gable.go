package loadpath

import (
	"math"

	"galewright/plan"
	"galewright/plan/wind"
)

// GableEnd is what the wind asks of a gable wall and of the rake over it, as
// components: pressures and forces as they are listed; gableStuds and overhangUplift follow
// them.
type GableEnd struct {
	Wall  string
	Roof  string
	Tall  float64 // tallest stud, in
	Push  float64 // at each end of that stud, lb ASD, inward or outward, whichever is more
	Zone  string
	Rake  float64 // overhang past the wall, in; 0 without one
	Up    float64 // net uplift on it, psf, strength level
	PerFt float64 // that on its width, plf ASD along the rake
	From  string  // source of the uplift
}

// gableEnds lists the walls under rakes.
func (m *model) gableEnds() (out []GableEnd) {
	for _, w := range m.plan.Walls {
		r := m.rakeOver(w)
		if r == nil {
			continue
		}
		g := GableEnd{Wall: w.Name, Roof: r.Name, Tall: m.tallest(w, r)}
		g.Push, g.Zone = m.studPush(g.Tall/12, w.Spacing/12)
		if o, ok := m.rakeOverhang(r, 10); ok && r.Rake > 0 {
			g.Rake, g.Up, g.From = r.Rake, o.Up, o.Source
			g.PerFt = ASD.W * o.Up * r.Rake / 12
		}
		out = append(out, g)
	}
	return out
}

// rakeOver returns the gable or shed roof whose slope runs along an exterior
// wall that carries it at its end.
func (m *model) rakeOver(w *plan.Wall) *plan.Roof {
	for _, r := range m.plan.Roofs {
		if m.open[r] || r.Kind == plan.HipRoof || !w.Exterior || w.TopLevel() != r.Over || !w.Frame().D.RunsAlong(1-r.RidgeAxis()) {
			continue
		}
		area, at := m.walled[r], axis(w.From, r.RidgeAxis())
		for i, edge := range []float64{axis(area.lo, r.RidgeAxis()), axis(area.hi, r.RidgeAxis())} {
			if math.Abs(at-edge) < oneLine && r.GableEnd[i] != plan.HipEnd {
				return r
			}
		}
	}
	return nil
}

// tallest returns the height of the tallest stud of a gable wall, in: to the
// ridge where its top is the rake's, else to its plates.
func (m *model) tallest(w *plan.Wall, r *plan.Roof) float64 {
	if w.Top != plan.RakeTop {
		return w.TopHeight()
	}
	return w.TopHeight() + m.house.RidgeHeight(r) - r.Over.Top()
}

// studPush returns the push of the wind at each end of a stud of a height and
// spacing (ft), lb ASD, in zone 5.
func (m *model) studPush(h, spacing float64) (lb float64, zone string) {
	zones := wind.WallFigure(m.basis.Edition, m.basis.Theta).Zones
	z := zones[len(zones)-1]
	p := m.basis.Cladding(z, wind.EffectiveArea(h, spacing))
	return ASD.W * math.Max(p.Positive, -p.Negative) * h / 2 * spacing, z.Zone
}

// rakeOverhang returns the largest net uplift of components and cladding on
// the rake overhang of a roof on an effective wind area (ft²), both faces: what
// an outlooker or a fly rafter carries; false where there is no figure.
func (m *model) rakeOverhang(r *plan.Roof, area float64) (most wind.Overhang, ok bool) {
	f, err := wind.RoofFigure(m.basis.Edition, r.Kind, r.Angle(), m.basis.Height/m.basis.Width)
	if err != nil {
		return most, false
	}
	for _, o := range m.basis.CladOverhangs(f, area) {
		if o.Up > most.Up {
			most = o
		}
	}
	return most, true
}
