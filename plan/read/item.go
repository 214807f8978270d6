package read

import (
	"fmt"

	"galewright/plan"
)

var gaugeTables = []string{"plain", "galvanized"}

// itemDraft is an item with what only its reading needs.
type itemDraft struct {
	*plan.Item
	override   bool
	galvanized bool
}

// itemKeys fill one catalog item.
var itemKeys = []binding[itemDraft]{
	nameKey("mark", `"story-strap"`, "its mark: a plain word of yours", func(d *itemDraft) *string { return &d.Mark }).must(),
	choiceKey("kind", plan.ItemKinds, "what it is", func(d *itemDraft) *plan.ItemKind { return &d.Kind }).must(),
	flagKey("override", "changes the item of a catalog file that has the same mark; keys left out stay as they are there",
		func(d *itemDraft) *bool { return &d.override }),
	textKey("note", `"paint after nailing"`, "for the legend", func(d *itemDraft) *string { return &d.Note }),
	sizeKey("length", `"42in"`, "along the steel", func(d *itemDraft) *float64 { return &d.Length }).within(0.5, 1200),
	sizeKey("width", `"1 1/4in"`, "across the steel", func(d *itemDraft) *float64 { return &d.Width }).within(0.25, 24),
	custom("gauge_table", "word", `"galvanized"`,
		"which table turns a gauge into inches: plain is the steel under the zinc, which strength comes from; galvanized counts the zinc",
		func(v value, d *itemDraft) {
			s, _ := choice(v, gaugeTables)
			d.galvanized = s == "galvanized"
		}).words(gaugeTables).otherwise(`"plain"`),
	custom("thickness", "gauge or length", `"20 ga"`, "of the steel", func(v value, d *itemDraft) {
		s, ok := v.text()
		if !ok {
			return
		}
		in, gauge, err := plan.Thickness(s, d.galvanized)
		if err != nil {
			v.bad("bad-thickness", "", "%s", err)
			return
		}
		d.Thickness, d.Gauge = in, ""
		if gauge != "" {
			d.Gauge = s
		}
	}),
	textKey("grade", `"A653 SS Gr 33"`, "grade of the steel", func(d *itemDraft) *string { return &d.Grade }),
	coatingKey("coating", `"G185"`, plan.Coatings, "coating of its steel; of a bolt or rod, of nut and washer too", func(d *itemDraft) *plan.Coating { return &d.Coating }),
	coatingKey("rod_coating", `"hot-dip zinc"`, plan.FastenerCoatings, "coating of the rod of a hold-down or post base, with its nuts and washers", func(d *itemDraft) *plan.Coating { return &d.RodCoating }),
	custom("nails", "table or tables", `{ type = "10d x 1 1/2", each_end = 9 }`, "its fasteners; an array of tables when there are several kinds",
		readNails),
	lengthKey("lap", `"18in"`, "wanted on each member", func(d *itemDraft) *float64 { return &d.Lap }).within(0, 120),
	custom("legs", "lengths", `["2 1/2in", "3in"]`, "the two legs of a bent piece, out from the fold, first that on the member held", func(v value, d *itemDraft) {
		in, _ := v.lengths()
		if len(in) != 2 || in[0] <= 0 || in[1] <= 0 {
			v.bad("wrong-type", `write it like ["2 1/2in", "3in"]`, "must be two lengths of more than 0")
			return
		}
		d.Legs = [2]float64(in)
	}).otherwise("half the length each; of a hanger the width each"),
	sizeKey("rod", `"5/8in"`, "diameter of rod or bolt", func(d *itemDraft) *float64 { return &d.Rod }).within(0.1875, 3),
	sizeKey("washer", `"3in"`, "side of a square plate washer", func(d *itemDraft) *float64 { return &d.Washer }).within(0.5, 12),
	sizeKey("standoff", `"2in"`, "rod inside one body, from the wood it stands on to the nut", func(d *itemDraft) *float64 { return &d.Standoff }).within(0, 24),
	sizeKey("center", `"1 7/16in"`, "from the wood it is nailed to, to the middle of its rod; a hold-down must have it", func(d *itemDraft) *float64 { return &d.Center }).within(0.25, 12),
	wholeKey("bodies", "2", 1, 2, "bodies of a hold-down", func(d *itemDraft) *int { return &d.Bodies }),
	sizeKey("coil", `"25'"`, "length of a roll, when it is cut from a coil", func(d *itemDraft) *float64 { return &d.Coil }).within(12, 24000),
	choiceKey("phase", plan.Phases, "when it is installed", func(d *itemDraft) *plan.Phase { return &d.Phase }).otherwise("that of its kind"),
	choiceKey("face", plan.Faces, "the face it is nailed to, unless the rule names another", func(d *itemDraft) *plan.Face { return &d.Face }),
	numberKey("minutes", "4", 0, 600, "to install one", func(d *itemDraft) *float64 { return &d.Minutes }),
	wholeKey("pack", "25", 1, 10000, "pieces in a pack", func(d *itemDraft) *int { return &d.Pack }).or(int64(1), "1"),
	custom("loads", "table", `{ uplift = "415 lb", source = "maker's page, 2025-01" }`, "allowable loads that the maker gives", func(v value, d *itemDraft) {
		if n, ok := v.table(); ok {
			d.Load = plan.Load{Pos: n.pos()}
			read(n, loadKeys, &d.Load)
		}
	}).otherwise("computed"),
}

// forces are the units of load, in lb: 1 lbf = 4.4482216152605 N exactly.
var forces = []unit{{"lb", 1}, {"lbf", 1}, {"kN", 1000 / 4.4482216152605}, {"N", 1 / 4.4482216152605}}

func loadKey(name, doc string, at func(*plan.Load) *float64) binding[plan.Load] {
	return field(name, "load", `"415 lb"`, doc, func(v value) (float64, bool) { return v.quantity(forces) }, at)
}

// loadKeys fill the maker's allowable loads.
var loadKeys = []binding[plan.Load]{
	loadKey("uplift", "allowable uplift or tension, wind duration, in lb, kN or N", func(l *plan.Load) *float64 { return &l.Uplift }),
	loadKey("along", "allowable load along the wall", func(l *plan.Load) *float64 { return &l.Along }),
	loadKey("across", "allowable load across the wall", func(l *plan.Load) *float64 { return &l.Across }),
	loadKey("down", "allowable load downward of a hanger, at the duration of floors' live load", func(l *plan.Load) *float64 { return &l.Down }),
	textKey("source", `"maker's page, edition 2025-01"`, "edition and date of the maker's page", func(l *plan.Load) *string { return &l.Source }).must(),
}

// nailDraft gathers the parts of one table of nails.
type nailDraft struct {
	plan.Fasteners
	split []plan.Fasteners // part, count and parts only
}

// nailParts are the keys that count nails, and the parts they mean.
var nailParts = []struct {
	key, part string
	parts     int
}{
	{"each_end", "each end", 2},
	{"each_leg", "each leg", 2},
	{"to_stud", "to stud", 1},
	{"to_plate", "to plate", 1},
	{"to_rafter", "to rafter", 1},
	{"to_ridge", "to ridge", 1},
	{"to_outlooker", "to outlooker", 1},
	{"to_hip", "to hip or valley", 1},
	{"to_truss", "to truss", 1},
	{"to_header", "to header", 1},
	{"to_joist", "to joist", 1},
	{"to_beam", "to beam", 1},
	{"to_girder", "to girder", 1},
	{"to_pile", "to pile", 1},
	{"to_post", "to post", 1},
}

// nailKeys fill one table of fasteners.
var nailKeys = nailBindings()

func nailBindings() []binding[nailDraft] {
	keys := []binding[nailDraft]{
		field("type", "fastener", `"10d x 1 1/2"`, `nail, screw or bolt: "10d x 1 1/2", "8d common", "16d sinker", "0.131 x 2 1/2", "No. 14 x 2", "bolt 5/8 x 8"`, value.nail,
			func(d *nailDraft) *string { return &d.Nail }).must(),
		wholeKey("count", "6", 1, 500, "fasteners in each part; without part or parts, in the whole piece, half at each of its two ends", func(d *nailDraft) *int { return &d.Count }),
		wholeKey("parts", "2", 1, 20, "how many such parts one piece has", func(d *nailDraft) *int { return &d.Parts }).otherwise("1"),
		textKey("part", `"each flange"`, "name of the part that count means", func(d *nailDraft) *string { return &d.Part }).otherwise(`"all"`),
	}
	for _, p := range nailParts {
		times := ""
		if p.parts == 2 {
			times = ", two of which one piece has"
		}
		keys = append(keys, custom(p.key, "whole number", "9", "fasteners "+p.part+times, func(v value, d *nailDraft) {
			if n, ok := v.whole(1, 500); ok {
				d.split = append(d.split, plan.Fasteners{Part: p.part, Count: n, Parts: p.parts})
			}
		}))
	}
	return append(keys,
		coatingKey("coating", `"hot-dip zinc"`, plan.FastenerCoatings, "coating of the fasteners; left out it is a blank, and not that of the item", func(d *nailDraft) *plan.Coating { return &d.Coating }),
		flagKey("hand_only", "driven by hand, not by a gun", func(d *nailDraft) *bool { return &d.HandOnly }),
		wholeKey("rows", "2", 1, 10, "rows of holes", func(d *nailDraft) *int { return &d.Rows }),
		sizeKey("spacing", `"2in"`, "between fasteners along a row", func(d *nailDraft) *float64 { return &d.Spacing }),
		sizeKey("end_distance", `"1in"`, "from the end of the steel to the first hole", func(d *nailDraft) *float64 { return &d.EndDist }),
		flagKey("stagger", "holes of neighboring rows are staggered, those of an item's second flange against its first as well", func(d *nailDraft) *bool { return &d.Stagger }),
		lengthKey("offset", `"1in"`, "of the first hole of every other staggered row, beyond end_distance", func(d *nailDraft) *float64 { return &d.Offset }).
			otherwise("half the spacing"),
		wholeKey("holes", "12", 1, 500, "holes that the part has", func(d *nailDraft) *int { return &d.Holes }).otherwise("as many as fasteners"),
		textKey("fill", `"every second hole"`, "which of its holes take a nail, in plain words", func(d *nailDraft) *string { return &d.Fill }),
	)
}

// readNails reads one table of fasteners, or several.
func readNails(v value, d *itemDraft) {
	d.Fasteners = nil
	if _, ok := v.raw.(map[string]any); ok {
		if n, ok := v.table(); ok {
			n.nails(d)
		}
		return
	}
	for _, n := range v.nodes("nails") {
		n.nails(d)
	}
}

func (n node) nails(d *itemDraft) {
	f := &nailDraft{Fasteners: plan.Fasteners{Pos: n.pos()}}
	read(n, nailKeys, f)
	f.Diameter, f.Length, _ = plan.NailSize(f.Nail)
	if f.Count > 0 {
		part := f.Part
		if part == "" {
			part = "all"
		}
		f.split = append(f.split, plan.Fasteners{Part: part, Count: f.Count, Parts: max(f.Parts, 1)})
	}
	if len(f.split) == 0 { // as for sheathing, whose nails follow from its area
		f.split = []plan.Fasteners{{Part: "all", Parts: 1}}
	}
	for _, s := range f.split {
		x := f.Fasteners
		x.Part, x.Count, x.Parts = s.Part, s.Count, s.Parts
		d.Fasteners = append(d.Fasteners, x)
	}
}

// readItems reads one [[item]] of the plan or of a catalog file.
func readItems(n node, _ int, p *plan.Plan) {
	mark, _ := n.m["mark"].(string)
	override, _ := n.m["override"].(bool)
	for i, x := range p.Items {
		if x.Mark != mark {
			continue
		}
		switch {
		case n.r.own[mark] || n.r.load == nil || !override:
			n.itemTwice(x, override)
			return
		}
		d := &itemDraft{Item: &plan.Item{}}
		*d.Item = *x
		n.r.whole(d.Item, func() { amend(n, itemKeys, d) })
		d.Pos, d.Broken = n.pos(), x.Broken || n.r.broken[d.Item]
		p.Items[i], n.r.own[mark] = d.Item, true
		return
	}
	if override {
		n.fault("override", "nothing-to-override", "take override out, or correct the mark", "no catalog file has an item %q", mark)
	}
	d := &itemDraft{Item: &plan.Item{Pos: n.pos()}}
	n.r.whole(d.Item, func() { read(n, itemKeys, d) })
	d.Broken = n.r.broken[d.Item]
	if d.Mark == "" {
		n.r.spoiled[mark] = true
		return
	}
	n.r.own[mark] = true
	p.Items = append(p.Items, d.Item)
}

// itemTwice reports a mark that is defined already.
func (n node) itemTwice(first *plan.Item, override bool) {
	mend := "give it a mark of its own"
	if first.Pos.File != n.r.file && !override {
		mend = "if the plan is to change the catalog's item, add override = true"
	}
	n.r.add(plan.Diagnostic{
		Code: "same-mark", Summary: fmt.Sprintf("mark %q is defined already, at %s", first.Mark, first.Pos),
		Where: n.where, Mend: mend, Pos: n.r.pos(n.at("mark")), Related: []plan.Pos{first.Pos},
	})
}
