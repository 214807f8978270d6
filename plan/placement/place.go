package placement

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
)

// ask is one wish for hardware at one joint: a rule's or the engineer's.
type ask struct {
	rule    *plan.Rule
	place   *plan.Place
	joint   *framing.Joint
	item    *hardware.Item
	purpose string
	face    plan.Face
	count   int
	to      plan.Role // of the rule
	why     string    // why it lost; "" while it stands
	beaten  bool      // by another ask, not by a fault
	pieces  []*Piece
}

func (a *ask) by() string {
	if a.place != nil {
		return fmt.Sprintf("the engineer's place (%s)", line(a.place.Pos))
	}
	return fmt.Sprintf("rule %q (%s)", a.rule.Name, line(a.rule.Pos))
}

// source returns the rule or place that asks.
func (a *ask) source() any {
	if a.place != nil {
		return a.place
	}
	return a.rule
}

func (a *ask) lose(why string) { a.why, a.beaten = why, true }

func line(p plan.Pos) string { return fmt.Sprintf("%s:%d", p.File, p.Line) }

// placer carries one run of Place.
type placer struct {
	*world
	c        *hardware.Catalog
	p        *Placement
	tell     teller
	asked    []*ask // those that stood when pieces were built
	space    *space // of all pieces
	overlaps []clash
	found    map[plan.Code][]finding // what placing itself came upon, by code
	used     map[string]bool         // marks that a rule or place names
}

// Place puts hardware at the joints of h: every rule in the order written,
// then every place of the engineer, then the pieces, then all checks.
func Place(h *framing.House, c *hardware.Catalog) (*Placement, plan.Diagnostics) {
	x := &placer{
		world: newWorld(h), c: c, used: map[string]bool{}, found: map[plan.Code][]finding{},
		p: &Placement{
			House: h, Catalog: c, byTag: map[string]*Piece{},
			byJoint: map[*framing.Joint][]*Piece{}, asks: map[*framing.Joint][]*ask{},
		},
	}
	x.p.world = x.world
	for _, r := range h.Plan.Rules {
		x.rule(r)
	}
	for _, e := range h.Plan.Places {
		x.place(e)
	}
	x.build()
	x.avoid()
	x.skip()
	x.fill()
	x.seatRods()
	x.cutHoles()
	x.check()
	x.inOrder()
	return x.p, x.tell.list()
}

// inOrder puts the pieces of a house that lies the other way into the order of its joints.
func (x *placer) inOrder() {
	if x.house.Plan.Lay == (plan.Lay{}) {
		return
	}
	rank := make(map[*framing.Joint]int, len(x.house.Joints))
	for i, j := range x.house.Joints {
		rank[j] = i
	}
	slices.SortStableFunc(x.p.Pieces, func(a, b *Piece) int { return cmp.Compare(rank[a.Joint], rank[b.Joint]) })
	slices.SortStableFunc(x.p.Holes, func(a, b *Hole) int { return cmp.Compare(rank[a.Piece.Joint], rank[b.Piece.Joint]) })
}

// rule asks for a rule's item wherever it matches; it beats earlier rules of
// the same purpose.
func (x *placer) rule(r *plan.Rule) {
	where := fmt.Sprintf("rule %q", r.Name)
	it := x.item(r.Use, r.Pos, where)
	if r.At.Row() == nil {
		x.raise(plan.Diagnostic{
			Code: "unknown-word", Pos: r.Pos, Where: where,
			Summary: fmt.Sprintf("%q is not a kind of joint", r.At), Mend: meant(r.At, plan.JointKinds()),
		})
		return
	}
	if it == nil || !x.belongs(it, r.At, r.Pos, where) || !x.faced(it, cmp.Or(r.Face, it.Face), r.Pos, where) {
		return
	}
	hit := x.matches(r, x.byKind[r.At])
	for _, j := range x.choose(r, hit) {
		a := &ask{
			rule: r, joint: j, item: it, purpose: cmp.Or(r.Purpose, it.Kind.Purpose),
			face: cmp.Or(r.Face, it.Face), count: max(r.Count, 1), to: r.To,
		}
		for _, old := range x.p.asks[j] {
			if old.why == "" && old.purpose == a.purpose {
				old.lose(fmt.Sprintf("overridden by %s, a later one for the same purpose (%s)", a.by(), a.purpose))
			}
		}
		x.p.asks[j] = append(x.p.asks[j], a)
	}
	if len(hit) == 0 {
		x.nothing(r, where)
	}
}

// nothing tells that a rule matched nothing, and which condition comes
// nearest to being the reason.
func (x *placer) nothing(r *plan.Rule, where string) {
	all := x.byKind[r.At]
	mend := "take the rule out, or change at"
	if len(all) > 0 {
		j := all[0]
		best := -1
		for _, k := range all {
			held := 0
			for i := range conditions {
				if c := &conditions[i]; c.given(&r.Where) && c.holds(x.world, &r.Where, k) {
					held++
				}
			}
			if held > best {
				j, best = k, held
			}
		}
		mend = fmt.Sprintf("of %d such joints the nearest is %s: %s", len(all), j.ID, x.whyNot(r, j))
	}
	x.raise(plan.Diagnostic{
		Severity: plan.Warning, Code: "rule-matched-nothing", Pos: r.Pos, Where: where,
		Summary: fmt.Sprintf("no %s joint of this house meets the rule", r.At), Mend: mend,
	})
}

// item finds a mark, or tells that there is none.
func (x *placer) item(mark string, pos plan.Pos, where string) *hardware.Item {
	x.used[mark] = true
	it := x.c.Item(mark)
	if it == nil {
		x.raise(plan.Diagnostic{
			Code: "unknown-mark", Pos: pos, Where: where,
			Summary: fmt.Sprintf("mark %q is not in the catalog", mark), Mend: meant(mark, x.c.Marks()),
		})
	}
	return it
}

// faced tells whether an item of its kind can be nailed to a face, "" for its own.
func (x *placer) faced(it *hardware.Item, face plan.Face, pos plan.Pos, where string) bool {
	can := it.Kind.Faces
	if face == "" || face == plan.Both || len(can) == 0 || slices.Contains(can, face) {
		return true
	}
	x.raise(plan.Diagnostic{
		Code: "face-not-for-item", Pos: pos, Where: where,
		Summary: fmt.Sprintf("%s is a %s, which does not lie on the %s face", it.Mark, it.Kind.Name, face),
		Mend:    "write one of " + strings.TrimPrefix(strings.Join(plan.Words(can), ", "), ", ") + ", or leave face out",
	})
	return false
}

// belongs tells whether an item goes at joints of a kind.
func (x *placer) belongs(it *hardware.Item, k plan.JointKind, pos plan.Pos, where string) bool {
	if it.Kind.Belongs(k) {
		return true
	}
	mend := "sheathing is counted from the walls' shear segments, not placed"
	if len(it.Kind.On) > 0 {
		mend = "it goes at " + list(it.Kind.On)
	}
	x.raise(plan.Diagnostic{
		Code: "item-not-for-joint", Pos: pos, Where: where,
		Summary: fmt.Sprintf("%s is a %s, which does not go at %s joints", it.Mark, it.Kind.Name, k), Mend: mend,
	})
	return false
}

// build turns the asks that stand into pieces, in the order of the house.
func (x *placer) build() {
	for _, j := range x.joints {
		asks := slices.Clone(x.p.asks[j])
		slices.SortStableFunc(asks, func(a, b *ask) int { return cmp.Compare(a.purpose, b.purpose) })
		codes := map[string]int{}
		for _, a := range asks {
			if a.why != "" {
				continue
			}
			x.asked = append(x.asked, a)
			for _, p := range x.pieces(a) {
				tag := j.ID + "-" + p.Item.Kind.Code
				codes[tag]++
				if n := codes[tag]; n > 1 {
					tag = fmt.Sprintf("%s-%d", tag, n)
				}
				p.Tag = tag
				a.pieces = append(a.pieces, p)
				x.p.Pieces = append(x.p.Pieces, p)
				x.p.byTag[tag] = p
				x.p.byJoint[j] = append(x.p.byJoint[j], p)
			}
		}
	}
}

func (x *placer) cutHoles() {
	for _, p := range x.p.Pieces {
		x.p.Holes = append(x.p.Holes, holes(p, x.house.Plan.Walls)...)
	}
}

// pieces builds all pieces of one ask: count of them on each face. A rod on a
// wall gets its lie when all else has its own.
func (x *placer) pieces(a *ask) (out []*Piece) {
	faces := []plan.Face{a.face}
	if a.face == plan.Both && a.item.Kind.Shape != hardware.Over {
		faces = []plan.Face{plan.Outside, plan.Inside}
	}
	for _, f := range faces {
		for k := range a.count {
			p := &Piece{Joint: a.joint, Item: a.item, Rule: a.rule, Place: a.place, Purpose: a.purpose}
			lie, fault := x.shape(want{joint: a.joint, item: a.item, face: f, k: k, n: a.count, to: a.to})
			if fault != nil {
				a.why = fault.Summary
				x.consequence(p, fault)
				return nil
			}
			p.Lie = lie
			out = append(out, p)
		}
	}
	return out
}
