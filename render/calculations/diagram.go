package calculations

import (
	"math"

	"galewright/plan"
	"galewright/plan/loadpath"
	"galewright/render/page"
	"galewright/render/sheet"
)

// diagrams puts one diagram of level force for each wind.
func (s *setter) diagrams() {
	for i, ax := range plan.Axes {
		d := newDiagram(s.c, ax, i, s.f.ColumnWidth)
		if len(d.stories) > 0 {
			s.f.Put(d.figure())
		}
	}
}

// diagram is level force for wind along one axis: each diaphragm as a line across
// the wind, to scale, what enters it at its side, and under it the lines that
// take it on with their forces.
type diagram struct {
	c       *page.Context
	axis    plan.Axis
	w, row  sheet.MM
	lo, hi  float64 // of the house across the wind, in
	stories []loadpath.StoryShear
	lines   map[*plan.Level][]*loadpath.LineShear
	loads   *loadpath.Report
}

func newDiagram(c *page.Context, ax plan.Axis, i int, w sheet.MM) *diagram {
	d := &diagram{c: c, axis: ax, w: w, row: 14 * c.Size.Note, lo: math.Inf(1), hi: math.Inf(-1), lines: map[*plan.Level][]*loadpath.LineShear{}, loads: c.Loads}
	for _, s := range c.Loads.Stories {
		if s.Axis != ax {
			continue
		}
		d.stories = append(d.stories, s)
		for _, b := range s.Bands {
			d.lo, d.hi = math.Min(d.lo, b.Lo), math.Max(d.hi, b.Hi)
		}
	}
	for _, x := range c.Loads.Lines {
		if x.Axis == i {
			d.lines[x.Level] = append(d.lines[x.Level], x)
		}
	}
	return d
}

// figure is the diagram as a block.
func (d *diagram) figure() *page.Figure {
	z := d.c.Size.Note
	h := 4*z + sheet.MM(len(d.stories))*d.row + 5*z
	return &page.Figure{W: d.w, H: h, Draw: func(p *page.Page, at sheet.Pt) {
		p.Text(page.Lettered{S: d.c.Units().Sprintf("Wind along %s: level force by story and line, {lb} at strength level", d.axis), Cap: z * 1.4, At: sheet.Pt{X: at.X, Y: at.Y + 1.6*z}, Bold: true, Role: "note"})
		p.Box("label", "diagram", sheet.Rect{X: at.X, Y: at.Y, W: d.w, H: h})
		for i, s := range d.stories {
			d.story(p, s, sheet.Pt{X: at.X, Y: at.Y + 4*z + sheet.MM(i)*d.row})
		}
		d.base(p, sheet.Pt{X: at.X, Y: at.Y + 4*z + sheet.MM(len(d.stories))*d.row})
	}}
}

// side is the room beside the diaphragms for what enters them.
func (d *diagram) side() sheet.MM { return 24 * d.c.Size.Note }

// x is where a coordinate across the wind lies on paper.
func (d *diagram) x(at sheet.Pt, v float64) sheet.MM {
	z := d.c.Size.Note
	lo, hi := at.X+d.side()+2*z, at.X+d.w-9*z
	return lo + (hi-lo)*sheet.MM((v-d.lo)/math.Max(1, d.hi-d.lo))
}

// story draws one diaphragm with its lines.
func (d *diagram) story(p *page.Page, s loadpath.StoryShear, at sheet.Pt) {
	z := d.c.Size.Note
	note := func(i int, format string, args ...any) {
		p.Text(page.Lettered{S: d.c.Units().Sprintf(format, args...), Cap: z, At: sheet.Pt{X: at.X, Y: at.Y + z + sheet.MM(i)*1.7*z}, Role: "note"})
	}
	note(0, "story %s", s.Level.Name)
	note(1, "enters %.0f{lb}", s.Deck)
	note(2, "(walls %.0f{lb}, roofs %.0f{lb})", s.Wall, s.Roof)
	note(3, "from above %.0f{lb}", s.Above)
	note(4, "cumulative %.0f{lb}", s.Total)
	y := at.Y + 2*z
	d.arrow(p, sheet.Pt{X: at.X + d.side() - 6*z, Y: y}, sheet.Pt{X: at.X + d.side() + z, Y: y})
	p.Line(sheet.PenHardware, sheet.LayerMember, sheet.Pt{X: d.x(at, d.lo), Y: y}, sheet.Pt{X: d.x(at, d.hi), Y: y})
	free := map[int]sheet.MM{}
	for _, x := range d.lines[s.Level] {
		d.line(p, x, at, y, free)
	}
	if len(d.lines[s.Level]) == 0 {
		p.Text(page.Lettered{S: "no shear wall line resists it", Cap: z, At: sheet.Pt{X: d.x(at, (d.lo+d.hi)/2), Y: y + 3*z}, Anchor: sheet.Middle, Bold: true, Role: "note"})
	}
}

// line draws a shear wall line under its diaphragm: the wall, the width of
// diaphragm that it serves, its name and force. Names that would meet go down a
// row; free is where each row is free from.
func (d *diagram) line(p *page.Page, x *loadpath.LineShear, at sheet.Pt, y sheet.MM, free map[int]sheet.MM) {
	z := d.c.Size.Note
	lo, hi := d.loads.Tributary(x)
	for _, v := range []float64{lo, hi} {
		p.Line(sheet.PenDim, sheet.LayerDimension, sheet.Pt{X: d.x(at, v), Y: y - 1.2*z}, sheet.Pt{X: d.x(at, v), Y: y})
	}
	cx := d.x(at, x.At)
	texts := []string{"line " + x.Name, d.c.Units().Sprintf("%.0f{lb}", x.Force), d.c.Units().Sprintf("(%.0f{lb} + %.0f{lb})", x.Deck, x.Brought)}
	half := sheet.MM(0)
	for _, t := range texts {
		half = max(half, page.TextWidth(t, z, false)/2)
	}
	row := 0
	for row < 1 && cx-half < free[row] {
		row++
	}
	free[row] = cx + half + z
	top := y + 1.6*z + sheet.MM(row)*5.2*z
	p.Line(sheet.PenMember, sheet.LayerMember, sheet.Pt{X: cx, Y: y}, sheet.Pt{X: cx, Y: top - 0.2*z})
	for i, t := range texts {
		p.Text(page.Lettered{S: t, Cap: z, At: sheet.Pt{X: cx, Y: top + z + sheet.MM(i)*1.6*z}, Anchor: sheet.Middle, Role: "note", Bold: i == 1})
	}
}

// base tells what comes to the foundation.
func (d *diagram) base(p *page.Page, at sheet.Pt) {
	z := d.c.Size.Note
	for _, b := range d.loads.Base {
		if b.Axis != d.axis {
			continue
		}
		y := at.Y + 1.2*z
		p.Line(sheet.PenMember, sheet.LayerMember, sheet.Pt{X: d.x(at, d.lo), Y: y}, sheet.Pt{X: d.x(at, d.hi), Y: y})
		p.Text(page.Lettered{S: "foundation", Cap: z, At: sheet.Pt{X: at.X, Y: y + z/2}, Role: "note"})
		p.Text(page.Lettered{S: d.c.Units().Sprintf("%.0f{lb}: story %.0f{lb}, lower walls %.0f{lb}, floor edge %.0f{lb}, girders %.0f{lb}", b.Total, b.Story, b.Walls, b.Edge, b.Girders), Cap: z, At: sheet.Pt{X: d.x(at, d.lo), Y: y + 2*z}, Role: "note"})
	}
}

// arrow draws a line with a head at its end.
func (d *diagram) arrow(p *page.Page, a, b sheet.Pt) {
	z := d.c.Size.Note
	p.Line(sheet.PenMember, sheet.LayerDimension, a, b)
	p.Polyline(sheet.PenMember, sheet.LayerDimension, sheet.Pt{X: b.X - z, Y: b.Y - z/2}, b, sheet.Pt{X: b.X - z, Y: b.Y + z/2})
}
