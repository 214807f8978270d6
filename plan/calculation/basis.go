package calculation

import (
	"fmt"

	"galewright/plan/loadpath"
	"galewright/plan/units"
)

// basis lists what the wind is computed from, and the limits of the methods.
func basis(r *loadpath.Report) []*Section {
	return []*Section{windBasis(r), limits(r), combinations(r)}
}

func windBasis(r *loadpath.Report) *Section {
	s := &Section{ID: "basis", Title: "Wind basis", Cols: []Column{
		words("quantity", "Quantity"), words("value", "Value"), words("unit", "Unit"), words("source", "From"),
	}}
	site := r.Placement.House.Plan.Site
	given := func(name, value string) { s.add(word("%s", name), word("%s", value), Cell{}, word("plan")) }
	given("edition", "ASCE "+string(r.Basis.Edition))
	given("risk category", string(site.Risk))
	given("exposure", string(r.Basis.Exposure))
	given("enclosure", string(r.Basis.Enclosure))
	for _, c := range r.Basis.Coefficients(r.Choice) {
		from := c.Table
		if c.Grade != "" {
			from += " (" + string(c.Grade) + ")"
		}
		s.add(word("%s", c.Name), either(fmt.Sprintf("%.3f", c.Value), r.Units().Number(c.Value, c.Unit, 3)), either(c.Unit, r.Units().Unit(c.Unit)), word("%s", from))
	}
	s.Notes = append(s.Notes, "Procedure: "+r.Choice.String()+": "+r.Choice.Why+".", "Enclosure: "+r.Protection()+".")
	for _, a := range site.Assumed {
		s.Notes = append(s.Notes, "Not in the plan, taken: "+a.In(r.Units())+".")
	}
	return s
}

func limits(r *loadpath.Report) *Section {
	s := &Section{ID: "limits", Title: "Limits of the method", Cols: []Column{
		words("limit", "Limit"), words("house", "House"), words("holds_for", "Holds for"), numbers("ratio", "Ratio", "", 3), words("source", "From"),
	}}
	for _, b := range r.Bounds() {
		from := "this program's own"
		if b.Source != "" {
			from = b.Source + " (" + string(b.Grade) + ")"
		}
		s.add(word("%s", b.What), either(loadpath.Amount(units.Imperial, b.Value, b.Unit), loadpath.Amount(r.Units(), b.Value, b.Unit)), either(b.Range(units.Imperial), b.Range(r.Units())), number(b.Ratio()), word("%s", from))
	}
	for _, x := range r.Limits {
		s.Notes = append(s.Notes, "Outside, and counted as a failed check: "+x+".")
	}
	return s
}

func combinations(r *loadpath.Report) *Section {
	s := &Section{ID: "combinations", Title: "Load combinations", Cols: []Column{
		words("use", "For"), words("combination", "Combination"), words("source", "From"),
	}}
	s.add(word("demand, allowable stress level (ASD), compared with allowable loads"), word("%s", loadpath.ASD.Name), word("%s", r.Source(loadpath.ASD)))
	s.add(word("demand at strength level, told beside it"), word("%s", loadpath.Strength.Name), word("%s", r.Source(loadpath.Strength)))
	return s
}
