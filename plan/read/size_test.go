package read_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// How much a plan may hold: at the bound nothing is told, one past it is.
func TestHowMuchAPlanHolds(t *testing.T) {
	told := func(src, code string) (out []string) {
		_, ds := parse(src, nil)
		for _, d := range ds {
			if string(d.Code) == code {
				out = append(out, d.String())
			}
		}
		return out
	}
	rules := func(n int) string { return house + strings.Repeat("[[rule]]\n", n-strings.Count(house, "[[rule]]")) }
	require.Empty(t, told(rules(2000), "too-many"))
	require.Len(t, told(rules(2001), "too-many"), 1)
	values := func(n int) string {
		return strings.Replace(house, "[project]", "[project]\nnotes = ["+strings.Repeat(`"a",`, n)+"]", 1)
	}
	require.Empty(t, told(values(20_000), "too-many"))
	require.Contains(t, told(values(20_001), "too-many")[0], "notes: 20001 of them are more than a plan holds, 20000")
	named := func(n int) string {
		return strings.Replace(house, "[project]", fmt.Sprintf("[project]\nnumber = %q", strings.Repeat("a", n)), 1)
	}
	require.Empty(t, told(named(4000), "too-long"))
	require.Len(t, told(named(4001), "too-long"), 1)
}

// TestHowManyStuds counts walls and roofs at their spacing: 1,000 ft at 3 in are
// 4,001 each.
func TestHowManyStuds(t *testing.T) {
	walls := func(n int) string {
		var b strings.Builder
		b.WriteString(house)
		for i := range n {
			fmt.Fprintf(&b, "[[wall]]\nname = \"x%d\"\nlevel = \"first\"\nfrom = [\"0'\", \"0'\"]\nto = [\"1000'\", \"0'\"]\nstuds = \"2x4 @ 3in\"\ninterior = true\n", i)
		}
		return b.String()
	}
	large := func(n int) bool {
		_, ds := parse(walls(n), nil)
		for _, d := range ds {
			if d.Code == "too-large" {
				return true
			}
		}
		return false
	}
	require.False(t, large(124), "124 of 4,001 and the house itself: under 500,000")
	require.True(t, large(125), "500,125 and the house")
}
