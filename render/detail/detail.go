package detail

import (
	"slices"

	"galewright/plan/geom"
	"galewright/render/page"
	"galewright/render/scene"
	"galewright/render/sheet"
)

// Pages packs the details of all conditions onto pages, each at the largest
// scale that leaves it at most half a page wide and a page high.
func Pages(c *page.Context) []*page.Page {
	st, house := c.Schedule.Steel, scene.New(c.House)
	var drafts []*draft
	var marks, scales []string
	for _, l := range c.Schedule.Lines {
		for _, x := range conditionsOf(l, st) {
			d, s := drawn(c, newShot(x, house))
			drafts, marks, scales = append(drafts, d), append(marks, l.Item.Mark), append(scales, s.Name)
		}
	}
	return packDetails(c, drafts, marks, scales)
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

// drawn draws a shot at the largest scale that fits its best room.
func drawn(c *page.Context, s *shot) (*draft, page.Scale) {
	scales := allDetailScales(c)
	drafts := make([]*draft, len(scales))
	for _, r := range detailRooms(c) {
		for i, scale := range scales {
			if scale.Ratio > r.least {
				break
			}
			if drafts[i] == nil {
				drafts[i] = s.draw(c, scale)
			}
			if e := drafts[i].extent(); e.W <= r.w && e.H <= r.h {
				return drafts[i], scale
			}
		}
	}
	last := len(scales) - 1
	return drafts[last], scales[last]
}

// allDetailScales are the scales for details with two smaller ones, for the
// tallest pieces on the smallest paper.
func allDetailScales(c *page.Context) []page.Scale {
	if c.Metric() {
		return append(slices.Clone(c.DetailScales()), page.Scale{Name: "1:25", Ratio: 25})
	}
	return append(slices.Clone(c.DetailScales()), page.Scale{Name: `3/4" = 1'-0"`, Ratio: 16}, page.Scale{Name: `1/2" = 1'-0"`, Ratio: 24})
}

// viewGap is kept between two views of a detail, mm.
const viewGap sheet.MM = 9

// draw draws the views of a shot side by side, with figures, notes and title.
func (s *shot) draw(c *page.Context, scale page.Scale) *draft {
	d := newDraft(c, scale)
	for i, l := range s.looks {
		d.stand(s, l, i == 0)
		d.paint(s, l)
		d.breaks(s, l)
		d.head(0, l.name)
		d.figures(s, l, i)
		d.names(s, l)
	}
	d.setNotes()
	d.slant(s)
	d.setHeads()
	d.sayWhat(s, scale)
	return d
}

// slant draws the slanted view beside the others, as large as they are high, at
// most a hand wide.
func (d *draft) slant(s *shot) {
	e := d.extent()
	high := min(max(e.H, 30), 75)
	w, h := 2*s.halfWide(s.iso), 2*s.halfHigh(s.iso)
	k := d.k
	d.k = min(float64(high)/h, 70/w, k)
	d.cutsU, d.cutsV = nil, nil
	d.origin = sheet.Pt{X: e.X + e.W + viewGap + sheet.MM(w/2*d.k), Y: 0}
	d.paint(s, s.iso)
	d.head(0, s.iso.name)
	d.k = k
}

// stand moves the draft to where the next view goes, right of what is drawn, and
// leaves out lengths of it that show nothing.
func (d *draft) stand(s *shot, l look, first bool) {
	d.cutsU, d.cutsV = s.cuts(l)
	d.origin = sheet.Pt{}
	w := s.halfWide(l)
	left := -squeeze(-w, d.k, d.cutsU)
	if !first {
		e := d.extent()
		d.origin.X = e.X + e.W + viewGap + left
	}
}

// halfWide is half the width of what is cut out in a look, in.
func (s *shot) halfWide(l look) (w float64) {
	for i, a := range []geom.Vec3{s.box.along, s.box.in, s.box.up} {
		x := a.Dot(l.view.Right)
		w += s.half[i] * max(x, -x)
	}
	return w
}

// halfHigh is half its height, in.
func (s *shot) halfHigh(l look) (h float64) {
	for i, a := range []geom.Vec3{s.box.along, s.box.in, s.box.up} {
		x := a.Dot(l.view.Up)
		h += s.half[i] * max(x, -x)
	}
	return h
}

// breaks draws the break lines of what is left out of a view.
func (d *draft) breaks(s *shot, l look) {
	w, h := s.halfWide(l), s.halfHigh(l)
	d.broken(-w, w)
	d.brokenU(-h, h)
}

// cuts returns the lengths of a look, about its middle, that show nothing but
// steel and wood running on: those between fasteners, ends, rods' ends and
// places where another member begins.
func (s *shot) cuts(l look) (u, v []cut) {
	return s.still(l, l.view.Right, s.halfWide(l)), s.still(l, l.view.Up, s.halfHigh(l))
}

// The least length that is worth leaving out, and what is kept around each
// thing that is shown, in.
const (
	leastCut = 7.5 // more than a rim of 2x12 would leave
	keepNear = 2.0
)

// still finds what may be left out along a direction of a picture.
func (s *shot) still(l look, dir geom.Vec3, half float64) (out []cut) {
	mid := s.center.Dot(dir)
	var marks []float64
	put := func(p geom.Vec3) { marks = append(marks, p.Dot(dir)-mid) }
	for _, p := range points(s.Body) {
		put(p)
	}
	for _, r := range s.Body.Rods {
		d := r.B.Sub(r.A).Unit()
		for _, x := range r.Passes {
			put(r.A.Add(d.Mul(x.From)))
			put(r.A.Add(d.Mul(x.To)))
		}
	}
	for _, f := range s.Body.Fasteners {
		put(f.Head)
	}
	for _, h := range s.Body.Open {
		put(h.At)
	}
	for _, x := range s.ends(dir) {
		marks = append(marks, x-mid)
	}
	if len(s.Body.Bands) > 0 {
		marks = append(marks, s.stops(dir, s.main())...)
	}
	marks = append(marks, -half, half)
	slices.Sort(marks)
	for i := 1; i < len(marks); i++ {
		if a, b := marks[i-1]+keepNear, marks[i]-keepNear; b-a > leastCut && marks[i] <= half && marks[i-1] >= -half {
			out = append(out, cut{a, b})
		}
	}
	return out
}

// ends returns where the members that the body holds begin and end along a
// direction, in.
func (s *shot) ends(dir geom.Vec3) (out []float64) {
	holds := s.Body.Members()
	for _, l := range s.Body.Piece.Laid {
		holds = append(append(holds, l.Member), l.Others...)
	}
	for _, t := range s.scene.Things() {
		if m := t.Owner.(scene.Part).Member; m == nil || !slices.Contains(holds, m) {
			continue
		}
		for _, x := range t.Solids {
			lo, hi := x.Along(dir)
			out = append(out, lo, hi)
		}
	}
	return out
}

// sayWhat sets number, mark, size and scale over a detail, and how many nails
// and when below it.
func (d *draft) sayWhat(s *shot, scale page.Scale) {
	r, z := d.extent(), d.Size
	w := max(r.W, 30*z.Note)
	rad := d.LegendRadius()
	lines := page.Wrap(s.size(d.Context)+"; scale "+scale.Name, z.Note, false, w)
	y := r.Y - 4 - sheet.MM(len(lines))*z.Note*1.5
	title := s.Item.Mark
	if s.Letter != "" {
		title += ", " + s.Letter
	}
	d.LegendCircle(s.Number, sheet.Pt{X: r.X + rad, Y: y - z.Head*0.5 - 1}, "legend of detail "+title, nil)
	x := r.X + 2*rad + 2
	b := d.BoxedText("title", page.Lettered{S: title, Cap: z.Head, At: sheet.Pt{X: x, Y: y - 1}, Bold: true, Role: "title", Layer: sheet.LayerNote})
	k := d.BoxedText("title", page.Lettered{S: string(s.Item.Kind.Name), Cap: z.Note, At: sheet.Pt{X: b.X + b.W + 3, Y: y - 1}, Role: "note"})
	d.Use(s.Item.Kind.Symbol, sheet.Pt{X: k.X + k.W + 6, Y: y - z.Head*0.5 - 1}, 0, 1, nil)
	d.lines(sheet.Pt{X: r.X, Y: y}, lines)
	var foot []string
	for _, line := range s.words(d.Context) {
		foot = append(foot, page.Wrap(line, z.Note, false, w)...)
	}
	d.lines(sheet.Pt{X: r.X, Y: r.Y + r.H + 2}, foot)
}

// lines sets lines of notes below at, and claims their place.
func (d *draft) lines(at sheet.Pt, lines []string) {
	h := d.Size.Note
	for i, s := range lines {
		d.BoxedText("label", page.Lettered{S: s, At: sheet.Pt{X: at.X, Y: at.Y + h*1.4 + sheet.MM(i)*h*1.5}, Role: "note"})
	}
}
