package detail

import (
	"path/filepath"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/steel"
	"galewright/render/page"
	"galewright/render/page/pagetest"
	"galewright/render/scene"
	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// shots returns the details of a model.
func shots(m *page.Model) (out []*shot) {
	st, house := steel.New(m.Placement), scene.New(m.House)
	for _, l := range m.Schedule.Lines {
		for _, x := range conditionsOf(l, st) {
			out = append(out, newShot(x, house))
		}
	}
	return out
}

// shotOf returns the first detail of a mark of an example.
func shotOf(t *testing.T, example, mark string) *shot {
	t.Helper()
	for _, s := range shots(pagetest.Example(t, example+".toml")) {
		if s.Item.Mark == mark {
			return s
		}
	}
	t.Fatalf("no %s on %s", mark, example)
	return nil
}

// holesOf counts the black, the open and the hidden holes of a detail.
func holesOf(d *draft) (black, open, hidden int) {
	for _, m := range d.Marks {
		if c, ok := m.(sheet.Circle); ok && c.Layer == sheet.LayerHardware {
			switch {
			case c.Fill == sheet.Black:
				black++
			case c.Pen == sheet.PenHidden:
				hidden++
			default:
				open++
			}
		}
	}
	return black, open, hidden
}

// What a framer sees as nails are the nails: every fastener of the catalog's row
// that goes in is one black hole in the views of a detail, every hole that stays empty an open
// one; those that wood or steel hides from the side that they face are dashed.
func TestEveryFastenerIsOneBlackHole(t *testing.T) {
	kinds := map[plan.ItemKind]bool{}
	for _, f := range pagetest.ExampleFiles() {
		m := pagetest.Model(f)
		c := pagetest.Context(t, m, "arch-d")
		for _, s := range shots(m) {
			kinds[s.Item.Kind.Name] = true
			fasteners, empty := 0, 0
			for _, f := range s.Item.Fasteners {
				fasteners += f.Total()
				empty += max(f.Holes-f.Count, 0) * max(f.Parts, 1)
			}
			for i := range s.Item.Ends() {
				fasteners -= s.Body.Piece.LeftOut(i)
			}
			black, open, hidden := holesOf(s.draw(c, c.DetailScales()[0]))
			what := filepath.Base(f) + ": " + s.Item.Mark + " " + s.Letter + " " + s.Body.Piece.Tag
			assert.Equal(t, fasteners+empty, black+open+hidden, "holes of %s", what)
			assert.LessOrEqual(t, black, fasteners, what)
			assert.LessOrEqual(t, open, empty, what)
			if hidden > 0 {
				t.Log(hidden, "hidden of", what)
			}
		}
	}
	for _, k := range []plan.ItemKind{"clip", "strap", "hanger", "post base", "post cap", "hold-down", "hold-down pair", "opening strap", "ridge strap", "collector strap"} {
		assert.True(t, kinds[k], "no example has a %s", k)
	}
}

// Every mark has a detail on every paper, no lettering lies on lettering, and
// nothing leaves the paper.
func TestDetailsOnEachPaper(t *testing.T) {
	for _, f := range pagetest.ExampleFiles() {
		m := pagetest.Model(f)
		for _, paper := range []string{"arch-d", "tabloid", "letter"} {
			c := pagetest.Context(t, m, paper)
			sheets := pagetest.Drawn(c, Pages(c))
			for _, l := range m.Schedule.Lines {
				if len(l.Pieces) > 0 {
					assert.NotEmpty(t, c.SheetsOf("mark "+l.Item.Mark), "%s on %s", l.Item.Mark, paper)
				}
			}
			for _, s := range sheets {
				pagetest.NoOverlaps(t, s, filepath.Base(f)+" on "+paper)
				pagetest.OnPaper(t, s)
			}
		}
	}
}

// Every piece is in one condition, and all of a condition are fastened to the
// same sizes of wood.
func TestConditionsShareOutThePieces(t *testing.T) {
	for _, f := range pagetest.ExampleFiles() {
		m := pagetest.Model(f)
		seen := map[string]int{}
		for _, s := range shots(m) {
			for _, p := range s.Pieces {
				seen[p.Tag]++
				for i, l := range p.Laid {
					assert.Equal(t, s.Pieces[0].Laid[i].Member.Section.Text, l.Member.Section.Text, "%s beside %s", p.Tag, s.Pieces[0].Tag)
				}
			}
		}
		for _, l := range m.Schedule.Lines {
			for _, p := range l.Pieces {
				assert.Equal(t, 1, seen[p.Tag], p.Tag)
			}
		}
	}
}

// A figure says the true length though the drawing is broken: the bodies of a
// hold-down pair are 1'-6 1/8" (examples/hardware.toml), with 1 1/2 in of bottom
// plate between them.
func TestBrokenStrapIsDimensionedTrue(t *testing.T) {
	s := shotOf(t, "marsh-wren", "hold-down-pair")
	c := pagetest.Context(t, pagetest.Example(t, "marsh-wren.toml"), "arch-d")
	d := s.draw(c, c.DetailScales()[0])
	_, v := s.cuts(s.looks[0])
	require.NotEmpty(t, v, "the rod through the floor is broken")
	texts := textsOf(d, "dimension")
	assert.Contains(t, texts, `1'-6 1/8"`)
	assert.Contains(t, texts, `1 1/2"`)
}

func textsOf(d *draft, role string) (out []string) {
	for _, m := range d.Marks {
		if x, ok := m.(sheet.Text); ok && x.Role == role {
			out = append(out, x.S)
		}
	}
	return out
}

// In a notch a girder is flush with its pile, so that a strap lies flat on both: of
// 2'-7 1/2" the 9 1/4 in of a 2x10 (dressed size, PS 20) are on the girder, the
// other 1'-10 1/4" on the pile.
func TestAPileIsFlushWithTheGirderInItsNotch(t *testing.T) {
	s := shotOf(t, "dunlin", "pile-strap")
	c := pagetest.Context(t, pagetest.Example(t, "dunlin.toml"), "arch-d")
	texts := textsOf(s.draw(c, c.DetailScales()[0]), "dimension")
	assert.Contains(t, texts, `9 1/4"`)
	assert.Contains(t, texts, `1'-10 1/4"`)
	assert.NotContains(t, texts, `2 3/8"`, "it bends over no step")
}

// The first look is at the face with most fasteners, the second at its edge.
func TestLooks(t *testing.T) {
	for _, c := range []struct {
		example, mark string
		names         string
	}{
		{"marsh-wren", "base-strap", "from outside, along the wall"},
		{"marsh-wren", "header-strap", "from inside, along the wall"},
		{"marsh-wren", "collector-strap", "from above, from inside"},
		{"marsh-wren", "opening-strap", "from outside, along the wall, from inside"},
		{"marsh-wren", "ridge-strap", "square to the slope, from the side, square to the slope"},
		{"marsh-wren", "rafter-clip", "from outside, along the wall"},
		{"turnstone", "sill-bolt", "from outside, along the wall"},
	} {
		var names []string
		for _, l := range shotOf(t, c.example, c.mark).looks {
			names = append(names, l.name)
		}
		assert.Equal(t, c.names, strings.Join(names, ", "), "%s of %s", c.mark, c.example)
	}
}

// What is cut out around a piece holds all of its steel, with room around it.
func TestTheSteelIsInThePicture(t *testing.T) {
	for _, f := range pagetest.ExampleFiles() {
		for _, s := range shots(pagetest.Model(f)) {
			for _, p := range points(s.Body) {
				q := s.box.local(p.Sub(s.center))
				for i, v := range []float64{q.X, q.Y, q.Z} {
					assert.LessOrEqual(t, max(v, -v), s.half[i]-1, "%s", s.Body.Piece.Tag)
				}
			}
		}
	}
}

// The words name what the fasteners find, not what the catalog hopes for.
func TestWordsSayWhatTheNailsFind(t *testing.T) {
	s := shotOf(t, "marsh-wren", "header-strap")
	c := pagetest.Context(t, pagetest.Example(t, "marsh-wren.toml"), "arch-d")
	words := strings.Join(s.words(c), "\n")
	for i := range s.Item.Ends() {
		n := map[string]int{}
		for _, f := range s.Body.Fasteners {
			if f.End == i && len(f.Runs) > 0 {
				n[memberName(f.Runs[0].Member)]++
			}
		}
		for name, count := range n {
			assert.Contains(t, words, strings.Join([]string{plural(count), "in the", name}, " "))
		}
	}
}

func plural(n int) string { return strings.TrimSuffix(plan.Counted(n, "x"), " xes") }

// Where nothing happens is left out, all that is said stays.
func TestCutsLeaveOutWoodRunningOn(t *testing.T) {
	s := shotOf(t, "marsh-wren", "hold-down-pair")
	_, v := s.cuts(s.looks[0])
	require.NotEmpty(t, v, "between the two bodies")
	mid := s.center.Z
	for _, c := range v {
		for _, f := range s.Body.Fasteners {
			z := f.Head.Z - mid
			assert.False(t, z > c.from && z < c.to, "a nail is cut out")
		}
	}
}
