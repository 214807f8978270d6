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
	count   int // of piles
}

// cell is the side of the grid by which girders are found, in.
const cell = 600

func (b *builder) newPiling() *piling {
	p := &piling{cells: map[[2]int][]*girderPath{}}
	at := map[string]*girderPath{}
	for _, g := range b.plan.Girders {
		gp := &girderPath{g: g, frame: geom.NewFrame(g.From, g.To), len: g.To.Sub(g.From).Len()}
		at[g.Name] = gp
		p.girders = append(p.girders, gp)
	}
	for _, j := range b.house.Joints {
		if gp := at[j.Host]; gp != nil && j.Kind == plan.GirderPile {
			gp.piles = append(gp.piles, &pile{joint: j, station: j.Station})
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
			p.weigh(g, b.dead.floor(b.plan.Levels[0]))
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
func (p *piling) at(v geom.Vec2) (out []pilePart) {
	var on, below, above *girderPath
	dOn, dBelow, dAbove := 9.0, math.Inf(1), math.Inf(1)
	for _, g := range p.near(v) {
		s, t := g.frame.Local(v)
		if s < -12 || s > g.len+12 {
			continue
		}
		if math.Abs(t) < dOn {
			on, dOn = g, math.Abs(t)
		}
		if g.frame.D.Leans(p.joists) {
			continue // runs with the joists
		}
		d := t * axis(g.frame.In, p.joists)
		if d >= 0 && d < dBelow {
			below, dBelow = g, d
		}
		if d < 0 && -d < dAbove {
			above, dAbove = g, -d
		}
	}
	switch {
	case on != nil:
		return on.share(v, 1, out)
	case below != nil && above != nil:
		k := dBelow / (dBelow + dAbove)
		return above.share(v, k, below.share(v, 1-k, out))
	case below != nil:
		return below.share(v, 1, out)
	case above != nil:
		return above.share(v, 1, out)
	}
	return nil
}

// share adds the girder's piles on both sides of v.
func (g *girderPath) share(v geom.Vec2, k float64, out []pilePart) []pilePart {
	s, _ := g.frame.Local(v)
	n := len(g.piles)
	i, _ := slices.BinarySearchFunc(g.piles, s, func(x *pile, s float64) int { return cmpFloat(x.station, s) })
	switch {
	case i == 0:
		return append(out, pilePart{g.piles[0], k})
	case i == n:
		return append(out, pilePart{g.piles[n-1], k})
	}
	l, r := g.piles[i-1], g.piles[i]
	f := (s - l.station) / (r.station - l.station)
	return append(out, pilePart{l, k * (1 - f)}, pilePart{r, k * f})
}

// weigh puts the lowest floor on the piles: half way to the next girder on
// each side across the joists.
func (p *piling) weigh(g *girderPath, psf float64) {
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
	}
}
