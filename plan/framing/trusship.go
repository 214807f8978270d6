package framing

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// A hip end of a truss roof (common practice, no published source): a girder truss
// stands a setback in from the end wall; hip trusses with level tops step up from
// it to the first full truss, at the ridge's end; beyond it jack trusses run from the
// end wall to the girder, and from the end wall and the side walls to a corner jack
// under each hip, which hangs on the girder too.

const (
	usualSetback = 96 // of a girder truss, in: the setback that trusses are mostly laid out for (common practice, no published source)
	hangerRoom   = 4  // least from the middle of a jack to where a corner jack meets the girder, in: both hang there
	shortTruss   = 12 // the shortest jack truss worth making: its length inside the walls' outside face, in
)

// trussHip is one hip end of a truss roof.
type trussHip struct {
	rb      *roofBody
	side    int
	setback float64 // of the middle of the girder's outer ply, in from the end
	peak    float64 // of the end of the ridge, in from the end
	girder  *Member
	corners []*cornerJack
	end     *TrussEnd
}

// slopedEnd tells whether side i is a hip end of a truss roof.
func (rb *roofBody) slopedEnd(i int) bool {
	return rb.Trusses && rb.body.Sloped(i) && !rb.alongRidge(i)
}

// alongRidge tells whether side i runs along the ridge.
func (rb *roofBody) alongRidge(i int) bool {
	return (rb.body.Axis == plan.AxisX) == (i == roofplan.South || i == roofplan.North)
}

// peakIn is how far in from end i the ridge ends.
func (rb *roofBody) peakIn(i int) float64 {
	p, _ := rb.body.HighEnd(i)
	return -rb.body.On(i, p)
}

// setbackOf returns how far in from end i the middle of its girder's outer ply stands:
// where the plan leaves it, whole spaces, no more than usual or two thirds of the way to
// the ridge.
func (rb *roofBody) setbackOf(i int) float64 {
	if rb.HipGirder > 0 {
		return rb.HipGirder
	}
	spaces := math.Floor(min(usualSetback, rb.peakIn(i)*2/3)/rb.Spacing + near/rb.Spacing)
	return max(1, spaces) * rb.Spacing
}

// girderSection is the chords of a girder truss, all plies together.
func (rb *roofBody) girderSection() plan.Lumber {
	s := rb.Rafters
	s.Ply *= max(1, rb.HipGirderPlies)
	if s.Ply > 1 {
		s.Text = fmt.Sprintf("%d-%s", s.Ply, rb.Rafters.Text)
	}
	return s
}

// outer is the plan coordinate, along the way out of the end, of the girder's outer face.
func (h *trussHip) outer() float64 {
	return h.rb.body.Edge(h.side) - h.setback + h.rb.Rafters.Width()/2
}

// beyond is the half space on the girder's outer side.
func (h *trussHip) beyond() geom.Plane {
	out := roofplan.Outward(h.side)
	return geom.Plane{N: out.Mul(-1).Up(0), C: -h.outer()}
}

// plane is that of the end's slope.
func (h *trussHip) plane() roofplan.Plane { return h.rb.body.Plane(h.side) }

// checkGirders reports a girder truss that finds no place between the end wall and the ridge.
func (f *roofFrame) checkGirders(rb *roofBody) bool {
	for _, i := range roofplan.SidesOf(f.plan.Lay) {
		if !rb.slopedEnd(i) {
			continue
		}
		least, most := 24.0, rb.peakIn(i)-rb.girderSection().Width()
		if s := rb.setbackOf(i); s < least || s > most {
			f.roofFault(rb.Roof, plan.Error, "hip-girder-place",
				fmt.Sprintf("has its girder truss %s in from its %s end, and the ridge ends %s in", f.inches(s), roofplan.SideNames[i], f.inches(rb.peakIn(i))),
				fmt.Sprintf("write a hip_girder from %s to %s, mostly a whole number of spaces", f.inches(least), f.inches(math.Floor(most))))
			return false
		}
	}
	return true
}

// trussHips stands the trusses of all hip ends.
func (f *roofFrame) trussHips() {
	for _, rb := range f.bodies {
		for _, i := range roofplan.SidesOf(f.plan.Lay) {
			if rb.slopedEnd(i) {
				f.trussHip(&trussHip{rb: rb, side: i, setback: rb.setbackOf(i), peak: rb.peakIn(i)})
			}
		}
	}
}

// trussHip stands the trusses of one hip end, from the girder inward, then the corner
// jacks, then what hangs on both.
func (f *roofFrame) trussHip(h *trussHip) {
	half := h.rb.Rafters.Width() / 2
	section := h.rb.girderSection()
	h.girder = f.hipTruss(h, h.setback-half+section.Width()/2, section, plan.GirderTruss)
	if h.girder == nil {
		return
	}
	h.end = &TrussEnd{Roof: h.rb.Roof, Side: roofplan.SideNames[h.side], Setback: h.setback, Girder: h.girder}
	f.house.TrussEnds = append(f.house.TrussEnds, h.end)
	for d := h.setback + h.rb.Spacing; d <= h.peak-2*half; d += h.rb.Spacing {
		h.end.Steps.add(f.hipTruss(h, d, h.rb.Rafters, plan.HipTruss), d)
	}
	f.cornerJacks(h)
	f.endJacks(h)
	f.sideJacks(h)
	h.end.inOrder()
}

// hipTruss adds a truss with a level top chord, its middle d in from the end: the top
// lies under the end's slope at the truss's outer face.
func (f *roofFrame) hipTruss(h *trussHip, d float64, section plan.Lumber, role plan.Role) *Member {
	rb, c := h.rb, h.rb.coordinate(h.side, -d)
	tops := f.trussChords(rb, c, 0)
	if len(tops) != 2 {
		return nil
	}
	low := roofplan.Outward(h.side).Mul(rb.body.Edge(h.side) - d + section.Width()/2)
	z := h.plane().At(low)
	flat := tops[1].top1().Sub(tops[0].top1()).Len()
	for k := range tops {
		t := &tops[k]
		t.half = section.Width() / 2
		t.planes = append(t.planes, geom.Plane{N: geom.Vec3{Z: 1}, C: z})
		t.u1 += min(t.plumb()/t.rise, flat/2)
	}
	bottom, length := f.bottom(rb, c, section)
	parts := f.trussParts(rb, tops, bottom, length, false)
	parts = append(parts, f.levelTop(tops, bottom, length, z)...)
	m := f.addTruss(rb, role, bottom, tops, parts, section, length)
	side := roofplan.Outward(h.side).Mul(section.Width() / 2).Up(0)
	m.Flat = [2]geom.Vec3{tops[0].levelEnd(z).Add(side), tops[1].levelEnd(z).Add(side)}
	f.trussJoints(m, rb, bottom, length)
	return m
}

// top1 is the plan point of a chord's upper end.
func (t chord) top1() geom.Vec2 { return t.at.Add(t.dir.Mul(t.u1)) }

// levelEnd is where a chord's top comes to a level top at height z.
func (t chord) levelEnd(z float64) geom.Vec3 {
	return t.at.Add(t.dir.Mul((z - t.top) / t.rise)).Up(z)
}

// levelTop returns the level chord between two sloping ones, its top at z.
func (f *roofFrame) levelTop(tops []chord, bottom bar, length, z float64) []geom.Solid {
	r := bottom
	r.top = z
	s := r.solid(0, length)
	for _, t := range tops {
		s = s.Clip(t.under())
	}
	if s.Empty() {
		return nil
	}
	return f.trimmed([]geom.Solid{s})
}

// trimmed trims parts where roofs meet.
func (f *roofFrame) trimmed(parts []geom.Solid) []geom.Solid {
	if len(f.bodies) > 1 {
		return f.trim(parts)
	}
	return parts
}

// level returns the bar of a bottom chord of a depth along a chord, on the plates.
func (rb *roofBody) level(r bar, depth float64) bar {
	r.rise, r.depth, r.top = 0, depth, rb.plates()+depth
	return r
}

// thin is a bottom chord's underside, as what bears.
func (rb *roofBody) thin(r bar) bar {
	r = rb.level(r, skin)
	r.depth *= 2
	return r
}

// plates is the height of the plates that the trusses of a body stand on.
func (rb *roofBody) plates() (z float64) {
	for i := range rb.sides {
		if rb.alongRidge(i) {
			z = max(z, rb.sides[i].plate)
		}
	}
	return z
}

// halfTruss adds a truss that ends at another: a top chord from its tail and a bottom
// chord from the wall, both cut by planes.
func (f *roofFrame) halfTruss(rb *roofBody, role plan.Role, id string, r bar, u0, u1 float64, planes, walls []geom.Plane) *Member {
	t := chord{bar: r, u0: u0 - 4*r.half - 1, u1: u1 + 4*r.half + 1, planes: planes}
	bounds := append([]geom.Plane{t.after(t.u0), t.before(t.u1)}, planes...)
	parts := t.cut(t.u0, t.u1, planes, f.less(r, bounds, f.bearings(r, bounds)))
	low := rb.level(r, r.depth)
	bottom := clipTo(low.solid(t.u0, t.u1), walls).Clip(t.under())
	if bottom.Empty() || len(parts) == 0 {
		return nil
	}
	parts = f.trimmed(append(parts, bottom))
	a, b := bottom.Along(r.dir.Up(0))
	m := &Member{
		ID: id, Role: role, Level: f.level, Roof: rb.Roof,
		Section: rb.Rafters, Length: b - a, A: r.point(u0), B: r.point(u1), Solid: parts, Ref: f.ref(),
	}
	lo, hi := m.Bounds()
	m.Z0, m.Z1 = lo.Z, hi.Z
	return f.member(m)
}

// host names the girder truss of an end as what joints are at.
func (h *trussHip) host() string {
	return h.rb.Name + "/" + string(plan.GirderHost) + string(roofplan.SideNames[h.side])
}

// hangs joins the end of a half truss, at plan point p, to what it hangs on. Stations run
// along a girder from the wall at its low end, along a corner jack on plan from its tail.
func (f *roofFrame) hangs(m, on *Member, host string, kind plan.JointKind, p geom.Vec2, h *trussHip) {
	f.joints = append(f.joints, f.joint(&Joint{
		Kind: kind, Host: host, Level: f.level, Roof: h.rb.Roof, Members: []*Member{m, on}, At: p.Up(h.rb.plates()),
		Station: h.rb.alongTruss(on, p),
	}))
}

// alongTruss returns the station of p along a girder truss or corner jack.
func (rb *roofBody) alongTruss(on *Member, p geom.Vec2) float64 {
	switch {
	case on.Role == plan.CornerJack:
		return p.Sub(on.A.Flat()).Len()
	case rb.Ridge == plan.AxisX:
		return p.Y - rb.body.Lo.Y
	}
	return p.X - rb.body.Lo.X
}

// endJacks adds the jack trusses of the end wall: one in the ridge's line and on, at the
// spacing, to both sides.
func (f *roofFrame) endJacks(h *trussHip) {
	across := roofplan.Outward(h.side).Left()
	p, _ := h.rb.body.HighEnd(h.side)
	reach := h.rb.body.Edge(roofplan.North) + h.rb.body.Edge(roofplan.South)
	if math.Abs(across.X) > 0.5 {
		reach = h.rb.body.Edge(roofplan.East) + h.rb.body.Edge(roofplan.West)
	}
	f.endJack(h, p)
	for t := h.rb.Spacing; t < reach; t += h.rb.Spacing {
		for _, k := range f.leftRight() {
			f.endJack(h, p.Add(across.Mul(k*t)))
		}
	}
}

// endJack adds the one that runs through p, unless a corner jack meets the girder there.
func (f *roofFrame) endJack(h *trussHip, p geom.Vec2) {
	across := roofplan.Outward(h.side).Left()
	for _, c := range h.corners {
		if math.Abs(c.tip.Sub(p).Dot(across)) < hangerRoom {
			return
		}
	}
	f.jack(h, h.side, p.Along(across.MainAxis()))
}

// sideJacks adds the jack trusses of the two side walls beyond the girder, at the spacing from it.
func (f *roofFrame) sideJacks(h *trussHip) {
	for d := h.setback - h.rb.Spacing; d > 0; d -= h.rb.Spacing {
		for _, c := range h.corners {
			f.jack(h, c.side, h.rb.coordinate(h.side, -d))
		}
	}
}

// jack adds the jack truss of a side at a coordinate along its eave: to the girder or, where
// the hip comes first, to the corner jack.
func (f *roofFrame) jack(h *trussHip, side int, at float64) {
	rb := h.rb
	for _, face := range rb.solo.Faces {
		if face.Side != side {
			continue
		}
		for _, run := range rb.solo.RunsAt(face, at) {
			f.jackOn(h, side, run)
		}
	}
}

// jackOn adds the jack truss of a run.
func (f *roofFrame) jackOn(h *trussHip, side int, run *roofplan.Run) {
	rb, r := h.rb, h.rb.barOf(run)
	p, body, _ := run.Bearing()
	on, host, kind, row := h.girder, h.host(), plan.JackGirder, &h.end.Hung
	planes := []geom.Plane{h.beyond()}
	_, u1 := r.extent(0, run.High.Sub(run.Low).Len(), planes)
	if c := h.cornerAt(run.High); c != nil && u1 > run.High.Sub(run.Low).Len()-near {
		on, host, kind, row = c.member, h.cornerHost(c), plan.JackCorner, &c.row.Jacks
		planes = append(planes, c.beside(run.Low.Add(run.High).Mul(0.5)))
		_, u1 = r.extent(0, run.High.Sub(run.Low).Len(), planes)
	}
	if body == nil || u1-r.u(p) < shortTruss {
		return
	}
	walls := append([]geom.Plane{r.after(r.u(p))}, planes...)
	name := fmt.Sprintf("%s/%s/%s@%s", rb.Name, roofplan.SideNames[side], plan.JackTruss, at(rb.across(run)))
	m := f.halfTruss(rb, plan.JackTruss, name, r, 0, u1, append(f.tailPlanes(rb, run), append(planes, r.after(0))...), walls)
	if m == nil {
		return
	}
	thin := rb.thin(r)
	if !f.plateJoint(m, thin, f.bearings(thin, append(walls, r.before(u1))), rb, false) {
		f.noPlate(rb, side, p)
	}
	f.hangs(m, on, host, kind, r.point(u1).Flat(), h)
	row.add(m, rb.alongTruss(on, r.point(u1).Flat()))
}
