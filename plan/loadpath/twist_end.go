package loadpath

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/lift"
)

// segment follows a segment's shear to its ends and through its bottom plate.
func (t *twister) segment(x *LineShear, g *SegmentShear) {
	if g.Trouble != "" {
		t.gap(x, g.Wall, g.Name, g.V, "shear of the segment", "its sheathing holds nothing that is known: %s", g.Trouble)
	}
	if !g.base {
		return // the wall goes on in the story below
	}
	for i := range g.ends {
		t.end(x, g, i)
	}
	t.sole(x, g)
	if x.Level.Index > 0 && !t.lands(x) {
		t.gap(x, g.Wall, g.Name+" over nothing", g.V, "shear of the segment",
			"no shear wall line stands below it along the same way, in line or beside it; mark segments in the story below")
	}
}

// lands tells whether some line of the story below takes a line's force.
func (t *twister) lands(x *LineShear) bool {
	return slices.ContainsFunc(t.a.lines, func(y *ShearLine) bool {
		return slices.ContainsFunc(y.uppers, func(u upper) bool { return u.line == x.ShearLine })
	})
}

// end finds what ties the post at one end of a segment down, by a piece that
// goes in for that, and of a segment that stands on no other whether that comes
// to the ground.
func (t *twister) end(x *LineShear, g *SegmentShear, i int) {
	net := g.Lifts - t.a.relief(g.Segment)/ASD.W
	if ASD.W*net <= least {
		return
	}
	id := fmt.Sprintf("%s, %s end", g.Name, []string{"first", "second"}[i])
	j := g.ends[i]
	if j == nil {
		t.gap(x, g.Wall, id, net, "end tension", "no post stands at this end; move the segment's end to a stud, or add one")
		return
	}
	switch on := t.anchors(j); {
	case len(on) == 0:
		t.gap(x, g.Wall, id, net, "end tension", "no hold-down or long strap ties the %s %s to what is below; place one at %s", j.First().Role, j.First().ID, t.a.u.Length(j.Station))
	case g.stacked: // the segment below is followed for itself
	case !slices.ContainsFunc(on, func(m *framing.Member) bool { return m == nil || t.reaches(m, anyMember, nil) }):
		t.gap(x, g.Wall, id, net, "end tension", "its hold-down or strap ties it to the %s %s, which nothing ties on to the ground; tie that to what is below it", on[0].Role, on[0].ID)
	}
}

// anyMember lets force go over every member.
func anyMember(*framing.Member) bool { return true }

// anchors returns what pieces for a segment's end tie its post to: members
// below it, nil for the ground.
func (t *twister) anchors(j *framing.Joint) (on []*framing.Member) {
	post := j.First()
	for _, at := range append([]*framing.Joint{j}, t.a.byFirst[post]...) {
		for _, p := range t.a.placed.At(at) {
			if !engineered(p) {
				continue
			}
			for _, e := range t.a.steel.Body(p).Ties() {
				if (e.A == post || e.B == post) && (e.B == nil || lift.Rank(other(e, post)) < lift.Rank(post)) {
					on = append(on, other(e, post))
				}
			}
		}
	}
	return on
}

// other returns the end of a tie that is not m.
func other(e lift.Tie, m *framing.Member) *framing.Member {
	if e.A == m {
		return e.B
	}
	return e.A
}

// reaches tells whether ties lead from a member to the ground or to one that
// stop asks for, over members that go may pass; it never climbs more than half
// a plate.
func (t *twister) reaches(from *framing.Member, pass, stop func(*framing.Member) bool) bool {
	seen := map[*framing.Member]bool{from: true}
	for todo := []*framing.Member{from}; len(todo) > 0; {
		m := todo[0]
		todo = todo[1:]
		if t.ground[m] || stop != nil && m != from && stop(m) {
			return true
		}
		for _, n := range t.next[m] {
			if !seen[n] && pass(n) && lift.Rank(n) <= lift.Rank(m)+0.5 {
				seen[n] = true
				todo = append(todo, n)
			}
		}
	}
	return false
}

// sole finds the bottom plates of a segment whose shear nothing takes: to what
// lies below, and on to the plates of the wall below or to the ground.
func (t *twister) sole(x *LineShear, g *SegmentShear) {
	for _, m := range t.a.house.In(g.Wall) {
		if m.Role != plan.BottomPlate && m.Role != plan.SillPlate || overlap(m.S0, m.S1, g.Shear.From, g.Shear.To) < 1 {
			continue
		}
		share := g.V * overlap(m.S0, m.S1, g.Shear.From, g.Shear.To) / math.Max(1, g.Length)
		below := slices.ContainsFunc(t.next[m], func(n *framing.Member) bool { return lies(n) && lift.Rank(n) < lift.Rank(m)-0.5 })
		switch {
		case !below && !t.ground[m]:
			t.gap(x, g.Wall, g.Name+", "+m.ID, share, "shear of the segment over this plate",
				"nothing fastens the %s to what is below; place anchor bolts or clips along the segment, or order its nailing", m.Role)
		case !t.reaches(m, lies, func(n *framing.Member) bool { return t.lower(x, n) }):
			t.gap(x, g.Wall, g.Name+", below "+m.ID, share, "shear of the segment over this plate",
				"its shear ends at the %s; fasten that to the plates, girder or sill below it", t.lowest(m).Role)
		}
	}
}

// lies tells whether a member lies, so that shear can go along and across it.
func lies(m *framing.Member) bool {
	switch m.Role {
	case plan.BottomPlate, plan.SillPlate, plan.TopPlate, plan.UpperPlate, plan.Rim, plan.Joist, plan.Blocking, plan.Ledger, plan.GirderBeam, plan.Beam, plan.Pile:
		return true
	}
	return false
}

// lower tells whether a member is a top plate of the story below a line.
func (t *twister) lower(x *LineShear, m *framing.Member) bool {
	return (m.Role == plan.TopPlate || m.Role == plan.UpperPlate) && m.Wall != nil && m.Wall.TopLevel().Index < x.Level.Index
}

// lowest returns the lowest member that ties lead to from a plate.
func (t *twister) lowest(from *framing.Member) *framing.Member {
	low := from
	t.reaches(from, func(m *framing.Member) bool {
		if lies(m) && lift.Rank(m) < lift.Rank(low) {
			low = m
		}
		return lies(m)
	}, nil)
	return low
}
