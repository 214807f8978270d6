package placement

import (
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/units"
	"galewright/plan/wind"
	"galewright/plan/wood"
)

// hostKind is the joints of one kind along one wall, roof, girder or porch.
type hostKind struct {
	host string
	kind plan.JointKind
}

// world is the house with the indexes that placing needs.
type world struct {
	house   *framing.House
	joints  []*framing.Joint // in the order of the house as written
	byKind  map[plan.JointKind][]*framing.Joint
	byHost  map[hostKind][]*framing.Joint // by station as written
	hosts   []string                      // that have joints, in the order of the house
	isHost  map[string]bool
	byID    map[string]*framing.Joint
	byFirst map[*framing.Member][]*framing.Joint
	grid    *geom.Grid[block] // of members that can stand against a face
	wood    *wood.Index
	sills   map[*plan.Wall][]*framing.Member // sill plates
	packing []*framing.Member                // boards on girders
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
		sills:   map[*plan.Wall][]*framing.Member{},
		grid:    blocksOf(h.Members),
		wood:    wood.New(h.Members),
		sloped:  slopedPlates(h),
	}
	for _, m := range h.Members {
		if m.Role == plan.SillPlate {
			w.sills[m.Wall] = append(w.sills[m.Wall], m)
		}
		if m.Role == plan.Packing {
			w.packing = append(w.packing, m)
		}
	}
	w.joints = h.JointsAsWritten()
	for _, j := range w.joints {
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
		slices.SortStableFunc(list, func(a, b *framing.Joint) int { return sign(h.AsWritten(a) - h.AsWritten(b)) })
	}
	w.endZone = endZone(h)
	return w
}

// sign tells which of two places comes first by their distance, in; the last
// bits of a float tell nothing.
func sign(d float64) int {
	switch {
	case d < -geom.Eps:
		return -1
	case d > geom.Eps:
		return 1
	}
	return 0
}

// endZone returns the distance a of ASCE 7-16 Fig. 28.3-1 for the house, in; 3 ft
// where it has no walls.
func endZone(h *framing.House) float64 {
	s := h.Size()
	return 12 * wind.Basis{Length: s.Length / 12, Width: s.Width / 12, Height: s.Mean / 12}.EdgeStrip()
}

// touch is how near two faces must come to touch, in.
const touch = 1.0 / 32

// units is the system that the plan's faults are told in.
func (w *world) units() units.System { return w.house.Plan.Project.Units }

// Units is the system that the piece is told of in: its plan's. A piece at no joint
// speaks US units.
func (p *Piece) Units() units.System {
	if p == nil || p.Joint == nil {
		return units.Imperial
	}
	return p.Joint.Units
}
