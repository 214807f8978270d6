package framing

import (
	"math"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// A roof that turns a corner of the house, as over a porch along two walls, is a shed
// along each wall; the first of two has a hip end past the corner, whose plane goes on
// as that of the next. The hip stands on the corner of the porch's beams and leans on the
// corner of the ledgers.

// hipEnd tells whether end i of a shed is a hip.
func (rb *roofBody) hipEnd(i int) bool {
	return rb.Kind == plan.ShedRoof && rb.body.Sloped(i) && !rb.isHigh((i+2)%4)
}

// highSide returns the side of a shed's high wall.
func (rb *roofBody) highSide() int {
	for i := range rb.sides {
		if rb.isHigh(i) {
			return i
		}
	}
	return -1
}

// turns tells whether a shed goes around a corner at an end.
func (rb *roofBody) turns() bool {
	for i := range rb.sides {
		if rb.hipEnd(i) || rb.Kind == plan.ShedRoof && rb.body.Sides[i].RunsIn {
			return true
		}
	}
	return false
}

// turnsInto tells whether the plane of one of two sheds goes on as a hip end of the other.
func (rb *roofBody) turnsInto(o *roofBody) bool {
	for i := range rb.sides {
		if rb.body.GoesOn(i, o.body) || o.body.GoesOn(i, rb.body) {
			return true
		}
	}
	return false
}

// ledgerOwner returns the body at whose ledger a run ends: past a corner a rafter may bear
// on the side that the hip end of one shed shares with the next.
func (f *roofFrame) ledgerOwner(run *roofplan.Run, bears *roofBody) *roofBody {
	if run.HighEnd.Kind != roofplan.Wall || !bears.hipEnd(run.Face.Side) && !bears.hipEnd(sideFacing(run)) {
		return bears
	}
	for _, rb := range f.bodies {
		if i := rb.highSide(); i >= 0 && rb.body.Sides[i].Against && math.Abs(rb.body.On(i, run.High)) < onLine && geom.With(roofplan.Outward(i), run.Face.Uphill()) {
			return rb
		}
	}
	return bears
}

// sideFacing returns the side that a run comes down on.
func sideFacing(run *roofplan.Run) int {
	for i := range roofplan.SideNames {
		if geom.Against(roofplan.Outward(i), run.Face.Uphill()) {
			return i
		}
	}
	return run.Face.Side
}

// turnsAt returns the corner of the house at which a shed turns at end e, ok where it does.
func (rb *roofBody) turnsAt(e int) (p geom.Vec2, ok bool) {
	switch high := rb.highSide(); {
	case high < 0:
	case rb.hipEnd(e):
		p, _ = rb.body.HighEnd(e)
		return p, true
	case rb.body.Sides[e].RunsIn:
		p = rb.corner(high, 0)
		if e == (high+1)%4 {
			p = rb.corner(high, 1)
		}
		return p, true
	}
	return p, false
}

// cornerSpans returns the length of the ledger of a shed that turns corners, on past the
// corners of the house, and the planes at which it is mitered there to the next one's.
func (f *roofFrame) cornerSpans(rb *roofBody, i int, fr geom.Frame, length, off float64) ([]span, []geom.Plane) {
	s, planes := span{0, length}, []geom.Plane(nil)
	for e := range rb.sides {
		p, ok := rb.turnsAt(e)
		if !ok {
			continue
		}
		n := roofplan.Outward(e).Add(roofplan.Outward(i)).Unit()
		planes = append(planes, geom.Plane{N: n.Up(0), C: n.Dot(p)})
		at, _ := fr.Local(p.Add(roofplan.Outward(e).Mul(off + plate)))
		if geom.With(roofplan.Outward(e), fr.D) {
			s.hi = at
		} else {
			s.lo = at
		}
	}
	return []span{s}, planes
}

// houseCorner is the corner of the house that a hip leans on.
type houseCorner struct {
	rb        *roofBody
	high, end int
	at        geom.Vec2 // the corner of the ledgers' faces
}

// ledgerCorner returns the corner that a line leans on, nil of any other line.
func (f *roofFrame) ledgerCorner(l *roofLine) *houseCorner {
	if l.line.Kind != roofplan.Hip {
		return nil
	}
	for _, rb := range f.bodies {
		for e := range rb.sides {
			high := rb.highSide()
			if high < 0 || !rb.hipEnd(e) || !rb.body.Sides[high].Against {
				continue
			}
			p, _ := rb.body.HighEnd(e)
			if p.Sub(l.line.B.Flat()).Len() > onLine {
				continue
			}
			out := f.sheathing(rb, high) + plate
			return &houseCorner{rb, high, e, p.Sub(roofplan.Outward(high).Mul(out)).Add(roofplan.Outward(e).Mul(out))}
		}
	}
	return nil
}

// house returns the half spaces on the house's side of both ledgers' faces: the hip is cut
// to fit over that corner.
func (c *houseCorner) house() []geom.Plane {
	in, out := roofplan.Outward(c.high).Mul(-1), roofplan.Outward(c.end)
	return []geom.Plane{{N: in.Up(0), C: in.Dot(c.at)}, {N: out.Up(0), C: out.Dot(c.at)}}
}

// hipLedgers adds the joint of each hip that leans on the corner of two ledgers, at the one
// that runs through.
func (f *roofFrame) hipLedgers() {
	for _, l := range f.lines {
		c := f.ledgerCorner(l)
		if c == nil || l.member == nil || len(f.ledgers[c.rb]) == 0 {
			continue
		}
		p, _ := c.rb.body.HighEnd(c.end)
		f.ledgerTie(c.rb, l.bar, l.member, p, f.ledgers[c.rb][0], c.high)
		f.alsoOn(c)
	}
}

// checkTurns reports hip ends of sheds that no other shed goes on from, or whose hip does
// not come to a corner of the house.
func (f *roofFrame) checkTurns() {
	for _, rb := range f.bodies {
		for e := range rb.sides {
			if !rb.hipEnd(e) {
				continue
			}
			p, _ := rb.body.HighEnd(e)
			var next *roofBody
			for _, o := range f.bodies {
				for i := range o.sides {
					if o.body.GoesOn(i, rb.body) && o.body.Plane((o.highSide()+2)%4).G.Dot(roofplan.Outward(e)) < 0 {
						next = o
					}
				}
			}
			what := ""
			switch {
			case next == nil:
				what = "has a hip end on its " + string(roofplan.SideNames[e]) + " side from which no other shed roof goes on around the corner"
			case math.Abs(next.body.On(next.highSide(), p)) > sixteenth:
				what = "has a hip that comes to the wall " + f.inches(math.Abs(next.body.On(next.highSide(), p))) + " off the corner of the house"
			default:
				continue
			}
			f.roofFault(rb.Roof, plan.Error, "hip-off-corner", what,
				"give both roofs one pitch, both sides of the porch one width and one top, and end the two at the corner of the house")
		}
	}
}

// alsoOn adds the ledger on the other side of the corner to the joint of a hip made last.
func (f *roofFrame) alsoOn(c *houseCorner) {
	p, _ := c.rb.body.HighEnd(c.end)
	for _, rb := range f.bodies {
		i := rb.highSide()
		if i < 0 || rb == c.rb || !geom.Against(roofplan.Outward(i), roofplan.Outward(c.end)) || math.Abs(rb.body.On(i, p)) > onLine || len(f.ledgers[rb]) == 0 {
			continue
		}
		if j := f.joints[len(f.joints)-1]; j.Kind == plan.RafterLedger && j.First().Role == plan.HipRafter {
			j.Members = append(j.Members, f.ledgers[rb][0])
			j.Around, j.AroundAt = f.wallBehind(rb, i, p, f.ledgers[rb][0])
		}
	}
}
