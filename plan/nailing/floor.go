package nailing

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// parallel is the sine of the angle, 15 degrees, below which two members run
// the same way: as framing has it.
const parallel = 0.26

// inward is how far a joist's end may lie off the face of the rim it is
// nailed to, in: the width of a saw kerf and some.
const inward = 0.3

// frameOf returns the frame along a lying member's center line.
func frameOf(m *framing.Member) geom.Frame { return geom.NewFrame(m.A.Flat(), m.B.Flat()) }

// along tells whether two members run the same way on plan.
func along(a, b *framing.Member) bool {
	return math.Abs(frameOf(a).D.Cross(frameOf(b).D)) < parallel
}

// lies tells whether a member carries a floor.
func lies(m *framing.Member) bool {
	switch m.Role {
	case plan.UpperPlate, plan.SillPlate, plan.GirderBeam, plan.PlateBeam:
		return true
	}
	return false
}

// wide returns how wide a lying member is on plan, in.
func wide(m *framing.Member) float64 {
	if m.Role == plan.GirderBeam || m.Role == plan.PlateBeam {
		return m.Section.Width()
	}
	return m.Section.Depth
}

// under returns what a rim or joist lies on.
func (f *finder) under(m *framing.Member) (out []*framing.Member) {
	lo, hi := m.Bounds()
	for _, o := range f.grid.Within(geom.Vec3{X: lo.X, Y: lo.Y, Z: lo.Z - 1}, hi) {
		if lies(o) && math.Abs(o.Z1-m.Z0) < touching {
			out = append(out, o)
		}
	}
	return out
}

// rim notes a rim along what it lies on.
func (f *finder) rim(m *framing.Member) {
	for _, o := range f.under(m) {
		if !along(m, o) {
			continue
		}
		if touch := f.touch(m, o); touch > touching {
			f.add(plan.RimToSupport, Spot{Side: m, Main: o, Wall: m.Wall, Station: m.Mid(), Touch: touch})
		}
	}
}

// touch returns how long a member runs along over what it lies on, in; 0 where
// it lies beside that.
func (f *finder) touch(m, o *framing.Member) float64 {
	fr := frameOf(m)
	a, ta := fr.Local(o.A.Flat())
	b, _ := fr.Local(o.B.Flat())
	if math.Abs(ta) > (wide(o)+m.Section.Breadth)/2-touching {
		return 0
	}
	return overlap(0, m.B.Sub(m.A).Flat().Len(), math.Min(a, b), math.Max(a, b))
}

// stationOn returns the station on a plate's wall of the middle of what lies on
// the plate; 0 where it has no wall.
func stationOn(plate, m *framing.Member) float64 {
	if plate.Wall == nil {
		return 0
	}
	s, _ := plate.Wall.Frame().Local(m.A.Add(m.B).Mul(0.5).Flat())
	return math.Min(math.Max(s, plate.S0), plate.S1)
}

// rafter notes a rafter or truss that runs along over the plates of a wall: at a
// gable whose plates climb with it. Their faces touch, or the rafter's lower edge
// lies on the plate within the depth of a birdsmouth.
func (f *finder) rafter(m *framing.Member) {
	lo, hi := m.Bounds()
	for _, o := range f.grid.Within(geom.Vec3{X: lo.X, Y: lo.Y, Z: lo.Z - 1}, hi) {
		if o.Role != plan.UpperPlate || !along(m, o) || !f.rides(m, o) {
			continue
		}
		if touch := f.touch(m, o); touch > touching {
			slope := m.B.Sub(m.A).Len() / math.Max(m.B.Sub(m.A).Flat().Len(), touching)
			f.add(plan.RafterAlongPlate, Spot{Side: m, Main: o, Wall: o.Wall, Station: stationOn(o, m), Touch: touch * slope})
		}
	}
}

// rides tells whether a rafter lies on a plate of its own slope: half-way along
// what they share, there is wood of the rafter right above the plate's.
func (f *finder) rides(m, o *framing.Member) bool {
	mid := o.A.Add(o.B).Mul(0.5)
	fr := frameOf(m)
	s, _ := fr.Local(mid.Flat())
	if s < 0 || s > m.B.Sub(m.A).Flat().Len() {
		return false
	}
	top, low := heightAt(o, mid.Flat(), true), heightAt(m, fr.At(s, 0, 0).Flat(), false)
	return math.Abs(low-top) < rides
}

// rides is how far a rafter's lower edge may lie off the plate under it, in: what
// a level seat at its foot leaves beyond.
const rides = 0.5

// heightAt returns the upper or the lower height of a member at a place on plan;
// infinite where it is not there.
func heightAt(m *framing.Member, p geom.Vec2, upper bool) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, s := range m.Solid {
		if t0, t1, ok := geom.Within(s.Planes(), p.Up(0), geom.Vec3{Z: 1}, -1e5, 1e5); ok {
			lo, hi = math.Min(lo, t0), math.Max(hi, t1)
		}
	}
	if upper {
		return hi
	}
	return lo
}

// joist notes a joist on what it crosses or runs along, and its ends at rims.
func (f *finder) joist(m *framing.Member) {
	for _, o := range f.under(m) {
		switch {
		case along(m, o):
			if touch := f.touch(m, o); touch > touching {
				f.add(plan.JoistAlongSupport, Spot{Side: m, Main: o, Wall: o.Wall, Station: stationOn(o, m), Touch: touch})
			}
		case crosses(m, o, f.house.Plan.Lay.Mirrored):
			f.add(plan.JoistToSupport, Spot{Side: m, Main: o})
		}
	}
	for _, p := range []geom.Vec3{m.A, m.B} {
		for _, r := range f.grid.Within(geom.Vec3{X: p.X - 3, Y: p.Y - 3, Z: m.Z0}, geom.Vec3{X: p.X + 3, Y: p.Y + 3, Z: m.Z1}) {
			if r.Role != plan.Rim || overlap(r.Z0, r.Z1, m.Z0, m.Z1) < 1 || along(m, r) {
				continue
			}
			s, t := frameOf(r).Local(p.Flat())
			if s > -touching && s < r.Length+touching && math.Abs(math.Abs(t)-r.Section.Breadth/2) < inward {
				f.add(plan.RimToJoist, Spot{Side: r, Main: m, Wall: r.Wall, Station: r.S0 + s})
			}
		}
	}
}

// crosses tells whether a joist's center line lies over a support, within its
// length: of two that meet under it over the one that begins there, in a mirrored house
// over the one that ends there.
func crosses(m, o *framing.Member, mirrored bool) bool {
	fr, half := frameOf(o), wide(o)/2
	s0, t0 := fr.Local(m.A.Flat())
	s1, t1 := fr.Local(m.B.Flat())
	if math.Max(t0, t1) < touching-half || math.Min(t0, t1) > half-touching {
		return false
	}
	t := math.Min(math.Max(0, math.Min(t0, t1)), math.Max(t0, t1)) // over the middle, or as near as it gets
	s := s0
	if math.Abs(t1-t0) > geom.Eps {
		s = s0 + (s1-s0)*(t-t0)/(t1-t0)
	}
	long := o.B.Sub(o.A).Flat().Len()
	if mirrored {
		s = long - s
	}
	return s >= -geom.Eps && s < long-geom.Eps
}

// span is a range of stations of a wall; shear tells that it is sheathed.
type span struct {
	lo, hi float64
	shear  bool
}

// soles notes the bottom plates of a wall on what is under the subfloor: rim
// or joist along them, else the joists that cross.
func (f *finder) soles(w *plan.Wall) {
	var floor []*framing.Member
	for _, m := range f.floorUnder(w) {
		if math.Abs(m.Z1-(w.Level.Floor-w.Level.Subfloor)) < touching {
			floor = append(floor, m)
		}
	}
	for _, b := range f.of(w, plan.BottomPlate) {
		for _, part := range parts(w, b.S0, b.S1) {
			f.sole(w, b, part, floor)
		}
	}
}

// floorUnder returns the rims, joists and blocks of a wall's level near it,
// rims first.
func (f *finder) floorUnder(w *plan.Wall) (out []*framing.Member) {
	lo, hi := w.Frame().Box(w.Hook, w.Length(), 0, w.Depth(), w.Level.Floor-w.Level.FloorDepth, w.Level.Floor).Bounds()
	for _, m := range f.grid.Within(lo, hi) {
		if m.Level == w.Level && (m.Role == plan.Rim || m.Role == plan.Joist) {
			out = append(out, m)
		}
	}
	slices.SortStableFunc(out, func(a, b *framing.Member) int { return last(a) - last(b) })
	return out
}

// last is 1 of what comes after the rims.
func last(m *framing.Member) int {
	if m.Role == plan.Rim {
		return 0
	}
	return 1
}

// parts cuts a range of stations at the shear segments of the wall.
func parts(w *plan.Wall, lo, hi float64) (out []span) {
	cuts := []float64{lo, hi}
	for _, s := range w.Shear {
		for _, c := range []float64{s.From, s.To} {
			if c > lo && c < hi {
				cuts = append(cuts, c)
			}
		}
	}
	slices.Sort(cuts)
	for i := 1; i < len(cuts); i++ {
		a, b := cuts[i-1], cuts[i]
		if b-a < touching {
			continue
		}
		in := slices.ContainsFunc(w.Shear, func(s *plan.Shear) bool { return s.From < (a+b)/2 && (a+b)/2 < s.To })
		out = append(out, span{a, b, in})
	}
	return out
}

// sole notes one part of a bottom plate.
func (f *finder) sole(w *plan.Wall, b *framing.Member, part span, floor []*framing.Member) {
	c := plan.SoleToFloor
	if part.shear && f.house.Plan.Ordered(plan.SoleAtShearWall) != nil {
		c = plan.SoleAtShearWall
	}
	free, across := f.soleAlong(c, w, b, part, floor)
	for _, p := range free {
		for _, x := range shared(across, p) {
			x.Side, x.Wall, x.Gap = b, w, w.Level.Subfloor
			f.add(c, x)
		}
	}
}

// soleAlong notes what runs along under one part of a bottom plate, and returns
// where nothing does, with the joists that cross.
func (f *finder) soleAlong(c plan.Connection, w *plan.Wall, b *framing.Member, part span, floor []*framing.Member) (free []span, across []crossing) {
	free = []span{part}
	for _, m := range floor {
		s0, t0 := w.Frame().Local(m.A.Flat())
		s1, t1 := w.Frame().Local(m.B.Flat())
		if !along(b, m) {
			if s, ok := stationOver(s0, t0, s1, t1, w.Depth()); ok {
				across = append(across, crossing{s, m})
			}
			continue
		}
		if mid := (t0 + t1) / 2; mid < 0 || mid > w.Depth() {
			continue
		}
		var rest []span
		for _, p := range free {
			lo, hi := math.Max(p.lo, math.Min(s0, s1)), math.Min(p.hi, math.Max(s0, s1))
			if hi-lo < touching {
				rest = append(rest, p)
				continue
			}
			f.add(c, Spot{Side: b, Main: m, Wall: w, Station: (lo + hi) / 2, Touch: hi - lo, Gap: w.Level.Subfloor})
			rest = append(rest, span{p.lo, lo, p.shear}, span{hi, p.hi, p.shear})
		}
		free = rest
	}
	return free, across
}

// crossing is a joist under a wall, at a station.
type crossing struct {
	s float64
	m *framing.Member
}

// stationOver returns the station at which a line crosses the middle of a wall
// of the depth, or its end that reaches under it.
func stationOver(s0, t0, s1, t1, depth float64) (float64, bool) {
	if math.Max(t0, t1) < touching || math.Min(t0, t1) > depth-touching {
		return 0, false
	}
	t := math.Min(math.Max(depth/2, math.Min(t0, t1)), math.Max(t0, t1))
	if math.Abs(t1-t0) < geom.Eps {
		return (s0 + s1) / 2, true
	}
	return s0 + (s1-s0)*(t-t0)/(t1-t0), true
}

// shared gives each joist that crosses within the part the way to the middle
// between it and its neighbors there.
func shared(list []crossing, p span) (out []Spot) {
	in := slices.DeleteFunc(slices.Clone(list), func(c crossing) bool { return c.s < p.lo-geom.Eps || c.s > p.hi+geom.Eps })
	slices.SortStableFunc(in, func(a, b crossing) int { return cmp.Compare(a.s, b.s) })
	for i, c := range in {
		lo, hi := p.lo, p.hi
		if i > 0 {
			lo = (in[i-1].s + c.s) / 2
		}
		if i < len(in)-1 {
			hi = (c.s + in[i+1].s) / 2
		}
		if hi-lo > touching {
			at := math.Min(math.Max(c.s, p.lo+touching/2), p.hi-touching/2) // within the part
			out = append(out, Spot{Main: c.m, Station: at, Touch: hi - lo})
		}
	}
	return out
}
