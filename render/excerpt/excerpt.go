package excerpt

import (
	"math"
	"slices"

	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/placement"
	"galewright/plan/steel"
	"galewright/render/page"
	"galewright/render/project"
	"galewright/render/scene"
	"galewright/render/sheet"
)

// House is a house whose places can be drawn.
type House struct {
	scene *scene.House
	steel *steel.Steel
	at    func(*framing.Joint) []*placement.Piece
	boxes []box // of the bodies, in their order
}

// box is the extent of a body.
type box struct {
	body   *steel.Body
	lo, hi geom.Vec3
}

// New makes the places of a set ready to be drawn.
func New(m *page.Model) *House {
	h := &House{scene: scene.New(m.House), steel: m.Schedule.Steel, at: m.Placement.At}
	for _, b := range h.steel.Bodies {
		if lo, hi, ok := extent(b); ok {
			h.boxes = append(h.boxes, box{b, lo, hi})
		}
	}
	return h
}

// extent returns the box around the steel of a body.
func extent(b *steel.Body) (lo, hi geom.Vec3, ok bool) {
	add := func(p geom.Vec3) {
		if !ok {
			lo, hi, ok = p, p, true
		}
		lo = geom.Vec3{X: min(lo.X, p.X), Y: min(lo.Y, p.Y), Z: min(lo.Z, p.Z)}
		hi = geom.Vec3{X: max(hi.X, p.X), Y: max(hi.Y, p.Y), Z: max(hi.Z, p.Z)}
	}
	for _, band := range b.Bands {
		for _, p := range band {
			add(p.A)
			add(p.B)
		}
	}
	for _, p := range scene.Seats(b) {
		add(p.A)
		add(p.B)
	}
	for _, r := range b.Rods {
		add(r.A)
		add(r.B)
	}
	return lo, hi, ok
}

// How much of what is around a joint is shown beyond its steel, and around its own
// place at least, in: less than from stud to stud, so that neighbors do not hide it.
const (
	beyond = 5.0
	aside  = 9.0
)

// Picture is a place in space as lines.
type Picture struct {
	view  project.View
	seen  func(geom.Vec3) bool // in the box, and nothing hides it
	lines []project.Line
	own   map[*steel.Body]bool
	shown float64 // length of the lines of the joint's own steel, in
	lo    geom.Vec2
	hi    geom.Vec2
}

// Of looks at a joint. It is nil where the joint names no member.
func (h *House) Of(j *framing.Joint) *Picture {
	if j == nil || j.First() == nil {
		return nil
	}
	own := map[*steel.Body]bool{}
	at := frameAt(j)
	lo, hi := at.local(j.At).Sub(geom.Vec3{X: aside, Y: aside, Z: aside}), at.local(j.At).Add(geom.Vec3{X: aside, Y: aside, Z: aside})
	for _, pc := range h.at(j) {
		b := h.steel.Body(pc)
		if b == nil {
			continue
		}
		own[b] = true
		if a, z, ok := extent(b); ok {
			for _, q := range corners(a, z) {
				q = at.local(q)
				lo = geom.Vec3{X: min(lo.X, q.X-beyond), Y: min(lo.Y, q.Y-beyond), Z: min(lo.Z, q.Z-beyond)}
				hi = geom.Vec3{X: max(hi.X, q.X+beyond), Y: max(hi.Y, q.Y+beyond), Z: max(hi.Z, q.Z+beyond)}
			}
		}
	}
	part := h.within(at, lo, hi)
	var best *Picture
	for _, s := range sides {
		p := look(part, at, s, own)
		if best == nil || p.shown > enough*best.shown {
			best = p
		}
	}
	if len(best.lines) == 0 {
		return nil
	}
	return best
}

// sides are the ways to look at a place, as parts along its host and inward: from
// outside and the left, outside and the right, then from inside.
var sides = [][2]float64{{0.7, 1}, {-0.7, 1}, {0.7, -1}, {-0.7, -1}}

// enough is by how much more of a joint's own steel another side must show to be taken.
const enough = 1.25

// within returns what lies in a box of a place's own axes.
func (h *House) within(at axes, lo, hi geom.Vec3) *project.Scene {
	mid, half := lo.Add(hi).Mul(0.5), hi.Sub(lo).Mul(0.5)
	center := at.global(mid)
	planes := project.Box(center, [3]geom.Vec3{at.x, at.y, at.z}, [3]float64{half.X, half.Y, half.Z})
	a, z := center, center
	for _, q := range corners(lo, hi) {
		q = at.global(q)
		a = geom.Vec3{X: min(a.X, q.X), Y: min(a.Y, q.Y), Z: min(a.Z, q.Z)}
		z = geom.Vec3{X: max(z.X, q.X), Y: max(z.Y, q.Y), Z: max(z.Z, q.Z)}
	}
	var bodies []*steel.Body
	for _, b := range h.boxes {
		if b.lo.X < z.X && b.hi.X > a.X && b.lo.Y < z.Y && b.hi.Y > a.Y && b.lo.Z < z.Z && b.hi.Z > a.Z {
			bodies = append(bodies, b.body)
		}
	}
	return h.scene.Around(planes, a, z, bodies...)
}

// look projects a part of a house from a side and above.
func look(part *project.Scene, at axes, side [2]float64, own map[*steel.Body]bool) *Picture {
	sight := at.x.Mul(side[0]).Add(at.y.Mul(side[1])).Sub(at.z.Mul(0.5))
	view := project.Looking(sight, geom.Vec3{Z: 1})
	pic := project.Project(part, view)
	p := &Picture{own: own, view: view, seen: pic.Sees}
	for _, l := range pic.SeenLines() {
		p.lines = append(p.lines, l)
		if b := l.Owner.(scene.Part).Body; b != nil && own[b] {
			p.shown += l.B.Sub(l.A).Len()
		}
		for _, q := range []geom.Vec2{l.A, l.B} {
			if len(p.lines) == 1 && q == l.A {
				p.lo, p.hi = q, q
			}
			p.lo = geom.Vec2{X: min(p.lo.X, q.X), Y: min(p.lo.Y, q.Y)}
			p.hi = geom.Vec2{X: max(p.hi.X, q.X), Y: max(p.hi.Y, q.Y)}
		}
	}
	return p
}

// axes are the axes of a place: along its host, inward from where it is looked at,
// and up.
type axes struct{ o, x, y, z geom.Vec3 }

func (a axes) local(p geom.Vec3) geom.Vec3 {
	p = p.Sub(a.o)
	return geom.Vec3{X: p.Dot(a.x), Y: p.Dot(a.y), Z: p.Dot(a.z)}
}

func (a axes) global(p geom.Vec3) geom.Vec3 {
	return a.o.Add(a.x.Mul(p.X)).Add(a.y.Mul(p.Y)).Add(a.z.Mul(p.Z))
}

// frameAt returns the axes at a joint: of its wall, seen from outside; else of the
// first level direction that its members have, seen from their right.
func frameAt(j *framing.Joint) axes {
	up := geom.Vec3{Z: 1}
	if j.Wall != nil {
		f := j.Wall.Frame()
		return axes{j.At, f.D.Up(0), f.In.Up(0), up}
	}
	for _, m := range j.Members {
		d := m.B.Sub(m.A).Flat()
		if d.Len() < 1 {
			continue
		}
		d = d.Unit()
		if math.Abs(m.B.Z-m.A.Z) > 1 { // a rafter: from its foot toward the ridge
			if m.B.Z < m.A.Z {
				d = d.Mul(-1)
			}
			return axes{j.At, d.Left().Mul(-1).Up(0), d.Up(0), up}
		}
		return axes{j.At, d.Up(0), d.Left().Up(0), up}
	}
	return axes{j.At, geom.Vec3{X: 1}, geom.Vec3{Y: 1}, up}
}

// corners lists the corners of a box.
func corners(lo, hi geom.Vec3) (out []geom.Vec3) {
	for _, x := range []float64{lo.X, hi.X} {
		for _, y := range []float64{lo.Y, hi.Y} {
			for _, z := range []float64{lo.Z, hi.Z} {
				out = append(out, geom.Vec3{X: x, Y: y, Z: z})
			}
		}
	}
	return out
}

// Column looks from outside at what stands about a place on plan, reach in around it
// and from one height to another, in. All its steel is its own.
func (h *House) Column(at geom.Vec2, outward geom.Vec2, reach, z0, z1 float64) *Picture {
	y := outward.Mul(-1).Unit()
	a := axes{at.Up(0), y.Left().Mul(-1).Up(0), y.Up(0), geom.Vec3{Z: 1}}
	own := map[*steel.Body]bool{}
	for _, b := range h.boxes {
		own[b.body] = true
	}
	lo, hi := geom.Vec3{X: -reach, Y: -reach, Z: z0}, geom.Vec3{X: reach, Y: reach, Z: z1}
	p := look(h.within(a, lo, hi), a, [2]float64{0, 1}, own)
	free := p.seen
	p.seen = func(q geom.Vec3) bool {
		l := a.local(q)
		return l.X > lo.X && l.X < hi.X && l.Y > lo.Y && l.Y < hi.Y && l.Z > lo.Z && l.Z < hi.Z && free(q)
	}
	if len(p.lines) == 0 {
		return nil
	}
	return p
}

// Shows returns where in a rectangle the middle of a body is drawn, if it is in the
// picture and nothing hides it.
func (p *Picture) Shows(b *steel.Body, r sheet.Rect) (sheet.Pt, bool) {
	for _, band := range b.Bands {
		for _, plate := range band {
			mid := plate.A.Add(plate.B).Mul(0.5).Add(plate.N.Mul(plate.Thickness + 0.05))
			if plate.N.Dot(p.view.Toward) > 0.1 && p.seen(mid) {
				return p.place(r)(p.view.At(mid)), true
			}
		}
	}
	return sheet.Pt{}, false
}

// Extent returns what the picture takes of a rectangle.
func (p *Picture) Extent(r sheet.Rect) sheet.Rect {
	at := p.place(r)
	return page.Bounds([]sheet.Pt{at(p.lo), at(p.hi)})
}

// place maps the picture into a rectangle, as large as it allows.
func (p *Picture) place(r sheet.Rect) func(geom.Vec2) sheet.Pt {
	k := sheet.MM(min(float64(r.W)/(p.hi.X-p.lo.X), float64(r.H)/(p.hi.Y-p.lo.Y)))
	c := r.Center()
	return func(q geom.Vec2) sheet.Pt {
		return sheet.Pt{X: c.X + sheet.MM(q.X-(p.lo.X+p.hi.X)/2)*k, Y: c.Y - sheet.MM(q.Y-(p.lo.Y+p.hi.Y)/2)*k}
	}
}

// Draw draws the picture as large as a rectangle allows: wood thin, the joint's own
// steel heavy, other steel between.
func (p *Picture) Draw(pg *page.Page, r sheet.Rect) {
	at := p.place(r)
	pens := []sheet.Pen{sheet.PenDim, sheet.PenMember, sheet.PenCut}
	paths := make([]sheet.Path, len(pens))
	for i, pen := range pens {
		paths[i].Style = page.Style(pen, sheet.LayerNote)
	}
	for _, l := range p.lines {
		to := &paths[0]
		if b := l.Owner.(scene.Part).Body; b != nil {
			to = &paths[1]
			if p.own[b] {
				to = &paths[2]
			}
		}
		to.Segs = append(to.Segs, sheet.Seg{Op: 'M', P: [3]sheet.Pt{at(l.A)}}, sheet.Seg{Op: 'L', P: [3]sheet.Pt{at(l.B)}})
	}
	for _, path := range slices.DeleteFunc(paths, func(x sheet.Path) bool { return len(x.Segs) == 0 }) {
		pg.Add(path)
	}
}

// Slab returns what stands between two stations of a frame, two depths and two heights,
// in, cut open at those.
func (h *House) Slab(f geom.Frame, lo, hi geom.Vec3) *project.Scene {
	return h.within(axes{f.Origin.Up(0), f.D.Up(0), f.In.Up(0), geom.Vec3{Z: 1}}, lo, hi)
}
