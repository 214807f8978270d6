package capacity

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/placement"
	"galewright/plan/steel"
	"galewright/plan/timber"
)

// crossed is what a bolt across a girder and its pile goes through, as both stand: all
// that its value depends on but its own size.
type crossed struct {
	girder  float64 // bearing length in the girder, in: of two halves the shorter
	pile    float64 // in what is left of the pile there, in
	astride bool    // of the pile
	larger  float64 // the part of the uplift that comes to the half that has more of it
	cdelta  float64 // geometry factor; 0 where a floor of the standard is not met
	rules   string  // which distance rules it; "" at 1
	unmet   string  // why it is 0
}

// noGirder is the thickness of a girder that none is named of, in.
const noGirder = 3

// crossing looks at what a bolt goes through.
func (a *Allowables) crossing(p *placement.Piece) crossed {
	c := crossed{girder: noGirder, pile: 8, cdelta: 1}
	if a.pile.Depth > 0 {
		c.pile = a.pile.Depth
	}
	if p.Joint.Kind != plan.GirderPile {
		return c
	}
	if m := p.Joint.First(); m != nil && m.Role == plan.GirderBeam && m.Section.Width() > 0 {
		c.girder = m.Section.Width()
	}
	b := a.steel.Body(p)
	if b == nil || len(b.Rods) == 0 || !passesPile(b.Rods[0]) {
		return c
	}
	r := b.Rods[0]
	c.pile, c.girder = 0, math.Inf(1)
	for _, x := range r.Passes {
		switch x.Member.Role {
		case plan.Pile:
			c.pile += x.Len()
		case plan.GirderBeam:
			c.girder = math.Min(c.girder, x.Len())
		}
	}
	if math.IsInf(c.girder, 1) {
		c.girder = noGirder // it passes none: told by the check of rods
	}
	first, last := r.Passes[0].Member, r.Passes[len(r.Passes)-1].Member
	c.astride = first.Role == plan.GirderBeam && last.Role == plan.GirderBeam && first != last
	if c.astride {
		c.larger = a.larger(p.Joint, first, last)
	}
	a.distances(&c, p, r)
	return c
}

// unevenly is how far a half of a girder astride of its pile may have more than the other of
// what is tied down to both for the bolt to count in double shear: the larger half's part.
// No source gives one.
const unevenly = 0.55

// larger is the part of what is tied down to a girder astride of its pile that comes to this
// pile through the half that has more of it, by the pieces to each: those in the bays on
// both sides, by lever. All of it where a piece is of a wall, which stands over one half, or
// nothing is tied there.
func (a *Allowables) larger(j *framing.Joint, first, last *framing.Member) float64 {
	along := first.B.Sub(first.A).Unit()
	before, after := a.bays(j, along)
	var n [2]float64
	for _, b := range a.steel.Bodies {
		if b.Piece.Joint.Kind == plan.GirderPile {
			continue
		}
		for i, half := range []*framing.Member{first, last} {
			k := levered(b.Piece.Joint.At.Sub(j.At).Dot(along), before, after)
			if k <= 0 || !b.Grips(half) {
				continue
			}
			if b.Piece.Joint.Wall != nil {
				return 1
			}
			n[i] += k
		}
	}
	if n[0]+n[1] == 0 {
		return 1
	}
	return math.Max(n[0], n[1]) / (n[0] + n[1])
}

// bays are how far off the piles before and after one are along its girder, in; Far for none.
func (a *Allowables) bays(j *framing.Joint, along geom.Vec3) (before, after float64) {
	before, after = timber.Far, timber.Far
	for _, o := range a.placed.House.Joints {
		if o.Kind != plan.GirderPile || o.Host != j.Host || o == j {
			continue
		}
		if d := o.At.Sub(j.At).Dot(along); d > 0 {
			after = math.Min(after, d)
		} else {
			before = math.Min(before, -d)
		}
	}
	return before, after
}

// levered is the part that a pile takes of a force a distance off along its girder, which
// goes to it and the next by lever; past the last pile all of it.
func levered(d, before, after float64) float64 {
	long := after
	if d < 0 {
		d, long = -d, before
	}
	if long == timber.Far {
		return 1
	}
	return 1 - d/long
}

// distances takes a bolt's geometry factor where it stands: uplift pulls the girder up, so
// that the bolt pushes the pile up, along its grain toward its top, and the girder down,
// across its grain toward its underside (NDS 2018 12.5.1, transcribed).
func (a *Allowables) distances(c *crossed, p *placement.Piece, r *steel.Rod) {
	way := r.B.Sub(r.A).Unit()
	up, rows := geom.Vec3{Z: 1}, a.nextBolt(p, r)
	for _, x := range r.Passes {
		at := r.A.Add(way.Mul((x.From + x.To) / 2))
		down, top := a.steel.Wood.Ways(x.Member, at, up)
		back, on := a.steel.Wood.Ways(x.Member, at, up.Cross(way))
		l := timber.LargePlace{D: r.Diameter, InMain: c.pile, InSides: c.girder, InRow: timber.Far, Rows: rows, Sawn: true, Spread: a.spread(p, r, x.Member)}
		switch x.Member.Role {
		case plan.Pile:
			l.TowardEnd, l.End, l.LoadedEdge, l.UnloadedEdge = true, top, back, on
		case plan.GirderBeam:
			l.Angle, l.End, l.LoadedEdge, l.UnloadedEdge = 90, math.Min(back, on), down, top
		default:
			continue
		}
		got := l.Check()
		if got.Cdelta < c.cdelta {
			c.cdelta, c.rules = got.Cdelta, fmt.Sprintf("%s of the %s", got.Rules, x.Member.Role)
		}
		if got.Cdelta == 0 {
			c.unmet = fmt.Sprintf("in the %s: %s", x.Member.Role, got.Unmet[0])
		}
	}
}

// nextBolt returns how far the nearest other bolt of the joint is, in; Far where there is
// none.
func (a *Allowables) nextBolt(p *placement.Piece, r *steel.Rod) float64 {
	near := timber.Far
	for _, q := range a.placed.At(p.Joint) {
		if b := a.steel.Body(q); q != p && b != nil && len(b.Rods) > 0 {
			near = math.Min(near, geom.Apart(r.A, r.B, b.Rods[0].A, b.Rods[0].B))
		}
	}
	return near
}

// spread is how far the outermost bolts of the joint stand apart across a member's
// grain, in.
func (a *Allowables) spread(p *placement.Piece, r *steel.Rod, m *framing.Member) float64 {
	across := m.B.Sub(m.A).Unit().Cross(r.B.Sub(r.A).Unit())
	lo, hi := 0.0, 0.0
	for _, q := range a.placed.At(p.Joint) {
		if b := a.steel.Body(q); q != p && b != nil && len(b.Rods) > 0 {
			u := b.Rods[0].A.Sub(r.A).Dot(across)
			lo, hi = math.Min(lo, u), math.Max(hi, u)
		}
	}
	return hi - lo
}

// crossBolt adds one bolt across girder and pile: the girder's grain lies across the load,
// the pile's along it. In single shear; of a girder astride of the pile in double shear
// where uplift comes to both halves alike, else all of it through one half, in single.
func (a *Allowables) crossBolt(c *Capacity, p *placement.Piece) {
	it, x := p.Item, a.crossing(p)
	if x.cdelta == 0 {
		c.Unknown = "the bolt stands too near an edge or end, " + x.unmet
		return
	}
	d := timber.Dowel{
		D: it.Rod, Fyb: boltYield, Fem: timber.DowelBearing(a.species.G, it.Rod, 0),
		Fes: timber.DowelBearing(a.species.G, it.Rod, 90), Lm: x.pile, Ls: x.girder, Angle: 90,
	}
	y, shear := d.SingleShear(), "single shear"
	switch double := d.DoubleShear(); {
	case x.astride && x.larger <= unevenly:
		y, shear = double, "double shear, both halves of the girder tied down alike"
		if x.larger > 0.5+1e-9 {
			y.Z *= 0.5 / x.larger
			shear = fmt.Sprintf("double shear, %.1f%% of the uplift through one half of the girder", 100*x.larger)
		}
	case x.astride:
		shear = a.units.Sprintf("all through one half of the girder, single shear (both alike in double shear would be Z %.0f lb)", double.Z)
	}
	geometry := ""
	if x.rules != "" {
		geometry = fmt.Sprintf(", Cdelta %.2f %s (NDS 2018 12.5.1, transcribed)", x.cdelta, x.rules)
	}
	c.least(Term{a.units.Sprintf("bolt %.3f in across girder (%.2f in, Fe %.0f{+psi}) and pile (%.2f in, Fe %.0f{+psi}), %s: Z %.0f lb (mode %s), CD 1.6, CM 0.7 wet (NDS 2018 Table 11.3.3, transcribed)%s, Fyb 45 ksi from memory",
		it.Rod, d.Ls, d.Fes, d.Lm, d.Fem, shear, y.Z, y.Mode, geometry), y.Z * 1.6 * 0.7 * x.cdelta, "lb"},
		"bolt across the grain, mode "+y.Mode)
}
