package framing

import (
	"fmt"
	"math"
	"strings"

	"galewright/plan"
	"galewright/plan/geom"
)

// mil rounds to the thousandth, halves up whatever the float's last bit.
func mil(v float64) float64 { return math.Floor(v*1000+0.5+1e-4) / 1000 }

// three prints a point to the thousandth.
func three(v geom.Vec3) string { return fmt.Sprintf("%g %g %g", mil(v.X), mil(v.Y), mil(v.Z)) }

// roofMembers lists the members of the roofs: ID, section and number on the roof plan, ends of
// the center line, foot and top, cut length, and the wood that is left of it, in³.
func roofMembers(h *House) string {
	var out []string
	for _, m := range h.Members {
		if m.Roof == nil {
			continue
		}
		wood := 0.0
		for _, s := range m.Solid {
			wood += s.Volume()
		}
		out = append(out, fmt.Sprintf("%s, %s %s: %s to %s, %g to %g high, %g long, %g in³",
			m.ID, m.Section.Text, m.Ref, three(m.A), three(m.B), mil(m.Z0), mil(m.Z1), mil(m.Length), mil(wood)))
	}
	return strings.Join(out, "\n")
}

// roofJoints lists the joints of the roofs: ID, place, station, length served and members, and of
// an overhang's what it serves.
func roofJoints(h *House) string {
	var out []string
	for _, j := range h.Joints {
		if j.Roof == nil {
			continue
		}
		s := fmt.Sprintf("%s at %s, station %g, serves %g:", j.ID, three(j.At), mil(j.Station), mil(j.Tributary))
		for _, m := range j.Members {
			s += " " + m.ID
		}
		if o := j.Overhang; o != nil {
			s += fmt.Sprintf("; %g out, %g back", mil(o.Out), mil(o.Back))
		}
		if j.Gap > 0 {
			s += fmt.Sprintf("; gap %g", mil(j.Gap))
		}
		if j.Peak {
			s += "; a peak"
		}
		out = append(out, s)
	}
	return strings.Join(out, "\n")
}

// roofShares lists what carries the roof: its run and slope, and the stretch of the eave and the
// width that it serves.
func roofShares(h *House) string {
	var out []string
	for _, s := range h.Shares {
		if !s.Gathers() {
			out = append(out, fmt.Sprintf("%s from %g %g, run %g at %g: %g to %g, %g wide", s.Member.ID, mil(s.Low.X), mil(s.Low.Y), mil(s.Run), mil(s.Tan), mil(s.From), mil(s.To), mil(s.Width)))
		}
	}
	return strings.Join(out, "\n")
}

// solids lists the boxes around the parts of a member and the wood in each.
func solids(m *Member) string {
	var out []string
	for _, s := range m.Solid {
		lo, hi := s.Bounds()
		out = append(out, fmt.Sprintf("%s to %s, %g in³", three(lo), three(hi), mil(s.Volume())))
	}
	return strings.Join(out, "\n")
}

// wallMembers lists members of walls: ID, section, stations, heights and length, and the opening
// and the level that each is of.
func wallMembers(list []*Member) string {
	return sticks(list, func(m *Member) string {
		s := fmt.Sprintf("%g to %g, %g to %g, %g long, %s", mil(m.S0), mil(m.S1), mil(m.Z0), mil(m.Z1), mil(m.Length), m.Level.Name)
		if m.Opening != nil {
			s += ", of " + m.Opening.Name
		}
		if m.Bevel != 0 {
			s += fmt.Sprintf(", at %g°", mil(m.Bevel))
		}
		return s
	})
}

// wallJoints lists joints: ID, place, gap, offset, length served and members, and the faces in
// reach; "nothing below" where there is nothing to tie to.
func wallJoints(list []*Joint) string {
	var out []string
	for _, j := range list {
		s := fmt.Sprintf("%s at %s, gap %g, off %g, serves %g:", j.ID, three(j.At), mil(j.Gap), mil(j.Offset), mil(j.Tributary))
		for _, m := range j.Members {
			s += " " + m.ID
		}
		if len(j.Faces) > 0 {
			s += fmt.Sprint("; ", j.Faces)
		}
		if !j.Below {
			s += "; nothing below"
		}
		out = append(out, s)
	}
	return strings.Join(out, "\n")
}

// ell is an L of two gables of 9 in 12: the main roof over 192 by 96, a lower wing 72 wide and 60
// long to its south; rafters of 2x8 at 24, ridges of 2x10, eaves of 12, rakes of 2 without a fly rafter.
func ell() *plan.Plan {
	p := stories(1)
	w := ring(p, 0, geom.Vec2{}, geom.Vec2{X: 48}, geom.Vec2{X: 48, Y: -60}, geom.Vec2{X: 120, Y: -60}, geom.Vec2{X: 120}, geom.Vec2{X: 192}, geom.Vec2{X: 192, Y: 96}, geom.Vec2{X: 0, Y: 96})
	w[2].Top, w[5].Top, w[7].Top = plan.RakeTop, plan.RakeTop, plan.RakeTop
	for _, r := range []*plan.Roof{
		roofOn(p, "main", plan.GableRoof, plan.AxisX, 9, rect(0, 0, 192, 96)),
		roofOn(p, "wing", plan.GableRoof, plan.AxisY, 9, rect(48, -60, 120, 0)),
	} {
		r.Overhang, r.Rake, r.Spacing = 12, 2, 24
		r.RidgeMember = plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 9.25, Text: "2x10"}
	}
	return p
}
