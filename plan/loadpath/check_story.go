package loadpath

import "fmt"

// storyShear tells of stories and lines that nothing holds sideways: their
// shear is a gap of the path, not a line of numbers that ends in nothing.
func storyShear(c *Check, a *analysis) (out []*Link) {
	for _, s := range a.lateral.stories {
		if s.NoLine && s.ASD > least {
			l := &Link{
				Check: c, ID: fmt.Sprintf("story %s, along %s", s.Level.Name, s.Axis), Host: "story " + s.Level.Name, Where: "story " + s.Level.Name, Unit: "lb",
				Demand: s.ASD, Strength: s.Total, Case: s.Case, Terms: []Term{{"shear of the story, strength level", s.Total, "lb"}, {"0.6 of it", s.ASD, "lb"}},
			}
			l.close(nil)
			l.Gap = "no sheathed segment in walls along " + string(s.Axis)
			out = append(out, l)
		}
	}
	for _, x := range a.lateral.lines {
		if l := idleLine(c, x); l != nil {
			out = append(out, l)
		}
	}
	return out
}

// idleLine is the link of a line none of whose segments counts, nil of any
// other.
func idleLine(c *Check, x *LineShear) *Link {
	for _, s := range x.Segments {
		if s.Working > 0 {
			return nil
		}
	}
	if ASD.W*x.Force <= least || len(x.Segments) == 0 {
		return nil
	}
	l := &Link{
		Check: c, ID: "line " + x.Name, Wall: x.Segments[0].Wall, Host: "line " + x.Name, Where: fmt.Sprintf("line %s, story %s", x.Name, x.Level.Name), Unit: "lb",
		Demand: ASD.W * x.Force, Strength: x.Force, Case: x.Case, Terms: []Term{{"force of the line, strength level", x.Force, "lb"}, {"0.6 of it", ASD.W * x.Force, "lb"}},
	}
	l.close(nil)
	l.Gap = "none of its segments is wide enough to count"
	return l
}
