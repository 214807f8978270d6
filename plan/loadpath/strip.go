package loadpath

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// strip is one roof member that carries: a rafter with the width of roof it
// serves, or a hip or valley that only gathers.
type strip struct {
	m    *framing.Member
	roof *plan.Roof
	low  geom.Vec2 // plan point of the low end, where u = 0
	up   geom.Vec2 // unit, uphill on plan
	run  float64   // plan length, in
	tan  float64   // rise over run
	// width is what it serves across its length; part of it, out0 and out1 (at
	// the low and high end along the eave), lies beyond a gable wall.
	width, out0, out1 float64
	// along0..along1 is the stretch along the ridge axis that it covers.
	along0, along1 float64
	inside         [2]float64 // u between the outside faces of the walls
	face           *framing.Face
	gathers        bool      // a hip or valley
	ends           []support // by u
	pair           *pair
}

// support is where a strip rests.
type support struct {
	u     float64
	plate *framing.Joint // over a plate or beam, or
	on    *strip         // on a hip or valley, or
	ridge *ridge         // at a ridge, or a ledger when all three are nil
	joint *framing.Joint // nil where framing knows no joint
	at    geom.Vec2      // plan point
}

// slopesAlong tells whether the strip slopes along its roof's ridge axis, as
// the jacks of a hip end do.
func (s *strip) slopesAlong() bool {
	return math.Abs(axis(s.up, ridgeAxis(s.roof))) > 0.7
}

// eaveAxis returns the axis along the strip's eave, and eave its coordinate
// there.
func (s *strip) eaveAxis() int {
	if math.Abs(s.up.Y) > 0.7 {
		return 0
	}
	return 1
}

func (s *strip) eave() float64 { return axis(s.low, s.eaveAxis()) }

// side names the direction the strip slopes, for grouping.
func (s *strip) side() int {
	switch {
	case s.up.X > 0.7:
		return 0
	case s.up.X < -0.7:
		return 1
	case s.up.Y > 0:
		return 2
	}
	return 3
}

// pair is two opposing rafters that meet at a ridge board: one stiff piece on
// two plates.
type pair struct {
	a, b  *strip
	joint *framing.Joint
	apex  float64 // from a's plate to the ridge, in
	span  float64 // from plate to plate, in
	rise  float64 // from the plates to the ridge, in
	pull  Force   // tension across the ridge, this case
	along float64
}

// ridge is one ridge line; a long board is several members.
type ridge struct {
	roof    *plan.Roof
	bearing bool
	cross   float64 // coordinate across
	lo, hi  float64 // ends along its axis
	pairs   []*pair // by place along the ridge
	ends    []ridgeEnd
	feet    []*framing.Joint // plates under what leans on it
}

// ridgeEnd is a wall under a ridge.
type ridgeEnd struct {
	at      float64 // along the ridge
	wall    *wallPath
	station float64
}

// strips builds all of them from the roof's members and joints.
func (a *analysis) strips() {
	of := map[*framing.Member]*strip{}
	rid := map[*framing.Member]*ridge{}
	for _, m := range a.house.Members {
		switch {
		case m.Roof == nil:
		case m.Role == plan.Ridge:
			rid[m] = a.ridgeLine(m)
		case m.Role == plan.Truss:
			of[m] = a.truss(m)
		case m.Role == plan.Rafter || m.Role == plan.HipRafter || m.Role == plan.ValleyRafter:
			if s := newStrip(m); s != nil {
				of[m] = s
				a.rafters = append(a.rafters, s)
			}
		}
	}
	for _, j := range a.house.Joints {
		switch j.Kind {
		case plan.RafterPlate, plan.RafterLedger:
			if s := of[j.First()]; s != nil {
				s.nearer(j.At.Flat()).rest(support{plate: j, joint: j}, j.At.Flat())
			}
		case plan.RafterRidge:
			a.ridgeJoint(j, of, rid)
		}
	}
	a.seats()
	for _, s := range a.rafters {
		s.face = a.faces.of(s)
		slices.SortStableFunc(s.ends, func(x, y support) int { return cmpFloat(x.u, y.u) })
		s.inside = a.insideOf(s)
	}
	a.widths()
	for _, r := range a.ridges {
		slices.SortStableFunc(r.pairs, func(x, y *pair) int { return cmpFloat(x.along, y.along) })
	}
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

func newStrip(m *framing.Member) *strip {
	d := m.B.Sub(m.A)
	run := d.Flat().Len()
	if run < 1 {
		return nil
	}
	return &strip{
		m: m, roof: m.Roof, low: m.A.Flat(), up: d.Flat().Unit(), run: run, tan: d.Z / run,
		gathers: m.Role == plan.HipRafter || m.Role == plan.ValleyRafter,
	}
}

// ridgeLine returns the ridge that a member is part of.
func (a *analysis) ridgeLine(m *framing.Member) *ridge {
	ax := ridgeAxis(m.Roof)
	if d := m.B.Sub(m.A).Flat(); math.Abs(axis(d, ax)) < math.Abs(axis(d, 1-ax)) {
		ax = 1 - ax
	}
	lo, hi := axis(m.A.Flat(), ax), axis(m.B.Flat(), ax)
	lo, hi = math.Min(lo, hi), math.Max(lo, hi)
	cross := axis(m.A.Flat(), 1-ax)
	for _, r := range a.ridges {
		if r.roof == m.Roof && math.Abs(r.cross-cross) < 1 {
			r.lo, r.hi = math.Min(r.lo, lo), math.Max(r.hi, hi)
			return r
		}
	}
	r := &ridge{roof: m.Roof, bearing: m.Roof.RidgeBearing, cross: cross, lo: lo, hi: hi}
	a.ridges = append(a.ridges, r)
	return r
}

// truss reads a truss as a pair of rafters from tail to peak, and returns
// the one at its A end.
func (a *analysis) truss(m *framing.Member) *strip {
	d := m.B.Sub(m.A).Flat()
	t1, t2 := m.Roof.Pitch/12, m.Roof.Pitch/12
	if m.Roof.PitchOther > 0 {
		t2 = m.Roof.PitchOther / 12
	}
	if d.Len() < 1 || t1 <= 0 {
		return nil
	}
	run := d.Len() * t2 / (t1 + t2)
	l := &strip{m: m, roof: m.Roof, low: m.A.Flat(), up: d.Unit(), run: run, tan: t1}
	r := &strip{m: m, roof: m.Roof, low: m.B.Flat(), up: d.Unit().Mul(-1), run: d.Len() - run, tan: t2}
	a.rafters = append(a.rafters, l, r)
	p := &pair{a: l, b: r, along: axis(l.low, ridgeAxis(m.Roof))}
	l.pair, r.pair = p, p
	a.pairs = append(a.pairs, p)
	return l
}

// nearer returns the strip of a truss whose half p is in; of a rafter itself.
func (s *strip) nearer(p geom.Vec2) *strip {
	if s.m.Role == plan.Truss && p.Sub(s.low).Dot(s.up) > s.run {
		return s.pair.b
	}
	return s
}

// rest adds a support at the plan point p.
func (s *strip) rest(e support, p geom.Vec2) {
	e.at = p
	e.u = math.Min(math.Max(p.Sub(s.low).Dot(s.up), 0), s.run)
	s.ends = append(s.ends, e)
}

// ridgeJoint reads one joint at a ridge, hip or valley.
func (a *analysis) ridgeJoint(j *framing.Joint, of map[*framing.Member]*strip, rid map[*framing.Member]*ridge) {
	var on *strip
	var at *ridge
	var held []*strip
	ledger := false
	for i, m := range j.Members {
		s := of[m]
		switch {
		case m.Role == plan.Ledger:
			ledger = true
		case rid[m] != nil:
			at = rid[m]
		case s != nil && i > 0 && m.Role != plan.Rafter:
			on = s
		case s != nil:
			held = append(held, s)
		}
	}
	if at != nil {
		for _, s := range held {
			s.reachRidge(at)
		}
	}
	if at == nil && on == nil && len(held) == 2 && held[0].m.Role == plan.Rafter {
		a.makePair(j, held, nil)
		return
	}
	if at != nil && !at.bearing && len(held) == 2 && held[0].m.Role == plan.Rafter && held[1].m.Role == plan.Rafter && held[0].up.Dot(held[1].up) < -0.9 {
		a.makePair(j, held, at)
		return
	}
	for _, s := range held {
		switch {
		case at != nil:
			s.rest(support{ridge: at, joint: j}, j.At.Flat())
		case on != nil:
			s.rest(support{on: on, joint: j}, j.At.Flat())
		case ledger:
			s.rest(support{joint: j}, j.At.Flat())
		}
	}
}

// reachRidge lets a rafter's strip go on to the middle of the ridge, whose
// face it is cut to: the roof does.
func (s *strip) reachRidge(r *ridge) {
	i := 1 - ridgeAxis(r.roof)
	if math.Abs(axis(s.up, i)) > 0.99 {
		s.run = math.Max(s.run, (r.cross-axis(s.low, i))*axis(s.up, i))
	}
}

func (a *analysis) makePair(j *framing.Joint, held []*strip, at *ridge) {
	p := &pair{a: held[0], b: held[1], joint: j, along: axis(j.At.Flat(), ridgeAxis(held[0].roof))}
	held[0].pair, held[1].pair = p, p
	a.pairs = append(a.pairs, p)
	if at != nil {
		at.pairs = append(at.pairs, p)
	}
}

// insideOf returns where along u the strip lies between the outside faces of
// the walls that its roof covers.
func (a *analysis) insideOf(s *strip) [2]float64 {
	i := 0
	if math.Abs(s.up.Y) > 0.7 {
		i = 1
	}
	area := a.covered(s.roof)
	lo, hi := axis(area.lo, i), axis(area.hi, i)
	at := axis(s.low, i)
	if axis(s.up, i) > 0 {
		return [2]float64{clamp(lo-at, 0, s.run), clamp(hi-at, 0, s.run)}
	}
	return [2]float64{clamp(at-hi, 0, s.run), clamp(at-lo, 0, s.run)}
}

func clamp(x, lo, hi float64) float64 { return math.Min(math.Max(x, lo), hi) }

// widths shares the roof out to the rafters of each side of each roof: half
// way to the neighbors, the outer ones to the edge of the roof.
func (a *analysis) widths() {
	type key struct {
		face *framing.Face // rafters of two roofs may lie in one face
		roof *plan.Roof    // where there is no face
		side int
	}
	groups := map[key][]*strip{}
	var order []key
	for _, s := range a.rafters {
		if s.gathers || len(s.ends) == 0 && s.pair == nil {
			continue
		}
		k := key{face: s.face, side: s.side()}
		if k.face == nil {
			k.roof = s.roof
		}
		if groups[k] == nil {
			order = append(order, k)
		}
		groups[k] = append(groups[k], s)
	}
	for _, k := range order {
		a.shareOut(groups[k])
	}
}

func (a *analysis) shareOut(g []*strip) {
	slices.SortStableFunc(g, func(x, y *strip) int { return cmpFloat(x.eave(), y.eave()) })
	var rows [][]*strip // those at one station: a valley may cut a run in two
	for _, s := range g {
		if n := len(rows); n > 0 && s.eave() < rows[n-1][0].eave()+1 {
			rows[n-1] = append(rows[n-1], s)
			continue
		}
		rows = append(rows, []*strip{s})
	}
	lo, hi := a.edges(g[0])
	for i, row := range rows {
		at := row[0].eave()
		e0, e1 := math.Min(lo, at), math.Max(hi, at)
		if i > 0 {
			e0 = (rows[i-1][0].eave() + at) / 2
		}
		if i < len(rows)-1 {
			e1 = (rows[i+1][0].eave() + at) / 2
		}
		runs := 0.0
		for _, s := range row {
			runs += s.run
		}
		width := e1 - e0
		if f := row[0].face; f != nil {
			width = areaBetween(f.Outline, row[0].eaveAxis(), e0, e1) / runs
		}
		for _, s := range row {
			a.serve(s, e0, e1, width)
		}
	}
}

// areaBetween returns the plan area of an outline between two coordinates
// along an axis, in².
func areaBetween(outline []geom.Vec3, i int, lo, hi float64) float64 {
	p := make([]geom.Vec2, len(outline))
	for k, v := range outline {
		p[k] = v.Flat()
	}
	p = cutAt(cutAt(p, i, lo, 1), i, hi, -1)
	area := 0.0
	for k, v := range p {
		area += v.Cross(p[(k+1)%len(p)]) / 2
	}
	return math.Abs(area)
}

// cutAt keeps the part of a polygon where (coordinate - at) times sign is not
// negative.
func cutAt(p []geom.Vec2, i int, at, sign float64) (out []geom.Vec2) {
	for k, v := range p {
		w := p[(k+1)%len(p)]
		dv, dw := (axis(v, i)-at)*sign, (axis(w, i)-at)*sign
		if dv >= 0 {
			out = append(out, v)
		}
		if dv*dw < 0 {
			out = append(out, v.Add(w.Sub(v).Mul(dv/(dv-dw))))
		}
	}
	return out
}

// edges returns the ends of the roof along the eave of s.
func (a *analysis) edges(s *strip) (lo, hi float64) {
	i := s.eaveAxis()
	lo, hi = math.Inf(1), math.Inf(-1)
	if s.face != nil {
		for _, p := range s.face.Outline {
			lo, hi = math.Min(lo, axis(p.Flat(), i)), math.Max(hi, axis(p.Flat(), i))
		}
	}
	if lo > hi {
		area := roofArea(a.plan, s.roof)
		lo, hi = axis(area.lo, i)-s.roof.Rake, axis(area.hi, i)+s.roof.Rake
	}
	return lo, hi
}

// serve gives s the stretch e0..e1 of the eave, at the width that makes up
// the area of the face there.
func (a *analysis) serve(s *strip, e0, e1, width float64) {
	s.width = width
	area := a.covered(s.roof)
	ax := ridgeAxis(s.roof)
	if s.slopesAlong() {
		p, q := axis(s.low, ax), axis(s.low.Add(s.up.Mul(s.run)), ax)
		s.along0, s.along1 = math.Min(p, q), math.Max(p, q)
		return
	}
	s.along0, s.along1 = e0, e1
	k := width / math.Max(e1-e0, 1e-9)
	s.out0 = k * clamp(axis(area.lo, ax)-e0, 0, e1-e0)
	s.out1 = k * clamp(e1-axis(area.hi, ax), 0, e1-e0)
}
