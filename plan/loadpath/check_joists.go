package loadpath

import (
	"fmt"
	"math"

	"galewright/plan/capacity"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// joistsCheck is the ID of the check of joists at the girders that they lie on, upperJoists
// that of joists at plates and beams.
const (
	joistsCheck = "joist-girder-uplift"
	upperJoists = "joist-uplift"
)

// joistsDoc and upperDoc say what the checks look at and what they leave out.
const (
	joistsDoc = "where walls stand on joists and no girder lies under them: what lifts the joints of joists, and of rims that run with them, to girders: the uplift of studs' feet by the rim to the joists on both sides and along those, past the last girder by lever; of feet that press on a joist past its last girder, the lever that lifts the next girder's joint, dead load whole (D + 0.6 W, or D alone); with the end couple of shear walls in its own worst case. Parts that press relieve nothing, nor does the floor's weight. Against the pieces there. The joists themselves in bending and shear are not checked, nor what ties the rim to them beyond the lift test"
	upperDoc  = "where walls of an upper story stand on joists off the walls below: what lifts the joints of joists, and of rims that run with them, to the plates and beams that carry them: the uplift of studs' feet by the rim to the joists on both sides and along those, past the last bearing by lever; of feet that press on a joist past it, the lever that lifts the inner end, dead load whole (D + 0.6 W, or D alone); with the end couple of shear walls in its own worst case. Parts that press relieve nothing, nor does the floor's weight. To the walls below goes what comes to them by statics, upward and downward, less what the lever takes off their dead load; of shear wall ends nothing goes on. The joists in bending and shear are not checked"
)

// coupleAt is what one end of a shear wall asks of the joists that it stands on.
type coupleAt struct {
	segment *SegmentShear
	at      geom.Vec2
	asd     float64
	upper   bool // on an upper floor
}

// couplesOnJoists lists the ends of shear walls that stand on joists.
func (a *analysis) couplesOnJoists() (out []coupleAt) {
	for _, x := range a.lateral.lines {
		for _, s := range x.Segments {
			for i := range s.ends {
				if c, ok := a.coupleOn(s, i, x.Axis); ok {
					out = append(out, c)
				}
			}
		}
	}
	return out
}

// coupleOn is that of one end; false where it stands on no joists.
func (a *analysis) coupleOn(s *SegmentShear, i, ax int) (c coupleAt, ok bool) {
	lb := ASD.W * s.Lifts
	if !s.base || s.stacked || lb <= least || a.floors[s.Wall.Level] == nil || a.onConcrete(s.ends[i]) {
		return c, false
	}
	v, girders := a.landing(s.Segment, i, ax)
	if s.Wall.Level.Index > 0 {
		foot := a.footOf[s.ends[i].First()]
		return coupleAt{s, v, lb, true}, foot != nil && a.onJoists(foot)
	}
	return coupleAt{s, v, lb + ASD.W*a.floorCouple(s), false}, a.offGirders(v, halfOf(s.Wall), girders)
}

// joistLinks makes the links of the joints that walls on joists lift.
type joistLinks struct {
	*analysis
	check *Check
	by    map[*framing.Joint]*Link
	tips  map[*framing.Joint]bool // of a joist that turns about it
	bare  []*Link
}

// joistsLifted checks what ties joists to what carries them where walls stand off that,
// of the lowest floor or of those above it.
func joistsLifted(upper bool) func(*Check, *analysis) []*Link {
	return func(c *Check, a *analysis) (out []*Link) {
		t := &joistLinks{a, c, map[*framing.Joint]*Link{}, map[*framing.Joint]bool{}, nil}
		for _, j := range a.house.Joints {
			if p := a.joists[j]; p != nil && upper == (j.First().Level.Index > 0) {
				t.feet(j, p)
			}
		}
		t.ends(upper)
		t.unborne(upper)
		for _, j := range a.house.Joints {
			if l := t.by[j]; l != nil && l.Demand > least {
				out = append(out, t.closed(l))
			}
		}
		return append(out, t.bare...)
	}
}

// link is that of a joint, made when first asked for.
func (t *joistLinks) link(j *framing.Joint) *Link {
	if t.by[j] == nil {
		t.by[j] = &Link{Check: t.check, ID: j.ID, Joint: j, Wall: j.Wall, Host: j.HostName(), Where: whereOf(t.u, j), Unit: "lb", Case: "shear wall ends, each in its own worst case"}
	}
	return t.by[j]
}

// feet adds what the feet of studs lift.
func (t *joistLinks) feet(j *framing.Joint, p *joistPeak) {
	l := t.link(j)
	l.Demand, l.Strength, l.Case = p.asd, p.str, p.wind
	for _, x := range p.parts {
		lb := x.force.times(x.k).net(ASD)
		l.Terms = append(l.Terms, Term{t.u.Sprintf("%.3f of %.0f lb at %s, ASD", x.k, lb/x.k, x.foot.ID), lb, "lb"})
		t.notesTip(j, x.foot.At.Flat())
	}
}

// ends adds the couples of shear walls, of which either end may pull or press.
func (t *joistLinks) ends(upper bool) {
	for _, c := range t.couplesOnJoists() {
		if c.upper != upper {
			continue
		}
		parts, _ := t.floors[c.segment.Wall.Level].share(c.at)
		for _, x := range parts {
			l, lb := t.link(x.joint), math.Abs(x.k)*c.asd
			l.Demand, l.Strength = l.Demand+lb, l.Strength+lb/ASD.W
			l.Terms = append(l.Terms, Term{t.u.Sprintf("%.3f of %.0f lb at the end of %s, pulled or pressed, ASD", math.Abs(x.k), c.asd, c.segment.Name), lb, "lb"})
			t.notesTip(x.joint, c.at)
		}
	}
}

// notesTip notes a joint that is the only one of a joist which a force stands off.
func (t *joistLinks) notesTip(j *framing.Joint, v geom.Vec2) {
	f := t.floors[j.First().Level]
	for _, x := range f.lines {
		if x.joints[0].First() == j.First() && x.tips(axis(v, f.along)) {
			t.tips[j] = true
		}
	}
}

// unborne tells the feet that no joist carries.
func (t *joistLinks) unborne(upper bool) {
	for _, p := range t.paths {
		for _, c := range p.carriers {
			if j := c.base; j != nil && (p.w.Level.Index > 0) == upper && t.onJoists(j) && len(c.joists) == 0 && t.peaks[j] != nil && t.peaks[j].demand > least {
				l := t.upliftLink(t.check, j)
				l.Capacity, l.Ratio, l.Gap = nil, math.Inf(1), "no joist with a joint to what carries it lies under this foot: nothing brings its uplift down"
				t.bare = append(t.bare, l)
			}
		}
	}
}

// closed compares a link with the pieces at its joint.
func (t *joistLinks) closed(l *Link) *Link {
	l.Terms = append(l.Terms, Term{"together, nothing relieved", l.Demand, "lb"})
	l.close(t.allowed.At(l.Joint, capacity.Upward))
	if t.tips[l.Joint] {
		l.Capacity, l.Ratio = nil, math.Inf(1)
		l.Gap = fmt.Sprintf("joist %s has no joint but this one, and what it carries stands off it: nothing holds its other end against the lever", l.Joint.First().ID)
	}
	return l
}
