package calculation

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/loadpath"
)

// lateral lists level force from what the wind blows on to the segments.
func lateral(r *loadpath.Report) []*Section {
	return []*Section{bands(r), stories(r), decks(r), lines(r), eaves(r), segments(r), foundation(r), twist(r)}
}

// across is the axis across the wind.
func across(a plan.Axis) plan.Axis {
	if a == plan.AxisX {
		return plan.AxisY
	}
	return plan.AxisX
}

func bands(r *loadpath.Report) *Section {
	s := &Section{ID: "story_wind", Title: "Wind on the edge of each diaphragm, strength level", Cols: []Column{
		words("story", "Story"), words("wind_along", "Wind along"), words("from", "From"), words("between", "Between"), numbers("pressure_psf", "p", "psf", 2), numbers("height_ft", "Height", "ft", 2), numbers("load_plf", "Load", "plf", 1), numbers("force_lb", "Force", "lb", 0), words("pressure_is", "p is"),
	}}
	for _, st := range r.Stories {
		for _, b := range st.Bands {
			s.add(word("%s", st.Level.Name), word("%s", st.Axis), word("%s", b.From), word("%s = %s to %s", across(st.Axis), r.Units().Length(b.Lo), r.Units().Length(b.Hi)), number(b.Psf), number(b.High), number(b.Load), number(b.Load*(b.Hi-b.Lo)/12), word("%s", b.Why))
		}
	}
	s.Notes = append(s.Notes, "Walls: half the story below the diaphragm, the floor's depth and half the story above. Roofs: from the eaves' lower edges to the ridge and from rake to rake, with the depth of the rakes' edges; along the ridge a gable over its wall with the mean of its height, and boxed eaves beside it.")
	return s
}

func stories(r *loadpath.Report) *Section {
	s := &Section{ID: "story_shear", Title: "Story shear: what enters at each level, and what has come down to it", Cols: []Column{
		words("story", "Story"), words("wind_along", "Wind along"), numbers("walls_lb", "Walls", "lb", 0), numbers("roofs_lb", "Roofs", "lb", 0), numbers("enters_lb", "Enters", "lb", 0), numbers("above_lb", "From above", "lb", 0), numbers("total_lb", "Cumulative, strength", "lb", 0), numbers("lines_lb", "Sum of the lines", "lb", 0), numbers("asd_lb", "ASD", "lb", 0), words("case", "Case"),
	}}
	for _, x := range r.Stories {
		s.add(word("%s", x.Level.Name), word("%s", x.Axis), number(x.Wall), number(x.Roof), number(x.Deck), number(x.Above), number(x.Total), number(x.ByLines), number(x.ASD), word("%s", x.Case))
	}
	return s
}

// decks lists the shear and the chord force of each deck between the lines under it.
func decks(r *loadpath.Report) *Section {
	s := &Section{ID: "decks", Title: "Decks between the lines: shear and chord, strength level", Cols: []Column{
		words("story", "Deck over"), words("wind_along", "Wind along"), words("from", "From"), words("to", "To"), numbers("depth_ft", "Depth", "ft", 2), numbers("from_lb", "To the line at its low end", "lb", 0), numbers("to_lb", "To that at its high end", "lb", 0), numbers("shear_plf", "Unit shear", "plf", 0), numbers("asd_plf", "ASD", "plf", 0), numbers("chord_lb", "Chord", "lb", 0), words("case", "Case"),
	}}
	for _, b := range r.Bays {
		end := func(i int, at float64) Cell {
			return word("%s = %s", cmp.Or(b.Lines[i], "free edge"), r.Units().Length(at))
		}
		s.add(word("%s", b.Level.Name), word("%s", plan.Axes[b.Axis]), end(0, b.Lo), end(1, b.Hi), number(b.Depth/12), number(b.Ends[0]), number(b.Ends[1]), number(b.Unit()), number(loadpath.ASD.W*b.Unit()), number(b.Chord()), word("%s", b.Case))
	}
	s.Notes = append(s.Notes, "Simple beams between the lines, as deep as the house is where it is least between them. Openings in floors are not taken out. Roof and floors are checked by the nails that [deck] and [floor] order.")
	return s
}

func lines(r *loadpath.Report) *Section {
	s := &Section{ID: "shear_lines", Title: "Shear wall lines, strength level", Cols: []Column{
		words("story", "Story"), words("line", "Line"), words("at", "At"), words("serves", "Diaphragm it serves"), numbers("diaphragm_lb", "Diaphragm", "lb", 0), numbers("above_lb", "From above", "lb", 0), numbers("force_lb", "Force", "lb", 0), numbers("collector_lb", "Largest collector", "lb", 0), numbers("drift_in", "Drift, ASD", "in", 2), words("shared", "Shared by"), words("case", "Case"),
	}}
	for _, x := range r.Lines {
		lo, hi := r.Tributary(x)
		ax := plan.Axes[1-x.Axis]
		s.add(word("%s", x.Level.Name), word("%s", x.Name), word("%s = %s", ax, r.Units().Length(x.At)), word("%s = %s to %s", ax, r.Units().Length(lo), r.Units().Length(hi)), number(x.Deck), number(x.Brought), number(x.Force), number(largestDrag(x)), blankZero(x.Drift()), word("%s", sharedBy(x)), word("%s", x.Case))
		if note := "Shared " + x.SharedBy() + "."; !slices.Contains(s.Notes, note) {
			s.Notes = append(s.Notes, note)
		}
	}
	return s
}

// eaves lists how the roof's deck hands its shear to the plates under it.
func eaves(r *loadpath.Report) *Section {
	in := r.Placement.House.Plan.InRoofWords
	s := &Section{ID: "eaves", Title: in("Eaves: shear of the roof's deck into the plates under rafters, ASD"), Cols: []Column{
		words("story", "Story"), words("line", "Line"), words("over", "Over"), numbers("asd_plf", "Shear", "plf", 0), numbers("rafters", in("Rafters"), "", 0), numbers("each_lb", "At each", "lb", 0), numbers("rise_in", "Plates to deck", "in", 2), numbers("roll_lb_in", "Turns each over", "lb-in", 0), words("held_by", "Held by"),
	}}
	for _, e := range r.Eaves() {
		s.add(word("%s", e.Line.Level.Name), word("%s", e.Line.Name), word("%s", r.Units().Length(e.Long)), number(e.PerFoot), number(float64(e.Rafters)), number(e.Each), number(e.Rise), number(e.Roll()), word("%s", in(e.Held())))
	}
	s.Notes = append(s.Notes, in("Through full blocks the shear goes by nails alone, and turns no rafter over. Elsewhere it goes through each rafter on edge; what turns that over is told and not compared with anything. The nails are in the check deck-shear."))
	return s
}

// sharedBy says in a word how a line's force goes to its segments.
func sharedBy(x *loadpath.LineShear) string {
	if x.ByLength {
		return "length"
	}
	return "stiffness"
}

// largestDrag is the largest collector force of a line, lb at strength level.
func largestDrag(x *loadpath.LineShear) (lb float64) {
	for _, d := range x.Drag {
		lb = math.Max(lb, math.Abs(d.Force))
	}
	return lb
}

func segments(r *loadpath.Report) *Section {
	s := &Section{ID: "segments", Title: "Sheathed segments", Cols: []Column{
		words("story", "Story"), words("line", "Line"), words("segment", "Segment"), words("length", "Length"), numbers("counts_ft", "Counts", "ft", 2), numbers("stiffness_lb_per_in", "Stiffness", "lb/in", 0), numbers("share", "Share", "", 3), numbers("shear_lb", "Shear, strength", "lb", 0), numbers("asd_plf", "ASD", "plf", 0),
		numbers("moment_lb_ft", "Moment", "lb-ft", 0), numbers("lever_arm_ft", "Lever arm", "ft", 2), numbers("end_tension_lb", "End tension, strength", "lb", 0),
	}}
	for _, x := range r.Lines {
		for _, g := range x.Segments {
			s.add(word("%s", x.Level.Name), word("%s", x.Name), word("%s", g.Name), word("%s", r.Units().Length(g.Length)), number(g.Working/12), blankZero(g.Stiff), number(g.Share), number(g.V), number(g.Demand), number(g.Moment/12), number(g.Arm()/12), number(g.Lifts))
		}
	}
	s.Notes = append(s.Notes, "Moment: the segment's shear times the height at which it acts, with that of the segments which stand on it over the floor between. End tension: that moment over the lever arm, and the end tension of the segments which stand on it.")
	return s
}

func foundation(r *loadpath.Report) *Section {
	s := &Section{ID: "foundation_shear", Title: "Shear at the foundation, strength level", Cols: []Column{
		words("wind_along", "Wind along"), numbers("lowest_story_lb", "Lowest story", "lb", 0), numbers("walls_lb", "Lower half of its walls", "lb", 0), numbers("floor_edge_lb", "Floor edge", "lb", 0), numbers("girders_lb", "Girders", "lb", 0), numbers("total_lb", "Total", "lb", 0), numbers("asd_lb", "ASD", "lb", 0), words("case", "Case"),
	}}
	for _, b := range r.Base {
		if b.Axis != "" {
			s.add(word("%s", b.Axis), number(b.Story), number(b.Walls), number(b.Edge), number(b.Girders), number(b.Total), number(loadpath.ASD.W*b.Total), word("%s", b.Case))
		}
	}
	s.Notes = append(s.Notes, "Wind on piles and on what is between them is not in it.")
	return s
}

func twist(r *loadpath.Report) *Section {
	s := &Section{ID: "open_fronts", Title: "Torsion of open fronts, reported and not added", Cols: []Column{words("what", "What")}}
	for _, x := range r.Torsion {
		s.add(word("%s", x))
	}
	return s
}
