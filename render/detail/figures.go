package detail

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan/geom"
	"galewright/plan/steel"
	"galewright/render/scene"
	"galewright/render/sheet"
)

// figures dimensions a view: in the first the steel along and across, with the
// members that begin under it; in the second the depth.
func (d *draft) figures(s *shot, l look, i int) {
	if len(s.Body.Bands) == 0 {
		d.rodFigures(s, l)
		return
	}
	p := s.main()
	if flat, ok := s.flat(l); i == 0 && ok {
		p = flat
	}
	dir := p.B.Sub(p.A).Unit()
	if len(s.Body.Rods) > 0 {
		d.rodBeside(s, l, i)
	}
	switch {
	case i == 0 && geom.Aligned(dir, l.view.Up):
		stops, ends := s.stops(l.view.Up, p), d.endsOf(s, l.view.Up)
		d.dimV(stops...)
		if !alikeStops(stops, ends) {
			d.dimV(ends...)
		}
		d.dimU(d.bottom(), d.widths(s, l.view.Right, p)...)
	case i == 0 && geom.Aligned(dir, l.view.Right):
		stops, ends := s.stops(l.view.Right, p), d.endsOf(s, l.view.Right)
		d.dimU(d.bottom(), stops...)
		if !alikeStops(stops, ends) {
			d.dimU(d.bottom(), ends...)
		}
		d.dimV(d.widths(s, l.view.Up, p)...)
	case i == 1 && len(s.Body.Bands[0]) > 1:
		d.bends(s, l)
	}
}

// bends dimensions a bent band that is seen on edge: what slopes by a note, what
// is level below; what is upright stands in the first view's chain.
func (d *draft) bends(s *shot, l look) {
	mid := l.view.At(s.center)
	for _, x := range s.Body.Bands[0] {
		a, b := l.view.At(x.A).Sub(mid), l.view.At(x.B).Sub(mid)
		v := b.Sub(a)
		switch {
		case v.Len() < x.Len()-0.01 || v.Len() < 1: // it is not seen at its length
		case math.Abs(v.Y) < 0.01:
			d.dimU(d.bottom(), a.X, b.X)
		case math.Abs(v.X) > 0.01:
			m := a.Add(b).Mul(0.5)
			d.say(m.X, m.Y, "leg "+d.Length(x.Len()))
		}
	}
}

// bottom is the lower side of all that is drawn so far.
func (d *draft) bottom() sheet.MM { e := d.extent(); return e.Y + e.H }

// main is the longest plate that fasteners go through.
func (s *shot) main() (out geom.Plate) {
	for _, f := range s.Body.Fasteners {
		if p := s.Body.PlateOf(f); p.Len() > out.Len()+0.01 {
			out = p
		}
	}
	if out.Len() == 0 {
		return s.Body.Bands[0][0]
	}
	return out
}

// flat is the longest plate that fasteners go through and that a look sees at its
// full width: only of that can widths be told there.
func (s *shot) flat(l look) (out geom.Plate, ok bool) {
	for _, f := range s.Body.Fasteners {
		p := s.Body.PlateOf(f)
		if geom.Aligned(p.N, l.view.Toward) && p.Len() > out.Len()+0.01 {
			out, ok = p, true
		}
	}
	return out, ok
}

// alikeStops tells whether a chain has nothing but the two ends of the steel.
func alikeStops(stops, ends []float64) bool {
	return math.Abs(slices.Min(stops)-slices.Min(ends)) < tellTape && math.Abs(slices.Max(stops)-slices.Max(ends)) < tellTape &&
		!slices.ContainsFunc(stops, func(x float64) bool { return x-slices.Min(ends) > tellTape && slices.Max(ends)-x > tellTape })
}

// stops are the ends of the main plate along a direction and what begins or ends
// under its middle line, from the middle of the shot.
func (s *shot) stops(dir geom.Vec3, p geom.Plate) (out []float64) {
	mid := s.center.Dot(dir)
	a, b := p.A.Sub(p.N.Mul(0.06)), p.B.Sub(p.N.Mul(0.06))
	put := func(x geom.Vec3) { out = append(out, x.Dot(dir)-mid) }
	put(a)
	put(b)
	if math.Abs(dir.Z) > 0.99 {
		for _, x := range s.Body.Bands[0] {
			put(x.A)
			put(x.B)
		}
	}
	for _, t := range s.scene.Things() {
		if t.Owner.(scene.Part).Kind != scene.Wood {
			continue
		}
		for _, x := range t.Solids {
			if t0, t1, ok := geom.Within(x.Planes(), a, b.Sub(a), 0, 1); ok {
				put(a.Add(b.Sub(a).Mul(t0)))
				put(a.Add(b.Sub(a).Mul(t1)))
			}
		}
	}
	return out
}

// endsOf are the two ends of all steel along a direction.
func (d *draft) endsOf(s *shot, dir geom.Vec3) []float64 {
	mid := s.center.Dot(dir)
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range points(s.Body) {
		x := p.Dot(dir) - mid
		lo, hi = min(lo, x), max(hi, x)
	}
	return []float64{lo, hi}
}

// widths are the edges of the main plate across it, and of the member under the
// first of its fasteners where that is not much wider.
func (d *draft) widths(s *shot, dir geom.Vec3, p geom.Plate) []float64 {
	mid := s.center.Dot(dir)
	at := p.A.Dot(dir) - mid
	out := []float64{at - p.Width/2, at + p.Width/2}
	for _, f := range s.Body.Fasteners {
		if len(f.Runs) == 0 || s.Body.PlateOf(f) != p {
			continue
		}
		for _, x := range f.Runs[0].Member.Solid {
			lo, hi := x.Along(dir)
			if _, _, meets := geom.Within(x.Planes(), f.Head, f.Tip.Sub(f.Head), 0, 1); meets && hi-lo < p.Width+8 {
				return append(out, lo-mid, hi-mid)
			}
		}
		break
	}
	return out
}

// rodBeside dimensions the rod of a body: in the first view its heights, in the
// second how far it stands from the face of the post.
func (d *draft) rodBeside(s *shot, l look, i int) {
	if i == 0 {
		d.rodFigures(s, l)
		return
	}
	r, p, mid := s.Body.Rods[0], s.Body.Bands[0][0], s.center.Dot(l.view.Right)
	if i == 1 && geom.Aligned(p.N, l.view.Right) {
		d.dimU(d.bottom(), p.A.Dot(l.view.Right)-mid, r.A.Dot(l.view.Right)-mid)
	}
}

// rodFigures dimensions a rod by itself: its ends and what it passes.
func (d *draft) rodFigures(s *shot, l look) {
	for _, r := range s.Body.Rods {
		dir := r.A.Sub(r.B).Unit()
		var stops []float64
		for _, axis := range []geom.Vec3{l.view.Up, l.view.Right} {
			if !geom.Aligned(dir, axis) {
				continue
			}
			mid := s.center.Dot(axis)
			stops = append(stops, r.A.Dot(axis)-mid, r.B.Dot(axis)-mid)
			for _, e := range r.Ends {
				if e.Kind != steel.Nothing && e.Kind != steel.CastIn {
					stops = append(stops, e.At.Dot(axis)-mid)
				}
			}
			for _, x := range r.Passes {
				stops = append(stops, r.A.Sub(dir.Mul(x.From)).Dot(axis)-mid, r.A.Sub(dir.Mul(x.To)).Dot(axis)-mid)
			}
			if axis == l.view.Up {
				d.dimV(stops...)
			} else {
				d.dimU(d.bottom(), stops...)
			}
		}
	}
}

// names puts a name with a leader to each member that is seen large enough and
// has none yet, the nearest to the steel first.
func (d *draft) names(s *shot, l look) {
	mid := l.view.At(s.center)
	for _, t := range s.scene.Things() {
		part := t.Owner.(scene.Part)
		name := "concrete"
		switch {
		case part.Member != nil:
			name = memberName(part.Member)
		case part.Kind != scene.Concrete:
			continue
		}
		if d.named[name] {
			continue
		}
		if p, ok := s.visible(l, part); ok {
			d.named[name] = true
			q := l.view.At(p).Sub(mid)
			d.say(q.X, q.Y, name)
		}
	}
}

// visible returns a point of what is seen of a part, in the middle of its
// largest face if that is free.
func (s *shot) visible(l look, part scene.Part) (at geom.Vec3, ok bool) {
	type spot struct {
		p    geom.Vec3
		size float64
	}
	var spots []spot
	for _, f := range l.picture.Faces() {
		if f.Owner.(scene.Part) != part || len(f.Loop) < 3 {
			continue
		}
		for _, x := range samples(f.Loop) {
			if p := x.Add(f.N.Mul(0.01)); l.picture.Sees(p) && !s.underSteel(l, p) {
				spots = append(spots, spot{p, clearance(f.Loop, x)})
			}
		}
	}
	if len(spots) == 0 {
		return at, false
	}
	best := slices.MaxFunc(spots, func(a, b spot) int { return cmp.Compare(math.Round(a.size*4), math.Round(b.size*4)) })
	return best.p, best.size > 0.3
}

// underSteel tells whether a point in the picture is close to a fastener, so that
// an arrowhead there would be taken for one.
func (s *shot) underSteel(l look, p geom.Vec3) bool {
	q := l.view.At(p)
	return slices.ContainsFunc(s.Body.Fasteners, func(f steel.Fastener) bool {
		return min(l.view.At(f.Head).Sub(q).Len(), l.view.At(f.Tip).Sub(q).Len()) < 0.4
	})
}

// samples are points spread over a face.
func samples(loop []geom.Vec3) (out []geom.Vec3) {
	var c geom.Vec3
	for _, p := range loop {
		c = c.Add(p.Mul(1 / float64(len(loop))))
	}
	out = append(out, c)
	for _, k := range []float64{0.4, 0.75} {
		for i, p := range loop {
			q := loop[(i+1)%len(loop)]
			for _, t := range []float64{0, 0.5} {
				out = append(out, c.Add(p.Add(q.Sub(p).Mul(t)).Sub(c).Mul(k)))
			}
		}
	}
	return out
}

// clearance is how far a point of a face is from its outline, in.
func clearance(loop []geom.Vec3, x geom.Vec3) float64 {
	out := math.Inf(1)
	for i, p := range loop {
		d := loop[(i+1)%len(loop)].Sub(p)
		if d.Len() < 1e-6 {
			continue
		}
		out = min(out, d.Unit().Cross(x.Sub(p)).Len())
	}
	return out
}
