package framing

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/read"
)

// Odd houses are read from their files and framed. A file's first lines may
// say which faults it has: "# want: code, code"; all others have none.
func TestOddHouses(t *testing.T) {
	files, err := filepath.Glob("testdata/odd/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			src, err := os.ReadFile(file)
			require.NoError(t, err)
			p, faults := read.Plan(file, src, os.ReadFile)
			h := &House{}
			if !faults.Errors() {
				h, faults = Frame(p)
			}
			seen := map[string]bool{}
			var codes []string
			for _, d := range faults {
				require.NotEmpty(t, d.Mend, d.Summary)
				require.NotZero(t, d.Pos.Line, d.Summary)
				if !seen[string(d.Code)] {
					codes = append(codes, string(d.Code))
				}
				seen[string(d.Code)] = true
			}
			require.Equal(t, wanted(string(src)), strings.Join(codes, ", "), "%v", faults)
			if !faults.Errors() {
				for _, pair := range h.Overlaps(0.01) {
					require.Fail(t, pair[0].ID+" reaches into "+pair[1].ID)
				}
				require.Empty(t, untied(h))
				require.Empty(t, doublyTied(h))
			}
		})
	}
}

func wanted(src string) string {
	for _, line := range strings.Split(src, "\n") {
		if w, ok := strings.CutPrefix(line, "# want: "); ok {
			return w
		}
	}
	return ""
}

// doublyTied names each rafter, hip or valley whose top is in two joints.
func doublyTied(h *House) (out []string) {
	top := map[*Member]string{}
	for _, j := range h.Joints {
		if j.Kind != plan.RafterRidge {
			continue
		}
		for _, m := range j.Members {
			if m.Role != plan.Rafter && m != j.First() || j.At.Sub(m.B).Flat().Len() > 6 || j.At.Sub(m.A).Flat().Len() < 6 {
				continue
			}
			if was := top[m]; was != "" {
				out = append(out, m.ID+": "+was+" and "+j.ID)
			}
			top[m] = j.ID
		}
	}
	return out
}
