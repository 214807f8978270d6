package loadpath

import (
	"math"

	"galewright/plan"
	"galewright/plan/wind"
)

// gust is one wind case of the lateral path: a direction, by the envelope
// procedure with a corner, by the directional one with one of the roof's two
// values; or the least loads.
type gust struct {
	proc   plan.Procedure // "" of the least loads
	axis   int            // 0: the wind blows along x
	sign   float64
	corner float64 // envelope, +1: the end zone is at the high end across the wind
	second bool    // directional: the second of the roof's values
}

// least tells whether the gust is the least pressures of the standard.
func (g gust) least() bool { return g.proc == "" }

func (g gust) String() string {
	s := "wind from " + from(g.axis, g.sign)
	switch {
	case g.least():
		return s + ", minimum loads"
	case g.proc == plan.Directional:
		return s + ", " + windCase{proc: g.proc, second: g.second}.by()
	}
	end := sides[1-g.axis][0]
	if g.corner > 0 {
		end = sides[1-g.axis][1]
	}
	return s + ", corner " + string(end) + ", " + string(g.proc)
}

// gusts lists them all.
func (m *model) gusts() (out []gust) {
	for _, ax := range []int{0, 1} {
		for _, p := range m.choice.Use {
			for _, sign := range []float64{1, -1} {
				if !m.blows(ax, sign) {
					continue
				}
				if p == plan.Directional {
					out = append(out, gust{proc: p, axis: ax, sign: sign}, gust{proc: p, axis: ax, sign: sign, second: true})
				} else {
					out = append(out, gust{proc: p, axis: ax, sign: sign, corner: -1}, gust{proc: p, axis: ax, sign: sign, corner: 1})
				}
			}
		}
		if m.blows(ax, 1) || m.blows(ax, -1) {
			out = append(out, gust{axis: ax, sign: 1, corner: 1})
		}
	}
	return out
}

// stretch is a level load on the edge of a diaphragm between two coordinates
// across the wind.
type stretch struct {
	lo, hi float64 // in
	w      float64 // plf, strength level
	on     face
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
	listed  []Bay             // see bays
}

// storyAxis is a story, counted from the top, and the axis of the wind.
type storyAxis struct{ story, axis int }

// BaseShear is the level wind force that the foundation takes along one axis:
// the shear of the lowest story and the wind on the lower half of its walls,
// with a floor over it on that floor's edge, and of a house on piles on its
// girders. Wind on the piles and on what is between them is not in it.
type BaseShear struct {
	Axis    plan.Axis
	Case    string
	Story   float64 // lb, strength level, all of them
	Walls   float64
	Edge    float64 // floor edge: subfloor, joists and rim
	Girders float64
	Total   float64
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
	Psf    float64 // on the face, windward and leeward together, strength level
	High   float64 // of the face, ft; of a gable triangle half of it
	Why    string  // what the pressure is made of
}

func (s *gustState) bands(from string, list []stretch) (out []Band) {
	for _, x := range list {
		if x.hi > x.lo {
			out = append(out, Band{from, x.lo, x.hi, x.w, x.on.psf, x.on.high, s.m.faceWords(s.gust, x.on)})
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
	for _, g := range m.gusts() {
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
// deck and from the lines above; and what enters at the floor that its walls
// stand on, below their segments, where that is the lowest floor.
type lineForce struct{ deck, brought, floor float64 }

// force returns the force of a line, lb at strength level.
func (s *gustState) force(x *ShearLine) float64 { return s.lines[x.n].deck + s.lines[x.n].brought }

// under returns the force of a line with what enters at the floor under it, lb
// at strength level: what the fastening of that floor to its supports takes on.
func (s *gustState) under(x *ShearLine) float64 { return s.force(x) + s.lines[x.n].floor }

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
	out.Bands = append(s.bands("walls", walls), s.bands("roofs", roofs)...)
	lines := d.lines[axis]
	out.Above = s.fromAbove(lines)
	out.NoLine = len(lines) == 0
	for i, f := range s.m.spread(d, axis, append(walls, roofs...)) {
		s.lines[lines[i].n].deck = f
	}
	out.Total = out.Deck + out.Above
	for _, x := range lines {
		out.ByLines += s.force(x)
		s.resist(x)
	}
	out.ASD = ASD.W * out.Total
	return out
}

// toBase adds the wind on the lower half of the lowest walls, the floor's edge
// and the girders to the shear of the lowest story. What comes to a floor is
// handed to the lines on it as a deck's is; girders take their own.
func (s *gustState) toBase() {
	if len(s.stories) == 0 {
		return
	}
	d := s.m.decks[len(s.m.decks)-1]
	cross, lv := 1-s.gust.axis, d.level
	lo, hi := axis(d.extent.lo, cross), axis(d.extent.hi, cross)
	b := BaseShear{Axis: plan.Axes[s.gust.axis], Case: s.gust.String(), Story: s.stories[len(s.stories)-1].Total}
	walls := s.m.band(s.gust, lo, hi, [2]float64{lv.Floor, lv.Floor + lv.PlateHeight/2}, nil)
	b.Walls = total(walls)
	if s.m.floored(lv) {
		edge := s.m.band(s.gust, lo, hi, [2]float64{lv.Floor - lv.FloorDepth, lv.Floor}, nil)
		b.Edge = total(edge)
		for i, f := range s.m.spread(d, s.gust.axis, append(walls, edge...)) {
			s.lines[d.lines[s.gust.axis][i].n].floor = f
		}
	}
	if s.m.plan.Foundation.Kind == plan.Piles {
		b.Girders = s.m.onGirders(s.gust, (hi-lo)/12)
	}
	b.Total = b.Story + b.Walls + b.Edge + b.Girders
	s.base = b
}

// onGirders returns the wind on the deepest girder across the wind, over the
// width of the house (ft), lb at strength level: 1.3 q Kd G on its face, as
// ASCE 7-22 27.3.1.1 has it for what stands under an elevated house
// (second-hand; 7-16 has no rule, the same is taken). Girders behind it are
// taken to lie in its lee.
func (m *model) onGirders(g gust, width float64) float64 {
	deep := 0.0
	for _, x := range m.plan.Girders {
		if !x.To.Sub(x.From).Mainly(g.axis) {
			deep = math.Max(deep, x.Member.Depth)
		}
	}
	if deep == 0 || len(m.plan.Levels) == 0 {
		return 0
	}
	psf := wind.LeastWall
	if !g.least() {
		lv := m.plan.Levels[0]
		psf = wind.Below * wind.Gust * m.basis.At((lv.Floor-lv.FloorDepth)/12).QKd
	}
	return psf * deep / 12 * width
}

func total(list []stretch) (f float64) {
	for _, s := range list {
		f += s.w * (s.hi - s.lo) / 12
	}
	return f
}
