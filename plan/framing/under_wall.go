package framing

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// blocksApart is the greatest spacing of the blocks that carry a wall between two joists,
// in (common practice, no published source).
const blocksApart = 24.0

// alongWall is an inner wall of a floor that stands along its joists.
type alongWall struct {
	*framedWall
	mid  float64 // of the wall, across the joists
	long span    // of it, along them
}

// wallsAlong lists the inner walls of a floor's level that stand along its joists and take
// what is asked.
func (b *builder) wallsAlong(d *deck, want plan.UnderWall) (out []alongWall) {
	for _, w := range b.walls {
		if w.Level != d.level || w.Exterior || math.Abs(w.frame.D.Cross(d.runs.D)) > squareOff || !d.covers(w) {
			continue
		}
		rule := w.Under
		if rule == "" {
			rule = d.level.Under
		}
		s0, mid := d.runs.Local(w.frame.At(w.s0, w.Depth()/2, 0).Flat())
		s1, _ := d.runs.Local(w.frame.At(w.s1, w.Depth()/2, 0).Flat())
		if rule == "" {
			rule = plan.UnderNothing
		}
		if rule == want {
			out = append(out, alongWall{w, mid, span{min(s0, s1), max(s0, s1)}})
		}
	}
	return out
}

// underJoists adds the double joists under inner walls to those that the plan names: in each
// bay that the wall stands over, from end to end. Where one that the plan names lies
// under the wall already there is none.
func (b *builder) underJoists(d *deck) {
	for _, w := range b.wallsAlong(d, plan.UnderJoist) {
		half := d.level.Joists.Times(2).Width() / 2
		e := &extraJoist{
			FloorJoist: &plan.FloorJoist{Name: "under " + w.Name, Level: d.level, Pos: w.Pos}, section: d.level.Joists.Times(2),
			wide: span{w.mid - half, w.mid + half}, asked: w.long,
		}
		_, bays := d.free(e.wide.lo, e.wide.hi)
		for _, bay := range bays {
			if min(bay.hi, w.long.hi)-max(bay.lo, w.long.lo) > 2*plate {
				e.long = append(e.long, bay)
			}
		}
		switch at, own := d.inItsWay(e); {
		case own: // the plan has seen to it
		case at != "" || len(e.long) == 0:
			if at == "" {
				at = "no bay of the floor is free"
			}
			b.fault(plan.Diagnostic{
				Severity: plan.Warning, Code: "under-wall-no-room", Pos: w.Pos, Where: "wall " + w.Name,
				Summary: fmt.Sprintf("no double joist lies under wall %s, which stands along the joists of level %s: %s", w.Name, d.level.Name, at),
				Mend:    `see what carries it there, or write under = "none" for the wall`,
			})
		default:
			d.extra = append(d.extra, e)
		}
	}
}

// inItsWay says what of a floor lies where a joist under a wall would, "" for nothing;
// own where that is a joist that carries the wall itself.
func (d *deck) inItsWay(e *extraJoist) (what string, own bool) {
	for _, o := range d.extra {
		if o.wide.meets(e.wide) && slices.ContainsFunc(e.long, func(s span) bool { return anyMeets(o.long, s) }) {
			return "joist " + o.Name + " lies there", true
		}
	}
	for _, h := range d.wells {
		if h.over().meets(e.wide) && anyMeets(e.long, h.cut()) {
			return "floor opening " + h.Name + " or its trimmers lie there", false
		}
	}
	return "", false
}

// underBlocks adds the blocks under inner walls that stand between two joists.
func (b *builder) underBlocks(d *deck) {
	for _, w := range b.wallsAlong(d, plan.UnderBlocks) {
		n := math.Ceil((w.long.hi - w.long.lo) / blocksApart)
		var list []*Member
		for i := range int(n) {
			at0 := w.long.lo + (float64(i)+0.5)*(w.long.hi-w.long.lo)/n
			list = append(list, b.blockUnder(d, w, at0)...)
		}
		if len(list) > 0 {
			b.house.Added = append(b.house.Added, &Added{"under " + w.Name, d.level, true, list})
		}
		if w.Bearing {
			b.fault(plan.Diagnostic{
				Severity: plan.Warning, Code: "under-bearing-wall", Pos: w.Pos, Where: "wall " + w.Name,
				Summary: fmt.Sprintf("bearing wall %s stands along the joists of level %s on blocks alone: under a bearing wall the code wants joists of a size for its load, doubled (IRC 2018 R502.4, from memory)", w.Name, d.level.Name),
				Mend:    `write under = "double joist" for it, and let the engineer size that`,
			})
		}
	}
}

// bareBearing warns of bearing walls along the joists of a floor under which nothing lies:
// no joist of more than one ply that the plan names, no beam, and no wall or girder below.
func (b *builder) bareBearing(d *deck) {
	for _, w := range b.wallsAlong(d, plan.UnderNothing) {
		on := func(o body) bool {
			a, z := obstacle{body: o}.across(body{f: geom.Frame{Origin: d.runs.At(0, w.mid, 0).Flat(), D: d.runs.D, In: d.runs.In}})
			return geom.Parallel(o.f.D, d.runs.D) && a < plate && z > -plate
		}
		named := slices.ContainsFunc(d.extra, func(e *extraJoist) bool {
			return e.section.Ply > 1 && e.wide.lo < w.mid+plate && e.wide.hi > w.mid-plate && anyMeets(e.long, w.long)
		})
		if !w.Bearing || named || slices.ContainsFunc(d.supports, on) || slices.ContainsFunc(d.taken, func(o obstacle) bool { return on(o.body) }) {
			continue
		}
		b.fault(plan.Diagnostic{
			Severity: plan.Warning, Code: "under-bearing-wall", Pos: w.Pos, Where: "wall " + w.Name,
			Summary: fmt.Sprintf("bearing wall %s stands along the joists of level %s with no double joist, beam, wall or girder in line under it: the code wants joists there of a size for its load, doubled (IRC 2018 R502.4, from memory)", w.Name, d.level.Name),
			Mend:    `write under = "double joist" for it, and let the engineer size that`,
		})
	}
}

// blockUnder adds the block under the middle of a wall at one place along the joists, where
// no joist lies there.
func (b *builder) blockUnder(d *deck, w alongWall, s float64) []*Member {
	half := d.level.Joists.Breadth / 2
	f := geom.Frame{Origin: d.runs.At(s-half, 0, 0).Flat(), D: d.runs.In, In: d.runs.D}
	along, _ := w.frame.Local(d.runs.At(s, w.mid, 0).Flat())
	reach := d.level.JoistSpace
	return b.layBlocks(d, fmt.Sprintf("under %s %s", w.Name, at(along)), body{f, w.mid - reach, w.mid + reach, 2 * half}, func(s span) bool {
		return s.lo < w.mid && w.mid < s.hi
	})
}
