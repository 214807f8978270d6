package framing

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// Truss roofs that meet: the trusses of each body stand as if it were alone,
// and where a wing runs into another body a valley set stands on that one's
// trusses: frames that fill the space between the two roofs. Common practice
// with trusses, no published source.

// alone returns the roof of one body by itself, its run-in ends cut off at
// their walls.
func (rb *roofBody) alone() *roofplan.Roof {
	roof, _ := roofplan.New([]*roofplan.Body{rb.body.Alone()})
	return roof
}

// trussStations returns where the trusses of a body stand along its ridge,
// those at gable ends excepted. One that would stand in a rake wall stands
// beside it; where a wing runs in, one stands at the end of its walls unless a
// frame beyond it comes within the spacing.
func (rb *roofBody) trussStations() (out []float64) {
	half := rb.Rafters.Width() / 2
	for _, run := range rb.solo.Runs() {
		if run.Face != rb.firstSlope() || run.Flush || rb.inHip(run.Station) {
			continue
		}
		s, i := run.Station, rb.endOf(run)
		room := half // from the outside face of the end to the truss's middle
		if rb.sides[i].rake {
			room += rb.sides[i].depth
		}
		if rb.body.Sides[i].RunsIn || rb.sides[i].rake {
			if rb.outside(i, s) > -room {
				s = rb.coordinate(i, -room)
			}
		}
		if rb.girder[i] && rb.outside(i, s) > -rb.girderSection().Width()-half {
			continue // the girder truss stands there
		}
		if n := len(out); n == 0 || math.Abs(out[n-1]-s) >= 2*half {
			out = append(out, s)
		}
	}
	for i, s := range rb.body.Sides {
		if s.RunsIn && !rb.girder[i] && rb.outermost(i, out)+rb.Spacing < half { // the next one is no frame beyond the end
			out = append(out, rb.coordinate(i, -half))
		}
	}
	slices.Sort(out)
	return out
}

// firstSlope returns the first of the body's own faces that run along its ridge.
func (rb *roofBody) firstSlope() *roofplan.Face {
	i := slices.IndexFunc(rb.solo.Faces, rb.besideRidge)
	return rb.solo.Faces[i]
}

// besideRidge tells whether a face of the body alone runs along its ridge.
func (rb *roofBody) besideRidge(f *roofplan.Face) bool { return rb.alongRidge(f.Side) }

// inHip tells whether the coordinate s along the ridge lies beyond its end at a hip.
func (rb *roofBody) inHip(s float64) bool {
	for i := range rb.sides {
		if rb.slopedEnd(i) && rb.outside(i, s) > -rb.peakIn(i)+near {
			return true
		}
	}
	return false
}

// outermost returns how far outside of end i the truss next to it stands, of those
// at the stations or else the gable's at the other end; negative within.
func (rb *roofBody) outermost(i int, stations []float64) float64 {
	last := rb.Rafters.Width()/2 - rb.body.Edge(i) - rb.body.Edge((i+2)%4)
	for _, s := range stations {
		last = max(last, rb.outside(i, s))
	}
	if rb.girder[i] {
		last = -rb.Rafters.Width() / 2
	}
	return last
}

// trussChords returns the top chords of a truss of a truss roof at c. A tail
// that would stand under a wing is cut off at the wall; one that meets a
// wing's tails in a valley is cut to it.
func (f *roofFrame) trussChords(rb *roofBody, c, drop float64) (out []chord) {
	for _, face := range rb.solo.Faces {
		if !rb.besideRidge(face) {
			continue
		}
		for _, run := range rb.solo.RunsAt(face, c) {
			r := rb.barOf(run)
			t := chord{bar: r, u1: run.High.Sub(run.Low).Len(), planes: f.tailPlanes(rb, run)}
			t.top -= drop * cosInv(r.rise)
			out = append(out, t)
		}
	}
	return out
}

// tailPlanes cuts the tail of a truss where another body's roof covers it.
func (f *roofFrame) tailPlanes(rb *roofBody, run *roofplan.Run) (out []geom.Plane) {
	p, _, side := run.Bearing()
	for _, o := range f.bodies {
		if o == rb {
			continue
		}
		if o.body.Within(p.Sub(run.Face.Uphill())) {
			out = append(out, geom.Plane{N: roofplan.Outward(side).Up(0), C: rb.body.Edge(side)})
		}
	}
	tail := bar{at: run.Low, dir: run.Face.Uphill()}
	slack := 2 * rb.Rafters.Width()
	for _, l := range f.roof.Lines {
		line := bar{at: l.A.Flat(), dir: l.Dir()}
		den := tail.dir.Cross(line.dir)
		if l.Kind != roofplan.Valley || geom.Skims(tail.dir, line.dir) {
			continue
		}
		w := line.at.Sub(tail.at)
		u, v := w.Cross(line.dir)/den, w.Cross(tail.dir)/den
		if u > -slack && u < tail.u(p)+slack && v > -slack && v < l.Run() {
			out = append(out, line.beside(run.High))
		}
	}
	return out
}

// valleySets adds the frames of each wing that runs into another body.
func (f *roofFrame) valleySets() {
	for _, rb := range f.bodies {
		for i, s := range rb.body.Sides {
			if rb.Trusses && s.RunsIn {
				f.valleySet(rb, i)
			}
		}
	}
}

// valleySet adds the frames beyond end i of a wing, at its own spacing.
func (f *roofFrame) valleySet(rb *roofBody, i int) {
	out := roofplan.Outward(i)
	for d := rb.outermost(i, rb.trussStations()) + rb.Spacing; d < rb.body.Reach(i); d += rb.Spacing {
		if d >= rb.Rafters.Width()/2 {
			f.valleyFrame(rb, i, d, out)
		}
	}
}

// outside returns how far the coordinate s along the ridge lies outside of
// end i.
func (rb *roofBody) outside(i int, s float64) float64 {
	if i == roofplan.West || i == roofplan.South {
		s = -s
	}
	return s - rb.body.Edge(i)
}

// valleyFrame adds one frame, d outside of end i: chords along the wing's
// planes with a bottom chord along the roof below.
func (f *roofFrame) valleyFrame(rb *roofBody, i int, d float64, out geom.Vec2) {
	p, z, _ := rb.body.Ridge()
	foot := p.Add(out.Mul(rb.body.Edge(i) + d - out.Dot(p)))
	_, face, ok := f.roof.Height(foot.Add(out.Mul(rb.body.Reach(i) - d + 1)))
	if !ok || face.Plane.At(foot) > z-plate {
		return
	}
	half := rb.Rafters.Width() / 2
	width := rb.body.Edge((i+1)%4) + rb.body.Edge((i+3)%4)
	start := foot.Add(roofplan.Outward((i + 3) % 4).Mul(rb.body.On((i+1)%4, foot) + width))
	whole := bar{at: start, dir: roofplan.Outward((i + 1) % 4), top: z + 1, depth: z, half: half}
	space := whole.solid(0, width).Clip(above(face.Plane))
	chords := [2]geom.Plane{}
	for k, j := range []int{(i + 1) % 4, (i + 3) % 4} {
		chords[k] = underside(rb.body.Plane(j), 0)
		space = space.Clip(chords[k])
	}
	if space.Empty() {
		return
	}
	inner := []geom.Plane{
		underside(rb.body.Plane((i+1)%4), rb.Rafters.Depth), underside(rb.body.Plane((i+3)%4), rb.Rafters.Depth),
		above(raised(face.Plane, rb.Rafters.Depth)),
	}
	parts := geom.Carve([]geom.Solid{space}, inner)
	lo, hi := space.Bounds()
	a, b := space.Along(whole.dir.Up(0))
	base := whole.dir.Dot(start)
	m := &Member{
		ID: fmt.Sprintf("%s/%s@%s", rb.Name, plan.ValleyFrame, at(rb.station(foot))), Role: plan.ValleyFrame, Level: f.level, Roof: rb.Roof,
		Section: rb.Rafters, Length: b - a, Solid: parts, Z0: lo.Z, Z1: hi.Z, Ref: f.ref(),
		A: start.Add(whole.dir.Mul(a - base)).Up(lo.Z), B: start.Add(whole.dir.Mul(b - base)).Up(lo.Z),
	}
	f.member(m)
	f.valleyJoints(m, rb, face)
}

// valleyJoints joins a frame of a valley set to each truss of the roof below that it stands
// on, but for its tips, which are lower than its chords are deep: a frame that is all tips
// to one.
func (f *roofFrame) valleyJoints(m *Member, rb *roofBody, face *roofplan.Face) {
	d, long := m.B.Sub(m.A).Flat().Unit(), m.B.Sub(m.A).Flat().Len()
	low, high := rb.tipAt(m.A.Flat()), rb.tipAt(m.B.Flat())
	var body, tips []*Joint
	for _, o := range f.below(m) {
		u := o.A.Flat().Sub(m.A.Flat()).Dot(d)
		p := m.A.Flat().Add(d.Mul(u))
		if u < 0 || u > long || pastEnds(o, p) > near {
			continue
		}
		j := &Joint{
			Kind: plan.ValleyTruss, Host: fmt.Sprintf("%s/frame%s", rb.Name, at(math.Round(rb.station(m.A.Flat())))), Level: f.level, Roof: rb.Roof,
			Members: []*Member{m, o}, At: p.Up(face.Plane.At(p)), Station: u,
		}
		if u < low || u > long-high {
			tips = append(tips, j)
		} else {
			body = append(body, j)
		}
	}
	if len(body) == 0 && len(tips) > 0 { // where it is highest
		body = []*Joint{slices.MaxFunc(tips, func(a, b *Joint) int {
			return cmp.Compare(math.Round(min(a.Station, long-a.Station)), math.Round(min(b.Station, long-b.Station)))
		})}
	}
	for _, j := range body {
		f.joints = append(f.joints, f.joint(j))
	}
}

// below returns the trusses of other roofs square to a frame of a valley set, under it or beside.
func (f *roofFrame) below(m *Member) (out []*Member) {
	lo, hi := m.Bounds()
	for _, o := range f.index.Within(lo.Sub(geom.Vec3{Z: 24}), hi) {
		if o.Role.IsTruss() && o.Roof != m.Roof && geom.Square(m.B.Sub(m.A).Flat().Unit(), o.B.Sub(o.A).Flat().Unit()) {
			out = append(out, o)
		}
	}
	return out
}

// tipAt is how far from its end near p a frame of a valley set is lower than its chords are deep, in.
func (rb *roofBody) tipAt(p geom.Vec2) float64 {
	return rb.Rafters.Depth / rb.body.Sides[rb.sideAt(p)].Slope
}

// sideAt returns the side of the body along its ridge that p is nearer to.
func (rb *roofBody) sideAt(p geom.Vec2) (best int) {
	best = -1
	for i := range rb.sides {
		if rb.alongRidge(i) && (best < 0 || rb.body.On(i, p) > rb.body.On(best, p)) {
			best = i
		}
	}
	return best
}

// pastEnds is how far p lies beyond the ends of a truss on plan, in; 0 or less between them.
func pastEnds(m *Member, p geom.Vec2) float64 {
	d := m.B.Sub(m.A).Flat()
	u := p.Sub(m.A.Flat()).Dot(d.Unit())
	return max(-u, u-d.Len())
}

// above returns the half space over a roof plane.
func above(p roofplan.Plane) geom.Plane { return flip(underside(p, 0)) }

// raised lifts a plane by d square to it.
func raised(p roofplan.Plane, d float64) roofplan.Plane {
	return roofplan.Plane{G: p.G, C: p.C + d*cosInv(p.G.Len())}
}
