package framing

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/read"
)

// The deck of a porch around three walls: 2x8 at 16 in from the house's ledger, 84 in behind the beams'
// outside faces, to a 2-2x10 inside the posts, whose inside faces are 2 1/4 + 2 3/4 = 5 in behind them.
// The south side is 420 in long, its ledger 336: joists at both its ends, the second doubled, and at 16,
// 32 … 320, 20 more. On the east side, 408 long, the ledger runs from 84 to 324; joists stand at 84 - 16 k,
// from 20 to 68, clear of the rim past the corner, which ends 6 1/2 in, at 84 + 3/4 clear of the house's
// corner, at 100 … 308, and the doubled one at 324. On the north side, 336 long, the ledger runs from 84 to
// the house's end at 336: 20 … 68, 84 3/4, 100 … 324 and the last.
func TestTheDeckOfAPorchByHand(t *testing.T) {
	src, err := os.ReadFile("testdata/odd/porch-deck.toml")
	require.NoError(t, err)
	p, ds := read.Plan("deck.toml", src, os.ReadFile)
	require.False(t, ds.Errors())
	h := frame(t, p)
	hung, over := map[*Member]int{}, map[*Member]int{}
	posts := map[string]int{}
	for _, j := range h.Joints {
		switch j.Kind {
		case plan.DeckHung:
			hung[j.First()]++
		case plan.DeckOver:
			over[j.First()]++
		case plan.DeckPost:
			posts[j.Host]++
		default:
			continue
		}
		assert.Equal(t, plan.PorchHost, j.Kind.Place(false).Host)
		for _, m := range j.Members {
			require.LessOrEqual(t, away(m, j.At), 0.02, "%s, %s", j.ID, m.ID)
		}
	}
	stations := map[string][]float64{}
	for _, m := range h.Members {
		switch m.Role {
		case plan.DeckJoist:
			assert.Equal(t, 1, hung[m], m.ID)
			under := 0.0
			for _, g := range h.Members {
				if g.Role == plan.DeckGirder {
					under += shared(m, g)
				}
			}
			assert.Equal(t, 1, over[m], m.ID)
			assert.GreaterOrEqual(t, under, 1.5*1.5-1e-6, "%s bears on 1 1/2 in and more of its girder", m.ID)
			assert.Equal(t, 60.0, m.Z1-m.Z0+52.75, "7 1/4 deep")
			assert.InDelta(t, 72-1.5-1, m.Z1, 1e-9, "its boards 1 1/2 under the floor at 6 ft")
			stations[m.ID[:7]] = append(stations[m.ID[:7]], along(p, m))
		case plan.DeckGirder:
			assert.InDelta(t, 69.5-7.25, m.Z1, 1e-9)
			assert.LessOrEqual(t, hung[m], 1, m.ID)
		case plan.RailPost:
			assert.InDelta(t, 70.5+36, m.Z1, 1e-9)
		}
	}
	step := func(from, to float64) (out []float64) {
		for s := from; s <= to; s += 16 {
			out = append(out, s)
		}
		return out
	}
	want := map[string][]float64{
		"porch-S": slices.Concat([]float64{0.75}, step(16, 320), []float64{334.5}),
		"porch-E": slices.Concat(step(20, 68), []float64{84.75}, step(100, 308), []float64{322.5}),
		"porch-N": slices.Concat(step(20, 68), []float64{84.75}, step(100, 324), []float64{335.25}),
	}
	for name, w := range want {
		slices.Sort(stations[name])
		assert.InDeltaSlice(t, w, stations[name], 1e-6, name)
		assert.Len(t, stations[name], len(w), name)
	}
	assert.Equal(t, map[string]int{"porch-S": 4, "porch-E": 3, "porch-N": 2}, posts, "the posts under corners are bolted to the girder that runs through")
}

// shared is the area of what one member lies on of another under it, in².
func shared(m, under *Member) (area float64) {
	for _, a := range m.Solid {
		for _, b := range under.Solid {
			lo, hi := a.Bounds()
			from, to := b.Bounds()
			if math.Abs(lo.Z-to.Z) < 0.01 {
				area += max(0, min(hi.X, to.X)-max(lo.X, from.X)) * max(0, min(hi.Y, to.Y)-max(lo.Y, from.Y))
			}
		}
	}
	return area
}

// along is the station of a joist along its side of the porch.
func along(p *plan.Plan, m *Member) float64 {
	for _, x := range p.Porches {
		if owner(m) == "porch "+x.Name {
			d := x.To.Sub(x.From).Unit()
			return m.A.Flat().Sub(x.From).Dot(d)
		}
	}
	return -1
}

// Piles that go up to a porch's beam stand from grade in one piece, have a cap and no base, and the deck's
// girder is bolted to them.
func TestPostsOfAPorchThatArePiles(t *testing.T) {
	src, err := os.ReadFile("testdata/odd/porch-deck.toml")
	require.NoError(t, err)
	p, ds := read.Plan("piles.toml", []byte(strings.Replace(string(src), `base = "6in"`, `piles = true`, 1)), os.ReadFile)
	require.False(t, ds.Errors(), "%v", ds)
	h := frame(t, p)
	piles := 0
	for _, m := range h.Members {
		require.NotEqual(t, plan.PorchPost, m.Role)
		if m.OfPorch() {
			piles++
			assert.Equal(t, []float64{0, 158 - 9.25, 158 - 9.25}, []float64{m.Z0, m.Z1, m.Length}, m.ID)
			assert.Equal(t, "6x6", m.Section.Text)
		}
	}
	assert.Equal(t, 3+1+2+1+2, piles, "one under each corner")
	kinds := map[plan.JointKind]int{}
	for _, j := range h.Joints {
		if strings.HasPrefix(j.Host, "porch-") {
			kinds[j.Kind]++
		}
	}
	assert.Equal(t, []int{11, 9, 0}, []int{kinds[plan.PostCap], kinds[plan.DeckPost], kinds[plan.PostBase]})
}

// In the corner of an L, of panels 7/16, a deck 84 deep ends at a wall: no rail stands there, and the
// joist beside it lies outside of the panel. At the open end posts part the way from the middle of the
// beam, 2 1/4, to the house at 84 in two.
func TestTheEndOfADeckAtAWallOfTheHouse(t *testing.T) {
	const L = `
foundation = { kind = "piles", pile = "10x10" }
level = [{ name = "floor", floor = "6'", plate_height = "10'", joists = "2x10 @ 16in", joist_run = "y", sheathing = { panel = "7/16" } }]
wall = [
  { name = "S", from = ["0'", "0'"], to = ["20'", "0'"] },
  { name = "D", to = ["20'", "-12'"] },
  { name = "F", to = ["32'", "-12'"] },
  { name = "E", to = ["32'", "20'"] },
  { name = "N", to = ["0'", "20'"] },
  { name = "W", to = ["0'", "0'"] },
]
girder = [
  { name = "A", from = ["20'", "-11' 9in"], to = ["32'", "-11' 9in"], member = "3-2x12", piles = "@ 8'" },
  { name = "B", from = ["0'", "3in"], to = ["32'", "3in"], member = "3-2x12", piles = "@ 8'" },
  { name = "C", from = ["0'", "10'"], to = ["32'", "10'"], member = "3-2x12", piles = "@ 8'" },
  { name = "G", from = ["0'", "19' 9in"], to = ["32'", "19' 9in"], member = "3-2x12", piles = "@ 8'" },
]
roof = [{ name = "main", kind = "hip", pitch = "6:12", area = [["0'", "0'"], ["32'", "20'"]] }, { name = "wing", kind = "hip", ridge = "y", pitch = "6:12", area = [["20'", "-12'"], ["32'", "20'"]] }]
porch = [{ name = "porch", from = ["0'", "-7'"], to = ["20'", "-7'"], beam = "3-2x10", posts = ["3in", "10'", "19' 9in"], base = "6in", top = "13' 2in", deck = { joists = "2x8 @ 16in", girder = "2-2x10", rail = "6'" } }]
[project]
name = "corner"
date = 2026-01-05
`
	p, ds := read.Plan("corner.toml", []byte(L), os.ReadFile)
	require.False(t, ds.Errors(), "%v", ds)
	h := frame(t, p)
	var rails, ends []float64
	for _, m := range h.Members {
		switch {
		case m.Role == plan.RailPost && m.A.Y > -80:
			rails = append(rails, m.A.X, m.A.Y+84)
		case m.Role == plan.DeckJoist || m.Role == plan.DeckRim || m.Role == plan.Ledger && owner(m) == "porch porch":
			lo, hi := m.Solid[0].Bounds()
			ends = append(ends, lo.X, hi.X)
		}
	}
	assert.InDeltaSlice(t, []float64{-1.75, (2.25 + 84) / 2}, rails, 1e-6)
	require.NotEmpty(t, ends)
	assert.InDelta(t, 0, slices.Min(ends), 1e-6)
	assert.InDelta(t, 240-7.0/16, slices.Max(ends), 1e-6)
}

// With a house 4 in longer the ledger of the south side is 340 long and its doubled joist's middle at 338.5:
// the joist on the module at 336 would leave no room for two hangers, and stands half way from 320.
func TestADeckJoistBesideTheDoubledOne(t *testing.T) {
	src, err := os.ReadFile("testdata/odd/porch-deck.toml")
	require.NoError(t, err)
	longer := strings.NewReplacer(`"30'"`, `"30' 4in"`, `"37'"`, `"37' 4in"`).Replace(string(src))
	p, ds := read.Plan("deck.toml", []byte(longer), os.ReadFile)
	require.False(t, ds.Errors(), "%v", ds)
	var at []float64
	for _, m := range frame(t, p).Members {
		if m.Role == plan.DeckJoist && owner(m) == "porch porch-S" {
			at = append(at, along(p, m))
		}
	}
	slices.Sort(at)
	require.NotEmpty(t, at)
	assert.InDeltaSlice(t, []float64{304, 320, 329.25, 338.5}, at[len(at)-4:], 1e-6)
}
