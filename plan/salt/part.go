package salt

import (
	"math"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/steel"
)

// Sort is what a part of a piece is, as the rules of treated wood tell them
// apart.
type Sort uint8

// The sorts.
const (
	Steel Sort = iota // plates and bodies of sheet steel
	Nails
	Screws
	Bolts // and rods, with their nuts and washers
)

// Part is what of one piece has one coating: its steel, one kind of fasteners,
// its rod.
type Part struct {
	Name     string // "steel", "nails 10d x 1 1/2", "rod"
	Sort     Sort
	Coating  plan.Coating // "" = the catalog gives none
	Diameter float64      // of a fastener or rod, in
	In       []At         // classes that it is in, the worst first, each once
	Wood     []Wood       // treated members that it touches or runs through
	Pos      plan.Pos     // where the catalog writes it
}

// Wood is treated wood.
type Wood struct {
	Role         plan.Role
	Preservative plan.Preservative
}

// Piece is one piece with its parts.
type Piece struct {
	*placement.Piece
	Parts []Part
	Class plan.SaltClass // the worst of its parts; "" when it is all in concrete
}

// rank orders classes, the worst first; none comes last.
func rank(c plan.SaltClass) int {
	if i := slices.Index(plan.SaltClasses, c); i >= 0 {
		return i
	}
	return len(plan.SaltClasses)
}

// piece finds the parts of a body and the classes they are in.
func (r *Report) piece(b *steel.Body) *Piece {
	p := &Piece{Piece: b.Piece}
	it := b.Piece.Item
	if len(b.Bands) > 0 {
		x := Part{Name: "steel", Coating: it.Coating, Pos: it.Pos}
		for _, m := range b.Piece.Laid {
			for _, o := range append([]*framing.Member{m.Member}, m.Others...) {
				r.touch(&x, o)
			}
		}
		r.spread(&x, plates(b), b.Piece.Joint)
		p.Parts = append(p.Parts, x)
	}
	for i := range it.Fasteners {
		p.Parts = append(p.Parts, r.fasteners(b, i))
	}
	if len(b.Rods) > 0 || it.Rod > 0 {
		p.Parts = append(p.Parts, r.rod(b))
	}
	for _, x := range p.Parts {
		for _, at := range x.In {
			if p.Class == "" || rank(at.Class) < rank(p.Class) {
				p.Class = at.Class
			}
		}
	}
	return p
}

// touch notes a member when it is treated.
func (r *Report) touch(x *Part, m *framing.Member) {
	if m == nil {
		return
	}
	w := Wood{m.Role, r.preservative(m)}
	if w.Preservative != plan.Untreated && !slices.Contains(x.Wood, w) {
		x.Wood = append(x.Wood, w)
	}
}

// spread notes the classes of some points.
func (r *Report) spread(x *Part, points []geom.Vec3, j *framing.Joint) {
	for _, p := range points {
		at := r.site.at(p, j)
		if at.Class != "" && !slices.ContainsFunc(x.In, func(o At) bool { return o.Class == at.Class }) {
			x.In = append(x.In, at)
		}
	}
	slices.SortStableFunc(x.In, func(a, b At) int { return rank(a.Class) - rank(b.Class) })
}

// step is how far apart a part is looked at, in.
const step = 6.0

// plates returns points on the outer side of a body's plates.
func plates(b *steel.Body) (out []geom.Vec3) {
	for _, band := range b.Bands {
		for _, p := range band {
			lift := p.N.Mul(p.Thickness)
			out = append(out, along(p.A.Add(lift), p.B.Add(lift))...)
		}
	}
	return out
}

// along returns points from a to b, clear of both ends.
func along(a, b geom.Vec3) (out []geom.Vec3) {
	n := max(2, int(math.Ceil(b.Sub(a).Len()/step)))
	for i := range n {
		out = append(out, a.Add(b.Sub(a).Mul((float64(i)+0.5)/float64(n))))
	}
	return out
}

// fasteners is the part that the catalog's ith table of fasteners makes: where
// their heads are, and the wood they run through.
func (r *Report) fasteners(b *steel.Body, i int) Part {
	it := b.Piece.Item
	f := it.Fasteners[i]
	x := Part{Name: sortOf(it.Nails[i]).word() + " " + size(f.Nail), Sort: sortOf(it.Nails[i]), Coating: f.Coating, Diameter: f.Diameter, Pos: at(f.Pos, it.Pos)}
	var heads []geom.Vec3
	ends := it.Ends()
	for _, n := range b.Fasteners {
		if n.End >= len(ends) || ends[n.End].Fasteners.Part != f.Part || ends[n.End].Nail != f.Nail {
			continue
		}
		heads = append(heads, n.Head)
		for _, run := range n.Runs {
			r.touch(&x, run.Member)
		}
	}
	r.spread(&x, heads, b.Piece.Joint)
	return x
}

// at returns the first place that is one.
func at(p, or plan.Pos) plan.Pos {
	if p.Line > 0 {
		return p
	}
	return or
}

// rodName names the part that a rod is.
const rodName = "rod, nuts and washers"

// rod is the rod of a body with nuts and washers: it has the coating of a bolt
// that is nothing else, and of a hold-down its own.
func (r *Report) rod(b *steel.Body) Part {
	it := b.Piece.Item
	x := Part{Name: rodName, Sort: Bolts, Coating: it.RodCoating, Diameter: it.Rod, Pos: it.Pos}
	if it.Kind.Shape == hardware.Rod {
		x.Coating = it.Coating
	}
	if len(b.Rods) == 0 { // as of a post base: it stands at the joint
		r.spread(&x, []geom.Vec3{b.Piece.Joint.At}, b.Piece.Joint)
	}
	for _, rod := range b.Rods {
		for _, run := range rod.Passes {
			r.touch(&x, run.Member)
		}
		r.spread(&x, append(along(rod.A, rod.B), rod.Ends[0].At, rod.Ends[1].At), b.Piece.Joint)
	}
	return x
}

// sortOf tells what a fastener is.
func sortOf(n hardware.Nail) Sort {
	switch {
	case n.Screw():
		return Screws
	case n.Bolt():
		return Bolts
	}
	return Nails
}

func (s Sort) word() string { return [...]string{"steel", "nails", "screws", "bolts"}[s] }

// size is the size of a fastener without the word for its sort.
func size(nail string) string {
	return strings.TrimPrefix(strings.TrimPrefix(strings.TrimPrefix(nail, "screw "), "bolt "), "lag ")
}
