package porch

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/steel"
	"galewright/render/page"
	"galewright/render/project"
	"galewright/render/scene"
	"galewright/render/sheet"
)

// side is the elevation of one side of a porch, seen from outside: u is the station along
// its beam, v the height above grade, in.
type side struct {
	*plan.Porch
	frame geom.Frame
	long  float64
	lines []project.Line
	lo    geom.Vec2
	hi    geom.Vec2
}

// Pages makes the elevation of each side of each porch, one a sheet.
func Pages(c *page.Context) (pages []*page.Page) {
	for _, x := range c.House.Plan.Porches {
		s := look(c, x)
		if s == nil {
			continue
		}
		scale, ok := s.fit(c)
		if !ok {
			c.Tell(plan.Diagnostic{
				Severity: plan.Warning, Code: "paper-too-small", Summary: "the elevation of porch " + x.Name + " fits this paper at no scale",
				Where: "porch " + x.Name, Mend: "take larger paper", Pos: x.Pos,
			})
			continue
		}
		p := c.NewPage("Elevation of porch "+x.Name, scale.Name, "porch "+x.Name)
		p.Draw = func(p *page.Page) { s.draw(p, scale) }
		pages = append(pages, p)
	}
	return pages
}

// look projects what belongs to a side of a porch; nil for none.
func look(c *page.Context, x *plan.Porch) *side {
	s := &side{Porch: x, frame: geom.NewFrame(x.From, x.To), long: x.To.Sub(x.From).Len()}
	h := &framing.House{Plan: c.House.Plan}
	for _, m := range c.House.Members {
		if s.shows(m) {
			h.Members = append(h.Members, m)
		}
	}
	if len(h.Members) == 0 {
		return nil
	}
	var bodies []*steel.Body
	for _, b := range c.Schedule.Steel.Bodies {
		if b.Piece.Joint.Host == x.Name {
			bodies = append(bodies, b)
		}
	}
	s.lines = project.Project(scene.All(h, bodies...), project.Looking(s.frame.In.Up(0), geom.Vec3{Z: 1})).SeenLines()
	s.lo, s.hi = project.Settled(s.lines, geom.Vec2{X: s.frame.Origin.Dot(s.frame.D)})
	return s
}

// shows tells whether a member belongs to the side: its own, the post that it shares at a
// corner, and what of a roof comes down over its beam.
func (s *side) shows(m *framing.Member) bool {
	host, _, _ := strings.Cut(m.ID, "/")
	u, t := s.frame.Local(m.A.Flat())
	switch {
	case m.Role == plan.PorchPost || m.OfPorch():
		return math.Abs(t-s.Beam.Width()/2) < 1 && u > -1 && u < s.long+1
	case m.Roof != nil:
		low := m.Role == plan.Rafter || m.Role == plan.HipRafter || m.Role == plan.FlyRafter
		return low && t < s.Beam.Width() && u > -60 && u < s.long+60
	}
	return host == s.Name && m.Role != plan.Ledger
}

// inset is how far in the picture and its title begin, mm: half of a figure of the scale
// bar stands out.
const inset sheet.MM = 8

// margins is the room around the picture, mm: for the heights beside it; for the stations,
// what to know and the title under it.
func (s *side) margins(c *page.Context) (beside, under sheet.MM) {
	z := c.Size
	for _, l := range s.levels() {
		beside = max(beside, page.TextWidth(l.name+" "+c.Length(l.z), z.Dim, false))
	}
	figures := page.TextWidth(c.Length(s.long+1.0/16), z.Dim, false)
	_, title := c.ViewTitleSize("Porch "+s.Name, page.Scale{Name: "1", Ratio: 1e4})
	return beside + 12, 6 + 4 + figures + 3 + sheet.MM(len(s.told(c)))*z.Note*1.7 + z.Note*2 + title
}

// fit chooses the largest scale at which the side fits the sheet.
func (s *side) fit(c *page.Context) (page.Scale, bool) {
	a := c.DrawingArea()
	beside, under := s.margins(c)
	return page.Fit(c.Scales(), s.hi.X-s.lo.X, s.hi.Y-min(s.lo.Y, s.Base), a.W-beside-inset, a.H-under)
}

// draw draws the side at a scale.
func (s *side) draw(p *page.Page, scale page.Scale) {
	_, under := s.margins(p.Context)
	a := p.Area
	at := page.NewViewport(scale, sheet.Pt{X: a.X + inset, Y: a.Y + a.H - under}, s.lo.X, s.hi.X, min(s.lo.Y, s.Base), s.hi.Y)
	wood := sheet.Path{Style: page.Style(scale.MemberPen(), sheet.LayerMember)}
	metal := sheet.Path{Style: page.Style(sheet.PenMember, sheet.LayerHardware)}
	for _, l := range s.lines {
		to := &wood
		if l.Owner.(scene.Part).Body != nil {
			to = &metal
		}
		page.Stroke(to, at.Pt(l.A.X, l.A.Y), at.Pt(l.B.X, l.B.Y))
	}
	p.Strokes(wood, metal)
	s.stations(p, at)
	s.heights(p, at)
	s.words(p, scale)
}

// stations dimensions the posts' centers along the beam, from its beginning.
func (s *side) stations(p *page.Page, at *page.Viewport) {
	posts := slices.Clone(s.Posts)
	slices.Sort(posts)
	list := posts
	if list[0] > 1 {
		list = append([]float64{0}, list...)
	}
	if list[len(list)-1] < s.long-1 {
		list = append(slices.Clone(list), s.long)
	}
	var xs []sheet.MM
	var texts []string
	for _, u := range list {
		xs, texts = append(xs, at.X(u)), append(texts, p.Length(u))
	}
	p.Stations(at.Y(min(s.lo.Y, s.Base))+6, xs, texts)
}

// level is a height that the elevation names, in above grade.
type level struct {
	z    float64
	name string
}

// levels are the heights beside the picture, the highest first.
func (s *side) levels() []level {
	foot := "foot of posts"
	if s.Piles {
		foot = "grade"
	}
	list := []level{{s.Base, foot}, {s.Top - s.Beam.Depth, "head of posts"}, {s.Top, "top of beam"}}
	if s.Deck != nil {
		list = append(list, level{s.Deck.Top, "top of deck"})
	}
	slices.SortFunc(list, func(a, b level) int { return cmp.Compare(b.z, a.z) })
	return list
}

// heights dimensions what is level, above grade.
func (s *side) heights(p *page.Page, at *page.Viewport) {
	var ys []sheet.MM
	var texts []string
	for _, l := range s.levels() {
		ys, texts = append(ys, at.Y(l.z)), append(texts, l.name+" "+p.Length(l.z))
	}
	p.Heights(at.Clip.X+at.Clip.W+3, ys, texts)
}

// told says what to know of the picture, in lines.
func (s *side) told(c *page.Context) []string {
	text := "Beam " + s.Beam.Text + ", posts " + s.Post.Text + ". Seen from outside, with its roof's rafters; the house behind is left out. Figures under it run from the beam's left end to the middle of each post; heights are above grade. Hardware is counted on the plans."
	if s.Piles {
		text += " Its posts are piles: their embedment is the engineer's."
	}
	if s.Deck != nil && s.Deck.Rail > 0 {
		text += " Rails are no load path; their posts alone are drawn."
	}
	return page.Wrap(text, c.Size.Note, false, c.DrawingArea().W*0.55)
}

// words sets the title and what to know of the picture.
func (s *side) words(p *page.Page, scale page.Scale) {
	z, a := p.Size, p.Area
	title := p.ViewTitle(sheet.Pt{X: a.X + inset, Y: a.Y + a.H}, "Porch "+s.Name, scale)
	y := title.Y - z.Note*1.6
	for _, line := range slices.Backward(s.told(p.Context)) {
		p.BoxedText("label", page.Lettered{S: line, At: sheet.Pt{X: a.X, Y: y}, Role: "note"})
		y -= z.Note * 1.7
	}
}
