package pagetest

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"galewright/render/sheet"
	"galewright/render/svg"
	"galewright/symbols"

	"github.com/stretchr/testify/require"
)

// Dump writes sheets to the folder that GALEWRIGHT_DUMP names, for
// looking at; without it, it does nothing.
func Dump(t *testing.T, name string, sheets []*sheet.Sheet) {
	dir := os.Getenv("GALEWRIGHT_DUMP")
	if dir == "" {
		return
	}
	set := &sheet.Set{Sheets: sheets, Symbols: symbols.All()}
	for i := range sheets {
		f, err := os.Create(filepath.Join(dir, fmt.Sprintf("%s-%d.svg", name, i+1)))
		require.NoError(t, err)
		require.NoError(t, svg.Write(f, set, i, svg.Options{}))
		require.NoError(t, f.Close())
	}
}
