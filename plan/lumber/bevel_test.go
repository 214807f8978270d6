package lumber

import (
	"bytes"
	"encoding/json"
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A plate cut at an angle is a piece of its own beside a square one of its length,
// and the list says how both it and a ripped stud are cut.
func TestBevelsAreToldInTheList(t *testing.T) {
	cut, stud := piece(plan.TopPlate, "2x6", 5.5, 84), piece(plan.BeveledStud, "4x6", 5.5, 92.625)
	cut.Bevel, stud.Bevel, stud.Section.Breadth = 22.5, 22.5, 3.5
	c := yardOf(nil, piece(plan.TopPlate, "2x6", 5.5, 84), cut, stud)
	require.Len(t, c.Sections, 2)
	require.Len(t, c.Sections[0].Parts, 2)
	var text, rows, data bytes.Buffer
	require.NoError(t, c.Text(&text))
	assert.Contains(t, text.String(), "top plate, end cut at 22.5°")
	assert.Contains(t, text.String(), "beveled stud, ripped at 22.5°")
	require.NoError(t, c.CSV(&rows))
	assert.Contains(t, rows.String(), `piece,2x6,"top plate, end cut at 22.5°",84,1`)
	require.NoError(t, c.JSON(&data))
	var got struct {
		Sections []struct {
			Pieces []struct {
				Bevel float64 `json:"bevel_deg"`
			} `json:"pieces"`
		} `json:"sections"`
	}
	require.NoError(t, json.Unmarshal(data.Bytes(), &got))
	assert.Zero(t, got.Sections[0].Pieces[0].Bevel)
	assert.InDelta(t, 22.5, got.Sections[0].Pieces[1].Bevel, 1e-9)
	assert.InDelta(t, 22.5, got.Sections[1].Pieces[0].Bevel, 1e-9)
}
