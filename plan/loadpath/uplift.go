package loadpath

import (
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// peak is the worst force at one joint over the wind cases, and what it is
// made of in that case.
type peak struct {
	force  Force
	demand float64 // ASD
	wind   windCase
	parts  [4]Force // named by the Demand of the kind of joint
	set    bool
}

// note keeps f when it asks for more than the joint has seen.
func (a *analysis) note(j *framing.Joint, c windCase, f Force, parts [4]Force) {
	if j == nil {
		return
	}
	p := a.peaks[j]
	if p == nil {
		p = &peak{}
		a.peaks[j] = p
	}
	if d := f.net(ASD); !p.set || d > p.demand {
		*p = peak{f, d, c, parts, true}
	}
}

// runUplift sends every wind case down the house.
func (a *analysis) runUplift() {
	for _, c := range cases() {
		a.runCase(c)
	}
}

// runCase sends one wind case down the house, from the roof to the piles.
func (a *analysis) runCase(c windCase) {
	a.lost = map[*plan.Level]Force{}
	for _, p := range a.paths {
		p.reset()
	}
	for _, g := range a.piles.girders {
		for _, x := range g.piles {
			x.load = down(x.weight)
		}
	}
	for _, x := range a.porches {
		x.load = Force{}
	}
	a.fromRoof(c)
	for _, p := range a.paths { // highest first
		a.through(p, c)
	}
	for _, g := range a.piles.girders {
		for _, x := range g.piles {
			a.note(x.joint, c, x.load, [4]Force{x.load.add(Force{D: -x.weight}), {}, {}, down(x.weight)})
		}
	}
	for _, x := range a.porches {
		a.note(x.cap, c, x.load, [4]Force{x.load})
		a.note(x.base, c, x.load, [4]Force{x.load})
	}
	a.balance(c)
}

// through takes one wall's forces from its plates to its foot and below.
func (a *analysis) through(p *wallPath, c windCase) {
	for _, o := range p.openings {
		for i, j := range o.ends {
			a.note(j, c, o.load[i], [4]Force{1: o.load[i]})
		}
	}
	for _, k := range p.carriers {
		a.note(k.st, c, k.top, [4]Force{0: k.top})
		f := k.total()
		a.note(k.base, c, f, [4]Force{k.top, k.head, k.direct, down(k.weight)})
		a.handDown(k, f)
	}
}

// handDown gives the force at a carrier's foot to what is below.
func (a *analysis) handDown(k *carrier, f Force) {
	switch {
	case k.base != nil && k.base.Kind == plan.StudBase && len(k.ground) > 0:
		for _, g := range k.ground {
			g.pile.load.take(f.times(g.k))
		}
	case k.base != nil && k.base.Kind == plan.StudBase:
		// slab, stem wall or a floor that no girder carries: the path ends here
	case len(k.below) > 0 && k.below[0].c != nil:
		k.below[0].c.direct.take(f)
	case len(k.below) > 0:
		k.below[0].wall.above.take(f)
		k.below[0].wall.load(k.below[0].station, f)
	default:
		l := a.lost[k.wall.w.Level]
		l.take(f)
		a.lost[k.wall.w.Level] = l
		if d := f.net(ASD); d > a.orphan[k.wall.w] {
			a.orphan[k.wall.w] = d
		}
	}
}

// fromRoof brings the roof's reactions to plates, beams and ridges.
func (a *analysis) fromRoof(c windCase) {
	if a.rafterLoad == nil {
		a.rafterLoad = map[*framing.Joint]Force{}
	}
	clear(a.rafterLoad) // it is as large in every case
	a.roofCases = map[*plan.Roof]roofCase{}
	for _, p := range a.pairs {
		p.pull = Force{}
	}
	for _, s := range a.rafters {
		if s.width <= 0 {
			continue
		}
		if s.pair == nil {
			a.roofLoads(s, c, a.roofCase(c, s.roof), func(p patch) { a.rest(s, p.mid(), p.force) })
		} else if s == s.pair.a {
			a.pairLoads(s.pair, c)
		}
	}
	for _, p := range a.pairs {
		a.note(p.joint, c, p.pull, [4]Force{p.pull})
	}
	for _, s := range a.rafters {
		for _, e := range s.ends {
			if e.joint == nil {
				continue
			}
			if f, ok := a.rafterLoad[e.joint]; ok {
				a.note(e.joint, c, f, [4]Force{f})
			}
		}
	}
}

// rest shares a force at u on a strip to the supports on both sides of it,
// or past an end by the lever of the two nearest.
func (a *analysis) rest(s *strip, u float64, f Force) {
	n := len(s.ends)
	if n == 0 {
		a.unheld += math.Max(0, f.net(ASD))
		return
	}
	if n == 1 {
		a.react(s.ends[0], f)
		return
	}
	i := 1
	for i < n-1 && u > s.ends[i].u {
		i++
	}
	l, r := s.ends[i-1], s.ends[i]
	if r.u-l.u < 1 {
		a.react(l, f)
		return
	}
	k := (u - l.u) / (r.u - l.u)
	a.react(l, f.times(1-k))
	a.react(r, f.times(k))
}

// react takes a reaction at one support and passes it on.
func (a *analysis) react(e support, f Force) {
	if e.joint != nil {
		g := a.rafterLoad[e.joint]
		g.take(f)
		a.rafterLoad[e.joint] = g
	}
	switch {
	case e.plate != nil:
		a.onPlate(e.plate, f)
	case e.on != nil && a.depth > 8: // members that rest on each other
		a.unheld += math.Max(0, f.net(ASD))
	case e.on != nil:
		a.depth++
		defer func() { a.depth-- }()
		a.rest(e.on, e.at.Sub(e.on.low).Dot(e.on.up), f)
	case e.ridge != nil:
		a.onRidge(e.ridge, e.at, f)
	}
}

// onPlate puts a rafter's reaction on the wall or porch beam under it.
func (a *analysis) onPlate(j *framing.Joint, f Force) {
	if j.Wall != nil {
		if p := a.byWall[j.Wall]; p != nil {
			p.roofLoad(j.Station, f)
			return
		}
	}
	a.onPorch(j, f)
}

// onRidge takes a force to the walls under the ends of a ridge beam, or at a
// ridge board to the nearest pair of rafters.
func (a *analysis) onRidge(r *ridge, p geom.Vec2, f Force) {
	if near := r.nearest(p); near != nil && !r.bearing {
		near.lift(a, f)
		return
	}
	u := axis(p, ridgeAxis(r.roof))
	switch len(r.ends) {
	case 0:
		for _, j := range r.feet {
			a.onPlate(j, f.times(1/float64(len(r.feet))))
			g := a.rafterLoad[j]
			g.take(f.times(1 / float64(len(r.feet))))
			a.rafterLoad[j] = g
		}
		if len(r.feet) == 0 {
			a.ridgeLost += math.Max(0, f.net(ASD))
		}
	case 1:
		r.ends[0].wall.roofLoad(r.ends[0].station, f)
	default:
		l, h := r.ends[0], r.ends[len(r.ends)-1]
		k := (u - l.at) / (h.at - l.at)
		l.wall.roofLoad(l.station, f.times(1-k))
		h.wall.roofLoad(h.station, f.times(k))
	}
}

// nearest returns the pair of rafters nearest to p along the ridge that
// stands on plates with both feet, or nil.
func (r *ridge) nearest(p geom.Vec2) (best *pair) {
	at := axis(p, ridgeAxis(r.roof))
	for _, q := range r.pairs {
		if q.onPlates() && (best == nil || math.Abs(q.along-at) < math.Abs(best.along-at)) {
			best = q
		}
	}
	return best
}

// onPlates tells whether plates hold both rafters of the pair.
func (p *pair) onPlates() bool {
	return len(p.a.ends) > 0 && p.a.ends[0].plate != nil && len(p.b.ends) > 0 && p.b.ends[0].plate != nil
}

// roofCase returns what case c asks of a roof, worked out once a case.
func (a *analysis) roofCase(c windCase, r *plan.Roof) roofCase {
	rc, ok := a.roofCases[r]
	if !ok {
		rc = a.onRoof(c, r)
		a.roofCases[r] = rc
	}
	return rc
}
