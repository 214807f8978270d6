package render

import (
	"go/parser"
	"go/token"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Views share what lies below them and never know each other: label, sheet and
// project, then page and scene, then table and excerpt, then the views.
func TestPackagesOfViewsImportOneWay(t *testing.T) {
	below := []string{"label", "sheet", "project"}
	for _, row := range [][]string{{"page", "scene"}, {"table", "excerpt"}, {"elevation", "floorplan", "detail", "frame", "lists", "calculations", "porch", "dormer", "section"}} {
		for _, name := range row {
			files, err := filepath.Glob(filepath.Join(name, "*.go"))
			require.NoError(t, err)
			require.NotEmpty(t, files, name)
			for _, file := range files {
				for _, to := range importsOf(t, file) {
					assert.True(t, slices.Contains(below, to), "%s imports render/%s", file, to)
				}
			}
		}
		below = append(below, row...)
	}
}

// importsOf returns the packages under render that a file imports, those for
// tests in a test apart.
func importsOf(t *testing.T, file string) (names []string) {
	f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
	require.NoError(t, err)
	for _, i := range f.Imports {
		path, err := strconv.Unquote(i.Path.Value)
		require.NoError(t, err)
		name, ok := strings.CutPrefix(path, "galewright/render")
		if ok && (name != "/page/pagetest" || !strings.HasSuffix(file, "_test.go")) {
			names = append(names, strings.TrimPrefix(name, "/"))
		}
	}
	return names
}
