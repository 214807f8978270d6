package placement

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// hostKind is the joints of one kind along one wall, roof, girder or porch.
type hostKind struct {
	host string
	kind plan.JointKind
}

// world is the house with the indexes that placing needs.
type world struct {
	house   *framing.House
	byKind  map[plan.JointKind][]*framing.Joint
	byHost  map[hostKind][]*framing.Joint // by station
	hosts   []string                      // that have joints, in the order of the house
	isHost  map[string]bool
	byID    map[string]*framing.Joint
	byFirst map[*framing.Member][]*framing.Joint
	grid    grid // of members that can stand against a face
	wood    *geom.Grid[part]
	sloped  map[plateRow][]*framing.Member
	endZone float64
}

func newWorld(h *framing.House) *world {
	w := &world{
		house:   h,
		byKind:  map[plan.JointKind][]*framing.Joint{},
		byHost:  map[hostKind][]*framing.Joint{},
		isHost:  map[string]bool{},
		byID:    map[string]*framing.Joint{},
		byFirst: map[*framing.Member][]*framing.Joint{},
		grid:    newGrid(h.Members),
		wood:    newWood(h.Members),
		sloped:  slopedPlates(h),
	}
	for _, j := range h.Joints {
		w.byKind[j.Kind] = append(w.byKind[j.Kind], j)
		k := hostKind{j.Host, j.Kind}
		w.byHost[k] = append(w.byHost[k], j)
		w.byID[j.ID] = j
		if !w.isHost[j.Host] {
			w.isHost[j.Host] = true
			w.hosts = append(w.hosts, j.Host)
		}
		if m := j.First(); m != nil {
			w.byFirst[m] = append(w.byFirst[m], j)
		}
	}
	for _, list := range w.byHost {
		slices.SortStableFunc(list, func(a, b *framing.Joint) int { return sign(a.Station - b.Station) })
	}
	w.endZone = endZone(h)
	return w
}

func sign(d float64) int {
	switch {
	case d < 0:
		return -1
	case d > 0:
		return 1
	}
	return 0
}

// endZone returns the distance a of ASCE 7-16 Fig. 28.3-1 note 9 (from
// memory): a tenth of the least plan dimension or 0.4 of the mean roof
// height, whichever is less, but not under 4 percent of that dimension or
// 3 ft. The mean roof height is taken half-way from the highest plate to the
// highest member.
func endZone(h *framing.House) float64 {
	lo := geom.Vec2{X: math.Inf(1), Y: math.Inf(1)}
	hi := lo.Mul(-1)
	top, plate := 0.0, 0.0
	for _, w := range h.Plan.Walls {
		if !w.Exterior {
			continue
		}
		for _, p := range []geom.Vec2{w.From, w.To} {
			lo = geom.Vec2{X: min(lo.X, p.X), Y: min(lo.Y, p.Y)}
			hi = geom.Vec2{X: max(hi.X, p.X), Y: max(hi.Y, p.Y)}
		}
		if w.Level != nil {
			plate = max(plate, w.Level.Top())
		}
	}
	for _, m := range h.Members {
		top = max(top, m.A.Z, m.B.Z)
	}
	least := min(hi.X-lo.X, hi.Y-lo.Y)
	if least <= 0 || math.IsInf(least, 0) {
		return 36
	}
	mean := (plate + max(top, plate)) / 2
	return max(min(0.1*least, 0.4*mean), 0.04*least, 36)
}

// touch is how near two faces must come to touch, in.
const touch = 1.0 / 32
