package loadpath

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/length"
	"galewright/plan/nailing"
	"galewright/plan/timber"
)

// diaphragmCheck is the ID of the check of roof decks in shear.
const diaphragmCheck = "diaphragm-shear"

// Bay is a stretch of a deck between two lines of shear walls, or past the last of
// them, in its worst gust, strength level.
type Bay struct {
	Level  *plan.Level
	Axis   int        // the wind's
	Lines  [2]string  // names of the lines at its ends; "" at a free end
	Lo, Hi float64    // coordinates across the wind, in
	Ends   [2]float64 // force that goes into the line at each end, lb, negative against the wind
	Moment float64    // largest between them, lb in
	Depth  float64    // of the deck along the wind where it is least between its ends, in
	Case   string
	bands  []Band // all wind on the deck in that case
}

// Unit is the larger unit shear at the bay's ends, plf, strength level.
func (b Bay) Unit() float64 {
	return math.Max(math.Abs(b.Ends[0]), math.Abs(b.Ends[1])) / math.Max(1, b.Depth) * 12
}

// Chord is the largest chord force of the bay, lb, strength level.
func (b Bay) Chord() float64 { return math.Abs(b.Moment) / math.Max(1, b.Depth) }

// bays lists the bays of all decks as simple beams between the lines, with
// cantilevers past the outer ones. They are worked out once.
func (l *lateral) bays() []Bay {
	if l.listed == nil {
		l.listed = l.allBays()
	}
	return l.listed
}

func (l *lateral) allBays() []Bay {
	out := []Bay{}
	for _, s := range l.stories {
		for _, d := range l.m.decks {
			if ax := slices.Index(plan.Axes[:], s.Axis); d.level == s.Level && len(d.lines[ax]) > 0 {
				out = append(out, l.m.baysOf(d, s, ax)...)
			}
		}
	}
	return out
}

// baysOf lists the bays of a deck under a story's wind along an axis. Each is as
// deep as the house is there: beside the wing of an L there is no deck.
func (m *model) baysOf(d *diaphragm, s StoryShear, ax int) (out []Bay) {
	lo, hi := s.reach(axis(d.extent.lo, 1-ax), axis(d.extent.hi, 1-ax))
	edges, names := []float64{lo}, []string{""}
	for _, x := range d.lines[ax] {
		edges, names = append(edges, x.At), append(names, x.Name)
	}
	edges, names = append(edges, hi), append(names, "")
	for i := 1; i < len(edges); i++ {
		b := Bay{Level: s.Level, Axis: ax, Lines: [2]string{names[i-1], names[i]}, Lo: edges[i-1], Hi: edges[i], Case: s.Case, bands: s.Bands}
		if b.Hi-b.Lo > 1 {
			b.Depth = m.indoors[d.level].depth(d.extent, ax, b.Lo, b.Hi)
			b.load(bandsWithin(s.Bands, b.Lo, b.Hi))
			out = append(out, b)
		}
	}
	return out
}

// reach widens the stretch of a deck to what of its wind blows on past its walls:
// rakes and eaves.
func (s StoryShear) reach(lo, hi float64) (float64, float64) {
	for _, b := range s.Bands {
		lo, hi = math.Min(lo, b.Lo), math.Max(hi, b.Hi)
	}
	return lo, hi
}

// link is the name of the link at an end of a bay of a roof's or floor's deck.
func (b Bay) link(deck string, i int) string {
	return fmt.Sprintf("%s deck, line %s, from %s", deck, b.Lines[i], []string{"its high side", "its low side"}[i])
}

// bandsWithin returns the bands that reach into a stretch, in their order: no other has
// a part in its forces.
func bandsWithin(bands []Band, lo, hi float64) (out []Band) {
	for _, w := range bands {
		if math.Min(w.Hi, hi) > math.Max(w.Lo, lo) {
			out = append(out, w)
		}
	}
	return out
}

// load works the ends and the moment of a bay out under the bands of wind on it.
func (b *Bay) load(bands []Band) {
	span := b.Hi - b.Lo
	total, left := 0.0, 0.0 // lb, and about the high end lb in
	for _, w := range bands {
		lo, hi := math.Max(w.Lo, b.Lo), math.Min(w.Hi, b.Hi)
		if hi <= lo {
			continue
		}
		f := w.Load / 12 * (hi - lo)
		total += f
		left += f * (b.Hi - (lo+hi)/2)
	}
	switch {
	case b.Lines[0] == "":
		b.Ends = [2]float64{0, total}
		b.Moment = left
	case b.Lines[1] == "":
		b.Ends = [2]float64{total, 0}
		b.Moment = total*span - left
	default:
		b.Ends = [2]float64{left / span, total - left/span}
		b.Moment = b.most(bands)
	}
}

// most is the largest moment of a bay on two lines, lb in: where the shear comes to
// nothing.
func (b *Bay) most(bands []Band) (best float64) {
	const steps = 96
	for i := 1; i < steps; i++ {
		best = math.Max(best, b.moment(bands, b.Lo+(b.Hi-b.Lo)*float64(i)/steps))
	}
	return best
}

// moment is that of a bay at a coordinate across the wind, lb in: what its low end
// holds less the wind between, or, where that end is free, the wind on it alone.
func (b *Bay) moment(bands []Band, at float64) float64 {
	m := b.Ends[0] * (at - b.Lo)
	if b.Lines[0] != "" && b.Lines[1] == "" {
		m -= b.Moment // held fast at its low end
	}
	for _, w := range bands {
		lo, hi := math.Max(w.Lo, b.Lo), math.Min(w.Hi, at)
		if hi > lo {
			m -= w.Load / 12 * (hi - lo) * (at - (lo+hi)/2)
		}
	}
	return m
}

// diaphragms checks the shear of the decks of roof and floors at each end of each bay,
// and that of the lowest floor where it hands its wind to the lines over it.
func diaphragms(c *Check, a *analysis) (out []*Link) {
	for _, b := range a.lateral.bays() {
		deck, held := a.heldDeck(b.Level)
		if deck == "roof" && held == nil {
			continue // the check of the roof deck tells it
		}
		for i, line := range b.Lines {
			if line == "" || ASD.W*b.Ends[i] <= least {
				continue
			}
			v := b.Ends[i] / b.Depth * 12
			l := &Link{
				Check: c, ID: b.link(deck, i), Host: "line " + line,
				Where: fmt.Sprintf("%s over story %s, line %s", deck, b.Level.Name, line), Unit: "plf", Case: b.Case, Demand: ASD.W * v, Strength: v,
				Terms: []Term{
					{fmt.Sprintf("force of the deck from %s to %s, strength level", a.u.Length(b.Lo), a.u.Length(b.Hi)), b.Ends[i], "lb"},
					{"depth of the deck along the wind, the least between the ends of this stretch", b.Depth / 12, "ft"},
					{"unit shear, strength level", v, "plf"},
					{"0.6 of it", ASD.W * v, "plf"},
				},
			}
			closeDeck(l, deck, held)
			out = append(out, l)
		}
	}
	return append(append(out, a.intoLines(c)...), a.lowestFloors(c)...)
}

// deckPanelG is the specific gravity that a deck's panels are taken to have on their
// nails.
const deckPanelG = nailing.PanelG

// deckNail is the nail of the roof's deck and the thickness of its panels, in.
func (a *analysis) deckNail() (n timber.Nail, panel float64, err error) {
	d := a.plan.Deck
	dia, long, err := plan.NailSize(d.Nail)
	if err != nil {
		return n, 0, err
	}
	panel, err = length.Parse(d.Panel + "in")
	return timber.Nail{Name: d.Nail, Diameter: dia, Length: long}, panel, err
}

// deckUnit is what the ordered deck of the roofs bears in shear, plf.
func (a *analysis) deckUnit() *Capacity {
	d := a.plan.Deck
	nail, thick, err := a.deckNail()
	if err != nil {
		return &Capacity{Unknown: "the deck's panel or nail has no size"}
	}
	edge, field := d.Edge, d.Field
	for _, z := range d.Zones {
		edge, field = math.Max(edge, z.Edge), math.Max(field, z.Field)
	}
	return a.unblocked("deck", plan.Panel{Text: d.Panel, Thick: thick}, nail, edge, field)
}
