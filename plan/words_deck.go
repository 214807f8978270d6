package plan

// PanelKind is what a sheathing panel is made of.
type PanelKind string

// The kinds of panels.
const (
	OSB     PanelKind = "OSB"
	Plywood PanelKind = "plywood"
)

// PanelKinds are the kinds of panels that a plan may name.
var PanelKinds = []PanelKind{OSB, Plywood}

// RoofEdge is the kind of an edge of a roof face, and of what a rafter meets
// at its ends.
type RoofEdge string

// The kinds of edges.
const (
	EaveEdge   RoofEdge = "eave"   // low, free
	RakeEdge   RoofEdge = "rake"   // sloping, free
	RidgeEdge  RoofEdge = "ridge"  // high: both faces fall away, or the free top of a shed
	HipEdge    RoofEdge = "hip"    // sloping, both faces fall away
	ValleyEdge RoofEdge = "valley" // sloping, both faces climb away
	WallEdge   RoofEdge = "wall"   // ends at a wall, or under a higher roof
)

// RoofEdges are the edges that a plan may name.
var RoofEdges = []RoofEdge{EaveEdge, RakeEdge, RidgeEdge, HipEdge, ValleyEdge, WallEdge}
