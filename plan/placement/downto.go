package placement

import (
	"fmt"
	"math"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/units"
)

// downTo lays a strap from a stud over sole plate and rim down on the girder
// below: flat, so that the faces of all of them must be flush. Its lower lap is
// what the nails of that end take, the last as far below the girder's top as the
// first is from the steel's end; all else lies on the stud.
func (x *placer) downTo(w want, l link, f geom.Frame, depth float64) (Lie, *plan.Diagnostic) {
	m := role(l.joint, w.to)
	if m == nil {
		return Lie{}, &plan.Diagnostic{
			Code: "no-way-to-lie", Summary: fmt.Sprintf("no %s lies under the %s for the strap to go down to", w.to, l.above.Role),
			Mend: "run one there, or leave these joints out with except and give them a rule without to",
		}
	}
	if w.face != plan.Inside {
		w.face = plan.Outside
	}
	if fault := x.flush(w, f, depth, m, role(l.joint, plan.Rim)); fault != nil {
		return Lie{}, fault
	}
	_, end := w.item.EndsOn(l.above, m)
	low := max(hardware.Spread(end.Fasteners, w.item.Width)+hardware.MinEnd, min(w.item.Lap, m.Z1-m.Z0))
	gap := l.zAbove - m.Z1
	total, cut := w.cut(gap, w.item.Lap+low)
	low = min(low, m.Z1-m.Z0, max(total-gap, 0))
	g := facingOf(f, l.s0, l.s1, depth, w.face)
	off := w.spread()
	up := total - gap - low
	b := geom.Band{w.plate(g.n, g.at(m.Z1-low, off), g.at(l.zAbove+up, off))}
	lie := x.strap(Lie{Face: w.face, Gap: gap, Cut: cut}, b, lap{l.above, up, true}, lap{m, low, false})
	lie.Station = stationOf(f, lie.Path)
	return lie, nil
}

// flush returns a fault if the face of one of the members does not lie in that
// of the wall's studs.
func (x *placer) flush(w want, f geom.Frame, depth float64, members ...*framing.Member) *plan.Diagnostic {
	s, _ := f.Local(w.joint.At.Flat())
	t := 0.0
	if w.face == plan.Inside {
		t = depth
	}
	for _, m := range present(members...) {
		g := sideOf(f, s, x.packed(m, f, s, w.face), w.face)
		out := (g.t - t) * f.In.Up(0).Dot(g.n)
		if math.Abs(out) <= play {
			continue
		}
		way := "behind"
		if out > 0 {
			way = "in front of"
		}
		return &plan.Diagnostic{
			Code: "faces-not-flush", Summary: fmt.Sprintf("the %s face of the %s lies %s %s the stud's: a strap does not lie flat on both", w.face, m.Role, x.units().Length(math.Abs(out)), way),
			Mend: fmt.Sprintf("move the %s so that the faces are flush%s, or leave these joints out with except and tie stud, rim and girder by pieces of their own", m.Role, packs(x.units(), m, out)),
		}
	}
	return nil
}

// packed returns the packing that lies against a girder's face at station s of a
// wall's frame, or the member itself.
func (w *world) packed(m *framing.Member, f geom.Frame, s float64, face plan.Face) *framing.Member {
	if m.Role != plan.GirderBeam {
		return m
	}
	g := sideOf(f, s, m, face)
	for _, p := range w.packing {
		lo, hi := extent(p, f.D.Up(0))
		at := s + f.Origin.Dot(f.D)
		o := sideOf(f, s, p, face)
		if at > lo-touch && at < hi+touch && math.Abs(g.out(o)-p.Section.Breadth) < touch && p.Z1 > m.Z0 && p.Z0 < m.Z1 {
			return p
		}
	}
	return m
}

// packs says how packing would bring a girder's face out by so much, in.
func packs(u units.System, m *framing.Member, out float64) string {
	if m.Role != plan.GirderBeam || out > 0 {
		return ""
	}
	return fmt.Sprintf(`, pack it out (packing = "%sin" of the girder)`, strings.TrimSuffix(u.Length(-out), `"`))
}
