package loadpath

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
)

// wallPath is one wall as uplift goes through it: its top plates share what
// reaches them to the full-height members, across an opening by its header
// to the kings at its ends.
type wallPath struct {
	w        *plan.Wall
	top      *plan.Level
	carriers []*carrier // by station
	openings []*opened  // by station
	lower    []*lowerWall
	floorPer Force // floor weight on the top plates, per inch
	// this case: what reached the top plates from the roof, and from studs
	// above that no stud here meets
	roof, above Force
}

// carrier is a full-height member.
type carrier struct {
	m        *framing.Member
	station  float64
	share    float64 // of the wall's length, in
	st, base *framing.Joint
	wall     *wallPath
	weight   float64  // of wall and plates on it, lb
	below    []partOf // where its base force goes
	ground   []pilePart
	// this case:
	top, head, direct Force
}

// total returns what the carrier hands down, its own weight included.
func (c *carrier) total() Force {
	f := c.top.add(c.head).add(c.direct)
	f.D += c.weight
	return f
}

// opened is an opening with the kings beside it.
type opened struct {
	lo, hi      float64 // stations between the kings
	left, right *carrier
	ends        [2]*framing.Joint // opening-head
	load        [2]Force          // this case
}

// lowerWall is a wall below in the same plane.
type lowerWall struct {
	path  *wallPath
	shift float64 // added to a station here gives a station there
}

// partOf is a share of a force at a place below.
type partOf struct {
	c       *carrier // straight into a stud, or
	wall    *wallPath
	station float64
}

// wallPaths builds all of them from the joints.
func (a *analysis) wallPaths() {
	byMember := map[*framing.Member]*carrier{}
	for _, j := range a.house.Joints {
		if j.Kind != plan.StudTop || j.Wall == nil || j.First() == nil || !j.First().Role.FullHeight() {
			continue
		}
		p := a.path(j.Wall)
		c := &carrier{m: j.First(), station: j.First().Mid(), st: j, wall: p}
		byMember[c.m] = c
		p.carriers = append(p.carriers, c)
	}
	for _, p := range a.paths {
		slices.SortStableFunc(p.carriers, func(x, y *carrier) int { return cmpFloat(x.station, y.station) })
		a.weigh(p)
	}
	a.openHeads()
	a.stack()
	for _, j := range a.house.Joints {
		if (j.Kind == plan.StudStud || j.Kind == plan.StudBase) && j.First() != nil {
			if c := byMember[j.First()]; c != nil {
				c.base = j
				a.goesTo(c, j, byMember)
			}
		}
	}
	slices.SortStableFunc(a.paths, func(x, y *wallPath) int { return y.top.Index - x.top.Index })
}

func (a *analysis) path(w *plan.Wall) *wallPath {
	p := a.byWall[w]
	if p == nil {
		p = &wallPath{w: w, top: topLevel(w)}
		a.byWall[w] = p
		a.paths = append(a.paths, p)
	}
	return p
}

// weigh gives each carrier its stretch of wall and that stretch's weight.
func (a *analysis) weigh(p *wallPath) {
	height := wallHeight(p.w)
	psf := a.dead.wall(p.w)
	for i, c := range p.carriers {
		lo, hi := math.Min(0, c.station), math.Max(p.w.Length(), c.station)
		if i > 0 {
			lo = (p.carriers[i-1].station + c.station) / 2
		}
		if i < len(p.carriers)-1 {
			hi = (p.carriers[i+1].station + c.station) / 2
		}
		c.share = hi - lo
		c.weight = psf * c.share * height / 144
	}
}

// wallHeight returns the height of a wall from its subfloor to the top of
// its plates, in.
func wallHeight(w *plan.Wall) float64 {
	switch {
	case w.Height > 0:
		return w.Height
	case w.Balloon():
		return w.ToLevel.Top() - w.Level.Floor
	}
	return w.Level.PlateHeight
}

// openHeads finds the kings at both ends of each header.
func (a *analysis) openHeads() {
	type key struct {
		w *plan.Wall
		o *plan.Opening
	}
	found := map[key]*opened{}
	for _, j := range a.house.Joints {
		if j.Kind != plan.OpeningHead || j.Wall == nil || j.First() == nil {
			continue
		}
		k := key{j.Wall, j.First().Opening}
		o := found[k]
		if o == nil {
			o = &opened{lo: j.Station, hi: j.Station}
			found[k] = o
			p := a.path(j.Wall)
			p.openings = append(p.openings, o)
			o.ends[0] = j
			continue
		}
		o.ends[1] = j
		if j.Station < o.lo {
			o.ends[0], o.ends[1] = j, o.ends[0]
		}
		o.lo, o.hi = math.Min(o.lo, j.Station), math.Max(o.hi, j.Station)
	}
	for _, p := range a.paths {
		for _, o := range p.openings {
			for _, c := range p.carriers {
				if c.station < (o.lo+o.hi)/2 {
					o.left = c
				} else if o.right == nil {
					o.right = c
				}
			}
		}
	}
}

// stack finds the walls below each wall, and the floors that lie on walls.
func (a *analysis) stack() {
	for _, l := range a.house.Lines {
		for i, w := range l.Walls {
			for k, o := range l.Walls {
				if topLevel(o).Index == w.Level.Index-1 && a.byWall[w] != nil && a.byWall[o] != nil {
					a.byWall[w].lower = append(a.byWall[w].lower, &lowerWall{a.byWall[o], l.Shift[i] - l.Shift[k]})
				}
			}
		}
	}
	for _, p := range a.paths {
		if next := a.levelAbove(p.top); next != nil && p.w.Bearing {
			p.floorPer = down(a.dead.floor(next) * a.joistShare(p, next) / 144)
		}
	}
}

func (a *analysis) levelAbove(l *plan.Level) *plan.Level {
	for _, x := range a.plan.Levels {
		if x.Index == l.Index+1 {
			return x
		}
	}
	return nil
}

// joistShare returns half the joist spans that rest on a wall, in: half way
// to the next bearing wall of the same story on each side, along the joists.
// A wall along the joists carries none.
func (a *analysis) joistShare(p *wallPath, next *plan.Level) float64 {
	i := 0
	if next.JoistRun == plan.AxisY {
		i = 1
	}
	if math.Abs(axis(p.w.Frame().D, i)) > 0.3 {
		return 0
	}
	at := axis(p.w.From, i)
	lo, hi := math.Inf(1), math.Inf(1)
	for _, q := range a.bearingNear(p.w, 1-i) {
		if d := axis(q.From, i) - at; math.Abs(axis(q.Frame().D, i)) < 0.3 && sharesStretch(p.w, q, 1-i) {
			if d > 6 {
				hi = math.Min(hi, d)
			}
			if d < -6 {
				lo = math.Min(lo, -d)
			}
		}
	}
	share := 0.0
	for _, d := range []float64{lo, hi} {
		if !math.IsInf(d, 1) {
			share += d / 2
		}
	}
	return share
}

// bearingCell is one step along an axis at a level whose plates bearing walls
// carry: by it the walls beside each other are found.
type bearingCell struct {
	level *plan.Level
	axis  int
	step  int
}

// stepsOf returns the first and last step of a wall along an axis.
func stepsOf(w *plan.Wall, i int) (lo, hi int) {
	p, q := axis(w.From, i), axis(w.To, i)
	return int(math.Floor(math.Min(p, q) / cell)), int(math.Floor(math.Max(p, q) / cell))
}

func (a *analysis) enterBearing(w *plan.Wall) {
	for i := range 2 {
		lo, hi := stepsOf(w, i)
		for s := lo; s <= hi; s++ {
			k := bearingCell{topLevel(w), i, s}
			a.bearing[k] = append(a.bearing[k], w)
		}
	}
}

// bearingNear returns the bearing walls of the story of w that share a step
// with it along an axis; some of them more than once.
func (a *analysis) bearingNear(w *plan.Wall, i int) (out []*plan.Wall) {
	lo, hi := stepsOf(w, i)
	for s := lo; s <= hi; s++ {
		out = append(out, a.bearing[bearingCell{topLevel(w), i, s}]...)
	}
	return out
}

// sharesStretch tells whether two walls overlap by a foot along axis i.
func sharesStretch(a, b *plan.Wall, i int) bool {
	a0, a1 := axis(a.From, i), axis(a.To, i)
	b0, b1 := axis(b.From, i), axis(b.To, i)
	return overlap(math.Min(a0, a1), math.Max(a0, a1), math.Min(b0, b1), math.Max(b0, b1)) > 12
}

// goesTo finds what is below the foot of a carrier.
func (a *analysis) goesTo(c *carrier, j *framing.Joint, byMember map[*framing.Member]*carrier) {
	if j.Kind == plan.StudBase {
		c.ground = a.piles.at(j.At.Flat())
		return
	}
	if len(j.Members) > 1 && j.Below {
		if b := byMember[j.Members[1]]; b != nil {
			c.below = []partOf{{c: b}}
			return
		}
	}
	for _, l := range c.wall.lower {
		s := c.station + l.shift
		if n := len(l.path.carriers); n > 0 && s > -12 && s < l.path.w.Length()+12 {
			c.below = []partOf{{wall: l.path, station: s}}
			return
		}
	}
}

// reset clears the case's forces and lays the floor's weight on the plates.
func (p *wallPath) reset() {
	p.roof, p.above = Force{}, Force{}
	for _, c := range p.carriers {
		c.top, c.head, c.direct = p.floorPer.times(c.share), Force{}, Force{}
	}
	for _, o := range p.openings {
		o.load = [2]Force{}
	}
}

// roofLoad puts a roof's reaction on the top plates at a station.
func (p *wallPath) roofLoad(s float64, f Force) {
	p.roof.take(f)
	p.load(s, f)
}

// load puts a force on the top plates at a station.
func (p *wallPath) load(s float64, f Force) {
	for _, x := range p.places(s) {
		if x.load != nil {
			x.load.take(f.times(x.k))
			x.c.head.take(f.times(x.k))
			continue
		}
		x.c.top.take(f.times(x.k))
	}
}

// place is a share of a load on the top plates: on a stud, or through a
// header's end on the king beside it.
type place struct {
	c    *carrier
	k    float64
	head *framing.Joint
	load *Force // of the header's end
}

// places shares a load at a station out by lever: to the kings at both ends
// of a header, or to the full-height members on both sides.
func (p *wallPath) places(s float64) []place {
	for _, o := range p.openings {
		if s > o.lo && s < o.hi && o.left != nil && o.right != nil {
			k := (s - o.lo) / (o.hi - o.lo)
			return []place{{o.left, 1 - k, o.ends[0], &o.load[0]}, {o.right, k, o.ends[1], &o.load[1]}}
		}
	}
	n := len(p.carriers)
	i, _ := slices.BinarySearchFunc(p.carriers, s, func(c *carrier, s float64) int { return cmpFloat(c.station, s) })
	switch {
	case n == 0:
		return nil
	case i == 0:
		return []place{{c: p.carriers[0], k: 1}}
	case i == n:
		return []place{{c: p.carriers[n-1], k: 1}}
	}
	l, r := p.carriers[i-1], p.carriers[i]
	k := (s - l.station) / (r.station - l.station)
	return []place{{c: l, k: 1 - k}, {c: r, k: k}}
}
