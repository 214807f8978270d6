package placement

import (
	"maps"
	"slices"

	"galewright/plan"
)

// Check is one thing that placement looks at and tells. `galewright keys
// place` lists them.
type Check struct {
	ID       plan.Code // the code of its diagnostics
	Title    string    // what it finds, in a few words
	Doc      string    // what it means on the house, and what to do
	Severity plan.Severity
	run      func(*placer)
}

// Checks lists all checks in the order they run.
var Checks = []*Check{
	unknownMark, unknownWord, itemNotForJoint, faceNotForItem, itemNeverUsed,
	unknownHost, placeOffMember, placeWithoutEffect,
	ruleMatchedNothing, ruleWithoutEffect,
	jointWithoutMember, noWayToLie, jointOffWall, cornerOfOne, noRafter, noRidge,
	studNoneBelow, nothingBelow, studsOutOfLine, pairWithoutPost, pairOutOfLine, collectorToNothing, spliceAtStep, headerWithoutKing, boltTooShort, noRoomOnPlate, sillUnbolted, openingUnhung, beamUnhung, holdDownWithoutAnchor,
	strapTooShort, strapPastMember, facesNotFlush, strapOverStep, boltAtSplice, bareBrace, cutPastRoll,
	strapSkipped, faceTaken, overNails, underClip, faceCovered, noRoomOnFace, strapAcrossOpening,
	nailTipThrough,
}

// finding is a diagnostic that placing itself came upon; the check of its
// code tells it.
type finding struct {
	diag  plan.Diagnostic
	piece *Piece // nil when it is about a rule or place as a whole
}

// raise keeps a diagnostic for the check of its code.
func (x *placer) raise(d plan.Diagnostic) {
	x.found[d.Code] = append(x.found[d.Code], finding{diag: d})
}

// consequence keeps a fault of one piece that could not be shaped.
func (x *placer) consequence(p *Piece, d *plan.Diagnostic) {
	x.found[d.Code] = append(x.found[d.Code], finding{*d, p})
}

// told is the run of a check whose findings placing came upon.
func told(c *Check) func(*placer) {
	return func(x *placer) {
		for _, f := range x.found[c.ID] {
			f.diag.Severity = c.Severity
			if f.piece == nil {
				x.tell.add(f.diag)
				continue
			}
			x.about(c, f.piece, "", f.diag.Summary, f.diag.Mend)
		}
	}
}

// newCheck makes a check; a nil run tells what placing found.
func newCheck(id plan.Code, s plan.Severity, title, doc string, run func(*placer, *Check)) *Check {
	c := &Check{ID: id, Title: title, Doc: doc, Severity: s}
	if run == nil {
		c.run = told(c)
	} else {
		c.run = func(x *placer) { run(x, c) }
	}
	return c
}

// about tells something of one piece at the line that asked for it.
func (x *placer) about(c *Check, p *Piece, tag, summary, mend string, related ...plan.Pos) {
	_, pos := p.By()
	x.tell.at(p.Joint, tag, plan.Diagnostic{
		Severity: c.Severity, Code: c.ID, Pos: pos,
		Summary: p.Item.Mark + ": " + summary, Mend: mend, Related: related,
	})
}

// check runs all checks.
func (x *placer) check() {
	for _, c := range Checks {
		c.run(x)
		delete(x.found, c.ID)
	}
	for _, code := range slices.Sorted(maps.Keys(x.found)) { // a code without a check must not be lost
		newCheck(code, plan.Error, string(code), string(code), nil).run(x)
	}
}
