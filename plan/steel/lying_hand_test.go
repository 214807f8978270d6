package steel

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/lift"
	"galewright/plan/placement"

	"github.com/stretchr/testify/assert"
)

// What the catalog leaves out of a nail pattern: rows by the width, 3/4 in along
// a row from 1/2 in off the end, closer where the steel is short.
func TestWhatAPatternIsWhereNothingIsGiven(t *testing.T) {
	for name, c := range map[string]struct {
		f           plan.Fasteners
		width, have float64
		want        Pattern
	}{
		"one row under 2 in":  {plan.Fasteners{Count: 9}, 1.99, 18, Pattern{Count: 9, Holes: 9, Rows: 1, Spacing: 0.75, EndDist: 0.5}},
		"two rows from 2 in":  {plan.Fasteners{Count: 9}, 2, 18, Pattern{Count: 9, Holes: 9, Rows: 2, Spacing: 0.75, EndDist: 0.5}},
		"more holes to spare": {plan.Fasteners{Count: 9, Holes: 12}, 1.5, 18, Pattern{Count: 9, Holes: 12, Rows: 1, Spacing: 0.75, EndDist: 0.5}},
		// 5 in less 1/2 in at the end and 1/4 in at the bend, over eight spaces.
		"short steel": {plan.Fasteners{Count: 9}, 1.5, 5, Pattern{Count: 9, Holes: 9, Rows: 1, Spacing: 4.25 / 8, EndDist: 0.5}},
		// Two rows of five: four spaces, 6.5 - 0.75 over 4 is more than 3/4.
		"short steel of two rows": {plan.Fasteners{Count: 9}, 2.25, 6.5, Pattern{Count: 9, Holes: 9, Rows: 2, Spacing: 0.75, EndDist: 0.5}},
		"one nail on a short leg": {plan.Fasteners{Count: 1}, 1.5, 0.6, Pattern{Count: 1, Holes: 1, Rows: 1, Spacing: 0.75, EndDist: 0.5}},
		"no steel at all":         {plan.Fasteners{Count: 3}, 1.5, 0.5, Pattern{Count: 3, Holes: 3, Rows: 1, Spacing: 0.01, EndDist: 0.5}},
		"staggered by half":       {plan.Fasteners{Count: 8, Stagger: true}, 2.5, 18, Pattern{Count: 8, Holes: 8, Rows: 2, Spacing: 0.75, EndDist: 0.5, Stagger: true, Offset: 0.375}},
		"all given": {
			plan.Fasteners{Count: 8, Holes: 10, Rows: 4, Spacing: 1.5, EndDist: 1, Stagger: true, Offset: 0.5},
			1.5, 18,
			Pattern{Count: 8, Holes: 10, Rows: 4, Spacing: 1.5, EndDist: 1, Stagger: true, Offset: 0.5},
		},
	} {
		assert.Equal(t, c.want, PatternOf(hardware.End{Fasteners: c.f}, c.width, Room{Steel: c.have}), name)
	}
}

// Fasteners of one end that start at two or three places: the first take the
// odd ones.
func TestAnEndsFastenersAreSharedOut(t *testing.T) {
	e := hardware.End{Fasteners: plan.Fasteners{Count: 7, Holes: 9}}
	for n, want := range map[int][][2]int{1: {{7, 9}}, 2: {{4, 5}, {3, 4}}, 3: {{3, 3}, {2, 3}, {2, 3}}} {
		for k, w := range want {
			got := portion(e, k, n)
			assert.Equal(t, w, [2]int{got.Count, got.Holes}, "start %d of %d", k, n)
		}
	}
}

// facing is a plate of 10 in upright on a face of a wall along x.
func facing(n geom.Vec3) geom.Plate {
	return geom.Plate{A: geom.Vec3{X: 4}, B: geom.Vec3{X: 4, Z: 10}, N: n, Width: 1.5, Thickness: 0.05}
}

// Steel that goes on after the sheathing of an exterior wall lies as far out as
// the wall's panels are thick, 7/16 in where the plan has none, where it faces
// out, and nowhere else.
func TestSteelOverSheathing(t *testing.T) {
	out, inside, side := geom.Vec3{Y: -1}, geom.Vec3{Y: 1}, geom.Vec3{X: 1}
	after, before := hardware.PhaseNamed(plan.AfterSheathing), hardware.PhaseNamed(plan.BeforeSheathing)
	exterior, partition := &plan.Wall{To: geom.Vec2{X: 120}, Exterior: true}, &plan.Wall{To: geom.Vec2{X: 120}}
	paneled := &plan.Wall{To: geom.Vec2{X: 120}, Exterior: true, Shear: []*plan.Shear{{Panel: "15/32"}, {Panel: "19/32"}}}
	s := New(placement.Of(&framing.House{Plan: &plan.Plan{Walls: []*plan.Wall{exterior, partition}}}))
	for name, c := range map[string]struct {
		face  plan.Face
		phase *hardware.Phase
		wall  *plan.Wall
		moved float64
	}{
		"after sheathing":       {plan.Outside, after, exterior, 7.0 / 16},
		"the thickest panel":    {plan.Outside, after, paneled, 19.0 / 32},
		"before it":             {plan.Outside, before, exterior, 0},
		"no phase":              {plan.Outside, nil, exterior, 0},
		"inside":                {plan.Inside, after, exterior, 0},
		"a partition":           {plan.Outside, after, partition, 0},
		"a joint off the walls": {plan.Outside, after, nil, 0},
	} {
		p := &placement.Piece{
			Joint: &framing.Joint{Wall: c.wall}, Item: &hardware.Item{Phase: c.phase},
			Lie: placement.Lie{Face: c.face, Bands: []geom.Band{{facing(out), facing(side)}, {facing(inside)}}},
		}
		got := s.over(p)
		want := 0 - c.moved
		assert.Equal(t, [2]float64{want, want}, [2]float64{got[0][0].A.Y, got[0][0].B.Y}, name)
		assert.Zero(t, got[0][1].A.Y, "%s: on the side it stays", name)
		assert.Zero(t, got[1][0].A.Y, "%s: on the inside it stays", name)
		assert.Zero(t, p.Bands[0][0].A.Y, "%s: the piece is as it was", name)
	}
}

// A strap up one face of a plate, over it and down the other holds the plate
// down without a nail; one that only bends once over its edge does not, and one
// whose far end stands up does not.
func TestWhatAStrapLiesOver(t *testing.T) {
	plate := stick("plate", geom.Vec3{X: -40, Z: 96}, geom.Vec3{X: 40, Y: 5.5, Z: 97.5})
	w := NewWood([]*framing.Member{plate})
	steel := func(a, b, n geom.Vec3) geom.Plate { return geom.Plate{A: a, B: b, N: n, Width: 1.5, Thickness: 0.05} }
	edge0, edge1 := geom.Vec3{Z: 97.5}, geom.Vec3{Y: 5.5, Z: 97.5}
	up := steel(geom.Vec3{Z: 88}, edge0, geom.Vec3{Y: -1})
	over := steel(edge0, edge1, geom.Vec3{Z: 1})
	down := steel(edge1, geom.Vec3{Y: 5.5, Z: 88}, geom.Vec3{Y: 1})
	stands := steel(edge1, geom.Vec3{Y: 5.5, Z: 107}, geom.Vec3{Y: -1})
	for name, c := range map[string]struct {
		band geom.Band
		want []*framing.Member
	}{
		"over and down both sides": {geom.Band{up, over, down}, []*framing.Member{plate}},
		"from its other end":       {geom.Band{up, over, down}.Turned(), []*framing.Member{plate}},
		"bent once":                {geom.Band{up, over}, nil},
		"its far end stands up":    {geom.Band{up, over, stands}, nil},
		"its near end does":        {geom.Band{stands, turnedPlate(over), up}, nil},
	} {
		assert.Equal(t, c.want, w.under(c.band), name)
	}
}

// Holes are measured along the flat steel: on the second plate of a strap bent
// after 4 in, a nail 3 in past the bend is 7 in from its end; across is to the
// right of who looks at it with the strap running up.
func TestHolesOnTheFlatSteel(t *testing.T) {
	first := geom.Plate{A: geom.Vec3{}, B: geom.Vec3{Z: 4}, N: geom.Vec3{Y: -1}, Width: 1.5, Thickness: 0.05}
	second := geom.Plate{A: geom.Vec3{Z: 4}, B: geom.Vec3{Y: 9, Z: 4}, N: geom.Vec3{Z: 1}, Width: 1.5, Thickness: 0.05}
	b := &Body{Bands: []geom.Band{{facing(geom.Vec3{Y: -1})}, {first, second}}, Fasteners: []Fastener{
		{Head: first.At(1, 0.5), Diameter: 0.148, Band: 1},
		{Head: second.At(3, -0.25), Diameter: 0.131, Band: 1, Plate: 1},
	}}
	assert.Equal(t, second, b.PlateOf(b.Fasteners[1]))
	assert.Equal(t, 0.05, b.Steel())
	assert.Zero(t, (&Body{}).Steel())
	want := []Punched{{1, 1, 0.5, 0.148}, {1, 7, -0.25, 0.131}}
	for i, h := range b.Holes() {
		assert.InDelta(t, want[i].Along, h.Along, 1e-9)
		assert.InDelta(t, want[i].Across, h.Across, 1e-9)
		assert.Equal(t, [2]any{want[i].Band, want[i].Diameter}, [2]any{h.Band, h.Diameter})
	}
	assert.InDelta(t, 0.5, first.At(1, 0.5).X, 1e-9, "right is east for who looks north")
}

// What one piece ties: each two members that its nails hold by six diameters
// (0.888 in of a 0.148 nail), those a bend lies over, those a rod bears on, and
// the ground where the rod is cast in.
func TestWhatAPieceTies(t *testing.T) {
	stud, plate, rim, sill := &framing.Member{ID: "stud"}, &framing.Member{ID: "plate"}, &framing.Member{ID: "rim"}, &framing.Member{ID: "sill"}
	nail := func(m *framing.Member, deep float64) Fastener {
		return Fastener{Diameter: 0.148, Runs: []Run{{Member: m, From: 0.05, To: 0.05 + deep}}}
	}
	rod := func(ends ...Bearing) *Rod {
		return &Rod{Ends: [2]Bearing(ends), Passes: []Run{{Member: rim}, {Member: sill}}}
	}
	on := func(m *framing.Member) Bearing { return Bearing{Kind: OnWasher, Member: m} }
	cast, nothing := Bearing{Kind: CastIn}, Bearing{Kind: Nothing}
	for name, c := range map[string]struct {
		kind plan.JointKind
		b    Body
		want [][2]string
	}{
		"nails in two members":                              {plan.StudTop, Body{Fasteners: []Fastener{nail(stud, 1), nail(stud, 1), nail(plate, 1)}}, [][2]string{{"plate", "stud"}}},
		"nails too short in one":                            {plan.StudTop, Body{Fasteners: []Fastener{nail(stud, 1), nail(plate, 0.88)}}, nil},
		"nails just long enough":                            {plan.StudTop, Body{Fasteners: []Fastener{nail(stud, 0.888), nail(plate, 0.888)}}, [][2]string{{"plate", "stud"}}},
		"nails in nothing":                                  {plan.StudTop, Body{Fasteners: []Fastener{nail(stud, 1), {Diameter: 0.148}}}, nil},
		"over the plate":                                    {plan.StudTop, Body{Fasteners: []Fastener{nail(stud, 1)}, Over: []*framing.Member{plate}}, [][2]string{{"plate", "stud"}}},
		"three members, each two":                           {plan.StudTop, Body{Fasteners: []Fastener{nail(stud, 1), nail(plate, 1), nail(rim, 1)}}, [][2]string{{"plate", "stud"}, {"rim", "stud"}, {"rim", "plate"}}},
		"a rod into concrete":                               {plan.StudBase, Body{Rods: []*Rod{rod(on(sill), cast)}}, [][2]string{{"sill", ""}}},
		"a hold-down on such a rod":                         {plan.WallEnd, Body{Fasteners: []Fastener{nail(stud, 1)}, Rods: []*Rod{rod(Bearing{Kind: OnSeat}, cast)}}, [][2]string{{"stud", ""}}},
		"a rod from member to member":                       {plan.StudBase, Body{Rods: []*Rod{rod(on(plate), on(rim))}}, [][2]string{{"rim", "plate"}}},
		"a rod that bears on one only":                      {plan.StudBase, Body{Rods: []*Rod{rod(on(plate), nothing)}}, nil},
		"a bolt across girder and pile holds all it passes": {plan.GirderPile, Body{Rods: []*Rod{rod(on(rim), on(sill))}}, [][2]string{{"sill", "rim"}}},
		"a bolt through a third member too":                 {plan.GirderPile, Body{Rods: []*Rod{rod(on(rim), on(stud))}}, [][2]string{{"stud", "rim"}, {"sill", "rim"}, {"sill", "stud"}}},
	} {
		c.b.Piece = &placement.Piece{Tag: "tag", Joint: &framing.Joint{Kind: c.kind}}
		c.b.Bands = []geom.Band{{facing(geom.Vec3{Y: -1})}}
		var got [][2]string
		for _, tie := range c.b.Ties() {
			assert.Equal(t, "tag", tie.By, name)
			got = append(got, [2]string{tie.A.ID, idOf(tie)})
		}
		assert.Equal(t, c.want, got, name)
	}
}

// idOf names what a tie holds its first member to, "" the ground.
func idOf(tie lift.Tie) string {
	if tie.B == nil {
		return ""
	}
	return tie.B.ID
}

// Piles stand in the ground; a porch post does where a piece at its base holds
// it, and not where it stands on a girder.
func TestWhatStandsInTheGround(t *testing.T) {
	pile, post := &framing.Member{ID: "pile", Role: plan.Pile}, &framing.Member{ID: "post", Role: plan.PorchPost}
	girder := &framing.Member{ID: "girder", Role: plan.GirderBeam}
	base := func(kind plan.JointKind, members ...*framing.Member) *Body {
		return &Body{
			Piece: &placement.Piece{Tag: "base", Joint: &framing.Joint{Kind: kind, Members: members}},
			Over:  members[:1], // as good as nails that hold it
		}
	}
	for name, c := range map[string]struct {
		body *Body
		want []string
	}{
		"a post on its footing":   {base(plan.PostBase, post), []string{"pile", "post"}},
		"a post on a girder":      {base(plan.PostBase, post, girder), []string{"pile"}},
		"a post under its beam":   {base(plan.PostCap, post), []string{"pile"}},
		"a girder on its footing": {base(plan.PostBase, girder), []string{"pile"}},
	} {
		s := &Steel{Placed: &placement.Placement{House: &framing.House{Members: []*framing.Member{pile, post, girder}}}, Bodies: []*Body{c.body}}
		var got []string
		for _, tie := range s.Ties() {
			if tie.B == nil {
				got = append(got, tie.A.ID)
			}
		}
		assert.Equal(t, c.want, got, name)
	}
}

// turnedPlate is a plate from its other end.
func turnedPlate(p geom.Plate) geom.Plate { return geom.Band{p}.Turned()[0] }
