package placement

import (
	"fmt"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/length"
)

// nailTipThrough is the check of nails against the wood behind them.
var nailTipThrough = newCheck("nail-tip-through", plan.Warning, "a nail too long for the member behind",
	"The nail's tip comes out of the far side: it is a hazard, splits the wood, and counts less than its length.", func(x *placer, c *Check) {
		for _, p := range x.p.Pieces {
			told := map[string]bool{} // both ends of a strap are nailed alike
			for i, f := range p.Item.Ends() {
				m, thick, tip := x.tip(p, i, f)
				if key := f.Part + f.Nail; m != nil && !told[key] {
					told[key] = true
					x.about(c, p, p.Tag, fmt.Sprintf("%s comes %s through the %s, which is %s thick there", f.Nail, x.units().Length(tip), m.Role, x.units().Length(thick)),
						fmt.Sprintf("take a fastener no longer than %s", x.units().Bought(length.Snap(thick+p.Item.Thickness))))
				}
			}
		}
	})

// tip returns the member that a nail of the end f, the ith, goes through, how
// thick it is in the nail's direction and how far the tip comes out; nil when
// none.
func (x *placer) tip(p *Piece, i int, f hardware.End) (*framing.Member, float64, float64) {
	if f.Length <= 0 || strings.HasPrefix(f.Nail, "bolt") || i >= len(p.Ends) || len(p.Ends[i].Starts) == 0 {
		return nil, 0, 0
	}
	m, n := p.Laid[p.Ends[i].Laid].Member, p.Strip(p.Ends[i].Starts[0])[0].N
	t := thick(m, n)
	tip := f.Length - p.Item.Thickness - t
	if t > 0 && tip > touch && !x.backed(p, m, n) {
		return m, t, tip
	}
	return nil, 0, 0
}

// thick returns how thick a member is along n, in: the extent of its thickest
// solid part; for a rafter the depth of its section.
func thick(m *framing.Member, n geom.Vec3) float64 {
	if m.Roof != nil && geom.LiesFlat(n) {
		return m.Section.Depth
	}
	n = n.Unit()
	most := 0.0
	for _, s := range m.Solid {
		if !s.Empty() {
			lo, hi := s.Along(n)
			most = max(most, hi-lo)
		}
	}
	return most
}

// backed tells whether another member touches the far face of m, so that the
// nail runs on into wood.
func (x *placer) backed(p *Piece, m *framing.Member, n geom.Vec3) bool {
	if m.Role == plan.TopPlate || m.Role == plan.UpperPlate {
		return geom.LiesFlat(n) // the two plates lie on each other
	}
	if m.Wall == nil || p.Face != plan.Left && p.Face != plan.Right {
		return false
	}
	far := plan.Right
	if p.Face == plan.Right {
		far = plan.Left
	}
	z := min(max((p.Z0+p.Z1)/2, m.Z0+1), m.Z1-1)
	return x.beside(m, far, z)
}
