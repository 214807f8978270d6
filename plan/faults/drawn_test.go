package faults_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/pipeline"
	"galewright/plan/read"
	"galewright/render"
)

// drawn are faults of drawing: what is asked of the sheets of the base,
// made ten times as long where it is to be too long.
var drawn = map[plan.Code]func(t *testing.T, base string) plan.Diagnostics{
	"unknown-paper": func(t *testing.T, base string) plan.Diagnostics {
		return sheetsOf(t, base, render.Options{Paper: "a9"})
	},
	"no-such-sheet": func(t *testing.T, base string) plan.Diagnostics {
		return sheetsOf(t, base, render.Options{Sheets: []string{"9xx"}})
	},
	"no-such-wall": func(t *testing.T, base string) plan.Diagnostics {
		_, ds := render.Poster(modelOf(t, base), "9S", "arch-d", render.Options{Paper: "letter"})
		return ds
	},
	"no-room-on-sheet": func(t *testing.T, base string) plan.Diagnostics {
		return sheetsOf(t, base+crowd(16), render.Options{Paper: "letter"})
	},
	"label-without-place": func(t *testing.T, base string) plan.Diagnostics {
		return sheetsOf(t, strings.ReplaceAll(base, "2x6 @ 16in", "2x6 @ 4in")+crowd(4), render.Options{Paper: "letter"})
	},
	"paper-too-small": func(t *testing.T, base string) plan.Diagnostics {
		_, ds := render.Draw(tall(t, base), render.Options{Paper: "letter"})
		return ds
	},
}

// tall is the base with stories four hundred feet high, which no reader would take.
func tall(t *testing.T, base string) *render.Model {
	t.Helper()
	p, ds := read.Plan("base.toml", []byte(base), catalog)
	require.False(t, ds.Errors(), "%v", ds)
	p.Lumber.Stud = 4800
	for i, l := range p.Levels {
		l.PlateHeight = 4800
		if i > 0 {
			l.Floor = p.Levels[i-1].Top() + l.FloorDepth
		}
	}
	r, _ := pipeline.From(p)
	require.NotNil(t, r.Schedule)
	return &render.Model{House: r.House, Placement: r.Placement, Schedule: r.Schedule, Salt: r.Salt}
}

// crowd is an item of its own for every stud of the long walls, step inches
// apart.
func crowd(step int) string {
	var b strings.Builder
	for _, wall := range []string{"1S", "1N", "2S", "2N"} {
		for i := 1; i < 288/step; i++ {
			mark := fmt.Sprintf("thing-for-stud-%d-of-wall-%s", i, wall)
			fmt.Fprintf(&b, "[[item]]\nmark = %q\nkind = \"clip\"\nthickness = \"20 ga\"\nnails = { type = \"8d x 1 1/2\", to_stud = 1, to_plate = 1 }\n", mark)
			fmt.Fprintf(&b, "[[rule]]\nat = \"stud-top\"\nuse = %q\nwhere = { wall = %q, from = \"%din\", to = \"%din\" }\n", mark, wall, step*i-step/2+1, step*i+step/2-1)
		}
	}
	return b.String()
}

func modelOf(t *testing.T, src string) *render.Model {
	r, ds := pipeline.Run("base.toml", []byte(src), catalog)
	require.NotNil(t, r.Schedule, "%.2000v", ds)
	return &render.Model{House: r.House, Placement: r.Placement, Schedule: r.Schedule, Salt: r.Salt}
}

func sheetsOf(t *testing.T, src string, o render.Options) plan.Diagnostics {
	_, ds := render.Draw(modelOf(t, src), o)
	return ds
}
