package wood

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// Hair is what two touching faces may stand apart before there is air between
// them, in: the play of a joint cut by hand (common practice, no published
// source).
const Hair = 1.0 / 32

// block is one convex part of a member.
type block struct {
	m      *framing.Member
	planes []geom.Plane
}

// Index finds the members that a line runs through.
type Index struct {
	grid  *geom.Grid[block]
	parts map[*framing.Member][][]geom.Plane
}

// New indexes the solids of the members.
func New(members []*framing.Member) *Index {
	w := &Index{grid: geom.NewGrid[block](), parts: make(map[*framing.Member][][]geom.Plane, len(members))}
	for _, m := range members {
		if m.Role == plan.Packing { // it fills a gap and holds nothing
			continue
		}
		on := geom.Slant(m.A.Flat(), m.B.Flat(), max(m.Section.Width(), m.Section.Depth))
		for _, s := range m.Solid {
			if s.Empty() {
				continue
			}
			lo, hi := s.Bounds()
			b := block{m, s.Planes()}
			w.grid.Add(b, lo, hi, on)
			w.parts[m] = append(w.parts[m], b.planes)
		}
	}
	return w
}

// Run is the stretch of a straight piece of steel inside one member.
type Run struct {
	Member   *framing.Member
	From, To float64 // from the steel's start, in
	// Grain is the cosine of the angle between the steel and the member's
	// grain: 0 into its side, 1 into its end.
	Grain float64
}

// Len returns the length of the run, in.
func (r Run) Len() float64 { return r.To - r.From }

// EndGrain tells whether the steel runs along the member's grain, nearer to
// it than 45 degrees.
func (r Run) EndGrain() bool { return r.Grain > math.Sqrt2/2 }

// Through returns the runs of the line from a to b, in order; parts of one
// member that touch are one run.
func (w *Index) Through(a, b geom.Vec3) []Run {
	d := b.Sub(a)
	l := d.Len()
	if l < geom.Eps {
		return nil
	}
	d = d.Mul(1 / l)
	lo, hi := bounds(a, b)
	var out []Run
	for _, x := range w.grid.Within(lo, hi) {
		if t0, t1, ok := geom.Within(x.planes, a, d, 0, l); ok && t1-t0 > geom.Eps {
			out = append(out, Run{Member: x.m, From: t0, To: t1, Grain: math.Abs(Grain(x.m).Dot(d))})
		}
	}
	slices.SortStableFunc(out, func(p, q Run) int { return cmp.Or(cmp.Compare(p.From, q.From), cmp.Compare(p.To, q.To)) })
	return joined(out)
}

// Stretches returns the runs of the line from a along d, unit and far long, in
// members of which is says so, in order, each part of a member by itself.
func (w *Index) Stretches(a, d geom.Vec3, far float64, is func(*framing.Member) bool) (out []Run) {
	lo, hi := bounds(a, a.Add(d.Mul(far)))
	for _, x := range w.grid.Within(lo, hi) {
		if !is(x.m) {
			continue
		}
		if t0, t1, ok := geom.Within(x.planes, a, d, 0, far); ok {
			out = append(out, Run{Member: x.m, From: t0, To: t1})
		}
	}
	slices.SortStableFunc(out, func(p, q Run) int { return cmp.Or(cmp.Compare(p.From, q.From), cmp.Compare(p.To, q.To)) })
	return out
}

// joined makes one run of those of one member that touch.
func joined(runs []Run) []Run {
	out := runs[:0]
	for _, r := range runs {
		i := slices.IndexFunc(out, func(q Run) bool { return q.Member == r.Member && r.From <= q.To+Hair })
		if i < 0 {
			out = append(out, r)
			continue
		}
		out[i].To = max(out[i].To, r.To)
	}
	return out
}

func bounds(a, b geom.Vec3) (lo, hi geom.Vec3) {
	return geom.Vec3{X: min(a.X, b.X), Y: min(a.Y, b.Y), Z: min(a.Z, b.Z)},
		geom.Vec3{X: max(a.X, b.X), Y: max(a.Y, b.Y), Z: max(a.Z, b.Z)}
}

// Grain returns the direction of a member's grain, unit.
func Grain(m *framing.Member) geom.Vec3 { return m.B.Sub(m.A).Unit() }

// reach is how far the wood is followed for edge and end distances, in: no
// distance asked for is larger.
const reach = 48.0

// Margin is how much wood lies around a point of a member: to the nearer edge
// across the grain and to the nearer end along it, in.
type Margin struct{ Edge, End float64 }

// Around returns the margin of the point p of member m on a face with normal
// n: measured in that face, just under it.
func (w *Index) Around(m *framing.Member, p, n geom.Vec3) Margin {
	g := Grain(m)
	along := g.Sub(n.Mul(g.Dot(n)))
	if along.Len() < 0.1 { // into end grain: both ways are edges
		along = sideways(n)
	}
	along = along.Unit()
	across := n.Cross(along)
	p = p.Sub(n.Mul(Hair))
	return Margin{Edge: w.nearer(m, p, across), End: w.nearer(m, p, along)}
}

// sideways returns a direction in the end of a member whose normal is n: level in
// one that stands, along x in one that lies, as members' sides mostly are.
func sideways(n geom.Vec3) geom.Vec3 {
	if geom.Upright(n) {
		return n.Cross(geom.Vec3{Y: 1})
	}
	return n.Cross(geom.Vec3{Z: 1})
}

// nearer returns the shorter way from p out of m, forward or back along d; 0
// when p is not inside.
func (w *Index) nearer(m *framing.Member, p, d geom.Vec3) float64 {
	back, on := w.Ways(m, p, d)
	return min(back, on)
}

// Out returns the way from p out of m along d, unit, in; 0 when p is not inside.
func (w *Index) Out(m *framing.Member, p, d geom.Vec3) float64 {
	_, on := w.Ways(m, p, d)
	return on
}

// Ways returns the ways from p out of m, back and on along d, unit, in; 0 when
// p is not inside.
func (w *Index) Ways(m *framing.Member, p, d geom.Vec3) (back, on float64) {
	var in [][2]float64
	for _, planes := range w.parts[m] {
		if t0, t1, ok := geom.Within(planes, p, d, -reach, reach); ok {
			in = append(in, [2]float64{t0, t1})
		}
	}
	slices.SortFunc(in, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
	for i := 0; i < len(in); i++ {
		for i+1 < len(in) && in[i+1][0] <= in[i][1]+Hair {
			in[i+1] = [2]float64{in[i][0], max(in[i][1], in[i+1][1])}
			i++
		}
		if in[i][0] <= 0 && in[i][1] >= 0 {
			return -in[i][0], in[i][1]
		}
	}
	return 0, 0
}
