package loadpath

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// eaved is the house of ceilinged with a deck, nails and a sheathed length in each
// wall; keys go to its roof, nails to its nailing.
func eaved(keys, nails string) string {
	text := strings.Replace(ceilinged, `rafters = "2x8 @ 16in"`, `ceiling_ties = false, ridge_beam = true, rafters = "2x8 @ 16in"`+keys, 1)
	for _, w := range []string{"24'", "16'"} {
		text = strings.ReplaceAll(text, `to = ["`+w, `shear = [{ from = "0'", to = "12'", edge = "4in" }], to = ["`+w)
	}
	text = strings.ReplaceAll(text, `to = ["0'"`, `shear = [{ from = "0'", to = "12'", edge = "4in" }], to = ["0'"`)
	return text + "\n[deck]\npanel = \"15/32\"\nnail = \"8d common\"\nedge = \"6in\"\nfield = \"6in\"\n[nailing]\n" + nails
}

func eaveLink(t *testing.T, text, line string) (*Report, *Link) {
	t.Helper()
	r, ds := Run(placed(t, text))
	require.False(t, ds.Errors())
	for _, l := range r.Links {
		if l.ID == "deck to the plates, line "+line {
			return r, l
		}
	}
	t.Fatal("no link")
	return nil, nil
}

// The deck hands its shear over the 24 ft of wall S evenly. Without blocks it goes
// through each rafter, 16 in of it, and turns that over about its seat by the height of
// its top over the plates: 2x8 plumb, 7.25 x sqrt(12² + 6²)/12 = 8.106 in, less its seat
// of 3.5 x 6/12 = 1.75 in, and half of the seat up the slope: 8.106 - 1.75 + 0.875 = 7.231.
func TestDeckShearAtAnEaveWithoutBlocksTurnsRaftersOver(t *testing.T) {
	r, l := eaveLink(t, eaved("", "rafter_to_plate = { nail = \"10d common\", count = 3 }"), "S")
	x := r.LineOf(l)
	require.NotNil(t, x)
	eaves := r.Eaves()
	require.Len(t, eaves, 2, "walls under the gables have none")
	e := eaves[0]
	assert.Equal(t, "S", e.Line.Name)
	assert.InDelta(t, 0.6*math.Abs(x.Deck)/24, e.PerFoot, 1e-6)
	assert.InDelta(t, e.PerFoot*16/12, e.Each, 1e-6)
	assert.InDelta(t, 7.25*math.Hypot(12, 6)/12-1.75+0.875, e.Rise, 0.01)
	assert.InDelta(t, e.Each*e.Rise, e.Roll(), 1e-6)
	assert.Contains(t, strings.Join(l.Notes, " "), "no blocks stand between the rafters")
	assert.Contains(t, strings.Join(r.Unchecked, " "), "turning over at eaves")
	assert.Equal(t, 3*19, l.Capacity.Pieces, "19 rafters, three nails each")
	found := false
	for _, term := range l.Terms {
		found = found || term.Unit == "plf" && math.Abs(term.Value-e.PerFoot) < 1e-9
	}
	assert.True(t, found)
}

// Full blocks: of each the lesser of two rows. 8d common, 0.131 in, through 15/32 in of
// panel, G 0.50, Fe 4650, into southern pine, Fe 5550: Re 1.194, mode IIIs (NDS 2018
// equation 12.3-5, transcribed), times 1.6. At 6 in a block of 14.5 in takes three. In the
// end bays the lowest outlooker lies where a block would reach the deck: 16 of 18 have one.
func TestFullBlocksHandTheDecksShearDownByHand(t *testing.T) {
	const few = "deck_to_blocking = { nail = \"8d common\", spacing = \"6in\" }\n"
	keys := `, blocking = "full"`
	r, l := eaveLink(t, eaved(keys, few+"blocking_to_plate = { nail = \"16d common\", spacing = \"3in\" }"), "S")
	const panel = 15.0 / 32
	re := 5550.0 / 4650
	k3 := -1 + math.Sqrt(2*(1+re)/re+2*100_000*(2+re)*0.131*0.131/(3*5550*panel*panel))
	z := 1.6 * k3 * 0.131 * panel * 5550 / ((2 + re) * 2.2)
	n := 0
	for _, b := range r.Placement.House.Blocks {
		if b.Wall.Name == "S" {
			n++
		}
	}
	assert.Equal(t, 16, n)
	require.NotNil(t, l.Capacity)
	assert.InDelta(t, float64(n)*3*z, l.Capacity.Value, 1)
	assert.Contains(t, l.Capacity.Governs, "in 16 blocks, nails of the deck")
	assert.Equal(t, 16*5, l.Capacity.Pieces, "of each at 3 in five into the plates")
	assert.NotContains(t, strings.Join(r.Unchecked, " "), "turning over at eaves")

	// Closer nails of the deck: the block's own toe-nails are the lesser.
	_, plate := eaveLink(t, eaved(keys, strings.Replace(few, "6in", "3in", 1)+"blocking_to_plate = { nail = \"8d common\", spacing = \"6in\" }"), "S")
	assert.Contains(t, plate.Capacity.Governs, "into the plates")
	assert.Less(t, plate.Capacity.Value, float64(n)*5*z)

	// One row not ordered: nothing hands it down, whatever the rafters' nails hold.
	_, none := eaveLink(t, eaved(keys, few+"rafter_to_plate = { nail = \"10d common\", count = 3 }"), "S")
	assert.Nil(t, none.Capacity)
	assert.Contains(t, none.Gap, "blocking_to_plate")
}

// Vented blocks keep rafters upright; the shear still goes by the rafters' nails.
func TestVentedBlocksLeaveTheShearToTheRafters(t *testing.T) {
	nails := "rafter_to_plate = { nail = \"10d common\", count = 3 }"
	_, bare := eaveLink(t, eaved("", nails), "S")
	r, l := eaveLink(t, eaved(`, blocking = "vented"`, nails+"\nblocking_to_plate = { nail = \"8d common\", spacing = \"6in\" }"), "S")
	assert.InDelta(t, bare.Capacity.Value, l.Capacity.Value, 1e-6)
	assert.Contains(t, strings.Join(l.Notes, " "), "keep them upright")
	assert.NotContains(t, strings.Join(r.Unchecked, " "), "turning over at eaves")
	assert.Equal(t, "18 blocks under an air gap", r.Eaves()[0].Held())
}
