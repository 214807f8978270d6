package loadpath

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/capacity"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// joistsCheck is the ID of the check of joists at the girders that they lie on.
const joistsCheck = "joist-girder-uplift"

// joistsDoc says what the check looks at and what it leaves out.
const joistsDoc = "where walls stand on joists and no girder lies under them: the uplift of each stud's foot and the end tension of shear walls there, each in its own worst case, by the rim to the joists on both sides and along those, past the last girder by lever, to the girders; dead load of the floor relieves nothing, and what presses another girder down relieves none. Against the pieces there. The joists themselves in bending and shear are not checked, nor what ties the rim to them beyond the lift test"

// overGirder is one joist with its joints to girders, in order along it.
type overGirder struct {
	at     float64 // its place across the joists, in
	lo, hi float64 // from where to where it goes
	joints []*framing.Joint
	s      []float64 // of the joints, along it
}

// joistRim is how far past a joist's end a wall may stand that the rim brings to it, in.
const joistRim = 6

// liesOver tells whether a joint ties a joist to a girder, or a rim that runs with the joists.
func (a *analysis) liesOver(j *framing.Joint) bool {
	if len(j.Members) < 2 || j.Members[1] == nil || j.Members[1].Role != plan.GirderBeam {
		return false
	}
	m := j.First()
	return j.Kind == plan.JoistGirder || j.Kind == plan.RimGirder && m.B.Sub(m.A).Flat().Unit().Leans(a.piles.joists)
}

// joistLines returns the joists that lie on girders, and the rims that run with them, in
// order across them.
func (a *analysis) joistLines() []*overGirder {
	along := a.piles.joists
	by := map[*framing.Member]*overGirder{}
	var out []*overGirder
	for _, j := range a.house.Joints {
		if !a.liesOver(j) {
			continue
		}
		m := j.First()
		if by[m] == nil {
			p, q := axis(m.A.Flat(), along), axis(m.B.Flat(), along)
			by[m] = &overGirder{at: axis(m.A.Flat(), 1-along), lo: math.Min(p, q), hi: math.Max(p, q)}
			out = append(out, by[m])
		}
		by[m].joints = append(by[m].joints, j)
	}
	slices.SortStableFunc(out, func(x, y *overGirder) int { return cmp.Or(cmp.Compare(x.at, y.at), cmp.Compare(x.lo, y.lo)) })
	for _, x := range out {
		slices.SortStableFunc(x.joints, func(p, q *framing.Joint) int { return cmp.Compare(axis(p.At.Flat(), along), axis(q.At.Flat(), along)) })
		for _, j := range x.joints {
			x.s = append(x.s, axis(j.At.Flat(), along))
		}
	}
	return out
}

// joistPart is the share of a force at a joist's joint to a girder.
type joistPart struct {
	joint *framing.Joint
	k     float64
}

// overTheJoists shares a force at plan point v, under which no girder lies, out to the joints
// of joists and girders: by the rim to the joists on both sides, along each to its girders.
func (a *analysis) overTheJoists(v geom.Vec2, lines []*overGirder) (out []joistPart) {
	along := a.piles.joists
	s, t := axis(v, along), axis(v, 1-along)
	var near []*overGirder
	var at []float64
	for _, x := range lines {
		if s > x.lo-joistRim && s < x.hi+joistRim {
			near, at = append(near, x), append(at, x.at)
		}
	}
	for _, x := range lever(at, t) {
		line := near[x.i]
		for _, y := range lever(line.s, s) {
			if k := x.k * y.k; k > 0 {
				out = append(out, joistPart{line.joints[y.i], k})
			}
		}
	}
	return out
}

// lifted is what one foot or wall end asks of the floor under it.
type lifted struct {
	name     string
	at       geom.Vec2
	asd, str float64 // lb
}

// liftedOffGirders lists what pulls at the lowest floor where no girder lies.
func (a *analysis) liftedOffGirders() (out []lifted) {
	off := func(v geom.Vec2, half float64, members []*framing.Member) bool {
		return !a.piles.covers(v, half) && !slices.ContainsFunc(members, func(m *framing.Member) bool { return a.piles.byMember[m] != nil })
	}
	for _, j := range a.house.Joints {
		p := a.peaks[j]
		if j.Kind == plan.StudBase && p != nil && p.demand > least && !a.onConcrete(j) && j.Level != nil && j.Level.Index == 0 && off(j.At.Flat(), halfOf(j.Wall), j.Members) {
			out = append(out, lifted{j.ID, j.At.Flat(), p.demand, p.force.net(Strength)})
		}
	}
	for _, x := range a.lateral.lines {
		for _, s := range x.Segments {
			for i := range s.ends {
				lb := ASD.W * s.Lifts
				if !s.base || s.stacked || lb <= least || a.onConcrete(s.ends[i]) {
					continue
				}
				if v, girders := a.landing(s.Segment, i, x.Axis); off(v, halfOf(s.Wall), girders) {
					lb += ASD.W * a.floorCouple(s)
					out = append(out, lifted{fmt.Sprintf("the end of %s", s.Name), v, lb, lb / ASD.W})
				}
			}
		}
	}
	return out
}

// halfOf is half of a wall's depth, in; 0 where no wall is.
func halfOf(w *plan.Wall) float64 {
	if w == nil {
		return 0
	}
	return w.Depth() / 2
}

// joistsAtGirders checks what ties joists to the girders under them where walls stand off
// those.
func joistsAtGirders(c *Check, a *analysis) (out []*Link) {
	if len(a.piles.girders) == 0 {
		return nil
	}
	links := map[*framing.Joint]*Link{}
	lines := a.joistLines()
	for _, f := range a.liftedOffGirders() {
		for _, x := range a.overTheJoists(f.at, lines) {
			l := links[x.joint]
			if l == nil {
				j := x.joint
				l = &Link{Check: c, ID: j.ID, Joint: j, Host: j.HostName(), Where: whereOf(a.u, j), Unit: "lb", Case: "each foot and wall end in its own worst case"}
				links[j] = l
			}
			l.Demand += x.k * f.asd
			l.Strength += x.k * math.Max(0, f.str)
			l.Terms = append(l.Terms, Term{a.u.Sprintf("%.3f of %.0f lb at %s, ASD", x.k, f.asd, f.name), x.k * f.asd, "lb"})
		}
	}
	for _, j := range a.house.Joints {
		if l := links[j]; l != nil && l.Demand > least {
			l.Terms = append(l.Terms, Term{"together, nothing relieved", l.Demand, "lb"})
			l.close(a.allowed.At(j, capacity.Upward))
			out = append(out, l)
		}
	}
	return out
}
