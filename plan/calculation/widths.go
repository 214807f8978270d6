package calculation

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/loadpath"
	"galewright/plan/units"
)

// widths lists the tributary widths that the load path used: members alike
// together.
func widths(r *loadpath.Report) []*Section {
	s := &Section{ID: "tributary_widths", Title: "Tributary widths: roof for rafters, length of wall or girder for studs, headers, piles", Cols: []Column{
		words("what", "What"), words("on", "On"), numbers("places", "Places", "", 0), numbers("width_ft", "Width", "ft", 3), words("width", "As measured"), words("first", "First"), words("last", "Last"),
	}}
	var g groups
	for _, x := range r.Placement.House.Shares {
		if m := x.Member; x.Width > 0 && m.Roof != nil {
			g.put(group{many(m.Role), "roof " + m.Roof.Name, round(x.Width)}, m.ID)
		}
	}
	told := map[*framing.Member]bool{} // a stud's top and base serve one width
	for _, j := range r.Placement.House.Joints {
		what, name := servedBy(j), j.ID
		if what == "" || j.Tributary <= 0 {
			continue
		}
		if m := j.First(); what == studs && m != nil {
			if told[m] {
				continue
			}
			told[m], name = true, m.ID
		}
		g.put(group{what, j.HostName(), round(j.Tributary)}, name)
	}
	for i, k := range g.order {
		ids := g.ids[i]
		s.add(word("%s", k.what), word("%s", k.on), number(float64(len(ids))), number(k.width/12), word("%s", r.Units().Length(k.width)), word("%s", ids[0]), word("%s", ids[len(ids)-1]))
	}
	s.Notes = append(s.Notes, "Half way to the neighbors, of the outer ones to the edge of roof or wall; an opening's half goes to the header's end. Hips and valleys gather and have no width of their own.")
	s.Short = g.short(s, r.Units())
	return []*Section{s}
}

// short is one row for all widths of one thing, with how many there are of each.
func (g *groups) short(s *Section, u units.System) *Section {
	out := &Section{ID: s.ID, Title: s.Title, Notes: s.Notes, Cols: []Column{words("what", "What"), words("on", "On"), words("widths", "Width, and how many have it")}}
	at := map[[2]string]int{}
	for i, k := range g.order {
		key := [2]string{k.what, k.on}
		text := fmt.Sprintf("%s x %d", u.Length(k.width), len(g.ids[i]))
		if n, ok := at[key]; ok {
			out.Rows[n][2].Text += "; " + text
			continue
		}
		at[key] = len(out.Rows)
		out.add(word("%s", k.what), word("%s", k.on), word("%s", text))
	}
	return out
}

// studs are the members whose joints at top and base serve one width.
const studs = "studs"

// servedBy says what serves the width of a joint; "" of joints whose width no
// load uses.
func servedBy(j *framing.Joint) string {
	switch j.Kind {
	case plan.StudTop, plan.StudBase:
		return studs
	case plan.OpeningHead, plan.GirderPile:
		return j.Kind.Row().Many
	}
	return ""
}

// group is what is alike of members that serve a width, in.
type group struct {
	what, on string
	width    float64
}

// groups gathers names in the order in which their groups were met.
type groups struct {
	order []group
	ids   [][]string
}

func (g *groups) put(k group, id string) {
	for i, x := range g.order {
		if x == k {
			g.ids[i] = append(g.ids[i], id)
			return
		}
	}
	g.order, g.ids = append(g.order, k), append(g.ids, []string{id})
}

// round is a length to the nearest 1/16 in, as a tape reads.
func round(in float64) float64 { return math.Round(in*16) / 16 }

// many is the word for several members of a role.
func many(r plan.Role) string {
	if r.IsTruss() && r != plan.CornerJack {
		return string(r) + "es"
	}
	return string(r) + "s"
}
