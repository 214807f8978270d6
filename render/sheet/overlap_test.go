package sheet

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestOverlapsAreThoseOfEveryPair(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sh := &Sheet{}
		for range rapid.IntRange(0, 25).Draw(t, "n") {
			sh.Marks = append(sh.Marks, Text{
				At:     Pt{MM(rapid.Float64Range(0, 60).Draw(t, "x")), MM(rapid.Float64Range(0, 60).Draw(t, "y"))},
				Size:   MM(rapid.Float64Range(2, 8).Draw(t, "size")),
				Angle:  float64(rapid.IntRange(0, 3).Draw(t, "turn") * 90),
				Anchor: Anchor(rapid.IntRange(0, 2).Draw(t, "anchor")),
				S:      rapid.StringMatching(`[a-z0-9]{0,6}`).Draw(t, "s"),
			})
		}
		want := 0
		for i, a := range sh.Marks {
			for _, b := range sh.Marks[i+1:] {
				x, y := a.(Text), b.(Text)
				if x.S != "" && y.S != "" && x.Box().Inset(0.05).Overlaps(y.Box().Inset(0.05)) {
					want++
				}
			}
		}
		require.Len(t, TextOverlaps(sh, 0.1), want)
	})
}
