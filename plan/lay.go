package plan

import (
	"regexp"
	"slices"

	"galewright/plan/geom"
)

// Lay is how a house lies against the one that its plan writes: first mirrored or
// not, west for east, then turned by quarter turns to the left. The zero Lay is the
// house as written.
type Lay struct {
	Mirrored bool
	Quarters int // 0 to 3
}

// MirrorX is the mirror in which east and west change places, MirrorY that for north and south.
var (
	MirrorX = Lay{Mirrored: true}
	MirrorY = Lay{Mirrored: true, Quarters: 2}
)

// Turned is a number of quarter turns to the left.
func Turned(quarters int) Lay { return Lay{Quarters: (quarters%4 + 4) % 4} }

// Then is what comes of l followed by m.
func (l Lay) Then(m Lay) Lay {
	q := l.Quarters
	if m.Mirrored { // a turn to the left is one to the right in the mirror
		q = -q
	}
	return Lay{l.Mirrored != m.Mirrored, ((q+m.Quarters)%4 + 4) % 4}
}

// Way is a direction of the house as written where it lies.
func (l Lay) Way(v geom.Vec2) geom.Vec2 {
	if l.Mirrored {
		v.X = 0 - v.X
	}
	for range l.Quarters {
		v = geom.Vec2{X: 0 - v.Y, Y: v.X}
	}
	return v
}

// Back is the direction in the house as written of one where it lies.
func (l Lay) Back(v geom.Vec2) geom.Vec2 {
	for range (4 - l.Quarters) % 4 {
		v = geom.Vec2{X: 0 - v.Y, Y: v.X}
	}
	if l.Mirrored {
		v.X = 0 - v.X
	}
	return v
}

// axisWay is the direction in which an axis counts.
func axisWay(a Axis) geom.Vec2 {
	if a == AxisY {
		return geom.Vec2{Y: 1}
	}
	return geom.Vec2{X: 1}
}

// Reversed tells whether what counts along an axis where the house lies, from its
// west or south end, counted from the other end as the plan writes it.
func (l Lay) Reversed(a Axis) bool {
	v := l.Back(axisWay(a))
	return v.X+v.Y < 0
}

// axis is an axis of the house as written where it lies.
func (l Lay) axis(a Axis) Axis {
	if a == "" || l.Quarters%2 == 0 {
		return a
	}
	if a == AxisX {
		return AxisY
	}
	return AxisX
}

// sideWays are the outward directions of the sides.
var sideWays = map[Side]geom.Vec2{North: {Y: 1}, East: {X: 1}, South: {Y: -1}, West: {X: -1}}

func (l Lay) side(s Side) Side {
	for _, t := range Sides {
		if s != "" && sideWays[t] == l.Way(sideWays[s]) {
			return t
		}
	}
	return s
}

// face is a side of a stud or rafter, as seen from outside.
func (l Lay) face(f Face) Face {
	switch {
	case l.Mirrored && f == Left:
		return Right
	case l.Mirrored && f == Right:
		return Left
	}
	return f
}

// quarterOf finds the quarter of the compass in the name of a hip or valley, "main/hipNE2".
var quarterOf = regexp.MustCompile(`^(.*/(?:hip|valley))([NS])([EW])([0-9]*)$`)

// edgeName is the name of a hip or valley where it lies: they are named by the compass.
func (l Lay) edgeName(name string) string {
	m := quarterOf.FindStringSubmatch(name)
	if m == nil {
		return name
	}
	y, x := l.side(Side(m[2])), l.side(Side(m[3]))
	if x == North || x == South {
		x, y = y, x
	}
	return m[1] + string(y) + string(x) + m[4]
}

// layer puts a plan where it lies.
type layer struct {
	Lay
	from, to geom.Vec2 // a point as written, and where it lies
}

func (l layer) at(v geom.Vec2) geom.Vec2 { return l.Way(v.Sub(l.from)).Add(l.to) }

func (l layer) box(lo, hi geom.Vec2) (geom.Vec2, geom.Vec2) {
	a, b := l.at(lo), l.at(hi)
	return geom.Vec2{X: min(a.X, b.X), Y: min(a.Y, b.Y)}, geom.Vec2{X: max(a.X, b.X), Y: max(a.Y, b.Y)}
}

// ends are the two ends of what runs along its line with its outside at its right:
// in a mirror they change places, so that it does so there too.
func (l layer) ends(from, to geom.Vec2) (geom.Vec2, geom.Vec2) {
	if l.Mirrored {
		from, to = to, from
	}
	return l.at(from), l.at(to)
}

// LieBy puts the plan's house elsewhere on the ground, in place: it is mirrored and
// turned, the southwest corner of the box around its walls stays where it was, and
// then it is moved.
func (p *Plan) LieBy(lay Lay, move geom.Vec2) {
	lo, hi := p.box()
	l := layer{Lay: lay, from: lo}
	l.to = geom.Vec2{}
	a, _ := l.box(lo, hi)
	l.to = lo.Sub(a).Add(move)
	p.Lay = p.Lay.Then(lay)
	for _, x := range p.Levels {
		x.JoistRun = l.axis(x.JoistRun)
	}
	for _, w := range p.Walls {
		l.wall(w)
	}
	for _, d := range p.Dormers { // while their roofs lie as written
		l.dormer(d)
	}
	for _, r := range p.Roofs {
		l.roof(r)
	}
	for _, x := range p.Braces {
		x.Bays = l.bays(p, x.Girder, x.Bays, x.Across != "")
	}
	for _, x := range p.Breakaways {
		x.Bays = l.bays(p, x.Girder, x.Bays, false)
	}
	for _, g := range p.Girders {
		l.stations(g.Piles, g.To.Sub(g.From).Len())
		g.From, g.To = l.ends(g.From, g.To)
	}
	for _, x := range p.Porches {
		l.stations(x.Posts, x.To.Sub(x.From).Len())
		x.From, x.To = l.ends(x.From, x.To)
	}
	for _, x := range p.Beams {
		l.stations(x.Posts, x.To.Sub(x.From).Len())
		x.From, x.To = l.ends(x.From, x.To)
	}
	for _, x := range p.FloorJoists {
		x.From, x.To = l.ends(x.From, x.To)
	}
	for _, x := range p.FloorBlocks {
		x.From, x.To = l.ends(x.From, x.To)
	}
	for _, x := range p.FloorOpenings {
		x.Lo, x.Hi = l.box(x.Lo, x.Hi)
	}
	for _, x := range p.Items {
		x.Face = l.face(x.Face)
	}
	for _, x := range p.Rules {
		x.Face = l.face(x.Face)
	}
	for _, x := range p.Places {
		x.Face = l.face(x.Face)
		x.Roof = l.edgeName(x.Roof)
	}
}

// box is the box around the walls on plan, in.
func (p *Plan) box() (lo, hi geom.Vec2) {
	for i, w := range p.Walls {
		for k, q := range []geom.Vec2{w.From, w.To} {
			if i == 0 && k == 0 {
				lo, hi = q, q
			}
			lo = geom.Vec2{X: min(lo.X, q.X), Y: min(lo.Y, q.Y)}
			hi = geom.Vec2{X: max(hi.X, q.X), Y: max(hi.Y, q.Y)}
		}
	}
	return lo, hi
}

// stations turns stations along something of that length around, where it is measured from
// its other end.
func (l layer) stations(s []float64, length float64) {
	if !l.Mirrored {
		return
	}
	for i := range s {
		s[i] = length - s[i]
	}
	slices.Reverse(s)
}

// wall puts a wall where it lies: in a mirror it is seen from outside still, and all that
// stands in it is measured from what was its end.
func (l layer) wall(w *Wall) {
	long := w.To.Sub(w.From).Len()
	w.From, w.To = l.ends(w.From, w.To)
	if !l.Mirrored {
		return
	}
	w.Layout = long - w.Layout
	w.Start, w.End = w.End, w.Start
	for _, o := range w.Openings {
		o.At = long - o.At - o.Width
	}
	for _, s := range w.Shear {
		s.From, s.To = long-s.To, long-s.From
	}
	for _, x := range w.Posts {
		x.At = long - x.At
	}
	if x := w.Breaks; x != nil {
		for _, list := range [][]float64{x.Bottom, x.Top, x.Upper} {
			l.stations(list, long)
		}
	}
}

func (l layer) roof(r *Roof) {
	along, across := axisWay(r.Ridge), axisWay(AxisX)
	if r.Ridge == AxisX {
		across = axisWay(AxisY)
	}
	low, high := r.Area[0].Dot(along), r.Area[1].Dot(along)
	r.Area[0], r.Area[1] = l.box(r.Area[0], r.Area[1])
	r.Ridge, r.High = l.axis(r.Ridge), l.side(r.High)
	if d := l.Way(along); d.X+d.Y < 0 {
		r.GableEnd[0], r.GableEnd[1] = r.GableEnd[1], r.GableEnd[0]
		if r.Layout != nil {
			at := high - low - *r.Layout
			r.Layout = &at
		}
		for _, x := range r.Posts {
			x.At = high - low - x.At
		}
	}
	if d := l.Way(across); d.X+d.Y < 0 && r.PitchOther > 0 {
		r.Pitch, r.PitchOther = r.PitchOther, r.Pitch
	}
}

// dormer puts a dormer where its slope lies: it counts from the west or south end there,
// and its openings from the left of one who looks at its front.
func (l layer) dormer(d *Dormer) {
	along := axisWay(AxisX)
	if d.Side == East || d.Side == West {
		along = axisWay(AxisY)
	}
	if w := l.Way(along); w.X+w.Y < 0 {
		d.Center = d.Roof.Area[1].Sub(d.Roof.Area[0]).Dot(along) - d.Center
	}
	d.Side = l.side(d.Side)
	if l.Mirrored {
		for _, o := range d.Openings {
			o.At = d.Width - o.At - o.Width
		}
	}
}

// bays counts bays of a girder, or its piles, from its start as it lies.
func (l layer) bays(p *Plan, girder string, bays []int, piles bool) []int {
	if !l.Mirrored || len(bays) == 0 {
		return bays
	}
	for _, g := range p.Girders {
		if g.Name != girder {
			continue
		}
		n := len(g.Piles)
		if piles {
			n++
		}
		out := make([]int, len(bays))
		for i, b := range bays {
			out[len(bays)-1-i] = n - b
		}
		return out
	}
	return bays
}
