package sheet

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestSmallestGapIsTheStripOfPaperBetweenStrokes(t *testing.T) {
	member := Style{Pen: PenMember, Layer: LayerMember}
	level := func(y, x0, x1 MM) Line { return Line{Style: member, A: Pt{x1, y}, B: Pt{x0, y}} }
	other := level(10.5, 0, 50)
	other.Layer = LayerDimension
	for _, c := range []struct {
		name  string
		marks []Mark
		want  MM // 0 = none
	}{
		{"one alone", []Mark{level(10, 0, 50)}, 0},
		{"two", []Mark{level(12, 0, 50), level(10, 0, 50)}, 2 - 0.35},
		{"end to end", []Mark{level(10, 0, 20), level(12, 19, 50)}, 0},
		{"on each other", []Mark{level(10, 0, 20), level(10, 0, 20)}, 0},
		{"on another layer", []Mark{level(10, 0, 50), other}, 0},
		{"the sides of a stud", []Mark{Polyline{Style: member, Closed: true, Pts: []Pt{{5, 0}, {6, 0}, {6, 40}, {5, 40}}}}, 1 - 0.35},
		{"the nearest of three", []Mark{level(10, 0, 50), level(14, 0, 50), level(15, 0, 50)}, 1 - 0.35},
	} {
		g, ok := SmallestGap(&Sheet{Marks: c.marks})
		require.Equal(t, c.want > 0, ok, c.name)
		if ok {
			require.InDelta(t, float64(c.want), float64(g.Clear), 1e-9, c.name)
		}
	}
}

func TestSmallestLetteringIsMeasuredByItsCapitals(t *testing.T) {
	_, _, ok := SmallestLettering(&Sheet{})
	require.False(t, ok)
	x, cap, ok := SmallestLettering(&Sheet{Marks: []Mark{Text{Size: SizeDim, S: "a"}, Text{Size: SizeNote, S: "b"}, Text{Size: 1}}})
	require.True(t, ok)
	require.Equal(t, "b", x.S)
	require.InDelta(t, 2.4, float64(cap), 1e-9)
}
