package placement

import (
	"cmp"
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// ofDormer tells whether a joint is of a dormer's walls: its plates on a stud, or a stud
// on what it stands on.
func ofDormer(j *framing.Joint) bool {
	return j.Kind == plan.DormerTop || j.Kind == plan.DormerFoot
}

// dormerFace lays a strap or a clip upright on a face of a dormer's wall, flat over both
// members: on the plates no more of it than they are high. At the head of a corner post it
// lies on the front; at its foot on the plates under the eave on the side to the opening. Cheek studs stand flush
// with the trimmer below, as do a shed's end rafters with both, the front wall with its header or the plates under the eave.
func (x *placer) dormerFace(w want) (Lie, *plan.Diagnostic) {
	j := w.joint
	if w.face != "" && w.face != plan.Outside && (w.face != plan.Inside || j.Kind != plan.DormerTop || j.First().Role == plan.Rafter) {
		return noWay(w)
	}
	d, up := j.Dormer, geom.Vec3{Z: 1}
	n := d.Frame.In.Mul(-1).Up(0)
	if s, _ := d.Frame.Local(j.At.Flat()); j.Host != d.Name {
		n = d.Frame.D.Mul(math.Copysign(1, s-(d.From+d.To)/2)).Up(0)
	}
	upper, lower := j.Members[0], j.Members[1]
	stud, gap := upper, j.Gap
	if j.Kind == plan.DormerTop {
		stud, gap = lower, 0
	}
	switch post := stud.Role == plan.Post; {
	case post && j.Kind == plan.DormerTop: // the plates go on over it at both its sides
		n = d.Frame.In.Mul(-1).Up(0)
	case post && d.SetBack == 0: // as wide as the trimmer, outside of which a ceiling joist lies
		n = n.Mul(-1)
	case w.face == plan.Inside:
		n = n.Mul(-1)
	}
	_, out := extent(stud, n)
	a := j.At.Add(n.Mul(out - j.At.Dot(n)))
	lie := Lie{Face: cmp.Or(w.face, plan.Outside), Gap: gap, Path: []geom.Vec3{a}, Station: j.Station}
	high := 2 * upper.Section.Breadth // of the plates
	if upper.Role == plan.Rafter {    // of a shed over its side wall
		high = depthAt(upper, j.At)
	}
	if w.item.Kind.Strap {
		total, cut := w.cut(gap, 2*w.item.Lap)
		top := (total - gap) / 2
		if j.Kind == plan.DormerTop || upper.Role == plan.Rafter {
			top = min(top, high)
		}
		low := total - gap - top
		lie.Cut = cut
		b := geom.Band{w.plate(n, a.Sub(up.Mul(low+gap)), a.Add(up.Mul(top)))}
		return x.strap(lie, b, lap{upper, top, true}, lap{lower, low, false}), nil
	}
	if gap > 0 {
		_, d := noWay(w)
		d.Summary += ": no leg of it reaches past the bottom plate"
		d.Mend = "take a strap there"
		return Lie{}, d
	}
	held, other := w.item.LegLengths()
	if j.Kind == plan.DormerTop || upper.Role == plan.Rafter {
		held, other = min(held, high), held+other-min(held, high)
	}
	return x.legs(lie, upper, lower, w.plate(n, a.Sub(up.Mul(other)), a), w.plate(n, a, a.Add(up.Mul(held)))), nil
}

// depthAt is how high the wood of a member is over a point below it, in.
func depthAt(m *framing.Member, at geom.Vec3) (high float64) {
	for _, s := range m.Solid {
		x := geom.Vec3{X: 1}
		if d := m.B.Sub(m.A); math.Abs(d.Y) > math.Abs(d.X) {
			x = geom.Vec3{Y: 1}
		}
		if cut := s.Clip(geom.PlaneAt(at.Sub(x.Mul(touch)), x.Mul(-1))).Clip(geom.PlaneAt(at.Add(x.Mul(touch)), x)); !cut.Empty() {
			_, hi := cut.Bounds()
			high = max(high, hi.Z-at.Z)
		}
	}
	return high
}

// onBoard lays a clip at the foot of a jack on its valley board: one leg up the jack's side
// that looks to the eave, the other on the board beside it, folded along the line where the
// two meet, where the jack is more than half its depth high.
func (x *placer) onBoard(w want) (Lie, *plan.Diagnostic) {
	j := w.joint
	jack, board := j.Members[0], j.Members[1]
	side := j.Dormer.Frame.In.Mul(-1).Up(0)
	if w.k%2 == 1 || w.face == plan.Right {
		side = side.Mul(-1)
	}
	n := board.FlatTop()
	run := jack.B.Sub(jack.A)
	k := run.Flat().Len()
	level := run.Flat().Unit()
	rise := run.Z / k
	seat := jack.Section.Depth * math.Hypot(1, rise) / rise // of the jack on a level board
	_, out := extent(jack, side)
	p := jack.A.Flat().Add(level.Mul(0.6 * seat)).Add(side.Flat().Mul(jack.Section.Width() / 2))
	p = p.Add(side.Flat().Mul(out - p.Dot(side.Flat())))
	fold := p.Up(board.A.Z + topOf(board, n, p))
	e := n.Cross(side).Unit()
	away, climb := e.Cross(n), side.Cross(e)
	if away.Dot(side) < 0 {
		away = away.Mul(-1)
	}
	if climb.Z < 0 {
		climb = climb.Mul(-1)
	}
	held, other := w.item.LegLengths()
	lie := Lie{Face: cmp.Or(w.face, plan.Left), Path: []geom.Vec3{fold}, Station: j.Station}
	return x.legs(lie, jack, board, w.plate(n, fold.Add(away.Mul(other)), fold), w.plate(side, fold, fold.Add(climb.Mul(held)))), nil
}

// topOf is how far over the low end of a board's middle line its upper broad face lies at
// a plan point, in.
func topOf(board *framing.Member, n geom.Vec3, p geom.Vec2) float64 {
	d := p.Sub(board.A.Flat())
	return -(n.X*d.X + n.Y*d.Y) / n.Z
}

// onBoardEdge lays a clip where a valley board lies over a rafter: one leg up the board's
// lower edge over the rafter, the other, twisted, down the rafter's side below the board.
func (x *placer) onBoardEdge(w want) (Lie, *plan.Diagnostic) {
	j := w.joint
	board, rafter := j.Members[0], j.Members[1]
	n, way := board.FlatTop(), board.B.Sub(board.A).Unit()
	edge := n.Cross(way)
	down := rafter.A.Sub(rafter.B).Unit()
	if edge.Dot(down) < 0 {
		edge = edge.Mul(-1)
	}
	d := j.Dormer
	s, _ := d.Frame.Local(j.At.Flat())
	side := d.Frame.D.Mul(math.Copysign(1, s-(d.From+d.To)/2)).Up(0) // off the opening, where headers hang
	if w.other != (w.k%2 == 1) {
		side = side.Mul(-1)
	}
	_, out := extent(rafter, side)
	p := board.A.Add(edge.Mul(board.Section.Depth / 2)).Sub(n.Mul(board.Section.Breadth))
	corner := p.Add(way.Mul((out - p.Dot(side)) / way.Dot(side)))
	if way.Dot(side) > 0 { // along the board to over the rafter
		way = way.Mul(-1)
	}
	held, other := w.item.LegLengths()
	half := w.wide() / 2
	rise, foot := corner.Add(way.Mul(half)), corner.Add(down.Mul(half))
	lie := Lie{Face: cmp.Or(w.face, plan.Inside), Path: []geom.Vec3{corner}, Station: j.Station}
	onBoard := w.plate(edge, rise, rise.Add(n.Mul(min(held, board.Section.Breadth))))
	return x.legs(lie, board, rafter, w.plate(side, foot.Sub(n.Mul(other)), foot), onBoard), nil
}
