package plan

import (
	"galewright/plan/geom"
	"galewright/plan/units"
)

// Pos is a place in a plan file; line and column start at 1.
type Pos struct {
	File      string
	Line, Col int
}

// Plan is one checked plan.
type Plan struct {
	File          string // as given on the command line
	Project       Project
	Site          Site
	Levels        []*Level // lowest first
	Walls         []*Wall  // as written
	Roofs         []*Roof
	Dormers       []*Dormer
	Foundation    Foundation
	Girders       []*Girder
	Braces        []*Brace
	Breakaways    []*Breakaway
	FloorOpenings []*FloorOpening // stairs
	FloorJoists   []*FloorJoist   // beside those at the spacing
	FloorBlocks   []*FloorBlocks
	Porches       []*Porch
	Beams         []*FloorBeam
	Items         []*Item // the catalog, in the order written
	Rules         []*Rule
	Places        []*Place
	Nailing       []*NailLine // between members, in the order of NailedConnections
	Lumber        LumberYard
	Loads         Loads
	Salt          Salt
	Treated       []*TreatedWood
	Deck          *Deck      // nil where the plan says nothing of it
	FloorDeck     *FloorDeck // nil where the plan says nothing of it
	Lay           Lay        // how the house lies against what is written: choices that have a hand are made as there
}

// Assumption is a key that the plan left out, with the value taken as a plan
// writes it.
type Assumption struct{ Key, Value string }

func (a Assumption) String() string { return a.In(units.Imperial) }

// In is the assumption in the words of a system.
func (a Assumption) In(u units.System) string { return a.Key + " = " + u.Literal(a.Value) }

// Loads is how the load path is computed.
type Loads struct {
	Combination  Combination
	Distribution Distribution
	Segments     SegmentShare
	Wet          []Role  // roles of members taken as wet when nailed or in service; WetRoles when the plan says none
	Dead         []Dead  // dead weights that stand for the defaults of their part
	FloorLive    float64 // live load of floors, psf
	Pos          Pos
}

// Dead is one item of dead weight.
type Dead struct {
	Part   DeadPart
	Name   string  // "asphalt shingles"
	Weight float64 // psf of the part's own surface
	Pos    Pos
}

// Project is what the title block says.
type Project struct {
	Name, Number, Site string
	Date               string // ISO, from the plan
	Revision           string // "0" when the plan says none
	DrawnBy, CheckedBy string
	Engineer           string // engineer of record, as a title or a role
	Notes              []string
	Units              units.System // of everything that is printed; lengths inside are inches all the same
	Pos                Pos
}

// Site is the wind basis. Loads use it; sheets print it.
type Site struct {
	WindSpeed float64 // basic wind speed V, 3 s gust, mph
	Exposure  Exposure
	Risk      Risk
	Edition   Edition
	Enclosure Enclosure
	Procedure Procedure // asked for; "" = what the building allows
	Kzt       float64   // topographic factor, default 1
	Elevation float64   // of grade above sea level, ft
	Shore     float64   // distance of salt water, ft; 0 = not given
	Pos       Pos
	Assumed   []Assumption // of the keys that the plan left out
}

// Level is one story: its floor, and the walls that stand on it.
type Level struct {
	Name        string
	Index       int       // 0 is the lowest
	Floor       float64   // top of subfloor above grade
	PlateHeight float64   // top of subfloor to top of the double top plate
	FloorDepth  float64   // subfloor and joists below Floor
	Subfloor    float64   // thickness of the subfloor
	Joists      Lumber    // zero when the floor is a slab
	JoistSpace  float64   // on center
	JoistRun    Axis      // the way the joists run
	Rim         float64   // thickness of the rim board
	Under       UnderWall // what goes under its inner walls along the joists
	Pos         Pos
}

// Top returns the height of the top of the level's plates above grade.
func (l *Level) Top() float64 { return l.Floor + l.PlateHeight }

// Lumber is a dressed section: ply pieces of breadth by depth.
type Lumber struct {
	Ply     int
	Breadth float64 // of one ply
	Depth   float64
	Text    string // as written, "3-2x10"
}

// Width returns the breadth of all plies together.
func (l Lumber) Width() float64 { return float64(l.Ply) * l.Breadth }

// Roof is one roof body over a rectangle of a level's walls. Bodies over one
// level meet in valleys: the roof is the upper envelope of all of them.
type Roof struct {
	Name         string
	Over         *Level
	Kind         RoofKind
	Area         [2]geom.Vec2 // outside faces of bearing and gable walls: low and high corner
	Ridge        Axis         // the way the ridge runs; for a shed, along the high wall
	High         Side         // shed: side of the high wall
	Pitch        float64      // rise in 12 of run
	PitchOther   float64      // of the other side of an unequal gable; 0 = Pitch
	Overhang     float64      // horizontal, at eaves, from the studs' outside face
	Rake         float64      // horizontal, at gable ends
	Rafters      Lumber
	Spacing      float64
	Layout       *float64 // place along the ridge, from the outside face of its low end, where the module of the rafters starts, in; nil = by the shape of the roof
	RidgeMember  Lumber
	RidgeBearing bool    // the ridge member is a beam that carries, not a board
	RidgeStock   float64 // longest piece of a ridge board; 0 = the longest stock
	Trusses      bool
	// HipGirder is how far in from the outside face of a hip end's wall the middle of the
	// outer ply of its girder truss stands, in; 0 = by the rule.
	HipGirder      float64
	HipGirderPlies int         // of it
	GableEnd       [2]GableEnd // at low and high end of the ridge
	CeilingTies    bool        // ceiling joists or ties at the plate
	Ceiling        Lumber      // the ceiling joists; zero reads as 2x6
	CeilingSpace   float64     // of the ceiling joists, on center; 0 = at each pair of rafters
	// CeilingSplice is how far the piece beside a break of a ceiling joist laps each
	// of the two that meet there, in; 0 = none between bearings.
	CeilingSplice float64
	Posts         []*RidgePost // under the ridge, in the order of the plan
	Blocking      EaveBlocking // between the rafters over the plates of the eaves
	BlockingSet   *float64     // of its outer face back from the outside face of the plates, in; nil = flush with their inside face
	Pos           Pos
}

// RidgePost is a post in one length from its footing up to the underside of a ridge.
type RidgePost struct {
	At     float64 // along the ridge, from the outside face of the wall at its low end, in
	Member Lumber
	Base   float64 // its foot above grade, in
	Pos    Pos
}

// Foundation is what carries the lowest floor.
type Foundation struct {
	Kind    FoundationKind
	Pile    Lumber // section of a pile
	PileTop float64
	Sill    Lumber // sill plate on slab or stem wall
	Pos     Pos
}

// FloorOpening is an opening in a floor, as for a stair, with a header joist across
// the ends of those that it cuts, and trimmer joists along its sides.
type FloorOpening struct {
	Name            string
	Level           *Level    // in whose floor it is
	Lo, Hi          geom.Vec2 // southwest and northeast corners of the clear opening
	Header, Trimmer Lumber    // Depth 0 where the plan leaves them to the rule
	Pos             Pos
}

// FloorJoist is a joist of a floor beside those at the spacing, such as a doubled one
// under a wall, or one that carries a shear wall's line on.
type FloorJoist struct {
	Name     string
	Level    *Level    // in whose floor it is
	From, To geom.Vec2 // center line, along the joists
	Member   Lumber    // Depth 0 reads as one of the level's joists
	Pos      Pos
}

// FloorBlocks is a row of blocks between the joists of a floor, square across them.
type FloorBlocks struct {
	Name     string
	Level    *Level    // in whose floor they are
	From, To geom.Vec2 // center line
	Pos      Pos
}

// Girder is a beam or stringer on piles under the lowest floor.
type Girder struct {
	Name     string
	From, To geom.Vec2 // center line
	Member   Lumber
	Piles    []float64 // stations of pile centers from From
	Seat     GirderSeat
	// Notch is how deep it is cut into its piles, in: one cut in a notch, one on each
	// side astride, where 0 is none. NotchHeight is how far the wood behind the notch
	// goes up from the seat, in.
	Notch, NotchHeight float64
	// Packing is the thickness of the boards on its right face, seen from its start
	// to its end, that bring it out to the faces of what stands over it, in.
	Packing float64
	Pos     Pos
}

// Porch is a post and beam porch.
type Porch struct {
	Name     string
	From, To geom.Vec2 // outside face of the beam
	Beam     Lumber
	Post     Lumber
	Posts    []float64 // stations of post centers
	Base     float64   // height of the posts' foot
	Top      float64   // height of the beam's top
	Piles    bool      // the posts are piles that go up in one piece: no foot, embedment by the engineer
	Deck     *PorchDeck
	Pos      Pos
}

// PorchDeck is the deck of a porch: joists from a ledger on the house's rim to a girder
// along the inside of the posts.
type PorchDeck struct {
	Level  *Level  // beside whose floor it lies
	Top    float64 // of its boards, above grade, in
	Joists Lumber
	Space  float64 // of the joists, on center
	Girder Lumber
	Board  float64   // thickness of its boards, in
	Boards BoardsRun // the way they run
	Rail   float64   // greatest distance of the posts of its rails, in; 0 = no rails
	Pos    Pos
}

// FloorBeam is a beam that carries the joists of a floor or ceiling over a level:
// dropped under them, its top flush with the level's top plates, or flush with
// them, so that they are cut at its faces and hung from it.
type FloorBeam struct {
	Name     string
	Level    *Level // at or on whose top plates it lies
	Set      BeamSet
	From, To geom.Vec2 // center line; the ends are cut to the faces of walls, or of the rim, that they reach
	Member   Lumber
	Posts    []float64 // stations of the centers of posts under it, from From, in
	Post     Lumber    // section of those
	Pos      Pos
}

// LumberYard is what the yard stocks.
type LumberYard struct {
	Plate   float64   // longest plate, default 16 ft
	Stud    float64   // longest stud, default 20 ft
	Stock   []float64 // stock lengths, default 8 to 20 ft by 2 ft
	Species string    // for nail values, "southern pine" and so on
	Tension float64   // Ft of the posts at shear wall ends, psi; 0 = of No. 2 of the species
	Pos     Pos
}
