package render_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"galewright/plan/pipeline"
	"galewright/render"
	"galewright/render/sheet"
)

// Every example is drawn on large sheets and on office paper: nothing leaves
// the paper, every piece is at home once, no lettering lies on another, none
// is lower than 3/32 in, and lines that run beside each other stay apart.
func TestEveryExampleIsLegibleOnEveryPaper(t *testing.T) {
	files, err := filepath.Glob(filepath.Join("..", "examples", "*.toml"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		if filepath.Base(file) == "hardware.toml" {
			continue // a catalog
		}
		src, err := os.ReadFile(file)
		require.NoError(t, err)
		r, faults := pipeline.Run(file, src, func(n string) ([]byte, error) { return os.ReadFile(filepath.Join(filepath.Dir(file), n)) })
		require.False(t, faults.Errors(), "%v", faults)
		loads, _ := r.Loads() // nil without a wind basis
		for _, paper := range []string{"arch-d", "arch-c", "tabloid", "letter", "a4"} {
			t.Run(filepath.Base(file)+"/"+paper, func(t *testing.T) {
				set, faults := render.Draw(&render.Model{House: r.House, Placement: r.Placement, Schedule: r.Schedule, Salt: r.Salt, Loads: loads}, render.Options{Paper: paper})
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

// leastGap is the paper left between two lines that run beside each other,
// mm: the width of the thinnest pen, under which a print makes them one.
const leastGap = 0.18

func legible(t *testing.T, sh *sheet.Sheet) {
	if x, cap, ok := sheet.SmallestLettering(sh); ok && cap < 3.0/32*25.4 {
		t.Errorf("%s: %q has capitals of %.2f mm", sh.Title.Sheet, x.S, cap)
	}
	for _, o := range sheet.TextOverlaps(sh, 0.2) {
		t.Errorf("%s: %q lies on %q at %.0f, %.0f", sh.Title.Sheet, o.A.S, o.B.S, o.B.At.X, o.B.At.Y)
	}
	for _, role := range []string{"dimension", "legend", "label"} {
		for _, x := range sheet.StruckTexts(sh, role, 0.45) {
			t.Errorf("%s: a line runs through the %s %q at %.0f, %.0f", sh.Title.Sheet, role, x.Text.S, x.Text.At.X, x.Text.At.Y)
		}
	}
	if n := sh.Title.Sheet; strings.HasPrefix(n, "S-1") || strings.HasPrefix(n, "S-3") {
		return // plans show every stud from above, some nearer to the next than a pen; the pictures beside the chains are small
	}
	if g, ok := sheet.SmallestGap(lumberAndTables(sh)); ok && g.Clear < leastGap {
		t.Errorf("%s, %s: lines from %.1f to %.1f and %.1f to %.1f leave %.2f mm between them, pens %v and %v, layer %v", sh.Title.Sheet, sh.Title.Scale, g.A.A, g.A.B, g.B.A, g.B.B, g.Clear, g.A.Pen, g.B.Pen, g.A.Layer)
	}
}

// lumberAndTables returns an elevation or a detail without its steel: pieces
// at one stud touch each other, and steel in the heaviest pen is meant to be
// one dark thing.
func lumberAndTables(sh *sheet.Sheet) *sheet.Sheet {
	if n := sh.Title.Sheet; !strings.HasPrefix(n, "S-2") && !strings.HasPrefix(n, "S-5") {
		return sh
	}
	out := *sh
	out.Marks = nil
	for _, m := range sh.Marks {
		if sheet.StyleOf(m).Layer != sheet.LayerHardware {
			out.Marks = append(out.Marks, m)
		}
	}
	return &out
}
