package read_test

import (
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/read"
)

// headers open each table of read.Keys in an otherwise empty file.
var headers = map[string]string{
	"": "", "project": "[project]", "site": "[site]", "foundation": "[foundation]", "lumber": "[lumber]", "loads": "[loads]", "loads.dead": "[[loads.dead]]",
	"salt": "[salt]", "salt.override": "[salt]\n[[salt.override]]", "treated": "[[treated]]",
	"level": "[[level]]", "level.sheathing": "[[level]]\n[level.sheathing]", "opening_type": "[[opening_type]]", "shear_type": "[[shear_type]]", "wall": "[[wall]]", "wall.start": "[[wall]]\n[wall.start]", "wall.opening": "[[wall]]\n[[wall.opening]]",
	"wall.breaks": "[[wall]]\n[wall.breaks]", "wall.sheathing": "[[wall]]\n[wall.sheathing]", "wall.shear": "[[wall]]\n[[wall.shear]]", "wall.post": "[[wall]]\n[[wall.post]]", "roof": "[[roof]]", "roof.post": "[[roof]]\n[[roof.post]]", "dormer": "[[dormer]]", "dormer.opening": "[[dormer]]\n[[dormer.opening]]", "deck": "[deck]", "deck.zone": "[deck]\n[[deck.zone]]", "floor": "[floor]", "floor_opening": "[[floor_opening]]", "joist": "[[joist]]", "blocking": "[[blocking]]", "girder": "[[girder]]", "brace": "[[brace]]", "breakaway": "[[breakaway]]", "porch": "[[porch]]", "porch.roof": "[[porch]]\n[porch.roof]", "porch.deck": "[[porch]]\n[porch.deck]", "beam": "[[beam]]", "item": "[[item]]",
	"item.nails": "[[item]]\n[item.nails]", "item.loads": "[[item]]\n[item.loads]", "rule": "[[rule]]",
	"rule.where": "[[rule]]\n[rule.where]", "place": "[[place]]",
	"nailing": "[nailing]", "nailing.connection": "[nailing.jack_to_king]",
}

// complaint finds faults that say an example line itself is wrong; names it
// refers to and keys beside it are missing on purpose.
func complaint(ds plan.Diagnostics, line int) (out []string) {
	for _, d := range ds {
		if d.Pos.Line == line && d.Severity == plan.Error && !strings.HasPrefix(string(d.Code), "unknown-level") && !strings.HasPrefix(string(d.Code), "unknown-mark") &&
			!regexp.MustCompile("^unknown-(wall|roof|girder|porch|host|type)$|^missing-key$|^off-member$|^idle-key$|^nothing-to-override$|^empty-").MatchString(string(d.Code)) {
			out = append(out, d.String())
		}
	}
	return out
}

func TestEveryExampleOfTheKeysReads(t *testing.T) {
	files := map[string]string{"marsh-wren.toml": house, "hardware.toml": "[[item]]\nmark = \"x\"\nkind = \"clip\"\n"}
	for _, k := range read.Keys() {
		header, ok := headers[k.Table]
		require.True(t, ok, "table %q", k.Table)
		require.NotEmpty(t, k.Doc, "%s.%s", k.Table, k.Name)
		src := header + "\n" + k.Example + "\n"
		_, ds := parse(src, files)
		require.Empty(t, complaint(ds, strings.Count(header, "\n")+2), src)
	}
}

func TestEveryKeyIsListedOnce(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range read.Keys() {
		name := k.Table + "." + k.Name
		require.False(t, seen[name], name)
		seen[name] = true
	}
}

// A default that is written as a value must be what the reader takes.
func TestDefaultsAreThoseTheReaderTakes(t *testing.T) {
	base := func(p *plan.Plan) string {
		b, err := json.Marshal(p)
		require.NoError(t, err)
		return regexp.MustCompile(`"(Pos|AtPos|Given)":(\{[^{}]*\}|\[[^\[\]]*\]|null)`).ReplaceAllString(
			regexp.MustCompile(`"Assumed":(\[[^\[\]]*\]|null)`).ReplaceAllString(string(b), ""), "")
	}
	n := 0
	for _, k := range read.Keys() {
		var v map[string]any
		if k.Default == "" || k.Table == "" {
			continue
		}
		if _, err := toml.Decode("x = "+k.Default, &v); err != nil {
			continue // in words
		}
		n++
		rest := strings.NewReplacer("[[item]]", "[[item]]\nmark = \"x\"\nkind = \"clip\"", "[[wall]]", "[[wall]]\nname = \"w\"\nto = [\"9'\", \"0'\"]").Replace(headers[k.Table])
		if k.Table == "item.nails" {
			rest += "\ntype = \"8d\"\ncount = 3"
		}
		without, _ := parse(rest+"\n", nil)
		with, ds := parse(rest+"\n"+k.Name+" = "+k.Default+"\n", nil)
		require.Empty(t, complaint(ds, strings.Count(rest, "\n")+2))
		if k.Table == "wall" && k.Name == "from" {
			continue
		}
		require.Equal(t, base(without), base(with), "%s.%s", k.Table, k.Name)
	}
	require.Greater(t, n, 40)
}
