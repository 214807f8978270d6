package plan

// The words of a plan. Each has one type and is written here alone: all
// packages use these names. A new word that some package does not know is
// refused there by name, and the tests of that package ask for it.

// Words returns a list of words as plain text.
func Words[W ~string](list []W) []string {
	out := make([]string, len(list))
	for i, w := range list {
		out[i] = string(w)
	}
	return out
}

// Face is the side of a member or wall where hardware lies; "" leaves the
// choice to the item's kind.
type Face string

// The faces. Both asks for a piece on Outside and one on Inside; Left and
// Right are the sides of a stud or rafter as seen from outside; Through is
// for rods.
const (
	Outside Face = "outside"
	Inside  Face = "inside"
	Both    Face = "both"
	Top     Face = "top"
	Left    Face = "left"
	Right   Face = "right"
	Through Face = "through"
)

// Faces are the faces that a plan may name.
var Faces = []Face{Outside, Inside, Both, Top, Left, Right, Through}

// ItemKind is what a piece of hardware is; package hardware says what each
// does and where it goes.
type ItemKind string

// The kinds of items.
const (
	ClipItem           ItemKind = "clip"
	RidgeStrapItem     ItemKind = "ridge strap"
	WrapStrapItem      ItemKind = "wrap strap"
	OpeningStrapItem   ItemKind = "opening strap"
	StrapItem          ItemKind = "strap"
	CoilStrapItem      ItemKind = "coil strap"
	LongStrapItem      ItemKind = "long strap"
	HoldDownItem       ItemKind = "hold-down"
	HoldDownPairItem   ItemKind = "hold-down pair"
	CollectorStrapItem ItemKind = "collector strap"
	AnchorBoltItem     ItemKind = "anchor bolt"
	AnchorRodItem      ItemKind = "anchor rod"
	BraceRodItem       ItemKind = "brace rod"
	PostBaseItem       ItemKind = "post base"
	PostCapItem        ItemKind = "post cap"
	HangerItem         ItemKind = "hanger"
	SheathingItem      ItemKind = "sheathing"
	GenericItem        ItemKind = "generic"
)

// ItemKinds are the kinds of items in the order of the load path.
var ItemKinds = []ItemKind{
	ClipItem, RidgeStrapItem, WrapStrapItem, OpeningStrapItem, StrapItem, CoilStrapItem, LongStrapItem, HoldDownItem, HoldDownPairItem,
	CollectorStrapItem, AnchorBoltItem, AnchorRodItem, BraceRodItem, PostBaseItem, PostCapItem, HangerItem, SheathingItem, GenericItem,
}

// Phase says when a piece goes on.
type Phase string

// The phases.
const (
	BeforeFloor     Phase = "before floor"
	BeforeSheathing Phase = "before sheathing"
	AfterSheathing  Phase = "after sheathing"
	FromInside      Phase = "inside"
)

// Phases are the phases in the order of work.
var Phases = []Phase{BeforeFloor, BeforeSheathing, AfterSheathing, FromInside}

// Action is what an engineer's place does at its joints.
type Action string

// The actions. "" stands for Replace.
const (
	Replace Action = "replace" // beats what rules put there for the same purpose
	Add     Action = "add"
	Remove  Action = "remove"
)

// Actions are the actions that a plan may name.
var Actions = []Action{Replace, Add, Remove}

// RoofKind is the shape of a roof body; package roofplan knows each.
type RoofKind string

// The kinds of roofs.
const (
	GableRoof RoofKind = "gable"
	HipRoof   RoofKind = "hip"
	ShedRoof  RoofKind = "shed"
)

// RoofKinds are the kinds of roofs that a plan may name.
var RoofKinds = []RoofKind{GableRoof, HipRoof, ShedRoof}

// DormerKinds are the kinds of roofs that a dormer may have.
var DormerKinds = []RoofKind{GableRoof, ShedRoof}

// BoardsRun is the way that the boards of a deck run, seen from the house.
type BoardsRun string

// The ways; boards along the house lie square across the joists.
const (
	BoardsAlong    BoardsRun = "along"
	BoardsDiagonal BoardsRun = "diagonal"
)

// BoardRuns are the ways that a plan may name.
var BoardRuns = []BoardsRun{BoardsAlong, BoardsDiagonal}

// GableEnd says how an end of a ridge is closed.
type GableEnd string

// The ends of a ridge.
const (
	RakeEnd  GableEnd = "rake" // by a wall whose studs go up to the rafters
	TrussEnd GableEnd = "gable truss"
	HipEnd   GableEnd = "hip"
)

// GableEnds are the ends that a plan may name.
var GableEnds = []GableEnd{RakeEnd, TrussEnd, HipEnd}

// EaveBlocking is what stands between rafters over the plates of the eaves.
type EaveBlocking string

// The blocking of eaves.
const (
	NoBlocking     EaveBlocking = "none"
	FullBlocking   EaveBlocking = "full"   // from the plates to the deck, which is nailed to it
	VentedBlocking EaveBlocking = "vented" // lower than the deck: air passes over it, and it keeps rafters upright
)

// EaveBlockings are the kinds of blocking that a plan may name.
var EaveBlockings = []EaveBlocking{NoBlocking, FullBlocking, VentedBlocking}

// WallTop is what a wall's studs go up to.
type WallTop string

// The tops of walls.
const (
	PlateTop WallTop = "plate" // the level's plates
	RakeTop  WallTop = "rake"  // the rafters of a gable
)

// WallTops are the tops that a plan may name.
var WallTops = []WallTop{PlateTop, RakeTop}

// BeamSet is how the top of a beam lies to the joists that it carries.
type BeamSet string

// The ways to set a beam.
const (
	SetDropped BeamSet = "dropped" // under them: its top at their undersides
	SetFlush   BeamSet = "flush"   // between them: its top at their tops
)

// BeamSets are the ways that a plan may name.
var BeamSets = []BeamSet{SetDropped, SetFlush}

// UnderWall is what goes into a floor under an inner wall that stands along its joists.
type UnderWall string

// What may go there.
const (
	UnderNothing UnderWall = "none"
	UnderJoist   UnderWall = "double joist" // under the middle of the wall, as long as the joists are there
	UnderBlocks  UnderWall = "blocks"       // from joist to joist, in the bay that the wall stands over
)

// UnderWalls are those that a plan may name.
var UnderWalls = []UnderWall{UnderNothing, UnderJoist, UnderBlocks}

// GirderSeat is how a girder sits on its piles.
type GirderSeat string

// The seats of girders.
const (
	SeatTop     GirderSeat = "top"     // on their heads
	SeatNotch   GirderSeat = "notch"   // in a notch, the rest of the pile running up behind it
	SeatBeside  GirderSeat = "beside"  // against their sides, bolted
	SeatAstride GirderSeat = "astride" // half of its plies against each of two faces, the pile between them
)

// GirderSeats are the seats that a plan may name.
var GirderSeats = []GirderSeat{SeatTop, SeatNotch, SeatBeside, SeatAstride}

// Join says how a wall's end meets the other wall of its corner.
type Join string

// The joins of an end; "" lets the corner decide.
const (
	JoinThrough Join = "through"
	JoinButt    Join = "butt"
)

// Joins are the joins that a plan may name.
var Joins = []Join{JoinThrough, JoinButt}

// OpeningKind is what an opening is for.
type OpeningKind string

// The kinds of openings.
const (
	Window       OpeningKind = "window"
	Door         OpeningKind = "door"
	PlainOpening OpeningKind = "opening"
)

// OpeningKinds are the kinds of openings that a plan may name.
var OpeningKinds = []OpeningKind{Window, Door, PlainOpening}

// FoundationKind is what carries the lowest floor.
type FoundationKind string

// The kinds of foundations.
const (
	Piles FoundationKind = "piles" // with girders
	Slab  FoundationKind = "slab"  // on grade
	Stem  FoundationKind = "stem"  // a stem wall
)

// FoundationKinds are the kinds of foundations that a plan may name.
var FoundationKinds = []FoundationKind{Piles, Slab, Stem}

// Axis is a direction on plan.
type Axis string

// The axes.
const (
	AxisX Axis = "x" // east
	AxisY Axis = "y" // north
)

// Axes are the axes in their order: Axes[0] is x.
var Axes = []Axis{AxisX, AxisY}

// Side is the side of a rectangle on plan, by the letter of its compass
// direction.
type Side string

// The sides.
const (
	North Side = "N"
	East  Side = "E"
	South Side = "S"
	West  Side = "W"
)

// Sides are the sides that a plan may name.
var Sides = []Side{North, East, South, West}

// DeadPart is a part of the house that has a dead weight.
type DeadPart string

// The parts with dead weights.
const (
	DeadRoof         DeadPart = "roof"
	DeadCeiling      DeadPart = "ceiling"
	DeadWall         DeadPart = "wall"
	DeadInteriorWall DeadPart = "interior wall"
	DeadFloor        DeadPart = "floor"
)

// DeadParts lists the parts of a house that dead weights are given for.
var DeadParts = []DeadPart{DeadRoof, DeadCeiling, DeadWall, DeadInteriorWall, DeadFloor}

// Combination is the level at which loads are combined.
type Combination string

// The combinations; "" stands for ASD.
const (
	ASD      Combination = "asd" // allowable stress
	Strength Combination = "strength"
)

// Combinations are the combinations that a plan may name.
var Combinations = []Combination{ASD, Strength}

// SegmentShare is how the force of a line of shear walls goes to its segments.
type SegmentShare string

// The ways.
const (
	ByStiffness SegmentShare = "stiffness"
	ByLength    SegmentShare = "length"
)

// SegmentShares are the ways that a plan may name.
var SegmentShares = []SegmentShare{ByStiffness, ByLength}

// Distribution is how lateral load goes to the lines of shear walls.
type Distribution string

// The distributions; "" stands for Tributary.
const (
	Tributary Distribution = "tributary" // by tributary width
	Stiffness Distribution = "stiffness"
)

// Distributions are the distributions that a plan may name.
var Distributions = []Distribution{Tributary, Stiffness}

// Species are the species combinations of NDS 2018, Table 12.3.3A, that the
// nail values know; package timber's list is the same, a test holds it.
var Species = []string{
	"Douglas fir-larch", "Douglas fir-larch (north)", "Douglas fir-south", "hem-fir", "hem-fir (north)", "spruce-pine-fir",
	"spruce-pine-fir (south)", "southern pine", "mixed southern pine", "western cedars", "western woods", "redwood",
	"eastern softwoods", "northern species",
}
