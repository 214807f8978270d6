package golden

import (
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestReadmeIsTrue: the plan that the README shows is the example, the files
// it names are there, and its picture is a golden sheet.
func TestReadmeIsTrue(t *testing.T) {
	readme, err := os.ReadFile("../README.md")
	require.NoError(t, err)
	shed, err := os.ReadFile("../examples/shed.toml")
	require.NoError(t, err)
	require.Contains(t, string(readme), string(shed))
	for _, m := range regexp.MustCompile(`\]\(([a-zA-Z][^):]*)\)`).FindAllStringSubmatch(string(readme), -1) {
		_, err := os.Stat(filepath.Join("..", m[1]))
		require.NoError(t, err)
	}
	for _, name := range examples(t) {
		require.Contains(t, string(readme), name, "the README names every example")
	}
}
