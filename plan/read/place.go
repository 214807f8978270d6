package read

import (
	"fmt"
	"slices"
	"strings"

	"galewright/plan"
)

// placeKeys fill one of the engineer's places.
var placeKeys = []binding[plan.Place]{
	textKey("use", `"floor-strap"`, "mark of the item", func(p *plan.Place) *string { return &p.Use }),
	textKey("wall", `"1S"`, "the wall it is on", func(p *plan.Place) *string { return &p.Wall }),
	textKey("roof", `"main"`, "or the roof: its ridge; a hip or valley of it by the name in its tags, main/hipNE", func(p *plan.Place) *string { return &p.Roof }),
	textKey("girder", `"G1"`, "or the girder", func(p *plan.Place) *string { return &p.Girder }),
	textKey("porch", `"porch"`, "or the porch", func(p *plan.Place) *string { return &p.Porch }),
	jointKey("on", func(p *plan.Place) *plan.JointKind { return &p.On }).otherwise("the usual one of the item's kind"),
	custom("at", "lengths", `["0' 3in", "27' 9in"]`, "stations from the start of the wall, ridge or girder, as sheets print them: on a wall that runs through at an inside corner from its first stud", func(v value, p *plan.Place) {
		p.At, p.AtPos = v.lengths()
	}).must(),
	choiceKey("action", plan.Actions, "replace what rules put there, add to it, or remove it", func(p *plan.Place) *plan.Action { return &p.Action }).
		orWord(string(plan.Replace)),
	choiceKey("face", plan.Faces, "the face it is nailed to", func(p *plan.Place) *plan.Face { return &p.Face }).otherwise("the item's"),
	wholeKey("count", "2", 1, 12, "pieces at each station", func(p *plan.Place) *int { return &p.Count }).or(int64(1), "1"),
	textKey("note", `"S4 detail 7"`, "the engineer's own reference", func(p *plan.Place) *string { return &p.Note }),
}

// readPlaces reads one [[place]].
func readPlaces(n node, i int, p *plan.Plan) {
	x := &plan.Place{Pos: n.pos()}
	if use, ok := n.m["use"].(string); ok {
		n.where = fmt.Sprintf("place no. %d, %s", i+1, use)
	}
	read(n, placeKeys, x)
	hosts := 0
	for _, h := range []string{"wall", "roof", "girder", "porch"} {
		if n.has(h) {
			hosts++
		}
	}
	if hosts != 1 {
		n.fault("", "missing-key", `add one of wall = "...", roof = "...", girder = "...", porch = "..."`, "a place is on one wall, roof, girder or porch; this names %d", hosts)
	}
	if x.Use == "" && (x.Action != plan.Remove || x.On == "") {
		n.fault("", "missing-key", `add use = "..."; only action = "remove" with on = "..." can do without`, "use is missing")
	}
	n.uses(x.Use)
	n.known("wall", x.Wall, wallNames)
	n.known("roof", bodyOf(p, x.Roof), roofNames)
	n.known("girder", x.Girder, girderNames)
	n.known("porch", x.Porch, porchNames)
	p.Places = append(p.Places, x)
}

// bodyOf returns the roof that a name means: the roof's own, or what stands
// before the slash in that of one of its hips, valleys or lesser ridges, which
// framing alone knows.
func bodyOf(p *plan.Plan, name string) string {
	if i := strings.LastIndexByte(name, '/'); i > 0 && !slices.Contains(roofNames(p), name) {
		return name[:i]
	}
	return name
}

// unknown are the codes of references that lead nowhere, by key.
var unknown = map[string]plan.Code{
	"level": "unknown-level", "wall": "unknown-wall", "roof": "unknown-roof", "girder": "unknown-girder", "porch": "unknown-porch",
}

// known checks a reference by name; the set of names of a kind is made once.
func (n node) known(kind, name string, names func(*plan.Plan) []string) {
	if name == "" {
		return
	}
	set := n.r.names[kind]
	if set == nil {
		set = map[string]bool{}
		for _, x := range names(n.r.plan) {
			set[x] = true
		}
		n.r.names[kind] = set
	}
	if !set[name] {
		n.fault(kind, unknown[kind], nearest(name, names(n.r.plan)), "there is no %s %q", kind, strings.TrimSpace(name))
	}
}

func wallNames(p *plan.Plan) []string {
	return namesIn(p.Walls, func(w *plan.Wall) string { return w.Name })
}

func roofNames(p *plan.Plan) []string {
	return slices.Concat(namesIn(p.Roofs, func(r *plan.Roof) string { return r.Name }), namesIn(p.Dormers, func(d *plan.Dormer) string { return d.Name }))
}

// hostNames are the names of all that joints stand on.
func hostNames(p *plan.Plan) []string {
	return slices.Concat(wallNames(p), roofNames(p), girderNames(p), porchNames(p))
}

func girderNames(p *plan.Plan) []string {
	return namesIn(p.Girders, func(g *plan.Girder) string { return g.Name })
}

func porchNames(p *plan.Plan) []string {
	return namesIn(p.Porches, func(x *plan.Porch) string { return x.Name })
}

func levelNames(p *plan.Plan) []string {
	return namesIn(p.Levels, func(l *plan.Level) string { return l.Name })
}

// namesIn lists the names of things in their order.
func namesIn[T any](things []*T, name func(*T) string) []string {
	out := make([]string, len(things))
	for i, x := range things {
		out[i] = name(x)
	}
	return out
}
