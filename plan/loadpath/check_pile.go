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
	lb      float64 // ASD
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
			for i, station := range []float64{s.Shear.From, s.Shear.To} {
				if a.onConcrete(s.ends[i]) {
					continue
				}
				p := s.Wall.Frame().At(station, s.Wall.Depth()/2, 0).Flat()
				sense := 0
				if math.Abs(axis(p, x.Axis)-s.Hi) < 1 {
					sense = 1
				}
				for _, g := range a.piles.at(p) {
					out = append(out, pilePull{g.pile.joint, s, []string{"low", "high"}[sense], x.Axis, sense, g.k, lb * g.k})
				}
			}
		}
	}
	return out
}

// onConcrete tells whether a segment's end stands on a sill plate on concrete: its
// tension goes into that, not over girders to piles or piers.
func (a *analysis) onConcrete(j *framing.Joint) bool {
	if j == nil || j.First() == nil {
		return false
	}
	foot := a.footOf[j.First()]
	return foot != nil && slices.ContainsFunc(foot.Members, func(m *framing.Member) bool { return m.Role == plan.SillPlate })
}

// overturnedPiles adds up what each pile is asked for.
func (a *analysis) overturnedPiles() map[*framing.Joint]overturned {
	out := map[*framing.Joint]overturned{}
	for _, p := range a.pilePulls() {
		o := out[p.joint]
		o[p.axis][p.sense] += p.lb
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
