package read

import "galewright/plan"

// dormerDraft is a dormer with what must wait for its other keys.
type dormerDraft struct {
	*plan.Dormer
	rake, overhang bool // given
}

// dormerKeys fill one dormer.
var dormerKeys = []binding[dormerDraft]{
	nameKey("name", `"west"`, "name in tags and on sheets", func(d *dormerDraft) *string { return &d.Name }).must(),
	choiceKey("kind", plan.DormerKinds, "its own roof: a gable, whose ridge runs into the roof below, or a shed, whose rafters go up from its front wall to a header in that roof", func(d *dormerDraft) *plan.RoofKind { return &d.Kind }).orWord(string(plan.GableRoof)),
	custom("roof", "name of a roof", `"main"`, "the roof that it stands on, of rafters", func(v value, d *dormerDraft) { d.Roof = v.roof() }).
		otherwise("the only roof"),
	choiceKey("side", plan.Sides, "the side that its front looks to: that of the slope it stands on", func(d *dormerDraft) *plan.Side { return &d.Side }).must(),
	lengthKey("center", `"14'"`, "its middle along the eave, from the outside face of the studs at that side's west or south end", func(d *dormerDraft) *float64 { return &d.Center }).within(0, 24000).must(),
	sizeKey("width", `"6'"`, "between the outside faces of its side walls' studs", func(d *dormerDraft) *float64 { return &d.Width }).within(24, 1200).usual(36, 480).must(),
	lengthKey("set_back", `"3'"`, "of the outside face of its front wall's studs from that of the wall under the eave; 0' = over that wall, on its plates", func(d *dormerDraft) *float64 { return &d.SetBack }).within(0, 600).
		or("0'", `"0'"`),
	sizeKey("plate_height", `"5' 6in"`, "top of its plates over the top of those of the wall under the eave", func(d *dormerDraft) *float64 { return &d.PlateHeight }).within(12, 240).usual(24, 144).must(),
	field("pitch", "pitch", `"8:12"`, "rise in run of its own roof", value.pitch, func(d *dormerDraft) *float64 { return &d.Pitch }).must(),
	custom("overhang", "length", `"8in"`, "over the walls that its rafters bear on, horizontal: a gable's side walls, a shed's front", func(v value, d *dormerDraft) { d.Overhang, d.overhang = v.length() }).within(0, 48).usual(0, 24).
		otherwise("8in"),
	custom("rake", "length", `"8in"`, "over the others, horizontal: a gable's front, a shed's side walls", func(v value, d *dormerDraft) { d.Rake, d.rake = v.length() }).within(0, 48).usual(0, 24).
		otherwise("overhang"),
	custom("rafters", "lumber @ spacing", `"2x6 @ 16in"`, "its rafters, with their spacing on center", func(v value, d *dormerDraft) {
		d.Rafters, d.Spacing, _ = v.spaced()
	}).or("2x6 @ 16in", `"2x6 @ 16in"`),
	lumberKey("studs", `"2x4"`, "studs of its walls, at the rafters' spacing", func(d *dormerDraft) *plan.Lumber { return &d.Studs }).or("2x4", `"2x4"`),
	lumberKey("header", `"2-2x10"`, "the headers across the ends of its opening in the roof", func(d *dormerDraft) *plan.Lumber { return &d.Header }).
		otherwise("two of the shallowest 2x that takes the main rafters' plumb cut"),
	custom("opening", "tables", `[{ name = "dw1", at = "1' 6in", width = "3'", height = "3'", sill = "2'" }]`, "windows in its front wall, as those of a wall: at from its left end seen from outside, sill over the top of the plates of the wall under the eave", func(v value, d *dormerDraft) {
		w := &plan.Wall{Studs: d.Studs}
		for _, n := range v.nodes("opening") {
			readOpening(n, w)
		}
		d.Openings = w.Openings
	}),
}

// roof finds a roof by its name.
func (v value) roof() *plan.Roof {
	s, ok := v.text()
	if !ok {
		return nil
	}
	for _, r := range v.r.plan.Roofs {
		if r.Name == s {
			return r
		}
	}
	v.bad("unknown-roof", nearest(s, namesIn(v.r.plan.Roofs, func(r *plan.Roof) string { return r.Name })), "there is no roof %q", s)
	return nil
}

// readDormers reads one [[dormer]].
func readDormers(n node, _ int, p *plan.Plan) {
	d := &dormerDraft{Dormer: &plan.Dormer{Pos: n.pos()}}
	if len(p.Roofs) == 1 {
		d.Roof = p.Roofs[0]
	}
	read(n, dormerKeys, d)
	if !d.overhang {
		d.Overhang = 8
	}
	if !d.rake {
		d.Rake = d.Overhang
	}
	if d.Spacing == 0 {
		d.Spacing = 16
	}
	if d.Roof == nil && !n.has("roof") {
		n.fault("", "missing-key", `add roof = "..."`, "roof is missing, and the plan has %d roofs", len(p.Roofs))
	}
	for _, o := range p.Dormers {
		if o.Name == d.Name && d.Name != "" {
			n.twice("dormer", d.Name, o.Pos)
			return
		}
	}
	if d.Name == "" || d.Roof == nil || d.Side == "" || d.Width <= 0 || d.PlateHeight <= 0 || d.Pitch <= 0 {
		return
	}
	p.Dormers = append(p.Dormers, d.Dormer)
}
