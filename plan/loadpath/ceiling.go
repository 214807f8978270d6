package loadpath

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// hanger is what the ceiling under a roof hangs on.
type hanger int

const (
	onRafters hanger = iota // no ceiling joists: its weight goes where the rafters' does
	onTrusses               // on their bottom chords, which bear where the trusses do
	onJoists                // on ceiling joists, which lie on plates: no rafter is relieved by it
)

// hangsOn returns what the ceiling under a roof hangs on. A roof that asks for
// ceiling joists has a level ceiling, where none of them could be framed too.
func hangsOn(r *plan.Roof) hanger {
	switch {
	case r.Trusses:
		return onTrusses
	case r.CeilingTies && r.Kind != plan.ShedRoof:
		return onJoists
	}
	return onRafters
}

// String says it for a table of weights.
func (h hanger) String() string {
	switch h {
	case onTrusses:
		return "between the walls; on the trusses' bottom chords"
	case onJoists:
		return "between the walls; on ceiling joists, as simple spans from plate to plate: it relieves plates and what is below them, no rafter and no ridge, and nothing where no joist is framed"
	}
	return "between the walls; on the rafters"
}

// ceilingJoist is a ceiling joist with what the ceiling on it brings to the
// plates under it.
type ceilingJoist struct {
	tie   *framing.Tie
	along float64 // place along its roof's ridge axis, in
	from  geom.Vec2
	dir   geom.Vec2
	seats []ceilingSeat // by place along the joist
}

// ceilingSeat is what carries a ceiling joist: the plate under the rafter beside it, or
// a bearing wall or beam between.
type ceilingSeat struct {
	u       float64 // along the joist, in
	plate   *framing.Joint
	wall    *wallPath // where plate is nil
	station float64   // along the wall or beam, in
	beam    *framing.Beam
	weight  float64 // of ceiling that comes to it, lb
}

// hangCeilings brings the ceilings on joists to the plates under them.
func (b *builder) hangCeilings() {
	psf := b.dead.ceiling()
	b.ceilings = b.ceilingJoists()
	for _, s := range b.rafters {
		if hangsOn(s.roof) != onJoists || s.slopesAlong() || s.Member.Role != plan.Rafter || len(s.ends) == 0 || s.ends[0].plate == nil {
			continue
		}
		for _, on := range b.joistsUnder(s) {
			b.underRoof(s, func(u0, u1 float64) {
				on.joist.bring(s.At(u0), s.At(u1), on.k*psf*(s.Width-s.out0-s.out1)/144)
			})
		}
	}
}

// ceilingJoists reads the joists from framing.
func (b *builder) ceilingJoists() (out []*ceilingJoist) {
	of := map[*framing.Member]*strip{}
	for _, s := range b.rafters {
		of[s.Member] = s
	}
	for _, t := range b.house.Ties {
		l, r := of[t.Rafters[0]], of[t.Rafters[1]]
		if l == nil || r == nil || len(l.ends) == 0 || len(r.ends) == 0 || l.ends[0].plate == nil || r.ends[0].plate == nil {
			continue
		}
		c := &ceilingJoist{tie: t, along: axis(l.Low, t.Roof.RidgeAxis()), from: l.ends[0].at}
		c.dir = r.ends[0].at.Sub(c.from).Unit()
		c.seats = []ceilingSeat{{plate: l.ends[0].plate}, {u: r.ends[0].at.Sub(c.from).Len(), plate: r.ends[0].plate}}
		for _, w := range t.Walls {
			if p := b.byWall[w.Wall]; p != nil && len(p.carriers) > 0 {
				at := w.Wall.Frame().At(w.Station, w.Wall.Depth()/2, 0).Flat()
				c.seats = append(c.seats, ceilingSeat{u: at.Sub(c.from).Dot(c.dir), wall: p, station: w.Station})
			}
		}
		for _, x := range t.Beams {
			c.seats = append(c.seats, ceilingSeat{u: x.Along, beam: x.Beam, station: x.Station})
		}
		slices.SortFunc(c.seats, func(x, y ceilingSeat) int { return cmpFloat(x.u, y.u) })
		out = append(out, c)
	}
	return out
}

// partOfJoist is a share of the ceiling under a rafter that a joist holds.
type partOfJoist struct {
	joist *ceilingJoist
	k     float64
}

// joistsUnder returns the joists that hold the ceiling under a rafter: its own, or
// those on both sides by lever, when they are no farther apart than their spacing.
// Elsewhere the plan frames nothing that the ceiling would hang on.
func (b *builder) joistsUnder(s *strip) []partOfJoist {
	at := axis(s.Low, s.roof.RidgeAxis())
	var low, high *ceilingJoist
	for _, c := range b.ceilings {
		switch {
		case c.tie.Roof != s.roof:
		case slices.Contains(c.tie.Rafters[:], s.Member):
			return []partOfJoist{{c, 1}}
		case c.along <= at && (low == nil || c.along > low.along):
			low = c
		case c.along > at && (high == nil || c.along < high.along):
			high = c
		}
	}
	if low == nil || high == nil || high.along-low.along > math.Max(s.roof.CeilingSpace, s.roof.Spacing)+1 {
		return nil
	}
	k := (at - low.along) / (high.along - low.along)
	return []partOfJoist{{low, 1 - k}, {high, k}}
}

// underRoof calls emit with both ends of each stretch of a strip that lies between
// the walls, in.
func (b *builder) underRoof(s *strip, emit func(u0, u1 float64)) {
	cuts := append([]float64{0, s.inside[0], s.inside[1], s.Run}, s.passes...)
	slices.Sort(cuts)
	for i := 1; i < len(cuts); i++ {
		u := (cuts[i-1] + cuts[i]) / 2
		if cuts[i]-cuts[i-1] > 1e-9 && s.between(u, b.indoors[s.roof.Over]) {
			emit(cuts[i-1], cuts[i])
		}
	}
}

// between tells whether the place u on a strip lies between the walls.
func (s *strip) between(u float64, o outline) bool {
	return u > s.inside[0] && u < s.inside[1] && o.inside(s.At(u))
}

// bring shares an even load between two plan points, lb per inch along the joist,
// to the seats on both sides of each part of it, by lever; what lies past an outer
// seat, over half of a plate, is an overhang.
func (c *ceilingJoist) bring(p, q geom.Vec2, perInch float64) {
	from, to := p.Sub(c.from).Dot(c.dir), q.Sub(c.from).Dot(c.dir)
	from, to = math.Min(from, to), math.Max(from, to)
	last := len(c.seats) - 1
	for i := 1; i <= last; i++ {
		l, r := &c.seats[i-1], &c.seats[i]
		lo, hi := l.u, r.u
		if i == 1 {
			lo = math.Inf(-1)
		}
		if i == last {
			hi = math.Inf(1)
		}
		u0, u1 := math.Max(from, lo), math.Min(to, hi)
		if u1 <= u0 {
			continue
		}
		k := clamp(((u0+u1)/2-l.u)/(r.u-l.u), 0, 1)
		l.weight += (1 - k) * perInch * (u1 - u0)
		r.weight += k * perInch * (u1 - u0)
	}
}

// fromCeilings brings the ceilings on joists to the plates.
func (s *caseState) fromCeilings() {
	for _, c := range s.m.ceilings {
		for _, x := range c.seats {
			switch {
			case x.weight == 0:
			case x.plate != nil:
				s.onPlate(x.plate, down(x.weight))
			case x.beam != nil:
				s.m.handOver(x.beam, []push{{x.station, x.weight}}, func(p *wallPath, station, lb float64) {
					s.roofLoad(p, station, down(lb))
				})
			default:
				s.roofLoad(x.wall, x.station, down(x.weight))
			}
		}
	}
}

// ceilingWorkings tells which ceiling joists bring a stud or header weight.
func (s *caseState) ceilingWorkings(p *wallPath, j *framing.Joint) (out []string) {
	for _, c := range s.m.ceilings {
		for _, x := range c.seats {
			station := x.station
			if x.plate != nil {
				station = x.plate.Station
			}
			if x.weight > 0 && x.beam != nil {
				out = append(out, s.byBeam(p, j, c, x)...)
				continue
			}
			if x.weight == 0 || x.plate != nil && x.plate.Wall != p.w || x.plate == nil && x.wall != p {
				continue
			}
			for _, on := range p.places(station) {
				if on.joint() == j {
					out = append(out, s.m.u.Sprintf("from ceiling joist %s: dead %.0f lb of ceiling, times %.3f by lever arm", tieID(c.tie), x.weight, on.k))
				}
			}
		}
	}
	return out
}

// byBeam tells what a ceiling joist brings a stud or header by a beam.
func (s *caseState) byBeam(p *wallPath, j *framing.Joint, c *ceilingJoist, x ceilingSeat) (out []string) {
	s.m.handOver(x.beam, []push{{x.station, x.weight}}, func(q *wallPath, station, lb float64) {
		for _, on := range p.places(station) {
			if q == p && on.joint() == j {
				out = append(out, s.m.u.Sprintf("from ceiling joist %s by beam %s: dead %.0f lb of ceiling comes to the wall, times %.3f by lever arm", tieID(c.tie), x.beam.Name, lb, on.k))
			}
		}
	})
	return out
}
