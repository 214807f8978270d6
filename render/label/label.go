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
	// Near holds the centers that need no leader, the best first.
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
	bounds  sheet.Rect
	taken   grid // what no label may cover
	barred  grid // what no leader may pass either: lettering
	soft    grid // what a label had better not cover
	lines   [][2]sheet.Pt
	linesG  grid         // the lines' bounds, by the same index
	owner   map[int]*job // labels by their handles in taken
	bars    map[int]*job // labels by their handles in barred
	leader  map[int]*job // labels by the handles of their leaders in linesG
	journal []step       // what was put and lifted, to be taken back
	tries   int          // moves tried for the label in turn
}

// step is one change of the board.
type step struct {
	j   *job
	was state // before; OK is false when the step put j down
}

// state is where a label stands.
type state struct {
	at     Place
	choice int
}

// Gap is the clear space kept round every label, mm.
const Gap sheet.MM = 0.4

// NewBoard returns an empty board.
func NewBoard(bounds sheet.Rect) *Board {
	return &Board{
		bounds: bounds, taken: newGrid(), barred: newGrid(), soft: newGrid(), linesG: newGrid(),
		owner: map[int]*job{}, bars: map[int]*job{}, leader: map[int]*job{},
	}
}

// Block forbids labels on r. Leaders may still pass, at a cost.
func (b *Board) Block(r sheet.Rect) { b.taken.add(r) }

// BlockText forbids labels and leaders on r.
func (b *Board) BlockText(r sheet.Rect) { b.taken.add(r); b.barred.add(r) }

// Discourage makes r a place that labels take only when others are gone.
func (b *Board) Discourage(r sheet.Rect) { b.soft.add(r) }

// BlockLine forbids labels on the line from p to q.
func (b *Board) BlockLine(p, q sheet.Pt) { b.line(p, q) }

func (b *Board) line(p, q sheet.Pt) int {
	b.lines = append(b.lines, [2]sheet.Pt{p, q})
	return b.linesG.add(around(p, q))
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
	state      // choice is the index in Near, -1 on a leader
	taken  int // handles in the grids
	barred int
	lines  []int
}

// depth is how many labels deep a place is cleared by moving others.
const depth = 2

// Place places the labels, those with the fewest free places first, and
// returns a place for each in the order given. A label that finds no near
// place and no leader gets one by moving those in its way.
func (b *Board) Place(labels []Label) []Place {
	jobs := make([]*job, len(labels))
	for i, l := range labels {
		jobs[i] = &job{Label: l, state: state{choice: -1}}
	}
	var late []*job
	for _, j := range b.byFreedom(jobs) {
		if !b.near(j) {
			late = append(late, j)
		}
	}
	var out []*job
	for _, j := range late {
		if !b.clear(j, 1, false, b.near) {
			out = append(out, j)
		}
	}
	for _, j := range out {
		b.tries = 0
		b.settle(j, depth)
	}
	places := make([]Place, len(jobs))
	for i, j := range jobs {
		places[i] = j.at
	}
	return places
}

// mostTries bounds how many moves are tried for one label.
const mostTries = 300

// settle places j near, on a leader, or where others make way.
func (b *Board) settle(j *job, deep int) bool {
	if b.near(j) || deep > 0 && b.lead(j) {
		return true
	}
	return deep > 0 && b.clear(j, 3, deep == depth, func(o *job) bool {
		b.tries++
		return b.tries < mostTries && b.settle(o, deep-1)
	})
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

func (j *job) near(i int) sheet.Rect { return centered(j.Near[i], j.W, j.H) }

func centered(c sheet.Pt, w, h sheet.MM) sheet.Rect {
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
	b.put(j, j.near(best), nil, best)
	return true
}
