package loadpath

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/lift"
)

// twistCheck is the ID of the test of twist.
const twistCheck = "twist"

// twist follows level force as the lift test follows uplift: from the deck to
// the plates of each shear wall line, along them to its segments, down each
// segment to its two ends and its bottom plate, and on to the wall, girder or
// concrete below. What passes force from one to the next is a tie where it is:
// a kind of joint or a row of the catalog holds nothing. Where one is missing
// there is a gap, with the place and what would close it.
func twist(c *Check, a *analysis) []*Link {
	t := &twister{a: a, c: c, next: map[*framing.Member][]*framing.Member{}, ground: map[*framing.Member]bool{}}
	for _, x := range a.joined() {
		if x.B == nil {
			t.ground[x.A] = true
			continue
		}
		t.next[x.A] = append(t.next[x.A], x.B)
		t.next[x.B] = append(t.next[x.B], x.A)
	}
	for _, d := range a.decks {
		for ax := range 2 {
			t.edges(d, ax)
		}
	}
	for _, x := range a.lateral.lines {
		if ASD.W*x.Force > least {
			t.line(x)
		}
	}
	return t.out
}

// joined returns what hands force on between members sideways: steel and the
// nails that the plan orders, toe-nails too, which hold across though not up.
func (a *analysis) joined() []lift.Tie {
	out := a.steel.Ties()
	for _, l := range a.nails.Lines {
		for _, s := range l.Spots {
			if s.Side != s.Main && s.Nails(l.Order) > 0 && l.One(s, a.species).Lateral > 0 {
				out = append(out, lift.Tie{A: s.Side, B: s.Main, By: l.Mark() + " " + l.Row.One})
			}
		}
	}
	return out
}

// twister gathers the gaps of the test of twist.
type twister struct {
	a      *analysis
	c      *Check
	next   map[*framing.Member][]*framing.Member
	ground map[*framing.Member]bool
	out    []*Link
	lanes  map[lane][]*framing.Member      // see inLane
	tied   map[*LineShear][]*framing.Joint // see tiesAlong
}

// gap tells of a missing edge of a line; lb is the force that needs it at
// strength level.
func (t *twister) gap(x *LineShear, w *plan.Wall, id string, lb float64, what, format string, args ...any) {
	l := &Link{
		Check: t.c, ID: id, Wall: w, Host: "line " + x.Name, Where: fmt.Sprintf("line %s, story %s", x.Name, x.Level.Name), Unit: "lb",
		Demand: ASD.W * lb, Strength: lb, Case: x.Case, Ratio: math.Inf(1), Gap: fmt.Sprintf(format, args...),
		Terms: []Term{{what + ", strength level", lb, "lb"}, {"0.6 of it", ASD.W * lb, "lb"}},
	}
	if w != nil {
		l.Host, l.Where = "wall "+w.Name, fmt.Sprintf("wall %s, story %s", w.Name, x.Level.Name)
	}
	t.out = append(t.out, l)
}

// edges finds the sides of a deck that no line stands under. A story without
// any line has its own check.
func (t *twister) edges(d *diaphragm, ax int) {
	lines := d.lines[ax]
	if len(lines) == 0 {
		return
	}
	for i, at := range []float64{axis(d.extent.lo, 1-ax), axis(d.extent.hi, 1-ax)} {
		x := t.a.lateral.lines[lines[(len(lines)-1)*i].n]
		if far := math.Abs(x.At - at); far > oneLine && ASD.W*x.Force > least {
			t.gap(x, nil, fmt.Sprintf("deck over %s, side %s", d.level.Name, sides[1-ax][i]), x.Force, "force of the nearest line",
				"no shear wall line on side %s: the deck reaches %s past line %s; mark a segment in the wall there, or have the engineer design the deck to reach past its last line",
				sides[1-ax][i], t.a.u.Length(far), x.Name)
		}
	}
}

// line follows a line from its deck to its segments and down each.
func (t *twister) line(x *LineShear) {
	if !t.met(t.plates(x), deckRole) {
		t.gap(x, nil, "deck to line "+x.Name, x.Force, "force of the line",
			"no fastener ties the deck to the plates of line %s; fasten rafters, joists, rim or blocking to the plates there", x.Name)
	}
	t.collect(x)
	t.open(x)
	t.corners(x)
	for _, g := range x.Segments {
		if g.Working > 0 {
			t.segment(x, g)
		}
	}
}

// deckRole tells whether a member is of the deck over a line's plates: of a floor,
// or of the roof that its panels are nailed to. A ceiling joist is not: nothing
// makes a ceiling a diaphragm.
func deckRole(m *framing.Member) bool {
	switch m.Role {
	case plan.Rafter, plan.HipRafter, plan.ValleyRafter, plan.FlyRafter, plan.Outlooker, plan.Truss, plan.GirderTruss, plan.HipTruss, plan.JackTruss, plan.CornerJack, plan.ValleyFrame, plan.Rim, plan.Blocking, plan.Ledger:
		return true
	case plan.Joist:
		return !ceiling(m)
	}
	return false
}

// ceiling tells whether a member is a ceiling joist: a tie of a roof.
func ceiling(m *framing.Member) bool { return m.Role == plan.Joist && m.Roof != nil }

// met tells whether some of the members is tied to one of a role.
func (t *twister) met(list []*framing.Member, role func(*framing.Member) bool) bool {
	return slices.ContainsFunc(list, func(m *framing.Member) bool { return slices.ContainsFunc(t.next[m], role) })
}

// plates returns the top plates of the walls of a line.
func (t *twister) plates(x *LineShear) (out []*framing.Member) {
	for _, w := range x.walls() {
		for _, m := range t.a.house.In(w) {
			if m.Role == plan.TopPlate || m.Role == plan.UpperPlate {
				out = append(out, m)
			}
		}
	}
	return out
}

// collect finds the joints of collectors and the breaks in plates that nothing
// ties across.
func (t *twister) collect(x *LineShear) {
	for _, j := range t.tiesAlong(x) {
		drag := math.Abs(x.DragAt(axis(j.At.Flat(), x.Axis)))
		if ASD.W*drag <= least {
			continue
		}
		switch m := j.Members; {
		case len(m) < 2:
			t.gap(x, j.Wall, j.ID, drag, "collector force there", "the collector stops at the segment's end at %s and no member goes on; add blocking or a beam in line", t.a.u.Length(j.Station))
		case j.Kind == plan.Collector && x.goesOn(j, m[0]): // one plate, over the segment and on
		case m[0] != m[1] && !slices.ContainsFunc(t.next[m[0]], func(n *framing.Member) bool { return n == m[1] || j.Kind == plan.Collector && x.goesOn(j, n) }):
			t.gap(x, j.Wall, j.ID, drag, "collector force there", "nothing ties the %s to the %s at %s; put a strap across", m[0].Role, m[1].Role, t.a.u.Length(j.Station))
		}
	}
}

// tiesAlong returns the joints of collectors and the breaks in plates of a line.
func (t *twister) tiesAlong(x *LineShear) []*framing.Joint {
	if t.tied == nil {
		t.tied = map[*LineShear][]*framing.Joint{}
		for _, j := range t.a.house.Joints {
			if j.Kind == plan.Collector || j.Kind == plan.PlateSplice {
				on := t.a.lineOf(j)
				t.tied[on] = append(t.tied[on], j)
			}
		}
	}
	return t.tied[x]
}

// onFor is how far past a segment's end a member must go to carry its line on,
// in.
const onFor = 12.0

// goesOn tells whether a member carries a line on past a segment's end: such as
// the plate of the next wall, over one that crosses between.
func (x *LineShear) goesOn(j *framing.Joint, m *framing.Member) bool {
	at := axis(j.At.Flat(), x.Axis)
	lo, hi := axis(m.A.Flat(), x.Axis), axis(m.B.Flat(), x.Axis)
	lo, hi = min(lo, hi), max(lo, hi)
	if math.Abs(axis(m.A.Flat(), 1-x.Axis)-x.At) > oneLine {
		return false
	}
	for _, g := range x.Segments {
		if g.Wall == j.Wall && (math.Abs(g.Lo-at) < oneEnd && lo <= at-onFor || math.Abs(g.Hi-at) < oneEnd && hi >= at+onFor) {
			return true
		}
	}
	return false
}

// openRoom is how long a stretch of a line may be without a member along it
// that gathers the deck's force, in: a bay of joists or rafters.
const openRoom = 24.0

// open finds the longest stretch of a line with collector force along which no
// plate, joist or beam lies.
func (t *twister) open(x *LineShear) {
	with := t.along(x)
	long, from, worst := 0.0, x.lo, 0.0
	best := from
	deck := t.a.indoors[x.Level]
	for at := x.lo; at <= x.hi; at++ {
		if !x.under(deck, at) {
			from = at
			continue
		}
		if ASD.W*math.Abs(x.DragAt(at)) <= least || slices.ContainsFunc(with, func(s [2]float64) bool { return s[0] <= at && at <= s[1] }) {
			from = at
			continue
		}
		if at-from > long {
			long, best = at-from, from
		}
		worst = math.Max(worst, math.Abs(x.DragAt(at)))
	}
	if long > openRoom {
		t.gap(x, nil, "collector of line "+x.Name, worst, "largest collector force there",
			"no plate, joist or beam lies along the line from %s to %s of it; let one run on to the segment, or add blocking with straps", t.a.u.Length(best-x.lo), t.a.u.Length(best+long-x.lo))
	}
}

// under tells whether a line has the deck to one side of it or the other at a
// place: beside the wing of an L it runs on outside the house.
func (x *ShearLine) under(deck outline, at float64) bool {
	for _, off := range []float64{-oneLine / 2, oneLine / 2} {
		p := geom.Vec2{X: at, Y: x.At + off}
		if x.Axis == 1 {
			p = geom.Vec2{X: x.At + off, Y: at}
		}
		if deck.inside(p) {
			return true
		}
	}
	return false
}

// along returns where members that gather force lie along a line: plates of
// walls in it, joists, rims and beams just over it.
func (t *twister) along(x *LineShear) (out [][2]float64) {
	top := x.Level.Top()
	for _, m := range t.inLane(x) {
		if !m.B.Sub(m.A).Flat().Unit().RunsAlong(x.Axis) || math.Abs(axis(m.A.Flat(), 1-x.Axis)-x.At) > oneLine {
			continue
		}
		lo, hi := axis(m.A.Flat(), x.Axis), axis(m.B.Flat(), x.Axis)
		if z := min(m.A.Z, m.B.Z); z > top-24 && z < top+24 {
			out = append(out, [2]float64{min(lo, hi) - 1, max(lo, hi) + 1})
		}
	}
	return out
}

// inLane returns the members that can gather force and begin in the lane of a line or
// in those beside it.
func (t *twister) inLane(x *LineShear) (out []*framing.Member) {
	if t.lanes == nil {
		t.lanes = map[lane][]*framing.Member{}
		for _, m := range t.a.house.Members {
			for ax := range 2 {
				if gathers(m) {
					at := laneAt(ax, axis(m.A.Flat(), 1-ax))
					t.lanes[at] = append(t.lanes[at], m)
				}
			}
		}
	}
	for n := -1; n <= 1; n++ {
		out = append(out, t.lanes[laneAt(x.Axis, x.At+float64(n)*oneLine)]...)
	}
	return out
}

// gathers tells whether a member can gather force along a line.
func gathers(m *framing.Member) bool {
	if m.Role == plan.Blocking && m.Roof == nil && m.Wall == nil {
		return false // between joists: nothing draws one block to the next
	}
	switch m.Role {
	case plan.TopPlate, plan.UpperPlate, plan.Joist, plan.Rim, plan.Beam, plan.PlateBeam, plan.FlushBeam, plan.GirderBeam, plan.Truss, plan.GirderTruss, plan.HipTruss, plan.JackTruss, plan.CornerJack, plan.ValleyFrame, plan.Rafter, plan.Blocking:
		return true
	}
	return false
}
