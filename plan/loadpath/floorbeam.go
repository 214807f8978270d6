package loadpath

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// beamPart is the weight that a beam of a floor hands to a wall's stud or header, lb.
type beamPart struct {
	beam string
	lb   float64
}

// beamArea is what of a level's floor a beam carries: ft² at places along it.
type beamArea struct {
	level *plan.Level
	area  []push
}

// byBeams is the weight of floors that beams bring to a carrier, lb.
func (c *carrier) byBeams() (lb float64) {
	for _, x := range c.beams {
		lb += x.lb
	}
	return lb
}

// joistAxis returns the axis that a floor's joists run along.
func joistAxis(l *plan.Level) int {
	if l.JoistRun == plan.AxisY {
		return 1
	}
	return 0
}

// carriesFloor tells whether a beam carries joists of a level's floor: those that hang
// on it, or that cross it on the plates below.
func (b *builder) carriesFloor(x *framing.Beam, next *plan.Level) bool {
	if x.Set == plan.SetFlush {
		return x.Carries == next
	}
	return b.plan.Above(x.Level) == next && next.Joists.Depth > 0 && !x.Frame.D.Leans(joistAxis(next))
}

// beamAt returns where a beam crosses the line along axis i at a coordinate across it;
// false where it does not reach there.
func beamAt(x *framing.Beam, i int, across float64) (float64, bool) {
	p, q := x.Pieces[0].A.Flat(), x.Pieces[len(x.Pieces)-1].B.Flat()
	return lineAt(p, q, i, across)
}

// lineAt returns where the line between two plan points crosses the line along axis i at
// a coordinate across it.
func lineAt(p, q geom.Vec2, i int, across float64) (float64, bool) {
	a, z := axis(p, 1-i), axis(q, 1-i)
	if math.Abs(z-a) < geom.Eps || across < math.Min(a, z) || across > math.Max(a, z) {
		return 0, false
	}
	return axis(p, i) + (axis(q, i)-axis(p, i))*(across-a)/(z-a), true
}

// beamSpans shortens the joist spans before and after a place, in, at a coordinate across
// the joists, to the nearest beams that carry the same floor there.
func (b *builder) beamSpans(next *plan.Level, at, across, before, after float64) (float64, float64) {
	i := joistAxis(next)
	for _, x := range b.house.Beams {
		if !b.carriesFloor(x, next) {
			continue
		}
		if on, ok := beamAt(x, i, across); ok {
			before, after = nearer(on-at, before, after)
		}
	}
	return before, after
}

// nearer takes a support a distance off for the end of the span before or after, where
// it is nearer than what ends it so far or nothing does.
func nearer(d, before, after float64) (float64, float64) {
	switch {
	case d > 6 && (after == 0 || d < after):
		after = d
	case d < -6 && (before == 0 || -d < before):
		before = -d
	}
	return before, after
}

// acrossCuts are the coordinates across the joists of a floor at which what carries it
// changes, sorted.
func (b *builder) acrossCuts(next *plan.Level) (out []float64) {
	i := joistAxis(next)
	for _, x := range b.plan.FloorOpenings {
		if x.Level == next {
			out = append(out, axis(x.Lo, 1-i), axis(x.Hi, 1-i))
		}
	}
	for _, x := range b.house.Beams {
		if b.carriesFloor(x, next) {
			out = append(out, axis(x.Pieces[0].A.Flat(), 1-i), axis(x.Pieces[len(x.Pieces)-1].B.Flat(), 1-i))
		}
	}
	slices.Sort(out)
	return out
}

// cutBeside is what openings leave out, in, of the joist spans of a floor before and
// after a place, at a coordinate across the joists.
func (b *builder) cutBeside(next *plan.Level, at, across, before, after float64) (gone float64) {
	i := joistAxis(next)
	for _, x := range b.plan.FloorOpenings {
		if x.Level == next && axis(x.Lo, 1-i) < across && across < axis(x.Hi, 1-i) {
			gone += cutJoists(x, i, at, before, after)
		}
	}
	return gone
}

// floorBeams brings the floors on beams to the walls at their ends: to each support by
// lever, nothing taken to go on over one. What comes to a post is not followed.
func (b *builder) floorBeams() {
	for _, next := range b.plan.Levels {
		for _, x := range b.house.Beams {
			if !b.carriesFloor(x, next) {
				continue
			}
			area := b.floorOn(x, next, 1)
			b.beamAreas[x] = append(b.beamAreas[x], beamArea{next, area})
			b.handOver(x, b.floorOn(x, next, b.dead.floor(next)), func(p *wallPath, station, lb float64) {
				for _, on := range p.places(station) {
					on.c.floor = on.c.floor.add(down(on.k * lb))
					on.c.beams = append(on.c.beams, beamPart{x.Name, on.k * lb})
				}
			})
		}
	}
}

// supportsAlong are the places of a beam's supports, in order along it, in.
func supportsAlong(x *framing.Beam) []float64 {
	at := make([]float64, len(x.Supports))
	for i, u := range x.Supports {
		at[i] = u.Along
	}
	return at
}

// handOver shares the loads on a beam to its supports and tells take what comes to each
// wall among them, and to those of the beams that it hangs on.
func (m *model) handOver(x *framing.Beam, loads []push, take func(p *wallPath, station, lb float64)) {
	at := supportsAlong(x)
	for i, lb := range reactions(at, loads) {
		u := x.Supports[i]
		if lb > 0 && u.Beam != nil {
			m.handOver(u.Beam, []push{{u.Station, lb}}, take)
		}
		if p := m.byWall[u.Wall]; lb > 0 && p != nil && len(p.carriers) > 0 {
			take(p, u.Station, lb)
		}
	}
}

// floorOn is the weight of a floor on a beam: half of the joists on each side, up to the
// next bearing wall or beam there, in stretches along it, at so many psf. The beam's own weight is left
// out: it would only relieve.
func (b *builder) floorOn(x *framing.Beam, next *plan.Level, psf float64) (out []push) {
	i := joistAxis(next)
	p, q := x.Pieces[0].A.Flat(), x.Pieces[len(x.Pieces)-1].B.Flat()
	lo, hi := axis(p, 1-i), axis(q, 1-i)
	cuts := []float64{lo, hi}
	for _, c := range b.acrossCuts(next) {
		cuts = append(cuts, clamp(c, math.Min(lo, hi), math.Max(lo, hi)))
	}
	for _, w := range b.wallsUnder(next) {
		cuts = append(cuts, clamp(axis(w.From, 1-i), math.Min(lo, hi), math.Max(lo, hi)), clamp(axis(w.To, 1-i), math.Min(lo, hi), math.Max(lo, hi)))
	}
	for _, u := range x.Supports {
		cuts = append(cuts, clamp(axis(u.At.Flat(), 1-i), math.Min(lo, hi), math.Max(lo, hi)))
	}
	slices.Sort(cuts)
	for k := 1; k < len(cuts); k++ {
		long, across := cuts[k]-cuts[k-1], (cuts[k]+cuts[k-1])/2
		at, ok := beamAt(x, i, across)
		if long < geom.Eps || !ok {
			continue
		}
		before, after := 0.0, 0.0
		for _, w := range b.wallsUnder(next) {
			if on, ok := lineAt(w.From, w.To, i, across); ok {
				before, after = nearer(on-at, before, after)
			}
		}
		before, after = b.beamSpans(next, at, across, before, after)
		rest := math.Max(0, before+after-b.cutBeside(next, at, across, before, after))
		s, _ := x.Frame.Local(p.Add(q.Sub(p).Mul((across - lo) / (hi - lo))))
		out = append(out, push{s, psf * rest / 2 * long / 144})
	}
	return out
}

// wallsUnder are the bearing walls that a floor's joists may rest on.
func (b *builder) wallsUnder(next *plan.Level) (out []*plan.Wall) {
	for _, w := range b.plan.Walls {
		if below := b.plan.Levels[max(0, next.Index-1)]; w.Bearing && w.On(below) && !w.Frame().D.Leans(joistAxis(next)) {
			out = append(out, w)
		}
	}
	return out
}
