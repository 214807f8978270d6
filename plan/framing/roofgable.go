package framing

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// The ways a body ends where it has no plane.
type gableKind uint8

const (
	noGable    gableKind = iota // a sloped side, a shed's high wall, or run into another roof
	rakeGable                   // the wall runs up to the rafters
	trussGable                  // a gable truss stands on the wall's plates
	openGable                   // no wall there
	wallGable                   // the roof ends against a higher wall
)

// lookout is the lumber of outlookers, laid flat: let 1 1/2 in into the end
// rafter where a rake wall carries that all along, or over a gable truss
// dropped by as much (common practice, no published source).
var lookout = plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 3.5, Text: "2x4"}

// lookoutSpace is the plan distance of outlookers, in.
const lookoutSpace = 24

// gableOf tells how side i of a body ends.
func (rb *roofBody) gableOf(i int) gableKind {
	s := rb.body.Sides[i]
	opposite := rb.Kind == plan.ShedRoof && (rb.isHigh(i) || rb.isHigh((i+2)%4))
	switch {
	case s.Slope > 0 || s.RunsIn || opposite:
		return noGable
	case s.Against:
		return wallGable
	case rb.sides[i].rake:
		return rakeGable
	case len(rb.sides[i].walls) > 0:
		return trussGable
	}
	return openGable
}

// endOf returns the side at which a flush run stands.
func (rb *roofBody) endOf(run *roofplan.Run) int {
	best, d := 0, math.Inf(1)
	for i := range rb.body.Sides {
		if rb.body.Sloped(i) {
			continue
		}
		if e := math.Abs(rb.body.On(i, run.Low)); e < d {
			best, d = i, e
		}
	}
	return best
}

// closed tells whether a gable truss stands where a flush run would.
func (f *roofFrame) closed(rb *roofBody, run *roofplan.Run) bool {
	return rb.gableOf(rb.endOf(run)) == trussGable
}

// gableEnds cuts a ridge to the gables of its body: it stops at a gable
// truss, and is ripped down to the rafters' depth over a rake wall.
func (f *roofFrame) gableEnds(l *roofLine) {
	rb := l.owner
	for i := range rb.sides {
		out := roofplan.Outward(i)
		if !geom.Lengthways(out, l.dir) {
			continue
		}
		switch rb.gableOf(i) {
		case trussGable:
			l.planes = append(l.planes, geom.Plane{N: out.Up(0), C: rb.body.Edge(i) - plate})
		case rakeGable:
			in := l.u(l.at.Sub(out.Mul(rb.body.On(i, l.at) + rb.sides[i].depth)))
			z := l.line.A.Z - rb.Rafters.Depth*rb.flattest()
			if out.Dot(l.dir) > 0 {
				l.tail = append(l.tail, notch{in, l.u1 + 1, z}.planes(l.bar))
			} else {
				l.tail = append(l.tail, notch{l.u0 - 1, in, z}.planes(l.bar))
			}
		}
	}
}

// flattest returns 1 over the cosine of the body's flattest slope.
func (rb *roofBody) flattest() float64 {
	m := math.Inf(1)
	for i := range rb.body.Sides {
		if rb.body.Sloped(i) {
			m = min(m, rb.body.Sides[i].Slope)
		}
	}
	return cosInv(m)
}

// gables frames the overhangs of all bodies: outlookers, fly rafters, and the
// ledger of a shed against a wall.
func (f *roofFrame) gables() {
	for _, rb := range f.bodies {
		for i := range rb.sides {
			kind := rb.gableOf(i)
			if kind == trussGable && rb.GableEnd[endIndex(i)] == plan.RakeEnd {
				f.roofFault(rb.Roof, plan.Warning, "gable-on-plate",
					fmt.Sprintf("asks for a rake wall at its %s end, but the wall there stops at the plate: a gable truss stands on it", roofplan.SideNames[i]),
					`give the wall top = "rake", or the roof gable_ends = "gable truss"`)
			}
			if kind == rakeGable || kind == openGable || kind == trussGable {
				f.overhang(rb, i)
			}
			if rb.isHigh(i) && rb.body.Sides[i].Against {
				f.ledger(rb, i)
			}
		}
	}
}

// gableTrusses stands a truss on each gable wall that ends at its plates. It
// comes after the rafters: where a valley or a rafter of another body crosses
// its corner, the truss is trimmed.
func (f *roofFrame) gableTrusses() {
	for _, rb := range f.bodies {
		for i := range rb.sides {
			if rb.gableOf(i) != trussGable {
				continue
			}
			drop := 0.0
			if rb.flies(i) {
				drop = plate
			}
			f.truss(rb, f.flushAt(rb, i), drop, true)
		}
	}
}

// endIndex returns 0 for the low and 1 for the high end.
func endIndex(side int) int {
	if side == roofplan.West || side == roofplan.South {
		return 0
	}
	return 1
}

// flies tells whether the overhang at end i is wide enough for a fly rafter.
func (rb *roofBody) flies(i int) bool { return rb.body.Reach(i) > 2*rb.Rafters.Width() }

// flushAt returns the coordinate of the rafter flush with end i, middle.
func (f *roofFrame) flushAt(rb *roofBody, i int) float64 {
	return rb.coordinate(i, -rb.Rafters.Width()/2)
}

// coordinate returns the x or y of what lies out inches outside of side i.
func (rb *roofBody) coordinate(i int, out float64) float64 {
	c := rb.body.Edge(i) + out
	if i == roofplan.West || i == roofplan.South {
		return -c
	}
	return c
}

// overhang frames the rake overhang of end i on each face that has one.
func (f *roofFrame) overhang(rb *roofBody, i int) {
	if !rb.flies(i) {
		return
	}
	half := rb.Rafters.Width() / 2
	fly := rb.coordinate(i, rb.body.Reach(i)-half)
	for _, face := range f.roof.Faces {
		for j := range rb.sides {
			if (i+j)%2 == 0 || !rb.body.Sloped(j) || !face.Has(rb.body, j) {
				continue // a side next to the end only
			}
			flush := f.roof.RunsAt(face, f.flushAt(rb, i))
			for _, out := range f.roof.RunsAt(face, fly) {
				hangs := false
				for _, at := range flush {
					if lap(out, at) > minJack {
						hangs = true
						f.outlookers(rb, i, j, out, at)
					}
				}
				if hangs {
					f.flyRafter(rb, out)
				}
			}
		}
	}
}

// lap returns the length up the slope that two runs of a face share.
func lap(a, b *roofplan.Run) float64 {
	up := a.Face.Uphill()
	return min(up.Dot(a.High), up.Dot(b.High)) - max(up.Dot(a.Low), up.Dot(b.Low))
}

// flyRafter adds the outermost rafter of a gable overhang.
func (f *roofFrame) flyRafter(rb *roofBody, run *roofplan.Run) {
	r := &roofRafter{bar: rb.barOf(run), run: run, owner: rb}
	u0, u1, planes := f.rafterEnds(r, run.High.Sub(run.Low).Len())
	lo, hi := r.extent(u0, u1, planes)
	if parts := r.cut(u0, u1, planes, nil); len(parts) > 0 {
		m := f.addStick(&Member{
			ID:   fmt.Sprintf("%s/%s/fly@%s", rb.Name, roofplan.SideNames[run.Face.Side], at(rb.across(run))),
			Role: plan.FlyRafter, Roof: rb.Roof, Section: rb.Rafters,
		}, r.bar, parts, lo, hi)
		f.takes[m] = r.space()
	}
}

// pocketKey names the runs at one station of a face.
type pocketKey struct {
	face    *roofplan.Face
	station int // hundredths of an inch
}

func keyOf(run *roofplan.Run) pocketKey {
	return pocketKey{run.Face, int(math.Round(run.Station * 100))}
}

// outlookers adds the flat pieces from the first inner rafter over the gable
// to the fly rafter on the face of side j at end i. Where no wall is under
// the end rafter it is not let in: they are rungs between it and the fly.
func (f *roofFrame) outlookers(rb *roofBody, i, j int, fly, flush *roofplan.Run) {
	inner, open := f.inner(rb, flush), rb.gableOf(i) == openGable
	if open {
		inner = flush
	}
	if inner == nil {
		return
	}
	up, half := fly.Face.Uphill(), rb.Rafters.Width()/2
	lo := max(up.Dot(fly.Low), up.Dot(flush.Low), up.Dot(inner.Low)) + 2
	hi := min(up.Dot(fly.High), up.Dot(flush.High), up.Dot(inner.High)) - 2 - rb.RidgeMember.Width()
	wide := lookout.Depth / cosInv(fly.Face.Slope())
	wall := -rb.body.Edge(j) // up·p at the outside face of the eave wall
	g := &ladder{owner: rb, end: i, side: j, flush: flush.Station, open: open, lo: up.Dot(fly.Low) - wall, hi: up.Dot(fly.High) - wall}
	f.ladders = append(f.ladders, g)
	for h := wall + math.Ceil((lo-wall)/lookoutSpace)*lookoutSpace; h+wide < hi; h += lookoutSpace {
		from, to := inner.Station, fly.Station
		k := math.Copysign(half, to-from)
		m := f.outlooker(rb, fly.Face, from+k, to-k, h)
		if m == nil {
			continue
		}
		g.rungs = append(g.rungs, &rung{m, h + wide/2 - wall})
		if !open {
			f.pockets[keyOf(flush)] = append(f.pockets[keyOf(flush)], pocket(fly.Face, h, wide))
		}
	}
}

// inner returns the run of a face next to the flush one, inside of it.
func (f *roofFrame) inner(rb *roofBody, flush *roofplan.Run) (best *roofplan.Run) {
	i := rb.endOf(flush)
	for _, run := range f.runs {
		d := rb.body.On(i, flush.Low) - rb.body.On(i, run.Low)
		if run.Face != flush.Face || d < rb.Rafters.Width() || d > 2*rb.Spacing || lap(run, flush) < minJack {
			continue
		}
		if best == nil || d < rb.body.On(i, flush.Low)-rb.body.On(i, best.Low) {
			best = run
		}
	}
	return best
}

// onFace returns the point of a face at station s and h up its uphill line.
func onFace(face *roofplan.Face, s, h float64) geom.Vec3 {
	up := face.Uphill()
	p := geom.Vec2{X: s, Y: h * up.Y}
	if up.X != 0 {
		p = geom.Vec2{X: h * up.X, Y: s}
	}
	return p.Up(face.Plane.At(p))
}

// outlooker adds one, from station s0 to s1, its low edge at h, unless a
// valley or hip lies in its way.
func (f *roofFrame) outlooker(rb *roofBody, face *roofplan.Face, s0, s1, h float64) *Member {
	a, b := onFace(face, s0, h), onFace(face, s1, h)
	slope := face.Uphill().Up(face.Slope()).Unit()
	normal := geom.Vec3{X: -face.Plane.G.X, Y: -face.Plane.G.Y, Z: 1}.Unit()
	solid := geom.Box(a, b.Sub(a), slope.Mul(lookout.Depth), normal.Mul(-lookout.Breadth))
	if !f.clear([]geom.Solid{solid}) {
		return nil
	}
	lo, hi := solid.Bounds()
	mid := slope.Mul(lookout.Depth / 2)
	return f.member(&Member{
		ID:   fmt.Sprintf("%s/%s/outlooker@%s/%s", rb.Name, roofplan.SideNames[face.Side], at(s1), at(h)),
		Role: plan.Outlooker, Level: f.level, Roof: rb.Roof, Section: lookout, Length: b.Sub(a).Len(),
		A: a.Add(mid), B: b.Add(mid), Z0: lo.Z, Z1: hi.Z, Solid: []geom.Solid{solid},
	})
}

// pocket returns the half spaces of the notch in the end rafter's top under
// an outlooker, wide inches of plan.
func pocket(face *roofplan.Face, h, wide float64) []geom.Plane {
	slope := face.Uphill().Up(face.Slope()).Unit()
	normal := geom.Vec3{X: -face.Plane.G.X, Y: -face.Plane.G.Y, Z: 1}.Unit()
	s := 0.0
	p, q := onFace(face, s, h), onFace(face, s, h+wide)
	return []geom.Plane{
		flip(geom.PlaneAt(p, slope)),
		geom.PlaneAt(q, slope),
		flip(geom.PlaneAt(p.Sub(normal.Mul(lookout.Breadth)), normal)),
	}
}

// corner returns the corner of the body at the start (0) or end (1) of side
// i, going counterclockwise round the body.
func (rb *roofBody) corner(i, end int) geom.Vec2 {
	lo, hi := rb.body.Lo, rb.body.Hi
	all := [4]geom.Vec2{lo, {X: hi.X, Y: lo.Y}, hi, {X: lo.X, Y: hi.Y}}
	return all[(i+end)%4]
}
