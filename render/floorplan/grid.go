package floorplan

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/render/page"
	"galewright/render/sheet"
)

// gridLine is one line of the building's grid.
type gridLine struct {
	name   string
	alongY bool    // a line of constant x
	at     float64 // x or y, in
	outer  bool
}

// roomForGrid is where the grid's dimensions and bubbles stand, mm from the
// house's edge.
type gridRoom struct{ dim, step, bubble, radius sheet.MM }

func roomForGrid(c *page.Context, first sheet.MM) gridRoom {
	z := c.Size.Dim
	r := z * 1.15
	return gridRoom{dim: first + 2, step: z*1.9 + 2.5, bubble: first + 2 + 2*(z*1.9+2.5) + r - 1, radius: r}
}

// total is the room that grid and dimensions take in all.
func (g gridRoom) total() sheet.MM { return g.bubble + g.radius + 1 }

// gridOf returns the grid of the house: outer faces and the faces of bearing
// and shear walls, numbers from west to east, letters from south to north.
func gridOf(c *page.Context) (lines []gridLine) {
	for _, alongY := range []bool{true, false} {
		var of []gridLine
		for _, w := range c.House.Plan.Walls {
			if g, ok := lineOf(w, alongY); ok {
				of = append(of, g)
			}
		}
		slices.SortStableFunc(of, func(a, b gridLine) int {
			if math.Abs(a.at-b.at) > 1 {
				return cmp.Compare(a.at, b.at)
			}
			return cmp.Compare(outerRank(a), outerRank(b))
		})
		of = besideOuter(slices.CompactFunc(of, func(a, b gridLine) bool { return math.Abs(a.at-b.at) <= 1 }))
		for i := range of {
			of[i].name = fmt.Sprint(i + 1)
			if !alongY {
				of[i].name = gridLetter(i)
			}
		}
		lines = append(lines, of...)
	}
	return lines
}

// besideFace is how near to the face of an outer wall an inner wall's line has none of its
// own, in: the figure between them would find no room. A note tells it.
const besideFace = 6.0

// besideOuter leaves out the lines of inner walls that lie beside an outer wall's.
func besideOuter(lines []gridLine) []gridLine {
	outer := func(g gridLine) bool {
		return slices.ContainsFunc(lines, func(o gridLine) bool { return o.outer && math.Abs(o.at-g.at) < besideFace })
	}
	return slices.DeleteFunc(slices.Clone(lines), func(g gridLine) bool { return !g.outer && outer(g) })
}

// besideNotes says where inner walls of a level stand that have no grid line because they
// lie beside an outer wall's.
func besideNotes(c *page.Context, l *plan.Level) (out []string) {
	for _, w := range c.House.Plan.Walls {
		for _, alongY := range []bool{true, false} {
			line, ok := lineOf(w, alongY)
			if !ok || w.Exterior || w.Level != l {
				continue
			}
			for _, g := range gridOf(c) {
				off := line.at - g.at
				if g.alongY != alongY || !g.outer || math.Abs(off) < 1.0/16 || math.Abs(off) >= besideFace {
					continue
				}
				side := map[[2]bool]plan.Side{{true, true}: plan.East, {true, false}: plan.West, {false, true}: plan.North, {false, false}: plan.South}[[2]bool{alongY, off > 0}]
				out = append(out, fmt.Sprintf("Wall %s: the face that it is measured from is %s %s of grid line %s.", w.Name, c.Length(math.Abs(off)), sideWord[side], g.name))
			}
		}
	}
	return out
}

// sideWord are the sides in a sentence.
var sideWord = map[plan.Side]string{plan.North: "north", plan.East: "east", plan.South: "south", plan.West: "west"}

func outerRank(g gridLine) int {
	if g.outer {
		return 0
	}
	return 1
}

// lineOf returns the grid line of a wall that is worth one.
func lineOf(w *plan.Wall, alongY bool) (gridLine, bool) {
	if !w.Exterior && !w.Bearing && len(w.Shear) == 0 {
		return gridLine{}, false
	}
	d := w.Frame().D
	if alongY && math.Abs(d.X) < 1e-6 {
		return gridLine{alongY: true, at: w.From.X, outer: w.Exterior}, true
	}
	if !alongY && math.Abs(d.Y) < 1e-6 {
		return gridLine{at: w.From.Y, outer: w.Exterior}, true
	}
	return gridLine{}, false
}

// gridLetter names the i-th lettered line; I and O are left out, which read
// as figures (common drafting practice, no published source).
func gridLetter(i int) string {
	const letters = "ABCDEFGHJKLMNPQRSTUVWXYZ"
	s := string(letters[i%len(letters)])
	if n := i / len(letters); n > 0 {
		s += fmt.Sprint(n)
	}
	return s
}

// drawGrid draws lines, bubbles and the two strings of dimensions: line to
// line and overall. Lines across the sheet get theirs at the left, lines up
// the sheet at the top.
func (v *planView) drawGrid(lines []gridLine, s planSheet) {
	var up, across []gridLine
	for _, g := range lines {
		p := geom.Vec2{X: g.at, Y: g.at}
		q := uv(p, v.turned)
		if g.alongY != v.turned {
			if q.X >= s.u0-1 && q.X <= s.u1+1 {
				g.at = q.X
				up = append(up, g)
			}
		} else if q.Y >= s.v0-1 && q.Y <= s.v1+1 {
			g.at = q.Y
			across = append(across, g)
		}
	}
	byAt := func(a, b gridLine) int { return cmp.Compare(a.at, b.at) }
	slices.SortFunc(up, byAt)
	slices.SortFunc(across, byAt)
	v.gridUp(up)
	v.gridAcross(across)
}

func (v *planView) gridUp(lines []gridLine) {
	top, bottom := v.vp.Clip.Y, v.vp.Clip.Y+v.vp.Clip.H+3
	g := v.gridTop
	var xs, sizes []sheet.MM
	for _, l := range lines {
		xs, sizes = append(xs, v.vp.X(l.at)), append(sizes, 2*g.radius+1)
	}
	y := top - g.bubble
	for i, x := range page.Spread(xs, sizes) {
		v.Line(sheet.PenGrid, sheet.LayerGrid, sheet.Pt{X: xs[i], Y: bottom}, sheet.Pt{X: xs[i], Y: top - g.dim - g.step - 2})
		v.Line(sheet.PenDim, sheet.LayerGrid, sheet.Pt{X: xs[i], Y: top - g.dim - g.step - 2}, sheet.Pt{X: x, Y: y + g.radius})
		v.board.BlockLine(sheet.Pt{X: xs[i], Y: top}, sheet.Pt{X: xs[i], Y: y})
		v.bubble(lines[i].name, sheet.Pt{X: x, Y: y})
	}
	v.stringU(lines, xs, top-g.dim)
	if len(lines) > 2 {
		v.overall(lines, xs, func(mid sheet.MM, s string) {
			y := top - g.dim - g.step
			v.stringLine(sheet.Pt{X: xs[0], Y: y}, sheet.Pt{X: xs[len(xs)-1], Y: y})
			v.dimText(s, sheet.Pt{X: mid, Y: y - 1.1}, v.Size.Dim, 0)
		})
	}
}

// stringU sets one string of dimensions across the sheet at height y.
func (v *planView) stringU(lines []gridLine, xs []sheet.MM, y sheet.MM) {
	if len(lines) < 2 {
		return
	}
	z := v.Size.Dim
	v.Line(sheet.PenDim, sheet.LayerDimension, sheet.Pt{X: xs[0], Y: y}, sheet.Pt{X: xs[len(xs)-1], Y: y})
	v.board.BlockLine(sheet.Pt{X: xs[0], Y: y}, sheet.Pt{X: xs[len(xs)-1], Y: y})
	for _, x := range xs {
		v.Tick(sheet.Pt{X: x, Y: y})
	}
	mids, words, sizes := v.stringParts(lines, xs)
	for i, x := range page.Spread(mids, sizes) {
		v.dimText(words[i], sheet.Pt{X: x, Y: y - 1.1}, z, 0)
	}
}

// stringLine draws a dimension's line with a tick at each end.
func (v *planView) stringLine(a, b sheet.Pt) {
	v.Line(sheet.PenDim, sheet.LayerDimension, a, b)
	v.board.BlockLine(a, b)
	v.Tick(a)
	v.Tick(b)
}

// overall sets the dimension over all lines, its text in the middle of the
// widest bay, where no grid line runs through it.
func (v *planView) overall(lines []gridLine, xs []sheet.MM, set func(mid sheet.MM, s string)) {
	wide, mid := sheet.MM(0), sheet.MM(0)
	for i := 1; i < len(xs); i++ {
		if d := xs[i] - xs[i-1]; d > wide+0.01 {
			wide, mid = d, (xs[i]+xs[i-1])/2
		}
	}
	set(mid, v.Length(math.Abs(lines[len(lines)-1].at-lines[0].at)))
}

// stringParts returns where each figure of a string wants its middle, the
// figures, and the room they take. A figure wider than its bay stands
// outside at an end of the string, else beside it in a wide bay, where no line runs
// through it.
func (v *planView) stringParts(lines []gridLine, xs []sheet.MM) (mids []sheet.MM, words []string, sizes []sheet.MM) {
	last := len(lines) - 1
	for i := 1; i <= last; i++ {
		s := v.Length(math.Abs(lines[i].at - lines[i-1].at))
		mid, size := (xs[i]+xs[i-1])/2, page.TextWidth(s, v.Size.Dim, false)+2
		switch narrow := xs[i]-xs[i-1] < size; {
		case narrow && i == 1:
			mid = xs[0] - size/2
		case narrow && (i == last || xs[i+1]-xs[i] > 3*size):
			mid = xs[i] + size/2
		case narrow && xs[i-1]-xs[i-2] > 3*size:
			mid = xs[i-1] - size/2
		}
		mids, words, sizes = append(mids, mid), append(words, s), append(sizes, size)
	}
	return mids, words, sizes
}

func (v *planView) dimText(s string, at sheet.Pt, z sheet.MM, angle float64) {
	r := v.BoxedText("dimension", page.Lettered{S: s, Cap: z, At: at, Anchor: sheet.Middle, Angle: angle, Role: "dimension"})
	v.board.BlockText(r)
}

func (v *planView) gridAcross(lines []gridLine) {
	left, right := v.vp.Clip.X, v.vp.Clip.X+v.vp.Clip.W+3
	g := v.gridLeft
	slices.Reverse(lines) // down the paper
	var ys, sizes []sheet.MM
	for _, l := range lines {
		ys, sizes = append(ys, v.vp.Y(l.at)), append(sizes, 2*g.radius+1)
	}
	x := left - g.bubble
	for i, y := range page.Spread(ys, sizes) {
		v.Line(sheet.PenGrid, sheet.LayerGrid, sheet.Pt{X: right, Y: ys[i]}, sheet.Pt{X: left - g.dim - g.step - 2, Y: ys[i]})
		v.Line(sheet.PenDim, sheet.LayerGrid, sheet.Pt{X: left - g.dim - g.step - 2, Y: ys[i]}, sheet.Pt{X: x + g.radius, Y: y})
		v.board.BlockLine(sheet.Pt{X: left, Y: ys[i]}, sheet.Pt{X: x, Y: ys[i]})
		v.bubble(lines[i].name, sheet.Pt{X: x, Y: y})
	}
	v.stringV(lines, ys, left-g.dim)
	if len(lines) > 2 {
		v.overall(lines, ys, func(mid sheet.MM, s string) {
			x := left - g.dim - g.step
			v.stringLine(sheet.Pt{X: x, Y: ys[0]}, sheet.Pt{X: x, Y: ys[len(ys)-1]})
			v.dimText(s, sheet.Pt{X: x - 1.1, Y: mid}, v.Size.Dim, 90)
		})
	}
}

// stringV sets one string of dimensions up the sheet at x, read from the right.
func (v *planView) stringV(lines []gridLine, ys []sheet.MM, x sheet.MM) {
	if len(lines) < 2 {
		return
	}
	v.Line(sheet.PenDim, sheet.LayerDimension, sheet.Pt{X: x, Y: ys[0]}, sheet.Pt{X: x, Y: ys[len(ys)-1]})
	v.board.BlockLine(sheet.Pt{X: x, Y: ys[0]}, sheet.Pt{X: x, Y: ys[len(ys)-1]})
	for _, y := range ys {
		v.Tick(sheet.Pt{X: x, Y: y})
	}
	mids, words, sizes := v.stringParts(lines, ys)
	for i, y := range page.Spread(mids, sizes) {
		v.dimText(words[i], sheet.Pt{X: x - 1.1, Y: y}, v.Size.Dim, 90)
	}
}

// bubble draws a grid line's name in its circle.
func (v *planView) bubble(name string, c sheet.Pt) {
	r, z := v.gridTop.radius, v.Size.Dim
	v.Circle(sheet.Style{Pen: sheet.PenMember, Fill: sheet.White, Layer: sheet.LayerGrid}, c, r)
	v.Text(page.Lettered{S: name, Cap: z, At: sheet.Pt{X: c.X, Y: c.Y + z/2}, Anchor: sheet.Middle, Bold: true, Role: "label", Layer: sheet.LayerGrid})
	b := sheet.Rect{X: c.X - r, Y: c.Y - r, W: 2 * r, H: 2 * r}
	v.Box("label", "grid line "+name, b)
	v.board.BlockText(b)
}
