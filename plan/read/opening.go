package read

import "galewright/plan"

// openingKeys fill one rough opening.
var openingKeys = []binding[plan.Opening]{
	nameKey("name", `"w1"`, "name on sheets and in messages", func(o *plan.Opening) *string { return &o.Name }).must(),
	typeKey[plan.Opening]("opening", `"W1"`),
	choiceKey("kind", plan.OpeningKinds, "window, door or plain opening", func(o *plan.Opening) *plan.OpeningKind { return &o.Kind }).
		otherwise("window when it has a sill, else door"),
	field("at", "length", `"5' 4in"`, "from the wall's point from to the left jack's inside face", value.length,
		func(o *plan.Opening) *float64 { return &o.At }).must(),
	sizeKey("width", `"3' 2 1/2in"`, "width of the rough opening", func(o *plan.Opening) *float64 { return &o.Width }).otherwise("its type's; there must be one"),
	sizeKey("height", `"5' 2 1/2in"`, "height of the rough opening", func(o *plan.Opening) *float64 { return &o.Height }).otherwise("its type's; there must be one"),
	lengthKey("sill", `"2'"`, "top of the rough sill above the subfloor", func(o *plan.Opening) *float64 { return &o.Sill }).or("0in", `"0in"`),
	lumberKey("header", `"3-2x10"`, "header", func(o *plan.Opening) *plan.Lumber { return &o.Header }).
		otherwise(`"3-2x10", "2-2x10" in a wall under 5.5 in deep`),
	autoKey("jacks", "jack studs on each side", func(o *plan.Opening) *int { return &o.Jacks }),
	autoKey("kings", "king studs on each side", func(o *plan.Opening) *int { return &o.Kings }),
}

// autoKey reads a count of studs, or "auto" for the code table.
func autoKey(name, doc string, at func(*plan.Opening) *int) binding[plan.Opening] {
	return custom(name, `whole number or "auto"`, "2", doc+`; "auto" takes them by span from the code table`, func(v value, o *plan.Opening) {
		if v.raw == "auto" {
			*at(o) = plan.AutoCount
			return
		}
		if n, ok := v.whole(1, 6); ok {
			*at(o) = n
		}
	}).otherwise("1 up to 6 ft, 2 above")
}

// readOpening reads one [[wall.opening]].
func readOpening(n node, w *plan.Wall) {
	o := &plan.Opening{Pos: n.pos()}
	n.r.whole(o, func() {
		n = n.typed("opening")
		read(n, openingKeys, o)
		needs(n, openingKeys, "width", "height")
	})
	if o.Kind == "" {
		o.Kind = plan.Door
		if o.Sill > 0 {
			o.Kind = plan.Window
		}
	}
	if o.Header.Ply == 0 && !n.has("header") {
		o.Header = plan.Lumber{Ply: 3, Breadth: 1.5, Depth: 9.25, Text: "3-2x10"}
		if w.Studs.Depth < 5.5 {
			o.Header.Ply, o.Header.Text = 2, "2-2x10"
		}
	}
	for _, x := range w.Openings {
		if x.Name == o.Name && o.Name != "" {
			n.twice("opening of the wall", o.Name, x.Pos)
			return
		}
	}
	w.Openings = append(w.Openings, o)
}
