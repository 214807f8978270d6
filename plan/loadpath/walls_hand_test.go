package loadpath

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan/wind"
)

// wallsHouse is a shed on a slab, its south wall in two that go on in one line.
const wallsHouse = `
[project]
name = "generated"
date = 2026-01-05
[site]
wind_speed = "130 mph"
exposure = "C"
[[level]]
name = "floor"
plate_height = "8' 1 1/8in"
SHEATHING
[[wall]]
name = "S1"
from = ["0'", "0'"]
to = ["12'", "0'"]
shear = [{ to = "4'" }]
[[wall]]
name = "S2"
to = ["24'", "0'"]
HEIGHT
shear = [{ from = "8'" }]
[[wall]]
name = "E"
to = ["24'", "20'"]
shear = [{}]
[[wall]]
name = "N"
to = ["0'", "20'"]
shear = [{}]
[[wall]]
name = "W"
to = ["0'", "0'"]
shear = [{}]
[[item]]
mark = "splice"
kind = "collector strap"
length = "36in"
width = "1 1/4in"
thickness = "18 ga"
nails = { type = "10d x 1 1/2", each_end = 8, spacing = "2in" }
[nailing]
top_plate_splice = { nail = "16d common", count = 8 }
`

func wallsReport(t *testing.T, height, sheathing, rule string) *Report {
	t.Helper()
	return reportOf(placed(t, strings.NewReplacer("HEIGHT", height, "SHEATHING", sheathing).Replace(wallsHouse)+rule))
}

// linkIn returns the link of a check with an ID.
func linkIn(t *testing.T, r *Report, check, id string) *Link {
	t.Helper()
	for _, l := range r.Links {
		if l.Check.ID == check && l.ID == id {
			return l
		}
	}
	require.Fail(t, "no link", "%s %s", check, id)
	return nil
}

const spliceRule = "[[rule]]\nat = \"plate-splice\"\nuse = \"splice\"\nwhere = { wall = \"S1\" }\n"

// Both plates of two walls in line break where they meet: without a strap that is a gap, for
// no plate runs past for nails in a lap; a strap holds it.
func TestTheBreakBetweenTwoWallsInLineIsChecked(t *testing.T) {
	l := linkIn(t, wallsReport(t, "", "", ""), "chord-splice", "S1-144-PS")
	assert.Positive(t, l.Demand)
	assert.Contains(t, l.Gap, "no plate runs 24 in past it on both sides")
	held := linkIn(t, wallsReport(t, "", "", spliceRule), "chord-splice", "S1-144-PS")
	assert.InDelta(t, l.Demand, held.Demand, 1e-9)
	require.NotNil(t, held.Capacity)
	assert.Empty(t, held.Gap)
	assert.Positive(t, held.Capacity.Value)
}

// Where the wall's height changes nothing is counted.
func TestNothingCarriesTheChordOverAStep(t *testing.T) {
	l := linkIn(t, wallsReport(t, `height = "10'"`, "", ""), "chord-splice", "S1-144-PS")
	assert.Positive(t, l.Demand)
	assert.Contains(t, l.Gap, `the top plates step by 1'-10 7/8" here`)
	assert.Nil(t, l.Capacity)
}

// Sheathing outside of segments: zone 4 or 5 by the stretch, the nails' own suction. 12 ft of
// S2 less its segment is 8, and none of it changes a shear wall's numbers.
func TestSheathingOutsideOfSegmentsIsCheckedForSuctionAlone(t *testing.T) {
	bare, own := wallsReport(t, "", "", ""), wallsReport(t, "", `sheathing = { panel = "15/32", edge = "4in" }`, "")
	var ids []string
	for _, l := range own.Links {
		if l.Check.ID != panelCheck {
			other := linkIn(t, bare, l.Check.ID, l.ID)
			assert.InDelta(t, other.Demand, l.Demand, 1e-9, l.ID)
			assert.Equal(t, other.Gap, l.Gap, l.ID)
			continue
		}
		if strings.Contains(l.Where, "sheathing from") {
			ids = append(ids, l.ID)
		}
	}
	assert.Equal(t, []string{"panel-S1-48", "panel-S2-0"}, ids)
	l := linkIn(t, own, panelCheck, "panel-S2-0")
	q := own.Basis.At(own.Basis.Height).QKd
	p := own.Basis.Cladding(wind.WallFigure(own.Basis.Edition, own.Basis.Theta).Zones[1], 1)
	assert.InDelta(t, p.Negative, q*(p.GCpNegative-0.18), 1e-6)
	assert.InDelta(t, 0.6*-p.Negative*12*16/144, l.Demand, 1e-6, "zone 5: it begins at the wall's start")
	assert.Contains(t, strings.Join(own.Unchecked, "\n"), "they count for no shear and no uplift")
	assert.NotContains(t, strings.Join(bare.Unchecked, "\n"), "they count for no shear and no uplift")
}
