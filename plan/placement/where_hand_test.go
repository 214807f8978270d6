package placement

import (
	"math"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/units"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWidthOfTheEndZone(t *testing.T) {
	// ASCE 7-16 Fig. 28.3-1 note 9, from memory: of 400 by 600 a tenth is 40; of a
	// mean height of 90, 0.4 are 36; 4 percent are 16; 36 at least.
	house := func(x, y, plate, top float64) *framing.House {
		l := &plan.Level{PlateHeight: plate}
		at := []geom.Vec2{{X: 5, Y: 7}, {X: 5 + x, Y: 7}, {X: 5 + x, Y: 7 + y}, {X: 5, Y: 7 + y}}
		h := &framing.House{Plan: &plan.Plan{Levels: []*plan.Level{l}}}
		for i, a := range at {
			h.Plan.Walls = append(h.Plan.Walls, &plan.Wall{Level: l, From: a, To: at[(i+1)%4], Exterior: true})
		}
		h.Plan.Walls = append(h.Plan.Walls, &plan.Wall{Level: l, From: geom.Vec2{X: -999}, To: geom.Vec2{X: 999}})
		h.Members = []*framing.Member{{A: geom.Vec3{Z: top - 20}, B: geom.Vec3{Z: top}}, {A: geom.Vec3{Z: 1}, B: geom.Vec3{Z: 2}}}
		return h
	}
	for _, c := range []struct {
		name             string
		x, y, plate, top float64
		want             float64
	}{
		{"a tenth of the least side", 400, 600, 110, 190, 40}, // 0.4 x 110 = 44
		{"of the other side", 600, 420, 110, 190, 42},
		{"0.4 of the mean height", 800, 900, 105, 120, 42}, // 0.4 x 105 of the eave without a roof, a tenth is 80
		{"4 percent", 1200, 1500, 60, 60, 48},              // 0.4 x 60 = 24
		{"36 at least", 240, 480, 110, 190, 36},
		{"members under the plate do not count", 900, 900, 110, 50, 44}, // 0.4 x 110
	} {
		assert.InDelta(t, c.want, endZone(house(c.x, c.y, c.plate, c.top)), 1e-9, c.name)
	}
	assert.Equal(t, 36.0, endZone(&framing.House{Plan: &plan.Plan{}}), "without exterior walls")
}

func TestConditionsSayWhatTheyAskAndFind(t *testing.T) {
	h := standard()
	w := newWorld(h.House)
	j := w.byID["1S-16-SB"]
	find := func(key string) condition {
		for _, c := range conditions {
			if c.key == key {
				return c
			}
		}
		t.Fatal(key)
		return condition{}
	}
	for _, c := range []struct {
		key        string
		where      plan.Where
		holds      bool
		want, have string
	}{
		{"corner", plan.Where{Corner: [2]float64{0, 16}}, true, `0" to 1'-4"`, `1'-4"`},
		{"corner", plan.Where{Corner: [2]float64{0, 15.9}}, false, `0" to 1'-3 7/8"`, `1'-4"`},
		{"corner", plan.Where{Corner: [2]float64{16, 0}}, true, `from 1'-4"`, `1'-4"`},
		{"corner", plan.Where{Corner: [2]float64{16.1, 0}}, false, `from 1'-4 1/8"`, `1'-4"`},
		{"spacing", plan.Where{Spacing: [2]float64{16, 16}}, true, `1'-4" to 1'-4"`, `1'-4"`},
		{"opening", plan.Where{Opening: [2]float64{1, 0}}, false, `from 1"`, "none"},
		{"opening_width", plan.Where{OpeningWidth: [2]float64{1, 0}}, false, `from 1"`, "none"},
		{"height", plan.Where{Height: [2]float64{1.5, 1.5}}, true, `1 1/2" to 1 1/2"`, `1 1/2"`},
		{"from, to", plan.Where{From: 16}, true, `from 1'-4"`, `1'-4"`},
		{"from, to", plan.Where{From: 16.1}, false, `from 1'-4 1/8"`, `1'-4"`},
		{"from, to", plan.Where{To: 16}, true, `0" to 1'-4"`, `1'-4"`},
		{"from, to", plan.Where{From: 2, To: 15.9}, false, `2" to 1'-3 7/8"`, `1'-4"`},
		{"exterior", plan.Where{Exterior: yes()}, true, "true", "true"},
		{"shear", plan.Where{Shear: yes()}, false, "true", "false"},
		{"end_zone", plan.Where{EndZone: yes()}, true, "true", "true"},
		{"roof", plan.Where{Roof: []string{"a", "b"}}, false, "a or b", "none"},
		{"wall", plan.Where{Wall: []string{"1S"}}, true, "1S", "1S"},
		{"role", plan.Where{Role: []plan.Role{"king", "stud"}}, true, "king or stud", "stud"},
		{"against", plan.Where{Against: []plan.Role{"rim"}}, true, "rim", "bottom plate and rim"},
		{"against", plan.Where{Against: []plan.Role{"joist", "beam"}}, false, "joist or beam", "bottom plate and rim"},
		{"stud", plan.Where{Stud: []string{"2x4"}}, false, "2x4", "2x6"},
	} {
		k := find(c.key)
		require.True(t, k.given(&c.where), "%+v", c.where)
		assert.False(t, k.given(&plan.Where{}), c.key)
		assert.Equal(t, c.holds, k.holds(w, &c.where, j), "%s %+v", c.key, c.where)
		assert.Equal(t, c.want, k.want(units.Imperial, &c.where), c.key)
		assert.Equal(t, c.have, k.have(w, j), c.key)
	}
	assert.Equal(t, "anything", describe(units.Imperial, &plan.Where{}))
	assert.Equal(t, `wall = 1S, corner = 0" to 1'-4"`, describe(units.Imperial, &plan.Where{Wall: []string{"1S"}, Corner: [2]float64{0, 16}}))
}

func TestDistancesThatConditionsMeasure(t *testing.T) {
	h := standard()
	h.walls[0].Openings = []*plan.Opening{{At: 40, Width: 30}, {At: 86, Width: 5}}
	h.walls[0].Shear = []*plan.Shear{{From: 16, To: 48}}
	w := newWorld(h.House)
	for station, want := range map[string]struct {
		corner, opening float64
		shear           bool
	}{
		"1S-1-SB":  {0.75, 39.25, false},
		"1S-16-SB": {16, 24, true},
		"1S-48-SB": {48, 0, true}, // in the opening, and at the segment's end
		"1S-64-SB": {32, 0, false},
		"1S-80-SB": {16, 6, false}, // 6 to the second, 10 to the first
		"1S-95-SB": {0.75, 4.25, false},
	} {
		j := w.byID[station]
		assert.InDelta(t, want.corner, w.fromCorner(j), 1e-9, station)
		assert.InDelta(t, want.opening, fromOpening(w, j), 1e-9, station)
		assert.Equal(t, want.shear, inShear(w, j), station)
	}
	off := &framing.Joint{Host: "G", Kind: plan.GirderPile, Station: 30}
	assert.True(t, math.IsNaN(fromOpening(w, off)))
	assert.False(t, inShear(w, off))
	// Off the walls, from the first or the last joint along the host.
	w.byHost[hostKind{"G", plan.GirderPile}] = []*framing.Joint{{Station: 6}, off, {Station: 40}}
	assert.Equal(t, 10.0, w.fromCorner(off))
}

func TestGroupsNameEightAndCountTheRest(t *testing.T) {
	var tell teller
	w := &plan.Wall{Name: "1S"}
	add := func(code string, n int) {
		for i := range n {
			m := &framing.Member{Role: plan.Stud}
			j := &framing.Joint{ID: string(rune('a' + i)), Host: "1S", Wall: w, Kind: plan.StudBase, Station: 12 * float64(i), Members: []*framing.Member{m}}
			tell.at(j, "", plan.Diagnostic{Code: plan.Code(code)})
		}
	}
	add("one", 1)
	add("two", 2)
	add("eight", 8)
	add("ten", 10)
	var where []string
	for _, d := range tell.list() {
		where = append(where, d.Where)
	}
	assert.Equal(t, []string{
		`wall 1S, stud at 0", a`,
		`wall 1S, 2 joints from 0" to 1'-0": a, b`,
		`wall 1S, 8 joints from 0" to 7'-0": a, b, c, d, e, f, g, h`,
		`wall 1S, 10 joints from 0" to 9'-0": a, b, c, d, e, f, g, h and 2 more to j`,
	}, where)
}

func TestHostsAreNamedByWhatTheyAre(t *testing.T) {
	for want, j := range map[string]*framing.Joint{
		"wall 1S":   {Host: "1S", Wall: &plan.Wall{Name: "1S"}},
		"girder G":  {Host: "G", Kind: plan.GirderPile},
		"porch P":   {Host: "P", Kind: plan.PostBase},
		"porch Q":   {Host: "Q", Kind: plan.PostCap},
		"porch R":   {Host: "R", Kind: plan.RafterPlate, Roof: &plan.Roof{}},
		"roof main": {Host: "main", Kind: plan.RafterRidge, Roof: &plan.Roof{}},
		"X":         {Host: "X", Kind: plan.StudBase},
	} {
		assert.Equal(t, want, j.HostName())
	}
	assert.Equal(t, `X, joint at 1'-0", X-1`, jointName(&framing.Joint{ID: "X-1", Host: "X", Station: 12}))
}

func TestListsInWords(t *testing.T) {
	k := []plan.JointKind{"a", "b", "c", "d", "e"}
	assert.Equal(t, "no joint", list(nil))
	assert.Equal(t, "a", list(k[:1]))
	assert.Equal(t, "a or b", list(k[:2]))
	assert.Equal(t, "a, b, c or d", list(k[:4]))
	assert.Equal(t, "a, b, c, d and others", list(k))
	assert.Equal(t, "there is none yet", meant("x", nil))
	names := []string{"n01", "n02", "n03", "n04", "n05", "n06", "n07", "n08", "n09", "n10", "n11", "n12", "n13", "n14", "n15"}
	assert.Equal(t, "use one of n01, n02, n03, n04, n05, n06, n07, n08, n09, n10, n11, n12, n13, n14", meant("unlike", names[:14]))
	assert.Equal(t, "use one of n01, n02, n03, n04, n05, n06, n07, n08, n09, n10, n11, n12, n13, n14, ...", meant("unlike", names))
	assert.Equal(t, `did you mean "strap"?`, meant("strop", []string{"clip", "strap"}))
}
