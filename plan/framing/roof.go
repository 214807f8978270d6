package framing

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// roofSide is what carries one side of a roof body.
type roofSide struct {
	walls []*plan.Wall // in its line, in the order of the plan
	porch *plan.Porch  // whose beam carries it where there is no wall
	plate float64      // top of the plates (or beam) above grade
	depth float64      // of the thinnest of the walls, or width of the beam
	seat  float64      // plan length of the birdsmouth's seat
	rake  bool         // a gable end whose wall runs up to the rafters
}

// roofBody is one roof of the plan with what it bears on.
type roofBody struct {
	*plan.Roof
	body   *roofplan.Body
	sides  [4]roofSide
	solo   *roofplan.Roof // the body by itself, for trusses
	girder [4]bool        // a girder truss stands across the mouth of the wing at this end
}

// bodyOf returns the geometry of a roof of the plan, or why it has none.
func (b *builder) bodyOf(r *plan.Roof) (rb *roofBody, err error) {
	slope := r.Pitch / 12
	other := r.PitchOther / 12
	hips := [2]bool{r.GableEnd[0] == plan.HipEnd, r.GableEnd[1] == plan.HipEnd}
	slopes, err := roofplan.Slopes(r.Kind, roofplan.Shape{Axis: r.Ridge, High: r.High, Slope: slope, Other: other, HipEnd: hips})
	if err != nil {
		return nil, err
	}
	size := r.Area[1].Sub(r.Area[0])
	if size.X < 2*r.Rafters.Depth || size.Y < 2*r.Rafters.Depth {
		return nil, fmt.Errorf("an area of %s by %s", b.inches(size.X), b.inches(size.Y))
	}
	rb = &roofBody{Roof: r, body: &roofplan.Body{
		Name: r.Name, Lo: r.Area[0], Hi: r.Area[1],
		Axis: r.Ridge, Spacing: r.Spacing, Layout: r.Layout, Thick: r.Rafters.Width(),
		Lay: b.plan.Lay,
	}}
	for i, m := range slopes {
		side := b.sideOf(rb, i)
		over := r.Overhang
		if m > 0 {
			if !r.Trusses {
				side.seat = seat(side.depth, r.Rafters.Depth, m)
			}
			rb.body.Sides[i] = roofplan.Side{
				Slope: m, Over: over,
				Height: side.plate + r.Rafters.Depth*cosInv(m) - side.seat*m,
			}
		} else {
			if r.Kind != plan.ShedRoof || roofplan.SideNames[i] != r.High {
				over = r.Rake
			}
			rb.body.Sides[i] = roofplan.Side{Over: over}
		}
		rb.sides[i] = side
	}
	for i := range rb.sides {
		rb.body.Sides[i].Against = b.against(rb, i)
	}
	return rb, nil
}

// cosInv returns 1 over the cosine of a slope of m rise per inch of run.
func cosInv(m float64) float64 { return math.Hypot(1, m) }

// seat returns the plan length of a birdsmouth's seat over a wall of the
// given depth: the whole wall, but no more than keeps the notch within a
// quarter of the rafter's depth (IBC 2308.7.4, read, edition not noted: notches at the ends not over
// 1/4 of the depth). The notch is seat·sin θ deep, square to the rafter.
func seat(wall, rafter, m float64) float64 {
	sin := m / cosInv(m)
	return min(wall, rafter/(4*sin))
}

// onSide tells whether the segment lies in the line of side i of the body
// and shares some of its length.
func onSide(body *roofplan.Body, i int, from, to geom.Vec2) bool {
	if math.Abs(body.On(i, from)) > near || math.Abs(body.On(i, to)) > near {
		return false
	}
	along := roofplan.Outward(i).Left()
	lo, hi := along.Dot(from), along.Dot(to)
	lo, hi = min(lo, hi), max(hi, lo)
	a, z := along.Dot(body.Lo), along.Dot(body.Hi)
	return hi > min(a, z)+near && lo < max(a, z)-near
}

// carries tells whether the wall's top is at the plates of level l.
func carries(w *plan.Wall, l *plan.Level) bool { return w.TopLevel() == l }

// sideOf finds the walls, or the porch beam, in the line of side i.
func (b *builder) sideOf(rb *roofBody, i int) (s roofSide) {
	s.plate, s.depth = rb.Over.Top(), math.Inf(1)
	for _, w := range b.wallsOn(rb.body, i) {
		if !carries(w, rb.Over) {
			continue
		}
		if len(s.walls) == 0 {
			s.plate = w.PlateTop()
		}
		s.walls = append(s.walls, w)
		s.depth = min(s.depth, w.Depth())
		s.rake = s.rake || w.Top == plan.RakeTop
	}
	for _, p := range b.plan.Porches {
		if len(s.walls) == 0 && onSide(rb.body, i, p.From, p.To) {
			s.porch, s.plate, s.depth = p, p.Top, p.Beam.Width()
			break
		}
	}
	if math.IsInf(s.depth, 1) {
		s.depth = 5.5
	}
	return s
}

// wallsOn returns the walls of any level in the line of side i, in the order
// of the plan.
func (b *builder) wallsOn(body *roofplan.Body, i int) (out []*plan.Wall) {
	if b.wallLines == nil {
		b.wallLines = indexWalls(b.plan.Walls)
	}
	out = b.wallLines.near(roofplan.Outward(i).Y != 0, sideLine(body, i))
	return slices.DeleteFunc(out, func(w *plan.Wall) bool { return !onSide(body, i, w.From, w.To) })
}

// sideLine returns the x or y of the line of side i.
func sideLine(body *roofplan.Body, i int) float64 {
	if i == roofplan.South || i == roofplan.West {
		return -body.Edge(i)
	}
	return body.Edge(i)
}

// wallLines finds the walls in one straight line along x or y without a look
// at all walls of the plan.
type wallLines struct {
	walls []*plan.Wall
	at    map[wallLine][]int
}

type wallLine struct {
	alongX bool
	cell   int // of the line's coordinate, in inches
}

func indexWalls(walls []*plan.Wall) *wallLines {
	x := &wallLines{walls: walls, at: map[wallLine][]int{}}
	for i, w := range walls {
		if math.Abs(w.From.Y-w.To.Y) <= near {
			x.add(wallLine{true, int(math.Floor(w.From.Y))}, i)
		}
		if math.Abs(w.From.X-w.To.X) <= near {
			x.add(wallLine{false, int(math.Floor(w.From.X))}, i)
		}
	}
	return x
}

func (x *wallLines) add(k wallLine, i int) { x.at[k] = append(x.at[k], i) }

// near returns the walls along x (or y) within an inch of a coordinate.
func (x *wallLines) near(alongX bool, c float64) (out []*plan.Wall) {
	var hits []int
	for cell := int(math.Floor(c)) - 1; cell <= int(math.Floor(c))+1; cell++ {
		hits = append(hits, x.at[wallLine{alongX, cell}]...)
	}
	slices.Sort(hits)
	for _, i := range hits {
		out = append(out, x.walls[i])
	}
	return out
}

// against tells whether the body ends at a higher wall on its level side i:
// one of a level above, or one that looks at the roof with its outside.
func (b *builder) against(rb *roofBody, i int) bool {
	if rb.body.Sloped(i) {
		return false
	}
	mid := rb.body.Lo.Add(rb.body.Hi).Mul(0.5)
	top := math.Inf(-1)
	for j := range rb.body.Sides {
		if rb.body.Sloped(j) {
			h := rb.body.Plane(j).At(mid.Sub(roofplan.Outward(i).Mul(rb.body.On(i, mid))))
			if math.IsInf(top, -1) || h < top {
				top = h
			}
		}
	}
	for _, w := range b.wallsOn(rb.body, i) {
		looks := geom.With(w.Frame().In, roofplan.Outward(i))
		if w.PlateTop() > top-near && (w.Level.Index > rb.Over.Index || looks) {
			return true
		}
	}
	return false
}

// highPlate returns the top of the plates of a shed's high wall: the rafters
// get the same seat there as at the low wall.
func (rb *roofBody) highPlate() float64 {
	high := slices.Index(roofplan.SideNames[:], rb.High)
	low := (high + 2) % 4
	m := rb.body.Sides[low].Slope
	s := 0.0
	if !rb.Trusses {
		s = seat(rb.sides[high].depth, rb.Rafters.Depth, m)
	}
	face := rb.body.Lo.Sub(roofplan.Outward(high).Mul(rb.body.On(high, rb.body.Lo) + rb.sides[high].depth))
	return rb.body.Plane(low).At(face) - rb.Rafters.Depth*cosInv(m) + s*m
}

// isHigh tells whether side i is a shed's high side.
func (rb *roofBody) isHigh(i int) bool {
	return rb.Kind == plan.ShedRoof && roofplan.SideNames[i] == rb.High
}

// rakePlanes returns the half spaces below the seat of the roof over a wall
// with a rake top: the undersides of the rafters, or the level seat over a
// shed's high wall, and that roof. It returns nil when no roof is over the
// wall. It is asked before any member stands, so it goes by the plan alone.
func (b *builder) rakePlanes(w *framedWall) (out []geom.Plane, roof *plan.Roof) {
	rb := b.roofOnTop(w)
	if rb == nil {
		return nil, nil
	}
	for i := range rb.sides {
		if rb.isHigh(i) && onSide(rb.body, i, w.From, w.To) {
			return []geom.Plane{{N: geom.Vec3{Z: 1}, C: rb.highPlate()}}, rb.Roof
		}
	}
	for _, i := range roofplan.SidesOf(b.plan.Lay) {
		if rb.body.Sloped(i) {
			out = append(out, underside(rb.body.Plane(i), rb.Rafters.Depth))
		}
	}
	return out, rb.Roof
}

// roofOnTop returns the roof that lies over the middle of a wall's line, on the plates
// that the wall's top is at: where two roofs meet the higher, in whose rafters the wall
// ends; nil for none.
func (b *builder) roofOnTop(w *framedWall) (best *roofBody) {
	mid, top := w.frame.At(w.Length()/2, w.Depth()/2, 0).Flat(), math.Inf(-1)
	for _, r := range b.plan.Roofs {
		if r.Over == nil || !carries(w.Wall, r.Over) || !inArea(r.Area, w.From.Add(w.To).Mul(0.5)) {
			continue
		}
		rb, err := b.bodyOf(r)
		if err != nil {
			continue // roofs tells it
		}
		if z := rb.over(mid); best == nil || z > top+geom.Eps {
			best, top = rb, z
		}
	}
	return best
}

// over returns the height of a roof over a plan point, in: its lowest plane there.
func (rb *roofBody) over(p geom.Vec2) float64 {
	z := math.Inf(1)
	for i := range rb.sides {
		if rb.body.Sloped(i) {
			z = min(z, rb.body.Plane(i).At(p))
		}
	}
	return z
}

// inArea tells whether p lies in the area, its border included.
func inArea(area [2]geom.Vec2, p geom.Vec2) bool {
	return p.X >= area[0].X-near && p.Y >= area[0].Y-near && p.X <= area[1].X+near && p.Y <= area[1].Y+near
}

// underside returns the half space below a roof plane lowered by the depth
// of the rafters, in with unit normal.
func underside(p roofplan.Plane, depth float64) geom.Plane {
	k := 1 / cosInv(p.G.Len())
	return geom.Plane{N: geom.Vec3{X: -p.G.X * k, Y: -p.G.Y * k, Z: k}, C: p.C*k - depth}
}

// roofs frames the roofs, level by level.
func (b *builder) roofs() {
	for _, l := range b.plan.Levels {
		var all []*roofBody
		for _, r := range b.plan.Roofs {
			if r.Over != l {
				continue
			}
			rb, err := b.bodyOf(r)
			if err != nil {
				b.roofFault(r, plan.Error, "bad-roof", "has a shape that cannot be framed: "+err.Error(),
					"give it a kind that is known, an area some feet wide, a ridge \"x\" or \"y\" and, for a shed, its high side")
				continue
			}
			all = append(all, rb)
		}
		for _, rb := range all {
			lo, hi := rb.reach()
			b.bodies.Add(rb, lo.Up(0), hi.Up(0), nil)
		}
		for _, group := range cluster(all) {
			b.roofOver(l, group)
		}
		b.checkUnder(all)
	}
	b.checkOpenSky()
}

// cluster parts bodies into groups whose roofs may touch on plan.
func cluster(all []*roofBody) (groups [][]*roofBody) {
	touch := func(a, b *roofBody) bool {
		lap := max(a.Overhang, a.Rake) + max(b.Overhang, b.Rake)
		return a.turnsInto(b) || a.Area[0].X <= b.Area[1].X+lap && b.Area[0].X <= a.Area[1].X+lap &&
			a.Area[0].Y <= b.Area[1].Y+lap && b.Area[0].Y <= a.Area[1].Y+lap && !a.endsAt(b) && !b.endsAt(a)
	}
	for _, rb := range all {
		joined := []*roofBody{rb}
		var rest [][]*roofBody
		for _, g := range groups {
			if slices.ContainsFunc(g, func(o *roofBody) bool { return touch(o, rb) }) {
				joined = append(g, joined...)
			} else {
				rest = append(rest, g)
			}
		}
		groups = append(rest, joined)
	}
	return groups
}

// endsAt tells whether rb ends at a higher wall that o stands on, so that it
// passes under the overhang of o and does not meet its roof.
func (rb *roofBody) endsAt(o *roofBody) bool {
	if rb.turnsInto(o) {
		return false
	}
	for i, s := range rb.body.Sides {
		if s.Against && o.body.Edge((i+2)%4) < near-rb.body.Edge(i) {
			return true
		}
	}
	return false
}

// roofFault notes a fault of a roof.
func (b *builder) roofFault(r *plan.Roof, s plan.Severity, code plan.Code, what, mend string) {
	b.fault(plan.Diagnostic{
		Severity: s, Code: code, Summary: fmt.Sprintf("roof %s %s", r.Name, what),
		Where: "roof " + r.Name, Mend: mend, Pos: r.Pos,
	})
}
