package elevation

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan/geom"
	"galewright/plan/placement"
	"galewright/plan/steel"
	"galewright/render/label"
	"galewright/render/page"
	"galewright/render/project"
	"galewright/render/scene"
	"galewright/render/sheet"
)

// metal is a part of a piece's steel as it is seen, in the coordinates of the line.
type metal struct {
	kind  scene.Kind
	pts   []geom.Vec2 // its convex outline
	face  float64     // of a plate: 1 it lies toward the eye, -1 away from it, 0 edge on
	depth float64     // of its nearest point: the larger, the nearer
	// axis is the middle line along its longer sides, seen and hidden parts apart; nil
	// for what has no four sides. across is its width square to that, in.
	axis   []project.Line
	across float64
}

// metals returns the steel of a piece as it is seen.
func (e *elev) metals(b *steel.Body) (out []metal) {
	if _, _, angle := bend(e, b); b == nil || angle {
		return nil // an angle is shown by its symbol, turned as it lies
	}
	add := func(k scene.Kind, n geom.Vec3, list ...geom.Solid) {
		if m, ok := e.metalOf(k, n, list); ok {
			out = append(out, m)
		}
	}
	for _, p := range plates(b) {
		add(scene.Plate, p.N, p.Solid())
	}
	for _, t := range scene.Things(b) {
		if k := t.Owner.(scene.Part).Kind; k != scene.Plate {
			add(k, geom.Vec3{}, t.Solids...)
		}
	}
	return out
}

// plates are the flat stretches of a body.
func plates(b *steel.Body) (out []geom.Plate) {
	for _, band := range b.Bands {
		out = append(out, band...)
	}
	return append(out, scene.Seats(b)...)
}

// edgeOn is the part of its normal toward the eye under which a plate is seen edge on.
const edgeOn = 0.3

// metalOf looks at a part whose large side has a normal, or none.
func (e *elev) metalOf(k scene.Kind, n geom.Vec3, list []geom.Solid) (metal, bool) {
	m, view := metal{kind: k, depth: math.Inf(-1)}, e.view()
	if d := n.Dot(view.Toward); abs(d) > edgeOn {
		m.face = math.Copysign(1, d)
	}
	for _, s := range list {
		s.Points(func(p geom.Vec3) {
			m.pts = append(m.pts, e.flat(p))
			m.depth = max(m.depth, view.Depth(p))
		})
	}
	if m.pts = outline(m.pts); len(m.pts) < 3 {
		return m, false
	}
	if len(m.pts) == 4 {
		e.lay(&m)
	}
	return m, true
}

// lay finds the middle line of a part with four sides, and what of it lumber hides.
func (e *elev) lay(m *metal) {
	mid := func(i, k int) geom.Vec2 { return m.pts[i].Add(m.pts[k]).Mul(0.5) }
	a, b, c, d := mid(0, 3), mid(1, 2), mid(0, 1), mid(2, 3)
	if c.Sub(d).Len() > a.Sub(b).Len() {
		a, b, c, d = c, d, a, b
	}
	m.across = c.Sub(d).Len()
	if m.face != 0 {
		m.axis = []project.Line{{A: a, B: b}}
		return
	}
	f := e.line.Frame
	off, t := f.Origin.Dot(f.D), -m.depth-f.Origin.Dot(f.In)-hair
	for _, l := range e.wood.Parts(f.At(a.X, t, a.Y), f.At(b.X, t, b.Y), nil) {
		l.A.X, l.B.X = l.A.X-off, l.B.X-off
		m.axis = append(m.axis, l)
	}
}

// hair is how far before a part its line is asked for, in: over what a line of sight
// may graze.
const hair = 0.01

// strip is one straight length of steel on paper.
type strip struct {
	a, b  sheet.Pt
	w     sheet.MM
	ring  []sheet.Pt // the outline of what is no straight length
	face  float64    // as of the metal
	depth float64
	state project.State
}

// steel returns the lengths of steel of a piece that are in range.
func (p *part) steel(v *page.Viewport, pc *placement.Piece) (out []strip) {
	for _, m := range p.metal[pc] {
		s := strip{w: max(bandLeast, v.Len(m.across)), face: m.face, depth: m.depth}
		for _, l := range m.axis {
			a, b, ok := v.Segment(l.A, l.B)
			if s.a, s.b, s.state = a, b, l.State; ok && dist(a, b) > 0 {
				out = append(out, s)
			}
		}
		if m.axis == nil {
			if s.ring = v.Polygon(m.pts); s.ring != nil {
				out = append(out, s)
			}
		}
	}
	return out
}

// wide returns the width of the widest steel of a piece, mm.
func (d *shown) wide() sheet.MM {
	w := bandLeast
	for _, s := range d.steel {
		if s.ring == nil {
			w = max(w, s.w)
		}
	}
	return w
}

// rects returns the boxes of a length of steel; a slant one is boxed in short
// steps.
func (s strip) rects() (out []sheet.Rect) {
	if s.ring != nil {
		return []sheet.Rect{page.Bounds(s.ring)}
	}
	n := 1
	if abs(float64(s.a.X-s.b.X)) > 1e-6 && abs(float64(s.a.Y-s.b.Y)) > 1e-6 {
		n = max(1, int(dist(s.a, s.b)/2))
	}
	for k := range n {
		p, q := lerp(s.a, s.b, sheet.MM(k)/sheet.MM(n)), lerp(s.a, s.b, sheet.MM(k+1)/sheet.MM(n))
		r := sheet.Rect{X: min(p.X, q.X), Y: min(p.Y, q.Y), W: max(p.X, q.X) - min(p.X, q.X), H: max(p.Y, q.Y) - min(p.Y, q.Y)}
		if r.W < r.H {
			r.X, r.W = r.X-s.w/2, r.W+s.w
		} else {
			r.Y, r.H = r.Y-s.w/2, r.H+s.w
		}
		out = append(out, r)
	}
	return out
}

// drawSteel draws the steel of pieces at its place, the nearest last: open what lies on
// the far face, dashed what lumber hides, solid all else.
func (p *part) drawSteel(b *label.Board, list []*shown) {
	type one struct {
		strip
		of *shown
	}
	var all []one
	for _, d := range list {
		for _, s := range d.steel {
			all = append(all, one{s, d})
		}
	}
	slices.SortStableFunc(all, func(a, b one) int { return cmp.Compare(a.depth, b.depth) })
	slices.SortStableFunc(all, func(a, b one) int { return cmp.Compare(a.ink(), b.ink()) })
	for _, s := range all {
		p.drawStrip(s.strip, s.of.mark)
		for _, r := range s.rects() {
			p.page.Box("piece", s.of.pc.Tag, r)
			b.Block(r)
		}
	}
}

// The ways steel is drawn, in the order in which it is.
const (
	openSteel = iota
	hiddenSteel
	solidSteel
)

func (s strip) ink() int {
	switch {
	case s.face < 0:
		return openSteel
	case s.state == project.Hidden:
		return hiddenSteel
	}
	return solidSteel
}

func (p *part) drawStrip(s strip, mark *sheet.Piece) {
	st := sheet.Style{Fill: sheet.Black, Layer: sheet.LayerHardware}
	switch s.ink() {
	case hiddenSteel:
		p.page.Add(sheet.Path{Style: st, Segs: s.dashes(), Piece: mark})
		return
	case openSteel:
		st.Fill, st.Pen = sheet.NoFill, sheet.PenDim
		if s.w > 1.2 {
			st.Pen = sheet.PenMember
		}
	}
	p.page.Add(sheet.Polyline{Style: st, Pts: s.outline(), Closed: true, Piece: mark})
}

// dashes returns a length of steel in dashes, as those of hidden lines, its ends in ink.
func (s strip) dashes() (out []sheet.Seg) {
	on, off := sheet.PenHidden.Dash()[0], sheet.PenHidden.Dash()[1]
	long := sheet.MM(dist(s.a, s.b))
	n := max(1, sheet.MM(math.Round(float64((long-on)/(on+off)))))
	switch {
	case long < 2*off:
		n, on = 0, long
	case long < 2*on+off:
		on = (long - off) / 2
	}
	step := (long - on) / max(n, 1)
	for k := sheet.MM(0); k <= n; k++ {
		d := strip{a: lerp(s.a, s.b, k*step/long), b: lerp(s.a, s.b, (k*step+on)/long), w: s.w}
		for i, q := range d.outline() {
			op := 'L'
			if i == 0 {
				op = 'M'
			}
			out = append(out, sheet.Seg{Op: op, P: [3]sheet.Pt{q}})
		}
		out = append(out, sheet.Seg{Op: 'Z'})
	}
	return out
}

// outline returns the outline of a length of steel on paper.
func (s strip) outline() []sheet.Pt {
	if s.ring != nil {
		return s.ring
	}
	d := geom.Vec2{X: float64(s.b.X - s.a.X), Y: float64(s.b.Y - s.a.Y)}.Unit().Left().Mul(float64(s.w) / 2)
	n := sheet.Pt{X: sheet.MM(d.X), Y: sheet.MM(d.Y)}
	m := sheet.Pt{X: -n.X, Y: -n.Y}
	return []sheet.Pt{s.a.Add(n), s.b.Add(n), s.b.Add(m), s.a.Add(m)}
}
