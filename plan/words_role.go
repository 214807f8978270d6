package plan

import "slices"

// Role is what a member does.
type Role string

// The roles. A Post stud is one of a corner post or a backing stud.
const (
	Stud         Role = "stud"
	King         Role = "king"
	Jack         Role = "jack"
	Cripple      Role = "cripple"
	Post         Role = "post"
	Header       Role = "header"
	Sill         Role = "sill"
	BottomPlate  Role = "bottom plate"
	TopPlate     Role = "top plate"   // lower of the two
	UpperPlate   Role = "upper plate" // upper of the two
	Rim          Role = "rim"
	Joist        Role = "joist"
	Blocking     Role = "blocking"
	Ledger       Role = "ledger"
	Rafter       Role = "rafter"
	HipRafter    Role = "hip rafter"
	ValleyRafter Role = "valley rafter"
	Ridge        Role = "ridge"
	Outlooker    Role = "outlooker"
	FlyRafter    Role = "fly rafter" // of a gable overhang: hangs on outlookers, bears on nothing
	Truss        Role = "truss"
	GirderTruss  Role = "girder truss" // of plies, carries the jacks of a hip end or what hangs on it where roofs meet
	HipTruss     Role = "hip truss"    // with a level top, between a girder truss and the first full one
	JackTruss    Role = "jack truss"   // from a wall to a girder truss or corner jack
	ValleyFrame  Role = "valley frame" // of a valley set: stands on the trusses of the roof that a wing runs into
	CornerJack   Role = "corner jack"  // the half truss under a hip, from the corner to the girder truss
	GirderBeam   Role = "girder"       // of a Girder, with its plies together
	BeveledStud  Role = "beveled stud" // of a corner that is no right angle: stands between end studs, carries nothing
	Pile         Role = "pile"
	BraceBoard   Role = "brace" // of a Brace, bolted flat to the faces of piles and girders
	Beam         Role = "beam"
	PorchPost    Role = "porch post"
	RidgePole    Role = "ridge post"   // of a RidgePost: from its footing to the ridge
	PlateBeam    Role = "dropped beam" // of a FloorBeam: its top flush with the walls' plates, under the joists that it carries
	FlushBeam    Role = "flush beam"   // of a FloorBeam: its top flush with those of the joists that hang on it
	BeamPost     Role = "beam post"    // under a FloorBeam, off the walls
	SillPlate    Role = "sill plate"   // on slab or stem wall
	DeckJoist    Role = "deck joist"   // of a porch's deck
	DeckGirder   Role = "deck girder"  // along the posts of a porch, under its deck's joists
	DeckRim      Role = "deck rim"     // across the outer ends of a deck's joists
	RailPost     Role = "rail post"    // of a porch's rails: no load path
	SquashBlock  Role = "squash block" // stands in a floor under a post's studs and carries what presses them
	RoofHeader   Role = "roof header"  // across the rafters that an opening in a roof cuts, as under a dormer
	ValleyBoard  Role = "valley board" // flat on a roof under a dormer's valley: its jacks stand on it
	Packing      Role = "packing"      // boards that bring a girder's face out to the studs': what they fill holds nothing
)

// Roles are the roles of members that a condition may name: those that can
// be held by a joint, which a fly rafter, a deck's rim, a post of rails, a squash block and packing are not.
var Roles = []Role{
	Stud, King, Jack, Cripple, Post, Header, Sill, BottomPlate, TopPlate, UpperPlate, Rim, Joist,
	Blocking, Ledger, Rafter, HipRafter, ValleyRafter, Ridge, Outlooker, Truss, GirderTruss, HipTruss, JackTruss, CornerJack, ValleyFrame, GirderBeam, Pile, Beam,
	PorchPost, RidgePole, PlateBeam, FlushBeam, BeamPost, SillPlate, BraceBoard, DeckJoist, DeckGirder, RoofHeader, ValleyBoard,
}

// WetRoles are the roles of members that are taken as wet where the plan does
// not say which are: they stand in the weather, in splash or over an open
// underside, and are treated.
var WetRoles = []Role{Pile, PorchPost, Beam, GirderBeam, BraceBoard}

// DeckRoles are the roles of a porch's deck: in the weather as well.
var DeckRoles = []Role{DeckJoist, DeckGirder, DeckRim, RailPost}

// FullHeight tells whether members of the role run from plate to plate and
// so carry uplift from story to story.
func (r Role) FullHeight() bool { return r == Stud || r == King || r == Post }

// TrussRoles are the roles of what a truss maker makes.
var TrussRoles = []Role{Truss, GirderTruss, HipTruss, JackTruss, CornerJack, ValleyFrame}

// IsTruss tells whether members of the role are made by a truss maker.
func (r Role) IsTruss() bool { return slices.Contains(TrussRoles, r) }
