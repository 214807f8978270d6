package loadpath

import (
	"math"

	"galewright/plan"
	"galewright/plan/wind"
)

// gust is one wind case of the lateral path: a direction and a corner, or
// the least loads.
type gust struct {
	axis   int // 0: the wind blows along x
	sign   float64
	corner float64 // +1: the end zone is at the high end across the wind
	least  bool    // the least pressures of the standard
}

func (g gust) String() string {
	s := windCase{axis: g.axis, sign: g.sign, corner: g.corner, pi: 1}.String()
	s = s[:len(s)-len(", internal pressure")]
	if g.least {
		return s[:len("wind from X")] + ", minimum loads"
	}
	return s
}

// gusts lists them all.
func gusts() (out []gust) {
	for _, ax := range []int{0, 1} {
		for _, sign := range []float64{1, -1} {
			out = append(out, gust{ax, sign, -1, false}, gust{ax, sign, 1, false})
		}
		out = append(out, gust{ax, 1, 1, true})
	}
	return out
}

// stretch is a level load on the edge of a diaphragm between two coordinates
// across the wind.
type stretch struct {
	lo, hi float64 // in
	w      float64 // plf, strength level
}

// diaphragm is a floor or roof that gathers wind and hands it to the shear
// walls under it.
type diaphragm struct {
	level  *plan.Level // whose walls carry it: it lies on this level's plates
	extent extent
	lines  [2][]*ShearLine // those that run along x and along y, by place
}

// lateral is what all gusts came to.
type lateral struct {
	m       *model
	stories []StoryShear
	torsion []string
	lines   []*LineShear // by ShearLine
	base    [2]BaseShear
	best    map[storyAxis]int // of stories
}

// storyAxis is a story, counted from the top, and the axis of the wind.
type storyAxis struct{ story, axis int }

// BaseShear is the level wind force that the foundation takes along one axis:
// the shear of the lowest story and the wind on the lower half of its walls.
// Wind below the lowest floor is not in it.
type BaseShear struct {
	Axis  plan.Axis
	Case  string
	Total float64 // lb, strength level
}

// StoryShear is the wind on one story in one direction and what the shear
// wall lines take.
type StoryShear struct {
	Level    *plan.Level
	Axis     plan.Axis // the wind's
	Case     string    // the governing one
	Wall     float64   // from walls to this deck, lb, strength
	Roof     float64   // from roofs
	Deck     float64   // both
	Above    float64   // through the lines of the story above
	Total    float64   // carried by this story's lines, lb, strength
	ByLines  float64   // sum over the lines, strength
	ASD      float64
	Depth    float64 // of the deck along the wind, ft
	Width    float64 // across the wind, ft
	NoLine   bool    // nothing resists
	AxisName string
	Bands    []Band
}

// Band is level wind on the edge of a deck between two coordinates across
// the wind.
type Band struct {
	From   string  // "walls" or "roofs"
	Lo, Hi float64 // in
	Load   float64 // plf, strength level
}

func bands(from string, list []stretch) (out []Band) {
	for _, s := range list {
		if s.hi > s.lo {
			out = append(out, Band{from, s.lo, s.hi, s.w})
		}
	}
	return out
}

// layDecks finds the decks and the shear lines under them.
func (b *builder) layDecks() {
	for i := len(b.plan.Levels) - 1; i >= 0; i-- {
		lv := b.plan.Levels[i]
		e, ok := wallExtent(b.plan, lv)
		if !ok {
			continue
		}
		d := &diaphragm{level: lv, extent: e}
		d.lines = [2][]*ShearLine{b.shearLines(lv, 0), b.shearLines(lv, 1)}
		b.decks = append(b.decks, d)
		b.lines = append(append(b.lines, d.lines[0]...), d.lines[1]...)
	}
	for i, x := range b.lines {
		x.n = i
		for _, g := range x.Segments {
			g.n, b.pieces = b.pieces, b.pieces+1
		}
	}
	b.linkLines()
}

// allGusts runs every gust and keeps the worst of each story, line and
// segment.
func (m *model) allGusts() *lateral {
	l := &lateral{m: m, best: map[storyAxis]int{}}
	for _, x := range m.lines {
		l.lines = append(l.lines, newLineShear(x))
	}
	for _, g := range gusts() {
		l.fold(m.blow(g))
	}
	l.openFronts()
	return l
}

// fold takes one gust into what is kept.
func (l *lateral) fold(s *gustState) {
	for i, story := range s.stories {
		k := storyAxis{i, s.gust.axis}
		if at, ok := l.best[k]; !ok {
			l.best[k] = len(l.stories)
			l.stories = append(l.stories, story)
		} else if story.Total > l.stories[at].Total {
			l.stories[at] = story
		}
	}
	for _, x := range l.lines {
		if x.Axis == s.gust.axis {
			x.fold(s)
		}
	}
	if s.base.Total > l.base[s.gust.axis].Total {
		l.base[s.gust.axis] = s.base
	}
}

// gustState is where level force is in one gust. blow makes it; nothing
// changes it after.
type gustState struct {
	m        *model
	gust     gust
	lines    []lineForce    // by ShearLine
	segments []segmentForce // by Segment
	stories  []StoryShear   // highest first
	base     BaseShear
}

// lineForce is the force of a line, lb at strength level: from its story's
// deck and from the lines above.
type lineForce struct{ deck, brought float64 }

// force returns the force of a line, lb at strength level.
func (s *gustState) force(x *ShearLine) float64 { return s.lines[x.n].deck + s.lines[x.n].brought }

// blow takes one gust down the stories.
func (m *model) blow(g gust) *gustState {
	s := &gustState{m: m, gust: g, lines: make([]lineForce, len(m.lines)), segments: make([]segmentForce, m.pieces)}
	for _, d := range m.decks {
		s.stories = append(s.stories, s.story(d))
	}
	s.toBase()
	return s
}

// story takes the gust on a deck to the lines under it.
func (s *gustState) story(d *diaphragm) StoryShear {
	axis := s.gust.axis
	walls, roofs := s.m.deckLoad(d, s.gust)
	out := StoryShear{
		Level: d.level, Axis: plan.Axes[axis], Case: s.gust.String(),
		Wall: total(walls), Roof: total(roofs), Width: d.extent.span(1-axis) / 12, Depth: d.extent.span(axis) / 12,
	}
	out.Deck = out.Wall + out.Roof
	out.Bands = append(bands("walls", walls), bands("roofs", roofs)...)
	lines := d.lines[axis]
	out.Above = s.fromAbove(lines)
	out.NoLine = len(lines) == 0
	if !out.NoLine {
		s.spread(d, lines, append(walls, roofs...))
	}
	out.Total = out.Deck + out.Above
	for _, x := range lines {
		out.ByLines += s.force(x)
		s.resist(x)
	}
	out.ASD = ASD.W * out.Total
	return out
}

// toBase adds the wind on the lower half of the lowest walls to the shear of
// the lowest story.
func (s *gustState) toBase() {
	if len(s.stories) == 0 {
		return
	}
	d := s.m.decks[len(s.m.decks)-1]
	cross := 1 - s.gust.axis
	half := s.m.band(s.gust, axis(d.extent.lo, cross), axis(d.extent.hi, cross), d.level.PlateHeight/2, nil)
	s.base = BaseShear{plan.Axes[s.gust.axis], s.gust.String(), s.stories[len(s.stories)-1].Total + total(half)}
}

func total(list []stretch) (f float64) {
	for _, s := range list {
		f += s.w * (s.hi - s.lo) / 12
	}
	return f
}

// deckLoad returns the level wind load on the edge of a deck: from the upper
// half of the walls under it, what stands between it and the floor above, the
// lower half of the walls on it, and the roofs over it.
func (m *model) deckLoad(d *diaphragm, g gust) (walls, roofs []stretch) {
	cross := 1 - g.axis
	below := d.level.PlateHeight / 2
	p0, p1 := axis(d.extent.lo, cross), axis(d.extent.hi, cross)
	walls = m.band(g, p0, p1, below, walls)
	if up := m.plan.Above(d.level); up != nil {
		if e, ok := wallExtent(m.plan, up); ok {
			walls = m.band(g, axis(e.lo, cross), axis(e.hi, cross), up.FloorDepth+up.PlateHeight/2, walls)
		}
	}
	for _, r := range m.plan.Roofs {
		if r.Over == d.level {
			roofs = m.roofBand(g, r, roofs)
		}
	}
	return walls, roofs
}

// band adds the pressure on a strip of wall of the height between two
// coordinates across the wind, end zone apart.
func (m *model) band(g gust, lo, hi, height float64, out []stretch) []stretch {
	in, end := m.wallPressure(g)
	return ends(g, lo, hi, 24*m.basis.EdgeStrip(), in*height/12, end*height/12, out)
}

// ends adds lo..hi in two pieces: the end zone at the reference corner, and
// the rest.
func ends(g gust, lo, hi, zone, in, end float64, out []stretch) []stretch {
	zone = math.Min(zone, hi-lo)
	if g.least {
		return append(out, stretch{lo, hi, in})
	}
	if g.corner < 0 {
		return append(out, stretch{lo, lo + zone, end}, stretch{lo + zone, hi, in})
	}
	return append(out, stretch{lo, hi - zone, in}, stretch{hi - zone, hi, end})
}

// wallPressure returns the sum of windward and leeward wall pressure, psf,
// in the interior and the end zone: zones 1 and 4 across the main ridge, 5
// and 6 along it.
func (m *model) wallPressure(g gust) (in, end float64) {
	if g.least {
		return wind.LeastWall, wind.LeastWall
	}
	c, i, k := wind.CaseB, 4, 5
	if m.main == nil || g.axis != m.main.RidgeAxis() {
		c, i, k = wind.CaseA(m.basis.Theta), 0, 3
	}
	return m.q * (c.Interior[i] - c.Interior[k]), m.q * (c.End[i] - c.End[k])
}

// roofBand adds the level part of the roof pressure. Across the ridge it is
// zones 2 and 3 on the vertical projection of the two slopes, but never less
// than nothing (ASCE 7-16 Fig. 28.3-1 notes, from memory). Along the ridge the
// gable triangles stand in zones 5 and 6.
func (m *model) roofBand(g gust, r *plan.Roof, out []stretch) []stretch {
	area := roofArea(m.plan, r)
	ax, cross := r.RidgeAxis(), 1-g.axis
	lo, hi := axis(area.lo, cross), axis(area.hi, cross)
	rise := m.house.RidgeHeight(r) - r.Over.Top()
	if g.axis != ax {
		in, end := wind.LeastRoof, wind.LeastRoof
		if !g.least {
			c := wind.CaseA(r.Angle())
			in = math.Max(0, m.q*(c.Interior[1]-c.Interior[2]))
			end = math.Max(0, m.q*(c.End[1]-c.End[2]))
		}
		return ends(g, lo, hi, 24*m.basis.EdgeStrip(), in*rise/12, end*rise/12, out)
	}
	// Along the ridge: the gable triangle (or hip slope) as a band of half the
	// rise, which has its area.
	in, end := m.wallPressure(g)
	if g.least {
		in, end = wind.LeastWall, wind.LeastWall
	}
	return ends(g, lo, hi, 24*m.basis.EdgeStrip(), in*rise/24, end*rise/24, out)
}
