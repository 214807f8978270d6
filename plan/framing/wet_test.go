package framing

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"galewright/plan"
)

// Piles, porches and girders are wet, and the lowest floor where nothing closes it from
// below; upper floors, ceilings and what a slab or crawl space is under are dry. A plan's
// own list, an empty one too, stands for all of it.
func TestWhatIsTakenAsWet(t *testing.T) {
	first, second := &plan.Level{}, &plan.Level{Index: 1}
	for _, c := range []struct {
		why  string
		m    Member
		kind plan.FoundationKind
		salt plan.Finish
		own  []plan.Role
		wet  bool
	}{
		{"a girder over piles", Member{Role: plan.GirderBeam}, plan.Piles, "", nil, true},
		{"a porch's beam", Member{Role: plan.Beam, Level: first}, plan.Slab, "", nil, true},
		{"a rim over open air", Member{Role: plan.Rim, Level: first}, plan.Piles, "", nil, true},
		{"a joist over open air, told", Member{Role: plan.Joist, Level: first}, plan.Piles, plan.OpenFinish, nil, true},
		{"blocks between them", Member{Role: plan.Blocking, Level: first}, plan.Piles, plan.OpenFinish, nil, true},
		{"joists sheathed below", Member{Role: plan.Joist, Level: first}, plan.Piles, plan.SheathingFinish, nil, false},
		{"the second floor's rim", Member{Role: plan.Rim, Level: second}, plan.Piles, "", nil, false},
		{"a ceiling joist", Member{Role: plan.Joist, Level: first, Roof: &plan.Roof{}}, plan.Piles, "", nil, false},
		{"joists over a crawl space", Member{Role: plan.Joist, Level: first}, plan.Stem, "", nil, false},
		{"a bottom plate", Member{Role: plan.BottomPlate, Level: first}, plan.Piles, "", nil, false},
		{"a stud the plan calls wet", Member{Role: plan.Stud, Level: first}, plan.Slab, "", []plan.Role{plan.Stud}, true},
		{"a girder the plan does not", Member{Role: plan.GirderBeam}, plan.Piles, "", []plan.Role{plan.Stud}, false},
		{"a rim where it names none", Member{Role: plan.Rim, Level: first}, plan.Piles, "", []plan.Role{}, false},
	} {
		h := &House{Plan: &plan.Plan{Loads: plan.Loads{Wet: c.own}, Foundation: plan.Foundation{Kind: c.kind}, Salt: plan.Salt{Underside: c.salt}}}
		assert.Equal(t, c.wet, h.Wet(&c.m), c.why)
	}
}
