package placement_test

import (
	"cmp"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/read"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestEachCheckOnItsPlan runs the plans of testdata. Each is named by the
// check it shows, and says on the very line what is to be told there:
//
//	[[rule]] # want: strap-too-short
//
// Nothing else may be told by a check of placement.
func TestEachCheckOnItsPlan(t *testing.T) {
	files, err := filepath.Glob("testdata/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, f := range files {
		id := strings.TrimSuffix(filepath.Base(f), ".toml")
		t.Run(id, func(t *testing.T) {
			src, err := os.ReadFile(f)
			require.NoError(t, err)
			assert.True(t, slices.ContainsFunc(placement.Checks, func(c *placement.Check) bool { return string(c.ID) == id }), "no check of that name")
			want := wants(string(src))
			require.Contains(t, strings.Join(want, "\n"), id)
			assert.Equal(t, want, told(t, f, src))
		})
	}
}

// wants reads the comments of a plan.
func wants(src string) (out []string) {
	for i, line := range strings.Split(src, "\n") {
		if _, w, ok := strings.Cut(line, "# want: "); ok {
			out = append(out, fmt.Sprintf("%d %s", i+1, w))
		}
	}
	return out
}

// told places a plan and lists what its checks tell, by line.
func told(t *testing.T, f string, src []byte) []string {
	t.Helper()
	p, ds := read.Plan(f, src, nil)
	require.False(t, ds.Errors(), "%v", ds)
	h, ds := framing.Frame(p)
	require.False(t, ds.Errors(), "%v", ds)
	c, ds := hardware.New(p.Items)
	require.Empty(t, ds)
	_, ds = placement.Place(h, c)
	slices.SortFunc(ds, func(a, b plan.Diagnostic) int { return cmp.Or(a.Pos.Line-b.Pos.Line, cmp.Compare(a.Code, b.Code)) })
	var out []string
	for _, d := range ds {
		if s := fmt.Sprintf("%d %s", d.Pos.Line, d.Code); !slices.Contains(out, s) {
			out = append(out, s)
		}
		if testing.Verbose() {
			t.Log(d)
		}
	}
	return out
}
