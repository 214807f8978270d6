package section

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan/geom"
	"galewright/plan/steel"
	"galewright/render/page"
	"galewright/render/project"
	"galewright/render/scene"
	"galewright/render/sheet"
)

// draw draws the section with its figures.
func (x *cell) draw(p *page.Page) {
	foot := x.at.Y + x.h - x.base
	x.paper.origin = sheet.Pt{X: x.at.X + x.sides[0].width(), Y: foot}
	x.draught(p)
	x.crosses(p)
	x.breakLines(p)
	x.notes(p, 0)
	x.notes(p, 1)
	p.ViewTitle(sheet.Pt{X: x.at.X + 4, Y: x.at.Y + x.h}, x.name(p.Context), x.paper.scale)
}

// The ways a line is drawn, in their order: thin what stands behind, heavy what is cut,
// steel over both.
var (
	behind = page.Style(sheet.PenDim, sheet.LayerMember)
	cutInk = page.Style(sheet.PenCut, sheet.LayerMember)
	turned = page.Style(sheet.PenMember, sheet.LayerHardware) // rods, nuts, washers
	plated = page.Style(sheet.PenHardware, sheet.LayerHardware)
	inks   = []sheet.Style{behind, turned, cutInk, plated}
)

// ink is how a line is drawn.
func ink(l project.Line) sheet.Style {
	part := partOf(l)
	switch {
	case part.Body != nil && part.Kind == scene.Plate:
		return plated
	case part.Body != nil:
		return turned
	case l.State == project.Cut:
		return cutInk
	}
	return behind
}

// draught draws all that is seen.
func (x *cell) draught(p *page.Page) {
	paths := map[sheet.Style]*sheet.Path{}
	for _, q := range inks {
		paths[q] = &sheet.Path{Style: q}
	}
	for _, l := range x.lines {
		if l.State != project.Broken {
			x.stroke(paths[ink(l)], l.A, l.B)
		}
	}
	for _, q := range inks {
		p.Strokes(*paths[q])
	}
}

// stroke adds what the breaks leave of a line of the section to a path.
func (x *cell) stroke(to *sheet.Path, a, b geom.Vec2) {
	for _, s := range x.paper.pieces(a, b) {
		page.Stroke(to, x.paper.at(s[0]), x.paper.at(s[1]))
	}
}

// crosses marks end grain that is cut with the cross of common drafting practice.
func (x *cell) crosses(p *page.Page) {
	path := sheet.Path{Style: behind}
	for _, f := range x.picture.Faces() {
		m := f.Owner.(scene.Part).Member
		if m == nil || !f.Cut || len(f.Loop) != 4 || f.N.Dot(x.view.Toward) < 0.9 || math.Abs(steel.Grain(m).Dot(f.N)) < 0.7 {
			continue
		}
		for _, d := range [][2]int{{0, 2}, {1, 3}} {
			x.stroke(&path, x.flat(f.Loop[d[0]]), x.flat(f.Loop[d[1]]))
		}
	}
	p.Strokes(path)
}

// breakLines draws the zigzag lines at which members are broken off: two at each break,
// one where the section ends.
func (x *cell) breakLines(p *page.Page) {
	for _, l := range x.lines {
		if l.State == project.Broken && x.ends(l) {
			zigzag(p, x.paper.at(l.A), x.paper.at(l.B))
		}
	}
	for _, a := range []axis{0, 1} {
		for _, cut := range x.paper.breaks[a] {
			low, high := x.passing(a, cut)
			x.breakOff(p, a, cut.from, low)
			x.breakOff(p, a, cut.to, high)
		}
	}
}

// ends tells whether a line lies on an end of the picture: where a member is broken off,
// not where it goes on behind what is cut.
func (s *slice) ends(l project.Line) bool {
	for _, a := range []axis{0, 1} {
		for _, end := range []float64{a.of(s.lo), a.of(s.hi)} {
			if math.Abs(a.of(l.A)-end) < 0.01 && math.Abs(a.of(l.B)-end) < 0.01 {
				return true
			}
		}
	}
	return false
}

// breakOff draws the zigzag lines at one side of a break.
func (x *cell) breakOff(p *page.Page, a axis, at float64, list []stretch) {
	for _, s := range list {
		q, r := geom.Vec2{X: at, Y: s.from}, geom.Vec2{X: at, Y: s.to}
		if a == 1 {
			q, r = geom.Vec2{X: s.from, Y: at}, geom.Vec2{X: s.to, Y: at}
		}
		zigzag(p, x.paper.at(q), x.paper.at(r))
	}
}

// zigzag draws a break line a little past both its ends.
func zigzag(p *page.Page, a, b sheet.Pt) {
	d := geom.Vec2{X: float64(b.X - a.X), Y: float64(b.Y - a.Y)}.Unit().Mul(1.5)
	past := sheet.Pt{X: sheet.MM(d.X), Y: sheet.MM(d.Y)}
	p.BreakLine(sheet.Pt{X: a.X - past.X, Y: a.Y - past.Y}, b.Add(past))
}

// item is what stands beside the picture: what is said of a joint, or a height.
type item struct {
	at   sheet.Pt // what it is of
	high sheet.MM
	draw func(r sheet.Rect)
	w    sheet.MM
}

// beside lists what stands at a side of the picture, the highest first.
func (x *cell) beside(p *page.Page, side int) (out []item) {
	for _, n := range x.sides[side].notes {
		out = append(out, item{x.paper.at(n.row.at), noteHigh(p.Context), func(r sheet.Rect) { x.note(p, n, r) }, n.w})
	}
	if side == 1 {
		for _, l := range x.levels(p.Context) {
			text := l.name + " " + p.Length(l.z)
			at := sheet.Pt{X: x.paper.origin.X + x.wide + 1.5, Y: x.paper.at(geom.Vec2{Y: l.z}).Y}
			out = append(out, item{at, p.Size.Dim * 1.8, func(r sheet.Rect) {
				p.BoxedText("dimension", page.Lettered{S: text, Cap: p.Size.Dim, At: sheet.Pt{X: r.X + 0.6, Y: r.Y + r.H/2 + p.Size.Dim/2}, Role: "dimension"})
			}, 0})
		}
	}
	slices.SortStableFunc(out, func(a, b item) int { return cmp.Compare(a.at.Y, b.at.Y) })
	return out
}

// notes sets what stands at one side of the picture, 0 at the left, each with a line to
// what it is of.
func (x *cell) notes(p *page.Page, side int) {
	list := x.beside(p, side)
	var centers, sizes []sheet.MM
	for _, n := range list {
		centers, sizes = append(centers, n.at.Y), append(sizes, n.high)
	}
	for i, y := range within(page.Spread(centers, sizes), sizes, x.at.Y, x.at.Y+x.h-x.base) {
		n := list[i]
		left, elbow := x.at.X, sheet.Pt{X: x.at.X + x.sides[0].w + 0.8, Y: y}
		if side == 1 {
			left = x.paper.origin.X + x.wide + lead
			elbow.X = left - 0.8
		} else {
			p.Line(sheet.PenDim, sheet.LayerLabel, sheet.Pt{X: left + n.w, Y: y}, elbow)
		}
		n.draw(sheet.Rect{X: left, Y: y - n.high/2 + 0.8, W: n.w, H: n.high - 1.6})
		p.Line(sheet.PenDim, sheet.LayerLabel, elbow, n.at)
		if n.w > 0 {
			p.ArrowHead(n.at, elbow)
		}
	}
}

// within moves what runs over the ends of a column back into it.
func within(centers, sizes []sheet.MM, top, bottom sheet.MM) []sheet.MM {
	edge := top
	for i := range centers {
		centers[i] = max(centers[i], edge+sizes[i]/2)
		edge = centers[i] + sizes[i]/2
	}
	edge = bottom
	for i := len(centers) - 1; i >= 0; i-- {
		centers[i] = min(centers[i], edge-sizes[i]/2)
		edge = centers[i] - sizes[i]/2
	}
	return centers
}

// shortArrow is the least length of an arrow of a force, mm.
const shortArrow sheet.MM = 3.4

// note sets what is said of one joint in a rectangle.
func (x *cell) note(p *page.Page, n note, r sheet.Rect) {
	mid := r.Y + r.H/2
	if most := x.largestUplift(); n.link.Uplift() && n.link.Demand > 0 && n.link.Unit == "lb" {
		long := max(shortArrow, r.H*sheet.MM(n.link.Demand/most))
		p.Line(sheet.PenMember, sheet.LayerLabel, sheet.Pt{X: r.X + 1, Y: mid + long/2}, sheet.Pt{X: r.X + 1, Y: mid - long/2 + 1})
		p.ArrowHead(sheet.Pt{X: r.X + 1, Y: mid - long/2}, sheet.Pt{X: r.X + 1, Y: mid + long/2})
	}
	left := r.X + arrowRoom
	for _, no := range n.numbers {
		p.LegendCircle(no, sheet.Pt{X: left + p.LegendRadius(), Y: mid}, "legend of "+n.link.ID, nil)
		left += 2*p.LegendRadius() + 0.8
	}
	z := p.Size.Note
	weak := n.link == x.weakest()
	for i, s := range n.lines {
		p.Text(page.Lettered{S: s, At: sheet.Pt{X: left + 0.7, Y: mid - z*0.4 + sheet.MM(i)*z*1.7}, Bold: weak, Role: "note"})
	}
	text := sheet.Rect{X: left + 0.2, Y: r.Y, W: r.X + r.W - left, H: r.H}
	p.Box("label", "demand at "+n.link.ID, text)
	if weak {
		p.Rect(page.Style(sheet.PenCut, sheet.LayerLabel), text)
	}
}
