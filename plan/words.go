package plan

// Faces are the places of a member where hardware may lie.
var Faces = []string{"outside", "inside", "both", "top", "left", "right", "through"}

// ItemKinds are the kinds of hardware in the order of the load path, and
// Phases say when a piece goes on, in the order of work. Package hardware has
// the same with what they mean; a test holds it.
var (
	ItemKinds = []string{
		"clip", "ridge strap", "wrap strap", "opening strap", "strap", "coil strap", "long strap", "hold-down", "hold-down pair",
		"collector strap", "anchor bolt", "anchor rod", "post base", "post cap", "hanger", "sheathing", "generic",
	}
	Phases = []string{"before floor", "before sheathing", "after sheathing", "inside"}
)

// JointKinds are the kinds of joints a rule may name, in the order of the
// load path. Framing's list is the same; a test holds it.
var JointKinds = []string{
	"rafter-ridge", "rafter-plate", "stud-top", "opening-head", "opening-sill", "plate-splice", "collector",
	"wall-corner", "stud-stud", "wall-end", "stud-base", "post-cap", "post-base", "girder-pile",
}

// Roles are the roles of members that a condition may name: those that can
// be held by a joint. Framing's list has them all; a test holds it.
var Roles = []string{
	"stud", "king", "jack", "cripple", "post", "header", "sill", "bottom plate", "top plate", "upper plate", "rim", "joist",
	"blocking", "ledger", "rafter", "hip rafter", "valley rafter", "ridge", "outlooker", "truss", "girder", "pile", "beam",
	"porch post", "sill plate",
}

// Actions are what a place may do.
var Actions = []string{"replace", "add", "remove"}

// DeadParts lists the parts of a house that dead weights are given for.
var DeadParts = []string{"roof", "ceiling", "wall", "interior wall", "floor"}

// Species are the species combinations of NDS 2018, Table 12.3.3A, that the
// nail values know; package timber's list is the same, a test holds it.
var Species = []string{
	"Douglas fir-larch", "Douglas fir-larch (north)", "Douglas fir-south", "hem-fir", "hem-fir (north)", "spruce-pine-fir",
	"spruce-pine-fir (south)", "southern pine", "mixed southern pine", "western cedars", "western woods", "redwood",
	"eastern softwoods", "northern species",
}
