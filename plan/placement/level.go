package placement

import (
	"fmt"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// level lays a strap along the wall: over a plate's splice, at a sill's end,
// or from a shear wall's plate into the collector.
func (x *placer) level(p *Piece, k, n int) *plan.Diagnostic {
	j := p.Joint
	f, depth, fault := onWall(j)
	if j.Wall == nil && len(j.Members) > 1 { // two pieces of a girder, end to end
		half := 0.0
		f, half = lineOf(j)
		depth, fault = 2*half, nil
	}
	if fault != nil {
		return fault
	}
	if j.Kind == plan.Collector && len(j.Members) < 2 {
		return &plan.Diagnostic{
			Code: "collector-to-nothing", Summary: "nothing continues the shear wall's line past its end: nothing is placed",
			Mend: "run a joist, beam or truss over the wall's line, or end the shear wall at another wall",
		}
	}
	m := j.First()
	z, t, normal := (m.Z0+m.Z1)/2, 0.0, f.In.Up(0).Mul(-1)
	switch p.Face {
	case plan.Inside:
		t, normal = depth, normal.Mul(-1)
	case plan.Top:
		z, t, normal = m.Z1, depth/2, geom.Vec3{Z: 1}
		if role(j, plan.TopPlate, plan.UpperPlate) != nil {
			z, _ = plates(j)
		}
	default:
		p.Face = plan.Outside
	}
	total := p.cut(j.Gap, 2*p.Item.Lap)
	p.Laps = [2]float64{(total - j.Gap) / 2, (total - j.Gap) / 2}
	p.Laid = laid(j.Members[:min(2, len(j.Members))]...)
	off := spread(k, n, p.wide())
	s, _ := f.Local(j.At.Flat())
	path := []geom.Vec3{f.At(s-total/2, t, z), f.At(s+total/2, t, z)}
	shift := geom.Vec3{Z: off}
	if p.Face == plan.Top {
		shift = f.In.Up(0).Mul(off)
	}
	if row := x.sloped[plateRow{m.Wall, m.Role}]; len(row) > 0 {
		above := 0.0
		if p.Face == plan.Top {
			above = m.Section.Breadth / 2
		}
		path = alongSlope(f, row, s, t, above, total)
	}
	for i := range len(path) - 1 {
		a, b := path[i].Add(shift), path[i+1].Add(shift)
		n := normal
		if p.Face == plan.Top {
			n = f.In.Up(0).Cross(a.Sub(b)).Unit()
		}
		p.lay(n, a, b)
	}
	return nil
}

// corner lays a strap on the outside of two walls' top plates, bent round
// the corner.
func (x *placer) corner(p *Piece, k, n int) *plan.Diagnostic {
	j := p.Joint
	f, _, fault := onWall(j)
	if fault != nil {
		return fault
	}
	var other *framing.Member
	for _, m := range j.Members {
		if m.Wall != nil && m.Wall != j.Wall {
			other = m
		}
	}
	if other == nil {
		return &plan.Diagnostic{Code: "corner-of-one", Summary: "only one wall stands at this corner", Mend: "use another item here"}
	}
	g := other.Wall.Frame()
	at, ok := meet(f, g)
	if !ok {
		return &plan.Diagnostic{Code: "corner-of-one", Summary: fmt.Sprintf("walls %s and %s run one way", j.Wall.Name, other.Wall.Name), Mend: "use a plate-splice strap"}
	}
	total := p.cut(0, 2*p.Item.Lap)
	top, plate := plates(j)
	if plate == nil {
		top += 2 * j.Wall.Studs.Breadth // the joint is at the studs' top, under two plates
	}
	z := top - j.Wall.Studs.Breadth + spread(k, n, p.wide())
	p.Laps, p.Face = [2]float64{total / 2, total / 2}, plan.Outside
	p.Laid = laid(j.First(), other)
	p.lay(f.In.Up(0).Mul(-1), at.Add(away(f, j.Wall, at).Mul(total/2)).Up(z), at.Up(z))
	p.lay(g.In.Up(0).Mul(-1), at.Up(z), at.Add(away(g, other.Wall, at).Mul(total/2)).Up(z))
	return nil
}

// meet returns where the measured faces of two walls cross.
func meet(f, g geom.Frame) (geom.Vec2, bool) {
	c := f.D.Cross(g.D)
	if c < 1e-6 && c > -1e-6 {
		return geom.Vec2{}, false
	}
	s := g.Origin.Sub(f.Origin).Cross(g.D) / c
	return f.Origin.Add(f.D.Mul(s)), true
}

// away returns the unit direction along a wall from one of its ends inward.
func away(f geom.Frame, w *plan.Wall, at geom.Vec2) geom.Vec2 {
	if s, _ := f.Local(at); s > w.Length()/2 {
		return f.D.Mul(-1)
	}
	return f.D
}
