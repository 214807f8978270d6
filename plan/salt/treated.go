package salt

import (
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
)

// preservative returns what a member is treated with: as the plan says, a
// later [[treated]] before an earlier; else sill plates on concrete, piles,
// porch posts and beams and girders over open piles are taken as treated with
// something that is not named.
func (r *Report) preservative(m *framing.Member) plan.Preservative {
	p := r.house.Plan
	for i := len(p.Treated) - 1; i >= 0; i-- {
		if t := p.Treated[i]; speaksOf(t, m) {
			return t.Preservative
		}
	}
	switch m.Role {
	case plan.SillPlate, plan.Pile, plan.PorchPost, plan.Beam, plan.BraceBoard,
		plan.DeckJoist, plan.DeckGirder, plan.DeckRim, plan.RailPost:
		return plan.Treated
	case plan.GirderBeam:
		if p.Foundation.Kind == plan.Piles && r.site.underside == plan.OpenFinish {
			return plan.Treated
		}
	}
	return plan.Untreated
}

// speaksOf tells whether a [[treated]] is about a member.
func speaksOf(t *plan.TreatedWood, m *framing.Member) bool {
	return slices.Contains(t.Members, m.Role) && (t.Level == "" || m.Level != nil && m.Level.Name == t.Level)
}

// Rules of treated wood, with their sources: the 2018 IBC has them in
// 2304.10.5.1, the 2021 IBC in 2304.10.6 (second-hand), the IRC in R317.3
// (transcribed; its wording after 2009 was not found).
const (
	fastenerRule  = "IBC 2018 2304.10.5.1, read: hot-dip zinc, stainless, silicon bronze or copper; IBC 2021 2304.10.6, second-hand"
	zincRule      = "IBC 2018 2304.10.5.1, read: mechanical zinc of class 55 for other than nails and screws"
	connectorRule = "IBC 2018 2304.10.5.1, read: outdoors as the maker says, else G185 or equal"
	largeBolt     = 0.5 // in: steel bolts from there on are exempt (IRC 2003 and 2006, R319.3 exception, read; R317.3.1 since 2009, from memory)
)

// unfit says why a part is not for one wood that it is in; "" where it is.
func (x *Part) unfit(w Wood) string {
	if x.Coating == "" || w.Preservative == plan.Untreated || x.noble() || w.Preservative == plan.Borate && x.dry() {
		return ""
	}
	switch {
	case x.Sort == Steel:
		if x.outdoors() && x.Coating != plan.G185 {
			return connectorRule
		}
		return ""
	case x.Sort == Bolts && x.Diameter >= largeBolt-1e-9:
		return ""
	case x.Coating == plan.Mechanical55 && x.Sort == Bolts:
		return ""
	case x.Coating == plan.Mechanical55:
		return zincRule
	}
	return fastenerRule
}

// noble tells whether the coating is one that the code takes for any fastener.
func (x *Part) noble() bool {
	return slices.Contains([]plan.Coating{plan.HotDip, plan.SiliconBronze, plan.CopperMetal}, x.Coating) || x.Coating.Stainless()
}

// outdoors tells whether some of the part is outside.
func (x *Part) outdoors() bool {
	return slices.ContainsFunc(x.In, func(a At) bool { return a.Class == plan.PartiallySheltered || a.Class == plan.OpenExposed })
}

// dry tells whether all of the part is inside, where borate takes plain carbon
// steel (IBC 2012 2304.9.5.1 exception, read).
func (x *Part) dry() bool {
	return !slices.ContainsFunc(x.In, func(a At) bool { return rank(a.Class) < rank(plan.UnventedEnclosed) })
}
