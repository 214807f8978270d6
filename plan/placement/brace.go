package placement

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
)

// braceBolt sets a bolt square through the end of a brace and the pile or girder that it
// lies on, its head on the brace; of several one above the other.
func (x *placer) braceBolt(w want) Lie {
	j, it := w.joint, w.item
	in := j.Brace.Out.Mul(-1)
	at := j.At.Add(geom.Vec3{Z: spread(w.k, w.n, max(it.Washer, 3))})
	board := j.First().Section.Width()
	a := Axis{at.Sub(in.Mul(board)), at.Add(in.Mul(it.Length - board))}
	through := x.passedOf(j.Members, a)
	if len(through) == 0 {
		through = present(j.Members...)
	}
	return x.rodLie(w, x.headed(a, it, through), through, j.Station)
}

// beyondPile is how far past the piles' middles their far faces are looked for, in.
const beyondPile = 60.0

// braceRod sets a rod through the two piles that it braces, along the line between them,
// cut so that washer, nut and thread stand out beyond the far face of each.
func (x *placer) braceRod(w want) Lie {
	j, it := w.joint, w.item
	a, b := j.Brace.A, j.Brace.B
	d := b.Sub(a).Unit()
	from, to := 0.0, b.Sub(a).Len()
	for _, r := range x.wood.Stretches(a.Sub(d.Mul(beyondPile)), d, to+2*beyondPile, func(m *framing.Member) bool { return slices.Contains(j.Members, m) }) {
		from, to = math.Min(from, r.From-beyondPile), math.Max(to, r.To-beyondPile)
	}
	past := hardware.Past(it.Rod, it.Washer) + beveled(it, d)
	lie := x.rodLie(w, Axis{a.Add(d.Mul(to + past)), a.Add(d.Mul(from - past))}, j.Members, j.Station)
	lie.Cut = lie.Rod.A.Sub(lie.Rod.B).Len()
	return lie
}

// beveled is what a washer cut to a rod's slope takes more than a flat one, in: half of its
// side times the slope.
func beveled(it *hardware.Item, d geom.Vec3) float64 {
	side := it.Washer
	if side == 0 {
		side = hardware.CutWasher(it.Rod)
	}
	return side / 2 * math.Abs(d.Z) / d.Flat().Len()
}

// bareBrace tells of bracing that nothing bolts.
var bareBrace = newCheck("brace-not-bolted", plan.Warning, "bracing that nothing holds",
	"A brace that is bolted to no pile, or rods that the plan braces piles with and no rule puts in, brace nothing.", func(x *placer, c *Check) {
		told := map[string]bool{}
		for _, j := range x.p.House.Joints {
			if j.Brace == nil || len(x.p.At(j)) > 0 || told[j.Brace.Name] {
				continue
			}
			told[j.Brace.Name] = true
			d := plan.Diagnostic{
				Severity: c.Severity, Code: c.ID, Where: "brace " + j.Brace.Name + ", " + j.ID, Pos: x.bracePos(j.Brace.Name),
				Summary: "nothing bolts brace " + j.Brace.Name + " at " + JointPlace(j),
				Mend:    "give " + string(j.Kind) + " joints a rule with a bolt, or a brace rod",
			}
			x.tell.add(d)
		}
	})

// bracePos is where the plan asks for a brace.
func (x *placer) bracePos(name string) plan.Pos {
	for _, b := range x.p.House.Plan.Braces {
		if b.Name == name {
			return b.Pos
		}
	}
	return plan.Pos{}
}
