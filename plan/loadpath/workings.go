package loadpath

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/wind"
)

// Workings tells what the demand of a link is made of in its governing case, so
// that a reader can do the sum again: of uplift the pressure on each stretch of
// the rafters, where they rest, and what comes from which joint; of lateral force
// what the link takes from its line, whose own are LineWorkings.
func (r *Report) Workings(l *Link) []string { return r.Explainer().Workings(l) }

// Explainer tells workings of many links and runs each wind case once. It is not
// for several goroutines.
type Explainer struct {
	r    *Report
	runs map[windCase]*caseState
}

// Explainer returns one for the links of the report.
func (r *Report) Explainer() *Explainer { return &Explainer{r, map[windCase]*caseState{}} }

// run is the state of a wind case.
func (e *Explainer) run(c windCase) *caseState {
	if e.runs[c] == nil {
		e.runs[c] = e.r.work.run(c)
	}
	return e.runs[c]
}

// Workings is Report.Workings.
func (e *Explainer) Workings(l *Link) []string {
	switch {
	case slices.Contains(sideChecks, l.Check.ID) || strings.HasPrefix(l.ID, lowestFloor):
		return e.r.sideWorkings(l)
	case l.Check.ID == diaphragmCheck:
		return e.r.bayWorkings(l)
	case l.Check.ID == tieCheck:
		return e.r.work.tieWorkings(l)
	case l.Check.ID == nailingCheck:
		return e.r.work.flow.workings(l)
	case l.Joint == nil || ownLink(l):
		return nil
	}
	return e.upliftWorkings(l)
}

// upliftWorkings is that of a link of uplift at a joint.
func (e *Explainer) upliftWorkings(l *Link) []string {
	a := e.r.work
	p := a.peaks[l.Joint]
	if p == nil {
		return nil
	}
	if l.Joint.Overhang != nil {
		return a.overhangWorkings(l.Joint)
	}
	switch l.Joint.Kind {
	case plan.RafterPlate, plan.GirderPlate, plan.JackGirder, plan.JackCorner, plan.ValleyTruss, plan.RafterLedger, plan.RafterRidge:
		s := e.run(p.wind)
		return append(s.gathered(l.Joint), s.roofWorkings(l.Joint)...)
	case plan.BoardRafter, plan.DormerTop, plan.DormerFoot:
		s := e.run(p.wind)
		return append(s.gathered(l.Joint), s.roofWorkings(l.Joint)...)
	case plan.StudTop, plan.OpeningHead:
		return e.run(p.wind).plateWorkings(l.Joint)
	case plan.StudStud, plan.StudBase:
		return e.run(p.wind).footWorkings(l.Joint)
	case plan.GirderPile:
		out := e.run(p.wind).pileWorkings(l.Joint)
		if l.Check.ID == "pile-overturning" {
			out = append(out, a.pullWorkings(l.Joint)...)
		}
		return out
	case plan.PostCap, plan.PostBase:
		s := e.run(p.wind)
		return append(s.porchWorkings(l.Joint), s.poleWorkings(l.Joint)...)
	}
	return nil
}

// roofWorkings tells pressures, bearings and statics of the rafters at a
// joint.
func (s *caseState) roofWorkings(j *framing.Joint) (out []string) {
	var told *pair
	for _, r := range s.m.stripsAt(j) {
		out = append(out, s.stripWorkings(r)...)
		for _, e := range r.ends {
			if r.pair == nil {
				out = append(out, "  rests "+s.m.u.Length(e.u)+" up the plan; a force goes to the supports on both sides by lever arm")
			}
		}
		if r.pair != nil && r.pair != told {
			told = r.pair
			defer func(p *pair) { out = append(out, s.pairWorkings(p)...) }(told)
		}
	}
	return out
}

// stripWorkings tells the pressure on each stretch of a rafter.
func (s *caseState) stripWorkings(r *strip) (out []string) {
	rc := s.roofs[r.roof]
	head, symbol := s.m.u.Sprintf("%s, %s wide; qh Kd %.2f psf, G %.2f", r.Member.ID, s.m.u.Length(r.Width), rc.q, wind.Gust), "G Cp"
	if s.wind.proc == plan.Envelope {
		head, symbol = s.m.u.Sprintf("%s, %s wide (%s of it in the end zone); qh Kd %.2f psf", r.Member.ID, s.m.u.Length(r.Width), percent(rc.inEnd(r)), rc.q), "GCpf"
	}
	out = append(out, head)
	var rake [2]float64
	s.m.roofLoads(r, rc, func(x patch) {
		what := "GCpi, inside"
		if !x.in {
			what = "soffit, under an eave or a porch"
		}
		line := fmt.Sprintf("  from %s to %s up the plan: %s, %s %.3f, from below %+.2f (%s)", s.m.u.Length(x.u0), s.m.u.Length(x.u1), x.zone, symbol, x.top, x.below, what)
		if x.free != "" {
			line = fmt.Sprintf("  from %s to %s up the plan: %s", s.m.u.Length(x.u0), s.m.u.Length(x.u1), x.free)
		}
		out = append(out, line+s.m.u.Sprintf(": wind %.0f lb, dead %.0f lb", x.force.W, x.force.D))
		rake = x.ends
	})
	if s.m.dead.ceiling() > 0 && r.inside[1] > r.inside[0] {
		out = append(out, "  the ceiling, "+hangsOn(r.roof).String())
	}
	for i, wide := range []float64{r.out0, r.out1} {
		if wide > 0 {
			out = append(out, fmt.Sprintf("  of the width %s lies beyond the gable wall, where %.2f acts from below", s.m.u.Length(wide), rake[i]))
		}
	}
	return out
}

// gathered tells what jacks bring to the hips and valleys at a joint, and at a dormer all that
// comes onto its plates, boards, headers and the trimmers.
func (s *caseState) gathered(j *framing.Joint) (out []string) {
	for _, g := range s.m.rafters {
		if !slices.ContainsFunc(g.ends, func(e support) bool { return e.joint == j || e.foot == j }) {
			continue
		}
		brought := s.broughtTo(g)
		if !g.Gathers() && (len(brought) == 0 || j.Kind != plan.RafterPlate && j.Kind != plan.RafterRidge) {
			continue
		}
		if g.Gathers() {
			for _, e := range g.ends {
				out = append(out, fmt.Sprintf("%s rests %s up the plan from its tail; a force goes to the supports on both sides by lever arm", g.Member.ID, s.m.u.Length(e.u)))
			}
		} else {
			out = append(out, g.Member.ID+" carries what rests on it too, each at its place up the plan from its tail")
		}
		out = append(out, brought...)
	}
	return out
}

// broughtTo tells what each member that rests on a strip brings there, and through which stud.
func (s *caseState) broughtTo(g *strip) (out []string) {
	for _, r := range s.m.rafters {
		for _, e := range r.ends {
			f, ok := s.rafters[e.joint]
			if e.on != g || e.joint == nil || !ok {
				continue
			}
			who := r.Member.ID
			if e.foot != nil {
				who = e.foot.First().ID + ", from " + who + ","
			}
			out = append(out, s.m.u.Sprintf("  %s brings it at %s: wind %.0f{lb}, dead %.0f lb", who, s.m.u.Length(e.at.Sub(g.Low).Dot(g.Up)), whole(f.W), whole(f.D)))
		}
	}
	return out
}

// pairWorkings tells the statics of a pair of rafters.
func (s *caseState) pairWorkings(p *pair) []string {
	l, r := s.m.sideLoads(p.a, s.roofs[p.a.roof]), s.m.sideLoads(p.b, s.roofs[p.b.roof])
	over, pull := p.across(l.moment, r.moment), p.tension(l.moment, r.moment)
	out := []string{
		fmt.Sprintf("the pair, %s the first of it, bears at the middle of its seats, %s and %s up the plan and %s apart; the ridge lies %s from the first and %s up",
			p.a.Member.ID, s.m.u.Length(p.a.foot()), s.m.u.Length(p.b.foot()), s.m.u.Length(p.span), s.m.u.Length(p.apex), s.m.u.Length(p.rise)),
		s.m.u.Sprintf("moment about the first's plate: wind %.0f{lb-in}, dead %.0f lb-in; the other's about its own: wind %.0f{lb-in}, dead %.0f lb-in (wind times 1 + tan²: it is normal to the slope)",
			l.moment.W, l.moment.D, r.moment.W, r.moment.D),
	}
	level := "first moment less what goes across times the distance, over the height"
	if p.high != [2]float64{} {
		out = append(out, fmt.Sprintf("the feet stand at different heights: the ridge is %s over the first and %s over the other, and the height above is both, each weighed by the other's distance", s.m.u.Length(p.high[0]), s.m.u.Length(p.high[1])))
		level = "each moment times the other's distance, their sum over the span times the height above"
	}
	out = append(out,
		s.m.u.Sprintf("their difference over the span goes across the ridge: wind %.0f{lb}, dead %.0f lb; the first plate holds its side's load less that, the other its side's and that", whole(over.W), whole(over.D)),
		s.m.u.Sprintf("horizontal tension at the ridge: %s: wind %.0f{lb}, dead %.0f lb", level, pull.W, pull.D))
	if f := s.brought[p.n]; f != (Force{}) {
		k := p.far()
		out = append(out, s.m.u.Sprintf("hips, valleys and rafters that end at the ridge here bring it wind %.0f{lb}, dead %.0f lb more: times %.3f to the first plate, %.3f to the other, and across the ridge times %.3f, the second part by the first's distance over the height",
			f.W, f.D, 1-k, k, p.tension(Force{W: p.apex}, Force{}).W))
	}
	return out
}

// plateWorkings tells which rafters bring a stud or header its load.
func (s *caseState) plateWorkings(j *framing.Joint) (out []string) {
	p := s.m.byWall[j.Wall]
	if p == nil {
		return nil
	}
	for _, x := range s.m.joints[j.Wall] {
		f, ok := s.rafters[x]
		if !ok || !bears(x.Kind) {
			continue
		}
		for _, on := range p.places(x.Station) {
			if on.joint() == j {
				out = append(out, s.m.u.Sprintf("from %s: wind %.0f{lb}, dead %.0f lb, times %.3f by lever arm", x.ID, f.W, f.D, on.k))
			}
		}
	}
	out = append(out, s.ceilingWorkings(p, j)...)
	for _, o := range p.openings {
		if o.ends[0] == j || o.ends[1] == j {
			out = append(out, fmt.Sprintf("the header spans from %s to %s", s.m.u.Length(o.lo), s.m.u.Length(o.hi)))
		}
	}
	return out
}

// footWorkings tells what comes down on a stud, and its stretch of wall.
func (s *caseState) footWorkings(j *framing.Joint) (out []string) {
	for _, p := range s.m.paths {
		for _, k := range p.carriers {
			if len(k.below) > 0 && k.below[0].c != nil && k.below[0].c.base == j {
				f := s.foot(k)
				out = append(out, s.m.u.Sprintf("from %s: wind %.0f{lb}, dead %.0f lb", k.base.ID, f.W, f.D))
			}
			if k.base == j {
				out = append(out, s.m.u.Sprintf("its length of wall: %s long, %s high, %.2f psf, openings counted as wall", s.m.u.Length(k.share), s.m.u.Length(p.w.TopHeight()), s.m.dead.wall(p.w)))
				if own := k.floor.D - k.byBeams(); own > 0.005 {
					psf := s.m.dead.floor(s.m.plan.Above(p.top))
					out = append(out, s.m.u.Sprintf("floor on its plates: %.2f psf on %s of joists", psf, s.m.u.Length(own/k.share*144/psf)))
				}
				for _, x := range k.beams {
					out = append(out, s.m.u.Sprintf("from beam %s, half of the joists on each side of it, by lever: dead %.0f{lb}", x.beam, x.lb))
				}
			}
		}
	}
	return out
}

// pileWorkings tells which studs bring a pile its load.
func (s *caseState) pileWorkings(j *framing.Joint) (out []string) {
	for _, p := range s.m.paths {
		for _, k := range p.carriers {
			for _, g := range k.ground {
				if g.pile.joint == j && math.Abs(g.k) > 0.0005 {
					f := s.foot(k)
					out = append(out, s.m.u.Sprintf("from %s: wind %.0f{lb}, dead %.0f lb, times %.3f by lever arm along girder and joists", k.base.ID, f.W, f.D, g.k))
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
			out = append(out, a.u.Sprintf("%s, %s end, wind from %s: 0.6 of %.0f lb of tension and %.0f lb of the shear's couple down to the girder's middle, times %.3f by lever arm along girder and joists: %.0f lb", p.segment.Name, p.end,
				sides[p.axis][p.sense], p.segment.Lifts, a.floorCouple(p.segment), p.k, p.lb))
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
