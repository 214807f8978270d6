package placement

import (
	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
)

// Piece is one length of hardware at one joint.
type Piece struct {
	// Tag is joint ID and kind word, "1S-64-SB-strap", with "-2" for a second
	// one there; unique in the house.
	Tag   string
	Joint *framing.Joint
	Item  *hardware.Item
	Face  plan.Face
	// Path is the center line of the steel from end to end, in, in space: two
	// points for a flat strap, more for one that wraps; for a clip, base or
	// cap its place; for a hold-down pair four points: foot of the lower body,
	// lower nut, upper nut, head of the upper body.
	Path []geom.Vec3
	// Station is along the joint's host from its measuring end, in; Z0 and Z1
	// are the lowest and highest height of the piece above grade, in.
	Station, Z0, Z1 float64
	Cut             float64 // length to cut from a coil, or of a hold-down's rod, in; 0 = none
	// Laps are the lengths of steel on the two members it ties, that of
	// Laid[0] first, in; zero for what is not a strap.
	Laps [2]float64
	// Laid are the members the piece is nailed or bolted to, the one held
	// down first.
	Laid    []*framing.Member
	Rule    *plan.Rule
	Place   *plan.Place
	Purpose string

	bands []band     // where the steel lies, for clashes
	other bool       // on the second of two sides that are free
	onTop bool       // lies over a break that its face does not reach: no face that does is free
	moved string     // why it is not in its first place
	gap   float64    // that the steel bridges, in
	tight bool       // a bolt for which no clear place was found
	room  [2]float64 // how far Laid[i] goes on along the steel, in; 0 = not known
}

// Length returns the length of the steel: the cut length of a coil strap,
// else that of the item, in.
func (p *Piece) Length() float64 {
	if p.Item.Kind.Strap && p.Cut > 0 {
		return p.Cut
	}
	return p.Item.Length
}

// By names the rule or place that asked for the piece and its line.
func (p *Piece) By() (name string, pos plan.Pos) {
	if p.Place != nil {
		return "engineer's place", p.Place.Pos
	}
	return p.Rule.Name, p.Rule.Pos
}

// Hole is a hole that a piece needs in a subfloor, rim or plate.
type Hole struct {
	Piece *Piece
	Level *plan.Level // whose subfloor is cut
	At    geom.Vec3   // center, at the top of the subfloor
	Size  [2]float64  // along and across the wall; equal and round for a rod
	Round bool
}

// Verdict is what became of one rule or place at one joint.
type Verdict struct {
	Rule  *plan.Rule
	Place *plan.Place
	Joint *framing.Joint
	Won   bool
	Why   string // "condition level = second does not hold", "beaten by rule ..."
}

// Placement is all hardware of a house.
type Placement struct {
	House   *framing.House
	Catalog *hardware.Catalog
	Pieces  []*Piece // in order of joint, then purpose
	Holes   []*Hole
	byTag   map[string]*Piece
	byJoint map[*framing.Joint][]*Piece
	asks    map[*framing.Joint][]*ask
	world   *world
}

// Piece returns the piece with the tag, or nil.
func (p *Placement) Piece(tag string) *Piece { return p.byTag[tag] }

// At returns the pieces at a joint.
func (p *Placement) At(j *framing.Joint) []*Piece { return p.byJoint[j] }
