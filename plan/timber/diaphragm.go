package timber

import (
	"fmt"
	"math"

	"galewright/plan/source"
)

// DeckShear asks for the unit shear of a deck of wood panels on framing 2 in thick
// without blocking under its panels' edges, nails at 6 in along the panels' supported
// edges and 12 in between, or closer.
type DeckShear struct {
	Panel float64 // thickness, in
	Nail  Nail
	G     float64 // of the framing
}

// DeckUnit is an allowable unit shear of a deck and what it is made of.
type DeckUnit struct {
	Nominal float64 // wind, lb/ft
	Ratio   float64 // of the nail's lateral value to that of the row's nail, at most 1
	Species float64
	Allow   float64 // lb/ft
	Row     string
	Source  string
}

// decks is SDPWS Table 4.2C, edition not named there, sheathing grade, nominal seismic unit shear of cases 2
// to 6, lb/ft (second-hand: one public table file that asks to be verified). Wind is
// 1.4 times it, rounded to 5.
var decks = []struct {
	thickness float64
	text      string
	penny     string
	seismic   float64
}{
	{3.0 / 8, "3/8", "8d", 320}, {7.0 / 16, "7/16", "8d", 340}, {15.0 / 32, "15/32", "8d", 360}, {15.0 / 32, "15/32", "10d", 380}, {19.0 / 32, "19/32", "10d", 430},
}

// UnitShear returns the least value that the table has whichever way the panels
// lie: of the thickest row no thicker than the deck, for the row's common nail no
// larger than the deck's. A nail that no row has takes the 8d row by the ratio of the
// two nails' lateral values, never more than 1 (assumed).
func (d DeckShear) UnitShear() (DeckUnit, error) {
	u := DeckUnit{Ratio: 1, Species: SpeciesFactor(d.G)}
	seismic := 0.0
	for _, r := range decks {
		common, _ := NailOf(r.penny + " common")
		same := common.Diameter == d.Nail.Diameter && common.Length <= d.Nail.Length
		if r.thickness > d.Panel+1e-3 || !same && r.penny != "8d" || r.seismic < seismic {
			continue
		}
		ratio := 1.0
		if !same {
			v, err := d.ratio(common)
			if err != nil {
				return u, err
			}
			ratio = v
		}
		seismic, u.Ratio, u.Row = r.seismic, ratio, r.text+" with "+r.penny
	}
	if seismic == 0 {
		return u, fmt.Errorf("no unit shear of a deck is carried for panels of %.3f in", d.Panel)
	}
	u.Nominal = 5 * math.Round(1.4*seismic/5)
	u.Allow = u.Nominal * u.Ratio * u.Species / 2
	u.Source = fmt.Sprintf("SDPWS Table 4.2C, edition not named, unblocked, cases 2 to 6, wind as 1.4 of seismic, over 2.0 (%s)", source.SecondHand)
	return u, nil
}

// ratio is the lateral value of the deck's nail over that of a common one, through
// the panel into the framing.
func (d DeckShear) ratio(common Nail) (float64, error) {
	panel, framing := Part{Thickness: d.Panel, G: 0.5}, Part{Thickness: 3.5, G: d.G}
	got, err := SingleNail(d.Nail, panel, framing)
	if err != nil {
		return 0, err
	}
	row, err := SingleNail(common, panel, framing)
	if err != nil {
		return 0, err
	}
	return math.Min(1, got.Z/row.Z), nil
}
