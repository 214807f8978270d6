package placement

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
)

// thread is what a rod shows beyond its nut, in: three turns of a coarse
// thread (common practice, no published source). A nut is taken as high as
// the rod is thick.
const thread = 0.25

// nuts returns the rod length one end takes for nut, washer and thread.
func nuts(rod float64) float64 { return rod + thread }

// rod sets a bolt: down through the sill plate beside its stud, across a
// girder into its pile, or down from a porch post.
func (x *placer) rod(p *Piece, k, n int) *plan.Diagnostic {
	j := p.Joint
	p.Face, p.Laid = plan.Through, j.Members
	if j.Kind == plan.GirderPile {
		f, half := lineOf(j)
		s, _ := f.Local(j.At.Flat())
		off := spread(k, n, max(p.Item.Washer, 3))
		mid := p.Item.Length / 2
		// Half-way up the girder, where the pile's cheek stands behind it.
		z := j.At.Z
		if g := j.First(); g.Z1 > g.Z0 {
			z = (g.Z0 + g.Z1) / 2
		}
		upper, lower := pile(j)
		p.Laid = laid(upper, lower)
		p.Path = []geom.Vec3{f.At(s+off, half-mid, z), f.At(s+off, half+mid, z)}
		return nil
	}
	if j.Kind.Lies() == plan.LiesAgainst {
		p.through(k, n)
		return nil
	}
	if j.Wall == nil {
		p.Path = []geom.Vec3{j.At, j.At.Sub(geom.Vec3{Z: p.Item.Length})}
		return nil
	}
	return nil // seatRods finds its place when all pieces are there
}

// through sets a bolt square through two members that lie face to face, its
// head on the one held.
func (p *Piece) through(k, n int) {
	j := p.Joint
	f, m := j.Wall.Frame(), j.First()
	p.Laid = laid(j.Members[:min(2, len(j.Members))]...)
	s, face := f.Local(j.At.Flat())
	_, mid := f.Local(m.A.Flat())
	way := 1.0
	if mid > face {
		way = -1
	}
	z := j.At.Z + spread(k, n, max(p.Item.Washer, 3))
	p.Path = []geom.Vec3{f.At(s, face-way*m.Section.Breadth, z), f.At(s, face+way*(p.Item.Length-m.Section.Breadth), z)}
}

// aligned is how far two bodies of a pair may stand out of line, in: the play
// of a rod in its holes over a floor (common practice, no published source).
const aligned = 0.25

// pair sets two bodies over each other on the same side of two posts, with
// the rod that joins them.
func (x *placer) pair(p *Piece, k, n int) *plan.Diagnostic {
	j := p.Joint
	f, depth, fault := onWall(j)
	if fault != nil {
		return fault
	}
	l := x.through(j)
	if !l.floor || l.below == nil {
		return &plan.Diagnostic{
			Code: "pair-without-post", Summary: "a hold-down pair needs a post above the floor and one below, there is none below",
			Mend: "add a stud below, or use a single hold-down here",
		}
	}
	l = x.side(p, l)
	s := l.rodLine(p)
	total := l.zAbove - l.zBelow
	it := p.Item
	p.gap, p.Laid = total, laid(l.above, l.below)
	p.Cut = total + 2*it.Standoff + 2*nuts(it.Rod)
	body := max(it.Length, it.Standoff)
	p.Path = []geom.Vec3{
		f.At(s, depth/2, l.zBelow-body), f.At(s, depth/2, l.zBelow-it.Standoff),
		f.At(s, depth/2, l.zAbove+it.Standoff), f.At(s, depth/2, l.zAbove+body),
	}
	p.Station = s
	p.bodies(f, depth, l, body)
	return nil
}

// bodies adds the bands of the bodies on the posts' sides.
func (p *Piece) bodies(f geom.Frame, depth float64, l link, body float64) {
	for i, m := range p.Laid {
		if i > 0 && !l.floor {
			break
		}
		s0, s1 := span2(l.joint, m)
		if i > 0 {
			s0, s1 = s0+l.joint.Offset, s1+l.joint.Offset
		}
		g := facingOf(f, s0, s1, depth, p.Face)
		z0, z1 := l.zAbove, l.zAbove+body
		if i > 0 {
			z0, z1 = l.zBelow-body, l.zBelow
		}
		p.bands = append(p.bands, band{g.n, g.at(z0, 0), g.at(z1, 0), p.wide()})
	}
}

// side chooses the side a body goes on and returns the link of the upright
// that has it: toward the shear wall it holds down, else toward the wall's
// middle, unless a face is asked for; where there is no room, the other side,
// or past a corner's second post, which is nailed to the first.
func (x *placer) side(p *Piece, l link) link {
	if p.Face == plan.Left || p.Face == plan.Right {
		return l
	}
	toward, other := plan.Right, plan.Left
	if x.shearMiddle(p.Joint, l) < (l.s0+l.s1)/2 {
		toward, other = other, toward
	}
	p.Face = toward
	if x.holds(p, l, toward) {
		return l
	}
	if x.holds(p, l, other) {
		p.Face = other
		return l
	}
	if next, ok := x.next(l, toward); ok && x.holds(p, next, toward) {
		return next
	}
	return l
}

// shearMiddle returns the station of the middle of the nearest shear segment,
// else of the wall.
func (x *placer) shearMiddle(j *framing.Joint, l link) float64 {
	mid, to, best := (l.s0+l.s1)/2, j.Wall.Length()/2, 1e9
	for _, s := range j.Wall.Shear {
		if d := max(s.From-mid, mid-s.To, 0); d < best {
			best, to = d, (s.From+s.To)/2
		}
	}
	return to
}

// postWide is the most that the middles of two neighboring studs of a corner
// post are apart, in.
const postWide = 8

// next returns the link of the next upright of the wall on one side, when it
// stands near enough to be of the same post.
func (x *placer) next(l link, side plan.Face) (link, bool) {
	list := x.byHost[hostKind{l.joint.Host, l.joint.Kind}]
	i := slices.Index(list, l.joint) + 1
	if side == plan.Left {
		i -= 2
	}
	if i < 0 || i >= len(list) || math.Abs(list[i].Station-l.joint.Station) > postWide {
		return l, false
	}
	n := x.through(list[i])
	return n, n.below != nil && n.floor == l.floor
}

// holds tells whether a body fits on a side of an upright, above and, of a
// pair, below: it reaches as far past its rod as the rod stands off, and does
// not hang over the wall's end.
func (x *placer) holds(p *Piece, l link, side plan.Face) bool {
	f, depth := p.Joint.Wall.Frame(), p.Joint.Wall.Depth()
	reach := 2 * p.Item.Center
	body := max(p.Item.Length, p.Item.Standoff)
	fits := func(m *framing.Member, off, z float64) bool {
		s0, s1 := span2(l.joint, m)
		a, b := s1+off, s1+off+reach
		if side == plan.Left {
			a, b = s0+off-reach, s0+off
		}
		half := p.wide()/2 - probeInset
		room := f.Box(a+probeNear, b-probeNear, depth/2-half, depth/2+half, z+touch, z+body-touch)
		return a > -touch && b < p.Joint.Wall.Length()+touch && x.inside(room, l.above, l.below) == nil
	}
	if p.Item.Kind.Shape == hardware.Pair && !fits(l.below, l.joint.Offset, l.zBelow-body) {
		return false
	}
	return fits(l.above, 0, l.zAbove)
}

// rodLine returns the station of a hold-down's rod.
func (l link) rodLine(p *Piece) float64 {
	s0, s1 := span2(l.joint, l.above)
	if p.Face == plan.Left {
		return s0 - p.Item.Center
	}
	return s1 + p.Item.Center
}

// hold-down sets one body on the post's side with the rod that goes down from
// it: through the member below, or into the anchor that is there.
func (x *placer) holdDown(p *Piece, k, n int) *plan.Diagnostic {
	j := p.Joint
	f, depth, fault := onWall(j)
	if fault != nil {
		return fault
	}
	l := x.through(j)
	if l.below == nil {
		return l.stacked()
	}
	l = x.side(p, l)
	s := l.rodLine(p)
	it := p.Item
	p.gap, p.Laid = l.zAbove-l.zBelow, laid(l.above, l.below)
	if !l.floor && l.below.Role != plan.SillPlate {
		p.Cut = p.gap + (l.zBelow - l.below.Z0) + it.Standoff + 2*nuts(it.Rod)
	}
	body := max(it.Length, it.Standoff)
	p.Path = []geom.Vec3{f.At(s, depth/2, l.zAbove), f.At(s, depth/2, l.zAbove+body)}
	p.Station = s
	p.bodies(f, depth, l, body)
	return nil
}

// holes returns the holes a piece needs in the subfloor it passes.
func holes(p *Piece) []*Hole {
	j := p.Joint
	kind := p.Item.Kind.Name
	if j.Level == nil || j.Level.Subfloor <= 0 || j.Wall == nil {
		return nil
	}
	at := p.Path[0]
	h := &Hole{Piece: p, Level: j.Level, At: geom.Vec3{X: at.X, Y: at.Y, Z: j.Level.Floor}}
	switch {
	case kind == plan.HoldDownPairItem, kind == plan.HoldDownItem && p.Cut > 0:
		// Holes for bolts are 1/16 in over the bolt (NDS 2018 12.1.3.2, from memory).
		h.Round = true
		h.Size = [2]float64{p.Item.Rod + 1.0/16, p.Item.Rod + 1.0/16}
	case p.Item.Kind.Strap && p.Face != plan.Outside && p.Z0 < j.Level.Floor-j.Level.Subfloor && p.Z1 > j.Level.Floor && len(p.bands) == 1:
		// The strap's width and half an inch of room each way to thread it
		// (common practice, no published source).
		n := p.bands[0].n
		along, out := p.wide()+slack, p.Item.Thickness+slack
		h.At = h.At.Add(n.Mul(out / 2))
		h.Size = [2]float64{along, out}
		if d := j.Wall.Frame().D; n.X*d.X+n.Y*d.Y > 0.5 || n.X*d.X+n.Y*d.Y < -0.5 {
			h.Size = [2]float64{out, along}
		}
	default:
		return nil
	}
	return []*Hole{h}
}

// slack is the room to thread a strap through a subfloor, in.
const slack = 0.5
