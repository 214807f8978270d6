package framing

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// Share is a rafter, hip, valley or half of a truss as a line on plan, with
// the roof that it serves: half way to its neighbors of the same face, the
// outer ones to the edge of the roof. It is the one place where widths of roof
// are worked out; see Joint.Tributary for lengths of wall.
type Share struct {
	Member *Member
	Low    geom.Vec2 // plan point of the low end
	Up     geom.Vec2 // unit, uphill on plan
	Run    float64   // plan length, to the middle of the ridge, in
	Tan    float64   // rise over run
	Face   *Face     // that it lies in; nil of hips and valleys
	// Width is the area of roof it serves over its run, in: what it carries
	// across its length. It is 0 of hips and valleys, which only gather, and of
	// what nothing holds.
	Width float64
	// From and To are the stretch of its eave that it serves: coordinates along
	// EaveAxis, in.
	From, To float64
	// Level is true of the level top of a hip or girder truss: its line runs up the end's
	// slope, over what the level top carries of that.
	Level bool
}

// Gathers tells whether it is a hip, corner jack or valley, or of a dormer a header, valley board or
// plate, which carries what leans on it and no roof of its own.
func (s *Share) Gathers() bool {
	switch s.Member.Role {
	case plan.HipRafter, plan.ValleyRafter, plan.RoofHeader, plan.ValleyBoard, plan.UpperPlate, plan.CornerJack:
		return true
	}
	return false
}

// EaveAxis returns the axis that its eave runs along: 0 for x, 1 for y.
func (s *Share) EaveAxis() int {
	return 1 - s.Up.MainAxis()
}

// eave returns its coordinate along its eave.
func (s *Share) eave() float64 { return s.Low.Along(s.EaveAxis()) }

// At returns the plan point u up its run.
func (s *Share) At(u float64) geom.Vec2 { return s.Low.Add(s.Up.Mul(u)) }

// shares makes the shares of all roofs once the joints are known.
func (b *builder) shares() {
	of := map[*Member][]*Share{}
	for _, m := range b.house.Members {
		of[m] = sharesOf(m)
		b.house.Shares = append(b.house.Shares, of[m]...)
	}
	held := b.reachRidges(of)
	b.nameShares(of)
	faces := newFaceGrid(b.house)
	var carry, level []*Share
	for _, s := range b.house.Shares {
		s.Face = faces.of(s)
		switch {
		case s.Level:
			level = append(level, s)
		case !s.Gathers() && (held[s.Member] || s.Member.Role.IsTruss()):
			carry = append(carry, s)
		}
	}
	levelTops(level)
	for _, g := range bySide(carry) {
		shareOut(g, carry)
	}
}

// sharesOf returns the lines of a member of the roof, none of any other.
func sharesOf(m *Member) []*Share {
	d := m.B.Sub(m.A)
	run := d.Flat().Len()
	switch {
	case m.Roof == nil || run < 1:
	case m.Flat[0] != m.Flat[1]:
		return hipShares(m)
	case m.Role == plan.Truss || m.Role == plan.GirderTruss || m.Role == plan.ValleyFrame:
		return trussShares(m)
	case m.Role == plan.Rafter || m.Role == plan.JackTruss || m.Role == plan.CornerJack || m.Role == plan.HipRafter || m.Role == plan.ValleyRafter ||
		m.Role == plan.RoofHeader || m.Role == plan.ValleyBoard || m.Role == plan.UpperPlate && m.Wall == nil:
		return []*Share{{Member: m, Low: m.A.Flat(), Up: d.Flat().Unit(), Run: run, Tan: d.Z / run}}
	}
	return nil
}

// trussShares reads a truss as two rafters from tail to peak, that of a shed
// as one.
func trussShares(m *Member) []*Share {
	d := m.B.Sub(m.A).Flat()
	t1, t2 := m.Roof.Pitch/12, m.Roof.Pitch/12
	if m.Roof.PitchOther > 0 {
		t2 = m.Roof.PitchOther / 12
	}
	if t1 <= 0 {
		return nil
	}
	if m.Roof.Kind == plan.ShedRoof {
		return []*Share{{Member: m, Low: m.A.Flat(), Up: d.Unit(), Run: d.Len(), Tan: t1}}
	}
	run := d.Len() * t2 / (t1 + t2)
	return []*Share{
		{Member: m, Low: m.A.Flat(), Up: d.Unit(), Run: run, Tan: t1},
		{Member: m, Low: m.B.Flat(), Up: d.Unit().Mul(-1), Run: d.Len() - run, Tan: t2},
	}
}

// reachRidges lets what meets a ridge square go on to its middle, whose face
// it is cut to, and what comes up in its line to where the planes meet: the roof does. It returns the members that a joint holds.
func (b *builder) reachRidges(of map[*Member][]*Share) map[*Member]bool {
	held := map[*Member]bool{}
	for _, j := range b.house.Joints {
		switch j.Kind {
		case plan.RafterPlate, plan.GirderPlate, plan.RafterLedger:
			held[j.First()] = true
		case plan.RafterRidge:
			i := slices.IndexFunc(j.Members, func(m *Member) bool { return m.Role == plan.Ridge })
			for _, m := range j.Members {
				held[m] = true
				for _, s := range of[m] {
					if i >= 0 {
						s.reach(j.Members[i], j.At.Flat())
					}
				}
			}
		}
	}
	return held
}

// nameShares tells each rafter-plate joint whose share it holds: of a truss
// that of the half it is under.
func (b *builder) nameShares(of map[*Member][]*Share) {
	for _, j := range b.house.Joints {
		if !j.Kind.OnPlate() && j.Kind != plan.RafterLedger {
			continue
		}
		for _, s := range of[j.First()] {
			if j.Share == nil || j.At.Flat().Sub(j.Share.Low).Dot(j.Share.Up) > j.Share.Run {
				j.Share = s
			}
		}
	}
}

func (s *Share) reach(ridge *Member, at geom.Vec2) {
	switch d := ridge.B.Sub(ridge.A).Flat().Unit(); {
	case geom.Square(s.Up, d):
		s.Run = math.Max(s.Run, ridge.A.Flat().Sub(s.Low).Dot(s.Up))
	case geom.Skims(s.Up, d): // cut back from where the planes meet
		s.Run = math.Max(s.Run, at.Sub(s.Low).Dot(s.Up))
	}
}

// bySide gathers the shares of one side of one roof, those of two roofs that
// lie in one face together.
func bySide(list []*Share) (out [][]*Share) {
	type key struct {
		face *Face
		roof *plan.Roof // where there is no face
		x, y float64
	}
	at := map[key]int{}
	for _, s := range list {
		k := key{face: s.Face, x: math.Round(s.Up.X), y: math.Round(s.Up.Y)}
		if k.face == nil {
			k.roof = s.Member.Roof
		}
		i, ok := at[k]
		if !ok {
			i = len(out)
			at[k], out = i, append(out, nil)
		}
		out[i] = append(out[i], s)
	}
	return out
}

// shareOut shares one side of a roof out to its rafters. What lies in no face of
// its own roof, as a truss whose tail a wing covers, goes half way to its
// neighbors on its side of that roof, whatever face those lie in.
func shareOut(side, all []*Share) {
	first := side[0]
	if first.Face == nil {
		side = slices.DeleteFunc(slices.Clone(all), func(s *Share) bool { return s.Member.Roof != first.Member.Roof || !geom.With(s.Up, first.Up) })
	}
	slices.SortStableFunc(side, func(x, y *Share) int { return cmp.Compare(x.eave(), y.eave()) })
	rows := rowsOf(side)
	lo, hi := first.edges()
	for i, row := range rows {
		at := row[0].eave()
		from, to := math.Min(lo, at), math.Max(hi, at)
		if i > 0 {
			from = (rows[i-1][0].eave() + at) / 2
		}
		if i < len(rows)-1 {
			to = (rows[i+1][0].eave() + at) / 2
		}
		if row[0].Face != first.Face {
			continue
		}
		width := widthOf(row, from, to)
		for _, s := range row {
			s.From, s.To, s.Width = from, to, width
		}
	}
}

// rowsOf gathers those at one place along the eave: a valley may cut a run in
// two.
func rowsOf(side []*Share) (rows [][]*Share) {
	for _, s := range side {
		if n := len(rows); n > 0 && s.eave() < rows[n-1][0].eave()+1 {
			rows[n-1] = append(rows[n-1], s)
			continue
		}
		rows = append(rows, []*Share{s})
	}
	return rows
}

// widthOf returns the width that makes up the area of the face between two
// coordinates along the eave over the runs of a row.
func widthOf(row []*Share, from, to float64) float64 {
	if row[0].Face == nil {
		return to - from
	}
	runs := 0.0
	for _, s := range row {
		runs += s.Run
	}
	return row[0].Face.below(row[0].EaveAxis(), from, to) / runs
}

// edges returns the ends of the roof along the eave.
func (s *Share) edges() (lo, hi float64) {
	i := s.EaveAxis()
	if s.Face == nil {
		r := s.Member.Roof
		return r.Area[0].Along(i) - r.Rake, r.Area[1].Along(i) + r.Rake
	}
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, p := range s.Face.Outline {
		lo, hi = math.Min(lo, p.Flat().Along(i)), math.Max(hi, p.Flat().Along(i))
	}
	return lo, hi
}

// AreaBetween returns the plan area of a face between two coordinates along
// axis i (0 for x, 1 for y), in².
func (f *Face) AreaBetween(i int, lo, hi float64) float64 {
	p := make([]geom.Vec2, len(f.Outline))
	for k, v := range f.Outline {
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
		dv, dw := (v.Along(i)-at)*sign, (w.Along(i)-at)*sign
		if dv >= 0 {
			out = append(out, v)
		}
		if dv*dw < 0 {
			out = append(out, v.Add(w.Sub(v).Mul(dv/(dv-dw))))
		}
	}
	return out
}

// faceGrid finds the face that a rafter lies in.
type faceGrid struct {
	*geom.Grid[*Face]
	own map[*plan.Roof]bool // roofs of dormers: they lie over other faces
}

func newFaceGrid(h *House) faceGrid {
	g := faceGrid{geom.NewGrid[*Face](), map[*plan.Roof]bool{}}
	for _, d := range h.Dormers {
		g.own[d.Own] = true
	}
	for _, f := range h.Roof {
		lo, hi := f.Outline[0], f.Outline[0]
		for _, p := range f.Outline {
			lo, hi = geom.Vec3{X: min(lo.X, p.X), Y: min(lo.Y, p.Y)}, geom.Vec3{X: max(hi.X, p.X), Y: max(hi.Y, p.Y)}
		}
		g.Add(f, lo, hi, nil)
	}
	return g
}

// of returns the face over the middle of a share that slopes its way, or nil: none of a
// dormer, which may lie over that, but for the dormer's own. Of a truss whose tail a valley
// set covers it is that over its upper part: the frames carry the rest.
func (g faceGrid) of(s *Share) *Face {
	if f := g.at(s, 0.5); f != nil || !s.Member.Role.IsTruss() {
		return f
	}
	return cmp.Or(g.at(s, 0.75), g.at(s, 0.95))
}

// at returns the face over a place on a share, as a part of its run, that slopes its way.
func (g faceGrid) at(s *Share, part float64) *Face {
	mid := s.At(s.Run * part)
	for _, f := range g.Within(mid.Up(0), mid.Up(0)) {
		other := f.Roof != s.Member.Roof && (g.own[f.Roof] || g.own[s.Member.Roof])
		if !other && (geom.Against(f.Slope, s.Up) || s.Level && geom.Parallel(f.Slope, s.Up)) && f.Over(mid) {
			return f
		}
	}
	return nil
}

// Over tells whether p lies within the plan of a face.
func (f *Face) Over(p geom.Vec2) bool {
	in := false
	for i, a := range f.Outline {
		b := f.Outline[(i+1)%len(f.Outline)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}
