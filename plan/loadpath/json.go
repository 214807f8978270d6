package loadpath

import (
	"encoding/json"
	"io"
	"math"

	"galewright/plan"
	"galewright/plan/capacity"
	"galewright/plan/source"
)

// writeJSON writes v indented, with a newline at the end.
func writeJSON(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(v)
}

// tenth rounds a number for output; NaN and infinity cannot come out.
func tenth(x float64) float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return 0
	}
	return math.Round(x*10)/10 + 0
}

// list returns a list that JSON writes as [] when it is empty.
func list[T any](xs []T) []T {
	if xs == nil {
		return []T{}
	}
	return xs
}

func hundredth(x float64) float64  { return math.Round(tenth(x*10)*10) / 100 }
func thousandth(x float64) float64 { return math.Round(tenth(x*100)*10) / 1000 }

// jsonGrade is one line of the key to the grades of sources.
type jsonGrade struct {
	Grade   string `json:"grade"`
	Meaning string `json:"meaning"`
}

func gradesJSON() (out []jsonGrade) {
	for _, g := range source.Grades() {
		out = append(out, jsonGrade{string(g), g.Meaning()})
	}
	return out
}

type jsonTerm struct {
	Text  string  `json:"text"`
	Value float64 `json:"value"`
	Unit  string  `json:"unit,omitempty"`
}

type jsonLink struct {
	Check    string     `json:"check"`
	ID       string     `json:"id"`
	Where    string     `json:"where"`
	Unit     string     `json:"unit"`
	Demand   float64    `json:"demand"`
	Strength float64    `json:"demand_strength"`
	Case     string     `json:"case"`
	Capacity *float64   `json:"capacity"`
	Governs  string     `json:"governs"`
	Source   string     `json:"source,omitempty"`
	Star     bool       `json:"not_makers_value"`
	Ratio    *float64   `json:"ratio"`
	Gap      string     `json:"gap,omitempty"`
	Above    bool       `json:"above_limit"` // the ratio is
	Terms    []jsonTerm `json:"terms"`
	Holds    []jsonTerm `json:"capacity_terms,omitempty"`
	Notes    []string   `json:"notes,omitempty"`
}

func terms[T Term | capacity.Term](list []T) []jsonTerm {
	out := make([]jsonTerm, len(list))
	for i, t := range list {
		x := Term(t)
		out[i] = jsonTerm{x.Text, hundredth(x.Value), x.Unit}
	}
	return out
}

func (l *Link) json(limit float64) jsonLink {
	out := jsonLink{
		Check: l.Check.ID, ID: l.ID, Where: l.Where, Unit: l.Unit, Demand: tenth(l.Demand), Strength: tenth(l.Strength),
		Case: l.Case, Governs: l.Governs(), Gap: l.Gap, Above: l.above(limit), Terms: terms(l.Terms), Notes: l.Notes,
	}
	if c := l.Capacity; c != nil && c.Unknown == "" {
		v := tenth(c.Value)
		out.Capacity, out.Source, out.Holds, out.Star = &v, c.Source, terms(c.Terms), c.NotMakers
	}
	if l.Gap == "" {
		v := hundredth(l.Ratio)
		out.Ratio = &v
	}
	return out
}

type jsonChainLink struct {
	Title    string `json:"title"`
	Joints   int    `json:"joints"`
	Gaps     int    `json:"gaps"`
	Worst    string `json:"worst"`
	Weak     bool   `json:"weakest"`
	Followed bool   `json:"followed"`
}

type jsonChain struct {
	Line  string          `json:"line"`
	Links []jsonChainLink `json:"links"`
}

type jsonCheck struct {
	plan.Head
	Grades  []jsonGrade `json:"grades"`
	Missing string      `json:"missing,omitempty"`
	Limit   float64     `json:"limit"`
	Gaps    int         `json:"gaps"`
	Above   int         `json:"above_limit"`
	Links   []jsonLink  `json:"joints"`
	Chains  []jsonChain `json:"chains"`
	Assumed []string    `json:"assumptions"`
	Left    []string    `json:"not_checked"`
}

func (r *Report) checkJSON(limit float64) jsonCheck {
	gaps, above := r.measured(limit)
	out := jsonCheck{Head: plan.HeadOf("check-loads", 1), Grades: gradesJSON(), Missing: r.Missing, Limit: limit, Gaps: gaps, Above: above, Links: []jsonLink{}, Chains: []jsonChain{}, Assumed: list(r.Assumed), Left: list(r.Unchecked)}
	for _, l := range r.Links {
		out.Links = append(out.Links, l.json(limit))
	}
	for _, c := range r.Chains {
		x := jsonChain{Line: c.Name, Links: []jsonChainLink{}}
		for i, g := range c.Links {
			x.Links = append(x.Links, jsonChainLink{g.Title, g.Joints, g.Gaps, g.Worst.ID, i == c.Weak, g.Followed})
		}
		out.Chains = append(out.Chains, x)
	}
	return out
}
