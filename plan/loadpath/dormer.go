package loadpath

import (
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/nailing"
)

// dormerSupport lets a valley board rest on a rafter below it, the end rafter of a shed
// dormer on the trimmer, and a plate of a dormer's walls, or such a rafter, on a stud: that
// hands on to the trimmer or header, or the plates of the wall, that
// it stands on. Studs hold in line: none bends.
func (b *builder) dormerSupport(j *framing.Joint, of *roofMembers) {
	s := of.strip[j.First()]
	if s == nil {
		return
	}
	if j.Kind == plan.BoardRafter || j.Kind == plan.DormerFoot {
		s.rest(support{on: of.strip[j.Members[1]], joint: j}, j.At.Flat())
		return
	}
	stud := j.Members[1]
	i := slices.IndexFunc(b.byFirst[stud], func(o *framing.Joint) bool { return o.Kind == plan.DormerFoot })
	if i < 0 {
		return
	}
	foot := b.byFirst[stud][i]
	below := foot.Members[1]
	e := support{joint: j, foot: foot, on: of.strip[below]}
	if w := below.Wall; w != nil && b.byWall[w] != nil {
		e.wall = b.byWall[w]
		e.station, _ = w.Frame().Local(j.At.Flat())
		e.station += w.Hook
	}
	s.rest(e, j.At.Flat())
}

// dormerUplift checks the joints of dormers below their rafters: by the pieces there, of a
// valley board without any by the ordered nails through it and the deck below.
func dormerUplift(c *Check, a *analysis) (out []*Link) {
	for _, j := range a.house.Joints {
		if j.Kind != plan.BoardRafter && j.Kind != plan.DormerTop && j.Kind != plan.DormerFoot || a.peaks[j] == nil {
			continue
		}
		l := a.upliftLink(c, j)
		if line := a.nails.Line(plan.BoardToRafter); j.Kind == plan.BoardRafter && line != nil && len(a.placed.At(j)) == 0 {
			a.boardNails(l, line)
		}
		out = append(out, l)
	}
	return out
}

// boardNails puts the nails of a valley board at a rafter, drawn out of it, in the place of
// pieces.
func (a *analysis) boardNails(l *Link, line *nailing.Line) {
	for _, s := range line.Spots {
		if s.Side != l.Joint.Members[0] || s.Main != l.Joint.Members[1] {
			continue
		}
		v, n := line.One(s, a.species), s.Nails(line.Order)
		l.Gap, l.Ratio = "", 0
		held := float64(n) * v.Pull
		c := &Capacity{Value: held, Source: "computed", NotMakers: true, Governs: line.Mark() + ": ordered nails drawn out of the rafter"}
		c.Terms = ofCapacity(Term{a.u.Sprintf("%d nails, each drawn out: %s", n, v.PullBy), held, "lb"})
		l.close(c)
		return
	}
}
