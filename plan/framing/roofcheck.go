package framing

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// minSeat is the least length of a rafter's bearing, in (IRC R802.6: 1 1/2
// in on wood; from memory).
const minSeat = 1.5

// checkSeat warns of a bearing shorter than what the code asks, and of a
// notch deeper than it allows, as over a wall higher than the others of its
// side.
func (f *roofFrame) checkSeat(r *roofRafter, seats []bearing) {
	for _, s := range seats {
		d := s.u1 - s.u0
		switch depth := s.deep(r.bar); {
		case !s.crosses(r.bar):
		case depth > r.depth/4+skin:
			f.rafterFault(r.member, plan.Error, "notch-too-deep",
				fmt.Sprintf("needs a notch %s deep in its rafters over %s, and a quarter of their depth is %s", f.inches(depth), s.name(), f.inches(r.depth/4)),
				f.lowerIt(s))
		case d < minSeat-skin && r.owner.sides[r.run.Face.Side].seat < minSeat:
			f.rafterFault(r.member, plan.Warning, "short-seat",
				fmt.Sprintf("lets its rafters bear on %s only; a notch within a quarter of their depth gives no more", f.inches(d)),
				"take deeper rafters, or a lower pitch")
		}
	}
}

// lowerIt says how to mend a wall that stands too high under a rafter.
func (f *roofFrame) lowerIt(x bearing) string {
	for _, rb := range f.bodies {
		for _, s := range rb.sides {
			if x.bed.wall == nil || slices.Contains(s.walls, x.bed.wall.Wall) {
				return "give the walls under one side one height"
			}
		}
	}
	return "make " + x.name() + " lower, or let the overhang end before it"
}

// checkThroat reports a hip or valley that keeps less wood over a plate than
// the rafters beside it may: three quarters of a rafter's depth. It is deeper
// than they are and its top lies in the roof with theirs, so its notch may be
// more than a quarter of its own depth; what it keeps is what counts (our
// reading of IBC 2308.7.4 (edition not noted), which speaks of rafters; the engineer of record
// sizes hips and valleys).
func (f *roofFrame) checkThroat(l *roofLine, seats []bearing) {
	least := l.owner.Rafters.Depth * 3 / 4
	for _, s := range seats {
		s.u0 += l.half                                          // in the middle of its thickness, where it crosses the corner
		if left := l.depth - s.deep(l.bar); left < least-0.25 { // a valley beside the corner cuts a hair deeper
			f.memberFault(l.member, plan.Error, "notch-too-deep",
				fmt.Sprintf("keeps %s of its %s over %s, and a rafter keeps %s", f.inches(max(left, 0)), l.member.Role, s.name(), f.inches(least)),
				"give the walls that meet there one height")
		}
	}
}

// name says which wall or porch a seat is on.
func (x bearing) name() string {
	if x.bed.wall != nil {
		return "wall " + x.bed.wall.Name
	}
	return "porch " + x.bed.porch.Name
}

// checkHigh reports a shed whose high wall does not end where the rafters
// need it.
func (f *roofFrame) checkHigh() {
	for _, rb := range f.bodies {
		for i, s := range rb.sides {
			if !rb.isHigh(i) || rb.body.Sides[i].Against || s.rake {
				continue
			}
			need := rb.highPlate()
			switch {
			case len(s.walls) == 0 && s.porch == nil:
				f.roofFault(rb.Roof, plan.Error, "shed-without-high-wall",
					fmt.Sprintf("has nothing under its high side %s", rb.High),
					"put a wall or a porch beam there, or let the roof end against a higher wall")
			case math.Abs(s.plate-need) > sixteenth:
				f.roofFault(rb.Roof, plan.Error, "high-wall-height",
					fmt.Sprintf("needs the plates of its high side %s at %s above the floor, and they are at %s", rb.High,
						f.inches(need-f.level.Floor), f.inches(s.plate-f.level.Floor)),
					`give the wall there top = "rake", or that height`)
			}
		}
	}
}

// checkUnder reports roofs that pass under another's overhang without room.
func (b *builder) checkUnder(all []*roofBody) {
	for _, rb := range all {
		lo, hi := rb.reach()
		for _, o := range b.bodies.Within(lo.Up(0), hi.Up(0)) {
			if o == rb || o.Over != rb.Over || !rb.endsAt(o) {
				continue
			}
			if d := rb.into(o); d > sixteenth {
				b.roofFault(rb.Roof, plan.Error, "roof-in-overhang",
					fmt.Sprintf("reaches %s into the overhang of roof %s that it passes under", b.inches(d), o.Name),
					"set it lower, take a lower pitch, or give roof "+o.Name+" less overhang there")
			}
		}
	}
}

// into returns how far the roof of rb reaches into the rafters of o where
// both are on plan, in; negative where there is room. A ridge that ends there
// stands higher than the corners of what they share, so its whole body is asked.
func (rb *roofBody) into(o *roofBody) float64 {
	lo, hi := rb.reach()
	a, z := o.reach()
	lo = geom.Vec2{X: max(lo.X, a.X), Y: max(lo.Y, a.Y)}
	hi = geom.Vec2{X: min(hi.X, z.X), Y: min(hi.Y, z.Y)}
	if lo.X > hi.X-near || lo.Y > hi.Y-near {
		return -1
	}
	size := hi.Sub(lo)
	own := geom.Box(lo.Up(0), geom.Vec3{X: size.X}, geom.Vec3{Y: size.Y}, geom.Vec3{Z: endless})
	for i := range rb.body.Sides {
		if rb.body.Sloped(i) {
			own = own.Clip(underside(rb.body.Plane(i), 0))
		}
	}
	most := math.Inf(-1)
	for i := range o.body.Sides {
		if o.body.Sloped(i) {
			under := underside(o.body.Plane(i), o.Rafters.Depth)
			_, top := own.Along(under.N)
			most = max(most, (top-under.C)/under.N.Z)
		}
	}
	return most
}

// reach returns the corners of a body's plan with its overhangs.
func (rb *roofBody) reach() (lo, hi geom.Vec2) {
	b := rb.body
	return geom.Vec2{X: b.Lo.X - b.Reach(roofplan.West), Y: b.Lo.Y - b.Reach(roofplan.South)},
		geom.Vec2{X: b.Hi.X + b.Reach(roofplan.East), Y: b.Hi.Y + b.Reach(roofplan.North)}
}

// checkOpenSky warns of exterior walls that have neither a roof nor a floor
// over them, as a bay that the roof beside it does not cover.
func (b *builder) checkOpenSky() {
	if len(b.plan.Roofs) == 0 {
		return
	}
	bare := map[*plan.Level][]*framedWall{}
	for _, w := range b.walls {
		if p := w.frame.At((w.Hook+w.Length())/2, w.Depth()/2, 0).Flat(); w.Exterior && !b.roofed(p) && !b.floored(w, p) {
			bare[w.Level] = append(bare[w.Level], w)
		}
	}
	for _, l := range b.plan.Levels {
		if list := bare[l]; len(list) > 0 {
			names := list[0].Name
			for _, w := range list[1:] {
				names += ", " + w.Name
			}
			b.fault(plan.Diagnostic{
				Severity: plan.Warning, Code: "wall-without-roof", Pos: list[0].Pos, Where: "level " + l.Name,
				Summary: fmt.Sprintf("%s of level %s, %s, %s neither roof nor floor over %s", number(len(list), "exterior wall"), l.Name, names, haveHas(len(list)), themIt(len(list))),
				Mend:    "give a roof the area that covers it, or add a roof there",
			})
		}
	}
}

// roofed tells whether a roof is over p.
func (b *builder) roofed(p geom.Vec2) bool {
	return len(b.bodies.Within(p.Up(0), p.Up(0))) > 0
}

// floored tells whether a floor lies over w at p.
func (b *builder) floored(w *framedWall, p geom.Vec2) bool {
	for l, loops := range b.loops {
		if l.Index <= w.TopLevel().Index {
			continue
		}
		in := false
		for _, loop := range loops {
			in = in != contains(points(loop), p)
		}
		if in {
			return true
		}
	}
	return false
}

// checkStock warns of rafters, hips and valleys longer than any stock.
func (f *roofFrame) checkStock() {
	stock := longest(f.plan)
	over := map[*plan.Roof]*Member{}
	for _, m := range f.sticks {
		if m.Role != plan.Ridge && m.Role != plan.Joist && m.Length > stock && (over[m.Roof] == nil || over[m.Roof].Length < m.Length-geom.Eps) {
			over[m.Roof] = m
		}
	}
	for _, rb := range f.bodies {
		if m := over[rb.Roof]; m != nil {
			f.memberFault(m, plan.Warning, "rafter-too-long",
				fmt.Sprintf("has a %s %s long, and the longest stock is %s", m.Role, f.inches(m.Length), f.inches(stock)),
				"name longer stock under [lumber], order it to length, or let a wall or beam break the span")
		}
	}
}

// checkBeam warns of a ridge beam that nothing carries at an end: it needs a
// wall that runs up to it.
func (f *roofFrame) checkBeam() {
	for _, rb := range f.bodies {
		if !rb.RidgeBearing || rb.Trusses {
			continue
		}
		for i, s := range rb.body.Sides {
			ridgeEnd := (rb.Ridge == plan.AxisX) == (i == roofplan.East || i == roofplan.West)
			if !ridgeEnd || s.RunsIn || rb.Kind == plan.ShedRoof {
				continue
			}
			if kind := rb.gableOf(i); kind != rakeGable {
				f.roofFault(rb.Roof, plan.Warning, "ridge-beam-unsupported",
					fmt.Sprintf("has a ridge beam with no wall under its %s end", roofplan.SideNames[i]),
					`give the gable wall there top = "rake", or leave ridge_beam out and keep the ceiling ties`)
			}
		}
	}
}
