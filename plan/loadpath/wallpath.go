package loadpath

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// wallPath is one wall as uplift goes through it: its top plates share what
// reaches them to the full-height members, across an opening by its header
// to the kings at its ends.
type wallPath struct {
	n        int
	w        *plan.Wall
	top      *plan.Level
	carriers []*carrier // by station
	openings []*opened  // by station
	lower    []*lowerWall
	floorPer Force // floor weight on the top plates, per inch, where no opening is in the floor
	floorOut []floorOut
}

// floorOut is a stretch of a wall beside which an opening cuts the joists that
// bear on it, or a beam carries them: there no more rests on it than the joists up to
// the opening or the beam bring by half. What headers bring to the trimmers beside it is
// not counted.
type floorOut struct {
	lo, hi float64 // stations
	less   Force   // of floorPer
}

// carrier is a full-height member.
type carrier struct {
	n        int
	m        *framing.Member
	station  float64
	share    float64 // of the wall's length, in
	st, base *framing.Joint
	wall     *wallPath
	weight   float64 // of wall and plates on it, lb
	floor    Force   // weight of the floor on the plates over it, and of floors that beams bring
	beams    []beamPart
	below    []partOf // where its base force goes
	ground   []pilePart
	joists   []joistPart // that it stands on off what carries those
	tips     bool        // these turn about their one joint
}

// opened is an opening with the kings beside it.
type opened struct {
	n           int
	lo, hi      float64 // stations between the kings
	left, right *carrier
	ends        [2]*framing.Joint // opening-head
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
func (b *builder) wallPaths() {
	byMember := map[*framing.Member]*carrier{}
	for _, j := range b.house.Joints {
		if j.Kind != plan.StudTop || j.Wall == nil || j.First() == nil || !j.First().Role.FullHeight() {
			continue
		}
		p := b.path(j.Wall)
		c := &carrier{m: j.First(), station: j.First().Mid(), st: j, wall: p}
		byMember[c.m] = c
		p.carriers = append(p.carriers, c)
	}
	for _, p := range b.paths {
		slices.SortStableFunc(p.carriers, func(x, y *carrier) int { return cmpFloat(x.station, y.station) })
		b.weigh(p)
	}
	b.openHeads()
	b.stack()
	for _, j := range b.house.Joints {
		if (j.Kind == plan.StudStud || j.Kind == plan.StudBase) && j.First() != nil {
			if c := byMember[j.First()]; c != nil {
				c.base = j
				b.goesTo(c, j, byMember)
			}
		}
	}
	slices.SortStableFunc(b.paths, func(x, y *wallPath) int { return y.top.Index - x.top.Index })
}

func (b *builder) path(w *plan.Wall) *wallPath {
	p := b.byWall[w]
	if p == nil {
		p = &wallPath{w: w, top: w.TopLevel()}
		b.byWall[w] = p
		b.paths = append(b.paths, p)
	}
	return p
}

// weigh gives each carrier the weight of its stretch of wall.
func (b *builder) weigh(p *wallPath) {
	psf, height := b.dead.wall(p.w), p.w.TopHeight()
	for _, c := range p.carriers {
		c.share = c.st.Tributary
		c.weight = psf * c.share * height / 144
	}
}

// openHeads finds the kings at both ends of each header.
func (b *builder) openHeads() {
	type key struct {
		w *plan.Wall
		o *plan.Opening
	}
	found := map[key]*opened{}
	for _, j := range b.house.Joints {
		if j.Kind != plan.OpeningHead || j.Wall == nil || j.First() == nil {
			continue
		}
		k := key{j.Wall, j.First().Opening}
		o := found[k]
		if o == nil {
			o = &opened{lo: j.Station, hi: j.Station}
			found[k] = o
			p := b.path(j.Wall)
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
	for _, p := range b.paths {
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
func (b *builder) stack() {
	for _, l := range b.house.Lines {
		for i, w := range l.Walls {
			for k, o := range l.Walls {
				if o.TopLevel().Index == w.Level.Index-1 && b.byWall[w] != nil && b.byWall[o] != nil {
					b.byWall[w].lower = append(b.byWall[w].lower, &lowerWall{b.byWall[o], l.Shift[i] - l.Shift[k]})
				}
			}
		}
	}
	for _, p := range b.paths {
		if next := b.plan.Above(p.top); next != nil && p.w.Bearing {
			lo, hi := b.joistSpans(p, next)
			p.floorPer = down(b.dead.floor(next) * (lo + hi) / 2 / 144)
			p.floorOut = b.floorOuts(p, next, lo, hi)
			p.weighFloors()
		}
	}
	b.floorBeams()
}

// joistSpans returns the joist spans that rest on a wall, in: to the next bearing
// wall of the same story on each side, along the joists; 0 where there is none. A wall
// along the joists carries none.
func (b *builder) joistSpans(p *wallPath, next *plan.Level) (before, after float64) {
	i := 0
	if next.JoistRun == plan.AxisY {
		i = 1
	}
	if p.w.Frame().D.Leans(i) {
		return 0, 0
	}
	at := axis(p.w.From, i)
	lo, hi := math.Inf(1), math.Inf(1)
	for _, q := range b.bearingNear(p.w, 1-i) {
		if d := axis(q.From, i) - at; !q.Frame().D.Leans(i) && sharesStretch(p.w, q, 1-i) {
			if d > 6 {
				hi = math.Min(hi, d)
			}
			if d < -6 {
				lo = math.Min(lo, -d)
			}
		}
	}
	for _, d := range []*float64{&lo, &hi} {
		if math.IsInf(*d, 1) {
			*d = 0
		}
	}
	return lo, hi
}

// floorOuts lists where openings in the floor over a wall, or beams that carry it
// nearer than the next wall does, leave the wall less of that floor's weight.
func (b *builder) floorOuts(p *wallPath, next *plan.Level, before, after float64) (out []floorOut) {
	i := joistAxis(next)
	if before == 0 && after == 0 && p.w.Frame().D.Leans(i) {
		return nil // along the joists: none rest on it
	}
	at, cuts := axis(p.w.From, i), b.acrossCuts(next)
	for k := 1; k < len(cuts); k++ {
		across := (cuts[k] + cuts[k-1]) / 2
		b0, a0 := b.beamSpans(next, at, across, before, after)
		gone := before - b0 + after - a0 + b.cutBeside(next, at, across, b0, a0)
		if gone == 0 {
			continue
		}
		s0, _ := p.w.Frame().Local(onAxes(i, at, cuts[k-1]))
		s1, _ := p.w.Frame().Local(onAxes(i, at, cuts[k]))
		out = append(out, floorOut{math.Min(s0, s1), math.Max(s0, s1), down(b.dead.floor(next) * gone / 2 / 144)})
	}
	return out
}

// onAxes is the plan point with a coordinate along axis i and one across it.
func onAxes(i int, along, across float64) geom.Vec2 {
	if i == 0 {
		return geom.Vec2{X: along, Y: across}
	}
	return geom.Vec2{X: across, Y: along}
}

// cutJoists returns what an opening leaves out, in, of the joist spans before and after
// a support at a place along the joists: from its nearer edge to the far support.
func cutJoists(x *plan.FloorOpening, i int, at, before, after float64) (gone float64) {
	from, to := axis(x.Lo, i), axis(x.Hi, i)
	if from < at+after && to > at {
		gone += after - math.Max(0, from-at)
	}
	if to > at-before && from < at {
		gone += before - math.Max(0, at-to)
	}
	return gone
}

// weighFloors gives each carrier the weight of the floor on the plates over its length
// of wall.
func (p *wallPath) weighFloors() {
	for n, c := range p.carriers {
		lo := p.from(n)
		c.floor = p.floorPer.times(c.share)
		for _, o := range p.floorOut {
			c.floor = c.floor.add(o.less.times(-overlap(lo, lo+c.share, o.lo, o.hi)))
		}
		c.floor.D = math.Max(0, c.floor.D)
	}
}

// from is the station at which the length of wall begins that a carrier serves, in: half
// way from the one before, of the first so that it ends half way to the next.
func (p *wallPath) from(n int) float64 {
	c := p.carriers[n]
	switch {
	case n > 0:
		return (p.carriers[n-1].station + c.station) / 2
	case len(p.carriers) > 1:
		return (c.station+p.carriers[1].station)/2 - c.share
	}
	return c.station - c.share/2
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

func (b *builder) enterBearing(w *plan.Wall) {
	for i := range 2 {
		lo, hi := stepsOf(w, i)
		for s := lo; s <= hi; s++ {
			k := bearingCell{w.TopLevel(), i, s}
			b.bearing[k] = append(b.bearing[k], w)
		}
	}
}

// bearingNear returns the bearing walls of the story of w that share a step
// with it along an axis; some of them more than once.
func (b *builder) bearingNear(w *plan.Wall, i int) (out []*plan.Wall) {
	lo, hi := stepsOf(w, i)
	for s := lo; s <= hi; s++ {
		out = append(out, b.bearing[bearingCell{w.TopLevel(), i, s}]...)
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
func (b *builder) goesTo(c *carrier, j *framing.Joint, byMember map[*framing.Member]*carrier) {
	if j.Kind == plan.StudBase {
		if c.wall.w.Level.Index == 0 && !onSill(j) { // an upper floor's joists do not reach the girders
			c.ground = b.piles.under(j.At.Flat(), j.Members)
		}
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

// place is a share of a load on the top plates: on a stud, or through a
// header's end on the king beside it.
type place struct {
	c      *carrier
	k      float64
	header *opened // nil on a stud
	end    int     // of the header
}

// joint returns the joint that the share passes.
func (x place) joint() *framing.Joint {
	if x.header != nil {
		return x.header.ends[x.end]
	}
	return x.c.st
}

// places shares a load at a station out by lever: to the kings at both ends
// of a header, or to the full-height members on both sides.
func (p *wallPath) places(s float64) []place {
	for _, o := range p.openings {
		if s > o.lo && s < o.hi && o.left != nil && o.right != nil {
			k := (s - o.lo) / (o.hi - o.lo)
			return []place{{o.left, 1 - k, o, 0}, {o.right, k, o, 1}}
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
