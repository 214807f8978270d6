package loadpath

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/lift"
)

// liftCheck is the ID of the lift test.
const liftCheck = "lift"

// LiftTest is what the lift test took and what it found.
type LiftTest struct {
	Ties   []lift.Tie        // all that takes tension between members
	Lifted []*framing.Member // what uplift reaches, in the order of the house
	Gaps   []lift.Gap
}

// Lift returns the lift test; nil where loads are missing.
func (r *Report) Lift() *LiftTest {
	if r.work == nil {
		return nil
	}
	return r.work.lift()
}

// lift pulls the house up by its roof. What takes tension is steel, and nails
// where no steel leads on: each nailing here has its link in the check of nails.
func (a *analysis) lift() *LiftTest {
	t := &LiftTest{Ties: append(a.steel.Ties(), nailEdges(a.flow.used())...), Lifted: a.lifted()}
	t.Gaps = lift.New(a.house.Members, t.Ties).Gaps(t.Lifted)
	return t
}

// liftTest is the check of what the lift test finds: every member that uplift
// reaches and that no tie holds to the ground is a gap, whether or not any
// other check knows its kind of joint.
func liftTest(c *Check, a *analysis) (out []*Link) {
	for _, gap := range a.lift().Gaps {
		out = append(out, a.liftLink(c, gap))
	}
	return out
}

// lifted returns the members that uplift reaches: all of the roof, and each
// that a joint with an uplift hands on.
func (a *analysis) lifted() (out []*framing.Member) {
	asked := map[*framing.Member]bool{}
	for _, j := range a.house.Joints {
		if p := a.peaks[j]; p != nil && p.demand > least && j.First() != nil {
			asked[j.First()] = true
		}
	}
	for _, m := range a.house.Members {
		if asked[m] || flies(m) {
			out = append(out, m)
		}
	}
	return out
}

// flies tells whether a member is lifted by the roof's own panels.
func flies(m *framing.Member) bool {
	switch m.Role {
	case plan.Rafter, plan.HipRafter, plan.ValleyRafter, plan.FlyRafter, plan.Outlooker, plan.Truss, plan.GirderTruss, plan.HipTruss, plan.JackTruss, plan.CornerJack, plan.ValleyFrame:
		return true
	}
	return false
}

// liftLink is the link of a gap: what ends there, and the largest uplift among
// it that is known.
func (a *analysis) liftLink(c *Check, gap lift.Gap) *Link {
	m := gap.Member
	l := &Link{Check: c, ID: m.ID, Wall: m.Wall, Where: "the " + string(m.Role) + " " + m.ID, Unit: "lb"}
	at := "no joint"
	for _, x := range append([]*framing.Member{m}, gap.Above...) {
		for _, j := range a.byFirst[x] {
			if p := a.peaks[j]; p != nil && p.demand > l.Demand {
				at = j.ID
				l.Demand, l.Strength, l.Case, l.Force = p.demand, max(0, p.force.net(Strength)), p.wind.String(), p.force
			}
		}
	}
	l.Terms = append(l.Terms, Term{"largest uplift known of what ends here, ASD, at " + at, l.Demand, "lb"})
	l.Ratio = math.Inf(1)
	l.Gap = "nothing ties it to what is below" + endsHere(gap.Above)
	return l
}

// endsHere says which members hang on a gap.
func endsHere(above []*framing.Member) string {
	if len(above) == 0 {
		return ""
	}
	n := map[plan.Role]int{}
	for _, m := range above {
		n[m.Role]++
	}
	var parts []string
	for role, k := range n {
		parts = append(parts, fmt.Sprintf("%d %s", k, role))
	}
	slices.Sort(parts)
	return "; the uplift of " + strings.Join(parts, ", ") + " ends here"
}
