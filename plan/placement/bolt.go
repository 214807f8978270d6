package placement

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
)

// seatRods places rods and bolts on walls: an anchor rod under the hold-down
// that stands at its joint, every other one beside its stud, clear of the
// hold-downs' rods and of the bolts before it.
func (x *placer) seatRods() {
	taken := map[*plan.Wall][]float64{}
	var rest []*Piece
	for _, p := range x.p.Pieces {
		w := p.Joint.Wall
		switch {
		case w == nil || p.Joint.Kind.Lies() == plan.LiesAgainst: // its place is settled
		case p.Item.Bodies > 0:
			taken[w] = append(taken[w], p.Station)
		case p.Item.Kind.Shape == hardware.Rod:
			rest = append(rest, p)
		}
	}
	for _, p := range rest {
		w := p.Joint.Wall
		ask := want{joint: p.Joint, item: p.Item, n: 1}
		if q := holdDownAmong(x.p.At(p.Joint)); q != nil {
			p.Lie = x.bolt(ask, []float64{q.Station}, q)
		} else {
			p.Lie = x.bolt(ask, taken[w], nil)
			taken[w] = append(taken[w], p.Station)
		}
	}
}

// seatedLast tells whether a piece gets its place when all others have theirs.
func (w want) seatedLast() bool {
	return w.item.Kind.Shape == hardware.Rod && w.joint.Wall != nil && w.joint.Kind.Lies() != plan.LiesAgainst
}

func holdDownAmong(pieces []*Piece) *Piece {
	for _, q := range pieces {
		if q.Item.Kind.Name == plan.HoldDownItem {
			return q
		}
	}
	return nil
}

// bolt sets a bolt where the plate it holds has room for the washer: an
// anchor bolt in the sill plate on the foundation, any other rod in the plate
// that the stud stands on. Taken are the stations that others have; under a
// hold-down, the bolt goes at the first of them and up through the seat.
func (x *placer) bolt(w want, taken []float64, under *Piece) Lie {
	j, it := w.joint, w.item
	f, depth := j.Wall.Frame(), j.Wall.Depth()
	l := x.through(j)
	plate := role(l.joint, plan.BottomPlate, plan.SillPlate)
	t := depth / 2
	if sill := x.sillUnder(l); sill != nil && it.Kind.Name == plan.AnchorBoltItem && under == nil {
		plate = sill
		if rim := role(l.joint, plan.Rim); rim != nil && j.Level != nil { // the rim stands on the sill's outer edge
			t = max(t, min(j.Level.Rim+washer(it)/2, depth-washer(it)/2))
		}
	}
	z := l.zAbove
	if plate != nil {
		z = plate.Z1
	}
	s, clear := taken0(taken), true
	if under == nil {
		s, clear = x.roomOnPlate(w, l, plate, t, z, taken)
	}
	top := z + hardware.Past(it.Rod, it.Washer)
	if under != nil && under.Rod != nil {
		top = under.Rod.A.Z
	}
	lie := x.rodLie(w, Axis{f.At(s, t, top), f.At(s, t, top-it.Length)}, j.Members, s)
	lie.Tight = !clear
	lie, _ = w.whole(lie)
	return lie
}

// sillUnder returns the sill plate that the joint names, or the nearest of its
// wall within reach, as where a girder's end lies under the stud.
func (x *placer) sillUnder(l link) *framing.Member {
	if sill := role(l.joint, plan.SillPlate); sill != nil {
		return sill
	}
	var near *framing.Member
	least := float64(boltReach)
	for _, m := range x.sills[l.joint.Wall] {
		if d := max(m.S0-l.s1, l.s0-m.S1); d < least {
			near, least = m, d
		}
	}
	return near
}

// taken0 returns the first of some stations, or 0.
func taken0(taken []float64) float64 {
	if len(taken) == 0 {
		return 0
	}
	return taken[0]
}

// washer returns the side of the square a bolt's washer takes on the plate;
// where the catalog does not say, 2 in.
func washer(it *hardware.Item) float64 { return max(it.Washer, 2) }

// Where bolts go on a plate: each at least seven diameters from the plate's
// end (IRC 2006 R403.1.6, read), sought in steps within reach of the stud.
const (
	boltEnd   = 7    // diameters
	boltStep  = 0.25 // in
	boltReach = 24   // in
)

// roomOnPlate returns the station nearest to the stud where the washer of a
// bolt lies on the plate, half an inch clear of what stands there, and clear
// of the rods taken.
func (x *placer) roomOnPlate(at want, l link, plate *framing.Member, t, z float64, taken []float64) (s float64, clear bool) {
	wall, w := at.joint.Wall, washer(at.item)
	f := wall.Frame()
	lo, hi := 0.0, wall.Length()+wall.Past
	way := 1.0
	if x.first() == plan.Right {
		way = -1
	}
	if plate != nil && plate.Wall == wall {
		lo, hi = plate.S0, plate.S1
	}
	free := func(s, clear, end float64) bool {
		if s < lo+end || s > hi-end || slices.ContainsFunc(taken, func(o float64) bool { return math.Abs(s-o) < w+1 }) {
			return false
		}
		half := w/2 + clear - touch
		return x.inside(f.Box(s-half, s+half, t-w/2, t+w/2, z+touch, z+3)) == nil
	}
	mid, first := (l.s0+l.s1)/2, (l.s1-l.s0)/2+w/2
	roomy, tight := first+0.5, first
	if at.joint.Kind == plan.SillFoundation { // no stud stands there
		roomy, tight = 0, 0
	}
	s, ok := nearestFree(mid, roomy, way, func(s float64) bool { return free(s, 0.5, max(boltEnd*at.item.Rod, w/2)) })
	if !ok {
		s, ok = nearestFree(mid, tight, way, func(s float64) bool { return free(s, 0, w/2) })
	}
	if !ok {
		return mid + way*roomy, false
	}
	return s, true
}

// nearestFree looks right and left of mid, or with way -1 left and right, from a first distance
// outward.
func nearestFree(mid, first, way float64, free func(float64) bool) (float64, bool) {
	for d := first; d <= boltReach; d += boltStep {
		for _, s := range []float64{mid + way*d, mid - way*d} {
			if free(s) {
				return s, true
			}
		}
	}
	return 0, false
}
