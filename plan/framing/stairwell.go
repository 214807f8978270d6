package framing

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/geom"
)

// Limits of the residential code on openings in floors, in: to a header of the first
// it and the trimmers may be single joists, a single trimmer where the header stands
// no farther than the second from the trimmer's bearing; a header longer than the
// third hangs in hangers, and so does a tail joist longer than the fourth, where no
// ledger strip carries it (IRC 2018 R502.10: 4 ft second-hand, the rest from memory; the
// same four numbers in IRC 2024 R802.9 for ceilings, transcribed).
const (
	SingleHeader  = 48.0
	SingleTrimmer = 36.0
	UnhungHeader  = 72.0
	UnhungTail    = 144.0
)

// stairwell is an opening in a floor in the frame in which its joists run.
type stairwell struct {
	*plan.FloorOpening
	clear, wide     span // along the joists and across them, in: the clear opening
	bay             span // from bearing to bearing of the joists that it cuts
	header, trimmer plan.Lumber
	ends            [2]bool // a header stands at its low and high end
	at              [2]span // where these stand, along the joists
}

// cut is what of the joists between the trimmers is gone, headers included.
func (h *stairwell) cut() span {
	out := h.bay
	if h.ends[0] {
		out.lo = h.at[0].lo
	}
	if h.ends[1] {
		out.hi = h.at[1].hi
	}
	return out
}

// setHeaders stands a header at each end that lies off the joists' bearing: along the
// clear opening, or where no joist has room behind it, as beside an outer wall, against
// the rim or ledger there. It returns the end, 0 or 1, where there is not even room for
// that, else -1.
func (h *stairwell) setHeaders() int {
	wide := h.header.Width()
	for i, room := range []float64{h.clear.lo - h.bay.lo, h.bay.hi - h.clear.hi} {
		against := room < wide+plate
		switch {
		case h.ends[i] && room < wide-geom.Eps:
			return i
		case i == 0 && against:
			h.at[0] = span{h.bay.lo, h.bay.lo + wide}
		case i == 0:
			h.at[0] = span{h.clear.lo - wide, h.clear.lo}
		case against:
			h.at[1] = span{h.bay.hi - wide, h.bay.hi}
		default:
			h.at[1] = span{h.clear.hi, h.clear.hi + wide}
		}
	}
	return -1
}

// over is the band across the joists that the opening and its trimmers take.
func (h *stairwell) over() span {
	return span{h.wide.lo - h.trimmer.Width(), h.wide.hi + h.trimmer.Width()}
}

// stairwells finds the openings in one floor that can be framed; of the others it
// tells why not.
func (b *builder) stairwells(d *deck) {
	runs := b.runOf(d.level)
	for _, x := range b.plan.FloorOpenings {
		mid := x.Lo.Add(x.Hi).Mul(0.5)
		if x.Level != d.level || x.Level.Joists.Depth == 0 || !d.holds(mid) {
			continue
		}
		b.found[x] = true
		s0, t0 := runs.Local(x.Lo)
		s1, t1 := runs.Local(x.Hi)
		h := &stairwell{FloorOpening: x, clear: span{min(s0, s1), max(s0, s1)}, wide: span{min(t0, t1), max(t0, t1)}}
		if b.sized(d, h) && b.wellClear(d, h) {
			d.wells = append(d.wells, h)
		}
	}
}

// lostWells tells of openings that lie in no floor.
func (b *builder) lostWells() {
	for _, x := range b.plan.FloorOpenings {
		if !b.found[x] {
			b.wellFault(x, "floor-opening-off-floor", fmt.Sprintf("floor opening %s does not lie in the floor of level %s", x.Name, x.Level.Name), "give corners inside its walls, [east, north]")
		}
	}
}

// holds tells whether a point lies in the floor.
func (d *deck) holds(p geom.Vec2) bool {
	in := false
	for _, loop := range d.inner {
		in = in != contains(loop, p)
	}
	return in
}

// free returns the spans of a band of joists, across from t0 to t1: inside the floor
// and outside of walls that pass it.
func (d *deck) free(t0, t1 float64) (body, []span) {
	runs := d.runs
	band := body{f: geom.Frame{Origin: runs.At(0, t0, 0).Flat(), D: runs.D, In: runs.In}, d: t1 - t0}
	spans := insideBand(d.inner, band.f, 0, band.d)
	for _, o := range d.taken {
		if s0, s1, ok := band.crossing(o.body); ok {
			spans = without(spans, span{s0, s1})
		}
	}
	return band, spans
}

// bayAt returns the span of a band that a station lies in.
func (d *deck) bayAt(t0, t1, s float64) (span, bool) {
	_, spans := d.free(t0, t1)
	for _, x := range spans {
		if x.lo < s && s < x.hi {
			return x, true
		}
	}
	return span{}, false
}

// sized settles the bay, the headers and the trimmers of an opening; false where
// something is in its way, which it tells.
func (b *builder) sized(d *deck, h *stairwell) (ok bool) {
	if h.bay, ok = d.bayAt(h.wide.lo, h.wide.hi, h.clear.mid()); !ok || h.clear.lo < h.bay.lo-sixteenth || h.clear.hi > h.bay.hi+sixteenth {
		mend := "give corners inside its walls, [east, north]"
		if ok {
			mend = fmt.Sprintf("let it lie between %s and %s %s", b.inches(h.bay.lo), b.inches(h.bay.hi), map[plan.Axis]string{plan.AxisX: "east", plan.AxisY: "north"}[d.level.JoistRun])
		}
		b.wellFault(h.FloorOpening, "floor-opening-off-floor", fmt.Sprintf("floor opening %s reaches past the rim or ledger that its joists end at", h.Name), mend)
		return false
	}
	h.ends = [2]bool{h.clear.lo > h.bay.lo+sixteenth, h.clear.hi < h.bay.hi-sixteenth}
	h.header, h.trimmer = h.sections(d.level.Joists)
	if i := h.setHeaders(); i >= 0 {
		b.wellFault(h.FloorOpening, "floor-opening-no-header", fmt.Sprintf("floor opening %s leaves %s for a header of %s", h.Name, b.inches([]float64{h.clear.lo - h.bay.lo, h.bay.hi - h.clear.hi}[i]), b.inches(h.header.Width())),
			fmt.Sprintf("move its edge in, or out to the end of the joists at %s", b.inches([]float64{h.bay.lo, h.bay.hi}[i])))
		return false
	}
	for _, side := range []span{{h.over().lo, h.wide.lo}, {h.wide.hi, h.over().hi}} {
		if bay, ok := d.bayAt(side.lo, side.hi, h.clear.mid()); !ok || bay.lo > h.cut().lo+sixteenth || bay.hi < h.cut().hi-sixteenth {
			b.wellFault(h.FloorOpening, "floor-opening-no-trimmer", fmt.Sprintf("beside floor opening %s there is no room for its trimmers, %s thick", h.Name, b.inches(h.trimmer.Width())),
				"leave that much between it and the rim or wall along the joists")
			return false
		}
	}
	b.single(h)
	return true
}

// sections returns the header and the trimmers: as the plan has them, else as the
// joists, doubled by the rule.
func (h *stairwell) sections(joists plan.Lumber) (header, trimmer plan.Lumber) {
	header, trimmer = h.Header, h.Trimmer
	if header.Depth == 0 {
		if header = joists; h.wide.hi-h.wide.lo > SingleHeader {
			header = joists.Times(2)
		}
	}
	if trimmer.Depth == 0 {
		if trimmer = joists; header.Ply > joists.Ply || h.fromBearing() > SingleTrimmer {
			trimmer = joists.Times(2)
		}
	}
	return header, trimmer
}

// fromBearing is how far the header that stands farthest from the end of the joists
// behind it stands from it, in.
func (h *stairwell) fromBearing() (far float64) {
	if h.ends[0] {
		far = h.clear.lo - h.bay.lo
	}
	if h.ends[1] {
		far = max(far, h.bay.hi-h.clear.hi)
	}
	return far
}

// single tells of headers and trimmers that are single where the rule wants two.
func (b *builder) single(h *stairwell) {
	long := h.wide.hi - h.wide.lo
	if h.header.Ply > 1 && h.trimmer.Ply > 1 || !h.ends[0] && !h.ends[1] {
		return
	}
	what := ""
	switch {
	case long > SingleHeader && h.header.Ply == 1:
		what = fmt.Sprintf("its header spans %s and is a single joist; over 4 ft header and trimmers are doubled", b.inches(long))
	case long > SingleHeader:
		what = fmt.Sprintf("its header spans %s and its trimmers are single joists; over 4 ft they are doubled", b.inches(long))
	case h.trimmer.Ply == 1 && h.fromBearing() > SingleTrimmer:
		what = fmt.Sprintf("its header stands %s from the bearing of its trimmers, which are single joists; over 3 ft they are doubled", b.inches(h.fromBearing()))
	default:
		return
	}
	b.fault(plan.Diagnostic{
		Severity: plan.Warning, Code: "floor-opening-single", Pos: h.Pos, Where: "floor opening " + h.Name,
		Summary: what + " (IRC 2018 R502.10, from memory)", Mend: "double them, or let the engineer size them",
	})
}

// wellClear tells of walls that stand in an opening, and of openings that take the same
// joists' place.
func (b *builder) wellClear(d *deck, h *stairwell) bool {
	runs := b.runOf(d.level)
	box := column(runs, h.clear.lo, h.clear.hi, h.wide.lo, h.wide.hi)
	for _, w := range b.walls {
		if w.Level == d.level && meets(box, column(w.frame, w.s0, w.s1, 0, w.Depth())) {
			b.wellFault(h.FloorOpening, "floor-opening-under-wall", fmt.Sprintf("wall %s stands over floor opening %s", w.Name, h.Name), "move one of the two")
			return false
		}
	}
	for _, o := range d.wells {
		if h.over().meets(o.over()) && h.bay.meets(o.bay) { // trimmers run from bearing to bearing
			b.wellFault(h.FloorOpening, "floor-openings-meet", fmt.Sprintf("floor openings %s and %s or their trimmers take the same place", o.Name, h.Name), "move one, or make one of the two")
			return false
		}
	}
	return true
}

// cutAt takes out of the spans of one joist what the openings take: between the
// trimmers the opening and its headers, and the whole joist where a trimmer lies.
func (d *deck) cutAt(spans []span, lo, hi float64) []span {
	for _, h := range d.wells {
		switch {
		case hi <= h.over().lo+geom.Eps || lo >= h.over().hi-geom.Eps:
		case lo >= h.wide.lo-geom.Eps && hi <= h.wide.hi+geom.Eps:
			spans = without(spans, h.cut())
		default:
			spans = without(spans, h.bay)
		}
	}
	return spans
}

// frameWells adds the trimmers and headers of the openings of a floor.
func (b *builder) frameWells(d *deck) {
	runs := b.runOf(d.level)
	for _, h := range d.wells {
		for _, side := range []span{{h.over().lo, h.wide.lo}, {h.wide.hi, h.over().hi}} {
			band, spans := d.free(side.lo, side.hi)
			for _, bay := range spans {
				if bay.lo < h.clear.mid() && h.clear.mid() < bay.hi {
					b.joistRun(d, band, bay, fmt.Sprintf("%s/%s trimmer@%s", d.level.Name, h.Name, at(side.mid())), h.trimmer)
				}
			}
		}
		f := geom.Frame{Origin: runs.At(0, h.wide.lo, 0).Flat(), D: runs.In, In: runs.D}
		for i, t := range h.at {
			if h.ends[i] {
				m := b.lying(plan.Joist, f, 0, h.wide.hi-h.wide.lo, t.lo, t.hi, d.z0, d.z1)
				m.ID, m.Level, m.Section = fmt.Sprintf("%s/%s header@%s", d.level.Name, h.Name, at(t.mid())), d.level, h.header
				b.wellEnds = append(b.wellEnds, wellEnd{h, d, b.member(m), t, i})
			}
		}
	}
}

// wellEnd is one header, with the side of the opening at which it stands.
type wellEnd struct {
	h      *stairwell
	d      *deck
	header *Member
	at     span // along the joists
	end    int  // 0 at the low end
}

// wellJoints finds the joints of all headers, once the joists lie.
func (b *builder) wellJoints() {
	for _, e := range b.wellEnds {
		runs := b.runOf(e.d.level)
		lo, hi := e.header.Bounds()
		reach := geom.Vec3{X: near, Y: near}
		for _, m := range b.index.Within(lo.Sub(reach), hi.Add(reach)) {
			if m.Role == plan.Joist {
				e.joint(b, runs, m)
			}
		}
	}
}

// joint adds the joint of a header and one joist, where they meet.
func (e *wellEnd) joint(b *builder, runs geom.Frame, m *Member) {
	s0, t0 := runs.Local(m.A.Flat())
	s1, _ := runs.Local(m.B.Flat())
	half, z := m.Section.Width()/2, (e.d.z0+e.d.z1)/2
	j := &Joint{Host: e.h.Name, Level: e.d.level, Below: true}
	tail, face := s1, e.at.lo
	if e.end == 1 {
		tail, face = s0, e.at.hi
	}
	switch {
	case math.Abs(t0+half-e.h.wide.lo) < sixteenth:
		j.Kind, j.Station, j.Members, j.At = plan.HeaderTrimmer, 0, []*Member{e.header, m}, runs.At(e.at.mid(), e.h.wide.lo, z)
	case math.Abs(t0-half-e.h.wide.hi) < sixteenth:
		j.Kind, j.Station, j.Members, j.At = plan.HeaderTrimmer, e.h.wide.hi-e.h.wide.lo, []*Member{e.header, m}, runs.At(e.at.mid(), e.h.wide.hi, z)
	case math.Abs(tail-face) < sixteenth && t0 > e.h.wide.lo && t0 < e.h.wide.hi:
		j.Kind, j.Station, j.Members, j.At = plan.TailHeader, t0-e.h.wide.lo, []*Member{m, e.header}, runs.At(face, t0, z)
		j.Tributary = e.d.level.JoistSpace
	default:
		return
	}
	b.joint(j)
}

func (b *builder) wellFault(x *plan.FloorOpening, code plan.Code, what, mend string) {
	b.fault(plan.Diagnostic{Code: code, Pos: x.Pos, Where: "floor opening " + x.Name, Summary: what, Mend: mend})
}
