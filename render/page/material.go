package page

import (
	"cmp"

	"galewright/plan"
	"galewright/plan/hardware"
)

// Coating names a coating, or says that the plan gives none.
func Coating(c plan.Coating) string { return cmp.Or(string(c), "coating blank") }

// Material names the coating of an item, and that of its rod where it has one
// beside its steel.
func Material(it *hardware.Item) string {
	if it.Rod == 0 || it.Kind.Shape == hardware.Rod || it.RodCoating == it.Coating {
		return Coating(it.Coating)
	}
	return Coating(it.Coating) + ", rod " + Coating(it.RodCoating)
}
