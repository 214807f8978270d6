package steel

import (
	"fmt"
	"strings"

	"galewright/plan"
	"galewright/plan/placement"
)

// Check is one thing that is looked at on the bodies and told.
type Check struct {
	ID       plan.Code // the code of its diagnostics
	Title    string    // what it finds, in a few words
	Doc      string    // what it means on the house, and what to do
	Severity plan.Severity
	run      func(*Steel, func(finding))
}

// finding is something told of one piece. What has one cause is told once for
// all pieces of an item at joints of one kind, with the details of the first.
type finding struct {
	piece               *placement.Piece
	cause, detail, mend string
	pos                 *plan.Pos // where it is told; nil = at the rule or place
	count               int       // of fasteners; 0 = the piece as a whole
}

// Checks lists all checks in the order they run.
var Checks = []*Check{rodWithoutBearing, holesOffSteel, fastenersInAir, fastenersCovered, fastenersTooNear, fastenersMeet, strapOffFace, strapThroughPlate, steelInWood}

// rodWithoutBearing is the check of rods from bearing to bearing.
var rodWithoutBearing = &Check{
	ID: "rod-without-bearing", Severity: plan.Error, Title: "a rod that bears on nothing at one end",
	Doc: "A rod holds only between two bearings: the nut on a seat, a washer and nut on a member that carries them, or concrete. This one ends in the wood or in the air, or there is no room for its nut.",
	run: func(s *Steel, tell func(finding)) {
		for _, r := range s.Rods() {
			if !r.Bears() {
				tell(finding{piece: r.For, cause: r.cause(), detail: r.Why, mend: mendRod(r)})
			}
		}
	},
}

func (r *Rod) cause() string {
	switch {
	case r.Blocked:
		return "there is no room for the nut of its rod"
	case r.Need > 0:
		return "its rod ends in the wood"
	}
	return "its rod bears on nothing at one end"
}

func mendRod(r *Rod) string {
	switch {
	case r.Blocked:
		return "move what is in the way, such as a pile, or place the piece beside it"
	case r.Need > 0:
		return "take a longer one"
	}
	return "put a girder, beam or blocking under it, place it where one lies, or leave the joint out with except"
}

// Check tells what is wrong with the bodies.
func (s *Steel) Check() (out plan.Diagnostics) {
	for _, c := range Checks {
		t := &told{check: c, at: map[cause]*same{}}
		c.run(s, t.add)
		out = append(out, t.list()...)
	}
	return out
}

// cause is what findings told as one have in common.
type cause struct {
	mark string
	kind plan.JointKind
	text string
}

// same is the findings of one cause.
type same struct {
	first  finding
	pieces []*placement.Piece
	count  int
}

// told gathers the findings of one check.
type told struct {
	check *Check
	at    map[cause]*same
	order []*same
}

func (t *told) add(f finding) {
	k := cause{f.piece.Item.Mark, f.piece.Joint.Kind, f.cause}
	g := t.at[k]
	if g == nil {
		g = &same{first: f}
		t.at[k] = g
		t.order = append(t.order, g)
	}
	g.count += f.count
	if n := len(g.pieces); n == 0 || g.pieces[n-1] != f.piece {
		g.pieces = append(g.pieces, f.piece)
	}
}

// named is how many pieces are named before the rest is counted.
const named = 4

func (t *told) list() (out plan.Diagnostics) {
	for _, g := range t.order {
		f := g.first
		_, pos := f.piece.By()
		if f.pos != nil {
			pos = *f.pos
		}
		d := plan.Diagnostic{Severity: t.check.Severity, Code: t.check.ID, Pos: pos, Mend: f.mend, Where: g.where()}
		d.Summary = f.piece.Item.Mark + ": " + f.cause
		if g.count > 0 {
			d.Summary += fmt.Sprintf(" (%s)", plan.Counted(g.count, "fastener"))
		}
		if f.detail != "" {
			d.Summary += ": " + f.detail
		}
		out = append(out, d)
	}
	return out
}

// where names the first places of a cause.
func (g *same) where() string {
	first := placement.JointPlace(g.first.piece.Joint)
	if len(g.pieces) == 1 {
		return first + ", " + g.pieces[0].Tag
	}
	var tags []string
	for _, p := range g.pieces[:min(len(g.pieces), named)] {
		tags = append(tags, p.Tag)
	}
	s := fmt.Sprintf("%d pieces at %s joints, first %s: %s", len(g.pieces), g.first.piece.Joint.Kind, first, strings.Join(tags, ", "))
	if rest := len(g.pieces) - named; rest > 0 {
		s += fmt.Sprintf(" and %d more", rest)
	}
	return s
}
