package framing

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// roofLine is a ridge, hip or valley as a stick.
type roofLine struct {
	bar
	line    *roofplan.Line
	owner   *roofBody
	section plan.Lumber
	u0, u1  float64 // with what it needs to be cut from
	planes  []geom.Plane
	column  geom.Solid
	tail    [][]geom.Plane // where a ridge is ripped down over a gable wall
	named   float64        // its pieces are not named by a place before this one
	member  *Member        // the first of its pieces
}

// makeLines makes the ridges, hips and valleys. A ridge is dropped by what
// the roof falls off over half its thickness, so that its arrises lie in the
// roof's planes, and a hip likewise; a valley's top lies with its middle in
// the valley, or lower where it is carried on in a plane. None is backed.
func (f *roofFrame) makeLines() {
	for _, l := range f.crossings() {
		if rl := f.lineOf(l); rl != nil {
			f.lines = append(f.lines, rl)
		}
	}
	for i, l := range f.lines {
		f.ends(i, l)
	}
	for j, l := range f.lines {
		for _, o := range f.lines[:j] {
			yield(o, l)
		}
	}
	f.linesAt = geom.NewGrid[*roofLine]()
	for i, l := range f.lines {
		lo, hi := l.column.Bounds()
		a, b := l.line.A, l.line.B
		f.linesAt.Add(l, geom.Vec3{X: min(lo.X, a.X, b.X), Y: min(lo.Y, a.Y, b.Y), Z: -1},
			geom.Vec3{X: max(hi.X, a.X, b.X), Y: max(hi.Y, a.Y, b.Y), Z: 1}, geom.Slant(l.point(l.u0).Flat(), l.point(l.u1).Flat(), l.half))
		f.addLine(i, l)
	}
}

// crossings returns the lines of the roof, the later of two that cross each
// other cut in two at the crossing.
func (f *roofFrame) crossings() (out []*roofplan.Line) {
	for _, l := range f.roof.Lines {
		parts := []*roofplan.Line{l}
		for _, o := range out {
			for k := 0; k < len(parts); k++ {
				p := parts[k]
				u, v, ok := meetAt(p, o)
				if ok && u > 1 && u < p.Run()-1 && v > 1 && v < o.Run()-1 && p.Carried == nil {
					m := p.At(u)
					parts[k] = &roofplan.Line{Kind: p.Kind, A: p.A, B: m}
					parts = append(parts, &roofplan.Line{Kind: p.Kind, A: m, B: p.B})
				}
			}
		}
		out = append(out, parts...)
	}
	return out
}

// meetAt returns the plan distances along a and b of where their straight
// lines cross; ok is false when they are parallel.
func meetAt(a, b *roofplan.Line) (u, v float64, ok bool) {
	da, db := a.Dir(), b.Dir()
	den := da.Cross(db)
	if math.Abs(den) < 1e-6 {
		return 0, 0, false
	}
	w := b.A.Sub(a.A).Flat()
	return w.Cross(db) / den, w.Cross(da) / den, true
}

// lineOf returns the stick of a line, or nil where trusses need none.
func (f *roofFrame) lineOf(l *roofplan.Line) *roofLine {
	owner, drop, trusses := f.besides(l)
	if owner == nil || trusses {
		return nil
	}
	section := hipSection(owner.Rafters)
	if l.Kind == roofplan.Ridge {
		owner = f.ridgeOwner(l, owner)
		section = owner.RidgeMember
		if section.Ply == 0 {
			section = hipSection(owner.Rafters)
		}
	}
	half := section.Width() / 2
	rl := &roofLine{
		line: l, owner: owner, section: section, u1: l.Run(),
		bar: bar{at: l.A.Flat(), dir: l.Dir(), rise: (l.B.Z - l.A.Z) / l.Run(), half: half, depth: section.Depth},
	}
	rl.top, rl.named = l.A.Z-drop*half, math.Inf(-1)
	return rl
}

// besides looks at the faces on both sides of a line, and of the part of a
// valley that is carried on: the body they belong to, how much they fall off
// for an inch away from the line, and whether all are over trusses.
func (f *roofFrame) besides(l *roofplan.Line) (owner *roofBody, drop float64, trusses bool) {
	n := l.Dir().Left()
	look := []float64{l.Run() / 2, l.Run() / 4, l.Run() * 3 / 4} // another ridge may cross it in its middle
	if l.Carried != nil {
		look = append(look, (l.Carried.Sub(l.A.Flat()).Len()+l.Run())/2)
	}
	trusses = true
	for _, u := range look {
		for _, k := range f.leftRight() {
			_, face, ok := f.roof.Height(l.At(u).Flat().Add(n.Mul(k * 0.05)))
			if !ok {
				continue
			}
			drop = max(drop, -face.Plane.G.Dot(n)*k)
			trusses = trusses && f.of[face.Body].Trusses
			if owner == nil {
				owner = f.of[face.Body]
			}
		}
	}
	return owner, drop, trusses
}

// leftRight are the two sides of a line, the left one first; in a mirrored house the right one.
func (f *roofFrame) leftRight() [2]float64 {
	if f.plan.Lay.Mirrored {
		return [2]float64{-1, 1}
	}
	return [2]float64{1, -1}
}

// hipSection returns the lumber of hips and valleys: one stock size deeper
// than the rafters, because the jacks' plumb cuts are longer than the
// rafters are deep (common practice, no published source). Over the plate
// the depth that is more goes into the notch: see checkThroat.
func hipSection(r plan.Lumber) plan.Lumber {
	d := deeper(r.Depth)
	return plan.Lumber{Ply: 1, Breadth: r.Breadth, Depth: d, Text: nominal(r.Breadth, d)}
}

// nominal names a section by its nominal size where it is a dressed one.
func nominal(breadth, depth float64) string {
	i := slices.Index(stockDepths, depth)
	if breadth != 1.5 || i < 0 {
		return fmt.Sprintf("%gx%g", breadth, depth)
	}
	return fmt.Sprintf("2x%d", []int{4, 6, 8, 10, 12, 14, 16}[i])
}

// ridgeOwner returns the body whose ridge l is, or other.
func (f *roofFrame) ridgeOwner(l *roofplan.Line, other *roofBody) *roofBody {
	for _, rb := range f.bodies {
		p, z, ok := rb.body.Ridge()
		along := (rb.body.Axis == plan.AxisX) == l.Dir().Mainly(0)
		if ok && along && math.Abs(z-l.A.Z) < near && math.Abs(p.Sub(l.A.Flat()).Cross(l.Dir())) < near {
			return rb
		}
	}
	return other
}

// ends finds how a line ends: what it is cut to at the eaves and at gable
// walls, and how far it must reach to be cut to the line that carries it.
func (f *roofFrame) ends(i int, l *roofLine) {
	more := 4*l.half + 1
	if f.carried(i, l.line.B) {
		l.u1 += more
	}
	eaves := f.eavesAt(l.line.A.Flat())
	if f.carried(i, l.line.A) || (l.line.Kind == roofplan.Hip && len(eaves) > 0) {
		l.u0 -= more
	}
	switch l.line.Kind {
	case roofplan.Hip:
		l.planes = append(l.planes, eaves...)
		l.planes = append(l.planes, f.commonsAt(l)...)
	case roofplan.Ridge:
		f.gableEnds(l)
		f.pastHips(l)
		f.toKings(l)
	}
	l.recut()
}

// bounds returns the vertical planes that l is cut to.
func (l *roofLine) bounds() []geom.Plane {
	return append([]geom.Plane{l.after(l.u0), l.before(l.u1)}, l.planes...)
}

// recut makes the column of l anew.
func (l *roofLine) recut() { l.column = clipTo(l.bar.column(l.u0, l.u1), l.planes) }

// carried tells whether end p of line i lies on another line that carries
// it: inside that one's length, or at its end when that one comes first and
// does not lie in the same straight line.
func (f *roofFrame) carried(i int, p geom.Vec3) bool {
	for k, o := range f.lines {
		u := o.u(p.Flat())
		if k == i || math.Abs(p.Flat().Sub(o.at).Cross(o.dir)) > onLine || u < -onLine || u > o.line.Run()+onLine {
			continue
		}
		parallel := geom.Same(o.dir, f.lines[i].dir)
		if !parallel && (k < i || (u > 1 && u < o.line.Run()-1)) {
			return true
		}
	}
	return false
}

// eavesAt returns the vertical planes of the eaves that end at p.
func (f *roofFrame) eavesAt(p geom.Vec2) (out []geom.Plane) {
	for _, face := range f.roof.Faces {
		for i, a := range face.Outline {
			b := face.Outline[(i+1)%len(face.Outline)]
			if face.Edges[i] == roofplan.Eave && (a.Sub(p).Len() < skin || b.Sub(p).Len() < skin) {
				n := b.Sub(a).Unit().Right()
				out = append(out, geom.Plane{N: n.Up(0), C: n.Dot(a)})
			}
		}
	}
	return out
}

// commonsAt cuts a hip that comes up to the end of a ridge to the sides of
// the common rafters there, between which it is fitted: the last of the pairs
// at the ridge and the one in the ridge's own line.
func (f *roofFrame) commonsAt(l *roofLine) (out []geom.Plane) {
	half := l.owner.Rafters.Width() / 2
	for _, o := range f.roof.Lines {
		if o.Kind != roofplan.Ridge || l.owner.Trusses {
			continue
		}
		for _, end := range []struct {
			p geom.Vec3
			d geom.Vec2
		}{{o.A, o.Dir().Mul(-1)}, {o.B, o.Dir()}} {
			if end.p.Sub(l.line.B).Len() < skin && end.d.Dot(l.dir) < 0 {
				king := bar{at: end.p.Flat(), dir: end.d, half: half}
				out = append(out, king.after(half), king.beside(l.line.A.Flat()))
			}
		}
	}
	return out
}

// yield cuts the one of two lines that ends against the other.
func yield(o, l *roofLine) {
	if !meets(o.column, l.column) {
		return
	}
	u, v, ok := meetAt(o.line, l.line)
	if !ok { // in one straight line: square to it, where they meet
		l.planes = append(l.planes, l.before(l.line.Run()), l.after(0))
		l.recut()
		return
	}
	inside := func(u float64, x *roofLine) bool { return u > 1 && u < x.line.Run()-1 }
	if inside(v, l) && !inside(u, o) {
		o, l = l, o
	}
	l.planes = append(l.planes, o.beside(l.line.At(l.line.Run()/2).Flat()))
	l.recut()
}

// addLine makes the members of line i: one, or for a ridge board longer than
// the longest stock several that meet over a rafter. The hip of an overhang's
// corner that reaches neither a plate nor another line is none.
func (f *roofFrame) addLine(i int, l *roofLine) {
	u0, u1 := l.extent(l.u0, l.u1, l.planes)
	if u1-u0 < 1 {
		return
	}
	role, name := plan.Ridge, roofplan.Ridge
	seats := []bearing(nil)
	switch l.line.Kind {
	case roofplan.Hip:
		role, name, seats = plan.HipRafter, roofplan.Hip, f.bearings(l.bar, l.bounds())
	case roofplan.Valley:
		role, name, seats = plan.ValleyRafter, roofplan.Valley, f.bearings(l.bar, l.bounds())
	}
	if role == plan.HipRafter && len(seats) == 0 && !f.carried(i, l.line.B) {
		return
	}
	cuts := []float64{l.u0, l.u1}
	if role == plan.Ridge && !l.owner.RidgeBearing {
		cuts = f.splices(l, u0, u1)
	}
	less := append(slices.Clone(l.tail), f.less(l.bar, l.bounds(), seats)...)
	tip := u1
	if corner := f.ledgerCorner(l); corner != nil {
		less, tip = append(less, corner.house()), min(u1, l.u(corner.at))
	}
	for i := 1; i < len(cuts); i++ {
		parts := l.cut(cuts[i-1], cuts[i], l.planes, less)
		if len(parts) == 0 {
			continue
		}
		m := f.addStick(&Member{
			ID:   fmt.Sprintf("%s/%s@%s", l.owner.Name, name, at(f.along(l, max(cuts[i-1], u0, l.named)))),
			Role: role, Roof: l.owner.Roof, Section: l.section,
		}, l.bar, parts, max(cuts[i-1], u0), min(cuts[i], tip))
		f.takes[m] = append(l.bounds(), l.body()...)
		if l.member == nil {
			l.member = m
		}
	}
	if role != plan.Ridge && l.member != nil {
		f.seatLine(i, l, seats)
	}
}

// seatLine joins hip or valley i to the plates under its low end, or reports
// that there are none.
func (f *roofFrame) seatLine(i int, l *roofLine, seats []bearing) {
	l.member.Ref = f.ref()
	if !f.plateJoint(l.member, l.bar, seats, l.owner, true) && !f.carried(i, l.line.A) {
		f.memberFault(l.member, plan.Error, "hip-without-plate", fmt.Sprintf("has a %s with no plate under its low end", l.member.Role),
			"let the walls under the two roof planes meet there, or give the roof the area of its walls")
	}
	f.checkThroat(l, seats)
}

// along returns the place of a line for an ID: along the ridge, or the x of
// its low end.
func (f *roofFrame) along(l *roofLine, u float64) float64 {
	p := l.at.Add(l.dir.Mul(u))
	if l.line.Kind == roofplan.Ridge {
		return l.owner.station(p)
	}
	return p.X
}

// station returns the place of p along the body's ridge, from the outside
// face of the wall at its low end.
func (rb *roofBody) station(p geom.Vec2) float64 {
	if rb.body.Axis == plan.AxisY {
		return p.Y - rb.body.Lo.Y
	}
	return p.X - rb.body.Lo.X
}

// splices returns where a ridge board is cut to stock: at the last rafter
// within the stock, so that the joint has a pair beside it.
func (f *roofFrame) splices(l *roofLine, u0, u1 float64) []float64 {
	stock := l.owner.RidgeStock
	if stock == 0 {
		stock = longest(f.plan)
	}
	cuts := []float64{l.u0}
	for start := u0; u1-start > stock+geom.Eps; {
		next := start
		for _, run := range f.runs {
			if u := l.u(run.High); !run.Flush && run.HighEnd.Kind == roofplan.Ridge && l.holds(run.High) && u <= start+stock+geom.Eps {
				next = max(next, u)
			}
		}
		if next <= start+1 {
			next = start + stock
		}
		cuts = append(cuts, next)
		start = next
	}
	return append(cuts, l.u1)
}

// backward tells whether a direction goes to the west or south end of the house as written.
func (b *builder) backward(d geom.Vec2) bool {
	d = b.plan.Lay.Back(d)
	return d.X+d.Y < -near/100
}

// longest returns the longest stock of the plan's lumber yard, in.
func longest(p *plan.Plan) float64 {
	if len(p.Lumber.Stock) == 0 {
		return 240
	}
	return slices.Max(p.Lumber.Stock)
}
