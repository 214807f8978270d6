package read

import (
	"cmp"
	"fmt"
	"strings"

	"galewright/plan"
	"galewright/plan/length"
)

// ruleKeys fill one rule.
var ruleKeys = []binding[plan.Rule]{
	textKey("name", `"story straps"`, "name in messages and in explain", func(r *plan.Rule) *string { return &r.Name }).otherwise("its mark and joint"),
	jointKey("at", func(r *plan.Rule) *plan.JointKind { return &r.At }).must(),
	textKey("use", `"story-strap"`, "mark of the item", func(r *plan.Rule) *string { return &r.Use }).must(),
	textKey("purpose", `"uplift"`, "of rules with one purpose at a joint, the later is used", func(r *plan.Rule) *string { return &r.Purpose }).
		otherwise("that of the item's kind"),
	choiceKey("face", plan.Faces, "the face it is nailed to", func(r *plan.Rule) *plan.Face { return &r.Face }).otherwise("the item's"),
	custom("both_faces", "true or false", "true", `the same as face = "both"`, func(v value, r *plan.Rule) {
		if b, _ := v.flag(); b {
			r.Face = plan.Both
		}
	}).otherwise("false"),
	choiceKey("to", []plan.Role{plan.GirderBeam}, "of a strap at the base of studs: it goes on past sole plate and rim and is fastened to the girder",
		func(r *plan.Rule) *plan.Role { return &r.To }).otherwise("the rim, joist or girder next below the floor"),
	wholeKey("count", "2", 1, 12, "pieces at one joint", func(r *plan.Rule) *int { return &r.Count }).or(int64(1), "1"),
	wholeKey("every", "2", 1, 100, "only each nth joint along a wall or ridge", func(r *plan.Rule) *int { return &r.Every }).or(int64(1), "1"),
	sizeKey("at_most", `"32in"`, "leave joints out as long as pieces stand no further apart", func(r *plan.Rule) *float64 { return &r.AtMost }).within(2, 480).
		otherwise("each joint"),
	custom("where", "table", `{ exterior = true }`, "conditions that must all hold", func(v value, r *plan.Rule) {
		if n, ok := v.table(); ok {
			r.Where = n.conditions()
		}
	}),
	custom("except", "table or tables", `{ wall = "1N" }`, "joints that are left out", func(v value, r *plan.Rule) {
		if _, one := v.raw.(map[string]any); one {
			if n, ok := v.table(); ok {
				r.Except = append(r.Except, n.conditions())
			}
			return
		}
		for _, n := range v.nodes("except") {
			r.Except = append(r.Except, n.conditions())
		}
	}),
}

// boolKey reads a condition that may ask for either.
func boolKey(name, doc string, at func(*plan.Where) **bool) binding[plan.Where] {
	return custom(name, "true or false", "true", doc, func(v value, w *plan.Where) {
		if b, ok := v.flag(); ok {
			*at(w) = &b
		}
	})
}

// rangeKey reads a range of lengths.
func rangeKey(name, example, doc string, at func(*plan.Where) *[2]float64) binding[plan.Where] {
	get := func(v value) ([2]float64, bool) { return v.span(name == "spacing") }
	return field(name, "length or range", example, doc, get, at)
}

// whereKeys fill one set of conditions.
var whereKeys = []binding[plan.Where]{
	textsKey("level", `"second"`, "levels; of a wall whose studs pass a floor, the story in which the joint is", func(w *plan.Where) *[]string { return &w.Level }),
	textsKey("wall", `["1S", "1N"]`, "walls", func(w *plan.Where) *[]string { return &w.Wall }),
	textsKey("roof", `"main"`, "roofs", func(w *plan.Where) *[]string { return &w.Roof }),
	textsKey("girder", `"GS"`, "girders, of joints on them", func(w *plan.Where) *[]string { return &w.Girder }),
	boolKey("exterior", "exterior walls only, or interior only", func(w *plan.Where) **bool { return &w.Exterior }),
	boolKey("bearing", "bearing walls only, or others only", func(w *plan.Where) **bool { return &w.Bearing }),
	boolKey("balloon", "walls whose studs pass a floor, or the others", func(w *plan.Where) **bool { return &w.Balloon }),
	boolKey("shear", "within a shear wall segment, or outside of them", func(w *plan.Where) **bool { return &w.Shear }),
	boolKey("covered", "another wall stands against the outside face at the stud's foot, as at an inside corner, or none does", func(w *plan.Where) **bool { return &w.Covered }),
	boolKey("end_zone", "within the wind's end zone of a corner of the building", func(w *plan.Where) **bool { return &w.EndZone }),
	boolKey("lines_up", "the stud stands over the stud below, or does not", func(w *plan.Where) **bool { return &w.LinesUp }),
	choicesKey("role", `["king", "post"]`, plan.Roles, "what the held member is",
		func(w *plan.Where) *[]plan.Role { return &w.Role }),
	choicesKey("against", `"hip rafter"`, plan.Roles, "what the held member meets there: a rafter may meet a ridge, a hip rafter or a valley rafter",
		func(w *plan.Where) *[]plan.Role { return &w.Against }),
	custom("stud", "lumbers", `"2x6"`, "sections of the wall's studs", func(v value, w *plan.Where) {
		for _, x := range v.list() {
			if l, ok := x.section(); ok {
				w.Stud = append(w.Stud, l.Text)
			}
		}
	}),
	rangeKey("spacing", `"16in"`, `stud or rafter spacing: one, "under 16in", "over 16in" or ["12in", "16in"]`, func(w *plan.Where) *[2]float64 { return &w.Spacing }),
	rangeKey("corner", `"under 4'"`, "distance of the joint from the nearer end of its wall", func(w *plan.Where) *[2]float64 { return &w.Corner }),
	rangeKey("opening", `"under 12in"`, "distance from the nearest opening's edge", func(w *plan.Where) *[2]float64 { return &w.Opening }),
	rangeKey("opening_width", `"over 6'"`, "width of the rough opening the joint belongs to", func(w *plan.Where) *[2]float64 { return &w.OpeningWidth }),
	rangeKey("height", `"over 4'"`, "height above the subfloor", func(w *plan.Where) *[2]float64 { return &w.Height }),
	lengthKey("from", `"4'"`, "station along the wall, as sheets print it, where it begins to hold", func(w *plan.Where) *float64 { return &w.From }).otherwise("before its beginning"),
	lengthKey("to", `"12'"`, "station where it ends to hold, as sheets print it", func(w *plan.Where) *float64 { return &w.To }).otherwise("past its end"),
}

// conditions reads one set of conditions.
func (n node) conditions() plan.Where {
	w := plan.Where{Given: map[string]plan.Pos{}}
	for key := range n.m {
		w.Given[key] = n.r.pos(n.at(key))
	}
	read(n, whereKeys, &w)
	for _, k := range namesOf(whereKeys) {
		if list, ok := n.m[k].([]any); ok && len(list) == 0 {
			n.fault(k, "empty-list", "name what it is to hold for, or leave the key out", "%s = [] holds for nothing", k)
		}
	}
	if w.To > 0 && w.To <= w.From {
		n.fault("to", "empty-range", "to must be more than from", "from %s to %s is nothing", n.r.units().Length(w.From), n.r.units().Length(w.To))
	}
	return w
}

// span reads a range: "under 4'", "over 4'", ["2'", "4'"], or one length,
// which means up to it, or exactly it.
func (v value) span(exact bool) (r [2]float64, ok bool) {
	if list, is := v.raw.([]any); is {
		in, _ := v.lengths()
		if len(list) != 2 || len(in) != 2 || in[1] < in[0] {
			v.bad("bad-range", `write it like ["2'", "4'"]`, "a range is two lengths, the smaller first")
			return r, false
		}
		return [2]float64{in[0], in[1]}, true
	}
	s, _ := v.raw.(string)
	word, rest, _ := strings.Cut(strings.TrimSpace(s), " ")
	if word == "under" || word == "over" {
		v.raw = rest
	}
	in, ok := v.length()
	switch {
	case word == "over":
		r = [2]float64{in, length.Limit}
	case word == "under" || !exact:
		r = [2]float64{0, in}
	default:
		r = [2]float64{in, in}
	}
	if ok && in == 0 {
		v.bad("out-of-range", "", "must be more than 0")
	}
	return r, ok && in > 0
}

// readRules reads one [[rule]].
func readRules(n node, i int, p *plan.Plan) {
	r := &plan.Rule{Pos: n.pos()}
	if !n.has("name") {
		use, _ := n.m["use"].(string)
		at, _ := n.m["at"].(string)
		r.Name = fmt.Sprintf("%s at %s", cmp.Or(use, "no item"), cmp.Or(at, "no joint"))
		n.where = fmt.Sprintf("rule no. %d, %s", i+1, r.Name)
	}
	read(n, ruleKeys, r)
	n.uses(r.Use)
	p.Rules = append(p.Rules, r)
}

// uses looks up the mark that a rule or place uses.
func (n node) uses(mark string) {
	if mark == "" || n.r.lost || n.r.spoiled[mark] {
		return
	}
	marks := make([]string, len(n.r.plan.Items))
	for i, x := range n.r.plan.Items {
		if marks[i] = x.Mark; x.Mark == mark {
			return
		}
	}
	n.fault("use", "unknown-mark", cmp.Or(nearest(mark, marks), "add an [[item]] with that mark"), "there is no item %q in the catalog", mark)
}
