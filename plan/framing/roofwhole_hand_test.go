package framing

import (
	"fmt"
	"strings"

	"galewright/plan"
	"galewright/plan/geom"
)

// three prints a point to the thousandth.
func three(v geom.Vec3) string { return fmt.Sprintf("%.3f %.3f %.3f", v.X, v.Y, v.Z) }

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
		out = append(out, fmt.Sprintf("%s, %s %s: %s to %s, %.3f to %.3f high, %.3f long, %.2f in³",
			m.ID, m.Section.Text, m.Ref, three(m.A), three(m.B), m.Z0, m.Z1, m.Length, wood))
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
		s := fmt.Sprintf("%s at %s, station %.3f, serves %.3f:", j.ID, three(j.At), j.Station, j.Tributary)
		for _, m := range j.Members {
			s += " " + m.ID
		}
		if o := j.Overhang; o != nil {
			s += fmt.Sprintf("; %.3f out, %.3f back", o.Out, o.Back)
		}
		if j.Gap > 0 {
			s += fmt.Sprintf("; gap %.4f", j.Gap)
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
			out = append(out, fmt.Sprintf("%s from %.3f %.3f, run %.3f at %.2f: %.3f to %.3f, %.3f wide", s.Member.ID, s.Low.X, s.Low.Y, s.Run, s.Tan, s.From, s.To, s.Width))
		}
	}
	return strings.Join(out, "\n")
}

// solids lists the boxes around the parts of a member and the wood in each.
func solids(m *Member) string {
	var out []string
	for _, s := range m.Solid {
		lo, hi := s.Bounds()
		out = append(out, fmt.Sprintf("%s to %s, %.3f in³", three(lo), three(hi), s.Volume()))
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
