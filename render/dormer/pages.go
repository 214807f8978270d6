package dormer

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/placement"
	"galewright/plan/roofplan"
	"galewright/render/label"
	"galewright/render/page"
	"galewright/render/scene"
	"galewright/render/sheet"
	"galewright/symbols"
)

// Pages makes the elevations of each dormer, one dormer a sheet.
func Pages(c *page.Context) (pages []*page.Page) {
	for _, d := range c.House.Dormers {
		if d.Trimmers[0] == nil || d.Trimmers[1] == nil {
			continue
		}
		list := looks(c, d)
		scale, ok := fit(c, list)
		if !ok {
			c.Tell(plan.Diagnostic{
				Severity: plan.Warning, Code: "paper-too-small", Summary: "the elevations of dormer " + d.Name + " fit this paper at no scale",
				Where: "dormer " + d.Name, Mend: "take larger paper", Pos: d.Pos,
			})
			continue
		}
		p := c.NewPage("Dormer elevations, "+d.Name, scale.Name, "dormers", "dormer "+d.Name)
		p.Draw = func(p *page.Page) { draw(p, list, scale) }
		pages = append(pages, p)
	}
	return pages
}

// Room around an elevation, mm: between two of them, for the figures of stations, beside the
// front for those of heights, over all for circles.
const (
	apart sheet.MM = 14
	over  sheet.MM = 12
)

// under is the room below the elevations, mm: figures, names, what to know.
func under(c *page.Context, d *framing.Dormer) sheet.MM {
	z := c.Size
	_, title := c.ViewTitleSize("Dormer "+d.Name, page.Scale{Name: "1", Ratio: 1e4})
	return 12 + page.TextWidth(c.Length(199+15.0/16), z.Dim, false) + z.Note*3 + sheet.MM(len(told(c, d)))*z.Note*1.7 + title
}

// beside is the room of the figures of heights, mm.
func beside(c *page.Context, list []*look) (w sheet.MM) {
	for _, l := range list[1].levels {
		w = max(w, page.TextWidth(l.name+" "+c.Length(l.z), c.Size.Dim, false))
	}
	return w + 12
}

// fit chooses the largest scale at which the three elevations go beside each other.
func fit(c *page.Context, list []*look) (page.Scale, bool) {
	a := c.DrawingArea()
	w, h := 0.0, 0.0
	for _, l := range list {
		w, h = w+l.hi.X-l.lo.X, max(h, top(list)-bottom(list))
	}
	return page.Fit(c.Scales(), w, h, a.W-2*apart-beside(c, list)-8, a.H-under(c, list[0].Dormer)-over)
}

// bottom and top are the extent of all elevations in height, in.
func bottom(list []*look) (v float64) {
	for _, l := range list {
		v = min(v, l.lo.Y)
	}
	return v
}

func top(list []*look) float64 {
	v := math.Inf(-1)
	for _, l := range list {
		v = max(v, l.hi.Y)
	}
	return v
}

// draw draws the elevations of a dormer at one height beside each other.
func draw(p *page.Page, list []*look, scale page.Scale) {
	d := list[0].Dormer
	x, y := p.Area.X+8, p.Area.Y+p.Area.H-under(p.Context, d)
	board := label.NewBoard(p.Area)
	var labels []label.Label
	var circles []func(sheet.Rect)
	for i, l := range list {
		at := page.NewViewport(scale, sheet.Pt{X: x, Y: y}, l.lo.X, l.hi.X, bottom(list), top(list))
		l.draught(p, at, scale)
		l.figures(p, at, board)
		more, set := l.steel(p, at, board)
		labels, circles = append(labels, more...), append(circles, set...)
		x = at.Clip.X + at.Clip.W + apart
		if i == 1 {
			l.drawLevels(p, at, board)
			x += beside(p.Context, list)
		}
	}
	for i, place := range board.Place(labels) {
		if !place.OK {
			p.Tell(plan.Diagnostic{
				Severity: plan.Warning, Code: "no-room-on-sheet", Summary: fmt.Sprintf("no room for %q on sheet %s", labels[i].Name, p.Number),
				Mend: "take larger paper", Pos: p.PlanPos(),
			})
			continue
		}
		if len(place.Leader) > 1 {
			p.Polyline(sheet.PenDim, sheet.LayerLabel, place.Leader...)
		}
		circles[i](place.Rect)
	}
	words(p, d, scale)
}

// draught draws the lines of an elevation: lumber, and the steel of its pieces over it.
func (l *look) draught(p *page.Page, at *page.Viewport, scale page.Scale) {
	wood := sheet.Path{Style: page.Style(scale.MemberPen(), sheet.LayerMember)}
	metal := sheet.Path{Style: page.Style(sheet.PenMember, sheet.LayerHardware)}
	for _, x := range l.lines {
		to := &wood
		if x.Owner.(scene.Part).Body != nil {
			to = &metal
		}
		page.Stroke(to, at.Pt(x.A.X, x.A.Y), at.Pt(x.B.X, x.B.Y))
	}
	p.Strokes(wood, metal)
}

// figures dimensions the stations under an elevation, and names it.
func (l *look) figures(p *page.Page, at *page.Viewport, board *label.Board) {
	y := at.Clip.Y + at.Clip.H + 6
	list := slices.Clone(l.stations)
	k := 1.0
	if l.back {
		k = -1
		slices.Reverse(list)
	}
	var xs []sheet.MM
	var texts []string
	for _, u := range list {
		xs, texts = append(xs, at.X(k*u)), append(texts, p.Length(u))
	}
	low := p.Stations(y, xs, texts)
	first, last := xs[0], xs[len(xs)-1]
	board.BlockText(sheet.Rect{X: first - 3, Y: y - 5, W: last - first + 6, H: low - y + 5})
	r := p.BoxedText("label", page.Lettered{S: l.words(), Cap: p.Size.Note, At: sheet.Pt{X: (first + last) / 2, Y: low + p.Size.Note*2}, Anchor: sheet.Middle, Bold: true, Role: "label"})
	board.BlockText(r)
}

// words names an elevation by the side of the compass that it looks to.
func (l *look) words() string {
	if l.name == "front" {
		return "Front, " + string(l.Side)
	}
	name := strings.ToUpper(l.name[:1]) + l.name[1:]
	for i, s := range roofplan.SideNames {
		if geom.With(roofplan.Outward(i), l.frame.In.Mul(-1)) {
			return name + ", " + string(s)
		}
	}
	return name
}

// drawLevels dimensions the heights beside the front.
func (l *look) drawLevels(p *page.Page, at *page.Viewport, board *label.Board) {
	var ys []sheet.MM
	var texts []string
	for _, x := range l.levels {
		ys, texts = append(ys, at.Y(x.z)), append(texts, x.name+" "+p.Length(x.z))
	}
	x := at.Clip.X + at.Clip.W + 2
	for _, r := range p.Heights(x, ys, texts) {
		board.BlockText(sheet.Rect{X: x, Y: r.Y, W: r.X + r.W - x, H: r.H})
	}
}

// The size of a symbol that has room, and of one between two that stand close, mm: steel
// stays where it is.
func size(c *page.Context) (free, close sheet.MM) {
	if page.Large(c.Paper) {
		return 4.2, 1.6
	}
	return 3.2, 1.2
}

// sizeOf is the size of a piece's symbol: no more than it is apart from the next one.
func (l *look) sizeOf(c *page.Context, at *page.Viewport, pc *placement.Piece) sheet.MM {
	free, close := size(c)
	p, room := at3(l, at, pc), free
	for _, o := range l.pieces {
		if o != pc {
			q := at3(l, at, o)
			room = min(room, sheet.MM(math.Max(math.Abs(float64(p.X-q.X)), math.Abs(float64(p.Y-q.Y)))))
		}
	}
	return max(room, close)
}

// steel draws the symbols of pieces at their places, and returns the circles with their
// numbers.
func (l *look) steel(p *page.Page, at *page.Viewport, board *label.Board) (out []label.Label, set []func(sheet.Rect)) {
	r := p.LegendRadius()
	for _, pc := range l.pieces {
		sym, ok := symbols.For(pc.Item.Kind.Symbol)
		if !ok {
			continue
		}
		place, z := at3(l, at, pc), l.sizeOf(p.Context, at, pc)
		scale := float64(z / max(sym.Box.W, sym.Box.H))
		k := sheet.MM(scale)
		box := sheet.Rect{X: place.X + sym.Box.X*k, Y: place.Y + sym.Box.Y*k, W: sym.Box.W * k, H: sym.Box.H * k}
		p.Use(sym.ID, place, 0, scale, p.PieceMark(pc, true))
		p.Box("piece", pc.Tag, box)
		board.Block(box)
		name := fmt.Sprintf("legend of %s at %s", pc.Item.Mark, pc.Tag)
		circle := label.Label{Name: name, W: 2 * r, H: 2 * r, Anchors: []sheet.Pt{place}}
		for _, far := range []sheet.MM{0.6, 2, 4} {
			e := z/2 + r + far
			circle.Near = append(circle.Near, sheet.Pt{X: place.X, Y: place.Y - e}, sheet.Pt{X: place.X, Y: place.Y + e}, sheet.Pt{X: place.X + e, Y: place.Y}, sheet.Pt{X: place.X - e, Y: place.Y})
		}
		out = append(out, circle)
		set = append(set, func(b sheet.Rect) { p.LegendCircle(p.Legend(pc), b.Center(), name, nil) })
	}
	return out, set
}

// at3 is a piece's place on paper.
func at3(l *look, v *page.Viewport, pc *placement.Piece) sheet.Pt {
	q := at(pc)
	u, _ := l.frame.Local(q.Flat())
	return v.Pt(u, q.Z-l.eave)
}

// told says what to know of the elevations, in lines.
func told(c *page.Context, d *framing.Dormer) []string {
	text := fmt.Sprintf("Dormer %s, each wall seen from outside with what it stands on; what hangs over toward the eye and what lies behind is cut away. Heights are over the plates under the eave, which is where sills and plates of the plan count from. "+
		"Figures run along the front from its left end, along the sides from the front wall's outside face to the upper header. Pieces at heads and feet of studs are counted here, numbered as in the schedule, each at its place: symbols that stand close are small, and of two on both faces of a wall one stands behind the other. Pieces at rafters, headers and valleys are on the roof plan.", d.Name)
	return page.Wrap(text, c.Size.Note, false, c.DrawingArea().W*0.6)
}

// words sets the title and what to know.
func words(p *page.Page, d *framing.Dormer, scale page.Scale) {
	z, a := p.Size, p.Area
	title := p.ViewTitle(sheet.Pt{X: a.X + 8, Y: a.Y + a.H}, "Dormer "+d.Name, scale)
	y := title.Y - z.Note*1.6
	for _, line := range slices.Backward(told(p.Context, d)) {
		p.BoxedText("label", page.Lettered{S: line, At: sheet.Pt{X: a.X, Y: y}, Role: "note"})
		y -= z.Note * 1.7
	}
}
