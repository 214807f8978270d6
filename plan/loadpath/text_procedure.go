package loadpath

import (
	"fmt"
	"math"
	"strings"

	"galewright/plan"
	"galewright/plan/source"
	"galewright/plan/wind"
)

// protection says what an enclosure class rests on, for sheets and outputs.
// That openings must be protected in the regions of wind-borne debris is ASCE
// 7-16 26.12.3, from memory.
func protection(b wind.Basis) string {
	if b.Enclosure == plan.PartiallyEnclosed {
		return "partially enclosed, GCpi 0.55 of both signs: the numbers hold with a large opening broken in a storm"
	}
	return "enclosed, GCpi 0.18 of both signs: the numbers hold only while every opening stays closed, so glazing and doors must be impact resistant or covered (ASCE 7-16 26.12.3, from memory); unprotected, a house counts as partially enclosed (GCpi 0.55)"
}

// Protection says what the enclosure class of the report rests on.
func (r *Report) Protection() string { return protection(r.Basis) }

func (r *Report) writeProcedures(p printer) {
	p.line("procedure: %s: %s", r.Choice, r.Choice.Why)
	p.line("enclosure: %s", protection(r.Basis))
}

// writeEnvelope gives the zones of the envelope procedure.
func (r *Report) writeEnvelope(p printer) {
	if !r.Choice.Has(plan.Envelope) {
		return
	}
	for _, c := range r.loadCases() {
		p.head(r.Units().Sprintf("Envelope procedure, %s, wind %s, {psf} at strength level (ASCE %s Fig. 28.3-1, %s)", r.Basis.CaseName(c.name), c.doc, r.Basis.Edition, source.Transcribed))
		p.line("  %-5s %8s %10s %12s %12s", "zone", "GCpf", "external", "+GCpi net", "-GCpi net")
		for _, z := range r.Basis.Zones(c.coefs) {
			p.line("  %-5s %8.2f %10.1f{psf} %12.1f{psf} %12.1f{psf}", z.Name, z.GCpf, z.External, z.Plus, z.Minus)
		}
	}
}

// directions are the two winds that pressures are listed for.
var directions = []struct {
	ridge bool
	doc   string
}{{false, "across the ridge"}, {true, "along the ridge"}}

// writeDirectional gives the surfaces of the directional procedure.
func (r *Report) writeDirectional(p printer) {
	if !r.Choice.Has(plan.Directional) {
		return
	}
	for _, d := range directions {
		p.head(r.Units().Sprintf("Directional procedure, wind %s, {psf} at strength level (ASCE %s Fig. 27.3-1, %s)", d.doc, r.Basis.Edition, source.Transcribed))
		p.line("  %-26s %8s %10s %12s %12s", "surface", "Cp", "external", "+GCpi net", "-GCpi net")
		for _, s := range r.surfaces(d.ridge) {
			p.line("  %-26s %8.3f %10.1f{psf} %12.1f{psf} %12.1f{psf}", s.Name, s.Cp, s.External, s.Plus, s.Minus)
		}
	}
	p.line("  first and second values of a roof are cases of their own; a soffit has no inside")
}

func (r *Report) surfaces(ridge bool) []wind.Surface {
	kind := plan.GableRoof
	if r.Main != nil {
		kind = r.Main.Kind
	}
	return r.Basis.Surfaces(ridge, kind)
}

// openRoofs returns the open roofs of the house with their cases: by wind, net
// coefficient and pressure.
func (r *Report) openRoofs() (out []openLine) {
	m := r.work
	for _, roof := range m.plan.Roofs {
		if !m.open[roof] {
			continue
		}
		winds := []bool{true}
		if roof.Kind == plan.ShedRoof {
			winds = []bool{true, false}
		}
		for _, high := range winds {
			name := "across"
			if roof.Kind == plan.ShedRoof {
				name = map[bool]string{true: "at the high eave", false: "at the low eave"}[high]
			}
			for _, f := range wind.FreeSlope(roof.Kind, math.Min(roof.Angle(), wind.FreeTheta), high) {
				out = append(out, openLine{roof.Name, name, f.Case, "windward half", f.Windward}, openLine{roof.Name, name, f.Case, "leeward half", f.Lee})
			}
		}
		for _, f := range wind.FreeAlong() {
			for i, to := range []string{"to h", "h to 2h", "beyond 2h"} {
				out = append(out, openLine{roof.Name, "along", f.Case, to, f.CN[i]})
			}
		}
	}
	return out
}

// openLine is one coefficient of an open roof.
type openLine struct {
	roof, wind, name, part string
	cn                     float64
}

func (r *Report) writeOpen(p printer) {
	list := r.openRoofs()
	if len(list) == 0 {
		return
	}
	p.head(r.Units().Sprintf("Open roofs, net pressure, {psf} at strength level, down positive (ASCE %s Figs. 27.3-4 to 27.3-7, %s)", r.Basis.Edition, source.Transcribed))
	p.line("  %-12s %-18s %-14s %-14s %8s %10s", "roof", "wind", "case", "part", "CN", "p")
	for _, x := range list {
		p.line("  %-12s %-18s %-14s %-14s %8.2f %10.1f{psf}", x.roof, x.wind, x.name, x.part, x.cn, r.Basis.FreePressure(x.cn))
	}
	p.line("  beside these an open roof is run as an overhang of the house, with the windward wall's pressure below; the larger uplift is taken")
}

// zoneWidths says how wide the zones of components and cladding are.
func (r *Report) zoneWidths() []string {
	a, h := r.Units().Length(12*r.Basis.EdgeStrip()), r.Basis.Height
	out := []string{"a = " + a + ": wall zone 5 lies within a of a corner of the house, zone 4 between"}
	switch {
	case r.Main == nil:
	case r.Basis.Theta <= 7:
		out = append(out, fmt.Sprintf("roof: edge zones by 0.6 h = %s and 0.2 h = %s from the edges (Fig. 30.3-2A, from memory)", r.Units().Length(12*0.6*h), r.Units().Length(12*0.2*h)))
	default:
		out = append(out, "roof: edge, ridge and corner zones lie within "+a+" of eaves, rakes, ridges and hips as the figure draws them; zone 1 between")
	}
	if r.Basis.Edition == plan.ASCE722 {
		out = append(out, "in 7-22 roof zones are laid out from the outer edge of an overhang, a is of the plan without it (second-hand)")
	}
	return out
}

// overhangAreas are the effective wind areas that overhangs are told for, ft².
var overhangAreas = []float64{10, 20}

func (r *Report) writeOverhangs(p printer) {
	f, ok := r.roofFigure()
	if !ok {
		return
	}
	p.head("Components and cladding, overhangs of eaves and rakes, net uplift of both faces, {psf} at strength level")
	for i, area := range overhangAreas {
		for k, o := range r.Basis.CladOverhangs(f, area) {
			if i+k == 0 {
				p.line("  %s (%s)", o.Source, o.Grade)
				p.line("  %-5s %9s %9s %10s", "zone", p.u.Words("area {ft²}"), "GCp net", "up")
			}
			p.line("  %-5s %9.0f{ft²} %9.2f %10.1f{psf}", o.Zone, o.Area, o.GCp, o.Up)
		}
	}
}

// writeGables prints what the wind asks of gable walls and rakes.
func (r *Report) writeGables(p printer) {
	list := r.work.gableEnds()
	if len(list) == 0 {
		return
	}
	p.head("Gable walls and rakes as components and cladding")
	for _, g := range list {
		p.line("  wall %s: tallest stud %s, %.0f lb ASD out of plane at each of its ends, in or out, whichever is more (zone %s)", g.Wall, r.Units().Length(g.Tall), g.Push, g.Zone)
		if g.Rake > 0 {
			p.line("    rake overhang of roof %s, %s: net uplift %.1f psf at strength level, %.0f plf ASD along the rake (%s, {10 ft²})", g.Roof, r.Units().Length(g.Rake), g.Up, g.PerFt, g.From)
		}
	}
}

// writeComparison prints what other assumptions would ask.
func (r *Report) writeComparison(p printer) {
	c := r.compare()
	if len(c.Alts) == 0 {
		return
	}
	p.head("What other assumptions would ask, " + ASD.Name + ", whatever hardware is placed")
	head := []string{fmt.Sprintf("%16s", "as planned")}
	for _, alt := range c.Alts {
		head = append(head, fmt.Sprintf("%28s", alt.Name))
	}
	p.line("  %-62s %s", "", strings.Join(head, " "))
	for i, row := range c.Rows {
		if math.IsNaN(c.As[i]) {
			continue
		}
		cells := []string{fmt.Sprintf("%16s", p.u.Number(c.As[i], row.Unit, 0))}
		for _, alt := range c.Alts {
			cells = append(cells, fmt.Sprintf("%28s", p.u.Number(alt.Values[i], row.Unit, 0)+change(c.As[i], alt.Values[i])))
		}
		p.line("  %-62s %s", row.Name+", "+p.u.Unit(row.Unit), strings.Join(cells, " "))
	}
}

// change prints a number against another in percent.
func change(was, is float64) string {
	if was <= least {
		return ""
	}
	return fmt.Sprintf(" (%+.0f%%)", 100*(is/was-1))
}
