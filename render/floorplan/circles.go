package floorplan

import (
	"math"

	"galewright/render/label"
	"galewright/render/page"
	"galewright/render/sheet"
)

// circled is neighboring symbols of one mark, and the legend circles that
// speak for them.
type circled struct {
	name   string
	number int
	at     []sheet.Pt // the symbols, in order
	along  sheet.Pt   // the way they follow each other, unit
	loose  bool       // the symbols stand at their own places, not in lanes
	placed []sheet.Pt // centers of their circles
}

// circleReach is how far a symbol may be from the nearest circle that speaks
// for it before it gets one of its own, mm of paper.
func circleReach(c *page.Context) sheet.MM {
	if page.Large(c.Paper) {
		return 70
	}
	return 35
}

// circleFor queues the circle that symbols must have: before the first, after
// the last, in their gaps, around either end. More follow where the symbols
// go on for long.
func (v *planView) circleFor(g *circled) {
	rad := v.LegendRadius()
	d := rad + symbolSize(v.Context)/2 + 0.6
	first, last := g.at[0], g.at[len(g.at)-1]
	l := label.Label{Name: g.name, W: 2 * rad, H: 2 * rad, Anchors: []sheet.Pt{first, last, g.at[len(g.at)/2]}}
	for _, more := range []sheet.MM{0, 2, 4} {
		l.Near = append(l.Near, first.Add(stretched(g.along, -d-more)), last.Add(stretched(g.along, d+more)))
	}
	for i := 1; i < len(g.at); i++ {
		l.Near = append(l.Near, gapSpots(g.at[i-1], g.at[i], d)...)
	}
	for _, more := range []sheet.MM{0.4, 2, 3.5} {
		l.Near = append(l.Near, aroundPoint(first, 2*rad, 2*rad, symbolSize(v.Context)/2+more)...)
		l.Near = append(l.Near, aroundPoint(last, 2*rad, 2*rad, symbolSize(v.Context)/2+more)...)
	}
	v.circles = append(v.circles, g)
	v.later(l, func(r sheet.Rect) { v.setCircle(g, r.Center()) })
}

func (v *planView) setCircle(g *circled, at sheet.Pt) {
	v.LegendCircle(g.number, at, g.name, nil)
	g.placed = append(g.placed, at)
}

// moreCircles sets further circles along the symbols that stand far from
// theirs, where there is room beside them: nobody has to look along a wall
// for a number.
func (v *planView) moreCircles() {
	rad := v.LegendRadius()
	for _, g := range v.circles {
		for i, p := range g.at {
			if distance(p, g.placed) <= circleReach(v.Context) {
				continue
			}
			for _, c := range v.besideSymbol(g, i) {
				r := sheet.Rect{X: c.X - rad, Y: c.Y - rad, W: 2 * rad, H: 2 * rad}
				if v.board.Free(r) {
					v.board.BlockText(r)
					v.setCircle(g, c)
					break
				}
			}
		}
	}
}

// besideSymbol returns where a circle for the i-th symbol may stand: in the
// gaps before and after it, then to its sides.
func (v *planView) besideSymbol(g *circled, i int) (out []sheet.Pt) {
	d := v.LegendRadius() + symbolSize(v.Context)/2 + 0.6
	if i+1 < len(g.at) {
		out = append(out, gapSpots(g.at[i], g.at[i+1], d)[0])
	}
	if i > 0 {
		out = append(out, gapSpots(g.at[i], g.at[i-1], d)[0])
	}
	side := sheet.Pt{X: -g.along.Y, Y: g.along.X}
	for _, more := range []sheet.MM{0, 1.5} {
		out = append(out, g.at[i].Add(stretched(side, d+more)), g.at[i].Add(stretched(side, -d-more)))
	}
	if g.loose {
		for _, more := range []sheet.MM{0.4, 2, 4} {
			out = append(out, aroundPoint(g.at[i], 2*v.LegendRadius(), 2*v.LegendRadius(), symbolSize(v.Context)/2+more)...)
		}
	}
	return out
}

func stretched(p sheet.Pt, by sheet.MM) sheet.Pt { return sheet.Pt{X: p.X * by, Y: p.Y * by} }

// gapSpots returns where between two symbols a circle may stand: in the
// middle of a narrow gap, else d from either.
func gapSpots(a, b sheet.Pt, d sheet.MM) []sheet.Pt {
	way := b.Add(stretched(a, -1))
	long := sheet.MM(math.Hypot(float64(way.X), float64(way.Y)))
	if long < 4*d {
		return []sheet.Pt{a.Add(stretched(way, 0.5))}
	}
	step := stretched(way, d/long)
	return []sheet.Pt{a.Add(step), b.Add(stretched(step, -1))}
}

// distance returns how far the nearest of some points is from p, mm.
func distance(p sheet.Pt, to []sheet.Pt) sheet.MM {
	best := math.Inf(1)
	for _, q := range to {
		best = min(best, math.Hypot(float64(q.X-p.X), float64(q.Y-p.Y)))
	}
	return sheet.MM(best)
}

// stretches parts n symbols in their order into those of one mark that no
// other mark with the same symbol comes between: each stretch needs a number
// of its own to be told apart. Of marks that no other looks like there is one
// stretch each. The marks come in the order of their first symbol.
func stretches(n int, mark, symbol func(i int) string) (out [][]int) {
	alone := map[string]string{} // the one mark with the symbol; "" for several
	for i := range n {
		if m, ok := alone[symbol(i)]; ok && m != mark(i) {
			alone[symbol(i)] = ""
		} else if !ok {
			alone[symbol(i)] = mark(i)
		}
	}
	open := map[string]int{} // by symbol, the stretch that goes on
	for i := range n {
		s := symbol(i)
		if k, ok := open[s]; ok && (alone[s] != "" || mark(out[k][0]) == mark(i)) {
			out[k] = append(out[k], i)
			continue
		}
		open[s] = len(out)
		out = append(out, []int{i})
	}
	return out
}
