package loadpath

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/capacity"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/nailing"
	"galewright/plan/steel"
)

// pliesCheck is the ID of the check of what passes from ply to ply of a girder.
const pliesCheck = "girder-plies"

// pliesDoc says what the check looks at and what it leaves out.
const pliesDoc = "where the nails of a pile's straps do not reach all plies of a built-up girder: what the other plies hand on to those, of the larger of the pile's uplift and of that with the end tension of shear walls, the uplift taken as even on all plies; against the ordered girder_plies nails across one seam, half way to the next piles or to the girder's end. The torsion of the girder by straps on one of its faces is told and compared with nothing"

// girderPlies checks the nails between the plies of girders at their piles.
func girderPlies(c *Check, a *analysis) (out []*Link) {
	pulls := a.overturnedPiles()
	for _, g := range a.piles.girders {
		for i, x := range g.piles {
			if a.peaks[x.joint] == nil {
				continue
			}
			if s := a.strapped(g, x.joint); s.passed() > 0 {
				out = append(out, a.pliesLink(c, g, i, s, pulls[x.joint]))
			}
		}
	}
	return out
}

// strappedPlies is how the pieces that hold a pile's girder reach its plies.
type strappedPlies struct {
	girder  *framing.Member
	plies   int
	apart   float64 // of its two halves astride of the pile, in; 0 of any other seat
	nails   [2]int  // in the girder, by the face that they come from: outside, inside
	reached [2]int  // plies, from that face
}

// strapped counts the nails of the pieces that hold a girder down, and the plies that
// the least of them reaches. Rods go through all plies and lie in the middle: where they
// are what holds, nothing has to pass.
func (a *analysis) strapped(g *girderPath, j *framing.Joint) (s strappedPlies) {
	held := a.allowed.At(j, capacity.Upward)
	if held == nil {
		return s
	}
	for _, p := range a.placed.At(j) {
		if p.Item.Mark != held.Mark {
			continue
		}
		for _, f := range a.steel.Body(p).Fasteners {
			s.count(f, g.frame.In.Up(0))
		}
	}
	if j.Seat == framing.Astride && s.girder != nil {
		s.plies, s.apart = 2*s.plies, g.g.Left(a.plan.Foundation.Pile.Depth)
	}
	return s
}

// count takes a fastener in; inward is square to the girder, off its outside face.
func (s *strappedPlies) count(f steel.Fastener, inward geom.Vec3) {
	if len(f.Runs) == 0 || f.Runs[0].Member.Role != plan.GirderBeam || steel.SplitsOut(f) {
		return
	}
	r := f.Runs[0]
	s.girder, s.plies = r.Member, r.Member.Section.Ply
	face := 0
	if f.Tip.Sub(f.Head).Dot(inward) < 0 {
		face = 1
	}
	n := pliesReached(r.Len(), f.Diameter, r.Member.Section.Breadth, s.plies)
	if s.nails[face] == 0 || n < s.reached[face] {
		s.reached[face] = n
	}
	s.nails[face]++
}

// pliesReached is how many plies a nail holds that goes deep into a girder: the first,
// and each further one that it is in by six diameters (NDS 2018 12.1.6.4, transcribed),
// all in.
func pliesReached(deep, diameter, ply float64, plies int) int {
	n := 1
	for n < plies && deep-float64(n)*ply >= math.Min(6*diameter, ply)-geom.Eps {
		n++
	}
	return n
}

// share is the part of the nails that is in the outside face.
func (s strappedPlies) share() float64 {
	return float64(s.nails[0]) / float64(max(1, s.nails[0]+s.nails[1]))
}

// passed is the part of the uplift that crosses the seam that is asked most: between the
// plies that one face's nails reach, which hold that face's share of the straps, and those
// that nothing reaches. With straps on one face it is the part of the plies that they do
// not reach. 0 where all plies are reached.
func (s strappedPlies) passed() float64 {
	if s.plies < 2 || s.nails == [2]int{} || s.reached[0]+s.reached[1] >= s.plies {
		return 0
	}
	worst, share := 0.0, [2]float64{s.share(), 1 - s.share()}
	for i, n := range s.reached {
		if s.nails[i] > 0 {
			worst = math.Max(worst, math.Abs(share[i]-float64(n)/float64(s.plies)))
		}
	}
	return worst
}

// arm is how far from the girder's middle its straps pull, in: those on both faces
// balance.
func (s strappedPlies) arm() float64 {
	wide := s.girder.Section.Width()
	if s.apart > 0 {
		wide = 2*wide + s.apart
	}
	return math.Abs(2*s.share()-1) * wide / 2
}

// pliesLink is the link of one pile.
func (a *analysis) pliesLink(c *Check, g *girderPath, i int, s strappedPlies, o overturned) *Link {
	l := a.upliftLink(c, g.piles[i].joint)
	up, k := a.peaks[g.piles[i].joint].demand, s.passed()
	strength := l.Force.net(Strength)
	if lb, wind := o.most(a.choice.Has(plan.Directional)); lb > least {
		up, strength = up+lb, strength+lb/ASD.W
		l.Case = wind + " for the wall ends; " + l.Case + " for uplift"
		l.Terms = append(l.Terms, Term{"0.6 of the end tension that shear walls bring here, " + wind, lb, "lb"}, Term{"both, each in its own worst case", up, "lb"})
	}
	up = math.Max(0, up)
	l.Demand, l.Strength = k*up, math.Max(0, k*strength)
	for f, face := range []string{"outside", "inside"} {
		if s.nails[f] > 0 {
			l.Terms = append(l.Terms, Term{fmt.Sprintf("%s of the straps on the %s face, which reach %d of %d plies", plan.Counted(s.nails[f], "nail"), face, s.reached[f], s.plies), float64(s.reached[f]), ""})
		}
	}
	l.Terms = append(l.Terms,
		Term{a.u.Sprintf("torsion of the girder, not checked: the uplift times %.2f in from its middle to the straps' face, what both faces balance left out, ASD", s.arm()), up * s.arm(), "lb-in"},
		Term{"part of the uplift that crosses the seam behind those plies, it being even on all", k, ""},
		Term{"across that seam, ASD", l.Demand, "lb"})
	l.close(a.pliesNails(g, i, s))
	if l.Gap != "" && l.Capacity == nil {
		l.Gap = fmt.Sprintf("no nails between the girder's plies are ordered (%s): the straps' nails do not reach all of them", plan.GirderPlies)
	}
	return l
}

// stretch is the length of girder whose nails count at a pile, in: half way to the next
// piles, past the last to the girder's end.
func (g *girderPath) stretch(i int) float64 {
	lo, hi := math.Min(0, g.piles[0].station), math.Max(g.len, g.piles[len(g.piles)-1].station)
	if i > 0 {
		lo = (g.piles[i-1].station + g.piles[i].station) / 2
	}
	if i < len(g.piles)-1 {
		hi = (g.piles[i].station + g.piles[i+1].station) / 2
	}
	return hi - lo
}

// pliesNails is what the ordered nails hold across one seam in a pile's stretch of its
// girder; nil where none are ordered.
func (a *analysis) pliesNails(g *girderPath, i int, s strappedPlies) *Capacity {
	if s.apart > 0 {
		return &Capacity{Unknown: "the pile stands between the girder's halves and no nail crosses it: strap or bolt both"}
	}
	line := a.nails.Line(plan.GirderPlies)
	if line == nil || line.Order.Spacing <= 0 {
		return nil
	}
	at := slices.IndexFunc(line.Spots, func(x *nailing.Spot) bool { return x.Side == s.girder })
	if at < 0 {
		return nil
	}
	v := line.One(line.Spots[at], a.species)
	if v.Nothing != "" {
		return &Capacity{Unknown: v.Nothing}
	}
	one, terms := v.Lateral, []Term{{"one nail, " + v.Text, v.Lateral, "lb"}}
	long := g.stretch(i)
	n := float64(line.Order.Rows) * long / line.Order.Spacing
	terms = append(terms,
		Term{"length of girder, half way to the next piles or to its end", long / 12, "ft"},
		Term{"nails across one seam in that length, by their spacing", n, ""},
		Term{"together", n * one, "lb"})
	return &Capacity{
		Value: n * one, Source: "ordered nailing", Pieces: int(n), Mark: line.Mark(), Governs: fmt.Sprintf("nails %s between the girder's plies", line.Mark()),
		Terms: ofCapacity(terms...),
	}
}

// eccentric tells whether a girder is held at a pile by straps of which those on one face
// are more.
func (a *analysis) eccentric() bool {
	return slices.ContainsFunc(a.piles.girders, func(g *girderPath) bool {
		return slices.ContainsFunc(g.piles, func(x *pile) bool {
			s := a.strapped(g, x.joint)
			return s.girder != nil && s.arm() > 0
		})
	})
}
