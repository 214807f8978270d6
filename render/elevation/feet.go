package elevation

import (
	"cmp"
	"slices"

	"galewright/plan"
	"galewright/render/label"
	"galewright/render/page"
	"galewright/render/sheet"
)

// foot is one running dimension at the foot of a stud: the distance of its
// near edge from the start of its wall, written up the bay beside it.
type foot struct {
	u    float64 // of the near edge, station of the line
	text string
	x    sheet.MM // middle of the figure, from the drawing's left edge
}

// plateDeep is the thickness of a bottom plate, in: a dressed 2-by (PS 20).
const plateDeep = 1.5

// edges returns the stations of the line at which the studs of a story
// begin that stand on its bottom plate, between the match lines.
func (p *part) edges(i int) (us []float64) {
	s := p.stories[i]
	if s.floor < p.sv0 {
		return nil // the upper half of a balloon wall: its foot is on another sheet
	}
	for _, h := range p.shapes {
		if h.m.Wall != s.wall || !standing(h.m) {
			continue
		}
		u0, _, v0, _ := h.bounds()
		if v0 < s.floor+2*plateDeep && p.holds(u0) {
			us = append(us, u0)
		}
	}
	slices.Sort(us)
	return slices.CompactFunc(us, closeBy)
}

// figureWidth is the width of a dimension that stands on end, with air.
func (p *part) figureWidth() sheet.MM { return p.Size.Dim*1.29 + 0.5 }

// footShift is how far a figure may stand from its stud before the row goes
// out of the wall.
func (p *part) footShift() sheet.MM { return 3.2 * p.figureWidth() }

// settleFeet finds places for the dimensions at the studs' feet. When the
// bays of one story are too narrow for that, every story of the part gets a
// row below the drawing instead, so that a sheet is read in one way.
func (p *part) settleFeet() {
	fits := true
	for _, i := range p.own {
		feet := p.feetOf(i)
		fits = fits && p.placeFeet(i, feet)
		p.plan.feet = append(p.plan.feet, feet)
	}
	for k, feet := range p.plan.feet {
		if !fits {
			p.plan.rows = append(p.plan.rows, p.feetRow(p.own[k], feet))
			p.plan.feet[k] = nil
			continue
		}
		for _, f := range feet {
			p.plan.left = max(p.plan.left, p.figureWidth()/2-f.x+1)
			p.plan.right = max(p.plan.right, f.x+p.figureWidth()/2-p.vp.Clip.W+1)
		}
	}
}

func (p *part) feetOf(i int) (out []foot) {
	for _, u := range p.edges(i) {
		out = append(out, foot{u: u, text: p.Length(u - p.stories[i].shift)})
	}
	return out
}

// footLine returns the heights on paper, from the drawing's lower edge,
// between which the figures of a story stand.
func (p *part) footLine(i int, feet []foot) (foot, head sheet.MM) {
	long := sheet.MM(0)
	for _, f := range feet {
		long = max(long, page.TextWidth(f.text, p.Size.Dim, false))
	}
	foot = p.vp.Y(p.stories[i].floor+plateDeep) - 1.8
	return foot, foot - long - 0.5
}

// placeFeet puts the figures into the bays; false when they do not go.
func (p *part) placeFeet(i int, feet []foot) bool {
	bottom, top := p.footLine(i, feet)
	row := sheet.Rect{X: -20, Y: top, W: p.vp.Clip.W + 40, H: bottom - top}
	w := p.figureWidth()
	wish := make([]sheet.MM, len(feet))
	for k, f := range feet {
		wish[k] = p.vp.X(f.u) - w/2 - 0.2
	}
	mid, ok := label.Slots(wish, w, p.closed(i, row), -3*w-1, p.vp.Clip.W+3*w, 0.2)
	if !ok {
		return false
	}
	for k := range feet {
		feet[k].x = mid[k]
		if abs(float64(mid[k]-wish[k])) > float64(p.footShift()) {
			return false
		}
	}
	return true
}

// closed returns the intervals along a row where no figure may stand: over
// uprights of the story, over hardware, and beyond match lines, where what
// is shown again is shaded.
func (p *part) closed(i int, row sheet.Rect) (out [][2]sheet.MM) {
	if p.left != nil {
		out = append(out, [2]sheet.MM{p.vp.X(p.su0), p.vp.X(p.from) + 0.2})
	}
	if p.right != nil {
		out = append(out, [2]sheet.MM{p.vp.X(p.to) - 0.2, p.vp.X(p.su1)})
	}
	for _, h := range p.shapes {
		u0, u1, v0, v1 := h.bounds()
		if h.m.Wall != p.stories[i].wall || !standing(h.m) && h.m.Role != plan.Header || !p.vp.Shows(u0, u1, v0, v1) {
			continue
		}
		if r := p.vp.Rect(u0, u1, v0, v1); r.Overlaps(row) {
			out = append(out, [2]sheet.MM{r.X, r.X + r.W})
		}
	}
	for _, pc := range p.pieces {
		for _, r := range p.pieceRects(p.vp, pc) {
			if r.Overlaps(row) {
				out = append(out, [2]sheet.MM{r.X - 0.2, r.X + r.W + 0.2})
			}
		}
	}
	slices.SortFunc(out, func(a, b [2]sheet.MM) int { return cmp.Compare(a[0], b[0]) })
	return out
}

// drawFeet draws the figures and, along the bottom plate, the tick each
// speaks of. It returns the places of the figures.
func (p *part) drawFeet(b *label.Board) (figures []sheet.Rect) {
	for k, i := range p.own {
		feet := p.plan.feet[k]
		y, _ := p.footLine(i, feet)
		for _, f := range feet {
			figures = append(figures, p.drawFoot(b, f, p.stories[i].floor+plateDeep/2, y))
		}
	}
	return figures
}

func (p *part) drawFoot(b *label.Board, f foot, v float64, y sheet.MM) sheet.Rect {
	pg, z := p.page, p.Size.Dim
	mid := p.vp.Clip.X + f.x
	tick := p.vp.Pt(f.u, v)
	pg.Line(sheet.PenMember, sheet.LayerDimension, tick.Add(sheet.Pt{X: -0.6, Y: 0.6}), tick.Add(sheet.Pt{X: 0.6, Y: -0.6}))
	pg.Line(sheet.PenDim, sheet.LayerDimension, tick, sheet.Pt{X: mid, Y: y + 0.3})
	r := pg.BoxedText("dimension", page.Lettered{S: f.text, Cap: z, At: sheet.Pt{X: mid + z*0.36, Y: y}, Angle: 90, Role: "dimension"})
	b.BlockText(r)
	b.BlockLine(tick, sheet.Pt{X: mid, Y: y})
	return r
}
