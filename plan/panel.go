package plan

import (
	"fmt"
	"math"
)

// Panel is a thickness of wood structural panel.
type Panel struct {
	Text  string  // "15/32"
	Thick float64 // in
	Given bool    // by the plan; false = assumed
}

// AssumedWallPanel is the wall sheathing taken where the plan has no sheathed
// segment.
const AssumedWallPanel = "7/16"

// PanelOf returns the panel that a plan's text names.
func PanelOf(text string) Panel {
	t, _ := Inches(text)
	return Panel{Text: text, Thick: t, Given: true}
}

// PanelOfInches returns the panel of a thickness in inches, in words to the
// 32nd as panels are sold: "23/32", "1 1/8".
func PanelOfInches(in float64) Panel {
	n := int(math.Round(in * 32))
	if math.Abs(in*32-float64(n)) > 1e-6 {
		return Panel{Text: fmt.Sprintf("%.3f in", in), Thick: in, Given: true}
	}
	whole, part, of := n/32, n%32, 32
	for part > 0 && part%2 == 0 {
		part, of = part/2, of/2
	}
	text := fmt.Sprintf("%d/%d", part, of)
	switch {
	case part == 0:
		text = fmt.Sprint(whole)
	case whole > 0:
		text = fmt.Sprintf("%d %s", whole, text)
	}
	return Panel{Text: text, Thick: in, Given: true}
}

// WallPanels returns the thinnest and the thickest sheathing of a wall: of its
// own sheathed segments and what is outside of them, else of those of all exterior walls, as panels of one
// thickness are carried on between segments; else AssumedWallPanel. A nil wall
// stands for all exterior walls.
func (p *Plan) WallPanels(w *Wall) (thin, thick Panel) {
	if w != nil {
		thin, thick = spread([]*Wall{w}, thin, thick)
	}
	if thin.Given {
		return thin, thick
	}
	if p != nil {
		var walls []*Wall
		for _, x := range p.Walls {
			if x.Exterior {
				walls = append(walls, x)
			}
		}
		thin, thick = spread(walls, thin, thick)
	}
	if !thin.Given {
		assumed := PanelOf(AssumedWallPanel)
		assumed.Given = false
		return assumed, assumed
	}
	return thin, thick
}

// spread widens the range of panels to those of the walls' segments and of what is outside
// of them.
func spread(walls []*Wall, thin, thick Panel) (Panel, Panel) {
	for _, w := range walls {
		for _, s := range append(w.Panels(), w.Shear...) {
			x := PanelOf(s.Panel)
			if x.Thick <= 0 {
				continue
			}
			if !thin.Given || x.Thick < thin.Thick {
				thin = x
			}
			if x.Thick > thick.Thick {
				thick = x
			}
		}
	}
	return thin, thick
}
