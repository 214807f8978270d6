package loadpath

import (
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/timber"
	"galewright/plan/units"
)

// pressedEnds checks what the far end of each segment presses on: the couple
// that lifts one end pushes the other down, with the dead load of its post.
func pressedEnds(c *Check, a *analysis) (out []*Link) {
	for _, x := range a.lateral.lines {
		for _, s := range x.Segments {
			if !s.base || s.Lifts == 0 {
				continue
			}
			for i := range s.ends {
				if l := a.pressedLink(c, x, s, i); l != nil {
					out = append(out, l)
				}
			}
		}
	}
	return out
}

// pressedLink is the link of one end; nil where no post is known, which the
// check of its tension tells.
func (a *analysis) pressedLink(c *Check, x *LineShear, s *SegmentShear, i int) *Link {
	j := s.ends[i]
	if j == nil || j.First() == nil {
		return nil
	}
	dead, push := a.deadOn(s.posts[i]), ASD.W*s.Lifts
	l := &Link{
		Check: c, ID: j.ID, Joint: j, Wall: s.Wall, Host: j.HostName(), Where: whereOf(a.u, j), Unit: "lb", Case: s.Case,
		Demand: push + dead, Strength: s.Lifts + dead, Force: Force{W: s.Lifts, D: -dead},
		Terms: []Term{
			{"the couple of the end tension, stories above included, strength level", s.Lifts, "lb"},
			{"0.6 of it", push, "lb"},
			{"dead load on the post", dead, "lb"},
			{"both, D + 0.6W", push + dead, "lb"},
		},
	}
	l.close(a.bears(s.posts[i], arrival{j.First(), l.Demand}))
	a.pressBoth(l, x, s, i)
	return l
}

// deadOn is the dead load on the studs of a post, lb.
func (a *analysis) deadOn(post []*framing.Member) (lb float64) {
	for _, m := range post {
		if foot := a.footOf[m]; foot != nil && a.peaks[foot] != nil {
			lb += a.peaks[foot].force.D
		}
	}
	return lb
}

// pressBoth puts case 3 on a corner's post that segments of both directions press,
// on the studs of both together, where that is the larger ratio.
func (a *analysis) pressBoth(l *Link, x *LineShear, s *SegmentShear, i int) {
	t, k := a.shared(x, s, i)
	if t == nil || !a.choice.Has(plan.Directional) || t.ends[k] == nil || t.ends[k].First() == nil {
		return
	}
	post := slices.Clone(s.posts[i])
	for _, m := range t.posts[k] {
		if !slices.Contains(post, m) {
			post = append(post, m)
		}
	}
	dead := a.deadOn(post)
	wind := both * (s.Lifts + t.Lifts)
	all := *l
	all.Case, all.Demand, all.Strength, all.Force = bothWords, ASD.W*wind+dead, wind+dead, Force{W: wind, D: -dead}
	all.Terms = []Term{
		{"the couple of the end tension, stories above included, strength level", s.Lifts, "lb"},
		{"that of " + t.Name + ", whose post at the corner has the same studs", t.Lifts, "lb"},
		{"0.75 of both together, wind on both axes (case 3, ASCE 7-10 Fig. 27.4-8, read)", wind, "lb"},
		{"0.6 of it", ASD.W * wind, "lb"},
		{"dead load on the studs of both", dead, "lb"},
		{"both, D + 0.6W", all.Demand, "lb"},
	}
	all.close(a.bears(post, arrival{s.ends[i].First(), ASD.W*both*s.Lifts + dead/2}, arrival{t.ends[k].First(), ASD.W*both*t.Lifts + dead/2}))
	if all.Ratio > l.Ratio {
		*l = all
	}
}

// bears is what the studs of a post do: the plate under them, and they as columns,
// and what the nails between them bring there of what comes in at one of them.
func (a *analysis) bears(posts []*framing.Member, in ...arrival) *Capacity {
	held := bearingOf(a.u, a.species, areaOf(posts), len(posts))
	if held.Unknown == "" {
		a.buckling(held, posts)
	}
	a.nailedTogether(held, posts, in...)
	return held
}

// buckling lets the studs of a post, each by itself across its depth, bear what
// they do as columns where that is less.
func (a *analysis) buckling(held *Capacity, posts []*framing.Member) {
	w, ok := a.species.Along()
	if !ok {
		held.Terms = append(held.Terms, ofCapacity(Term{"no compression along the grain is carried for " + a.species.Name + ": buckling of the post is not checked", 0, "lb"})...)
		return
	}
	lb, longest := 0.0, timber.ColumnValue{}
	for _, m := range posts {
		v := timber.Column{Along: w, Length: m.Z1 - m.Z0, Depth: m.Section.Depth, Duration: timber.WindDuration}.Value()
		lb += v.Stress * m.Section.Width() * m.Section.Depth
		if v.Slim >= longest.Slim {
			longest = v
		}
	}
	held.Terms = append(held.Terms, ofCapacity(Term{a.u.Sprintf("the same as columns, %.1f times as long as deep: Fc* %.0f psi with CD 1.6, Cp %.3f (%s; No. 2, from memory)", longest.Slim, longest.FcStar, longest.Cp, longest.Source), lb, "lb"})...)
	if lb < held.Value {
		held.Value, held.Governs = lb, "buckling of the post across the wall"
	}
}

// bearingOf is what a plate bears under a post of an area, in², of n studs.
func bearingOf(u units.System, s timber.Species, area float64, n int) *Capacity {
	if s.FcPerp == 0 {
		return &Capacity{Unknown: "no compression across the grain is carried for " + s.Name}
	}
	v := area * s.FcPerp
	return &Capacity{
		Value: v, Governs: "bearing of the post on its plate", Source: "computed", Pieces: 1,
		Terms: ofCapacity(Term{u.Sprintf("post of %s, %.2f in², on its plate, Fc perpendicular %.0f psi (%s, from memory), Cb 1 (NDS 2018 3.10.4, read), no duration factor", plan.Counted(n, "stud"), area, s.FcPerp, s.Name), v, "lb"}),
	}
}
