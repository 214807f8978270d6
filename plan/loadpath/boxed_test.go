package loadpath_test

import (
	"strings"
	"testing"

	"galewright/plan/loadpath"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// linksOf are the links of one check of a boxed house with edits of its plan and more text.
func linksOf(t *testing.T, check, more string, edits ...string) (out []*loadpath.Link) {
	t.Helper()
	text := boxed
	for i := 0; i < len(edits); i += 2 {
		require.Contains(t, text, edits[i])
	}
	text = strings.NewReplacer(edits...).Replace(text)
	for _, l := range reportOf(t, "boxed", text+more).Links {
		if l.Check.ID == check {
			out = append(out, l)
		}
	}
	return out
}

// A 5/8 in bolt through a sill of pine holds 1,139 lb along it in wind (worked in package
// timber), and no more than its catalog allows along: 900 lb where that says so. Of the
// bolts at 49, 96, 144 and 192 in those at 96 and 144 are in the segment from 4 to 14 ft.
func TestBoltsHoldWhatTheWoodAndTheCatalogDo(t *testing.T) {
	for _, c := range []struct {
		loads   string
		each    float64
		governs string
	}{
		{"", 1138.5, "bolts across the sill plate, mode IIIs"},
		{`loads = { along = "900 lb", source = "invented sheet" }`, 900, "the catalog's allowable load along"},
		{`loads = { along = "1300 lb", source = "invented sheet" }`, 1138.5, "bolts across the sill plate, mode IIIs"},
	} {
		list := linksOf(t, "anchor-shear", `[[item]]
mark = "own"
kind = "anchor bolt"
length = "12in"
rod = "5/8in"
washer = "3in"
coating = "hot-dip zinc"
`+c.loads+"\n", `use = "sill-bolt"`, `use = "own"`)
		require.Len(t, list, 4)
		for _, l := range list {
			assert.Empty(t, l.Gap)
			assert.Equal(t, 2, l.Capacity.Pieces, l.ID)
			assert.InDelta(t, 2*c.each, l.Capacity.Value, 1, l.ID)
			assert.Equal(t, c.governs, l.Capacity.Governs)
			assert.Equal(t, "own", l.Capacity.Mark)
			assert.InDelta(t, l.Demand/l.Capacity.Value, l.Ratio, 1e-9)
			assert.InDelta(t, l.Strength*0.6, l.Demand, 1e-6)
			require.Len(t, l.Capacity.Terms, 1, "both bolts alike")
			assert.Contains(t, l.Capacity.Terms[0].Text, "2 bolts, each ")
		}
	}
}

// Top plates from 16 ft lengths break twice over each wall. With neither strap nor nails
// in the lap each break is a gap; 8 nails on each side hold 8 x 228 lb: 16d common through
// 1-1/2 in into 1-1/2 in of pine, Z 154 lb (NDS 2018 Table 12N, from memory) x 1.5/1.62
// for less than 10 diameters of penetration x 1.6. Where the lap is shorter than the nails
// need nothing is counted.
func TestBreaksOfTopPlates(t *testing.T) {
	long, short := "plate = \"60'\"\nstock = [\"60'\"]", "plate = \"16'\"\nstock = [\"16'\"]"
	assert.Empty(t, linksOf(t, "chord-splice", ""), "plates in one length have none")
	bare := linksOf(t, "chord-splice", "", long, short)
	nailed := linksOf(t, "chord-splice", "[nailing]\ntop_plate_splice = { nail = \"16d common\", count = 8 }\n", long, short)
	require.Len(t, bare, 8)
	require.Len(t, nailed, 8)
	for i, l := range bare {
		assert.Contains(t, l.Gap, "no strap at this splice, and no nails in its lap are ordered", l.ID)
		n := nailed[i]
		assert.Equal(t, l.ID, n.ID)
		assert.InDelta(t, l.Demand, n.Demand, 1e-9, "what is asked does not go by what holds")
		assert.Empty(t, n.Gap)
		assert.InDelta(t, 8*154*1.5/1.62*1.6, n.Capacity.Value, 8, n.ID)
		assert.Equal(t, 8, n.Capacity.Pieces)
		assert.Contains(t, n.Capacity.Terms[1].Text, "8 nails on each side of the break")
		// 0.6 of the larger of chord and collector, or of both where wind goes along both axes.
		chord, drag := n.Terms[0].Value, n.Terms[1].Value
		assert.GreaterOrEqual(t, n.Demand, 0.6*max(chord, drag)-1e-6, n.ID)
		assert.InDelta(t, n.Strength*0.6, n.Demand, 1e-6)
		if n.Case == "diaphragm chord, wind across the wall" {
			assert.InDelta(t, 0.6*chord, n.Demand, 1e-6)
			assert.Greater(t, chord, drag)
		}
	}
	weak := linksOf(t, "chord-splice", "[nailing]\ntop_plate_splice = { nail = \"6d common\", count = 8 }\n", long, short)
	for _, l := range weak { // 2 in long: 1/2 in of penetration, under 6 diameters of 0.113 in
		assert.Contains(t, l.Gap, "penetration", l.ID)
	}
}
