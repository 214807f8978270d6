package loadpath

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/nailing"
	"galewright/plan/wind"
)

// gableCheck is the ID of the check of studs of gable walls out of plane.
const gableCheck = "gable-studs"

// gableDoc says what the check looks at and what it leaves out.
const gableDoc = "studs of walls under gables out of plane, by components and cladding, in or out, whichever is more: each post of studs nailed tight together with half of the wall to the posts beside it, openings included, from its bottom plate to its top; in bending, and at its ordered nails into both plates; the worst of each wall and all others that are over 1. No 2 lumber, without the factor for repetitive members; clips and straps at the plates are not counted, nor is uplift in the same studs. What holds the plates themselves at floor and roof is not followed"

// gableStuds checks the studs of walls under gables.
func gableStuds(c *Check, a *analysis) (out []*Link) {
	for _, w := range a.plan.Walls {
		if p := a.byWall[w]; p != nil && a.rakeOver(w) != nil {
			out = append(out, a.gableWall(c, p)...)
		}
	}
	return out
}

// gablePost is one or more studs of a gable wall that stand tight together, with their
// stretch of wall.
type gablePost struct {
	first *framing.Member
	studs []*framing.Member
	tall  float64 // in
	wide  float64 // of the wall, in
	zone  string
	psf   float64 // strength level, in or out, whichever is more
}

// perFoot is the wind on the post, plf ASD.
func (g gablePost) perFoot() float64 { return ASD.W * g.psf * g.wide / 12 }

// gablePosts are the posts of a wall, in order of station.
func (a *analysis) gablePosts(p *wallPath) (out []gablePost) {
	for i := 0; i < len(p.carriers); {
		g := gablePost{first: p.carriers[i].m}
		for ; i < len(p.carriers); i++ {
			k, n := p.carriers[i], len(g.studs)
			if n > 0 && (k.m.S0-g.studs[n-1].S1 > tight || a.plan.Ordered(plan.BuiltUpStuds) == nil) {
				break
			}
			g.studs = append(g.studs, k.m)
			g.tall, g.wide = math.Max(g.tall, k.m.Z1-k.m.Z0), g.wide+k.share
		}
		g.zone, g.psf = a.gablePressure(p.w, g)
		out = append(out, g)
	}
	return out
}

// gablePressure is that on a post, psf at strength level, in zone 5 within a of the wall's
// ends and in zone 4 between.
func (a *analysis) gablePressure(w *plan.Wall, g gablePost) (zone string, psf float64) {
	zones := wind.WallFigure(a.basis.Edition, a.basis.Theta).Zones
	z := zones[0]
	if end := 12 * a.basis.EdgeStrip(); g.first.Mid() < end || g.first.Mid() > w.Length()-end {
		z = zones[len(zones)-1]
	}
	p := a.basis.Cladding(z, wind.EffectiveArea(g.tall/12, g.wide/12))
	return z.Zone, math.Max(p.Positive, -p.Negative)
}

// gableWall are the links of one wall: of its worst post in bending and at both its plates,
// and of all others that are over 1.
func (a *analysis) gableWall(c *Check, p *wallPath) (out []*Link) {
	posts := a.gablePosts(p)
	for _, of := range []struct {
		what string
		link func(*Check, *wallPath, gablePost) *Link
	}{{"bending", a.gableBending}, {"top", a.gableNails(plan.TopPlateToStud)}, {"bottom", a.gableNails(plan.SoleToStud)}} {
		var worst *Link
		links := make([]*Link, len(posts))
		for i, g := range posts {
			links[i] = of.link(c, p, g)
			links[i].ID = fmt.Sprintf("%s-%.0f, gable stud, %s", p.w.Name, g.first.Mid(), of.what)
			if worse(links[i], worst) {
				worst = links[i]
			}
		}
		for _, l := range links {
			if l == worst || l.Ratio > 1 && l.Capacity != nil {
				out = append(out, l)
			}
		}
	}
	return out
}

// gableLink begins a link of a post.
func (a *analysis) gableLink(c *Check, p *wallPath, g gablePost, unit string) *Link {
	u := a.u
	where := fmt.Sprintf("wall %s, %s at %s", p.w.Name, g.first.Role, u.Length(g.first.Mid()))
	if len(g.studs) > 1 {
		where = fmt.Sprintf("wall %s, %s from %s", p.w.Name, plan.Counted(len(g.studs), "stud"), u.Length(g.first.Mid()))
	}
	return &Link{
		Check: c, Wall: p.w, Host: "wall " + p.w.Name, Where: where, Unit: unit, Case: "wind square to the wall",
		Terms: []Term{
			{"pressure of components and cladding, zone " + g.zone + ", in or out, whichever is more, strength level", g.psf, "psf"},
			{"width of wall that it serves", g.wide / 12, "ft"},
			{"height", g.tall / 12, "ft"},
			{"0.6 of it on the post, ASD", g.perFoot(), "plf"},
		},
	}
}

// gableBending is the link of a post in bending: a simple beam from plate to plate.
func (a *analysis) gableBending(c *Check, p *wallPath, g gablePost) *Link {
	l := a.gableLink(c, p, g, "lb-in")
	l.Demand = g.perFoot() * g.tall / 12 * g.tall / 8
	l.Strength = l.Demand / ASD.W
	l.Terms = append(l.Terms, Term{"w h²/8, ASD", l.Demand, "lb-in"})
	s := g.first.Section
	l.close(a.inBending(wood{n: len(g.studs) * max(1, s.Ply), wide: s.Breadth, deep: s.Depth, depth: s.Depth, why: plan.Counted(len(g.studs), "stud"), factor: 1}, "bending"))
	return l
}

// gableNails makes the link of a post's nails into one of its plates.
func (a *analysis) gableNails(at plan.Connection) func(*Check, *wallPath, gablePost) *Link {
	return func(c *Check, p *wallPath, g gablePost) *Link {
		l := a.gableLink(c, p, g, "lb")
		l.Demand = g.perFoot() * g.tall / 12 / 2
		l.Strength = l.Demand / ASD.W
		l.Terms = append(l.Terms, Term{"at each end, ASD", l.Demand, "lb"})
		l.close(a.nailsOf(at, g.studs))
		if l.Gap != "" && l.Capacity == nil {
			l.Gap = "no nails ordered: " + string(at) + " under [nailing]"
		}
		return l
	}
}

// nailsOf is what the ordered nails of a connection into some studs hold across; nil where
// none are ordered.
func (a *analysis) nailsOf(at plan.Connection, studs []*framing.Member) *Capacity {
	line := a.nails.Line(at)
	if line == nil {
		return nil
	}
	out := &Capacity{Source: "ordered nailing", Mark: line.Mark()}
	for _, x := range a.alike(line, places{walls: wallsOf(studs), is: func(s *nailing.Spot) bool { return isOne(studs, s.Main) }}) {
		out.Value, out.Pieces = out.Value+x.sum, out.Pieces+x.n
		out.Terms = append(out.Terms, ofCapacity(Term{a.u.Sprintf("%s of %s, %s: one holds %.0f lb, %s", plan.Counted(x.n, "nail"), line.Mark(), line.Row.One, x.one.Lateral, x.one.Text), x.sum, "lb"})...)
	}
	if out.Value == 0 {
		return nil
	}
	out.Governs = fmt.Sprintf("%s of %s, %s", plan.Counted(out.Pieces, "nail"), line.Mark(), line.Row.One)
	return out
}

// wallsOf returns the walls of members; nil where one is in none.
func wallsOf(list []*framing.Member) (out []*plan.Wall) {
	for _, m := range list {
		if m.Wall == nil {
			return nil
		}
		out = append(out, m.Wall)
	}
	return out
}

func isOne(list []*framing.Member, m *framing.Member) bool {
	for _, x := range list {
		if x == m {
			return true
		}
	}
	return false
}
