package lists

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/loadpath"
	"galewright/render/page"
	"galewright/render/page/pagetest"
	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// chainSheets draws the chains of a model on a paper.
func chainSheets(t *testing.T, m *page.Model, paper string) []*sheet.Sheet {
	c := pagetest.Context(t, m, paper)
	return pagetest.Drawn(c, ChainPages(c))
}

func TestEveryBearingLineHasItsChain(t *testing.T) {
	m := pagetest.Loaded(t, "marsh-wren.toml")
	for _, paper := range []string{"arch-d", "letter"} {
		all := pagetest.Texts(chainSheets(t, m, paper))
		weak := 0
		for _, ch := range m.Loads.Chains {
			found := false
			for _, x := range all {
				found = found || x.S == "Line "+ch.Name && x.Bold
			}
			assert.True(t, found, "line %s on %s", ch.Name, paper)
			if ch.Weak >= 0 {
				weak++
			}
		}
		marked := 0
		for _, x := range all {
			if strings.HasPrefix(x.S, "WEAKEST") {
				assert.True(t, x.Bold)
				marked++
			}
		}
		assert.Equal(t, weak, marked, "one weakest link a chain that is asked anything, on %s", paper)
	}
}

// forms counts what draws the links: heavy outlines and black pointers.
func forms(sheets []*sheet.Sheet) (heavy, pointers int) {
	for _, s := range sheets {
		for _, m := range s.Marks {
			switch x := m.(type) {
			case sheet.Path:
				if x.Pen == sheet.PenHardware {
					heavy++
				}
			case sheet.Polyline:
				if x.Closed && x.Fill == sheet.Black && len(x.Pts) == 3 {
					pointers++
				}
			}
		}
	}
	return heavy, pointers
}

func TestWeakestLinkIsToldByFormAndWeight(t *testing.T) {
	kind := &loadpath.Check{ID: "x"}
	link := func(demand float64, gap string) loadpath.ChainLink {
		l := &loadpath.Link{Check: kind, ID: "1S-16-ST", Unit: "lb", Demand: demand, Gap: gap, Ratio: demand / 1000, Capacity: &loadpath.Capacity{Value: 1000}}
		if gap != "" {
			l.Capacity, l.Ratio = nil, math.Inf(1)
		}
		return loadpath.ChainLink{Title: "plate to studs", Kind: plan.StudTop, Joints: 3, Gaps: 1, Worst: l}
	}
	m := pagetest.Loaded(t, "marsh-wren.toml")
	for name, c := range map[string]struct {
		links           []loadpath.ChainLink
		weak            int
		heavy, pointers int // beside the key's
	}{
		"closed":  {[]loadpath.ChainLink{link(500, ""), link(800, ""), link(0, "")}, 1, 1, 1},
		"gap":     {[]loadpath.ChainLink{link(500, ""), link(800, "no hardware at this joint")}, 1, 2, 1},
		"nothing": {[]loadpath.ChainLink{link(0, ""), link(0, "")}, -1, 0, 0},
	} {
		one := *m
		loads := *m.Loads
		loads.Chains = []*loadpath.Chain{{Name: "1S", Links: c.links, Weak: c.weak}}
		one.Loads = &loads
		heavy, pointers := forms(chainSheets(t, &one, "arch-d"))
		assert.Equal(t, 1+2+c.heavy, heavy, name)
		assert.Equal(t, 2+c.pointers, pointers, name)
	}
}

// Each link that something is asked of and whose worst place is a joint shows that
// joint in space, with its own steel the heaviest lines.
func TestLoadedLinksShowTheirJointInSpace(t *testing.T) {
	m := pagetest.Loaded(t, "marsh-wren.toml")
	want := 0
	for _, ch := range m.Loads.Chains {
		for i, g := range ch.Links {
			if formOf(ch, i) != linkIdle && g.Worst.Joint != nil {
				want++
			}
		}
	}
	require.Greater(t, want, 20)
	heavy := 0
	for _, s := range chainSheets(t, m, "arch-d") {
		for _, mk := range s.Marks {
			if p, ok := mk.(sheet.Path); ok && p.Pen == sheet.PenCut && len(p.Segs) > 7 && p.Segs[1].Op == 'L' && p.Segs[2].Op == 'M' {
				heavy++
			}
		}
	}
	assert.Equal(t, want, heavy)
}

func TestChainsTellTheirLimits(t *testing.T) {
	// What the method's limits are stands beside the chains, and by which procedure
	// the wind was worked out; what no chain shows is told there too.
	m := pagetest.Loaded(t, "marsh-wren.toml")
	limited := *m.Loads
	limited.Limits = []string{"an invented limit"}
	require.Contains(t, chainCaution(&limited), "Limit of the method: an invented limit.")
	s := chainCaution(m.Loads)
	require.Contains(t, s, "engineer of record")
	require.Contains(t, s, "Wind: ASCE 7-22, directional (chapter 27), GCpi +/-0.18")
	require.NotContains(t, s, "Beside the chains", "it holds all members down")
	m = pagetest.Loaded(t, "shed.toml") // its overhangs are tied by nothing, and no wall of it is sheathed to resist
	s = chainCaution(m.Loads)
	lifted := 0
	for _, l := range m.Loads.Links {
		if l.Joint == nil && l.Gap != "" {
			lifted++
		}
	}
	require.Positive(t, lifted)
	require.Contains(t, s, fmt.Sprintf("Beside the chains: %d gap", lifted), "members that nothing holds down are in no chain")
	bare := *m.Loads
	bare.Links = slices.DeleteFunc(slices.Clone(bare.Links), func(l *loadpath.Link) bool { return l.Joint == nil })
	require.NotContains(t, chainCaution(&bare), "Beside the chains")
	bare.Links = append(bare.Links[:len(bare.Links):len(bare.Links)], &loadpath.Link{Gap: "no sheathed segment", Demand: 100})
	require.Contains(t, chainCaution(&bare), "Beside the chains: 1 gap")
}
