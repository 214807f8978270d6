package placement

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
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
		if q := holdDownAmong(x.p.At(p.Joint)); q != nil {
			x.bolt(p, []float64{q.Station}, true)
		} else {
			x.bolt(p, taken[w], false)
			taken[w] = append(taken[w], p.Station)
		}
		p.extent()
	}
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
// that the stud stands on. Taken are the stations that others have; with
// there, the bolt goes at the first of them.
func (x *placer) bolt(p *Piece, taken []float64, there bool) {
	j, it := p.Joint, p.Item
	f, depth := j.Wall.Frame(), j.Wall.Depth()
	l := x.through(j)
	plate := role(l.joint, plan.BottomPlate, plan.SillPlate)
	t := depth / 2
	if sill := role(l.joint, plan.SillPlate); sill != nil && it.Kind.Name == plan.AnchorBoltItem && !there {
		plate = sill
		if rim := role(l.joint, plan.Rim); rim != nil && j.Level != nil { // the rim stands on the sill's outer edge
			t = max(t, min(j.Level.Rim+washer(p)/2, depth-washer(p)/2))
		}
	}
	z := l.zAbove
	if plate != nil {
		z = plate.Z1
	}
	if there {
		p.Station = taken[0]
	} else {
		p.Station = x.roomOnPlate(p, l, plate, t, z, taken)
	}
	top := z + nuts(it.Rod)
	p.Path = []geom.Vec3{f.At(p.Station, t, top), f.At(p.Station, t, top-it.Length)}
}

// washer returns the side of the square a bolt's washer takes on the plate;
// where the catalog does not say, 2 in.
func washer(p *Piece) float64 { return max(p.Item.Washer, 2) }

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
func (x *placer) roomOnPlate(p *Piece, l link, plate *framing.Member, t, z float64, taken []float64) float64 {
	f, w := p.Joint.Wall.Frame(), washer(p)
	lo, hi := 0.0, p.Joint.Wall.Length()
	if plate != nil && plate.Wall == p.Joint.Wall {
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
	s, ok := nearestFree(mid, first+0.5, func(s float64) bool { return free(s, 0.5, max(boltEnd*p.Item.Rod, w/2)) })
	if !ok {
		s, ok = nearestFree(mid, first, func(s float64) bool { return free(s, 0, w/2) })
	}
	if p.tight = !ok; p.tight {
		return mid + first + 0.5
	}
	return s
}

// nearestFree looks right and left of mid, from a first distance outward.
func nearestFree(mid, first float64, free func(float64) bool) (float64, bool) {
	for d := first; d <= boltReach; d += boltStep {
		for _, s := range []float64{mid + d, mid - d} {
			if free(s) {
				return s, true
			}
		}
	}
	return 0, false
}
