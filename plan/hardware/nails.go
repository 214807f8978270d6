package hardware

import (
	"strings"

	"galewright/plan"
)

// Nail is the size of one fastener.
type Nail struct {
	Name     string  // as the plan writes it
	Diameter float64 // in
	Length   float64 // in; 0 for a bolt whose length the wood decides
	Coating  plan.Coating
}

// Bolt tells whether the fastener is a bolt, rod or screw: bought by the
// piece, not by the pound.
func (n Nail) Bolt() bool {
	word, _, _ := strings.Cut(strings.TrimSpace(n.Name), " ")
	return word == "bolt" || word == "screw" || word == "lag" || word == "rod" || word == "No."
}

// Screw tells whether the fastener is a screw.
func (n Nail) Screw() bool {
	word, _, _ := strings.Cut(strings.TrimSpace(n.Name), " ")
	return word == "screw" || word == "lag" || word == "No."
}

// ParseNail reads a fastener as a plan writes it, see plan.NailSize.
func ParseNail(text string) (Nail, error) {
	d, l, err := plan.NailSize(text)
	return Nail{Name: strings.Join(strings.Fields(text), " "), Diameter: d, Length: l}, err
}
