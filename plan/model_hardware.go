package plan

// Fasteners says which nails one part of an item takes.
type Fasteners struct {
	Part     string  // "each end", "to stud", "to plate", "all"
	Nail     string  // as written: "10d x 1 1/2", "8d common", "bolt 5/8"
	Diameter float64 // in
	Length   float64 // in
	Count    int     // in one such part
	Parts    int     // how many such parts one piece has (2 for "each end")
	HandOnly bool
	Coating  Coating // "" = not given
	Rows     int
	Spacing  float64 // along a row
	EndDist  float64 // from the end of the steel to the first hole
	Stagger  bool
	Offset   float64 // of the first hole of every other row when staggered, beyond EndDist; 0 = half the spacing
	Holes    int     // holes the part has; 0 = as many as Count
	Fill     string  // which holes take a nail, in plain words: "every hole", "every second hole"
	Pos      Pos
}

// Total returns the fasteners in one piece.
func (f Fasteners) Total() int { return f.Count * f.Parts }

// Load is an allowable load given by the maker.
type Load struct {
	Uplift, Along, Across float64 // lb, allowable stress level, wind duration; 0 = not given
	Down                  float64 // lb, allowable stress level, duration of floors, on what is hung; 0 = not given
	Source                string  // edition and date of the maker's page
	Pos                   Pos
}

// Item is one catalog entry as written.
type Item struct {
	Mark       string
	Kind       ItemKind
	Note       string
	Length     float64 // along the steel
	Width      float64
	Thickness  float64 // of the steel, from gauge or inches
	Gauge      string  // as written
	Grade      string
	Coating    Coating // of the piece, of a bolt or rod of all that turns on it; "" = not given
	RodCoating Coating // of the rod of a hold-down, its nuts and washers
	Fasteners  []Fasteners
	Lap        float64 // wanted on each member
	// Legs are the lengths of the two legs of a bent piece, out from the fold,
	// that on the member held first; zero where the catalog does not say.
	Legs     [2]float64
	Rod      float64 // diameter of rod or bolt
	Washer   float64 // side of a square plate washer
	Center   float64 // of a hold-down: from the wood it is nailed to, to the middle of its rod
	Standoff float64 // rod length inside one body, from the wood it stands on to the nut
	Bodies   int     // of a hold-down: 1 or 2
	Coil     float64 // roll length when the strap comes on a coil
	Phase    Phase   // "" = that of the kind
	Face     Face    // default face
	Minutes  float64 // to install one
	Pack     int     // pieces in a pack
	Load     Load
	Broken   bool // a key of it could not be read: what follows from that is no fault
	Pos      Pos
}

// Rule puts an item at every joint of a kind where its conditions hold.
type Rule struct {
	Name    string
	At      JointKind
	Use     string  // mark
	Purpose string  // two rules with one purpose compete at a joint; default: the purpose of the item's kind (hardware.Kind)
	Face    Face    // overrides the item's
	To      Role    // of a strap at a stud's base: the member it is fastened to at its foot; "" = what lies next below
	Count   int     // pieces at one joint, default 1
	Every   int     // every nth joint along a wall or ridge, default 1
	AtMost  float64 // on center: skip joints nearer to the last one than this allows; 0 = each
	Where   Where
	Except  []Where
	Pos     Pos
}

// Where is a set of conditions that must all hold. Zero fields ask nothing.
type Where struct {
	Level    []string
	Wall     []string
	Roof     []string
	Girder   []string // of a joint on a girder
	Exterior *bool
	Bearing  *bool
	LinesUp  *bool
	Role     []Role     // of the joint's first member: stud, king, jack, post, ...
	Against  []Role     // role of a member that the first one meets: ridge, hip rafter, rim, ...
	Stud     []string   // "2x6"
	Spacing  [2]float64 // on center, from and to; zero = any
	Corner   [2]float64 // distance of the joint from the nearer wall end, from and to
	Opening  [2]float64 // distance from the nearest opening's edge
	Height   [2]float64 // above the subfloor
	// OpeningWidth is the width of the rough opening the joint belongs to.
	OpeningWidth [2]float64
	EndZone      *bool          // within the wind's end zone (distance a of ASCE 7) of a building corner
	Covered      *bool          // by another wall or member against the outside face, at the foot of what is held
	Shear        *bool          // within a shear wall segment
	Balloon      *bool          // of a wall whose studs pass a floor
	From, To     float64        // stations along the wall; To 0 = to the end
	Given        map[string]Pos // which keys the plan gave
}

// Place is an item the engineer put himself.
type Place struct {
	Use    string
	Wall   string
	Roof   string
	Girder string
	Porch  string
	On     JointKind // "" = the item kind's own
	At     []float64 // stations
	AtPos  []Pos     // place of each station
	Action Action    // "" = Replace
	Face   Face
	Count  int    // pieces at each station, default 1
	Note   string // "S4 detail 7": the engineer's own reference
	Pos    Pos
}
