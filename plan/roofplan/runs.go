package roofplan

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// RunKind is the kind of a rafter by what it runs between.
type RunKind string

// The kinds of rafters.
const (
	Common     RunKind = "common"       // from the eave to the ridge
	HipJack    RunKind = "hip jack"     // from the eave to a hip
	ValleyJack RunKind = "valley jack"  // from a valley to the ridge
	Cripple    RunKind = "cripple jack" // from a valley to a hip, or between valleys
)

// End is what a rafter meets at an end.
type End struct {
	Kind EdgeKind // Eave, Ridge, Hip, Valley or Wall
	Line *Line    // the ridge, hip or valley; nil at an eave, a wall or the top of a shed
}

// Run is the line of one rafter on plan.
type Run struct {
	Face      *Face
	Kind      RunKind
	Station   float64   // along the eave: x on south and north faces, y on others
	Low, High geom.Vec2 // plan points of its ends
	LowEnd    End
	HighEnd   End
	Flush     bool // the rafter over a gable end wall
}

// Length returns the true length of the run's line, in: plan length over the
// cosine of the slope.
func (r *Run) Length() float64 {
	m := r.Face.Slope()
	return r.High.Sub(r.Low).Len() * math.Sqrt(1+m*m)
}

// across returns the coordinate of p along the eave of a face.
func (f *Face) across(p geom.Vec2) float64 {
	if f.Plane.G.X == 0 {
		return p.X
	}
	return p.Y
}

// Runs returns the rafter lines of all faces, in order of face and station.
func (r *Roof) Runs() (out []*Run) {
	for _, f := range r.Faces {
		for _, s := range f.stations() {
			for _, run := range r.RunsAt(f, s.at) {
				run.Flush = s.flush
				out = append(out, run)
			}
		}
	}
	return out
}

// station is a place for a rafter; the ones that must stand where they are
// win over the ones of the module.
type station struct {
	at           float64
	fixed, flush bool
}

// stations lays out the rafters of f. A gable end has one flush with the
// outside face of its wall, and the module is counted from the low end's
// outside face. At a hip end the module is counted from the end of the
// ridge, both ways, so that the jacks on both sides of the hip pair; on the
// hip's own face it is counted from the ridge. Module rafters that would
// stand in a fixed one are dropped.
func (f *Face) stations() []station {
	all := f.layouts()
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range f.Outline {
		lo, hi = min(lo, f.across(p)), max(hi, f.across(p))
	}
	var out []station
	for _, s := range all {
		clash := slices.ContainsFunc(out, func(o station) bool {
			return math.Abs(o.at-s.at) < f.Body.Thick-geom.Eps
		})
		if !clash && s.at > lo && s.at < hi {
			out = append(out, s)
		}
	}
	slices.SortFunc(out, func(a, b station) int { return cmp.Compare(a.at, b.at) })
	return out
}

// layouts returns the places that each side of the face asks for, the fixed
// ones first; of two sides that reach over the same length the first lays out
// its module.
func (f *Face) layouts() (all []station) {
	var taken [][2]float64
	for _, p := range f.parts {
		lo, hi := p.reach()
		for _, s := range p.layout(lo, hi) {
			held := slices.ContainsFunc(taken, func(t [2]float64) bool { return t[0] < s.at && s.at < t[1] })
			if s.fixed || !held {
				all = append(all, s)
			}
		}
		taken = append(taken, [2]float64{lo, hi})
	}
	slices.SortStableFunc(all, func(a, b station) int {
		if a.fixed != b.fixed {
			if a.fixed {
				return -1
			}
			return 1
		}
		return cmp.Compare(a.at, b.at)
	})
	return all
}

// reach returns the extent of side p along its eave: between the walls at
// its ends, or on to where the roof runs into another.
func (p facet) reach() (lo, hi float64) {
	b, f := p.body, &Face{Plane: p.body.Plane(p.side)}
	lo, hi = f.across(b.Lo), f.across(b.Hi)
	low, high := endsOf(p.side)[0], endsOf(p.side)[1]
	for _, poly := range p.polys {
		for _, q := range poly {
			if b.Sides[low].RunsIn {
				lo = min(lo, f.across(q))
			}
			if b.Sides[high].RunsIn {
				hi = max(hi, f.across(q))
			}
		}
	}
	return lo, hi
}

// layout lays out the rafters over one side of a body between lo and hi.
func (p facet) layout(lo, hi float64) (out []station) {
	b := p.body
	origin, ends := b.origin(p)
	for _, e := range ends {
		if e.fixed {
			out = append(out, e)
		}
	}
	for k := math.Ceil((lo - origin[0]) / b.Spacing); ; k++ {
		s := origin[0] + k*b.Spacing
		if s > min(origin[1], hi) {
			break
		}
		out = append(out, station{at: s})
	}
	for s := origin[1] + b.Spacing; s < hi; s += b.Spacing {
		out = append(out, station{at: s})
	}
	return out
}

// origin returns where the module of side p.side is counted from: upwards
// and downwards from the first place as far as the second, and upwards from
// the second. The ends are the fixed rafters.
func (b *Body) origin(p facet) (from [2]float64, ends [2]station) {
	sides, along := eaves(b.Axis)
	if slices.Contains(along[:], p.side) { // a hip's own face
		e, _ := b.ridgeEnd(p.side)
		c := (&Face{Plane: b.Plane(p.side)}).across(e)
		return [2]float64{c, math.Inf(1)}, [2]station{{at: c, fixed: true}}
	}
	lo, hi := b.Lo.X, b.Hi.X
	if b.Axis == plan.AxisY {
		lo, hi = b.Lo.Y, b.Hi.Y
	}
	if !b.Sloped(sides[0]) || !b.Sloped(sides[1]) { // shed
		along = endsOf(p.side)
		lo, hi = -b.edge(along[0]), b.edge(along[1])
	}
	half := b.Thick / 2
	from = [2]float64{lo, math.Inf(1)}
	low, high := b.Sides[along[0]], b.Sides[along[1]]
	switch {
	case low.Slope > 0:
		from[0] = b.hipEnd(along[0])
		ends[0] = station{at: from[0], fixed: true}
	case low.RunsIn:
		from[0] = hi
	default:
		ends[0] = station{at: lo + half, fixed: true, flush: true}
	}
	switch {
	case high.Slope > 0:
		from[1] = b.hipEnd(along[1])
		ends[1] = station{at: from[1], fixed: true}
	case high.RunsIn:
	default:
		ends[1] = station{at: hi - half, fixed: true, flush: true}
	}
	return from, ends
}

// endsOf returns the two sides next to side low, low coordinate first.
func endsOf(low int) [2]int {
	if low == South || low == North {
		return [2]int{West, East}
	}
	return [2]int{South, North}
}

// hipEnd returns the coordinate along the axis of the ridge's end at the
// hip end e.
func (b *Body) hipEnd(e int) float64 {
	p, z := b.ridgeEnd(e)
	in := (z - b.Plane(e).At(p)) / b.Sides[e].Slope
	q := p.Sub(outward[e].Mul(in))
	if b.Axis == plan.AxisY {
		return q.Y
	}
	return q.X
}

// kindOf names a run by what it meets; a tail that dies in a valley outside
// the wall's face counts as an eave.
func (run *Run) kindOf() RunKind {
	low := run.LowEnd.Kind
	if low == Valley && run.Outside() {
		low = Eave
	}
	switch {
	case low != Valley && run.HighEnd.Kind == Hip:
		return HipJack
	case low != Valley:
		return Common
	case run.HighEnd.Kind == Hip || run.HighEnd.Kind == Valley:
		return Cripple
	}
	return ValleyJack
}

// Outside tells whether the low end lies outside the outside face of the
// wall on the low side of one of the bodies that make the face.
func (run *Run) Outside() bool {
	_, b, _ := run.Bearing()
	return b != nil
}

// Bearing returns the plan point where the run crosses the outside face of
// the wall on the low side of a body, with the body and the side; the body
// is nil when it crosses none.
func (run *Run) Bearing() (p geom.Vec2, b *Body, side int) {
	for _, part := range run.Face.parts {
		lo, hi := part.body.On(part.side, run.Low), part.body.On(part.side, run.High)
		if lo >= -snap && hi < 0 && part.body.beside(part.side, run.Low) {
			return run.Low.Add(run.Face.Uphill().Mul(lo)), part.body, part.side
		}
	}
	return p, nil, 0
}

// beside tells whether p lies between the two sides next to side i.
func (b *Body) beside(i int, p geom.Vec2) bool {
	return b.On((i+1)%4, p) <= geom.Eps && b.On((i+3)%4, p) <= geom.Eps
}
