package framing

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/geom"
)

// deck is the joist layer of one building at one level: what lies between
// the plates below and the subfloor.
type deck struct {
	level    *plan.Level
	z0, z1   float64 // foot and top of the joists
	loops    [][]edge
	inner    [][]geom.Vec2 // where joists may lie
	lo, hi   geom.Vec2     // extent on plan
	passing  []*framedWall // balloon walls within the extent
	taken    []obstacle    // balloon walls, their ledgers, and flush beams
	supports []body        // girders, bearing walls and dropped beams below
	wells    []*stairwell  // openings in it
	extra    []*extraJoist // joists in it beside those at the spacing
	runs     geom.Frame    // of its joists
	unborne  float64       // longest run of joists for which there is no support within the stock, in
}

// floors frames the floor of each building at each level that has joists.
func (b *builder) floors() {
	for _, l := range b.plan.Levels {
		loops := b.outline(l)
		b.loops[l] = loops
		if l.Joists.Depth == 0 || l.Index == 0 && b.plan.Foundation.Kind == plan.Slab || !b.floorHeights(l) {
			continue
		}
		find := b.wallGrid()
		for _, one := range buildings(loops) {
			d, from := b.deckOf(l, one, find), len(b.house.Members)
			b.rims(d, rimBoard(l), d.z0, d.z1)
			b.balloons(d)
			b.flushBeams(d)
			b.stairwells(d)
			b.extraJoists(d)
			b.underJoists(d)
			b.joists(d)
			b.layExtra(d)
			b.frameWells(d)
			b.floorBlocks(d)
			b.underBlocks(d)
			b.bareBearing(d)
			if l.Index == 0 && b.plan.Foundation.Kind == plan.Stem {
				b.sillPlates(d)
			}
			b.unborneEnds(d, from)
		}
	}
}

// deckOf gathers what bounds, interrupts and carries one floor.
func (b *builder) deckOf(level *plan.Level, loops [][]edge, find func(lo, hi geom.Vec2) []*framedWall) *deck {
	d := &deck{level: level, runs: b.runOf(level), z1: level.Floor - level.Subfloor, loops: loops}
	d.z0 = d.z1 - level.Joists.Depth
	for i, loop := range loops {
		d.inner = append(d.inner, insetLoop(loop))
		for j, p := range points(loop) {
			if i+j == 0 {
				d.lo, d.hi = p, p
			}
			d.lo = geom.Vec2{X: min(d.lo.X, p.X), Y: min(d.lo.Y, p.Y)}
			d.hi = geom.Vec2{X: max(d.hi.X, p.X), Y: max(d.hi.Y, p.Y)}
		}
	}
	for _, w := range find(d.lo, d.hi) {
		switch {
		case w.Passes(level):
			d.passing, d.taken = append(d.passing, w), append(d.taken, obstacle{body: w.body()})
		case w.Bearing && math.Abs(w.top-d.z0) < sixteenth:
			d.supports = append(d.supports, w.body())
		case w.Level.Index < level.Index && w.top > d.z0+sixteenth && w.floor < d.z0 && d.covers(w):
			b.wallFault(w.Wall, "wall-in-floor", fmt.Sprintf("reaches %s into the floor of level %s", b.inches(w.top-d.z0), level.Name),
				"make it lower, or give it balloon_to")
		}
	}
	for _, fb := range b.beams {
		if fb.role == plan.PlateBeam && math.Abs(fb.top-d.z0) < sixteenth {
			d.supports = append(d.supports, fb.body)
		}
	}
	if level.Index == 0 {
		for _, g := range b.girdersNear(d.lo, d.hi) {
			d.supports = append(d.supports, g.body)
		}
	}
	return d
}

// covers tells whether the middle of w lies under the floor.
func (d *deck) covers(w *framedWall) bool {
	return d.holds(w.frame.At((w.Hook+w.Length())/2, w.Depth()/2, 0).Flat())
}

// floorHeights checks the level's floor against its joists and the plates
// below.
func (b *builder) floorHeights(l *plan.Level) bool {
	say := func(what, mend string) bool {
		b.fault(plan.Diagnostic{Code: "floor-heights", Pos: l.Pos, Where: "level " + l.Name, Summary: what, Mend: mend})
		return false
	}
	if d := l.Joists.Depth + l.Subfloor; math.Abs(d-l.FloorDepth) > sixteenth {
		return say(fmt.Sprintf("floor_depth of level %s is %s and its joists and subfloor make %s", l.Name, b.inches(l.FloorDepth), b.inches(d)), "make them agree")
	}
	if l.Index == 0 {
		return true
	}
	below := b.plan.Levels[l.Index-1]
	if d := l.Floor - l.FloorDepth - below.Top(); math.Abs(d) > sixteenth {
		return say(fmt.Sprintf("the joists of level %s stand at %s and the plates of level %s at %s", l.Name, b.inches(l.Floor-l.FloorDepth), below.Name, b.inches(below.Top())),
			"make the upper floor the lower floor plus plate_height plus floor_depth")
	}
	return true
}

// rimBoard returns the section of a level's rim: as thick as given, as deep
// as the joists.
func rimBoard(l *plan.Level) plan.Lumber {
	return plan.Lumber{Ply: 1, Breadth: l.Rim, Depth: l.Joists.Depth, Text: l.Joists.Text}
}

// rims runs a rim along each edge, meeting at corners as the walls do, and
// stopping at walls that pass the floor.
func (b *builder) rims(d *deck, section plan.Lumber, z0, z1 float64) {
	if section.Breadth <= 0 {
		return
	}
	for _, loop := range d.loops {
		for i, s := range stripsOf(loop, section.Breadth) {
			if w := loop[i].w; !loop[i].balloon && s.s1-s.s0 > geom.Eps {
				w.rims = append(w.rims, b.strip(w, d.level, plan.Rim, s, section, z0, z1)...)
			}
		}
	}
}

// stripsOf returns a strip of depth t along each edge of a loop, cut so that
// they meet at the corners as the walls do. For a balloon edge it is the
// wall itself.
func stripsOf(loop []edge, t float64) []body {
	n := len(loop)
	out := make([]body, n)
	for i, e := range loop {
		out[i] = e.body(t)
		if e.balloon {
			out[i] = e.w.body()
		}
	}
	for i, e := range loop {
		j := (i + 1) % n
		o := loop[j]
		if out[i].inLine(out[j]) {
			wedge(&out[i], &out[j], o.balloon)
			continue
		}
		first := throughFirst(wallEnd{e.w, true}, wallEnd{o.w, false}) < 0
		switch {
		case e.balloon && o.balloon:
		case e.balloon || !o.balloon && first:
			if !e.balloon {
				out[i].s1 = out[i].throughStop(out[j], true)
			}
			out[j].s0 = stopAt(out[j], out[i], false, out[j].s0)
		default:
			if !o.balloon {
				out[j].s0 = out[j].throughStop(out[i], false)
			}
			out[i].s1 = stopAt(out[i], out[j], true, out[i].s1)
		}
	}
	return out
}

// wedge cuts the wedge between two strips that go on almost straight off the
// later one, or off the earlier one where the later stands fast.
func wedge(a, z *body, fast bool) {
	if fast {
		if s, ok := a.buttStop(*z, true); ok {
			a.s1 = min(a.s1, s)
		}
		return
	}
	if s, ok := z.buttStop(*a, false); ok {
		z.s0 = max(z.s0, s)
	}
}

// stopAt returns where b's end stops at o, or its old station when o is not
// in its way.
func stopAt(b, o body, tail bool, old float64) float64 {
	far := b
	if tail {
		far.s1 += 36
	} else {
		far.s0 -= 36
	}
	if s, ok := far.buttStop(o, tail); ok {
		return s
	}
	return old
}

// strip adds the pieces of a rim, ledger or sill plate along w, cut to stock.
func (b *builder) strip(w *framedWall, l *plan.Level, role plan.Role, s body, section plan.Lumber, z0, z1 float64) (out []*Member) {
	b.eachPart(append(append([]float64{s.s0}, b.even(s.s0, s.s1, b.longest())...), s.s1), func(from, to float64) {
		m := b.lying(role, s.f, from, to, 0, s.d, z0, z1)
		m.Wall, m.Level, m.Section = w.Wall, l, section
		shift, _ := w.frame.Local(s.f.Origin)
		m.S0, m.S1 = from+shift, to+shift
		m.ID = fmt.Sprintf("%s/%s@%s", w.Name, role, at(max(0, m.S0)))
		if l != w.Level {
			m.ID = fmt.Sprintf("%s/%s %s@%s", w.Name, l.Name, role, at(max(0, m.S0)))
		}
		out = append(out, b.member(m))
	})
	return b.inOrder(out)
}

// lying makes a member that lies along a frame.
func (b *builder) lying(role plan.Role, f geom.Frame, s0, s1, t0, t1, z0, z1 float64) *Member {
	t, z := (t0+t1)/2, (z0+z1)/2
	return &Member{
		Role: role, Length: s1 - s0, Z0: z0, Z1: z1, A: f.At(s0, t, z), B: f.At(s1, t, z),
		Solid: []geom.Solid{f.Box(s0, s1, t0, t1, z0, z1)},
	}
}

// longest returns the longest stock of the yard.
func (b *builder) longest() float64 {
	longest := 0.0
	for _, s := range b.plan.Lumber.Stock {
		longest = max(longest, s)
	}
	if longest == 0 {
		return 240
	}
	return longest
}
