package lists

import (
	"strconv"
	"strings"
	"testing"

	"galewright/plan/capacity"
	"galewright/plan/loadpath"
	"galewright/render/page"
	"galewright/render/page/pagetest"

	"github.com/stretchr/testify/require"
)

func TestLoadSheetTellsEveryGapAndTheLargestRatio(t *testing.T) {
	m := pagetest.Loaded(t, "marsh-wren.toml")
	c := pagetest.Context(t, m, "arch-d")
	gaps, over := 0, map[string]bool{}
	for _, l := range m.Loads.Links {
		host, _, _ := strings.Cut(l.Where, ",")
		switch {
		case l.Gap != "":
			gaps++
		case l.Ratio > 1:
			over[l.Check.ID+host] = true
		}
	}
	told := 0
	for _, r := range gapTable(c).Rows {
		if !r.Group {
			n, err := strconv.Atoi(r.Cells[1].S)
			require.NoError(t, err)
			told += n
		}
	}
	require.Equal(t, gaps, told)
	bold := 0
	for _, r := range governTable(c).Rows {
		if r.Group {
			continue
		}
		x, err := strconv.ParseFloat(strings.TrimSuffix(r.Cells[5].S, capacity.Star), 64)
		require.NoError(t, err)
		require.Equal(t, x > 1, r.Bold, "%v", r.Cells)
		if r.Bold {
			bold++
		}
	}
	require.Equal(t, len(over), bold)
}

func TestNoLoadsNoLoadSheet(t *testing.T) {
	m := pagetest.TextHouse()
	require.Empty(t, LoadPages(pagetest.Context(t, m, "letter")))
	m.Loads = &loadpath.Report{}
	require.Empty(t, LoadPages(pagetest.Context(t, m, "letter")))
}

func TestLoadSheetNeverSaysSafe(t *testing.T) {
	c := pagetest.Context(t, pagetest.Loaded(t, "marsh-wren.toml"), "letter")
	pages := LoadPages(c)
	page.Number(pages)
	for _, p := range pages {
		p.Draw(p)
	}
	text := strings.ToLower(strings.Join(lines(pages), " "))
	for _, s := range []string{"safe", "passes", "ok ", "complies"} {
		require.NotContains(t, text, s)
	}
	require.Contains(t, text, "engineer of record")
}

func TestRatioOverOneNeverReadsOne(t *testing.T) {
	for r, want := range map[float64]string{0.996: "1.00", 1: "1.00", 1.0001: "1.001", 1.0049: "1.005", 1.006: "1.01", 0: "0.00"} {
		require.Equal(t, want, page.Ratio(r))
	}
}
