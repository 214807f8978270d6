package examples

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// written finds a mark where a plan, a catalog, a page or a test's text gives
// one, or a rule or place asks for one.
var written = regexp.MustCompile(`(?:\b(?:mark|use) *= *|\bMark: *|\bUse: *)\\?"([^"\\]*)`)

// coded tells of a mark with a digit in it: a size in a mark is how a maker's
// model code is built, and the catalog says sizes where they belong.
func coded(mark string) bool { return regexp.MustCompile(`[0-9]`).MatchString(mark) }

func TestMarksAreWordsWithoutDigits(t *testing.T) {
	found := map[string]int{}
	read := func(path string) {
		src, err := os.ReadFile(path)
		require.NoError(t, err)
		for _, m := range written.FindAllStringSubmatch(string(src), -1) {
			assert.False(t, coded(m[1]), "%s: the mark %q carries a digit; name the piece by its job", path, m[1])
			found[filepath.Ext(path)]++
		}
	}
	require.NoError(t, filepath.WalkDir("..", func(path string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() && slices.Contains([]string{".toml", ".txtar", ".md", ".go"}, filepath.Ext(path)) && filepath.Base(path) != "marks_test.go" {
			read(path)
		}
		return err
	}))
	for _, kind := range []string{".toml", ".txtar", ".md", ".go"} {
		require.Positive(t, found[kind], "marks in %s files", kind)
	}
}

// What the test above looks for is what it finds.
func TestMarksAreFound(t *testing.T) {
	for text, want := range map[string]string{
		`{ mark = "strap-36", kind = "strap" }`: "strap-36", `use = "clip5"`: "clip5", `plan.Item{Mark: "x7"}`: "x7", `"mark = \"pair-2\"\n"`: "pair-2",
	} {
		m := written.FindStringSubmatch(text)
		require.NotNil(t, m, text)
		assert.Equal(t, want, m[1])
		assert.True(t, coded(m[1]))
	}
	assert.False(t, coded("ridge-strap"))
}
