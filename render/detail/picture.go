package detail

import (
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/steel"
	"galewright/render/project"
	"galewright/render/scene"
	"galewright/render/sheet"
)

// paint draws a look about the place where the draft stands: wood first, then
// the steel over it.
func (d *draft) paint(s *shot, l look) {
	mid := l.view.At(s.center)
	at := func(p geom.Vec2) geom.Vec2 { return p.Sub(mid) }
	flat := func(p geom.Vec3) geom.Vec2 { return at(l.view.At(p)) }
	d.drawn = nil
	for _, x := range l.lines {
		if part := x.Owner.(scene.Part); part.Body == nil && (l.no >= 0 || x.State != project.Broken) {
			d.wood(x.State, at(x.A), at(x.B))
		}
	}
	if l.no >= 0 {
		d.surfaces(l, flat)
	}
	for _, x := range l.lines {
		if part := x.Owner.(scene.Part); part.Body != nil && (l.no >= 0 || x.State == project.Seen || x.State == project.Cut) {
			d.steel(part, x.State, at(x.A), at(x.B))
		}
	}
	d.fasteners(s, l, flat)
}

// rank is the order in which lines of wood are drawn: those that matter most
// first, for what would run along them too near is left out.
func rank(s project.State) int {
	return [...]int{project.Cut: 0, project.Seen: 1, project.Broken: 2, project.Hidden: 3}[s]
}

// steel draws one line of a body.
func (d *draft) steel(part scene.Part, state project.State, a, b geom.Vec2) {
	pen := sheet.PenMember
	switch {
	case state == project.Hidden:
		pen = sheet.PenHidden
	case part.Kind == scene.Plate && state != project.Broken:
		pen = sheet.PenHardware
	}
	d.Line(pen, sheet.LayerHardware, d.at(a.X, a.Y), d.at(b.X, b.Y))
}

// wood draws one line of a member, without what of it would run along another
// too near to be told from it.
func (d *draft) wood(state project.State, a, b geom.Vec2) {
	pen := sheet.PenMember
	switch state {
	case project.Hidden:
		return
	case project.Cut:
		pen = sheet.PenCut
	case project.Broken:
		pen = sheet.PenDim
	}
	for _, x := range d.clearOfOthers(run{A: d.at(a.X, a.Y), B: d.at(b.X, b.Y)}, pen) {
		d.drawn = append(d.drawn, stroke{x, pen})
		if state == project.Broken {
			d.BreakLine(x.A, x.B)
		} else {
			d.Line(pen, sheet.LayerMember, x.A, x.B)
		}
	}
}

// stroke is a line of wood on paper.
type stroke struct {
	run
	pen sheet.Pen
}

// run is a straight line on paper.
type run struct{ A, B sheet.Pt }

// paperLeft is the paper that must show between two lines, mm: see leastGap of
// the tests of all sheets.
const paperLeft = 0.2

// clearOfOthers returns the parts of a line that do not run along one that is
// drawn with less than paperLeft between them.
func (d *draft) clearOfOthers(x run, pen sheet.Pen) []run {
	if d.leftOut(x) {
		return nil
	}
	left := []run{x}
	for _, o := range d.drawn {
		var next []run
		for _, y := range left {
			next = append(next, apart(y, o.run, (pen.Width()+o.pen.Width())/2+paperLeft)...)
		}
		if left = next; len(left) == 0 {
			break
		}
	}
	return left
}

// leftOut tells whether a line runs along a break of the view, in it or beside it.
func (d *draft) leftOut(x run) bool {
	const beside = 0.8 // mm
	in := func(a, b, lo, hi sheet.MM) bool {
		return max(a, b)-min(a, b) < 0.05 && min(a, b) > lo-beside && max(a, b) < hi+beside
	}
	for _, c := range d.cutsV {
		if in(x.A.Y, x.B.Y, d.at(0, c.to).Y, d.at(0, c.from).Y) {
			return true
		}
	}
	for _, c := range d.cutsU {
		if in(x.A.X, x.B.X, d.at(c.from, 0).X, d.at(c.to, 0).X) {
			return true
		}
	}
	return false
}

// apart returns the parts of x that do not run along o nearer than least mm.
func apart(x, o run, least sheet.MM) []run {
	v := geom.Vec2{X: float64(x.B.X - x.A.X), Y: float64(x.B.Y - x.A.Y)}
	long, u := v.Len(), v.Unit()
	w := geom.Vec2{X: float64(o.B.X - o.A.X), Y: float64(o.B.Y - o.A.Y)}.Unit()
	if long == 0 || math.Abs(u.Cross(w)) > 0.02 {
		return []run{x}
	}
	at := func(p sheet.Pt) geom.Vec2 { return geom.Vec2{X: float64(p.X - x.A.X), Y: float64(p.Y - x.A.Y)} }
	p, q := at(o.A), at(o.B)
	if math.Abs(u.Cross(p)) > float64(least) {
		return []run{x}
	}
	lo, hi := min(p.Dot(u), q.Dot(u)), max(p.Dot(u), q.Dot(u))
	var out []run
	on := func(t float64) sheet.Pt { return x.A.Add(sheet.Pt{X: sheet.MM(u.X * t), Y: sheet.MM(u.Y * t)}) }
	if lo > 0.05 {
		out = append(out, run{A: x.A, B: on(min(lo, long))})
	}
	if hi < long-0.05 {
		out = append(out, run{A: on(max(hi, 0)), B: x.B})
	}
	return out
}

// surfaces draws on what is seen of each face of wood how its grain runs: the
// cross of common drafting practice on end grain, fibers on the sides.
func (d *draft) surfaces(l look, flat func(geom.Vec3) geom.Vec2) {
	for _, f := range l.picture.Faces() {
		part := f.Owner.(scene.Part)
		if part.Kind == scene.Concrete && f.Cut {
			d.concrete(l, f, flat)
		}
		if part.Member == nil || len(f.Loop) != 4 || f.N.Dot(l.view.Toward) < 0.7 {
			continue
		}
		grain := steel.Grain(part.Member)
		if math.Abs(grain.Dot(f.N)) > 0.7 {
			for _, q := range plies(part.Member, f.Loop) {
				d.thin(l, flat, q[0], q[2])
				d.thin(l, flat, q[1], q[3])
				if len(q) > 4 {
					d.thin(l, flat, q[4], q[5])
				}
			}
			continue
		}
		d.fibers(l, flat, f.Loop, grain)
	}
}

// thin draws what is seen of a line in space.
func (d *draft) thin(l look, flat func(geom.Vec3) geom.Vec2, a, b geom.Vec3) {
	off := l.view.Toward.Mul(0.002)
	origin := flat(geom.Vec3{}).Sub(l.view.At(geom.Vec3{}))
	for _, x := range l.picture.Parts(a.Add(off), b.Add(off), nil) {
		if x.State != project.Hidden {
			p, q := x.A.Add(origin), x.B.Add(origin)
			for _, y := range d.clearOfOthers(run{A: d.at(p.X, p.Y), B: d.at(q.X, q.Y)}, sheet.PenDim) {
				d.Line(sheet.PenDim, sheet.LayerMember, y.A, y.B)
				d.drawn = append(d.drawn, stroke{y, sheet.PenDim})
			}
		}
	}
}

// plies parts the end of a built-up member into its plies: four corners each,
// and for all but the first the line between it and the one before.
func plies(m *framing.Member, loop []geom.Vec3) (out [][]geom.Vec3) {
	n := max(1, m.Section.Ply)
	u, v := loop[1].Sub(loop[0]), loop[3].Sub(loop[0])
	if math.Abs(u.Len()-m.Section.Width()) > math.Abs(v.Len()-m.Section.Width()) {
		u, v = v, u
	}
	for i := range n {
		a := loop[0].Add(u.Mul(float64(i) / float64(n)))
		b := loop[0].Add(u.Mul(float64(i+1) / float64(n)))
		q := []geom.Vec3{a, b, b.Add(v), a.Add(v)}
		if i > 0 {
			q = append(q, a, a.Add(v))
		}
		out = append(out, q)
	}
	return out
}

// fibers draws the lines that tell which way the wood runs over a side.
func (d *draft) fibers(l look, flat func(geom.Vec3) geom.Vec2, loop []geom.Vec3, grain geom.Vec3) {
	u, v := loop[1].Sub(loop[0]), loop[3].Sub(loop[0])
	at := loop[0]
	if math.Abs(u.Unit().Dot(grain)) < math.Abs(v.Unit().Dot(grain)) {
		u, v = v, u
	}
	if u.Dot(grain) < 0 {
		at, u = at.Add(u), u.Mul(-1)
	}
	for i, n := 1, grainLines(v.Len()*d.k); i <= n; i++ {
		from, to := fiber(i)
		a := at.Add(v.Mul(float64(i) / float64(n+1)))
		d.thin(l, flat, a.Add(u.Mul(from)), a.Add(u.Mul(to)))
	}
}

// concrete dots a cut face of concrete.
func (d *draft) concrete(l look, f project.Face, flat func(geom.Vec3) geom.Vec2) {
	if len(f.Loop) != 4 {
		return
	}
	u, v := f.Loop[1].Sub(f.Loop[0]), f.Loop[3].Sub(f.Loop[0])
	step := 3.2 / d.k
	nu, nv := int(u.Len()/step), int(v.Len()/step)
	for i := range nu {
		for j := range nv {
			s, t := (float64(i)+0.5+0.3*float64((i*7+j*3)%3-1))/float64(nu), (float64(j)+0.5+0.3*float64((i*5+j*11)%3-1))/float64(nv)
			p := f.Loop[0].Add(u.Mul(s)).Add(v.Mul(t)).Add(l.view.Toward.Mul(0.01))
			if l.picture.Sees(p) {
				q := flat(p)
				at := d.at(q.X, q.Y)
				d.Polygon(sheet.Style{Pen: sheet.PenDim, Layer: sheet.LayerMember}, at, at.Add(sheet.Pt{X: 0.5}), at.Add(sheet.Pt{X: 0.25, Y: -0.45}))
			}
		}
	}
}

// fasteners draws heads as black holes where the steel is seen flat, each in
// one look only, holes that stay empty as open ones, and shanks where it is seen on
// edge. A hole that something hides in the look that is its own is dashed.
func (d *draft) fasteners(s *shot, l look, flat func(geom.Vec3) geom.Vec2) {
	b := s.Body
	for _, f := range b.Fasteners {
		n := b.PlateOf(f).N
		switch {
		case s.home(f.Head, n) == l.no:
			q := flat(f.Head)
			d.hole(q.X, q.Y, f.Diameter, true, l.shows(f.Head, n))
		case math.Abs(n.Dot(l.view.Toward)) < edgeOn && l.no >= 0:
			d.shank(flat(f.Head), flat(f.Tip))
		}
	}
	for _, h := range b.Open {
		if n := b.Bands[h.Band][h.Plate].N; s.home(h.At, n) == l.no {
			q := flat(h.At)
			d.hole(q.X, q.Y, h.Diameter, false, l.shows(h.At, n))
		}
	}
}

// shows tells whether nothing hides a hole in steel of a normal.
func (l look) shows(at, n geom.Vec3) bool {
	return n.Dot(l.view.Toward) > squareOn && l.picture.Sees(at.Add(n.Mul(0.01)))
}

// home is the look that a hole is drawn in: the first that sees it, else the
// first that its steel faces.
func (s *shot) home(at, n geom.Vec3) int {
	for _, l := range s.looks {
		if l.shows(at, n) {
			return l.no
		}
	}
	for _, l := range s.looks {
		if n.Dot(l.view.Toward) > squareOn {
			return l.no
		}
	}
	return len(s.looks)
}

// A plate is seen flat when it is square to the sight within 25 degrees, on
// edge when along it within 12.
const (
	squareOn = 0.9
	edgeOn   = 0.2
)

// shank draws a fastener from its side.
func (d *draft) shank(head, tip geom.Vec2) {
	side := tip.Sub(head).Unit().Left().Mul(0.16)
	p := d.pts(head, tip, head.Add(side), head.Sub(side))
	d.Line(sheet.PenMember, sheet.LayerHardware, p[0], p[1])
	d.Line(sheet.PenHardware, sheet.LayerHardware, p[2], p[3])
}

// memberName returns role and section, "stud 2x6".
func memberName(m *framing.Member) string {
	role := string(m.Role)
	if m.Role == plan.King || m.Role == plan.Post {
		role = "stud"
	}
	if m.Section.Text == "" {
		return role
	}
	return role + " " + m.Section.Text
}
