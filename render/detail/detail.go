package detail

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/schedule"
	"galewright/render/page"
	"galewright/render/sheet"
)

// detailItem is what one detail shows: an item of the catalog and the piece
// of it whose members stand for all.
type detailItem struct {
	*hardware.Item
	Number int
	Piece  *placement.Piece // the first of the commonest members
	Joint  *framing.Joint
	Joints []plan.JointKind // all kinds of joint it is used at
}

func newDetailItem(l *schedule.Line) detailItem {
	pc := commonest(l.Pieces)
	it := detailItem{Item: l.Item, Number: l.Number, Piece: pc, Joint: pc.Joint}
	seen := map[plan.JointKind]bool{}
	for _, p := range l.Pieces {
		if !seen[p.Joint.Kind] {
			seen[p.Joint.Kind] = true
			it.Joints = append(it.Joints, p.Joint.Kind)
		}
	}
	return it
}

// commonest returns the first of the pieces that hold the kind of member, at
// the kind of joint, that most of them hold.
func commonest(pieces []*placement.Piece) *placement.Piece {
	key := func(pc *placement.Piece) string {
		k := string(pc.Joint.Kind) + string(pc.Face)
		if m := pc.Joint.First(); m != nil {
			k += string(m.Role) + m.Section.Text
		}
		return k
	}
	count := map[string]int{}
	for _, pc := range pieces {
		count[key(pc)]++
	}
	best := pieces[0]
	for _, pc := range pieces[1:] {
		if count[key(pc)] > count[key(best)] {
			best = pc
		}
	}
	return best
}

// detailFigure draws the views of one item; which one is by the item's symbol, the
// shape family it belongs to.
type detailFigure func(d *draft, it detailItem)

func figureOf(it detailItem) detailFigure {
	flat := it.Joint.Kind == plan.PlateSplice || it.Joint.Kind == plan.Collector || it.Joint.Kind == plan.WallCorner
	switch it.Kind.Symbol {
	case "sym-clip":
		return drawClip
	case "sym-wrap":
		return drawWrap
	case "sym-ridge-strap":
		return drawRidgeStrap
	case "sym-hold-down", "sym-hold-down-pair":
		switch {
		case it.Joint.Wall == nil || it.Joint.Level == nil:
			return drawPlate
		case it.Bodies == 2:
			return drawHoldDownPair
		}
		return drawHoldDown
	case "sym-anchor":
		return drawAnchor
	case "sym-post-base", "sym-post-cap":
		return drawPostShoe
	case "sym-hanger":
		return drawHanger
	}
	switch {
	case it.Joint.Kind == plan.RafterRidge && it.Kind.Strap:
		return drawRidgeStrap
	case it.Kind.Strap && flat:
		return drawFlatBand
	case it.Kind.Strap:
		return drawBand
	}
	return drawPlate
}

// Pages packs the details of all items used onto pages, each at the
// largest scale that leaves it at most half a page wide and a page high.
func Pages(c *page.Context) []*page.Page {
	var drafts []*draft
	var marks []string
	var shared []string
	for _, l := range c.Schedule.Lines {
		if len(l.Pieces) == 0 {
			continue
		}
		d, s := detail(c, newDetailItem(l))
		drafts, marks, shared = append(drafts, d), append(marks, l.Item.Mark), append(shared, s.Name)
	}
	return packDetails(c, drafts, marks, shared)
}

// room is what a detail may take, mm, at scales no smaller than a ratio.
type room struct {
	w, h  sheet.MM
	least float64
}

// detailRooms lists what a detail may take, the best first. On large paper
// several share a sheet; on small paper two do, where the scale stays good
// to nail from.
func detailRooms(c *page.Context) []room {
	a := c.DrawingArea()
	const good, fair, any = 5, 8, 1e9
	if !c.Paper.Small() {
		return []room{{a.W * 0.36, a.H * 0.6, any}, {a.W, a.H, any}}
	}
	half := a.W/2 - detailGap/2
	return []room{{half, a.H, good}, {a.W, a.H, good}, {half, a.H, fair}, {a.W, a.H, fair}, {half, a.H, any}, {a.W, a.H, any}}
}

// detail draws one item at the largest scale that fits its best room.
func detail(c *page.Context, it detailItem) (d *draft, s page.Scale) {
	scales := allDetailScales(c)
	drafts := make([]*draft, len(scales))
	for _, r := range detailRooms(c) {
		for i, s := range scales {
			if s.Ratio > r.least {
				break
			}
			if drafts[i] == nil {
				drafts[i] = drawDetail(c, it, s)
			}
			if e := drafts[i].extent(); e.W <= r.w && e.H <= r.h {
				return drafts[i], s
			}
		}
	}
	last := len(scales) - 1
	return drafts[last], scales[last]
}

// drawDetail draws one item at a scale.
func drawDetail(c *page.Context, it detailItem, s page.Scale) *draft {
	d := newDraft(c, s)
	figureOf(it)(d, it)
	d.finish()
	d.detailTitle(it, s)
	return d
}

// allDetailScales are the scales for details with two smaller ones, for the
// tallest pieces on the smallest paper.
func allDetailScales(c *page.Context) []page.Scale {
	if c.Metric() {
		return append(slices.Clone(c.DetailScales()), page.Scale{Name: "1:25", Ratio: 25})
	}
	return append(slices.Clone(c.DetailScales()), page.Scale{Name: `3/4" = 1'-0"`, Ratio: 16}, page.Scale{Name: `1/2" = 1'-0"`, Ratio: 24})
}

// detailTitle sets number, mark, size and scale over a detail, and how many
// nails and when below it.
func (d *draft) detailTitle(it detailItem, s page.Scale) {
	r, z := d.extent(), d.Size
	w := max(r.W, 30*z.Note)
	rad := d.LegendRadius()
	lines := page.Wrap(sizeWords(d.Context, it)+"; scale "+s.Name, z.Note, false, w)
	y := r.Y - 4 - sheet.MM(len(lines))*z.Note*1.5
	d.LegendCircle(it.Number, sheet.Pt{X: r.X + rad, Y: y - z.Head*0.5 - 1}, "legend of detail "+it.Mark, nil)
	x := r.X + 2*rad + 2
	t := page.Lettered{S: it.Mark, Cap: z.Head, At: sheet.Pt{X: x, Y: y - 1}, Bold: true, Role: "title", Layer: sheet.LayerNote}
	b := d.BoxedText("title", t)
	k := d.BoxedText("title", page.Lettered{S: string(it.Kind.Name), Cap: z.Note, At: sheet.Pt{X: b.X + b.W + 3, Y: y - 1}, Role: "note"})
	d.Use(it.Kind.Symbol, sheet.Pt{X: k.X + k.W + 6, Y: y - z.Head*0.5 - 1}, 0, 1, nil)
	d.lines(sheet.Pt{X: r.X, Y: y}, lines)
	foot := page.Wrap(footWords(d.Context, it), z.Note, false, w)
	d.lines(sheet.Pt{X: r.X, Y: r.Y + r.H + 2}, foot)
}

// lines sets lines of notes below at, and claims their place.
func (d *draft) lines(at sheet.Pt, lines []string) {
	h := d.Size.Note
	for i, s := range lines {
		d.BoxedText("label", page.Lettered{S: s, At: sheet.Pt{X: at.X, Y: at.Y + h*1.4 + sheet.MM(i)*h*1.5}, Role: "note"})
	}
}

// sizeWords says how big an item is, as the catalog has it.
func sizeWords(c *page.Context, it detailItem) string {
	var w []string
	if it.Gauge != "" {
		w = append(w, page.GaugeText(it.Gauge))
	} else if it.Thickness > 0 {
		w = append(w, c.Length(it.Thickness)+" thick")
	}
	if it.Width > 0 {
		w = append(w, c.Length(it.Width)+" wide")
	}
	if it.Length > 0 {
		w = append(w, c.Length(it.Length)+" long")
	} else if it.Piece.Cut > 0 {
		w = append(w, "cut "+c.Length(it.Piece.Cut))
	}
	if it.Rod > 0 {
		w = append(w, c.Length(it.Rod)+" rod")
	}
	if it.Grade != "" {
		w = append(w, it.Grade)
	}
	if it.Coating != "" {
		w = append(w, string(it.Coating))
	}
	return strings.Join(w, ", ")
}

// footWords says what an item is used for and when it goes on.
func footWords(c *page.Context, it detailItem) string {
	var at []string
	for _, k := range it.Joints {
		at = append(at, string(k))
	}
	s := fmt.Sprintf("At %s. Install %s", strings.Join(at, ", "), it.Phase.Name)
	if it.Face != "" && it.Face != plan.Through {
		s += ", " + string(it.Face) + " face"
	}
	s += "."
	if len(it.Fasteners) > 0 {
		s += " Fill the black holes"
		if _, _, guessed := it.ends(); guessed {
			s += "; the catalog gives no full hole pattern, so spacing is drawn at the minimum of common practice"
		}
		s += "."
	}
	if cs := coatings(it); len(cs) > 0 {
		s += " Fasteners " + strings.Join(cs, ", ") + "."
	}
	if it.Note != "" {
		s += " Note: " + strings.TrimSuffix(it.Note, ".") + "."
	}
	return s
}

// coatings names the coatings of an item's fasteners and rod, each once.
func coatings(it detailItem) (out []string) {
	add := func(c plan.Coating) {
		if s := cmp.Or(string(c), "coating blank"); !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	for _, f := range it.Fasteners {
		add(f.Coating)
	}
	if it.Rod > 0 && it.Kind.Shape != hardware.Rod {
		add(it.RodCoating)
	}
	return out
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
