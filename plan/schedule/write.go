package schedule

import (
	"cmp"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"text/tabwriter"

	"galewright/plan"
	"galewright/plan/hardware"
	"galewright/plan/source"
	"galewright/plan/units"
)

// Formats lists what Count and Order can write.
var Formats = []string{"table", "csv", "json"}

// Size says how large an item is: 3'-0" x 1 1/4" x 20 ga.
func Size(u units.System, it *hardware.Item) string {
	var parts []string
	say := u.Length
	if it.Kind != nil && it.Kind.Shape == hardware.Rod {
		say = u.Bought
	}
	for _, in := range []float64{it.Length, it.Width} {
		if in > 0 {
			parts = append(parts, say(in))
		}
	}
	switch {
	case it.Gauge != "":
		parts = append(parts, u.Beside(strings.TrimSuffix(strings.TrimSuffix(it.Gauge, "ga"), " ")+" ga", it.Thickness))
	case it.Thickness > 0:
		parts = append(parts, u.Thickness(it.Thickness))
	}
	if it.Rod > 0 {
		parts = append(parts, u.Bought(it.Rod)+" rod")
	}
	return strings.Join(parts, " x ")
}

// number prints a plain number without trailing zeros, three decimals at most.
func number(v float64) string {
	s := strconv.FormatFloat(v, 'f', 3, 64)
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}

// column is one column of a table: its stable name and what a row has in it.
type column[R any] struct {
	name string
	cell func(units.System, R) any // string, int or float64
}

// countRow is one line of a count: an item in a group, or a nail of it.
type countRow struct {
	group string
	line  *Line
	nail  NailCount
	first bool // the row that carries the pieces
}

// countColumns are the columns of a count, in the order that CSV and JSON keep.
var countColumns = []column[countRow]{
	{"number", func(_ units.System, r countRow) any { return r.line.Number }},
	{"mark", func(_ units.System, r countRow) any { return r.line.Item.Mark }},
	{"kind", func(_ units.System, r countRow) any { return r.line.Item.Kind.Name }},
	{"size", func(u units.System, r countRow) any { return Size(u, r.line.Item) }},
	{"phase", func(_ units.System, r countRow) any { return r.line.Item.Phase.Name }},
	{"pieces", func(_ units.System, r countRow) any {
		if r.first {
			return len(r.line.Pieces)
		}
		return 0
	}},
	{"fastener", func(u units.System, r countRow) any { return r.nail.Label(u) }},
	{"driven", func(_ units.System, r countRow) any {
		switch {
		case r.nail.Nail == "":
			return ""
		case r.nail.Hand:
			return "hand"
		}
		return "any"
	}},
	{"fasteners", func(_ units.System, r countRow) any { return r.nail.Count }},
	{"coating", func(u units.System, r countRow) any { return string(r.line.Item.Coating) }},
	{"fastener_coating", func(u units.System, r countRow) any { return string(r.nail.Size.Coating) }},
}

// cautionColumn is the last column of every CSV, the same text in every row:
// a comment line would spoil the header for a spreadsheet, and rows that are
// sorted, filtered or copied keep it. JSON has it once, at its head.
const cautionColumn = "caution"

// CountColumns names the columns that Count writes as CSV and JSON; counts by
// wall, level or phase have a column of that name before them. CSV has the
// column "caution" after them.
func CountColumns() []string { return names(countColumns) }

// OrderColumns names the columns that Order writes as CSV and JSON.
func OrderColumns() []string { return names(orderColumns) }

func names[R any](cols []column[R]) []string {
	out := make([]string, len(cols))
	for i, c := range cols {
		out[i] = c.name
	}
	return out
}

// countRows lists a breakdown as rows: each item, and each further fastener
// of it on a row of its own with no pieces, so that columns may be added up.
func (s *Schedule) countRows(by string) (out []countRow) {
	for _, g := range s.By(by) {
		for _, l := range g.Lines {
			if len(l.Nails) == 0 {
				out = append(out, countRow{g.Name, l, NailCount{}, true})
			}
			for i, n := range l.Nails {
				out = append(out, countRow{g.Name, l, n, i == 0})
			}
		}
	}
	return out
}

// Count writes the count of s by item, wall, level or phase, as "table",
// "csv" or "json".
func Count(w io.Writer, s *Schedule, by, format string) error {
	if !slices.Contains(Keys, by) {
		return fmt.Errorf("counting by %q: not one of %s", by, strings.Join(Keys, ", "))
	}
	rows := s.countRows(by)
	if format == "table" {
		return countTable(w, s, by, rows)
	}
	return write(w, list[countRow]{units: s.units(format), name: "count", fact: fmt.Sprintf("%q: %q", "by", by), cols: columnsBy(by), rows: rows}, format)
}

// columnsBy returns the columns of a breakdown: its own before the others, and
// no name twice.
func columnsBy(by string) []column[countRow] {
	if by == "item" {
		return countColumns
	}
	out := []column[countRow]{{by, func(_ units.System, r countRow) any { return r.group }}}
	for _, c := range countColumns {
		if c.name != by {
			out = append(out, c)
		}
	}
	return out
}

// orderColumns are the columns of the order list.
var orderColumns = []column[OrderRow]{
	{"section", func(_ units.System, r OrderRow) any { return r.Section }},
	{"number", func(_ units.System, r OrderRow) any { return r.Number }},
	{"name", func(_ units.System, r OrderRow) any { return r.Name }},
	{"detail", func(_ units.System, r OrderRow) any { return r.Detail }},
	{"count", func(_ units.System, r OrderRow) any { return r.Count }},
	{"with_spare", func(_ units.System, r OrderRow) any { return r.Spare }},
	{"order", func(_ units.System, r OrderRow) any { return r.Order }},
	{"unit", func(_ units.System, r OrderRow) any { return r.Unit }},
	{"packs", func(_ units.System, r OrderRow) any { return r.Packs }},
	{"pack", func(_ units.System, r OrderRow) any { return r.Pack }},
	{"source", func(_ units.System, r OrderRow) any { return r.Source }},
	{"coating", func(_ units.System, r OrderRow) any { return string(r.Coating) }},
}

// Order writes the order list of s with spare (0.05 is 5 percent).
func Order(w io.Writer, s *Schedule, spare float64, format string) error {
	rows := s.orders(spare, s.units(format))
	if format == "table" {
		return orderTable(w, rows, spare)
	}
	return write(w, list[OrderRow]{units: s.units(format), name: "order", fact: fmt.Sprintf("%q: %s", "spare", number(spare)), cols: orderColumns, rows: rows}, format)
}

// list is one table to write as CSV or JSON.
type list[R any] struct {
	units units.System
	name  string // of the output
	fact  string // what JSON says beside the caution, a key with its value
	cols  []column[R]
	rows  []R
}

// write writes a list as CSV or JSON.
func write[R any](w io.Writer, l list[R], format string) error {
	switch format {
	case "csv":
		return writeCSV(w, l.units, l.cols, l.rows)
	case "json":
		return l.json(w)
	}
	return fmt.Errorf("writing a schedule as %q: not one of %s", format, strings.Join(Formats, ", "))
}

// writeCSV writes RFC 4180 lines, numbers plain, so that a spreadsheet opens
// them without a question. Nothing starts with a sign a spreadsheet would
// take for a formula.
func writeCSV[R any](w io.Writer, u units.System, cols []column[R], rows []R) error {
	c := csv.NewWriter(w)
	c.UseCRLF = true
	line := append(names(cols), cautionColumn)
	if err := c.Write(line); err != nil {
		return err
	}
	for _, r := range rows {
		for i, col := range cols {
			line[i] = plain(col.cell(u, r))
		}
		line[len(cols)] = plan.Caution
		if err := c.Write(line); err != nil {
			return err
		}
	}
	c.Flush()
	return c.Error()
}

func plain(v any) string {
	switch v := v.(type) {
	case int:
		return strconv.Itoa(v)
	case float64:
		return number(v)
	case string:
		if v != "" && strings.ContainsRune("=+-@\t", rune(v[0])) {
			return "'" + v
		}
		return v
	}
	return fmt.Sprint(v)
}

// json writes the rows as objects with their keys in column order, one a line.
func (l list[R]) json(w io.Writer) error {
	var b strings.Builder
	head := plan.HeadOf(l.name, 1)
	fmt.Fprintf(&b, "{\n  \"schema\": %q,\n  \"caution\": %q,\n  %s,\n  \"rows\": [", head.Schema, head.Caution, l.fact)
	for i, r := range l.rows {
		if i > 0 {
			b.WriteString(",")
		}
		line, err := jsonRow(l.units, l.cols, r)
		if err != nil {
			return err
		}
		b.WriteString("\n    " + line)
	}
	b.WriteString("\n  ]\n}\n")
	_, err := io.WriteString(w, b.String())
	return err
}

// jsonRow writes one row as an object.
func jsonRow[R any](u units.System, cols []column[R], r R) (string, error) {
	keys := make([]string, len(cols))
	for i, col := range cols {
		v, err := json.Marshal(col.cell(u, r))
		if err != nil {
			return "", fmt.Errorf("writing column %s: %w", col.name, err)
		}
		keys[i] = fmt.Sprintf("%q: %s", col.name, v)
	}
	return "{" + strings.Join(keys, ", ") + "}", nil
}

// countTable writes a count for reading.
func countTable(w io.Writer, s *Schedule, by string, rows []countRow) error {
	if _, err := fmt.Fprintf(w, "%s\n\n", plan.Caution); err != nil {
		return err
	}
	u, t := s.units("table"), tabwriter.NewWriter(w, 0, 4, 2, ' ', 0)
	fmt.Fprintln(t, "no.\tmark\tkind\tsize\tcoating\tinstall\tpieces\tfasteners")
	group := ""
	for _, r := range rows {
		if by != "item" && r.group != group {
			group = r.group
			fmt.Fprintf(t, "\t%s\t\t\t\t\t\t\n", s.groupWords(by, group))
		}
		left := fmt.Sprintf("%d\t%s\t%s\t%s\t%s\t%s\t%d", r.line.Number, r.line.Item.Mark, r.line.Item.Kind.Name, Size(u, r.line.Item), cmp.Or(string(r.line.Item.Coating), blank), r.line.Item.Phase.Name, len(r.line.Pieces))
		if !r.first {
			left = "\t\t\t\t\t\t"
		}
		fmt.Fprintf(t, "%s\t%s\n", left, nailText(u, r.nail))
	}
	total := 0
	for _, n := range s.Nails() {
		total += n.Count
	}
	fmt.Fprintf(t, "\tall\t\t\t\t\t%d\t%d\n", s.Pieces(), total)
	return t.Flush()
}

// groupWords names a group as a reader does: "wall 1S", "girder GS", "roof main",
// "level first", "foundation", "before floor".
func (s *Schedule) groupWords(by, name string) string {
	p := s.Placement.House.Plan
	switch {
	case by == "phase", by == "level" && !slices.ContainsFunc(p.Levels, func(l *plan.Level) bool { return l.Name == name }):
		return name
	case by == "level", slices.ContainsFunc(p.Walls, func(w *plan.Wall) bool { return w.Name == name }):
		return by + " " + name
	case slices.ContainsFunc(p.Girders, func(g *plan.Girder) bool { return g.Name == name }):
		return "girder " + name
	case slices.ContainsFunc(p.Porches, func(q *plan.Porch) bool { return q.Name == name }):
		return "porch " + strings.TrimPrefix(name, "porch ")
	}
	return "roof " + name
}

func nailText(u units.System, n NailCount) string {
	if n.Nail == "" {
		return "none"
	}
	name := n.Label(u)
	for _, one := range []string{"screw", "bolt"} {
		if rest, ok := strings.CutPrefix(name, one+" "); ok && n.Count != 1 {
			name = one + "s " + rest
		}
	}
	s := fmt.Sprintf("%d %s, %s", n.Count, name, cmp.Or(string(n.Size.Coating), "coating "+blank))
	if n.Hand {
		s += ", by hand only"
	}
	return s
}

// blank stands for a coating that the plan does not give.
const blank = "blank"

// coated are the sections of what has a coating.
var coated = []string{"pieces", "coil", "nails", "screws", "bolts", "rods", "nuts", "washers"}

// coating says what a row's coating is; "blank" where the plan does not.
func (r OrderRow) coating() string {
	if r.Coating == "" && slices.Contains(coated, r.Section) {
		return blank
	}
	return string(r.Coating)
}

// Material says what a row's coating is, as a phrase of its own; "" of what
// has none.
func (r OrderRow) Material() string {
	if s := r.coating(); s != blank {
		return s
	}
	return "coating " + blank
}

// orderTable writes the order list for reading.
func orderTable(w io.Writer, rows []OrderRow, spare float64) error {
	if _, err := fmt.Fprintf(w, "%s\n\n", plan.Caution); err != nil {
		return err
	}
	t := tabwriter.NewWriter(w, 0, 4, 2, ' ', 0)
	fmt.Fprintf(t, "no.\twhat\tdetail\tcoating\tcount\twith %s%%\torder\tpacks\tsource\n", number(spare*100))
	section, cited := "", ""
	for _, r := range rows {
		cited += r.Source + "\n"
		if r.Section != section {
			section = r.Section
			fmt.Fprintf(t, "\t%s\t\t\t\t\t\t\t\n", section)
		}
		no := ""
		if r.Number > 0 {
			no = strconv.Itoa(r.Number)
		}
		fmt.Fprintf(t, "%s\t%s\t%s\t%s\t%d\t%d\t%s\t%s\t%s\n", no, r.Name, r.Detail, r.coating(), r.Count, r.Spare, r.amount(), r.packs(), r.Source)
	}
	if err := t.Flush(); err != nil {
		return err
	}
	if key := source.Key(cited); key != "" {
		_, err := fmt.Fprintf(w, "\n%s", key)
		return err
	}
	return nil
}
