package loadpath

import (
	"fmt"
	"strings"

	"galewright/plan"
	"galewright/plan/wind"
)

// WindRows tells for a sheet by which procedures the wind was worked out, with
// what coefficients and zones: name and text, nil without numbers.
func (r *Report) WindRows() (out [][2]string) {
	if r.Missing != "" {
		return nil
	}
	b := r.Basis
	out = append(out,
		[2]string{"Procedure", "ASCE " + string(b.Edition) + ", " + r.Choice.String() + ": " + r.Choice.Why},
		[2]string{"Internal", fmt.Sprintf("GCpi +/-%.2f; %s", wind.GCpi(b.Enclosure), protection(b))})
	if r.Choice.Has(plan.Envelope) {
		out = append(out, r.envelopeRows()...)
	}
	if r.Choice.Has(plan.Directional) {
		out = append(out, r.directRows()...)
	}
	return append(out, [2]string{"Cladding zones", strings.Join(r.zoneWidths(), "; ")})
}

func (r *Report) envelopeRows() [][2]string {
	b := r.Basis
	out := [][2]string{{"Envelope", r.Units().Sprintf("qh Kd %.1f psf; end zone 2a = %s; zone 2 to %s from the walls across the ridge, to %s along it; undersides +%.2f",
		b.Envelope().QKd, r.Units().Length(24*b.EdgeStrip()), r.Units().Length(12*b.ZoneTwoReach(false)), r.Units().Length(12*b.ZoneTwoReach(true)), wind.OverhangGCp)}}
	for _, c := range r.loadCases() {
		var parts []string
		for _, z := range b.Zones(c.coefs) {
			parts = append(parts, fmt.Sprintf("%s %+.2f", z.Name, z.GCpf))
		}
		out = append(out, [2]string{"GCpf, wind " + c.doc, strings.Join(parts, ", ")})
	}
	return out
}

func (r *Report) directRows() [][2]string {
	b := r.Basis
	out := [][2]string{{"Directional", r.Units().Sprintf("qh Kd %.1f psf, G %.2f, h %.1f ft", b.Direct().QKd, wind.Gust, b.Height)}}
	for _, d := range directions {
		var parts []string
		seen := false
		for _, s := range r.surfaces(d.ridge) {
			name := s.Name
			if strings.HasPrefix(name, "windward wall") { // one Cp at every height
				if seen {
					continue
				}
				seen, name = true, "windward wall"
			}
			parts = append(parts, fmt.Sprintf("%s %+.2f", name, s.Cp))
		}
		out = append(out, [2]string{"Cp, wind " + d.doc, strings.Join(parts, ", ")})
	}
	return out
}
