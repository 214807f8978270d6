package calculation

import (
	"math"

	"galewright/plan/loadpath"
)

// geometry lists the sizes that the loads are computed from.
func geometry(r *loadpath.Report) []*Section { return []*Section{levels(r), roofs(r)} }

func levels(r *loadpath.Report) *Section {
	s := &Section{ID: "levels", Title: "Stories", Cols: []Column{
		words("story", "Story"), numbers("floor_ft", "Floor at", "ft", 2), numbers("plates_ft", "Plates at", "ft", 2),
		numbers("plate_height_ft", "Plate height", "ft", 2), numbers("floor_depth_ft", "Floor depth", "ft", 2), words("joists", "Joists"),
	}}
	for _, l := range r.Placement.House.Plan.Levels {
		joists := l.Joists.Text
		if l.Joists.Depth == 0 {
			joists = "slab"
		}
		s.add(word("%s", l.Name), number(l.Floor/12), number(l.Top()/12), number(l.PlateHeight/12), number(l.FloorDepth/12), word("%s", joists))
	}
	b := r.Basis
	s.Notes = append(s.Notes, "Heights are above grade. The main roof sets mean roof height, eave and angle; all exterior walls set length and width (see the basis).")
	if b.Length > 0 && b.Width > 0 {
		s.Notes = append(s.Notes, "h / least horizontal dimension "+loadpath.Number(r.Units(), b.Height/math.Min(b.Length, b.Width), "")+".")
	}
	return s
}

func roofs(r *loadpath.Report) *Section {
	s := &Section{ID: "roofs", Title: "Roofs", Cols: []Column{
		words("roof", "Roof"), words("kind", "Kind"), words("over", "Over story"), words("ridge", "Ridge along"), numbers("rise_in_12", "Rise in 12", "", 2), numbers("angle_deg", "Angle", "deg", 2),
		numbers("eave_overhang_ft", "Eave", "ft", 2), numbers("rake_overhang_ft", "Rake", "ft", 2), numbers("ridge_ft", "Ridge at", "ft", 2), words("rafters", r.Placement.House.Plan.InRoofWords("Rafters")),
	}}
	h := r.Placement.House
	for _, x := range h.Plan.Roofs {
		s.add(word("%s", x.Name), word("%s", x.Kind), word("%s", x.Over.Name), word("%s", x.Ridge), number(x.Pitch), number(x.Angle()), number(x.Overhang/12), number(x.Rake/12), number(h.RidgeHeight(x)/12), word("%s", x.Rafters.Text))
	}
	return s
}
