package read

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// porchDraft is a porch with what must wait for its other keys.
type porchDraft struct {
	*plan.Porch
	line  []geom.Vec2 // corners of the beams' outside faces; none of a straight one
	sides [][]float64 // stations of posts, by side
	step  float64     // greatest spacing of posts, where no stations are given
	roof  *node
	deck  *node
}

// porchKeys fill one porch.
var porchKeys = []binding[porchDraft]{
	nameKey("name", `"porch"`, "name in tags and on sheets; the sides of one that turns corners are named after the way they look, \"porch-S\"", func(p *porchDraft) *string { return &p.Name }).must(),
	field("from", "point", `["0'", "-8'"]`, "where the outside face of its beam begins, at the left as seen from outside; of a straight porch", value.point,
		func(p *porchDraft) *geom.Vec2 { return &p.From }).within(-12000, 12000),
	field("to", "point", `["28'", "-8'"]`, "where it ends", value.point, func(p *porchDraft) *geom.Vec2 { return &p.To }).within(-12000, 12000),
	custom("line", "points", `[["0'", "-8'"], ["36'", "-8'"], ["36'", "20'"]]`, "instead of from and to, of a porch that turns corners of the house: the outside face of its beams from its left end as seen from outside, past each corner, to its right end", readPorchLine).within(-12000, 12000),
	lumberKey("beam", `"3-2x10"`, "section of the beam", func(p *porchDraft) *plan.Lumber { return &p.Beam }).must(),
	lumberKey("post", `"6x6"`, "section of the posts", func(p *porchDraft) *plan.Lumber { return &p.Post }).or("6x6", `"6x6"`),
	custom("posts", "lengths, a list for each side, or @ spacing", `["3in", "9'", "18'"]`, "stations of the post centers, or their greatest spacing; of a line of several sides a list for each, [[\"3in\", \"9'\"], [\"9'\", \"18'\"]], from its own left end: a post stands under each corner besides",
		readPorchPosts).must(),
	lengthKey("base", `"6in"`, "height of the posts' foot above grade", func(p *porchDraft) *float64 { return &p.Base }).within(0, 600).or("0'", `"0'"`),
	sizeKey("top", `"9'"`, "height of the beam's top above grade", func(p *porchDraft) *float64 { return &p.Top }).within(6, 720).must(),
	flagKey("piles", "its posts are piles that go up in one piece to the beam: they have no base, and their embedment is the engineer's", func(p *porchDraft) *bool { return &p.Piles }),
	custom("roof", "table", `{ pitch = "3:12", rafters = "2x6 @ 16in" }`, "its roof, from the beams to ledgers on the house: a shed over each side, named \"porch-roof-S\", with a hip past each corner; without it write [[roof]]s", func(v value, p *porchDraft) {
		if n, ok := v.table(); ok {
			p.roof = &n
		}
	}),
	custom("deck", "table", `{ joists = "2x8 @ 16in", girder = "2-2x10", rail = "6'" }`, "its deck, from a ledger on the house's rim to a girder bolted to the inside of the posts", func(v value, p *porchDraft) {
		if n, ok := v.table(); ok {
			p.deck = &n
		}
	}),
}

// deckDraft is a deck of a porch with what must wait for its other keys.
type deckDraft struct {
	*plan.PorchDeck
	top bool // given
}

// porchDeckKeys fill the deck of a porch.
var porchDeckKeys = []binding[deckDraft]{
	custom("level", "name of a level", `"first"`, "the level beside whose floor it lies", func(v value, d *deckDraft) { d.Level = v.level() }).otherwise("the lowest"),
	custom("top", "length", `"9' 10in"`, "height of its boards above grade", func(v value, d *deckDraft) { d.Top, d.top = v.length() }).within(6, 720).
		otherwise("1 1/2in under the level's floor: rain stays out"),
	custom("joists", "lumber @ spacing", `"2x8 @ 16in"`, "its joists, with their spacing on center", func(v value, d *deckDraft) { d.Joists, d.Space, _ = v.spaced() }).must(),
	lumberKey("girder", `"2-2x10"`, "the girder under their outer ends", func(d *deckDraft) *plan.Lumber { return &d.Girder }).must(),
	sizeKey("board", `"1in"`, "thickness of its boards", func(d *deckDraft) *float64 { return &d.Board }).within(0.5, 3).or("1in", `"1in"`),
	choiceKey("boards", plan.BoardRuns, "how its boards run: along the house, square across the joists, or diagonal", func(d *deckDraft) *plan.BoardsRun { return &d.Boards }).orWord(string(plan.BoardsAlong)),
	sizeKey("rail", `"6'"`, "greatest distance of the posts of its rails; rails are no load path", func(d *deckDraft) *float64 { return &d.Rail }).within(12, 144).otherwise("no rails"),
}

// readDeck gives the sides of a porch their deck.
func (d *porchDraft) readDeck(legs []*plan.Porch, p *plan.Plan) {
	n := *d.deck
	n.where = "porch " + d.Name + ", deck"
	x := &deckDraft{PorchDeck: &plan.PorchDeck{Pos: n.pos()}}
	if len(p.Levels) > 0 {
		x.Level = p.Levels[0]
	}
	read(n, porchDeckKeys, x)
	if x.Level == nil || x.Joists.Depth == 0 || x.Girder.Depth == 0 {
		return // told where they are read
	}
	if !x.top {
		x.Top = x.Level.Floor - 1.5
	}
	if x.Space == 0 {
		x.Space = 16
	}
	for _, leg := range legs {
		leg.Deck = x.PorchDeck
	}
}

// porchRoofKeys fill the roof of a porch.
var porchRoofKeys = slices.DeleteFunc(slices.Clone(roofKeys), func(b binding[roofDraft]) bool {
	return !slices.Contains([]string{"over", "pitch", "overhang", "rake", "rafters", "blocking", "blocking_set"}, b.Name)
})

func readPorchLine(v value, p *porchDraft) {
	list, ok := v.raw.([]any)
	if !ok || len(list) < 2 {
		v.bad("wrong-type", `write it like [["0'", "-8'"], ["36'", "-8'"], ["36'", "20'"]]`, "must be two points or more")
		return
	}
	for i, x := range list {
		if q, ok := (value{v.node, v.key, i, x}).point(); ok {
			p.line = append(p.line, q)
		}
	}
	if len(p.line) < len(list) {
		p.line = nil
	}
	for i := range p.line {
		v.checkTurn(p.line, i)
	}
}

// checkTurn reports a corner of a line that is not square, or turns away from the house.
func (v value) checkTurn(line []geom.Vec2, i int) {
	at := func(what, mend string) {
		x := v
		x.index = i
		x.bad("porch-corner", mend, "%s", what)
	}
	if i > 0 && line[i].Sub(line[i-1]).Len() < 12 {
		at("lies less than a foot from the point before it", "take one of the two out")
		return
	}
	if i == 0 || i+1 == len(line) {
		return
	}
	a, b := line[i].Sub(line[i-1]), line[i+1].Sub(line[i])
	switch {
	case !geom.Square(a.Unit(), b.Unit()):
		at("the line does not turn square here", "write a point at each corner, and porches of their own where walls meet at other angles")
	case a.Cross(b) < 0:
		at("the line turns an inside corner here, whose roof would have a valley: that is not framed", "write the points from left to right as seen from outside; where the porch goes into a corner of the house end it there and begin another")
	}
}

func readPorchPosts(v value, p *porchDraft) {
	if len(p.line) == 0 {
		p.Posts = v.stations(p.To.Sub(p.From).Len())
		return
	}
	list, many := v.raw.([]any)
	if !many {
		p.step = v.greatest()
		return
	}
	if len(p.line) == 2 && !isList(list) {
		p.sides = [][]float64{v.stations(p.line[1].Sub(p.line[0]).Len())}
		return
	}
	if len(list) != len(p.line)-1 || !isList(list) {
		v.bad("wrong-type", `write [["3in", "9'"], ["9'", "18'"]], one list for each side, or "@ 9'"`, "must have one list of stations for each of the %d sides", len(p.line)-1)
		return
	}
	for i, x := range list {
		side := value{v.node, v.key, i, x}
		if raw, ok := x.([]any); ok && len(raw) == 0 { // the posts of the corners alone
			p.sides = append(p.sides, nil)
			continue
		}
		p.sides = append(p.sides, side.stations(p.line[i+1].Sub(p.line[i]).Len()))
	}
}

// isList tells whether an array is one of arrays.
func isList(list []any) bool {
	for _, x := range list {
		if _, ok := x.([]any); !ok {
			return false
		}
	}
	return true
}

// greatest reads "@ 8'", the greatest spacing of something; 0 where it is none.
func (v value) greatest() float64 {
	at := v.stations(1)
	if len(at) == 0 {
		return 0
	}
	s, _ := v.raw.(string)
	v.raw = s[1:]
	in, _ := v.length()
	return in
}

// readPorches reads one [[porch]].
func readPorches(n node, _ int, p *plan.Plan) {
	d := &porchDraft{Porch: &plan.Porch{Pos: n.pos()}}
	read(n, porchKeys, d)
	if d.Name == "" {
		return
	}
	if d.Top > 0 && d.Top-d.Beam.Depth <= d.Base {
		n.fault("top", "no-room", "raise top or lower base", "top %s less the beam of %s leaves no post above base %s",
			n.r.units().Length(d.Top), n.r.units().Length(d.Beam.Depth), n.r.units().Length(d.Base))
	}
	if d.Piles && n.has("base") {
		n.fault("base", "idle-key", "take it out, or piles", "base is for posts on footings, and these are piles out of the ground")
	}
	for _, key := range []string{"from", "to"} {
		switch {
		case n.has("line") && n.has(key):
			n.fault(key, "idle-key", "take it out", "%s is for a straight porch, and this one has a line", key)
		case !n.has("line") && !n.has(key):
			n.fault("", "missing-key", `add from and to, or line = [["0'", "-8'"], ["36'", "-8'"], ["36'", "20'"]]`, "%s is missing", key)
		}
	}
	legs := d.legs()
	p.Porches = append(p.Porches, legs...)
	if d.roof != nil {
		d.readRoof(legs, p)
	}
	if d.deck != nil {
		d.readDeck(legs, p)
	}
}

// legs parts a porch into its straight sides.
func (d *porchDraft) legs() (out []*plan.Porch) {
	if len(d.line) == 0 {
		return []*plan.Porch{d.Porch}
	}
	for i := 1; i < len(d.line); i++ {
		x := *d.Porch
		x.From, x.To = d.line[i-1], d.line[i]
		if len(d.line) > 2 {
			x.Name += "-" + string(facing(x.From, x.To))
		}
		x.Posts = d.postsOf(i - 1)
		out = append(out, &x)
	}
	return out
}

// postsOf lists the posts of side i with those under its corners.
func (d *porchDraft) postsOf(i int) []float64 {
	lo, hi := d.Post.Width()/2, d.line[i+1].Sub(d.line[i]).Len()-d.Post.Width()/2
	first, last := i == 0, i+2 == len(d.line)
	if !first {
		lo = d.Beam.Width() / 2
	}
	if !last {
		hi = d.line[i+1].Sub(d.line[i]).Len() - d.Beam.Width()/2
	}
	if i < len(d.sides) {
		at := slices.Clone(d.sides[i])
		if !first {
			at = append([]float64{lo}, at...)
		}
		if !last {
			at = append(at, hi)
		}
		return at
	}
	if d.step == 0 {
		return []float64{lo, hi}
	}
	n := max(1, math.Ceil((hi-lo-tolerance)/d.step))
	var at []float64
	for k := range int(n) + 1 {
		at = append(at, lo+(hi-lo)*float64(k)/n)
	}
	return at
}

// facing returns the side of the compass that something looks to whose outside is at its
// right.
func facing(from, to geom.Vec2) plan.Side {
	out := to.Sub(from).Right()
	switch out.MainAxis() {
	case 0:
		if out.X < 0 {
			return plan.West
		}
		return plan.East
	}
	if out.Y < 0 {
		return plan.South
	}
	return plan.North
}

// opposite is the side across from each.
var opposite = map[plan.Side]plan.Side{plan.North: plan.South, plan.South: plan.North, plan.East: plan.West, plan.West: plan.East}

// readRoof adds the sheds over the sides of a porch.
func (d *porchDraft) readRoof(legs []*plan.Porch, p *plan.Plan) {
	n := *d.roof
	n.where = "porch " + d.Name + ", roof"
	one := &roofDraft{Roof: &plan.Roof{Pos: n.pos(), Kind: plan.ShedRoof, CeilingTies: true}}
	if len(p.Levels) > 0 {
		one.Over = p.Levels[len(p.Levels)-1]
	}
	n.r.whole(one.Roof, func() { read(n, porchRoofKeys, one) })
	if !one.rake {
		one.Rake = one.Overhang
	}
	if n.has("blocking_set") && one.Blocking == plan.NoBlocking {
		n.fault("blocking_set", "idle-key", `take it out, or write blocking = "full"`, "blocking_set is for blocks at the eaves, and this roof has none")
	}
	if one.Over == nil {
		return // told where levels are read
	}
	deep := make([]float64, len(legs))
	for i, leg := range legs {
		if d := leg.To.Sub(leg.From); d.X != 0 && d.Y != 0 {
			n.fault("", "porch-corner", "turn it so that the porch runs along x or y, or leave the roof out", "the porch runs neither along x nor along y, and a roof over it cannot")
			return
		}
		if deep[i] = behind(p, one.Over, leg); deep[i] == 0 {
			n.fault("", "porch-without-wall", "let the line run along an exterior wall, from left to right as seen from outside, or write the roof as [[roof]]s",
				"no exterior wall of level %s stands behind the %s side of the porch for its roof to lean on", one.Over.Name, facing(leg.From, leg.To))
			return
		}
	}
	for i, leg := range legs {
		r := *one.Roof
		r.Name = d.Name + "-roof"
		if len(legs) > 1 {
			r.Name += "-" + string(facing(leg.From, leg.To))
		}
		f, long := geom.NewFrame(leg.From, leg.To), leg.To.Sub(leg.From).Len()
		from := 0.0
		if i > 0 {
			from = deep[i-1]
		}
		a, b := d.even(p, f.At(from, 0, 0).Flat()), d.even(p, f.At(long, deep[i], 0).Flat())
		r.Area = [2]geom.Vec2{{X: min(a.X, b.X), Y: min(a.Y, b.Y)}, {X: max(a.X, b.X), Y: max(a.Y, b.Y)}}
		r.High = opposite[facing(leg.From, leg.To)]
		x := &roofDraft{Roof: &r, area: true}
		if i+1 < len(legs) {
			end := 0
			if v := f.D; v.X+v.Y > 0 {
				end = 1
			}
			r.GableEnd[end] = plan.HipEnd
		}
		x.settle(p)
		p.Roofs = append(p.Roofs, x.Roof)
	}
}

// even is a point without what a frame leaves of rounding: on the very lines of the walls
// and of the porch, so that a roof that ends at a wall does not reach over it by a hair.
func (d *porchDraft) even(p *plan.Plan, q geom.Vec2) geom.Vec2 {
	on := append(slices.Clone(d.line), d.From, d.To)
	for _, w := range p.Walls {
		on = append(on, w.From, w.To)
	}
	out := q
	for _, o := range on {
		if math.Abs(o.X-q.X) < tolerance {
			out.X = o.X
		}
		if math.Abs(o.Y-q.Y) < tolerance {
			out.Y = o.Y
		}
	}
	return out
}

// behind returns how far behind the outside face of a porch's beam the nearest exterior
// wall of a level stands that looks at it, in; 0 for none.
func behind(p *plan.Plan, l *plan.Level, x *plan.Porch) (deep float64) {
	f, long := geom.NewFrame(x.From, x.To), x.To.Sub(x.From).Len()
	for _, w := range p.Walls {
		if !w.Exterior || l == nil || !w.On(l) || !geom.With(w.Frame().D, f.D) {
			continue
		}
		a, t := f.Local(w.From)
		b, _ := f.Local(w.To)
		if t > x.Beam.Width() && min(a, b) < long-tolerance && max(a, b) > tolerance && (deep == 0 || t < deep) {
			deep = t
		}
	}
	return deep
}
