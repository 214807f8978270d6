package framing

import (
	"fmt"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// checkTrusses reports truss roofs of shapes that need a truss maker's
// layout: gables and hips are framed, alone or with wings that end against each other.
func (f *roofFrame) checkTrusses() bool {
	for _, rb := range f.bodies {
		if !rb.Trusses {
			continue
		}
		plain := rb.Kind != plan.ShedRoof
		for _, o := range f.bodies {
			plain = plain && o.Trusses && (o == rb || !sameGround(rb, o))
		}
		if !plain {
			f.roofFault(rb.Roof, plan.Error, "truss-roof-shape",
				"has trusses and is a shed, or meets a roof of rafters or one over the same walls: such roofs in trusses need their maker's layout",
				"take rafters for all roofs that meet here, or gables and hips over areas side by side")
			return false
		}
		rb.solo = rb.alone()
		if !f.checkGirders(rb) {
			return false
		}
	}
	return true
}

// sameGround tells whether the areas of two bodies share more than a line.
func sameGround(a, b *roofBody) bool {
	return a.Area[0].X < b.Area[1].X-near && b.Area[0].X < a.Area[1].X-near &&
		a.Area[0].Y < b.Area[1].Y-near && b.Area[0].Y < a.Area[1].Y-near
}

// trussRow stands the trusses of a truss roof at the stations its rafters
// would have; the ends with a gable truss have theirs already, and at a rake
// wall a pair of rafters stands on the wall.
func (f *roofFrame) trussRow() {
	for _, rb := range f.bodies {
		if rb.Trusses {
			for _, s := range rb.trussStations() {
				f.truss(rb, s, 0, false)
			}
		}
	}
}

// chord is a top chord of a truss.
type chord struct {
	bar
	u0, u1 float64
	planes []geom.Plane
}

// chords returns the top chords of a truss at coordinate c, dropped square
// to the slope. One whose tail dies in a valley is cut to that.
func (f *roofFrame) chords(rb *roofBody, c, drop float64, section plan.Lumber) (out []chord) {
	for _, face := range f.roof.Faces {
		for i := range rb.sides {
			if (rb.Ridge == plan.AxisX) != (i == roofplan.South || i == roofplan.North) || !rb.body.Sloped(i) || !face.Has(rb.body, i) {
				continue
			}
			for _, run := range f.roof.RunsAt(face, c) {
				p, body, _ := run.Bearing()
				if body == nil {
					p = run.Low
				}
				if body != nil && body != rb.body || rb.body.On(i, p) < -rb.Spacing {
					continue
				}
				r := rb.barOf(run)
				r.half = section.Width() / 2
				u0, u1, planes := f.rafterEnds(&roofRafter{bar: r, run: run, owner: rb}, run.High.Sub(run.Low).Len())
				r.top -= drop * cosInv(r.rise)
				r.depth = section.Depth
				out = append(out, chord{r, u0, u1, planes})
			}
		}
	}
	return out
}

// truss adds one truss at coordinate c along the ridge: top chords from tail
// to peak, a bottom chord from wall to wall under them, and in a gable truss
// studs between. It is the envelope of its chords; no member of it is
// designed.
func (f *roofFrame) truss(rb *roofBody, c, drop float64, gable bool) {
	section := rb.Rafters
	if gable && !rb.Trusses {
		section = lookout // a 2x4 on edge
	}
	tops := f.topChords(rb, c, drop, section)
	if len(tops) == 0 {
		return
	}
	bottom, length := f.bottom(rb, c, section)
	parts := f.trussParts(rb, tops, bottom, length, gable)
	m := f.addTruss(rb, plan.Truss, bottom, tops, parts, section, length)
	f.trussJoints(m, rb, bottom, length)
}

// addTruss adds the member of a truss from wall to wall, named by its station.
func (f *roofFrame) addTruss(rb *roofBody, role plan.Role, bottom bar, tops []chord, parts []geom.Solid, section plan.Lumber, length float64) *Member {
	end := bottom.at // of the bottom chord, at the high side of a shed
	if tops[0].dir.Dot(bottom.dir) > 0 {
		end = end.Add(bottom.dir.Mul(length))
	}
	b := end.Up(bottom.top)
	if len(tops) > 1 {
		b = tops[1].point(0)
	}
	m := &Member{
		ID: fmt.Sprintf("%s/%s@%s", rb.Name, role, at(rb.station(bottom.at))), Role: role,
		Level: f.level, Roof: rb.Roof, Section: section, Length: length, A: tops[0].point(0), B: b, Solid: parts, Ref: f.ref(),
	}
	lo, hi := m.Bounds()
	m.Z0, m.Z1 = lo.Z, hi.Z
	return f.member(m)
}

// topChords returns the top chords at coordinate c.
func (f *roofFrame) topChords(rb *roofBody, c, drop float64, section plan.Lumber) []chord {
	if rb.Trusses {
		return f.trussChords(rb, c, drop)
	}
	return f.chords(rb, c, drop, section)
}

// trussParts returns the solids of a truss.
func (f *roofFrame) trussParts(rb *roofBody, tops []chord, bottom bar, length float64, gable bool) (parts []geom.Solid) {
	for _, t := range tops {
		bounds := append([]geom.Plane{t.after(t.u0), t.before(t.u1)}, t.planes...)
		parts = append(parts, t.cut(t.u0, t.u1, t.planes, f.less(t.bar, bounds, f.bearings(t.bar, bounds)))...)
	}
	for i := range rb.sides {
		if rb.slopedEnd(i) { // the first full truss stands under the end of the ridge
			for k := range parts {
				parts[k] = parts[k].Clip(underside(rb.body.Plane(i), 0))
			}
		}
	}
	under := func(s geom.Solid) geom.Solid {
		for _, t := range tops {
			s = s.Clip(t.under())
		}
		return s
	}
	parts = append(parts, under(bottom.solid(0, length)))
	if gable {
		parts = append(parts, f.gableStuds(rb, bottom, length, under)...)
	}
	if gable || len(f.bodies) > 1 {
		parts = f.trim(parts)
	}
	return parts
}

// trim cuts from parts what valleys, hips, rafters and fly rafters take.
func (f *roofFrame) trim(parts []geom.Solid) []geom.Solid {
	lo, hi := (&Member{Solid: parts}).Bounds()
	for _, m := range f.index.Within(lo, hi) {
		if space := f.takes[m]; space != nil {
			parts = geom.Carve(parts, space)
		}
	}
	return parts
}

// space returns what a rafter takes of the room, its ends square to its line.
func (r *roofRafter) space() []geom.Plane {
	return append([]geom.Plane{r.after(0), r.before(r.run.High.Sub(r.run.Low).Len())}, r.body()...)
}

// body returns the space between the bar's faces and above its underside.
func (r bar) body() []geom.Plane {
	n := geom.Vec3{X: -r.dir.X * r.rise, Y: -r.dir.Y * r.rise, Z: 1}.Unit()
	return []geom.Plane{r.side(1), r.side(-1), flip(geom.PlaneAt(r.point(0).Sub(n.Mul(r.depth)), n))}
}

// under returns the half space below the chord's underside.
func (t chord) under() geom.Plane {
	n := geom.Vec3{X: -t.dir.X * t.rise, Y: -t.dir.Y * t.rise, Z: 1}.Unit()
	return geom.PlaneAt(t.point(0).Sub(n.Mul(t.depth)), n)
}

// bottom returns the bottom chord, from outside face to outside face; of a
// shed's end, to the inside of the high wall.
func (f *roofFrame) bottom(rb *roofBody, c float64, section plan.Lumber) (r bar, length float64) {
	low := roofplan.South
	if rb.Ridge == plan.AxisY {
		low = roofplan.West
	}
	high := (low + 2) % 4
	inset := [2]float64{}
	z := 0.0
	for k, i := range []int{low, high} {
		switch {
		case rb.isHigh(i) && rb.body.Sides[i].Against:
			inset[k] = plate
		case rb.isHigh(i):
			inset[k] = rb.sides[i].depth
		default:
			z = max(z, rb.sides[i].plate)
		}
	}
	dir := roofplan.Outward(high)
	start := geom.Vec2{X: c, Y: -rb.body.Edge(low) + inset[0]}
	if rb.Ridge == plan.AxisY {
		start = geom.Vec2{X: -rb.body.Edge(low) + inset[0], Y: c}
	}
	length = rb.body.Edge(high) + rb.body.Edge(low) - inset[0] - inset[1]
	return bar{at: start, dir: dir, top: z + section.Depth, depth: section.Depth, half: section.Width() / 2}, length
}

// gableStuds returns the studs of a gable truss, flat in its thickness.
func (f *roofFrame) gableStuds(rb *roofBody, bottom bar, length float64, under func(geom.Solid) geom.Solid) (out []geom.Solid) {
	for u := rb.Spacing; u < length-lookout.Depth; u += rb.Spacing {
		stud := bottom
		stud.top, stud.depth = bottom.top+1200, 1200
		mid := u
		if f.backward(bottom.dir) { // counted from the same end as in the house as written
			mid = length - u
		}
		s := under(stud.solid(mid-lookout.Depth/2, mid+lookout.Depth/2))
		if lo, hi := s.Along(geom.Vec3{Z: 1}); !s.Empty() && hi-lo > lookout.Depth {
			out = append(out, s)
		}
	}
	return out
}

// trussJoints adds a rafter-plate joint at each bearing wall that the bottom
// chord crosses, and at an end that lies along a wall; other walls only touch
// it.
func (f *roofFrame) trussJoints(m *Member, rb *roofBody, bottom bar, length float64) {
	thin := bottom
	thin.top, thin.depth = bottom.top-bottom.depth+0.01, 0.02
	low, high := false, false // ends that are held
	seats := f.bearings(thin, []geom.Plane{thin.after(0), thin.before(length)})
	for _, s := range seats {
		bears := s.bed.wall == nil || s.bed.wall.Exterior || s.bed.wall.Bearing
		if bears && s.crosses(bottom) && s.u1-s.u0 > 0.5 && f.bearingJoint(m, bottom, s, rb) {
			low, high = low || s.u0 < length/2, high || s.u1 > length/2
		}
	}
	for _, end := range []struct {
		held bool
		u    float64
	}{{low, 0}, {high, length}} {
		if !end.held && !f.endAlong(m, bottom, seats, end.u, rb) {
			f.hangOnWing(m, bottom.at.Add(bottom.dir.Mul(end.u)), bottom.top-bottom.depth)
		}
	}
	for _, i := range []int{roofplan.South, roofplan.East, roofplan.North, roofplan.West} {
		if rb.body.Sloped(i) && rb.alongRidge(i) && len(rb.sides[i].walls) == 0 && rb.sides[i].porch == nil {
			f.noPlate(rb, i, bottom.at)
		}
	}
}

// endAlong adds the joint of an end of a truss, at u, that crosses no wall but
// lies along one, as a gable truss does where a wing stands flush with it: the
// wall under it holds it there.
func (f *roofFrame) endAlong(m *Member, bottom bar, seats []bearing, u float64, rb *roofBody) bool {
	for _, s := range seats {
		if !s.crosses(bottom) && s.u0 <= u+near && s.u1 >= u-near && s.bed.wall != nil {
			s.u0, s.u1 = u, u
			return f.bearingJoint(m, bottom, s, rb)
		}
	}
	return false
}
