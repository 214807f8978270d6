package deck

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// Floor is the panels of one level's floor with their nails, laid over the joists and
// rims as they are framed. At an opening the nails follow the joists that are there; a
// panel that it cuts into is counted whole.
type Floor struct {
	Level  *plan.Level
	Spec   *plan.FloorDeck
	Pieces int     // panels and parts of panels as laid
	Sheets int     // panels that the courses are cut from, each course by itself
	Nails  int     // of all pieces
	Area   float64 // ft²
}

// joistLine is a joist, or a rim along the joists, by its place across them.
type joistLine struct {
	at    float64      // in
	spans [][2]float64 // along the joists, in
	rim   bool
}

// Floors lays the floors of a house whose plan orders their nails; none else.
func Floors(h *framing.House) (out []*Floor) {
	if h.Plan.FloorDeck == nil {
		return nil
	}
	for _, l := range h.Plan.Levels {
		if f := layFloor(h, l); f.Pieces > 0 {
			out = append(out, f)
		}
	}
	return out
}

// layFloor lays courses of panels over one level's floor, long side across the
// joists, from its low side. A panel ends over the last joist that it reaches; every
// other course begins with half a panel.
func layFloor(h *framing.House, l *plan.Level) *Floor {
	f := &Floor{Level: l, Spec: h.Plan.FloorDeck}
	lines, cross := floorLines(h, l)
	if len(lines) < 2 {
		return f
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, x := range lines {
		for _, s := range x.spans {
			lo, hi = math.Min(lo, s[0]), math.Max(hi, s[1])
		}
	}
	for _, x := range cross {
		lo, hi = math.Min(lo, x.at-x.half), math.Max(hi, x.at+x.half)
	}
	for n, v := 0, lo; v < hi-touch; n, v = n+1, v+PanelWide {
		for _, run := range runsIn(lines, v, math.Min(v+PanelWide, hi), 2.5*l.JoistSpace) {
			f.course(n, run, math.Min(PanelWide, hi-v))
		}
	}
	for _, x := range cross {
		f.Nails += row(x.long, f.Spec.Edge)
	}
	return f
}

// acrossRim is a rim across the joists: where along them its middle lies, half its
// thickness and its length, in.
type acrossRim struct{ at, half, long float64 }

// floorLines reads the joists, rims and flush beams of a level: those along the joists by
// their place across, and those across them.
func floorLines(h *framing.House, l *plan.Level) (lines []*joistLine, cross []acrossRim) {
	i := 0
	if l.JoistRun == plan.AxisY {
		i = 1
	}
	way := [2]float64{1, 1} // in which the panels are laid along x and y
	for k, axis := range plan.Axes {
		if h.Plan.Lay.Reversed(axis) {
			way[k] = -1
		}
	}
	byPlace := map[int]*joistLine{}
	for _, m := range h.Members {
		flush := m.Role == plan.FlushBeam && math.Abs(m.Z1-(l.Floor-l.Subfloor)) < touch // not one of the ceiling
		if m.Level != l || m.Roof != nil || m.Role != plan.Joist && m.Role != plan.Rim && !flush || m.B.Sub(m.A).Flat().Len() < 1 {
			continue
		}
		a, b := m.A.Flat(), m.B.Flat()
		a, b = geom.Vec2{X: way[0] * a.X, Y: way[1] * a.Y}, geom.Vec2{X: way[0] * b.X, Y: way[1] * b.Y}
		if !b.Sub(a).Unit().RunsAlong(i) {
			cross = append(cross, acrossRim{(a.Along(i) + b.Along(i)) / 2, m.Section.Breadth / 2, b.Sub(a).Len()})
			continue
		}
		at := (a.Along(1-i) + b.Along(1-i)) / 2
		k := int(math.Round(at))
		if byPlace[k] == nil {
			byPlace[k] = &joistLine{at: at, rim: m.Role == plan.Rim}
			lines = append(lines, byPlace[k])
		}
		byPlace[k].spans = append(byPlace[k].spans, [2]float64{math.Min(a.Along(i), b.Along(i)), math.Max(a.Along(i), b.Along(i))})
	}
	slices.SortFunc(lines, func(x, y *joistLine) int { return int(math.Copysign(1, x.at-y.at)) })
	return lines, cross
}

// over returns how long a line lies in a course, in.
func (x *joistLine) over(v0, v1 float64) (long float64) {
	for _, s := range x.spans {
		long += math.Max(0, math.Min(s[1], v1)-math.Max(s[0], v0))
	}
	return math.Min(long, v1-v0)
}

// laid is a line with its length in a course.
type laid struct {
	at, long float64
	rim      bool
}

// runsIn returns the lines of a course, parted where the next is farther than apart.
func runsIn(lines []*joistLine, v0, v1, apart float64) (out [][]laid) {
	last := math.Inf(-1)
	for _, x := range lines {
		long := x.over(v0, v1)
		if long < 1.5 {
			continue
		}
		if x.at-last > apart {
			out = append(out, nil)
		}
		last = x.at
		out[len(out)-1] = append(out[len(out)-1], laid{x.at, long, x.rim})
	}
	return out
}

// rimThick is what the outer lines of a floor reach past their middles on both sides
// together, in: a dressed 2x (PS 20).
const rimThick = 1.5

// course lays one course over a run of lines, wide in.
func (f *Floor) course(n int, run []laid, wide float64) {
	from, to := run[0].at, run[len(run)-1].at
	if to-from < 1 {
		return
	}
	across := to - from + rimThick
	f.Area += across * wide / 144
	f.Sheets += int(math.Ceil(across/PanelLong - 1e-3))
	reach := PanelLong
	if n%2 == 1 {
		reach = PanelLong / 2
	}
	end := from // where the piece begins
	f.Nails += row(run[0].long, f.Spec.Edge)
	for i := 1; i < len(run); i++ {
		x := run[i]
		switch {
		case i == len(run)-1:
			f.Nails += row(x.long, f.Spec.Edge)
			f.Pieces++
		case run[i+1].at > end+reach+touch: // the panel ends over this line, and the next begins
			f.Nails += 2 * row(x.long, f.Spec.Edge)
			f.Pieces++
			end, reach = x.at, PanelLong
		default:
			f.Nails += row(x.long, f.Spec.Field)
		}
	}
}

// row returns the nails of a row at a spacing, one at each of its ends.
func row(long, spacing float64) int {
	if spacing <= 0 || long < 2*margin {
		return 0
	}
	return int(math.Ceil((long-2*margin)/spacing-1e-9)) + 1
}
