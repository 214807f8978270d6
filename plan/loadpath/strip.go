package loadpath

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// strip is one roof member that carries: the share of a rafter, a hip or
// valley or half a truss, with where it rests. Places along it are u, in, from
// its low end on plan.
type strip struct {
	*framing.Share
	roof *plan.Roof
	// out0 and out1 are the parts of its width, at the low and high end along
	// the eave, that lie beyond a gable wall.
	out0, out1 float64
	// along0..along1 is the stretch along the ridge axis that it covers.
	along0, along1 float64
	inside         [2]float64 // u between the outside faces of the walls
	passes         []float64  // u of the exterior walls that it passes over
	ends           []support  // by u
	pair           *pair
}

// support is where a strip rests.
type support struct {
	u     float64
	plate *framing.Joint // over a plate or beam, or
	on    *strip         // on a hip or valley, or
	ridge *ridge         // at a ridge, or a ledger when all three are nil
	joint *framing.Joint // nil at a peak where others are tied to this one
	// Of a dormer's plate on a stud: the joint at the stud's foot, and where that stands on
	// a wall's plates the wall and the station there.
	foot    *framing.Joint
	wall    *wallPath
	station float64
	at      geom.Vec2 // plan point
}

// slopesAlong tells whether the strip slopes along its roof's ridge axis, as
// the jacks of a hip end do.
func (s *strip) slopesAlong() bool { return s.Up.Mainly(s.roof.RidgeAxis()) }

// pair is two opposing rafters that meet at a ridge board: one stiff piece on
// two plates.
type pair struct {
	n     int
	a, b  *strip
	joint *framing.Joint
	apex  float64    // from a's plate to the ridge, in
	span  float64    // from plate to plate, in
	rise  float64    // from the plates to the ridge, in; see shape
	high  [2]float64 // the ridge over the feet of a and b where a dormer sets them at different heights, in; else 0
	along float64
	level float64 // length of the level top between them, of a hip or girder truss, in
}

// ridge is one ridge line; a long board is several members.
type ridge struct {
	roof    *plan.Roof
	bearing bool
	cross   float64 // coordinate across
	lo, hi  float64 // ends along its axis
	pairs   []*pair // by place along the ridge
	ends    []ridgeEnd
	poles   []*pole          // by place along the ridge
	feet    []*framing.Joint // plates under what leans on it
}

// ridgeEnd is a wall under a ridge.
type ridgeEnd struct {
	at      float64 // along the ridge
	wall    *wallPath
	station float64
}

// roofMembers finds the load path's part of each member of the roof.
type roofMembers struct {
	share  map[*framing.Share]*strip
	strip  map[*framing.Member]*strip   // of a truss the one at its A end
	halves map[*framing.Member][]*strip // of a valley frame
	ridge  map[*framing.Member]*ridge
}

// strips reads what carries the roof from framing's shares and joints.
func (b *builder) strips() {
	of := &roofMembers{map[*framing.Share]*strip{}, map[*framing.Member]*strip{}, map[*framing.Member][]*strip{}, map[*framing.Member]*ridge{}}
	for _, m := range b.house.Members {
		if m.Roof != nil && m.Role == plan.Ridge {
			of.ridge[m] = b.ridgeLine(m)
		}
	}
	for _, share := range b.house.Shares {
		b.addStrip(share, of)
	}
	b.supports(of)
	for _, s := range b.rafters {
		slices.SortStableFunc(s.ends, func(x, y support) int { return cmpFloat(x.u, y.u) })
		s.inside, s.passes = b.insideOf(s), s.wallsUnder(b.indoors[s.roof.Over])
		b.cover(s)
	}
	for _, r := range b.ridges {
		slices.SortStableFunc(r.pairs, func(x, y *pair) int { return cmpFloat(x.along, y.along) })
	}
}

// supports lets every strip rest where a joint holds it.
func (b *builder) supports(of *roofMembers) {
	var ties []*framing.Joint // of peaks
	for _, j := range b.house.Joints {
		switch j.Kind {
		case plan.BoardRafter, plan.DormerTop, plan.DormerFoot:
			b.dormerSupport(j, of)
		case plan.RafterPlate, plan.GirderPlate, plan.RafterLedger:
			if s := of.share[j.Share]; s != nil && j.Dormer != nil {
				s.rest(support{on: of.strip[j.Members[1]], joint: j}, j.At.Flat())
			} else if s != nil {
				s.rest(support{plate: j, joint: j}, j.At.Flat())
			}
		case plan.JackGirder, plan.JackCorner:
			if s, on := of.strip[j.First()], of.strip[j.Members[1]]; s != nil {
				if p := s.pair; p != nil && j.At.Flat().Sub(s.Low).Dot(s.Up) > s.Run {
					s = p.b
				}
				s.rest(support{on: on, joint: j}, j.At.Flat())
			}
		case plan.ValleyTruss:
			for _, s := range of.halves[j.First()] {
				if u := j.At.Flat().Sub(s.Low).Dot(s.Up); u <= s.Run {
					s.rest(support{on: of.strip[j.Members[1]], joint: j}, j.At.Flat())
					break
				}
			}
		case plan.RafterRidge:
			if j.Peak {
				ties = append(ties, j)
				continue
			}
			b.ridgeJoint(j, of)
		}
	}
	for _, m := range b.house.Members {
		shareSupports(of.halves[m])
	}
	for _, s := range b.level {
		s.rest(support{on: of.strip[s.Member]}, s.At(s.Run/2))
	}
	for _, p := range peaksOf(ties) {
		b.peak(p, of)
	}
}

// shareSupports lets the half of a valley frame that stands on no truss rest where the other
// half does: the frame is stiff.
func shareSupports(halves []*strip) {
	if len(halves) != 2 {
		return
	}
	for i, s := range halves {
		if o := halves[1-i]; len(s.ends) == 0 {
			for _, e := range o.ends {
				s.rest(e, e.at)
			}
			return
		}
	}
}

// addStrip adds the strip of a share; both of a truss are a pair.
func (b *builder) addStrip(share *framing.Share, of *roofMembers) {
	s := &strip{Share: share, roof: share.Member.Roof}
	b.rafters, of.share[share] = append(b.rafters, s), s
	first := of.strip[share.Member]
	if share.Member.Role == plan.ValleyFrame {
		of.halves[share.Member] = append(of.halves[share.Member], s)
		of.strip[share.Member] = s
		return
	}
	if share.Level {
		b.level = append(b.level, s)
		return
	}
	if first == nil {
		of.strip[share.Member] = s
		return
	}
	p := &pair{a: first, b: s, along: axis(first.Low, first.roof.RidgeAxis())}
	p.level = share.Member.Flat[1].Sub(share.Member.Flat[0]).Len()
	first.pair, s.pair = p, p
	b.pairs = append(b.pairs, p)
}

func cmpFloat(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// ridgeLine returns the ridge that a member is part of.
func (b *builder) ridgeLine(m *framing.Member) *ridge {
	ax := m.Roof.RidgeAxis()
	if d := m.B.Sub(m.A).Flat(); math.Abs(axis(d, ax)) < math.Abs(axis(d, 1-ax)) {
		ax = 1 - ax
	}
	lo, hi := axis(m.A.Flat(), ax), axis(m.B.Flat(), ax)
	lo, hi = math.Min(lo, hi), math.Max(lo, hi)
	cross := axis(m.A.Flat(), 1-ax)
	for _, r := range b.ridges {
		if r.roof == m.Roof && math.Abs(r.cross-cross) < 1 {
			r.lo, r.hi = math.Min(r.lo, lo), math.Max(r.hi, hi)
			return r
		}
	}
	r := &ridge{roof: m.Roof, bearing: m.Roof.RidgeBearing, cross: cross, lo: lo, hi: hi}
	b.ridges = append(b.ridges, r)
	return r
}

// rest adds a support at the plan point p.
func (s *strip) rest(e support, p geom.Vec2) {
	e.at = p
	e.u = math.Min(math.Max(p.Sub(s.Low).Dot(s.Up), 0), s.Run)
	s.ends = append(s.ends, e)
}

// ridgeJoint reads one joint at a ridge, hip or valley.
func (b *builder) ridgeJoint(j *framing.Joint, of *roofMembers) {
	held, e := readRidge(j, of)
	switch {
	case leanOnEachOther(held, e):
		b.makePair(j, held, e.ridge)
	case e.ridge != nil || e.on != nil || hasLedger(j):
		for _, s := range held {
			s.rest(e, j.At.Flat())
		}
	}
}

// readRidge returns what a joint at a ridge, hip or valley holds, and what
// holds it.
func readRidge(j *framing.Joint, of *roofMembers) (held []*strip, e support) {
	e.joint = j
	for i, m := range j.Members {
		s := of.strip[m]
		switch {
		case of.ridge[m] != nil:
			e.ridge = of.ridge[m]
		case s != nil && i > 0 && (m.Role != plan.Rafter || j.Dormer != nil && j.First().Role == plan.RoofHeader):
			e.on = s
		case s != nil:
			held = append(held, s)
		}
	}
	if e.ridge != nil {
		e.on = nil
	}
	return held, e
}

// leanOnEachOther tells whether two rafters meet at a joint without a beam
// that carries them: one stiff piece.
func leanOnEachOther(held []*strip, e support) bool {
	if len(held) != 2 || e.on != nil || held[0].Member.Role != plan.Rafter {
		return false
	}
	return e.ridge == nil || !e.ridge.bearing && held[1].Member.Role == plan.Rafter && geom.Against(held[0].Up, held[1].Up)
}

func hasLedger(j *framing.Joint) bool {
	return slices.ContainsFunc(j.Members, func(m *framing.Member) bool { return m.Role == plan.Ledger })
}

// peaksOf gathers the ties of one peak: those that share a hip.
func peaksOf(ties []*framing.Joint) (peaks [][]*framing.Joint) {
	for _, j := range ties {
		group := []*framing.Joint{j}
		peaks = slices.DeleteFunc(peaks, func(p []*framing.Joint) bool {
			if !slices.ContainsFunc(p, func(o *framing.Joint) bool { return shareHip(o, j) }) {
				return false
			}
			group = append(p, group...)
			return true
		})
		peaks = append(peaks, group)
	}
	return peaks
}

func shareHip(a, b *framing.Joint) bool {
	return slices.ContainsFunc(a.Members, func(m *framing.Member) bool { return slices.Contains(b.Members, m) })
}

// peak lets the hips of a peak without a ridge lean on it: its force goes to
// the feet of all of them. One of them has no tie of its own: the others' hold
// it.
func (b *builder) peak(ties []*framing.Joint, of *roofMembers) {
	p := ties[0].At.Flat()
	roof := ties[0].Roof
	i := roof.RidgeAxis()
	top := &ridge{roof: roof, cross: axis(p, 1-i), lo: axis(p, i), hi: axis(p, i)}
	b.ridges = append(b.ridges, top)
	tied := map[*framing.Member]bool{}
	for _, j := range ties {
		tied[j.First()] = true
		of.strip[j.First()].rest(support{ridge: top, joint: j}, j.At.Flat())
	}
	for _, j := range ties {
		for _, m := range j.Members {
			if !tied[m] {
				tied[m] = true
				of.strip[m].rest(support{ridge: top}, j.At.Flat())
			}
		}
	}
}

// makePair joins two rafters that lean on each other. Its place is along the ridge that
// they meet at: where a wing's ridge runs into another roof one of them is that roof's.
func (b *builder) makePair(j *framing.Joint, held []*strip, at *ridge) {
	roof := held[0].roof
	if at != nil {
		roof = at.roof
	}
	p := &pair{a: held[0], b: held[1], joint: j, along: axis(j.At.Flat(), roof.RidgeAxis())}
	held[0].pair, held[1].pair = p, p
	b.pairs = append(b.pairs, p)
	if at != nil {
		at.pairs = append(at.pairs, p)
	}
}

// insideOf returns where along u the strip lies between the outside faces of
// the walls that its roof covers.
func (b *builder) insideOf(s *strip) [2]float64 {
	if b.open[s.roof] {
		return [2]float64{}
	}
	i := s.Up.MainAxis()
	area := b.walled[s.roof]
	lo, hi := axis(area.lo, i), axis(area.hi, i)
	at := axis(s.Low, i)
	if axis(s.Up, i) > 0 {
		return [2]float64{clamp(lo-at, 0, s.Run), clamp(hi-at, 0, s.Run)}
	}
	return [2]float64{clamp(at-hi, 0, s.Run), clamp(at-lo, 0, s.Run)}
}

func clamp(x, lo, hi float64) float64 { return math.Min(math.Max(x, lo), hi) }

// cover finds the stretch along the ridge that a strip covers, and how much of
// its width lies beyond the gable walls.
func (b *builder) cover(s *strip) {
	area := b.walled[s.roof]
	ax := s.roof.RidgeAxis()
	if s.slopesAlong() {
		p, q := axis(s.Low, ax), axis(s.At(s.Run), ax)
		s.along0, s.along1 = math.Min(p, q), math.Max(p, q)
		return
	}
	s.along0, s.along1 = s.From, s.To
	k := s.Width / math.Max(s.To-s.From, 1e-9)
	s.out0 = k * clamp(axis(area.lo, ax)-s.From, 0, s.To-s.From)
	s.out1 = k * clamp(s.To-axis(area.hi, ax), 0, s.To-s.From)
}
