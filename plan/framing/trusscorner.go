package framing

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// cornerJack is the half truss under a hip, u = 0 at its tail.
type cornerJack struct {
	bar
	member *Member
	row    *TrussCorner
	side   int       // the side of the roof at its other face
	tip    geom.Vec2 // where its middle meets the girder
}

// cornerJacks adds the half truss under each hip of the end.
func (f *roofFrame) cornerJacks(h *trussHip) {
	for _, l := range h.rb.solo.Lines {
		if l.Kind == roofplan.Hip && h.rb.body.On(h.side, l.A.Flat()) > -near {
			f.cornerJack(h, l)
		}
	}
}

// otherSide is the side of the roof that shares the corner of end i at p.
func (rb *roofBody) otherSide(i int, p geom.Vec2) int {
	a, b := (i+1)%4, (i+3)%4
	if rb.body.On(a, p) > rb.body.On(b, p) {
		return a
	}
	return b
}

// cornerJack adds the one under a hip: its top chord is dropped so that its arrises lie
// in the roof's planes.
func (f *roofFrame) cornerJack(h *trussHip, l *roofplan.Line) {
	rb, j := h.rb, h.rb.otherSide(h.side, l.A.Flat())
	c := &cornerJack{side: j, bar: bar{at: l.A.Flat(), dir: l.Dir(), rise: (l.B.Z - l.A.Z) / l.Run(), half: rb.Rafters.Width() / 2, depth: rb.Rafters.Depth}}
	drop := max(math.Abs(rb.body.Plane(h.side).G.Dot(c.dir.Left())), math.Abs(rb.body.Plane(j).G.Dot(c.dir.Left())))
	c.top = l.A.Z - drop*c.half
	planes, walls := []geom.Plane{h.beyond()}, []geom.Plane{h.beyond()}
	for _, i := range []int{h.side, j} {
		out := roofplan.Outward(i).Up(0)
		planes = append(planes, geom.Plane{N: out, C: rb.body.Edge(i) + rb.body.Reach(i)})
		walls = append(walls, geom.Plane{N: out, C: rb.body.Edge(i)})
	}
	_, u1 := c.extent(0, l.Run(), planes)
	c.tip = c.point(u1).Flat()
	name := string(roofplan.SideNames[h.side]) + string(roofplan.SideNames[j])
	if h.side == roofplan.East || h.side == roofplan.West {
		name = string(roofplan.SideNames[j]) + string(roofplan.SideNames[h.side])
	}
	c.member = f.halfTruss(rb, plan.CornerJack, fmt.Sprintf("%s/%s@%s", rb.Name, plan.CornerJack, name), c.bar, 0, u1, planes, walls)
	if c.member == nil {
		return
	}
	h.corners = append(h.corners, c)
	c.row = &TrussCorner{Member: c.member}
	h.end.Corners = append(h.end.Corners, c.row)
	thin := rb.thin(c.bar)
	if !f.plateJoint(c.member, thin, f.bearings(thin, walls), rb, true) {
		f.memberFault(c.member, plan.Error, "hip-without-plate", "has a corner jack with no plate under its low end",
			"let the walls under the two roof planes meet there, or give the roof the area of its walls")
	}
	f.hangs(c.member, h.girder, h.host(), plan.JackGirder, c.tip, h)
}

// cornerHost names a corner jack.
func (h *trussHip) cornerHost(c *cornerJack) string {
	return h.rb.Name + "/corner" + quarter(c.dir.Mul(-1))
}

// cornerAt returns the corner jack whose line p is on.
func (h *trussHip) cornerAt(p geom.Vec2) *cornerJack {
	for _, c := range h.corners {
		if math.Abs(p.Sub(c.at).Cross(c.dir)) < onLine {
			return c
		}
	}
	return nil
}
