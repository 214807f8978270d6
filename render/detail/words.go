package detail

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/placement"
	"galewright/plan/steel"
	"galewright/plan/wood"
	"galewright/render/page"
)

// size says how big an item is, as the catalog has it.
func (s *shot) size(c *page.Context) string {
	it := s.Item
	var w []string
	if it.Gauge != "" {
		w = append(w, page.GaugeText(it.Gauge))
	} else if it.Thickness > 0 {
		w = append(w, c.Length(it.Thickness)+" thick")
	}
	if it.Width > 0 {
		w = append(w, c.Length(it.Width)+" wide")
	}
	if it.Length > 0 {
		w = append(w, c.Length(it.Length)+" long")
	} else if cut := s.Body.Piece.Cut; cut > 0 {
		w = append(w, "cut "+c.Length(cut))
	}
	if it.Rod > 0 {
		w = append(w, c.Length(it.Rod)+" rod")
	}
	if it.Grade != "" {
		w = append(w, it.Grade)
	}
	return strings.Join(append(w, page.Material(it)), ", ")
}

// words are the notes below a detail: where, how many, when; the nails; what
// the catalog notes.
func (s *shot) words(c *page.Context) (out []string) {
	out = append(out, s.where())
	out = append(out, s.nails(c)...)
	for _, r := range s.Body.Rods {
		out = append(out, s.rod(c, r))
	}
	if x := s.cutting(c); x != "" {
		out = append(out, x)
	}
	if n := s.Item.Note; n != "" {
		out = append(out, "Note: "+strings.TrimSuffix(n, ".")+".")
	}
	return out
}

// where says at which joints a condition is, how often, and when it goes on.
func (s *shot) where() string {
	at := fmt.Sprintf("At %s, %s", s.Body.Piece.Joint.Kind, plan.Counted(len(s.Pieces), "place"))
	if s.Both {
		at += " (some the opposite hand)"
	}
	at += "; the one shown is " + s.Body.Piece.Tag
	if f := s.Body.Piece.Face; f != "" && f != plan.Through {
		at += ", " + string(f) + " face"
	}
	return at + ". Install " + string(s.Item.Phase.Name) + "."
}

// nails says of each end how many fasteners of which size go into which member,
// and where the holes are.
func (s *shot) nails(c *page.Context) (out []string) {
	for i, e := range s.Item.Ends() {
		if e.Count <= 0 || i >= len(s.Body.Piece.Ends) {
			continue
		}
		line := plan.CountedFasteners(e.Count, e.Nail)
		if e.Part != "" && e.Part != "all" {
			line += " " + e.Part
		}
		line += ", " + page.Coating(e.Coating)
		line += ": " + s.into(i)
		if n := s.Body.Piece.LeftOut(i); n > 0 {
			line += "; " + steel.LeftOutText(n, e)
		}
		if e.Holes > e.Count {
			line += fmt.Sprintf("; %d holes of %d stay open", e.Holes-e.Count, e.Holes)
		}
		line += "; " + s.pattern(c, i)
		if e.Fill != "" {
			line += "; in " + e.Fill
		}
		if e.HandOnly {
			line += "; driven by hand"
		}
		if !slices.Contains(out, line+".") {
			out = append(out, line+".")
		}
	}
	return out
}

// into says which members the fasteners of an end go into.
func (s *shot) into(end int) string {
	var names []string
	n := map[string]int{}
	for _, f := range s.Body.Fasteners {
		if f.End != end {
			continue
		}
		name := "no wood"
		if len(f.Runs) > 0 {
			name = "the " + memberName(f.Runs[0].Member)
		}
		if n[name] == 0 {
			names = append(names, name)
		}
		n[name]++
	}
	for i, name := range names {
		names[i] = fmt.Sprintf("%d in %s", n[name], name)
	}
	return strings.Join(names, ", ")
}

// pattern says where the holes of an end are: from the steel's end, apart, in
// rows; and how near the wood's edge and end they come.
func (s *shot) pattern(c *page.Context, end int) string {
	e := s.Item.Ends()[end]
	start := s.Body.Piece.Ends[end].Starts
	if len(start) == 0 {
		return "no holes"
	}
	p := s.Body.Pattern(end)
	text := "first hole " + c.Length(p.EndDist) + " from the end of the steel, " + c.Length(p.Spacing) + " apart"
	if p.Rows > 1 {
		text += fmt.Sprintf(" in %d rows", p.Rows)
		if p.Stagger {
			text += ", staggered"
		}
	}
	if e.Spacing == 0 || e.EndDist == 0 {
		text += " (the catalog gives no full pattern: drawn by one rule for all)"
	}
	edge, ends := math.Inf(1), math.Inf(1)
	for _, f := range s.Body.Fasteners {
		if f.End == end && len(f.Runs) > 0 {
			edge, ends = min(edge, f.Margin.Edge), min(ends, f.Margin.End)
		}
	}
	if !math.IsInf(edge, 1) {
		text += "; nearest the wood's edge " + c.Length(edge) + ", its end " + c.Length(ends)
	}
	return text
}

// cutting says what to cut for a strap out of the members and the floor that it
// passes, members cut alike together.
func (s *shot) cutting(c *page.Context) string {
	var cuts []string
	in := map[string][]string{}
	add := func(cut, where string) {
		if in[cut] == nil {
			cuts = append(cuts, cut)
		}
		if !slices.Contains(in[cut], where) {
			in[cut] = append(in[cut], where)
		}
	}
	for _, x := range s.Body.Slots {
		which := "the "
		if w := s.Body.Piece.Joint.Wall; w != nil && math.Abs(steel.Grain(x.Member).Flat().Dot(w.Frame().D)) < 0.5 {
			which = "the crossing wall's "
		}
		add(x.Words(c.Length), which+memberName(x.Member))
	}
	if h := floorHole(c.Placement, s.Body); h != nil {
		add("a hole "+c.Length(max(h.Size[0], h.Size[1]))+" by "+c.Length(min(h.Size[0], h.Size[1])), "the subfloor")
	}
	for i, cut := range cuts {
		cuts[i] = "in " + strings.Join(in[cut], ", ") + " " + cut
	}
	if len(cuts) == 0 {
		return ""
	}
	return "Cut for it, against the face it lies on: " + strings.Join(cuts, "; ") + "."
}

// floorHole returns the hole that a strap takes in a subfloor, or nil.
func floorHole(p *placement.Placement, b *steel.Body) *placement.Hole {
	if p == nil || !b.Piece.Item.Kind.Strap {
		return nil
	}
	i := slices.IndexFunc(p.Holes, func(h *placement.Hole) bool { return h.Piece == b.Piece })
	if i < 0 {
		return nil
	}
	return p.Holes[i]
}

// rod says how long a rod is cut and what it bears on.
func (s *shot) rod(c *page.Context, r *steel.Rod) string {
	ends := []string{string(r.Ends[0].Kind), string(r.Ends[1].Kind)}
	for i, e := range r.Ends {
		if e.Kind == steel.OnWasher {
			ends[i] = fmt.Sprintf("%s washer on the %s", cmp.Or(washerWords(c, e), "cut"), memberName(e.Member))
		}
		if e.Kind == steel.Nothing {
			ends[i] = "bears on NOTHING"
		}
	}
	return fmt.Sprintf("Rod %s, %s long; upper or outer end: %s; other end: %s. It passes: %s.", c.Length(r.Diameter), c.Length(r.Length()), ends[0], ends[1], wood.Passed(r.Passes))
}

// washerWords says how large a square washer is.
func washerWords(c *page.Context, e steel.Bearing) string {
	if e.Washer == 0 {
		return ""
	}
	return c.Length(e.Washer) + " square"
}
