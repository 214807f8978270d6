package render

import (
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"galewright/plan"
	"galewright/render/page"
	"galewright/render/page/pagetest"
	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Strips of the shed are complete on large paper, where there is room.
func TestStripsAreCompleteWhereTheyFit(t *testing.T) {
	set, _ := Draw(pagetest.Example(t, "shed.toml"), Options{Sheets: []string{"2xx"}})
	every := 0
	for _, s := range set.Sheets {
		for _, m := range s.Marks {
			if x, ok := m.(sheet.Text); ok {
				every += strings.Count(x.S, ": every piece")
				assert.NotContains(t, x.S, "but those")
			}
		}
	}
	assert.Positive(t, every)
}

// drawing is the 2xx sheets of an example on one paper.
type drawing struct {
	name   string
	m      *Model
	set    *sheet.Set
	faults plan.Diagnostics
}

// drawings holds every example on every paper, drawn once for all tests.
var drawings = sync.OnceValue(func() (out []drawing) {
	for _, file := range pagetest.ExampleFiles() {
		m := pagetest.Model(file)
		for _, paper := range pagetest.Papers {
			set, faults := Draw(m, Options{Paper: paper, Sheets: []string{"2xx"}})
			out = append(out, drawing{filepath.Base(file) + " on " + paper, m, set, faults})
		}
	}
	return out
})

// onSheets calls f with the 2xx sheets of every example on every paper.
func onSheets(t *testing.T, f func(t *testing.T, m *Model, set *sheet.Set)) {
	require.NotEmpty(t, drawings())
	for _, d := range drawings() {
		t.Run(d.name, func(t *testing.T) {
			require.Empty(t, d.faults, "%v", d.faults)
			f(t, d.m, d.set)
		})
	}
}

func TestNoLabelLiesOnAnything(t *testing.T) {
	onSheets(t, func(t *testing.T, m *Model, set *sheet.Set) {
		for _, s := range set.Sheets {
			for i, a := range s.Boxes {
				if a.Kind == "piece" {
					continue
				}
				for k, b := range s.Boxes {
					if k == i || b.Kind != "piece" && k < i {
						continue
					}
					if a.Rect.Inset(0.05).Overlaps(b.Rect) {
						t.Errorf("%s: %s %q lies on %s %q", s.Title.Sheet, a.Kind, a.What, b.Kind, b.What)
					}
				}
			}
		}
	})
}

func TestLetteringIsNeverUnderTheLeast(t *testing.T) {
	onSheets(t, func(t *testing.T, m *Model, set *sheet.Set) {
		full := strings.HasPrefix(set.Sheets[0].Paper.Name, "arch")
		for _, s := range set.Sheets {
			for _, k := range s.Marks {
				x, ok := k.(sheet.Text)
				if !ok {
					continue
				}
				high := x.Size * sheet.CapHeight
				assert.GreaterOrEqual(t, float64(high), 2.4-1e-9, "%s: %q", s.Title.Sheet, x.S)
				if full && x.Role == "dimension" {
					assert.GreaterOrEqual(t, float64(high), 3.2-1e-9, "%s: %q", s.Title.Sheet, x.S)
				}
			}
		}
	})
}

func TestEveryPieceOfAWallIsAtHomeOnce(t *testing.T) {
	onSheets(t, func(t *testing.T, m *Model, set *sheet.Set) {
		homes := map[string]int{}
		for _, s := range set.Sheets {
			for _, k := range s.Marks {
				if u, ok := k.(sheet.Use); ok && u.Piece != nil && u.Piece.Home {
					homes[u.Piece.Tag]++
				}
			}
		}
		for _, pc := range m.Placement.Pieces {
			want := 0
			if page.HomeOf(pc) == page.OnElevation {
				want = 1
			}
			assert.Equal(t, want, homes[pc.Tag], pc.Tag)
		}
	})
}

func TestEverythingStaysInsideTheBorder(t *testing.T) {
	onSheets(t, func(t *testing.T, m *Model, set *sheet.Set) {
		defs := set.Map()
		for _, s := range set.Sheets {
			frame := page.FrameOf(s.Paper)
			for _, k := range s.Marks {
				assert.True(t, frame.Holds(sheet.Bounds(k, defs), 0.05), "%s: %#v", s.Title.Sheet, k)
			}
		}
	})
}
