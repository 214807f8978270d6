package placement

import (
	"fmt"

	"galewright/plan"
	"galewright/plan/hardware"
)

// The checks of the marks, rules and places as written.
var (
	unknownMark = newCheck("unknown-mark", plan.Error, "a mark that is not in the catalog",
		"A rule or place uses a mark that no item has. Nothing is placed for it.", nil)
	unknownWord = newCheck("unknown-word", plan.Error, "a word that is not in its list",
		"A rule's at or a place's on must be one of the joint kinds, a place's action one of its actions.", nil)
	itemNotForJoint = newCheck("item-not-for-joint", plan.Error, "an item at a joint it does not fit",
		"Each kind of item goes at certain kinds of joint; a ridge strap at a stud's base cannot be nailed.", nil)
	faceNotForItem = newCheck("face-not-for-item", plan.Error, "an item on a face that it does not lie on",
		"Clips, hold-downs, long straps and collectors lie on some faces of a member only: nobody nails a stud clip to a plate's top. Nothing is placed.", nil)
	unknownHost = newCheck("unknown-host", plan.Error, "a place on something that has no joints",
		"A place names the wall, roof, girder or porch it is on.", nil)
	placeOffMember = newCheck("place-off-member", plan.Error, "an engineer's item off every member",
		"A place must hit a member within half its breadth and 1 in. The message names the nearest member and its distance.", nil)
	placeWithoutEffect = newCheck("place-without-effect", plan.Warning, "a removal where there is nothing",
		"A place that removes an item finds none at its joint.", nil)
	ruleMatchedNothing = newCheck("rule-matched-nothing", plan.Warning, "a rule that matches no joint",
		"No joint of the house meets all conditions of the rule: a word is likely wrong, or the house has changed under it.", nil)
	jointWithoutMember = newCheck("joint-without-member", plan.Error, "hardware at a joint without a member",
		"Framing found a joint but nothing to nail to.", nil)
	noWayToLie = newCheck("no-way-to-lie", plan.Error, "a strap at a joint where it cannot lie",
		"A strap of that kind has no line in space at joints of that kind: use an item of another kind.", nil)
	jointOffWall = newCheck("joint-off-wall", plan.Error, "a wall's item at a joint without a wall",
		"The item is laid on a wall's faces, and the joint belongs to none.", nil)
	cornerOfOne = newCheck("corner-of-one", plan.Error, "a corner strap where no corner is",
		"A strap around a corner needs two walls that meet at an angle.", nil)
	noRafter = newCheck("no-rafter", plan.Error, "a ridge strap without a rafter",
		"No rafter meets the ridge at this joint.", nil)
	noRidge = newCheck("no-ridge", plan.Error, "a ridge strap where a jack leans on a hip or valley",
		"A jack rafter ends at the side of its hip or valley: there is no ridge for a strap to go over.", nil)

	itemNeverUsed = newCheck("unused-mark", plan.Warning, "an item that nothing uses",
		"The plan has an item that no rule, place or shear wall names. Those of a catalog file are there for other houses too.", func(x *placer, c *Check) {
			for _, it := range x.c.Items {
				if x.used[it.Mark] || it.Kind.Shape == hardware.Sheet || it.Pos.File != x.house.Plan.File {
					continue
				}
				x.tell.add(plan.Diagnostic{
					Severity: c.Severity, Code: c.ID, Pos: it.Pos,
					Summary: "no rule and no place uses it", Where: "item " + it.Mark,
					Mend: "use it in a rule or place, or take it out",
				})
			}
		})

	ruleWithoutEffect = newCheck("without-effect", plan.Warning, "a rule or place that others beat everywhere",
		"It matches joints, but at each of them a later rule or an engineer's place has taken its purpose.", (*placer).beaten)
)

// beaten tells of rules and places all of whose asks were beaten.
func (x *placer) beaten(c *Check) {
	standing, lost := map[any]int{}, map[any]int{}
	first := map[any]*ask{}
	for _, j := range x.house.Joints {
		for _, a := range x.p.asks[j] {
			if !a.beaten {
				standing[a.source()]++
				continue
			}
			lost[a.source()]++
			if first[a.source()] == nil {
				first[a.source()] = a
			}
		}
	}
	tell := func(source any, what, where string, pos plan.Pos) {
		if a := first[source]; a != nil && standing[source] == 0 {
			x.tell.add(plan.Diagnostic{
				Severity: c.Severity, Code: c.ID, Pos: pos, Where: where,
				Summary: fmt.Sprintf("the %s has no effect at any of its %s", what, plan.Counted(lost[source], "joint")),
				Mend:    fmt.Sprintf("at %s it is %s: take it out, move it after, or give it a purpose of its own", a.joint.ID, a.why),
			})
		}
	}
	for _, r := range x.house.Plan.Rules {
		tell(r, "rule", fmt.Sprintf("rule %q", r.Name), r.Pos)
	}
	for _, e := range x.house.Plan.Places {
		tell(e, "place", "place of "+e.Use, e.Pos)
	}
}
