package loadpath

import (
	"slices"
	"strings"
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/require"
)

// A kind of joint has a load check that runs over it, or the reason for none
// is printed wherever a house has such joints.
func TestEveryKindOfJointIsCheckedOrTheReasonIsPrinted(t *testing.T) {
	checks := map[string]*Check{}
	for _, c := range Checks() {
		checks[c.ID] = c
	}
	for _, r := range plan.Joints {
		require.True(t, r.Check == "" || checks[r.Check] != nil, "%s: there is no check %q", r.Kind, r.Check)
	}
	seen, linked := map[plan.JointKind]bool{}, map[plan.JointKind]bool{}
	eachExample(t, func(t *testing.T, a *analysis) {
		has, printed := map[plan.JointKind]bool{}, uncheckedJoints(a.house)
		for _, j := range a.house.Joints {
			has[j.Kind], seen[j.Kind] = true, true
			require.True(t, a.peaks[j] == nil || len(j.Kind.Row().Demand) > 0, "%s: the parts of its force have no names", j.Kind)
		}
		for _, r := range plan.Joints {
			told := slices.ContainsFunc(printed, func(s string) bool {
				return r.Unchecked != "" && strings.Contains(strings.ToLower(s), r.Many) && strings.Contains(s, r.Unchecked)
			})
			require.Equal(t, has[r.Kind] && r.Check == "", told, r.Kind)
			if r.Check == "" || !has[r.Kind] {
				continue
			}
			for _, l := range checks[r.Check].run(checks[r.Check], a) {
				linked[r.Kind] = linked[r.Kind] || l.Joint != nil && l.Joint.Kind == r.Kind
			}
		}
	})
	for _, r := range plan.Joints {
		require.True(t, !seen[r.Kind] || r.Check == "" || linked[r.Kind], "%s: the check %s links none", r.Kind, r.Check)
	}
}
