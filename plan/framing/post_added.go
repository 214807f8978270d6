package framing

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/geom"
)

// addedPosts puts the studs that the plan adds to a wall, tight beside each other and
// centered on the post's station. A stud that something else takes the place of, an
// opening with its kings or a corner's post, is told.
func (b *builder) addedPosts(w *framedWall, l *layout) {
	for _, p := range w.Posts {
		lo := p.At - plate*float64(p.Studs)/2
		for i := range p.Studs {
			one := span{lo + plate*float64(i), lo + plate*float64(i+1)}
			if !l.put(slot{span: one, role: plan.Post, post: p}) {
				b.fault(plan.Diagnostic{
					Code: "post-without-room", Pos: p.Pos, Where: "wall " + w.Name,
					Summary: fmt.Sprintf("a post of %s at %s finds no room from %s to %s", number(p.Studs, "stud"), b.inches(p.At), b.inches(one.lo), b.inches(one.hi)),
					Mend:    "move it clear of openings, their kings and the wall's ends, or take fewer studs",
				})
				break
			}
		}
	}
}

// squashBlocks stands a block in the floor under each stud of an added post that has a
// wall below, beside the rim where one runs there; where a joist lies under the stud
// already, that carries it. Of a post whose wall below has fewer studs under it than
// the post itself it tells.
func (b *builder) squashBlocks() {
	for _, w := range b.walls {
		for _, m := range w.added {
			b.squashBlock(w, m)
		}
		b.postsBelow(w)
	}
}

// squashBlock adds the block under one stud; on the lowest floor, or where a level has no
// joists, no plates lie right under it and there is none.
func (b *builder) squashBlock(w *framedWall, m *Member) {
	l := w.Level
	z1 := w.floor - l.Subfloor
	z0 := z1 - l.Joists.Depth
	t0, t1 := 0.0, w.Depth()
	section := w.Studs
	if w.Exterior {
		t0, section = l.Rim, besideRim(section, l.Rim)
		t1 = t0 + section.Depth
	}
	box := w.frame.Box(m.S0, m.S1, t0, t1, z0, z1)
	if !b.onPlates(box, z0) || b.taken(box) {
		return
	}
	x := b.lying(plan.SquashBlock, w.frame, m.S0, m.S1, t0, t1, z0, z1)
	mid := w.frame.At(m.Mid(), (t0+t1)/2, 0).Flat()
	x.A, x.B, x.Length = mid.Up(z0), mid.Up(z1), z1-z0
	x.Wall, x.S0, x.S1 = w.Wall, m.S0, m.S1
	x.ID, x.Level, x.Section = fmt.Sprintf("%s/squash block@%s", w.Name, at(m.Mid())), l, section
	b.member(x)
}

// besideRim returns the dressed 2x that stands between a rim and the inside face of a
// wall's plates: as wide as the wall's studs less the rim, in whole sizes.
func besideRim(studs plan.Lumber, rim float64) plan.Lumber {
	for _, size := range []string{"2x12", "2x10", "2x8", "2x6", "2x4", "2x3"} {
		if l, err := plan.ParseLumber(size); err == nil && l.Depth <= studs.Depth-rim+geom.Eps {
			return l
		}
	}
	return studs
}

// onPlates tells whether a wall's plates lie right under a box.
func (b *builder) onPlates(box geom.Solid, z float64) bool {
	lo, hi := box.Bounds()
	for _, m := range b.index.Within(lo.Sub(geom.Vec3{Z: 1}), hi) {
		if m.Role == plan.UpperPlate && math.Abs(m.Z1-z) < sixteenth && geom.Overlap(box, m.Solid[0].Moved(geom.Vec3{Z: 1}), 0.5) {
			return true
		}
	}
	return false
}

// taken tells whether a member stands in a box.
func (b *builder) taken(box geom.Solid) bool {
	lo, hi := box.Bounds()
	for _, m := range b.index.Within(lo, hi) {
		for _, s := range m.Solid {
			if meets(box, s) {
				return true
			}
		}
	}
	return false
}

// postsBelow tells of added posts that have fewer studs under them in the wall below.
func (b *builder) postsBelow(w *framedWall) {
	for _, p := range w.Posts {
		lo, hi := p.At-plate*float64(p.Studs)/2, p.At+plate*float64(p.Studs)/2
		low := b.wallUnder(w, p.At)
		if low == nil {
			continue
		}
		shift, _ := low.frame.Local(w.frame.At(0, 0, 0).Flat())
		way := 1.0
		if low.frame.D.Dot(w.frame.D) < 0 {
			way = -1
		}
		n := 0
		for _, m := range low.uprights {
			if mid := (m.Mid() - shift) * way; m.Role.FullHeight() && mid > lo-plate/2 && mid < hi+plate/2 {
				n++
			}
		}
		if n < p.Studs {
			b.fault(plan.Diagnostic{
				Severity: plan.Warning, Code: "post-none-below", Pos: p.Pos, Where: "wall " + w.Name,
				Summary: fmt.Sprintf("a post of %s at %s stands over %s of wall %s", number(p.Studs, "stud"), b.inches(p.At), number(n, "stud"), low.Name),
				Mend:    fmt.Sprintf("give wall %s a post under it", low.Name),
			})
		}
	}
}

// wallUnder returns the wall of the story below whose plates lie under a station of w.
func (b *builder) wallUnder(w *framedWall, s float64) *framedWall {
	if w.Level.Index == 0 {
		return nil
	}
	p := w.frame.At(s, w.Depth()/2, 0).Flat()
	for _, o := range b.walls {
		if o.Level.Index != w.Level.Index-1 || !geom.InLine(o.frame.D, w.frame.D) {
			continue
		}
		if os, ot := o.frame.Local(p); os > o.s0 && os < o.s1 && ot > 0 && ot < o.Depth() {
			return o
		}
	}
	return nil
}
