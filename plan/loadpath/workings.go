package loadpath

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/length"
)

// workings tells what the uplift at a link's joint is made of in its
// governing case, so that a reader can do the sum again: the pressure on each
// stretch of the rafters, where they rest, and what comes from which joint.
func (r *Report) workings(l *Link) []string {
	a := r.work
	p := a.peaks[l.Joint]
	if l.Joint == nil || p == nil || !p.set || l.Check.ID == sillCheck {
		return nil
	}
	switch l.Joint.Kind {
	case plan.RafterPlate, plan.RafterLedger, plan.RafterRidge:
		a.runCase(p.wind)
		return append(a.gathered(l.Joint), a.roofWorkings(l.Joint, p.wind)...)
	case plan.StudTop, plan.OpeningHead:
		a.runCase(p.wind)
		return a.plateWorkings(l.Joint)
	case plan.StudStud, plan.StudBase:
		a.runCase(p.wind)
		return a.footWorkings(l.Joint)
	case plan.GirderPile:
		if l.Check.ID == "pile-overturning" {
			return a.pullWorkings(l.Joint)
		}
		a.runCase(p.wind)
		return a.pileWorkings(l.Joint)
	}
	return nil
}

// roofWorkings tells pressures, bearings and statics of the rafters at a
// joint.
func (a *analysis) roofWorkings(j *framing.Joint, c windCase) (out []string) {
	var told *pair
	for _, s := range a.stripsAt(j) {
		rc := a.onRoof(c, s.roof)
		out = append(out, fmt.Sprintf("%s, %s wide (%s of it in the end zone); qh Kd %.2f psf", s.m.ID, length.Feet(s.width), percent(rc.inEnd(s)), rc.q))
		a.roofLoads(s, c, rc, func(x patch) {
			what := "under the eave or a porch"
			if x.in {
				what = "inside"
			}
			out = append(out, fmt.Sprintf("  from %s to %s up the plan: zone %d, GCpf %.3f, from below %+.2f (%s): wind %.0f lb, dead %.0f lb",
				length.Feet(x.u0), length.Feet(x.u1), x.zone, x.gcpf, x.below, what, x.force.W, x.force.D))
		})
		if s.out0+s.out1 > 0 {
			out = append(out, fmt.Sprintf("  of the width %s lies beyond the gable wall, where %.2f acts from below at its windward end", length.Feet(s.out0+s.out1), math.Max(rakeSoffit(c, rc, -1), rakeSoffit(c, rc, 1))))
		}
		for _, e := range s.ends {
			if s.pair == nil {
				out = append(out, "  rests "+length.Feet(e.u)+" up the plan; a force goes to the supports on both sides by lever")
			}
		}
		if s.pair != nil && s.pair != told {
			told = s.pair
			defer func(p *pair) { out = append(out, a.pairWorkings(p, c)...) }(told)
		}
	}
	return out
}

// gathered tells what jacks bring to the hips and valleys at a joint.
func (a *analysis) gathered(j *framing.Joint) (out []string) {
	for _, g := range a.rafters {
		here := false
		for _, e := range g.ends {
			here = here || e.joint == j
		}
		if !g.gathers || !here {
			continue
		}
		for _, e := range g.ends {
			out = append(out, fmt.Sprintf("%s rests %s up the plan from its tail; a force goes to the supports on both sides by lever", g.m.ID, length.Feet(e.u)))
		}
		for _, s := range a.rafters {
			for _, e := range s.ends {
				if f, ok := a.rafterLoad[e.joint]; e.on == g && e.joint != nil && ok {
					out = append(out, fmt.Sprintf("  %s brings it at %s: wind %.0f, dead %.0f lb", s.m.ID, length.Feet(e.at.Sub(g.low).Dot(g.up)), whole(f.W), whole(f.D)))
				}
			}
		}
	}
	return out
}

// pairWorkings tells the statics of a pair of rafters.
func (a *analysis) pairWorkings(p *pair, c windCase) []string {
	l, r := a.sideLoads(p.a, c, a.onRoof(c, p.a.roof)), a.sideLoads(p.b, c, a.onRoof(c, p.b.roof))
	over := l.moment.add(r.moment.times(-1)).times(1 / p.span)
	return []string{
		fmt.Sprintf("the pair rests on the middle of its seats, %s and %s up the plan and %s apart; the ridge lies %s from the first and %s up",
			length.Feet(p.a.foot()), length.Feet(p.b.foot()), length.Feet(p.span), length.Feet(p.apex), length.Feet(p.rise)),
		fmt.Sprintf("moment about the first's plate: wind %.0f, dead %.0f lb-in; the other's about its own: wind %.0f, dead %.0f lb-in (wind times 1 + tan²: it is square to the slope)",
			l.moment.W, l.moment.D, r.moment.W, r.moment.D),
		fmt.Sprintf("their difference over the span goes across the ridge: wind %.0f, dead %.0f lb; the first plate holds its side's load less that, the other its side's and that", whole(over.W), whole(over.D)),
		fmt.Sprintf("level tension at the ridge: first moment less what goes across times the distance, over the height: wind %.0f, dead %.0f lb", (l.moment.W-over.W*p.apex)/p.rise, (l.moment.D-over.D*p.apex)/p.rise),
	}
}

// plateWorkings tells which rafters bring a stud or header its load.
func (a *analysis) plateWorkings(j *framing.Joint) (out []string) {
	p := a.byWall[j.Wall]
	if p == nil {
		return nil
	}
	for _, x := range a.joints[j.Wall] {
		f, ok := a.rafterLoad[x]
		if !ok || !bears(x.Kind) {
			continue
		}
		for _, s := range p.places(x.Station) {
			if s.head == j || s.c != nil && s.c.st == j && s.head == nil {
				out = append(out, fmt.Sprintf("from %s: wind %.0f, dead %.0f lb, times %.3f by lever", x.ID, f.W, f.D, s.k))
			}
		}
	}
	for _, o := range p.openings {
		if o.ends[0] == j || o.ends[1] == j {
			out = append(out, fmt.Sprintf("the header spans from %s to %s", length.Feet(o.lo), length.Feet(o.hi)))
		}
	}
	return out
}

// footWorkings tells what comes down on a stud, and its stretch of wall.
func (a *analysis) footWorkings(j *framing.Joint) (out []string) {
	for _, p := range a.paths {
		for _, k := range p.carriers {
			if len(k.below) > 0 && k.below[0].c != nil && k.below[0].c.base == j {
				f := k.total()
				out = append(out, fmt.Sprintf("from %s: wind %.0f, dead %.0f lb", k.base.ID, f.W, f.D))
			}
			if k.base == j {
				out = append(out, fmt.Sprintf("its stretch of wall: %s long, %s high, %.2f psf, openings weighed as wall", length.Feet(k.share), length.Feet(wallHeight(p.w)), a.dead.wall(p.w)))
				if p.floorPer.D > 0 {
					out = append(out, fmt.Sprintf("floor on its plates: %.2f psf on %s of joists", a.dead.floor(a.levelAbove(p.top)), length.Feet(p.floorPer.D*144/a.dead.floor(a.levelAbove(p.top)))))
				}
			}
		}
	}
	return out
}

// pileWorkings tells which studs bring a pile its load.
func (a *analysis) pileWorkings(j *framing.Joint) (out []string) {
	for _, p := range a.paths {
		for _, k := range p.carriers {
			for _, g := range k.ground {
				if g.pile.joint == j && g.k > 0.0005 {
					f := k.total()
					out = append(out, fmt.Sprintf("from %s: wind %.0f, dead %.0f lb, times %.3f by lever along girder and joists", k.base.ID, f.W, f.D, g.k))
				}
			}
		}
	}
	return out
}

// pullWorkings tells which ends of segments pull at a pile.
func (a *analysis) pullWorkings(j *framing.Joint) (out []string) {
	for _, p := range a.pilePulls() {
		if p.joint == j && p.lb > least {
			out = append(out, fmt.Sprintf("%s, %s end, wind from %s: 0.6 of %.0f lb, times %.3f by lever along girder and joists: %.0f lb", p.segment.Name, p.end,
				sides[p.axis][p.sense], p.segment.Lifts, p.k, p.lb))
		}
	}
	return out
}

// whole takes the sign from what prints as zero.
func whole(x float64) float64 {
	if math.Abs(x) < 0.5 {
		return 0
	}
	return x
}
