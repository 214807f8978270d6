package detail

import (
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/schedule"
	"galewright/render/page"
	"galewright/render/page/pagetest"
	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// detailHouse is a model with one piece of each shape family, every number
// made up here.
func detailHouse(t *testing.T) *page.Model {
	t.Helper()
	first := &plan.Level{Name: "first", Floor: 120, PlateHeight: 109.125, FloorDepth: 12, Subfloor: 0.75, JoistRun: "y", Rim: 1.5}
	second := &plan.Level{Name: "second", Index: 1, Floor: 241.125, PlateHeight: 97.125, FloorDepth: 12, Subfloor: 0.75, JoistRun: "y", Rim: 1.5}
	two6 := plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 5.5, Text: "2x6"}
	two8 := plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 7.25, Text: "2x8"}
	wall := &plan.Wall{Name: "2S", Level: second, To: geom.Vec2{X: 336}, Exterior: true, Studs: two6}
	low := &plan.Wall{Name: "1S", Level: first, To: geom.Vec2{X: 336}, Exterior: true, Studs: two6}
	roof := &plan.Roof{Name: "main", Pitch: 7, RidgeMember: plan.Lumber{Ply: 1, Breadth: 1.75, Depth: 11.875, Text: "1.75x11.875"}}
	stud := func(w *plan.Wall) *framing.Member {
		return &framing.Member{Role: plan.Stud, Wall: w, Level: w.Level, Section: two6, A: geom.Vec3{Z: w.Level.Floor}, B: geom.Vec3{Z: w.Level.Top()}}
	}
	flat := func(r plan.Role, l plan.Lumber) *framing.Member {
		return &framing.Member{Role: r, Section: l, B: geom.Vec3{X: 100}}
	}
	post := &framing.Member{Role: plan.PorchPost, Section: plan.Lumber{Ply: 1, Breadth: 5.5, Depth: 5.5, Text: "6x6"}, B: geom.Vec3{Z: 96}}
	rafter := &framing.Member{Role: plan.Rafter, Section: two8, B: geom.Vec3{X: 100, Z: 58}}
	j := func(k plan.JointKind, w *plan.Wall, ms ...*framing.Member) *framing.Joint {
		jt := &framing.Joint{ID: "J" + k.Code(), Kind: k, Host: "x", Wall: w, Roof: roof, Members: ms, Below: true}
		if w != nil {
			jt.Level = w.Level
		}
		return jt
	}
	girder := flat(plan.GirderBeam, plan.Lumber{Ply: 3, Breadth: 1.5, Depth: 11.25, Text: "3-2x12"})
	each := func(n int) []plan.Fasteners {
		return []plan.Fasteners{{Part: "each end", Nail: `10d x 1 1/2`, Count: n, Parts: 2, Spacing: 1.5, EndDist: 0.5, Rows: 1}}
	}
	both := func(a, b int) []plan.Fasteners {
		return []plan.Fasteners{{Part: "to rafter", Nail: `8d x 1 1/2`, Count: a, Parts: 1}, {Part: "to plate", Nail: "8d common", Count: b, Parts: 1}}
	}
	m := &page.Model{House: &framing.House{Plan: &plan.Plan{Levels: []*plan.Level{first, second}, Project: plan.Project{Name: "Test"}}}}
	p := &placement.Placement{House: m.House}
	s := &schedule.Schedule{Placement: p}
	add := func(kind plan.ItemKind, jt *framing.Joint, face plan.Face, it plan.Item) {
		it.Kind = kind
		it.Mark = strings.ReplaceAll(string(kind), " ", "-")
		c, ds := hardware.New([]*plan.Item{&it})
		require.False(t, ds.Errors(), "%s: %v", kind, ds)
		pc := &placement.Piece{Tag: jt.ID + it.Mark, Joint: jt, Item: c.Items[0], Lie: placement.Lie{Face: face}}
		if it.Rod > 0 {
			pc.Cut = 24
		}
		p.Pieces = append(p.Pieces, pc)
		s.Lines = append(s.Lines, &schedule.Line{Number: len(s.Lines) + 1, Item: c.Items[0], Pieces: []*placement.Piece{pc}})
	}
	add("clip", j(plan.RafterPlate, wall, rafter, flat(plan.UpperPlate, two6)), "outside", plan.Item{Length: 6.375, Width: 1.625, Gauge: "17", Fasteners: both(4, 7)})
	add("strap", j(plan.StudStud, wall, stud(wall), stud(low)), "outside", plan.Item{Length: 47.25, Width: 1.375, Gauge: "19", Fasteners: each(9)})
	add("long strap", j(plan.WallEnd, wall, stud(wall), stud(low)), "inside", plan.Item{Length: 70.5, Width: 2.125, Gauge: "13", Fasteners: []plan.Fasteners{{Part: "each end", Nail: "16d sinker", Count: 13, Parts: 2, Rows: 2, Spacing: 2, EndDist: 0.75, Stagger: true, HandOnly: true}}})
	add("coil strap", j(plan.StudBase, low, stud(low), girder), "outside", plan.Item{Length: 37.25, Width: 1.375, Gauge: "19", Coil: 1200, Fasteners: each(8)})
	add("wrap strap", j(plan.OpeningHead, wall, stud(wall), flat(plan.Header, plan.Lumber{Ply: 3, Breadth: 1.5, Depth: 9.25, Text: "3-2x10"})), "outside", plan.Item{Length: 31.25, Width: 1.375, Gauge: "19", Fasteners: each(6)})
	add("ridge strap", j(plan.RafterRidge, nil, rafter, rafter, flat(plan.Ridge, roof.RidgeMember)), "top", plan.Item{Length: 23.25, Width: 1.375, Gauge: "19", Fasteners: each(7)})
	add("hold-down", j(plan.WallEnd, low, stud(low), girder), "inside", plan.Item{Length: 12.375, Width: 2.625, Gauge: "13", Rod: 0.625, Standoff: 1.625, Center: 1.4375, Fasteners: []plan.Fasteners{{Part: "to post", Nail: "screw No. 14 x 2 1/2", Count: 11, Parts: 1}}})
	add("hold-down pair", j(plan.WallEnd, wall, stud(wall), stud(low)), "inside", plan.Item{Length: 12.375, Width: 2.625, Gauge: "13", Rod: 0.75, Standoff: 1.625, Center: 1.4375, Fasteners: []plan.Fasteners{{Part: "each body", Nail: "screw No. 14 x 2 1/2", Count: 11, Parts: 2}}})
	add("collector strap", j(plan.Collector, wall, flat(plan.UpperPlate, two6), flat(plan.Beam, plan.Lumber{Ply: 2, Breadth: 1.75, Depth: 11.875, Text: "2-1.75x11.875"})), "top", plan.Item{Length: 39.25, Width: 1.375, Gauge: "15", Fasteners: each(11)})
	add("anchor bolt", j(plan.StudBase, low, flat(plan.SillPlate, two6)), "through", plan.Item{Length: 12, Rod: 0.625, Washer: 3})
	add("post base", j(plan.PostBase, nil, post), "", plan.Item{Length: 6.375, Width: 3.125, Gauge: "13", Fasteners: []plan.Fasteners{{Part: "to post", Nail: "16d sinker", Count: 11, Parts: 1}}})
	add("post cap", j(plan.PostCap, nil, post, flat(plan.Beam, two8)), "", plan.Item{Length: 5.375, Width: 3.125, Gauge: "13", Fasteners: both(5, 7)})
	add("hanger", j(plan.RafterRidge, nil, flat(plan.Joist, two8), flat(plan.Ridge, roof.RidgeMember)), "", plan.Item{Length: 5.125, Width: 1.625, Gauge: "19", Fasteners: both(5, 7)})
	add("generic", j(plan.GirderPile, nil, girder, post), "outside", plan.Item{Length: 8.375, Width: 3.125, Gauge: "15", Fasteners: both(5, 7)})
	m.Placement, m.Schedule = p, s
	return m
}

func TestDetailOfEveryKindIsDrawnOnceOnEachPaper(t *testing.T) {
	m := detailHouse(t)
	for _, paper := range []string{"arch-d", "tabloid", "letter"} {
		c := pagetest.Context(t, m, paper)
		pages := Pages(c)
		sheets := pagetest.Drawn(c, pages)
		for _, l := range m.Schedule.Lines {
			assert.Len(t, c.SheetsOf("mark "+l.Item.Mark), 1, "%s on %s", l.Item.Mark, paper)
		}
		pagetest.Dump(t, "detail-"+paper, sheets)
		for _, s := range sheets {
			pagetest.NoOverlaps(t, s, paper)
			pagetest.OnPaper(t, s)
		}
	}
}

func TestBandShowsEveryNailAndItsOpenHoles(t *testing.T) {
	f := plan.Fasteners{Count: 9, Holes: 12, Parts: 2, Rows: 2, Spacing: 2, EndDist: 0.75, Stagger: true}
	holes, guessed := pattern(f, 1.25)
	assert.False(t, guessed)
	require.Len(t, holes, 12)
	filled := 0
	for _, h := range holes {
		if h.filled {
			filled++
		}
		assert.LessOrEqual(t, h.across, 1.25/2)
	}
	assert.Equal(t, 9, filled)
	assert.InDelta(t, 0.75, holes[0].along, 1e-9)
	assert.InDelta(t, 0.75+1, holes[1].along, 1e-9, "the other row is half a pitch on")
	assert.InDelta(t, 0.75+2, holes[2].along, 1e-9)
	assert.InDelta(t, 1.25/4, holes[1].across, 1e-9, "two rows stand at the quarters of the width")
}

func TestPatternSaysWhenItIsGuessed(t *testing.T) {
	_, guessed := pattern(plan.Fasteners{Count: 6, Parts: 2}, 1.25)
	assert.True(t, guessed)
}

// Black holes of the strap's front view are the catalog's count: a changed
// catalog redraws the detail.
func TestBlackHolesAreTheCatalogsCount(t *testing.T) {
	m := detailHouse(t)
	c := pagetest.Context(t, m, "arch-d")
	for _, want := range []int{9, 5} {
		l := *m.Schedule.Lines[1]
		it := *l.Item
		it.Item = clonePlanItem(it.Item)
		it.Item.Fasteners[0].Count = want
		l.Item = &it
		d := newDraft(c, c.DetailScales()[1])
		drawBand(d, newDetailItem(&l))
		black, _ := holesOf(d)
		assert.Equal(t, 2*want, black)
	}
}

func clonePlanItem(it *plan.Item) *plan.Item {
	cp := *it
	cp.Fasteners = append([]plan.Fasteners{}, it.Fasteners...)
	return &cp
}

// A dimension's text is the true length though the drawing is broken.
func TestBrokenStrapIsDimensionedTrue(t *testing.T) {
	m := detailHouse(t)
	c := pagetest.Context(t, m, "arch-d")
	d := newDraft(c, c.DetailScales()[1])
	drawBand(d, newDetailItem(m.Schedule.Lines[2]))
	assert.NotEmpty(t, d.cutsV, "a strap of 70-1/2 in is broken")
	var texts []string
	for _, mk := range d.Marks {
		if x, ok := mk.(sheet.Text); ok && x.Role == "dimension" {
			texts = append(texts, x.S)
		}
	}
	assert.Contains(t, texts, `5'-10 1/2"`)
}

// Any item at any joint its kind belongs at has a detail, with what little
// the joint may know.
func TestEveryKindAtEveryJointItBelongsAtHasADetail(t *testing.T) {
	m := detailHouse(t)
	c := pagetest.Context(t, m, "arch-d")
	stock := map[string]*schedule.Line{}
	for _, l := range m.Schedule.Lines {
		stock[l.Item.Kind.Symbol] = l
	}
	for _, k := range hardware.Kinds {
		if k.Shape == hardware.Sheet {
			continue // counted by area, not placed
		}
		like := stock[k.Symbol]
		require.NotNil(t, like, "no item like a %s", k.Name)
		for _, on := range k.On {
			for _, wall := range []*plan.Wall{like.Pieces[0].Joint.Wall, nil} {
				it := *like.Item
				it.Kind = k
				j := *like.Pieces[0].Joint
				j.Kind, j.Wall, j.Level = on, wall, nil
				if wall != nil {
					j.Level = wall.Level
				}
				for _, members := range [][]*framing.Member{j.Members, nil} {
					j.Members = members
					pc := &placement.Piece{Tag: "t", Joint: &j, Item: &it}
					d, _ := detail(c, newDetailItem(&schedule.Line{Number: 1, Item: &it, Pieces: []*placement.Piece{pc}}))
					s := d.Sheet
					s.Title.SheetTitle = string(k.Name) + " at " + string(on)
					pagetest.NoOverlaps(t, s, "draft")
				}
			}
		}
	}
}

// The detail says which holes take a nail.
func TestWhichHolesTakeANailIsSaid(t *testing.T) {
	f := plan.Fasteners{Part: "to post", Nail: "No. 14 x 2", Count: 13, Parts: 1, Holes: 26, Fill: "every second hole"}
	assert.Equal(t, "13 - No. 14 x 2 to post, of 26 holes, in every second hole", nailWords(f))
}
