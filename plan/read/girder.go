package read

import (
	"strings"

	"galewright/plan"
	"galewright/plan/geom"
)

// girderKeys fill one girder.
var girderKeys = []binding[plan.Girder]{
	nameKey("name", `"G1"`, "name in tags and on sheets", func(g *plan.Girder) *string { return &g.Name }).must(),
	field("from", "point", `["0'", "3in"]`, "where its center line begins, [east, north]", value.point, func(g *plan.Girder) *geom.Vec2 { return &g.From }).within(-12000, 12000).must(),
	field("to", "point", `["44'", "3in"]`, "where its center line ends", value.point, func(g *plan.Girder) *geom.Vec2 { return &g.To }).within(-12000, 12000).must(),
	lumberKey("member", `"3-2x12"`, "section", func(g *plan.Girder) *plan.Lumber { return &g.Member }).must(),
	custom("piles", "lengths or @ spacing", `"@ 8'"`, "stations of the pile centers, or their greatest spacing from end to end", func(v value, g *plan.Girder) {
		g.Piles = v.stations(g.To.Sub(g.From).Len())
	}).must(),
	choiceKey("seat", plan.GirderSeats, `how it sits on its piles: on their heads, in a notch of each, against one of their sides, or with half of its plies against each of two faces of the pile, which stands between them; a pile notched or beside stands to the left of the girder, looking from its beginning to its end, and goes up to its top`,
		func(g *plan.Girder) *plan.GirderSeat { return &g.Seat }).orWord(string(plan.SeatTop)),
	sizeKey("notch", `"3in"`, "how deep the seat is cut into the pile, across the girder: less than the girder is wide, and it stands out past the pile's face; astride the seat cut into each of the two faces", func(g *plan.Girder) *float64 { return &g.Notch }).within(0.25, 24).otherwise("in a notch the girder's width; none astride"),
	sizeKey("notch_height", `"8in"`, "how far up from the seat the wood goes that the girder is bolted to, of a notch or between the halves", func(g *plan.Girder) *float64 { return &g.NotchHeight }).within(2, 48).otherwise("the girder's depth"),
	sizeKey("packing", `"1/2in"`, "thickness of packing boards on its right face, looking from its beginning to its end, where that lies behind the faces of the studs over it: straps then lie flat, and their nails count only in the girder behind", func(g *plan.Girder) *float64 { return &g.Packing }).within(0.125, 6).otherwise("none"),
}

// stations reads an array of stations along something of that length, or
// "@ 8'": evenly from end to end, no further apart than that.
func (v value) stations(total float64) []float64 {
	if list, is := v.raw.([]any); is && len(list) == 0 {
		v.bad("no-stations", `write its stations, or "@ 8'"`, "has none: nothing would hold it up")
		return nil
	}
	s, _ := v.raw.(string)
	gap, ok := strings.CutPrefix(strings.TrimSpace(s), "@")
	if !ok {
		in, at := v.lengths()
		for i, x := range in {
			if x > total+tolerance {
				v.r.add(plan.Diagnostic{
					Code: "off-member", Summary: v.key + ": " + v.r.units().Length(x) + " is past the end at " + v.r.units().Length(total),
					Where: v.where, Mend: "stations run from 0 at its beginning", Pos: at[i],
				})
			}
		}
		return in
	}
	v.raw = strings.TrimSpace(gap)
	step, ok := v.length()
	if !ok {
		return nil
	}
	if step < 12 {
		v.bad("out-of-range", "", "%s is closer than %s", v.r.units().Length(step), v.r.units().Length(12))
		return nil
	}
	n := 1
	for float64(n)*step < total-tolerance {
		n++
	}
	out := make([]float64, n+1)
	for i := range out {
		out[i] = total * float64(i) / float64(n)
	}
	return out
}

// readGirders reads one [[girder]].
func readGirders(n node, _ int, p *plan.Plan) {
	g := &plan.Girder{Pos: n.pos()}
	read(n, girderKeys, g)
	checkSeat(n, g)
	if g.Name != "" {
		p.Girders = append(p.Girders, g)
	}
}

// checkSeat looks at a girder's notch.
func checkSeat(n node, g *plan.Girder) {
	u := n.r.units()
	cut := g.Seat == plan.SeatNotch || g.Seat == plan.SeatAstride
	switch {
	case !cut && (g.Notch > 0 || g.NotchHeight > 0):
		n.fault("notch", "idle-key", `write seat = "notch" or "astride", or take the notch out`, "a girder whose seat is %q has no notch", g.Seat)
	case g.Seat == plan.SeatAstride && max(1, g.Member.Ply)%2 != 0:
		n.fault("member", "astride-uneven", "take an even number of plies, as 2-2x12 or 4-2x12", "member %s has no equal halves for both faces", g.Member.Text)
	case g.Notch > g.Line()+tolerance:
		n.fault("notch", "girder-notch-deep", "write no more than that, or leave it out", "notch %s is deeper than the %s of girder that sits in it", u.Length(g.Notch), u.Length(g.Line()))
	case g.NotchHeight > g.Member.Depth+tolerance:
		n.fault("notch_height", "girder-notch-high", "write no more than that, or leave it out", "notch_height %s goes past the girder's top at %s: the floor lies there", u.Length(g.NotchHeight), u.Length(g.Member.Depth))
	}
}
