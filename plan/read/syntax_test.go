package read_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestSyntax(t *testing.T) {
	for _, c := range []struct{ name, src, want string }{
		{"inch mark ends the string", "[project]\nname = \"x\"\n[[wall]]\nto = [\"28'\", \"5' 4\"\"]\n", `inside quotes write the inch mark as \" or as in`},
		{"key twice", "[project]\nname = \"x\"\nname = \"y\"\n", "plan.toml:3:"},
		{"not UTF-8", "[project]\nname = \"\xff\"\n", "plan.toml:2:9: error: the file is not UTF-8; save it as UTF-8 text [encoding]"},
		{"UTF-16", "\xff\xfe[\x00", "plan.toml:1:1: error: the file is not UTF-8"},
		{"UTF-16 by its mark", "\xfe\xff\x00[", "it looks like UTF-16: save it as UTF-8 text"},
		{"measure without quotes", "studs = 2x6 @ 16in\n", `plan.toml:1:10: error: 'x' stands behind the value; put a value with a unit in quotes: "5' 4in", "2x6 @ 16in" [syntax]`},
		{"word without quotes", "kind = clip\n", `put text in quotes: kind = "clip"`},
		{"no value", "name =\n", "write the value after the ="},
		{"open header", "[project\nname = \"x\"\n", "plan.toml:1:9: error: the brackets around the table's name are not closed; close it like [project], or [[wall]] with two brackets"},
		{"open quotes", "[project]\nname = \"x\n", "plan.toml:2:10: error: the quotes are not closed in this line; close the quotes in the same line"},
		{"open array", "a = [1,2\nb = 3\n", "plan.toml:2:1: error: in a list stands 'b' where a comma"},
		{"one table where several were", "[[wall]]\n[wall]\n", "each begins with [[wall]]"},
		{"prose", "my house\n", "a line is key = value, a [table] or a # comment"},
		{"backslash at the foot mark", "at = \"5\\' 4\"\n", "only the inch mark takes a backslash"},
		{"nothing", "", "plan.toml:1:1: error: project is missing; add [project] [missing-key]"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, ds := parse(c.src, nil)
			require.True(t, ds.Errors())
			require.Contains(t, strings.Join(lines(ds), "\n"), c.want)
		})
	}
}

// What follows from a fault that is told is not told again.
func TestFaultsThatFollowAreNotTold(t *testing.T) {
	codes := func(src string, files map[string]string) (out []string) {
		_, ds := parse(src, files)
		for _, d := range ds {
			out = append(out, string(d.Code))
		}
		return out
	}
	rule := "[[rule]]\nat = \"stud-stud\"\nuse = \"from-file\"\n"
	require.Equal(t, []string{"no-file"}, codes("catalog = \"hw.toml\"\n"+house+rule, nil))
	require.Equal(t, []string{"syntax"}, codes("catalog = \"hw.toml\"\n"+house+rule, map[string]string{"hw.toml": "[[item]\n"}))
	require.Equal(t, []string{"absolute-path"}, codes("catalog = \"/hw.toml\"\n"+house+rule, nil))
	require.Equal(t, []string{"bad-name"}, codes(house+"[[item]]\nmark = \"a clip\"\nkind = \"clip\"\n[[rule]]\nat = \"stud-top\"\nuse = \"a clip\"\n", nil))
	file := map[string]string{"hw.toml": "[[item]]\nmark = \"from-file\"\nkind = \"clip\"\n"}
	require.Equal(t, []string{"named-twice"}, codes("catalog = [\"hw.toml\", \"./hw.toml\"]\n"+house+rule, file))
}
