package loadpath

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// pile is one girder-pile joint.
type pile struct {
	n       int
	joint   *framing.Joint
	station float64
	weight  float64 // of floor and girder on it, lb
}

// pilePart is a share of a force at a pile.
type pilePart struct {
	pile *pile
	k    float64
}

// girderPath is a girder with its piles.
type girderPath struct {
	g     *plan.Girder
	frame geom.Frame
	len   float64
	piles []*pile // by station
}

// piling is what carries the lowest walls when the house stands on piles.
type piling struct {
	girders []*girderPath
	joists  int // axis the lowest floor's joists run along
	cells   map[[2]int][]*girderPath

	byMember map[*framing.Member]*girderPath
	count    int // of piles
}

// cell is the side of the grid by which girders are found, in.
const cell = 600

func (b *builder) newPiling() *piling {
	p := &piling{cells: map[[2]int][]*girderPath{}, byMember: map[*framing.Member]*girderPath{}}
	at := map[string]*girderPath{}
	for _, g := range b.plan.Girders {
		gp := &girderPath{g: g, frame: geom.NewFrame(g.From, g.To), len: g.To.Sub(g.From).Len()}
		at[g.Name] = gp
		p.girders = append(p.girders, gp)
	}
	for _, j := range b.house.Joints {
		if gp := at[j.Host]; gp != nil && j.Kind == plan.GirderPile {
			gp.piles = append(gp.piles, &pile{joint: j, station: j.Station})
			for _, m := range j.Members {
				if m.Role == plan.GirderBeam {
					p.byMember[m] = gp
				}
			}
		}
	}
	p.girders = slices.DeleteFunc(p.girders, func(g *girderPath) bool { return len(g.piles) == 0 })
	if len(b.plan.Levels) > 0 && b.plan.Levels[0].JoistRun == plan.AxisY {
		p.joists = 1
	}
	for _, g := range p.girders {
		slices.SortStableFunc(g.piles, func(x, y *pile) int { return cmpFloat(x.station, y.station) })
		p.enter(g)
		for _, x := range g.piles {
			x.n, p.count = p.count, p.count+1
		}
	}
	if len(b.plan.Levels) > 0 {
		for _, g := range p.girders {
			p.weigh(g, b.dead.floor(b.plan.Levels[0]), b.plan.FloorOpenings)
		}
	}
	return p
}

// enter notes g in every cell that it or a joist span beside it touches.
func (p *piling) enter(g *girderPath) {
	e := noExtent()
	e.hold(g.g.From)
	e.hold(g.g.To)
	for x := int(math.Floor(e.lo.X/cell)) - 1; x <= int(math.Floor(e.hi.X/cell))+1; x++ {
		for y := int(math.Floor(e.lo.Y/cell)) - 1; y <= int(math.Floor(e.hi.Y/cell))+1; y++ {
			p.cells[[2]int{x, y}] = append(p.cells[[2]int{x, y}], g)
		}
	}
}

func (p *piling) near(v geom.Vec2) []*girderPath {
	return p.cells[[2]int{int(math.Floor(v.X / cell)), int(math.Floor(v.Y / cell))}]
}

// at returns the piles that a force at plan point v goes to: along the
// girder under it, or by joists to the girders on both sides and along them.
// A force past the last support lifts that one by more than itself and presses
// the next one down: that share is negative.
func (p *piling) at(v geom.Vec2) []pilePart {
	on, across := p.reached(v)
	if on != nil {
		return on.share(v, 1, nil)
	}
	return overJoists(v, across)
}

// reached returns the girder that lies under plan point v, nil for none, and those that
// joists there can bring a force to.
func (p *piling) reached(v geom.Vec2) (on *girderPath, across []reach) {
	best := geom.Vec2{}
	for _, g := range p.near(v) {
		s, t := g.frame.Local(v)
		past := math.Max(0, math.Max(-s, s-g.len))
		if past > 12 {
			continue
		}
		if d := (geom.Vec2{X: past, Y: math.Abs(t)}); d.Y < 9 && (on == nil || d.X < best.X || d.X == best.X && d.Y < best.Y) {
			on, best = g, d
		}
		if !g.frame.D.Leans(p.joists) { // one that runs with the joists takes nothing from them
			across = append(across, reach{g, t * axis(g.frame.In, p.joists)})
		}
	}
	return on, across
}

// covers tells whether a girder lies under plan point v itself, or under what reaches half
// to both sides of it, in.
func (p *piling) covers(v geom.Vec2, half float64) bool {
	return slices.ContainsFunc(p.near(v), func(g *girderPath) bool {
		s, t := g.frame.Local(v)
		return s > -12 && s < g.len+12 && math.Abs(t) < half+g.g.Member.Width()/2
	})
}

// reach is a girder and how far a point lies past it along the joists, in:
// positive toward growing coordinates.
type reach struct {
	g *girderPath
	d float64
}

// overJoists shares a force on the joists out to the girders on both sides of
// it, past the last of them to the last two.
func overJoists(v geom.Vec2, across []reach) (out []pilePart) {
	slices.SortStableFunc(across, func(x, y reach) int { return cmpFloat(y.d, x.d) }) // by coordinate
	at := make([]float64, len(across))
	for i, r := range across {
		at[i] = -r.d
	}
	for _, x := range lever(at, 0) {
		out = across[x.i].g.share(v, x.k, out)
	}
	return out
}

// levered is a support's number and its share of a force.
type levered struct {
	i int
	k float64
}

// lever shares a force at s out to the supports, given by growing place: to
// those on both sides; past the last to it and, pressed the other way, to the one
// before. Supports within an inch of each other are one.
func lever(at []float64, s float64) []levered {
	n := len(at)
	i, _ := slices.BinarySearch(at, s)
	lo, hi := i-1, i
	switch {
	case n == 0:
		return nil
	case i == 0:
		lo, hi = 0, 1
	case i == n:
		lo, hi = n-2, n-1
	}
	if n == 1 || at[hi]-at[lo] < 1 {
		return []levered{{min(i, n-1), 1}}
	}
	k := (s - at[lo]) / (at[hi] - at[lo])
	return slices.DeleteFunc([]levered{{lo, 1 - k}, {hi, k}}, func(x levered) bool { return math.Abs(x.k) < 1e-9 })
}

// share adds the girder's piles that a part k of a force at v goes to.
func (g *girderPath) share(v geom.Vec2, k float64, out []pilePart) []pilePart {
	s, _ := g.frame.Local(v)
	at := make([]float64, len(g.piles))
	for i, x := range g.piles {
		at[i] = x.station
	}
	for _, x := range lever(at, s) {
		out = append(out, pilePart{g.piles[x.i], k * x.k})
	}
	return out
}

// under returns the piles that a force at plan point v goes to, of the girder
// that is named among the members there, or of the one that lies under v.
func (p *piling) under(v geom.Vec2, members []*framing.Member) []pilePart {
	for _, m := range members {
		if g := p.byMember[m]; g != nil {
			return g.share(v, 1, nil)
		}
	}
	return p.at(v)
}

// weigh puts the lowest floor on the piles: half way to the next girder on
// each side across the joists.
func (p *piling) weigh(g *girderPath, psf float64, openings []*plan.FloorOpening) {
	if g.frame.D.Leans(p.joists) {
		return
	}
	mid := g.g.From.Add(g.g.To).Mul(0.5)
	lo, hi := 0.0, 0.0
	for _, o := range p.near(mid) {
		if o.frame.D.Leans(p.joists) {
			continue
		}
		d := axis(o.g.From, p.joists) - axis(g.g.From, p.joists)
		s, _ := o.frame.Local(mid)
		if s < 0 || s > o.len {
			continue
		}
		if d > 6 && (hi == 0 || d < hi) {
			hi = d
		}
		if d < -6 && (lo == 0 || -d < lo) {
			lo = -d
		}
	}
	for _, x := range g.piles {
		x.weight = psf * (lo + hi) / 2 * x.joint.Tributary / 144
		for _, o := range openings {
			s0, _ := g.frame.Local(o.Lo)
			s1, _ := g.frame.Local(o.Hi)
			if o.Level.Index == 0 {
				half := x.joint.Tributary / 2
				x.weight -= psf * cutJoists(o, p.joists, axis(g.g.From, p.joists), lo, hi) / 2 * overlap(x.station-half, x.station+half, math.Min(s0, s1), math.Max(s0, s1)) / 144
			}
		}
	}
}
