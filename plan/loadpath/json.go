package loadpath

import (
	"encoding/json"
	"io"
	"math"

	"galewright/plan/capacity"
	"galewright/plan/wind"
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

func hundredth(x float64) float64 { return tenth(x*10) / 10 }

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
	Ratio    *float64   `json:"ratio"`
	Gap      string     `json:"gap,omitempty"`
	Over     bool       `json:"over"`
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
		Case: l.Case, Governs: l.Governs(), Gap: l.Gap, Over: l.Over(limit), Terms: terms(l.Terms), Notes: l.Notes,
	}
	if c := l.Capacity; c != nil && c.Unknown == "" {
		v := tenth(c.Value)
		out.Capacity, out.Source, out.Holds = &v, c.Source, terms(c.Terms)
	}
	if l.Gap == "" {
		v := hundredth(l.Ratio)
		out.Ratio = &v
	}
	return out
}

type jsonRing struct {
	Title  string `json:"title"`
	Joints int    `json:"joints"`
	Gaps   int    `json:"gaps"`
	Worst  string `json:"worst"`
	Weak   bool   `json:"weakest"`
}

type jsonChain struct {
	Line  string     `json:"line"`
	Rings []jsonRing `json:"links"`
}

type jsonCheck struct {
	Caution string      `json:"caution"`
	Missing string      `json:"missing,omitempty"`
	Limit   float64     `json:"limit"`
	Failed  bool        `json:"failed"`
	Links   []jsonLink  `json:"joints"`
	Chains  []jsonChain `json:"chains"`
	Assumed []string    `json:"assumptions"`
	Left    []string    `json:"not_checked"`
}

func (r *Report) checkJSON(limit float64) jsonCheck {
	out := jsonCheck{Caution: Caution, Missing: r.Missing, Limit: limit, Failed: r.Failed(limit), Links: []jsonLink{}, Chains: []jsonChain{}, Assumed: r.Assumed, Left: r.Unchecked}
	for _, l := range r.Links {
		out.Links = append(out.Links, l.json(limit))
	}
	for _, c := range r.Chains {
		x := jsonChain{Line: c.Name, Rings: []jsonRing{}}
		for i, g := range c.Rings {
			x.Rings = append(x.Rings, jsonRing{g.Title, g.Joints, g.Gaps, g.Worst.ID, i == c.Weak})
		}
		out.Chains = append(out.Chains, x)
	}
	return out
}

type jsonZone struct {
	Zone     string  `json:"zone"`
	GCpf     float64 `json:"gcpf"`
	External float64 `json:"external_psf"`
	Plus     float64 `json:"net_with_internal_pressure_psf"`
	Minus    float64 `json:"net_with_internal_suction_psf"`
}

type jsonForce struct {
	Wind float64 `json:"wind"`
	Dead float64 `json:"dead"`
}

func forceJSON(f Force) jsonForce { return jsonForce{tenth(f.W), tenth(f.D)} }

type jsonBalance struct {
	Case, Story                                 string
	Roof, Above, Weight, Tops, Bases, NoWayDown jsonForce
}

// perFootJSON is null where the rafter has no width of its own.
func perFootJSON(u UpliftLine) any {
	if u.PerFoot == 0 {
		return nil
	}
	return tenth(u.PerFoot)
}

type jsonWind struct {
	Caution      string                `json:"caution"`
	Missing      string                `json:"missing,omitempty"`
	Coefficients []wind.Coefficient    `json:"coefficients"`
	Limits       []string              `json:"limits"`
	Zones        map[string][]jsonZone `json:"zones"`
	Dead         []DeadLine            `json:"dead_loads"`
	Uplift       []map[string]any      `json:"uplift"`
	Ridges       []RidgeLine           `json:"ridges"`
	Stories      []map[string]any      `json:"story_shear"`
	Base         []map[string]any      `json:"foundation_shear"`
	Lines        []map[string]any      `json:"shear_lines"`
	Twist        []string              `json:"twist"`
	Balance      []jsonBalance         `json:"account"`
	Assumed      []string              `json:"assumptions"`
	Left         []string              `json:"not_checked"`
}

func (r *Report) windJSON() jsonWind {
	if r.Missing != "" {
		return jsonWind{Caution: Caution, Missing: r.Missing}
	}
	out := jsonWind{
		Caution: Caution, Coefficients: r.Basis.Coefficients(), Limits: r.Limits, Zones: map[string][]jsonZone{}, Dead: r.Dead,
		Twist: r.Torsion, Assumed: r.Assumed, Left: r.Unchecked,
	}
	for name, coefs := range map[string]wind.Coefs{"A": wind.CaseA(r.Basis.Theta), "B": wind.CaseB} {
		for _, z := range r.Basis.Zones(coefs) {
			out.Zones[name] = append(out.Zones[name], jsonZone{z.Name, hundredth(z.GCpf), tenth(z.External), tenth(z.Plus), tenth(z.Minus)})
		}
	}
	for _, u := range r.Uplift {
		name := ""
		if u.Wall != nil {
			name = u.Wall.Name
		}
		out.Uplift = append(out.Uplift, map[string]any{
			"wall": name, "roof": u.Roof, "joints": u.Joints, "largest_at": u.At, "largest": forceJSON(u.Largest),
			"largest_asd_lb": tenth(u.Largest.net(ASD)), "asd_plf": perFootJSON(u), "strength_lb": tenth(u.Strength), "case": u.Case,
		})
	}
	for _, x := range r.Ridges {
		x.Tension, x.Thrust = tenth(x.Tension), tenth(x.Thrust)
		out.Ridges = append(out.Ridges, x)
	}
	for _, s := range r.Stories {
		out.Stories = append(out.Stories, map[string]any{
			"story": s.Level.Name, "along": s.Axis, "walls_lb": tenth(s.Wall), "roofs_lb": tenth(s.Roof),
			"above_lb": tenth(s.Above), "total_lb": tenth(s.Total), "asd_lb": tenth(s.ASD), "case": s.Case, "no_line": s.NoLine,
		})
	}
	for _, b := range r.Base {
		out.Base = append(out.Base, map[string]any{"along": b.Axis, "total_lb": tenth(b.Total), "asd_lb": tenth(ASD.W * b.Total), "case": b.Case})
	}
	for _, x := range r.Lines {
		out.Lines = append(out.Lines, x.json())
	}
	for _, b := range r.Balance {
		out.Balance = append(out.Balance, jsonBalance{b.Case, b.Level.Name, forceJSON(b.Roof), forceJSON(b.Above), forceJSON(b.Weight), forceJSON(b.Tops), forceJSON(b.Bases), forceJSON(b.Elsewhere)})
	}
	return out
}

func (x *LineShear) json() map[string]any {
	var segments, drag []map[string]any
	for _, s := range x.Segments {
		segments = append(segments, map[string]any{
			"name": s.Name, "length_ft": hundredth(s.Length / 12), "counts_ft": hundredth(s.Working / 12), "share": hundredth(s.Share),
			"shear_lb": tenth(s.V), "asd_plf": tenth(s.Demand), "end_tension_lb": tenth(s.Lifts),
		})
	}
	for _, d := range x.Drag {
		drag = append(drag, map[string]any{"at_ft": hundredth(d.At / 12), "force_lb": tenth(d.Force)})
	}
	return map[string]any{
		"story": x.Level.Name, "line": x.Name, "axis": []string{"x", "y"}[x.Axis], "at_ft": hundredth(x.At / 12),
		"force_lb": tenth(x.Force), "case": x.Case, "segments": segments, "collector": drag,
	}
}
