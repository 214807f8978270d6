package calculation

import (
	"galewright/plan/loadpath"
)

// cladding lists components and cladding, and what they ask of gable ends.
func cladding(r *loadpath.Report) []*Section {
	return []*Section{zones(r), overhangs(r), gables(r)}
}

func zones(r *loadpath.Report) *Section {
	s := &Section{ID: "cladding", Title: "Components and cladding, strength level", Cols: []Column{
		words("figure", "Figure"), words("zone", "Zone"), numbers("area_sq_ft", "Area", "ft²", 0), numbers("gcp_positive", "GCp +", "", 2), numbers("gcp_negative", "GCp -", "", 2), numbers("positive_psf", "p +", "psf", 1), numbers("negative_psf", "p -", "psf", 1),
	}}
	for _, f := range r.Figures() {
		for _, z := range f.Zones {
			for _, area := range loadpath.CladAreas() {
				c := r.Basis.Cladding(z, area)
				s.add(word("%s (%s)", f.Name, f.Grade), word("%s", c.Zone), number(area), number(c.GCpPositive), number(c.GCpNegative), number(c.Positive), number(c.Negative))
			}
		}
		if f.Note != "" {
			s.Notes = append(s.Notes, f.Name+": "+f.Note+".")
		}
	}
	for _, x := range r.ZoneWidths() {
		s.Notes = append(s.Notes, "Zones: "+x+".")
	}
	s.Notes = append(s.Notes, r.DeckZones()...)
	return s
}

func overhangs(r *loadpath.Report) *Section {
	s := &Section{ID: "overhangs", Title: "Overhangs as components and cladding: net uplift of both faces, strength level", Cols: []Column{
		words("zone", "Zone"), numbers("area_sq_ft", "Area", "ft²", 0), numbers("gcp_net", "GCp net", "", 2), numbers("up_psf", "Up", "psf", 1), words("source", "From"),
	}}
	for _, o := range r.Overhangs() {
		s.add(word("%s", o.Zone), number(o.Area), number(o.GCp), number(o.Up), word("%s (%s)", o.Source, o.Grade))
	}
	return s
}

func gables(r *loadpath.Report) *Section {
	s := &Section{ID: "gable_ends", Title: "Gable walls and rakes as components and cladding", Cols: []Column{
		words("wall", "Wall"), words("zone", "Zone"), numbers("tallest_stud_ft", "Tallest stud", "ft", 2), numbers("stud_end_out_of_plane_asd_lb", "Its ends, across, ASD", "lb", 0), words("roof", "Roof"), numbers("rake_ft", "Rake", "ft", 2), numbers("rake_up_psf", "Rake, up", "psf", 1), numbers("rake_asd_plf", "Rake, ASD", "plf", 0),
	}}
	for _, g := range r.GableEnds() {
		s.add(word("%s", g.Wall), word("%s", g.Zone), number(g.Tall/12), number(g.Push), word("%s", g.Roof), number(g.Rake/12), number(g.Up), number(g.PerFt))
	}
	return s
}
