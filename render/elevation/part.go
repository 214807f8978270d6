package elevation

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/placement"
	"galewright/render/page"
	"galewright/render/sheet"
)

// part is what one sheet shows of an elevation: all of it, some stories, or
// a length between match lines.
type part struct {
	*elev
	own         []int       // the stories it shows as its own
	turned      bool        // on paper with its long side up
	level       *plan.Level // when it shows one level alone
	zlo, zhi    float64     // of a balloon wall: the heights it shows as its own
	from, to    float64     // stations of the line it shows as its own
	left, right *part       // what goes on beyond its match lines
	siblings    []*part     // all parts of the stack, itself too
	broken      bool        // one of several parts
	lengths     int         // how many the wall is broken into along its length
	// Shown range, overlaps included.
	su0, su1, sv0, sv1 float64

	scale page.Scale
	vp    *page.Viewport // on a sheet whose origin is the lower left corner of the drawing
	plan  partPlan
	tried map[try]settled
	best  page.Scale // its scale on a sheet of its own
	full  bool       // its strips name every piece
	page  *page.Page
	at    sheet.Pt // upper left corner of the whole block on the page
	shelf sheet.MM // of the shelf it stands on
}

// partPlan is what is settled with the scale, before the page is known.
type partPlan struct {
	left, right, top, bottom sheet.MM // kept clear round the drawing
	feet                     [][]foot // dimensions at the feet of the studs, by own story
	rows                     []*row   // strips below the drawing, top first
}

// size returns the block's size on paper.
func (p *part) size() (w, h sheet.MM) {
	tw, _ := p.titleSize()
	return max(tw, p.plan.left+p.vp.Clip.W+p.plan.right), p.plan.top + p.vp.Clip.H + p.plan.bottom
}

// overlap is how far the drawing goes on beyond a match line, in.
const overlap = 16

// aboveShown is how much of the story above shows over one shown alone, in.
const aboveShown = 8

// whole returns the elevation in one part.
func (e *elev) whole() *part {
	p := &part{elev: e, zlo: math.Inf(-1), zhi: math.Inf(1), from: e.u0, to: e.u1, su0: e.u0, su1: e.u1, sv0: e.v0, sv1: e.v1}
	for i := range e.stories {
		p.own = append(p.own, i)
	}
	return p
}

// byStory returns one part a story, each deep enough to show its straps
// down to their ends. A balloon wall gives one for each level it passes.
func (e *elev) byStory() (out []*part) {
	defer func() {
		for _, p := range out {
			p.broken = len(out) > 1
		}
	}()
	for i, s := range e.stories {
		levels := e.passed(s.wall)
		for k, l := range levels {
			p := e.whole()
			p.own, p.level = []int{i}, l
			if i > 0 || k > 0 {
				p.zlo = l.Floor - l.FloorDepth
				p.sv0 = p.zlo - aboveShown
			}
			if k+1 < len(levels) {
				p.zhi = levels[k+1].Floor - levels[k+1].FloorDepth
				p.sv1 = levels[k+1].Floor + aboveShown
			} else if i+1 < len(e.stories) {
				p.sv1 = e.stories[i+1].floor + aboveShown
			}
			for _, pc := range e.pieces {
				if p.owns(pc) {
					p.sv0, p.sv1 = min(p.sv0, pc.Z0-3), max(p.sv1, pc.Z1+3)
					for _, m := range e.metal[pc] {
						_, _, v0, v1 := shape{pts: m.pts}.bounds()
						p.sv0, p.sv1 = min(p.sv0, v0-3), max(p.sv1, v1+3)
					}
				}
			}
			p.sv0, p.sv1 = max(p.sv0, e.v0), min(p.sv1, e.v1)
			out = append(out, p)
		}
	}
	return out
}

// passed returns the levels a wall stands on or passes, lowest first.
func (e *elev) passed(w *plan.Wall) (out []*plan.Level) {
	for _, l := range e.House.Plan.Levels {
		if w.On(l) {
			out = append(out, l)
		}
	}
	return out
}

// alone tells whether only some stories of the stack are shown.
func (p *part) alone() bool { return p.level != nil }

// owns tells whether the part is the home of a piece.
func (p *part) owns(pc *placement.Piece) bool {
	if !p.ownsWall(page.HomeWall(pc.Joint)) {
		return false
	}
	if z := (pc.Z0 + pc.Z1) / 2; p.stories[p.own[0]].wall.Balloon() && (z < p.zlo || z >= p.zhi) {
		return false
	}
	return p.holds(p.path(pc)[0].X)
}

// holds tells whether a station of the line lies between the match lines.
func (p *part) holds(u float64) bool {
	return (u >= p.from || p.left == nil) && (u < p.to || p.right == nil)
}

func (p *part) ownsWall(w *plan.Wall) bool {
	for _, i := range p.own {
		if p.stories[i].wall == w {
			return true
		}
	}
	return false
}

// cut breaks a part into n along its length, in the middle of bays, so that no
// stud and no opening stands on a match line.
func (p *part) cut(n int) (out []*part) {
	bays := p.bays()
	start := p.from
	for i := range n {
		q := *p
		q.tried, q.broken, q.lengths = nil, p.broken || n > 1, n
		q.from, q.to = start, p.to
		if i < n-1 {
			q.to = nearest(bays, p.from+(p.to-p.from)*float64(i+1)/float64(n))
		}
		start = q.to
		out = append(out, &q)
	}
	for i, q := range out {
		if i > 0 {
			q.left = out[i-1]
			q.su0 = q.from - overlap
		}
		if i < n-1 {
			q.right = out[i+1]
			q.su1 = q.to + overlap
		}
	}
	return out
}

// bays returns the middles, to the inch, of the gaps between the uprights and headers of the
// stack that are wide enough for a match line.
func (p *part) bays() (mids []float64) {
	const least = 3
	var taken [][2]float64
	for _, h := range p.shapes {
		if h.m.Wall != nil && (standing(h.m) || h.m.Role == plan.Header) {
			u0, u1, _, _ := h.bounds()
			taken = append(taken, [2]float64{u0, u1})
		}
	}
	slices.SortFunc(taken, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
	end := math.Inf(1)
	for _, t := range taken {
		if t[0]-end > least {
			mids = append(mids, math.Round((end+t[0])/2))
		}
		if math.IsInf(end, 1) {
			end = t[1]
		}
		end = max(end, t[1])
	}
	return mids
}

// nearest returns the place nearest to u, or u when there is none.
func nearest(places []float64, u float64) float64 {
	best := u
	for i, x := range places {
		if i == 0 || abs(x-u) < abs(best-u) {
			best = x
		}
	}
	return best
}

// standing tells whether members of the role stand on the bottom plate.
func standing(m *framing.Member) bool {
	switch m.Role {
	case plan.Stud, plan.King, plan.Jack, plan.Post, plan.Cripple:
		return true
	}
	return false
}
