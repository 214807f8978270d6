package placement

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
)

// embed is the least depth of a sill plate's bolt in the foundation, in.
const embed = 7

// The checks of what stands over what.
var (
	studNoneBelow = newCheck("stud-none-below", plan.Warning, "a stud above with none below it",
		"A strap through the floor has nothing to be nailed to below, as over an opening. Nothing is placed; the load path has a gap unless the force is carried around.", nil)
	nothingBelow = newCheck("nothing-below", plan.Warning, "a plate with nothing but the subfloor below it",
		"A clip or strap from the bottom plate goes into a rim, joist or blocking, and there is none. Nothing is placed.", nil)
	studsOutOfLine = newCheck("studs-out-of-line", plan.Warning, "studs of two stories out of line",
		"The studs share too little breadth for a straight strap with its nails in both. Nothing is placed.", nil)
	pairWithoutPost = newCheck("pair-without-post", plan.Error, "a hold-down pair without a post below",
		"A pair needs a post on each side of the floor.", nil)

	collectorToNothing = newCheck("collector-to-nothing", plan.Error, "a collector with nothing to go into",
		"The shear wall ends where no joist, beam, truss or wall continues its line, so a strap has nothing to be nailed to.", nil)

	spliceAtStep = newCheck("splice-at-step", plan.Error, "a splice of plates at two heights",
		"Where a wall's height changes its top plates lie at two heights, and a strap along one finds no other. Nothing is placed; the load path has a gap there unless nothing pulls.", nil)

	pairOutOfLine = newCheck("pair-out-of-line", plan.Error, "a hold-down pair out of line",
		"The two bodies must stand over each other, or the rod bends and the nuts do not seat.", func(x *placer, c *Check) {
			for _, p := range x.p.Pieces {
				if p.Item.Kind.Shape != hardware.Pair {
					continue
				}
				if off := x.through(p.Joint).joint.Offset; math.Abs(off) > aligned {
					x.about(c, p, p.Tag, fmt.Sprintf("the bodies stand %s out of line, the rod's holes allow %s", x.units().Length(math.Abs(off)), x.units().Length(aligned)),
						"move one of the posts, or add a stud that stands over the other")
				}
			}
		})

	boltTooShort = newCheck("bolt-too-short", plan.Warning, "an anchor bolt that reaches too little into the foundation",
		"A bolt of a sill plate goes at least 7 in into the concrete or masonry below it (IRC 2006 R403.1.6, read).", func(x *placer, c *Check) {
			for _, p := range x.p.Pieces {
				if p.Item.Kind.Shape != hardware.Rod || p.Joint.Wall == nil || len(p.Path) != 2 {
					continue
				}
				sill := x.sillOf(p)
				if sill == nil {
					continue
				}
				if in := sill.Z0 - p.Path[1].Z; in < embed-touch {
					x.about(c, p, p.Tag, fmt.Sprintf("it goes %s into what is below the sill plate; the minimum is %s", x.units().Length(max(in, 0)), x.units().Length(embed)),
						fmt.Sprintf("take a bolt of at least %s", x.units().Bought(p.Item.Length+embed-in)))
				}
			}
		})

	noRoomOnPlate = newCheck("no-room-on-plate", plan.Warning, "a bolt with no room on its plate",
		"Within 2 ft of its stud the bolt's washer would lie on a stud, past the plate's end, or on another bolt's.", func(x *placer, c *Check) {
			for _, p := range x.p.Pieces {
				if p.Tight {
					x.about(c, p, p.Tag, "no place on the plate beside the stud is clear", "thin the rule with at_most, or leave the joint out with except")
				}
			}
		})

	holdDownWithoutAnchor = newCheck("hold-down-without-anchor", plan.Warning, "a hold-down with no rod below it",
		"A hold-down over a sill plate takes a rod set in the foundation; none is placed at its post.", func(x *placer, c *Check) {
			for _, p := range x.p.Pieces {
				if p.Item.Kind.Name != plan.HoldDownItem || p.Cut > 0 || x.anchored(p) {
					continue
				}
				x.about(c, p, p.Tag, fmt.Sprintf("no %s rod is set in the foundation under it", x.units().Bought(p.Item.Rod)),
					fmt.Sprintf(`place an item of kind = "anchor rod" at the same %s joint`, p.Joint.Kind))
			}
		})

	headerWithoutKing = newCheck("header-without-king", plan.Warning, "a header's end without a king",
		"Without a full-height stud at a header's end its uplift has no load path below.", func(x *placer, c *Check) {
			for _, j := range x.byKind[plan.OpeningHead] {
				if role(j, plan.King, plan.Post, plan.Stud) != nil {
					continue
				}
				pos := plan.Pos{}
				if j.Wall != nil {
					pos = j.Wall.Pos
				}
				if m := j.First(); m != nil && m.Opening != nil {
					pos = m.Opening.Pos
				}
				x.tell.at(j, "", plan.Diagnostic{
					Severity: c.Severity, Code: c.ID, Pos: pos,
					Summary: "no king stands at this end of the header", Mend: "move the opening off the wall's end, or give kings = 1",
				})
			}
		})
)

// sillOf returns the sill plate that a bolt or rod of a wall holds, or nil: an
// anchor bolt goes into the nearest where its joint names none.
func (x *placer) sillOf(p *Piece) *framing.Member {
	l := x.through(p.Joint)
	if p.Item.Kind.Name == plan.AnchorBoltItem {
		return x.sillUnder(l)
	}
	return role(l.joint, plan.SillPlate)
}

// anchored tells whether a rod or bolt is placed at the post of a hold-down.
func (x *placer) anchored(p *Piece) bool {
	for _, j := range x.byFirst[p.Joint.First()] {
		for _, q := range x.p.At(j) {
			if q.Item.Kind.Shape == hardware.Rod && math.Abs(q.Station-p.Station) < aligned {
				return true
			}
		}
	}
	return false
}
