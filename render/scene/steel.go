package scene

import (
	"math"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/steel"
	"galewright/render/project"
)

// sides is how many sides a round body has.
const sides = 16

// Things returns the parts of a piece: its plates, and its rods with what turns on
// them.
func Things(b *steel.Body) []project.Thing { return body(b) }

// body returns the parts of a piece.
func body(b *steel.Body) (out []project.Thing) {
	for _, band := range b.Bands {
		for _, p := range band {
			out = append(out, project.Thing{Solids: []geom.Solid{plateSolid(p)}, Owner: Part{Kind: Plate, Body: b}})
		}
	}
	for _, p := range Seats(b) {
		out = append(out, project.Thing{Solids: []geom.Solid{plateSolid(p)}, Owner: Part{Kind: Plate, Body: b}})
	}
	for _, r := range b.Rods {
		if r.For == b.Piece { // a hold-down's over concrete is the anchor's
			out = append(out, rod(b, r)...)
		}
	}
	return out
}

// plateSolid is a plate with its thickness; what the catalog leaves out is drawn as
// the thinnest sheet.
func plateSolid(p geom.Plate) geom.Solid {
	p.Thickness = max(p.Thickness, thinnest)
	return p.Solid()
}

const thinnest = 0.036

// rod is a rod with its washers and nuts.
func rod(b *steel.Body, r *steel.Rod) []project.Thing {
	out := []project.Thing{{Solids: []geom.Solid{cylinder(r.A, r.B, r.Diameter, sides)}, Round: true, Owner: Part{Kind: Rod, Body: b}}}
	for i, e := range r.Ends {
		away := r.A.Sub(r.B).Unit()
		if i == 1 {
			away = away.Mul(-1)
		}
		at := e.At
		if e.Washers > 0 {
			out = append(out, washer(b, r, e, away))
			at = at.Add(away.Mul(hardware.WasherThick(e.Washer)))
		}
		if e.Nuts > 0 || e.Washers > 0 { // a nut, or the head of a bolt
			nut := cylinder(at, at.Add(away.Mul(r.Diameter)), 1.8*r.Diameter, 6)
			out = append(out, project.Thing{Solids: []geom.Solid{nut}, Owner: Part{Kind: Nut, Body: b}})
		}
	}
	return out
}

// washer is a square plate as wide as the catalog has it, or a cut one.
func washer(b *steel.Body, r *steel.Rod, e steel.Bearing, away geom.Vec3) project.Thing {
	t := project.Thing{Owner: Part{Kind: Washer, Body: b}}
	if e.Washer > 0 {
		u := aside(away)
		v := away.Cross(u)
		corner := e.At.Sub(u.Add(v).Mul(e.Washer / 2))
		t.Solids = []geom.Solid{geom.Box(corner, u.Mul(e.Washer), v.Mul(e.Washer), away.Mul(hardware.WasherThick(e.Washer)))}
		return t
	}
	t.Solids, t.Round = []geom.Solid{cylinder(e.At, e.At.Add(away.Mul(hardware.WasherThick(0))), hardware.CutWasher(r.Diameter), sides)}, true
	return t
}

// aside returns a direction square to d: level, and along the house where d is
// upright.
func aside(d geom.Vec3) geom.Vec3 {
	if math.Hypot(d.X, d.Y) < 0.1 {
		return geom.Vec3{X: 1}
	}
	return geom.Vec3{Z: 1}.Cross(d).Unit()
}

// cylinder is a prism of n sides around the line from a to b, as wide as
// wide.
func cylinder(a, b geom.Vec3, wide float64, n int) geom.Solid {
	d := b.Sub(a)
	u := aside(d.Unit())
	v := d.Unit().Cross(u)
	ring := make([]geom.Vec3, n)
	for i := range ring {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		ring[i] = a.Add(u.Mul(cos * wide / 2)).Add(v.Mul(sin * wide / 2))
	}
	return geom.Prism(ring, d)
}

// Seats returns the plates of a body that take no fasteners: what a hold-down's
// nut sits on, and what joins the flanges of a hanger, base or cap.
func Seats(b *steel.Body) (out []geom.Plate) {
	switch b.Piece.Item.Kind.Name {
	case plan.HoldDownItem, plan.HoldDownPairItem:
		for i, band := range b.Bands {
			if len(b.Rods) > 0 && len(band) > 0 {
				out = append(out, seat(band[0], b.Rods[0].Ends[min(i, 1)].At))
			}
		}
	case plan.HangerItem, plan.PostBaseItem, plan.PostCapItem:
		out = append(out, between(b)...)
	}
	return out
}

// seat is the plate from a hold-down's flange out past its rod, under the nut
// at at.
func seat(flange geom.Plate, at geom.Vec3) geom.Plate {
	along := flange.B.Sub(flange.A).Unit()
	foot := flange.A.Add(along.Mul(at.Sub(flange.A).Dot(along)))
	reach := at.Sub(foot).Dot(flange.N)
	p := geom.Plate{A: foot, B: foot.Add(flange.N.Mul(2 * reach)), N: along, Width: flange.Width, Thickness: flange.Thickness}
	p.A, p.B = p.A.Sub(along.Mul(p.Thickness)), p.B.Sub(along.Mul(p.Thickness))
	return p
}

// between joins the first two flanges of a body that look opposite ways, at
// their lower end, or of a cap at the height where its members meet.
func between(b *steel.Body) []geom.Plate {
	for i, f := range b.Bands {
		for _, g := range b.Bands[i+1:] {
			p, q := f[0], g[0]
			if !geom.Facing(p.N, q.N.Mul(-1)) || p.A.Sub(q.A).Sub(p.N.Mul(p.A.Sub(q.A).Dot(p.N))).Len() > p.Width {
				continue
			}
			z := min(p.A.Z, p.B.Z)
			if b.Piece.Item.Kind.Name == plan.PostCapItem {
				z = b.Piece.Joint.At.Z
			}
			a := geom.Vec3{X: p.A.X, Y: p.A.Y, Z: z}
			return []geom.Plate{{A: a, B: a.Sub(p.N.Mul(p.A.Sub(q.A).Dot(p.N))), N: geom.Vec3{Z: -1}, Width: p.Width, Thickness: p.Thickness}}
		}
	}
	return nil
}
