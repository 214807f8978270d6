package framing

import (
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// clipRoom is how far from a higher wall the end of a rafter is tied to the rake
// wall under it, in: room for a clip and the hand that nails it.
const clipRoom = 4

// ledger adds the board on the wall that carries a shed's rafters at their
// high end, one stock size deeper than the rafters, its arris in the roof. A
// wall with a rake top that runs up to the higher wall carries the rafters
// over it all along, and its plates end at that wall: the ledger stops at its
// sides.
func (f *roofFrame) ledger(rb *roofBody, i int) {
	low := (i + 2) % 4
	fr := geom.NewFrame(rb.corner(i, 0), rb.corner(i, 1))
	length := rb.corner(i, 1).Sub(rb.corner(i, 0)).Len()
	depth := deeper(rb.Rafters.Depth * cosInv(rb.body.Sides[low].Slope))
	off := f.sheathing(rb, i)
	free, miters := f.ledgerSpans(fr, length), []geom.Plane(nil)
	if rb.turns() {
		free, miters = f.cornerSpans(rb, i, fr, length, off)
	}
	z := rb.body.Plane(low).At(fr.At(0, off+plate, 0).Flat())
	for _, s := range free {
		m := f.lying(plan.Ledger, fr, s.lo, s.hi, off, off+plate, z-depth, z)
		m.ID, m.Level, m.Roof = rb.Name+"/ledger", f.level, rb.Roof
		if m.Solid[0] = clipTo(m.Solid[0], miters); len(miters) > 0 {
			m.Bevel = 45
		}
		m.Section = plan.Lumber{Ply: 1, Breadth: plate, Depth: depth, Text: nominal(plate, depth)}
		f.ledgers[rb] = append(f.ledgers[rb], f.member(m))
	}
}

// sheathing is the thickness of the wall sheathing behind the ledger of a body's
// side, in: a roof's ledger goes on over it, straps of the studs under it. On a wall
// within the house there is none.
func (f *roofFrame) sheathing(rb *roofBody, i int) (in float64) {
	for _, w := range f.wallsOn(rb.body, i) {
		if w.Exterior {
			_, thick := f.plan.WallPanels(w)
			in = max(in, thick.Thick)
		}
	}
	return in
}

// ledgerSpans returns what rake walls leave of the length of a ledger along fr.
func (f *roofFrame) ledgerSpans(fr geom.Frame, length float64) []span {
	board := column(fr, 0, length, 0, plate)
	lo, hi := board.Bounds()
	free := []span{{0, length}}
	for _, r := range f.rakesAt.Within(lo, hi) {
		if !meets(board, r.column) || !geom.Crosses(fr.D, r.wall.frame.D) {
			continue
		}
		a, z := r.column.Along(fr.D.Up(0))
		at := fr.Origin.Dot(fr.D)
		free = without(free, span{a - at, z - at})
	}
	return slices.DeleteFunc(free, func(s span) bool { return s.hi-s.lo < plate })
}

// ledgerAt returns the ledger that carries the high end of a rafter at p, nil
// where a rake wall does.
func (f *roofFrame) ledgerAt(rb *roofBody, p geom.Vec2) *Member {
	for _, m := range f.ledgers[rb] {
		fr := geom.NewFrame(m.A.Flat(), m.B.Flat())
		if s, _ := fr.Local(p); s > -geom.Eps && s < m.Length+geom.Eps {
			return m
		}
	}
	return nil
}

// ledgerFace cuts the rafters of a shed that ends against a wall to the face
// of its ledger, or of the wall's sheathing where none is.
func (f *roofFrame) ledgerFace(r *roofRafter) (out []geom.Plane) {
	for i := range r.owner.sides {
		if r.owner.isHigh(i) && r.owner.body.Sides[i].Against {
			to := r.owner.body.Edge(i) - f.sheathing(r.owner, i)
			if f.ledgerAt(r.owner, r.run.High) != nil {
				to -= plate
			}
			n := roofplan.Outward(i)
			out = append(out, geom.Plane{N: n.Up(0), C: to})
		}
	}
	return out
}

// rafterLedgers adds the joint of each rafter of a shed that ends at a ledger,
// whatever its height: the host is the wall it is on. One over a rake wall that
// the ledger stops at is tied to that wall's plate.
func (f *roofFrame) rafterLedgers() {
	for _, r := range f.rafters {
		if len(f.ledgers[r.owner]) == 0 || r.run.HighEnd.Line != nil {
			continue
		}
		l := f.ledgerAt(r.owner, r.run.High)
		if l == nil {
			f.rakeEnd(r, r.member.B.Flat().Sub(r.dir.Mul(clipRoom)))
			continue
		}
		for i := range r.owner.sides {
			if r.owner.isHigh(i) {
				f.rafterLedger(r, l, i)
			}
		}
	}
	f.hipLedgers()
}

// rafterLedger adds the joint of a rafter at ledger l on side i.
func (f *roofFrame) rafterLedger(r *roofRafter, l *Member, i int) {
	f.ledgerTie(r.owner, r.bar, r.member, r.run.High, l, i)
}

// ledgerTie adds the joint of rafter or hip m, whose top is at p, at ledger l on side i.
func (f *roofFrame) ledgerTie(rb *roofBody, b bar, m *Member, p geom.Vec2, l *Member, i int) {
	w, s := f.wallBehind(rb, i, p, l)
	if w == nil {
		return
	}
	f.joints = append(f.joints, f.joint(&Joint{
		Kind: plan.RafterLedger, Host: w.Name, Wall: w, Level: w.Level, Roof: rb.Roof, Below: true,
		Station: s, Members: []*Member{m, l}, At: m.B.Flat().Up(max(m.B.Z-b.plumb(), l.Z0)),
	}))
}

// wallBehind returns the wall that ledger l is on at plan point p of side i, with the station.
func (f *roofFrame) wallBehind(rb *roofBody, i int, p geom.Vec2, l *Member) (*plan.Wall, float64) {
	walls := slices.DeleteFunc(f.wallsOn(rb.body, i), func(w *plan.Wall) bool {
		s, _ := w.Frame().Local(p)
		return s < w.Hook-near || s > w.Length()+near
	})
	w := ledgerWall(walls, l.Z1)
	if w == nil {
		return nil, 0
	}
	s, _ := w.Frame().Local(p)
	return w, s
}
