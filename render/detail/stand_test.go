package detail

import (
	"testing"

	"galewright/plan"
	"galewright/render/page/pagetest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// itemOn returns the detail of a mark of an example house.
func itemOn(t *testing.T, example, mark string) detailItem {
	t.Helper()
	m := pagetest.Example(t, example+".toml")
	for _, l := range m.Schedule.Lines {
		if l.Item.Mark == mark && len(l.Pieces) > 0 {
			return newDetailItem(l)
		}
	}
	t.Fatalf("no %s on %s", mark, example)
	return detailItem{}
}

// A 3-2x10 is three plies of 1 1/2 in, 4 1/2 in wide, and a 10x10 is 9 1/4 in
// (dressed sizes, PS 20: see the table of the plan package). Centered, the pile
// stands (9 1/4 - 4 1/2) / 2 = 2 3/8 in out past the girder.
func TestAGirderOverItsPileIsDrawnAsWideAsItIs(t *testing.T) {
	it := itemOn(t, "dunlin", "pile-strap")
	s := twoMembers(it, 20)
	var plies int
	for _, l := range s.layers {
		if l.side == endGrain {
			assert.InDelta(t, 1.5, l.t1-l.t0, 1e-9)
			plies++
		}
	}
	assert.Equal(t, 3, plies)
	assert.InDelta(t, 4.5, s.depth, 1e-9)
	for _, face := range []float64{0, s.depth} {
		out, name := s.proud(face)
		assert.InDelta(t, 2.375, out, 1e-9)
		assert.Equal(t, "pile 10x10", name)
	}
}

// A strap is drawn where it is placed, and never above what it is nailed to.
func TestStrapsEndOnTheirMembers(t *testing.T) {
	for _, c := range []struct{ example, mark string }{
		{"dunlin", "pile-strap"},
		{"marsh-wren", "pile-strap"},
		{"sanderling", "pier-strap"},
		{"sanderling", "header-strap"},
		{"dunlin", "header-strap"},
		{"marsh-wren", "base-strap"},
		{"marsh-wren", "story-strap"},
	} {
		it := itemOn(t, c.example, c.mark)
		s := stackOf(it, 60)
		v0, v1 := s.lie(it)
		assert.InDelta(t, it.Piece.Z0-s.ref, v0, 1e-9, "%s on %s lies where it is placed", c.mark, c.example)
		top, bottom := -1e9, 1e9
		for _, l := range s.layers {
			top, bottom = max(top, l.v1), min(bottom, l.v0)
		}
		assert.LessOrEqual(t, v1, top+1.0/16, "%s on %s", c.mark, c.example)
		assert.GreaterOrEqual(t, v0, bottom-1.0/16, "%s on %s", c.mark, c.example)
	}
}

func TestABoltSitsOnThePlateItHolds(t *testing.T) {
	it := itemOn(t, "turnstone", "sill-bolt")
	s := floorStack(it, 60)
	top, foot := s.seat(it.Piece.Z1 - s.ref)
	assert.InDelta(t, 1.5, top, 1e-9, "one plate of 1 1/2 in, PS 20")
	assert.InDelta(t, 0, foot, 1e-9)
	require.Greater(t, it.Piece.Z1-s.ref, top, "the rod shows above its plate")
}

// A clip to a ledger is drawn on one board on edge, to plates on two flat.
func TestClipsAreDrawnOnWhatCarriesTheRafter(t *testing.T) {
	it := itemOn(t, "turnstone", "rafter-clip")
	if m := it.member(1); m.Role == plan.Ledger {
		b := it.clipBoards(5.5)
		require.Len(t, b, 1)
		assert.InDelta(t, 7.25, b[0].v1, 1e-9, "a 2x8, PS 20")
		assert.InDelta(t, 1.5, b[0].t1, 1e-9)
	}
	b := itemOn(t, "dunlin", "rafter-clip").clipBoards(5.5)
	require.Len(t, b, 2)
	assert.InDelta(t, 3, b[1].v1, 1e-9)
}
