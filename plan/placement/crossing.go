package placement

import (
	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// upperFoot returns the height of the foot of what a joint holds: of a sloping
// member, there.
func upperFoot(j *framing.Joint) float64 { return j.At.Z + j.Gap/2 }

// onFace sets a body on a face of the wall at the joint's own place, half of
// it over height z.
func (p *Piece) onFace(f geom.Frame, depth, z, tall float64, k, n int) {
	if p.Face != plan.Inside {
		p.Face = plan.Outside
	}
	s, _ := f.Local(p.Joint.At.Flat())
	g := facingOf(f, s-0.75, s+0.75, depth, p.Face)
	off := spread(k, n, p.wide())
	p.Path = []geom.Vec3{g.at(z, off)}
	p.setStation(f)
	p.bands = append(p.bands, band{g.n, g.at(z-tall/2, off), g.at(z+tall/2, off), p.wide()})
}

// acrossGap lays a vertical strap at the joint's own place on the face of two
// members that lie one over the other: a rim on its girder, a plate on a rim.
// Each end takes what the item's lap asks for, but no more than its member is
// high.
func (x *placer) acrossGap(p *Piece, k, n int) *plan.Diagnostic {
	j := p.Joint
	f, depth, fault := onWall(j)
	if fault != nil {
		return noWay(p) // the faces of members that cross off the walls stand square to each other
	}
	above, below := j.Members[0], j.Members[1]
	top := upperFoot(j)
	p.room = [2]float64{above.Z1 - above.Z0, below.Z1 - below.Z0}
	total := p.cut(j.Gap, min(p.Item.Lap, p.room[0])+min(p.Item.Lap, p.room[1]))
	up := min((total-j.Gap)/2, p.room[0])
	p.gap, p.Laps, p.Laid = j.Gap, [2]float64{up, total - j.Gap - up}, laid(above, below)
	if p.Face != plan.Inside {
		p.Face = plan.Outside
	}
	s, _ := f.Local(j.At.Flat())
	g := facingOf(f, s-0.75, s+0.75, depth, p.Face)
	off := spread(k, n, p.wide())
	p.lay(g.n, g.at(top+up-total, off), g.at(top+up, off))
	p.setStation(f)
	return nil
}
