package calculation

import (
	"encoding/json"
	"io"
	"math"

	"galewright/plan"
	"galewright/plan/capacity"
	"galewright/plan/loadpath"
	"galewright/plan/source"
)

type jsonColumn struct {
	Key  string `json:"key"`
	Head string `json:"head"`
	Unit string `json:"unit,omitempty"`
}

type jsonSection struct {
	Section string           `json:"section"`
	Title   string           `json:"title"`
	Columns []jsonColumn     `json:"columns"`
	Rows    []map[string]any `json:"rows"`
	Notes   []string         `json:"notes"`
}

type jsonTerm struct {
	Text  string  `json:"text"`
	Value float64 `json:"value"`
	Unit  string  `json:"unit,omitempty"`
}

type jsonLine struct {
	Line     string   `json:"line"`
	Story    string   `json:"story"`
	Force    float64  `json:"force_lb"`
	Case     string   `json:"case"`
	Workings []string `json:"workings"`
}

type jsonLink struct {
	Check    string     `json:"check"`
	Name     string     `json:"name"`
	Where    string     `json:"where"`
	Host     string     `json:"on"`
	Unit     string     `json:"unit"`
	Demand   float64    `json:"demand"`
	Strength float64    `json:"demand_strength"`
	Case     string     `json:"case"`
	Capacity *float64   `json:"capacity"`
	Ratio    *float64   `json:"ratio"`
	Gap      string     `json:"gap,omitempty"`
	Mark     string     `json:"mark,omitempty"`
	Governs  string     `json:"governs"`
	Source   string     `json:"source,omitempty"`
	Star     bool       `json:"not_makers_value"`
	Line     string     `json:"line,omitempty"`
	Story    string     `json:"story,omitempty"`
	Workings []string   `json:"workings"`
	Terms    []jsonTerm `json:"demand_terms"`
	Holds    []jsonTerm `json:"capacity_terms"`
	Notes    []string   `json:"notes"`
}

type jsonCheck struct {
	Check string `json:"check"`
	Title string `json:"title"`
	Doc   string `json:"looks_at"`
}

type jsonSource struct {
	Source string `json:"source"`
	Grade  string `json:"grade"`
}

type jsonGrade struct {
	Grade   string `json:"grade"`
	Meaning string `json:"meaning"`
}

type jsonSet struct {
	plan.Head
	Project  string        `json:"project"`
	Missing  string        `json:"missing,omitempty"`
	Sections []jsonSection `json:"sections"`
	Lines    []jsonLine    `json:"lines"`
	Checks   []jsonCheck   `json:"checks"`
	Rows     []jsonLink    `json:"rows"`
	Assumed  []string      `json:"assumptions"`
	Left     []string      `json:"not_checked"`
	Sources  []jsonSource  `json:"sources"`
	Grades   []jsonGrade   `json:"grades"`
}

// writeJSON writes the whole set as one object.
func (s *Set) writeJSON(w io.Writer) error {
	e := json.NewEncoder(w)
	e.SetIndent("", " ")
	e.SetEscapeHTML(false)
	return e.Encode(s.json())
}

func (s *Set) json() jsonSet {
	r := s.Report
	out := jsonSet{
		Head: plan.HeadOf("calculations", 1), Project: r.Placement.House.Plan.Project.Name, Missing: r.Missing,
		Sections: []jsonSection{}, Lines: []jsonLine{}, Checks: []jsonCheck{}, Rows: []jsonLink{}, Sources: []jsonSource{}, Grades: []jsonGrade{},
		Assumed: list(r.Assumed), Left: list(r.Unchecked),
	}
	for _, x := range s.Sections {
		out.Sections = append(out.Sections, x.json())
	}
	for _, x := range s.Lines {
		out.Lines = append(out.Lines, jsonLine{x.Name, x.Level.Name, places(x.Force, 1), x.Case, list(x.Workings)})
	}
	for _, c := range s.Checks {
		out.Checks = append(out.Checks, jsonCheck{c.ID, c.Title, c.Doc})
		for _, l := range c.Links {
			out.Rows = append(out.Rows, l.json())
		}
	}
	for _, x := range s.Sources {
		out.Sources = append(out.Sources, jsonSource{x.Name, x.Grade})
	}
	for _, g := range source.Grades() {
		out.Grades = append(out.Grades, jsonGrade{string(g), g.Meaning()})
	}
	return out
}

func (x *Section) json() jsonSection {
	out := jsonSection{Section: x.ID, Title: x.Title, Columns: []jsonColumn{}, Rows: []map[string]any{}, Notes: list(x.Notes)}
	for _, c := range x.Cols {
		out.Columns = append(out.Columns, jsonColumn{c.Key, c.Head, c.Unit})
	}
	for _, row := range x.Rows {
		o := map[string]any{}
		for i, c := range row {
			o[x.Cols[i].Key] = x.Cols[i].value(c)
		}
		out.Rows = append(out.Rows, o)
	}
	return out
}

// value is a cell as JSON has it: a number at the places of its column, words, or
// null where there is none.
func (c Column) value(x Cell) any {
	switch {
	case x.Is:
		return places(x.Number, c.Places)
	case x.Text == "" && !c.Words:
		return nil
	}
	return x.Text
}

func (l *Link) json() jsonLink {
	out := jsonLink{
		Check: l.Check.ID, Name: l.ID, Where: l.Where, Host: l.Host, Unit: l.Unit, Demand: places(l.Demand, 2), Strength: places(l.Strength, 2), Case: l.Case,
		Gap: l.Gap, Governs: l.Governs(), Workings: list(l.Workings), Terms: terms(l.Terms), Holds: []jsonTerm{}, Notes: list(l.Notes),
	}
	if c := l.Capacity; c != nil && c.Unknown == "" {
		v := places(c.Value, 2)
		out.Capacity, out.Source, out.Mark, out.Star, out.Holds = &v, c.Source, c.Mark, c.NotMakers, terms(c.Terms)
	}
	if l.Gap == "" {
		v := places(l.Ratio, 3)
		out.Ratio = &v
	}
	if l.Line != nil {
		out.Line, out.Story = l.Line.Name, l.Line.Level.Name
	}
	return out
}

func terms[T loadpath.Term | capacity.Term](from []T) []jsonTerm {
	out := []jsonTerm{}
	for _, t := range from {
		x := loadpath.Term(t)
		out = append(out, jsonTerm{x.Text, places(x.Value, 3), x.Unit})
	}
	return out
}

// list returns a list that JSON writes as [] when it is empty.
func list(xs []string) []string {
	if xs == nil {
		return []string{}
	}
	return xs
}

// places rounds a number for output; NaN and infinity cannot come out.
func places(x float64, n int) float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return 0
	}
	k := math.Pow(10, float64(n))
	return math.Round(x*k)/k + 0
}
