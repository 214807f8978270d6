package read

import (
	"slices"

	"galewright/plan"
)

// braceKeys fill one brace.
var braceKeys = []binding[plan.Brace]{
	nameKey("name", `"X1"`, "name in lists and on sheets", func(x *plan.Brace) *string { return &x.Name }).must(),
	choiceKey("kind", plan.BraceKinds, "two rods crossed in a bay, two boards crossed on both faces of its piles, or knees: a board from each pile up to the girder, on their outside faces", func(x *plan.Brace) *plan.BraceKind { return &x.Kind }).must(),
	textKey("girder", `"GS"`, "the girder whose piles it braces", func(x *plan.Brace) *string { return &x.Girder }).must(),
	textKey("across", `"GC"`, "the girder to whose piles it goes straight across, instead of along the line", func(x *plan.Brace) *string { return &x.Across }),
	custom("bays", "whole numbers", `[1, 3]`, "the bays that have it, from the girder's start: 1 is that between its first two piles; of bracing across, the piles that it begins at", func(v value, x *plan.Brace) { x.Bays = v.bays() }).
		otherwise("all"),
	lumberKey("member", `"2x8"`, "section of boards and knees", func(x *plan.Brace) *plan.Lumber { return &x.Member }).or("2x8", `"2x8"`),
	sizeKey("top", `"2'"`, "how far under the girder's underside its upper ends are held", func(x *plan.Brace) *float64 { return &x.Top }).within(2, 240).or("12in", `"12in"`),
	sizeKey("bottom", `"18in"`, "how far above grade its lower ends are held", func(x *plan.Brace) *float64 { return &x.Bottom }).within(2, 480).or("12in", `"12in"`),
	sizeKey("reach", `"2' 6in"`, "of a knee, from the pile's middle out to its bolt in the girder, and as much down from there to that in the pile", func(x *plan.Brace) *float64 { return &x.Reach }).within(12, 96).or("2' 6in", `"2' 6in"`),
}

// bays reads the numbers of bays, from 1 on, each once.
func (v value) bays() (out []int) {
	list, ok := v.raw.([]any)
	if !ok || len(list) == 0 {
		v.wrong("an array of whole numbers, such as [1, 3]")
		return nil
	}
	for _, x := range list {
		n, ok := x.(int64)
		if !ok || n < 1 || n > 999 {
			v.bad("bad-bay", "count from 1, the bay between the first two piles", "%v is no number of a bay", x)
			return nil
		}
		if len(out) > 0 && int(n) <= out[len(out)-1] {
			v.bad("bad-order", "write them from small to large", "the numbers do not rise")
			return nil
		}
		out = append(out, int(n))
	}
	return out
}

// readBraces reads one [[brace]].
func readBraces(n node, _ int, p *plan.Plan) {
	x := &plan.Brace{Pos: n.pos()}
	read(n, braceKeys, x)
	n.known("girder", x.Girder, girderNames)
	if names := girderNames(p); x.Across != "" && !slices.Contains(names, x.Across) {
		n.fault("across", "unknown-girder", nearest(x.Across, names), "there is no girder %q", x.Across)
	}
	n.idleOfBrace(x)
	n.checkBays(p, x.Girder, x.Bays, x.Across != "")
	if x.Name != "" && x.Kind != "" && x.Girder != "" {
		p.Braces = append(p.Braces, x)
	}
}

// idleOfBrace tells of keys that say nothing about a brace of its kind.
func (n node) idleOfBrace(x *plan.Brace) {
	idle := map[plan.BraceKind][]string{plan.KneeBrace: {"top", "bottom", "across"}, plan.BoardBrace: {"reach"}, plan.RodBrace: {"reach", "member"}}
	for _, k := range idle[x.Kind] {
		if n.has(k) {
			n.fault(k, "idle-key", "take it out", "%s says nothing about bracing by %s", k, x.Kind)
		}
	}
}

// checkBays tells of bays past a girder's last pile.
func (n node) checkBays(p *plan.Plan, girder string, bays []int, piles bool) {
	for _, g := range p.Girders {
		if g.Name != girder || len(bays) == 0 {
			continue
		}
		most, what := len(g.Piles)-1, "bays"
		if piles {
			most, what = len(g.Piles), "piles"
		}
		if last := bays[len(bays)-1]; last > most {
			n.fault("bays", "bad-bay", "count from the girder's start", "girder %s has %d %s, and %d is named", girder, most, what, last)
		}
	}
}

// breakawayKeys fill one breakaway wall.
var breakawayKeys = []binding[plan.Breakaway]{
	nameKey("name", `"K1"`, "name in lists and on sheets", func(x *plan.Breakaway) *string { return &x.Name }).must(),
	textKey("girder", `"GS"`, "the girder under which it stands, between its piles", func(x *plan.Breakaway) *string { return &x.Girder }).must(),
	custom("bays", "whole numbers", `[1, 3]`, "the bays that have it, from the girder's start", func(v value, x *plan.Breakaway) { x.Bays = v.bays() }).otherwise("all"),
	lengthKey("base", `"6in"`, "its foot above grade", func(x *plan.Breakaway) *float64 { return &x.Base }).within(0, 480).or("0'", `"0'"`),
	textKey("note", `"lattice on 2x4, S6 detail 2"`, "what it is made of, as its designer says", func(x *plan.Breakaway) *string { return &x.Note }),
}

// readBreakaways reads one [[breakaway]].
func readBreakaways(n node, _ int, p *plan.Plan) {
	x := &plan.Breakaway{Pos: n.pos()}
	read(n, breakawayKeys, x)
	n.known("girder", x.Girder, girderNames)
	n.checkBays(p, x.Girder, x.Bays, false)
	if x.Name != "" && x.Girder != "" {
		p.Breakaways = append(p.Breakaways, x)
	}
}
