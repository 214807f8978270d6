package salt

import (
	"fmt"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
	"galewright/plan/placement"
)

// keyOf is the key of [salt] with the materials of each class.
var keyOf = map[plan.SaltClass]string{
	plan.PartiallySheltered: "partially_sheltered", plan.OpenExposed: "open_exposed", plan.VentedEnclosed: "vented_enclosed",
	plan.UnventedEnclosed: "unvented_enclosed", plan.InteriorLiving: "interior",
}

// nearShore is the distance from the ocean within which metal building parts
// corrode markedly, ft: FEMA's risk management design guide, citing NFIP
// Technical Bulletin 8 of 1996 (read). No material follows from it here.
const nearShore = 3000.0

// NearShore says what is known of the distance of a site from salt water; ""
// where nothing is.
func NearShore(s plan.Site) string {
	if s.Shore <= 0 || s.Shore > nearShore {
		return ""
	}
	return "within 3,000 ft of the ocean metal building parts corrode markedly (FEMA risk management design guide, after TB 8 of 1996, read)"
}

// blanks tells what the plan leaves out: the distance of the shore, materials
// of classes in which there is steel, the coating of nails that no item brings.
func (r *Report) blanks(t *teller) {
	p := r.house.Plan
	if len(r.Pieces) == 0 {
		return
	}
	if p.Site.Shore <= 0 {
		t.add(plan.Diagnostic{
			Code: "no-shore", Pos: at(p.Site.Pos, plan.Pos{File: p.File, Line: 1, Col: 1}), Where: "site",
			Summary: "the distance of salt water is a blank", Mend: `add shore = "1800 ft" or what it is to [site]`,
		})
	}
	r.materials(t)
	if which := unbrought(p); p.Salt.Nailing == "" && which != "" {
		t.add(plan.Diagnostic{
			Code: "no-coating", Pos: r.pos(), Where: "salt", Summary: "the coating of the nails of " + which + " is a blank",
			Mend: `add nailing = "..." to [salt], as the engineer gives it`,
		})
	}
}

// unbrought says which nails the plan orders that no item brings, "" for none.
func unbrought(p *plan.Plan) string {
	var which []string
	if slices.ContainsFunc(p.Walls, func(w *plan.Wall) bool { return len(w.Shear)+len(w.Panels()) > 0 }) {
		which = append(which, "the sheathing")
	}
	if p.Deck != nil {
		which = append(which, "the roof's deck")
	}
	if len(p.Nailing) > 0 {
		which = append(which, "the nailing schedule")
	}
	return strings.Join(which, " and ")
}

// pos is where the plan speaks of salt, or would.
func (r *Report) pos() plan.Pos {
	p := r.house.Plan
	return at(p.Salt.Pos, at(p.Site.Pos, plan.Pos{File: p.File, Line: 1, Col: 1}))
}

// materials tells each class that has steel and no material: in one line when
// the plan gives none for any.
func (r *Report) materials(t *teller) {
	var blank []string
	var keys []string
	salt := &r.house.Plan.Salt
	for _, c := range plan.SaltClasses {
		n := 0
		for _, p := range r.Pieces {
			if p.in(c) {
				n++
			}
		}
		if n > 0 && len(salt.Materials(c)) == 0 {
			blank = append(blank, fmt.Sprintf("%s (%s)", c, plan.Counted(n, "piece")))
			keys = append(keys, keyOf[c])
		}
	}
	if len(blank) == 0 {
		return
	}
	if near := NearShore(r.house.Plan.Site); near != "" {
		blank = append(blank, near)
	}
	t.add(plan.Diagnostic{
		Code: "no-salt-material", Pos: r.pos(), Where: "salt",
		Summary: "no material is given where there is steel: " + strings.Join(blank, "; "),
		Mend:    "add what the engineer takes to [salt]: " + strings.Join(keys, ", "),
	})
}

// in tells whether some part of the piece is in a class.
func (p *Piece) in(c plan.SaltClass) bool {
	return slices.ContainsFunc(p.Parts, func(x Part) bool { return x.among(c) })
}

func (x *Part) among(c plan.SaltClass) bool {
	return slices.ContainsFunc(x.In, func(a At) bool { return a.Class == c })
}

// check looks at the parts of one piece.
func (r *Report) check(t *teller, p *Piece) {
	for i := range p.Parts {
		x := &p.Parts[i]
		if x.Coating == "" {
			t.of(p.Tag, plan.Diagnostic{
				Code: "no-coating", Pos: x.Pos, Summary: fmt.Sprintf("%s: the coating of its %s is a blank", p.Item.Mark, x.Name), Mend: mendBlank(x, p),
			})
			continue
		}
		for _, a := range x.In {
			r.short(t, p, x, a)
		}
		for _, w := range x.Wood {
			if why := x.unfit(w); why != "" {
				t.of(p.Tag, plan.Diagnostic{
					Code: "not-for-treated-wood", Pos: x.Pos, Summary: fmt.Sprintf("%s: its %s, %s, %s %s, treated with %s (%s)", p.Item.Mark, x.Name, x.Coating, x.verb(), w.Role, w.name(), why),
					Mend: "take a coating that is for treated wood, or have the plan say in [[treated]] what the wood is",
				})
			}
		}
	}
	own(t, p)
}

func (x *Part) verb() string { return x.many("lies outdoors on the", "go into the") }

func (w Wood) name() string {
	if w.Preservative == plan.Treated {
		return "a preservative that is not named"
	}
	return string(w.Preservative)
}

// mendBlank says where the coating is to be written.
func mendBlank(x *Part, p *Piece) string {
	switch {
	case x.Name == rodName && p.Item.Kind.Shape != hardware.Rod:
		return `add rod_coating = "..."`
	case x.Sort == Steel || x.Name == rodName:
		return `add coating = "..."`
	}
	return `add coating = "..." to its nails`
}

// short tells a part that is none of what the engineer takes in a class.
func (r *Report) short(t *teller, p *Piece, x *Part, a At) {
	takes := r.house.Plan.Salt.Materials(a.Class)
	if len(takes) == 0 || slices.ContainsFunc(takes, x.Coating.AtLeast) {
		return
	}
	t.of(p.Tag, plan.Diagnostic{
		Code: "coating-falls-short", Pos: x.Pos, Related: related(r.house.Plan.Salt.Pos),
		Summary: fmt.Sprintf("%s: its %s, %s, %s %s, where the engineer takes %s", p.Item.Mark, x.Name, x.Coating, x.many("is", "are"), a.Class, Takes(takes)),
		Mend:    fmt.Sprintf("take another coating there, or have the engineer add it to salt.%s", keyOf[a.Class]),
	})
}

// many returns the word for one, of steel, or that for several, of fasteners.
func (x *Part) many(one, several string) string {
	if x.Sort == Steel {
		return one
	}
	return several
}

func related(p plan.Pos) []plan.Pos {
	if p.Line == 0 {
		return nil
	}
	return []plan.Pos{p}
}

// Takes lists materials: "G185 or hot-dip zinc".
func Takes(list []plan.Coating) string {
	return strings.Join(plan.Words(list), " or ")
}

// own tells metals that meet within one piece.
func own(t *teller, p *Piece) {
	first := -1
	for i, x := range p.Parts {
		switch {
		case x.Coating == "":
		case first < 0:
			first = i
		case x.Coating.Metal() != p.Parts[first].Coating.Metal():
			t.of(p.Tag, plan.Diagnostic{
				Code: "two-metals", Pos: x.Pos, Mend: "take one metal for both",
				Summary: fmt.Sprintf("%s: its %s, %s, and its %s, %s, are two metals in one joint (%s)", p.Item.Mark, p.Parts[first].Name, p.Parts[first].Coating, x.Name, x.Coating, metalRule),
			})
		}
	}
}

// metalRule is the source of one metal to a joint; hot-dip with hot-dip and
// stainless with stainless is a southern pine trade association's
// (second-hand).
const metalRule = "unlike metals in contact are poor design, MIL-HDBK-1110, read"

// joints tells pieces of two metals at one joint, each pair of marks once.
func (r *Report) joints(t *teller, placed *placement.Placement) {
	for _, j := range r.house.Joints {
		list := placed.At(j)
		for i, a := range list {
			for _, b := range list[i+1:] {
				r.pair(t, j, r.of[a], r.of[b])
			}
		}
	}
}

func (r *Report) pair(t *teller, j *framing.Joint, a, b *Piece) {
	if len(a.Parts) == 0 || len(b.Parts) == 0 || a.Item == b.Item {
		return
	}
	if a.Item.Mark > b.Item.Mark {
		a, b = b, a
	}
	m, n := a.Parts[0].Coating, b.Parts[0].Coating
	if m == "" || n == "" || m.Metal() == n.Metal() {
		return
	}
	t.of(j.ID, plan.Diagnostic{
		Code: "two-metals", Pos: b.Item.Pos, Related: []plan.Pos{a.Item.Pos}, Mend: "take one metal for both",
		Summary: fmt.Sprintf("%s, %s, and %s, %s, are two metals at one joint (%s)", b.Item.Mark, n, a.Item.Mark, m, metalRule),
	})
}

// idle tells classes of the engineer's own that no piece is in, and treated
// wood that the house has not.
func (r *Report) idle(t *teller) {
	for _, o := range r.house.Plan.Salt.Overrides {
		if !r.site.used[o] {
			t.add(plan.Diagnostic{
				Code: "idle-salt-override", Pos: o.Pos, Where: "salt", Summary: "no piece is at a joint that the override names, or a later one names it too",
				Mend: "correct level, on and at, or take it out",
			})
		}
	}
	for _, w := range r.house.Plan.Treated {
		if !slices.ContainsFunc(r.house.Members, func(m *framing.Member) bool { return speaksOf(w, m) }) {
			t.add(plan.Diagnostic{
				Code: "idle-treated", Pos: w.Pos, Where: "treated", Summary: "the house has no such member: " + strings.Join(plan.Words(w.Members), ", "),
				Mend: "correct members or level, or take it out",
			})
		}
	}
}
