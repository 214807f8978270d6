package roofplan

import "galewright/plan/geom"

// goOn marks the ends of a shed beyond which its plane goes on as the hip end of
// another, as around the corner of a porch: no gable is there.
func (b *Body) goOn(bodies []*Body) {
	_, ends := eaves(b.Axis)
	for _, e := range ends {
		for _, o := range bodies {
			if !b.Sloped(e) && b.GoesOn(e, o) {
				b.Sides[e].RunsIn = true
			}
		}
	}
}

// GoesOn tells whether past end e of shed b its plane is that of a hip end of shed o.
func (b *Body) GoesOn(e int, o *Body) bool {
	low, ok := b.lowSide()
	if _, other := o.lowSide(); !ok || !other || o == b {
		return false
	}
	_, ends := eaves(o.Axis)
	mid := b.Lo.Add(b.Hi).Mul(0.5)
	past := mid.Add(outward[e].Mul(probe - b.On(e, mid)))
	for _, i := range ends {
		if i == low && o.Sloped(i) && o.within(past) && b.Plane(low).same(o.Plane(i)) {
			return true
		}
	}
	return false
}

// lowSide returns the low side of a shed; ok is false of what has a ridge.
func (b *Body) lowSide() (low int, ok bool) {
	sides, _ := eaves(b.Axis)
	switch {
	case !b.Sloped(sides[1]):
		return sides[0], true
	case !b.Sloped(sides[0]):
		return sides[1], true
	}
	return 0, false
}

// clearOfHip is how far from the corner of the house the middle of the last rafters on
// both sides of a hip stands that leans on a ledger there: a hanger of the hip finds room
// between (common practice is to keep it clear, no published source for how far), in.
const clearOfHip = 3

// HighEnd returns the plan point where the hip at end e meets the ridge, or the high side
// of a shed, and the height there.
func (b *Body) HighEnd(e int) (p geom.Vec2, z float64) {
	p, z = b.ridgeEnd(e)
	in := (z - b.Plane(e).At(p)) / b.Sides[e].Slope
	return p.Sub(outward[e].Mul(in)), z
}
