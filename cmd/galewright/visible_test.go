package main

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/require"
)

func TestVisible(t *testing.T) {
	for in, want := range map[string]string{
		"plain\ttext\n":             "plain\ttext\n",
		"5' 4 1/2\" é 梁 \U0001f3e0": "5' 4 1/2\" é 梁 \U0001f3e0",
		"\x1b[31mred\x07":           `\u001b[31mred\u0007`,
		"a\rb\x7f\u0085\u009b":      `a\u000db\u007f\u0085\u009b`,
		"\u202egnp\u2066x\u200f":    `\u202egnp\u2066x\u200f`,
		"a\u2028b\ufeff":            `a\u2028b\ufeff`,
	} {
		var b strings.Builder
		n, err := (&visible{w: &b}).Write([]byte(in))
		require.NoError(t, err)
		require.Equal(t, len(in), n)
		require.Equal(t, want, b.String())
		b.Reset()
		v := &visible{w: &b}
		for i := range len(in) { // however the text is cut
			_, err := v.Write([]byte(in[i : i+1]))
			require.NoError(t, err)
		}
		require.Equal(t, want, b.String(), "byte by byte")
	}
	_, err := (&visible{w: broken{}}).Write([]byte("x"))
	require.Error(t, err)
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, errors.New("no space left on device") }

// TestCheckSeesThatItCannotWrite: a list that is cut off is no answer.
func TestCheckSeesThatItCannotWrite(t *testing.T) {
	var errs strings.Builder
	require.Equal(t, exitFault, run([]string{"check", "../../examples/shed.toml"}, broken{}, &errs))
	require.Contains(t, errs.String(), "cannot write the output: no space left on device")
}

func TestExcerptIsAsWideAsATerminal(t *testing.T) {
	long := strings.Repeat("x", 300) + "HERE" + strings.Repeat("é", 300)
	got := excerpt([]string{long}, posAt(1, 301))
	require.Equal(t, "    1 | …"+strings.Repeat("x", 38)+"HERE"+strings.Repeat("é", 55)+"…\n      | "+strings.Repeat(" ", 39)+"^\n", got)
	got = excerpt([]string{long}, posAt(1, 1))
	require.Equal(t, "    1 | "+strings.Repeat("x", 98)+"…\n      | ^\n", got)
	end := excerpt([]string{long}, posAt(1, len(long)+1))
	require.True(t, strings.HasSuffix(end, "é\n      | "+strings.Repeat(" ", 39)+"^\n"), end)
	require.Equal(t, "    1 | \ta = 1\n      | \t^\n", excerpt([]string{"\ta = 1"}, posAt(1, 2)), "a tab stands for itself")
	require.Equal(t, "    1 | \\u001b[31mab\n      |          ^\n", excerpt([]string{"\x1b[31mab"}, posAt(1, 5)), "under what is written out")
}

func posAt(line, col int) plan.Pos { return plan.Pos{Line: line, Col: col} }

// TestTooManyFaults: of more than a hundred the errors come first, in the order of
// their places, and the rest is counted.
func TestTooManyFaults(t *testing.T) {
	var many plan.Diagnostics
	for i := range 2088 {
		s := plan.Warning
		if i%30 == 29 {
			s = plan.Error
		}
		many = append(many, plan.Diagnostic{Severity: s, Pos: posAt(i+1, 1), Summary: "x"})
	}
	var b strings.Builder
	require.NoError(t, sources{}.print(&b, many, false))
	require.Equal(t, 101, strings.Count(b.String(), "\n"))
	require.Equal(t, 69, strings.Count(b.String(), "error:"))
	require.Contains(t, b.String(), ":31:1: warning: x []\n:32:1: warning: x []\n:60:1: error: x []\n")
	require.Contains(t, b.String(), "and 1,988 more, after these; `galewright check PLAN --json` lists all\n")
	first, more := foremost(many[:100])
	require.Len(t, first, 100)
	require.Zero(t, more)
	b.Reset()
	require.NoError(t, sources{}.print(&b, many, true))
	require.Equal(t, 2088, strings.Count(b.String(), `"severity"`))
}

func TestThousands(t *testing.T) {
	for n, want := range map[int]string{1: "1", 999: "999", 1988: "1,988", 1234567: "1,234,567"} {
		require.Equal(t, want, thousands(n))
	}
}

// TestWhatIsNoText: neither a pipe nor an endless file holds the program up.
func TestWhatIsNoText(t *testing.T) {
	dir := t.TempDir()
	shed, err := os.ReadFile("../../examples/shed.toml")
	require.NoError(t, err)
	for name, text := range map[string]string{
		"names.toml": "catalog = \"folder\"\n" + string(shed), "based.toml": "base = \"folder\"\n",
	} {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600))
		require.NoError(t, os.MkdirAll(filepath.Join(dir, "folder"), 0o700))
		var out strings.Builder
		require.Equal(t, exitFault, run([]string{"check", filepath.Join(dir, name)}, &out, &out))
		require.Contains(t, out.String(), `cannot read "folder": is not a regular file; `)
	}
	big := filepath.Join(dir, "big.toml")
	require.NoError(t, os.WriteFile(big, nil, 0o600))
	require.NoError(t, os.Truncate(big, mostBytes+1))
	var out strings.Builder
	require.Equal(t, exitUsage, run([]string{"check", big}, &out, &out))
	require.Contains(t, out.String(), "big.toml: is larger than 16 MiB")
}
