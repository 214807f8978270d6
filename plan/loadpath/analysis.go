package loadpath

import (
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/placement"
	"galewright/plan/timber"
	"galewright/plan/wind"
)

// analysis is the load path while it is worked out.
type analysis struct {
	plan      *plan.Plan
	house     *framing.House
	placed    *placement.Placement
	basis     wind.Basis
	main      *plan.Roof
	q         float64 // qh with Kd, psf, strength
	species   timber.Species
	dead      *deadLoads
	rafters   []*strip
	pairs     []*pair
	pairAt    map[*framing.Joint]*pair
	ridges    []*ridge
	paths     []*wallPath // highest first
	byWall    map[*plan.Wall]*wallPath
	bearing   map[bearingCell][]*plan.Wall
	piles     *piling
	porches   []*porchPost
	faces     *faceGrid
	peaks     map[*framing.Joint]*peak
	coveredBy map[*plan.Roof]extent
	// capacities are those worked out so far.
	capacities map[capacityKey]Capacity
	orphan     map[*plan.Wall]float64 // largest uplift that found nothing below, lb ASD
	// this case:
	rafterLoad map[*framing.Joint]Force
	roofCases  map[*plan.Roof]roofCase
	lost       map[*plan.Level]Force
	depth      int // of members resting on members
	// over all cases, lb ASD:
	unheld, ridgeLost float64
	balances          []Balance
	lateral           *lateral
	footOf            map[*framing.Member]*framing.Joint // stud-stud or stud-base
	wallEnds          map[*plan.Wall][]*framing.Joint
	joints            map[*plan.Wall][]*framing.Joint
}

// porchPost is one post of a porch beam.
type porchPost struct {
	porch     *plan.Porch
	station   float64
	cap, base *framing.Joint
	load      Force // this case
}

// analyze works the uplift and the lateral load path out.
func analyze(pl *placement.Placement) *analysis {
	a := &analysis{
		plan: pl.House.Plan, house: pl.House, placed: pl, dead: deadOf(pl.House.Plan),
		byWall: map[*plan.Wall]*wallPath{}, bearing: map[bearingCell][]*plan.Wall{},
		peaks: make(map[*framing.Joint]*peak, len(pl.House.Joints)), capacities: map[capacityKey]Capacity{}, coveredBy: map[*plan.Roof]extent{}, orphan: map[*plan.Wall]float64{},
	}
	a.basis, a.main = basisOf(a.house)
	a.q = a.basis.Envelope().QKd
	a.species = speciesOf(a.plan)
	for _, w := range a.plan.Walls {
		if w.Bearing {
			a.enterBearing(w)
		}
	}
	a.footOf = make(map[*framing.Member]*framing.Joint, len(a.house.Joints)/2)
	a.wallEnds, a.joints = map[*plan.Wall][]*framing.Joint{}, map[*plan.Wall][]*framing.Joint{}
	for _, j := range a.house.Joints {
		if j.Kind == plan.StudStud || j.Kind == plan.StudBase {
			a.footOf[j.First()] = j
		}
		if j.Wall != nil {
			a.joints[j.Wall] = append(a.joints[j.Wall], j)
		}
		if j.Kind == plan.WallEnd && j.Wall != nil {
			a.wallEnds[j.Wall] = append(a.wallEnds[j.Wall], j)
		}
	}
	a.piles = a.newPiling()
	a.porchPosts()
	a.faces = newFaceGrid(a.house.Roof)
	a.wallPaths()
	a.strips()
	a.pairAt = map[*framing.Joint]*pair{}
	for _, p := range a.pairs {
		p.shape()
		if p.joint != nil {
			a.pairAt[p.joint] = p
		}
	}
	a.ridgeEnds()
	a.runUplift()
	a.lateral = a.runLateral()
	return a
}

// porchPosts finds the posts of porch beams.
func (a *analysis) porchPosts() {
	porch := map[string]*plan.Porch{}
	for _, p := range a.plan.Porches {
		porch[p.Name] = p
	}
	type key struct {
		name    string
		station float64
	}
	found := map[key]*porchPost{}
	for _, j := range a.house.Joints {
		p := porch[j.Host]
		if p == nil || j.Kind != plan.PostBase && j.Kind != plan.PostCap {
			continue
		}
		k := key{j.Host, math.Round(j.Station)}
		if found[k] == nil {
			found[k] = &porchPost{porch: p, station: j.Station}
			a.porches = append(a.porches, found[k])
		}
		if j.Kind == plan.PostBase {
			found[k].base = j
		} else {
			found[k].cap = j
		}
	}
}

// onPorch puts a rafter's reaction on the posts on both sides of it.
func (a *analysis) onPorch(j *framing.Joint, f Force) {
	var l, r *porchPost
	for _, x := range a.porches {
		if x.porch.Name != j.Host {
			continue
		}
		if x.station <= j.Station && (l == nil || x.station > l.station) {
			l = x
		}
		if x.station >= j.Station && (r == nil || x.station < r.station) {
			r = x
		}
	}
	switch {
	case l == nil && r == nil:
		a.unheld += math.Max(0, f.net(ASD))
	case l == nil || l == r:
		r.load.take(f)
	case r == nil:
		l.load.take(f)
	default:
		k := (j.Station - l.station) / (r.station - l.station)
		l.load.take(f.times(1 - k))
		r.load.take(f.times(k))
	}
}

// ridgeEnds finds the walls under the ends of ridge beams, and the feet of
// what leans on each ridge.
func (a *analysis) ridgeEnds() {
	for _, s := range a.rafters {
		for i, e := range s.ends {
			if e.ridge != nil && i > 0 && s.ends[0].plate != nil {
				e.ridge.feet = append(e.ridge.feet, s.ends[0].plate)
			}
		}
	}
	for _, r := range a.ridges {
		i := ridgeAxis(r.roof)
		for _, at := range []float64{r.lo, r.hi} {
			p := geom.Vec2{X: at, Y: r.cross}
			if i == 1 {
				p = geom.Vec2{X: r.cross, Y: at}
			}
			for _, w := range a.paths {
				s, t := w.w.Frame().Local(p)
				if w.top == r.roof.Over && len(w.carriers) > 0 && s > -endReach && s < w.w.Length()+endReach && math.Abs(t-w.w.Depth()/2) < endReach+r.roof.Rake {
					r.ends = append(r.ends, ridgeEnd{at, w, s})
					break
				}
			}
		}
		if len(r.ends) == 2 && r.ends[1].at-r.ends[0].at < 1 {
			r.ends = r.ends[:1]
		}
	}
}

// endReach is how far from a wall the end of a ridge beam over it may lie on
// plan, in, its overhang apart.
const endReach = 12

// balance closes the account of one wind case.
func (a *analysis) balance(c windCase) {
	at := map[*plan.Level]*Balance{}
	for _, l := range a.plan.Levels {
		at[l] = &Balance{Case: c.String(), Level: l}
	}
	for _, p := range a.paths {
		b := at[p.top]
		b.Roof.take(p.roof)
		b.Above.take(p.above)
		for _, k := range p.carriers {
			b.Tops.take(k.top.add(k.head))
			f := at[p.w.Level]
			b.Above.take(k.direct)
			f.Weight.take(down(k.weight))
			b.Weight.take(p.floorPer.times(k.share))
			f.Bases.take(k.total())
		}
	}
	for _, l := range a.plan.Levels {
		at[l].Elsewhere = a.lost[l]
		a.balances = append(a.balances, *at[l])
	}
}

// speciesOf returns the species of the framing: the plan's, or southern pine.
func speciesOf(p *plan.Plan) timber.Species {
	s, ok := timber.SpeciesOf(p.Lumber.Species)
	if !ok {
		s, _ = timber.SpeciesOf("southern pine")
	}
	return s
}
