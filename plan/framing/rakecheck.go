package framing

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/geom"
)

// checkRake tells whether a rake wall can follow the roof it stands under; if
// not, it faults it. The roof's planes go on past its eaves in thought only: a
// wall cut to them there would run out to nothing.
func (b *builder) checkRake(w *framedWall, r *plan.Roof) bool {
	for i, p := range []geom.Vec2{w.From, w.To} {
		out := past(r.Area, p)
		if out <= max(r.Overhang, r.Rake)+near {
			continue
		}
		end := [2]string{"start", "end"}[i]
		b.wallFault(w.Wall, "rake-past-roof",
			fmt.Sprintf("has a rake top and reaches %s out from under roof %s at its %s", b.inches(out), r.Name, end),
			fmt.Sprintf("end it at the roof, or give roof %s the area of its walls", r.Name))
		return false
	}
	if room := min(w.seatAt(0), w.seatAt(w.s1)) - w.base; room < plate {
		b.wallFault(w.Wall, "wall-too-low", fmt.Sprintf("has a rake top that leaves %s for its studs at the low end", b.inches(max(room, 0))),
			"raise the roof's plate, or lower the wall's floor")
		return false
	}
	return true
}

// past returns how far p lies outside the area, in.
func past(area [2]geom.Vec2, p geom.Vec2) float64 {
	return max(area[0].X-p.X, area[0].Y-p.Y, p.X-area[1].X, p.Y-area[1].Y, 0)
}

// seatAt returns the head of the studs of a rake wall at station s, on its
// outside face: the lowest plane less the two plates. Infinite without a roof.
func (w *framedWall) seatAt(s float64) float64 {
	z := math.Inf(1)
	p := w.frame.At(s, 0, 0)
	for _, h := range w.seat {
		low := lowered(h, 2*plate)
		z = min(z, (low.C-low.N.Dot(p))/low.N.Z)
	}
	return z
}
