package elevation

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/steel"
	"galewright/render/label"
	"galewright/render/project"
	"galewright/render/scene"
	"galewright/render/sheet"
)

// subfloor owns the lines of a subfloor, which is no member.
type subfloor struct{ level *plan.Level }

// footing owns the lines of the concrete that rods are cast in.
type footing struct{ bottom float64 }

// view looks at the stack as who stands outside does.
func (e *elev) view() project.View {
	return project.Looking(e.line.Frame.In.Up(0), geom.Vec3{Z: 1})
}

// look projects the lumber of the stack.
func (e *elev) look() *project.Picture {
	var s project.Scene
	parts := map[*framing.Member][]geom.Solid{} // those of a member are one thing
	for _, h := range e.shapes {
		parts[h.m] = append(parts[h.m], h.solid)
	}
	for _, h := range e.shapes {
		s.Add(project.Thing{Solids: parts[h.m], Owner: scene.Part{Kind: scene.Wood, Member: h.m}})
		delete(parts, h.m)
	}
	s.Add(e.subfloors()...)
	s.Add(e.concrete())
	return project.Project(&s, e.view())
}

// subfloors are the subfloors that the walls stand on, and those that a balloon wall
// passes, which end at its inner face.
func (e *elev) subfloors() (out []project.Thing) {
	for _, s := range e.stories {
		for _, l := range e.passed(s.wall) {
			if l.Subfloor <= 0 || l.Joists.Depth <= 0 {
				continue
			}
			t0, t1 := 0.0, s.wall.Depth()
			if l != s.wall.Level {
				t0, t1 = t1, t1+1
			}
			box := e.line.Frame.Box(s.shift, s.shift+s.wall.Length(), t0, t1, l.Floor-l.Subfloor, l.Floor)
			out = append(out, project.Thing{Solids: []geom.Solid{box}, Owner: subfloor{l}})
		}
	}
	return out
}

// concrete is what the sills lie on, as deep as the stack's rods are cast in it: its
// true depth is on the foundation's drawings. It goes on under doors, and under the wall
// that the stack meets where a rod stands in that.
func (e *elev) concrete() project.Thing {
	top, u0, u1 := math.Inf(1), math.Inf(1), math.Inf(-1)
	for _, h := range e.shapes {
		if s0, s1, v0, _ := h.bounds(); h.m.Role == plan.SillPlate {
			top, u0, u1 = min(top, v0), min(u0, s0), max(u1, s1)
		}
	}
	bottom, depth := top, e.stories[0].wall.Depth()
	from, to := u0, u1
	for _, r := range e.castIn() {
		foot := e.flat(r.B)
		bottom = min(bottom, foot.Y)
		if foot.X < u0 {
			from = u0 - depth
		}
		if foot.X > u1 {
			to = u1 + depth
		}
	}
	if u0 > u1 || top-bottom < level {
		return project.Thing{}
	}
	return project.Thing{Solids: []geom.Solid{e.line.Frame.Box(from, to, 0, depth, bottom, top)}, Owner: footing{bottom}}
}

// castIn returns the rods of the stack that end in concrete.
func (e *elev) castIn() (out []*steel.Rod) {
	for _, pc := range e.pieces {
		if b := e.Schedule.Steel.Body(pc); b != nil {
			for _, r := range b.Rods {
				if r.Ends[1].Kind == steel.CastIn {
					out = append(out, r)
				}
			}
		}
	}
	return out
}

// lines returns the lines of the lumber in the coordinates of the line.
func (e *elev) lines() []project.Line {
	off := e.line.Frame.Origin.Dot(e.line.Frame.D)
	lines := e.wood.Lines()
	for i := range lines {
		l := &lines[i]
		l.A, l.B = geom.Vec2{X: tidy(l.A.X - off), Y: tidy(l.A.Y)}, geom.Vec2{X: tidy(l.B.X - off), Y: tidy(l.B.Y)}
	}
	return lines
}

// drawMembers draws the lumber: what is seen, and dashed what is hidden behind it.
func (p *part) drawMembers(b *label.Board) {
	for _, s := range p.shapes {
		if standing(s.m) || s.m.Role == plan.Header {
			if u0, u1, v0, v1 := s.bounds(); p.vp.Shows(u0, u1, v0, v1) {
				b.Discourage(p.vp.Rect(u0, u1, v0, v1))
			}
		}
	}
	p.clearShear()
	inked := p.inked()
	for _, pen := range [...]sheet.Pen{sheet.PenHidden, sheet.PenDim, sheet.PenMember, sheet.PenCut} {
		p.drawLines(pen, inked[pen])
	}
	p.drawBreaks()
}

// drawLines draws lines in one pen, as far as they are in range.
func (p *part) drawLines(pen sheet.Pen, lines []segment) {
	layer := sheet.LayerMember
	if pen == sheet.PenHidden {
		layer = sheet.LayerHidden
	}
	for _, l := range lines {
		if pen == sheet.PenHidden && p.along(l) {
			continue
		}
		if a, b, ok := p.vp.Segment(l.a, l.b); ok && dist(a, b) > shortest {
			p.page.Line(pen, layer, a, b)
		}
	}
}

// along tells whether a hidden upright line runs along the edge of near steel, too close
// to print beside it.
func (p *part) along(l segment) bool {
	if l.way() != upright {
		return false
	}
	gap := float64(sheet.PenHidden.Width()+2*apart) / p.scale.K()
	lo, hi := min(l.a.Y, l.b.Y), max(l.a.Y, l.b.Y)
	for _, pc := range p.pieces {
		for _, m := range p.metal[pc] {
			u0, u1, v0, v1 := shape{pts: m.pts}.bounds()
			if m.face > 0 && l.a.X > u0-gap && l.a.X < u1+gap && v0 < lo+1 && v1 > hi-1 {
				return true
			}
		}
	}
	return false
}

// shortest is the shortest line that is drawn, mm.
const shortest = 0.15

// penOf returns the pen of a line; none for where a pile or concrete is broken off and
// what of them is hidden, which other sheets tell.
func (p *part) penOf(l project.Line) sheet.Pen {
	part, wood := l.Owner.(scene.Part)
	under, cast := l.Owner.(footing)
	switch {
	case cast && (l.State == project.Hidden || l.A.Y < under.bottom+level && l.B.Y < under.bottom+level):
		return sheet.NoPen
	case wood && part.Member.Role == plan.Pile && (l.State == project.Hidden || p.breaksOff(l)):
		return sheet.NoPen
	case l.State == project.Hidden:
		return sheet.PenHidden
	case !wood:
		return sheet.PenDim
	case part.Member.Role == plan.Pile, part.Member.Role == plan.GirderBeam:
		return sheet.PenCut
	}
	return p.scale.MemberPen()
}

// breaksOff tells whether a line of a pile is where its head is broken off.
func (p *part) breaksOff(l project.Line) bool {
	v := brokenAt(l.Owner.(scene.Part).Member)
	return abs(l.A.Y-v) < level && abs(l.B.Y-v) < level
}

// drawBreaks draws where piles are broken off.
func (p *part) drawBreaks() {
	for _, s := range p.shapes {
		u0, u1, v0, _ := s.bounds()
		if s.m.Role != plan.Pile || abs(v0-brokenAt(s.m)) > level {
			continue
		}
		m := (u0 + u1) / 2
		pts := []geom.Vec2{{X: u0, Y: v0}, {X: m - 1, Y: v0}, {X: m - 0.5, Y: v0 + 2}, {X: m + 0.5, Y: v0 - 2}, {X: m + 1, Y: v0}, {X: u1, Y: v0}}
		for i := 1; i < len(pts); i++ {
			if a, b, ok := p.vp.Segment(pts[i-1], pts[i]); ok {
				p.page.Line(sheet.PenDim, sheet.LayerMember, a, b)
			}
		}
	}
}

// clearShear takes the tint of shear segments from the lumber before it is drawn.
func (p *part) clearShear() {
	if !slices.ContainsFunc(p.stories, func(s story) bool { return len(s.wall.Shear) > 0 }) {
		return
	}
	for _, s := range p.shapes {
		p.page.Polygon(sheet.Style{Fill: sheet.White, Layer: sheet.LayerMember}, p.vp.Polygon(s.pts)...)
	}
}
