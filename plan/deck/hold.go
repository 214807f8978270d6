package deck

import (
	"fmt"

	"galewright/plan"
	"galewright/plan/length"
	"galewright/plan/source"
	"galewright/plan/timber"
)

// gravity returns the specific gravity of a panel for the pull-through of
// heads: OSB 0.50, plywood of other grades than Structural I 0.42 (NDS 2018
// Table 12.3.3B, from memory).
func gravity(k plan.PanelKind) float64 {
	if k == plan.Plywood {
		return 0.42
	}
	return 0.50
}

// Panels is a panel with its nail, over framing of one species.
type Panels struct {
	Thickness string // "19/32"
	Kind      plan.PanelKind
	plan.Nailing
	Species timber.Species
}

// Held is what one nail holds.
type Held struct {
	timber.PullValue
	Nail    timber.Fastener
	Thick   float64 // of the panel, in
	Panel   float64 // its specific gravity
	Wood    float64 // specific gravity of the framing
	Unknown string  // why there is no number, "" where there is one
	Source  string
}

// fastener returns the nail as package timber knows it.
func (p Panels) fastener() (timber.Fastener, error) {
	d, long, err := plan.NailSize(p.Nail)
	if err != nil {
		return timber.Fastener{}, err
	}
	n := timber.Nail{Name: p.Nail, Diameter: d, Length: long, Head: p.Head}
	if s, ok := timber.NailOf(p.Nail); ok && n.Head == 0 {
		n.Head = s.Head
	}
	f, ok := timber.FastenerOf(n)
	if !ok {
		return f, fmt.Errorf("no nail of %.3f in diameter is known", d)
	}
	if p.Rings > 0 {
		f.Shank, f.Thread = timber.Ring, p.Rings
	}
	return f, nil
}

// Hold returns what one nail holds in wood of a depth, in, at wind duration:
// the lesser of withdrawal and the pull-through of its head.
func (p Panels) Hold(depth float64) Held {
	h := Held{Panel: gravity(p.Kind), Wood: p.Species.G, Source: "NDS 2018 12.2 (" + string(source.Transcribed) + ")"}
	f, err := p.fastener()
	if err != nil {
		h.Unknown = err.Error()
		return h
	}
	h.Nail = f
	t, err := length.Parse(p.Thickness + "in")
	if err != nil {
		h.Unknown = "the panel's thickness is not known"
		return h
	}
	h.Thick = t
	pull := timber.Pull{
		Fastener: f, Side: timber.Part{Thickness: t, G: h.Panel}, Main: timber.Part{Thickness: depth, G: h.Wood},
		Condition: timber.Condition{Duration: timber.WindDuration},
	}
	if h.PullValue, err = pull.Value(); err != nil {
		h.Unknown = err.Error()
		return h
	}
	if h.Nothing != "" {
		h.Unknown = h.Nothing
	} else if f.Head <= 0 {
		h.Unknown = "the head of " + p.Nail + " is in no table, so its pull-through is not known"
	}
	return h
}
