package loadpath

import (
	"math"

	"galewright/plan"
)

type jsonProcedure struct {
	Used      []plan.Procedure `json:"used"`
	Why       string           `json:"why"`
	Enclosure string           `json:"enclosure"`
}

type jsonSurface struct {
	Surface  string  `json:"surface"`
	Cp       float64 `json:"cp"`
	External float64 `json:"external_psf"`
	Plus     float64 `json:"net_with_internal_pressure_psf"`
	Minus    float64 `json:"net_with_internal_suction_psf"`
}

type jsonDirection struct {
	Wind     string        `json:"wind"`
	Surfaces []jsonSurface `json:"surfaces"`
}

type jsonOpen struct {
	Roof string  `json:"roof"`
	Wind string  `json:"wind"`
	Case string  `json:"case"`
	Part string  `json:"part"`
	CN   float64 `json:"cn"`
	Down float64 `json:"down_psf"`
}

type jsonOverhang struct {
	Zone   string  `json:"zone"`
	Area   float64 `json:"area_sq_ft"`
	GCp    float64 `json:"gcp_net"`
	Up     float64 `json:"up_psf"`
	Source string  `json:"source"`
	Grade  string  `json:"grade"`
}

type jsonGable struct {
	Wall    string  `json:"wall"`
	Roof    string  `json:"roof"`
	Tallest float64 `json:"tallest_stud_ft"`
	Push    float64 `json:"stud_end_out_of_plane_asd_lb"`
	Zone    string  `json:"zone"`
	Rake    float64 `json:"rake_ft"`
	Up      float64 `json:"rake_up_psf"`
	PerFoot float64 `json:"rake_asd_plf"`
}

func (r *Report) gablesJSON() (out []jsonGable) {
	for _, g := range r.work.gableEnds() {
		out = append(out, jsonGable{g.Wall, g.Roof, hundredth(g.Tall / 12), tenth(g.Push), g.Zone, hundredth(g.Rake / 12), tenth(g.Up), tenth(g.PerFt)})
	}
	return out
}

type jsonAlternative struct {
	Assumption string   `json:"assumption"`
	Largest    *float64 `json:"largest_asd_lb"`
}

type jsonComparison struct {
	What    string            `json:"what"`
	Planned float64           `json:"as_planned_asd_lb"`
	Others  []jsonAlternative `json:"others"`
}

func (r *Report) procedureJSON() jsonProcedure {
	return jsonProcedure{list(r.Choice.Use), r.Choice.Why, protection(r.Basis)}
}

func (r *Report) directionalJSON() (out []jsonDirection) {
	if !r.Choice.Has(plan.Directional) {
		return nil
	}
	for _, d := range directions {
		x := jsonDirection{Wind: d.doc, Surfaces: []jsonSurface{}}
		for _, s := range r.surfaces(d.ridge) {
			x.Surfaces = append(x.Surfaces, jsonSurface{s.Name, thousandth(s.Cp), tenth(s.External), tenth(s.Plus), tenth(s.Minus)})
		}
		out = append(out, x)
	}
	return out
}

func (r *Report) openJSON() (out []jsonOpen) {
	for _, x := range r.openRoofs() {
		out = append(out, jsonOpen{x.roof, x.wind, x.name, x.part, thousandth(x.cn), tenth(r.Basis.FreePressure(x.cn))})
	}
	return out
}

func (r *Report) overhangsJSON() (out []jsonOverhang) {
	f, ok := r.roofFigure()
	if !ok {
		return nil
	}
	for _, area := range overhangAreas {
		for _, o := range r.Basis.CladOverhangs(f, area) {
			out = append(out, jsonOverhang{o.Zone, o.Area, thousandth(o.GCp), tenth(o.Up), o.Source, string(o.Grade)})
		}
	}
	return out
}

func (r *Report) comparisonJSON() (out []jsonComparison) {
	c := r.compare()
	for i, row := range c.Rows {
		if math.IsNaN(c.As[i]) {
			continue
		}
		x := jsonComparison{What: row.Name, Planned: tenth(c.As[i]), Others: []jsonAlternative{}}
		for _, alt := range c.Alts {
			o := jsonAlternative{Assumption: alt.Name}
			if v := alt.Values[i]; !math.IsNaN(v) {
				v = tenth(v)
				o.Largest = &v
			}
			x.Others = append(x.Others, o)
		}
		out = append(out, x)
	}
	return out
}
