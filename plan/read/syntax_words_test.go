package read_test

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// TestFaultsOfTOMLInOurWords: each is told exactly like this, at the place where it
// is, with a mend of its own.
func TestFaultsOfTOMLInOurWords(t *testing.T) {
	for _, c := range []struct{ src, want string }{
		{"[project]\nname = \"x\"\nname = \"y\"\n", "plan.toml:3:1: error: project.name is written a second time; take one of the two out [syntax]"},
		{"wall = [{ name = \"S\" }]\n[[wall]]\nname = \"N\"\n", "plan.toml:2:3: error: [[wall]] stands here, and wall is already written another way; write all of them one way: each under its own [[wall]], or all inside one wall = [ ] [syntax]"},
		{"[wall]\nname = \"S\"\n[[wall]]\nname = \"N\"\n", "plan.toml:3:3: error: [[wall]] stands here, and wall is already written another way; write all of them one way: each under its own [[wall]], or all inside one wall = [ ] [syntax]"},
		{"[[wall]]\nname = \"S\"\n[wall]\n", "plan.toml:3:2: error: wall is written a second time; write it once; where there can be several, each begins with [[wall]] [syntax]"},
		{"project = \"x\"\n[project.more]\na = 1\n", "plan.toml:2:2: error: project has a value already and cannot hold keys; write it as a table alone, or as a value alone [syntax]"},
		{"site = \"x\"\n[site]\nexposure = \"C\"\n", "plan.toml:2:2: error: site is written a second time; write it once; where there can be several, each begins with [[site]] [syntax]"},
		{"a = 1\na.b = 2\n", "plan.toml:2:1: error: a is written a second time; take one of the two out [syntax]"},
		{"[[loads.dead]]\npart = \"roof\"\n[loads.dead]\n", "plan.toml:3:2: error: loads.dead is written a second time; write it once; where there can be several, each begins with [[loads.dead]] [syntax]"},
		{"[project]\nname = \"x\n", "plan.toml:2:10: error: the quotes are not closed in this line; close the quotes in the same line; the inch mark inside is written \\\" or in: \"5' 4in\" [syntax]"},
		{"[project]\nnotes = [\"a\"\n\"b\"]\n", "plan.toml:3:1: error: in a list stands '\"' where a comma or the closing ] belongs; put a comma between two values, and close what is open [syntax]"},
		{"notes = [\"a\", \"b\"\n", "plan.toml:1:18: error: a list or brace is still open where the file ends; close it: ] or } [syntax]"},
		{"at = \"5' 4\"\"\n", "plan.toml:1:12: error: '\"' stands behind the value; inside quotes write the inch mark as \\\" or as in: \"5' 4in\" [syntax]"},
		{"at = 5' 4\"\n", "plan.toml:1:7: error: \"'\" stands behind the value; put a value with a unit in quotes: \"5' 4in\", \"2x6 @ 16in\" [syntax]"},
		{"studs = 2x6 @ 16in\n", "plan.toml:1:10: error: 'x' stands behind the value; put a value with a unit in quotes: \"5' 4in\", \"2x6 @ 16in\" [syntax]"},
		{"kind = clip\n", "plan.toml:1:8: error: \"clip\" is no value; put text in quotes: kind = \"clip\" [syntax]"},
		{"kind = \n", "plan.toml:1:8: error: the value is missing; write the value after the = [syntax]"},
		{"kind\n", "plan.toml:1:5: error: the line has no =; a line is key = value, a [table] or a # comment [syntax]"},
		{"[project\n", "plan.toml:1:9: error: the brackets around the table's name are not closed; close it like [project], or [[wall]] with two brackets [syntax]"},
		{"[]\n", "plan.toml:1:2: error: a part of the table's name is empty; close it like [project], or [[wall]] with two brackets [syntax]"},
		{"[a..b]\n", "plan.toml:1:4: error: a part of the table's name is empty; close it like [project], or [[wall]] with two brackets [syntax]"},
		{"[[wall]\n", "plan.toml:1:7: error: the brackets around the table's name are not closed; close it like [project], or [[wall]] with two brackets [syntax]"},
		{"= 3\n", "plan.toml:1:1: error: nothing stands before the =; a line is key = value, a [table] or a # comment [syntax]"},
		{".a = 3\n", "plan.toml:1:1: error: the key begins with a dot; a line is key = value, a [table] or a # comment [syntax]"},
		{"a = [1,,2]\n", "plan.toml:1:8: error: there is a comma too many; take one comma out [syntax]"},
		{"a = {b=1,,c=2}\n", "plan.toml:1:10: error: there is a comma too many; take one comma out [syntax]"},
		{"a = {b = 1\n", "plan.toml:1:11: error: a list or brace is still open where the file ends; close it: ] or } [syntax]"},
		{"n = 1e999\n", "plan.toml:1:5: error: 1e999 is too large a number; write a number that a house can have [syntax]"},
		{"n = 99999999999999999999\n", "plan.toml:1:5: error: 99999999999999999999 is too large a number; write a number that a house can have [syntax]"},
		{"n = 1__2\n", "plan.toml:1:5: error: 1__2 is no number; write numbers like 4, 1.5 or -2; a value with a unit stands in quotes [syntax]"},
		{"n = 007\n", "plan.toml:1:5: error: 007 is no number; write numbers like 4, 1.5 or -2; a value with a unit stands in quotes [syntax]"},
		{"n = .5\n", "plan.toml:1:5: error: this is no number; write numbers like 4, 1.5 or -2; a value with a unit stands in quotes [syntax]"},
		{"n = 5.\n", "plan.toml:1:5: error: 5. is no number; write numbers like 4, 1.5 or -2; a value with a unit stands in quotes [syntax]"},
		{"n = +-3\n", "plan.toml:1:5: error: this is no number; write numbers like 4, 1.5 or -2; a value with a unit stands in quotes [syntax]"},
		{"n = 0xZZ\n", "plan.toml:1:5: error: 0xZ is no number; write numbers like 4, 1.5 or -2; a value with a unit stands in quotes [syntax]"},
		{"d = 2026-13-45\n", "plan.toml:1:5: error: \"2026-13-45\" is no date; write a date like 2026-03-02, and a value with a unit in quotes [syntax]"},
		{"d = 2026-03-02T99:00:00Z\n", "plan.toml:1:5: error: \"2026-03-02T99:00:00Z\" is no date; write a date like 2026-03-02, and a value with a unit in quotes [syntax]"},
		{"a = \"\\q\"\n", "plan.toml:1:6: error: \\q in quotes stands for nothing; only the inch mark takes a backslash: \"5' 4 1/2\\\"\", or write in: \"5' 4 1/2in\" [syntax]"},
		{"a = \"\\u12\"\n", "plan.toml:1:6: error: \\u in quotes lacks its digits; write the character itself [syntax]"},
		{"a = \"\\ud800\"\n", "plan.toml:1:6: error: \\ud800 in quotes is no character; write the character itself [syntax]"},
		{"a = \"b\x1bc\"\n", "plan.toml:1:6: error: a character that cannot be seen (0x1b) stands here; take it out: delete the space around it and type that again [syntax]"},
		{"a = \"\x00\"\n", "plan.toml:1:6: error: a byte of no text (0x00) stands here; save the file as UTF-8 text [syntax]"},
		{"a = \"\"\"\nopen\n", "plan.toml:2:5: error: the file ends inside quotes; close what is open: quotes, brackets or braces [syntax]"},
		{"a = 'open\n", "plan.toml:1:10: error: the quotes are not closed in this line; close the quotes in the same line; the inch mark inside is written \\\" or in: \"5' 4in\" [syntax]"},
		{"a = tru\n", "plan.toml:1:5: error: \"tru\" is no value; put text in quotes: kind = \"clip\" [syntax]"},
		{"a = 1 b = 2\n", "plan.toml:1:6: error: 'b' stands behind the value; begin a new line before it [syntax]"},
		{"my house\n", "plan.toml:1:4: error: 'h' stands where an = belongs; a line is key = value, a [table] or a # comment [syntax]"},
		{"\ufeffa = \n", "plan.toml:1:5: error: the value is missing; write the value after the = [syntax]"},
		{"a = \"x\" \"y\"\n", "plan.toml:1:8: error: '\"' stands behind the value; one key = value in a line; text and lengths stand in quotes [syntax]"},
		{"\"a\nb\" = 1\n", "plan.toml:1:3: error: the quotes are not closed in this line; close the quotes in the same line; the inch mark inside is written \\\" or in: \"5' 4in\" [syntax]"},
		{"a = inf\nb = nan\nc = 1 2\n", "plan.toml:3:6: error: '2' stands behind the value; one key = value in a line; text and lengths stand in quotes [syntax]"},
		{"[a]\n[a]\n", "plan.toml:2:2: error: a is written a second time; write it once; where there can be several, each begins with [[a]] [syntax]"},
		{"a = [ {b=1}, ]\n[[a]]\n", "plan.toml:2:3: error: [[a]] stands here, and a is already written another way; write all of them one way: each under its own [[a]], or all inside one a = [ ] [syntax]"},
		{"rule = [1, 2\n[[wall]]\n", "plan.toml:2:1: error: in a list stands '[' where a comma or the closing ] belongs; put a comma between two values, and close what is open [syntax]"},
		{"a = 5 1/2\n", "plan.toml:1:6: error: '1' stands behind the value; one key = value in a line; text and lengths stand in quotes [syntax]"},
		{"a = 16\"\n", "plan.toml:1:7: error: '\"' stands behind the value; put a value with a unit in quotes: \"5' 4in\", \"2x6 @ 16in\" [syntax]"},
		{"a = 5'\n", "plan.toml:1:6: error: \"'\" stands behind the value; put a value with a unit in quotes: \"5' 4in\", \"2x6 @ 16in\" [syntax]"},
		{"a = '5' 4'\n", "plan.toml:1:8: error: '4' stands behind the value; one key = value in a line; text and lengths stand in quotes [syntax]"},
		{"at = 12-6\n", "plan.toml:1:6: error: \"12-6\" is no date; write a date like 2026-03-02, and a value with a unit in quotes [syntax]"},
		{"at = -a\n", "plan.toml:1:6: error: this is no number; write numbers like 4, 1.5 or -2; a value with a unit stands in quotes [syntax]"},
		{"to = [\"28'\", \"5' 4\"\"]\n", "plan.toml:1:20: error: in a list stands '\"' where a comma or the closing ] belongs; inside quotes write the inch mark as \\\" or as in: \"5' 4in\" [syntax]"},
		{"a = \"\"\"x\"\"\"\"\"\"\n", "plan.toml:1:8: error: there are quotes too many; take the last of them out [syntax]"},
		{"[a]\nb.c = 1\n[a.b]\n[a.b.c]\n", "plan.toml:4:2: error: a.b.c is written a second time; write it once; where there can be several, each begins with [[a.b.c]] [syntax]"},
		{"[[wall]]\n[wall.opening]\n[[wall.opening]]\n", "plan.toml:3:3: error: [[wall.opening]] stands here, and wall.opening is already written another way; write all of them one way: each under its own [[wall.opening]], or all inside one wall.opening = [ ] [syntax]"},
		{"a = \"b\" # c\nd = \"e\" f = 1\n", "plan.toml:2:8: error: 'f' stands behind the value; begin a new line before it [syntax]"},
		{"a = \"x\\' y\"\n", "plan.toml:1:6: error: invalid escape in string \"'\"; only the inch mark takes a backslash: \"5' 4 1/2\\\"\", or write in: \"5' 4 1/2in\" [syntax]"},
		{"\x00\n", "plan.toml:1:1: error: a byte of no text (0x00) stands here; save the file as UTF-8 text [syntax]"},
		{"a = true1\n", "plan.toml:1:9: error: '1' stands behind the value; one key = value in a line; text and lengths stand in quotes [syntax]"},
		{"name: \"x\"\n", "plan.toml:1:5: error: ':' stands where an = belongs; a line is key = value, a [table] or a # comment [syntax]"},
		{"a = [1 2]\n", "plan.toml:1:8: error: in a list stands '2' where a comma or the closing ] belongs; put a comma between two values, and close what is open [syntax]"},
		{"a = {b}\n", "plan.toml:1:7: error: '}' stands where an = belongs; a line is key = value, a [table] or a # comment [syntax]"},
		{"a = {b = 1 c = 2}\n", "plan.toml:1:12: error: between braces stands 'c' where a comma or the closing } belongs; put a comma between two values [syntax]"},
	} {
		_, ds := parse(c.src, nil)
		got := strings.Join(lines(ds), "\n")
		require.Equal(t, c.want, got, c.src)
	}
}

// TestNesting: brackets in texts and comments do not count, those of a real plan are
// few, and a million are refused at once.
func TestNesting(t *testing.T) {
	ok := strings.Repeat("# [[[[\n", 40) + "a = \"[[[[[[[[[[[[[[[[[[[[[[\\\"[\"\nb = '{{{{{{{{{{{{{{{{{{{{{{{{'\nc = '''\n[[[[[[[[[[[[[[[[[[[[[[[[[[[[''' # [\nd = \"\"\"[[[[[[[[[[[[[[\n[[[[[[[[[[[[\\\"\"\"[\"\"\"\n" +
		"e = [" + strings.Repeat("[1.5],", 40) + "]\n"
	_, ds := parse(ok, nil)
	for _, d := range ds {
		require.NotContains(t, []string{"too-deep", "syntax"}, string(d.Code), d)
	}
	for _, c := range []struct{ src, at string }{
		{"x = " + strings.Repeat("[", 17), "plan.toml:1:21: "},
		{"x = '[' # [\ny = " + strings.Repeat("{a=", 17), "plan.toml:2:53: "},
		{"x" + strings.Repeat(".x", 17) + " = 1\n", "plan.toml:1:34: "},
		{"[" + strings.Repeat("x.", 18) + "x]\n", "plan.toml:1:35: "},
	} {
		_, ds := parse(c.src, nil)
		require.Equal(t, []string{c.at + "error: more than 16 tables or lists stand inside one another; close those before it: a plan's tables lie four deep [too-deep]"}, lines(ds))
	}
	for _, src := range []string{
		strings.Repeat("[", 1<<20), strings.Repeat("x=[", 1<<18), "x" + strings.Repeat(".x", 1<<19), strings.Repeat("x={", 1<<18),
		"x = " + strings.Repeat("[1,", 15) + strings.Repeat("'", 1<<20), strings.Repeat("\"", 1<<20), strings.Repeat("a.b=1\n", 1<<17), strings.Repeat("[[wall]]\n", 1<<17),
	} {
		begin := time.Now()
		_, ds := parse(src, nil)
		require.True(t, ds.Errors())
		t.Log(time.Since(begin), ds[0].Code)
	}
}
