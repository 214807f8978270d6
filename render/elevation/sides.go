package elevation

import (
	"cmp"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/render/label"
	"galewright/render/page"
	"galewright/render/sheet"
)

// height is one figure at the side of an elevation.
type height struct {
	v    float64
	text string
	bold bool
}

// heights returns what stands at the left: for each story, above its
// subfloor, the sills, the undersides of headers and plates, and the top.
func (p *part) heights() (out []height) {
	for _, i := range p.own {
		s := p.stories[i]
		for _, l := range p.passed(s.wall) {
			if p.level == nil || p.level == l {
				out = append(out, p.levelHeights(s, l)...)
			}
		}
	}
	return out
}

// levelHeights returns the heights of a wall that lie in one level.
func (p *part) levelHeights(s story, l *plan.Level) []height {
	out := []height{{l.Floor, l.Name + " " + p.Length(0), true}}
	var vs []float64
	if p.passed(s.wall)[len(p.passed(s.wall))-1] == l {
		vs = []float64{s.top - l.Floor, s.top - l.Floor - 2*plateDeep}
	}
	for _, o := range s.wall.Openings {
		for _, v := range [...]float64{s.floor + o.Sill - l.Floor, s.floor + o.Sill + o.Height - l.Floor} {
			if v > 0 && v < l.PlateHeight {
				vs = append(vs, v)
			}
		}
	}
	slices.Sort(vs)
	for _, v := range slices.CompactFunc(vs, closeBy) {
		out = append(out, height{l.Floor + v, p.Length(v), false})
	}
	return out
}

// closeBy tells whether two figures would read the same on a tape.
func closeBy(a, b float64) bool { return abs(a-b) < 1.0/16 }

// laps returns what stands at the right: the ends of the straps, above the
// subfloor of the story they end in.
func (p *part) laps() (out []height) {
	var vs []float64
	for _, pc := range p.pieces {
		if pc.Item.Kind.Strap && p.owns(pc) && pc.Z1-pc.Z0 > 4 {
			vs = append(vs, pc.Z0, pc.Z1)
		}
	}
	slices.Sort(vs)
	for _, v := range slices.CompactFunc(vs, closeBy) {
		i := p.storyAt(v)
		s := p.stories[i]
		text := p.Length(v - s.floor)
		if !slices.Contains(p.own, i) {
			text = s.wall.Level.Name + " " + text
		}
		out = append(out, height{v, text, false})
	}
	return p.most(out)
}

// most drops strap ends from the middle of crowded places until the figures
// fit one above the other.
func (p *part) most(in []height) []height {
	pitch := p.Size.Dim + 1.4
	room := int(p.vp.Clip.H/pitch) - 1
	for len(in) > max(room, 1) {
		k, least := 1, in[len(in)-1].v
		for i := 1; i < len(in); i++ {
			if d := in[i].v - in[i-1].v; d < least {
				k, least = i, d
			}
		}
		in = slices.Delete(in, k, k+1)
	}
	return in
}

// storyAt returns the story a height lies in; between two stories it is
// the upper one when nearer to its floor.
func (p *part) storyAt(v float64) int {
	for i := len(p.stories) - 1; i > 0; i-- {
		if v > (p.stories[i].floor+p.stories[i-1].top)/2 {
			return i
		}
	}
	return 0
}

// sideJog is the width in which the lines of figures at a side lead to them.
const sideJog sheet.MM = 7

func (p *part) heightsWidth() sheet.MM { return p.columnWidth(p.heights()) }
func (p *part) lapsWidth() sheet.MM    { return p.columnWidth(p.laps()) }

func (p *part) columnWidth(hs []height) (w sheet.MM) {
	for _, h := range hs {
		w = max(w, page.TextWidth(h.text, p.Size.Dim, h.bold))
	}
	if w > 0 {
		w += sideJog + 1
	}
	return w
}

// drawSides draws the heights left and right of the drawing.
func (p *part) drawSides(b *label.Board) {
	left := p.at.X + p.heightsWidth()
	p.drawColumn(b, p.heights(), left, -1)
	right := p.at.X + p.plan.left + p.vp.Clip.W + p.plan.right - p.lapsWidth()
	p.drawColumn(b, p.laps(), right, 1)
}

// drawColumn draws figures beside the line x; side is -1 when they stand left
// of it and 1 when right.
func (p *part) drawColumn(b *label.Board, hs []height, x sheet.MM, side sheet.MM) {
	if len(hs) == 0 {
		return
	}
	hs = slices.Clone(hs)
	slices.SortStableFunc(hs, func(a, b height) int { return cmp.Compare(b.v, a.v) })
	pg, z := p.page, p.Size.Dim
	wish := make([]sheet.MM, len(hs))
	for i, h := range hs {
		wish[i] = p.vp.Y(h.v)
	}
	top, foot := p.vp.Clip.Y, p.vp.Clip.Y+p.vp.Clip.H
	mid, _ := label.Row(wish, z+1.4, top, foot)
	anchor := sheet.Right
	if side > 0 {
		anchor = sheet.Left
	}
	pg.Line(sheet.PenDim, sheet.LayerDimension, sheet.Pt{X: x, Y: wish[0]}, sheet.Pt{X: x, Y: wish[len(wish)-1]})
	for i, h := range hs {
		tick := sheet.Pt{X: x, Y: wish[i]}
		at := sheet.Pt{X: x + side*(sideJog-1), Y: mid[i]}
		pg.Line(sheet.PenMember, sheet.LayerDimension, tick.Add(sheet.Pt{X: -0.6, Y: 0.6}), tick.Add(sheet.Pt{X: 0.6, Y: -0.6}))
		pg.Line(sheet.PenDim, sheet.LayerDimension, tick.Add(sheet.Pt{X: -side * 0.9}), tick.Add(sheet.Pt{X: side * 0.9}))
		pg.Line(sheet.PenDim, sheet.LayerDimension, tick.Add(sheet.Pt{X: side * 0.9}), at)
		r := pg.BoxedText("dimension", page.Lettered{S: h.text, Cap: z, At: sheet.Pt{X: at.X + side*0.8, Y: at.Y + z/2}, Anchor: anchor, Bold: h.bold, Role: "dimension"})
		b.BlockText(r)
	}
}

// drawMatches draws the match lines with what they lead to.
func (p *part) drawMatches(b *label.Board) {
	for _, m := range [...]struct {
		to *part
		u  float64
	}{{p.left, p.from}, {p.right, p.to}} {
		if m.to == nil {
			continue
		}
		x := p.vp.X(m.u)
		top, foot := p.vp.Clip.Y-1.5, p.vp.Clip.Y+p.vp.Clip.H+1.5
		p.page.Line(sheet.PenGrid, sheet.LayerGrid, sheet.Pt{X: x, Y: top}, sheet.Pt{X: x, Y: foot})
		t := page.Lettered{S: "match line, " + p.goesOn(m.to), At: sheet.Pt{X: x, Y: top - 1}, Anchor: sheet.Middle, Role: "label", Link: m.to.page.Number}
		if w := page.TextWidth(t.S, p.Size.Note, false); m.to == p.left {
			t.At.X = max(x, p.at.X+w/2)
		} else {
			pw, _ := p.size()
			t.At.X = min(x, p.at.X+pw-w/2)
		}
		b.BlockText(p.page.BoxedText("label", t))
		p.shadeOverlap(m.u, m.to == p.left)
	}
}

// goesOn says where a neighbor is drawn.
func (p *part) goesOn(to *part) string {
	switch {
	case to.page != p.page:
		return "see " + to.page.Number
	case to.at.Y > p.at.Y+p.vp.Clip.H:
		return "continues below"
	case to.at.Y+to.vp.Clip.H < p.at.Y:
		return "continues above"
	}
	return "continues beside"
}

// shadeOverlap marks what is shown again beyond a match line.
func (p *part) shadeOverlap(u float64, left bool) {
	a, z := u, p.su1
	if left {
		a, z = p.su0, u
	}
	for v := p.sv0; v < p.sv1+(z-a); v += 6 {
		if s, e, ok := p.vp.Within(a, z).Segment(geom.Vec2{X: a, Y: v}, geom.Vec2{X: z, Y: v - (z - a)}); ok {
			p.page.Line(sheet.PenDim, sheet.LayerGrid, s, e)
		}
	}
}
