package frame

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/render/excerpt"
	"galewright/render/page"
	"galewright/render/sheet"
)

// How far a picture of a corner reaches around it on plan, below the lowest floor and
// above the highest plate, in; and how near joints are to be of one corner.
const (
	cornerReach = 30.0
	cornerBelow = 40.0
	cornerAbove = 16.0
	sameCorner  = 12.0
)

// place is a corner of the house: where it is, which walls meet there, and the way out.
type place struct {
	at      geom.Vec2
	walls   []*plan.Wall
	outward geom.Vec2
}

// placesOf finds the corners at which outside walls meet, in the order of the walls.
// At an inside corner the way out is into the angle.
func placesOf(c *page.Context) (out []*place) {
	for _, j := range c.House.Joints {
		if j.Kind != plan.WallCorner || j.Wall == nil || !j.Wall.Exterior {
			continue
		}
		i := slices.IndexFunc(out, func(p *place) bool { return p.at.Sub(j.At.Flat()).Len() < sameCorner })
		if i < 0 {
			i = len(out)
			out = append(out, &place{at: j.At.Flat()})
		}
		for _, m := range j.Members {
			if w := m.Wall; w != nil && w.Exterior && !slices.Contains(out[i].walls, w) {
				out[i].walls = append(out[i].walls, w)
			}
		}
	}
	for _, p := range out {
		for _, w := range p.walls {
			p.outward = p.outward.Add(outward(w))
		}
	}
	return slices.DeleteFunc(out, func(p *place) bool { return !p.turns() || p.outward.Len() < 0.5 })
}

// turns tells whether walls of two directions meet at the place, not stories of one.
func (p *place) turns() bool {
	return slices.ContainsFunc(p.walls, func(w *plan.Wall) bool { return !geom.InLine(w.Frame().D, p.walls[0].Frame().D) })
}

// name says which walls meet at a corner, the lowest first.
func (p *place) name() string {
	walls := slices.Clone(p.walls)
	slices.SortStableFunc(walls, func(a, b *plan.Wall) int { return cmp.Compare(a.Level.Index, b.Level.Index) })
	var names []string
	for _, w := range walls {
		names = append(names, w.Name)
	}
	return "Corner " + strings.Join(names, ", ")
}

// cornerWidth is the least width of a corner's picture with its numbers, mm.
const cornerWidth sheet.MM = 95

// CornerPages makes the pictures of all corners of the house, side by side.
func CornerPages(c *page.Context) (pages []*page.Page) {
	list := placesOf(c)
	if len(list) == 0 {
		return nil
	}
	z0, z1 := math.Inf(1), math.Inf(-1)
	for _, w := range c.House.Plan.Walls {
		z0, z1 = min(z0, w.Level.Floor-w.Level.FloorDepth-cornerBelow), max(z1, w.PlateTop()+cornerAbove)
	}
	places := excerpt.New(c.Model)
	a := c.DrawingArea()
	per := min(max(1, int(a.W/cornerWidth)), len(list))
	for chunk := range slices.Chunk(list, per) {
		p := c.NewPage("Corners in space", "", "corners")
		p.Draw = func(p *page.Page) {
			w := p.Area.W / sheet.MM(per)
			for i, k := range chunk {
				d := cornerDrawing{p, k, places.Column(k.at, k.outward, cornerReach, z0, z1)}
				d.draw(sheet.Rect{X: p.Area.X + sheet.MM(i)*w, Y: p.Area.Y, W: w, H: p.Area.H})
			}
		}
		pages = append(pages, p)
	}
	return pages
}

// cornerDrawing is the picture of one corner while it is drawn.
type cornerDrawing struct {
	*page.Page
	place   *place
	picture *excerpt.Picture
}

// cornerMark is a piece that is seen, with its number.
type cornerMark struct {
	item *hardware.Item
	at   sheet.Pt
}

// draw draws a corner in a rectangle: its name below, numbers at both sides.
func (d cornerDrawing) draw(r sheet.Rect) {
	z := d.Size
	words := "seen from outside and above, not to scale"
	d.BoxedText("title", page.Lettered{S: page.FitText(d.place.name(), z.Head, true, r.W-4), Cap: z.Head, At: sheet.Pt{X: r.X, Y: r.Y + r.H - z.Note*2.4}, Bold: true, Role: "title", Layer: sheet.LayerNote})
	d.BoxedText("label", page.Lettered{S: page.FitText(words, z.Note, false, r.W-4), At: sheet.Pt{X: r.X, Y: r.Y + r.H - z.Note*0.6}, Role: "note"})
	if d.picture == nil {
		return
	}
	side := 2*d.LegendRadius() + 6
	room := sheet.Rect{X: r.X + side, Y: r.Y, W: r.W - 2*side - 4, H: r.H - z.Head*1.6 - z.Note*3}
	d.picture.Draw(d.Page, room)
	var marks []cornerMark
	for _, b := range d.Schedule.Steel.Bodies {
		if at, ok := d.picture.Shows(b, room); ok && d.fresh(marks, b.Piece.Item, at) {
			marks = append(marks, cornerMark{b.Piece.Item, at})
		}
	}
	mid, on := room.Center().X, d.picture.Extent(room)
	for _, left := range []bool{true, false} {
		var of []cornerMark
		for _, m := range marks {
			if (m.at.X < mid) == left {
				of = append(of, m)
			}
		}
		x := on.X - d.LegendRadius() - 3
		if !left {
			x = on.X + on.W + d.LegendRadius() + 3
		}
		d.numbers(of, x, room)
	}
}

// fresh tells whether a mark has no number near: pieces of one mark beside each other
// share one.
func (d cornerDrawing) fresh(have []cornerMark, it *hardware.Item, at sheet.Pt) bool {
	return !slices.ContainsFunc(have, func(m cornerMark) bool {
		return m.item == it && math.Hypot(float64(m.at.X-at.X), float64(m.at.Y-at.Y)) < 22
	})
}

// numbers sets the circles of pieces in a column, each with a line to its piece.
func (d cornerDrawing) numbers(marks []cornerMark, x sheet.MM, room sheet.Rect) {
	slices.SortStableFunc(marks, func(a, b cornerMark) int { return cmp.Compare(a.at.Y, b.at.Y) })
	rad := d.LegendRadius()
	var centers, sizes []sheet.MM
	for _, m := range marks {
		centers, sizes = append(centers, m.at.Y), append(sizes, 2*rad+0.8)
	}
	for i, y := range page.Spread(centers, sizes) {
		m := marks[i]
		end := x + rad
		if x > room.Center().X {
			end = x - rad
		}
		d.Line(sheet.PenDim, sheet.LayerLabel, m.at, sheet.Pt{X: end, Y: y})
		d.LegendCircle(d.Schedule.Number(m.item.Mark), sheet.Pt{X: x, Y: y}, d.place.name()+", "+m.item.Mark, nil)
	}
}
