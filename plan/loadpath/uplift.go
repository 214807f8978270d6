package loadpath

import (
	"galewright/plan"
	"galewright/plan/framing"
)

// uplift is what all wind cases came to.
type uplift struct {
	peaks    map[*framing.Joint]*peak
	joists   map[*framing.Joint]*joistPeak // what lifts joists that walls stand on
	balances []Balance
	orphan   map[*plan.Wall]float64 // largest uplift of a stud that found nothing below, lb ASD
	// unheld and ridgeLost are those of a caseState, summed up.
	unheld    map[*framing.Member]float64
	ridgeLost map[*plan.Roof]float64
}

// allUplift runs every wind case and keeps the worst at each joint.
func (m *model) allUplift() *uplift {
	u := &uplift{peaks: make(map[*framing.Joint]*peak, len(m.house.Joints)), joists: map[*framing.Joint]*joistPeak{}, orphan: map[*plan.Wall]float64{}, unheld: map[*framing.Member]float64{}, ridgeLost: map[*plan.Roof]float64{}}
	for _, c := range m.cases() {
		u.fold(m.run(c))
	}
	u.overhangs(m)
	return u
}

// fold takes one case into the sums.
func (u *uplift) fold(s *caseState) {
	u.foldRoof(s)
	for _, p := range s.m.paths {
		u.foldWall(s, p)
	}
	u.foldGround(s)
	u.foldJoists(s)
	for w, lb := range s.orphans {
		u.orphan[w] = max(u.orphan[w], lb)
	}
	for m, lb := range s.unheld {
		u.unheld[m] += lb
	}
	for r, lb := range s.ridgeLost {
		u.ridgeLost[r] += lb
	}
	u.balances = append(u.balances, s.balance()...)
}

// foldRoof notes the joints of rafters.
func (u *uplift) foldRoof(s *caseState) {
	for _, p := range s.m.pairs {
		f := s.pulls[p.n]
		u.note(p.joint, s.wind, f, [4]Force{f})
	}
	for _, x := range s.m.rafters {
		for _, e := range x.ends {
			for _, j := range []*framing.Joint{e.joint, e.foot} {
				if f, ok := s.rafters[j]; ok && j != nil {
					u.note(j, s.wind, f, [4]Force{f})
				}
			}
		}
	}
}

// foldWall notes the joints of headers and full-height members of a wall.
func (u *uplift) foldWall(s *caseState, p *wallPath) {
	for _, o := range p.openings {
		for i, j := range o.ends {
			f := s.headers[o.n][i]
			u.note(j, s.wind, f, [4]Force{1: f})
		}
	}
	for _, k := range p.carriers {
		on := s.carriers[k.n]
		u.note(k.st, s.wind, on.top, [4]Force{0: on.top})
		u.note(k.base, s.wind, s.foot(k), [4]Force{on.top, on.head, on.direct, down(k.weight)})
	}
}

// foldGround notes the joints of piles and porch posts.
func (u *uplift) foldGround(s *caseState) {
	for _, g := range s.m.piles.girders {
		for _, x := range g.piles {
			f := s.piles[x.n]
			u.note(x.joint, s.wind, f, [4]Force{f.add(Force{D: -x.weight}), {}, {}, down(x.weight)})
		}
	}
	for _, r := range s.m.ridges {
		for _, x := range r.poles {
			f := s.poles[x.n]
			u.note(x.cap, s.wind, f, [4]Force{f})
			u.note(x.base, s.wind, f, [4]Force{f})
		}
	}
	for _, x := range s.m.porches {
		f := s.posts[x.n]
		u.note(x.cap, s.wind, f, [4]Force{f})
		for _, o := range x.brings {
			f.take(s.posts[o.n])
		}
		u.note(x.base, s.wind, f, [4]Force{f})
	}
}

// note keeps f when it asks for more than the joint has seen.
func (u *uplift) note(j *framing.Joint, c windCase, f Force, parts [4]Force) {
	if j == nil {
		return
	}
	if p, d := u.peaks[j], f.net(ASD); p == nil || d > p.demand {
		u.peaks[j] = &peak{f, d, c, parts}
	}
	if f.D < 0 && f.W < 0 { // dead load lifts it: the wind that relieves may not blow
		u.note(j, windCase{none: true}, f.still(), [4]Force{parts[0].still(), parts[1].still(), parts[2].still(), parts[3].still()})
	}
}

// balance closes the account of one wind case, story by story.
func (s *caseState) balance() (out []Balance) {
	at := map[*plan.Level]*Balance{}
	for _, l := range s.m.plan.Levels {
		at[l] = &Balance{Case: s.wind.String(), Level: l, Elsewhere: s.lost[l]}
	}
	for _, p := range s.m.paths {
		b, f := at[p.top], at[p.w.Level]
		b.Roof.take(s.walls[p.n].roof)
		b.Above.take(s.walls[p.n].above)
		for _, k := range p.carriers {
			on := s.carriers[k.n]
			b.Tops.take(on.top.add(on.head))
			b.Above.take(on.direct)
			f.Weight.take(down(k.weight))
			b.Weight.take(k.floor)
			f.Bases.take(s.foot(k))
		}
	}
	for _, l := range s.m.plan.Levels {
		out = append(out, *at[l])
	}
	return out
}

// peak is the worst force at one joint over the wind cases, and what it is
// made of in that case.
type peak struct {
	force  Force
	demand float64 // ASD
	wind   windCase
	parts  [4]Force // named by the Demand of the kind of joint
}
