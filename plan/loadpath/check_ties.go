package loadpath

import (
	"fmt"
	"math"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/timber"
)

// tieCheck is the ID of the check of ceiling joists.
const tieCheck = "tie-thrust"

// tieDoc says what the check looks at and what it leaves out.
const tieDoc = "thrust of rafters without a ridge beam from dead load, at the ordered nails of each ceiling joist into its rafters and at each splice of it; what pairs without a joist push goes to the joists beside them; what pairs with a foot on a valley push is not followed. Live load of the roof and snow, which may push more, are not in it, nor is bending of the joists or their own wood at the nails: the engineer of record sizes joists, splices and nails for those"

// deadStrength is the factor on dead load alone at strength level (ASCE 7-16
// 2.3.1, from memory).
const deadStrength = 1.4

// tieThrust checks the nails of each ceiling joist: at its rafters, and at each
// of its breaks. Of a plan that orders no nailing at all only the breaks are
// checked; the ridges' lines say that nothing else is known.
func tieThrust(c *Check, a *analysis) (out []*Link) {
	loads := a.tieLoads()
	for _, t := range a.house.Ties {
		lb := loads[t]
		if lb <= least {
			continue
		}
		if len(a.nails.Lines) > 0 {
			out = append(out, a.tieLink(c, t, "", plan.RafterToJoist, t.Pieces[0], lb))
		}
		for i, s := range t.Splices {
			out = append(out, a.tieLink(c, t, fmt.Sprintf(" splice %d", i+1), plan.CeilingSplice, s, lb))
		}
		for _, x := range t.Beams {
			if x.Beam.Set == plan.SetFlush {
				out = append(out, a.cutTie(c, t, x, lb))
			}
		}
	}
	return out
}

// shareThrust shares the thrust of each pair of rafters to the ceiling joists of
// its roof: to its own, else to those on both sides by lever; take is told of
// each part.
func (a *analysis) shareThrust(take func(p *pair, t *framing.Tie, k float64)) {
	own := map[*framing.Member]*framing.Tie{}
	for _, t := range a.house.Ties {
		own[t.Rafters[0]], own[t.Rafters[1]] = t, t
	}
	at := map[*framing.Tie]*pair{} // that it stands beside
	for _, p := range a.pairs {
		if t := own[p.a.Member]; t != nil {
			at[t] = p
		}
	}
	for _, p := range a.pairs {
		if !p.onPlates() {
			continue // it pushes on a valley
		}
		if t := own[p.a.Member]; t != nil {
			take(p, t, 1)
			continue
		}
		low, high := a.tiesBeside(p, at)
		switch {
		case low == nil && high == nil:
		case low == nil:
			take(p, high, 1)
		case high == nil:
			take(p, low, 1)
		default:
			k := (p.along - at[low].along) / (at[high].along - at[low].along)
			take(p, low, 1-k)
			take(p, high, k)
		}
	}
}

// tieLoads returns what each ceiling joist holds, lb.
func (a *analysis) tieLoads() map[*framing.Tie]float64 {
	out := map[*framing.Tie]float64{}
	a.shareThrust(func(p *pair, t *framing.Tie, k float64) { out[t] += k * a.thrust(p) })
	return out
}

// tieWorkings tells which pairs push on a ceiling joist, and by what.
func (a *analysis) tieWorkings(l *Link) (out []string) {
	a.shareThrust(func(p *pair, t *framing.Tie, k float64) {
		if id := tieID(t); l.ID != id && !strings.HasPrefix(l.ID, id+" ") {
			return
		}
		left := a.sideLoads(p.a, roofCase{})
		out = append(out, fmt.Sprintf("%.3f of %.1f lb from %s and %s: dead load %.1f lb on the first, its moment about the plate %.1f lb-ft less what passes the ridge by the lever %.2f ft, over the rise %.2f ft",
			k, a.thrust(p), p.a.Member.ID, p.b.Member.ID, left.sum.D, left.moment.D/12, p.apex/12, p.rise/12))
	})
	return out
}

// tieID names a ceiling joist in links.
func tieID(t *framing.Tie) string {
	return fmt.Sprintf("%s-%.0f-tie", t.Roof.Name, math.Round(t.Along))
}

// tiesBeside returns the ceiling joists under a pair's ridge nearest to it on both
// sides.
func (a *analysis) tiesBeside(p *pair, at map[*framing.Tie]*pair) (low, high *framing.Tie) {
	for _, t := range a.house.Ties {
		q := at[t]
		switch {
		case q == nil || t.Roof != p.a.roof && t.Roof != p.b.roof || !p.oneRidge(q):
		case q.along <= p.along && (low == nil || q.along > at[low].along):
			low = t
		case q.along > p.along && (high == nil || q.along < at[high].along):
			high = t
		}
	}
	return low, high
}

// oneRidge tells whether two pairs meet at ridges in one line: at the corner of an L the
// rafters of both roofs stand across each other.
func (p *pair) oneRidge(q *pair) bool {
	if !geom.Parallel(p.a.Up, q.a.Up) {
		return false
	}
	return p.joint == nil || q.joint == nil || math.Abs(p.joint.At.Sub(q.joint.At).Flat().Dot(p.a.Up)) < 1
}

// tieLink is the link of the nails of one connection at a ceiling joist: those
// through the member side.
func (a *analysis) tieLink(c *Check, t *framing.Tie, what string, at plan.Connection, side *framing.Member, lb float64) *Link {
	l := &Link{
		Check: c, ID: tieID(t) + what, Host: "roof " + t.Roof.Name, Unit: "lb", Demand: lb, Strength: lb * deadStrength, Case: "dead load",
		Where: fmt.Sprintf("roof %s, ceiling joist at %s%s", t.Roof.Name, a.u.Length(t.Along), what),
	}
	l.Terms = []Term{{"thrust of the rafters from dead load that it holds", lb, "lb"}}
	held := a.tieNails(at, side)
	l.close(held)
	if held == nil {
		l.Gap = "no nails ordered: " + string(at) + " under [nailing]"
	}
	return l
}

// cutTie is the gap of a ceiling joist that is cut at a flush beam: hangers carry it
// down, and nothing that the plan can say draws its two parts together over the beam.
func (a *analysis) cutTie(c *Check, t *framing.Tie, x framing.TieBeam, lb float64) *Link {
	return &Link{
		Check: c, ID: tieID(t) + " beam " + x.Beam.Name, Host: "roof " + t.Roof.Name, Unit: "lb", Demand: lb, Strength: lb * deadStrength, Case: "dead load", Ratio: math.Inf(1),
		Where: fmt.Sprintf("roof %s, ceiling joist at %s, at beam %s", t.Roof.Name, a.u.Length(t.Along), x.Beam.Name),
		Terms: []Term{{"thrust of the rafters from dead load that it holds", lb, "lb"}},
		Gap:   fmt.Sprintf("the joist is cut at beam %s and holds no thrust across it: set the beam dropped, so that joists lap over it, or have the engineer of record tie the two over it", x.Beam.Name),
	}
}

// tieNails is what the ordered nails of a connection through a member hold on
// one side of it, under dead load; nil where none are ordered.
func (a *analysis) tieNails(at plan.Connection, side *framing.Member) *Capacity {
	line := a.nails.Line(at)
	if line == nil {
		return nil
	}
	for _, s := range line.Spots {
		if s.Side != side {
			continue
		}
		v, n := line.OneFor(s, a.species, timber.Permanent), s.Nails(line.Order)
		if v.Nothing != "" {
			return &Capacity{Unknown: v.Nothing}
		}
		return &Capacity{
			Value: float64(n) * v.Lateral, Source: "ordered nailing", Pieces: n, Mark: line.Mark(), Governs: fmt.Sprintf("%s of %s, %s", plan.Counted(n, "nail"), line.Mark(), line.Row.One),
			Terms: ofCapacity(Term{"one nail, " + v.Text, v.Lateral, "lb"}, Term{plan.Counted(n, "nail") + " on one side", float64(n) * v.Lateral, "lb"}),
		}
	}
	return nil
}
