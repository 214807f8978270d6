package placement

import (
	"fmt"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// body sets a piece that is one place: a clip, base, cap, hanger or generic.
func (x *placer) body(p *Piece, k, n int) *plan.Diagnostic {
	j := p.Joint
	p.Laid = laid(j.Members[:min(2, len(j.Members))]...)
	if lies := j.Kind.Lies(); lies == plan.LiesOverRidge || lies != "" && j.Wall == nil {
		if p.Face == "" {
			p.Face = plan.Outside
		}
		p.Path = []geom.Vec3{j.At}
		return nil
	}
	f, depth := j.Wall.Frame(), j.Wall.Depth()
	m := stud(j)
	tall := p.Item.Length
	if tall <= 0 {
		tall = 3
	}
	switch j.Kind.Lies() {
	case plan.LiesAtRafter:
		return x.rafterClip(p, f, m, tall, k, n)
	case plan.LiesToPlate:
		top, plate := plates(j)
		p.Laid = laid(m, plate)
		x.clip(p, f, depth, m, m.Z1, -1, tall, top-m.Z1, k, n)
	case plan.LiesUpright:
		x.clip(p, f, depth, m, m.Z0, 1, tall, 1.5, k, n)
	case plan.LiesOver:
		p.onFace(f, depth, upperFoot(j), tall, k, n)
	case plan.LiesAgainst:
		p.Path = []geom.Vec3{j.At}
	case plan.LiesAlong, plan.LiesRound, plan.LiesStandalone:
		if lies(m) {
			p.onFace(f, depth, j.At.Z, tall, k, n)
			return nil
		}
		x.clip(p, f, depth, m, j.At.Z, 1, tall, tall/2, k, n)
	default:
		return noWay(p)
	}
	return nil
}

// clip sets a body on an upright at height z: on the stud's side it turns
// onto the plate and lies on the stud alone (way says which way the stud
// runs), on a face of the wall it laps half on the plate.
func (x *placer) clip(p *Piece, f geom.Frame, depth float64, m *framing.Member, z, way, tall, plate float64, k, n int) {
	s0, s1 := span2(p.Joint, m)
	p.Face, k, n = x.pick(p, m, z+way, k, n)
	g := facingOf(f, s0, s1, depth, p.Face)
	off := spread(k, n, p.wide())
	p.Path = []geom.Vec3{g.at(z, off)}
	p.Station, _ = f.Local(p.Path[0].Flat())
	a, b := g.at(z, off), g.at(z+way*tall, off)
	if p.Face == plan.Outside || p.Face == plan.Inside {
		lap := min(tall/2, max(plate, 0))
		a, b = g.at(z-way*lap, off), g.at(z+way*(tall-lap), off)
	}
	p.bands = append(p.bands, band{g.n, a, b, p.wide()})
}

// rafterClip sets a clip on the wall's face beside a rafter, under its side.
func (x *placer) rafterClip(p *Piece, f geom.Frame, m *framing.Member, tall float64, k, n int) *plan.Diagnostic {
	j := p.Joint
	depth := j.Wall.Depth()
	s0, s1 := span2(j, m)
	seat, plate := plates(j)
	p.Laid = laid(m, plate)
	if plate == nil {
		p.Laid = laid(j.Members[:min(2, len(j.Members))]...)
	}
	t, normal := 0.0, f.In.Up(0).Mul(-1)
	switch p.Face {
	case plan.Inside:
		t, normal = depth, normal.Mul(-1)
	case plan.Left, plan.Right:
	default:
		p.Face = plan.Outside
	}
	w := p.wide()
	side := x.rafterSide(p, s0, s1, seat, k)
	s := s0 - w/2
	if side == plan.Right {
		s = s1 + w/2
	}
	p.Path = []geom.Vec3{f.At(s, t, seat)}
	p.Station = s
	p.bands = append(p.bands, band{normal, f.At(s, t, seat-tall/2), f.At(s, t, seat), w})
	return nil
}

// rafterSide chooses the side of a rafter that a clip goes on: the one asked
// for, else the first or, of two clips, each; never off the wall's end.
func (x *placer) rafterSide(p *Piece, s0, s1, seat float64, k int) plan.Face {
	j := p.Joint
	on := func(side plan.Face) bool {
		if side == plan.Left {
			return s0-p.wide() >= -touch
		}
		return s1+p.wide() <= j.Wall.Length()+touch
	}
	sides := x.freeSides(j, j.First(), seat)
	sides = slices.DeleteFunc(sides, func(s plan.Face) bool { return !on(s) })
	if p.Face == plan.Left || p.Face == plan.Right {
		if on(p.Face) || len(sides) == 0 {
			return p.Face
		}
		p.moved = fmt.Sprintf("the %s side of the rafter is off the wall's end", p.Face)
		p.Face = sides[0]
		return sides[0]
	}
	if len(sides) == 0 {
		return plan.Left
	}
	if p.other {
		slices.Reverse(sides)
	}
	return sides[k%len(sides)]
}
