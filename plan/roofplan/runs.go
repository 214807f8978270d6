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

// Runs returns the rafter lines of all faces, in order of face and station as written.
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

// stations lays out the rafters of f by its module. A gable end has one flush
// with the outside face of its wall, a hip end one in the ridge's own line and
// a pair at the end of the ridge. Module rafters that would stand in one of
// these are dropped.
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
		if !clash && s.at > lo+geom.Eps && s.at < hi-geom.Eps {
			out = append(out, s)
		}
	}
	slices.SortFunc(out, func(a, b station) int { return cmp.Compare(a.at, b.at) })
	if f.Body.fromHigh(f.Side) {
		slices.Reverse(out)
	}
	return out
}

// layouts returns the places that each side of the face asks for, the fixed
// ones first.
func (f *Face) layouts() (all []station) {
	for _, p := range f.laid {
		all = append(all, p.flush()...)
		all = append(all, f.module.between(p.reach())...)
	}
	slices.SortStableFunc(all, func(a, b station) int {
		if a.fixed != b.fixed {
			if a.fixed {
				return -1
			}
			return 1
		}
		if f.Body.fromHigh(f.Side) {
			a, b = b, a
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

// flush returns the rafters over the gable walls at the ends of side p.
func (p facet) flush() (out []station) {
	if p.hipFace() {
		return nil
	}
	b, half := p.body, p.body.Thick/2
	ends := endsOf(p.side)
	for i, at := range [2]float64{-b.edge(ends[0]) + half, b.edge(ends[1]) - half} {
		if s := b.Sides[ends[i]]; s.Slope == 0 && !s.RunsIn {
			out = append(out, station{at: at, fixed: true, flush: true})
		}
	}
	return out
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
	q, _ := b.HighEnd(e)
	if _, shed := b.lowSide(); shed {
		q = q.Sub(outward[e].Mul(clearOfHip))
	}
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
	return
}

// beside tells whether p lies between the two sides next to side i.
func (b *Body) beside(i int, p geom.Vec2) bool {
	return b.On((i+1)%4, p) <= geom.Eps && b.On((i+3)%4, p) <= geom.Eps
}
