package loadpath

import (
	"cmp"
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/timber"
)

// anchorStretch is how much the anchorage of a segment's end is taken to
// stretch at the segment's allowable unit shear, in: slip of fasteners, the
// device, the rod, crushing of the plate. It is an assumption, no published
// source; the maker's value of the hold-down belongs here.
const anchorStretch = 0.125

// defaultE is the modulus taken where the species' is not carried, psi: the
// lowest of those that are.
const defaultE = 1.1e6

// flex finds how stiff a segment is: by the deflection of SDPWS, with plywood's
// lower Ga, for the kind of panel is not said.
func (g *Segment) flex(s timber.Species) {
	_, ga, ok := g.Unit.Row.ApparentStiffness(g.Unit.Column)
	long := g.Length
	if g.Pierced != nil {
		long = g.Pierced.SumLi
	}
	switch {
	case g.Working <= 0:
		return
	case g.Trouble != "" || g.Unit.Allow <= 0:
		g.NoFlex = fmt.Sprintf("what %s holds is not known", g.Name)
		return
	case !ok:
		g.NoFlex = fmt.Sprintf("no Ga was read for %s %s with %s nails", g.Unit.Row.Grade, g.Unit.Row.Thickness, g.Unit.Row.Nail)
		return
	}
	g.Flex = timber.DeflectionOf(g.Height/12, long/12, g.postArea(), cmp.Or(s.E, defaultE), ga*g.Unit.Faces, anchorStretch/(g.Unit.Allow*g.Factor))
	g.Stiff = g.Working / 12 / g.Flex.Per()
}

// postArea is the smaller of the areas of the end posts, in²; of one stud of the
// wall where none is known.
func (g *Segment) postArea() float64 {
	area := math.Inf(1)
	for _, post := range g.posts {
		if len(post) > 0 {
			area = math.Min(area, areaOf(post))
		}
	}
	if math.IsInf(area, 1) {
		return g.Wall.Studs.Width() * g.Wall.Studs.Depth
	}
	return area
}

// areaOf adds the cross sections of studs, in².
func areaOf(post []*framing.Member) (in2 float64) {
	for _, m := range post {
		in2 += m.Section.Width() * m.Section.Depth
	}
	return in2
}

// shareOut splits a line's force over its segments: by their stiffness, with the
// factor for narrow ones, or by the length that counts with 2b/h, as the plan
// asks; by length too where a segment's stiffness is not known.
func (x *ShearLine) shareOut(by plan.SegmentShare) {
	long, stiff := 0.0, 0.0
	x.Why = ""
	for _, g := range x.Segments {
		long += g.Working
		stiff += g.Stiff
		x.byCapacity += g.Working / 12 * math.Max(1, g.Unit.Allow*g.Factor)
		if g.NoFlex != "" {
			x.Why = g.NoFlex
		}
	}
	x.ByLength = by == plan.ByLength || x.Why != ""
	if stiff > 0 && x.Why == "" {
		x.stiff = stiff
	}
	for _, g := range x.Segments {
		rigid, even := share(g.Stiff, stiff), share(g.Working, long)
		narrow := g.Factor
		if g.Pierced == nil {
			narrow = timber.LengthFactor(g.Tallest, g.Length)
		}
		g.Share, g.OtherShare, g.OtherFactor = rigid, even, narrow
		if x.ByLength {
			g.Share, g.OtherShare, g.OtherFactor, g.Factor = even, rigid, g.Factor, narrow
		}
	}
}

func share(part, whole float64) float64 {
	if whole <= 0 {
		return 0
	}
	return part / whole
}

// Drift is how far the top of a line moves against its foot under its largest
// force, ASD, in; 0 where a stiffness is not known. The floors, the stretch of
// what stands below and the turn of the story are not in it.
func (x *LineShear) Drift() float64 {
	if x.stiff <= 0 {
		return 0
	}
	return ASD.W * x.Force / x.stiff
}

// method says how a line's force goes to its segments.
func (x *ShearLine) method() string {
	switch {
	case x.Why != "":
		return "by length, with 2b/h for narrow segments: " + x.Why
	case x.ByLength:
		return "by length, with 2b/h for narrow segments, as the plan asks (SDPWS 2021 4.3.5.5.1, exceptions, second-hand)"
	}
	return "by stiffness, so that all segments deflect alike (SDPWS 2021 4.3.5.5.1, second-hand)"
}

// levers finds the lever arms of a segment's end tension: from the steel that
// takes it, as it is placed, to the middle of the far post, which is pressed.
// The shorter of the two ways counts for both.
func (b *builder) levers(g *Segment, ax int) {
	g.Lever = g.Length
	if g.Pierced != nil {
		return
	}
	for i := range g.ends {
		pull, what := b.pullAt(g, i, ax)
		push := g.postAt(1-i, ax)
		if arm := math.Abs(push - pull); arm > 0 && arm < g.Lever {
			g.Lever, g.LeverTo = arm, what
		}
	}
}

// edgeOf is where a segment ends, in: along the line.
func (g *Segment) edgeOf(i int, ax int) float64 {
	return axis(g.Wall.Frame().At([]float64{g.Shear.From, g.Shear.To}[i], 0, 0).Flat(), ax)
}

// postAt is the middle of a segment's end post along the line; where none is
// known, half a stud in from the edge. Studs of a wall that it meets are pressed only
// as far as their nails bring it, so that they count where they shorten the lever arm
// and not where, farther out, they would lengthen it.
func (g *Segment) postAt(i, ax int) float64 {
	at, other := g.edgeOf(i, ax), g.edgeOf(1-i, ax)
	post := g.posts[i]
	if len(post) == 0 {
		return at + math.Copysign(g.Wall.Studs.Width()/2, other-at)
	}
	var own []*framing.Member
	for _, m := range post {
		if m.Wall == g.Wall {
			own = append(own, m)
		}
	}
	all := middleOfPost(post, ax)
	if len(own) == 0 {
		return all
	}
	if alone := middleOfPost(own, ax); math.Abs(other-alone) < math.Abs(other-all) {
		return alone
	}
	return all
}

// middleOfPost is the middle of the area of some studs along an axis.
func middleOfPost(post []*framing.Member, ax int) float64 {
	sum, area := 0.0, 0.0
	for _, m := range post {
		in2 := m.Section.Width() * m.Section.Depth
		sum, area = sum+in2*middleOf(m, ax), area+in2
	}
	return sum / area
}

// middleOf is the middle of an upright along an axis.
func middleOf(m *framing.Member, ax int) float64 {
	return axis(m.A.Add(m.B).Mul(0.5).Flat(), ax)
}

// pullAt is where the tension of a segment's end is held: in the rod of a
// hold-down, in the middle of a strap, in the post where nothing is placed.
func (b *builder) pullAt(g *Segment, i, ax int) (at float64, what string) {
	at, what = g.postAt(i, ax), "the middle of the post"
	j := g.ends[i]
	if j == nil {
		return at, what
	}
	far := g.edgeOf(1-i, ax)
	for _, p := range b.placed.At(j) {
		var x float64
		switch {
		case p.Rod != nil:
			x = axis(p.Rod.A.Flat(), ax)
		case len(p.Bands) > 0:
			x = axis(middlePoint(p.Bands[0]).Flat(), ax)
		default:
			continue
		}
		if math.Abs(x-far) < math.Abs(at-far) || what == "the middle of the post" {
			at, what = x, p.Item.Mark
		}
	}
	return at, what
}

// middlePoint is the middle of a band's first plate.
func middlePoint(b geom.Band) geom.Vec3 { return b[0].A.Add(b[0].B).Mul(0.5) }
