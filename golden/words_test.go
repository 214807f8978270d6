package golden

import (
	"bytes"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/plantest"
	"galewright/render/page"
	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// requireWords holds one output to the program's words: the caution is on it, it
// says nothing in other words than the trade's, and no line of lettering parts
// a figure from its unit.
func requireWords(t *testing.T, file string, b []byte) {
	if base := filepath.Base(file); strings.HasPrefix(base, "S-") && strings.HasSuffix(base, ".txt") {
		return // a flat sheet, mark by mark: its SVG is read
	}
	text := string(b)
	if strings.HasSuffix(file, ".svg") {
		texts := writtenTexts(t, bytes.NewReader(b))
		text = joinedTexts(texts)
		for _, p := range parted(texts) {
			t.Errorf("%s: a line ends within %q", file, p)
		}
	}
	assert.Contains(t, strings.Join(strings.Fields(text), " "), strings.Join(strings.Fields(plan.Caution), " "), "%s: the caution", file)
	for i, line := range strings.Split(text, "\n") {
		for _, w := range plantest.Wording(line) {
			t.Errorf("%s:%d: %s", file, i+1, w)
		}
	}
}

// joinedTexts is the lettering with its wrapped lines joined.
func joinedTexts(ts []sheet.Text) string {
	var b strings.Builder
	for i, x := range ts {
		if i > 0 {
			if follows(ts[i-1], x) {
				b.WriteString(" ")
			} else {
				b.WriteString("\n")
			}
		}
		b.WriteString(x.S)
	}
	return b.String()
}

// parted returns the figures that stand on two lines of one text. Width and
// height of an opening may be parted before the x.
func parted(ts []sheet.Text) (out []string) {
	for i := 1; i < len(ts); i++ {
		a, b := ts[i-1], ts[i]
		one, two := strings.Fields(a.S), strings.Fields(b.S)
		if !follows(a, b) || len(one) < 2 || len(two) == 0 || a.Anchor == sheet.Right {
			continue // a cell of one word is a figure by itself, and so are those of a chain of heights
		}
		if both := page.Unparted(one[len(one)-1] + " " + two[0]); len(both) == 1 && two[0] != "x" {
			out = append(out, both[0])
		}
	}
	return out
}

// follows tells whether b is the line below a in one block of lettering.
func follows(a, b sheet.Text) bool {
	down := b.At.Y - a.At.Y
	return a.Angle == 0 && b.Angle == 0 && a.Size == b.Size && a.Bold == b.Bold && a.Anchor == b.Anchor && b.At.X == a.At.X && down > 0 && down < 1.5*a.Size
}

func TestPartedFiguresAreSeen(t *testing.T) {
	line := func(s string, y sheet.MM) sheet.Text { return sheet.Text{S: s, Size: 3, At: sheet.Pt{X: 1, Y: y}} }
	assert.Equal(t, []string{`1'-9 1/2",`}, parted([]sheet.Text{line("rod, cut 1'-9", 0), line(`1/2", a nut`, 4)}))
	assert.Empty(t, parted([]sheet.Text{line("rod, cut", 0), line(`1'-9 1/2", a nut`, 4)}))
	assert.Empty(t, parted([]sheet.Text{line("rod, cut 1'-9", 0), line(`1/2"`, 40)}), "another block")
}

// TestEveryStringSpeaksTheTradesWords reads all strings of the program, its
// plans and its pages.
func TestEveryStringSpeaksTheTradesWords(t *testing.T) {
	n := 0
	for _, dir := range []string{"../cmd", "../plan", "../render", "../symbols"} {
		require.NoError(t, filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
			if err == nil && strings.HasSuffix(path, ".go") && !strings.HasSuffix(path, "_test.go") && !strings.Contains(path, "plantest") {
				n += wordStrings(t, path)
			}
			return err
		}))
	}
	require.Greater(t, n, 3000, "strings of the program")
	pages, err := filepath.Glob("../examples/*.toml")
	require.NoError(t, err)
	for _, f := range append(pages, "../README.md", "../examples/plan.schema.json") {
		b, err := os.ReadFile(f)
		require.NoError(t, err)
		for i, line := range strings.Split(string(b), "\n") {
			for _, w := range plantest.Wording(line) {
				t.Errorf("%s:%d: %s", f, i+1, w)
			}
		}
	}
}

// wordStrings checks the strings of a file of Go and counts them.
func wordStrings(t *testing.T, path string) (n int) {
	fset := token.NewFileSet()
	file, err := parser.ParseFile(fset, path, nil, 0)
	require.NoError(t, err)
	ast.Inspect(file, func(x ast.Node) bool {
		if l, ok := x.(*ast.BasicLit); ok && l.Kind == token.STRING {
			n++
			s, err := strconv.Unquote(l.Value)
			assert.NoError(t, err)
			for _, w := range plantest.Wording(s) {
				t.Errorf("%s: %s", fset.Position(l.Pos()), w)
			}
		}
		return true
	})
	return n
}
