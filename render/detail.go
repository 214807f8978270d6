package render

import (
	"cmp"
	"fmt"
	"strings"

	"galewright/plan/framing"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/schedule"
	"galewright/render/sheet"
)

var _ = register(view{Series: 5, Order: 10, Name: "details", Pages: detailPages})

// detailItem is what one detail shows: an item of the catalogue and the piece
// of it whose members stand for all.
type detailItem struct {
	*hardware.Item
	Number int
	Piece  *placement.Piece // the first placed
	Joint  *framing.Joint
	Joints []framing.Kind // all kinds of joint it is used at
}

func newDetailItem(l *schedule.Line) detailItem {
	it := detailItem{Item: l.Item, Number: l.Number, Piece: l.Pieces[0], Joint: l.Pieces[0].Joint}
	seen := map[framing.Kind]bool{}
	for _, p := range l.Pieces {
		if !seen[p.Joint.Kind] {
			seen[p.Joint.Kind] = true
			it.Joints = append(it.Joints, p.Joint.Kind)
		}
	}
	return it
}

// detailFigure draws the views of one item; which one is by the item's symbol, the
// shape family it belongs to.
type detailFigure func(d *draft, it detailItem)

func figureOf(it detailItem) detailFigure {
	flat := it.Joint.Kind == framing.PlateSplice || it.Joint.Kind == framing.Collector || it.Joint.Kind == framing.WallCorner
	switch it.Kind.Symbol {
	case "sym-clip":
		return drawClip
	case "sym-wrap":
		return drawWrap
	case "sym-ridge-strap":
		return drawRidgeStrap
	case "sym-holdown":
		return drawHoldown
	case "sym-holdown-pair":
		return drawHoldownPair
	case "sym-anchor":
		return drawAnchor
	case "sym-post-base", "sym-post-cap":
		return drawPostShoe
	case "sym-hanger":
		return drawHanger
	}
	switch {
	case it.Joint.Kind == framing.RafterRidge && it.Kind.Strap:
		return drawRidgeStrap
	case it.Kind.Strap && flat:
		return drawFlatBand
	case it.Kind.Strap:
		return drawBand
	}
	return drawPlate
}

// detailPages packs the details of all items used onto pages, each at the
// largest scale that leaves it at most half a page wide and a page high.
func detailPages(c *context) []*page {
	var drafts []*draft
	var marks []string
	var shared []string
	for _, l := range c.Schedule.Lines {
		if len(l.Pieces) == 0 {
			continue
		}
		d, s := c.detail(newDetailItem(l))
		drafts, marks, shared = append(drafts, d), append(marks, l.Item.Mark), append(shared, s.Name)
	}
	return c.packDetails(drafts, marks, shared)
}

// detail draws one item at the largest scale that fits.
func (c *context) detail(it detailItem) (*draft, Scale) {
	area := c.area()
	w, h := area.W, area.H
	if !c.Paper.Small() {
		w, h = area.W*0.36, area.H*0.6
	}
	var d *draft
	var s Scale
	for _, s = range c.detailScales() {
		d = c.newDraft(s)
		figureOf(it)(d, it)
		d.finish()
		d.detailTitle(it, s)
		if r := d.extent(); r.W <= w && r.H <= h {
			break
		}
	}
	return d, s
}

// detailTitle sets number, mark, size and scale over a detail, and how many
// nails and when below it.
func (d *draft) detailTitle(it detailItem, s Scale) {
	r, z := d.extent(), d.Size
	w := max(r.W, 30*z.Note)
	rad := d.legendRadius()
	lines := wrap(d.sizeWords(it)+"; scale "+s.Name, z.Note, false, w)
	y := r.Y - 4 - sheet.MM(len(lines))*z.Note*1.5
	d.legendCircle(it.Number, sheet.Pt{X: r.X + rad, Y: y - z.Head*0.5 - 1}, "legend of detail "+it.Mark, nil)
	x := r.X + 2*rad + 2
	t := lettered{S: it.Mark, Cap: z.Head, At: sheet.Pt{X: x, Y: y - 1}, Bold: true, Role: "title", Layer: sheet.LayerNote}
	b := d.boxedText("title", t)
	k := d.boxedText("title", lettered{S: it.Kind.Name, Cap: z.Note, At: sheet.Pt{X: b.X + b.W + 3, Y: y - 1}, Role: "note"})
	d.use(it.Kind.Symbol, sheet.Pt{X: k.X + k.W + 6, Y: y - z.Head*0.5 - 1}, 0, 1, nil)
	d.lines(sheet.Pt{X: r.X, Y: y}, lines)
	foot := wrap(d.footWords(it), z.Note, false, w)
	d.lines(sheet.Pt{X: r.X, Y: r.Y + r.H + 2}, foot)
}

// lines sets lines of notes below at, and claims their place.
func (d *draft) lines(at sheet.Pt, lines []string) {
	h := d.Size.Note
	for i, s := range lines {
		d.boxedText("label", lettered{S: s, At: sheet.Pt{X: at.X, Y: at.Y + h*1.4 + sheet.MM(i)*h*1.5}, Role: "note"})
	}
}

// sizeWords says how big an item is, as the catalogue has it.
func (c *context) sizeWords(it detailItem) string {
	var w []string
	if it.Gauge != "" {
		w = append(w, gaugeText(it.Gauge))
	} else if it.Thickness > 0 {
		w = append(w, c.length(it.Thickness)+" thick")
	}
	if it.Width > 0 {
		w = append(w, c.length(it.Width)+" wide")
	}
	if it.Length > 0 {
		w = append(w, c.length(it.Length)+" long")
	} else if it.Piece.Cut > 0 {
		w = append(w, "cut "+c.length(it.Piece.Cut))
	}
	if it.Rod > 0 {
		w = append(w, c.length(it.Rod)+" rod")
	}
	if it.Grade != "" {
		w = append(w, it.Grade)
	}
	if it.Coating != "" {
		w = append(w, it.Coating)
	}
	return strings.Join(w, ", ")
}

// footWords says what an item is used for and when it goes on.
func (c *context) footWords(it detailItem) string {
	var at []string
	for _, k := range it.Joints {
		at = append(at, string(k))
	}
	s := fmt.Sprintf("At %s. Goes on %s", strings.Join(at, ", "), it.Phase.Name)
	if it.Face != "" {
		s += ", " + it.Face + " face"
	}
	s += ". Black holes take a nail"
	if _, _, guessed := it.ends(); guessed {
		s += "; the catalogue gives no full hole pattern: spacing drawn at common practice's least"
	}
	s += "."
	if it.Note != "" {
		s += " " + strings.TrimSuffix(it.Note, ".") + "."
	}
	return s
}

// packDetails sets drafts in rows, left to right and down, page after page.
func (c *context) packDetails(drafts []*draft, marks, scales []string) (pages []*page) {
	area := c.area()
	const gap sheet.MM = 10
	var p *page
	var x, y, row sheet.MM
	var scale string
	for i, d := range drafts {
		r := d.extent()
		if p != nil && x > 0 && x+r.W > area.W {
			x, y, row = 0, y+row+gap, 0
		}
		if p == nil || y > 0 && y+r.H > area.H {
			p = c.newPage("", "")
			pages = append(pages, p)
			x, y, row, scale = 0, 0, 0, ""
		}
		p.Keys = append(p.Keys, "mark "+marks[i])
		scale = shareScale(scale, scales[i])
		p.Scale = scale
		p.stamp(d, sheet.Pt{X: area.X + x - r.X, Y: area.Y + y - r.Y})
		x, row = x+r.W+gap, max(row, r.H)
	}
	for i, p := range pages {
		p.Name = "Hardware details"
		if len(pages) > 1 {
			p.Name = fmt.Sprintf("Hardware details, %d of %d", i+1, len(pages))
		}
	}
	return pages
}

// shareScale is the scale of a sheet whose views have the given ones.
func shareScale(a, b string) string {
	if a == "" || a == b {
		return b
	}
	return "as noted"
}

// stamp makes the page draw d moved by by, after what it draws already.
func (p *page) stamp(d *draft, by sheet.Pt) {
	before := p.Draw
	p.Draw = func(p *page) {
		if before != nil {
			before(p)
		}
		for _, m := range d.Marks {
			p.add(moved(m, by))
		}
		for _, b := range d.Boxes {
			b.X, b.Y = b.X+by.X, b.Y+by.Y
			p.Boxes = append(p.Boxes, b)
		}
	}
}

// moved returns m moved by by.
func moved(m sheet.Mark, by sheet.Pt) sheet.Mark {
	switch m := m.(type) {
	case sheet.Line:
		m.A, m.B = m.A.Add(by), m.B.Add(by)
		return m
	case sheet.Polyline:
		pts := make([]sheet.Pt, len(m.Pts))
		for i, p := range m.Pts {
			pts[i] = p.Add(by)
		}
		m.Pts = pts
		return m
	case sheet.Circle:
		m.C = m.C.Add(by)
		return m
	case sheet.Text:
		m.At = m.At.Add(by)
		return m
	case sheet.Use:
		m.At = m.At.Add(by)
		return m
	}
	return m
}

// member returns the i-th member of the joint, or nil.
func (it detailItem) member(i int) *framing.Member {
	if i >= len(it.Joint.Members) {
		return nil
	}
	return it.Joint.Members[i]
}

// section returns breadth and depth of the joint's i-th member, or those of a
// 2x6 when the joint has none.
func (it detailItem) section(i int) (breadth, depth float64) {
	m := it.member(i)
	if m == nil {
		return 1.5, 5.5
	}
	return cmp.Or(m.Section.Width(), 1.5), cmp.Or(m.Section.Depth, 5.5)
}

// memberName returns role and section of the i-th member, "stud 2x6".
func (it detailItem) memberName(i int) string {
	m := it.member(i)
	if m == nil {
		return ""
	}
	return strings.TrimSpace(string(m.Role) + " " + m.Section.Text)
}
