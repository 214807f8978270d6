package loadpath

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/timber"
)

// Segment is one sheathed segment in a line.
type Segment struct {
	Wall    *plan.Wall
	Shear   *plan.Shear
	Name    string
	Lo, Hi  float64 // coordinates along the line, in
	Height  float64 // of the story's wall, in; of a rake wall the mean over the segment
	Tallest float64 // the same at its highest, in
	Length  float64 // in
	Working float64 // length that counts, in: a perforated wall's Co ΣLi
	Factor  float64 // on the unit shear, by aspect ratio
	Share   float64 // of the line's force
	// OtherShare and OtherFactor are Share and Factor by the other of the two
	// ways: stiffness, or length.
	OtherShare, OtherFactor float64
	Flex                    timber.WallDeflection // zero where NoFlex
	Stiff                   float64               // lb/in at strength or ASD alike
	NoFlex                  string                // why its stiffness is not known
	// Lever is the lever arm of its end tension, in, to LeverTo.
	Lever    float64
	LeverTo  string
	posts    [2][]*framing.Member // the studs of each end post
	Unit     timber.UnitShear
	Trouble  string // why there is no unit shear
	Pierced  *timber.Perforated
	n        int
	above    []*Segment
	ends     [2]*framing.Joint
	base     bool // the wall's foot is in this story
	stacked  bool // a segment below takes its end tension on
	depth    float64
	carriers []*carrier
}

// SegmentShear is a segment with its worst gusts.
type SegmentShear struct {
	*Segment
	V      float64 // largest, lb at strength level
	Demand float64 // plf, ASD
	Case   string
	Moment float64 // V h of this story and what stands on it, lb in, strength
	Lifts  float64 // chord tension of the story and those above, lb, strength
}

// fold keeps a gust if it asks for more of the segment or of its ends.
func (x *SegmentShear) fold(s *gustState) {
	on := s.segments[x.n]
	if on.v > x.V {
		x.V, x.Case = on.v, s.gust.String()
		x.Demand = ASD.W * on.v / math.Max(x.Working, 1e-9) * 12
	}
	if on.lifts > x.Lifts {
		x.Lifts, x.Moment = on.lifts, on.moment
	}
}

// segmentForce is the force of a segment in one gust, strength level.
type segmentForce struct {
	v      float64 // lb
	moment float64 // V h of this story and what stands on it, lb in
	all    float64 // moment with that of the segments above, lb in
	lifts  float64 // chord tension, lb
}

// segment reads one sheathed segment at one story.
func (b *builder) segment(w *plan.Wall, s *plan.Shear, i int, lv *plan.Level, ax int) *Segment {
	f := w.Frame()
	p, q := axis(f.At(s.From, 0, 0).Flat(), ax), axis(f.At(s.To, 0, 0).Flat(), ax)
	g := &Segment{
		Wall: w, Shear: s, Name: w.Name + "/" + s.Name, Lo: math.Min(p, q), Hi: math.Max(p, q), Length: s.To - s.From,
		Height: lv.PlateHeight, Factor: 1, base: w.Level == lv, depth: lv.FloorDepth,
	}
	if w.Height > 0 && !w.Balloon() {
		g.Height = w.Height
	}
	if s.Name == "" {
		g.Name = fmt.Sprintf("%s/%d", w.Name, i+1)
	}
	if w.Balloon() {
		g.Name += "@" + lv.Name
	}
	if p := b.byWall[w]; p != nil {
		for _, c := range p.carriers {
			if c.station > s.From-3 && c.station < s.To+3 {
				g.carriers = append(g.carriers, c)
			}
		}
	}
	g.rake()
	u, err := timber.Sheathing{Thickness: s.Panel, Nail: s.Nail, Edge: s.Edge, G: b.species.G, BothFaces: s.BothFaces, Edition: 2021}.UnitShear()
	if err != nil {
		g.Trouble = err.Error()
	}
	g.Unit = u
	g.work()
	if g.base {
		b.ends(g)
	}
	for i, j := range g.ends {
		if j != nil && j.First() != nil {
			g.posts[i] = b.builtUp(j.First())
		}
	}
	b.levers(g, ax)
	g.flex(b.species)
	return g
}

// rake gives a segment of a gable wall whose studs run up to the roof the
// height at which the roof hands it its shear: that of its studs and plates,
// on the mean.
func (g *Segment) rake() {
	g.Tallest = g.Height
	if g.Wall.Top != plan.RakeTop || len(g.carriers) == 0 {
		return
	}
	sum := 0.0
	for _, c := range g.carriers {
		h := c.m.Z1 + rakePlates - g.Wall.Level.Floor
		sum += h
		g.Tallest = math.Max(g.Tallest, h)
	}
	g.Height = math.Max(g.Height, sum/float64(len(g.carriers)))
}

// rakePlates is the height of the two plates over a rake wall's studs, in.
const rakePlates = 3

// work finds the length that counts.
func (g *Segment) work() {
	g.Tallest = math.Max(g.Tallest, g.Height)
	if g.Shear.Perforated {
		g.pierce()
		return
	}
	g.Factor = timber.SegmentFactor(g.Tallest, g.Length)
	if g.Factor > 0 {
		g.Working = g.Length
	}
	for _, o := range g.Wall.Openings {
		if overlap(o.At, o.End(), g.Shear.From, g.Shear.To) > 1 {
			g.Trouble = fmt.Sprintf("opening %s lies in the segment, which is not marked perforated", o.Name)
		}
	}
}

// pierce works a perforated wall out: its full-height parts are what lies
// between openings and ends.
func (g *Segment) pierce() {
	var open []*plan.Opening
	for _, o := range g.Wall.Openings {
		if overlap(o.At, o.End(), g.Shear.From, g.Shear.To) > 1 {
			open = append(open, o)
		}
	}
	slices.SortStableFunc(open, func(x, y *plan.Opening) int { return cmpFloat(x.At, y.At) })
	from, sum, area := g.Shear.From, 0.0, 0.0
	for _, o := range open {
		sum += timber.PerforatedLength(g.Tallest, o.At-from)
		area += timber.OpeningArea(o.Width, o.Height, g.Height)
		from = o.End()
	}
	sum += timber.PerforatedLength(g.Tallest, g.Shear.To-from)
	if sum <= 0 {
		g.Trouble = "no full-height part of it is wide enough to count"
		return
	}
	p := timber.PerforatedFactor(area, g.Height, sum, g.Length)
	g.Pierced, g.Working = &p, p.Co*sum
	if g.Unit.Nominal*g.Unit.Species*g.Unit.Faces > timber.PerforatedLimit {
		g.Unit.Allow = timber.PerforatedLimit / g.Unit.Divisor
	}
}

// ends finds the wall-end joints of a segment.
func (b *builder) ends(g *Segment) {
	for _, j := range b.wallEnds[g.Wall] {
		for i, at := range []float64{g.Shear.From, g.Shear.To} {
			if old := g.ends[i]; math.Abs(j.Station-at) < oneEnd && (old == nil || math.Abs(j.Station-at) < math.Abs(old.Station-at)) {
				g.ends[i] = j
			}
		}
	}
	if g.ends[0] == g.ends[1] {
		g.ends[1] = nil
	}
}

// overturn adds up the chord tension of a segment under its shear v: its own
// moment, the moment of the force from above over the depth of the floor
// between, and the tension of the segments that stand on it. Of a perforated
// wall it is the moment of all stories over its own arm (SDPWS 2021
// 4.3.6.4.4, transcribed).
func (s *gustState) overturn(g *Segment, v float64) {
	f := segmentForce{v: v, moment: v * g.Height}
	for _, u := range g.above {
		up := s.segments[u.n]
		f.moment += up.v * u.depth
		f.lifts += up.lifts
		f.all += up.all
	}
	f.all += f.moment
	if arm := g.arm(); arm > 0 {
		f.lifts += f.moment / arm
		if g.Pierced != nil {
			f.lifts = f.all / arm
		}
	}
	s.segments[g.n] = f
}

// arm returns the lever arm of the chords: from what holds an end to the middle
// of the far post, of a perforated wall Co ΣLi (SDPWS 2021 4.3.6.1, transcribed).
func (s *Segment) arm() float64 {
	if s.Pierced != nil {
		return s.Working
	}
	return cmp.Or(s.Lever, s.Length)
}
