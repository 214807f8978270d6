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
	Lie
	Rule    *plan.Rule
	Place   *plan.Place
	Purpose string
}

// Length returns the length of the steel: the cut length of a coil strap,
// else that of the item, in.
func (p *Piece) Length() float64 {
	if p.Item.Kind.Strap && p.Cut > 0 {
		return p.Cut
	}
	return p.Item.Length
}

// to returns the member that the piece's rule wants its foot fastened to, ""
// for what lies next below.
func (p *Piece) to() plan.Role {
	if p.Rule == nil {
		return ""
	}
	return p.Rule.To
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

// Of is the placement of pieces that are laid already.
func Of(house *framing.House, pieces ...*Piece) *Placement {
	p := &Placement{House: house, Pieces: pieces, byTag: map[string]*Piece{}, byJoint: map[*framing.Joint][]*Piece{}}
	for _, q := range pieces {
		p.byTag[q.Tag] = q
		p.byJoint[q.Joint] = append(p.byJoint[q.Joint], q)
	}
	return p
}

// At returns the pieces at a joint.
func (p *Placement) At(j *framing.Joint) []*Piece { return p.byJoint[j] }
