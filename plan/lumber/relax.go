package lumber

import (
	"math"
	"slices"
)

// This file solves the cutting problem with fractions of sticks allowed, by
// column generation (Gilmore and Gomory, Operations Research 9, 1961, from
// memory). The prices it ends with prove a bound: no pattern of cuts may be
// worth more than its stick, so all pieces together at those prices cost no
// more than any cutting. Products are rounded one by one, so that every
// machine finds the same numbers.

// relaxed is the solution with fractions.
type relaxed struct {
	bound    float64 // sixteenths; holds for every cutting
	patterns []pattern
	uses     []float64 // of each pattern
}

// pattern is how many of each length are cut from one stick.
type pattern struct {
	stock  int
	counts []int
}

// relaxSteps bounds the number of columns tried.
const relaxSteps = 2000

// master is the linear program over the patterns in its basis.
type master struct {
	lengths, demand []int
	stock           []int
	basis           []pattern
	inverse         [][]float64 // of the basis matrix, rows by pattern
	use             []float64
	sack            sack // its room, used again by every knapsack
}

// relax solves the program for the distinct lengths with their numbers.
func relax(lengths, demand, stock []int) relaxed {
	m := newMaster(lengths, demand, stock)
	for range relaxSteps {
		prices := m.prices()
		best, worth := m.column(prices)
		if i := slices.IndexFunc(prices, func(y float64) bool { return y < -1e-9 }); i >= 0 {
			best, worth = pattern{0, make([]int, len(lengths))}, 1 // a length may be cut once too often
			best.counts[i] = -1
		}
		if worth <= 1e-7 || !m.enter(best) {
			break
		}
	}
	return relaxed{m.proof(m.prices()), m.basis, m.use}
}

// newMaster starts with one pattern for each length: as many of it as the
// longest stock holds.
func newMaster(lengths, demand, stock []int) *master {
	n := len(lengths)
	m := &master{lengths: lengths, demand: demand, stock: stock}
	longest := stock[len(stock)-1]
	for i, l := range lengths {
		k := min((longest+kerf)/(l+kerf), demand[i])
		p := pattern{counts: make([]int, n)}
		p.counts[i] = k
		p.stock = stock[slices.IndexFunc(stock, func(s int) bool { return s+kerf >= k*(l+kerf) })]
		row := make([]float64, n)
		row[i] = 1 / float64(k)
		m.basis, m.inverse = append(m.basis, p), append(m.inverse, row)
		m.use = append(m.use, float64(demand[i])/float64(k))
	}
	return m
}

// prices returns what one more of each length costs.
func (m *master) prices() []float64 {
	out := make([]float64, len(m.lengths))
	for r, row := range m.inverse {
		for i, v := range row {
			out[i] += float64(float64(m.basis[r].stock) * v)
		}
	}
	return out
}

// column returns the pattern that is worth most over its stick at the
// prices, and by how much.
func (m *master) column(prices []float64) (best pattern, worth float64) {
	k := m.knapsack(prices)
	for _, s := range m.stock {
		if w := k.value[s+kerf] - float64(s); w > worth {
			best, worth = pattern{s, k.counts(s+kerf, len(prices))}, w
		}
	}
	return best, worth
}

// proof scales the prices down until no pattern is worth more than its stick
// (Farley, 1990, from memory) and returns the pieces' price: a bound.
func (m *master) proof(prices []float64) float64 {
	for i, y := range prices {
		prices[i] = max(y, 0)
	}
	k := m.knapsack(prices)
	over := 1.0
	for _, s := range m.stock {
		over = max(over, k.value[s+kerf]/float64(s))
	}
	sum := 0.0
	for i, y := range prices {
		sum += float64(y * float64(m.demand[i]))
	}
	return sum / over
}

// enter puts a pattern into the basis for the one that runs out first; false
// when none does.
func (m *master) enter(p pattern) bool {
	n := len(m.lengths)
	d := make([]float64, n)
	for r, row := range m.inverse {
		for i, c := range p.counts {
			d[r] += float64(row[i] * float64(c))
		}
	}
	out := -1
	for r := range d {
		if d[r] > 1e-9 && (out < 0 || m.sooner(r, out, d)) {
			out = r
		}
	}
	if out < 0 {
		return false
	}
	ratio := m.use[out] / d[out]
	for i := range n {
		m.inverse[out][i] /= d[out]
	}
	for r := range d {
		if r == out {
			continue
		}
		for i := range n {
			m.inverse[r][i] -= float64(d[r] * m.inverse[out][i])
		}
		m.use[r] = max(m.use[r]-float64(d[r]*ratio), 0)
	}
	m.use[out], m.basis[out] = ratio, p
	return true
}

// sooner tells whether pattern a runs out before pattern b. Where both run out
// at once the rows of the inverse decide, in order: the lexicographic rule,
// which keeps the method from going round in circles (Dantzig, Orden and
// Wolfe, 1955, from memory).
func (m *master) sooner(a, b int, d []float64) bool {
	if x, y := m.use[a]/d[a], m.use[b]/d[b]; math.Abs(x-y) > 1e-9 {
		return x < y
	}
	for i := range m.lengths {
		if x, y := m.inverse[a][i]/d[a], m.inverse[b][i]/d[b]; math.Abs(x-y) > 1e-9 {
			return x < y
		}
	}
	return false
}

// sack is the best value for every capacity, with the choices that give it.
type sack struct {
	value []float64
	items []bundle
	taken [][]bool // by item and capacity
}

// bundle is a number of pieces of one length taken together.
type bundle struct{ length, n, weight int }

// knapsack fills capacities up to the longest stock at the prices, with no
// more of a length than is wanted.
func (m *master) knapsack(prices []float64) *sack {
	top := m.stock[len(m.stock)-1] + kerf
	k := m.emptied(top + 1)
	for i, l := range m.lengths {
		if prices[i] <= 0 {
			continue
		}
		left := min(m.demand[i], top/(l+kerf))
		for n := 1; left > 0; n *= 2 {
			n = min(n, left)
			left -= n
			k.add(bundle{i, n, n * (l + kerf)}, prices[i])
		}
	}
	return k
}

// emptied returns the master's sack for a number of capacities with nothing in it.
func (m *master) emptied(capacities int) *sack {
	k := &m.sack
	if len(k.value) != capacities {
		*k = sack{value: make([]float64, capacities)}
	}
	clear(k.value)
	k.items = k.items[:0]
	return k
}

// add lets the sack take a bundle or leave it.
func (k *sack) add(b bundle, price float64) {
	gain := price * float64(b.n)
	taken := k.room()
	k.items = append(k.items, b)
	if b.weight >= len(k.value) {
		return
	}
	// the compiler leaves out bounds checks where it sees three lengths alike
	with, without := k.value[b.weight:], k.value[:len(k.value)-b.weight]
	mark := taken[b.weight:]
	without, mark = without[:len(with)], mark[:len(with)]
	for c := len(with) - 1; c >= 0; c-- {
		if v := without[c] + gain; v > with[c] {
			with[c], mark[c] = v, true
		}
	}
}

// room returns where the choices of the next bundle are kept, all of them no.
func (k *sack) room() []bool {
	if n := len(k.items); n < len(k.taken) {
		clear(k.taken[n])
		return k.taken[n]
	}
	k.taken = append(k.taken, make([]bool, len(k.value)))
	return k.taken[len(k.taken)-1]
}

// counts returns how many of each of n lengths fill a capacity best.
func (k *sack) counts(c, n int) []int {
	out := make([]int, n)
	for i := len(k.items) - 1; i >= 0; i-- {
		if k.taken[i][c] {
			out[k.items[i].length] += k.items[i].n
			c -= k.items[i].weight
		}
	}
	return out
}

// rounded cuts whole sticks of the patterns as often as the solution with
// fractions does, and packs the rest.
func (r relaxed) rounded(lengths, demand, stock []int) []stick {
	left := slices.Clone(demand)
	var out []stick
	for p, pat := range r.patterns {
		if pat.stock == 0 {
			continue
		}
		for range int(r.uses[p] + 1e-6) {
			if !slices.EqualFunc(pat.counts, left, func(c, l int) bool { return c <= l }) {
				break
			}
			s := stick{stock: pat.stock}
			for i, c := range pat.counts {
				left[i] -= c
				for range c {
					s.cuts = append(s.cuts, lengths[i])
				}
			}
			out = append(out, s)
		}
	}
	var rest []int
	for i, n := range left {
		for range n {
			rest = append(rest, lengths[i])
		}
	}
	return append(out, heuristic(rest, stock)...)
}
