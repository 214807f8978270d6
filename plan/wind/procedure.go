package wind

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"galewright/plan"
)

// feet prints feet.
func (b Basis) feet(x float64) string { return b.Units.Sprintf("%.1f ft", x) }

// Bars tells why the envelope procedure is not for this building, a reason
// each; nil where it is. walled are the kinds of the roofs over its walls.
// Height and width are limits of ASCE 7-16 26.2 (read); that a monoslope roof
// is outside chapter 28 is by an example of ASCE's Guide to 7-10, chapter 7
// (second-hand).
func (b Basis) Bars(walled []plan.RoofKind) (why []string) {
	least := math.Min(b.Length, b.Width)
	if b.Height > 60 {
		why = append(why, b.Units.Sprintf("mean roof height %.1f ft is over the {60 ft} of a low-rise building", b.Height))
	}
	if b.Height > least {
		why = append(why, b.Units.Sprintf("mean roof height %.1f ft is over the least horizontal dimension, %.1f ft", b.Height, least))
	}
	if slices.Contains(walled, plan.ShedRoof) {
		why = append(why, "chapter 28 has no figure for a monoslope (shed) roof over walls")
	}
	return why
}

// Choice is which procedures a building is worked out by.
type Choice struct {
	Use []plan.Procedure // both where the building allows both and the plan asks for none
	Why string
}

// Has tells whether a procedure is used.
func (c Choice) Has(p plan.Procedure) bool { return slices.Contains(c.Use, p) }

// String names what is used.
func (c Choice) String() string {
	var names []string
	for _, p := range c.Use {
		names = append(names, Chapter(p))
	}
	return strings.Join(names, " and ")
}

// Chapter names a procedure with its chapter of ASCE 7.
func Chapter(p plan.Procedure) string {
	if p == plan.Envelope {
		return "envelope (chapter 28)"
	}
	return "directional (chapter 27)"
}

// Choose returns the procedures to use: the one asked for; of a building that
// allows both, both; else the directional one. Asking for the envelope
// procedure where it is not for the building is an error.
func (b Basis) Choose(asked plan.Procedure, walled []plan.RoofKind) (Choice, error) {
	bars := b.Bars(walled)
	switch {
	case asked == plan.Envelope && bars != nil:
		return Choice{}, fmt.Errorf("the envelope procedure of ASCE %s chapter 28 is not for this building: %s", b.Edition, strings.Join(bars, "; "))
	case asked == plan.Envelope:
		return Choice{[]plan.Procedure{plan.Envelope}, "the plan asks for it, and the building is low-rise"}, nil
	case asked == plan.Directional:
		return Choice{[]plan.Procedure{plan.Directional}, "the plan asks for it"}, nil
	case bars != nil:
		return Choice{[]plan.Procedure{plan.Directional}, "the envelope procedure is not for this building: " + strings.Join(bars, "; ")}, nil
	}
	return Choice{[]plan.Procedure{plan.Envelope, plan.Directional}, "the building is low-rise and allows both; each is worked out whole, and every joint takes the larger demand (site.procedure asks for one)"}, nil
}
