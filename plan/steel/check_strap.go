package steel

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/length"
	"galewright/plan/units"
)

// strapThroughPlate is the check of straps against the top plates they cut.
var strapThroughPlate = &Check{
	ID: "strap-through-plate", Severity: plan.Warning, Title: "a strap through a wall's top plates",
	Doc: "The strap lies on the side of its post and goes through slots in the top plates, which as chords and collectors are pulled along: no check counts what the slots take from them. Where more than half of a plate's breadth is cut the residential code asks for a metal tie over it (IRC R602.6.1, from memory).",
	run: func(s *Steel, tell func(finding)) {
		for _, b := range s.Bodies {
			if f, ok := s.throughPlate(b); ok {
				tell(f)
			}
		}
	},
}

// throughPlate tells of the slots of one body in top plates: the worst of them,
// and a strap of the plates that lies over one.
func (s *Steel) throughPlate(b *Body) (f finding, ok bool) {
	var worst *Slot
	var over []string
	for i, x := range b.Slots {
		if !chord(x.Member) {
			continue
		}
		if worst == nil || x.Cut() > worst.Cut() {
			worst = &b.Slots[i]
		}
		for _, o := range s.onTop(x) {
			if !slices.Contains(over, o.Piece.Tag) {
				over = append(over, o.Piece.Tag)
			}
		}
	}
	if worst == nil {
		return f, false
	}
	f = finding{piece: b.Piece, cause: "it goes through top plates, which are chord and collector", mend: "put it on a face that passes no plate or outside of the plates' end, or have the engineer of record pass the slots or strap the plates across them"}
	f.detail = fmt.Sprintf("%s in the %s takes %.0f%% of its breadth", worst.Words(b.Piece.Units().Length), name(worst.Member), 100*worst.Cut())
	if len(over) > 0 {
		f.cause = "it goes through top plates under the strap of a collector or splice"
		f.detail += ", and it comes out under " + strings.Join(over, ", ")
	}
	return f, true
}

// platesDeep is how far under a strap on top of the plates a slot in one of them
// may begin, in: two plates and some play.
const platesDeep = 3.25

// onTop returns the collector and splice straps that lie flat over a slot.
func (s *Steel) onTop(x Slot) (out []*Body) {
	for _, o := range s.Bodies {
		if o.Piece.Item.Kind.Name != plan.CollectorStrapItem {
			continue
		}
		if slices.ContainsFunc(o.Bands, func(band geom.Band) bool {
			return slices.ContainsFunc(band, func(p geom.Plate) bool { return geom.LiesFlat(p.N) && covers(p, x) })
		}) {
			out = append(out, o)
		}
	}
	return out
}

// covers tells whether a plate that lies flat is over a slot.
func covers(p geom.Plate, x Slot) bool {
	v := x.At.Sub(p.A)
	along, off, up := v.Dot(p.B.Sub(p.A).Unit()), v.Dot(p.Across()), v.Dot(p.N)
	r := math.Max(x.Size[0], x.Size[1]) / 2
	return along > -r && along < p.Len()+r && math.Abs(off) < p.Width/2+r && up < hair && up > -platesDeep
}

// strapOffFace is the check of straps against the faces they are fastened to.
var strapOffFace = &Check{
	ID: "strap-off-face", Severity: plan.Warning, Title: "a strap wider than the face it lies on",
	Doc: "Steel that hangs over the edge of the member it is fastened to brings its rows of fasteners to that edge, where they split the wood and hold little, and stands in the way of what comes beside it.",
	run: func(s *Steel, tell func(finding)) {
		for _, b := range s.Bodies {
			if !b.Piece.Item.Kind.Strap {
				continue
			}
			if f, ok := s.offFace(b); ok {
				tell(f)
			}
		}
	},
}

// offFace tells of the plate of a strap that hangs farthest over the faces of
// the members it is fastened to.
func (s *Steel) offFace(b *Body) (f finding, ok bool) {
	most := length.Tape
	for _, x := range b.Fasteners {
		if len(x.Runs) == 0 || !b.meant(x.Runs[0].Member) {
			continue
		}
		m, p := x.Runs[0].Member, b.PlateOf(x)
		near, far := s.hangs(p, x)
		if worst := math.Max(near, far); worst > most+geom.Eps {
			most, ok = worst, true
			f = finding{
				piece: b.Piece, cause: "it is wider than the face it lies on",
				detail: fmt.Sprintf("of %s it hangs %s over the edge of the %s", b.Piece.Units().Length(p.Width), both(b.Piece.Units(), near, far), name(m)),
				mend:   mendOffFace(m),
			}
		}
	}
	return f, ok
}

// both says how far steel hangs over two edges.
func both(u units.System, a, b float64) string {
	a, b = math.Max(a, b), math.Min(a, b)
	if a-b < length.Tape {
		return u.Length(a) + " on either side"
	}
	if b < length.Tape {
		return u.Length(a)
	}
	return u.Length(a) + " and " + u.Length(b)
}

func mendOffFace(m *framing.Member) string {
	if m.Role == plan.Post {
		return "turn it to a wider face of the post, stand more studs there (posts of a [[wall.shear]]), or take a narrower strap"
	}
	return "turn it to a wider face, or take a narrower strap"
}

// meant tells whether a piece is to be fastened to a member, or to one of its
// role: a plate goes on past its splice.
func (b *Body) meant(m *framing.Member) bool {
	return slices.ContainsFunc(b.Piece.Members(), func(x *framing.Member) bool { return x == m || x.Role == m.Role })
}

// hangs returns how far a plate reaches past the wood that a fastener is in, to
// both sides, in. Wood that goes on flush from one member to the next is one face.
func (s *Steel) hangs(p geom.Plate, f Fastener) (back, on float64) {
	off := f.Head.Sub(p.A).Dot(p.Across())
	at := f.Head.Sub(p.N.Mul(f.Runs[0].From + 2*hair))
	side := func(k float64) float64 {
		far := p.Width/2 - k*off
		return far - s.Wood.solid(at, p.Across().Mul(k), far)
	}
	return side(-1), side(1)
}

// solid returns how far wood goes on without a gap from a point along a direction,
// unit, at most far, in.
func (w *Wood) solid(at, d geom.Vec3, far float64) float64 {
	runs := w.Through(at, at.Add(d.Mul(far)))
	reach := 0.0
	for _, r := range runs {
		if r.From > reach+hair {
			break
		}
		reach = math.Max(reach, r.To)
	}
	return math.Min(reach, far)
}
