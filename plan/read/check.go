package read

import (
	"fmt"
	"slices"
	"strings"

	"galewright/plan"
)

// check finds the faults of a plan that need no framing. It runs on whatever
// could be read, so that one slip does not hide another.
func (r *reader) check(written map[string]any) {
	r.checkEmpty(written)
	r.checkNames()
	for _, w := range r.plan.Walls {
		r.checkWall(w)
	}
	r.checkTwice()
	for _, l := range r.plan.Levels {
		r.checkOutline(l)
	}
	r.checkRoofs()
	r.checkFoundation()
	r.checkFloorOpenings()
	r.checkRules()
	r.checkSize()
}

// fail records an error.
func (r *reader) fail(at plan.Pos, code plan.Code, where, mend, format string, args ...any) {
	r.add(plan.Diagnostic{Code: code, Summary: fmt.Sprintf(format, args...), Where: where, Mend: mend, Pos: at})
}

// warn records a warning.
func (r *reader) warn(at plan.Pos, code plan.Code, where, mend, format string, args ...any) {
	r.add(plan.Diagnostic{Severity: plan.Warning, Code: code, Summary: fmt.Sprintf(format, args...), Where: where, Mend: mend, Pos: at})
}

// checkEmpty refuses a house without stories or walls.
func (r *reader) checkEmpty(written map[string]any) {
	p := r.plan
	top := plan.Pos{File: p.File, Line: 1, Col: 1}
	switch {
	case len(p.Levels) == 0 && blank(written["level"]):
		r.fail(top, "empty-house", "", "add a [[level]]", "the house has no level")
	case len(p.Walls) == 0 && blank(written["wall"]):
		r.fail(top, "empty-house", "", "add [[wall]]s", "the house has no walls")
	case len(p.Walls) > 0:
		for _, l := range p.Levels {
			if !slices.ContainsFunc(p.Walls, func(w *plan.Wall) bool { return w.On(l) }) {
				r.warn(l.Pos, "empty-level", "level "+l.Name, "add its walls, or take the level out", "no wall stands on the level")
			}
		}
	}
}

// blank tells whether nothing is written in an array of tables; what is
// written and broken has its own fault.
func blank(x any) bool {
	switch x := x.(type) {
	case []map[string]any:
		return len(x) == 0
	case []any:
		return len(x) == 0
	}
	return false
}

// checkNames refuses one name for two things that tags could mean.
func (r *reader) checkNames() {
	type thing struct {
		kind, name string
		pos        plan.Pos
	}
	seen := map[string]thing{}
	add := func(kind, name string, pos plan.Pos) {
		k := strings.ToLower(name)
		if old, ok := seen[k]; ok && name != "" {
			what := fmt.Sprintf("the name %q is that of the %s in %s", name, old.kind, lineIn(old.pos, pos))
			if old.name != name {
				what = fmt.Sprintf("the name %q is %q of the %s in %s but for capitals", name, old.name, old.kind, lineIn(old.pos, pos))
			}
			r.add(plan.Diagnostic{
				Code: "same-name", Where: kind + " " + name, Pos: pos, Related: []plan.Pos{old.pos},
				Summary: what,
				Mend:    "tags are made from names: give it one of its own",
			})
			return
		}
		seen[k] = thing{kind, name, pos}
	}
	for _, w := range r.plan.Walls {
		add("wall", w.Name, w.Pos)
	}
	for _, x := range r.plan.Roofs {
		add("roof", x.Name, x.Pos)
	}
	for _, x := range r.plan.Dormers {
		add("dormer", x.Name, x.Pos)
	}
	for _, g := range r.plan.Girders {
		add("girder", g.Name, g.Pos)
	}
	for _, x := range r.plan.Porches {
		add("porch", x.Name, x.Pos)
	}
	for _, x := range r.plan.Braces {
		add("brace", x.Name, x.Pos)
	}
	for _, x := range r.plan.Breakaways {
		add("breakaway wall", x.Name, x.Pos)
	}
	for _, x := range r.plan.Beams {
		add("beam", x.Name, x.Pos)
	}
	for _, x := range r.plan.FloorOpenings {
		add("floor opening", x.Name, x.Pos)
	}
	for _, x := range r.plan.FloorJoists {
		add("joist", x.Name, x.Pos)
	}
	for _, x := range r.plan.FloorBlocks {
		add("blocking", x.Name, x.Pos)
	}
}

// checkRoofs looks at what each roof covers and at its ridge.
func (r *reader) checkRoofs() {
	for _, x := range r.plan.Roofs {
		size := x.Area[1].Sub(x.Area[0])
		if !r.broken[x] && (size.X < 12 || size.Y < 12) {
			r.fail(x.Pos, "empty-roof", "roof "+x.Name, "area is the southwest and the northeast corner",
				"area covers %s by %s", r.units().Length(size.X), r.units().Length(size.Y))
		}
		// A ridge board is at least as deep as the cut end of the rafter
		// (IRC R802.3; from memory).
		cut := x.Rafters.Depth * slope(max(x.Pitch, x.PitchOther))
		if x.RidgeMember.Depth > 0 && x.RidgeMember.Depth < cut-tolerance && !x.Trusses && x.Kind != plan.ShedRoof {
			r.warn(x.Pos, "shallow-ridge", "roof "+x.Name, "take a deeper ridge_member",
				"the ridge member is %s deep, the rafters' plumb cut %s", r.units().Length(x.RidgeMember.Depth), r.units().Length(cut))
		}
	}
}

// checkFoundation looks at piles and girders.
func (r *reader) checkFoundation() {
	p := r.plan
	if p.Foundation.Kind == plan.Piles && len(p.Girders) == 0 {
		r.warn(p.Foundation.Pos, "no-girder", "foundation", "add [[girder]]s with their piles", "the house stands on piles, and no girder is given")
	}
	if p.Foundation.Kind == plan.Slab && len(p.Girders) > 0 {
		r.warn(p.Foundation.Pos, "idle-girder", "foundation", `write kind = "piles", or take the girders out`, "a slab carries no girders, and the plan has %d", len(p.Girders))
	}
	for _, g := range p.Girders {
		if g.From == g.To {
			r.fail(g.Pos, "short-girder", "girder "+g.Name, "from and to must lie apart", "the girder has no length")
		}
		for i := 1; i < len(g.Piles); i++ {
			if g.Piles[i] <= g.Piles[i-1] {
				r.fail(g.Pos, "bad-order", "girder "+g.Name, "write the stations from its start to its end", "pile %s comes after %s", r.units().Length(g.Piles[i]), r.units().Length(g.Piles[i-1]))
			}
		}
	}
}

// checkRules looks up the names in conditions.
func (r *reader) checkRules() {
	p := r.plan
	lists := []struct {
		key   string
		names []string
		of    func(plan.Where) []string
	}{
		{"level", levelNames(p), func(w plan.Where) []string { return w.Level }},
		{"wall", wallNames(p), func(w plan.Where) []string { return w.Wall }},
		{"roof", roofNames(p), func(w plan.Where) []string { return w.Roof }},
	}
	for _, rule := range p.Rules {
		for _, w := range append([]plan.Where{rule.Where}, rule.Except...) {
			for _, list := range lists {
				for _, name := range list.of(w) {
					if !slices.Contains(list.names, name) {
						r.fail(w.Given[list.key], unknown[list.key], "rule "+rule.Name, nearest(name, list.names), "there is no %s %q", list.key, name)
					}
				}
			}
		}
	}
}
