package loadpath

import (
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
)

// both is the part of the wind along each axis that acts at once in case 3 of the
// directional procedure, ASCE 7-10 Fig. 27.4-8 (read); bothWords names it.
const (
	both      = 0.75
	bothWords = "wind on both axes, 0.75 of each (case 3)"
)

// atOnce returns the largest force (lb) that wind along one axis, along the other or
// along both at once puts on one thing that takes the forces x and y of each;
// diagonal tells that the last is it. The envelope procedure has no such case.
func (m *model) atOnce(x, y float64) (lb float64, diagonal bool) {
	lb = max(x, y)
	if d := both * (x + y); d > lb && m.choice.Has(plan.Directional) {
		return d, true
	}
	return lb, false
}

// bothTerm is the term of both forces at once, for those who read the workings.
func (m *model) bothTerm(x, y float64) []Term {
	if !m.choice.Has(plan.Directional) {
		return nil
	}
	return []Term{{"0.75 of both together, wind on both axes (case 3, ASCE 7-10 Fig. 27.4-8, read)", both * (x + y), "lb"}}
}

// shared returns the segment of a line along the other axis, and which of its
// ends, whose post has studs of the post at an end of a segment: nailed together at
// a corner they are one; nil where there is none. Of several that of the largest
// end tension.
func (a *analysis) shared(x *LineShear, s *SegmentShear, i int) (other *SegmentShear, end int) {
	of := func(m *framing.Member) bool { return slices.Contains(s.posts[i], m) }
	for _, y := range a.lateral.lines {
		if y.Axis == x.Axis || y.Level != x.Level {
			continue
		}
		for _, t := range y.Segments {
			for k := range t.posts {
				if t.base && slices.ContainsFunc(t.posts[k], of) && (other == nil || t.Lifts > other.Lifts) {
					other, end = t, k
				}
			}
		}
	}
	return other, end
}
