package lumber

import (
	"bytes"
	"encoding/json"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Plates of one length are one line of the list where it prints one angle for them, to
// a tenth of a degree: 22.46 and 22.54 are 22.5, 22.56 is not, and square is none of
// these.
func TestBevelsThatPrintAlikeAreOnePart(t *testing.T) {
	var plates []*framing.Member
	for _, at := range []float64{22.46, 22.54, 22.56, 0, -22.5} {
		m := piece(plan.TopPlate, "2x6", 5.5, 84)
		m.Bevel = at
		plates = append(plates, m)
	}
	count := map[string]int{}
	for _, p := range yardOf(nil, plates...).Sections[0].Parts {
		count[p.words()] += p.Count
	}
	assert.Equal(t, map[string]int{"top plate": 1, "top plate, end cut at 22.5°": 2, "top plate, end cut at 22.6°": 1, "top plate, end cut at -22.5°": 1}, count)
}

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
