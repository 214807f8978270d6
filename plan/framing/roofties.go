package framing

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// tieLumber is a ceiling joist where the plan names none: a 2x6 on the plates
// beside each pair of rafters (common practice, no published source).
var tieLumber = plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 5.5, Text: "2x6"}

// spliceLap is how far a splice piece laps each of the two joists that meet over
// a bearing wall where the plan does not say, in (common practice, no published
// source; the ordered nails and their check say whether it is enough).
const spliceLap = 12

// tiePair is two rafters that a ceiling joist may stand beside.
type tiePair struct {
	rb   *roofBody
	a, c *roofRafter
	at   float64 // along the ridge
}

// ties adds ceiling joists beside opposing pairs of common rafters that bear on
// plates of one height, on the side toward the middle of the ridge: at each
// pair, or at the spacing that the plan gives.
func (f *roofFrame) ties() {
	pairs := f.tiePairs()
	for _, rb := range f.bodies {
		own := slices.DeleteFunc(slices.Clone(pairs), func(p tiePair) bool { return p.rb != rb })
		slices.SortStableFunc(own, func(a, b tiePair) int { return cmp.Compare(math.Round(a.at*1000), math.Round(b.at*1000)) })
		last := math.Inf(1)
		if f.plan.Lay.Reversed(rb.Ridge) {
			slices.Reverse(own)
		}
		for i, p := range own {
			if i+1 < len(own) && math.Abs(own[i+1].at-last) < rb.CeilingSpace+near {
				continue // the next is near enough
			}
			if f.tie(p) {
				last = p.at
			}
		}
	}
}

// tiePairs finds the pairs.
func (f *roofFrame) tiePairs() (out []tiePair) {
	var all []*roofRafter
	for _, r := range f.rafters {
		if rb := r.owner; rb.CeilingTies && !rb.Trusses && rb.Kind != plan.ShedRoof && tied(r) {
			all = append(all, r)
		}
	}
	for i, a := range all {
		for _, c := range all[i:] {
			if a.owner == c.owner && math.Abs(a.run.Station-c.run.Station) < near && geom.Against(c.dir, a.dir) && levelFeet(a, c) {
				out = append(out, tiePair{a.owner, a, c, a.owner.station(a.run.High)})
			}
		}
	}
	return out
}

// tied tells whether a rafter takes a tie: a common rafter on a plate that comes up
// square to its roof's ridge; what comes up to a ridge's end does not.
func tied(r *roofRafter) bool {
	_, body, _ := r.run.Bearing()
	return body != nil && (r.run.HighEnd.Kind == roofplan.Ridge || r.headed) && !r.run.Flush && r.dir.MainAxis() != r.owner.RidgeAxis()
}

// levelFeet tells whether the plates under two rafters are of one height.
func levelFeet(a, c *roofRafter) bool {
	_, _, sa := a.run.Bearing()
	_, _, sc := c.run.Bearing()
	return math.Abs(a.owner.sides[sa].plate-a.owner.sides[sc].plate) <= 0.01
}

// tieBar returns the stick of the tie of a pair, its side from the rafters, and
// its length between the outside faces of the walls.
func (f *roofFrame) tieBar(p tiePair) (r bar, side geom.Vec2, length float64) {
	pa, _, sa := p.a.run.Bearing()
	pc, _, _ := p.c.run.Bearing()
	wood := p.rb.tieLumber()
	side = p.a.dir.Left()
	mid := p.rb.body.Lo.Add(p.rb.body.Hi).Mul(0.5)
	if f.plan.Lay.Mirrored {
		side = side.Mul(-1)
	}
	if side.Dot(mid.Sub(pa)) < -geom.Eps { // a pair in the middle has it at the left of its first rafter
		side = side.Mul(-1)
	}
	if d := p.a.trims; d != nil { // off the opening
		side = side.Mul(math.Copysign(1, side.Dot(pa.Sub(d.Frame.At(d.c, 0, 0).Flat()))))
	}
	shift := side.Mul(max(p.a.half, p.c.half) + wood.Width()/2)
	r = bar{at: pa.Add(shift), dir: p.a.dir, top: p.rb.sides[sa].plate + wood.Depth, depth: wood.Depth, half: wood.Width() / 2}
	return r, side, math.Abs(pc.Sub(pa).Dot(p.a.dir))
}

// tieLumber returns the section of the roof's ceiling joists.
func (rb *roofBody) tieLumber() plan.Lumber { return ceilingLumber(rb.Roof) }

// ceilingLumber returns the section of a roof's ceiling joists.
func ceilingLumber(r *plan.Roof) plan.Lumber {
	if r.Ceiling.Ply == 0 {
		return tieLumber
	}
	return r.Ceiling
}

// tie adds the joist of one pair: one piece, or where that is longer than the
// stock several that meet over bearing walls, or between them where the plan
// orders a splice, each break with a piece beside it. Where something stands in the
// way of a piece it is no tie, and it returns false.
func (f *roofFrame) tie(p tiePair) bool {
	r, side, length := f.tieBar(p)
	planes := []geom.Plane{below(p.a), below(p.c)}
	t := &Tie{Roof: p.rb.Roof, Along: p.at, Rafters: [2]*Member{p.a.member, p.c.member}, Walls: f.tieWalls(r, length)}
	t.Beams = f.tieBeams(r, length)
	id := fmt.Sprintf("%s/tie@%s", p.rb.Name, at(p.rb.station(r.at)))
	if hung := t.hungRuns(length); len(hung) > 1 {
		return f.hungTie(p, t, r, id, planes, hung)
	}
	cuts, lap, ok := p.rb.tieCuts(t.bearings(), length, longest(f.plan))
	if ok && len(cuts) > 2 {
		ok = f.spliceRoom(r, side, cuts, lap)
	}
	if !ok {
		cuts = []float64{0, length}
	}
	for i, to := range cuts[1:] {
		parts := r.cut(cuts[i], to, planes, nil)
		if len(parts) == 0 || !f.clear(parts) {
			continue
		}
		t.Pieces = append(t.Pieces, f.tieStick(p.rb, id, r, parts, cuts[i], to))
	}
	if len(t.Pieces) < len(cuts[1:]) {
		return false // what has room is laid, but it ties nothing
	}
	beside := r.shifted(side)
	for _, c := range cuts[1 : len(cuts)-1] {
		t.Splices = append(t.Splices, f.tieStick(p.rb, id+"/splice", beside, []geom.Solid{beside.solid(c-lap, c+lap)}, c-lap, c+lap))
	}
	f.house.Ties = append(f.house.Ties, t)
	if !ok {
		f.tooLong(t)
	}
	return true
}

// shifted returns a bar one thickness beside r.
func (r bar) shifted(side geom.Vec2) bar {
	r.at = r.at.Add(side.Mul(2 * r.half))
	return r
}

// spliceRoom tells whether nothing stands where the pieces beside the breaks go.
func (f *roofFrame) spliceRoom(r bar, side geom.Vec2, cuts []float64, lap float64) bool {
	for _, c := range cuts[1 : len(cuts)-1] {
		if !f.clear([]geom.Solid{r.shifted(side).solid(c-lap, c+lap)}) {
			return false
		}
	}
	return true
}

// tieStick adds one piece of a ceiling joist.
func (f *roofFrame) tieStick(rb *roofBody, id string, r bar, parts []geom.Solid, u0, u1 float64) *Member {
	return f.addStick(&Member{ID: id, Role: plan.Joist, Roof: rb.Roof, Section: rb.tieLumber()}, r, parts, u0, u1)
}

// tieCuts returns where a joist begins, breaks and ends, and the lap of what lies
// beside the breaks; ok is false where it is longer than the stock and neither
// bearing walls nor an ordered splice let it break.
func (rb *roofBody) tieCuts(walls []float64, length, stock float64) (cuts []float64, lap float64, ok bool) {
	if length <= stock+geom.Eps {
		return []float64{0, length}, 0, true
	}
	if cuts = overWalls(walls, length, stock); cuts != nil {
		return cuts, cmp.Or(rb.CeilingSplice, spliceLap), true
	}
	lap = rb.CeilingSplice
	n := math.Ceil(length / stock)
	for k := 0.0; k <= n; k++ {
		cuts = append(cuts, length*k/n)
	}
	return cuts, lap, lap > 0 && length/n > 2*lap
}

// overWalls breaks a length over the farthest wall or beam within reach, each time; nil
// where one of the pieces would be longer than the stock.
func overWalls(walls []float64, length, stock float64) []float64 {
	cuts := []float64{0}
	for from := 0.0; length-from > stock+geom.Eps; {
		next := from
		for _, w := range walls {
			if w <= from+stock+geom.Eps {
				next = max(next, w)
			}
		}
		if next <= from+geom.Eps {
			return nil
		}
		cuts, from = append(cuts, next), next
	}
	return append(cuts, length)
}

// tieWalls returns the bearing walls between the ends of a joist, in order, each
// where the joist crosses its middle.
func (f *roofFrame) tieWalls(r bar, length float64) (out []TieWall) {
	ends := []geom.Plane{r.after(0), r.before(length)}
	lo, hi := r.box(ends)
	for _, b := range f.bedsAt.Within(lo, hi) {
		if b.wall == nil || !b.wall.Bearing && !b.wall.Exterior || math.Abs(b.z-(r.top-r.depth)) > sixteenth || !geom.Crosses(b.frame.D, r.dir) {
			continue
		}
		if u0, u1, over := r.over(b.column, ends); over && u0 > near && u1 < length-near {
			u := (u0 + u1) / 2
			s, _ := b.wall.Frame().Local(r.at.Add(r.dir.Mul(u)))
			out = append(out, TieWall{b.wall.Wall, s, u})
		}
	}
	slices.SortFunc(out, func(a, b TieWall) int { return cmp.Compare(a.Along, b.Along) })
	return out
}

// tooLong warns of a ceiling joist in one piece that is longer than the stock.
func (f *roofFrame) tooLong(t *Tie) {
	f.rafterFault(t.Pieces[0], plan.Warning, "ceiling-joist-too-long",
		fmt.Sprintf("has ceiling joists %s long, the longest stock is %s, and no bearing wall is under them to break over", f.inches(t.Pieces[0].Length), f.inches(longest(f.plan))),
		`put a bearing wall under them; or write ceiling_splice = "2'" for the roof and order nails as ceiling_splice under [nailing]; or name longer stock under [lumber]`)
}

// below returns the half space below the roof plane of a rafter.
func below(r *roofRafter) geom.Plane { return underside(r.run.Face.Plane, 0) }

// clear tells whether nothing stands where parts would.
func (f *roofFrame) clear(parts []geom.Solid) bool {
	for _, s := range parts {
		lo, hi := s.Bounds()
		for _, m := range f.index.Within(lo, hi) {
			for _, t := range m.Solid {
				if meets(s, t) {
					return false
				}
			}
		}
	}
	return true
}
