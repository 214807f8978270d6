package steel

import (
	"math"

	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/timber"
)

// Large is the diameter from which a fastener is held to the standard's tables
// of distances and to group action, in; under it there is only the commentary's
// advice (NDS 2018 11.3.6, 12.5.1, transcribed).
const Large = 0.25

// Push returns the direction in which a fastener pushes the wood it holds when
// the piece is pulled, unit: along a strap from its end inward, down on what a
// clip, hold-down or base holds and up on what it holds that to.
func (b *Body) Push(f Fastener) geom.Vec3 {
	if b.Piece.Item.Kind.Strap {
		p := b.PlateOf(f)
		d := p.B.Sub(p.A).Unit()
		if f.Back {
			d = d.Mul(-1)
		}
		return d
	}
	if b.Piece.Ends[f.End].Laid == 0 {
		return geom.Vec3{Z: -1}
	}
	return geom.Vec3{Z: 1}
}

// around is how a fastener stands among those of its body in its member, in.
type around struct {
	angle, inRow, rows, spread     float64
	loaded, unloaded, nearest, end float64
	staggered, towardEnd           bool
}

// place measures how a fastener stands: the wood around it, and the other
// fasteners of its body in the same member, rows being along the force.
func (s *Steel) place(b *Body, f Fastener) around {
	n := b.PlateOf(f).N.Unit()
	flat := func(v geom.Vec3) geom.Vec3 { return v.Sub(n.Mul(v.Dot(n))) }
	push, m := flat(b.Push(f)), f.Runs[0].Member
	grain := flat(Grain(m))
	a := around{inRow: timber.Far, rows: timber.Far, nearest: f.Margin.Edge, end: f.Margin.End}
	if push.Len() < 0.1 { // the force runs along the fastener
		push = grain
	}
	if grain.Len() < 0.1 { // into end grain
		a.nearest = math.Min(f.Margin.Edge, f.Margin.End)
		a.angle, a.loaded, a.unloaded = 90, a.nearest, a.nearest
		a.end = timber.Far
		grain = n.Cross(push)
	}
	push, grain = push.Unit(), grain.Unit()
	at := f.Head.Sub(n.Mul(f.Runs[0].From + hair))
	if math.Abs(push.Dot(grain)) > 0.02 {
		a.towardEnd = true
		way := grain
		if push.Dot(grain) < 0 {
			way = way.Mul(-1)
		}
		a.end = s.Wood.Out(m, at, way)
	}
	if a.angle == 0 {
		a.angle = math.Acos(math.Min(1, math.Abs(push.Dot(grain)))) * 180 / math.Pi
		across := n.Cross(grain)
		if push.Dot(across) < 0 {
			across = across.Mul(-1)
		}
		a.loaded, a.unloaded = s.Wood.Out(m, at, across), s.Wood.Out(m, at, across.Mul(-1))
	}
	a.among(b, f, n, push)
	if !f.Runs[0].EndGrain() {
		a.spread = spread(b, f, n, n.Cross(grain))
	}
	return a
}

// spread returns how far apart the outermost fasteners of a body are that are in
// the member of one and on its face, across the grain, in.
func spread(b *Body, f Fastener, n, cross geom.Vec3) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, g := range b.Fasteners {
		if beside(b, f, g, n) {
			at := g.Head.Dot(cross)
			lo, hi = min(lo, at), max(hi, at)
		}
	}
	return hi - lo
}

// beside tells whether two fasteners of a body are in one member and on one face.
func beside(b *Body, f, g Fastener, n geom.Vec3) bool {
	return len(g.Runs) > 0 && g.Runs[0].Member == f.Runs[0].Member && b.PlateOf(g).N.Dot(n) >= 0.99
}

// among measures rows and spacing.
func (a *around) among(b *Body, f Fastener, n, push geom.Vec3) {
	across := n.Cross(push)
	nearest := timber.Far
	for _, g := range b.Fasteners {
		if !beside(b, f, g, n) || g.Head == f.Head {
			continue
		}
		v := g.Head.Sub(f.Head)
		u, w := math.Abs(v.Dot(push)), math.Abs(v.Dot(across))
		switch {
		case w < f.Diameter/2:
			a.inRow = math.Min(a.inRow, u)
		case v.Len() < nearest:
			nearest, a.rows, a.staggered = v.Len(), w, u > f.Diameter
		}
	}
}

// Unmet returns the distances that a fastener wants in its member and has not.
// Nails, screws and lags go through the steel without a hole bored ahead in the
// wood, as far as the catalog tells.
func (s *Steel) Unmet(b *Body, f Fastener) []timber.Unmet {
	if len(f.Runs) == 0 {
		return nil
	}
	a := s.place(b, f)
	if f.Diameter < Large {
		return timber.SmallPlace{
			D: f.Diameter, SteelSide: true, Angle: a.angle, TowardEnd: a.towardEnd,
			Edge: a.nearest, End: a.end, InRow: a.inRow, Rows: a.rows, Staggered: a.staggered,
		}.Check()
	}
	return s.large(f, a).Unmet
}

// Cdelta returns the geometry factor of a fastener: 1 under 1/4 in, 0 where a
// floor of the standard is not met.
func (s *Steel) Cdelta(b *Body, f Fastener) timber.Placed {
	if f.Diameter < Large || len(f.Runs) == 0 {
		return timber.Placed{Cdelta: 1}
	}
	return s.large(f, s.place(b, f))
}

func (s *Steel) large(f Fastener, a around) timber.Placed {
	return timber.LargePlace{
		D: f.Diameter, InMain: f.Runs[0].Len(), InSides: timber.Far, Angle: a.angle, TowardEnd: a.towardEnd,
		End: a.end, LoadedEdge: a.loaded, UnloadedEdge: a.unloaded, InRow: a.inRow, Rows: a.rows, Spread: a.spread, Sawn: true,
	}.Check()
}

// patterned tells whether the catalog says where the fasteners of an end are.
func patterned(e hardware.End) bool { return e.Spacing > 0 }
