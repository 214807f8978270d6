package loadpath

import (
	"fmt"

	"galewright/plan"
)

// DeadLine is one item of dead weight.
type DeadLine struct {
	Part   plan.DeadPart
	Name   string
	Weight float64 // psf of the part's surface
	Source string
}

// perInch is the weight of 2x members at 16 in on center for each inch of
// depth, psf (an office's structural notes, second-hand).
const perInch = 0.244

// joistSource names where perInch comes from.
const joistSource = "0.244 psf per inch of depth at 16 in o.c., an engineering office's structural notes (second-hand)"

// defaults are the dead weights beside framing members, for parts the plan
// gives none of. Low weights relieve least, so nothing is taken for siding,
// insulation, ducts or contents.
var defaults = []DeadLine{
	{plan.DeadRoof, "asphalt shingles", 2.0, "a weight table that agrees with ASCE 7-05 Table C3-1 where that was read (second-hand)"},
	{plan.DeadRoof, "15/32 sheathing", 1.41, "3 psf per inch, an engineering office's structural notes (second-hand)"},
	{plan.DeadCeiling, "1/2 gypsum board", 2.2, "ASCE 7-05 Table C3-1, 0.55 psf per 1/8 in (read)"},
	{plan.DeadWall, "7/16 sheathing", 1.31, "3 psf per inch, an engineering office's structural notes (second-hand)"},
	{plan.DeadWall, "1/2 gypsum board, one side", 2.2, "ASCE 7-05 Table C3-1, 0.55 psf per 1/8 in (read)"},
	{plan.DeadInteriorWall, "1/2 gypsum board, both sides", 4.4, "ASCE 7-05 Table C3-1, 0.55 psf per 1/8 in (read)"},
	{plan.DeadFloor, "23/32 subfloor", 2.16, "3 psf per inch, an engineering office's structural notes (second-hand)"},
}

// deadLoads answers what things weigh.
type deadLoads struct {
	lines []DeadLine
	fixed map[plan.DeadPart]float64 // of a part, psf, framing members included when given
	given map[plan.DeadPart]bool    // the plan gives the part's weights
}

func deadOf(p *plan.Plan) *deadLoads {
	d := &deadLoads{fixed: map[plan.DeadPart]float64{}, given: map[plan.DeadPart]bool{}}
	for _, x := range p.Loads.Dead {
		d.given[x.Part] = true
		d.add(DeadLine{x.Part, x.Name, x.Weight, fmt.Sprintf("plan, line %d", x.Pos.Line)})
	}
	for _, part := range plan.DeadParts {
		for _, x := range defaults {
			if x.Part == part && !d.given[part] {
				d.add(x)
			}
		}
		if !d.given[part] && part != plan.DeadCeiling {
			d.lines = append(d.lines, DeadLine{part, "framing members of the plan", 0, joistSource})
		}
	}
	return d
}

func (d *deadLoads) add(x DeadLine) {
	d.lines = append(d.lines, x)
	d.fixed[x.Part] += x.Weight
}

// part returns the weight of a part with members of the depth (in) at the
// spacing (in), psf.
func (d *deadLoads) part(name plan.DeadPart, depth, spacing float64) float64 {
	w := d.fixed[name]
	if !d.given[name] && spacing > 0 {
		w += perInch * depth * 16 / spacing
	}
	return w
}

// wall returns the weight of a wall, psf of its face.
func (d *deadLoads) wall(w *plan.Wall) float64 {
	if w.Exterior {
		return d.part(plan.DeadWall, w.Studs.Depth, w.Spacing)
	}
	return d.part(plan.DeadInteriorWall, w.Studs.Depth, w.Spacing)
}

// roof returns the weight of a roof's slope, psf of the slope.
func (d *deadLoads) roof(r *plan.Roof) float64 {
	return d.part(plan.DeadRoof, r.Rafters.Depth, r.Spacing)
}

// ceiling returns the weight of a ceiling, psf.
func (d *deadLoads) ceiling() float64 { return d.fixed[plan.DeadCeiling] }

// floor returns the weight of a level's floor, psf; 0 for a slab.
func (d *deadLoads) floor(l *plan.Level) float64 {
	if l.Joists.Depth == 0 {
		return 0
	}
	return d.part(plan.DeadFloor, l.Joists.Depth, l.JoistSpace)
}
