// Package placement puts hardware at joints: rules and the engineer's places
// flow in with a framed house and a catalog, pieces flow out, each with the
// rule that asked for it and a tag that stays its own through revisions. It
// tells every clash and every consequence (a strap too short, a stud with
// nothing below). It knows nothing of drawing.
//
// Invariants: every piece stands at one joint and was asked for by one rule
// or one place; tags are unique and are made from the joint and the item's
// kind alone; what cannot be nailed is told and never counted.
package placement
