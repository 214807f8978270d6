package golden

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestReadmeIsTrue: every piece of a plan that the README shows stands in an
// example, the files it names are there, and its picture is a golden sheet.
func TestReadmeIsTrue(t *testing.T) {
	readme, err := os.ReadFile("../README.md")
	require.NoError(t, err)
	var plans strings.Builder
	for _, name := range examples(t) {
		src, err := os.ReadFile("../examples/" + name + ".toml")
		require.NoError(t, err)
		plans.Write(src)
	}
	blocks := regexp.MustCompile("(?s)```toml\n(.*?)```").FindAllStringSubmatch(string(readme), -1)
	require.NotEmpty(t, blocks)
	for _, b := range blocks {
		require.Contains(t, plans.String(), b[1])
	}
	for _, m := range regexp.MustCompile(`\]\(([a-zA-Z][^):]*)\)`).FindAllStringSubmatch(string(readme), -1) {
		_, err := os.Stat(filepath.Join("..", m[1]))
		require.NoError(t, err)
	}
	for _, name := range examples(t) {
		require.Contains(t, string(readme), name, "the README names every example")
	}
}
