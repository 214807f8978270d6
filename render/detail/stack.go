package detail

import (
	"cmp"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/render/sheet"
)

// layer is one thing that a vertical piece passes, between heights v0 and v1
// about the joint's reference, in, and depths t0 and t1 from the outside face.
type layer struct {
	name        string
	v0, v1      float64
	t0, t1      float64
	front, side grain
	breadth     float64 // seen from the front; 0 = runs on both ways
	ply         int     // joints between plies seen from the front
	lapped      bool    // a member the piece is nailed to
	ragged      int     // -1 goes on downward, +1 upward
}

// stack is what a vertical piece passes, from the top down.
type stack struct {
	layers []layer
	ref    float64 // height of v = 0 above grade, in
	depth  float64 // of the wall
	// top and bottom bound what lies between the lapped members.
	top, bottom float64
}

const plateThick = 1.5 // of a dressed 2x plate, PS 20

// stackOf builds the stack of the item's joint, its end members going on to
// reach above and below the joint.
func stackOf(it detailItem, reach float64) stack {
	j := it.Joint
	switch {
	case j.Wall == nil || j.Level == nil:
		return twoMembers(it, reach)
	case j.Kind.Lies() == plan.LiesToPlate, j.Kind.Lies() == plan.LiesAtRafter:
		return topStack(it, reach)
	case j.Kind.Lies() == plan.LiesUpright:
		return floorStack(it, reach)
	}
	return twoMembers(it, reach)
}

// floorStack is a stud on its plate over a floor, and what is below.
func floorStack(it detailItem, reach float64) stack {
	j, l := it.Joint, it.Joint.Level
	b, _ := it.section(0)
	s := stack{ref: l.Floor, depth: j.Wall.Depth(), top: plateThick}
	s.layers = append(s.layers,
		layer{name: it.memberName(0), v0: plateThick, v1: reach, t1: s.depth, front: alongV, side: alongV, breadth: b, ply: it.ply(0), lapped: true, ragged: 1},
		layer{name: string(plan.BottomPlate), v1: plateThick, t1: s.depth, front: alongU, side: endGrain})
	fd, sub := l.FloorDepth, l.Subfloor
	if fd <= 0 {
		return s.onGround(it, reach)
	}
	if sub > 0 {
		s.layers = append(s.layers, layer{name: "subfloor", v0: -sub, t1: s.depth + 5})
	}
	s.joists(it, -fd, -sub)
	if l.Index > 0 {
		return s.wallBelow(it, reach)
	}
	return s.girderBelow(it, reach)
}

// joists adds the rim and the joists behind it, or blocking under an
// interior wall.
func (s *stack) joists(it detailItem, v0, v1 float64) {
	l, w := it.Joint.Level, it.Joint.Wall
	if !w.Exterior {
		s.layers = append(s.layers, layer{name: "blocking or joist", v0: v0, v1: v1, t1: s.depth, front: alongU, side: endGrain})
		return
	}
	rim := cmp.Or(l.Rim, plateThick)
	s.layers = append(s.layers, layer{name: string(plan.Rim), v0: v0, v1: v1, t1: rim, front: alongU, side: endGrain})
	d := w.Frame().D
	along := l.JoistRun == plan.AxisX && d.Mainly(0) || l.JoistRun == plan.AxisY && d.Mainly(1)
	if !along {
		s.layers = append(s.layers, layer{name: "joist " + l.Joists.Text, v0: v0, v1: v1, t0: rim, t1: s.depth + 5, side: alongU, breadth: -1})
	}
}

// wallBelow adds the double plate and the stud of the story below.
func (s stack) wallBelow(it detailItem, reach float64) stack {
	fd := it.Joint.Level.FloorDepth
	i := len(it.Joint.Members) - 1
	b, name := 1.5, "stud below"
	for k := 1; k <= i; k++ {
		if m := it.member(k); m.Role.FullHeight() {
			b, _ = it.section(k)
			name = it.memberName(k) + " below"
		}
	}
	s.layers = append(s.layers,
		layer{name: "double top plate", v0: -fd - plateThick, v1: -fd, t1: s.depth, front: alongU, side: endGrain},
		layer{v0: -fd - 2*plateThick, v1: -fd - plateThick, t1: s.depth, front: alongU, side: endGrain},
		layer{name: name, v0: -reach, v1: -fd - 2*plateThick, t1: s.depth, front: alongV, side: alongV, breadth: b, lapped: true, ragged: -1})
	s.bottom = -fd - 2*plateThick
	return s
}

// memberOf returns which member of the joint has a role, -1 for none.
func (it detailItem) memberOf(r plan.Role) int {
	return slices.IndexFunc(it.Joint.Members, func(m *framing.Member) bool { return m.Role == r })
}

// ply returns how many pieces make the joint's i-th member.
func (it detailItem) ply(i int) int {
	if m := it.member(i); m != nil {
		return m.Section.Ply
	}
	return 1
}

// girderBelow adds the girder or stringer the lowest floor stands on.
func (s stack) girderBelow(it detailItem, reach float64) stack {
	fd, depth, ply, b := it.Joint.Level.FloorDepth, reach, 1, 3.0
	name := "floor support"
	if k := it.memberOf(plan.SillPlate); k > 0 {
		s.layers = append(s.layers, layer{name: it.memberName(k), v0: -fd - plateThick, v1: -fd, t1: s.depth, front: alongU, side: endGrain},
			layer{name: "stem wall or footing", v0: -fd - reach, v1: -fd - plateThick, t1: s.depth + 2, lapped: true, ragged: -1})
		s.bottom = -fd
		return s
	}
	for k := 1; k < len(it.Joint.Members); k++ {
		if m := it.member(k); m.Role == plan.GirderBeam {
			depth, ply, b = m.Section.Depth, max(m.Section.Ply, 1), cmp.Or(m.Section.Width(), 3)
			name = it.memberName(k)
		}
	}
	for i := range ply {
		w := b / float64(ply)
		l := layer{v0: -fd - depth, v1: -fd, t0: float64(i) * w, t1: float64(i+1) * w, front: alongU, side: endGrain, lapped: true}
		if i == 0 {
			l.name = name
		} else {
			l.breadth = -1
		}
		s.layers = append(s.layers, l)
	}
	s.bottom = -fd
	return s
}

// onGround adds a sill plate's concrete.
func (s stack) onGround(it detailItem, reach float64) stack {
	s.layers[1].name = string(plan.SillPlate)
	s.layers = append(s.layers, layer{name: "concrete", v0: -reach, t1: s.depth + 4, lapped: true, ragged: -1})
	return s
}

// topStack is a double plate over a stud, header or both, with a rafter over
// it where the joint has one.
func topStack(it detailItem, reach float64) stack {
	j := it.Joint
	thick := it.plumbPlate()
	s := stack{ref: j.Level.Top(), depth: j.Wall.Depth(), bottom: -2 * thick}
	b, name := 1.5, string(plan.Stud)
	for k := range j.Members {
		if m := it.member(k); m.Role.FullHeight() || m.Role == plan.Jack {
			b, _ = it.section(k)
			name = it.memberName(k)
			if m.Role.FullHeight() { // under a rake its plates stand higher
				s.ref = max(s.ref, m.Z1+2*thick)
			}
			break
		}
	}
	if j.Kind.Lies() == plan.LiesAtRafter {
		rb, rd := it.section(0)
		s.layers = append(s.layers, layer{name: it.memberName(0), v1: rd, t0: -4, t1: s.depth + 5, front: endGrain, side: alongU, breadth: rb, lapped: true})
	}
	s.layers = append(s.layers,
		layer{name: "double top plate", v0: -thick, t1: s.depth, front: alongU, side: endGrain},
		layer{v0: -2 * thick, v1: -thick, t1: s.depth, front: alongU, side: endGrain},
		layer{name: name, v0: -reach, v1: -2 * thick, t1: s.depth, front: alongV, side: alongV, breadth: b, lapped: true, ragged: -1})
	return s
}

// plumbPlate returns how thick a top plate is plumb: more where it rises
// along a rake.
func (it detailItem) plumbPlate() float64 {
	for _, m := range it.Joint.Members {
		if d := m.B.Sub(m.A); m.Role == plan.TopPlate && d.Flat().Len() > 1 {
			return plateThick * d.Len() / d.Flat().Len()
		}
	}
	return plateThick
}

// lie returns the ends of a vertical piece about the stack's reference: those
// of the piece placed, or evenly lapped when it has none of that length.
func (s stack) lie(it detailItem) (v0, v1 float64) {
	length := cmp.Or(it.Length, it.Piece.Cut, 12)
	v0, v1 = it.Piece.Z0-s.ref, it.Piece.Z1-s.ref
	if d := it.Piece.Steel() - length; d < 0.5 && d > -0.5 && v1 > s.bottom && v0 < s.top {
		return v0, v1
	}
	mid := (s.top + s.bottom) / 2
	return mid - length/2, mid + length/2
}

// drawFront draws the layers as seen from the face the piece is on.
func (d *draft) drawFront(s stack, half float64) {
	for _, l := range s.layers {
		if l.breadth < 0 {
			continue
		}
		u := half
		if l.breadth > 0 {
			u = l.breadth / 2
		}
		d.wood(-u, u, l.v0, l.v1, l.front)
		for i := 1; i < l.ply; i++ {
			x := 2*u*float64(i)/float64(l.ply) - u
			d.Line(sheet.PenMember, sheet.LayerMember, d.at(x, l.v0), d.at(x, l.v1))
		}
		d.goesOn(l, -u, u)
	}
}

// drawSide draws the layers cut across the wall, outside to the left.
func (d *draft) drawSide(s stack) {
	for _, l := range s.layers {
		d.wood(l.t0, l.t1, l.v0, l.v1, l.side)
		d.goesOn(l, l.t0, l.t1)
	}
}

func (d *draft) goesOn(l layer, u0, u1 float64) {
	switch l.ragged {
	case 1:
		d.ragged(u0, u1, l.v1, true)
	case -1:
		d.ragged(u0, u1, l.v0, false)
	}
}

// nameLayers adds a note to each layer of the side view.
func (d *draft) nameLayers(s stack, lo, hi float64) {
	for _, l := range s.layers {
		if l.name == "" {
			continue
		}
		v := d.shown((max(l.v0, lo)+min(l.v1, hi))/2, max(l.v0, lo), min(l.v1, hi))
		d.say(l.t0+(l.t1-l.t0)*0.8, v, l.name)
	}
}

// shown moves a height that is cut out of the view to the nearer of the
// lengths beside the cut that lie between lo and hi.
func (d *draft) shown(v, lo, hi float64) float64 {
	for _, c := range d.cutsV {
		if v < c.from-1 || v > c.to+1 {
			continue
		}
		if below := c.from - 1.2; below > lo && (v-c.from < c.to-v || c.to+1.2 >= hi) {
			return below
		}
		return min(c.to+1.2, hi)
	}
	return v
}

// right is the direction of u.
var right = geom.Vec2{X: 1}
