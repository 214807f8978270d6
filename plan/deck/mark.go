package deck

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// Region is a part of a face in one nail zone; a later one of a list lies over
// an earlier one.
type Region struct {
	Zone    int
	Outline []geom.Vec2 // on plan
}

// strip returns the rectangle d around an edge, as within has it.
func (e Edge) strip(d float64) []geom.Vec2 {
	dir := e.B.Sub(e.A).Unit()
	n, a, b := dir.Left().Mul(d), e.A.Sub(dir.Mul(e.past(d))), e.B.Add(dir.Mul(e.past(d)))
	return []geom.Vec2{a.Sub(n), b.Sub(n), b.Add(n), a.Add(n)}
}

// cutTo returns the part of a polygon that lies in a convex one, which runs
// counterclockwise.
func cutTo(poly, convex []geom.Vec2) []geom.Vec2 {
	for i, a := range convex {
		n := convex[(i+1)%len(convex)].Sub(a).Unit().Left().Mul(-1)
		if poly = clip(poly, n, n.Dot(a)); len(poly) < 3 {
			return nil
		}
	}
	if area(poly) < 1 {
		return nil
	}
	return poly
}

// Regions returns the nail zones of a face but the first, A.
func (d *Deck) Regions(x *Face) (out []Region) {
	for i, z := range d.Spec.Zones {
		edges := x.edges.reaching(x, z.Within)
		for _, e := range edges {
			if !slices.Contains(z.Near, e.Kind) || e.long < touch {
				continue
			}
			part := cutTo(x.plan, e.strip(z.Within))
			if !z.Corners {
				if part != nil {
					out = append(out, Region{i + 1, part})
				}
				continue
			}
			for _, o := range edges {
				if part == nil || o.Kind <= e.Kind || !slices.Contains(z.Near, o.Kind) || o.long < touch {
					continue
				}
				if both := cutTo(part, o.strip(z.Within)); both != nil {
					out = append(out, Region{i + 1, both})
				}
			}
		}
	}
	return out
}

// Reach is the width of the strips along some kinds of edges, in.
type Reach struct {
	Kinds []plan.RoofEdge
	Width float64
}

// NailReaches returns the strips of a deck's nail zones.
func (d *Deck) NailReaches() (out []Reach) {
	for _, z := range d.Spec.Zones {
		out = append(out, Reach{z.Near, z.Within})
	}
	return out
}

// Reaches returns the strips of a face's wind zones.
func (w *Winds) Reaches(x *Face) []Reach {
	h, ends, sides := 12*w.Basis.Height, []plan.RoofEdge{plan.EaveEdge, plan.RidgeEdge}, []plan.RoofEdge{plan.RakeEdge, plan.WallEdge}
	all := slices.Concat(ends, sides)
	switch {
	case has(w.figures[x.n], "1'"):
		return []Reach{{all, 0.2 * h}, {all, 0.6 * h}, {all, 1.2 * h}}
	case x.Roof.Kind == plan.ShedRoof:
		return []Reach{{all, 2 * w.A}, {sides, 4 * w.A}}
	}
	return []Reach{{append(all, plan.HipEdge), w.A}}
}

// Borders returns the lines on plan along which zones of a face change: those
// sides of the strips where zone tells two things.
func (x *Face) Borders(reaches []Reach, zone func(geom.Vec2) string) (out [][2]geom.Vec2) {
	var sides [][2]geom.Vec2
	for _, r := range reaches {
		for _, e := range x.edges.reaching(x, r.Width) {
			if e.long < touch || !slices.Contains(r.Kinds, e.Kind) {
				continue
			}
			s := e.strip(r.Width)
			for i, a := range s {
				b := s[(i+1)%4]
				for _, t := range stretches(x.plan, a, b, 0) {
					sides = append(sides, [2]geom.Vec2{a.Add(b.Sub(a).Mul(t[0])), a.Add(b.Sub(a).Mul(t[1]))})
				}
			}
		}
	}
	for _, s := range sides {
		for _, part := range x.changes(s, sides, zone) {
			if !slices.ContainsFunc(out, func(o [2]geom.Vec2) bool { return lies(o, part) }) {
				out = append(out, part)
			}
		}
	}
	return out
}

// lies tells whether line b lies on line a.
func lies(a, b [2]geom.Vec2) bool {
	d := a[1].Sub(a[0])
	for _, p := range b {
		t := p.Sub(a[0]).Dot(d) / d.Dot(d)
		if math.Abs(p.Sub(a[0]).Cross(d.Unit())) > touch || t < -1e-6 || t > 1+1e-6 {
			return false
		}
	}
	return true
}

// changes returns the parts of a side between its crossings with others that
// have different zones on both sides.
func (x *Face) changes(s [2]geom.Vec2, sides [][2]geom.Vec2, zone func(geom.Vec2) string) (out [][2]geom.Vec2) {
	d := s[1].Sub(s[0])
	cuts := []float64{0, 1}
	for _, o := range sides {
		e := o[1].Sub(o[0])
		if den := d.Cross(e); math.Abs(den) > 1e-6 {
			if t := o[0].Sub(s[0]).Cross(e) / den; t > 1e-6 && t < 1-1e-6 {
				cuts = append(cuts, t)
			}
		}
	}
	slices.SortFunc(cuts, cmp.Compare[float64])
	n := d.Unit().Left()
	for i := 1; i < len(cuts); i++ {
		a, b := s[0].Add(d.Mul(cuts[i-1])), s[0].Add(d.Mul(cuts[i]))
		p, q := a.Add(b).Mul(0.5).Add(n.Mul(0.5)), a.Add(b).Mul(0.5).Sub(n.Mul(0.5))
		if b.Sub(a).Len() < touch || !holds(x.plan, p, 0) || !holds(x.plan, q, 0) || zone(p) == zone(q) {
			continue
		}
		if k := len(out); k > 0 && out[k-1][1].Sub(a).Len() < 1e-6 {
			out[k-1][1] = b
		} else {
			out = append(out, [2]geom.Vec2{a, b})
		}
	}
	return out
}

// Mark is a place inside a zone for its name.
type Mark struct {
	Zone string
	At   geom.Vec2 // on plan
	Room float64   // to the border of the zone, about, in
}

// grain is the raster on which places for names are looked for, in.
const grain = 6.0

// Marks returns the middle of each part of a face that lies in one zone.
func (x *Face) Marks(zone func(geom.Vec2) string) (out []Mark) {
	lo, hi := bounds(x.plan)
	w, h := int((hi.X-lo.X)/grain)+2, int((hi.Y-lo.Y)/grain)+2
	name := make([]string, w*h)
	at := func(i int) geom.Vec2 {
		return lo.Add(geom.Vec2{X: (float64(i%w) - 0.5) * grain, Y: (float64(i/w) - 0.5) * grain})
	}
	for i := range name {
		if p := at(i); holds(x.plan, p, 0) {
			name[i] = zone(p)
		}
	}
	room := depth(name, w)
	seen := make([]bool, len(name))
	for i := range name {
		if name[i] == "" || seen[i] {
			continue
		}
		best := []int{i}
		for stack := []int{i}; len(stack) > 0; {
			k := stack[len(stack)-1]
			stack = stack[:len(stack)-1]
			if seen[k] {
				continue
			}
			seen[k] = true
			if room[k] > room[best[0]] {
				best = best[:0]
			}
			if len(best) == 0 || room[k] == room[best[0]] {
				best = append(best, k)
			}
			for _, o := range []int{k - 1, k + 1, k - w, k + w} {
				if o >= 0 && o < len(name) && name[o] == name[i] && !seen[o] {
					stack = append(stack, o)
				}
			}
		}
		slices.Sort(best)
		k := best[len(best)/2]
		out = append(out, Mark{name[i], at(k), float64(room[k]) * grain})
	}
	return out
}

// depth returns how many steps each place of a raster w wide is from another
// name.
func depth(name []string, w int) []int {
	room := make([]int, len(name))
	for i := range room {
		room[i] = len(name)
	}
	look := func(i, o int) {
		if o < 0 || o >= len(name) || name[o] != name[i] {
			room[i] = 0
		} else {
			room[i] = min(room[i], room[o]+1)
		}
	}
	for i := range name {
		look(i, i-1)
		look(i, i-w)
	}
	for i := len(name) - 1; i >= 0; i-- {
		look(i, i+1)
		look(i, i+w)
	}
	return room
}

// Gables returns the lines of the framing over gable walls, on plan.
func (x *Face) Gables() (out [][2]geom.Vec2) {
	for _, l := range x.lines {
		if l.gable {
			out = append(out, [2]geom.Vec2{x.at(l.a), x.at(l.b)})
		}
	}
	return out
}

// Strips returns the edges that a face's zones are measured from and that are
// its own, in the order of its outline.
func (x *Face) Strips() (out []Edge) {
	for i, e := range x.Edges {
		out = append(out, Edge{e.Kind, x.plan[i], x.plan[(i+1)%len(x.plan)]})
	}
	return out
}
