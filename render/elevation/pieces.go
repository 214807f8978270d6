package elevation

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/render/label"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/symbols"
)

// shown is a piece on an elevation.
type shown struct {
	pc     *placement.Piece
	mark   *sheet.Piece
	line   []sheet.Pt // its center line on paper
	steel  []strip
	symbol sheet.Rect // where its symbol stands
	own    bool       // at home on this sheet
}

// strip is one straight length of steel on paper.
type strip struct {
	a, b sheet.Pt
	w    sheet.MM
}

// symbolScale makes symbols, 6 mm as defined, about 5 mm on full-size sheets
// and 4 mm on small ones; they read at 3 mm.
func symbolScale(c *page.Context) float64 {
	if page.Large(c.Paper) {
		return 0.8
	}
	return 0.65
}

// bandLeast is the least width steel is drawn with: that of the pen for
// hardware.
const bandLeast sheet.MM = 0.7

// bandWidth returns the width on paper of a piece's steel: of a strap that
// lies on the side of a member or on a plate, its edge; of a rod its
// diameter.
func bandWidth(v *page.Viewport, pc *placement.Piece) sheet.MM {
	switch {
	case pc.Item.Kind.Shape == hardware.Rod:
		return max(bandLeast, v.Len(pc.Item.Rod))
	case pc.Item.Kind.Strap && (pc.Face == plan.Left || pc.Face == plan.Right || pc.Face == plan.Top):
		return bandLeast
	}
	return max(bandLeast, v.Len(pc.Item.Width))
}

// steel returns the lengths of steel of a piece that are in range. A pair is
// two bodies and the rod between them.
func (p *part) steel(v *page.Viewport, pc *placement.Piece) (out []strip) {
	path, w := p.path(pc), bandWidth(v, pc)
	if pc.Item.Kind.Shape == hardware.Pair && len(pc.Path) == 4 {
		path = nil
		for _, q := range pc.Path {
			path = append(path, p.flat(q))
		}
	}
	for i := 1; i < len(path); i++ {
		wide := w
		if len(path) == 4 && i == 2 && pc.Item.Kind.Shape == hardware.Pair {
			wide = max(bandLeast, v.Len(pc.Item.Rod))
		}
		if a, b, ok := v.Segment(path[i-1], path[i]); ok && a != b {
			out = append(out, strip{a, b, wide})
		}
	}
	return out
}

// centerLine returns a piece's line on paper, cut to what is shown.
func (p *part) centerLine(v *page.Viewport, pc *placement.Piece) (pts []sheet.Pt) {
	path := p.path(pc)
	if len(path) == 1 {
		if v.Shows(path[0].X-0.01, path[0].X+0.01, path[0].Y-0.01, path[0].Y+0.01) {
			pts = append(pts, v.Pt(path[0].X, path[0].Y))
		}
		return pts
	}
	for i := 1; i < len(path); i++ {
		a, b, ok := v.Segment(path[i-1], path[i])
		if !ok {
			continue
		}
		if len(pts) == 0 || pts[len(pts)-1] != a {
			pts = append(pts, a)
		}
		pts = append(pts, b)
	}
	return pts
}

// pieceRects returns the places a piece takes before its symbol has moved:
// its steel, and its symbol at the middle.
func (p *part) pieceRects(v *page.Viewport, pc *placement.Piece) (out []sheet.Rect) {
	for _, s := range p.steel(v, pc) {
		out = append(out, s.rects()...)
	}
	if pts := p.centerLine(v, pc); len(pts) > 0 {
		w, h := p.symbolSize(pc)
		c := along(pts, 0.5)
		out = append(out, sheet.Rect{X: c.X - w/2, Y: c.Y - h/2, W: w, H: h})
	}
	return out
}

// isBand tells whether a piece shows as steel shown to length.
func (p *part) isBand(pc *placement.Piece) bool { return len(p.path(pc)) > 1 }

// rects returns the boxes of a length of steel; a slant one is boxed in short
// steps.
func (s strip) rects() (out []sheet.Rect) {
	n := 1
	if s.a.X != s.b.X && s.a.Y != s.b.Y {
		n = max(1, int(dist(s.a, s.b)/2))
	}
	for k := range n {
		p, q := lerp(s.a, s.b, sheet.MM(k)/sheet.MM(n)), lerp(s.a, s.b, sheet.MM(k+1)/sheet.MM(n))
		r := sheet.Rect{X: min(p.X, q.X), Y: min(p.Y, q.Y), W: max(p.X, q.X) - min(p.X, q.X), H: max(p.Y, q.Y) - min(p.Y, q.Y)}
		if r.W < r.H {
			r.X, r.W = r.X-s.w/2, r.W+s.w
		} else {
			r.Y, r.H = r.Y-s.w/2, r.H+s.w
		}
		out = append(out, r)
	}
	return out
}

func lerp(a, b sheet.Pt, t sheet.MM) sheet.Pt {
	return sheet.Pt{X: a.X + (b.X-a.X)*t, Y: a.Y + (b.Y-a.Y)*t}
}

// along returns the point at part t of a chain's length.
func along(pts []sheet.Pt, t float64) sheet.Pt {
	total := 0.0
	for i := 1; i < len(pts); i++ {
		total += dist(pts[i-1], pts[i])
	}
	left := total * t
	for i := 1; i < len(pts); i++ {
		d := dist(pts[i-1], pts[i])
		if left <= d && d > 0 {
			return lerp(pts[i-1], pts[i], sheet.MM(left/d))
		}
		left -= d
	}
	return pts[len(pts)-1]
}

func dist(a, b sheet.Pt) float64 { return math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y)) }

// symbolOf returns the id of a piece's symbol.
func symbolOf(pc *placement.Piece) string { return symbolNamed(pc.Item.Kind.Symbol) }

// symbolNamed returns id, or that of other hardware where there is no such
// symbol.
func symbolNamed(id string) string {
	if _, ok := symbols.For(id); ok {
		return id
	}
	return "sym-generic"
}

// symbolSize returns the size on paper of a piece's symbol.
func (p *part) symbolSize(pc *placement.Piece) (w, h sheet.MM) {
	s, _ := symbols.For(symbolOf(pc))
	k := sheet.MM(symbolScale(p.Context))
	return s.Box.W * k, s.Box.H * k
}

// gatherPieces returns the pieces that show on the part: its own, and those
// of other parts that reach into it.
func (p *part) gatherPieces() (out []*shown) {
	for _, pc := range p.pieces {
		pts := p.centerLine(p.vp, pc)
		if len(pts) == 0 {
			continue
		}
		own := p.owns(pc)
		if u := p.station(pc); !own && !p.isBand(pc) && !p.inOverlap(u) {
			continue
		}
		out = append(out, &shown{pc: pc, mark: p.PieceMark(pc, own), line: pts, steel: p.steel(p.vp, pc), own: own})
	}
	return out
}

// inOverlap tells whether a station lies beyond one of the match lines.
func (p *part) inOverlap(u float64) bool {
	return p.left != nil && u < p.from || p.right != nil && u >= p.to || p.alone()
}

// drawSteel draws the steel of pieces to length, the nearest last. What lies on the
// far face is open, what lies on the near one solid.
func (p *part) drawSteel(b *label.Board, list []*shown) {
	list = slices.Clone(list)
	slices.SortStableFunc(list, func(a, b *shown) int { return cmp.Compare(nearness(a.pc.Face), nearness(b.pc.Face)) })
	for _, d := range list {
		for _, t := range d.steel {
			polygonPiece(p.page, bandStyle(d.pc.Face, t.w), band(t), d.mark)
			for _, r := range t.rects() {
				p.page.Box("piece", d.pc.Tag, r)
				b.Block(r)
			}
		}
	}
}

// nearness ranks the faces of a wall by how near they are to who looks at it.
func nearness(f plan.Face) int {
	switch f {
	case plan.Inside:
		return 0
	case plan.Outside:
		return 2
	}
	return 1
}

func bandStyle(face plan.Face, w sheet.MM) sheet.Style {
	s := sheet.Style{Fill: sheet.Black, Layer: sheet.LayerHardware}
	if face == plan.Inside {
		s.Fill, s.Pen = sheet.White, sheet.PenDim
		if w > 1.2 {
			s.Pen = sheet.PenMember
		}
	}
	return s
}

// band returns the outline of a length of steel.
func band(t strip) []sheet.Pt {
	d := geom.Vec2{X: float64(t.b.X - t.a.X), Y: float64(t.b.Y - t.a.Y)}.Unit().Left().Mul(float64(t.w) / 2)
	n := sheet.Pt{X: sheet.MM(d.X), Y: sheet.MM(d.Y)}
	m := sheet.Pt{X: -n.X, Y: -n.Y}
	return []sheet.Pt{t.a.Add(n), t.b.Add(n), t.b.Add(m), t.a.Add(m)}
}

// placeSymbols finds a place for each symbol: at the piece's middle, further
// along its steel, or just beside its place where others stand or figures
// are written.
func (p *part) placeSymbols(list []*shown, figures []sheet.Rect) {
	b := label.NewBoard(p.paper().Rect())
	for _, r := range figures {
		b.Block(r)
	}
	labels := make([]label.Label, len(list))
	for i, d := range list {
		w, h := p.symbolSize(d.pc)
		labels[i] = label.Label{Name: d.pc.Tag, W: w, H: h, Near: p.symbolPlaces(d, w, h)}
	}
	for i, at := range b.Place(labels) {
		d := list[i]
		d.symbol = at.Rect
		if !at.OK {
			c := labels[i].Near[0]
			d.symbol = sheet.Rect{X: c.X - labels[i].W/2, Y: c.Y - labels[i].H/2, W: labels[i].W, H: labels[i].H}
		}
	}
}

func (p *part) symbolPlaces(d *shown, w, h sheet.MM) (out []sheet.Pt) {
	if len(d.line) > 1 {
		for _, t := range [...]float64{0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82} {
			out = append(out, along(d.line, t))
		}
		return out
	}
	c := d.line[0]
	dx, dy := w+0.9, h+0.9
	for _, k := range [...][2]sheet.MM{{0, 0}, {0, 0.5}, {0, -0.5}, {0.5, 0}, {-0.5, 0}, {0, 1}, {0, -1}, {1, 0}, {-1, 0}, {1, 1}, {-1, 1}, {1, -1}, {-1, -1}} {
		out = append(out, sheet.Pt{X: c.X + k[0]*dx, Y: c.Y + k[1]*dy})
	}
	return out
}

// drawSymbols draws the symbols where they were placed.
func (p *part) drawSymbols(b *label.Board, list []*shown) {
	k := symbolScale(p.Context)
	for _, d := range list {
		s, _ := symbols.For(symbolOf(d.pc))
		p.pointer(d)
		at := sheet.Pt{X: d.symbol.X - s.Box.X*sheet.MM(k), Y: d.symbol.Y - s.Box.Y*sheet.MM(k)}
		p.page.Use(s.ID, at, 0, k, d.mark)
		p.page.Box("piece", d.pc.Tag, d.symbol)
		b.Block(d.symbol)
	}
}

// pointer leads from a symbol that had to stand aside to the place of its
// piece.
func (p *part) pointer(d *shown) {
	c := d.symbol.Center()
	if len(d.line) > 1 || dist(c, d.line[0]) < 0.75*float64(max(d.symbol.W, d.symbol.H)) {
		return
	}
	p.page.Add(sheet.Line{Style: page.Style(sheet.PenMember, sheet.LayerHardware), A: c, B: d.line[0], Piece: d.mark},
		sheet.Circle{Style: sheet.Style{Fill: sheet.Black, Layer: sheet.LayerHardware}, C: d.line[0], R: 0.45, Piece: d.mark})
}

// numberLabel returns the label of a piece's legend number.
func (p *part) numberLabel(piece *shown) label.Label {
	radius := p.LegendRadius()
	number := label.Label{Name: "legend of " + piece.pc.Tag, W: 2 * radius, H: 2 * radius}
	center, aside, above := piece.symbol.Center(), piece.symbol.W/2+radius+0.5, piece.symbol.H/2+radius+0.5
	add := func(x, y sheet.MM) { number.Near = append(number.Near, sheet.Pt{X: x, Y: y}) }
	number.Anchors = append(number.Anchors, center)
	add(center.X+aside, center.Y)
	add(center.X-aside, center.Y)
	if len(piece.line) > 1 {
		off := bandWidth(p.vp, piece.pc)/2 + radius + 0.5
		for _, t := range [...]float64{0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9} {
			on := along(piece.line, t)
			add(on.X+off, on.Y)
			add(on.X-off, on.Y)
		}
		from, to := piece.line[0], piece.line[len(piece.line)-1]
		for _, end := range [...]sheet.Pt{from, to} {
			if end.Y < center.Y {
				add(end.X, end.Y-radius-0.6)
			} else {
				add(end.X, end.Y+radius+0.6)
			}
		}
		number.Anchors = append(number.Anchors, along(piece.line, 0.3), along(piece.line, 0.7), along(piece.line, 0.1), along(piece.line, 0.9))
		return number
	}
	for _, corner := range [...][2]sheet.MM{{1, -0.6}, {-1, -0.6}, {1, 0.6}, {-1, 0.6}, {0, -1}, {0, 1}, {0.6, -1}, {-0.6, -1}, {0.6, 1}, {-0.6, 1}} {
		add(center.X+corner[0]*aside, center.Y+corner[1]*above)
	}
	return number
}

// polygonPiece draws a closed outline that belongs to a piece.
func polygonPiece(p *page.Page, s sheet.Style, pts []sheet.Pt, pc *sheet.Piece) {
	p.Add(sheet.Polyline{Style: s, Pts: pts, Closed: true, Piece: pc})
}
