package project

import (
	"math"
	"slices"

	"galewright/plan/geom"
)

// State says how a line of a picture is seen.
type State int

// The states of a line. Cut lies in a plane that cuts the scene open toward
// the eye; Broken is where the scene's side breaks a body off.
const (
	Seen State = iota
	Hidden
	Cut
	Broken
)

// Line is a part of an edge in a picture.
type Line struct {
	A, B  geom.Vec2 // in, right and up in the view
	State State
	Owner any
	Depth float64 // of its middle: the larger, the nearer the eye, in
}

// Picture is a scene seen from one side.
type Picture struct {
	view   View
	scene  *Scene
	blocks []*block
	of     [][]*block // by thing
	index  *geom.Grid[*block]
}

// Project looks at a scene.
func Project(s *Scene, v View) *Picture {
	p := &Picture{view: v, scene: s, of: make([][]*block, len(s.things)), index: geom.NewGrid[*block]()}
	for i, t := range s.things {
		for _, solid := range t.Solids {
			b := newBlock(v, i, solid)
			p.blocks = append(p.blocks, b)
			p.of[i] = append(p.of[i], b)
			p.index.Add(b, b.lo, b.hi, nil)
		}
	}
	return p
}

// Lines returns the lines of the picture, by thing, what is hidden apart.
// Hidden lines that fall on seen ones are left out.
func (p *Picture) Lines() []Line { return tidy(p.edges(p.draw)) }

// SeenLines returns the lines that nothing hides.
func (p *Picture) SeenLines() []Line { return tidy(p.edges(p.drawSeen)) }

// edges draws the real edges of all things, by thing.
func (p *Picture) edges(draw func(edge, any) []Line) (out []Line) {
	for i, t := range p.scene.things {
		for _, b := range p.of[i] {
			for _, e := range b.edges {
				if t.Round && !e.outline(p.view) {
					continue
				}
				for _, s := range e.real(p.of[i]) {
					out = append(out, draw(edge{e.at(s.from), e.at(s.to), e.faces}, t.Owner)...)
				}
			}
		}
	}
	return out
}

// drawSeen returns the parts of an edge that are not hidden. An edge between two
// faces that look away from the eye is behind its own body.
func (p *Picture) drawSeen(e edge, owner any) (out []Line) {
	if e.faces[0].N.Dot(p.view.Toward) < 0 && e.faces[1].N.Dot(p.view.Toward) < 0 {
		return nil
	}
	return p.shown(e, owner, p.hidden(e.a, e.b))
}

// draw returns an edge in parts seen and hidden.
func (p *Picture) draw(e edge, owner any) []Line {
	hidden := p.hidden(e.a, e.b)
	out := p.shown(e, owner, hidden)
	if p.state(e) == Broken {
		return out
	}
	for _, s := range hidden {
		out = p.put(out, e, s, Hidden, owner)
	}
	return out
}

// shown returns the parts of an edge that are not among its hidden ones.
func (p *Picture) shown(e edge, owner any, hidden []span) (out []Line) {
	state := p.state(e)
	for _, s := range without(span{0, 1}, hidden) {
		out = p.put(out, e, s, state, owner)
	}
	return out
}

// put appends a part of an edge, unless it is a point in the picture.
func (p *Picture) put(out []Line, e edge, s span, state State, owner any) []Line {
	a, b := e.at(s.from), e.at(s.to)
	l := Line{p.view.At(a), p.view.At(b), state, owner, p.view.Depth(e.at((s.from + s.to) / 2))}
	if l.B.Sub(l.A).Len() <= near {
		return out
	}
	return append(out, l)
}

// state returns how an edge that nothing hides is drawn.
func (p *Picture) state(e edge) State {
	state := Seen
	for _, cut := range p.scene.cuts {
		if !same(e.faces[0], cut) && !same(e.faces[1], cut) {
			continue
		}
		if cut.N.Dot(p.view.Toward) < 0.5 {
			return Broken
		}
		state = Cut
	}
	return state
}

// hidden returns the parts of a line in space that something hides, in order.
func (p *Picture) hidden(a, b geom.Vec3) []span {
	qa, qb := p.view.At(a), p.view.At(b)
	lo := geom.Vec3{X: min(qa.X, qb.X), Y: min(qa.Y, qb.Y), Z: min(p.view.Depth(a), p.view.Depth(b))}
	hi := geom.Vec3{X: max(qa.X, qb.X), Y: max(qa.Y, qb.Y), Z: 1e9}
	var out []span
	p.index.Each(lo, hi, func(_ int, x *block) bool {
		s, ok := hides(x.planes, a, b, p.view.Toward)
		if ok {
			out = append(out, s)
		}
		if whole := ok && s == (span{0, 1}); whole {
			out = []span{s}
			return false
		}
		return true
	})
	return union(out)
}

// Sees tells whether nothing hides a point in space.
func (p *Picture) Sees(at geom.Vec3) bool {
	q := p.view.At(at)
	lo := geom.Vec3{X: q.X, Y: q.Y, Z: p.view.Depth(at)}
	hi := geom.Vec3{X: q.X, Y: q.Y, Z: 1e9}
	sees := true
	p.index.Each(lo, hi, func(_ int, x *block) bool {
		_, _, hit := geom.Within(shrunk(x.planes), at, p.view.Toward, skin, 1e9)
		sees = !hit
		return sees
	})
	return sees
}

// Parts returns a line in space, a fastener's shank for one, in parts seen and
// hidden.
func (p *Picture) Parts(a, b geom.Vec3, owner any) []Line {
	return p.draw(edge{a: a, b: b}, owner)
}

func shrunk(planes []geom.Plane) []geom.Plane {
	out := slices.Clone(planes)
	for i := range out {
		out[i].C -= skin
	}
	return out
}

// Settled moves the lines of a picture so that a place in it is where they count from, and
// returns their extent, in.
func Settled(lines []Line, from geom.Vec2) (lo, hi geom.Vec2) {
	lo, hi = geom.Vec2{X: math.Inf(1), Y: math.Inf(1)}, geom.Vec2{X: math.Inf(-1), Y: math.Inf(-1)}
	for i := range lines {
		l := &lines[i]
		l.A, l.B = l.A.Sub(from), l.B.Sub(from)
		for _, p := range []geom.Vec2{l.A, l.B} {
			lo = geom.Vec2{X: min(lo.X, p.X), Y: min(lo.Y, p.Y)}
			hi = geom.Vec2{X: max(hi.X, p.X), Y: max(hi.Y, p.Y)}
		}
	}
	return lo, hi
}
