package read

import "galewright/plan"

// finish fills in what follows from several tables together.
func (r *reader) finish(given func(table, key string) bool) {
	p := r.plan
	if given("site", "") {
		assume(&p.Site, func(key string) bool { return given("site", key) })
	}
	if !given("salt", "") {
		p.Salt.Pos = plan.Pos{}
	}
	for _, w := range p.Walls {
		if w.Stock == 0 {
			w.Stock = p.Lumber.Plate
		}
	}
	if len(p.Levels) == 0 {
		return
	}
	r.settleFoundation()
	r.stackLevels()
	r.settlePiles()
	r.runJoists()
}
