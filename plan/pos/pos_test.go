package pos_test

import (
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/require"

	"galewright/plan/pos"
)

const house = `# a house
[project]
name = "x"
[[wall]]
name = "1S"
from = ["0'", "0'"]
  [[wall.opening]]
  at = "5'"
  [[wall.opening]]
  at = """
two
lines"""
[[wall]]
name = '1E' # [[wall]]
shear = [
  { from = "0'" },
  { from = "4'", edge = 4 },
]
[[wall.opening]]
where.level = ["first"]
`

func TestPlaces(t *testing.T) {
	x, err := pos.NewIndex(house)
	require.NoError(t, err)
	for _, c := range []struct {
		path      string
		line, col int
	}{
		{"project", 2, 2},
		{"project.name", 3, 1},
		{"wall[0].name", 5, 1},
		{"wall[0].from[1]", 6, 15},
		{"wall[0].opening[0].at", 8, 3},
		{"wall[0].opening[1].at", 10, 3},
		{"wall[1].name", 14, 1},
		{"wall[1].shear[1]", 17, 3},
		{"wall[1].shear[1].edge", 17, 18},
		{"wall[1].opening[0]", 19, 3},
		{"wall[1].opening[0].where.level[0]", 20, 16},
		{"wall[1].opening[0].width", 19, 3}, // not there: nearest ancestor
	} {
		got, ok := x.Pos(c.path)
		require.True(t, ok, c.path)
		require.Equal(t, pos.Pos{Line: c.line, Col: c.col}, got, c.path)
	}
	_, ok := x.Pos("nothing")
	require.False(t, ok)
}

// The decoder's own list of keys is the oracle.
func decoderKeys(src string) (keys []string, ok bool) {
	var m map[string]any
	md, err := toml.Decode(src, &m)
	if err != nil {
		return nil, false
	}
	for _, k := range md.Keys() {
		keys = append(keys, strings.Join(k, "."))
	}
	return keys, true
}

func TestKeysAreTheDecodersOwn(t *testing.T) {
	want, ok := decoderKeys(house)
	require.True(t, ok)
	x, err := pos.NewIndex(house)
	require.NoError(t, err)
	require.Equal(t, want, x.Keys())
}

// The corpus is the one that the decoder's module carries (toml-test, by the
// authors of the format's test suite).
func TestKeysAreTheDecodersOwnOnItsCorpus(t *testing.T) {
	dir, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", "github.com/BurntSushi/toml").Output()
	require.NoError(t, err)
	root := filepath.Join(strings.TrimSpace(string(dir)), "internal", "toml-test", "tests", "valid")
	if _, err := os.Stat(root); err != nil {
		t.Skip("the decoder's module came without its corpus")
	}
	n := 0
	require.NoError(t, filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || filepath.Ext(path) != ".toml" {
			return err
		}
		src, err := os.ReadFile(path)
		require.NoError(t, err)
		want, ok := decoderKeys(string(src))
		if !ok {
			return nil
		}
		x, err := pos.NewIndex(string(src))
		require.NoError(t, err, path)
		require.Equal(t, want, x.Keys(), path)
		n++
		return nil
	}))
	require.Greater(t, n, 100)
	t.Logf("%d documents", n)
}

func FuzzIndex(f *testing.F) {
	f.Add(house)
	f.Add("a = [[1, 2], [{b = 1}]]\n[\"x\\u00e9\".'y z']\nq.w.e = 'a''b'\n")
	f.Add("a = '''x''''\nb = \"\"\"y\\\"\"\"\"\"\n")
	f.Fuzz(func(t *testing.T, src string) {
		if !utf8.ValidString(src) {
			return
		}
		want, ok := decoderKeys(src)
		if !ok {
			return
		}
		x, err := pos.NewIndex(src)
		require.NoError(t, err)
		require.Len(t, x.Keys(), len(want))
	})
}
