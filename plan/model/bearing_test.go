package model_test

import (
	"fmt"
	"strings"
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Every fastener that is counted ends in wood, or check says of its piece how
// many do not; every rod bears at both ends or says that it bears on nothing.
// Nothing else is said, of the examples and of generated houses.
func TestSteelHoldsOrIsReported(t *testing.T) {
	for _, name := range examples(t) {
		t.Run(name, func(t *testing.T) {
			r, ds := put(t, source(t, name), nil)
			holdsOrReported(t, decoded(t, r), ds)
		})
	}
	t.Run("generated", func(t *testing.T) {
		few(t, func(x *rapid.T) {
			r, ds := put(x, drawHouse(x).toml(), nil)
			require.False(x, ds.Errors(), "%v", ds)
			holdsOrReported(x, decoded(x, r), ds)
		})
	})
}

func holdsOrReported(t assert.TestingT, m object, ds plan.Diagnostics) {
	want := map[string]int{} // pieces by what must be said of them
	each(m, "pieces", func(p object) {
		loose, all := 0, 0
		each(p, "fasteners", func(f object) {
			all++
			if len(f["in"].([]any)) == 0 {
				loose++
			}
		})
		counted := 0
		each(p, "ends", func(e object) { counted += int(e["count"].(float64)) })
		assert.Equal(t, counted, all, "fasteners of %s", p["tag"])
		if loose > 0 {
			want[fmt.Sprintf("%s: no wood behind %d of its ", p["mark"], loose)]++
		}
		each(p, "rods", func(r object) {
			bears(t, p, r)
		})
	})
	for prefix, n := range want {
		assert.Equal(t, n, reported(ds, prefix), prefix)
	}
	for _, d := range ds {
		if d.Code == "fastener-without-wood" {
			known := false
			for prefix := range want {
				known = known || strings.HasPrefix(d.Summary, prefix)
			}
			assert.True(t, known, "%s", d)
		}
	}
}

// reported counts the pieces that diagnostics of a summary name.
func reported(ds plan.Diagnostics, prefix string) (n int) {
	for _, d := range ds {
		if !strings.HasPrefix(d.Summary, prefix) {
			continue
		}
		_, tags, _ := strings.Cut(d.Where, ", ")
		more := 0
		if head, tail, ok := strings.Cut(tags, " and "); ok {
			fmt.Sscanf(tail, "%d more", &more)
			tags = head
		}
		n += more + len(strings.Split(tags, ", "))
	}
	return n
}

// bears holds a rod that says that it bears to that: beyond a nut's face the rod goes on by the nut, an eighth of washer and
// some thread; what the piece is cut to, and what the item is long, is the rod.
func bears(t assert.TestingT, p, r object) {
	axis, ends := r["axis_in"].([]any), r["bearings"].([]any)
	cut := r["cut_in"].(float64)
	if c := p["cut_in"].(float64); c > 0 {
		assert.InDelta(t, c, cut, 1e-3, "%s: the length ordered is that of the rod", p["tag"])
	}
	for i, e := range ends {
		b := e.(object)
		if b["kind"] == "nothing" {
			continue
		}
		beyond := point(axis[i]).length(point(b["at_in"]))
		if b["nuts"].(float64) > 0 {
			assert.GreaterOrEqual(t, beyond+1e-3, r["diameter_in"].(float64)+0.125, "%s: the nut is on the rod", p["tag"])
		}
		if b["kind"] == "washer on wood" {
			assert.NotEmpty(t, b["member"], p["tag"])
			assert.Positive(t, b["area_in2"], p["tag"])
		}
		if b["kind"] == "cast in concrete" {
			assert.NotEmpty(t, r["passes"], p["tag"])
		}
	}
}
