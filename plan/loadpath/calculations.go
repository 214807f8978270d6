package loadpath

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/wind"
)

// Blowing is the pressures of one procedure for wind along one axis.
type Blowing struct {
	Name     string    // "load case A"; "" of the directional procedure
	Wind     string    // "across the ridge"
	Axis     plan.Axis // that the wind blows along
	Zones    []wind.Zone
	Surfaces []wind.Surface
}

// axisAlong returns the axis of wind along the main ridge or across it.
func (r *Report) axisAlong(ridge bool) plan.Axis {
	for i, ax := range plan.Axes {
		if r.work.alongRidge(i) == ridge {
			return ax
		}
	}
	return plan.Axes[0]
}

// EnvelopeCases lists the load cases of the envelope procedure; nil where it is
// not used.
func (r *Report) EnvelopeCases() (out []Blowing) {
	if !r.Choice.Has(plan.Envelope) {
		return nil
	}
	for i, c := range r.loadCases() {
		out = append(out, Blowing{Name: r.Basis.CaseName(c.name), Wind: c.doc, Axis: r.axisAlong(i == 1), Zones: r.Basis.Zones(c.coefs)})
	}
	return out
}

// DirectionalCases lists the surfaces of the directional procedure for both
// winds; nil where it is not used.
func (r *Report) DirectionalCases() (out []Blowing) {
	if !r.Choice.Has(plan.Directional) {
		return nil
	}
	for _, d := range directions {
		out = append(out, Blowing{Wind: d.doc, Axis: r.axisAlong(d.ridge), Surfaces: r.surfaces(d.ridge)})
	}
	return out
}

// Figures returns the figures of components and cladding that the house needs,
// its walls' first.
func (r *Report) Figures() []wind.Figure { return r.figures() }

// CladAreas are the effective wind areas that components and cladding are told
// for, ft².
func CladAreas() []float64 { return cladAreas }

// ZoneWidths says how wide the zones of components and cladding are.
func (r *Report) ZoneWidths() []string { return r.zoneWidths() }

// Overhangs lists the net uplift on overhangs as components and cladding.
func (r *Report) Overhangs() (out []wind.Overhang) {
	f, ok := r.roofFigure()
	if !ok {
		return nil
	}
	for _, area := range overhangAreas {
		out = append(out, r.Basis.CladOverhangs(f, area)...)
	}
	return out
}

// GableEnds lists what the wind asks of gable walls and rakes.
func (r *Report) GableEnds() []GableEnd { return r.work.gableEnds() }

// OpenCase is one net coefficient of an open roof.
type OpenCase struct {
	Roof, Wind, Case, Part string
	CN                     float64 // net, down positive
	Down                   float64 // psf, strength level
}

// OpenRoofs lists the cases of roofs without walls below.
func (r *Report) OpenRoofs() (out []OpenCase) {
	for _, x := range r.openRoofs() {
		out = append(out, OpenCase{x.roof, x.wind, x.name, x.part, x.cn, r.Basis.FreePressure(x.cn)})
	}
	return out
}

// Bounds lists the limits of the methods that are used.
func (r *Report) Bounds() []wind.Bound { return r.work.bounds() }

// Source cites a combination by the edition of the set that was read.
func (r *Report) Source(c Combo) string { return r.source(c) }

// SharedBy says how the line's force goes to its segments.
func (x *ShearLine) SharedBy() string { return x.method() }

// Arm is the lever arm of a segment's end tension, in.
func (s *Segment) Arm() float64 { return s.arm() }

// Mass is the dead weight of one part as it is used, with the framing members of
// the plan in it.
type Mass struct {
	Part plan.DeadPart
	On   string  // roof, kind of wall, level
	Psf  float64 // of the part's own surface
	How  string
}

// Masses lists the dead weights that the load path uses.
func (r *Report) Masses() (out []Mass) {
	d := r.work.dead
	for _, roof := range r.work.plan.Roofs {
		out = append(out, Mass{plan.DeadRoof, "roof " + roof.Name, d.roof(roof), r.Units().Sprintf("of the slope; %.2f psf on plan", d.roof(roof)*math.Hypot(1, roof.Pitch/12))})
	}
	for _, roof := range r.work.plan.Roofs {
		if r.work.open[roof] {
			continue
		}
		out = append(out, Mass{plan.DeadCeiling, "ceiling under roof " + roof.Name, d.ceiling(), hangsOn(roof).String()})
	}
	told := map[Mass]bool{}
	for _, w := range r.work.plan.Walls {
		m := Mass{plan.DeadInteriorWall, fmt.Sprintf("interior walls, %s at %s", w.Studs.Text, r.Units().Length(w.Spacing)), d.wall(w), "of the face, openings counted as wall"}
		if w.Exterior {
			m.Part, m.On = plan.DeadWall, fmt.Sprintf("exterior walls, %s at %s", w.Studs.Text, r.Units().Length(w.Spacing))
		}
		if !told[m] {
			told[m] = true
			out = append(out, m)
		}
	}
	for _, l := range r.work.plan.Levels {
		if w := d.floor(l); w > 0 {
			out = append(out, Mass{plan.DeadFloor, "floor of " + l.Name, w, "of the floor"})
		}
	}
	return out
}
