package elevation

import (
	"math"

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
	pose   pose       // how its symbol lies
	symbol sheet.Rect // where its symbol stands
	own    bool       // at home on this sheet
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
// its steel, and its symbol at its own place.
func (p *part) pieceRects(v *page.Viewport, pc *placement.Piece) (out []sheet.Rect) {
	for _, s := range p.steel(v, pc) {
		out = append(out, s.rects()...)
	}
	if pts := p.centerLine(v, pc); len(pts) > 0 {
		out = append(out, p.pose(v, pc).rect(pts))
	}
	return out
}

// isBand tells whether a piece shows as steel shown to length.
func (p *part) isBand(pc *placement.Piece) bool { return len(p.path(pc)) > 1 }

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
		out = append(out, &shown{pc: pc, mark: p.PieceMark(pc, own), line: pts, steel: p.steel(p.vp, pc), pose: p.pose(p.vp, pc), own: own})
	}
	return out
}

// inOverlap tells whether a station lies beyond one of the match lines.
func (p *part) inOverlap(u float64) bool {
	return p.left != nil && u < p.from || p.right != nil && u >= p.to || p.alone()
}

// placeSymbols finds a place for each symbol: that of its piece, along its steel
// where another stands on it or figures are written.
func (p *part) placeSymbols(list []*shown, figures []sheet.Rect) {
	b := label.NewBoard(p.paper().Rect())
	for _, r := range figures {
		b.Block(r)
	}
	var labels []label.Label
	var slide []*shown
	for _, d := range list {
		d.symbol = d.pose.rect(d.line)
		if len(d.line) > 1 {
			labels = append(labels, label.Label{Name: d.pc.Tag, W: d.symbol.W, H: d.symbol.H, Near: symbolPlaces(d)})
			slide = append(slide, d)
		}
	}
	for i, at := range b.Place(labels) {
		if at.OK {
			slide[i].symbol = at.Rect
		}
	}
}

// symbolPlaces are places along the steel, the middle first.
func symbolPlaces(d *shown) (out []sheet.Pt) {
	for _, t := range [...]float64{0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82} {
		at := along(d.line, t)
		out = append(out, at.Add(d.pose.off))
	}
	return out
}

// drawSymbols draws the symbols where they were placed.
func (p *part) drawSymbols(b *label.Board, list []*shown) {
	for _, d := range list {
		p.page.Add(d.pose.use(d.symbol.Center(), d.mark))
		p.page.Box("piece", d.pc.Tag, d.symbol)
		b.Block(d.symbol)
	}
}

// body returns what a piece of one place takes on paper; of one along a line its symbol.
func (d *shown) body() sheet.Rect {
	r := d.symbol
	for _, s := range d.steel {
		for _, q := range s.rects() {
			if len(d.line) == 1 {
				r = r.Union(q)
			}
		}
	}
	return r
}

// numberLabel returns the label of a piece's legend number.
func (p *part) numberLabel(piece *shown) label.Label {
	radius := p.LegendRadius()
	number := label.Label{Name: "legend of " + piece.pc.Tag, W: 2 * radius, H: 2 * radius}
	body := piece.body()
	center, aside, above := body.Center(), body.W/2+radius+0.5, body.H/2+radius+0.5
	add := func(x, y sheet.MM) { number.Near = append(number.Near, sheet.Pt{X: x, Y: y}) }
	number.Anchors = append(number.Anchors, piece.pose.anchors(piece.symbol)...)
	add(center.X+aside, center.Y)
	add(center.X-aside, center.Y)
	if len(piece.line) > 1 {
		off := piece.wide()/2 + radius + 0.5
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
