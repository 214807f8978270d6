package loadpath

import (
	"math"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The line of its court's north wall, C, takes 8,248 lb from a deck
// 40 ft long beside it, of which the wall is the west half: at the inside corner 4,124
// lb, 2,474 ASD, have yet to come in, and no plate, joist or beam runs on there. The
// court's east wall, D, is 16 of 40 ft long: 24/40 of 8,263 lb, 2,975 ASD. Ends at
// outside corners ask for nothing.
func TestNothingCarriesALineOnPastAnInsideCorner(t *testing.T) {
	r := elbowWith(t)
	got := map[string]float64{}
	for _, l := range r.Links {
		if l.Check.ID == twistCheck {
			got[l.ID] = l.Demand
			assert.Contains(t, l.Gap, "inside corner")
		}
	}
	require.Len(t, got, 2)
	assert.InDelta(t, 0.6*8248.0*20/40, got[`collector past C at 20'-0"`], 2)
	assert.InDelta(t, 0.6*8263.0*24/40, got[`collector past D at 0"`], 2)
}

// In line with the walls of sanderling's court stand inner walls, so that each side of a
// corner takes about what it gathers: of line C/P the wall C takes CA and CB's shares of the line's
// force, and gathers half; what is left, and what it would be if the segments shared by their
// length, goes over the valley, by the three nails at 4 in that each face of the deck has
// within a foot of the corner. With one nail there it does not, and the gap is told.
func TestWhatADeckHandsOverAnInsideCorner(t *testing.T) {
	r := exampleReport(t, "sanderling.toml")
	for id, name := range map[string]string{`deck past C at 20'-0"`: "C/P", `deck past D at 0"`: "D/Q"} {
		var l *Link
		for _, x := range r.Links {
			if x.Check.ID == twistCheck && x.ID == id {
				l = x
			}
		}
		require.NotNil(t, l, id)
		var line *LineShear
		for _, x := range r.work.lateral.lines {
			if x.Name == name {
				line = x
			}
		}
		require.NotNil(t, line)
		at, gathers := 240.0, 20.0/40
		if name == "D/Q" {
			at, gathers = 0, 16.0/40
		}
		by, other := 0.0, 0.0 // of the segments of the court's wall
		for _, g := range line.Segments {
			if g.Hi <= at+1 {
				by, other = by+g.Share, other+g.OtherShare
			}
		}
		assert.InDelta(t, 0.6*line.Force*(math.Abs(gathers-by)+math.Abs(by-other)), l.Demand, 0.02*line.Force*0.6, id)
		assert.Equal(t, 3, l.Capacity.Pieces)
		assert.Empty(t, l.Gap)
	}
	r = exampleWith(t, "sanderling.toml", `within = "4'", edge = "4in", field = "4in"`, `within = "4'", edge = "12in", field = "4in"`)
	gaps := 0
	for _, l := range r.Links {
		if l.Check.ID == twistCheck {
			assert.Contains(t, l.Gap, "inside corner")
			gaps++
		}
	}
	assert.Equal(t, 2, gaps)
}

// What a wall's plates are tied to carries the line on where it lies in the line and
// reaches a foot past the wall's end.
func TestWhatRunsOnPastAWallsEnd(t *testing.T) {
	w := &plan.Wall{Name: "C"}
	bar := func(role plan.Role, x0, y0, x1, y1 float64) *framing.Member {
		return &framing.Member{Role: role, A: geom.Vec3{X: x0, Y: y0}, B: geom.Vec3{X: x1, Y: y1}}
	}
	top := bar(plan.UpperPlate, 0, 2, 240, 2)
	top.Wall = w
	x := &LineShear{ShearLine: &ShearLine{}}
	for _, c := range []struct {
		text string
		m    *framing.Member
		on   bool
	}{
		{"a joist in line", bar(plan.Joist, 200, 5, 480, 5), true},
		{"drawn the other way", bar(plan.Joist, 480, 5, 200, 5), true},
		{"a flush beam in line", bar(plan.PlateBeam, 246, 3, 480, 3), true},
		{"it ends too soon", bar(plan.Joist, 200, 5, 250, 5), false},
		{"it lies off the line", bar(plan.Joist, 200, 15, 480, 15), false},
		{"it crosses", bar(plan.Rafter, 240, -100, 240, 200), false},
		{"a stud gathers nothing", bar(plan.Stud, 200, 5, 480, 5), false},
	} {
		a := &analysis{model: &model{givens: givens{house: &framing.House{Members: []*framing.Member{top}}}}}
		tw := &twister{a: a, next: map[*framing.Member][]*framing.Member{top: {c.m}}}
		assert.Equal(t, c.on, tw.runsOn(x, w, 240, 1) != nil, c.text)
		assert.Nil(t, tw.runsOn(x, w, 0, -1), "the other end")
	}
}

// A flush beam in the line of the L's wall D, strapped to its plate over the
// corner. The strap takes the line's force where the plate ends, 5 1/2 in past the
// corner: of 8,263 lb over 40 ft, 23 ft 6 1/2 in have yet to come in, 2,918 lb ASD.
// The beam lies under the roof, and nothing ties the deck to it: that stays a gap, of
// the whole force at the corner. Without the strap the line stops at the corner.
func TestAFlushBeamCarriesTheLineAndTheDeckDoesNotReachIt(t *testing.T) {
	const rules = "# ---- what goes in by rule ---"
	beam := `[[beam]]
name = "BD"
from = ["20' 2 1/4in", "5 1/2in"]
to = ["20' 2 1/4in", "23' 6 1/2in"]
member = "2-2x8"

` + rules
	stock := []string{"plate = \"20'\"", "plate = \"20'\"\nstock = [\"8'\", \"10'\", \"12'\", \"14'\", \"16'\", \"18'\", \"20'\", \"24'\"]", rules, beam}
	splice := `[[rule]]
name = "splice straps"`
	top := `[[rule]]
at = "collector"
use = "collector-strap"
face = "top"
where = { wall = "D" }

`
	gaps := func(r *Report) map[string]float64 {
		out := map[string]float64{}
		for _, l := range r.Links {
			if l.Check.ID == twistCheck {
				out[l.ID] = l.Demand
			}
		}
		return out
	}
	r := elbowWith(t, append(stock, splice, top+splice)...)
	link := demand(t, r, "D-0-CO", "collector")
	assert.InDelta(t, 0.6*8263.0*(24*12-5.5)/480, link.Demand, 2)
	assert.Empty(t, link.Gap)
	got := gaps(r)
	assert.Len(t, got, 2)
	assert.Contains(t, got, `collector past C at 20'-0"`)
	assert.InDelta(t, 0.6*8263.0*24/40, got[`deck to BD/beam@0 past D at 0"`], 2)

	r = elbowWith(t, append(stock, "name = \"collectors\"\nat = \"collector\"", "name = \"collectors\"\nat = \"collector\"\nexcept = { wall = \"D\" }")...)
	got = gaps(r)
	assert.NotEmpty(t, demand(t, r, "D-0-CO", "collector").Gap)
	assert.NotContains(t, got, `deck to BD/beam@0 past D at 0"`)
	assert.Contains(t, got, `collector past D at 0"`)
}

// Plates of a wall that goes on in the line are asked as a beam is: one that no
// rafter, truss or rim is tied to gathers nothing, and one plate of the wall that is
// tied does it for the other.
func TestWhatRunsOnMustBeTiedToTheDeck(t *testing.T) {
	w, next := &plan.Wall{Name: "C"}, &plan.Wall{Name: "P"}
	upper, top := &framing.Member{ID: "P/upper", Role: plan.UpperPlate, Wall: next}, &framing.Member{ID: "P/top", Role: plan.TopPlate, Wall: next}
	beam, tie, rafter := &framing.Member{ID: "B", Role: plan.PlateBeam}, &framing.Member{ID: "T", Role: plan.Joist, Roof: &plan.Roof{}}, &framing.Member{ID: "R", Role: plan.Rafter}
	for _, c := range []struct {
		text string
		on   *framing.Member
		ties map[*framing.Member][]*framing.Member
		gaps int
	}{
		{"a beam below the roof", beam, nil, 1},
		{"a beam under a ceiling joist", beam, map[*framing.Member][]*framing.Member{beam: {tie}}, 1},
		{"a beam under a rafter", beam, map[*framing.Member][]*framing.Member{beam: {rafter}}, 0},
		{"plates below the roof", upper, nil, 1},
		{"a rafter on the other plate", upper, map[*framing.Member][]*framing.Member{top: {rafter}}, 0},
		{"a ceiling joist by itself", tie, nil, 1},
		{"a ceiling joist beside a rafter", tie, map[*framing.Member][]*framing.Member{tie: {rafter}}, 0},
		{"a rafter", rafter, nil, 0},
	} {
		a := &analysis{model: &model{givens: givens{house: &framing.House{Members: []*framing.Member{upper, top, beam, tie, rafter}}}}}
		tw := &twister{a: a, next: c.ties}
		tw.fed(&LineShear{ShearLine: &ShearLine{Level: &plan.Level{Name: "main"}}}, w, c.on, 240, 1000)
		if assert.Len(t, tw.out, c.gaps, c.text) && c.gaps > 0 {
			assert.InDelta(t, 600, tw.out[0].Demand, 1e-9, c.text)
		}
	}
}
