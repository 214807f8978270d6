package loadpath

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/units"
	"galewright/plan/wind"
)

// limitCheck is the ID of the check of the method's own limits.
const limitCheck = "method-limit"

// methodLimits checks the house against what the methods hold for: outside of a
// limit all other numbers rest on a method that was not made for the house, so
// it counts as what fails.
func methodLimits(c *Check, a *analysis) (out []*Link) {
	for _, b := range a.bounds() {
		out = append(out, boundLink(c, a.u, b))
	}
	if why := a.basis.Untreated(); why != "" {
		l := &Link{Check: c, ID: "limit, enclosure", Host: "enclosure", Where: "the whole house", Unit: "", Demand: 1, Strength: 1, Case: "any wind", Ratio: math.Inf(1), Gap: why}
		l.Terms = []Term{{"buildings without walls that the procedures are worked out for: 0; this house", 1, ""}}
		out = append(out, l)
	}
	return out
}

// bounds lists the limits of all methods that are used for the house.
func (a *analysis) bounds() []wind.Bound {
	out := append(a.basis.Bounds(a.choice), wind.Stories(len(a.plan.Levels)))
	for _, r := range a.plan.Roofs {
		out = append(out, wind.CladAngle("angle of roof "+r.Name, r.Kind, r.Angle()))
	}
	return append(out, a.openBounds()...)
}

// boundLink is the link of one limit: the house's number over what the method
// goes to; of a least number turned about.
func boundLink(c *Check, u units.System, b wind.Bound) *Link {
	l := &Link{Check: c, ID: "limit, " + b.What, Host: b.What, Where: "the whole house", Unit: b.Unit, Case: "any wind", Demand: b.Value, Strength: b.Value, Ratio: b.Ratio()}
	most := b.Most
	if b.Least > 0 && b.Value > 0 && b.Least/b.Value > b.Value/math.Max(b.Most, 1e-9) {
		l.Demand, l.Strength, most = b.Least, b.Least, b.Value
	}
	l.Terms = []Term{{b.What + " of the house", b.Value, b.Unit}}
	if l.Demand != b.Value {
		l.Terms = append(l.Terms, Term{"least that the method holds for", b.Least, b.Unit})
	}
	from := "this program's own limit"
	if b.Source != "" {
		from = fmt.Sprintf("%s (%s)", b.Source, b.Grade)
	}
	l.Capacity = &Capacity{Value: most, Source: from, Governs: b.What + ", " + b.Range(u), Terms: ofCapacity(Term{"the method holds for " + b.Range(u), most, b.Unit})}
	if b.Outside() {
		l.Capacity.Governs = b.Told(u)
	}
	return l
}

// outside tells, one sentence a limit, where the house lies outside of one.
func (a *analysis) outside() (out []string) {
	for _, b := range a.bounds() {
		if b.Outside() {
			out = append(out, b.Told(a.u))
		}
	}
	if why := a.basis.Untreated(); why != "" {
		out = append(out, why)
	}
	return out
}

// openBounds lists the limits of the figures of free roofs, for each open roof
// and both winds. Its mean height is that from its own eave's edge, or from the plates,
// whichever is further toward or past a limit: the figures draw roofs without plates.
func (m *model) openBounds() (out []wind.Bound) {
	for _, r := range m.plan.Roofs {
		if !m.open[r] {
			continue
		}
		area := roofArea(m.plan, r)
		top := m.house.RidgeHeight(r)
		for k := range 2 {
			what := fmt.Sprintf("h/L of open roof %s, wind %s", r.Name, plan.Axes[k])
			b, eave := wind.FreeBound(what, (r.Over.Top()+top)/2/area.span(k)), wind.FreeBound(what, (m.house.EaveHeight(r)+top)/2/area.span(k))
			if eave.Ratio() > b.Ratio() {
				b = eave
			}
			out = append(out, b)
		}
		out = append(out, wind.FreeAngle("angle of open roof "+r.Name+", free roof", r.Angle()))
	}
	return out
}
