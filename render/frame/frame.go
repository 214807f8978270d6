package frame

import (
	"math"
	"slices"

	"galewright/plan/geom"
	"galewright/render/page"
	"galewright/render/project"
	"galewright/render/scene"
	"galewright/render/sheet"
)

// corner is a side of the sky that the frame is looked at from.
type corner struct {
	name string
	from geom.Vec2 // of the plan, [east, north]
}

var corners = []corner{{"south-west", geom.Vec2{X: -1, Y: -1.3}}, {"north-east", geom.Vec2{X: 1, Y: 1.3}}}

// above is how far above the level the eye stands: the rise on its way, as a share.
const above = 0.55

// Pages makes the pictures of the whole frame, one from each of two corners.
func Pages(c *page.Context) (pages []*page.Page) {
	if len(c.House.Members) == 0 {
		return nil
	}
	for _, k := range corners {
		p := c.NewPage("Frame in space, from the "+k.name, "", "frame "+k.name)
		p.Draw = func(p *page.Page) { draw(p, k) }
		pages = append(pages, p)
	}
	return pages
}

// view is the way of looking from a corner.
func (k corner) view() project.View {
	sight := k.from.Mul(-1).Up(-above * k.from.Len())
	return project.Looking(sight, geom.Vec3{Z: 1})
}

// drawing is one picture while it is drawn.
type drawing struct {
	*page.Page
	view   project.View
	origin sheet.Pt
	k      float64 // mm an inch
	path   *path
}

// draw draws the frame from a corner.
func draw(p *page.Page, k corner) {
	d := &drawing{Page: p, view: k.view()}
	lines := project.Project(scene.All(p.House, p.Schedule.Steel.Bodies...), d.view).SeenLines()
	d.path = pathOf(p.Context, d.view.Toward)
	room := d.title(k)
	d.fit(lines, room)
	d.lines(lines)
	d.numbers()
}

// title sets the name and what to know of the picture, and returns the room left.
func (d *drawing) title(k corner) sheet.Rect {
	z, a := d.Size, d.Area
	words := "Every member and every piece as it stands, not to scale; what is hidden is left out."
	if d.path != nil {
		words += " Heavy lines: one path of the uplift, from the ridge to the ground, with the numbers of its pieces."
	}
	y := a.Y + a.H - z.Note*0.6
	list := page.Wrap(words, z.Note, false, a.W*0.55)
	for _, s := range slices.Backward(list) {
		d.BoxedText("label", page.Lettered{S: s, At: sheet.Pt{X: a.X, Y: y}, Role: "note"})
		y -= z.Note * 1.7
	}
	d.BoxedText("title", page.Lettered{S: "Frame from the " + k.name, Cap: z.Head, At: sheet.Pt{X: a.X, Y: y - z.Note*0.4}, Bold: true, Role: "title", Layer: sheet.LayerNote})
	return sheet.Rect{X: a.X, Y: a.Y, W: a.W, H: y - z.Note - z.Head*1.6 - a.Y}
}

// fit chooses the largest size at which the lines fit the room.
func (d *drawing) fit(lines []project.Line, room sheet.Rect) {
	lo, hi := geom.Vec2{X: math.Inf(1), Y: math.Inf(1)}, geom.Vec2{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, l := range lines {
		for _, p := range []geom.Vec2{l.A, l.B} {
			lo = geom.Vec2{X: min(lo.X, p.X), Y: min(lo.Y, p.Y)}
			hi = geom.Vec2{X: max(hi.X, p.X), Y: max(hi.Y, p.Y)}
		}
	}
	d.k = min(float64(room.W)/(hi.X-lo.X), float64(room.H)/(hi.Y-lo.Y))
	c := room.Center()
	d.origin = sheet.Pt{X: c.X - sheet.MM((lo.X+hi.X)/2*d.k), Y: c.Y + sheet.MM((lo.Y+hi.Y)/2*d.k)}
}

func (d *drawing) at(p geom.Vec2) sheet.Pt {
	return sheet.Pt{X: d.origin.X + sheet.MM(p.X*d.k), Y: d.origin.Y - sheet.MM(p.Y*d.k)}
}

// lines draws wood thin, the path heavy and steel over both.
func (d *drawing) lines(lines []project.Line) {
	wood := sheet.Path{Style: page.Style(sheet.PenDim, sheet.LayerMember)}
	heavy := sheet.Path{Style: page.Style(sheet.PenCut, sheet.LayerMember)}
	steel := sheet.Path{Style: page.Style(sheet.PenHardware, sheet.LayerHardware)}
	if !page.Large(d.Context.Paper) { // where the heaviest pen would run together
		steel.Pen = sheet.PenMember
	}
	for _, l := range lines {
		to := &wood
		switch part := l.Owner.(scene.Part); {
		case part.Body != nil:
			to = &steel
		case d.path != nil && d.path.members[part.Member]:
			to = &heavy
		}
		page.Stroke(to, d.at(l.A), d.at(l.B))
	}
	d.Strokes(wood, heavy, steel)
}

// numbers sets the circles of the path's pieces beside it, each with a line to
// its piece.
func (d *drawing) numbers() {
	if d.path == nil {
		return
	}
	type mark struct {
		n    int
		at   sheet.Pt
		name string
	}
	var marks []mark
	for _, s := range d.path.stops {
		var seen []int
		for _, pc := range s.pieces {
			n := d.Schedule.Number(pc.Item.Mark)
			if !slices.Contains(seen, n) {
				seen = append(seen, n)
				marks = append(marks, mark{n, d.at(d.view.At(s.at)), pc.Item.Mark})
			}
		}
	}
	slices.SortStableFunc(marks, func(a, b mark) int { return int(math.Copysign(1, float64(a.at.Y-b.at.Y))) })
	rad := d.LegendRadius()
	var centers, sizes []sheet.MM
	for _, m := range marks {
		centers, sizes = append(centers, m.at.Y), append(sizes, 2*rad+0.8)
	}
	for i, y := range page.Spread(centers, sizes) {
		m := marks[i]
		at := sheet.Pt{X: m.at.X - 3*rad - 3, Y: y}
		d.Line(sheet.PenMember, sheet.LayerLabel, m.at, sheet.Pt{X: at.X + rad, Y: y})
		d.LegendCircle(m.n, at, "path, "+m.name, nil)
	}
}
