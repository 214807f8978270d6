package label

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"galewright/plan/plantest"
	"galewright/render/sheet"
)

func pt(x, y float64) sheet.Pt { return sheet.Pt{X: sheet.MM(x), Y: sheet.MM(y)} }

func rect(x, y, w, h float64) sheet.Rect {
	return sheet.Rect{X: sheet.MM(x), Y: sheet.MM(y), W: sheet.MM(w), H: sheet.MM(h)}
}

func TestNearPlaceIsTakenInOrderOfPreference(t *testing.T) {
	b := NewBoard(rect(0, 0, 100, 100))
	b.Block(rect(10, 10, 10, 10))
	got := b.Place([]Label{{W: 6, H: 6, Near: []sheet.Pt{pt(15, 15), pt(30, 15), pt(40, 15)}}})
	require.True(t, got[0].OK)
	assert.Equal(t, pt(30, 15), got[0].Rect.Center())
	assert.Nil(t, got[0].Leader)
}

func TestDiscouragedPlaceGivesWayToTheNext(t *testing.T) {
	b := NewBoard(rect(0, 0, 100, 100))
	b.Discourage(rect(28, 10, 4, 4))
	got := b.Place([]Label{{W: 6, H: 6, Near: []sheet.Pt{pt(30, 12), pt(60, 12)}}})
	assert.Equal(t, pt(60, 12), got[0].Rect.Center())
}

func TestLabelMovesAsideForOneThatHasNoOtherPlace(t *testing.T) {
	b := NewBoard(rect(0, 0, 100, 100))
	labels := []Label{
		{Name: "first", W: 6, H: 6, Near: []sheet.Pt{pt(20, 20), pt(50, 20)}},
		{Name: "second", W: 6, H: 6, Near: []sheet.Pt{pt(20, 20), pt(80, 20)}},
		{Name: "only", W: 6, H: 6, Near: []sheet.Pt{pt(20, 20)}},
	}
	got := b.Place(labels)
	for i, p := range got {
		assert.True(t, p.OK, labels[i].Name)
		assert.Nil(t, p.Leader, labels[i].Name)
	}
	assert.Equal(t, pt(20, 20), got[2].Rect.Center())
}

func TestLeaderGoesOutWhereNearPlacesAreTaken(t *testing.T) {
	b := NewBoard(rect(0, 0, 100, 100))
	b.Block(rect(10, 10, 20, 20))
	got := b.Place([]Label{{W: 6, H: 6, Near: []sheet.Pt{pt(20, 20)}, Anchors: []sheet.Pt{pt(20, 20)}}})
	require.True(t, got[0].OK)
	require.Len(t, got[0].Leader, 2)
	assert.Equal(t, pt(20, 20), got[0].Leader[0])
	assert.False(t, got[0].Rect.Overlaps(rect(10, 10, 20, 20)))
}

func TestLeaderNeverPassesThroughLettering(t *testing.T) {
	b := NewBoard(rect(0, 0, 60, 60))
	wall := rect(24, 0, 2, 60)
	b.BlockText(wall)
	b.Block(rect(26, 0, 34, 60))
	b.Block(rect(0, 0, 24, 60))
	got := b.Place([]Label{{W: 6, H: 6, Near: []sheet.Pt{pt(40, 40)}, Anchors: []sheet.Pt{pt(40, 40)}}})
	assert.False(t, got[0].OK, "nowhere to go but across the lettering")
}

func TestWhatCannotBePlacedIsReported(t *testing.T) {
	b := NewBoard(rect(0, 0, 10, 10))
	got := b.Place([]Label{{W: 20, H: 6, Near: []sheet.Pt{pt(5, 5)}, Anchors: []sheet.Pt{pt(5, 5)}}})
	assert.False(t, got[0].OK)
	assert.Equal(t, sheet.Rect{}, got[0].Rect)
}

// drawBoard makes a random crowd of obstacles and labels.
func drawBoard(t *rapid.T) (*Board, []sheet.Rect, []Label) {
	b := NewBoard(rect(0, 0, 160, 100))
	var blocks []sheet.Rect
	for range rapid.IntRange(0, 30).Draw(t, "blocks") {
		r := rect(rapid.Float64Range(0, 190).Draw(t, "x"), rapid.Float64Range(0, 140).Draw(t, "y"),
			rapid.Float64Range(0.5, 20).Draw(t, "w"), rapid.Float64Range(0.5, 20).Draw(t, "h"))
		blocks = append(blocks, r)
		b.Block(r)
	}
	var labels []Label
	for i := range rapid.IntRange(1, 30).Draw(t, "labels") {
		x, y := rapid.Float64Range(0, 200).Draw(t, "lx"), rapid.Float64Range(0, 150).Draw(t, "ly")
		labels = append(labels, Label{
			Name: fmt.Sprint(i), W: 6, H: 5,
			Near:    []sheet.Pt{pt(x+4, y), pt(x-4, y), pt(x, y-4), pt(x, y+4)},
			Anchors: []sheet.Pt{pt(x, y)},
		})
	}
	return b, blocks, labels
}

func TestNothingOverlapsInAnyCrowd(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, blocks, labels := drawBoard(t)
		got := b.Place(labels)
		for i, p := range got {
			if !p.OK {
				continue
			}
			for _, r := range blocks {
				if p.Rect.Overlaps(r) {
					t.Fatalf("label %d lies on an obstacle", i)
				}
			}
			for k, q := range got {
				if k > i && q.OK && p.Rect.Overlaps(q.Rect) {
					t.Fatalf("labels %d and %d overlap", i, k)
				}
				if k != i && q.Leader != nil && Crosses(q.Leader[0], q.Leader[1], p.Rect) {
					t.Fatalf("leader of %d passes under label %d", k, i)
				}
			}
		}
	})
}

func TestPlacingTwiceGivesTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, blocks, labels := drawBoard(t)
		c := NewBoard(rect(0, 0, 160, 100))
		for _, r := range blocks {
			c.Block(r)
		}
		got, again := b.Place(labels), c.Place(labels)
		for i := range got {
			if got[i].Rect != again[i].Rect {
				t.Fatalf("label %d moved", i)
			}
		}
	})
}

func TestRowSpreadsWithLeastShift(t *testing.T) {
	got, ok := Row([]sheet.MM{10, 11, 30}, 4, 0, 40)
	require.True(t, ok)
	plantest.Near(t, []float64{8.5, 12.5, 30}, floats(got), 1e-9)
	got, ok = Row([]sheet.MM{0, 0, 0}, 4, 0, 40)
	require.True(t, ok)
	plantest.Near(t, []float64{0, 4, 8}, floats(got), 1e-9)
	_, ok = Row([]sheet.MM{0, 0, 0}, 4, 0, 7)
	assert.False(t, ok)
}

func floats(in []sheet.MM) (out []float64) {
	for _, x := range in {
		out = append(out, float64(x))
	}
	return out
}

func TestSlotsKeepOrderAndStayOffClosedIntervals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 12).Draw(t, "n")
		var wish []sheet.MM
		x := 0.0
		for range n {
			x += rapid.Float64Range(0, 12).Draw(t, "d")
			wish = append(wish, sheet.MM(x))
		}
		var closed [][2]sheet.MM
		for range rapid.IntRange(0, 6).Draw(t, "closed") {
			a := rapid.Float64Range(0, 120).Draw(t, "a")
			closed = append(closed, [2]sheet.MM{sheet.MM(a), sheet.MM(a + rapid.Float64Range(0, 5).Draw(t, "l"))})
		}
		mid, ok := Slots(wish, 3, closed, -20, 160, 0.25)
		if !ok {
			return
		}
		for i, m := range mid {
			if i > 0 && m-mid[i-1] < 3-1e-6 {
				t.Fatalf("boxes %d and %d overlap", i-1, i)
			}
			for _, c := range closed {
				if m+1.5 > c[0]+1e-6 && m-1.5 < c[1]-1e-6 {
					t.Fatalf("box %d stands on a closed interval", i)
				}
			}
		}
	})
}

func TestSlotsTellWhenThereIsNoRoom(t *testing.T) {
	_, ok := Slots([]sheet.MM{1, 2, 3}, 4, nil, 0, 10, 0.25)
	assert.False(t, ok)
}
