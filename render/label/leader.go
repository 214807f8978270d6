package label

import (
	"math"

	"galewright/render/sheet"
)

// lead looks outward from the anchors, ring by ring, for the free place with
// the least leader: length, and what it crosses.
func (b *Board) lead(j *job) bool {
	reach := j.Reach
	if reach == 0 {
		reach = 60
	}
	const stride sheet.MM = 1.5
	best := math.Inf(1)
	var place sheet.Rect
	var leader []sheet.Pt
	for k, a := range j.Anchors {
		for d := stride; d <= reach && float64(d)+4*float64(k) < best; d += stride + d/8 {
			for _, u := range ring {
				r := centered(sheet.Pt{X: a.X + u.X*(d+j.W/2), Y: a.Y + u.Y*(d+j.H/2)}, j.W, j.H)
				if !b.fits(j, r) {
					continue
				}
				end := edge(r, a)
				cost := float64(d) + 4*float64(k) + b.leaderCost(a, end)
				if cost < best {
					best, place, leader = cost, r, []sheet.Pt{a, end}
				}
			}
		}
	}
	if leader == nil {
		return false
	}
	b.put(j, place, leader, -1)
	return true
}

// ring holds the directions a leader is tried in, every 5 degrees: sideways
// first, then ever steeper.
var ring = func() (out []sheet.Pt) {
	for _, off := range [...]float64{0, 30, 45, 15, 60, 75, 90, 5, 10, 20, 25, 35, 40, 50, 55, 65, 70, 80, 85} {
		for _, deg := range [...]float64{off, 180 - off, -off, off - 180} {
			s, c := math.Sincos(deg * math.Pi / 180)
			out = append(out, sheet.Pt{X: sheet.MM(c), Y: -sheet.MM(s)})
		}
	}
	return out
}()

// leaderCost weighs what a leader crosses; through lettering it may not go.
func (b *Board) leaderCost(p, q sheet.Pt) float64 {
	if b.barred.crossings(p, q) > 0 {
		return math.Inf(1)
	}
	cost := 6 * float64(max(0, b.taken.crossings(p, q)-1))
	b.linesG.over(around(p, q), func(id int) bool {
		if meet(p, q, b.lines[id][0], b.lines[id][1]) {
			cost += 15
		}
		return true
	})
	return cost
}

// edge returns the point of r's outline that faces p.
func edge(r sheet.Rect, p sheet.Pt) sheet.Pt {
	c := r.Center()
	dx, dy := p.X-c.X, p.Y-c.Y
	k := sheet.MM(math.Inf(1))
	if dx != 0 {
		k = min(k, r.W/2/abs(dx))
	}
	if dy != 0 {
		k = min(k, r.H/2/abs(dy))
	}
	if k > 1 {
		return p
	}
	return sheet.Pt{X: c.X + dx*k, Y: c.Y + dy*k}
}
