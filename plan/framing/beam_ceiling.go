package framing

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// ceilingBeams adds the beams that ceiling joists hang on, their tops level with those
// of the joists.
func (b *builder) ceilingBeams() {
	for _, x := range b.hangingLast(func(x *plan.FloorBeam) bool { return x.Set == plan.SetFlush }) {
		next := b.plan.Above(x.Level)
		if next != nil && next.Joists.Depth > 0 {
			continue
		}
		r := b.ceilingOver(x)
		if r == nil {
			continue
		}
		b.flushIn[x] = true
		joists := ceilingLumber(r).Depth
		fb := newBeam(x, plan.FlushBeam, x.Level, x.Level.Top()+joists)
		if x.Member.Depth < joists-sixteenth {
			b.beamFault(x, "beam-shallow", fmt.Sprintf("beam %s is %s deep and the joists that hang on it %s", x.Name, b.inches(x.Member.Depth), b.inches(joists)), "take a beam as deep as the joists or deeper, or set it dropped")
			continue
		}
		if math.Abs(fb.Frame.D.Along(1-r.RidgeAxis())) > squareOff {
			b.beamFault(x, "beam-off-square", fmt.Sprintf("beam %s is to be flush with the ceiling joists of roof %s and does not lie square across them", x.Name, r.Name), "turn it, or set it dropped")
			continue
		}
		if x.Member.Depth > joists+sixteenth {
			b.cutToWalls(fb)
		}
		b.layBeam(fb)
	}
}

// ceilingOver returns the roof whose ceiling joists run over a beam.
func (b *builder) ceilingOver(x *plan.FloorBeam) *plan.Roof {
	mid := x.From.Add(x.To).Mul(0.5)
	for _, r := range b.plan.Roofs {
		lo, hi := r.Area[0], r.Area[1]
		if r.Over == x.Level && r.CeilingTies && !r.Trusses && r.Kind != plan.ShedRoof && lo.X <= mid.X && mid.X <= hi.X && lo.Y <= mid.Y && mid.Y <= hi.Y {
			return r
		}
	}
	return nil
}

// tieBeams returns the beams between the ends of a joist that carry it, in order: the
// dropped ones that its foot lies on, and the flush ones in its way.
func (f *roofFrame) tieBeams(r bar, length float64) (out []TieBeam) {
	line := body{geom.Frame{Origin: r.at.Sub(r.dir.Left().Mul(r.half)), D: r.dir, In: r.dir.Left()}, 0, length, 2 * r.half}
	for _, fb := range f.beams {
		level := fb.top
		if fb.role == plan.FlushBeam {
			level = fb.top - r.depth
		}
		if fb.Carries != nil || math.Abs(level-(r.top-r.depth)) > sixteenth || !geom.Crosses(fb.Frame.D, r.dir) {
			continue
		}
		lo, hi, ok := line.crossing(fb.body)
		if !ok || lo < near || hi > length-near {
			continue
		}
		s, _ := fb.body.f.Local(r.at.Add(r.dir.Mul((lo + hi) / 2)))
		out = append(out, TieBeam{fb.Beam, s, (lo + hi) / 2})
	}
	slices.SortFunc(out, func(a, b TieBeam) int { return cmp.Compare(a.Along, b.Along) })
	return out
}

// bearings are the places over which a joist may break: bearing walls and dropped beams.
func (t *Tie) bearings() (out []float64) {
	for _, w := range t.Walls {
		out = append(out, w.Along)
	}
	for _, x := range t.Beams {
		if x.Beam.Set != plan.SetFlush {
			out = append(out, x.Along)
		}
	}
	slices.Sort(out)
	return out
}

// hungRuns are the parts of a joist between its ends and the faces of the flush beams
// that it hangs on; one where there is none.
func (t *Tie) hungRuns(length float64) []span {
	runs := []span{{0, length}}
	for _, x := range t.Beams {
		if x.Beam.Set == plan.SetFlush {
			half := x.Beam.Member.Width() / 2
			runs = without(runs, span{x.Along - half, x.Along + half})
		}
	}
	return runs
}

// hungTie adds the joist of a pair in the parts that hang on flush beams, each in one
// length.
func (f *roofFrame) hungTie(p tiePair, t *Tie, r bar, id string, planes []geom.Plane, runs []span) bool {
	long := false
	var pieces [][]geom.Solid
	for _, s := range runs {
		parts := r.cut(s.lo, s.hi, planes, nil)
		if len(parts) == 0 || !f.clear(parts) {
			return false
		}
		pieces = append(pieces, parts)
		long = long || s.hi-s.lo > longest(f.plan)+geom.Eps
	}
	for i, parts := range pieces {
		t.Pieces = append(t.Pieces, f.tieStick(p.rb, id, r, parts, runs[i].lo, runs[i].hi))
	}
	f.house.Ties = append(f.house.Ties, t)
	if long {
		f.tooLong(t)
	}
	return true
}
