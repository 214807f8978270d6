package label

import (
	"cmp"
	"math"
	"slices"

	"galewright/render/sheet"
)

// Label is one box to place.
type Label struct {
	Name string // for reports
	W, H sheet.MM
	// Near holds the centres that need no leader, the best first.
	Near []sheet.Pt
	// Anchors are the points of the thing itself where a leader may end, the
	// best first. Without one the label never goes on a leader.
	Anchors []sheet.Pt
	// Within limits a label to a region; the zero Rect is the whole sheet's.
	Within sheet.Rect
	// Reach is how long a leader may be; 0 = 60 mm.
	Reach sheet.MM
}

// Place is where a label went.
type Place struct {
	Rect   sheet.Rect
	OK     bool       // false: no place was found, and Rect is empty
	Leader []sheet.Pt // from the anchor to the label's edge; nil when it stands near
}

// Board is the region labels are placed in, with what is already there.
type Board struct {
	bounds sheet.Rect
	taken  *grid // what no label may cover
	barred *grid // what no leader may pass either: lettering
	soft   *grid // what a label had better not cover
	lines  [][2]sheet.Pt
	linesG *grid // the lines' bounds, by the same index
}

// Gap is the clear space kept round every label, mm.
const Gap sheet.MM = 0.4

// NewBoard returns an empty board.
func NewBoard(bounds sheet.Rect) *Board {
	return &Board{bounds: bounds, taken: newGrid(8), barred: newGrid(8), soft: newGrid(8), linesG: newGrid(8)}
}

// Block forbids labels on r. Leaders may still pass, at a cost.
func (b *Board) Block(r sheet.Rect) { b.taken.add(r) }

// BlockText forbids labels and leaders on r.
func (b *Board) BlockText(r sheet.Rect) { b.taken.add(r); b.barred.add(r) }

// Discourage makes r a place that labels take only when others are gone.
func (b *Board) Discourage(r sheet.Rect) { b.soft.add(r) }

// BlockLine forbids labels on the line from p to q.
func (b *Board) BlockLine(p, q sheet.Pt) {
	b.lines = append(b.lines, [2]sheet.Pt{p, q})
	b.linesG.add(around(p, q))
}

func around(p, q sheet.Pt) sheet.Rect {
	return sheet.Rect{X: min(p.X, q.X), Y: min(p.Y, q.Y), W: abs(p.X - q.X), H: abs(p.Y - q.Y)}.Inset(-0.01)
}

// Free tells whether a label may stand on r.
func (b *Board) Free(r sheet.Rect) bool {
	return b.bounds.Holds(r, 0) && !b.taken.hits(r.Inset(-Gap)) && !b.onLine(r)
}

func (b *Board) onLine(r sheet.Rect) (hit bool) {
	b.linesG.over(r, func(id int) bool {
		hit = Crosses(b.lines[id][0], b.lines[id][1], r)
		return !hit
	})
	return hit
}

// job is one label while it is being placed.
type job struct {
	Label
	at     Place
	choice int // index in Near, -1 on a leader
	taken  int // handles in the grids
	barred int
}

// Place places the labels, those with the fewest free places first, and
// returns a place for each in the order given.
func (b *Board) Place(labels []Label) []Place {
	jobs := make([]*job, len(labels))
	for i, l := range labels {
		jobs[i] = &job{Label: l, choice: -1}
	}
	var late []*job
	for _, j := range b.byFreedom(jobs) {
		if !b.near(j) {
			late = append(late, j)
		}
	}
	var out []*job
	for _, j := range late {
		if !b.displace(j, jobs, b.near) {
			out = append(out, j)
		}
	}
	for _, j := range out {
		if !b.lead(j) {
			b.displace(j, jobs, func(o *job) bool { return b.near(o) || b.lead(o) })
		}
	}
	places := make([]Place, len(jobs))
	for i, j := range jobs {
		places[i] = j.at
	}
	return places
}

// byFreedom orders the jobs by how many near places each has at the start.
func (b *Board) byFreedom(jobs []*job) []*job {
	free := make(map[*job]int, len(jobs))
	for _, j := range jobs {
		for i := range j.Near {
			if b.fits(j, j.near(i)) {
				free[j]++
			}
		}
	}
	out := slices.Clone(jobs)
	slices.SortStableFunc(out, func(x, y *job) int { return cmp.Compare(free[x], free[y]) })
	return out
}

func (j *job) near(i int) sheet.Rect { return centred(j.Near[i], j.W, j.H) }

func centred(c sheet.Pt, w, h sheet.MM) sheet.Rect {
	return sheet.Rect{X: c.X - w/2, Y: c.Y - h/2, W: w, H: h}
}

// fits tells whether j may stand on r.
func (b *Board) fits(j *job, r sheet.Rect) bool {
	if j.Within != (sheet.Rect{}) && !j.Within.Holds(r, 0) {
		return false
	}
	return b.Free(r)
}

// near puts j on the best of its free near places: the order of preference,
// and one place of it for each soft thing covered.
func (b *Board) near(j *job) bool {
	best, cost := -1, math.MaxInt
	for i := range j.Near {
		r := j.near(i)
		if i >= cost || !b.fits(j, r) {
			continue
		}
		c := i
		b.soft.over(r, func(int) bool { c += 2; return true })
		if c < cost {
			best, cost = i, c
		}
	}
	if best < 0 {
		return false
	}
	b.put(j, j.near(best), nil)
	j.choice = best
	return true
}

// put claims a place.
func (b *Board) put(j *job, r sheet.Rect, leader []sheet.Pt) {
	j.at = Place{Rect: r, OK: true, Leader: leader}
	j.taken, j.barred = b.taken.add(r), b.barred.add(r)
	for i := 1; i < len(leader); i++ {
		b.BlockLine(leader[i-1], leader[i])
	}
}

// lift frees the place of a label that stands near.
func (b *Board) lift(j *job) {
	b.taken.remove(j.taken)
	b.barred.remove(j.barred)
}

// displace tries to give j one of its near places by moving the one label
// that stands on it, as again does.
func (b *Board) displace(j *job, jobs []*job, again func(*job) bool) bool {
	for i := range j.Near {
		r := j.near(i)
		other := b.soleOccupant(r, jobs)
		if other == nil {
			continue
		}
		old, choice := other.at, other.choice
		b.lift(other)
		if b.fits(j, r) {
			b.put(j, r, nil)
			j.choice = i
			if other.choice = -1; again(other) {
				return true
			}
			b.lift(j)
			j.at, j.choice = Place{}, -1
		}
		b.put(other, old.Rect, nil)
		other.choice = choice
	}
	return false
}

// soleOccupant returns the near-placed label that alone stands on r.
func (b *Board) soleOccupant(r sheet.Rect, jobs []*job) *job {
	var ids []int
	b.taken.over(r.Inset(-Gap), func(id int) bool { ids = append(ids, id); return len(ids) < 2 })
	if len(ids) != 1 {
		return nil
	}
	for _, j := range jobs {
		if j.at.OK && j.choice >= 0 && j.taken == ids[0] {
			return j
		}
	}
	return nil
}

// lead looks outward from the anchors, ring by ring, for the free place with
// the least leader: length, and what it crosses.
func (b *Board) lead(j *job) bool {
	reach := j.Reach
	if reach == 0 {
		reach = 60
	}
	const step sheet.MM = 1.5
	best := math.Inf(1)
	var place sheet.Rect
	var leader []sheet.Pt
	for k, a := range j.Anchors {
		for d := step; d <= reach && float64(d)+4*float64(k) < best; d += step {
			for _, u := range ring {
				r := centred(sheet.Pt{X: a.X + u.X*(d+j.W/2), Y: a.Y + u.Y*(d+j.H/2)}, j.W, j.H)
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
	b.put(j, place, leader)
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
	c := r.Centre()
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
