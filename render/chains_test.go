package render

import (
	"testing"

	"galewright/render/page/pagetest"

	"github.com/stretchr/testify/assert"
)

func TestRingsSayWhereToLook(t *testing.T) {
	m := pagetest.Loaded(t, "marsh-wren.toml")
	set, _ := Draw(m, Options{Paper: "arch-d"})
	numbers := map[string]bool{}
	for _, s := range set.Sheets {
		numbers[s.Title.Sheet] = true
	}
	links := 0
	chains, _ := Draw(m, Options{Paper: "arch-d", Sheets: []string{"3xx"}})
	for _, x := range pagetest.Texts(chains.Sheets) {
		if x.Link != "" {
			links++
			assert.True(t, numbers[x.Link], x.Link)
			assert.Equal(t, "see "+x.Link, x.S)
		}
	}
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
