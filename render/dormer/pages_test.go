package dormer

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/render/page"
	"galewright/render/page/pagetest"
	"galewright/render/scene"
	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// tied is an odd house of framing with dormers, a clip at each head of
// their studs and at each foot of their corner posts.
func tied(t *testing.T, name string) *page.Model {
	src, err := os.ReadFile("../../plan/framing/testdata/odd/" + name + ".toml")
	require.NoError(t, err)
	src = append(src, `
[[item]]
mark = "stud-tie"
kind = "clip"
thickness = "17 ga"
coating = "G185"
length = "6in"
width = "1 1/4in"
nails = { type = "8d x 1 1/2", each_end = 3, coating = "hot-dip zinc" }
[[rule]]
at = "dormer-top"
use = "stud-tie"
[[rule]]
at = "dormer-foot"
use = "stud-tie"
where = { role = "post" }
`...)
	file := filepath.Join(t.TempDir(), name+".toml")
	require.NoError(t, os.WriteFile(file, src, 0o600))
	return pagetest.Model(file)
}

// Each dormer has a sheet; each piece at its studs is at home on it once, within its wall; and
// each stud and post of its walls is seen, with its station among the figures.
func TestElevationsOfDormers(t *testing.T) {
	for _, name := range []string{"dormers", "dormers-shed"} {
		m := tied(t, name)
		c := pagetest.Context(t, m, "arch-d")
		pages := Pages(c)
		require.Len(t, pages, len(m.House.Dormers))
		homes := map[string]int{}
		for _, s := range pagetest.Drawn(c, pages) {
			pagetest.OnPaper(t, s)
			pagetest.NoOverlaps(t, s, "arch-d")
			for _, mk := range s.Marks {
				if u, ok := mk.(sheet.Use); ok && u.Piece != nil && u.Piece.Home {
					homes[u.Piece.Tag]++
				}
			}
		}
		pieces := 0
		for _, pc := range m.Placement.Pieces {
			if page.HomeOf(pc) == page.OnDormer {
				pieces++
				assert.Equal(t, 1, homes[pc.Tag], pc.Tag)
			}
		}
		require.NotZero(t, pieces)
		for _, d := range m.House.Dormers {
			seen := map[string]bool{}
			for _, l := range looks(c, d) {
				for _, x := range l.lines {
					if m := x.Owner.(scene.Part).Member; m != nil {
						seen[m.ID] = true
					}
				}
			}
			for _, x := range m.House.Members {
				if x.Roof == d.Own && (x.Role == plan.Stud || x.Role == plan.Post) {
					assert.True(t, seen[x.ID], x.ID)
				}
			}
		}
	}
}

// Symbols stand where the steel is, however close: from one to the next on paper as in the
// house, by scale.
func TestSymbolsStandAtTheirSteel(t *testing.T) {
	m := tied(t, "dormers-shed")
	c := pagetest.Context(t, m, "arch-d")
	d := m.House.Dormers[0]
	list := looks(c, d)
	scale, ok := fit(c, list)
	require.True(t, ok)
	on := map[string]sheet.Pt{}
	for _, s := range pagetest.Drawn(c, Pages(c)) {
		for _, mk := range s.Marks {
			if u, ok := mk.(sheet.Use); ok && u.Piece != nil {
				on[u.Piece.Tag] = u.At
			}
		}
	}
	seen := 0
	for _, l := range list {
		for _, pc := range l.pieces {
			p, q := at(l.pieces[0]), at(pc)
			u0, _ := l.frame.Local(p.Flat())
			u1, _ := l.frame.Local(q.Flat())
			a, b := on[l.pieces[0].Tag], on[pc.Tag]
			assert.InDelta(t, (u1-u0)*scale.K(), float64(b.X-a.X), 1e-6, pc.Tag)
			assert.InDelta(t, (q.Z-p.Z)*scale.K(), float64(a.Y-b.Y), 1e-6, pc.Tag)
			seen++
		}
	}
	assert.Greater(t, seen, 10)
}

// Seen from outside, what stands nearest the front stands at its left on the right side and at
// its right on the left one, and stations of both count from it.
func TestSidesAreFoldedOut(t *testing.T) {
	m := tied(t, "dormers-shed")
	c := pagetest.Context(t, m, "arch-d")
	d := m.House.Dormers[0]
	list := looks(c, d)
	// 12 ft wide, 3 ft in, studs of its sides at 16 in from the front (framing/testdata).
	for i, k := range map[int]float64{0: -1, 2: 1} {
		l := list[i]
		for _, u := range []float64{16, 32, 48} {
			assert.True(t, slices.ContainsFunc(l.stations, func(s float64) bool { return math.Abs(s-u) < 1e-6 }), "%s: %g of %v", l.name, u, l.stations)
		}
		q := d.Frame.At(map[int]float64{0: d.From, 2: d.To}[i], d.SetBack+16, 0).Flat()
		u, in := l.frame.Local(q)
		assert.InDelta(t, k*16, u, 1e-6, l.name)
		assert.InDelta(t, 0, in, 1e-6)
		assert.True(t, geom.With(l.frame.D.Left(), l.frame.In), "%s: its inside at its left, so that it is seen from outside", l.name)
	}
	assert.InDelta(t, 6*12+2, levelOf(list[1], "top of plates"), 1e-6)
	assert.InDelta(t, 3*12+6, levelOf(list[1], "sill of dw"), 1e-6)
	for _, l := range list {
		assert.InDelta(t, d.PlateHeight, highest(m.House, d, plan.UpperPlate).Z1-l.eave, 1e-6)
	}
}

func levelOf(l *look, name string) float64 {
	for _, x := range l.levels {
		if x.name == name {
			return x.z
		}
	}
	return math.NaN()
}
