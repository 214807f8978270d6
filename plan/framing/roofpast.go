package framing

import (
	"math"

	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// tabRoom is how far a ridge goes on past the cut of a hip that comes down at its
// end, so that a hanger's flange has wood there, in (common practice is to run the
// board long, no published source for how far).
const tabRoom = 3.5

// pastHips runs a ridge on past its end where a hip comes down beside it, as where
// a wing's lower ridge ends at the hip of the roof that it runs into: the foot of
// the hip is cut to the ridge's side and would else lie half past its end. What it
// runs on lies under the roof, whose far plane goes on there; it stops short of
// rafters that cross.
func (f *roofFrame) pastHips(l *roofLine) {
	for _, end := range []struct {
		p  geom.Vec3
		by float64
	}{{l.line.A, -1}, {l.line.B, 1}} {
		for _, o := range f.lines {
			if o.line.Kind != roofplan.Hip || o.line.A.Sub(end.p).Len() > onLine {
				continue
			}
			d := l.dir.Mul(end.by)
			sin := math.Abs(d.Cross(o.dir))
			if sin < 0.1 || o.dir.Dot(d) <= 0 {
				continue
			}
			cut := (l.half*o.dir.Dot(d) + o.half) / sin
			if long := f.freePast(end.p.Flat(), d, cut+tabRoom, l); end.by < 0 {
				l.u0 = min(l.u0, -long)
			} else {
				l.u1 = max(l.u1, l.line.Run()+long)
			}
		}
	}
}

// short is how much a rafter in line with a ridge, that climbs rise for each inch, is
// cut back from where the planes meet: there it is as high as the ridge's top, which
// lies lower than the planes' meeting for its arrises to lie in them; but no more than
// to the face of the last pair, past which hips come to the corner.
func (l *roofLine) short(rise float64) float64 {
	if l.line.Kind != roofplan.Ridge || rise <= 0 {
		return 0
	}
	return min((l.line.A.Z-l.top)/rise, l.owner.Rafters.Width()/2)
}

// toKings runs a ridge on to the rafters in its own line at a hip end, which are cut
// back to be flush with it: it reaches under the whole of the last pair's width (common
// practice is to cut the board as much longer, no published source).
func (f *roofFrame) toKings(l *roofLine) {
	for _, run := range f.runs {
		d := run.Face.Uphill()
		if run.Flush || run.HighEnd.Kind != roofplan.Ridge || !geom.Skims(d, l.dir) || f.ownerOf(run).Trusses {
			continue
		}
		long := l.short(run.Face.Slope())
		switch {
		case d.Dot(l.dir) > 0 && run.High.Sub(l.line.A.Flat()).Len() < onLine && l.u0 > -long:
			l.u0, l.named = -long, 0
		case d.Dot(l.dir) < 0 && run.High.Sub(l.line.B.Flat()).Len() < onLine:
			l.u1 = max(l.u1, l.line.Run()+long)
		}
	}
}

// freePast returns how far, at most long, a ridge can go on from p in direction d
// without meeting a rafter that crosses it.
func (f *roofFrame) freePast(p, d geom.Vec2, long float64, l *roofLine) float64 {
	for _, r := range f.runs {
		a, b := r.Low.Sub(p), r.High.Sub(p)
		ta, tb := d.Cross(a), d.Cross(b) // to the sides
		if ta*tb > 0 && min(math.Abs(ta), math.Abs(tb)) > l.half {
			continue
		}
		u := d.Dot(a)
		if ta != tb {
			u += (d.Dot(b) - d.Dot(a)) * -ta / (tb - ta)
		}
		if u > onLine {
			long = min(long, u-l.owner.Rafters.Width()/2)
		}
	}
	return long
}
