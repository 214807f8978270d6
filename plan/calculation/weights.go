package calculation

import "galewright/plan/loadpath"

// weights lists dead loads with their sources, and what they come to.
func weights(r *loadpath.Report) []*Section {
	s := &Section{ID: "dead_loads", Title: "Dead loads, of the part's own surface", Cols: []Column{
		words("part", "Part"), words("name", "Of"), numbers("weight_psf", "Weight", "psf", 2), words("source", "From"),
	}}
	for _, d := range r.Dead {
		weight := number(d.Weight)
		if d.Weight == 0 {
			weight = word("by size")
		}
		s.add(word("%s", d.Part), word("%s", d.Name), weight, word("%s", d.Source))
	}
	t := &Section{ID: "dead_loads_used", Title: "Dead loads as used, framing members in them", Cols: []Column{
		words("part", "Part"), words("on", "On"), numbers("weight_psf", "Weight", "psf", 2), words("surface", "Surface"),
	}}
	for _, m := range r.Masses() {
		t.add(word("%s", m.Part), word("%s", m.On), number(m.Psf), word("%s", m.How))
	}
	t.Notes = append(t.Notes, "Dead load relieves uplift by 0.6 of it, and only at joints below it.")
	return []*Section{s, t}
}
