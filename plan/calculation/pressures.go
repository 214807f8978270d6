package calculation

import (
	"galewright/plan"
	"galewright/plan/loadpath"
	"galewright/plan/source"
	"galewright/plan/wind"
)

// pressures lists velocity pressures and those of the main wind force resisting
// system.
func pressures(r *loadpath.Report) []*Section {
	return []*Section{velocity(r), envelope(r), directional(r), openRoofs(r)}
}

func velocity(r *loadpath.Report) *Section {
	s := &Section{ID: "velocity_pressure", Title: "Velocity pressure by height, strength level", Cols: []Column{
		words("at", "At"), numbers("height_ft", "z", "ft", 1), numbers("kz", "Kz", "", 3), numbers("kzt", "Kzt", "", 2), numbers("ke", "Ke", "", 3), numbers("q_psf", "q", "psf", 2), numbers("q_kd_psf", "q Kd", "psf", 2),
	}}
	b := r.Basis
	row := func(at string, v wind.Velocity) {
		s.add(word("%s", at), number(v.Z), number(v.Kz), number(v.Kzt), number(v.Ke), number(v.Q), number(v.QKd))
	}
	heights := b.Heights()
	for _, z := range heights[:len(heights)-1] {
		row("wall", b.At(z))
	}
	if b.Height < 15 {
		row(r.Units().Words("wall, to {15 ft}"), b.At(15))
	}
	if r.Choice.Has(plan.Directional) {
		row("mean roof height, directional", b.Direct())
	}
	if r.Choice.Has(plan.Envelope) {
		row("mean roof height, envelope", b.Envelope())
	}
	s.Notes = append(s.Notes, "q = 0.00256 Kz Kzt Kd Ke V² in 7-16; in 7-22 Kd stands in the pressure equations and not in q. q Kd is the same pressure in both.")
	return s
}

// net are the columns of a pressure with its internal pressures.
func net() []Column {
	return []Column{numbers("external_psf", "External p", "psf", 1), numbers("net_with_internal_pressure_psf", "Net, +GCpi", "psf", 1), numbers("net_with_internal_suction_psf", "Net, -GCpi", "psf", 1)}
}

func envelope(r *loadpath.Report) *Section {
	s := &Section{ID: "mwfrs_envelope", Title: "Main wind force resisting system, envelope procedure, strength level", Cols: append([]Column{
		words("case", "Case"), words("wind", "Wind"), words("zone", "Zone"), numbers("gcpf", "GCpf", "", 3), numbers("qh_kd_psf", "qh Kd", "psf", 2),
	}, net()...)}
	for _, c := range r.EnvelopeCases() {
		for _, z := range c.Zones {
			s.add(word("%s", c.Name), word("%s, along %s", c.Wind, c.Axis), word("%s", z.Name), number(z.GCpf), number(r.Basis.Envelope().QKd), number(z.External), number(z.Plus), number(z.Minus))
		}
	}
	s.Notes = append(s.Notes, "p = qh Kd (GCpf - GCpi); all four directions, each with both corners as the end zone. ASCE "+string(r.Basis.Edition)+" Fig. 28.3-1 ("+string(source.Transcribed)+").")
	return s
}

func directional(r *loadpath.Report) *Section {
	s := &Section{ID: "mwfrs_directional", Title: "Main wind force resisting system, directional procedure, strength level", Cols: append([]Column{
		words("wind", "Wind"), words("surface", "Surface"), numbers("cp", "Cp", "", 3), numbers("q_kd_psf", "q Kd", "psf", 2), numbers("g", "G", "", 2),
	}, net()...)}
	for _, c := range r.DirectionalCases() {
		for _, x := range c.Surfaces {
			s.add(word("%s, along %s", c.Wind, c.Axis), word("%s", x.Name), number(x.Cp), number(x.Q), number(wind.Gust), number(x.External), number(x.Plus), number(x.Minus))
		}
	}
	s.Notes = append(s.Notes, "p = q Kd G Cp - qh Kd GCpi; the first and the second value of a roof are cases of their own; a soffit has no inside. ASCE "+string(r.Basis.Edition)+" Fig. 27.3-1 ("+string(source.Transcribed)+").")
	return s
}

func openRoofs(r *loadpath.Report) *Section {
	s := &Section{ID: "open_roofs", Title: "Open roofs, net pressure, strength level, down positive", Cols: []Column{
		words("roof", "Roof"), words("wind", "Wind"), words("case", "Case"), words("part", "Part"), numbers("cn", "CN", "", 2), numbers("down_psf", "p", "psf", 1),
	}}
	for _, x := range r.OpenRoofs() {
		s.add(word("%s", x.Roof), word("%s", x.Wind), word("%s", x.Case), word("%s", x.Part), number(x.CN), number(x.Down))
	}
	s.Notes = append(s.Notes, "p = qh Kd G CN, ASCE "+string(r.Basis.Edition)+" Figs. 27.3-4 to 27.3-7 ("+string(source.Transcribed)+"). Beside these an open roof is run as an overhang of the house; the larger uplift is taken.")
	return s
}
