package loadpath

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strings"

	"galewright/plan"
	"galewright/plan/source"
	"galewright/plan/units"
	"galewright/plan/wind"
)

// WriteWind writes the wind basis, pressures, uplift and lateral lines as
// "text" or "json".
func (r *Report) WriteWind(w io.Writer, format string) error {
	if format == "json" {
		return writeJSON(w, r.windJSON())
	}
	b := bufio.NewWriter(w)
	p := printer{b, r.Units()}
	p.opening()
	if r.Missing != "" {
		p.line("%s", r.Missing)
		return b.Flush()
	}
	r.writeBasis(p)
	r.writeZones(p)
	r.writeDead(p)
	r.writeUplift(p)
	r.writeLateral(p)
	r.writeComparison(p)
	r.writeBalance(p)
	r.writeHonest(p)
	return b.Flush()
}

// preliminary says what loads and capacities are for.
const preliminary = "Loads and capacities are preliminary numbers for the engineer of record. They do not replace sealed calculations."

// Units is the system that the plan's words are in.
func (r *Report) Units() units.System { return r.Placement.House.Plan.Project.Units }

// printer writes lines in the words of a system.
type printer struct {
	b *bufio.Writer
	u units.System
}

func (p printer) line(format string, args ...any) { fmt.Fprintln(p.b, p.u.Sprintf(format, args...)) }

// opening prints the caution, and which units stand in tables without them.
func (p printer) opening() {
	p.line("%s\n%s", plan.Caution, preliminary)
	if key := p.u.Key(); key != "" {
		p.line("%s", key)
	}
}

func (p printer) head(title string) {
	title = p.u.Words(title)
	p.line("\n%s\n%s", title, strings.Repeat("-", len(title)))
}

func (r *Report) writeBasis(p printer) {
	p.head("Wind basis")
	p.line("ASCE %s, exposure %s, %s, risk category %s", r.Basis.Edition, r.Basis.Exposure, r.Basis.Enclosure, r.Placement.House.Plan.Site.Risk)
	for _, c := range r.Basis.Coefficients(r.Choice) {
		grade := ""
		if c.Grade != "" {
			grade = ", " + string(c.Grade)
		}
		p.line("  %-24s %9s %-4s  %s%s", c.Name, p.u.Number(c.Value, c.Unit, 3), p.u.Unit(c.Unit), c.Table, grade)
	}
	r.writeProcedures(p)
	for _, s := range r.Limits {
		p.line("  limit: %s", s)
	}
}

func (r *Report) writeZones(p printer) {
	r.writeEnvelope(p)
	r.writeDirectional(p)
	r.writeOpen(p)
	r.writeCladding(p)
	r.writeOverhangs(p)
	r.writeGables(p)
}

// writeCladding gives components and cladding for the main roof and walls at
// the sizes of a sheathing panel and of the members.
func (r *Report) writeCladding(p printer) {
	for _, f := range r.figures() {
		p.head(r.Units().Sprintf("Components and cladding, %s (%s), {psf} at strength level", f.Name, f.Grade))
		if f.Note != "" {
			p.line("  %s", f.Note)
		}
		p.line("  %-5s %9s %9s %9s %10s %10s", "zone", p.u.Words("area {ft²}"), "GCp +", "GCp -", "p +", "p -")
		for _, z := range f.Zones {
			for _, area := range cladAreas {
				c := r.Basis.Cladding(z, area)
				p.line("  %-5s %9.0f{ft²} %9.2f %9.2f %10.1f{psf} %10.1f{psf}", z.Zone, area, c.GCpPositive, c.GCpNegative, c.Positive, c.Negative)
			}
		}
	}
	for _, s := range r.zoneWidths() {
		p.line("  %s", s)
	}
}

// figures returns the figures of components and cladding that the house
// needs; a roof too steep for one is left out, and the limits tell it.
func (r *Report) figures() []wind.Figure {
	out := []wind.Figure{wind.WallFigure(r.Basis.Edition, r.Basis.Theta)}
	if f, ok := r.roofFigure(); ok {
		out = append(out, f)
	}
	return out
}

// roofFigure returns the main roof's figure, if there is one.
func (r *Report) roofFigure() (wind.Figure, bool) {
	if r.Main == nil {
		return wind.Figure{}, false
	}
	f, err := wind.RoofFigure(r.Basis.Edition, r.Main.Kind, r.Basis.Theta, r.Basis.Height/r.Basis.Width)
	return f, err == nil
}

func (r *Report) writeDead(p printer) {
	p.head("Dead loads, {psf} of the part's own surface")
	for _, d := range r.Dead {
		v := p.u.Sprintf("%6.2f{psf}", d.Weight)
		if d.Weight == 0 {
			v = "  plan"
		}
		p.line("  %-14s %-32s %s  %s", d.Part, d.Name, v, d.Source)
	}
}

func (r *Report) writeUplift(p printer) {
	p.head(r.Placement.House.Plan.InRoofWords("Uplift at rafter bearings, ") + ASD.Name + ", " + r.source(ASD))
	strength := r.Placement.House.Plan.Loads.Combination == plan.Strength
	for _, u := range r.Uplift {
		where := "porch beam"
		switch {
		case u.Wall != nil:
			where = "wall " + u.Wall.Name
		case u.Dormer != "":
			where = "dormer " + u.Dormer
		}
		p.line("  %-14s %10s; largest %s: wind %.0f lb, dead %.0f lb, net %.0f lb ASD%s; %s", where, plan.Counted(u.Joints, "joint"), u.At,
			u.Largest.W, u.Largest.D, u.Largest.net(ASD), perFootText(r.Units(), u), u.Case)
		if strength {
			p.line("  %-14s by %s: %.0f lb", "", Strength.Name, u.Strength)
		}
	}
	for _, x := range r.Ridges {
		what := "tension across the ridge board"
		if x.Bearing {
			what = "uplift on the ridge beam"
		}
		p.line("  ridge of roof %s, %s: %s %.0f lb ASD; %s", x.Roof, plan.Counted(x.Joints, "joint"), what, x.Tension, x.Case)
		if x.Thrust > 0 {
			p.line("    thrust at the plates from dead load %.0f lb per pair; %s", x.Thrust, x.Note)
		}
	}
}

// perFootText prints a line's uplift by the foot of roof along the eave; a hip
// or valley has no width of its own.
func perFootText(in units.System, u UpliftLine) string {
	if u.PerFoot == 0 {
		return ""
	}
	return in.Sprintf(" (%.0f plf)", u.PerFoot)
}

func (r *Report) writeLateral(p printer) {
	p.head("Story shear")
	lb := p.u.Unit("lb")
	p.line("  %-10s %-5s %10s %10s %10s %10s %10s  %s", "story", "along", "walls "+lb, "roofs "+lb, "above "+lb, "total "+lb, "ASD "+lb, "case")
	for _, s := range r.Stories {
		p.line("  %-10s %-5s %10.0f{lb} %10.0f{lb} %10.0f{lb} %10.0f{lb} %10.0f{lb}  %s", s.Level.Name, s.Axis, s.Wall, s.Roof, s.Above, s.Total, s.ASD, s.Case)
	}
	for _, b := range r.Base {
		if b.Axis != "" {
			p.line("  %-10s %-5s %10s %10s %10s %10.0f{lb} %10.0f{lb}  %s", "foundation", b.Axis, "", "", "", b.Total, ASD.W*b.Total, b.Case)
			p.line("    lowest story %.0f{lb}, lower half of its walls %.0f{lb}, floor edge %.0f{lb}, girders %.0f lb", b.Story, b.Walls, b.Edge, b.Girders)
		}
	}
	p.line("  made up of, strength level (walls: half the story below the diaphragm, the floor's depth and half the story above; roofs: from the eaves' edges to the ridge, rakes with the depth of their edges, boxed eaves beside gables):")
	for _, s := range r.Stories {
		for _, b := range s.Bands {
			p.line("    story %s, wind along %s: %s from %s = %s to %s: %.1f plf", s.Level.Name, s.Axis, b.From, map[plan.Axis]plan.Axis{plan.AxisX: plan.AxisY, plan.AxisY: plan.AxisX}[s.Axis], r.Units().Length(b.Lo), r.Units().Length(b.Hi), b.Load)
		}
	}
	r.writeBays(p)
	p.head("Shear wall lines, strength level unless said")
	for _, x := range r.Lines {
		p.line("  story %s, line %s at %s = %s: %.0f lb (diaphragm %.0f{lb}, above %.0f{lb}); %s", x.Level.Name, x.Name, plan.Axes[1-x.Axis], r.Units().Length(x.At), x.Force, x.Deck, x.Brought, x.Case)
		if x.Floor != 0 {
			p.line("    with the wind that comes to the floor under it, %.0f lb: %.0f lb; %s", x.Floor, x.Under, x.UnderCase)
		}
		for _, s := range x.Segments {
			p.line("    %-18s %s long, counts %.2f ft, share %.2f: %.0f lb, %.0f plf ASD; lever arm %.2f ft, end tension %.0f lb", s.Name, r.Units().Length(s.Length), s.Working/12, s.Share, s.V, s.Demand, s.arm()/12, s.Lifts)
		}
		p.line("    shared %s", x.method())
		if d := x.Drift(); d > 0 {
			p.line("    drift of the story here %.2f in, ASD: 1/%.0f of its height", d, x.Level.PlateHeight/d)
		}
		most := DragPoint{}
		for _, d := range x.Drag {
			if math.Abs(d.Force) > math.Abs(most.Force) {
				most = d
			}
		}
		p.line("    collector: largest %.0f lb at %s = %s", math.Abs(most.Force), plan.Axes[x.Axis], r.Units().Length(most.At))
	}
	for _, s := range r.Torsion {
		p.line("  torsion: %s", s)
	}
}

// writeBalance shows the account of the case that lifts most.
func (r *Report) writeBalance(p printer) {
	p.head("Balance of uplift in the case that lifts the roof most, {lb}, unfactored wind / dead")
	worst, most := "", 0.0
	for _, b := range r.Balance {
		if b.Roof.W > most+least { // of cases that are alike the first, whatever their last bits say
			worst, most = b.Case, b.Roof.W
		}
	}
	for _, b := range r.Balance {
		if b.Case == worst && worst != "" {
			p.line("  %-10s roof %.0f{lb} / %.0f{lb}; from above %.0f{lb} / %.0f{lb}; own weight %.0f{lb}; at the bases %.0f{lb} / %.0f{lb}; no load path below %.0f{lb} / %.0f{lb}", b.Level.Name,
				b.Roof.W, b.Roof.D, b.Above.W, b.Above.D, b.Weight.D, b.Bases.W, b.Bases.D, b.Elsewhere.W, b.Elsewhere.D)
		}
	}
	if worst != "" {
		p.line("  case: %s", worst)
	}
}

func (r *Report) writeHonest(p printer) {
	p.head("Sources: what each word means")
	for _, g := range source.Grades() {
		p.line("  %-12s %s", g, g.Meaning())
	}
	p.head("Assumptions")
	for _, s := range r.Assumed {
		p.line("  - %s", s)
	}
	p.head("Not checked")
	for _, s := range r.Unchecked {
		p.line("  - %s", s)
	}
}
