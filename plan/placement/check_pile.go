package placement

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
)

// leastEnd is the least distance of a bolt from the end of a girder, in
// diameters: where the load is across the grain, half of the value is left there
// (NDS 2018 Table 12.5.1A, from memory).
const leastEnd = 2

// boltAtSplice tells of bolts on a pile that pass a girder where it ends.
var boltAtSplice = newCheck("bolt-at-splice", plan.Warning, "a bolt at the end of a girder",
	"Where a girder breaks over a pile, a bolt in the middle passes between the two pieces and holds neither.", func(x *placer, c *Check) {
		for _, p := range x.p.Pieces {
			if p.Joint.Kind != plan.GirderPile || p.Item.Kind.Shape != hardware.Rod || p.Rod == nil {
				continue
			}
			for _, m := range p.Joint.Members {
				if d, ok := fromEnd(m, p.Rod, p.Item.Rod); ok && d < leastEnd*p.Item.Rod {
					x.about(c, p, p.Tag, fmt.Sprintf("passes the girder %s from its end, and needs %s", x.units().Length(max(d, 0)), x.units().Length(leastEnd*p.Item.Rod)),
						"place two with count = 2, one in each piece, or take it out and let straps hold each piece")
					break
				}
			}
		}
	})

// fromEnd returns how far a rod of a diameter across a girder is from the nearer end
// of a piece of it, in, and whether its hole cuts that piece: what lies past the end
// goes through the next one.
func fromEnd(m *framing.Member, rod *Axis, thick float64) (float64, bool) {
	d := m.B.Sub(m.A)
	if m.Role != plan.GirderBeam {
		return 0, false
	}
	s := rod.A.Sub(m.A).Dot(d.Unit())
	near := math.Min(s, d.Len()-s)
	return near, near > -thick/2
}
