package framing

import (
	"slices"

	"galewright/plan"
)

// openFloor are the roles of what stands over an open underside.
var openFloor = []plan.Role{plan.Joist, plan.Rim, plan.Blocking}

// Wet tells whether a member is taken as wet when nailed or in service: one of the roles
// that the plan names; where it names none one of plan.WetRoles, or of the lowest floor
// over an open underside, in the weather from below.
func (h *House) Wet(m *Member) bool {
	if roles := h.Plan.Loads.Wet; roles != nil {
		return slices.Contains(roles, m.Role)
	}
	if slices.Contains(plan.WetRoles, m.Role) || slices.Contains(plan.DeckRoles, m.Role) {
		return true
	}
	return h.Plan.OpenUnderside() && slices.Contains(openFloor, m.Role) && m.Roof == nil && m.Level != nil && m.Level.Index == 0
}
