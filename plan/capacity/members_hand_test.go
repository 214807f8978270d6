package capacity

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/steel"
	"galewright/plan/timber"

	"github.com/stretchr/testify/assert"
)

// A nail meant for one member counts in another only where that goes on from it
// or lies on it: both top plates, plates and beams end to end. Another stud, rafter,
// truss or header beside it carries its own force.
func TestWhichMemberIsAsGood(t *testing.T) {
	of := func(r plan.Role) *framing.Member { return &framing.Member{Role: r} }
	for _, c := range []struct {
		in, meant plan.Role
		good      bool
	}{
		{plan.TopPlate, plan.UpperPlate, true},
		{plan.UpperPlate, plan.TopPlate, true},
		{plan.TopPlate, plan.TopPlate, true},
		{plan.BottomPlate, plan.BottomPlate, true},
		{plan.Rim, plan.Rim, true},
		{plan.BottomPlate, plan.TopPlate, false},
		{plan.SillPlate, plan.SillPlate, true},
		{plan.GirderBeam, plan.GirderBeam, true},
		{plan.Beam, plan.Beam, true},
		{plan.Ridge, plan.Ridge, true},
		{plan.Ledger, plan.Ledger, true},
		{plan.Beam, plan.GirderBeam, false},
		{plan.Rim, plan.Blocking, false},
		{plan.Blocking, plan.Blocking, false},
		{plan.Truss, plan.Truss, false},
		{plan.HipRafter, plan.HipRafter, false},
		{plan.ValleyRafter, plan.ValleyRafter, false},
		{plan.Outlooker, plan.Outlooker, false},
		{plan.Header, plan.Header, false},
		{plan.Sill, plan.Sill, false},
		{plan.PorchPost, plan.PorchPost, false},
		{plan.Pile, plan.Pile, false},
		{plan.Stud, plan.Stud, false},
		{plan.King, plan.King, false},
		{plan.Jack, plan.Jack, false},
		{plan.Cripple, plan.Cripple, false},
		{plan.Joist, plan.Joist, false},
		{plan.Rafter, plan.Rafter, false},
	} {
		assert.Equal(t, c.good, together(of(c.in), of(c.meant)), "a nail for the %s in a %s", c.meant, c.in)
	}
	one := of(plan.Stud)
	assert.True(t, together(one, one), "the member itself")
}

// How much wood is behind a face: a stud nailed on its edge has its depth, on
// its side its breadth; a plate nailed on its edge its depth, on its end nothing.
func TestWoodBehindAFace(t *testing.T) {
	six := plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 5.5}
	wall := &plan.Wall{}
	for _, c := range []struct {
		name string
		m    *framing.Member
		face plan.Face
		want float64
	}{
		{"a stud's edge", &framing.Member{Role: plan.Stud, Wall: wall, Section: six}, plan.Outside, 5.5},
		{"a stud's side", &framing.Member{Role: plan.Stud, Wall: wall, Section: six}, plan.Left, 1.5},
		{"a built-up post's side", &framing.Member{Role: plan.King, Wall: wall, Section: plan.Lumber{Ply: 3, Breadth: 1.5, Depth: 5.5}}, plan.Right, 4.5},
		{"a post off the walls", &framing.Member{Role: plan.Stud, Section: six}, plan.Outside, 1.5},
		{"a jack is no full height", &framing.Member{Role: plan.Jack, Wall: wall, Section: six}, plan.Outside, 1.5},
		{"a plate's edge", &framing.Member{Role: plan.TopPlate, Section: six}, plan.Inside, 5.5},
		{"a plate's end", &framing.Member{Role: plan.UpperPlate, Section: six}, plan.Left, 0},
		{"a bottom plate's end", &framing.Member{Role: plan.BottomPlate, Section: six}, plan.Right, 0},
		{"a sill plate's edge", &framing.Member{Role: plan.SillPlate, Section: six}, plan.Outside, 5.5},
		{"a rim", &framing.Member{Role: plan.Rim, Wall: wall, Section: plan.Lumber{Ply: 1, Breadth: 1.125, Depth: 11.25}}, plan.Outside, 1.5},
		{"what has no section", &framing.Member{Role: plan.Stud, Wall: wall}, plan.Outside, 0},
		{"nothing", nil, plan.Outside, 0},
	} {
		assert.Equal(t, c.want, across(c.m, c.face), c.name)
	}
}

// A strap pulls along its steel; a clip lifts, and endways pulls along its leg.
func TestWhichWayAPiecePulls(t *testing.T) {
	slope := geom.Plate{A: geom.Vec3{}, B: geom.Vec3{X: 8, Z: 6}, N: geom.Vec3{Y: -1}}
	along, upward := geom.Vec3{X: 0.8, Z: 0.6}, geom.Vec3{Z: 1}
	for _, c := range []struct {
		kind plan.ItemKind
		dir  Direction
		want geom.Vec3
	}{
		{plan.StrapItem, Upward, along},
		{plan.StrapItem, Endways, along},
		{plan.ClipItem, Upward, upward},
		{plan.ClipItem, Endways, along},
		{plan.HoldDownItem, Upward, upward},
	} {
		b := &steel.Body{Piece: &placement.Piece{Item: &hardware.Item{Item: &plan.Item{}, Kind: hardware.KindNamed(c.kind)}}, Bands: []geom.Band{{slope}}}
		assert.InDelta(t, 0, force(b, steel.Fastener{}, c.dir).Sub(c.want).Len(), 1e-9, "%s, way %d", c.kind, c.dir)
	}
}

// Which fastener of the tables a catalog's words mean.
func TestFastenersOfTheTables(t *testing.T) {
	for name, c := range map[string]struct {
		size hardware.Nail
		kind timber.FastenerKind
		d    float64
		ok   bool
	}{
		"a nail":                    {hardware.Nail{Name: "10d common", Diameter: 0.148, Length: 3}, timber.NailKind, 0.148, true},
		"a screw by its number":     {hardware.Nail{Name: "No. 14 x 3", Diameter: 0.242, Length: 3}, timber.WoodScrew, 0.242, true},
		"a screw by its size":       {hardware.Nail{Name: "screw 0.25 x 3", Diameter: 0.25, Length: 3}, timber.WoodScrew, 0.25, true},
		"a bolt":                    {hardware.Nail{Name: "bolt 3/4 x 8", Diameter: 0.75, Length: 8}, timber.BoltKind, 0.75, true},
		"a rod is a bolt":           {hardware.Nail{Name: "rod 5/8", Diameter: 0.625, Length: 12}, timber.BoltKind, 0.625, true},
		"a lag":                     {hardware.Nail{Name: "lag 3/8 x 4", Diameter: 0.375, Length: 4}, timber.LagScrew, 0.375, true},
		"a nail of unknown bending": {hardware.Nail{Name: "0.06 x 1 1/2", Diameter: 0.06, Length: 1.5}, "", 0, false},
	} {
		f, err := fastener(c.size)
		assert.Equal(t, c.ok, err == nil, "%s: %v", name, err)
		if c.ok {
			assert.Equal(t, c.kind, f.Kind, name)
			assert.InDelta(t, c.d, f.D, 1e-9, name)
		}
	}
}
