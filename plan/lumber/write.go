package lumber

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
	"text/tabwriter"

	"galewright/plan"
	"galewright/plan/units"
)

// Text writes the cut list as tables to read: what to buy with the bound,
// the pieces, the patterns of cuts, and what no stock covers.
func (c *Cut) Text(w io.Writer) error {
	var b strings.Builder
	t := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	fmt.Fprintln(t, "LUMBER TO BUY")
	fmt.Fprintln(t, "section\tlength\tsticks\t")
	for _, o := range c.Orders() {
		fmt.Fprintf(t, "%s\t%s\t%d\t\n", c.bought(o.Section), c.Units.Stock(o.Length), o.Count)
	}
	fmt.Fprintln(t)
	c.totals(t)
	c.pieces(t)
	c.patterns(t)
	parts(t, c.Units, "LONGER THAN THE LONGEST STOCK: order to length, or splice over a bearing", c.Long)
	c.trussTable(t)
	parts(t, c.Units, "BUILT UP OR DRIVEN: counted, not cut", slices.DeleteFunc(slices.Clone(c.Made), func(p *Part) bool { return p.Role.IsTruss() }))
	if err := t.Flush(); err != nil {
		return err
	}
	_, err := fmt.Fprintf(w, "%s\n\n%s", plan.Caution, trimLines(b.String()))
	return err
}

// trimLines drops the blanks at the ends of lines and of the text.
func trimLines(s string) string {
	lines := strings.Split(strings.TrimRight(s, " \n"), "\n")
	for i, l := range lines {
		lines[i] = strings.TrimRight(l, " ")
	}
	return strings.Join(lines, "\n") + "\n"
}

func (c *Cut) totals(w io.Writer) {
	fmt.Fprintln(w, c.Units.Words("section\tpieces\tneeded {ft}\tbought {ft}\tminimum {ft}\twaste %\t"))
	for _, s := range c.Sections {
		n := 0
		for _, p := range s.Parts {
			n += p.Count
		}
		fmt.Fprintf(w, "%s\t%d\t%s\t%s\t%s\t%.1f\t\n", c.bought(s.Name), n, c.feet(s.Need), c.feet(s.Bought), c.feet(s.Bound), s.Waste())
	}
	fmt.Fprint(w, c.Units.Sprintf("Each cut takes %s; \"minimum {ft}\" is the least that any cutting of these pieces can buy.\n\n", c.Units.Length(Kerf)))
}

func (c *Cut) pieces(w io.Writer) {
	fmt.Fprintln(w, "PIECES")
	fmt.Fprintln(w, "section\trole\tlength\tpieces\t")
	for _, s := range c.Sections {
		for _, p := range s.Parts {
			fmt.Fprintf(w, "%s\t%s\t%s\t%d\t\n", p.Section, p.words(), c.Units.Length(p.Length), p.Count)
		}
	}
	fmt.Fprintln(w)
}

func (c *Cut) patterns(w io.Writer) {
	fmt.Fprintln(w, "CUTTING")
	fmt.Fprintln(w, "section\tstick\tsticks\tleft over\tcuts\t")
	for _, s := range c.Sections {
		for _, k := range s.Sticks {
			fmt.Fprintf(w, "%s\t%s\t%d\t%s\t%s\t\n", s.Name, c.Units.Stock(k.Length), k.Count, c.Units.Length(k.Left), cutText(c.Units, k.Cuts))
		}
	}
	fmt.Fprintln(w)
}

// cutText prints cuts, equal ones once with their number.
func cutText(u units.System, cuts []float64) string {
	var out []string
	for i := 0; i < len(cuts); {
		n := 1
		for i+n < len(cuts) && cuts[i+n] == cuts[i] {
			n++
		}
		s := u.Length(cuts[i])
		if n > 1 {
			s = fmt.Sprintf("%d of %s", n, s)
		}
		out, i = append(out, s), i+n
	}
	return strings.Join(out, ", ")
}

func parts(w io.Writer, u units.System, title string, list []*Part) {
	if len(list) == 0 {
		return
	}
	fmt.Fprintf(w, "%s\n", title)
	fmt.Fprintln(w, "section\trole\tlength\tpieces\t")
	for _, p := range list {
		fmt.Fprintf(w, "%s\t%s\t%s\t%d\t\n", p.Section, p.words(), u.Length(p.Length), p.Count)
	}
	fmt.Fprintln(w)
}

// words names the pieces: their role, and how a bevel is cut.
func (p *Part) words() string {
	switch {
	case p.Bevel == 0:
		return string(p.Role)
	case p.Role == plan.BeveledStud || p.Role.FullHeight():
		return fmt.Sprintf("%s, ripped at %.1f°", p.Role, p.Bevel)
	}
	return fmt.Sprintf("%s, end cut at %.1f°", p.Role, p.Bevel)
}

// feet prints a length in feet with one decimal, or in meters.
func (c *Cut) feet(in float64) string { return c.Units.Number(in/12, "ft", 1) }

// bought is a section as the yard names it, in the metric system with its size.
func (c *Cut) bought(name string) string {
	for _, s := range c.Sections {
		if s.Name == name {
			return c.Units.Beside(name, s.Breadth, s.Depth)
		}
	}
	return name
}

// CSV writes one row for each kind of piece and each pattern: what, section,
// role, length and cuts in inches, or in mm where the head says so, and the caution.
func (c *Cut) CSV(w io.Writer) error {
	rows := [][]string{{"table", "section", "role", c.key("length"), "count", c.key("cuts")}}
	for _, o := range c.Orders() {
		rows = append(rows, []string{"buy", o.Section, "", c.number(o.Length), strconv.Itoa(o.Count), ""})
	}
	add := func(table string, list []*Part) {
		for _, p := range list {
			rows = append(rows, []string{table, p.Section, p.words(), c.number(p.Length), strconv.Itoa(p.Count), ""})
		}
	}
	for _, s := range c.Sections {
		add("piece", s.Parts)
	}
	for _, s := range c.Sections {
		for _, k := range s.Sticks {
			var cuts []string
			for _, x := range k.Cuts {
				cuts = append(cuts, c.number(x))
			}
			rows = append(rows, []string{"cut", s.Name, "", c.number(k.Length), strconv.Itoa(k.Count), strings.Join(cuts, " ")})
		}
	}
	add("long", c.Long)
	add("built up", c.Made)
	rows[0] = append(rows[0], "caution")
	for i := range rows[1:] {
		rows[i+1] = append(rows[i+1], plan.Caution)
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// key names a column of lengths with its unit: length_in, length_mm.
func (c *Cut) key(name string) string { return name + "_" + c.Units.Unit("in") }

// number prints inches without needless zeros, or millimeters to the tenth.
func (c *Cut) number(in float64) string {
	if v := c.Units.Value(in, "in"); v != in {
		in = math.Round(v*10) / 10
	}
	return strconv.FormatFloat(in, 'f', -1, 64)
}

// jsonPart and the types below fix the JSON form: lengths in inches.
type jsonPart struct {
	Section string   `json:"section"`
	Role    string   `json:"role"`
	Length  float64  `json:"length_in"`
	Count   int      `json:"count"`
	Bevel   float64  `json:"bevel_deg,omitempty"`
	Members []string `json:"members"`
}

type jsonStick struct {
	Length float64   `json:"length_in"`
	Count  int       `json:"count"`
	Cuts   []float64 `json:"cuts_in"`
	Left   float64   `json:"left_in"`
}

type jsonSection struct {
	Section string      `json:"section"`
	Need    float64     `json:"needed_in"`
	Bought  float64     `json:"bought_in"`
	Bound   float64     `json:"bound_in"`
	Pieces  []jsonPart  `json:"pieces"`
	Sticks  []jsonStick `json:"sticks"`
}

type jsonCut struct {
	plan.Head
	Stock    []float64     `json:"stock_in"`
	Kerf     float64       `json:"kerf_in"`
	Sections []jsonSection `json:"sections"`
	Long     []jsonPart    `json:"longer_than_stock"`
	Made     []jsonPart    `json:"made_up"`
	Trusses  []jsonTruss   `json:"trusses,omitempty"`
}

type jsonTruss struct {
	Role    string   `json:"role"`
	Chords  string   `json:"chords"`
	Plies   int      `json:"plies"`
	Span    float64  `json:"span_in"`
	Slope   float64  `json:"slope_in_12"`
	Other   float64  `json:"other_slope_in_12,omitempty"`
	Height  float64  `json:"height_in"`
	Level   float64  `json:"level_top_in,omitempty"`
	Count   int      `json:"count"`
	Numbers []string `json:"numbers"`
	Members []string `json:"members"`
}

// JSON writes the cut list with the members of each kind of piece.
func (c *Cut) JSON(w io.Writer) error {
	out := jsonCut{Head: plan.HeadOf("lumber", 1), Stock: c.Stock, Kerf: Kerf, Sections: []jsonSection{}, Long: jsonParts(c.Long), Made: jsonParts(c.Made)}
	for _, x := range c.Trusses {
		out.Trusses = append(out.Trusses, jsonTruss{string(x.Role), x.Chords, x.Plies, x.Span, hundredth(x.Slopes[0]), hundredth(x.Slopes[1]), x.Height, x.Level, x.Count, x.Numbers, x.Members})
	}
	for _, s := range c.Sections {
		js := jsonSection{Section: s.Name, Need: s.Need, Bought: s.Bought, Bound: s.Bound, Pieces: jsonParts(s.Parts), Sticks: []jsonStick{}}
		for _, k := range s.Sticks {
			js.Sticks = append(js.Sticks, jsonStick(*k))
		}
		out.Sections = append(out.Sections, js)
	}
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(out)
}

func jsonParts(list []*Part) []jsonPart {
	out := []jsonPart{}
	for _, p := range list {
		out = append(out, jsonPart{p.Section, string(p.Role), p.Length, p.Count, math.Round(p.Bevel*10) / 10, p.Members})
	}
	return out
}

// hundredth rounds a slope as it is printed.
func hundredth(rise float64) float64 { return math.Round(rise*100) / 100 }
