package render_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"galewright/plan/loadpath"
	"galewright/plan/pipeline"
	"galewright/render"
	"galewright/render/sheet"
)

// Every example is drawn on a large sheet and on office paper: nothing leaves
// the paper, every piece is at home once, no lettering lies on another, and
// none is lower than 3/32 in.
func TestEveryExampleIsLegibleOnEveryPaper(t *testing.T) {
	files, err := filepath.Glob(filepath.Join("..", "examples", "*.toml"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		if filepath.Base(file) == "hardware.toml" {
			continue // a catalogue
		}
		src, err := os.ReadFile(file)
		require.NoError(t, err)
		r, faults := pipeline.Run(file, src, func(n string) ([]byte, error) { return os.ReadFile(filepath.Join(filepath.Dir(file), n)) })
		require.False(t, faults.Errors(), "%v", faults)
		loads, faults := loadpath.Run(r.Placement)
		if faults.Errors() {
			loads = nil // a plan without a wind basis
		}
		for _, paper := range []string{"arch-d", "tabloid", "letter"} {
			t.Run(filepath.Base(file)+"/"+paper, func(t *testing.T) {
				set, faults := render.Draw(&render.Model{House: r.House, Placement: r.Placement, Schedule: r.Schedule, Loads: loads}, render.Options{Paper: paper})
				require.False(t, faults.Errors(), "%v", faults)
				if err := sheet.Check(set); err != nil {
					t.Errorf("%v", err)
				}
				for _, sh := range set.Sheets {
					legible(t, sh)
				}
			})
		}
	}
}

func legible(t *testing.T, sh *sheet.Sheet) {
	if x, cap, ok := sheet.SmallestLettering(sh); ok && cap < 3.0/32*25.4 {
		t.Errorf("%s: %q has capitals of %.2f mm", sh.Title.Sheet, x.S, cap)
	}
	for _, o := range sheet.TextOverlaps(sh, 0.2) {
		t.Errorf("%s: %q lies on %q at %.0f, %.0f", sh.Title.Sheet, o.A.S, o.B.S, o.B.At.X, o.B.At.Y)
	}
}
