package read_test

import (
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestNailingIsReadInTheOrderOfItsTable(t *testing.T) {
	p, _ := parse(`
[nailing]
girder_plies = { nail = "20d common", spacing = "10in", rows = 3 }
top_plate_to_stud = { nail = "16d box", count = 2, drive = "toe" }
rafter_to_plate = { nail = "10d common", count = 3 }
`, nil)
	require.Len(t, p.Nailing, 3)
	assert.Equal(t, plan.RafterToPlate, p.Nailing[0].At)
	assert.Equal(t, plan.ToeNail, p.Nailing[0].Drive, "the connection's usual one")
	l := p.Ordered(plan.TopPlateToStud)
	require.NotNil(t, l)
	assert.Equal(t, plan.ToeNail, l.Drive)
	assert.Equal(t, plan.NailDim{Diameter: 0.135, Length: 3.5}, l.Size)
	assert.Equal(t, 4, l.Pos.Line)
	g := p.Ordered(plan.GirderPlies)
	assert.Equal(t, []any{10.0, 3, 0, plan.FaceNail}, []any{g.Spacing, g.Rows, g.Count, g.Drive})
	assert.Nil(t, p.Ordered(plan.JackToKing))
}

func TestNailingThatDoesNotFitItsConnection(t *testing.T) {
	for line, want := range map[string]plan.Code{
		`jack_to_kings = { nail = "10d common", spacing = "8in" }`:                "unknown-key",
		`jack_to_king = { nail = "10d common" }`:                                  "missing-key",
		`jack_to_king = { nail = "10d common", spacing = "8in", count = 3 }`:      "idle-key",
		`header_to_king = { nail = "16d common", count = 3, rows = 2 }`:           "idle-key",
		`header_to_king = { nail = "bolt 5/8", count = 3 }`:                       "bad-nail",
		`header_to_king = { nail = "spike", count = 3 }`:                          "bad-nail",
		`header_to_king = { nail = "16d common", count = 0 }`:                     "out-of-range",
		`header_plies = { nail = "16d common", spacing = "16in", drive = "toe" }`: "bad-drive",
		`header_plies = { nail = "16d common", spacing = "0in" }`:                 "out-of-range",
		`header_plies = 3`: "wrong-type",
	} {
		_, ds := parse("[nailing]\n"+line+"\n", nil)
		found := false
		for _, d := range ds {
			if d.Code == want && d.Pos.Line == 2 {
				found = true
				assert.Contains(t, d.Where, "nailing", line)
			}
		}
		assert.True(t, found, "%s: %s: %v", line, want, ds)
	}
}
