package framing

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// Dormers (common practice, no published source, unless one is named). The opening in
// the main roof is trimmed by doubled rafters under the cheek walls and doubled headers at
// its ends: a header that spans more than 4 ft, and the trimmers with it, are doubled (IRC
// 2024 R802.9, transcribed; here they always are). Cheek studs stand on the trimmers, the
// front wall on the lower header or on the plates of the wall under the eave. A gable
// dormer's roof lies on the main one: the main rafters go on under it above the opening,
// and its valley jacks stand on boards laid flat there, so that the main deck and the
// straps over the main ridge stay whole. A shed dormer's rafters hang at their upper ends on
// the lower side of the upper header, flush with the main roof there; its end rafters come down
// on the trimmers, and the studs of its side walls are cut up to those.

// Dormer is a framed dormer.
type Dormer struct {
	*plan.Dormer
	// Own is its roof, as others know roofs: its area runs from the outside face of its
	// front wall to where its ridge, or a shed, ends, between the outside faces of its cheeks.
	Own      *plan.Roof
	Frame    geom.Frame // along the eave from its left end seen from outside, in from the outside face of the wall there
	From, To float64    // outside faces of its cheeks along Frame
	Upper    float64    // of the upper header's lower face, in from the outside face of the wall under the eave
	Trimmers [2]*Member // at From and To
	Headers  []*Member  // the lower one, where there is one, then the upper one
	Boards   []*Member  // under the valleys
	Opening  [2]geom.Vec2
}

// dormer is a dormer as it is framed.
type dormer struct {
	*Dormer
	rb      *roofBody
	side    int            // of the body
	face    *roofplan.Face // of the main roof
	main    roofplan.Plane // top of the main rafters
	c, half float64        // its middle along the frame, and half its width
	eave    float64        // top of the plates under the eave, above grade
	top     float64        // top of its own plates
	depth   float64        // of its walls' studs
	heel    float64        // top of its rafters over the outside face of the plates that they bear on
	seat    float64        // of its rafters on those, in
	header  plan.Lumber
	trimmer plan.Lumber
	runs    [2]*roofplan.Run // the trimmers' at From and To
	boards  []geom.Solid
	rafters []*dormerRafter
	posts   [2]*Member          // at the front corners
	plates  [2]*Member          // upper plates over the front corners: of a gable those of the cheeks, of a shed both times the front wall's
	lower   map[*Member]*Member // the top plate under each upper one
	cut     []headed            // pieces of main rafters that end at its headers
}

// dormerRafter is one of a dormer's rafters.
type dormerRafter struct {
	bar
	member *Member
	at     float64 // along the dormer's eave
	k      float64 // -1 on the left, 1 on the right
	end    bool    // over the front wall
	plate  bool    // it bears on a plate; else on a valley board
}

// slope is the main roof's rise per inch of run.
func (d *dormer) slope() float64 { return d.main.G.Len() }

// own is the dormer roof's.
func (d *dormer) own() float64 { return d.Pitch / 12 }

// mainAt is the height of the main roof t inches in from the outside face of the wall.
func (d *dormer) mainAt(t float64) float64 { return d.main.At(d.Frame.At(d.c, t, 0).Flat()) }

// inAt is the reverse of mainAt.
func (d *dormer) inAt(z float64) float64 { return (z - d.mainAt(0)) / d.slope() }

// onMain is the half space over the main rafters, by an inch count square to them.
func (d *dormer) onMain(by float64) geom.Plane { return above(raised(d.main, by)) }

// outer is the station of the outside face of the cheek at k, -1 left and 1 right.
func (d *dormer) outer(k float64) float64 { return d.c + k*d.half }

// sides are the two cheeks, in the order of the house as written.
func (f *roofFrame) cheeks() [2]float64 {
	x := f.leftRight()
	return [2]float64{-x[0], -x[1]}
}

// cheekName names the side of the compass that a cheek looks to.
func (d *dormer) cheekName(k float64) string {
	out := d.Frame.D.Mul(k)
	for i, s := range roofplan.SideNames {
		if geom.With(roofplan.Outward(i), out) {
			return string(s)
		}
	}
	return ""
}

// findDormers settles the dormers on the roofs of this group.
func (f *roofFrame) findDormers() {
	for _, x := range f.plan.Dormers {
		for _, rb := range f.bodies {
			if rb.Roof != x.Roof {
				continue
			}
			if d := f.dormerOf(rb, x); d != nil && f.dormerFits(d) {
				f.dormers = append(f.dormers, d)
				f.house.Dormers = append(f.house.Dormers, d.Dormer)
			}
		}
	}
}

// dormerOf returns a dormer with its measures, nil where it stands on no slope.
func (f *roofFrame) dormerOf(rb *roofBody, x *plan.Dormer) *dormer {
	i := 0
	for j, s := range roofplan.SideNames {
		if s == x.Side {
			i = j
		}
	}
	if rb.Trusses || !rb.body.Sloped(i) {
		what, mend := fmt.Sprintf("dormer %s looks %s, and roof %s has no slope there", x.Name, x.Side, rb.Name), "name the side of a slope"
		if rb.Trusses {
			what, mend = fmt.Sprintf("dormer %s stands on roof %s, which is of trusses", x.Name, rb.Name), "take rafters, or leave the dormer to the truss maker"
		}
		f.dormerFault(x, "dormer-no-slope", what, mend)
		return nil
	}
	fr := geom.NewFrame(rb.corner(i, 0), rb.corner(i, 1))
	long := rb.corner(i, 1).Sub(rb.corner(i, 0)).Len()
	d := &dormer{
		Dormer: &Dormer{Dormer: x, Frame: fr}, rb: rb, side: i, main: rb.body.Plane(i), c: x.Center, half: x.Width / 2,
		eave: rb.sides[i].plate, depth: x.Studs.Depth, header: x.Header, trimmer: rb.Rafters.Times(2), lower: map[*Member]*Member{},
	}
	if fr.D.X+fr.D.Y < 0 {
		d.c = long - x.Center
	}
	d.From, d.To, d.top = d.c-d.half, d.c+d.half, d.eave+x.PlateHeight
	if d.shed() && d.own() > d.slope()-leastTurn {
		f.dormerFault(x, "dormer-too-steep", fmt.Sprintf("the roof of shed dormer %s, %.4g in 12, is not 1/2 in 12 or more flatter than the one it stands on, %.4g in 12", x.Name, x.Pitch, 12*d.slope()),
			"take a flatter pitch, or write kind = \"gable\"")
		return nil
	}
	if d.header.Ply == 0 {
		deep := deepAtLeast(d.hung())
		d.header = plan.Lumber{Ply: 2, Breadth: rb.Rafters.Breadth, Depth: deep, Text: "2-" + nominal(rb.Rafters.Breadth, deep)}
	}
	d.settle()
	d.Own = d.asRoof()
	return d
}

// leastTurn is the least by which a shed dormer is flatter than the roof it stands on, rise
// over run: it meets that roof far up otherwise.
const leastTurn = 0.5 / 12

// shed tells whether it is a shed dormer.
func (d *dormer) shed() bool { return d.Kind == plan.ShedRoof }

// aside is how far its roof stands out over its cheeks, in.
func (d *dormer) aside() float64 {
	if d.shed() {
		return d.Rake
	}
	return d.Overhang
}

// hung is how deep a header is that takes the plumb cuts of all that hangs on it: the main
// rafters', and of a shed's own what the bevel of the header's top, one width of 2x twice,
// leaves over them.
func (d *dormer) hung() float64 {
	deep := d.rb.Rafters.Depth * cosInv(d.slope())
	if d.shed() {
		deep = max(deep, d.Rafters.Depth*cosInv(d.own())+2*d.rb.Rafters.Breadth*d.slope())
	}
	return deep
}

// deepAtLeast is the shallowest stock depth of at least so much, in.
func deepAtLeast(deep float64) float64 { return deeper(deep - 2*geom.Eps) }

// settle works out where the dormer's roof lies and where its opening ends.
func (d *dormer) settle() {
	d.seat = seat(d.depth, d.Rafters.Depth, d.own())
	d.heel = d.top + d.Rafters.Depth*cosInv(d.own()) - d.seat*d.own()
	d.Upper = d.inAt(d.top)
	if d.shed() {
		d.Upper = (d.heel - d.own()*d.SetBack - d.mainAt(0)) / (d.slope() - d.own())
	}
}

// ridgeTop is the height at which the planes of a gable dormer meet.
func (d *dormer) ridgeTop() float64 { return d.heel + d.half*d.own() }

// back is how far in from the outside face of the wall under the eave its roof ends.
func (d *dormer) back() float64 {
	if d.shed() {
		return d.Upper
	}
	return d.inAt(d.ridgeTop())
}

// asRoof is the dormer's own roof as the rest of the program knows roofs.
func (d *dormer) asRoof() *plan.Roof {
	a, b := d.Frame.At(d.From, d.SetBack, 0).Flat(), d.Frame.At(d.To, d.back(), 0).Flat()
	axis := plan.AxisY
	if math.Abs(d.Frame.In.X) > math.Abs(d.Frame.In.Y) {
		axis = plan.AxisX
	}
	deep := deepAtLeast(d.Rafters.Depth * cosInv(d.own()))
	r := &plan.Roof{
		Name: d.Name, Over: d.rb.Over, Kind: plan.GableRoof, Ridge: axis, Pitch: d.Pitch, Overhang: d.Overhang, Rake: d.Rake,
		Area:    [2]geom.Vec2{{X: min(a.X, b.X), Y: min(a.Y, b.Y)}, {X: max(a.X, b.X), Y: max(a.Y, b.Y)}},
		Rafters: d.Rafters, Spacing: d.Spacing, CeilingTies: true, Pos: d.Pos,
		RidgeMember: plan.Lumber{Ply: 1, Breadth: d.Rafters.Breadth, Depth: deep, Text: nominal(d.Rafters.Breadth, deep)},
		Blocking:    plan.NoBlocking,
	}
	if d.shed() {
		r.Kind, r.High, r.CeilingTies, r.RidgeMember = plan.ShedRoof, roofplan.SideNames[(d.side+2)%4], false, plan.Lumber{}
		r.Ridge = map[plan.Axis]plan.Axis{plan.AxisX: plan.AxisY, plan.AxisY: plan.AxisX}[axis]
	}
	return r
}

// dormerFault notes an error of a dormer.
func (b *builder) dormerFault(x *plan.Dormer, code plan.Code, what, mend string) {
	b.fault(plan.Diagnostic{Code: code, Pos: x.Pos, Where: "dormer " + x.Name, Summary: what, Mend: mend})
}
