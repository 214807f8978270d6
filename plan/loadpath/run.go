package loadpath

import (
	"fmt"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/placement"
	"galewright/plan/steel"
)

// Run works out the load path of a house with its hardware. A report comes
// back whenever the wind basis can be read; diagnostics tell what in the plan
// keeps it from that, and what of the path was lost.
func Run(pl *placement.Placement) (*Report, plan.Diagnostics) { return RunOn(steel.New(pl)) }

// RunOn is Run for a placement whose bodies are there already.
func RunOn(bodies *steel.Steel) (*Report, plan.Diagnostics) {
	pl := bodies.Placed
	if ds := basisFaults(pl.House); ds != nil {
		return &Report{Placement: pl, Missing: ds[0].Summary + "; " + ds[0].Mend}, ds
	}
	a := fittingsOf(bodies).analyze(pl, "")
	r := &Report{
		Placement: pl, Basis: a.basis, Main: a.main, Choice: a.choice, Limits: a.outside(), Dead: a.dead.lines,
		Balance: a.balances, Stories: a.lateral.stories, Base: a.lateral.base, Lines: a.lateral.lines, Torsion: a.lateral.torsion,
		Deck:    a.deck,
		Bays:    a.lateral.bays(),
		byJoint: map[*framing.Joint][]*Link{}, work: a,
	}
	for _, c := range ChecksFor(a.plan) {
		for _, l := range c.run(c, a) {
			r.Links = append(r.Links, l)
			if l.Joint != nil {
				r.byJoint[l.Joint] = append(r.byJoint[l.Joint], l)
			}
		}
	}
	r.upliftLines(a)
	r.ridgeLines(a)
	r.chains(a)
	r.Assumed, r.Unchecked = assumptions(a), unchecked(a)
	return r, r.tell(a)
}

// basisFaults tells what in the plan keeps loads from being computed.
func basisFaults(h *framing.House) plan.Diagnostics {
	s := h.Plan.Site
	if s.WindSpeed == 0 {
		pos := s.Pos
		if pos.Line == 0 {
			pos = plan.Pos{File: h.Plan.File, Line: 1, Col: 1}
		}
		return plan.Diagnostics{{
			Code: "no-wind-basis", Summary: "the plan gives no wind speed, so no loads can be computed",
			Where: "site", Mend: `add [site] with wind_speed = "150 mph" and exposure = "D"`, Pos: pos,
		}}
	}
	if len(h.Joints) == 0 {
		return plan.Diagnostics{{Code: "no-joints", Summary: "the house has no joints to carry load", Where: "house", Mend: "fix the errors in the plan first", Pos: s.Pos}}
	}
	b, _ := basisOf(h)
	if err := b.Check(); err != nil {
		return plan.Diagnostics{{Code: "bad-wind-basis", Summary: err.Error(), Where: "site", Mend: "correct the keys of [site] and the walls", Pos: s.Pos}}
	}
	if _, err := chosen(h, b); err != nil {
		return plan.Diagnostics{{Code: "envelope-not-allowed", Summary: err.Error(), Where: "site", Mend: `leave procedure out, or write procedure = "directional"`, Pos: s.Pos}}
	}
	return nil
}

// tell warns of what the path lost on its way.
func (r *Report) tell(a *analysis) (ds plan.Diagnostics) {
	warn := func(code plan.Code, pos plan.Pos, where, mend, format string, args ...any) {
		ds = append(ds, plan.Diagnostic{Severity: plan.Warning, Code: code, Summary: fmt.Sprintf(format, args...), Where: where, Mend: mend, Pos: pos})
	}
	for _, w := range a.plan.Walls {
		if lb := a.orphan[w]; lb > least {
			warn("uplift-without-path", w.Pos, "wall "+w.Name, "put a wall in line below it, or have the engineer detail the load path below",
				"%s", a.u.Sprintf("uplift of up to %.0f lb per stud has no wall below it", lb))
		}
	}
	for _, roof := range a.plan.Roofs {
		if where := a.unheldOn(roof); where != "" {
			warn("rafter-without-support", roof.Pos, where, "give it a wall or beam to bear on", "members of roof %s have uplift with no load path: they bear on nothing", roof.Name)
		}
		if a.ridgeLost[roof] > least {
			warn("ridge-without-support", roof.Pos, "roof "+roof.Name+", ridge", "put a wall or post under the ends of the ridge beam", "the ridge beam of roof %s carries uplift, but no wall stands under its ends", roof.Name)
		}
	}
	for _, s := range r.Stories {
		if s.NoLine && s.Total > least {
			warn("no-shear-wall", s.Level.Pos, "level "+s.Level.Name, "mark sheathed segments with [[wall.shear]] in walls along "+string(s.Axis),
				"%s", a.u.Sprintf("nothing resists wind along %s: %.0f lb (ASD)", s.Axis, s.ASD))
		}
	}
	return ds
}

// unheldOn says which member of a roof, in the order of the house, is the first
// that has uplift and bears on nothing; "" where none does.
func (a *analysis) unheldOn(roof *plan.Roof) (where string) {
	n := 0
	for _, m := range a.house.Members {
		if m.Roof != roof || a.unheld[m] <= least {
			continue
		}
		if n++; n == 1 {
			where = "roof " + roof.Name + ", " + m.PlaceOnRoof(a.u)
		}
	}
	if n > 1 {
		where += fmt.Sprintf(", and %d more", n-1)
	}
	return where
}

// upliftLines sums up the rafter joints of each wall.
func (r *Report) upliftLines(a *analysis) {
	at := map[string]int{}
	for _, j := range a.house.Joints {
		p := a.peaks[j]
		if !bears(j.Kind) || p == nil {
			continue
		}
		i, ok := at[j.Host]
		if !ok {
			i = len(r.Uplift)
			at[j.Host] = i
			r.Uplift = append(r.Uplift, UpliftLine{Wall: j.Wall, Roof: roofName(j.Roof)})
			if j.Dormer != nil {
				r.Uplift[i].Dormer = j.Dormer.Name
			}
		}
		u := &r.Uplift[i]
		u.Joints++
		u.SumASD += max(0, p.demand)
		if u.At == "" || p.demand > u.Largest.net(ASD) {
			u.Largest, u.At, u.Case, u.Width = p.force, j.ID, p.wind.String(), 0
			u.Strength = p.force.net(Strength)
			u.PerFoot = 0
			if s := j.Share; s != nil && s.Width > 0 {
				u.Width, u.PerFoot = s.Width, p.demand*12/s.Width
			}
		}
	}
}

func roofName(r *plan.Roof) string {
	if r == nil {
		return ""
	}
	return r.Name
}

// ridgeLines sums up each roof's ridge.
func (r *Report) ridgeLines(a *analysis) {
	at := map[*plan.Roof]*RidgeLine{}
	for _, roof := range a.plan.Roofs {
		at[roof] = &RidgeLine{Roof: roof.Name, Bearing: roof.RidgeBearing}
	}
	for _, j := range a.house.Joints {
		line, p := at[j.Roof], a.peaks[j]
		if j.Kind != plan.RafterRidge || line == nil || p == nil || atHip(j) {
			continue
		}
		line.Joints++
		if p.demand > line.Tension {
			line.Tension, line.Case = p.demand, p.wind.String()
		}
	}
	for _, p := range a.pairs {
		if line := at[p.a.roof]; line != nil {
			line.Thrust = max(line.Thrust, a.thrust(p))
		}
	}
	for _, roof := range a.plan.Roofs {
		line := at[roof]
		switch {
		case line.Thrust > 0 && roof.CeilingTies && a.nails.Line(plan.RafterToJoist) == nil:
			line.Note = "held by ceiling joists at the plates; no nails are ordered from them to the rafters"
		case line.Thrust > 0 && roof.CeilingTies:
			line.Note = "held by ceiling joists at the plates (check " + tieCheck + "); live load and snow are not in it"
		case line.Thrust > 0:
			line.Note = "no ridge beam and no ceiling ties: nothing in the plan holds this thrust"
		}
		if line.Joints > 0 {
			r.Ridges = append(r.Ridges, *line)
		}
	}
}

// atHip tells whether a hip or valley meets at a joint.
func atHip(j *framing.Joint) bool {
	return slices.ContainsFunc(j.Members, func(m *framing.Member) bool { return m.Role == plan.HipRafter || m.Role == plan.ValleyRafter })
}

// thrust returns the push on the plates of a pair of rafters from dead load,
// lb: wL²/(8f) for an even load.
func (a *analysis) thrust(p *pair) float64 {
	l, r := a.sideLoads(p.a, roofCase{}), a.sideLoads(p.b, roofCase{})
	return p.tension(l.moment, r.moment).D
}
