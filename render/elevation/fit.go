package elevation

import (
	"galewright/plan"
	"galewright/render/page"
	"galewright/render/sheet"
)

// leastScale is the smallest scale a wall is shown at before it is broken:
// studs that stand together must stay apart on paper.
func leastScale(c *page.Context) float64 {
	switch {
	case !page.Large(c.Paper):
		return 50
	case c.Metric():
		return 25
	}
	return 32
}

// mostScale is the largest scale a wall is drawn at: more gives air, not
// sight, and fewer walls to a sheet.
func mostScale(c *page.Context) float64 {
	switch {
	case !page.Large(c.Paper):
		return 24
	case c.Metric():
		return 20
	}
	return 16
}

// split breaks the elevation into parts that fit the paper, each with its
// scale: whole if it can be, on the paper as it lies or turned, else along its
// length, and where the stack is too high for that, by story. Only where all
// of it fails is a scale taken that is smaller than is good to read.
func (e *elev) split() (out []*part) {
	good, rest := goodScales(e.Context)
	p := e.whole()
	for _, turned := range [...]bool{false, true} {
		if p.turned = turned; p.fitLargest(good) {
			return []*part{p}
		}
	}
	if out = p.fitFewest(good, p.heightFits); out != nil {
		return out
	}
	for _, p := range e.byStory() {
		out = append(out, p.fitSomehow(good, rest)...)
	}
	return out
}

// fitSomehow breaks one story along its length at a scale that is good to
// read, on the paper as it lies or turned, else at any scale.
func (p *part) fitSomehow(good, rest []page.Scale) []*part {
	for _, list := range [][]page.Scale{good, rest} {
		if parts := p.fitFewest(list, func([]page.Scale) bool { return true }); parts != nil {
			return parts
		}
	}
	p.turned = false
	p.settle(p.Scales()[len(p.Scales())-1])
	w := p.stories[p.own[0]].wall
	p.Tell(plan.Diagnostic{
		Severity: plan.Warning, Code: "paper-too-small",
		Summary: "the wall does not fit this paper at any of the scales",
		Where:   "wall " + w.Name, Mend: "take larger paper", Pos: w.Pos,
	})
	return []*part{p}
}

// paper returns the paper the part is laid on.
func (p *part) paper() sheet.Paper {
	if p.turned {
		return p.Paper.Turned()
	}
	return p.Paper
}

// area returns the drawing area of the part's paper, without the place of the
// sheet's legend where the band is too narrow for any.
func (p *part) area() sheet.Rect {
	pg := p.NewPageOn(p.paper(), "", "")
	if pg.Band.W < leastNotes {
		pg.Area.H -= legendRow(p.Context)
	}
	return pg.Area
}

// goodScales returns the scales a wall is drawn at, and those below them.
func goodScales(c *page.Context) (good, rest []page.Scale) {
	for _, s := range c.Scales() {
		switch {
		case s.Ratio < mostScale(c):
		case s.Ratio <= leastScale(c):
			good = append(good, s)
		default:
			rest = append(rest, s)
		}
	}
	return good, rest
}

// heightFits tells whether the part's height fits at the last scale.
func (p *part) heightFits(list []page.Scale) bool {
	if len(list) == 0 {
		return false
	}
	p.settle(list[len(list)-1])
	_, h := p.size()
	return h <= p.area().H
}

// fitLargest settles the part at the largest scale of the list that fits.
func (p *part) fitLargest(list []page.Scale) bool {
	a := p.area()
	for _, s := range list {
		if p.fits(s, a) {
			return true
		}
	}
	return false
}

// fits settles the part at a scale and tells whether it goes onto a; a part
// whose lumber alone is too large is not settled.
func (p *part) fits(s page.Scale, a sheet.Rect) bool {
	if float64(a.W) < (p.su1-p.su0)*s.K() || float64(a.H) < (p.sv1-p.sv0)*s.K() {
		return false
	}
	p.settle(s)
	w, h := p.size()
	return w <= a.W && h <= a.H
}

// mostCrowded is the share of a wall's drawing that the circles of its pieces may
// take: tried, with more some find no place.
const mostCrowded = 0.3

// dense tells whether a part of a wall on small paper carries more pieces than their
// circles have room for.
func (p *part) dense() bool {
	if page.Large(p.Context.Paper) {
		return false
	}
	r := p.vp.Rect(max(p.su0, p.from), min(p.su1, p.to), p.sv0, p.sv1)
	d := 2*p.LegendRadius() + 0.8
	return float64(len(p.gatherPieces()))*float64(d*d) > mostCrowded*float64(r.W*r.H)
}

// fitFewest breaks the part into lengths on the paper as it lies or turned,
// whichever takes fewer, where it may be tried at all.
func (p *part) fitFewest(list []page.Scale, may func([]page.Scale) bool) (best []*part) {
	for _, turned := range [...]bool{false, true} {
		if p.turned = turned; may(list) {
			if parts := p.fitLengths(list); best == nil || parts != nil && len(parts) < len(best) {
				best = parts
			}
		}
	}
	return best
}

// fitLengths breaks the part into as few lengths as fit, all at one scale.
func (p *part) fitLengths(list []page.Scale) []*part {
	const most = 40
	a := p.area()
	for n := 1; n <= most; n++ {
		for _, s := range list {
			if (p.to-p.from)*s.K()/float64(n) > float64(a.W) {
				continue
			}
			parts := p.cut(n)
			if fitsAll(parts, s) {
				return parts
			}
		}
	}
	return nil
}

func fitsAll(parts []*part, s page.Scale) bool {
	a := parts[0].area()
	for _, q := range parts {
		if !q.fits(s, a) {
			return false
		}
	}
	return true
}

// try is a way to lay a part out.
type try struct {
	scale page.Scale
	full  bool
}

// settled is a part laid out.
type settled struct {
	vp   *page.Viewport
	plan partPlan
}

// settle fixes the scale and everything that follows from it. What a scale
// gave is kept, for packing asks again and again.
func (p *part) settle(s page.Scale) {
	how := try{s, p.full}
	if was, ok := p.tried[how]; ok {
		p.scale, p.vp, p.plan = s, was.vp, was.plan
		return
	}
	p.layOut(s)
	if p.tried == nil {
		p.tried = map[try]settled{}
	}
	p.tried[how] = settled{p.vp, p.plan}
}

func (p *part) layOut(s page.Scale) {
	p.scale = s
	p.vp = page.NewViewport(s, sheet.Pt{}, p.su0, p.su1, p.sv0, p.sv1)
	p.plan = partPlan{}
	p.plan.top = 2*p.LegendRadius() + 3
	if p.left != nil || p.right != nil {
		p.plan.top += p.Size.Note + 3
	}
	p.plan.left, p.plan.right = 3, 3
	p.settleFeet()
	p.plan.left += p.heightsWidth() + 3
	p.plan.right += p.lapsWidth() + 3
	p.settleRows()
	p.makeRoom()
}

// makeRoom keeps up to three rows free over a dense wall for circles that find no place
// on it, as many as the paper has.
func (p *part) makeRoom() {
	if !p.dense() {
		return
	}
	row := 2*p.LegendRadius() + 1
	_, h := p.size()
	for n := 3; n > 0; n-- {
		if more := sheet.MM(n) * row; h+more <= p.area().H {
			p.plan.top += more
			return
		}
	}
}
