package detail

import (
	"path/filepath"
	"testing"

	"galewright/plan"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/schedule"
	"galewright/render/page"
	"galewright/render/page/pagetest"
	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// holesOf counts the black and the open holes of a detail.
func holesOf(d *draft) (black, open int) {
	for _, m := range d.Marks {
		if c, ok := m.(sheet.Circle); ok && c.Layer == sheet.LayerHardware {
			if c.Fill == sheet.Black {
				black++
			} else {
				open++
			}
		}
	}
	return black, open
}

// holesDrawn holds the detail of an item to its catalog row: every fastener
// of every end is a black hole, seen or drawn apart where the wood hides it,
// and every hole that stays empty an open one.
func holesDrawn(t *testing.T, c *page.Context, l *schedule.Line, what string) {
	t.Helper()
	fasteners, empty := 0, 0
	for _, f := range l.Item.Fasteners {
		fasteners += f.Total()
		empty += max(f.Holes-f.Count, 0) * max(f.Parts, 1)
	}
	d, _ := detail(c, newDetailItem(l))
	black, open := holesOf(d)
	assert.Equal(t, fasteners, black, "%s: black holes of %s, a %s", what, l.Item.Mark, l.Item.Kind.Name)
	assert.Equal(t, empty, open, "%s: open holes of %s", what, l.Item.Mark)
}

func TestDetailsShowEveryFastenerOfEveryItemOfTheExamples(t *testing.T) {
	kinds := map[plan.ItemKind]bool{}
	for _, f := range pagetest.ExampleFiles() {
		m := pagetest.Model(f)
		c := pagetest.Context(t, m, "arch-d")
		for _, l := range m.Schedule.Lines {
			if len(l.Pieces) > 0 {
				kinds[l.Item.Kind.Name] = true
				holesDrawn(t, c, l, filepath.Base(f))
			}
		}
	}
	for _, k := range []plan.ItemKind{"clip", "strap", "hanger", "post base", "post cap", "hold-down", "hold-down pair", "opening strap", "ridge strap", "collector strap"} {
		assert.True(t, kinds[k], "no example has a %s", k)
	}
}

// The same for one item of each kind, with odd counts, with holes that stay
// open and with ends that differ.
func TestDetailsShowEveryFastenerOfEveryKind(t *testing.T) {
	m := detailHouse(t)
	c := pagetest.Context(t, m, "arch-d")
	for _, l := range m.Schedule.Lines {
		holesDrawn(t, c, l, "as it is")
		if len(l.Item.Fasteners) == 0 {
			continue
		}
		for i, edit := range []func(fs []plan.Fasteners) []plan.Fasteners{
			func(fs []plan.Fasteners) []plan.Fasteners { fs[0].Count = 5; return fs },
			func(fs []plan.Fasteners) []plan.Fasteners { fs[0].Count, fs[0].Holes = 4, 7; return fs },
			func(fs []plan.Fasteners) []plan.Fasteners {
				if l.Item.Kind.Name == "hold-down" || l.Item.Kind.Name == "post base" {
					return fs
				}
				a, b := fs[0], fs[0]
				a.Part, a.Count, a.Parts, b.Part, b.Count, b.Parts = "to stud", 3, 1, "to girder", 6, 1
				return []plan.Fasteners{a, b}
			},
		} {
			src := clonePlanItem(l.Item.Item)
			src.Fasteners = edit(src.Fasteners)
			cat, ds := hardware.New([]*plan.Item{src})
			require.False(t, ds.Errors(), "%v", ds)
			pc := *l.Pieces[0]
			pc.Item = cat.Items[0]
			holesDrawn(t, c, &schedule.Line{Number: 1, Item: pc.Item, Pieces: []*placement.Piece{&pc}}, "edit "+string(rune('a'+i)))
		}
	}
}

// Six nails for a whole strap are three at each end, in all that is drawn.
func TestACountForTheWholeIsDrawnAsTwoEnds(t *testing.T) {
	c := pagetest.Context(t, detailHouse(t), "arch-d")
	var got []int
	for _, f := range []plan.Fasteners{{Part: "all", Count: 6, Parts: 1}, {Part: "each end", Count: 3, Parts: 2}} {
		f.Nail = "10d x 1 1/2"
		l := *detailHouse(t).Schedule.Lines[1]
		cat, ds := hardware.New([]*plan.Item{{Mark: "s", Kind: "strap", Length: 30, Width: 1.375, Gauge: "19", Fasteners: []plan.Fasteners{f}}})
		require.False(t, ds.Errors())
		l.Item = cat.Items[0]
		it := newDetailItem(&l)
		low, high, _ := it.ends()
		require.Len(t, low, 3)
		require.Equal(t, low, high)
		d, _ := detail(c, it)
		black, _ := holesOf(d)
		got = append(got, black)
	}
	require.Equal(t, []int{6, 6}, got)
}
