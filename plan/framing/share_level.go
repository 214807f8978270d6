package framing

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan/geom"
)

// hipShares reads a hip or girder truss as two rafters from tail to level top, and that
// level top as a line up the end's slope.
func hipShares(m *Member) (out []*Share) {
	dir := m.B.Sub(m.A).Flat().Unit()
	for i, low := range []geom.Vec3{m.A, m.B} {
		d := m.Flat[i].Sub(low)
		run := d.Flat().Dot(dir)
		out = append(out, &Share{Member: m, Low: low.Flat(), Up: dir, Run: run, Tan: d.Z / run})
		dir = dir.Mul(-1)
	}
	a, b := m.Flat[0].Flat(), m.Flat[1].Flat()
	if b.Sub(a).Len() < 1 {
		return out
	}
	return append(out, &Share{Member: m, Low: a.Add(b).Mul(0.5), Up: b.Sub(a).Unit().Left(), Tan: m.Roof.Pitch / 12, Level: true})
}

// levelTops shares the slopes over level tops out to them: of one slope from the girder
// truss up, each half way to its neighbors, the last to the ridge's end. What lies below
// the girder is the jacks'.
func levelTops(list []*Share) {
	by, order := map[*Face][]*Share{}, []*Face(nil)
	for _, s := range list {
		if s.Face == nil {
			continue
		}
		if by[s.Face] == nil {
			order = append(order, s.Face)
		}
		by[s.Face] = append(by[s.Face], s)
	}
	for _, f := range order {
		f.stepUp(by[f])
	}
}

// stepUp shares the slope out to its level tops.
func (f *Face) stepUp(tops []*Share) {
	up := f.Slope.Mul(-1)
	for _, s := range tops {
		s.Up = up
	}
	slices.SortStableFunc(tops, func(a, b *Share) int { return cmp.Compare(up.Dot(a.Low), up.Dot(b.Low)) })
	end := math.Inf(-1)
	for _, p := range f.Outline {
		end = math.Max(end, up.Dot(p.Flat()))
	}
	lo := up.Dot(tops[0].Low)
	f.levelFrom = &lo
	from := lo
	for i, s := range tops {
		at, to := up.Dot(s.Low), end
		if i < len(tops)-1 {
			to = (at + up.Dot(tops[i+1].Low)) / 2
		}
		s.serve(from, to)
		from = to
	}
}

// serve gives a level top the slope between two places along the way up.
func (s *Share) serve(from, to float64) {
	i := s.Up.MainAxis()
	lo, hi := from*s.Up.Along(i), to*s.Up.Along(i)
	s.Low, s.Run = s.Low.Add(s.Up.Mul(from-s.Up.Dot(s.Low))), to-from
	s.Width = s.Face.AreaBetween(i, math.Min(lo, hi), math.Max(lo, hi)) / s.Run
	a, b := s.Member.Flat[0].Flat().Along(1-i), s.Member.Flat[1].Flat().Along(1-i)
	s.From, s.To = math.Min(a, b), math.Max(a, b)
}

// below returns the plan area of a face between two coordinates along axis i that its
// rafters carry: all but what is over level tops of hip trusses, in².
func (f *Face) below(i int, lo, hi float64) float64 {
	if f.levelFrom == nil {
		return f.AreaBetween(i, lo, hi)
	}
	j := 1 - i
	k := -f.Slope.Along(j)
	cut := &Face{}
	p := make([]geom.Vec2, len(f.Outline))
	for n, v := range f.Outline {
		p[n] = v.Flat()
	}
	for _, v := range cutAt(p, j, *f.levelFrom*k, -k) {
		cut.Outline = append(cut.Outline, v.Up(0))
	}
	return cut.AreaBetween(i, lo, hi)
}
