package elevation

import (
	"math"

	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/steel"
	"galewright/render/scene"
)

// reach is how much of a member that is drawn for a piece alone shows beyond its steel,
// in.
const reach = 4.0

// room is a place in the coordinates of the line: station, depth, height.
type room struct{ lo, hi geom.Vec3 }

func noRoom() room {
	inf := math.Inf(1)
	return room{geom.Vec3{X: inf, Y: inf, Z: inf}, geom.Vec3{X: -inf, Y: -inf, Z: -inf}}
}

func (r *room) add(p geom.Vec3) {
	r.lo = geom.Vec3{X: min(r.lo.X, p.X), Y: min(r.lo.Y, p.Y), Z: min(r.lo.Z, p.Z)}
	r.hi = geom.Vec3{X: max(r.hi.X, p.X), Y: max(r.hi.Y, p.Y), Z: max(r.hi.Z, p.Z)}
}

// receivers adds what pieces of the stack are fastened to that is not of it: a joist or
// plate beyond the wall's end that takes a collector, a rafter on the ledger before it.
func (x *index) receivers(e *elev, out []shape) []shape {
	rooms := map[*framing.Member]*room{}
	for _, s := range out {
		rooms[s.m] = nil
	}
	var list []*framing.Member
	for _, pc := range e.pieces {
		for _, m := range pc.Members() {
			r, known := rooms[m]
			if !known {
				free := noRoom()
				r, list = &free, append(list, m)
				rooms[m] = r
			}
			if r != nil {
				e.take(r, x.steel.Body(pc))
			}
		}
	}
	for _, m := range list {
		out = e.addRoom(out, m, *rooms[m])
	}
	return out
}

// take widens a room to hold the steel of a body.
func (e *elev) take(r *room, b *steel.Body) {
	if b == nil {
		return
	}
	for _, t := range scene.Things(b) {
		for _, s := range t.Solids {
			s.Points(func(p geom.Vec3) {
				u, d := e.line.Frame.Local(p.Flat())
				r.add(geom.Vec3{X: u, Y: d, Z: p.Z})
			})
		}
	}
}

// addRoom adds what of a member is within reach of a room, at all heights.
func (e *elev) addRoom(out []shape, m *framing.Member, r room) []shape {
	if r.lo.X > r.hi.X {
		return out
	}
	for _, solid := range e.between(m, r.lo.X-reach, r.hi.X+reach, r.lo.Y-reach, r.hi.Y+reach) {
		out = e.addShape(out, m, solid)
	}
	return out
}
