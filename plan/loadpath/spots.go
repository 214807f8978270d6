package loadpath

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/nailing"
)

// places asks for nailed places: those that is holds for. Where it says in which
// walls, or along which line, only the places there are asked.
type places struct {
	is    func(*nailing.Spot) bool
	walls []*plan.Wall // of the members; nil where that does not matter
	line  *LineShear   // of the member that the nails go through; nil where that does not matter
}

// onPlates asks for the places that tie members of a sort to the top plates of a
// line's walls.
func onPlates(x *LineShear, of func(*framing.Member) bool) places {
	walls := x.walls()
	on := map[*plan.Wall]bool{}
	for _, w := range walls {
		on[w] = true
	}
	top := func(m *framing.Member) bool {
		return (m.Role == plan.UpperPlate || m.Role == plan.TopPlate) && on[m.Wall]
	}
	return places{walls: walls, is: func(s *nailing.Spot) bool {
		return top(s.Main) && of(s.Side) || top(s.Side) && of(s.Main)
	}}
}

// overGirders asks for the places that tie a rim or joist in a line to the girder
// under it, or to one that it crosses.
func (a *analysis) overGirders(x *LineShear) places {
	return places{line: x, is: func(s *nailing.Spot) bool {
		if s.Main.Role != plan.GirderBeam && s.Main.Role != plan.SillPlate || !deckRole(s.Side) {
			return false
		}
		return s.Side.B.Sub(s.Side.A).Flat().Unit().RunsAlong(x.Axis) && math.Abs(across(s.Side, x.Axis)-x.At) < oneLine
	}}
}

// across is where the middle of a member is across an axis, in.
func across(m *framing.Member, ax int) float64 { return axis(m.A.Add(m.B).Mul(0.5).Flat(), 1-ax) }

// lane is a stretch of the plan along an axis, oneLine wide.
type lane struct{ axis, n int }

func laneAt(ax int, at float64) lane { return lane{ax, int(math.Floor(at / oneLine))} }

// spotIndex finds the places of a line of nails by wall and by lane, as their
// numbers in it.
type spotIndex struct {
	walls map[*plan.Wall][]int
	lanes map[lane][]int
}

func indexOf(l *nailing.Line) *spotIndex {
	x := &spotIndex{map[*plan.Wall][]int{}, map[lane][]int{}}
	for i, s := range l.Spots {
		for _, m := range []*framing.Member{s.Main, s.Side} {
			if m.Wall != nil {
				x.walls[m.Wall] = append(x.walls[m.Wall], i)
			}
		}
		for ax := range plan.Axes {
			at := laneAt(ax, across(s.Side, ax))
			x.lanes[at] = append(x.lanes[at], i)
		}
	}
	return x
}

// near returns the numbers of the places that may be asked for, each once, in order;
// all is set where that is every one.
func (x *spotIndex) near(p places) (list []int, all bool) {
	switch {
	case p.walls != nil:
		for _, w := range p.walls {
			list = append(list, x.walls[w]...)
		}
	case p.line != nil:
		for n := -1; n <= 1; n++ {
			list = append(list, x.lanes[laneAt(p.line.Axis, p.line.At+float64(n)*oneLine)]...)
		}
	default:
		return nil, true
	}
	slices.Sort(list)
	return slices.Compact(list), false
}

// spots returns the places of a line of nails that are asked for, in its order.
func (a *analysis) spots(l *nailing.Line, p places) (out []*nailing.Spot) {
	x := a.index[l]
	if x == nil {
		x = indexOf(l)
	}
	list, all := x.near(p)
	if all {
		return slices.DeleteFunc(slices.Clone(l.Spots), func(s *nailing.Spot) bool { return !p.is(s) })
	}
	for _, i := range list {
		if p.is(l.Spots[i]) {
			out = append(out, l.Spots[i])
		}
	}
	return out
}
