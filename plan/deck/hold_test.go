package deck

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/timber"
)

func panels(thick string, kind plan.PanelKind, nail string, species string) Panels {
	s, _ := timber.SpeciesOf(species)
	p := Panels{Thickness: thick, Kind: kind, Nailing: plan.Nailing{Nail: nail}, Species: s}
	if nail[:4] == "ring" {
		p.Head, p.Rings = 0.281, 1.5
	}
	return p
}

// What one nail holds at duration 1.6 in rafters of 7 1/4 in.
func TestHoldOfOneNail(t *testing.T) {
	for _, c := range []struct {
		p       Panels
		want    float64
		governs string
	}{
		// FEMA P-55 vol. II Example 9.1 (4th ed., read) gives 66 lb for an 8d
		// common nail through 7/16 in OSB into G 0.42. By NDS 2018 equation
		// 12.2-3 (transcribed): 1380 x 0.42^2.5 x 0.131 = 20.67 lb/in, x 1.6, x
		// 2.0625 in = 68.2; 66 is the same with 2.0 in. Ours takes the nail as long
		// as it is.
		{panels("7/16", plan.OSB, "8d common", "spruce-pine-fir"), 68.2, "withdrawal"},
		{panels("15/32", plan.OSB, "8d common", "spruce-pine-fir"), 67.2, "withdrawal"},
		{panels("19/32", plan.OSB, "8d common", "Douglas fir-larch"), 97.5, "withdrawal"},
		// Heads of 0.281 in, NDS 2018 equation 12.2-6a: 690 pi 0.281 0.25 7/16 x
		// 1.6 = 106.6 lb, less than 133.8 of withdrawal from southern pine.
		{panels("7/16", plan.OSB, "8d common", "southern pine"), 106.6, "head pull-through"},
		{panels("15/32", plan.Plywood, "8d common", "southern pine"), 80.6, "head pull-through"},
		// Ring shank, NDS 2018 equation 12.2-5: 1800 x 0.3025 x 0.113 x 1.5 in of
		// rings x 1.6 = 147.7 lb; through 19/32 the head holds 144.7.
		{panels("19/32", plan.OSB, "ring 0.113 x 2 3/8", "southern pine"), 144.7, "head pull-through"},
		{panels("3/4", plan.OSB, "ring 0.113 x 2 3/8", "southern pine"), 147.7, "withdrawal"},
		// 1800 x 0.1764 x 0.113 x 1.5 x 1.6 = 86.1.
		{panels("19/32", plan.OSB, "ring 0.113 x 2 3/8", "spruce-pine-fir"), 86.1, "withdrawal"},
	} {
		h := c.p.Hold(7.25)
		require.Empty(t, h.Unknown)
		assert.InDelta(t, c.want, h.Allow, 0.06, "%+v", c.p)
		assert.Equal(t, c.governs, h.Governs)
	}
}

// The pages of values list withdrawal of common 8d nails by panel and G, lb
// (computed there by the same equations: they show slips, they prove nothing).
func TestPublishedPremiseOfP55(t *testing.T) {
	h := panels("7/16", plan.OSB, "8d common", "spruce-pine-fir").Hold(7.25)
	assert.InDelta(t, 66, h.Allow, 66*0.035, "P-55 Example 9.1 premise, 2.0 in for 2 1/16 in")
	assert.InDelta(t, 66, h.PerInch*1.6*2.0, 0.2)
}

func TestWhatIsNotKnownHoldsNothing(t *testing.T) {
	long := panels("7/16", plan.OSB, "0.131 x 2 1/2", "southern pine")
	assert.Contains(t, long.Hold(7.25).Unknown, "pull-through")
	long.Head = 0.281
	assert.Empty(t, long.Hold(7.25).Unknown)
	assert.Contains(t, panels("3/4", plan.OSB, "8d x 1 1/2", "southern pine").Hold(7.25).Unknown, "penetration", "3/4 in is less than 6 x 0.131")
	assert.NotEmpty(t, panels("7/16", plan.OSB, "nonsense", "southern pine").Hold(7.25).Unknown)
	assert.NotEmpty(t, panels("thin", plan.OSB, "8d common", "southern pine").Hold(7.25).Unknown)
	// A 1 1/2 in deep member holds no more of the nail than that.
	assert.InDelta(t, 1.5, panels("7/16", plan.OSB, "8d common", "southern pine").Hold(1.5).Length, 1e-9)
}

// The demand of one nail by hand: between rafters 16 in apart at 12 in it
// holds 16 x 11.8125 in (47.25 in in four spaces) of the face.
func TestDemandOfOneNailByHand(t *testing.T) {
	d := New(framed(t, fmt.Sprintf(small, "0'", ""), ""))
	w := d.Blow(basis(d.House))
	q := w.Basis.At(w.Basis.Height).QKd
	found := 0
	for _, s := range w.Weigh(pine, 0.6) {
		assert.Positive(t, s.Nails)
		l, ok := s.Rows[FieldRow]
		if !ok {
			continue
		}
		found++
		// 36.9 degrees: ASCE 7-22 Fig. 30.3-2D, -1.8, -2.0 and -2.5, with 0.18
		// inside; the small house is all edge.
		gcp := map[string]float64{"1": 1.8, "2": 2.0, "3": 2.5}[s.Zone.Name]
		assert.InDelta(t, q*(gcp+0.18)*16*l.Nail.Along/144, l.Demand, 1e-6, s.Zone.Name)
		assert.InDelta(t, 12, l.Nail.Along, 0.2)
		assert.InDelta(t, 0.6*l.Demand/l.Held.Allow, l.Ratio(0.6), 1e-9)
	}
	assert.Positive(t, found)
}

// Nails half as far apart have half the demand; a nail that is too far apart
// is above what it holds.
func TestWiderNailsAreWorse(t *testing.T) {
	h := example(t, "marsh-wren.toml")
	worst := func(edge, field, gable float64) (r float64) {
		h.Plan.Deck.Zones = nil
		h.Plan.Deck.Edge, h.Plan.Deck.Field, h.Plan.Deck.Gable = edge, field, gable
		for _, s := range New(h).Blow(basis(h)).Weigh(pine, 0.6) {
			r = max(r, s.Worst.Ratio(0.6))
		}
		return r
	}
	assert.Greater(t, worst(6, 12, 6), 0.89, "the gable")
	assert.Greater(t, worst(12, 12, 12), 1.0)
	assert.Less(t, worst(6, 6, 4), 0.7)
}
