package nailing

import (
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// touching is how near two faces lie that are nailed together, in: a
// sixteenth, what framing holds its heights to.
const touching = 1.0 / 16

// finder gathers the connections of a house.
type finder struct {
	house *framing.House
	walls map[*plan.Wall][]*framing.Member // members of each wall, in order of station
	found map[plan.Connection][]*Spot
	grid  *geom.Grid[*framing.Member]
}

// connections finds all connections of a house, each kind in the house's order.
func connections(h *framing.House) map[plan.Connection][]*Spot {
	f := &finder{house: h, walls: map[*plan.Wall][]*framing.Member{}, found: map[plan.Connection][]*Spot{}, grid: geom.NewGrid[*framing.Member]()}
	for _, m := range h.Members {
		if m.Wall != nil {
			f.walls[m.Wall] = append(f.walls[m.Wall], m)
		}
		if len(m.Solid) > 0 {
			lo, hi := m.Bounds()
			f.grid.Add(m, lo, hi, nil)
		}
	}
	for _, w := range h.Plan.Walls {
		f.plates(w)
		f.uprights(w)
		f.soles(w)
	}
	for _, j := range h.Joints {
		f.joint(j)
	}
	beside := splices(h)
	for _, m := range h.Members {
		if !beside[m] {
			f.member(m)
		}
	}
	for _, t := range h.Ties {
		f.tie(t)
	}
	for _, b := range h.Blocks {
		f.block(b)
	}
	return f.found
}

// tie notes the nails of a ceiling joist: at both its rafters, and on both
// sides of its breaks.
func (f *finder) tie(t *framing.Tie) {
	f.add(plan.RafterToJoist, Spot{Side: t.Pieces[0], Main: t.Rafters[0]})
	f.add(plan.RafterToJoist, Spot{Side: t.Pieces[len(t.Pieces)-1], Main: t.Rafters[1]})
	for i, s := range t.Splices {
		f.add(plan.CeilingSplice, Spot{Side: s, Main: t.Pieces[i]})
		f.add(plan.CeilingSplice, Spot{Side: s, Main: t.Pieces[i+1]})
	}
}

// block notes the nails of a block at the eaves: the deck's into it, at both its
// ends, and into its plate.
func (f *finder) block(b *framing.Block) {
	s := Spot{Side: b.Member, Main: b.Plate, Wall: b.Wall, Station: b.Station, Touch: b.Member.Length}
	f.add(plan.BlockingToPlate, s)
	f.add(plan.BlockingToRafter, Spot{Side: b.Rafters[0], Main: b.Member, Wall: b.Wall, Station: b.Station, Times: 2})
	if b.Full {
		s.Side, s.Main = b.Member, b.Member // the panel is no member
		if f.house.Plan.Deck != nil {
			s.Panel = plan.PanelOf(f.house.Plan.Deck.Panel).Thick
		}
		f.add(plan.DeckToBlocking, s)
	}
}

// splices lists the pieces beside the breaks of ceiling joists, which lie on
// bearing walls without nails of their own.
func splices(h *framing.House) map[*framing.Member]bool {
	out := map[*framing.Member]bool{}
	for _, t := range h.Ties {
		for _, s := range t.Splices {
			out[s] = true
		}
	}
	return out
}

// add notes a connection.
func (f *finder) add(c plan.Connection, s Spot) {
	s.Row = c.Row()
	if s.Times == 0 {
		s.Times = 1
	}
	f.found[c] = append(f.found[c], &s)
}

// of returns the members of a wall that have one of the roles.
func (f *finder) of(w *plan.Wall, roles ...plan.Role) (out []*framing.Member) {
	for _, m := range f.walls[w] {
		for _, r := range roles {
			if m.Role == r {
				out = append(out, m)
			}
		}
	}
	return out
}

// overlap returns the length that two ranges share.
func overlap(a0, a1, b0, b1 float64) float64 { return math.Max(0, math.Min(a1, b1)-math.Max(a0, b0)) }

// plates finds the upper top plate on the lower of its own wall, and over
// those of others.
func (f *finder) plates(w *plan.Wall) {
	for _, u := range f.of(w, plan.UpperPlate) {
		for _, t := range f.of(w, plan.TopPlate) {
			lo, hi := math.Max(u.S0, t.S0), math.Min(u.S1, t.S1)
			if hi-lo > touching {
				slope := u.B.Sub(u.A).Len() / math.Max(u.B.Sub(u.A).Flat().Len(), touching)
				f.add(plan.TopPlates, Spot{Side: u, Main: t, Wall: w, Station: (lo + hi) / 2, Touch: (hi - lo) * slope})
			}
		}
		f.laps(w, u)
	}
}

// laps finds the lower plates of other walls that an upper plate runs over.
func (f *finder) laps(w *plan.Wall, u *framing.Member) {
	if math.Abs(u.A.Z-u.B.Z) > touching {
		return // a rake: it laps over none
	}
	under := w.Frame().Box(u.S0, u.S1, 0, w.Depth(), u.Z0-1, u.Z0-touching)
	if u.Bevel > 0 {
		under = u.Solid[0].Moved(geom.Vec3{Z: -dress / 2}) // its own outline: it ends where the other begins
	}
	lo, hi := under.Bounds()
	for _, t := range f.grid.Within(lo, hi) {
		if t.Role == plan.TopPlate && t.Wall != w && math.Abs(t.Z1-u.Z0) < touching && geom.Overlap(under, t.Solid[0], touching) {
			lo, hi := t.Bounds()
			s, _ := w.Frame().Local(lo.Add(hi).Mul(0.5).Flat())
			f.add(plan.TopPlateLap, Spot{Side: u, Main: t, Wall: w, Station: math.Min(math.Max(s, u.S0), u.S1)})
		}
	}
}

// uprights finds what the studs of a wall are nailed to, one after the other.
func (f *finder) uprights(w *plan.Wall) {
	list := f.of(w, plan.Stud, plan.King, plan.Post, plan.BeveledStud, plan.Jack, plan.Cripple)
	tops, bottoms, sills := f.of(w, plan.TopPlate), f.of(w, plan.BottomPlate, plan.SillPlate), f.of(w, plan.Sill)
	for i, m := range list {
		if t := over(tops, m.Mid()); t != nil && standing(m) {
			f.add(plan.TopPlateToStud, Spot{Side: t, Main: m, Wall: w, Station: m.Mid()})
		}
		if b := over(bottoms, m.Mid()); b != nil && math.Abs(m.Z0-b.Z1) < touching {
			f.add(plan.SoleToStud, Spot{Side: b, Main: m, Wall: w, Station: m.Mid()})
		}
		if s := over(sills, m.Mid()); s != nil && m.Role == plan.Cripple && math.Abs(m.Z1-s.Z0) < touching {
			f.add(plan.CrippleToSill, Spot{Side: s, Main: m, Wall: w, Station: m.Mid()})
		}
		for _, o := range list[i+1:] {
			f.beside(w, m, o)
		}
	}
}

// standing tells whether a member stands from plate to plate.
func standing(m *framing.Member) bool { return m.Role.FullHeight() || m.Role == plan.BeveledStud }

// over returns the one of the members that lies at a station.
func over(list []*framing.Member, s float64) *framing.Member {
	for _, m := range list {
		if m.S0 < s+geom.Eps && s < m.S1+geom.Eps {
			return m
		}
	}
	return nil
}

// beside notes two uprights of a wall that touch side to side.
func (f *finder) beside(w *plan.Wall, m, o *framing.Member) {
	if m.S0 > o.S0 {
		m, o = o, m
	}
	high := overlap(m.Z0, m.Z1, o.Z0, o.Z1)
	if math.Abs(o.S0-m.S1) > touching || high < 1 || m.Role == plan.Cripple || o.Role == plan.Cripple {
		return
	}
	s := Spot{Side: m, Main: o, Wall: w, Station: o.S0, Touch: high}
	switch {
	case standing(m) && standing(o):
		f.add(plan.BuiltUpStuds, s)
	case m.Role == plan.Jack:
		f.add(plan.JackToKing, s)
	default:
		s.Side, s.Main = o, m
		f.add(plan.JackToKing, s)
	}
}

// joint notes the connections that are at joints which framing has found.
func (f *finder) joint(j *framing.Joint) {
	s := Spot{Side: j.First(), Wall: j.Wall, Station: j.Station}
	if len(j.Members) > 1 {
		s.Main = j.Members[1]
	}
	if s.Main == nil {
		return
	}
	switch j.Kind {
	case plan.RafterPlate, plan.GirderPlate:
		f.add(plan.RafterToPlate, s)
	case plan.RafterRidge:
		f.add(plan.RafterToRidge, Spot{Side: s.Side, Main: s.Main, Times: rafters(j)})
	case plan.BoardRafter:
		if f.house.Plan.Deck != nil {
			s.Gap = plan.PanelOf(f.house.Plan.Deck.Panel).Thick
		}
		f.add(plan.BoardToRafter, s)
	case plan.LedgerWall:
		s.Gap = j.Gap
		f.add(plan.LedgerToWall, s)
	case plan.PlateSplice:
		if s.Times = 2; lapped(j) {
			f.add(plan.TopPlateSplice, s)
		}
	case plan.WallCorner:
		s.Touch = overlap(s.Side.Z0, s.Side.Z1, s.Main.Z0, s.Main.Z1)
		f.add(plan.CornerStuds, s)
	case plan.HeaderKing:
		f.add(plan.HeaderToKing, Spot{Side: s.Main, Main: s.Side, Wall: j.Wall, Station: j.Station})
	case plan.CripplePlate:
		f.add(plan.CrippleToPlate, Spot{Side: s.Main, Main: s.Side, Wall: j.Wall, Station: j.Station})
	case plan.CrippleHeader:
		f.add(plan.CrippleToHeader, s)
	case plan.HeaderTrimmer:
		f.add(plan.TrimmerToHeader, Spot{Side: s.Main, Main: s.Side})
	case plan.TailHeader:
		f.add(plan.HeaderToTail, Spot{Side: s.Main, Main: s.Side})
	case plan.OpeningSill:
		f.add(plan.SillToJack, Spot{Side: s.Main, Main: s.Side, Wall: j.Wall, Station: j.Station})
	}
}

// Lap is how far the plate that runs past a splice must reach on both sides,
// in: least lap of the residential code (IRC 2009 or 2012 Table R602.3(1) row
// 14 in a local amendment, transcribed).
const Lap = 24

// lapped tells whether the other top plate runs past a splice, so that nails
// in the lap hold its two pieces together. Under the peak of a rake both
// plates break.
func lapped(j *framing.Joint) bool {
	if len(j.Members) < 3 {
		return false
	}
	m := j.Members[2]
	return m.S0 <= j.Station-Lap+touching && m.S1 >= j.Station+Lap-touching
}

// rafters counts the rafters that end at a ridge joint.
func rafters(j *framing.Joint) (n int) {
	for _, m := range j.Members {
		switch m.Role {
		case plan.Rafter, plan.HipRafter, plan.ValleyRafter:
			n++
		}
	}
	if last := j.Members[len(j.Members)-1]; last.Role == plan.HipRafter || last.Role == plan.ValleyRafter {
		n-- // what the others end at
	}
	return max(n, 1)
}

// member notes the connections of members one by one: plies, rims, joists,
// blocks.
func (f *finder) member(m *framing.Member) {
	plies := Spot{Side: m, Main: m, Wall: m.Wall, Station: m.Mid(), Touch: m.Length, Times: m.Section.Ply - 1}
	switch m.Role {
	case plan.Header:
		if plies.Times > 0 {
			f.add(plan.HeaderPlies, plies)
		}
	case plan.GirderBeam, plan.Beam, plan.PlateBeam, plan.FlushBeam:
		if plies.Times > 0 {
			f.add(plan.GirderPlies, plies)
		}
	case plan.Blocking:
		if m.Roof != nil {
			return // at an eave: block
		}
		if m.Wall == nil {
			f.add(plan.BlockingToJoist, Spot{Side: m, Main: m, Times: 2})
			return
		}
		f.add(plan.BlockingToStud, Spot{Side: m, Main: m, Wall: m.Wall, Station: m.Mid(), Times: 2})
	case plan.Rim:
		f.rim(m)
	case plan.Joist:
		if plies.Times > 0 {
			f.add(plan.JoistPlies, plies)
		}
		f.joist(m)
	case plan.Rafter, plan.Truss, plan.GirderTruss, plan.HipTruss, plan.JackTruss, plan.CornerJack, plan.ValleyFrame:
		f.rafter(m)
	}
}
