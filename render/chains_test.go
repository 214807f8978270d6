package render

import (
	"strings"
	"testing"

	"galewright/render/page/pagetest"
	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
)

func TestRingsSayWhereToLook(t *testing.T) {
	m := pagetest.Loaded(t, "marsh-wren.toml")
	set, _ := Draw(m, Options{Paper: "arch-d"})
	numbers := map[string]bool{}
	for _, s := range set.Sheets {
		numbers[s.Title.Sheet] = true
	}
	links, sections := 0, 0
	chains, _ := Draw(m, Options{Paper: "arch-d", Sheets: []string{"6xx"}})
	for _, s := range chains.Sheets {
		if !strings.HasPrefix(s.Title.SheetTitle, "Load path chains") {
			continue
		}
		for _, x := range pagetest.Texts([]*sheet.Sheet{s}) {
			switch {
			case x.Link == "":
			case strings.HasPrefix(x.S, "Line "):
				if !strings.Contains(x.S, "(continued)") {
					sections++
				}
				assert.Regexp(t, "^Line .*, section on "+x.Link+"$", x.S)
			default:
				links++
				assert.Equal(t, "see "+x.Link, x.S)
			}
			assert.True(t, x.Link == "" || numbers[x.Link], x.Link)
		}
	}
	asked := 0
	for _, c := range m.Loads.Chains {
		if c.Weak >= 0 {
			asked++
		}
	}
	assert.Equal(t, asked, sections)
	steps := 0
	for _, c := range m.Loads.Chains {
		steps += len(c.Links)
	}
	assert.Equal(t, steps, links)
}

func TestNoLoadsNoChains(t *testing.T) {
	m := pagetest.Loaded(t, "marsh-wren.toml")
	m.Loads = nil
	set, _ := Draw(m, Options{Paper: "arch-d"})
	for _, s := range set.Sheets {
		assert.NotContains(t, s.Title.Sheet, "S-3")
	}
}
