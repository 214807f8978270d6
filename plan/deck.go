package plan

// Deck is the sheathing of all roofs: its panels and their nails. Lengths are
// inches.
type Deck struct {
	Panel string // thickness, "19/32"
	Kind  PanelKind
	Nailing
	Zones []NailZone // a later one overrides an earlier one
	Pos   Pos
}

// FloorDeck is the nailing of the panels of all floors, which are as thick as each
// level's subfloor. Lengths are inches.
type FloorDeck struct {
	Kind  PanelKind
	Nail  string  // as written: "10d common"
	Edge  float64 // on center along the ends of panels, over rims and along the floor's edge
	Field float64 // on center over the joists between
	Pos   Pos
}

// Nailing is a nail and its spacings.
type Nailing struct {
	Nail  string  // as written: "8d common", "ring 0.113 x 2 3/8"
	Head  float64 // diameter of its head; 0 = that of the standard nail
	Rings float64 // length of the ringed shank from the tip; 0 = smooth
	Edge  float64 // on center along the ends of panels and over hips and valleys
	Field float64 // on center over the rafters between
	Gable float64 // on center into the framing over a gable end; 0 = Edge
}

// NailZone is a part of the deck with nails of its own spacing.
type NailZone struct {
	Near    []RoofEdge // within Within of any of these
	Within  float64    // on plan, from the edge of the roof
	Corners bool       // only where two kinds of edges in Near are both that near
	Edge    float64
	Field   float64
	Pos     Pos
}
