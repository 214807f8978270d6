package read

import (
	"fmt"

	"galewright/plan"
)

// panels are the sheathing thicknesses, in, of the wood structural panel
// rows of SDPWS 2015, Table 4.3A.
var panels = []string{"5/16", "3/8", "7/16", "15/32", "19/32"}

// shearDraft is a segment with its sides as words.
type shearDraft struct {
	*plan.Shear
	toGiven bool
}

// shearKeys fill one sheathed segment.
var shearKeys = []binding[shearDraft]{
	nameKey("name", `"SW1"`, "name on sheets", func(d *shearDraft) *string { return &d.Name }).otherwise("the wall's name, then A, B, ..."),
	typeKey[shearDraft]("shear", `"P4"`),
	lengthKey("from", `"0'"`, "where it begins, from the wall's point from", func(d *shearDraft) *float64 { return &d.From }).within(0, 24000).or("0'", `"0'"`),
	custom("to", "length", `"8'"`, "where it ends, from the wall's point from", func(v value, d *shearDraft) { d.To, d.toGiven = v.length() }).within(0, 24000).
		otherwise("the wall's end"),
	choiceKey("panel", panels, "panel thickness, in", func(d *shearDraft) *string { return &d.Panel }).or("15/32", `"15/32"`),
	field("nail", "nail", `"8d common"`, "nail of the sheathing", value.nail, func(d *shearDraft) *string { return &d.Nail }).
		or("8d common", `"8d common"`),
	sizeKey("edge", `"4in"`, "nails along panel edges, on center", func(d *shearDraft) *float64 { return &d.Edge }).within(1.5, 12).usual(2, 6).or("6in", `"6in"`),
	sizeKey("field", `"12in"`, "nails along the studs between, on center", func(d *shearDraft) *float64 { return &d.Field }).within(2, 24).usual(4, 12).or("12in", `"12in"`),
	flagKey("both_faces", "sheathed on both faces", func(d *shearDraft) *bool { return &d.BothFaces }),
	wholeKey("posts", "2", 1, 4, "studs tight beside each other at each end, for the push there: past the segment where the wall goes on, within it at the wall's own end; where the wall runs through at a corner only the corner's studs stand", func(d *shearDraft) *int { return &d.Posts }).or(int64(1), "1"),
	flagKey("perforated", "a perforated shear wall: openings inside it count as such", func(d *shearDraft) *bool { return &d.Perforated }),
}

// nail reads a fastener's name, checked for its size.
func (v value) nail() (string, bool) {
	s, ok := v.text()
	if !ok {
		return "", false
	}
	if _, _, err := plan.NailSize(s); err != nil {
		v.bad("bad-nail", "", "%s", err)
		return "", false
	}
	return s, true
}

// readShear reads one [[wall.shear]]. Where the wall ends is known only when
// all its keys are read.
func readShear(n node, i int, w *wallDraft) {
	d := &shearDraft{Shear: &plan.Shear{Pos: n.pos()}}
	n.r.whole(d.Shear, func() {
		n = n.typed("shear")
		read(n, shearKeys, d)
	})
	if d.Name == "" {
		d.Name = shearName(w.Name, i)
	}
	if !d.toGiven && !n.has("to") {
		w.toEnd = append(w.toEnd, d.Shear)
	}
	for _, x := range w.Shear {
		if x.Name == d.Name {
			n.twice("shear wall of the wall", d.Name, x.Pos)
			return
		}
	}
	w.Shear = append(w.Shear, d.Shear)
}

// shearName is the name of the nth segment of a wall, from 0, that the plan gives none.
func shearName(wall string, n int) string { return fmt.Sprintf("%s%c", wall, 'A'+n%26) }

// postKeys fill one post of a wall.
var postKeys = []binding[plan.WallPost]{
	lengthKey("at", `"7' 4in"`, "station of its middle, from the wall's point from", func(p *plan.WallPost) *float64 { return &p.At }).within(0, 24000).must(),
	wholeKey("studs", "3", 1, 6, "studs tight beside each other, of the wall's own lumber; where a wall stands below, squash blocks carry them through the floor", func(p *plan.WallPost) *int { return &p.Studs }).or(int64(2), "2"),
}

// readPost reads one [[wall.post]].
func readPost(n node, w *plan.Wall) {
	p := &plan.WallPost{Pos: n.pos()}
	read(n, postKeys, p)
	if n.has("at") {
		w.Posts = append(w.Posts, p)
	}
}
