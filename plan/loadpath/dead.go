package loadpath

import (
	"fmt"

	"galewright/plan"
)

// panelPerInch is the weight of wood structural panels for each inch of their
// thickness, psf (an office's structural notes, second-hand): a rate, so that
// any thickness has its weight by it.
const panelPerInch = 3.0

// panelSource names where panelPerInch comes from.
const panelSource = "3 psf per inch, an engineering office's structural notes (second-hand)"

// assumedDeck is the roof sheathing taken where the plan has no deck.
const assumedDeck = "15/32"

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
	{plan.DeadCeiling, "1/2 gypsum board", 2.2, "ASCE 7-05 Table C3-1, 0.55 psf per 1/8 in (read)"},
	{plan.DeadWall, "1/2 gypsum board, one side", 2.2, "ASCE 7-05 Table C3-1, 0.55 psf per 1/8 in (read)"},
	{plan.DeadInteriorWall, "1/2 gypsum board, both sides", 4.4, "ASCE 7-05 Table C3-1, 0.55 psf per 1/8 in (read)"},
}

// panelLines are the panels of a part as the plan has them: the deck on the
// rafters, the thinnest of the shear walls' panels, for it relieves least, and
// each level's subfloor.
func panelLines(p *plan.Plan, part plan.DeadPart) (out []DeadLine) {
	line := func(x plan.Panel, words string) {
		out = append(out, DeadLine{part, x.Text + " " + words, panelPerInch * x.Thick, panelSource})
	}
	switch part {
	case plan.DeadRoof:
		if p.Deck != nil {
			line(plan.PanelOf(p.Deck.Panel), "sheathing of the deck")
		} else {
			line(plan.PanelOf(assumedDeck), "sheathing, assumed")
		}
	case plan.DeadWall:
		line(wallPanel(p))
	case plan.DeadFloor:
		seen := map[float64]bool{}
		for _, l := range p.Levels {
			if l.Joists.Depth > 0 && !seen[l.Subfloor] {
				seen[l.Subfloor] = true
				line(plan.PanelOfInches(l.Subfloor), "subfloor")
			}
		}
	}
	return out
}

// wallPanel returns the sheathing of exterior walls that is weighed, and what
// it is.
func wallPanel(p *plan.Plan) (x plan.Panel, words string) {
	thin, thick := p.WallPanels(nil)
	switch {
	case !thin.Given:
		return thin, "sheathing, assumed"
	case thin.Thick < thick.Thick:
		return thin, "sheathing, the thinnest panel"
	}
	if ownPanels(p) {
		return thin, "sheathing of the walls"
	}
	return thin, "sheathing of the shear walls"
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
		if d.given[part] {
			continue
		}
		for _, x := range panelLines(p, part) {
			d.lines = append(d.lines, x)
			if part != plan.DeadFloor { // each level weighs its own
				d.fixed[part] += x.Weight
			}
		}
		if part != plan.DeadCeiling {
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
	w := d.part(plan.DeadFloor, l.Joists.Depth, l.JoistSpace)
	if !d.given[plan.DeadFloor] {
		w += panelPerInch * l.Subfloor
	}
	return w
}
