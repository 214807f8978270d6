package framing

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// PastBolt is how far a brace goes on past its bolt, in: seven diameters of a bolt of
// 3/4 in, the full end distance of a softwood board in tension (NDS 2018 Table 12.5.1A,
// transcribed).
const PastBolt = 5.25

// leastRise is the least height between the ends of a crossed brace, in.
const leastRise = 24

// rodsApart is how far the middle lines of two crossed rods pass each other, in: a rod of
// 1 in and room for the hand.
const rodsApart = 1.5

// bay is what a brace spans: two piles, and the frame in which it is laid, whose way D goes
// from the first pile's middle to the second's; In is to the left of it.
type bay struct {
	n     int // as the plan counts it
	g     *framedGirder
	piles [2]*Member
	s     [2]float64 // stations on the girder
	f     geom.Frame
	len   float64 // from middle to middle
}

// braces adds the bracing between piles: boards, and the joints of boards and rods.
func (b *builder) braces() {
	for _, x := range b.plan.Braces {
		g := b.girderNamed(x.Girder)
		if g == nil {
			continue // told by the reader, or it has no length
		}
		bays := b.baysOf(x, g)
		if len(bays) == 0 {
			b.braceFault(x, "brace-without-bay", fmt.Sprintf("brace %s has no two piles to stand between", x.Name), "name bays between piles of its girder, the first is 1")
		}
		for _, y := range bays {
			switch x.Kind {
			case plan.KneeBrace:
				b.knees(x, y)
			case plan.RodBrace:
				b.rods(x, y)
			default:
				b.boards(x, y)
			}
		}
		b.braceNodes(x)
	}
}

func (b *builder) braceFault(x *plan.Brace, code plan.Code, what, mend string) {
	b.fault(plan.Diagnostic{Code: code, Pos: x.Pos, Where: "brace " + x.Name, Summary: what, Mend: mend})
}

// girderNamed returns the girder of a name that is laid, or nil.
func (b *builder) girderNamed(name string) *framedGirder {
	for _, g := range b.girders {
		if g.Name == name {
			return g
		}
	}
	return nil
}

// ownPiles returns the piles of a girder with their stations, in order along it.
func (b *builder) ownPiles(g *framedGirder) (piles []*Member, stations []float64) {
	sec := b.plan.Foundation.Pile
	line := geom.NewFrame(g.From, g.To)
	for _, s := range slices.Sorted(slices.Values(g.Piles)) {
		if m := b.pileAt(line.At(s, g.aside(sec), 0).Flat(), max(sec.Breadth, sec.Depth)/2); m != nil {
			piles, stations = append(piles, m), append(stations, s)
		}
	}
	return piles, stations
}

// baysOf returns the bays of a brace, in order along its girder.
func (b *builder) baysOf(x *plan.Brace, g *framedGirder) (out []bay) {
	piles, stations := b.ownPiles(g)
	if x.Across != "" {
		return b.baysAcross(x, g, piles, stations)
	}
	for i := 1; i < len(piles); i++ {
		if plan.In(x.Bays, i) {
			out = append(out, newBay(i, g, [2]*Member{piles[i-1], piles[i]}, [2]float64{stations[i-1], stations[i]}))
		}
	}
	return out
}

// baysAcross returns the bays from piles of a girder to those of another that stand
// straight across from them.
func (b *builder) baysAcross(x *plan.Brace, g *framedGirder, piles []*Member, stations []float64) (out []bay) {
	o := b.girderNamed(x.Across)
	if o == nil {
		return nil
	}
	others, _ := b.ownPiles(o)
	for i, m := range piles {
		if !plan.In(x.Bays, i+1) {
			continue
		}
		at := slices.IndexFunc(others, func(p *Member) bool {
			return p != m && math.Abs(p.A.Sub(m.A).Flat().Dot(g.body.f.D)) < sixteenth
		})
		switch {
		case at >= 0:
			out = append(out, newBay(i+1, g, [2]*Member{m, others[at]}, [2]float64{stations[i], stations[i]}))
		case len(x.Bays) > 0:
			b.braceFault(x, "brace-out-of-line", fmt.Sprintf("no pile of girder %s stands straight across from pile %d of girder %s, at %s", x.Across, i+1, x.Girder, b.inches(stations[i])),
				"move one of the two piles into line, or brace others")
		}
	}
	return out
}

func newBay(n int, g *framedGirder, piles [2]*Member, s [2]float64) bay {
	f := geom.NewFrame(piles[0].A.Flat(), piles[1].A.Flat())
	return bay{n: n, g: g, piles: piles, s: s, f: f, len: piles[1].A.Sub(piles[0].A).Flat().Len()}
}

// faces returns where the faces of both piles lie that run along the bay, across its
// frame, in; ok is false where those of the two do not lie in one plane.
func (y bay) faces() (lo, hi float64, ok bool) {
	for i, m := range y.piles {
		a, z := m.Solid[0].Bounds()
		t0, t1 := across(y.f, a, z)
		if i == 0 {
			lo, hi, ok = t0, t1, true
		}
		ok = ok && math.Abs(t0-lo) < sixteenth && math.Abs(t1-hi) < sixteenth
	}
	return lo, hi, ok
}

// across returns between which depths of a frame a box along x and y lies.
func across(f geom.Frame, a, z geom.Vec3) (lo, hi float64) {
	_, t0 := f.Local(a.Flat())
	_, t1 := f.Local(z.Flat())
	return min(t0, t1), max(t0, t1)
}

// heights returns those of the ends of a crossed brace, lower and upper.
func (b *builder) braceHeights(x *plan.Brace, y bay) (lo, hi float64, ok bool) {
	lo, hi = x.Bottom, y.g.z0-x.Top
	if hi-lo < leastRise {
		b.braceFault(x, "brace-without-height", fmt.Sprintf("brace %s has %s between its lower ends at %s and its upper ends at %s above grade", x.Name, b.inches(hi-lo), b.inches(lo), b.inches(hi)),
			"give it more height: less bottom or top, or a higher floor")
		return lo, hi, false
	}
	return lo, hi, true
}

// boards lays two crossed boards on the faces of a bay's piles, the one that rises toward
// the girder's end on the outside.
func (b *builder) boards(x *plan.Brace, y bay) {
	lo, hi, ok := b.braceHeights(x, y)
	t0, t1, flush := y.faces()
	if !flush {
		b.braceFault(x, "brace-not-flush", fmt.Sprintf("the faces of the piles of bay %d of girder %s do not lie in one plane", y.n, x.Girder), "seat their girders alike, or brace them with rods")
		return
	}
	if !ok {
		return
	}
	first, second := b.crossed(x, lo, hi)
	w, both := x.Member.Width(), [2]float64{0, y.len}
	outside, inside := [2]float64{t0 - w, t0}, [2]float64{t1, t1 + w}
	if b.plan.Lay.Mirrored && x.Across != "" {
		outside, inside = inside, outside
	}
	b.board(x, y, "", outside, both, first)
	b.board(x, y, "b", inside, both, second)
}

// crossed returns the heights of the ends of two crossed braces, from the first pile to the
// second: as written the first rises toward the girder's end, or toward the other girder.
func (b *builder) crossed(x *plan.Brace, lo, hi float64) (first, second [2]float64) {
	first, second = [2]float64{lo, hi}, [2]float64{hi, lo}
	if b.plan.Lay.Mirrored && x.Across == "" {
		return second, first
	}
	return first, second
}

// board is one board between depths of a bay's frame, whose bolts are at two stations and
// heights.
func (b *builder) board(x *plan.Brace, y bay, nth string, t, s, z [2]float64) *Member {
	return b.slanted(x, y, nth, (t[0]+t[1])/2, t[1]-t[0], s, z)
}

// slanted is a board whose middle is t across a bay's frame.
func (b *builder) slanted(x *plan.Brace, y bay, nth string, t, thick float64, s, z [2]float64) *Member {
	p, q := y.f.At(s[0], t, z[0]), y.f.At(s[1], t, z[1])
	way := q.Sub(p).Unit()
	a, e := p.Sub(way.Mul(PastBolt)), q.Add(way.Mul(PastBolt))
	in := y.f.In.Up(0)
	up := in.Cross(way).Unit()
	if up.Z < 0 {
		up = up.Mul(-1)
	}
	long, wide := e.Sub(a).Len(), x.Member.Depth
	solid := geom.Box(a.Sub(in.Mul(thick/2)).Sub(up.Mul(wide/2)), way.Mul(long), in.Mul(thick), up.Mul(wide))
	lo, hi := solid.Bounds()
	return b.member(&Member{
		ID: fmt.Sprintf("%s/brace@%s%s", x.Name, at(y.s[0]), nth), Role: plan.BraceBoard, Level: b.plan.Levels[0], Section: x.Member, Length: long, Z0: lo.Z, Z1: hi.Z,
		A: a, B: e, Solid: []geom.Solid{solid},
	})
}

// knees lays a board from each pile of a bay up to the girder, on their outside faces.
func (b *builder) knees(x *plan.Brace, y bay) {
	if len(y.g.pieces) == 0 {
		return
	}
	t0, _, flush := y.faces()
	a, z := y.g.pieces[0].Bounds()
	if g, _ := across(y.f, a, z); !flush || math.Abs(g-t0) > sixteenth {
		b.braceFault(x, "brace-not-flush", fmt.Sprintf("the outside faces of girder %s and of the piles of bay %d do not lie in one plane", x.Girder, y.n), `give the girder seat = "notch", its face flush with the piles'`)
		return
	}
	if !b.kneeRoom(x, y) {
		return
	}
	// Half way up the girder, or lower where the board's end would come up past its top.
	mid := min((y.g.z0+y.g.z1)/2, y.g.z1-(PastBolt+x.Member.Depth/2)*math.Sqrt2/2)
	on := [2]float64{t0 - x.Member.Width(), t0}
	b.board(x, y, "", on, [2]float64{0, x.Reach}, [2]float64{mid - x.Reach, mid})
	b.board(x, y, "b", on, [2]float64{y.len - x.Reach, y.len}, [2]float64{mid, mid - x.Reach})
}

// kneeRoom tells whether two knees fit in a bay: their boards go on past their bolts, in the
// girder beside each other and on a pile beside those of the next bay.
func (b *builder) kneeRoom(x *plan.Brace, y bay) bool {
	past := (PastBolt + x.Member.Depth/2) * math.Sqrt2 / 2
	switch most := y.len/2 - past; {
	case x.Reach > most:
		mend := "take a longer bay, or brace it by boards or rods"
		if most >= 12 {
			mend = fmt.Sprintf("give them a reach of %s or less", b.inches(math.Floor(most)))
		}
		b.braceFault(x, "brace-without-room", fmt.Sprintf("two knees of %s do not fit in bay %d, which is %s long: past their bolts they need %s more", b.inches(x.Reach), y.n, b.inches(y.len), b.inches(2*past)), mend)
	case x.Across == "" && y.n > 1 && plan.In(x.Bays, y.n-1):
		b.braceFault(x, "brace-without-room", fmt.Sprintf("the knees of bays %d and %d take the same place on the pile between them", y.n-1, y.n), "name every second bay")
	default:
		return true
	}
	return false
}

// rods notes the two crossed rods of a bay: what they are is their item's.
func (b *builder) rods(x *plan.Brace, y bay) {
	lo, hi, ok := b.braceHeights(x, y)
	if !ok {
		return
	}
	piles := []*Member{y.piles[0], y.piles[1]}
	if x.Across == "" {
		piles = b.inOrder(piles)
	}
	first, second := b.crossed(x, lo, hi)
	for i, z := range [2][2]float64{first, second} {
		t := rodsApart * (float64(i) - 0.5)
		if b.plan.Lay.Mirrored && x.Across != "" {
			t = -t
		}
		p, q := y.f.At(0, t, z[0]), y.f.At(y.len, t, z[1])
		if z[0] > z[1] {
			p, q = q, p
		}
		b.joint(&Joint{
			Kind: plan.BraceRod, Host: x.Girder, Level: b.plan.Levels[0], Station: (y.s[0] + y.s[1]) / 2, At: p.Add(q).Mul(0.5), Members: slices.Clone(piles),
			Below: true, Brace: &Bracing{Name: x.Name, A: p, B: q},
		})
	}
}

// braceNodes makes a joint where boards of a brace are bolted to a pile or girder: one of
// all that end there.
func (b *builder) braceNodes(x *plan.Brace) {
	nodes := map[[4]int]*Joint{}
	g := b.girderNamed(x.Girder)
	for _, m := range b.house.Members {
		if m.Role != plan.BraceBoard || owner(m) != "brace "+x.Name {
			continue
		}
		way := m.B.Sub(m.A).Unit()
		for _, p := range []geom.Vec3{m.A.Add(way.Mul(PastBolt)), m.B.Sub(way.Mul(PastBolt))} {
			on, out := b.braced(m, p)
			if on == nil {
				continue
			}
			face := p.Add(out.Mul(-m.Section.Width() / 2))
			c := face.Sub(out.Mul(out.Dot(face))) // without the way across: both faces are one node
			key := [4]int{int(math.Round(c.X * 16)), int(math.Round(c.Y * 16)), int(math.Round(c.Z * 16)), int(on.Role[0])}
			if j := nodes[key]; j != nil && b.outside(x, g, out) {
				j.Members, j.At, j.Brace.Out = slices.Insert(j.Members, 0, m), face, out
				continue
			} else if j != nil {
				j.Members = slices.Insert(j.Members, len(j.Members)-1, m)
				continue
			}
			s := b.stationOn(x, g, face)
			nodes[key] = b.joint(&Joint{
				Kind: plan.BraceEnd, Host: x.Girder, Level: b.plan.Levels[0], Station: s, At: face, Members: []*Member{m, on}, Below: true,
				Brace: &Bracing{Name: x.Name, Out: out},
			})
		}
	}
}

// outside tells whether a way out of a face is the outside of a brace's girder; of bracing
// across, toward the girder's start as written. A bolt through two boards has its head there.
func (b *builder) outside(x *plan.Brace, g *framedGirder, out geom.Vec3) bool {
	if x.Across == "" {
		return out.Dot(g.body.f.In.Up(0)) < 0
	}
	return (out.Dot(g.body.f.D.Up(0)) < 0) != b.plan.Lay.Mirrored
}

// stationOn is where along a brace's girder a place is; of bracing across, the pile that it
// begins at.
func (b *builder) stationOn(x *plan.Brace, g *framedGirder, p geom.Vec3) float64 {
	s, _ := geom.NewFrame(g.From, g.To).Local(p.Flat())
	if x.Across == "" {
		return s
	}
	return slices.MinFunc(g.Piles, func(a, b float64) int { return cmp.Compare(math.Abs(a-s), math.Abs(b-s)) })
}

// braced returns the pile or girder that a board lies on at a point of its middle line, and
// the way out of the face that it lies on.
func (b *builder) braced(m *Member, p geom.Vec3) (on *Member, out geom.Vec3) {
	n := m.B.Sub(m.A).Flat().Unit().Left().Up(0)
	for _, side := range []geom.Vec3{n, n.Mul(-1)} {
		q := p.Sub(side.Mul(m.Section.Width()/2 + 1))
		for _, o := range b.index.Within(q, q) {
			if o.Role == plan.Pile || o.Role == plan.GirderBeam {
				lo, hi := o.Bounds()
				if q.X > lo.X && q.X < hi.X && q.Y > lo.Y && q.Y < hi.Y && q.Z > lo.Z && q.Z < hi.Z {
					return o, side
				}
			}
		}
	}
	return nil, n
}
