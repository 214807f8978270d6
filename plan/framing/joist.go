package framing

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// runOf returns the frame in which a level's joists run along D, north or
// east, and are laid along In, from the south or the west side; in a house that lies
// the other way, from the sides that these are there.
func (b *builder) runOf(l *plan.Level) geom.Frame {
	x, y := geom.Vec2{X: 1}, geom.Vec2{Y: 1}
	if b.plan.Lay.Reversed(plan.AxisX) {
		x = geom.Vec2{X: -1}
	}
	if b.plan.Lay.Reversed(plan.AxisY) {
		y = geom.Vec2{Y: -1}
	}
	if l.JoistRun == plan.AxisX {
		return geom.Frame{D: x, In: y}
	}
	return geom.Frame{D: y, In: x}
}

// joists lays joists across the deck: the first one space from the floor's
// edge, each cut at the rims, at balloon walls, and, where longer than the
// stock, over a support.
func (b *builder) joists(d *deck) {
	level, runs := d.level, b.runOf(d.level)
	if level.JoistSpace < plate {
		return
	}
	_, t0 := runs.Local(d.lo)
	_, t1 := runs.Local(d.hi)
	lo, hi := min(t0, t1), max(t0, t1)
	half := level.Joists.Width() / 2
	for nth := 1; ; nth++ {
		middle := lo + float64(nth)*level.JoistSpace
		if middle+half > hi {
			break
		}
		for _, x := range b.standing(d, middle-half, middle+half) {
			t0, t1 := x.wide.lo, x.wide.hi
			band, _ := d.free(t0, t1)
			for _, bay := range d.aroundExtra(d.cutAt(x.long, t0, t1), t0, t1) {
				b.joistRun(d, band, bay, fmt.Sprintf("%s/joist@%s", level.Name, at(x.wide.mid()-lo)), level.Joists)
			}
		}
	}
	if d.unborne > 0 {
		b.fault(plan.Diagnostic{
			Severity: plan.Warning, Code: "joist-too-long", Pos: level.Pos, Where: "level " + level.Name,
			Summary: fmt.Sprintf("joists of level %s run up to %s without a support within the longest stock, %s", level.Name, b.inches(d.unborne), b.inches(b.longest())),
			Mend:    "add a girder or a bearing wall below, or run the joists the other way",
		})
	}
}

// joistRun adds the joists of one span of a band.
func (b *builder) joistRun(d *deck, band body, s span, id string, section plan.Lumber) {
	if s.hi-s.lo < 2*plate {
		return
	}
	low, high := b.endAt(d, band, s.lo, -1), b.endAt(d, band, s.hi, 1)
	from := low.far
	for _, to := range append(b.joistCuts(d, band, span{low.far, high.far}), high.far) {
		m := b.lying(plan.Joist, band.f, from, to, 0, band.d, d.z0, d.z1)
		m.ID, m.Level, m.Section = id, d.level, section
		if from == low.far {
			low.cut(m, &m.A)
		}
		if to == high.far {
			high.cut(m, &m.B)
		}
		b.member(m)
		from = to
	}
}

// joistCuts returns where a run longer than the stock is broken: over the
// farthest support within reach, each time; over one that it runs along on only where those
// that it crosses are too far apart.
func (b *builder) joistCuts(d *deck, band body, s span) (cuts []float64) {
	longest := b.longest()
	if s.hi-s.lo <= longest+geom.Eps {
		return nil
	}
	across := b.places(d, band, s)
	cuts, left := s.cuts(across, longest)
	if left == 0 {
		return cuts
	}
	if more, rest := s.cuts(slices.Sorted(slices.Values(append(across, d.along(band, s)...))), longest); rest < left {
		cuts, left = more, rest
	}
	d.unborne = max(d.unborne, left)
	return cuts
}

// cuts returns the farthest places within the longest piece, each time, and what is left in
// one where there is none.
func (s span) cuts(places []float64, longest float64) (cuts []float64, left float64) {
	for from := s.lo; s.hi-from > longest+geom.Eps; {
		i := slices.IndexFunc(places, func(x float64) bool { return x > from+longest+geom.Eps }) - 1
		if i == -2 {
			i = len(places) - 1
		}
		if i < 0 || places[i] <= from+geom.Eps {
			return cuts, s.hi - from
		}
		cuts = append(cuts, places[i])
		from = places[i]
	}
	return cuts, 0
}

// places are the supports over which a run of joists may break: not the one that it hangs
// over at an end that nothing carries.
func (b *builder) places(d *deck, band body, s span) []float64 {
	on := d.under(band, s)
	if d.level.Index > 0 && len(on) > 0 && !b.carriedEnd(d, band, s.hi, 1) {
		on = on[:len(on)-1]
	}
	if d.level.Index > 0 && len(on) > 0 && !b.carriedEnd(d, band, s.lo, -1) {
		on = on[1:]
	}
	return on
}

// along returns places over girders and bearing walls that a band runs along on, at which its
// joists may break: from where both pieces bear on 3 in, a foot apart.
func (d *deck) along(band body, s span) (out []float64) {
	const bears = 3.0
	for _, o := range d.supports {
		lo, hi, ok := band.crossing(o)
		if !ok || !band.inLine(o) || !band.carries(o) {
			continue
		}
		lo, hi = max(lo, s.lo)+bears, min(hi, s.hi)-bears
		for at := lo; at < hi; at += 12 {
			out = append(out, at)
		}
		if hi >= lo {
			out = append(out, hi)
		}
	}
	return out
}

// carries tells whether the middle line of a band lies over o.
func (b body) carries(o body) bool {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range o.corners() {
		_, t := b.f.Local(p)
		lo, hi = min(lo, t), max(hi, t)
	}
	return lo <= b.d/2 && b.d/2 <= hi
}

// under returns the stations along a band of the centers of girders and
// bearing walls below it, in order; those under its ends are no place to break.
func (d *deck) under(band body, s span) (out []float64) {
	band.s0, band.s1 = s.lo, s.hi
	for _, o := range d.supports {
		if lo, hi, ok := band.crossing(o); ok && !band.inLine(o) {
			if lo > s.lo && hi < s.hi {
				out = append(out, (lo+hi)/2)
			}
		}
	}
	slices.Sort(out)
	return out
}
