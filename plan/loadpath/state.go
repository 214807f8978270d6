package loadpath

import (
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// caseState is where force is in one wind case: on plates, studs, headers,
// posts and piles, and what was lost on the way. run makes it; nothing changes
// it after.
type caseState struct {
	m        *model
	wind     windCase
	roofs    map[*plan.Roof]roofCase
	rafters  map[*framing.Joint]Force // what rafters bring to the joints that hold them
	pulls    []Force                  // tension across the ridge, by pair
	brought  []Force                  // to the ridge of a pair by what ends there beside it
	walls    []wallForce              // by wallPath
	carriers []carried                // by carrier
	headers  [][2]Force               // at both ends, by opening
	posts    []Force                  // by porch post
	poles    []Force                  // by post under a ridge
	piles    []Force                  // by pile, the floor's weight included
	// joists is what lifts the joints of joists that walls stand on, still that of dead load alone.
	joists, still map[*framing.Joint]*joistPull

	lost    map[*plan.Level]Force  // what found nothing below
	orphans map[*plan.Wall]float64 // the largest of one stud of it, lb ASD
	// unheld is uplift of roof members without a bearing, ridgeLost of ridge
	// beams without a wall, lb ASD.
	unheld    map[*framing.Member]float64
	ridgeLost map[*plan.Roof]float64
}

// wallForce is what reached the top plates of a wall: from the roof, and from
// studs above that no stud here meets.
type wallForce struct{ roof, above Force }

// carried is what came on a full-height member: from the plates, from a
// header beside it, and straight from the stud above.
type carried struct{ top, head, direct Force }

// run sends one wind case down the house, from the roof to the piles.
func (m *model) run(c windCase) *caseState {
	s := m.newCase(c)
	s.fromRoof()
	s.fromCeilings()
	for _, p := range m.paths { // highest first
		for _, k := range p.carriers {
			s.handDown(k, s.foot(k))
		}
	}
	return s
}

// newCase returns a case with nothing but the weight of floors on walls and
// piles.
func (m *model) newCase(c windCase) *caseState {
	s := &caseState{
		m: m, wind: c, roofs: make(map[*plan.Roof]roofCase, len(m.plan.Roofs)), rafters: make(map[*framing.Joint]Force, 2*len(m.rafters)),
		pulls: make([]Force, len(m.pairs)), brought: make([]Force, len(m.pairs)), walls: make([]wallForce, len(m.paths)), carriers: make([]carried, m.wallModel.carriers),
		headers: make([][2]Force, m.wallModel.headers), posts: make([]Force, len(m.porches)), poles: make([]Force, m.poleCount), piles: make([]Force, m.piles.count),
		joists: map[*framing.Joint]*joistPull{}, still: map[*framing.Joint]*joistPull{},
		lost: map[*plan.Level]Force{}, orphans: map[*plan.Wall]float64{},
		unheld: map[*framing.Member]float64{}, ridgeLost: map[*plan.Roof]float64{},
	}
	for _, r := range m.house.Roofs() {
		s.roofs[r] = m.onRoof(c, r)
	}
	for _, p := range m.paths {
		for _, k := range p.carriers {
			s.carriers[k.n].top = k.floor
		}
	}
	for _, g := range m.piles.girders {
		for _, x := range g.piles {
			s.piles[x.n] = down(x.weight)
		}
	}
	return s
}

// foot returns what a carrier hands down, its own weight included.
func (s *caseState) foot(k *carrier) Force {
	on := s.carriers[k.n]
	f := on.top.add(on.head).add(on.direct)
	f.D += k.weight
	return f
}

// handDown gives the force at a carrier's foot to what is below.
func (s *caseState) handDown(k *carrier, f Force) {
	s.liftJoists(k, f)
	switch {
	case k.base != nil && k.base.Kind == plan.StudBase && len(k.ground) > 0:
		for _, g := range k.ground {
			s.piles[g.pile.n].take(f.times(g.k))
		}
	case k.base != nil && k.base.Kind == plan.StudBase && k.wall.w.Level.Index > 0 && len(k.joists) > 0 && !k.tips:
		s.overJoists(k, f)
	case k.base != nil && k.base.Kind == plan.StudBase && k.wall.w.Level.Index > 0:
		s.lose(k.wall.w, f) // on joists of an upper floor that no wall or beam carries, or one alone
	case k.base != nil && k.base.Kind == plan.StudBase:
		// slab, stem wall or a floor that no girder carries: the path ends here
	case len(k.below) > 0 && k.below[0].c != nil:
		s.carriers[k.below[0].c.n].direct.take(f)
	case len(k.below) > 0:
		s.walls[k.below[0].wall.n].above.take(f)
		s.load(k.below[0].wall, k.below[0].station, f)
	default:
		s.lose(k.wall.w, f)
	}
}

// lose notes a force that comes down in a wall and finds nothing below.
func (s *caseState) lose(w *plan.Wall, f Force) {
	l := s.lost[w.Level]
	l.take(f)
	s.lost[w.Level] = l
	if d := f.net(ASD); d > s.orphans[w] {
		s.orphans[w] = d
	}
}

// fromRoof brings the roof's reactions to plates, beams and ridges.
func (s *caseState) fromRoof() {
	for _, x := range s.m.rafters {
		if x.Width <= 0 {
			continue
		}
		if x.pair == nil {
			s.m.roofLoads(x, s.roofs[x.roof], func(p patch) { s.rest(x, p.mid(), p.force, 0) })
		} else if x == x.pair.a {
			s.pairLoads(x.pair)
		}
	}
}

// deepest is how many members may rest on each other: more go in a circle.
const deepest = 8

// rest shares a force at u on a strip to the supports on both sides of it,
// or past an end by the lever of the two nearest. The strip lies on depth
// others.
func (s *caseState) rest(x *strip, u float64, f Force, depth int) {
	n := len(x.ends)
	if x.pair != nil && x.pair.joint != nil {
		s.onPair(x, u, f, depth)
		return
	}
	if x.pair != nil && len(x.pair.a.ends) > 0 && len(x.pair.b.ends) > 0 {
		s.onTruss(x, u, f, depth)
		return
	}
	if n == 0 {
		s.unheld[x.Member] += math.Max(0, f.net(ASD))
		return
	}
	if n == 1 {
		s.react(x.ends[0], f, depth)
		return
	}
	i := 1
	for i < n-1 && u > x.ends[i].u {
		i++
	}
	l, r := x.ends[i-1], x.ends[i]
	if r.u-l.u < 1 {
		s.react(l, f, depth)
		return
	}
	k := (u - l.u) / (r.u - l.u)
	s.react(l, f.times(1-k), depth)
	s.react(r, f.times(k), depth)
}

// react takes a reaction at one support and passes it on.
func (s *caseState) react(e support, f Force, depth int) {
	if e.joint != nil {
		s.at(e.joint, f)
	}
	if e.foot != nil {
		s.at(e.foot, f)
	}
	switch {
	case e.wall != nil:
		s.roofLoad(e.wall, e.station, f)
	case e.plate != nil:
		s.onPlate(e.plate, f)
	case e.on != nil && depth > deepest: // members that rest on each other
		s.unheld[e.on.Member] += math.Max(0, f.net(ASD))
	case e.on != nil:
		s.rest(e.on, e.at.Sub(e.on.Low).Dot(e.on.Up), f, depth+1)
	case e.ridge != nil:
		s.onRidge(e.ridge, e.at, f)
	}
}

// at adds to what rafters bring to a joint.
func (s *caseState) at(j *framing.Joint, f Force) {
	g := s.rafters[j]
	g.take(f)
	s.rafters[j] = g
}

// onPlate puts a rafter's reaction on the wall or porch beam under it.
func (s *caseState) onPlate(j *framing.Joint, f Force) {
	if o := s.m.byWall[j.Around]; o != nil { // half on each wall of a corner
		f = f.times(0.5)
		s.roofLoad(o, j.AroundAt, f)
	}
	if j.Wall != nil {
		if p := s.m.byWall[j.Wall]; p != nil {
			s.roofLoad(p, j.Station, f)
			return
		}
	}
	s.onPorch(j, f)
}

// onPorch puts a rafter's reaction on the posts on both sides of it.
func (s *caseState) onPorch(j *framing.Joint, f Force) {
	l, r := s.m.postsBeside(j)
	switch {
	case l == nil && r == nil:
		s.unheld[j.First()] += math.Max(0, f.net(ASD))
	case l == nil || l == r:
		s.posts[r.n].take(f)
	case r == nil:
		s.posts[l.n].take(f)
	default:
		k := (j.Station - l.station) / (r.station - l.station)
		s.posts[l.n].take(f.times(1 - k))
		s.posts[r.n].take(f.times(k))
	}
}

// onRidge takes a force at a ridge to what holds it there.
func (s *caseState) onRidge(r *ridge, p geom.Vec2, f Force) {
	on := r.held(axis(p, r.roof.RidgeAxis()))
	if len(on) == 0 {
		s.onFeet(r, f)
	}
	for _, h := range on {
		s.hold(h, f)
	}
}

// onFeet hands a force at a ridge that no wall carries to the plates under
// what leans on it.
func (s *caseState) onFeet(r *ridge, f Force) {
	each := f.times(1 / float64(len(r.feet)))
	for _, j := range r.feet {
		s.onPlate(j, each)
		s.at(j, each)
	}
	if len(r.feet) == 0 {
		s.ridgeLost[r.roof] += math.Max(0, f.net(ASD))
	}
}

// roofLoad puts a roof's reaction on the top plates of a wall at a station.
func (s *caseState) roofLoad(p *wallPath, station float64, f Force) {
	s.walls[p.n].roof.take(f)
	s.load(p, station, f)
}

// load puts a force on the top plates of a wall at a station.
func (s *caseState) load(p *wallPath, station float64, f Force) {
	for _, x := range p.places(station) {
		if x.header != nil {
			s.headers[x.header.n][x.end].take(f.times(x.k))
			s.carriers[x.c.n].head.take(f.times(x.k))
			continue
		}
		s.carriers[x.c.n].top.take(f.times(x.k))
	}
}

// pairLoads takes the load of both rafters as of one stiff piece on two
// plates: what each plate holds, and the pull across the ridge from the
// moment about one plate.
func (s *caseState) pairLoads(p *pair) {
	l, r := s.m.sideLoads(p.a, s.roofs[p.a.roof]), s.m.sideLoads(p.b, s.roofs[p.b.roof])
	over := p.across(l.moment, r.moment) // passes the ridge from a to b
	s.reactPair(p, l.sum.add(over.times(-1)), r.sum.add(over))
	s.pulls[p.n].take(p.tension(l.moment, r.moment))
}

// reactPair hands the reactions of a pair to its lowest supports.
func (s *caseState) reactPair(p *pair, left, right Force) {
	for i, x := range []*strip{p.a, p.b} {
		f := []Force{left, right}[i]
		if len(x.ends) == 0 {
			s.unheld[x.Member] += max(0, f.net(ASD))
			continue
		}
		s.react(x.ends[0], f, 0)
	}
}

// onPair takes a force at u on one rafter of a pair, as what a dormer's header brings to a
// trimmer: the pair is one stiff piece on two feet, hinged at the ridge. What is brought
// below a foot's support is that support's.
func (s *caseState) onPair(x *strip, u float64, f Force, depth int) {
	p, o := x.pair, x.pair.a
	if o == x {
		o = p.b
	}
	if len(x.ends) == 0 || len(o.ends) == 0 {
		s.unheld[x.Member] += math.Max(0, f.net(ASD))
		return
	}
	if foot := x.ends[0]; depth > deepest-3 && foot.plate != nil { // across from each other two dormers hand on in a circle what grows less each time
		s.react(foot, f, depth)
		return
	}
	turn, still := f.times(math.Max(0, u-x.foot())), Force{}
	over := p.across(turn, still)
	if x == p.b {
		turn, still = still, turn
		over = p.across(turn, still).times(-1)
	}
	s.react(x.ends[0], f.add(over.times(-1)), depth+1)
	s.react(o.ends[0], over, depth+1)
	s.pulls[p.n].take(p.tension(turn, still))
}

// onTruss takes a force at u along a girder or hip truss, as what hangs on it or what its
// level top carries: the truss is a stiff beam on its two bearings.
func (s *caseState) onTruss(x *strip, u float64, f Force, depth int) {
	l, r := x.pair.a.ends[0], x.pair.b.ends[0]
	k := x.At(u).Sub(l.at).Dot(x.pair.a.Up) / r.at.Sub(l.at).Dot(x.pair.a.Up)
	s.react(l, f.times(1-k), depth)
	s.react(r, f.times(k), depth)
}

// lift takes a force brought to the ridge of a pair.
func (s *caseState) lift(p *pair, f Force) {
	k := p.far()
	s.reactPair(p, f.times(1-k), f.times(k))
	s.brought[p.n].take(f)
	s.pulls[p.n].take(p.tension(f.times(p.apex), Force{}))
}
