package framing

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// floorJoints ties the lowest floor to its girders, the girders end to end,
// and every story's bottom plates to the floor below them.
func (b *builder) floorJoints() {
	for _, w := range b.walls {
		b.soleJoints(w)
		b.rimJoints(w)
	}
	for _, g := range b.girders {
		b.joistJoints(g)
		b.girderSplices(g)
	}
}

// soleJoints ties the bottom plate to the rim, else the joist, just under the
// subfloor, at each full-height member: there it is nailed or clipped
// (common practice, no published source). An inner wall that stands between
// two joists has nothing below it but the subfloor.
func (b *builder) soleJoints(w *framedWall) {
	if b.onSlab(w) {
		return // its plate is the sill plate
	}
	share := tributary(w)
	for _, m := range w.uprights {
		sole := w.memberAt(w.bottoms, m.Mid())
		if !m.Role.FullHeight() || sole == nil {
			continue
		}
		below := b.atSubfloor(w, m)
		gap := 0.0
		if below != nil {
			gap = sole.Z0 - below.Z1
		}
		j := b.newJoint(w, plan.SoleRim, m.Mid(), sole.Z0-gap/2, sole, below)
		j.Gap, j.Below, j.Tributary = gap, below != nil, share[m]
	}
}

// atSubfloor returns what under m reaches up to the subfloor, or nil.
func (b *builder) atSubfloor(w *framedWall, m *Member) *Member {
	for _, o := range b.under(w, m) {
		if math.Abs(o.Z1-(w.floor-w.Level.Subfloor)) < sixteenth {
			return o
		}
	}
	return nil
}

// rimJoints ties the rim of a lowest wall to the girders that it rests on:
// where one runs along under it, at each full-height member of the wall, so
// that studs, plate, rim and girder are tied in one line; where it crosses
// one, there.
func (b *builder) rimJoints(w *framedWall) {
	share := tributary(w)
	type crossing struct {
		s        float64
		at       geom.Vec3
		rim, sup *Member
	}
	var across []crossing
	for _, rim := range w.rims {
		lo, hi := rim.Bounds()
		for _, g := range b.girdersNear(lo.Flat(), hi.Flat()) {
			if !geom.InLine(g.body.f.D, w.frame.D) {
				if at, sup, ok := g.carries(rim.Solid[0]); ok {
					s, _ := w.frame.Local(at.Flat())
					across = append(across, crossing{s, at, rim, sup})
				}
				continue
			}
			for _, m := range w.uprights {
				if !m.Role.FullHeight() || w.memberAt(w.rims, m.Mid()) != rim {
					continue
				}
				slice := rim.Solid[0].Clip(w.after(m.S0)).Clip(w.before(m.S1))
				if at, sup, ok := g.carries(slice); ok {
					j := b.newJoint(w, plan.RimGirder, m.Mid(), at.Z, rim, sup)
					_, t := w.frame.Local(at.Flat()) // across the touch; along it the stud's place
					j.At, j.Tributary = w.frame.At(m.Mid(), t, at.Z), share[m]
				}
			}
		}
	}
	var stations []float64
	for _, c := range across {
		stations = append(stations, c.s)
	}
	for _, c := range across {
		j := b.newJoint(w, plan.RimGirder, c.s, c.at.Z, c.rim, c.sup)
		j.At, j.Tributary = c.at, shareOf(stations, c.s, w.rims[0].S0, w.rims[len(w.rims)-1].S1)
	}
}

// leastOver is the smallest piece of a member, in³ when it is cut to the girder
// below it, that counts as lying over the girder: a sixteenth of an inch of a
// joist.
const leastOver = 1.0

// carries returns the middle of the touch of a solid on the girder's top and
// the piece of the girder there; of two the one that carries more of it.
func (g *framedGirder) carries(s geom.Solid) (at geom.Vec3, piece *Member, ok bool) {
	if lo, _ := s.Bounds(); s.Empty() || math.Abs(lo.Z-g.z1) > sixteenth {
		return at, nil, false
	}
	f := g.body.f
	most := leastOver
	var lo, hi geom.Vec3
	for _, m := range g.written() {
		x, t := f.Local(m.A.Flat())
		line, part := g.lineAt(t), s
		for _, p := range []geom.Plane{
			geom.PlaneAt(f.At(x, 0, 0), f.D.Mul(-1).Up(0)), geom.PlaneAt(f.At(x+m.Length, 0, 0), f.D.Up(0)),
			geom.PlaneAt(f.At(x, line.lo, 0), f.In.Mul(-1).Up(0)), geom.PlaneAt(f.At(x, line.hi, 0), f.In.Up(0)),
		} {
			part = part.Clip(p)
		}
		if part.Empty() {
			continue
		}
		if v := part.Volume(); v > most+geom.Eps {
			most, piece = v, m
		}
		a, z := part.Bounds()
		if !ok {
			lo, hi, ok = a, z, true
		}
		lo = geom.Vec3{X: min(lo.X, a.X), Y: min(lo.Y, a.Y)}
		hi = geom.Vec3{X: max(hi.X, z.X), Y: max(hi.Y, z.Y)}
	}
	mid := lo.Flat().Add(hi.Flat()).Mul(0.5)
	return mid.Up(g.z1), piece, piece != nil
}

// lineAt returns the line of the girder at a depth of its frame.
func (g *framedGirder) lineAt(t float64) span {
	for _, x := range g.lines {
		if x.lo < t && t < x.hi {
			return x
		}
	}
	return span{0, g.body.d}
}

// joistJoints ties each joist that lies over the girder to it.
func (b *builder) joistJoints(g *framedGirder) {
	l := b.plan.Levels[0]
	var found []*Joint
	for _, m := range b.index.Within(g.lo.Up(g.z1-1), g.hi.Up(g.z1+1)) {
		if m.Role != plan.Joist || m.Level != l {
			continue
		}
		at, piece, ok := g.carries(m.Solid[0])
		if !ok {
			continue
		}
		s, _ := g.body.f.Local(at.Flat())
		found = append(found, &Joint{
			Kind: plan.JoistGirder, Host: g.Name, Level: l, Station: s, At: at, Members: []*Member{m, piece}, Below: true,
		})
	}
	slices.SortStableFunc(found, func(x, y *Joint) int {
		_, tx := g.body.f.Local(x.Members[0].A.Flat())
		_, ty := g.body.f.Local(y.Members[0].A.Flat())
		return cmp.Or(cmp.Compare(math.Round(x.Station*1000), math.Round(y.Station*1000)), cmp.Compare(tx, ty))
	})
	for _, j := range found {
		j.Tributary = spaced(found, j.Station, l.JoistSpace)
		b.joint(j)
	}
}

// spaced returns half the way to the neighbors on both sides of station s,
// and at the ends no more than half a spacing.
func spaced(list []*Joint, s, spacing float64) float64 {
	lo, hi := spacing, spacing
	for _, o := range list {
		if d := o.Station - s; d > near {
			hi = min(hi, d)
		} else if d < -near {
			lo = min(lo, -d)
		}
	}
	return (lo + hi) / 2
}

// girderSplices finds each break of the girder. What carries it there comes
// after the two pieces.
func (b *builder) girderSplices(g *framedGirder) {
	for k, line := range g.byLine() {
		for i, m := range line {
			if i > 0 {
				b.girderSplice(g, line[i-1], m, (g.lines[k].lo+g.lines[k].hi)/2)
			}
		}
	}
}

// girderSplice is the break between two pieces of a girder, whose middle is t across it.
func (b *builder) girderSplice(g *framedGirder, before, m *Member, t float64) {
	s, _ := g.body.f.Local(m.A.Flat())
	at := g.body.f.At(s, t, (g.z0+g.z1)/2)
	members := b.inOrder([]*Member{before, m})
	sec := b.plan.Foundation.Pile
	if pile := b.pileAt(g.body.f.At(s, g.body.d/2+g.aside(sec), 0).Flat(), max(sec.Breadth, sec.Depth)/2); pile != nil {
		members = append(members, pile)
	}
	b.joint(&Joint{
		Kind: plan.GirderSplice, Host: g.Name, Level: b.plan.Levels[0], Station: s, At: at, Members: members, Below: len(members) > 2,
		Tributary: before.Length/2 + m.Length/2,
	})
}
