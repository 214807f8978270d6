package lumber

import (
	"cmp"
	"math"
	"slices"
)

// Lengths in this file are whole sixteenths of an inch: cuts are measured on
// a tape, and whole numbers make every comparison exact.

// Kerf is what a saw takes at each cut, in (common practice: an 1/8 in
// blade).
const Kerf = 0.125

// kerf is Kerf in sixteenths.
const kerf = 2

// stick is one piece of stock and what is cut from it, longest first.
type stick struct {
	stock int
	cuts  []int
}

// used returns what the cuts and the kerfs between them take.
func used(cuts []int) int {
	n := 0
	for _, c := range cuts {
		n += c
	}
	return n + kerf*max(len(cuts)-1, 0)
}

// pack cuts pieces from stock lengths, shortest stock first; every piece fits
// the longest stock. It tries the plain heuristics and the rounded solution
// with fractions, and returns the better with a total length that no cutting
// can stay under. The least total length wins, then the fewest sticks.
func pack(pieces, stock []int) (best []stick, least int) {
	if len(pieces) == 0 {
		return nil, 0
	}
	pieces = slices.Clone(pieces)
	slices.SortFunc(pieces, func(a, b int) int { return cmp.Compare(b, a) })
	best, least = heuristic(pieces, stock), bound(pieces, stock)
	if lengths, demand := distinct(pieces); len(lengths) <= relaxLengths && cost(best) > least {
		r := relax(lengths, demand, stock)
		least = max(least, multiple(int(math.Ceil(r.bound-1e-6)), stock))
		best = better(best, r.rounded(lengths, demand, stock))
	}
	for _, s := range best {
		slices.SortFunc(s.cuts, func(a, b int) int { return cmp.Compare(b, a) })
	}
	slices.SortStableFunc(best, func(a, b stick) int {
		return cmp.Or(cmp.Compare(b.stock, a.stock), slices.Compare(b.cuts, a.cuts))
	})
	return best, least
}

// relaxLengths is the number of different lengths over which the solution
// with fractions is not sought.
const relaxLengths = 250

// distinct returns the different lengths of sorted pieces and their numbers.
func distinct(pieces []int) (lengths, demand []int) {
	for i, p := range pieces {
		if i == 0 || p != pieces[i-1] {
			lengths, demand = append(lengths, p), append(demand, 0)
		}
		demand[len(demand)-1]++
	}
	return lengths, demand
}

// better returns the cheaper of two cuttings, or the one of fewer sticks.
func better(a, b []stick) []stick {
	if a == nil || cost(b) < cost(a) || cost(b) == cost(a) && len(b) < len(a) {
		return b
	}
	return a
}

// heuristic cuts pieces, longest first: first-fit decreasing into each stock
// length, each stick then changed for the shortest that holds its cuts, and a
// search that fills one stick after another with the least waste.
func heuristic(pieces, stock []int) (best []stick) {
	if len(pieces) == 0 {
		return nil
	}
	for _, s := range stock {
		if s >= pieces[0] {
			best = better(best, shrink(firstFit(pieces, s), stock))
		}
	}
	if len(pieces) <= searchPieces {
		best = better(best, fill(pieces, stock))
	}
	return best
}

// cost returns the total length bought.
func cost(list []stick) (n int) {
	for _, s := range list {
		n += s.stock
	}
	return n
}

// firstFit puts each piece into the first stick that has room for it. Room
// only gets less, so the search for a piece of the same length as the last
// goes on where that one was put.
func firstFit(pieces []int, stock int) (out []stick) {
	var room []int
	var from int
	for k, p := range pieces {
		if k == 0 || p != pieces[k-1] {
			from = 0
		}
		for from < len(room) && room[from] < p+kerf {
			from++
		}
		if from == len(room) {
			out, room = append(out, stick{stock: stock, cuts: []int{p}}), append(room, stock-p)
			continue
		}
		out[from].cuts = append(out[from].cuts, p)
		room[from] -= p + kerf
	}
	return out
}

// shrink changes each stick for the shortest stock that holds its cuts.
func shrink(list []stick, stock []int) []stick {
	for i := range list {
		need := used(list[i].cuts)
		list[i].stock = stock[slices.IndexFunc(stock, func(s int) bool { return s >= need })]
	}
	return list
}

// fill makes one stick after another: the longest piece that is left, in the
// stock and with the companions that waste the least of it.
func fill(pieces, stock []int) (out []stick) {
	left := slices.Clone(pieces)
	for len(left) > 0 {
		var best stick
		for _, s := range stock {
			if s < left[0] {
				continue
			}
			cuts := companions(left, s)
			if best.cuts == nil || waste(s, cuts)*best.stock < waste(best.stock, best.cuts)*s {
				best = stick{s, cuts}
			}
		}
		for _, c := range best.cuts {
			i := slices.Index(left, c)
			left = slices.Delete(left, i, i+1)
		}
		out = append(out, best)
	}
	return out
}

func waste(stock int, cuts []int) int { return stock - used(cuts) }

// searchPieces is the number of pieces over which only first-fit decreasing
// is tried: the search takes time with the square of it.
const searchPieces = 4000

// searchSteps bounds the search for the companions of one piece.
const searchSteps = 400

// companions returns the longest piece and those others that fill the stock
// best. It looks through combinations of different lengths, longest first,
// and gives up after searchSteps, so that time stays in proportion.
func companions(left []int, stock int) []int {
	best := []int{left[0]}
	steps := 0
	var try func(from int, cuts []int)
	try = func(from int, cuts []int) {
		if waste(stock, cuts) < waste(stock, best) {
			best = slices.Clone(cuts)
		}
		for i := from; i < len(left) && waste(stock, best) > 0 && steps < searchSteps; i++ {
			if i > from && left[i] == left[i-1] {
				continue // the same length again brings nothing new
			}
			if next := append(cuts, left[i]); used(next) <= stock {
				steps++
				try(i+1, next)
			}
		}
	}
	try(1, []int{left[0]})
	return best
}

// bound returns a total length that no cutting can stay under. All pieces
// over half of the longest stock need a stick each, of the shortest stock
// that holds it; the pieces that do not fit beside those need more, inch for
// inch; and what is bought is a multiple of the stocks' common measure.
func bound(pieces, stock []int) int {
	longest := stock[len(stock)-1]
	need, slack, small := 0, 0, 0
	for _, p := range pieces {
		if 2*p+kerf <= longest {
			small += p
			continue
		}
		s := stock[slices.IndexFunc(stock, func(s int) bool { return s >= p })]
		need += s
		slack += s - p
	}
	return multiple(need+max(small-slack, 0), stock)
}

// multiple rounds a length up to a multiple of the stocks' common measure.
func multiple(n int, stock []int) int {
	g := 0
	for _, s := range stock {
		g = gcd(g, s)
	}
	return (n + g - 1) / g * g
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
