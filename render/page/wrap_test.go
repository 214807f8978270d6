package page

import (
	"strings"
	"testing"

	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
)

func TestFiguresKeepTheirUnits(t *testing.T) {
	for s, want := range map[string]string{
		`threaded rod, cut 1'-9 1/2", nut at each end`: `threaded|rod,|cut|1'-9 1/2",|nut|at|each|end`,
		`studs 2x6 at 16" o.c. and 415 lb.`:            `studs|2x6|at|16" o.c.|and|415 lb.`,
		`9 - 10d x 2 1/2 each end`:                     `9|-|10d x 2 1/2|each|end`,
		`(No. 12 x 1 1/2), NDS 2018 Table L3`:          `(No. 12 x 1 1/2),|NDS|2018|Table L3`,
		`4'-0" x 8'-0" panel, 3 pieces`:                `4'-0" x 8'-0"|panel,|3|pieces`,
		`two in a row, x and 3 nails`:                  `two|in|a|row,|x|and|3|nails`,
		`and/or 1/2 in`:                                `and/or|1/2 in`,
		"":                                             "",
	} {
		assert.Equal(t, want, strings.Join(Unparted(s), "|"), s)
	}
}

func TestWrapPartsAFigureOnlyWhenItMust(t *testing.T) {
	wide := TextWidth(`1'-9 1/2"`, 2.4, false) + 0.1 // "cut 1'-9" fits too
	assert.Equal(t, []string{"cut", `1'-9 1/2"`}, Wrap(`cut 1'-9 1/2"`, 2.4, false, wide))
	assert.Equal(t, []string{"cut", "1'-9", `1/2"`}, Wrap(`cut 1'-9 1/2"`, 2.4, false, TextWidth(`1'-9 1/`, 2.4, false)))
	size := `3'-2 1/2" x 5'-2 1/2"`
	assert.Equal(t, []string{`3'-2 1/2" x`, `5'-2 1/2"`}, Wrap(size, 2.4, false, TextWidth(`3'-2 1/2" x`, 2.4, false)+0.1), "after the x if at all")
	assert.Empty(t, Wrap(" ", 2.4, false, sheet.MM(10)))
}
