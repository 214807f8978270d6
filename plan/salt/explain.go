package salt

import (
	"fmt"
	"strings"

	"galewright/plan"
	"galewright/plan/placement"
)

// classSource is where the classes are from.
const classSource = "classes of places: NFIP Technical Bulletin 8, June 2019 (second-hand); the bulletin's materials were not found, the engineer gives them"

// Explain tells the class, the coating and the treated wood of each part of a
// piece, and the rules with their sources.
func (r *Report) Explain(p *placement.Piece) string {
	x := r.of[p]
	if x == nil {
		return ""
	}
	var b strings.Builder
	fmt.Fprintf(&b, "salt air and treated wood at %s:\n", p.Tag)
	for _, part := range x.Parts {
		r.tellPart(&b, part)
	}
	fmt.Fprintf(&b, "  %s\n", classSource)
	if near := NearShore(r.house.Plan.Site); near != "" {
		fmt.Fprintf(&b, "  salt water is %.0f ft away: %s\n", r.house.Plan.Site.Shore, near)
	}
	if s := r.house.Plan.Salt.Source; s != "" {
		fmt.Fprintf(&b, "  materials: %s\n", s)
	}
	return b.String()
}

func (r *Report) tellPart(b *strings.Builder, x Part) {
	coating := string(x.Coating)
	if coating == "" {
		coating = "a blank"
	}
	fmt.Fprintf(b, "  %s: %s\n", x.Name, coating)
	for _, a := range x.In {
		takes := "a blank"
		if m := r.house.Plan.Salt.Materials(a.Class); len(m) > 0 {
			takes = Takes(m)
		}
		fmt.Fprintf(b, "    %s, %s; the engineer takes %s\n", a.Class, a.Why(), takes)
	}
	for _, w := range x.Wood {
		fmt.Fprintf(b, "    %s treated with %s: %s\n", w.Role, w.name(), x.treatedText(w))
	}
}

// treatedText says what the code says of a part in treated wood.
func (x *Part) treatedText(w Wood) string {
	switch why := x.unfit(w); {
	case why != "":
		return "not for it (" + why + ")"
	case x.Coating == "":
		return "blank"
	case x.Sort == Bolts && x.Diameter >= largeBolt-1e-9 && !x.noble():
		return "steel bolts from 1/2 in on are exempt there, though not from salt (IRC 2003 and 2006, R319.3 exception, read; R317.3.1 since 2009, from memory)"
	case w.Preservative == plan.Borate && x.dry() && !x.noble():
		return "inside and dry, borate takes plain steel (IBC 2012 2304.9.5.1 exception, read)"
	case x.Sort == Steel && !x.outdoors():
		return "inside: the rule for connectors is of those outdoors; as the maker says"
	case x.Sort == Steel:
		return connectorRule
	}
	return fastenerRule
}
