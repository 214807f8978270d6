package plan

import (
	"fmt"
	"slices"
	"strings"
)

// Actions are what a place may do.
var Actions = []string{"replace", "add", "remove"}

// placeKeys fill one of the engineer's places.
var placeKeys = []binding[Place]{
	textKey("use", `"floor-strap"`, "mark of the item", func(p *Place) *string { return &p.Use }),
	textKey("wall", `"1S"`, "the wall it is on", func(p *Place) *string { return &p.Wall }),
	textKey("roof", `"main"`, "or the roof: its ridge; a hip or valley of it by the name in its tags, main/hipNE", func(p *Place) *string { return &p.Roof }),
	textKey("girder", `"G1"`, "or the girder", func(p *Place) *string { return &p.Girder }),
	textKey("porch", `"porch"`, "or the porch", func(p *Place) *string { return &p.Porch }),
	choiceKey("on", JointKinds, "kind of joint", func(p *Place) *string { return &p.On }).otherwise("the usual one of the item's kind"),
	custom("at", "lengths", `["0' 3in", "27' 9in"]`, "stations from the start of the wall, ridge or girder", func(v value, p *Place) {
		p.At, p.AtPos = v.lengths()
	}).must(),
	choiceKey("action", Actions, "replace what rules put there, add to it, or remove it", func(p *Place) *string { return &p.Action }).
		or("replace", `"replace"`),
	choiceKey("face", Faces, "the face it goes on", func(p *Place) *string { return &p.Face }).otherwise("the item's"),
	wholeKey("count", "2", 1, 12, "pieces at each station", func(p *Place) *int { return &p.Count }).or(int64(1), "1"),
	textKey("note", `"S4 detail 7"`, "the engineer's own reference", func(p *Place) *string { return &p.Note }),
}

// readPlaces reads one [[place]].
func readPlaces(n node, i int, p *Plan) {
	x := &Place{Index: i, Pos: n.pos()}
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
	if x.Use == "" && (x.Action != "remove" || x.On == "") {
		n.fault("", "missing-key", `add use = "..."; only action = "remove" with on = "..." can do without`, "use is missing")
	}
	n.uses(x.Use)
	n.known("wall", x.Wall, p.wallNames)
	n.known("roof", p.bodyOf(x.Roof), p.roofNames)
	n.known("girder", x.Girder, p.girderNames)
	n.known("porch", x.Porch, p.porchNames)
	p.Places = append(p.Places, x)
}

// bodyOf returns the roof that a name means: the roof's own, or what stands
// before the slash in that of one of its hips, valleys or lesser ridges, which
// framing alone knows.
func (p *Plan) bodyOf(name string) string {
	if i := strings.LastIndexByte(name, '/'); i > 0 && !slices.Contains(p.roofNames(), name) {
		return name[:i]
	}
	return name
}

// known checks a reference by name; the set of names of a kind is made once.
func (n node) known(kind, name string, names func() []string) {
	if name == "" {
		return
	}
	set := n.r.names[kind]
	if set == nil {
		set = map[string]bool{}
		for _, x := range names() {
			set[x] = true
		}
		n.r.names[kind] = set
	}
	if !set[name] {
		n.fault(kind, "unknown-"+kind, nearest(name, names()), "there is no %s %q", kind, strings.TrimSpace(name))
	}
}

func (p *Plan) wallNames() []string { return namesIn(p.Walls, func(w *Wall) string { return w.Name }) }

func (p *Plan) roofNames() []string { return namesIn(p.Roofs, func(r *Roof) string { return r.Name }) }

func (p *Plan) girderNames() []string {
	return namesIn(p.Girders, func(g *Girder) string { return g.Name })
}

func (p *Plan) porchNames() []string {
	return namesIn(p.Porches, func(x *Porch) string { return x.Name })
}

func (p *Plan) levelNames() []string {
	return namesIn(p.Levels, func(l *Level) string { return l.Name })
}

// namesIn lists the names of things in their order.
func namesIn[T any](things []*T, name func(*T) string) []string {
	out := make([]string, len(things))
	for i, x := range things {
		out[i] = name(x)
	}
	return out
}
