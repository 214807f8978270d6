package placement

import (
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// bolt sets a bolt beside its stud, where the plate it holds has room for the
// washer: an anchor bolt in the sill plate on the foundation, any other rod in
// the plate that the stud stands on.
func (x *placer) bolt(p *Piece) {
	j, it := p.Joint, p.Item
	f, depth := j.Wall.Frame(), j.Wall.Depth()
	l := x.through(j)
	plate := role(l.joint, framing.BottomPlate, framing.SillPlate)
	t := depth / 2
	if sill := role(l.joint, framing.SillPlate); sill != nil && it.Kind.Name == "anchor bolt" {
		plate = sill
		if rim := role(l.joint, framing.Rim); rim != nil && j.Level != nil { // the rim stands on the sill's outer edge
			t = max(t, min(j.Level.Rim+washer(p)/2, depth-washer(p)/2))
		}
	}
	z := l.zAbove
	if plate != nil {
		z = plate.Z1
	}
	s := x.roomOnPlate(p, l, plate, t, z)
	top := z + nuts(it.Rod)
	p.Path = []geom.Vec3{f.At(s, t, top), f.At(s, t, top-it.Length)}
	p.Station = s
}

// washer returns the side of the square a bolt's washer takes on the plate;
// where the catalogue does not say, 2 in.
func washer(p *Piece) float64 { return max(p.Item.Washer, 2) }

// Where bolts go on a plate: each at least seven diameters from the plate's
// end (IRC R403.1.6, from memory), sought in steps within reach of the stud.
const (
	boltEnd   = 7    // diameters
	boltStep  = 0.25 // in
	boltReach = 24   // in
)

// roomOnPlate returns the station nearest to the stud where the washer of a
// bolt lies on the plate, half an inch clear of what stands there, and clear
// of the bolts before it and of a holdown's rod.
func (x *placer) roomOnPlate(p *Piece, l link, plate *framing.Member, t, z float64) float64 {
	f, w := p.Joint.Wall.Frame(), washer(p)
	lo, hi := 0.0, p.Joint.Wall.Length()
	if plate != nil && plate.Wall == p.Joint.Wall {
		lo, hi = plate.S0, plate.S1
	}
	mid := (l.s0 + l.s1) / 2
	first := (l.s1-l.s0)/2 + w/2
	var taken []float64
	n := p.nth
	if q := x.holdownAt(p.Joint); q != nil {
		taken, n = append(taken, q.Station), n+1
	}
	free := func(s, clear, end float64) bool {
		for _, o := range taken {
			if s-o < w+1 && o-s < w+1 {
				return false
			}
		}
		half := w/2 + clear - touch
		room := f.Box(s-half, s+half, t-w/2, t+w/2, z+touch, z+3)
		return s >= lo+end && s <= hi-end && x.inside(room) == nil
	}
	for len(taken) <= n {
		s, ok := nearestFree(mid, first+0.5, func(s float64) bool { return free(s, 0.5, max(boltEnd*p.Item.Rod, w/2)) })
		if !ok {
			s, ok = nearestFree(mid, first, func(s float64) bool { return free(s, 0, w/2) })
		}
		if !ok {
			s = mid + first + 0.5 + float64(len(taken))*(w+1)
		}
		taken = append(taken, s)
	}
	return taken[n]
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
