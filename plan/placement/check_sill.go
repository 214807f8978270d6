package placement

import (
	"fmt"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
)

// What a piece of sill plate asks of its bolts: no farther apart than boltApart, one
// within boltNear of each end (IRC 2006 R403.1.6, read), in.
const (
	boltApart = 72
	boltNear  = 12
)

// sillUnbolted tells of lengths of sill plate that no bolt holds.
var sillUnbolted = newCheck("sill-unbolted", plan.Warning, "a length of sill plate with no bolt",
	"Bolts of a sill plate stand no farther apart than 6 ft, and one within 12 in of each end of each piece (IRC 2006 R403.1.6, read); one does for a piece of 24 in or less (from memory). The engineer's spacing is often closer. A house with no such bolt at all is left to the load path.", func(x *placer, c *Check) {
		if !x.anySillRod() {
			return
		}
		for _, w := range x.house.Plan.Walls {
			for _, m := range x.sills[w] {
				if bare := x.bareSill(m); bare != "" {
					x.tell.add(plan.Diagnostic{
						Severity: c.Severity, Code: c.ID, Pos: w.Pos,
						Where:   fmt.Sprintf("wall %s, sill plate from %s to %s", w.Name, x.units().Length(m.S0), x.units().Length(m.S1)),
						Summary: bare, Mend: `place anchor bolts by a rule at = "sill-foundation", with at_most for their spacing`,
					})
				}
			}
		}
	})

// bareSill says where a piece of sill plate has no bolt though it wants one, or "".
func (x *placer) bareSill(m *framing.Member) string {
	at := x.sillRods(m)
	u := x.units()
	switch {
	case len(at) == 0:
		return "no bolt holds it to the foundation"
	case m.S1-m.S0 <= shortPlate:
		return ""
	case at[0]-m.S0 > boltNear+touch:
		return fmt.Sprintf("its first bolt is %s from its end, at %s", u.Length(at[0]-m.S0), u.Length(at[0]))
	case m.S1-at[len(at)-1] > boltNear+touch:
		return fmt.Sprintf("its last bolt is %s from its end, at %s", u.Length(m.S1-at[len(at)-1]), u.Length(at[len(at)-1]))
	}
	for i := 1; i < len(at); i++ {
		if d := at[i] - at[i-1]; d > boltApart+touch {
			return fmt.Sprintf("its bolts at %s and %s are %s apart", u.Length(at[i-1]), u.Length(at[i]), u.Length(d))
		}
	}
	return ""
}

// anySillRod tells whether any sill plate of the house has a bolt or rod.
func (x *placer) anySillRod() bool {
	for _, list := range x.sills {
		if slices.ContainsFunc(list, func(m *framing.Member) bool { return len(x.sillRods(m)) > 0 }) {
			return true
		}
	}
	return false
}

// sillRods returns the stations of the bolts and rods that go through a piece of
// sill plate into what is below it, those of hold-downs among them.
func (x *placer) sillRods(m *framing.Member) (at []float64) {
	for _, p := range x.p.Pieces {
		if p.Joint.Wall != m.Wall || p.Item.Kind.Shape != hardware.Rod || len(p.Path) != 2 {
			continue
		}
		if p.Path[0].Z > m.Z0 && p.Path[1].Z < m.Z0 && p.Station > m.S0 && p.Station < m.S1 {
			at = append(at, p.Station)
		}
	}
	slices.Sort(at)
	return at
}
