package placement

import (
	"fmt"
	"math"
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
			for _, f := range p.Item.Ends() {
				m, thick, tip := x.tip(p, f)
				if key := f.Part + f.Nail; m != nil && !told[key] {
					told[key] = true
					x.about(c, p, p.Tag, fmt.Sprintf("%s comes %s through the %s, which is %s thick there", f.Nail, length.Feet(tip), m.Role, length.Feet(thick)),
						fmt.Sprintf("take a fastener no longer than %s", length.Feet(length.Snap(thick+p.Item.Thickness))))
				}
			}
		}
	})

// tip returns the member that a nail of the end f goes through, how thick it is in
// the nail's direction and how far the tip comes out; nil when none.
func (x *placer) tip(p *Piece, f hardware.End) (*framing.Member, float64, float64) {
	if f.Length <= 0 || strings.HasPrefix(f.Nail, "bolt") {
		return nil, 0, 0
	}
	for i, m := range p.Laid {
		n, ok := normalOn(p, i)
		if !ok || !f.Into(m) {
			continue
		}
		t := thick(m, n)
		tip := f.Length - p.Item.Thickness - t
		if t > 0 && tip > touch && !x.backed(p, m, n) {
			return m, t, tip
		}
	}
	return nil, 0, 0
}

// normalOn returns the normal of the face on which a piece is nailed to its
// ith member.
func normalOn(p *Piece, i int) (geom.Vec3, bool) {
	switch {
	case len(p.bands) == 0:
		return geom.Vec3{}, false
	case len(p.bands) == 2 && p.Item.Kind.Shape == hardware.Over && p.Joint.Kind != plan.RafterRidge:
		return p.bands[1-min(i, 1)].n, true // a hook: over the plate, then down the stud
	case i > 0 && len(p.bands) > 1:
		return p.bands[len(p.bands)-1].n, true
	}
	if i > 0 && len(p.Path) == 1 && (p.Face == plan.Left || p.Face == plan.Right) {
		return geom.Vec3{Z: 1}, true // the leg of a clip turned onto the plate
	}
	return p.bands[0].n, true
}

// thick returns how thick a member is along n, in: the extent of its thickest
// solid part; for a rafter the depth of its section.
func thick(m *framing.Member, n geom.Vec3) float64 {
	if m.Roof != nil && math.Abs(n.Z) > 0.3 {
		return m.Section.Depth
	}
	n = n.Unit()
	most := 0.0
	for _, s := range m.Solid {
		lo, hi := math.Inf(1), math.Inf(-1)
		s.Points(func(p geom.Vec3) {
			d := p.Dot(n)
			lo, hi = min(lo, d), max(hi, d)
		})
		most = max(most, hi-lo)
	}
	return most
}

// backed tells whether another member touches the far face of m, so that the
// nail runs on into wood.
func (x *placer) backed(p *Piece, m *framing.Member, n geom.Vec3) bool {
	if m.Role == plan.TopPlate || m.Role == plan.UpperPlate {
		return math.Abs(n.Z) > 0.5 // the two plates lie on each other
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
