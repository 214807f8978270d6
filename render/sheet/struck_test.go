package sheet

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestStruckTexts(t *testing.T) {
	word := Text{At: Pt{50, 50}, Size: 4, S: "12'-3 1/2\"", Role: "dimension"}
	line := func(x0, y0, x1, y1 MM) Line {
		return Line{Style: Style{Pen: PenDim}, A: Pt{x0, y0}, B: Pt{x1, y1}}
	}
	mask := Polyline{Style: Style{Fill: White}, Closed: true, Pts: []Pt{{45, 40}, {90, 40}, {90, 55}, {45, 55}}}
	upright := word
	upright.Angle = 90
	slanting := word
	slanting.Angle = 30
	through, under, beside := line(40, 48, 100, 48), line(40, 52, 100, 52), line(10, 48, 45, 48)
	for _, x := range []struct {
		name  string
		marks []Mark
		want  int
	}{
		{"a line through it", []Mark{word, through}, 1},
		{"a slanting line through it", []Mark{line(52, 40, 56, 60), word}, 1},
		{"a line through it, upright", []Mark{upright, line(40, 40, 60, 40)}, 1},
		{"a line beside it, upright", []Mark{upright, line(52, 20, 52, 60)}, 0},
		{"a line along it, slanting", []Mark{slanting, line(51, 51.5, 51+17.32, 51.5-10)}, 0},
		{"a line through it, slanting", []Mark{slanting, line(52, 30, 60, 60)}, 1},
		{"a line under it", []Mark{word, under}, 0},
		{"a line that ends before it", []Mark{word, beside}, 0},
		{"a line with white over it, under the word", []Mark{through, mask, word}, 0},
		{"a line over the white", []Mark{mask, through, word}, 1},
		{"a line over the word", []Mark{mask, word, through}, 1},
	} {
		t.Run(x.name, func(t *testing.T) {
			require.Len(t, StruckTexts(&Sheet{Marks: x.marks}, "dimension", 0.4), x.want)
		})
	}
}
