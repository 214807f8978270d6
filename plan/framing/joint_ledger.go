package framing

import (
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// ledgerWall returns the wall whose face a roof's ledger is on at station
// of(w), its top at height z: the one whose story it is in; where it lies in
// the band of a floor, the one that stands on that floor, whose rim is behind
// it; else the nearest below or above. Walls are in the order of the plan.
func ledgerWall(walls []*plan.Wall, z float64) (best *plan.Wall) {
	off := func(w *plan.Wall) float64 {
		foot := w.Level.Floor
		switch {
		case z > foot && z < w.PlateTop():
			return -2
		case z <= foot && z >= foot-w.Level.FloorDepth:
			return -1
		}
		return max(foot-w.Level.FloorDepth-z, z-w.PlateTop(), 0)
	}
	for _, w := range walls {
		if best == nil || off(w) < off(best) {
			best = w
		}
	}
	return best
}

// ledgerJoints ties every ledger to the wall behind it: at each full-height
// member that it lies against; where it lies against a rim or plates alone, to
// that board at each full-height member of the board's wall.
func (b *builder) ledgerJoints() {
	for _, m := range b.house.Members {
		if m.Role != plan.Ledger {
			continue
		}
		behind := b.behind(m)
		var lying []*Member
		found := map[*framedWall][]*Joint{}
		for _, o := range behind {
			w := b.byWall[o.Wall]
			if !o.Role.FullHeight() {
				lying = append(lying, o)
				continue
			}
			found[w] = append(found[w], b.ledgerJoint(w, m, o, o.Mid()))
		}
		if len(found) == 0 {
			for _, o := range most(m, lying) {
				w := b.byWall[o.Wall]
				for _, s := range w.fullStations() {
					if memberAt(most(m, lying), s) == o && m.reaches(w, s) {
						found[w] = append(found[w], b.ledgerJoint(w, m, o, s))
					}
				}
			}
		}
		for _, w := range b.walls {
			shareLedger(w, m, found[w])
		}
	}
}

// fullStations lists the middles of the full-height members of w.
func (w *framedWall) fullStations() (out []float64) {
	for _, m := range w.uprights {
		if m.Role.FullHeight() {
			out = append(out, m.Mid())
		}
	}
	return out
}

// reaches tells whether station s of a wall lies within a ledger's length.
func (m *Member) reaches(w *framedWall, s float64) bool {
	lo, hi := m.along(w)
	return s > lo && s < hi
}

// along returns the stations of a wall between which a member's axis runs.
func (m *Member) along(w *framedWall) (lo, hi float64) {
	a, _ := w.frame.Local(m.A.Flat())
	z, _ := w.frame.Local(m.B.Flat())
	return min(a, z), max(a, z)
}

// ledgerJoint adds one joint of a ledger; At is on the wall's face behind it, half
// way up what the two share, Gap what sheathing lies between.
func (b *builder) ledgerJoint(w *framedWall, m, o *Member, s float64) *Joint {
	_, t := w.frame.Local(m.A.Flat())
	face := 0.0
	if t > w.Depth()/2 {
		face = w.Depth()
	}
	gap := max(0, abs(t-face)-m.Section.Breadth/2)
	if gap < geom.Eps {
		gap = 0
	}
	z := (max(m.Z0, o.Z0) + min(m.Z1, o.Z1)) / 2
	j := b.newJoint(w, plan.LedgerWall, s, z, m, o)
	j.At, j.Roof, j.Gap = w.frame.At(s, face, z), m.Roof, gap
	return j
}

// shareLedger gives the joints of a ledger at one wall the length of it that
// each serves.
func shareLedger(w *framedWall, m *Member, list []*Joint) {
	var stations []float64
	for _, j := range list {
		stations = append(stations, j.Station)
	}
	lo, hi := m.along(w)
	for _, j := range list {
		j.Tributary = shareOf(stations, j.Station, lo, hi)
	}
}

// behind lists the members of walls that the faces of a ledger lie against,
// sheathing between them or not, over the thickness of a plate or more.
func (b *builder) behind(m *Member) (out []*Member) {
	f := geom.NewFrame(m.A.Flat(), m.B.Flat())
	half := m.Section.Breadth/2 + 0.1
	if m.Roof != nil || b.ofDeck(m) {
		_, thick := b.plan.WallPanels(nil)
		half += thick.Thick
	}
	box := f.Box(0, m.B.Sub(m.A).Flat().Len(), -half, half, m.Z0, m.Z1)
	lo, hi := box.Bounds()
	for _, o := range b.index.Within(lo, hi) {
		w := b.byWall[o.Wall]
		if w == nil || o == m || !geom.InLine(f.D, w.frame.D) || min(m.Z1, o.Z1)-max(m.Z0, o.Z0) < plate-geom.Eps {
			continue
		}
		switch o.Role {
		case plan.Stud, plan.King, plan.Post, plan.Rim, plan.BottomPlate, plan.TopPlate, plan.UpperPlate:
		default:
			continue
		}
		if slices.ContainsFunc(o.Solid, func(s geom.Solid) bool { return geom.Overlap(box, s, 0.05) }) {
			out = append(out, o)
		}
	}
	return out
}

// most returns those of some boards of one role that share the greatest
// height with a ledger.
func most(m *Member, lying []*Member) (out []*Member) {
	best, role := 0.0, plan.Role("")
	for _, o := range lying {
		if h := min(m.Z1, o.Z1) - max(m.Z0, o.Z0); h > best+geom.Eps {
			best, role = h, o.Role
		}
	}
	for _, o := range lying {
		if o.Role == role {
			out = append(out, o)
		}
	}
	return out
}
