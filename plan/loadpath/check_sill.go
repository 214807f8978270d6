package loadpath

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
	"galewright/plan/placement"
)

// sillCheck is the ID of the check of bottom plates.
const sillCheck = "sill-anchors"

// sillAnchors checks what holds the plates under the lowest walls down. On a
// slab or stem wall a stud's clip ends at the sill plate, and the bolts must
// take on what the clips bring; a perforated wall lifts its plate besides,
// anywhere (SDPWS 2021 4.3.6.4.2.1, transcribed).
func sillAnchors(c *Check, a *analysis) (out []*Link) {
	pierced := a.piercedSegments()
	for _, w := range a.plan.Walls {
		p := a.byWall[w]
		if p == nil {
			continue
		}
		if l := a.plateOverFloor(c, p); l != nil {
			out = append(out, l)
		}
		lifts := a.plateLifts(p, pierced[w])
		sum := 0.0
		for _, f := range lifts {
			sum += f.lb
		}
		if sum <= least && len(pierced[w]) == 0 && (w.Level.Index > 0 || !a.onSill(p)) {
			continue
		}
		bolts := a.bolts(w)
		if len(bolts) == 0 {
			if sum > least {
				out = append(out, unbolted(c, w, sum))
			}
			continue
		}
		out = append(out, a.boltLinks(c, w, bolts, lifts)...)
	}
	return out
}

// plateLift is a force that lifts a plate at a stud, lb ASD: what the stud's
// clip brings, and t of a perforated wall on the stud's stretch.
type plateLift struct {
	station, lb float64
	from        string
	foot        *framing.Joint // of the stud
}

// piercedSegments returns the perforated segments of each wall.
func (a *analysis) piercedSegments() map[*plan.Wall][]*SegmentShear {
	out := map[*plan.Wall][]*SegmentShear{}
	for _, x := range a.lateral.lines {
		for _, s := range x.Segments {
			if s.Pierced != nil && s.base {
				out[s.Wall] = append(out[s.Wall], s)
			}
		}
	}
	return out
}

// plateLifts returns what lifts the bottom plate of a wall: the studs that a
// clip ties to it, each in its own worst case, and a perforated wall's t.
func (a *analysis) plateLifts(p *wallPath, pierced []*SegmentShear) (out []plateLift) {
	hi := 0.0
	for i, k := range p.carriers {
		if i == 0 {
			hi = math.Min(0, k.station)
		}
		lo := hi
		hi += k.share
		f := plateLift{station: k.station, from: "stud at " + a.u.Length(k.station), foot: k.base}
		if a.toSill(k) {
			if q := a.peaks[k.base]; q != nil {
				f.lb = math.Max(0, q.demand)
			}
		}
		for _, s := range pierced {
			f.lb += s.Demand / 12 * overlap(lo, hi, s.Shear.From, s.Shear.To)
		}
		out = append(out, f)
	}
	return out
}

// onSill tells whether a wall's studs stand on a sill plate.
func (a *analysis) onSill(p *wallPath) bool {
	return slices.ContainsFunc(p.carriers, func(k *carrier) bool { return sillUnder(k) })
}

// sillUnder tells whether a stud stands on a sill plate over a slab or wall.
func sillUnder(k *carrier) bool {
	return k.base != nil && len(k.ground) == 0 && onSillAlone(k.base)
}

// onSillAlone tells whether a joint is the foot of a stud right on a sill plate.
func onSillAlone(j *framing.Joint) bool {
	return j.Kind == plan.StudBase && len(j.Members) > 1 && j.Members[1].Role == plan.SillPlate
}

// toSill tells whether a stud's uplift ends at its sill plate: nothing laps
// past it, nor does it hang on the stud beside it that has a hold-down.
func (a *analysis) toSill(k *carrier) bool {
	return sillUnder(k) && a.heldAtBeside(k.base) == nil && !slices.ContainsFunc(a.placed.At(k.base), func(q *placement.Piece) bool {
		return q.Item.Kind.Strap || engineered(q)
	})
}

// plateOverFloor is the link of a bottom plate on a floor at which clips end:
// its nails hold each stud's uplift on, or nothing does; nil where no clip ends
// there.
func (a *analysis) plateOverFloor(c *Check, p *wallPath) (worst *Link) {
	sum := 0.0
	for _, k := range p.carriers {
		lb := a.endsAtPlate(k)
		if lb <= 0 {
			continue
		}
		sum += lb
		l := unbolted(c, p.w, lb)
		l.Where = fmt.Sprintf("wall %s, bottom plate at %s", p.w.Name, a.u.Length(k.station))
		l.Terms = []Term{{"uplift of the stud clipped to the plate, the worst of the wall, ASD", lb, "lb"}}
		l.Gap = ""
		l.close(a.plateNails(k))
		if worst == nil || l.Ratio > worst.Ratio {
			worst = l
		}
	}
	if sum <= least {
		return nil
	}
	if worst.Capacity == nil {
		worst = unbolted(c, p.w, sum)
		worst.Gap = fmt.Sprintf("clips end at the bottom plate over a floor; no nails of it into rim or joists are ordered (%s)", plan.SoleToFloor)
	}
	return worst
}

// endsAtPlate returns the uplift of a stud whose clip ends at a bottom plate
// that lies on a floor, lb ASD; 0 of any other.
func (a *analysis) endsAtPlate(k *carrier) float64 {
	if k.base == nil || k.base.Kind != plan.StudBase || sillUnder(k) || a.peaks[k.base] == nil || !overFloor(k.base) {
		return 0
	}
	pieces := a.placed.At(k.base)
	past := slices.ContainsFunc(pieces, func(q *placement.Piece) bool { return q.Item.Kind.Strap || engineered(q) })
	clip := slices.ContainsFunc(pieces, func(q *placement.Piece) bool { return q.Item.Kind.Shape == hardware.Body }) // too short to go past the plate
	if !clip || past {
		return 0
	}
	return math.Max(0, a.peaks[k.base].demand)
}

// overFloor tells whether the bottom plate at a stud's foot lies on a floor.
func overFloor(j *framing.Joint) bool {
	return slices.ContainsFunc(j.Members, func(m *framing.Member) bool { return m.Role == plan.BottomPlate })
}

// bolts returns the bolts through the bottom plate of a wall, by station: those
// whose nut is on the plate, not on the seat of a hold-down over it.
func (a *analysis) bolts(w *plan.Wall) (out []*placement.Piece) {
	for _, j := range a.joints[w] {
		if j.Kind != plan.StudBase && j.Kind != plan.WallEnd && j.Kind != plan.SillFoundation {
			continue
		}
		for _, q := range a.placed.At(j) {
			if q.Item.Kind.Shape == hardware.Rod && a.steel.OnWood(q) {
				out = append(out, q)
			}
		}
	}
	slices.SortStableFunc(out, func(x, y *placement.Piece) int { return cmpFloat(x.Station, y.Station) })
	return out
}

// unbolted is the link of a plate that lifts and has no bolt.
func unbolted(c *Check, w *plan.Wall, sum float64) *Link {
	l := &Link{Check: c, ID: w.Name + ", bottom plate", Wall: w, Unit: "lb", Demand: sum, Strength: sum / ASD.W, Case: "each stud in its own worst case", Host: "wall " + w.Name, Where: "wall " + w.Name}
	l.Terms = []Term{{"uplift of all studs clipped to the plate, and t of a perforated wall over its length, ASD", sum, "lb"}}
	l.close(nil)
	l.Gap = "no bolt in the plan holds the bottom plate"
	return l
}
