package calculation

import "galewright/plan/loadpath"

// uplift lists the uplift lines, the ridges and the account of each wind case.
func uplift(r *loadpath.Report) []*Section {
	return []*Section{bearings(r), ridges(r), balance(r)}
}

func bearings(r *loadpath.Report) *Section {
	s := &Section{ID: "uplift", Title: r.Placement.House.Plan.InRoofWords("Uplift at rafter bearings, the largest of each wall"), Cols: []Column{
		words("on", "On"), words("roof", "Roof"), numbers("joints", "Joints", "", 0), words("at", "Largest at"), numbers("wind_lb", "Wind, strength", "lb", 0), numbers("dead_lb", "Dead", "lb", 0), numbers("net_asd_lb", "Net ASD", "lb", 0), numbers("width_ft", "Width", "ft", 2), numbers("net_asd_plf", "Net ASD", "plf", 0), words("case", "Case"),
	}}
	for _, u := range r.Uplift {
		on := "porch beam"
		if u.Wall != nil {
			on = "wall " + u.Wall.Name
		}
		f := u.Largest
		s.add(word("%s", on), word("%s", u.Roof), number(float64(u.Joints)), word("%s", u.At), number(f.W), number(f.D), number(loadpath.ASD.W*f.W-loadpath.ASD.D*f.D), blankZero(u.Width/12), blankZero(u.PerFoot), word("%s", u.Case))
	}
	return s
}

// blankZero leaves a number out that there is none of.
func blankZero(v float64) Cell {
	if v == 0 {
		return Cell{}
	}
	return number(v)
}

func ridges(r *loadpath.Report) *Section {
	s := &Section{ID: "ridges", Title: "Ridges: tension across a ridge board, or uplift of a ridge beam", Cols: []Column{
		words("roof", "Roof"), words("ridge", "Ridge"), numbers("joints", "Joints", "", 0), numbers("largest_asd_lb", "Largest, ASD", "lb", 0), words("case", "Case"), numbers("dead_thrust_lb", "Dead thrust", "lb", 0), words("thrust_held", "Thrust"),
	}}
	for _, x := range r.Ridges {
		kind := "board"
		if x.Bearing {
			kind = "beam"
		}
		s.add(word("%s", x.Roof), word("%s", kind), number(float64(x.Joints)), number(x.Tension), word("%s", x.Case), number(x.Thrust), word("%s", x.Note))
	}
	return s
}

// balance is the account of the case that lifts the roof most.
func balance(r *loadpath.Report) *Section {
	s := &Section{ID: "account", Title: "Account of uplift in the case that lifts the roof most, unfactored", Cols: []Column{
		words("story", "Story"), numbers("roof_wind_lb", "Roof, wind", "lb", 0), numbers("roof_dead_lb", "dead", "lb", 0), numbers("above_wind_lb", "From above, wind", "lb", 0), numbers("above_dead_lb", "dead", "lb", 0),
		numbers("weight_lb", "Own weight", "lb", 0), numbers("bases_wind_lb", "Bases, wind", "lb", 0), numbers("bases_dead_lb", "dead", "lb", 0), numbers("no_path_lb", "Nothing below, wind", "lb", 0),
	}}
	worst, most := "", 0.0
	for _, b := range r.Balance {
		if b.Roof.W > most {
			worst, most = b.Case, b.Roof.W
		}
	}
	for _, b := range r.Balance {
		if b.Case == worst && worst != "" {
			s.add(word("%s", b.Level.Name), number(b.Roof.W), number(b.Roof.D), number(b.Above.W), number(b.Above.D), number(b.Weight.D), number(b.Bases.W), number(b.Bases.D), number(b.Elsewhere.W))
		}
	}
	s.Notes = append(s.Notes, "Case: "+worst+".")
	return s
}
