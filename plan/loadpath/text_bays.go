package loadpath

import (
	"cmp"

	"galewright/plan"
)

// jsonBay is one bay of a deck.
type jsonBay struct {
	Story    string    `json:"story"`
	Along    plan.Axis `json:"along"`
	From     float64   `json:"from_ft"`
	To       float64   `json:"to_ft"`
	FromLine string    `json:"from_line"`
	ToLine   string    `json:"to_line"`
	FromLb   float64   `json:"from_lb"`
	ToLb     float64   `json:"to_lb"`
	Unit     float64   `json:"unit_shear_plf"`
	Chord    float64   `json:"chord_lb"`
	Depth    float64   `json:"depth_ft"`
	Case     string    `json:"case"`
}

func (b Bay) json() jsonBay {
	return jsonBay{
		b.Level.Name, plan.Axes[b.Axis], hundredth(b.Lo / 12), hundredth(b.Hi / 12), b.Lines[0], b.Lines[1], tenth(b.Ends[0]), tenth(b.Ends[1]),
		tenth(ASD.W * b.Unit()), tenth(ASD.W * b.Chord()), hundredth(b.Depth / 12), b.Case,
	}
}

// writeBays lists the shear and the chord force of each bay of each deck.
func (r *Report) writeBays(p printer) {
	p.head("Decks between the lines: shear and chord, ASD")
	p.line("  %-10s %-5s %-22s %-22s %10s %10s %10s", "deck over", "wind", "from", "to", p.u.Words("depth {ft}"), p.u.Unit("plf"), p.u.Words("chord {lb}"))
	for _, b := range r.Bays {
		end := func(i int, at float64) string { return cmp.Or(b.Lines[i], "free edge") + " = " + r.Units().Length(at) }
		p.line("  %-10s %-5s %-22s %-22s %10.1f{ft} %10.0f{plf} %10.0f{lb}", b.Level.Name, plan.Axes[b.Axis], end(0, b.Lo), end(1, b.Hi), b.Depth/12, ASD.W*b.Unit(), ASD.W*b.Chord())
	}
	p.line("  simple beams between the lines, the mean pressure of each stretch; openings in floors are not taken out; the shear of roof and floors is checked where their nails are ordered ([deck], [floor])")
}
