package loadpath

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
)

// withDeck is the sample house with a deck of these nails at this spacing.
func withDeck(nail, spacing string) string {
	return sample.plan() + "\n[deck]\npanel = \"15/32\"\nnail = \"" + nail + "\"\nedge = \"" + spacing + "\"\nfield = \"" + spacing + "\"\n"
}

func deckLinksOf(r *Report) []*Link { return r.DeckLinks() }

// A plan that says nothing of its deck has a gap there, with the suction that
// nothing known holds: never silence.
func TestNoDeckIsAGap(t *testing.T) {
	r := reportOf(placed(t, sample.plan()))
	links := deckLinksOf(r)
	require.NotEmpty(t, links)
	for _, l := range links {
		assert.Contains(t, l.Gap, "no [deck]")
		assert.Equal(t, "psf", l.Unit)
		assert.Greater(t, l.Demand, 16*0.6)
		assert.InDelta(t, 0.6*l.Strength, l.Demand, 1e-9)
		assert.True(t, math.IsInf(l.Ratio, 1))
	}
	var b bytes.Buffer
	failed, err := r.WriteCheck(&b, 1, "text")
	require.NoError(t, err)
	assert.True(t, failed)
	assert.Contains(t, b.String(), "no [deck] in the plan")
}

// With a deck each zone has its worst nail; wider nails raise the ratio, and
// the ratio is demand over capacity.
func TestDeckLinks(t *testing.T) {
	near, far := reportOf(placed(t, withDeck("8d common", "4in"))), reportOf(placed(t, withDeck("8d common", "12in")))
	worst := func(r *Report) (most float64) {
		for _, l := range deckLinksOf(r) {
			require.Empty(t, l.Gap)
			require.NotNil(t, l.Zone)
			assert.InDelta(t, l.Demand/l.Capacity.Value, l.Ratio, 1e-9)
			assert.True(t, strings.HasPrefix(l.ID, "deck-"))
			assert.Equal(t, l.Zone.Over, strings.HasSuffix(l.ID, "-over"))
			most = max(most, l.Ratio)
		}
		return most
	}
	assert.Greater(t, worst(far), 2*worst(near))
}

// A nail too short for its least penetration is a gap.
func TestShortDeckNailIsAGap(t *testing.T) {
	for _, l := range deckLinksOf(reportOf(placed(t, strings.Replace(withDeck("8d x 1", "6in"), "\nedge", "\nhead = \"0.281in\"\nedge", 1)))) {
		assert.Contains(t, l.Gap, "no capacity known")
	}
}

// explain tells a zone of a roof, or all of a roof's deck.
func TestExplainDeck(t *testing.T) {
	r := reportOf(placed(t, withDeck("8d common", "6in")))
	l := deckLinksOf(r)[0]
	one := r.Explain(l.ID)
	assert.Contains(t, one, "withdrawal of 8d common")
	assert.Contains(t, one, "GCp of zone")
	roof := strings.TrimPrefix(l.Host, "roof ")
	assert.Equal(t, len(deckLinksOf(r)), strings.Count(r.Explain("deck-"+roof), "Roof deck (deck)"))
	assert.Empty(t, r.Explain("deck-nowhere"))
}

// The deck is the first step of each chain under a roof.
func TestDeckOpensTheChains(t *testing.T) {
	n := 0
	for _, c := range reportOf(placed(t, withDeck("8d common", "6in"))).Chains {
		if len(c.Links) == 0 || c.Links[0].Title != "roof deck" {
			continue
		}
		n++
		assert.Equal(t, deckCheck, c.Links[0].Worst.Check.ID)
	}
	assert.GreaterOrEqual(t, n, 2)
}

// Wall panels by hand, demo house: wall zone 5, GCp -1.4 and GCpi 0.18, on a
// nail at 12 in over studs 16 in apart, 1.333 ft², or 8 in under the gables; 8d common through 15/32 in
// of G 0.42 by its head: 690 pi 0.281 0.42² 0.46875 x 1.6 = 80.6 lb.
func TestWallPanelsByHand(t *testing.T) {
	r := demoReport(t)
	q := r.Basis.At(r.Basis.Height).QKd
	n := 0
	for _, l := range r.Links {
		if l.Check.ID != panelCheck {
			continue
		}
		n++
		assert.InDelta(t, 0.6*q*(1.4+0.18)*l.Wall.Spacing*12/144, l.Demand, 1e-6)
		assert.Contains(t, []float64{8, 16}, l.Wall.Spacing)
		assert.InDelta(t, 80.6, l.Capacity.Value, 0.06)
	}
	shear := 0
	for _, w := range r.Placement.House.Plan.Walls {
		if w.Exterior {
			shear += len(w.Shear)
		}
	}
	assert.Equal(t, shear, n)
	assert.NotZero(t, n)
	assert.Equal(t, plan.ASCE722, r.Basis.Edition)
}
