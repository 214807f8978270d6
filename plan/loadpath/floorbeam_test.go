package loadpath

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
)

// beamed is a house of two stories on a slab, 288 by 192 in, the second floor's joists
// running north, with more tables.
const beamed = `
project = { name = "Invented house with a beam", date = 2026-03-02 }
site = { wind_speed = "150 mph", exposure = "C" }
foundation = { kind = "slab" }
lumber = { stock = ["8'", "16'", "24'"] }
level = [
  { name = "first", floor = "0'", plate_height = "9' 1 1/8in" },
  { name = "second", plate_height = "8' 1 1/8in", joists = "2x12 @ 16in", joist_run = "y" },
]
wall = [
  { name = "1S", level = "first", from = ["0'", "0'"], to = ["24'", "0'"] }, { name = "1E", level = "first", to = ["24'", "16'"] },
  { name = "1N", level = "first", to = ["0'", "16'"] }, { name = "1W", level = "first", to = ["0'", "0'"] },
  { name = "2S", level = "second", from = ["0'", "0'"], to = ["24'", "0'"] }, { name = "2E", level = "second", to = ["24'", "16'"] },
  { name = "2N", level = "second", to = ["0'", "16'"] }, { name = "2W", level = "second", to = ["0'", "0'"] },
]
roof = [{ kind = "hip", ridge = "x", pitch = "6:12" }]
`

func beamWith(set, from, to, more string) string {
	return beamed + "[[beam]]\nname = \"B1\"\nlevel = \"first\"\nmember = \"2-2x12\"\nset = \"" + set + "\"\nfrom = [\"" + from + "\", \"8'\"]\nto = [\"" + to + "\", \"8'\"]\n" + more
}

// floorsOf sums up, by wall of the first story, the floor on its own plates and what
// beams bring to it, lb.
func floorsOf(a *analysis) (own, byBeam map[string]float64) {
	own, byBeam = map[string]float64{}, map[string]float64{}
	for _, p := range a.paths {
		for _, c := range p.carriers {
			own[p.w.Name] += c.floor.D - c.byBeams()
			byBeam[p.w.Name] += c.byBeams()
		}
	}
	return own, byBeam
}

// The studs at a wall's ends are taken to serve as much on both their sides, which moves
// a pound or two of what lies there. Without a beam half of the span of 192 rests on each of 1S and 1N, over 288 in. A beam
// in the middle from rim to rim leaves each half of 96. The beam takes half of 96 on both
// sides over its 285 in, and lies on the plates of 1E and 1W, half on each; a post in its
// middle takes half of what lies between it and the middle of each plate, 284.5 less 144,
// and what lies past that middle, 2 in, stays with the wall.
func TestABeamShortensTheJoistsOfTheWallsByHand(t *testing.T) {
	a := analyzed(t, beamed)
	psf := a.dead.floor(a.plan.Levels[1])
	own, by := floorsOf(a)
	assert.InDelta(t, psf*96*288/144, own["1S"], 0.5)
	assert.InDelta(t, own["1S"], own["1N"], 1e-6)
	assert.Zero(t, by["1E"])

	whole := own["1S"]
	for _, set := range []string{"flush", "dropped"} {
		long, half := 285.0, 285.0/2
		if set == "dropped" { // between the walls' inside faces, where it hangs
			long, half = 277, 277.0/2
		}
		a = analyzed(t, beamWith(set, "0'", "24'", ""))
		own, by = floorsOf(a)
		beside := (288 - long) / 288 * whole // past the beam's ends the joists go on
		assert.InDelta(t, whole/2*long/288+beside, own["1S"], 2, set)
		assert.InDelta(t, own["1S"], own["1N"], 1e-6, set)
		assert.InDelta(t, psf*96*half/144, by["1E"], 0.5, set)
		assert.InDelta(t, by["1E"], by["1W"], 1e-6, set)
		assert.Zero(t, by["1S"]+by["1N"], set)
		a = analyzed(t, beamWith(set, "0'", "24'", "posts = [\"12'\"]\n"))
		_, by = floorsOf(a)
		if set == "flush" {
			assert.InDelta(t, psf*96*((284.5-144)/2+2)/144, by["1E"], 0.5)
		} else {
			assert.InDelta(t, psf*96*(282.5-144)/2/144, by["1E"], 0.5)
		}
	}
}

// A beam over the west half of the house alone, on a post at its end: the walls keep their
// whole spans in the east half. With an opening beside it from y = 120 to 160 at x = 48
// to 96, the joists after the beam end at 24 in where they went to 96: the beam loses 72
// of 192 there and 1N, whose joists end at 160, 64 of 96; 1S nothing.
func TestABeamUnderPartOfAFloorAndAnOpeningByHand(t *testing.T) {
	whole := beamWith("flush", "0'", "12'", "posts = [\"12'\"]\n")
	a := analyzed(t, whole)
	psf := a.dead.floor(a.plan.Levels[1])
	own, by := floorsOf(a)
	assert.InDelta(t, psf*(48*142.5+96*(288-142.5))/144, own["1S"], 2)
	cut := analyzed(t, whole+"[[floor_opening]]\nname = \"well\"\nlevel = \"second\"\narea = [[\"4'\", \"10'\"], [\"8'\", \"13' 4in\"]]\n")
	own2, by2 := floorsOf(cut)
	assert.InDelta(t, own["1S"], own2["1S"], 1e-6)
	assert.InDelta(t, psf*64.0/2*48/144, own["1N"]-own2["1N"], 0.5)
	assert.Less(t, by2["1W"], by["1W"])
	require.InDelta(t, 0, by["1E"], 0)
	lost := psf * 72 / 2 * 48 / 144 // at 72 of the way from 3.5 to the post's 141.25
	assert.InDelta(t, lost*(141.25-72)/(141.25-3.5), by["1W"]-by2["1W"], 0.5)
}

// B1 hangs on B2, which lies along the joists from plate to plate: of the 138.25 in between
// the middle of the plates of 1W, at 3.5, and the face of B2, at 141.75, half goes to each,
// and what lies past the plates' middle, 2 in, to 1W. B2 hands its half on to 1S and 1N, from
// the middle between them.
func TestABeamHandsOnWhatHangsOnItByHand(t *testing.T) {
	a := analyzed(t, beamWith("flush", "0'", "12'", "")+"[[beam]]\nname = \"B2\"\nlevel = \"first\"\nmember = \"3-2x12\"\nset = \"flush\"\nfrom = [\"12'\", \"0'\"]\nto = [\"12'\", \"16'\"]\n")
	w := a.dead.floor(a.plan.Levels[1]) * 96 / 144
	_, by := floorsOf(a)
	face := 144 - 2.25 - 3.5 // of three plies
	assert.InDelta(t, w*(face/2+2), by["1W"], 0.5)
	assert.InDelta(t, w*face/4, by["1S"], 0.5)
	assert.InDelta(t, w*face/4, by["1N"], 0.5)
	assert.Zero(t, by["1E"])
}

// The dead load that the uplift of the walls' studs counts, and how it is told.
func TestTheFloorThatABeamBringsIsTold(t *testing.T) {
	r := reported(t, beamWith("flush", "0'", "24'", ""))
	found := 0
	for _, p := range r.work.paths {
		for _, c := range p.carriers {
			if c.byBeams() == 0 {
				continue
			}
			found++
			assert.Contains(t, []string{"1E", "1W"}, p.w.Name)
		}
	}
	assert.Equal(t, 2, found, "the stud at 8 ft under each end")
	assert.Contains(t, strings.Join(r.Unchecked, "\n"), "Joists to flush beams")
	assert.Contains(t, strings.Join(r.Unchecked, "\n"), plan.BeamSeat.Row().Unchecked)
}
