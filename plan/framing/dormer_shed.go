package framing

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// shedDormer frames what a shed dormer has over the main rafters (common practice, no
// published source): its rafters on the front wall's plates and on the upper header, the end
// ones over the cheeks down to the trimmers, and cheek studs up to those.
func (f *roofFrame) shedDormer(d *dormer) {
	f.shedFace(d)
	f.frontWall(d)
	if d.plates[0] == nil {
		return
	}
	for _, s := range d.shedStations() {
		f.shedRafter(d, s)
	}
	for i, k := range [2]float64{-1, 1} {
		end := f.shedEnd(d, i, k)
		f.shedStuds(d, i, k, end)
		f.shedRake(d, k, end)
	}
}

// shedPlane is the plane of the tops of a shed dormer's rafters.
func (d *dormer) shedPlane() roofplan.Plane {
	g := d.Frame.In.Mul(d.own())
	return roofplan.Plane{G: g, C: d.heel - g.Dot(d.Frame.At(d.c, d.SetBack, 0).Flat())}
}

// shedFace adds the face of a shed dormer's roof to the house and takes its opening out of the
// main face. Where it meets that it counts as an edge against a wall.
func (f *roofFrame) shedFace(d *dormer) {
	p := d.shedPlane()
	a, b, low := d.From-d.Rake, d.To+d.Rake, d.SetBack-d.Overhang
	face := &Face{Roof: d.Own, Slope: d.Frame.In.Mul(-1)}
	for i, at := range [][2]float64{{a, low}, {b, low}, {b, d.Upper}, {a, d.Upper}} {
		q := d.Frame.At(at[0], at[1], 0).Flat()
		face.Outline = append(face.Outline, q.Up(p.At(q)))
		face.Edges = append(face.Edges, FaceEdge{Kind: []roofplan.EdgeKind{roofplan.Eave, roofplan.Rake, roofplan.Wall, roofplan.Rake}[i]})
	}
	f.house.Roof = append(f.house.Roof, face)
	f.openFace(d)
}

// shedStations are the middles of a shed dormer's rafters along the eave: in even steps
// between those over its cheeks, no wider than the spacing.
func (d *dormer) shedStations() (out []float64) {
	half := d.Rafters.Width() / 2
	lo, hi := d.From+half, d.To-half
	n := math.Ceil((hi-lo)/d.Spacing - geom.Eps)
	for k := 1.0; k < n; k++ {
		out = append(out, lo+(hi-lo)*k/n)
	}
	return out
}

// shedBar is the stick of a shed dormer's rafter at a station, from its tail.
func (d *dormer) shedBar(s float64) bar {
	p := d.Frame.At(s, d.SetBack-d.Overhang, 0).Flat()
	return bar{at: p, dir: d.Frame.In, top: d.shedPlane().At(p), rise: d.own(), depth: d.Rafters.Depth, half: d.Rafters.Width() / 2}
}

// shedRun is how far a shed dormer's rafters reach in from their tails: to the upper header.
func (d *dormer) shedRun() float64 { return d.Overhang + d.Upper - d.SetBack }

// shedDies is how far in the underside of its rafters meets the tops of the main ones.
func (d *dormer) shedDies() float64 {
	return d.Upper - d.Rafters.Depth*cosInv(d.own())/(d.slope()-d.own())
}

// shedRafter adds a rafter from the front wall's plates to the upper header.
func (f *roofFrame) shedRafter(d *dormer, s float64) {
	r := d.shedBar(s)
	m := f.shedStick(d, s, r, nil)
	if m == nil {
		return
	}
	f.dormerRidge(d, s, []*Member{m, d.Headers[len(d.Headers)-1]}, r.point(d.shedRun()))
}

// shedStick adds a rafter, notched over the front wall's plates, and its joint there.
func (f *roofFrame) shedStick(d *dormer, s float64, r bar, planes []geom.Plane) *Member {
	parts := r.cut(0, d.shedRun(), planes, [][]geom.Plane{notch{d.Overhang, d.Overhang + d.seat, d.top}.planes(r)})
	if len(parts) == 0 {
		return nil
	}
	m := f.addStick(&Member{
		ID: fmt.Sprintf("%s/%s/rafter@%s", d.Name, roofplan.SideNames[d.side], at(s-d.From)), Role: plan.Rafter, Roof: d.Own, Section: d.Rafters, Ref: f.ref(),
	}, r, parts, 0, d.shedRun())
	f.joints = append(f.joints, f.joint(&Joint{
		Kind: plan.RafterPlate, Host: d.Name, Level: f.level, Roof: d.Own, Dormer: d.Dormer, Station: s - d.From,
		Members: []*Member{m, d.plates[0]}, At: r.at2(d.Overhang + d.seat/2).Up(d.top),
	}))
	return m
}

// shedEnd adds the end rafter over the cheek at k, cut long to the top of the trimmer: what
// ties it down there sits a quarter of the way up that cut.
func (f *roofFrame) shedEnd(d *dormer, i int, k float64) *Member {
	s := d.outer(k) - k*d.Rafters.Width()/2
	m := f.shedStick(d, s, d.shedBar(s), []geom.Plane{d.onMain(0)})
	if m == nil {
		return nil
	}
	t := max(d.shedDies(), d.SetBack+d.depth)
	t += (d.Upper - t) / 4
	f.joints = append(f.joints, f.joint(&Joint{
		Kind: plan.DormerFoot, Host: d.Name + "/side" + d.cheekName(k), Level: f.level, Roof: d.Own, Dormer: d.Dormer, Station: t - d.SetBack,
		Members: []*Member{m, d.Trimmers[i]}, At: d.Frame.At(s, t, d.mainAt(t)), Below: true,
	}))
	return m
}

// shedStuds stands the studs of the cheek at k on the trimmer, cut up to the end rafter.
func (f *roofFrame) shedStuds(d *dormer, i int, k float64, end *Member) {
	name, out := "side"+d.cheekName(k), d.outer(k)
	in := out - k*d.depth
	under := underside(d.shedPlane(), d.Rafters.Depth)
	for t := d.SetBack + d.Spacing; ; t += d.Spacing {
		head := d.shedPlane().At(d.Frame.At(out, t, 0).Flat()) - d.Rafters.Depth*cosInv(d.own())
		if head-d.mainAt(t+plate/2) < d.depth {
			return
		}
		box := d.Frame.Box(min(out, in), max(out, in), t-plate/2, t+plate/2, d.mainAt(t-plate), head+plate)
		m := f.upright(d, plan.Stud, fmt.Sprintf("%s/stud@%s", name, at(t-d.SetBack)), d.Studs, box, d.onMain(0), under)
		f.standing(d, m, end, d.Trimmers[i], name, t-d.SetBack, d.Frame.At(out-k*d.depth/2, t, d.mainAt(t)))
	}
}

// shedRake frames the overhang over the cheek at k: a fly rafter, held by rungs from the end
// rafter as far as that is whole.
func (f *roofFrame) shedRake(d *dormer, k float64, end *Member) {
	half := d.Rafters.Width() / 2
	if d.Rake <= 4*half || end == nil {
		return
	}
	b, inner := d.shedBar(d.outer(k)+k*(d.Rake-half)), d.shedBar(d.outer(k)-k*half)
	fly := f.addStick(&Member{ID: fmt.Sprintf("%s/%s/fly", d.Name, d.cheekName(k)), Role: plan.FlyRafter, Roof: d.Own, Section: d.Rafters},
		b, b.cut(0, d.shedRun(), []geom.Plane{d.onMain(0)}, nil), 0, d.shedRun())
	d.rafters = append(d.rafters, &dormerRafter{bar: inner, member: end, k: k, end: true})
	f.dormerRungs(d, k, d.Frame.D.Mul(k), b, inner, 0, d.Overhang+d.shedDies()-d.SetBack, fly)
}
