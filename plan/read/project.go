package read

import (
	"galewright/plan"
	"galewright/plan/units"
)

// projectKeys fill the title block.
var projectKeys = []binding[plan.Project]{
	textKey("name", `"Invented house"`, "name of the house", func(p *plan.Project) *string { return &p.Name }).must(),
	textKey("number", `"demo 1"`, "number of the job", func(p *plan.Project) *string { return &p.Number }),
	textKey("site", `"no real place"`, "where it is built", func(p *plan.Project) *string { return &p.Site }),
	field("date", "date", "2026-03-02", "date of the sheets: no clock is read", value.date,
		func(p *plan.Project) *string { return &p.Date }),
	textKey("revision", `"B"`, "revision letter or number", func(p *plan.Project) *string { return &p.Revision }).or("0", `"0"`),
	textKey("drawn_by", `"site office"`, "who drew the plan", func(p *plan.Project) *string { return &p.DrawnBy }),
	textKey("checked_by", `"lead framer"`, "who checked it", func(p *plan.Project) *string { return &p.CheckedBy }),
	textKey("engineer", `"engineer of record"`, "engineer of record, as a title or a role", func(p *plan.Project) *string { return &p.Engineer }),
	textsKey("notes", `["All hardware zinc coated."]`, "notes for the cover sheet", func(p *plan.Project) *[]string { return &p.Notes }),
	custom("units", "word", `"metric"`, "what is printed: feet, inches and pounds, or millimeters, meters and kilonewtons; the keys of JSON say their own units, which stay", func(v value, p *plan.Project) {
		if s, _ := choice(v, units.Systems); s.Is() {
			p.Units = s
		}
	}).words(plan.Words(units.Systems)).otherwise(`"imperial"`),
}
