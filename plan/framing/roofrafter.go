package framing

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// minJack is the shortest jack worth cutting: its plan length inside the
// wall's outside face, in.
const minJack = 4

// around returns the corners of a box, an inch all around p, that holds whatever lies at p.
func around(p geom.Vec3) (lo, hi geom.Vec3) {
	d := geom.Vec3{X: 1, Y: 1, Z: 1}
	return p.Sub(d), p.Add(d)
}

// roofRafter is a rafter with the line it follows.
type roofRafter struct {
	bar
	run    *roofplan.Run
	owner  *roofBody
	member *Member
	trims  *dormer // beside whose opening it is a trimmer, or across the ridge from one
	headed bool    // its upper end is at the header of a dormer's opening
}

// ownerOf returns the roof body whose rafter a run is: the one whose wall it
// bears on and at whose ledger it ends, or the one whose plane it lies in.
func (f *roofFrame) ownerOf(run *roofplan.Run) *roofBody {
	if _, b, _ := run.Bearing(); b != nil {
		return f.ledgerOwner(run, f.of[b])
	}
	return f.of[run.Face.Body]
}

// barOf returns the stick of a run, u = 0 at its low end.
func (rb *roofBody) barOf(run *roofplan.Run) bar {
	return bar{
		at: run.Low, dir: run.Face.Uphill(), top: run.Face.Plane.At(run.Low),
		rise: run.Face.Slope(), depth: rb.Rafters.Depth, half: rb.Rafters.Width() / 2,
	}
}

// makeRafters makes the rafters of all faces.
func (f *roofFrame) makeRafters() {
	for _, run := range f.runs {
		owner := f.ownerOf(run)
		_, bears, _ := run.Bearing()
		if bears == nil && run.LowEnd.Kind != roofplan.Valley {
			continue // a stub of an overhang: nothing carries it
		}
		if run.Flush && f.closed(owner, run) || owner.Trusses && !run.Flush {
			continue
		}
		cut, gone := f.dormerAt(run)
		if !gone {
			f.rafter(run, owner, cut)
		}
	}
}

// rafter makes the rafter of one run, or the two pieces that a dormer's opening leaves of it.
func (f *roofFrame) rafter(run *roofplan.Run, owner *roofBody, dormer *dormer) {
	r := &roofRafter{bar: owner.barOf(run), run: run, owner: owner}
	length := run.High.Sub(run.Low).Len()
	u0, u1, planes := f.rafterEnds(r, length)
	lo, hi := r.extent(u0, u1, planes)
	p, body, side := run.Bearing()
	if body != nil && hi-r.u(p) < max(minJack, f.of[body].sides[side].seat+1) || hi-lo < minJack {
		return // its cheek would cut into its own seat
	}
	if dormer != nil {
		f.cutRafter(r, dormer, "rafter", owner.Rafters, u0, u1, planes)
		return
	}
	bounds := append([]geom.Plane{r.after(u0), r.before(u1)}, planes...)
	seats := f.bearings(r.bar, bounds)
	parts := r.cut(u0, u1, planes, f.less(r.bar, bounds, seats))
	for _, pocket := range f.pockets[keyOf(run)] {
		parts = geom.Carve(parts, pocket)
	}
	if len(parts) == 0 {
		return
	}
	side2 := roofplan.SideNames[run.Face.Side]
	r.member = f.addStick(&Member{
		ID:   fmt.Sprintf("%s/%s/rafter@%s", owner.Name, side2, at(owner.across(run))),
		Role: plan.Rafter, Roof: owner.Roof, Section: owner.Rafters, Ref: f.ref(),
	}, r.bar, parts, lo, hi)
	f.rafters, f.takes[r.member] = append(f.rafters, r), r.space()
	if body == nil && f.lineFor(run.LowEnd.Line, r, run.Low) == nil {
		f.rakeEnd(r, r.member.A.Flat().Add(r.dir))
	}
	if body != nil {
		if !f.plateJoint(r.member, r.bar, seats, owner, false) && !f.rakeJoint(r, p, f.of[body], side) {
			f.noPlate(f.of[body], side, p)
		}
		f.checkSeat(r, seats)
	}
}

// across returns the station of a run along its eave, from the low corner of
// the body.
func (rb *roofBody) across(run *roofplan.Run) float64 {
	if run.Face.Uphill().X == 0 {
		return run.Station - rb.body.Lo.X
	}
	return run.Station - rb.body.Lo.Y
}

// rafterEnds returns how far a rafter's blank reaches and what cuts it: the
// faces of the lines it ends at, and of any other line it would run into.
func (f *roofFrame) rafterEnds(r *roofRafter, length float64) (u0, u1 float64, planes []geom.Plane) {
	u1 = length
	mid := r.at.Add(r.dir.Mul(length / 2))
	for _, tip := range []struct {
		end  roofplan.End
		at   geom.Vec2
		high bool
	}{{r.run.LowEnd, r.run.Low, false}, {r.run.HighEnd, r.run.High, true}} {
		line := f.lineFor(tip.end.Line, r, tip.at)
		if line == nil || geom.Skims(line.dir, r.dir) {
			if line != nil && tip.high { // square at the end of the line itself
				u1 -= line.short(r.rise)
			}
			continue
		}
		planes = append(planes, line.beside(mid))
		reach := (line.half+r.half)/math.Abs(line.dir.Cross(r.dir)) + r.half*2
		if tip.high {
			u1 += reach
		} else {
			u0 -= reach
		}
	}
	if r.run.HighEnd.Kind == roofplan.Wall || (r.owner.Kind == plan.ShedRoof && r.run.HighEnd.Line == nil) {
		planes = append(planes, f.ledgerFace(r)...)
	}
	slab := clipTo(r.column(u0, u1), planes)
	lo, hi := slab.Bounds()
	for _, line := range f.linesAt.Within(lo, hi) {
		if meets(slab, line.column) {
			p := line.beside(mid)
			planes = append(planes, p)
			slab = slab.Clip(p)
		}
	}
	return u0, u1, planes
}

// lineFor returns the stick at an end p of a rafter, or nil when there is
// none at its place, as over a gable truss where the ridge stops.
func (f *roofFrame) lineFor(line *roofplan.Line, r *roofRafter, p geom.Vec2) *roofLine {
	if line == nil {
		return nil
	}
	for _, l := range f.linesAt.Within(around(p.Up(0))) {
		u := l.u(p)
		if l.line.Kind == line.Kind && math.Abs(p.Sub(l.at).Cross(l.dir)) < onLine {
			if lo, hi := l.extent(l.u0, l.u1, l.planes); u > lo-r.half && u < hi+r.half || l.line.Kind != roofplan.Ridge {
				if u > -onLine && u < l.line.Run()+onLine {
					return l
				}
			}
		}
	}
	return nil
}

// crosses tells whether the bar crosses the bed's wall rather than runs
// along it.
func (x bearing) crosses(r bar) bool { return geom.Crosses(x.bed.frame.D, r.dir) }
