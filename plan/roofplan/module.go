package roofplan

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// module is where the rafters of sides that belong together stand: the two
// sides of a ridge, and what lies in one plane with either. All of them are
// counted from one place, so that rafters meet in pairs at every ridge.
type module struct {
	sides  []facet
	origin float64   // the place, along the eave, in
	zones  []zone    // of two that reach over the same length the first holds
	fixed  []float64 // rafters that a hip sets, in
}

// zone is a length of eave with its spacing. Beyond the end of a ridge the
// jacks are counted from that end, so that they pair across the hip.
type zone struct{ lo, hi, origin, spacing float64 }

// modules finds which sides belong together, counts each of them out, and
// tells of layouts that cannot both be.
func (r *Roof) modules(fs []facet) (faults []Fault) {
	root := make([]int, len(fs))
	for i := range root {
		root[i] = i
	}
	r.join(fs, func(a, b facet) {
		i, j := root[indexOf(fs, a)], root[indexOf(fs, b)]
		for k := range root {
			if root[k] == max(i, j) {
				root[k] = min(i, j)
			}
		}
	})
	made := map[int]*module{}
	for i, f := range fs {
		if made[root[i]] == nil {
			made[root[i]] = &module{}
		}
		made[root[i]].sides = append(made[root[i]].sides, f)
	}
	for i := range fs {
		if m := made[i]; m != nil {
			faults = append(faults, m.lay()...)
		}
	}
	for _, f := range r.Faces {
		f.module = made[root[indexOf(fs, f.laid[0])]]
	}
	return faults
}

// indexOf returns which of the facets is the side of f.
func indexOf(fs []facet, f facet) int {
	return slices.IndexFunc(fs, func(g facet) bool { return g.body == f.body && g.side == f.side })
}

// join calls with each two sides that belong together: those of one ridge of
// one body, those of one face, and those of two faces that meet in a ridge.
func (r *Roof) join(fs []facet, with func(a, b facet)) {
	for _, f := range fs {
		sides, _ := eaves(f.body.Axis)
		if i := indexOf(fs, facet{body: f.body, side: sides[1]}); f.side == sides[0] && i >= 0 {
			with(f, fs[i])
		}
	}
	for _, f := range r.Faces {
		for _, p := range f.laid {
			with(f.laid[0], p)
		}
	}
	for _, p := range r.ridged {
		with(p[0].laid[0], p[1].laid[0])
	}
}

// lay counts the module out.
func (m *module) lay() (faults []Fault) {
	faults = m.start()
	for _, p := range m.sides {
		b := p.body
		lo, hi := p.reach()
		if p.hipFace() {
			m.fixed = append(m.fixed, b.hipMiddle(p.side))
			m.zones = append(m.zones, zone{lo, hi, m.origin, b.Spacing})
			continue
		}
		ends := endsOf(p.side)
		low, high := lo, hi
		var jacks []zone
		if b.Sloped(ends[0]) {
			low = b.hipEnd(ends[0])
			jacks = append(jacks, zone{lo, low, low, b.Spacing})
			m.fixed = append(m.fixed, low)
		}
		if b.Sloped(ends[1]) {
			high = b.hipEnd(ends[1])
			jacks = append(jacks, zone{high, hi, high, b.Spacing})
			m.fixed = append(m.fixed, high)
		}
		m.zones = append(append(m.zones, zone{low, high, m.origin, b.Spacing}), jacks...)
	}
	return faults
}

// start chooses where the module is counted from: a layout that a plan gives,
// else the middle of a hip's own face, so that its jacks pair with those
// beside them, else where the first body would start by itself.
func (m *module) start() (faults []Fault) {
	var first *Body
	for i, p := range m.sides {
		b := p.body
		told := slices.ContainsFunc(m.sides[:i], func(f facet) bool { return f.body == b && !f.hipFace() })
		if b.Layout == nil || p.hipFace() || told {
			continue
		}
		if s := b.low() + *b.Layout; first == nil {
			first, m.origin = b, s
		} else if off := math.Abs(math.Remainder(s-m.origin, b.Spacing)); off > 1.0/16 && b.Spacing == first.Spacing {
			faults = append(faults, b.layoutFault(first))
		}
	}
	if first != nil {
		return faults
	}
	m.origin = m.sides[0].body.start(m.sides[0].side)
	for _, p := range m.sides {
		if p.hipFace() {
			m.origin = p.body.hipMiddle(p.side)
			break
		}
	}
	return nil
}

// layoutFault tells that the layout of b is not that of another body.
func (b *Body) layoutFault(o *Body) Fault {
	return Fault{
		b, "rafter-layouts-differ",
		"the layout of roof " + b.Name + " is not that of roof " + o.Name + ", and rafters of both meet at one ridge or lie in one plane",
		"leave layout out of one of them",
	}
}

// hipFace tells whether p is the face of a hip end, whose eave runs square to
// the ridge.
func (p facet) hipFace() bool {
	_, ends := eaves(p.body.Axis)
	return slices.Contains(ends[:], p.side)
}

// hipMiddle returns the place along the eave of side i, a hip end, of the
// rafter in the ridge's own line.
func (b *Body) hipMiddle(i int) float64 {
	e, _ := b.ridgeEnd(i)
	if low, shed := b.lowSide(); shed {
		e = e.Sub(outward[low].Mul(clearOfHip))
	}
	return (&Face{Plane: b.Plane(i)}).across(e)
}

// low returns the coordinate of the low end of the axis.
func (b *Body) low() float64 {
	if b.Axis == plan.AxisY {
		return b.Lo.Y
	}
	return b.Lo.X
}

// start returns where the module of side i would be counted from were the
// body alone: at the end of the ridge at a hip, else at the outside face of a
// gable, the low end first.
func (b *Body) start(i int) float64 {
	ends := endsOf(i)
	if b.fromHigh(i) {
		ends[0], ends[1] = ends[1], ends[0]
	}
	end := ends[0]
	if first := b.Sides[end]; first.RunsIn && first.Slope == 0 {
		end = ends[1]
	}
	switch {
	case b.Sloped(end):
		return b.hipEnd(end)
	case end == South || end == West:
		return -b.edge(end)
	}
	return b.edge(end)
}

// fromHigh tells whether what runs along the eave of side i is counted from its high end.
func (b *Body) fromHigh(i int) bool {
	if i == South || i == North {
		return b.Lay.Reversed(plan.AxisX)
	}
	return b.Lay.Reversed(plan.AxisY)
}

// between returns the places of the module from lo to hi.
func (m *module) between(lo, hi float64) (out []station) {
	for _, s := range m.fixed {
		if s >= lo-geom.Eps && s <= hi+geom.Eps {
			out = append(out, station{at: s, fixed: true})
		}
	}
	for i, z := range m.zones {
		for k := math.Ceil((max(lo, z.lo) - z.origin - geom.Eps) / z.spacing); ; k++ {
			s := z.origin + k*z.spacing
			if s > min(hi, z.hi)+geom.Eps {
				break
			}
			if !slices.ContainsFunc(m.zones[:i], func(o zone) bool { return o.lo-geom.Eps <= s && s <= o.hi+geom.Eps }) {
				out = append(out, station{at: s})
			}
		}
	}
	return out
}
