package roofplan

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// Roof is the upper envelope of bodies over one level.
type Roof struct {
	Bodies []*Body
	lay    plan.Lay
	Faces  []*Face           // in order of the bodies
	Lines  []*Line           // ridges, then hips, then valleys
	bounds map[*Face][]bound // filled by boundsOf
	ridged [][2]*Face        // faces that meet in a ridge, filled by edges
}

// Face is one plane of the roof as far as it shows.
type Face struct {
	Body    *Body // the first that has this plane
	Side    int   // its side
	Plane   Plane
	Outline []geom.Vec2 // counterclockwise
	Edges   []EdgeKind  // kind of the edge from Outline[i] to Outline[i+1]
	parts   []facet     // the body sides that make the plane, here or elsewhere
	laid    []facet     // those that reach over the face
	module  *module     // where its rafters stand
}

// Uphill returns the unit plan direction in which the face climbs.
func (f *Face) Uphill() geom.Vec2 { return f.Plane.G.Unit() }

// Slope returns the rise of the face per inch of run.
func (f *Face) Slope() float64 { return f.Plane.G.Len() }

// Has tells whether side i of body b lies in the plane of the face.
func (f *Face) Has(b *Body, i int) bool {
	return slices.ContainsFunc(f.parts, func(p facet) bool { return p.body == b && p.side == i })
}

// Fault is what keeps bodies from making a roof.
type Fault struct {
	Body          *Body
	Code          plan.Code
	Summary, Mend string
}

// facet is the plane of one side of one body, with its plan.
type facet struct {
	body  *Body
	side  int
	polys [][]geom.Vec2 // convex, touching
}

// New returns the roof of the bodies. It sets RunsIn on their sides.
func New(bodies []*Body) (*Roof, []Fault) {
	var faults []Fault
	for i, b := range bodies {
		b.index = i
	}
	for _, b := range bodies {
		faults = append(faults, b.runIn(bodies)...)
		faults = append(faults, b.checkRidge()...)
	}
	r := &Roof{Bodies: bodies}
	if len(bodies) > 0 {
		r.lay = bodies[0].Lay
	}
	fs := facets(bodies)
	faults = append(faults, r.faces(fs)...)
	r.edges()
	r.lines()
	return r, append(faults, r.modules(fs)...)
}

// runIn finds the ends of b that lie within another body and how far b runs
// on there until its ridge dies in the other's plane.
func (b *Body) runIn(bodies []*Body) (faults []Fault) {
	sides, ends := eaves(b.Axis)
	if !b.Sloped(sides[0]) || !b.Sloped(sides[1]) {
		b.goOn(bodies) // a shed has no ridge to run on
		return nil
	}
	for _, e := range ends {
		if b.Sides[e].Against {
			continue
		}
		p, z := b.ridgeEnd(e)
		for _, o := range bodies {
			if o == b || !o.within(p.Add(outward[e])) {
				continue
			}
			run, ok := o.dies(p, outward[e], z)
			if !ok {
				faults = append(faults, Fault{
					b, "ridge-does-not-die",
					"the ridge of roof " + b.Name + " stands higher than roof " + o.Name + " that it runs into",
					"let roof " + b.Name + " run through and give roof " + o.Name + " the area beside it, or change a pitch",
				})
			}
			b.Sides[e].RunsIn, b.Sides[e].run, b.Sides[e].Slope = true, run, 0
			for k, j := range sides {
				b.Sides[e].lap[k] = min(max(o.edge(j)-b.edge(j), 0), b.overhang(j))
			}
			break
		}
	}
	return faults
}

// ridgeEnd returns the plan point and height where the ridge of b would meet
// its end e if that were a gable.
func (b *Body) ridgeEnd(e int) (p geom.Vec2, z float64) {
	sides, _ := eaves(b.Axis)
	for k, i := range sides {
		if o := sides[1-k]; !b.Sloped(o) { // a shed: its high side
			p = outward[o].Mul(b.edge(o)).Add(outward[e].Mul(b.edge(e)))
			return p, b.Plane(i).At(p)
		}
	}
	lo, hi := b.Plane(sides[0]), b.Plane(sides[1])
	u := outward[sides[1]] // from the low side to the high one
	start := u.Mul(-b.edge(sides[0]))
	base := start.Add(outward[e].Mul(b.edge(e)))
	t := (hi.At(base) - lo.At(base)) / (b.Sides[sides[0]].Slope + b.Sides[sides[1]].Slope)
	p = base.Add(u.Mul(t))
	return p, lo.At(p)
}

// dies returns how far from p in direction d a ridge of height z runs until
// it is under the planes of o.
func (o *Body) dies(p, d geom.Vec2, z float64) (run float64, ok bool) {
	run = math.Inf(1)
	try := []float64{0}
	for i := range o.Sides {
		if pl := o.Plane(i); math.Abs(pl.G.Dot(d)) > 1e-9 { // of a side without a plane G is 0
			try = append(try, (z-pl.At(p))/pl.G.Dot(d))
		}
	}
	for _, t := range try {
		q := p.Add(d.Mul(t))
		if h, _ := o.height(q); t >= 0 && t < run && o.within(q) && h >= z-1e-5 {
			run, ok = t, true
		}
	}
	if !ok {
		return 0, false
	}
	return run, true
}

// facets returns the planes of all bodies, each over its own plan.
func facets(bodies []*Body) (out []facet) {
	for _, b := range bodies {
		for _, i := range SidesOf(b.Lay) {
			if !b.Sloped(i) {
				continue
			}
			f := facet{body: b, side: i}
			for _, poly := range b.domain() {
				for j := range b.Sides {
					if j != i && b.Sloped(j) && poly != nil {
						poly = below(poly, b.Plane(i), b.Plane(j))
					}
				}
				if poly != nil {
					f.polys = append(f.polys, poly)
				}
			}
			out = append(out, f)
		}
	}
	return out
}

// below returns the part of poly where p lies below q.
func below(poly []geom.Vec2, p, q Plane) []geom.Vec2 {
	return clip(poly, p.G.Sub(q.G), q.C-p.C)
}

// faces cuts from each facet what lies under others, and joins what is left
// of one plane.
func (r *Roof) faces(fs []facet) (faults []Fault) {
	pieces := make([][][]geom.Vec2, len(fs))
	for i, f := range fs {
		pieces[i] = f.polys
		for j, g := range fs {
			if g.body != f.body {
				for _, over := range hides(g, f, j < i) {
					pieces[i] = subtract(pieces[i], over)
				}
			}
		}
	}
	done := make([]bool, len(fs))
	for i, f := range fs {
		var all [][]geom.Vec2
		var parts []facet
		for j := i; j < len(fs); j++ {
			if !done[j] && fs[j].body.Plane(fs[j].side).same(f.body.Plane(f.side)) {
				done[j] = true
				all = append(all, pieces[j]...)
				parts = append(parts, fs[j])
			}
		}
		for _, loop := range union(all) {
			if Area(loop) < 0 {
				faults = append(faults, Fault{
					f.body, "roof-within-roof",
					"a roof stands wholly within one face of roof " + f.body.Name,
					"let the smaller roof reach an eave",
				})
				continue
			}
			r.Faces = append(r.Faces, &Face{
				Body: f.body, Side: f.side,
				Plane: f.body.Plane(f.side), Outline: loop, parts: parts, laid: over(loop, all, parts),
			})
		}
	}
	return faults
}

// over returns those of some sides that reach over a face: over one of the
// convex pieces in its outline.
func over(loop []geom.Vec2, pieces [][]geom.Vec2, parts []facet) []facet {
	pieces = slices.DeleteFunc(slices.Clone(pieces), func(p []geom.Vec2) bool { return !contains(loop, middle(p)) })
	return slices.DeleteFunc(slices.Clone(parts), func(f facet) bool {
		return !slices.ContainsFunc(f.polys, func(a []geom.Vec2) bool {
			return slices.ContainsFunc(pieces, func(b []geom.Vec2) bool { return intersect(a, b) != nil })
		})
	})
}

// middle returns a point within a convex polygon.
func middle(p []geom.Vec2) (m geom.Vec2) {
	for _, q := range p {
		m = m.Add(q.Mul(1 / float64(len(p))))
	}
	return m
}

// hides returns the convex parts of the plan where facet g lies over facet f;
// of two facets in one plane the first hides the other.
func hides(g, f facet, first bool) (out [][]geom.Vec2) {
	pf, pg := f.body.Plane(f.side), g.body.Plane(g.side)
	for _, a := range f.polys {
		for _, b := range g.polys {
			over := intersect(a, b)
			if over == nil {
				continue
			}
			if pf.same(pg) {
				if !first {
					continue
				}
			} else if over = below(over, pf, pg); over == nil {
				continue
			}
			out = append(out, over)
		}
	}
	return out
}

// Height returns the height of the roof's top over p, in above grade, and
// the face that is there; ok is false beside the roof.
func (r *Roof) Height(p geom.Vec2) (z float64, f *Face, ok bool) {
	for _, g := range r.Faces {
		if h := g.Plane.At(p); contains(g.Outline, p) && (!ok || h > z) {
			z, f, ok = h, g, true
		}
	}
	return z, f, ok
}

// contains tells whether p lies in the polygon or on its border.
func contains(poly []geom.Vec2, p geom.Vec2) bool {
	in := false
	for i, a := range poly {
		b := poly[(i+1)%len(poly)]
		if distance(p, a, b) < snap {
			return true
		}
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}

// distance returns how far p is from the segment a b.
func distance(p, a, b geom.Vec2) float64 {
	d := b.Sub(a)
	t := p.Sub(a).Dot(d) / max(d.Dot(d), 1e-12)
	return p.Sub(a.Add(d.Mul(min(max(t, 0), 1)))).Len()
}

// angle returns the turn from a to b, −π to π, left positive.
func angle(a, b geom.Vec2) float64 { return math.Atan2(a.Cross(b), a.Dot(b)) }

// byPlace orders plan points by x, then y.
func byPlace(a, b geom.Vec2) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) }

// rough is where a point is in the house as written, without what turning leaves of rounding, in.
func (r *Roof) rough(p geom.Vec3) geom.Vec2 {
	q := r.lay.Back(p.Flat())
	return geom.Vec2{X: math.Round(q.X * 1000), Y: math.Round(q.Y * 1000)}
}
