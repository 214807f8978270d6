package detail

import (
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// twoMembers is any other joint: the member held down over the next one.
func twoMembers(it detailItem, reach float64) stack {
	upright := it.carrier()
	b0, d0 := it.section(0)
	b1, d1 := it.section(upright)
	s := stack{ref: it.Joint.At.Z, depth: max(d0, d1), bottom: -it.Joint.Gap}
	up, down := grainOf(it.member(0)), grainOf(it.member(upright))
	lo, hi := -it.Joint.Gap-reach, reach
	if down == alongU {
		lo = -it.Joint.Gap - d1
	}
	if up == alongU {
		hi = d0
	}
	s.layers = []layer{
		{name: it.memberName(0), v1: hi, t1: d0, front: up, side: crossOf(up), breadth: b0, lapped: true},
		{name: it.memberName(upright), v0: lo, v1: -it.Joint.Gap, t1: d1, front: down, side: crossOf(down), breadth: b1, lapped: true},
	}
	if up == alongU && down == alongV {
		s.center(it, upright)
	}
	for i := range s.layers {
		switch l := &s.layers[i]; {
		case l.front != alongU && i < 2:
			l.ragged = 1 - 2*i
		case l.breadth > 0:
			l.breadth = 0
		}
	}
	return s
}

// grainOf tells which way a member's grain runs as seen from the front.
func grainOf(m *framing.Member) grain {
	if m == nil {
		return alongU
	}
	if geom.Upright(m.B.Sub(m.A).Unit()) {
		return alongV
	}
	return alongU
}

// crossOf is a front's grain seen from the side.
func crossOf(g grain) grain {
	if g == alongU {
		return endGrain
	}
	return g
}

// carrier returns which member of the joint carries the first one: the next
// of another role, for a girder may be spliced over its pile.
func (it detailItem) carrier() int {
	for k, m := range it.Joint.Members {
		if m.Role != it.Joint.Members[0].Role {
			return k
		}
	}
	return 1
}

// center sets a level member, the plies of its breadth cut across, over the
// upright that carries it, as far to its side as they are framed.
func (s *stack) center(it detailItem, upright int) {
	g, p := it.member(0), it.member(upright)
	b, _ := it.section(0)
	_, wide := it.section(upright)
	in := g.B.Sub(g.A).Flat().Unit().Left()
	mid := b/2 + p.A.Sub(g.A).Flat().Dot(in)
	over := s.layers[0]
	s.depth = b
	s.layers[1].t0, s.layers[1].t1 = mid-wide/2, mid+wide/2
	s.layers[0].t1 = b
	n := max(it.ply(0), 1)
	for i := range n {
		l := over
		l.t0, l.t1 = b*float64(i)/float64(n), b*float64(i+1)/float64(n)
		if i == 0 {
			s.layers[0] = l
			continue
		}
		l.name, l.breadth = "", -1
		s.layers = append(s.layers, l)
	}
}

// proud returns how far an upright stands out past the face that a strap is
// nailed to above it, and its name: there the strap cannot lie flat.
func (s stack) proud(face float64) (out float64, name string) {
	for _, l := range s.layers {
		if l.front != alongV || !l.lapped {
			continue
		}
		d := l.t1 - face
		if face < s.depth/2 {
			d = face - l.t0
		}
		if d > out {
			out, name = d, l.name
		}
	}
	return out, name
}
