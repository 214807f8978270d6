package loadpath

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/capacity"
	"galewright/plan/framing"
)

// overturned is the tension that the ends of the lowest shear walls bring to
// one pile, lb ASD, by the axis the wind blows along and its sense.
type overturned [2][2]float64

// most returns the largest of the four and the wind it belongs to. Where the
// directional procedure is used, 0.75 of the largest of both axes together may
// be more: its case 3, ASCE 7-10 Fig. 27.4-8 (read). A pile under a corner
// stands under walls of both directions.
func (o overturned) most(directional bool) (lb float64, wind string) {
	var best [2]float64
	for ax, row := range o {
		for i, f := range row {
			best[ax] = math.Max(best[ax], f)
			if f > lb {
				lb, wind = f, "wind from "+string(sides[ax][i])
			}
		}
	}
	if both := 0.75 * (best[0] + best[1]); directional && both > lb {
		return both, "wind on both axes, 0.75 of each (case 3)"
	}
	return lb, wind
}

// pilePull is what one end of a segment brings to one pile.
type pilePull struct {
	joint   *framing.Joint
	segment *SegmentShear
	end     string // "low" or "high", by coordinate
	axis    int
	sense   int
	k       float64 // the pile's share
	lb      float64 // ASD, the couple of the shear down to the girder's middle included
}

// pilePulls brings the end tension of the segments that stand on the lowest
// floor, or on no other segment, straight down to the piles. Wind toward
// growing coordinates lifts the low end of a segment, and the other way
// round; of both ends of a segment only one pulls at a time. Weight relieves
// nothing here: what reaches the pile is in the pile's own uplift already and
// counts once.
func (a *analysis) pilePulls() (out []pilePull) {
	for _, x := range a.lateral.lines {
		for _, s := range x.Segments {
			lb := ASD.W * s.Lifts
			if !s.base || s.stacked || lb <= least {
				continue
			}
			couple := ASD.W * a.floorCouple(s)
			for i := range s.ends {
				if !a.onConcrete(s.ends[i]) {
					out = append(out, a.pullsOf(x.Axis, s, i, lb, couple)...)
				}
			}
		}
	}
	return out
}

// pullsOf brings the tension lb of one end of a segment to the piles, and with
// it the couple of its shear.
func (a *analysis) pullsOf(ax int, s *SegmentShear, i int, lb, couple float64) (out []pilePull) {
	sense := 0
	if s.edgeOf(i, ax) > s.edgeOf(1-i, ax) {
		sense = 1
	}
	at, girders := a.landing(s.Segment, i, ax)
	for _, g := range a.piles.under(at, girders) {
		out = append(out, pilePull{g.pile.joint, s, []string{"low", "high"}[sense], ax, sense, g.k, (lb + couple) * g.k})
	}
	return out
}

// floorCouple is the tension that the shear of a segment on the lowest floor adds
// at its ends on the way from the sole plate down to the middle of the girder,
// lb at strength level. Where rim and joists spread it along the line it is less.
func (a *analysis) floorCouple(s *SegmentShear) float64 {
	if s.Wall.Level.Index > 0 || s.arm() <= 0 {
		return 0
	}
	deep := 0.0
	for _, g := range a.piles.girders {
		deep = math.Max(deep, g.g.Member.Depth)
	}
	return s.V * (s.depth + deep/2) / s.arm()
}

// onConcrete tells whether a segment's end stands on a sill plate on concrete: its
// tension goes into that, not over girders to piles or piers.
func (a *analysis) onConcrete(j *framing.Joint) bool {
	if j == nil || j.First() == nil {
		return false
	}
	foot := a.footOf[j.First()]
	return foot != nil && onSill(foot)
}

// onSill tells whether a foot stands on a sill plate on concrete.
func onSill(foot *framing.Joint) bool {
	return slices.ContainsFunc(foot.Members, func(m *framing.Member) bool { return m.Role == plan.SillPlate })
}

// overturnedPiles adds up what each pile is asked for; a pile that an end past the
// last one presses down is not relieved by that.
func (a *analysis) overturnedPiles() map[*framing.Joint]overturned {
	out := map[*framing.Joint]overturned{}
	for _, p := range a.pilePulls() {
		o := out[p.joint]
		o[p.axis][p.sense] += math.Max(0, p.lb)
		out[p.joint] = o
	}
	return out
}

// overturnedAtPiles checks the piles under shear wall ends: the uplift of
// their worst case and the end tension of one direction of wind.
func overturnedAtPiles(c *Check, a *analysis) (out []*Link) {
	pulls := a.overturnedPiles()
	for _, j := range a.house.Joints {
		o, ok := pulls[j]
		if !ok || a.peaks[j] == nil {
			continue
		}
		lb, wind := o.most(a.choice.Has(plan.Directional))
		l := a.upliftLink(c, j)
		up := a.peaks[j].demand
		l.Case = wind + " for the wall ends; " + l.Case + " for uplift"
		l.Demand = math.Max(0, lb+up)
		l.Strength = math.Max(0, lb/ASD.W+l.Force.net(Strength))
		l.Terms = append(l.Terms,
			Term{fmt.Sprintf("0.6 of the end tension that shear walls bring here, not relieved (all dead load is in the uplift), %s", wind), lb, "lb"},
			Term{"both, uplift and end tension each in its own worst case", lb + up, "lb"})
		l.close(a.allowed.At(j, capacity.Upward))
		out = append(out, l)
	}
	return out
}
