package read

import (
	"slices"
	"strings"

	"galewright/plan"
)

// nailingKey reads [nailing]: the nails between members that the plan orders.
func nailingKey() binding[plan.Plan] {
	b := custom("nailing", "table", "", "nails between members, one line a connection; what no line orders is on no sheet and counts for nothing", func(v value, p *plan.Plan) {
		if n, ok := v.table(); ok {
			n.where = "nailing"
			read(n, nailingKeys(), p)
		}
	})
	b.Example = "[nailing]"
	return b
}

// nailingKeys are the connections, in the order of their table.
func nailingKeys() (out []binding[plan.Plan]) {
	for _, row := range plan.NailedConnections {
		out = append(out, custom(string(row.Connection), "table", row.Example, row.Doc+"; driven: "+strings.Join(plan.Words(row.Drives), " or "), func(v value, p *plan.Plan) { readNailLine(v, row, p) }).
			otherwise("not ordered: counts for nothing"))
	}
	return out
}

// nailLineKeys fill the line of one connection.
var nailLineKeys = []binding[plan.NailLine]{
	field("nail", "nail", `"16d common"`, "which nail", value.nail, func(l *plan.NailLine) *string { return &l.Nail }).must(),
	wholeKey("count", "2", 1, 40, "nails at each connection; at a splice, on each side of the break", func(l *plan.NailLine) *int { return &l.Count }).
		otherwise("the connection goes by spacing"),
	sizeKey("spacing", `"8in"`, "nails along the members, at most this far on center, the first within half of it from the end",
		func(l *plan.NailLine) *float64 { return &l.Spacing }).otherwise("the connection goes by count"),
	wholeKey("rows", "2", 1, 6, "rows of nails at the spacing", func(l *plan.NailLine) *int { return &l.Rows }).or(int64(1), "1"),
	choiceKey("drive", plan.Drives, "face: through one side into another; end: into the end grain; toe: slanting", func(l *plan.NailLine) *plan.Drive { return &l.Drive }).
		otherwise("the connection's usual one"),
}

// readNailLine reads the line of one connection.
func readNailLine(v value, row *plan.ConnectionRow, p *plan.Plan) {
	n, ok := v.table()
	if !ok {
		return
	}
	n.where = "nailing " + string(row.Connection)
	l := &plan.NailLine{At: row.Connection, Pos: n.pos()}
	read(n, nailLineKeys, l)
	if l.Drive == "" {
		l.Drive = row.Drives[0]
	}
	n.nailLine(row, l)
	l.Size.Diameter, l.Size.Length, _ = plan.NailSize(l.Nail)
	p.Nailing = append(p.Nailing, l)
}

// nailLine finds what does not fit the connection.
func (n node) nailLine(row *plan.ConnectionRow, l *plan.NailLine) {
	want, wrong := "count", "spacing"
	if row.Spaced {
		want, wrong = wrong, want
	}
	if !n.has(want) {
		n.fault("", "missing-key", "write it like "+row.Example, "%s is missing: %s goes by it", want, row.One)
	}
	if n.has(wrong) {
		n.fault(wrong, "idle-key", "take it out", "%s goes by %s, not by %s", row.One, want, wrong)
	}
	if n.has("rows") && !row.Spaced {
		n.fault("rows", "idle-key", "take it out", "%s goes by count, not by rows", row.One)
	}
	if !slices.Contains(row.Drives, l.Drive) {
		n.fault("drive", "bad-drive", "leave drive out", "nails at %s cannot be driven as a %s nail", row.One, l.Drive)
	}
	if d, long, err := plan.NailSize(l.Nail); err == nil && !nailed(l.Nail, d, long) {
		n.fault("nail", "bad-nail", `write a nail with its length: "16d common"`, "%q is no nail", l.Nail)
	}
}

// nailed tells whether a fastener of the name is a nail with a length.
func nailed(name string, diameter, long float64) bool {
	for _, other := range []string{"bolt", "screw", "lag", "rod", "No."} {
		if len(name) >= len(other) && name[:len(other)] == other {
			return false
		}
	}
	return diameter > 0 && long > 0
}
