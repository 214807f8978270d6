package loadpath

import (
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/placement"
	"galewright/plan/steel"
)

// landing is where the tension of a segment's end goes into the girder below, in
// plan, and the girders that its rod passes or its strap is nailed to: by the
// pieces at the end, or at the foot of the posts under it. Where none reaches a
// girder it is the middle of the end post, and no girder.
func (a *analysis) landing(s *Segment, i, ax int) (at geom.Vec2, girders []*framing.Member) {
	for j, n := s.ends[i], 0; j != nil && n < len(a.plan.Levels)+1; j, n = a.below(j), n+1 {
		for _, p := range a.placed.At(j) {
			if list := girdersOf(a.steel.Body(p)); len(list) > 0 && (p.Rod != nil || len(p.Bands) > 0) {
				return middleIn(p), list
			}
		}
	}
	at = s.Wall.Frame().At(0, s.Wall.Depth()/2, 0).Flat()
	if post := s.postAt(i, ax); ax == 0 {
		at.X = post
	} else {
		at.Y = post
	}
	return at, nil
}

// below returns the joint under a wall-end joint or the foot of an upright: its
// own foot, then that of the post it stands on; nil at the bottom.
func (a *analysis) below(j *framing.Joint) *framing.Joint {
	foot := a.footOf[j.First()]
	if foot == j && j.Below && len(j.Members) > 1 {
		foot = a.footOf[j.Members[1]]
	}
	if foot == j {
		return nil
	}
	return foot
}

// girdersOf returns the girders that a body's fasteners are in and its rods pass.
func girdersOf(b *steel.Body) (out []*framing.Member) {
	if b == nil {
		return nil
	}
	out = b.Members()
	for _, r := range b.Rods {
		for _, x := range r.Passes {
			out = append(out, x.Member)
		}
	}
	return slices.DeleteFunc(out, func(m *framing.Member) bool { return m.Role != plan.GirderBeam })
}

// middleIn is where a piece is in plan: at its rod, or the middle of its first band.
func middleIn(p *placement.Piece) geom.Vec2 {
	if p.Rod != nil {
		return p.Rod.A.Flat()
	}
	return middlePoint(p.Bands[0]).Flat()
}
