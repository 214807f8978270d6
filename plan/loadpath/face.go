package loadpath

import (
	"math"

	"galewright/plan/framing"
	"galewright/plan/geom"
)

// faceGrid finds the roof face that a rafter lies in.
type faceGrid struct{ cells map[[2]int][]*framing.Face }

func newFaceGrid(faces []*framing.Face) *faceGrid {
	g := &faceGrid{cells: map[[2]int][]*framing.Face{}}
	for _, f := range faces {
		e := noExtent()
		for _, p := range f.Outline {
			e.hold(p.Flat())
		}
		for x := int(math.Floor(e.lo.X / cell)); x <= int(math.Floor(e.hi.X/cell)); x++ {
			for y := int(math.Floor(e.lo.Y / cell)); y <= int(math.Floor(e.hi.Y/cell)); y++ {
				g.cells[[2]int{x, y}] = append(g.cells[[2]int{x, y}], f)
			}
		}
	}
	return g
}

// of returns the face over the middle of a strip that slopes its way, or nil.
func (g *faceGrid) of(s *strip) *framing.Face {
	mid := s.low.Add(s.up.Mul(s.run / 2))
	for _, f := range g.cells[[2]int{int(math.Floor(mid.X / cell)), int(math.Floor(mid.Y / cell))}] {
		if f.Slope.Dot(s.up) < -0.9 && inOutline(f.Outline, mid) {
			return f
		}
	}
	return nil
}

// inOutline tells whether p lies within the plan of an outline.
func inOutline(outline []geom.Vec3, p geom.Vec2) bool {
	in := false
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}

// seatReach is how far from the line of a valley or hip the end of a jack may
// lie, in: half the width of the members and the cut.
const seatReach = 6

// seats gives every rafter, hip and valley what framing knows no joint for:
// the valley or ridge under its low end, the hip, valley or ridge at its top.
// Framing joins jacks at one end only.
func (b *builder) seats() {
	var carry []*strip
	for _, s := range b.rafters {
		if s.gathers {
			carry = append(carry, s)
		}
	}
	for _, s := range b.rafters {
		high := s.low.Add(s.up.Mul(s.run))
		if !s.heldBetween(0, s.run/2) {
			b.seat(s, s.low, carry)
		}
		if s.pair == nil && !s.heldBetween(s.run/2, s.run) {
			b.seat(s, high, carry)
		}
	}
}

// seat lets s rest at p on the nearest of the members that may carry it, or
// on a ridge.
func (b *builder) seat(s *strip, p geom.Vec2, carry []*strip) {
	var on *strip
	best, peak := float64(seatReach), false
	for _, c := range carry {
		v := p.Sub(c.low)
		u, d := v.Dot(c.up), math.Abs(v.Cross(c.up))
		if c != s && !c.restsOn(s) && u > -seatReach && u < c.run+seatReach && d < best {
			on, best, peak = c, d, u > c.run-seatReach
		}
	}
	if on != nil && !peak {
		s.rest(support{on: on}, p)
		return
	}
	if r := b.ridgeNear(p); r != nil {
		s.rest(support{ridge: r}, p)
	} else if on != nil { // hips that lean on each other at a peak without a ridge
		i := ridgeAxis(s.roof)
		r := &ridge{roof: s.roof, cross: axis(p, 1-i), lo: axis(p, i), hi: axis(p, i)}
		b.ridges = append(b.ridges, r)
		s.rest(support{ridge: r}, p)
	}
}

// ridgeNear returns the ridge that p lies on, or nil.
func (b *builder) ridgeNear(p geom.Vec2) *ridge {
	for _, r := range b.ridges {
		i := ridgeAxis(r.roof)
		if along := axis(p, i); math.Abs(axis(p, 1-i)-r.cross) < seatReach && along > r.lo-seatReach && along < r.hi+seatReach {
			return r
		}
	}
	return nil
}

// restsOn tells whether c already rests on s.
func (c *strip) restsOn(s *strip) bool {
	for _, e := range c.ends {
		if e.on == s {
			return true
		}
	}
	return false
}

// heldBetween tells whether a support holds the strip between u0 and u1, or
// a plate anywhere when that is its lower half.
func (s *strip) heldBetween(u0, u1 float64) bool {
	for _, e := range s.ends {
		if e.u >= u0 && e.u <= u1 || e.plate != nil && u0 == 0 {
			return true
		}
	}
	return false
}
