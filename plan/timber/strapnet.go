package timber

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"galewright/plan/source"
)

// Hole is a hole in a strap: X along it, Y across from one edge, in.
type Hole struct{ X, Y, D float64 }

// Section is the weakest way across a strap through one row of holes.
type Section struct {
	X         float64 // of the row, in
	Holes     int     // cut by it
	Removed   float64 // width of holes less what a zigzag gains, in
	Net       float64 // area, in²
	Staggered bool    // the way goes through holes of other rows too
	Rupture   float64 // allowable, lb
}

// StrapValue is the allowable tension of a strap with its holes where they
// are.
type StrapValue struct {
	Tension
	Rows   []Section // in order along the strap
	Least  int       // index of the row with the least rupture; -1 = no holes
	Source string
}

// zigzag is the factor on the net area of a section that zigzags through
// staggered holes in flat sheet: AISI S100-07 equation E3.2-8, kept in S100-16
// J6.2 (from memory).
const zigzag = 0.90

// StrapTensionAt returns the allowable tension of a flat strap: gross yielding
// (AISI S100-16 D2, omega 1.67) and rupture on the weakest section through
// the holes (D3, omega 2.00), both transcribed; staggered holes by s²/4g with
// the factor 0.90 (from memory). The whole force is taken at every row, also
// past nails that have already taken part of it. Shear lag is not counted:
// it is 1 with two fasteners or more in a line along the force (AISI S100-16
// J6.2, from memory).
func StrapTensionAt(width, thickness float64, holes []Hole, s Steel) (StrapValue, error) {
	for _, h := range holes {
		if h.Y-h.D/2 < -slack || h.Y+h.D/2 > width+slack {
			return StrapValue{}, fmt.Errorf("the hole of %.3f in at %.3f, %.3f in breaks the edge of a strap %.3f in wide", h.D, h.X, h.Y, width)
		}
	}
	ag := width * thickness
	v := StrapValue{Tension: tension(ag, ag, s), Least: -1, Source: cite("AISI S100-16 D2, D3", source.Transcribed)}
	v.Rows = sections(width, thickness, holes, s)
	for i, r := range v.Rows {
		if v.Least < 0 || r.Rupture < v.Rows[v.Least].Rupture-1e-9 {
			v.Least = i
		}
	}
	if v.Least >= 0 {
		v.Tension = tension(ag, v.Rows[v.Least].Net, s)
	}
	return v, nil
}

// way is the width that holes take from a section, and how many it cuts.
type way struct {
	removed float64
	holes   int
	ok      bool
}

func (w way) over(v way) way {
	if !v.ok || w.ok && w.removed >= v.removed {
		return w
	}
	return v
}

// sections returns the weakest section through each row of holes.
func sections(width, t float64, holes []Hole, s Steel) []Section {
	hs := slices.Clone(holes)
	slices.SortFunc(hs, func(a, b Hole) int { return cmp.Or(cmp.Compare(a.Y, b.Y), cmp.Compare(a.X, b.X)) })
	ahead, back := ways(hs), ways(reflected(hs, width))
	slices.Reverse(back)
	var rows []Section
	for i, h := range hs {
		for k := range 4 {
			a, b := ahead[i][k/2], back[i][k%2]
			if !a.ok || !b.ok {
				continue
			}
			x := Section{X: h.X, Holes: a.holes + b.holes - 1, Removed: a.removed + b.removed - h.D, Staggered: k > 0}
			x.Net = math.Max(0, width-x.Removed) * t * pick(x.Staggered, zigzag, 1)
			x.Rupture = x.Net * s.Fu / 2
			rows = append(rows, x)
		}
	}
	return weakest(rows)
}

// ways returns for each hole, in order across, the worst way from the edge
// to it and through it: straight across, and with at least one step aside.
func ways(hs []Hole) [][2]way {
	out := make([][2]way, len(hs))
	for i, h := range hs {
		out[i][0] = way{h.D, 1, true}
		for j, before := range hs[:i] {
			if h.Y-before.Y <= slack {
				continue
			}
			step := (h.X - before.X) * (h.X - before.X) / (4 * (h.Y - before.Y))
			aside := math.Abs(h.X-before.X) > slack
			for k, w := range out[j] {
				to := &out[i][max(k, int(pick(aside, 1, 0)))]
				*to = way{w.removed + h.D - step, w.holes + 1, w.ok}.over(*to)
			}
		}
	}
	return out
}

// reflected turns the strap over: holes in order from its other edge.
func reflected(hs []Hole, width float64) []Hole {
	out := slices.Clone(hs)
	slices.Reverse(out)
	for i := range out {
		out[i].Y = width - out[i].Y
	}
	return out
}

// weakest keeps the weakest section of each row, along the strap.
func weakest(all []Section) []Section {
	slices.SortStableFunc(all, func(a, b Section) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Rupture, b.Rupture)) })
	return slices.CompactFunc(all, func(a, b Section) bool { return math.Abs(a.X-b.X) <= slack })
}
