package loadpath

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/placement"
	"galewright/plan/units"
	"galewright/plan/wind"
)

// model is the house as force goes through it, without any force. newModel
// builds it; nothing changes it after. What has a number n in it keeps its
// forces in a caseState or a gustState at that number.
type model struct {
	givens
	roofModel
	wallModel
	lookups
	piles   *piling
	porches []*porchPost
	decks   []*diaphragm // highest first
	lines   []*ShearLine // by deck, those along x first
	pieces  int          // sheathed segments of all lines
}

// givens is what the model is built from.
type givens struct {
	*fittings
	side   plan.Side // that wind comes from; "" for any
	plan   *plan.Plan
	u      units.System // of the plan's words
	house  *framing.House
	placed *placement.Placement
	basis  wind.Basis
	main   *plan.Roof
	choice wind.Choice
	q      float64 // qh with Kd of the envelope procedure, psf, strength
}

// roofModel is what carries the roof.
type roofModel struct {
	rafters []*strip
	level   []*strip // of rafters, the level tops of hip and girder trusses
	pairs   []*pair
	pairAt  map[*framing.Joint]*pair
	ridges  []*ridge
	// poleCount is how many posts stand under ridges
	poleCount int
	// ceilings are the ceiling joists with the weight on them, in the order of the house
	ceilings []*ceilingJoist
	walled   map[*plan.Roof]extent // the part of each roof's area with walls round it
	open     map[*plan.Roof]bool   // no walls stand under it
	indoors  map[*plan.Level]outline
}

// wallModel is the walls as uplift goes through them.
type wallModel struct {
	paths             []*wallPath // highest first
	byWall            map[*plan.Wall]*wallPath
	carriers, headers int // of all walls
	floors            map[*plan.Level]*joistFloor
	beamAreas         map[*framing.Beam][]beamArea // of floors
}

// lookups finds joints.
type lookups struct {
	footOf   map[*framing.Member]*framing.Joint   // stud-stud or stud-base
	byFirst  map[*framing.Member][]*framing.Joint // that hold the member
	wallEnds map[*plan.Wall][]*framing.Joint
	joints   map[*plan.Wall][]*framing.Joint
}

// porchPost is one post of a porch beam.
type porchPost struct {
	n         int
	porch     *plan.Porch
	station   float64
	cap, base *framing.Joint
	// brings are the other sides' ends on the same post, at a corner.
	brings []*porchPost
}

// builder makes a model; the rest of it is needed no longer then.
type builder struct {
	*model
	bearing  map[bearingCell][]*plan.Wall
	standing map[*plan.Wall][]*framing.Member      // see uprights
	corners  map[*framing.Member][]*framing.Member // see atCorner
}

// newModel reads the load path's model out of a framed house.
func newModel(pl *placement.Placement, f *fittings) *model {
	b := &builder{model: &model{givens: givensOf(pl, f)}, bearing: map[bearingCell][]*plan.Wall{}}
	b.byWall, b.pairAt, b.walled, b.open = map[*plan.Wall]*wallPath{}, map[*framing.Joint]*pair{}, map[*plan.Roof]extent{}, map[*plan.Roof]bool{}
	b.indoors = map[*plan.Level]outline{}
	for _, l := range b.plan.Levels {
		b.indoors[l] = outlineOf(b.plan, l)
	}
	for _, w := range b.plan.Walls {
		if w.Bearing {
			b.enterBearing(w)
		}
	}
	for _, r := range b.house.Roofs() {
		b.walled[r], b.open[r] = walledArea(b.plan, r)
	}
	b.lookups = lookupsOf(b.house)
	b.piles = b.newPiling()
	b.porchPosts()
	b.joistFloors()
	b.beamAreas = map[*framing.Beam][]beamArea{}
	b.wallPaths()
	b.standOnJoists()
	b.strips()
	b.shapePairs()
	b.ridgeEnds()
	b.poles()
	b.hangCeilings()
	b.number()
	b.layDecks()
	return b.model
}

func givensOf(pl *placement.Placement, f *fittings) givens {
	g := givens{fittings: f, plan: pl.House.Plan, u: pl.House.Plan.Project.Units, house: pl.House, placed: pl}
	g.basis, g.main = basisOf(g.house)
	g.choice, _ = chosen(g.house, g.basis) // Run has refused what it refuses
	g.q = g.basis.Envelope().QKd
	return g
}

func lookupsOf(h *framing.House) lookups {
	l := lookups{
		footOf:   make(map[*framing.Member]*framing.Joint, len(h.Joints)/2),
		byFirst:  make(map[*framing.Member][]*framing.Joint, len(h.Joints)/2),
		wallEnds: map[*plan.Wall][]*framing.Joint{}, joints: map[*plan.Wall][]*framing.Joint{},
	}
	for _, j := range h.Joints {
		if m := j.First(); m != nil {
			l.byFirst[m] = append(l.byFirst[m], j)
		}
		if j.Kind == plan.StudStud || j.Kind == plan.StudBase {
			l.footOf[j.First()] = j
		}
		if j.Wall != nil {
			l.joints[j.Wall] = append(l.joints[j.Wall], j)
		}
		if j.Kind == plan.WallEnd && j.Wall != nil {
			l.wallEnds[j.Wall] = append(l.wallEnds[j.Wall], j)
		}
	}
	return l
}

// shapePairs gives the pairs of rafters their geometry and their joints.
func (b *builder) shapePairs() {
	for _, p := range b.pairs {
		p.shape()
		if p.joint != nil {
			b.pairAt[p.joint] = p
		}
	}
}

// number gives everything that carries force its place in a caseState.
func (b *builder) number() {
	for i, p := range b.pairs {
		p.n = i
	}
	for i, x := range b.porches {
		x.n = i
	}
	for i, p := range b.paths {
		p.n = i
		for _, k := range p.carriers {
			k.n, b.carriers = b.carriers, b.carriers+1
		}
		for _, o := range p.openings {
			o.n, b.headers = b.headers, b.headers+1
		}
	}
}

// porchPosts finds the posts of porch beams.
func (b *builder) porchPosts() {
	porch := map[string]*plan.Porch{}
	for _, p := range b.plan.Porches {
		porch[p.Name] = p
	}
	type key struct {
		name    string
		station float64
	}
	found := map[key]*porchPost{}
	for _, j := range b.house.Joints {
		p := porch[j.Host]
		if p == nil || j.Roof != nil || j.Kind != plan.PostBase && j.Kind != plan.PostCap {
			continue
		}
		k := key{j.Host, math.Round(j.Station)}
		if found[k] == nil {
			found[k] = &porchPost{porch: p, station: j.Station}
			b.porches = append(b.porches, found[k])
		}
		if j.Kind == plan.PostBase {
			found[k].base = j
		} else {
			found[k].cap = j
		}
	}
	b.cornerPosts()
}

// cornerPosts lets the base of a post at a corner, where the beams of two sides lie on it,
// take what both bring.
func (b *builder) cornerPosts() {
	for _, x := range b.porches {
		for _, o := range b.porches {
			if x.base != nil && o.base == nil && o.cap != nil && slices.Contains(o.cap.Members, x.base.First()) {
				x.brings = append(x.brings, o)
			}
		}
	}
}

// postsBeside returns the posts of a porch beam on both sides of a joint; one
// that stands under it is both.
func (m *model) postsBeside(j *framing.Joint) (left, right *porchPost) {
	for _, x := range m.porches {
		if x.porch.Name != j.Host {
			continue
		}
		if x.station <= j.Station && (left == nil || x.station > left.station) {
			left = x
		}
		if x.station >= j.Station && (right == nil || x.station < right.station) {
			right = x
		}
	}
	return left, right
}

// endReach is how far from a wall the end of a ridge beam over it may lie on
// plan, in, its overhang apart.
const endReach = 12

// ridgeEnds finds the walls under the ends of ridge beams, and the feet of
// what leans on each ridge.
func (b *builder) ridgeEnds() {
	for _, s := range b.rafters {
		for i, e := range s.ends {
			if e.ridge != nil && i > 0 && s.ends[0].plate != nil {
				e.ridge.feet = append(e.ridge.feet, s.ends[0].plate)
			}
		}
	}
	for _, r := range b.ridges {
		for _, at := range []float64{r.lo, r.hi} {
			if end, ok := b.wallUnder(r, at); ok {
				r.ends = append(r.ends, end)
			}
		}
		if len(r.ends) == 2 && r.ends[1].at-r.ends[0].at < 1 {
			r.ends = r.ends[:1]
		}
	}
}

// wallUnder returns the wall under the place at along a ridge.
func (b *builder) wallUnder(r *ridge, at float64) (ridgeEnd, bool) {
	p := geom.Vec2{X: at, Y: r.cross}
	if r.roof.RidgeAxis() == 1 {
		p = geom.Vec2{X: r.cross, Y: at}
	}
	for _, w := range b.paths {
		s, t := w.w.Frame().Local(p)
		if w.top == r.roof.Over && len(w.carriers) > 0 && s > -endReach && s < w.w.Length()+endReach && math.Abs(t-w.w.Depth()/2) < endReach+r.roof.Rake {
			return ridgeEnd{at, w, s}, true
		}
	}
	return ridgeEnd{}, false
}
