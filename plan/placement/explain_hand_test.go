package placement

import (
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"

	"github.com/stretchr/testify/assert"
)

// Where the steel of a strap lies, in words: on both members, with what it bridges; where
// they touch, nothing between; over a plate, down one face or both of what stands under it.
func TestWhereAStrapsSteelLies(t *testing.T) {
	stud, plate := &framing.Member{Role: plan.Stud}, &framing.Member{Role: plan.TopPlate}
	flat := func(n int) geom.Band { return make(geom.Band, n) }
	for _, c := range []struct {
		kind   plan.JointKind
		plates int
		gap    float64
		on     [2]*framing.Member
		want   string
	}{
		{plan.StudStud, 1, 17.375, [2]*framing.Member{stud, stud}, `12" on the stud, 1'-5 3/8" between, 9" on the stud`},
		{plan.PlateSplice, 1, 0, [2]*framing.Member{plate, plate}, `12" on the top plate, 9" on the top plate`},
		{plan.PlateSplice, 1, 1. / 64, [2]*framing.Member{plate, plate}, `12" on the top plate, 9" on the top plate`},
		{plan.PlateSplice, 1, 1. / 16, [2]*framing.Member{plate, plate}, `12" on the top plate, 1/16" between, 9" on the top plate`},
		{plan.StudTop, 3, 8.5, [2]*framing.Member{stud, stud}, `12" on each face of the stud, 8 1/2" over the plates`},
		{plan.StudTop, 2, 3, [2]*framing.Member{stud, plate}, `12" on the stud, the rest on the plates`},
		{plan.PlateSplice, 1, 0, [2]*framing.Member{plate, nil}, `12" on the top plate, 9" on the member`},
	} {
		q := &Piece{Joint: &framing.Joint{Kind: c.kind}, Lie: Lie{
			Bands: []geom.Band{flat(c.plates)}, Gap: c.gap, Laid: []Laid{{Member: c.on[0], Lap: 12}, {Member: c.on[1], Lap: 9}}, tied: [2]int{0, 1},
		}}
		assert.Equal(t, strings.ReplaceAll(c.want, `12"`, `1'-0"`), lapText(q), "%s of %d", c.kind, c.plates)
	}
}

// A piece says what it is made of: a bolt its rod and length, a rod that is cut the length
// to cut; a hold-down its own; of a level bolt one height.
func TestWhatAPieceIsMadeOf(t *testing.T) {
	post, girder := &framing.Member{Role: plan.Post}, &framing.Member{Role: plan.GirderBeam}
	tell := func(kind plan.ItemKind, it plan.Item, l Lie, r *plan.Rule, e *plan.Place) string {
		it.Mark, it.Kind = "m", kind
		k := hardware.KindNamed(kind)
		q := &Piece{Tag: "t", Joint: &framing.Joint{Kind: plan.WallEnd, Members: []*framing.Member{post, girder}}, Item: &hardware.Item{Item: &it, Kind: k, Phase: hardware.PhaseNamed(k.Phase)}, Lie: l, Rule: r, Place: e}
		for range it.Fasteners {
			q.Item.Nails = append(q.Item.Nails, hardware.Nail{Name: "10d"})
		}
		var b strings.Builder
		(&Placement{}).tellPiece(&b, q)
		return b.String()
	}
	rule := &plan.Rule{Name: "r", Pos: plan.Pos{File: "t.toml", Line: 7}}
	assert.Equal(t, `t
  m, anchor rod: a threaded rod with nut and washer
  through the post and girder at 1'-0", 2'-0" above grade
  5/8" diameter, cut to 1'-8"; nut on a cut washer; hole in the wood 11/16" at most (NDS 2018 12.1.3.2, transcribed)
  rod cut to 1'-8"
  install before floor
  placed by rule "r", t.toml:7
`, tell(plan.AnchorRodItem, plan.Item{Rod: 0.625}, Lie{Face: plan.Through, Station: 12, Z0: 24, Z1: 24, Cut: 20}, rule, nil))
	got := tell(plan.HoldDownItem, plan.Item{Rod: 0.625, Bodies: 1, Fasteners: nails("to post", 11, 1)}, Lie{Face: plan.Left, Z0: 24, Z1: 36, Cut: 20, Moved: "moved there because of x"}, nil, &plan.Place{Pos: plan.Pos{File: "t.toml", Line: 9}})
	assert.Contains(t, got, "\n  on the left face at 0\", 2'-0\" to 3'-0\" above grade\n  moved there because of x\n  rod cut to 1'-8\"\n")
	assert.Contains(t, got, "\n  nails: 11 of 10d to post\n  placed by engineer's place, t.toml:9\n")
	assert.NotContains(t, got, "diameter", "the rod of a body is told with the steel")
	got = tell(plan.ClipItem, plan.Item{Length: 4}, Lie{Face: plan.Left}, rule, nil)
	assert.NotContains(t, got, "cut")
	assert.NotContains(t, got, "of steel")
	assert.Equal(t, `1/2" diameter, 1'-0" long; nut on a 3" square plate washer; hole in the wood 9/16" at most (NDS 2018 12.1.3.2, transcribed)`,
		boltText(&Piece{Item: &hardware.Item{Item: &plan.Item{Rod: 0.5, Washer: 3, Length: 12}}, Lie: Lie{Cut: 20}}), "its own length counts")
	assert.Contains(t, boltText(&Piece{Item: &hardware.Item{Item: &plan.Item{Rod: 0.5}}}), `1/2" diameter; nut`)
	assert.Equal(t, "post and girder", throughText(&framing.Joint{Members: []*framing.Member{post, girder, post}}), "two at most")
	assert.Equal(t, "bottom plate", throughText(&framing.Joint{Members: []*framing.Member{post, girder, {Role: plan.BottomPlate}}}))
}

// What a joint is, in words: how its girder sits, and how the stud below stands.
func TestWhatAJointIs(t *testing.T) {
	stud := &framing.Member{ID: "2S/stud@16", Role: plan.Stud, Section: two6}
	for _, c := range []struct {
		j    framing.Joint
		want string
	}{
		{framing.Joint{Kind: plan.StudStud, Below: true}, "  the studs line up\n"},
		{framing.Joint{Kind: plan.StudStud, Below: true, Offset: 0.5}, "  the stud below is offset 1/2\"\n"},
		{framing.Joint{Kind: plan.StudStud}, "  no stud below\n"},
		{framing.Joint{Kind: plan.StudBase, Gap: 2.25}, "  2 1/4\" between the members a strap laps\n"},
		{framing.Joint{Kind: plan.StudBase}, ""},
		{framing.Joint{Kind: plan.GirderPile, Seat: framing.Notched}, "  the girder sits " + string(framing.Notched) + "\n"},
	} {
		c.j.ID, c.j.Host, c.j.Members = "j", "X", []*framing.Member{stud}
		var b strings.Builder
		(&Placement{}).tellJoint(&b, &c.j)
		_, rest, _ := strings.Cut(b.String(), "\n")
		assert.Equal(t, "  stud 2S/stud@16 (2x6)\n"+c.want, rest, "%+v", c.j.Kind)
	}
}

// What the straps of a joint bridge: two alike are told once, one that goes past the next
// member by itself; what lies over a plate bridges nothing.
func TestWhatStrapsBridge(t *testing.T) {
	stud, rim, girder := &framing.Member{Role: plan.Stud}, &framing.Member{Role: plan.Rim}, &framing.Member{Role: plan.GirderBeam}
	j := &framing.Joint{Kind: plan.StudBase, Gap: 2.25}
	strap := func(kind plan.ItemKind, gap float64, on *framing.Member) *Piece {
		return &Piece{Joint: j, Item: &hardware.Item{Item: &plan.Item{Mark: "m"}, Kind: hardware.KindNamed(kind)}, Lie: Lie{
			Gap: gap, Laid: []Laid{{Member: stud}, {Member: on}}, tied: [2]int{0, 1},
		}}
	}
	const next, past = "  2 1/4\" between the members a strap laps\n", "  1'-1 1/2\" between the stud and the girder that m laps\n"
	for _, c := range []struct {
		kind   plan.JointKind
		pieces []*Piece
		want   string
	}{
		{plan.StudBase, nil, next},
		{plan.StudBase, []*Piece{strap(plan.StrapItem, 2.25, rim)}, next},
		{plan.StudBase, []*Piece{strap(plan.StrapItem, 2.25, rim), strap(plan.CoilStrapItem, 2.25, rim)}, next},
		{plan.StudBase, []*Piece{strap(plan.StrapItem, 13.5, girder)}, past},
		{plan.StudBase, []*Piece{strap(plan.StrapItem, 2.25, rim), strap(plan.StrapItem, 13.5, girder)}, next + past},
		{plan.StudBase, []*Piece{strap(plan.ClipItem, 0, rim)}, next},
		{plan.StudBase, []*Piece{strap(plan.StrapItem, 0, rim)}, ""},
		{plan.StudTop, []*Piece{strap(plan.WrapStrapItem, 8.5, stud)}, next},
	} {
		j.Kind = c.kind
		var b strings.Builder
		Of(&framing.House{}, c.pieces...).tellGap(&b, j)
		assert.Equal(t, c.want, b.String(), "%s of %d", c.kind, len(c.pieces))
	}
}

// The nearest name is suggested for one that is none: of tags and joints alike.
func TestWhatWasMeant(t *testing.T) {
	p := Of(&framing.House{Joints: []*framing.Joint{{ID: "1S-16-SB"}}}, &Piece{Tag: "1S-16-SB-strap"})
	assert.Equal(t, `did you mean "1S-16-SB-strap"?`, p.likely("1S-16-SB-strep"))
	assert.Equal(t, `did you mean "1S-16-SB"?`, p.likely("1S-16-SC"))
	assert.Equal(t, "tags are on the sheets", p.likely("quite another thing"))
	assert.Equal(t, 4.0, (&Piece{Item: &hardware.Item{Item: &plan.Item{Length: 4}, Kind: hardware.KindNamed(plan.ClipItem)}, Lie: Lie{Cut: 9}}).Length())
	assert.Equal(t, 9.0, (&Piece{Item: &hardware.Item{Item: &plan.Item{Length: 4}, Kind: hardware.KindNamed(plan.CoilStrapItem)}, Lie: Lie{Cut: 9}}).Length())
	assert.Equal(t, 4.0, (&Piece{Item: &hardware.Item{Item: &plan.Item{Length: 4}, Kind: hardware.KindNamed(plan.StrapItem)}}).Length())
}
