package steel

import (
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/wood"
)

// hair is what two touching faces may stand apart before there is air between
// them, in.
const hair = wood.Hair

// Wood is what fasteners are driven into.
type Wood struct{ *wood.Index }

// NewWood indexes the members.
func NewWood(members []*framing.Member) *Wood { return &Wood{wood.New(members)} }

// Run is the stretch of a fastener or rod inside one member.
type Run = wood.Run

// Margin is how much wood lies around a fastener.
type Margin = wood.Margin

// Grain returns the direction of a member's grain, unit.
func Grain(m *framing.Member) geom.Vec3 { return wood.Grain(m) }

// bounds returns the corners of the box around two points.
func bounds(a, b geom.Vec3) (lo, hi geom.Vec3) {
	return geom.Vec3{X: min(a.X, b.X), Y: min(a.Y, b.Y), Z: min(a.Z, b.Z)},
		geom.Vec3{X: max(a.X, b.X), Y: max(a.Y, b.Y), Z: max(a.Z, b.Z)}
}
