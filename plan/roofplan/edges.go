package roofplan

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// EdgeKind is the kind of an edge of a face, and of what a rafter meets at
// its ends.
type EdgeKind = plan.RoofEdge

// The kinds of edges, by their short names.
const (
	Eave   = plan.EaveEdge
	Rake   = plan.RakeEdge
	Ridge  = plan.RidgeEdge
	Hip    = plan.HipEdge
	Valley = plan.ValleyEdge
	Wall   = plan.WallEdge
)

// probe is how far beside an edge the neighbor is looked for, in.
const probe = 0.01

// step is the difference of height, in, from which two faces beside an edge
// do not meet there.
const step = 0.1

// edges splits the outlines where the neighbor changes and names each edge.
func (r *Roof) edges() {
	var corners []geom.Vec2
	for _, f := range r.Faces {
		corners = append(corners, f.Outline...)
	}
	for _, f := range r.Faces {
		var pts []geom.Vec2
		var kinds []EdgeKind
		for i, a := range f.Outline {
			b := f.Outline[(i+1)%len(f.Outline)]
			cuts := between(corners, a, b)
			for k := 1; k < len(cuts); k++ {
				pts = append(pts, cuts[k-1])
				kinds = append(kinds, r.kind(f, cuts[k-1], cuts[k]))
				if kinds[len(kinds)-1] == Ridge {
					r.ridge(f, cuts[k-1], cuts[k])
				}
			}
		}
		f.Outline, f.Edges = merge(pts, kinds)
	}
}

// between returns a, the corners on the segment a b in order, and b.
func between(corners []geom.Vec2, a, b geom.Vec2) []geom.Vec2 {
	d := b.Sub(a).Unit()
	out := []geom.Vec2{a, b}
	for _, c := range corners {
		if t := c.Sub(a).Dot(d); t > snap && t < b.Sub(a).Len()-snap && math.Abs(c.Sub(a).Cross(d)) < snap {
			out = append(out, c)
		}
	}
	slices.SortFunc(out, func(p, q geom.Vec2) int { return cmp.Compare(p.Sub(a).Dot(d), q.Sub(a).Dot(d)) })
	return slices.CompactFunc(out, func(p, q geom.Vec2) bool { return p.Sub(q).Len() < snap })
}

// merge joins neighboring edges of one kind on one straight line.
func merge(pts []geom.Vec2, kinds []EdgeKind) (outline []geom.Vec2, edges []EdgeKind) {
	n := len(pts)
	for i, p := range pts {
		prev := pts[(i+n-1)%n]
		straight := math.Abs(p.Sub(prev).Unit().Cross(pts[(i+1)%n].Sub(p).Unit())) < 1e-7
		if straight && kinds[i] == kinds[(i+n-1)%n] {
			continue
		}
		outline, edges = append(outline, p), append(edges, kinds[i])
	}
	return outline, edges
}

// kind names the edge of f from a to b.
func (r *Roof) kind(f *Face, a, b geom.Vec2) EdgeKind {
	d := b.Sub(a).Unit()
	out := d.Right()
	mid := a.Add(b).Mul(0.5)
	q := mid.Add(out.Mul(probe))
	level := math.Abs(d.Dot(f.Uphill())) < 1e-7
	z, g, ok := r.Height(q)
	h := f.Plane.At(q)
	switch {
	case !ok && f.against(mid), ok && z > h+step:
		return Wall
	case !ok || z < h-step:
		return free(level, out.Dot(f.Uphill()))
	case g.Plane.At(q) > h:
		return Valley
	case level:
		return Ridge
	}
	return Hip
}

// ridge notes the face on the other side of f's edge from a to b, a ridge.
func (r *Roof) ridge(f *Face, a, b geom.Vec2) {
	q := a.Add(b).Mul(0.5).Add(b.Sub(a).Unit().Right().Mul(probe))
	if z, g, ok := r.Height(q); ok && math.Abs(z-f.Plane.At(q)) <= step {
		r.ridged = append(r.ridged, [2]*Face{f, g})
	}
}

// free names an edge beyond which there is no roof: climb is how much the
// face climbs toward it.
func free(level bool, climb float64) EdgeKind {
	switch {
	case !level:
		return Rake
	case climb < 0:
		return Eave
	}
	return Ridge
}

// against tells whether p lies on a side of f's body that ends at a wall.
func (f *Face) against(p geom.Vec2) bool {
	for _, part := range f.parts {
		for i, s := range part.body.Sides {
			if s.Against && math.Abs(part.body.On(i, p)) < snap {
				return true
			}
		}
	}
	return false
}

// Line is a ridge, hip or valley, from its low end to its high end; a ridge
// runs from west to east or from south to north, as these are in the house as written.
type Line struct {
	Kind EdgeKind
	A, B geom.Vec3
	// Carried is, for a valley whose upper end would hang in the other
	// roof's plane, the plan point where it would have ended: from there it
	// runs on in the plane to the next line, to carry the lower ridge and
	// the other valley. Nil for all others.
	Carried *geom.Vec2
}

// Dir returns the plan direction of l, unit.
func (l *Line) Dir() geom.Vec2 { return l.B.Sub(l.A).Flat().Unit() }

// Run returns the plan length of l, in.
func (l *Line) Run() float64 { return l.B.Sub(l.A).Flat().Len() }

// At returns the point of l over distance u along its plan from A.
func (l *Line) At(u float64) geom.Vec3 {
	return l.A.Add(l.B.Sub(l.A).Mul(u / max(l.Run(), 1e-9)))
}

// rank orders lines by what carries what.
func rank(kind EdgeKind) int { return slices.Index([]EdgeKind{Ridge, Hip, Valley}, kind) }

// lines gathers the ridges, hips and valleys from the edges of the faces.
func (r *Roof) lines() {
	for _, f := range r.Faces {
		for i, kind := range f.Edges {
			a, b := f.Outline[i], f.Outline[(i+1)%len(f.Outline)]
			if rank(kind) < 0 || r.single(f, a, b) {
				continue
			}
			r.addLine(kind, a.Up(f.Plane.At(a)), b.Up(f.Plane.At(b)))
		}
	}
	slices.SortFunc(r.Lines, func(a, b *Line) int {
		return cmp.Or(cmp.Compare(rank(a.Kind), rank(b.Kind)), byPlace(r.rough(a.A), r.rough(b.A)), byPlace(r.rough(a.B), r.rough(b.B)))
	})
	r.carry()
}

// single tells whether nothing is on the other side of an edge, as at the
// top of a shed.
func (r *Roof) single(f *Face, a, b geom.Vec2) bool {
	q := a.Add(b).Mul(0.5).Add(b.Sub(a).Unit().Right().Mul(probe))
	z, _, ok := r.Height(q)
	return !ok || math.Abs(z-f.Plane.At(q)) > step
}

// addLine adds the segment, joining it to a line of its kind that it touches
// or overlaps in the same straight line.
func (r *Roof) addLine(kind EdgeKind, a, b geom.Vec3) {
	if a.Z > b.Z+snap || (math.Abs(a.Z-b.Z) <= snap && byPlace(r.rough(a), r.rough(b)) > 0) {
		a, b = b, a
	}
	d := b.Sub(a).Unit()
	for i := 0; i < len(r.Lines); i++ {
		l := r.Lines[i]
		if l.Kind != kind || l.A.Sub(a).Cross(d).Len() > near || l.B.Sub(a).Cross(d).Len() > near {
			continue
		}
		lo, hi := l.A.Sub(a).Dot(d), l.B.Sub(a).Dot(d)
		if lo > b.Sub(a).Len()+snap || hi < -snap {
			continue
		}
		if lo < 0 {
			a = l.A
		}
		if l.B.Sub(b).Dot(d) > 0 {
			b = l.B
		}
		r.Lines = slices.Delete(r.Lines, i, i+1)
		i = -1
	}
	r.Lines = append(r.Lines, &Line{Kind: kind, A: a, B: b})
}

// carry runs one valley on wherever valleys would end in mid plane: sooner
// one that comes to a ridge or hip than one that comes to a rake.
func (r *Roof) carry() {
	for _, anywhere := range []bool{false, true} {
		for _, l := range r.Lines {
			if l.Kind != Valley || l.Carried != nil || r.supported(l) {
				continue
			}
			at := l.B.Flat()
			if end, ok := r.onward(l); ok && (anywhere || r.lineOn(Ridge, end.Flat(), end.Flat()) != nil || r.lineOn(Hip, end.Flat(), end.Flat()) != nil) {
				l.Carried, l.B = &at, end
			}
		}
	}
}

// supported tells whether something at the upper end of valley l carries it:
// a line that runs on past the end, a hip, or two ridges that meet there. A
// single ridge that dies there with its valleys carries nothing.
func (r *Roof) supported(l *Line) bool {
	ridges := 0
	for _, o := range r.Lines {
		if o == l || distance(l.B.Flat(), o.A.Flat(), o.B.Flat()) > near {
			continue
		}
		ends := o.A.Sub(l.B).Len() < near || o.B.Sub(l.B).Len() < near
		if !ends || o.Kind == Hip || o.B.Z > l.B.Z+near {
			return true
		}
		if o.Kind == Ridge {
			ridges++
		}
	}
	return ridges > 1
}

// onward returns where valley l, run on in its plane, meets the edge of the
// face it then crosses.
func (r *Roof) onward(l *Line) (geom.Vec3, bool) {
	from, d := l.B.Flat(), l.Dir()
	_, f, ok := r.Height(from.Add(d.Mul(probe)))
	if !ok {
		return geom.Vec3{}, false
	}
	best := math.Inf(1)
	for i, a := range f.Outline {
		e := f.Outline[(i+1)%len(f.Outline)].Sub(a)
		den := d.Cross(e)
		if math.Abs(den) < 1e-9 {
			continue
		}
		t := a.Sub(from).Cross(e) / den
		s := a.Sub(from).Cross(d) / den
		if t > 2*probe && t < best && s > -1e-9 && s < 1+1e-9 {
			best = t
		}
	}
	if math.IsInf(best, 1) {
		return geom.Vec3{}, false
	}
	p := from.Add(d.Mul(best))
	return p.Up(f.Plane.At(p)), true
}
