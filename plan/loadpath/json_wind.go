package loadpath

import (
	"galewright/plan"
	"galewright/plan/wind"
)

type jsonCoefficient struct {
	Name  string  `json:"name"`
	Value float64 `json:"value"`
	Unit  string  `json:"unit"`
	Table string  `json:"table"`
	Grade string  `json:"grade,omitempty"`
}

type jsonZone struct {
	Zone     string  `json:"zone"`
	GCpf     float64 `json:"gcpf"`
	External float64 `json:"external_psf"`
	Plus     float64 `json:"net_with_internal_pressure_psf"`
	Minus    float64 `json:"net_with_internal_suction_psf"`
}

type jsonEnvelope struct {
	Case  string     `json:"case"`
	Wind  string     `json:"wind"`
	Zones []jsonZone `json:"zones"`
}

type jsonClad struct {
	Zone     string  `json:"zone"`
	Area     float64 `json:"area_sq_ft"`
	GCpPlus  float64 `json:"gcp_positive"`
	GCpMinus float64 `json:"gcp_negative"`
	Plus     float64 `json:"positive_psf"`
	Minus    float64 `json:"negative_psf"`
}

type jsonFigure struct {
	Figure string     `json:"figure"`
	Grade  string     `json:"grade"`
	Note   string     `json:"note,omitempty"`
	Zones  []jsonClad `json:"zones"`
}

type jsonDead struct {
	Part   plan.DeadPart `json:"part"`
	Name   string        `json:"name"`
	Weight float64       `json:"weight_psf"`
	Source string        `json:"source"`
}

// jsonForce is a wind force at strength level and a dead load, lb.
type jsonForce struct {
	Wind float64 `json:"wind_lb"`
	Dead float64 `json:"dead_lb"`
}

func forceJSON(f Force) jsonForce { return jsonForce{tenth(f.W), tenth(f.D)} }

type jsonUplift struct {
	Wall     string    `json:"wall"`
	Roof     string    `json:"roof"`
	Joints   int       `json:"joints"`
	At       string    `json:"largest_at"`
	Largest  jsonForce `json:"largest"`
	ASD      float64   `json:"largest_asd_lb"`
	PerFoot  *float64  `json:"asd_plf"` // null where the rafter has no width of its own
	Strength float64   `json:"strength_lb"`
	Case     string    `json:"case"`
}

type jsonRidge struct {
	Roof    string  `json:"roof"`
	Bearing bool    `json:"ridge_beam"`
	Joints  int     `json:"joints"`
	Tension float64 `json:"largest_asd_lb"`
	Case    string  `json:"case"`
	Thrust  float64 `json:"dead_thrust_lb"`
	Note    string  `json:"note,omitempty"`
}

type jsonStory struct {
	Story  string    `json:"story"`
	Axis   plan.Axis `json:"along"`
	Wall   float64   `json:"walls_lb"`
	Roof   float64   `json:"roofs_lb"`
	Above  float64   `json:"above_lb"`
	Total  float64   `json:"total_lb"`
	ASD    float64   `json:"asd_lb"`
	Case   string    `json:"case"`
	NoLine bool      `json:"no_line"`
}

type jsonBase struct {
	Axis    plan.Axis `json:"along"`
	Story   float64   `json:"lowest_story_lb"`
	Walls   float64   `json:"walls_lb"`
	Edge    float64   `json:"floor_edge_lb"`
	Girders float64   `json:"girders_lb"`
	Total   float64   `json:"total_lb"`
	ASD     float64   `json:"asd_lb"`
	Case    string    `json:"case"`
}

type jsonSegment struct {
	Name    string  `json:"name"`
	Length  float64 `json:"length_ft"`
	Working float64 `json:"counts_ft"`
	Share   float64 `json:"share"`
	Shear   float64 `json:"shear_lb"`
	Demand  float64 `json:"asd_plf"`
	Lifts   float64 `json:"end_tension_lb"`
	Lever   float64 `json:"lever_arm_ft"`
	Stiff   float64 `json:"stiffness_lb_per_in"`
}

type jsonDrag struct {
	At    float64 `json:"at_ft"`
	Force float64 `json:"force_lb"`
}

type jsonLine struct {
	Story    string        `json:"story"`
	Line     string        `json:"line"`
	Axis     string        `json:"axis"`
	At       float64       `json:"at_ft"`
	Force    float64       `json:"force_lb"`
	Case     string        `json:"case"`
	Shared   string        `json:"shared"`
	Drift    float64       `json:"drift_in"`
	Segments []jsonSegment `json:"segments"`
	Drag     []jsonDrag    `json:"collector"`
}

type jsonBalance struct {
	Case      string    `json:"case"`
	Story     string    `json:"story"`
	Roof      jsonForce `json:"roof"`
	Above     jsonForce `json:"above"`
	Weight    jsonForce `json:"weight"`
	Tops      jsonForce `json:"tops"`
	Bases     jsonForce `json:"bases"`
	NoWayDown jsonForce `json:"no_way_down"`
}

type jsonWind struct {
	plan.Head
	Grades       []jsonGrade       `json:"grades"`
	Missing      string            `json:"missing,omitempty"`
	Procedure    jsonProcedure     `json:"procedure"`
	Coefficients []jsonCoefficient `json:"coefficients"`
	Limits       []string          `json:"limits"`
	Envelope     []jsonEnvelope    `json:"envelope"`
	Directional  []jsonDirection   `json:"directional"`
	Open         []jsonOpen        `json:"open_roofs"`
	Cladding     []jsonFigure      `json:"cladding"`
	Widths       []string          `json:"cladding_widths"`
	Overhangs    []jsonOverhang    `json:"overhangs"`
	Gables       []jsonGable       `json:"gable_ends"`
	Dead         []jsonDead        `json:"dead_loads"`
	Uplift       []jsonUplift      `json:"uplift"`
	Ridges       []jsonRidge       `json:"ridges"`
	Stories      []jsonStory       `json:"story_shear"`
	Base         []jsonBase        `json:"foundation_shear"`
	Bays         []jsonBay         `json:"diaphragms"`
	Lines        []jsonLine        `json:"shear_lines"`
	Twist        []string          `json:"twist"`
	Comparison   []jsonComparison  `json:"other_assumptions"`
	Balance      []jsonBalance     `json:"account"`
	Assumed      []string          `json:"assumptions"`
	Left         []string          `json:"not_checked"`
}

// windJSON gives the whole of WriteWind's text as data; without numbers only
// what is missing.
func (r *Report) windJSON() jsonWind {
	out := jsonWind{Procedure: jsonProcedure{Used: []plan.Procedure{}}, Head: plan.HeadOf("loads", 1), Grades: gradesJSON(), Missing: r.Missing, Assumed: list(r.Assumed), Left: list(r.Unchecked)}
	if r.Missing == "" {
		out.Procedure, out.Directional, out.Open, out.Widths, out.Overhangs, out.Gables, out.Comparison = r.procedureJSON(), r.directionalJSON(), r.openJSON(), r.zoneWidths(), r.overhangsJSON(), r.gablesJSON(), r.comparisonJSON()
		out.Coefficients, out.Envelope, out.Cladding = r.coefficientsJSON(), r.envelopeJSON(), r.claddingJSON()
		out.Uplift, out.Ridges, out.Stories, out.Base, out.Balance = r.upliftJSON(), r.ridgesJSON(), r.storiesJSON(), r.baseJSON(), r.balanceJSON()
	}
	for _, d := range r.Dead {
		out.Dead = append(out.Dead, jsonDead(d))
	}
	for _, b := range r.Bays {
		out.Bays = append(out.Bays, b.json())
	}
	out.Bays = list(out.Bays)
	for _, x := range r.Lines {
		out.Lines = append(out.Lines, x.json())
	}
	out.Coefficients, out.Envelope, out.Cladding = list(out.Coefficients), list(out.Envelope), list(out.Cladding)
	out.Limits, out.Dead, out.Uplift, out.Ridges = list(r.Limits), list(out.Dead), list(out.Uplift), list(out.Ridges)
	out.Stories, out.Base, out.Lines, out.Twist, out.Balance = list(out.Stories), list(out.Base), list(out.Lines), list(r.Torsion), list(out.Balance)
	out.Directional, out.Open, out.Widths, out.Overhangs, out.Gables, out.Comparison = list(out.Directional), list(out.Open), list(out.Widths), list(out.Overhangs), list(out.Gables), list(out.Comparison)
	return out
}

func (r *Report) coefficientsJSON() (out []jsonCoefficient) {
	for _, c := range r.Basis.Coefficients(r.Choice) {
		out = append(out, jsonCoefficient{c.Name, thousandth(c.Value), c.Unit, c.Table, string(c.Grade)})
	}
	return out
}

func (r *Report) envelopeJSON() (out []jsonEnvelope) {
	if !r.Choice.Has(plan.Envelope) {
		return nil
	}
	for _, c := range r.loadCases() {
		e := jsonEnvelope{Case: r.Basis.CaseName(c.name), Wind: c.doc, Zones: []jsonZone{}}
		for _, z := range r.Basis.Zones(c.coefs) {
			e.Zones = append(e.Zones, jsonZone{z.Name, hundredth(z.GCpf), tenth(z.External), tenth(z.Plus), tenth(z.Minus)})
		}
		out = append(out, e)
	}
	return out
}

// cladAreas are the effective wind areas that are told, ft²: the least of the
// figures, a sheathing panel, and a member's.
var cladAreas = []float64{10, 32, 100}

func (r *Report) claddingJSON() (out []jsonFigure) {
	for _, f := range r.figures() {
		x := jsonFigure{Figure: f.Name, Grade: string(f.Grade), Note: f.Note, Zones: []jsonClad{}}
		for _, z := range f.Zones {
			for _, area := range cladAreas {
				c := r.Basis.Cladding(z, area)
				x.Zones = append(x.Zones, jsonClad{c.Zone, area, hundredth(c.GCpPositive), hundredth(c.GCpNegative), tenth(c.Positive), tenth(c.Negative)})
			}
		}
		out = append(out, x)
	}
	return out
}

func (r *Report) upliftJSON() (out []jsonUplift) {
	for _, u := range r.Uplift {
		name := ""
		if u.Wall != nil {
			name = u.Wall.Name
		}
		out = append(out, jsonUplift{name, u.Roof, u.Joints, u.At, forceJSON(u.Largest), tenth(u.Largest.net(ASD)), perFootJSON(u), tenth(u.Strength), u.Case})
	}
	return out
}

func perFootJSON(u UpliftLine) *float64 {
	if u.PerFoot == 0 {
		return nil
	}
	lb := tenth(u.PerFoot)
	return &lb
}

func (r *Report) ridgesJSON() (out []jsonRidge) {
	for _, x := range r.Ridges {
		out = append(out, jsonRidge{x.Roof, x.Bearing, x.Joints, tenth(x.Tension), x.Case, tenth(x.Thrust), x.Note})
	}
	return out
}

func (r *Report) storiesJSON() (out []jsonStory) {
	for _, s := range r.Stories {
		out = append(out, jsonStory{s.Level.Name, s.Axis, tenth(s.Wall), tenth(s.Roof), tenth(s.Above), tenth(s.Total), tenth(s.ASD), s.Case, s.NoLine})
	}
	return out
}

func (r *Report) baseJSON() (out []jsonBase) {
	for _, b := range r.Base {
		if b.Axis != "" {
			out = append(out, jsonBase{b.Axis, tenth(b.Story), tenth(b.Walls), tenth(b.Edge), tenth(b.Girders), tenth(b.Total), tenth(ASD.W * b.Total), b.Case})
		}
	}
	return out
}

func (r *Report) balanceJSON() (out []jsonBalance) {
	for _, b := range r.Balance {
		out = append(out, jsonBalance{b.Case, b.Level.Name, forceJSON(b.Roof), forceJSON(b.Above), forceJSON(b.Weight), forceJSON(b.Tops), forceJSON(b.Bases), forceJSON(b.Elsewhere)})
	}
	return out
}

func (x *LineShear) json() jsonLine {
	out := jsonLine{
		Story: x.Level.Name, Line: x.Name, Axis: []string{"x", "y"}[x.Axis], At: hundredth(x.At / 12), Force: tenth(x.Force), Case: x.Case, Shared: x.method(), Drift: hundredth(x.Drift()),
		Segments: []jsonSegment{}, Drag: []jsonDrag{},
	}
	for _, s := range x.Segments {
		out.Segments = append(out.Segments, jsonSegment{s.Name, hundredth(s.Length / 12), hundredth(s.Working / 12), hundredth(s.Share), tenth(s.V), tenth(s.Demand), tenth(s.Lifts), hundredth(s.arm() / 12), tenth(s.Stiff)})
	}
	for _, d := range x.Drag {
		out.Drag = append(out.Drag, jsonDrag{hundredth(d.At / 12), tenth(d.Force)})
	}
	return out
}

// loadCase is a load case of the envelope procedure with its coefficients.
type loadCase struct {
	name, doc string
	coefs     wind.Coefs
}

func (r *Report) loadCases() []loadCase {
	return []loadCase{{"A", "across the ridge", wind.CaseA(r.Basis.Theta)}, {"B", "along the ridge", wind.CaseB}}
}
