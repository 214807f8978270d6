package framing

import (
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
	"galewright/plan/units"
)

// Member is one stick of lumber where it stands.
type Member struct {
	ID      string // stable: wall or roof, role and station, "1S/king@63.25"
	Role    plan.Role
	Wall    *plan.Wall  // nil for floor, roof and foundation members; a rim, ledger or sill plate names the wall it runs along
	Level   *plan.Level // of the wall or floor it belongs to
	Roof    *plan.Roof
	Opening *plan.Opening // of a king, jack, cripple, header or sill
	Section plan.Lumber   // dressed section
	Length  float64       // cut length, long point to long point, in
	// S0, S1 and Z0, Z1 are its extent along its wall (stations, in) and in
	// height above grade (in). For members without a wall S0, S1 are zero.
	S0, S1, Z0, Z1 float64
	// Bevel is the angle off square, degrees, at which a member of a mitered wall
	// is cut: a plate at its end, a stud ripped along its length; 0 for none.
	Bevel float64
	// A and B are the ends of its center line (for rafters: along the top
	// edge, low end first).
	A, B geom.Vec3
	// Flat are the ends of the level top chord of a hip or girder truss, on its outer
	// arris, which lies in the end's slope; zero of all else.
	Flat  [2]geom.Vec3
	Solid []geom.Solid // convex parts that touch but do not overlap
	// Ref is the number or letter by which sheets speak of it, such as a
	// rafter's number on the roof plan; "" for none.
	Ref string
}

// Mid returns the station of the middle of the member.
func (m *Member) Mid() float64 { return (m.S0 + m.S1) / 2 }

// Joint is a place where members meet and force must cross.
type Joint struct {
	// ID is host, station and kind code, "1S-64-SB": made from the wall (or
	// roof, girder, porch), the member's place rounded to the inch, and the
	// kind, never from a running count. Unique in the house.
	ID    string
	Units units.System // of what is said of it: its plan's
	Kind  plan.JointKind
	Host  string      // name of the wall, roof, girder or porch; a second ridge is "main/ridge2", a hip "main/hipSW"
	Wall  *plan.Wall  // nil when the host is none
	Level *plan.Level // of the wall
	Roof  *plan.Roof
	// Station is along the wall from its start (ridge joints: along the
	// ridge; those at hips and valleys: on plan from its low end; girder
	// joints: along the girder), in.
	Station float64
	// Members that meet, the one that is held down first: rafter before
	// plate, upper stud before lower stud, stud before plate, then what it
	// passes.
	Members []*Member
	At      geom.Vec3 // the point where they meet
	// Offset is, for stud-stud, how far the center of the stud below stands
	// from the center of the stud above along the wall, in. Below is false
	// when there is nothing below to tie to.
	Offset float64
	Below  bool
	// Gap is the height or length a strap must bridge between the members it
	// laps, in: 0 where they touch; for ledger-wall the sheathing behind the ledger; for stud-stud plates, subfloor, joists
	// and plate; for stud-base the bottom plate and what lies between it and
	// the lapped face of the member below.
	Gap float64
	// Around is the second wall of what leans on a corner of the house, with the station on
	// it: each of the two walls takes half. Nil of all else.
	Around   *plan.Wall
	AroundAt float64 // in
	// Step is, for a plate-splice where two walls go on in one line, how much higher the
	// plates of one lie, in: nothing that lies on them ties one to the other then.
	Step float64
	// Faces are those at which a piece reaches the members, where not all do:
	// a break in a lower top plate is covered by the upper plate, that of the
	// upper is open at its top.
	Faces []plan.Face
	// Seat says of a girder on a pile how the two sit; "" for other joints.
	Seat Seat
	// Share is that of the rafter, hip, valley or half of a truss that a
	// rafter-plate joint holds; nil of other kinds.
	Share *Share
	// Overhang is what an outlooker of a gable overhang serves, at its joints; nil
	// of other kinds.
	Overhang *Overhang
	// Dormer is that of whose roof or walls the joint is one; nil of other joints.
	Dormer *Dormer
	// Brace is where what braces piles is bolted, at its joints; nil of other kinds.
	Brace *Bracing
	// Peak is true where the tops of hips lean on each other without a ridge:
	// none of them carries another.
	Peak bool
	// Tributary is the joint's share: rafter and stud joints the length of
	// wall or ridge it serves, in. The width of roof that a rafter serves is
	// its Share's, which reaches past the wall under a rake.
	Tributary float64
}

// Bracing is how the end of a brace, or a rod between two piles, lies.
type Bracing struct {
	Name string
	// Out is the way out of the face that a brace's end lies on, unit; a bolt goes in
	// against it. Zero of a rod.
	Out geom.Vec3
	// A and B are where a rod's line is over the middles of its piles, the lower first.
	A, B geom.Vec3
}

// Overhang is the piece of a gable overhang that one outlooker carries, on
// plan, in.
type Overhang struct {
	Space float64 // up the slope: half way to its neighbors, of the outer ones to the roof's edge
	Out   float64 // from the middle of the end rafter or gable truss to the edge of the roof
	Back  float64 // from there in to the middle of the rafter that its inner end is fastened to; 0 for a rung
}

// Seat is how a girder sits on a pile.
type Seat string

// The seats.
const (
	OnTop   Seat = "on top"  // its underside on the pile's head
	Clear   Seat = "clear"   // over the pile, with a gap between
	Beside  Seat = "beside"  // the pile's side against its side
	Notched Seat = "notched" // in a notch of the pile
	Astride Seat = "astride" // half of it on each of two faces of the pile
	Apart   Seat = "apart"   // its end is cut back and does not reach the pile
)

// First returns the member the joint holds, or nil.
func (j *Joint) First() *Member {
	if len(j.Members) == 0 {
		return nil
	}
	return j.Members[0]
}

// Place returns the joint's host and its home sheet: of a kind that stands on roofs and
// elsewhere too, as a post's head, the roof where it has one.
func (j *Joint) Place(onWall bool) plan.JointPlace {
	if p, ok := j.Kind.At(plan.DormerHost); ok && j.Dormer != nil && !onWall {
		return p
	}
	if p, ok := j.Kind.At(plan.RoofHost); ok && j.Roof != nil && !onWall {
		return p
	}
	return j.Kind.Place(onWall)
}

// HostName says what the joint's host is: "wall 1S".
func (j *Joint) HostName() string {
	if j.Wall != nil {
		return string(plan.WallHost) + " " + j.Host
	}
	if h := j.Place(false).Host; h != "" {
		return string(h) + " " + j.Host
	}
	return j.Host
}

// House is a framed plan.
type House struct {
	Plan      *plan.Plan
	Members   []*Member   // in order of wall as written, then floors, roofs, foundation
	Joints    []*Joint    // in order of host and station
	Lines     []*Line     // wall stacks, for drawing and for load paths
	Roof      []*Face     // roof surfaces
	Ties      []*Tie      // ceiling joists, by roof and place
	TrussEnds []*TrussEnd // hip ends of truss roofs, and mouths of wings with a girder truss
	Shares    []*Share    // what carries the roof, in order of Members
	Blocks    []*Block    // between rafters at the eaves, by roof, wall and station
	Added     []*Added    // joists and blocks that the plan adds to floors, by floor
	Beams     []*Beam     // of floors and ceilings: the dropped ones, then the flush ones
	Dormers   []*Dormer   // by roof, as written
	walls     *inWalls    // see In
}

// Roofs returns the roofs of the plan, then those of its dormers.
func (h *House) Roofs() []*plan.Roof {
	out := slices.Clone(h.Plan.Roofs)
	for _, d := range h.Dormers {
		out = append(out, d.Own)
	}
	return out
}

// Added is a joist that the plan adds to a floor, in its pieces, or a row of blocks.
type Added struct {
	Name    string
	Level   *plan.Level
	Blocks  bool
	Members []*Member
}

// Beam is a beam that carries joists, with what carries it.
type Beam struct {
	*plan.FloorBeam
	Frame    geom.Frame  // along its center line, from the plan's point From, in from its left
	Carries  *plan.Level // whose floor's joists hang on it; nil of a dropped one, on which all lie that cross it
	Pieces   []*Member   // from its beginning on, end to end
	Supports []BeamSupport
}

// BeamSupport is what carries a beam at a place.
type BeamSupport struct {
	Along   float64 // along the beam, from the plan's point From, in
	At      geom.Vec3
	On      *Member    // post, plate, upright or piece of another beam
	Seat    bool       // it lies on that; else it hangs from its side
	Wall    *plan.Wall // of that; nil of a post and of a beam
	Beam    *Beam      // of that; nil of all else
	Station float64    // along the wall or beam, in
}

// Story returns the level that a joint belongs to, nil for none: in a wall whose studs
// pass a floor that of the story in which it is, so that the wall's top is one of the
// upper story and its foot one of the lower.
func (h *House) Story(j *Joint) *plan.Level {
	story := j.Level
	if story == nil || j.Wall == nil || !j.Wall.Balloon() {
		return story
	}
	for _, l := range h.Plan.Levels {
		if l.Index > story.Index && j.Wall.On(l) && j.At.Z > l.Floor {
			story = l
		}
	}
	return story
}

// Tie is a ceiling joist: what holds the feet of a pair of rafters together.
type Tie struct {
	Roof    *plan.Roof
	Along   float64    // place along the ridge, from the outside face of its low end, in
	Rafters [2]*Member // that it is nailed beside
	Pieces  []*Member  // from the first rafter to the second, end to end
	// Splices lie beside the breaks, one less than the pieces; none of them where it is
	// cut at a flush beam and hangs on that.
	Splices []*Member
	Walls   []TieWall // bearing walls that it crosses between its ends, from the first rafter
	Beams   []TieBeam // beams that it lies on or hangs on between its ends, from the first rafter
}

// TieBeam is a beam that carries a ceiling joist, between its ends.
type TieBeam struct {
	Beam    *Beam
	Station float64 // along the beam, from the plan's point From, in
	Along   float64 // along the joist, from the outside face of the wall under its first rafter, in
}

// Block is a block between two rafters over the plates of an eave.
type Block struct {
	Member  *Member
	Plate   *Member    // upper plate or porch beam that it stands on
	Wall    *plan.Wall // of that plate; nil over a porch beam
	Rafters [2]*Member // whose bearings it stands between
	Station float64    // of its middle along the wall or beam, in
	Full    bool       // up to the deck, which is nailed to it
}

// TieWall is a bearing wall under a ceiling joist, between its ends.
type TieWall struct {
	Wall    *plan.Wall
	Station float64 // along the wall, in
	Along   float64 // along the joist, from the outside face of the wall under its first rafter, in
}

// Splices tells whether m lies beside a break of a ceiling joist.
func (h *House) Splices(m *Member) bool {
	return slices.ContainsFunc(h.Ties, func(t *Tie) bool { return slices.Contains(t.Splices, m) })
}

// Line is a stack of walls in one vertical plane, lowest first: the unit of
// an elevation and of a chain from ridge to foundation.
type Line struct {
	Name  string // of its lowest wall, or "1S/2S"
	Walls []*plan.Wall
	Frame geom.Frame // of the lowest wall; all stations of the line use it
	// Shift[i] is added to a station of Walls[i] to give a station of the line.
	Shift []float64
}

// Face is one plane of the roof, its outline on plan counterclockwise
// including overhangs.
type Face struct {
	Roof    *plan.Roof
	Outline []geom.Vec3
	Slope   geom.Vec2 // unit, downhill
	Edges   []FaceEdge
	// levelFrom is where on the way up the level tops of hip trusses begin to carry it,
	// along -Slope; nil where none do.
	levelFrom *float64
}

// FaceEdge is one edge of a Face: Outline[i] to Outline[i+1].
type FaceEdge struct {
	Kind roofplan.EdgeKind
}
