package loadpath

import (
	"math"

	"galewright/plan/framing"
)

// overJoists brings what a stud of an upper wall hands down to the joists that it stands
// on on to the walls that carry those.
func (s *caseState) overJoists(k *carrier, f Force) {
	for _, x := range k.joists {
		g := f.times(x.k)
		lost := s.m.joistOn(x.joint, func(p *wallPath, station, k float64) {
			s.walls[p.n].above.take(g.times(k))
			s.load(p, station, g.times(k))
		})
		if lost != 0 {
			s.lose(k.wall.w, g.times(lost))
		}
	}
}

// joistPull is what lifts a joist's joint, lb: the parts of feet that lift it, each by its
// own net; a part that presses it relieves nothing.
type joistPull struct {
	asd, str float64
	parts    []footPart
}

// footPart is a foot's part of it.
type footPart struct {
	foot  *framing.Joint
	k     float64
	force Force // of the whole foot
}

// liftJoists adds what a foot brings to the joints of the joists under it: pulling, to
// those past which it stands; pressing, by lever to the ones inside.
func (s *caseState) liftJoists(k *carrier, f Force) {
	for _, x := range k.joists {
		add := func(to map[*framing.Joint]*joistPull, f Force) {
			g := f.times(x.k)
			if g.net(ASD) <= 0 {
				return
			}
			if to[x.joint] == nil {
				to[x.joint] = &joistPull{}
			}
			p := to[x.joint]
			p.asd, p.str = p.asd+g.net(ASD), p.str+math.Max(0, g.net(Strength))
			p.parts = append(p.parts, footPart{k.base, x.k, f})
		}
		add(s.joists, f)
		add(s.still, Force{D: f.D})
	}
}

// joistPeak is the largest pull on a joist's joint over the cases.
type joistPeak struct {
	joistPull
	wind string
}

// foldJoists keeps the largest pull on each joist's joint.
func (u *uplift) foldJoists(s *caseState) {
	keep := func(from map[*framing.Joint]*joistPull, wind string) {
		for j, p := range from {
			if q := u.joists[j]; q == nil || p.asd > q.asd {
				u.joists[j] = &joistPeak{*p, wind}
			}
		}
	}
	keep(s.joists, s.wind.String())
	keep(s.still, "dead load alone")
}
