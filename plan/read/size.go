package read

import (
	"reflect"

	"galewright/plan"
)

// What one plan may hold: some hundred houses, and no more than a machine of the
// job office takes. Common practice has no figure; these are ours.
const (
	mostTables = 20_000  // tables of one kind, and values in one list
	mostRules  = 2_000   // each is asked at each joint of its kind
	mostText   = 4_000   // bytes in one text
	mostStuds  = 500_000 // studs and rafters at their spacing, all houses together
)

// many refuses a list that is longer than any house's.
func (v value) many() bool {
	list, most := reflect.ValueOf(v.raw), mostTables
	if v.key == "rule" {
		most = mostRules
	}
	if list.Kind() != reflect.Slice || list.Len() <= most {
		return false
	}
	v.bad("too-many", "make two plans of it", "%d of them are more than a plan holds, %d", list.Len(), most)
	return true
}

// checkSize refuses a house of more members than can be framed in a sitting.
func (r *reader) checkSize() {
	n := 0.0
	for _, w := range r.plan.Walls {
		n += rows(w.Length(), w.Spacing)
	}
	for _, f := range r.plan.Roofs {
		size := f.Area[1].Sub(f.Area[0])
		n += rows(max(size.X, size.Y), f.Spacing)
	}
	if n <= mostStuds {
		return
	}
	top := plan.Pos{File: r.plan.File, Line: 1, Col: 1}
	r.fail(top, "too-large", "", "make several plans of it, or correct lengths and spacings", "walls and roofs have some %.0f studs and rafters, and a plan holds %d", n, mostStuds)
}

// rows is how many members stand over a length, in, at a spacing, in.
func rows(length, spacing float64) float64 {
	if spacing <= 0 {
		return 0
	}
	return length/spacing + 1
}
