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
	s := windCase{g.axis, g.sign, g.corner, 1}.String()
	s = s[:len(s)-len(", internal pressure")]
	if g.least {
		return s[:len("wind from X")] + ", least loads"
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

// lateral is the lateral load path.
type lateral struct {
	a       *analysis
	decks   []*diaphragm // highest first
	stories []StoryShear
	torsion []string
	lines   []*ShearLine
	base    [2]BaseShear
}

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

// runLateral works out story forces, lines, overturning and collectors.
func (a *analysis) runLateral() *lateral {
	l := &lateral{a: a}
	for i := len(a.plan.Levels) - 1; i >= 0; i-- {
		lv := a.plan.Levels[i]
		e, ok := wallExtent(a.plan, lv)
		if !ok {
			continue
		}
		d := &diaphragm{level: lv, extent: e}
		d.lines = [2][]*ShearLine{a.shearLines(lv, 0), a.shearLines(lv, 1)}
		l.decks = append(l.decks, d)
		l.lines = append(append(l.lines, d.lines[0]...), d.lines[1]...)
	}
	l.linkLines()
	best := map[[2]int]int{}
	for _, g := range gusts() {
		for i, s := range l.run(g) {
			k := [2]int{i, g.axis}
			if at, ok := best[k]; !ok {
				best[k] = len(l.stories)
				l.stories = append(l.stories, s)
			} else if s.Total > l.stories[at].Total {
				l.stories[at] = s
			}
		}
	}
	l.openFronts()
	return l
}

// run takes one gust down the stories.
func (l *lateral) run(g gust) (out []StoryShear) {
	for _, d := range l.decks {
		walls, roofs := l.a.deckLoad(d, g)
		s := StoryShear{
			Level: d.level, Axis: plan.Axes[g.axis], Case: g.String(),
			Wall: total(walls), Roof: total(roofs), Width: d.extent.span(1-g.axis) / 12, Depth: d.extent.span(g.axis) / 12,
		}
		s.Deck = s.Wall + s.Roof
		s.Bands = append(bands("walls", walls), bands("roofs", roofs)...)
		lines := d.lines[g.axis]
		for _, x := range lines {
			x.deck, x.brought = 0, 0
		}
		l.fromAbove(lines, g.axis, &s)
		s.NoLine = len(lines) == 0
		if !s.NoLine {
			l.spread(d, lines, append(walls, roofs...), g.axis)
		}
		s.Total = s.Deck + s.Above
		for _, x := range lines {
			s.ByLines += x.force()
			x.resist(g)
		}
		s.ASD = ASD.W * s.Total
		out = append(out, s)
	}
	l.toBase(g, out)
	return out
}

// toBase keeps the largest force on the foundation.
func (l *lateral) toBase(g gust, stories []StoryShear) {
	if len(stories) == 0 {
		return
	}
	d := l.decks[len(l.decks)-1]
	cross := 1 - g.axis
	half := l.a.band(g, axis(d.extent.lo, cross), axis(d.extent.hi, cross), d.level.PlateHeight/2, nil)
	if f := stories[len(stories)-1].Total + total(half); f > l.base[g.axis].Total {
		l.base[g.axis] = BaseShear{plan.Axes[g.axis], g.String(), f}
	}
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
func (a *analysis) deckLoad(d *diaphragm, g gust) (walls, roofs []stretch) {
	cross := 1 - g.axis
	below := d.level.PlateHeight / 2
	p0, p1 := axis(d.extent.lo, cross), axis(d.extent.hi, cross)
	walls = a.band(g, p0, p1, below, walls)
	if up := a.levelAbove(d.level); up != nil {
		if e, ok := wallExtent(a.plan, up); ok {
			walls = a.band(g, axis(e.lo, cross), axis(e.hi, cross), up.FloorDepth+up.PlateHeight/2, walls)
		}
	}
	for _, r := range a.plan.Roofs {
		if r.Over == d.level {
			roofs = a.roofBand(g, r, roofs)
		}
	}
	return walls, roofs
}

// band adds the pressure on a strip of wall of the height between two
// coordinates across the wind, end zone apart.
func (a *analysis) band(g gust, lo, hi, height float64, out []stretch) []stretch {
	in, end := a.wallPressure(g)
	return ends(g, lo, hi, 24*a.basis.EdgeStrip(), in*height/12, end*height/12, out)
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
func (a *analysis) wallPressure(g gust) (in, end float64) {
	if g.least {
		return wind.LeastWall, wind.LeastWall
	}
	c, i, k := wind.CaseB, 4, 5
	if a.main == nil || g.axis != ridgeAxis(a.main) {
		c, i, k = wind.CaseA(a.basis.Theta), 0, 3
	}
	return a.q * (c.Interior[i] - c.Interior[k]), a.q * (c.End[i] - c.End[k])
}

// roofBand adds the level part of the roof pressure. Across the ridge it is
// zones 2 and 3 on the vertical projection of the two slopes, but never less
// than nothing (ASCE 7-16 Fig. 28.3-1 notes, from memory). Along the ridge the
// gable triangles stand in zones 5 and 6.
func (a *analysis) roofBand(g gust, r *plan.Roof, out []stretch) []stretch {
	area := roofArea(a.plan, r)
	ax, cross := ridgeAxis(r), 1-g.axis
	lo, hi := axis(area.lo, cross), axis(area.hi, cross)
	rise := ridgeHeight(a.house, r) - r.Over.Top()
	if g.axis != ax {
		in, end := wind.LeastRoof, wind.LeastRoof
		if !g.least {
			c := wind.CaseA(angle(r))
			in = math.Max(0, a.q*(c.Interior[1]-c.Interior[2]))
			end = math.Max(0, a.q*(c.End[1]-c.End[2]))
		}
		return ends(g, lo, hi, 24*a.basis.EdgeStrip(), in*rise/12, end*rise/12, out)
	}
	// Along the ridge: the gable triangle (or hip slope) as a band of half the
	// rise, which has its area.
	in, end := a.wallPressure(g)
	if g.least {
		in, end = wind.LeastWall, wind.LeastWall
	}
	return ends(g, lo, hi, 24*a.basis.EdgeStrip(), in*rise/24, end*rise/24, out)
}
