package framing

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"galewright/plan"
	"galewright/plan/geom"
)

// walled is a wall of 192 on a slab with openings.
func walled(openings ...*plan.Opening) *plan.Plan {
	p, _ := straight(192, openings...)
	return p
}

// edited is a window of 38.5 at 64 with a change.
func edited(edit func(*plan.Opening)) *plan.Plan {
	o := window("w", 64, 38.5)
	edit(o)
	return walled(o)
}

// house is an elevated house of 336 by 240 with a change.
func house(levels int, edit func(*plan.Plan)) *plan.Plan {
	p := elevated(levels)
	edit(p)
	return p
}

var faultTexts = []struct {
	name string
	plan *plan.Plan
	want string
}{
	// An inch by 54, less than a plate's 1 1/2.
	{"no width", edited(func(o *plan.Opening) { o.Width = 1 }), `
plan.toml:99:0: error: opening w is 1" wide and 4'-6" high (wall 1A, opening w); give it a width and a height [opening-no-size]`},
	{"header missing", edited(func(o *plan.Opening) { o.Header = plan.Lumber{} }), `
plan.toml:99:0: error: opening w has no header in a wall that carries load (wall 1A, opening w); name one: header = "2-2x10" [header-missing]`},
	// Its head is at 30 + 66.9375 = 96.9375 over the floor, where 9.1875 = 9 3/16 are left under
	// the plates at 106.125; the header is 9 1/4.
	{"header too high", edited(func(o *plan.Opening) { o.Height = 66.9375 }), `
plan.toml:99:0: error: the header over w reaches 1/16" into the top plates (wall 1A, opening w); lower its head by that, or take a header no deeper than 9 3/16" [header-too-high]`},
	// Four plies of 1 1/2.
	{"header too thick", edited(func(o *plan.Opening) { o.Header.Ply = 4 }), `
plan.toml:99:0: error: the header over w is 6" thick in a wall 5 1/2" deep (wall 1A, opening w); take fewer plies [header-too-thick]`},
	// Less than two plates of 1 1/2 over the floor.
	{"sill too low", edited(func(o *plan.Opening) { o.Sill = 2.5 }), `
plan.toml:99:0: error: the sill of w lies 2 1/2" above the floor, within the bottom plate and the sill itself (3") (wall 1A, opening w); raise it, or leave sill out to open it to the floor [sill-too-low]`},
	// Two jacks and the end stud, 3 x 1 1/2; 2 are there.
	{"near start", edited(func(o *plan.Opening) { o.At, o.Jacks = 2, 2 }), `
plan.toml:99:0: error: opening w leaves 2" to the start of wall 1A; 2 jacks and the end stud need 4 1/2" (wall 1A, opening w); move it by 2 1/2" or more, or make it narrower [opening-near-end]`},
	// One jack and the end stud, 3; 2 1/2 are there.
	{"near end", edited(func(o *plan.Opening) { o.At = 192 - 2.5 - 38.5 }), `
plan.toml:99:0: error: opening w leaves 2 1/2" to the end of wall 1A; 1 jack and the end stud need 3" (wall 1A, opening w); move it by 1/2" or more, or make it narrower [opening-near-end]`},
	// 70 to 71: less than a plate.
	{"openings meet", walled(window("a", 40, 30), window("b", 71, 30)), `
plan.toml:99:0: error: opening b meets opening a beside, above or below it (wall 1A, opening b); leave room for a jack on each side and a king between them [openings-overlap]`},
	// 70 to 74: a jack of each and one king are 3 x 1 1/2.
	{"openings near", walled(window("a", 40, 30), window("b", 74, 30)), `
plan.toml:99:0: error: openings a and b leave 4" between them; their jacks and one king need 4 1/2" (wall 1A, opening b); move them apart [openings-too-near]`},
	// 226.125 - 121.5 = 104.625.
	{"stud long", func() *plan.Plan { p := walled(); p.Lumber.Stud = 96; return p }(), `
plan.toml:10:0: error: the studs of wall 1A are 8'-8 5/8" long and the longest stock is 8'-0" (wall 1A, stud at 3/4"); name longer stud stock under [lumber], or stop the wall at a floor [stud-too-long]`},
	{"plate splice", func() *plan.Plan { p, w := straight(80); w.Stock = 24; return p }(), `
plan.toml:10:0: error: wall 1A cannot have its top plates spliced 24" apart out of 2'-0" stock (wall 1A); name a longer plate stock [plate-splice]`},
	{"wall short", func() *plan.Plan { p, _ := straight(2.5); return p }(), `
plan.toml:10:0: error: wall 1A has no length to frame (wall 1A); give it two ends that lie apart [wall-too-short]`},
	{"wall low", func() *plan.Plan { p, w := straight(100); w.Height = 5; return p }(), `
plan.toml:10:0: error: wall 1A is 5" high, lower than its plates and a block (wall 1A); make it higher [wall-too-low]`},
	{"rake without roof", func() *plan.Plan { p, w := straight(100); w.Top = plan.RakeTop; return p }(), `
plan.toml:10:0: error: wall 1A has a rake top and no roof over it to follow (wall 1A); put a roof over it, or end it at the plate [rake-without-roof]`},
	{"girder short", house(1, func(p *plan.Plan) {
		g := *p.Girders[1]
		g.Name, g.Pos.Line = "GX", 70
		g.To.X, g.From.Y, g.To.Y = g.From.X+3, 60, 60
		p.Girders = append(p.Girders, &g)
	}), `
:70:0: error: girder GX has no length (girder GX); give it two ends that lie apart [girder-too-short]`},
	{"girders overlap", house(1, func(p *plan.Plan) {
		g := *p.Girders[1]
		g.Name, g.Pos.Line = "GX", 70
		p.Girders = append(p.Girders, &g)
	}), `
:70:0: error: girder GX lies in girder G2 (girder GX); join them into one or move one [girders-overlap]`},
	// It comes between the ends of the other; its own piles, the other's, are at 168 and 330 of its
	// 120.
	{"girders cross", house(1, func(p *plan.Plan) {
		g := *p.Girders[1]
		g.Name, g.Pos.Line = "GX", 70
		g.From, g.To = geom.Vec2{X: 100, Y: 60}, geom.Vec2{X: 100, Y: 180}
		p.Girders = append(p.Girders, &g)
	}), `
:70:0: error: girders GX and G2 cross at one height (girder GX); end one at the other's side and continue with a third [girders-cross]
:70:0: error: a pile at 14'-0" is off girder GX (girder GX); give stations along the girder, from its start [pile-off-girder]
:70:0: error: a pile at 27'-6" is off girder GX (girder GX); give stations along the girder, from its start [pile-off-girder]`},
	// 340 on a girder of 336.
	{"pile off", house(1, func(p *plan.Plan) { p.Girders[1].Piles = append(p.Girders[1].Piles, 340) }), `
:0:0: error: a pile at 28'-4" is off girder G2 (girder G2); give stations along the girder, from its start [pile-off-girder]`},
	// The floor's underside is at 110, the girder 11 1/4 under it: 98.75.
	{"pile top", house(1, func(p *plan.Plan) { p.Foundation.PileTop = 100 }), `
:0:0: warning: the piles' tops are given at 8'-4" and the underside of girder G1 is at 8'-2 3/4" (foundation); leave pile_top out, and the piles end under their girders [pile-top]`},
	// 7.5 - 4.5 = 3.
	{"notch", house(1, func(p *plan.Plan) { p.Girders[1].Seat = plan.SeatNotch }), `
:0:0: warning: girder G2: its notch of 4 1/2" leaves 3" of piles 7 1/2" thick, less than half (FEMA P-499 fact sheet 3.3, 12/2010, read) (girder G2); cut less, take a girder of fewer plies, larger piles, or another seat [notch-past-half]`},
	// Joists of 1.5 to 238.5: the girder under their start is no place to break, and the one at 120 is
	// out of reach: all 237 are told.
	{"joists long", house(1, func(p *plan.Plan) { p.Lumber.Stock = []float64{96, 100} }), `
plan.toml:2:0: warning: joists of level first run up to 19'-9" without a support within the longest stock, 8'-4" (level first); add a girder or a bearing wall below, or run the joists the other way [joist-too-long]`},
	// Joists of 9 1/4 and subfloor of 3/4.
	{"floor depth", house(2, func(p *plan.Plan) { p.Levels[1].FloorDepth = 11 }), `
plan.toml:3:0: error: floor_depth of level second is 11" and its joists and subfloor make 10" (level second); make them agree [floor-heights]`},
	// Plates at 120 + 109.125 = 229.125, and the joists 2 over that.
	{"floor heights", house(2, func(p *plan.Plan) { p.Levels[1].Floor += 2 }), `
plan.toml:3:0: error: the joists of level second stand at 19'-3 1/8" and the plates of level first at 19'-1 1/8" (level second); make the upper floor the lower floor plus plate_height plus floor_depth [floor-heights]`},
	// Its top is at 120 + 111 = 231, the joists' foot at 229.125.
	{"wall in floor", house(2, func(p *plan.Plan) { wall(p, "I", 0, geom.Vec2{X: 60, Y: 100}, geom.Vec2{X: 160, Y: 100}).Height = 111 }), `
plan.toml:18:0: error: wall I reaches 1 7/8" into the floor of level second (wall I); make it lower, or give it balloon_to [wall-in-floor]`},
	// It stops 6 short of the corner.
	{"walls open", house(1, func(p *plan.Plan) { p.Walls[3].To.Y = 6 }), `
plan.toml:13:0: error: wall 1D ends 6" from the start of wall 1A, and no exterior wall of level first starts there (wall 1D); set one of the two points right, so that the outline closes [walls-open]`},
	{"walls open far", house(1, func(p *plan.Plan) { p.Walls = p.Walls[:1] }), `
plan.toml:10:0: error: wall 1A ends where no exterior wall of level first starts (wall 1A); close the outline; the floor needs it [walls-open]`},
	{"walls cross", house(1, func(p *plan.Plan) {
		wall(p, "I", 0, geom.Vec2{X: 60, Y: 100}, geom.Vec2{X: 160, Y: 100})
		j := wall(p, "J", 0, geom.Vec2{X: 90, Y: 60}, geom.Vec2{X: 90, Y: 140})
		j.Height, j.Through = 100, true
	}), `
plan.toml:14:0: error: wall I crosses wall J, which is lower and runs through (wall I); let the higher one run through [walls-cross]`},
	{"walls overlap", house(1, func(p *plan.Plan) {
		wall(p, "I", 0, geom.Vec2{X: 60, Y: 100}, geom.Vec2{X: 160, Y: 100})
		wall(p, "J", 0, geom.Vec2{X: 90, Y: 102}, geom.Vec2{X: 190, Y: 102})
	}), `
plan.toml:14:0: error: wall I lies in wall J (wall I); end one where the other begins, or move one [walls-overlap]
plan.toml:15:0: error: wall J lies in wall I (wall J); end one where the other begins, or move one [walls-overlap]`},
	{"both through", house(1, func(p *plan.Plan) { p.Walls[0].End.Join, p.Walls[1].Start.Join = "through", "through" }), `
plan.toml:11:0: error: walls 1A and 1B are both "through" at one corner (wall 1B); make one of them "butt" [corner-contradicts]`},
	{"both butt", house(1, func(p *plan.Plan) {
		p.Walls[0].End.Join, p.Walls[1].Start = "butt", plan.End{Join: "butt", Pos: plan.Pos{File: "plan.toml", Line: 90}}
	}), `
plan.toml:90:0: error: walls 1A and 1B are both "butt" at one corner (wall 1B); make one of them "through" [corner-contradicts]`},
	{"posts", house(1, func(p *plan.Plan) { p.Walls[0].End.Post, p.Walls[1].Start.Post = 4, 5 }), `
:0:0: error: walls 1A and 1B call for posts of 4 and 5 studs at one corner (wall 1A); name the post at one of them only [post-contradicts]`},
	{"post size", house(1, func(p *plan.Plan) { p.Walls[0].End = plan.End{Post: 7, Pos: plan.Pos{File: "plan.toml", Line: 90}} }), `
plan.toml:90:0: error: a corner post of 7 studs (wall 1A); give 2 to 6 [post-size]`},
	{"wall in opening", house(1, func(p *plan.Plan) {
		p.Walls[0].Openings = []*plan.Opening{window("w", 80, 40)}
		wall(p, "I", 0, geom.Vec2{X: 90, Y: 5.5}, geom.Vec2{X: 90, Y: 100})
	}), `
plan.toml:99:0: error: wall I meets wall 1A in opening w (wall 1A, opening w); move the wall or the opening [wall-in-opening]`},
	// 101 in carry a 2-2x10 in 20 ft by the table; the smaller side of the house is 240.
	{"jacks", func() *plan.Plan {
		p := house(1, func(p *plan.Plan) {
			o := window("w", 80, 103)
			o.Jacks = plan.AutoCount
			p.Walls[0].Openings = []*plan.Opening{o}
		})
		return p
	}(), `
plan.toml:99:0: error: the header table gives no jacks for w, 8'-7" wide, in a building 20'-0" wide: a 2-2x10 carries 8'-5" at most there (wall 1A, opening w); take another header, or give the number of jacks [jacks-not-in-table]`},
}

func TestFaultsInFull(t *testing.T) {
	for _, c := range faultTexts {
		t.Run(c.name, func(t *testing.T) {
			_, ds := Frame(c.plan)
			var got []string
			for _, d := range ds {
				got = append(got, d.String())
			}
			assert.Equal(t, strings.TrimSpace(c.want), strings.Join(got, "\n"))
		})
	}
}
