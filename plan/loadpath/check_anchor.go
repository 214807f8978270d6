package loadpath

import (
	"cmp"
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/steel"
	"galewright/plan/timber"
)

// anchorCheck is the ID of the check of sill plates pushed along their walls.
const anchorCheck = "anchor-shear"

// anchorShear checks the bolts that keep sill plates from being pushed along their
// walls on concrete: under each sheathed segment that stands on one, those within the
// segment, by its shear; under a floor on a stem wall those of the whole line, by its
// force with what enters at that floor.
func anchorShear(c *Check, a *analysis) (out []*Link) {
	cast := a.castBolts()
	for _, x := range a.lateral.lines {
		if x.Level.Index > 0 || a.plan.Foundation.Kind == plan.Piles {
			continue
		}
		if a.onFloor(x.Segments[0].Wall) {
			if ASD.W*x.Under > least {
				out = append(out, a.lineBolts(c, x, cast))
			}
			continue
		}
		for _, s := range x.Segments {
			if s.base && s.Demand > least {
				out = append(out, a.segmentBolts(c, s, cast))
			}
		}
	}
	return out
}

// castBolt is a bolt whose nut is on a sill plate and whose foot is in concrete.
type castBolt struct {
	piece *placement.Piece
	rod   *steel.Rod
	sill  *framing.Member
}

// castBolts returns those of the house. Rods of hold-downs and those that hold more
// than the sill, up through a floor, are not among them: they are there for tension.
func (a *analysis) castBolts() (out []castBolt) {
	for _, p := range a.placed.Pieces {
		b := a.steel.Body(p)
		if p.Item.Kind.Shape != hardware.Rod || b == nil || len(b.Rods) == 0 {
			continue
		}
		r := b.Rods[0]
		if m := r.Ends[0].Member; r.Ends[0].Kind == steel.OnWasher && m.Role == plan.SillPlate && r.Ends[1].Kind == steel.CastIn {
			out = append(out, castBolt{p, r, m})
		}
	}
	return out
}

// segmentBolts is the link of one segment on its sill plate. A perforated wall's
// full-height parts each push with its whole unit shear (SDPWS 2021 4.3.6.4.1.1, from
// memory).
func (a *analysis) segmentBolts(c *Check, s *SegmentShear, cast []castBolt) *Link {
	long := s.Working
	what := "counted length"
	if s.Pierced != nil {
		long, what = s.Pierced.SumLi, "full-height parts of the perforated wall, without its factor Co"
	}
	l := &Link{
		Check: c, ID: s.Name + ", sill bolts", Wall: s.Wall, Unit: "lb", Host: "wall " + s.Wall.Name, Where: "wall " + s.Wall.Name + ", segment " + s.Name, Case: s.Case,
		Demand: s.Demand * long / 12, Strength: s.Demand * long / 12 / ASD.W,
	}
	l.Terms = []Term{{"unit shear of the segment, ASD", s.Demand, "plf"}, {what, long / 12, "ft"}, {"shear on the sill plate, ASD", l.Demand, "lb"}}
	a.closeBolts(l, cast, func(b castBolt) bool {
		at, _ := s.Wall.Frame().Local(b.rod.A.Flat())
		return b.sill.Wall == s.Wall && s.Shear.From <= at && at <= s.Shear.To
	})
	if l.Capacity == nil {
		l.Gap = "no bolt with its nut on the sill plate stands within the segment"
	}
	return l
}

// lineBolts is the link of a line whose walls stand on a floor over sill plates.
func (a *analysis) lineBolts(c *Check, x *LineShear, cast []castBolt) *Link {
	l := &Link{
		Check: c, ID: "sill bolts, line " + x.Name, Wall: x.Segments[0].Wall, Unit: "lb", Host: "line " + x.Name, Where: fmt.Sprintf("line %s, story %s", x.Name, x.Level.Name), Case: x.UnderCase,
		Demand: ASD.W * x.Under, Strength: x.Under, Terms: x.underTerms(),
	}
	a.closeBolts(l, cast, func(b castBolt) bool {
		mid := axis(b.sill.A.Add(b.sill.B).Mul(0.5).Flat(), 1-x.Axis)
		return b.sill.B.Sub(b.sill.A).Flat().Unit().RunsAlong(x.Axis) && math.Abs(mid-x.At) < oneLine
	})
	if l.Capacity == nil {
		l.Gap = "no bolt with its nut on a sill plate stands in the line"
	}
	return l
}

// closeBolts adds up what the bolts of a link hold and closes it.
func (a *analysis) closeBolts(l *Link, cast []castBolt, here func(castBolt) bool) {
	total := &Capacity{Source: "computed"}
	alike := map[string]int{}
	var order []Term
	for _, b := range cast {
		if !here(b) {
			continue
		}
		v, text, governs := a.pushed(b)
		total.Value += v
		total.Pieces++
		total.Mark, total.Governs = b.piece.Item.Mark, cmp.Or(total.Governs, governs)
		if alike[text]++; alike[text] == 1 {
			order = append(order, Term{text, v, "lb"})
		}
	}
	if total.Pieces == 0 {
		l.close(nil)
		return
	}
	for _, t := range order {
		n := float64(alike[t.Text])
		total.Terms = append(total.Terms, ofCapacity(Term{plan.Counted(alike[t.Text], "bolt") + ", each " + t.Text, n * t.Value, "lb"})...)
	}
	if total.Value <= 0 {
		total.Unknown = order[0].Text
	}
	l.close(total)
}

// pushed returns what one bolt holds sideways along its sill, lb, how, and what
// governs: bending of the bolt and bearing in the wood, and no more than the catalog
// allows along where it gives that.
func (a *analysis) pushed(b castBolt) (lb float64, text, governs string) {
	v := timber.SillBolt{
		D: b.rod.Diameter, Plate: timber.Part{Thickness: b.sill.Z1 - b.sill.Z0, G: a.species.G}, Embed: b.rod.Ends[1].Embed,
		Condition: timber.Condition{Duration: timber.WindDuration, WetUse: a.house.Wet(b.sill)},
	}.Value()
	if v.Nothing != "" {
		return 0, v.Nothing, v.Nothing
	}
	text = a.u.Sprintf("%.3f in through %.2f in of wood into concrete, root of its thread %.3f in: Z %.0f lb (mode %s), %s, %s; %.0f lb if no thread lay in the plate", b.rod.Diameter, b.sill.Z1-b.sill.Z0, v.Root, v.Z, v.Mode, v.Factors, v.Source, v.Shank)
	governs = "bolts across the sill plate, mode " + v.Mode
	if given := b.piece.Item.Load; given.Along > 0 && given.Along < v.Allow {
		return given.Along, a.u.Sprintf("%.0f lb along by the catalog, %s; in the wood %.0f lb", given.Along, given.Source, v.Allow), "the catalog's allowable load along"
	}
	return v.Allow, text, governs
}
