package render

import (
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/pipeline"
	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// papersLooked are the papers every test of whole sheets runs on.
var papersLooked = []string{"arch-d", "tabloid", "letter"}

// exampleModel runs an example plan through the stages before drawing.
func exampleModel(t testing.TB, name string) *Model {
	t.Helper()
	return modelOf(filepath.Join(exampleFolder(), name))
}

// exampleFolder is the folder of example plans, seen from the package under test.
func exampleFolder() string {
	up := ".."
	for range 4 {
		if _, err := os.Stat(filepath.Join(up, "go.mod")); err == nil {
			break
		}
		up = filepath.Join(up, "..")
	}
	return filepath.Join(up, "examples")
}

// exampleFiles returns the files of all example plans.
func exampleFiles() (plans []string) {
	files, _ := filepath.Glob(filepath.Join(exampleFolder(), "*.toml"))
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err == nil && strings.Contains(string(src), "[[wall]]") { // not a catalog
			plans = append(plans, file)
		}
	}
	return plans
}

// modelOf runs a plan through the stages before drawing.
func modelOf(file string) *Model {
	src, err := os.ReadFile(file)
	if err != nil {
		panic(err)
	}
	dir := filepath.Dir(file)
	r, faults := pipeline.Run(file, src, func(name string) ([]byte, error) { return os.ReadFile(filepath.Join(dir, name)) })
	if faults.Errors() {
		panic(faults[0].String())
	}
	return &Model{House: r.House, Placement: r.Placement, Schedule: r.Schedule}
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
	for _, file := range exampleFiles() {
		m := modelOf(file)
		for _, paper := range papersLooked {
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
			if homeOf(pc) == onElevation {
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
			frame := frameOf(s.Paper)
			for _, k := range s.Marks {
				assert.True(t, frame.Holds(sheet.Bounds(k, defs), 0.05), "%s: %#v", s.Title.Sheet, k)
			}
		}
	})
}

// The distance written at a stud's foot is the stud's own place: the figures
// of a wall, read in order, are the near edges of what stands on its plate.
func TestRunningDimensionsAreTheStudsNearEdges(t *testing.T) {
	m := exampleModel(t, "shed.toml")
	c, ok := newContext(m, Options{Paper: "arch-d"})
	require.True(t, ok)
	for _, e := range elevations(c) {
		for _, p := range e.split() {
			for k, i := range p.own {
				var want []float64
				for _, mem := range m.House.Members {
					if mem.Wall == p.stories[i].wall && standing(mem) && mem.Z0 < p.stories[i].floor+3 {
						want = append(want, mem.S0)
					}
				}
				require.NotEmpty(t, want)
				for _, f := range p.plan.feet[k] {
					assert.Condition(t, func() bool {
						for _, w := range want {
							if abs(w-(f.u-p.stories[i].shift)) < 1.0/16 {
								return true
							}
						}
						return false
					}, "wall %s: a figure %s with no stud", p.stories[i].wall.Name, f.text)
				}
			}
		}
	}
}

// A strap is drawn where it lies and as long as it is: its length on paper is
// its length in the house at the sheet's scale (25.4 mm to the inch by
// definition).
func TestSteelIsDrawnToLength(t *testing.T) {
	m := exampleModel(t, "marsh-wren.toml")
	c, ok := newContext(m, Options{Paper: "arch-d"})
	require.True(t, ok)
	seen := 0
	for _, e := range elevations(c) {
		for _, p := range e.split() {
			for _, pc := range p.pieces {
				if !pc.Item.Kind.Strap || len(pc.Path) != 2 || !p.owns(pc) || pc.Path[0].Flat() != pc.Path[1].Flat() {
					continue
				}
				seen++
				line := p.centerLine(p.vp, pc)
				require.Len(t, line, 2, pc.Tag)
				want := pc.Path[1].Sub(pc.Path[0]).Len() * 25.4 / p.scale.Ratio
				assert.InDelta(t, want, dist(line[0], line[1]), 1e-6, pc.Tag)
			}
		}
	}
	assert.Greater(t, seen, 50)
}

// Whoever stands outside sees stations grow from left to right on every wall.
func TestStationsGrowToTheRight(t *testing.T) {
	m := exampleModel(t, "marsh-wren.toml")
	c, ok := newContext(m, Options{})
	require.True(t, ok)
	for _, e := range elevations(c) {
		for i, s := range e.stories {
			f := s.wall.Frame()
			a, b := e.flat(f.At(0, 0, s.floor)), e.flat(f.At(s.wall.Length(), 0, s.floor))
			assert.InDelta(t, e.stories[i].shift, a.X, 1e-6, s.wall.Name)
			assert.InDelta(t, s.wall.Length(), b.X-a.X, 1e-6, s.wall.Name)
		}
	}
}

// Parts of a wall that is too long for the paper leave nothing out and show
// nothing twice as their own, and each names the sheet the wall goes on on.
func TestMatchLinesCoverTheWall(t *testing.T) {
	m := exampleModel(t, "curlew-row.toml")
	c, ok := newContext(m, Options{Paper: "letter"})
	require.True(t, ok)
	broken := 0
	for _, e := range elevations(c) {
		parts := e.split()
		for i, p := range parts {
			if p.left == nil {
				assert.LessOrEqual(t, p.from, e.u0)
			} else {
				broken++
				assert.Equal(t, p.from, parts[i-1].to)
				assert.Same(t, p, parts[i-1].right)
				assert.Less(t, p.su0, p.from, "some of the neighbor is shown again")
			}
			if p.right == nil {
				assert.GreaterOrEqual(t, p.to, e.u1)
			}
			for _, h := range p.shapes {
				u0, u1, _, _ := h.bounds()
				if standing(h.m) && p.left != nil {
					assert.False(t, u0 < p.from && p.from < u1, "match line through %s", h.m.ID)
				}
			}
		}
	}
	assert.Positive(t, broken)
}

func TestFilterOfSheets(t *testing.T) {
	for _, x := range []struct {
		filter, number string
		want           bool
	}{
		{"2xx", "S-201", true},
		{"2xx", "S-301", false},
		{"S-2xx", "S-215", true},
		{"S-201", "S-201", true},
		{"201", "S-201", true},
		{"s-201", "S-201", true},
		{"S-2*", "S-209", true},
		{"S-20", "S-201", false},
		{"[", "S-201", false},
	} {
		assert.Equal(t, x.want, matches(x.filter, x.number), "%s on %s", x.filter, x.number)
	}
}

// An architect's scale rule has one foot at 1/2 in on the 1/2 in scale, and
// at 12.7 mm by the inch's definition.
func TestScalesAreWhatTheySay(t *testing.T) {
	for _, s := range architectural {
		inches := map[string]float64{
			`1" = 1'-0"`: 1, `3/4" = 1'-0"`: 0.75, `1/2" = 1'-0"`: 0.5, `3/8" = 1'-0"`: 0.375,
			`1/4" = 1'-0"`: 0.25, `3/16" = 1'-0"`: 0.1875, `1/8" = 1'-0"`: 0.125, `1/16" = 1'-0"`: 0.0625,
		}[s.Name]
		require.NotZero(t, inches, s.Name)
		assert.InDelta(t, inches*25.4, 12*s.K(), 1e-9, s.Name)
	}
	s, ok := fit(architectural, 336, 120, 300, 200)
	require.True(t, ok)
	assert.Equal(t, `3/8" = 1'-0"`, s.Name)
	_, ok = fit(architectural, 1e6, 120, 300, 200)
	assert.False(t, ok)
}

func TestViewportIsTrueToScaleAndUpright(t *testing.T) {
	v := newViewport(Scale{"1:24", 24}, sheet.Pt{X: 50, Y: 200}, 10, 110, 0, 60)
	assert.InDelta(t, 50, float64(v.Pt(10, 0).X), 1e-9)
	assert.InDelta(t, 200, float64(v.Pt(10, 0).Y), 1e-9)
	assert.InDelta(t, 12*25.4/24, float64(v.Pt(22, 0).X-v.Pt(10, 0).X), 1e-9)
	assert.Less(t, float64(v.Pt(10, 12).Y), float64(v.Pt(10, 0).Y), "up the house is up the paper")
	a, b, ok := v.Segment(geom.Vec2{X: 0, Y: 30}, geom.Vec2{X: 200, Y: 30})
	require.True(t, ok)
	assert.InDelta(t, 50, float64(a.X), 1e-9)
	assert.InDelta(t, 50+100*25.4/24, float64(b.X), 1e-9)
	_, _, ok = v.Segment(geom.Vec2{X: 0, Y: 90}, geom.Vec2{X: 200, Y: 90})
	assert.False(t, ok)
}
