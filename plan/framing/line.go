package framing

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan/geom"
)

// lines gathers walls that stand over each other in one vertical plane.
func (b *builder) lines() {
	parent := make([]int, len(b.walls))
	for i := range parent {
		parent[i] = i
	}
	var root func(int) int
	root = func(i int) int {
		if parent[i] != i {
			parent[i] = root(parent[i])
		}
		return parent[i]
	}
	for _, pair := range b.stacked() {
		x, y := root(pair[0]), root(pair[1])
		parent[max(x, y)] = min(x, y)
	}
	stacks := map[int][]*framedWall{}
	for i, w := range b.walls {
		stacks[root(i)] = append(stacks[root(i)], w)
	}
	for i := range b.walls {
		if s := stacks[i]; len(s) > 0 {
			b.house.Lines = append(b.house.Lines, lineOf(s))
		}
	}
}

// lineOf makes a Line of walls in one plane, the lowest first, those of one
// level from left to right.
func lineOf(s []*framedWall) *Line {
	f := s[0].frame
	slices.SortStableFunc(s, func(a, b *framedWall) int {
		x, _ := f.Local(a.From)
		y, _ := f.Local(b.From)
		return cmp.Or(cmp.Compare(a.floor, b.floor), cmp.Compare(x, y))
	})
	l := &Line{Frame: s[0].frame}
	for i, w := range s {
		if i > 0 {
			l.Name += "/"
		}
		l.Name += w.Name
		shift, _ := l.Frame.Local(w.frame.Origin)
		l.Walls, l.Shift = append(l.Walls, w.Wall), append(l.Shift, shift)
	}
	return l
}

// stacked returns the pairs of walls, by number, that belong to one line.
func (b *builder) stacked() (pairs [][2]int) {
	find, number := b.wallGrid(), map[*framedWall]int{}
	for i, w := range b.walls {
		number[w] = i
	}
	for i, w := range b.walls {
		for _, o := range find(w.extent()) {
			if j := number[o]; j < i && inPlane(o, w) {
				pairs = append(pairs, [2]int{j, i})
			}
		}
	}
	return pairs
}

// inPlane tells whether two walls stand over each other in one plane.
func inPlane(a, b *framedWall) bool {
	if !geom.OneLine(a.frame.D, b.frame.D) || a.beside(b) {
		return false
	}
	s0, t0 := a.frame.Local(b.From)
	s1, t1 := a.frame.Local(b.To)
	return math.Abs(t0) <= near && math.Abs(t1) <= near && s0 < a.Length()-near && s1 > a.Hook+near
}
