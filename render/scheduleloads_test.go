package render

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"galewright/plan/loadpath"
	"galewright/plan/pipeline"
)

// loadedModel returns an example with its load path.
func loadedModel(t *testing.T, name string) *Model {
	dir := exampleFolder()
	src, err := os.ReadFile(filepath.Join(dir, name))
	require.NoError(t, err)
	r, faults := pipeline.Run(name, src, func(n string) ([]byte, error) { return os.ReadFile(filepath.Join(dir, n)) })
	require.False(t, faults.Errors(), "%v", faults)
	loads, faults := loadpath.Run(r.Placement)
	require.False(t, faults.Errors(), "%v", faults)
	return &Model{House: r.House, Placement: r.Placement, Schedule: r.Schedule, Loads: loads}
}

func TestLoadSheetTellsEveryGapAndTheLargestRatio(t *testing.T) {
	m := loadedModel(t, "marsh-wren.toml")
	c := testContext(t, m, "arch-d")
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
	for _, r := range c.gapTable().Rows {
		if !r.Group {
			n, err := strconv.Atoi(r.Cells[1].S)
			require.NoError(t, err)
			told += n
		}
	}
	require.Equal(t, gaps, told)
	bold := 0
	for _, r := range c.governTable().Rows {
		if r.Group {
			continue
		}
		x, err := strconv.ParseFloat(r.Cells[5].S, 64)
		require.NoError(t, err)
		require.Equal(t, x > 1, r.Bold, "%v", r.Cells)
		if r.Bold {
			bold++
		}
	}
	require.Equal(t, len(over), bold)
}

func TestNoLoadsNoLoadSheet(t *testing.T) {
	m := textModel()
	require.Empty(t, loadPages(testContext(t, m, "letter")))
	m.Loads = &loadpath.Report{}
	require.Empty(t, loadPages(testContext(t, m, "letter")))
}

func TestLoadSheetNeverSaysSafe(t *testing.T) {
	c := testContext(t, loadedModel(t, "marsh-wren.toml"), "letter")
	pages := loadPages(c)
	number(pages)
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
		require.Equal(t, want, ratio(r))
	}
}
