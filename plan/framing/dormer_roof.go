package framing

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// valleyBoard is the lumber of the boards under a dormer's valleys, laid flat on the main
// roof (common practice, no published source).
var valleyBoard = plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 7.25, Text: "2x8"}

// frameDormers frames what stands on the main rafters, once those are there.
func (f *roofFrame) frameDormers() {
	for _, d := range f.dormers {
		if d.Trimmers[0] == nil || d.Trimmers[1] == nil {
			continue
		}
		f.headers(d)
		if d.shed() {
			f.shedDormer(d)
			continue
		}
		f.dormerFaces(d)
		f.valleyBoards(d)
		f.cheekWalls(d)
		f.frontWall(d)
		f.dormerRoof(d)
	}
}

// planeOf is the plane of the tops of a gable dormer's rafters over the cheek at k.
func (d *dormer) planeOf(k float64) roofplan.Plane {
	g := d.Frame.D.Mul(-k * d.own())
	return roofplan.Plane{G: g, C: d.heel - g.Dot(d.Frame.At(d.outer(k), 0, 0).Flat())}
}

// valleyAt is how far in the planes of a gable dormer and of the main roof, that one raised
// square to it, meet, over s inches in from the outside face of a cheek.
func (d *dormer) valleyAt(s, raise float64) float64 {
	return d.inAt(d.heel + d.own()*s - raise*cosInv(d.slope()))
}

// dormerFaces adds the faces of the dormer's roof to the house and takes its opening out of
// the main face.
func (f *roofFrame) dormerFaces(d *dormer) {
	front, o := d.SetBack-d.Rake, d.Overhang
	for _, k := range f.cheeks() {
		p := d.planeOf(k)
		pt := func(s, t float64) geom.Vec3 {
			q := d.Frame.At(d.outer(k)-k*s, t, 0).Flat()
			return q.Up(p.At(q))
		}
		loop := []geom.Vec3{pt(-o, front), pt(d.half, front), pt(d.half, d.valleyAt(d.half, 0)), pt(-o, d.valleyAt(-o, 0))}
		kinds := []roofplan.EdgeKind{roofplan.Rake, roofplan.Ridge, roofplan.Valley, roofplan.Eave}
		if k > 0 { // counterclockwise: from the outer edge inward it runs the other way on the right
			loop = []geom.Vec3{loop[3], loop[2], loop[1], loop[0]}
			kinds = []roofplan.EdgeKind{roofplan.Valley, roofplan.Ridge, roofplan.Rake, roofplan.Eave}
		}
		face := &Face{Roof: d.Own, Slope: p.G.Unit().Mul(-1), Outline: loop}
		for _, kind := range kinds {
			face.Edges = append(face.Edges, FaceEdge{Kind: kind})
		}
		f.house.Roof = append(f.house.Roof, face)
	}
	f.openFace(d)
}

// valleyBoards lays the boards under the valleys, the upper outer arris in the plane of the
// dormer's rafters.
func (f *roofFrame) valleyBoards(d *dormer) {
	ridge := d.Own.RidgeMember.Width() / 2
	for _, k := range f.cheeks() {
		at := func(s float64) geom.Vec3 {
			p := d.Frame.At(d.outer(k)-k*s, d.valleyAt(s, plate), 0).Flat()
			return p.Up(d.planeOf(k).At(p))
		}
		n := geom.Vec3{X: -d.main.G.X, Y: -d.main.G.Y, Z: 1}.Unit()
		low, high := at(-d.Overhang), at(d.half-ridge)
		way := high.Sub(low).Unit()
		wide := n.Cross(way)
		if wide.Flat().Dot(d.Frame.In) > 0 {
			wide = wide.Mul(-1)
		}
		more := 2 * valleyBoard.Depth
		body := geom.Box(low.Sub(n.Mul(plate)).Sub(way.Mul(more)), way.Mul(high.Sub(low).Len()+2*more), wide.Mul(valleyBoard.Depth), n.Mul(plate))
		body = body.Clip(d.before(k, -d.Overhang)).Clip(flip(d.before(k, d.half-ridge)))
		a, b := body.Along(way)
		mid := wide.Mul(valleyBoard.Depth / 2)
		lo, hi := body.Bounds()
		m := f.member(&Member{
			ID: fmt.Sprintf("%s/valley board%s", d.Name, d.cheekName(k)), Role: plan.ValleyBoard, Level: f.level, Roof: d.Own, Section: valleyBoard,
			Length: b - a, A: low.Add(mid), B: high.Add(mid), Z0: lo.Z, Z1: hi.Z, Solid: []geom.Solid{body},
		})
		d.boards, d.Boards = append(d.boards, body), append(d.Boards, m)
	}
}

// before is the vertical half space of what lies s inches or more in from a cheek's outside
// face.
func (d *dormer) before(k, s float64) geom.Plane {
	return geom.PlaneAt(d.Frame.At(d.outer(k)-k*s, 0, 0), d.Frame.D.Mul(k).Up(0))
}

// dormerRoof adds the ridge, the rafters and the ceiling joists of a gable dormer.
func (f *roofFrame) dormerRoof(d *dormer) {
	ridge := f.dormerRidgeBoard(d)
	boards := map[float64]*Member{}
	for i, k := range f.cheeks() {
		boards[k] = d.Boards[i]
	}
	for _, t := range d.rafterStations() {
		var pair []*dormerRafter
		for _, k := range f.cheeks() {
			if r := f.dormerRafter(d, k, t); r != nil {
				pair = append(pair, r)
				f.dormerFoot(d, r, boards[k])
			}
		}
		if len(pair) == 2 {
			p := d.Frame.At(d.c, t, ridge.B.Z)
			f.joints = append(f.joints, f.joint(&Joint{
				Kind: plan.RafterRidge, Host: d.Name + "/ridge", Level: f.level, Roof: d.Own, Dormer: d.Dormer, Station: t - d.SetBack,
				Members: []*Member{pair[0].member, pair[1].member, ridge}, At: p,
			}))
			f.dormerTie(d, pair)
		}
	}
	f.boardJoints(d)
	f.gableStuds2(d)
	f.dormerRake(d, ridge)
}

// dormerRidgeBoard adds the ridge board: from the end of the front overhang to where it dies
// on the main rafters.
func (f *roofFrame) dormerRidgeBoard(d *dormer) *Member {
	section := d.Own.RidgeMember
	half := section.Width() / 2
	r := bar{at: d.Frame.At(d.c, d.SetBack-d.Rake, 0).Flat(), dir: d.Frame.In, top: d.ridgeTop() - d.own()*half, depth: section.Depth, half: half}
	long := d.back() - d.SetBack + d.Rake
	return f.addStick(&Member{ID: d.Name + "/ridge", Role: plan.Ridge, Roof: d.Own, Section: section}, r,
		r.cut(0, long, []geom.Plane{d.onMain(0)}, nil), 0, long-half*d.own()/d.slope())
}

// rafterStations are the places of a gable dormer's rafters in from the eave: the first over
// its front wall, the others at the spacing from its outside face, as long as a jack is
// worth cutting.
func (d *dormer) rafterStations() []float64 {
	out := []float64{d.SetBack + d.Rafters.Width()/2}
	for t := d.SetBack + d.Spacing; d.half-d.Own.RidgeMember.Width()/2-d.lowAt(t) >= minJack; t += d.Spacing {
		out = append(out, t)
	}
	return out
}

// lowAt is how far in from the outside face of its cheek a rafter at t begins: at its tail,
// or where the valley board's top meets its own.
func (d *dormer) lowAt(t float64) float64 {
	return max(-d.Overhang, (d.mainAt(t)+plate*cosInv(d.slope())-d.heel)/d.own())
}

// onPlate tells whether the rafter at t stands on the cheek's plate: where the valley board
// would not lift it off.
func (d *dormer) onPlate(t float64) bool {
	return d.mainAt(t+d.Rafters.Width()/2)+plate*cosInv(d.slope()) <= d.top+geom.Eps
}

// rafterBar is the stick of the rafter at t over the cheek at k, from its tail.
func (d *dormer) rafterBar(k, t float64) bar {
	p := d.Frame.At(d.outer(k)+k*d.Overhang, t, 0).Flat()
	return bar{at: p, dir: d.Frame.D.Mul(-k), top: d.planeOf(k).At(p), rise: d.own(), depth: d.Rafters.Depth, half: d.Rafters.Width() / 2}
}

// dormerRafter adds one rafter or jack.
func (f *roofFrame) dormerRafter(d *dormer, k, t float64) *dormerRafter {
	r := &dormerRafter{bar: d.rafterBar(k, t), at: t, k: k, end: t < d.SetBack+d.depth, plate: d.onPlate(t)}
	u1 := d.Overhang + d.half - d.Own.RidgeMember.Width()/2
	var less [][]geom.Plane
	if r.plate {
		less = append(less, notch{d.Overhang, d.Overhang + d.seat, d.top}.planes(r.bar))
	}
	u0 := d.Overhang + d.lowAt(t)
	name := "rafter"
	if !r.plate {
		name = "jack"
	}
	parts := r.cut(0, u1, []geom.Plane{d.onMain(plate)}, less)
	for _, cap := range d.plates { // the first jack may pass over the very end of the plates
		if r.plate || cap == nil {
			continue
		}
		for _, s := range slices.Concat(cap.Solid, solidOf(d.lower[cap])) {
			parts = geom.Carve(parts, s.Planes())
		}
	}
	if len(parts) == 0 {
		return nil
	}
	r.member = f.addStick(&Member{
		ID: fmt.Sprintf("%s/%s/%s@%s", d.Name, d.cheekName(k), name, at(t-d.SetBack)), Role: plan.Rafter, Roof: d.Own, Section: d.Rafters, Ref: f.ref(),
	}, r.bar, parts, u0, u1)
	d.rafters = append(d.rafters, r)
	return r
}

// solidOf returns the solid of a member, none of none.
func solidOf(m *Member) []geom.Solid {
	if m == nil {
		return nil
	}
	return m.Solid
}

// dormerFoot adds the joint at the low end of a rafter: to the cheek's plate, or to the
// valley board.
func (f *roofFrame) dormerFoot(d *dormer, r *dormerRafter, board *Member) {
	i := 0
	if r.k > 0 {
		i = 1
	}
	if !r.plate {
		u := d.Overhang + d.lowAt(r.at)
		s, _ := d.Frame.Local(r.point(u).Flat())
		f.joints = append(f.joints, f.joint(&Joint{
			Kind: plan.RafterRidge, Host: d.Name + "/valley" + d.cheekName(r.k), Level: f.level, Roof: d.Own, Dormer: d.Dormer, Station: math.Abs(s - d.outer(r.k)),
			Members: []*Member{r.member, board}, At: r.point(u),
		}))
		return
	}
	p := r.at2(d.Overhang + d.seat/2)
	f.joints = append(f.joints, f.joint(&Joint{
		Kind: plan.RafterPlate, Host: d.Name + "/side" + d.cheekName(r.k), Level: f.level, Roof: d.Own, Dormer: d.Dormer, Station: r.at - d.SetBack,
		Members: []*Member{r.member, d.plates[i]}, At: p.Up(d.top),
	}))
}

// at2 is the plan point u inches along a bar.
func (r bar) at2(u float64) geom.Vec2 { return r.at.Add(r.dir.Mul(u)) }

// dormerTie adds the ceiling joist beside a pair of rafters on the cheeks' plates: it holds
// their thrust. Over the front wall its plates do.
func (f *roofFrame) dormerTie(d *dormer, pair []*dormerRafter) {
	if !pair[0].plate || pair[0].end {
		return
	}
	wood := ceilingLumber(d.Own)
	t := pair[0].at + (d.Rafters.Width()+wood.Width())/2
	if !d.onPlate(t) {
		return
	}
	r := bar{at: d.Frame.At(d.From, t, 0).Flat(), dir: d.Frame.D, top: d.top + wood.Depth, depth: wood.Depth, half: wood.Width() / 2}
	parts := r.cut(0, d.Width, []geom.Plane{underside(d.planeOf(-1), 0), underside(d.planeOf(1), 0)}, nil)
	if len(parts) == 0 || !f.clear(parts) {
		return
	}
	m := f.addStick(&Member{ID: fmt.Sprintf("%s/tie@%s", d.Name, at(t-d.SetBack)), Role: plan.Joist, Roof: d.Own, Section: wood}, r, parts, 0, d.Width)
	f.house.Ties = append(f.house.Ties, &Tie{Roof: d.Own, Along: pair[0].at - d.SetBack, Rafters: [2]*Member{pair[0].member, pair[1].member}, Pieces: []*Member{m}})
}

// boardJoints ties each valley board to the rafters of the main roof that it lies on, and
// tells of one that crosses none: nothing would hold its jacks.
func (f *roofFrame) boardJoints(d *dormer) {
	for i, k := range f.cheeks() {
		m := d.Boards[i]
		way, crossed := m.B.Sub(m.A), 0
		for _, r := range f.rafters {
			if r.owner.Roof != d.rb.Roof || !geom.With(r.dir, d.Frame.In) {
				continue
			}
			across := r.dir.Left()
			den := way.Flat().Dot(across)
			v := r.at.Sub(m.A.Flat()).Dot(across) / den
			p := m.A.Add(way.Mul(v))
			lo, hi := r.u(r.member.A.Flat()), r.u(r.member.B.Flat())
			if u := r.u(p.Flat()); v < 0 || v > 1 || u < lo || u > hi {
				continue
			}
			crossed++
			s, _ := d.Frame.Local(p.Flat())
			f.joint(&Joint{
				Kind: plan.BoardRafter, Host: d.Name + "/valley" + d.cheekName(k), Level: f.level, Roof: d.Own, Dormer: d.Dormer, Station: math.Abs(s - d.outer(k)),
				Members: []*Member{m, r.member}, At: p.Flat().Up(r.height(r.u(p.Flat()))), Below: true,
			})
		}
		if crossed == 0 {
			f.dormerFault(d.Dormer.Dormer, "dormer-board-bare", fmt.Sprintf("the valley board on the %s side of dormer %s, %s long, crosses no rafter of the main roof that it could be nailed to", d.cheekName(k), d.Name, f.inches(m.Length)),
				"make the dormer wider or steeper, or move it along the eave")
		}
	}
}

// gableStuds2 stands studs on the front wall's plates under its end rafters, over its studs.
func (f *roofFrame) gableStuds2(d *dormer) {
	n := math.Ceil((d.Width - 2*d.trimmer.Width()) / d.Spacing)
	lo, hi := d.From+d.trimmer.Width(), d.To-d.trimmer.Width()
	under := []geom.Plane{underside(d.planeOf(-1), d.Rafters.Depth), underside(d.planeOf(1), d.Rafters.Depth)}
	for k := 1.0; k < n; k++ {
		s := lo + (hi-lo)*k/n
		z := min(d.planeOf(-1).At(d.Frame.At(s, 0, 0).Flat()), d.planeOf(1).At(d.Frame.At(s, 0, 0).Flat())) - d.Rafters.Depth*cosInv(d.own())
		if z-d.top < d.depth {
			continue
		}
		planes := under
		if math.Abs(s-d.c) < plate { // under the ridge board
			planes = append(planes[:2:2], geom.Plane{N: geom.Vec3{Z: 1}, C: d.ridgeTop() - d.own()*d.Own.RidgeMember.Width()/2 - d.Own.RidgeMember.Depth})
		}
		f.upright(d, plan.Stud, fmt.Sprintf("gable stud@%s", at(s-d.From)), d.Studs, d.Frame.Box(s-plate/2, s+plate/2, d.SetBack, d.SetBack+d.depth, d.top, d.ridgeTop()), planes...)
	}
}

// dormerRake frames the overhang over the front: a fly rafter on each slope, held by rungs
// from the end rafter.
func (f *roofFrame) dormerRake(d *dormer, ridge *Member) {
	if d.Rake <= 2*d.Rafters.Width() {
		return
	}
	for _, k := range f.cheeks() {
		t := d.SetBack - d.Rake + d.Rafters.Width()/2
		b, end := d.rafterBar(k, t), d.rafterBar(k, d.SetBack+d.Rafters.Width()/2)
		u1 := d.Overhang + d.half - d.Own.RidgeMember.Width()/2
		fly := f.addStick(&Member{ID: fmt.Sprintf("%s/%s/fly", d.Name, d.cheekName(k)), Role: plan.FlyRafter, Roof: d.Own, Section: d.Rafters}, b, b.cut(0, u1, []geom.Plane{d.onMain(plate)}, nil), d.Overhang+d.lowAt(t), u1)
		f.dormerRungs(d, k, d.Frame.In.Mul(-1), b, end, d.Overhang+d.lowAt(d.SetBack+d.Rafters.Width()), u1, fly)
	}
}

// dormerRungs adds the rungs between an end rafter and its fly rafter, that way out from it,
// and their joints.
func (f *roofFrame) dormerRungs(d *dormer, k float64, out geom.Vec2, fly, end bar, u0, u1 float64, flyMember *Member) {
	var endMember *Member
	for _, r := range d.rafters {
		if r.end && r.k == k {
			endMember = r.member
		}
	}
	normal := geom.Vec3{X: -fly.dir.X * fly.rise, Y: -fly.dir.Y * fly.rise, Z: 1}.Unit()
	wide := lookout.Depth / cosInv(fly.rise)
	var ups []float64
	for u := u0 + 2; u+wide < u1-2; u += lookoutSpace {
		ups = append(ups, u+wide/2)
	}
	for _, up := range ups {
		u := up - wide/2
		a, b := end.point(u).Add(out.Mul(end.half).Up(0)), fly.point(u).Sub(out.Mul(fly.half).Up(0))
		solid := geom.Box(a, b.Sub(a), fly.axis().Mul(lookout.Depth), normal.Mul(-lookout.Breadth))
		lo, hi := solid.Bounds()
		mid := fly.axis().Mul(lookout.Depth / 2)
		m := f.member(&Member{
			ID: fmt.Sprintf("%s/%s/outlooker@%s", d.Name, d.cheekName(k), at(u)), Role: plan.Outlooker, Level: f.level, Roof: d.Own, Section: lookout,
			Length: b.Sub(a).Len(), A: a.Add(mid), B: b.Add(mid), Z0: lo.Z, Z1: hi.Z, Solid: []geom.Solid{solid},
		})
		o := &Overhang{Space: shareOf(ups, up, 0, u1), Out: m.Length + 3*fly.half}
		center := normal.Mul(lookout.Breadth / 2)
		for _, e := range []struct {
			kind    plan.JointKind
			at      geom.Vec3
			members []*Member
		}{{plan.OutlookerRafter, m.A, []*Member{m, endMember}}, {plan.FlyOutlooker, m.B, []*Member{flyMember, m}}} {
			f.joint(&Joint{
				Kind: e.kind, Host: d.Name + "/rake" + d.cheekName(k), Level: f.level, Roof: d.Own, Dormer: d.Dormer, Station: up - d.Overhang, Members: e.members,
				At: e.at.Sub(center), Below: true, Tributary: o.Space, Overhang: o,
			})
		}
	}
}
