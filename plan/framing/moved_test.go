package framing

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"galewright/plan"
	"galewright/plan/geom"
)

// movedPlan is a copy of a plan with all of its points moved.
func movedPlan(p *plan.Plan, by geom.Vec2) *plan.Plan {
	q := *p
	q.Walls, q.Porches, q.Roofs, q.Girders = nil, nil, nil, nil
	for _, w := range p.Walls {
		c := *w
		c.From, c.To = w.From.Add(by), w.To.Add(by)
		q.Walls = append(q.Walls, &c)
	}
	for _, x := range p.Porches {
		c := *x
		c.From, c.To = x.From.Add(by), x.To.Add(by)
		q.Porches = append(q.Porches, &c)
	}
	for _, g := range p.Girders {
		c := *g
		c.From, c.To = g.From.Add(by), g.To.Add(by)
		q.Girders = append(q.Girders, &c)
	}
	for _, r := range p.Roofs {
		c := *r
		c.Area = [2]geom.Vec2{r.Area[0].Add(by), r.Area[1].Add(by)}
		q.Roofs = append(q.Roofs, &c)
	}
	return &q
}

// placeInID is what of the ID of a stick of a roof is a place in the world.
var placeInID = regexp.MustCompile(`@-?[0-9./-]+`)

// everything lists all that a house is and all that is told of it, places from an origin.
func everything(h *House, faults plan.Diagnostics, from geom.Vec2) string {
	at := func(p geom.Vec3) string { return three(p.Sub(from.Up(0))) }
	flat := func(p geom.Vec2) string { return at(p.Up(0)) }
	var b strings.Builder
	number := map[*Member]int{nil: -1}
	for i, m := range h.Members {
		number[m] = i
		id := m.ID
		if m.Roof != nil {
			id = placeInID.ReplaceAllString(id, "@")
		}
		fmt.Fprintf(&b, "%d %s %s %s %s: %g %g %g %g, %g, %s %s, %g", i, id, m.Role, m.Section.Text, m.Ref, mil(m.S0), mil(m.S1), mil(m.Z0), mil(m.Z1), mil(m.Length), at(m.A), at(m.B), mil(m.Bevel))
		for _, s := range m.Solid {
			lo, hi := s.Bounds()
			fmt.Fprintf(&b, "; %s %s %g", at(lo), at(hi), mil(s.Volume()))
		}
		b.WriteString("\n")
	}
	for _, j := range h.Joints {
		fmt.Fprintf(&b, "%s %s %g: %s, %g %g %v %g %v %v %v", j.ID, j.Kind, mil(j.Station), at(j.At), mil(j.Gap), mil(j.Offset), j.Below, mil(j.Tributary), j.Faces, j.Seat, j.Peak)
		for _, m := range j.Members {
			fmt.Fprintf(&b, " %d", number[m])
		}
		if o := j.Overhang; o != nil {
			fmt.Fprintf(&b, "; %g %g %g", mil(o.Space), mil(o.Out), mil(o.Back))
		}
		if s := j.Share; s != nil {
			fmt.Fprintf(&b, "; %s %g", flat(s.Low), mil(s.Width))
		}
		b.WriteString("\n")
	}
	for _, s := range h.Shares {
		shift := from.Along(s.EaveAxis())
		fmt.Fprintf(&b, "%d %s %g %g, %g %g: %g %v\n", number[s.Member], flat(s.Low), mil(s.Run), mil(s.Tan), mil(s.From-shift*sign1(s.Width)), mil(s.To-shift*sign1(s.Width)), mil(s.Width), s.Face != nil)
	}
	for _, l := range h.Lines {
		fmt.Fprintln(&b, l.Name, flat(l.Frame.Origin), l.Shift)
	}
	for _, f := range h.Roof {
		for i, p := range f.Outline {
			fmt.Fprint(&b, at(p), f.Edges[i].Kind, " ")
		}
		fmt.Fprintln(&b, f.Roof.Name)
	}
	for _, t := range h.Ties {
		fmt.Fprintln(&b, mil(t.Along), number[t.Rafters[0]], number[t.Rafters[1]], len(t.Pieces), len(t.Splices), len(t.Walls))
		for _, w := range t.Walls {
			fmt.Fprintln(&b, w.Wall.Name, mil(w.Station), mil(w.Along))
		}
	}
	for _, x := range h.Blocks {
		fmt.Fprintln(&b, number[x.Member], number[x.Plate], number[x.Rafters[0]], number[x.Rafters[1]], mil(x.Station), x.Full)
	}
	for _, d := range faults {
		fmt.Fprintln(&b, placeInID.ReplaceAllString(d.String(), "@"))
	}
	return b.String()
}

// sign1 is 1 for what serves any roof, whose stretch of the eave is a place, else 0.
func sign1(width float64) float64 {
	if width > 0 {
		return 1
	}
	return 0
}

// somePlans are small plans of all sorts, sound ones and some with faults.
func somePlans() map[string]func() *plan.Plan {
	out := map[string]func() *plan.Plan{
		"two stories": storyPlan, "L": ell, "bay": bayPlan, "high house": func() *plan.Plan { return highHouse(7) }, "joists": wide, "lean-to": againstHouse,
		"elevated": func() *plan.Plan { return elevated(2) },
	}
	for _, c := range roofHouses {
		out[c.name] = c.plan
	}
	for _, c := range faultTexts {
		out["fault: "+c.name] = func() *plan.Plan { return c.plan }
	}
	for _, c := range roofFaultTexts {
		out["roof fault: "+c.name] = func() *plan.Plan { return c.plan }
	}
	return out
}

// A house is the same wherever it stands, member by member and joint by joint, and so is what is told.
func TestAMovedHouseIsTheSame(t *testing.T) {
	for name, p := range somePlans() {
		if name == "cross of two gables" {
			continue // its four valleys meet at one point, and their order is that of rounding
		}
		t.Run(name, func(t *testing.T) {
			h, faults := Frame(p())
			want := everything(h, faults, geom.Vec2{})
			for _, by := range []geom.Vec2{{X: 1000, Y: 400}, {X: -480, Y: 96}} {
				h, faults := Frame(movedPlan(p(), by))
				assert.Equal(t, want, everything(h, faults, by), "%v", by)
			}
		})
	}
}
