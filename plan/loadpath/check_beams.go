package loadpath

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/capacity"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
)

// beamCheck is the ID of the check of beams of floors at what carries them.
const beamCheck = "beam-bearing"

// beamDoc says what the check looks at and what it leaves out.
const beamDoc = "what the floors on a beam, dead and live (D + L), walls that stand on their joists and beams that hang on it press on each plate, post or hanger that carries it: by lever between its supports, a quarter more at a support over which a piece goes on (5/4 of two equal spans, statics); live load is not reduced. Against bearing across the grain of beam and plate where it lies, and against the load downward that the catalog gives for a hanger; a hanger of which it gives none is not compared. The beam's own weight, ceilings, roof, snow and wind pressing down are not in it, nor are partitions; the beam in bending and shear, posts as columns and what is under them are not checked"

// runsOn is what a support takes over which a beam goes on in one piece, of what two beams
// that end there would bring: 2 x 5/8 w l of two equal spans under an even load, for w l.
const runsOn = 1.25

// beamPush is a load on a beam, dead and live, lb, with the words of it.
type beamPush struct {
	text       string
	at         float64
	dead, live float64
}

// asd and strength are what it counts in D + L and in 1.2 D + 1.6 L (ASCE 7-16 2.4.1 and
// 2.3.1, from memory), lb.
func (p beamPush) asd() float64      { return p.dead + p.live }
func (p beamPush) strength() float64 { return 1.2*p.dead + 1.6*p.live }

// beamsBear makes a link for each place at which a beam that carries a floor lies or hangs.
func beamsBear(c *Check, a *analysis) (out []*Link) {
	on := a.pushedBeams()
	for _, x := range a.house.Beams {
		if len(on[x]) == 0 {
			continue
		}
		for i := range x.Supports {
			if l := a.beamLink(c, x, i, on[x]); l != nil {
				out = append(out, l)
			}
		}
	}
	return out
}

// pushedBeams lists what presses on each beam: floors, walls on their joists, and then what
// hangs on it.
func (a *analysis) pushedBeams() map[*framing.Beam][]beamPush {
	out := map[*framing.Beam][]beamPush{}
	for _, x := range a.house.Beams {
		for _, f := range a.beamAreas[x] {
			dead, live := a.dead.floor(f.level), a.plan.Loads.FloorLive
			for _, p := range f.area {
				out[x] = append(out[x], beamPush{a.u.Sprintf("dead %.1f{psf} and live %.0f psf of the floor of level %s", dead, live, f.level.Name), p.at, p.lb * dead, p.lb * live})
			}
		}
	}
	a.wallsOnBeams(out)
	done := map[*framing.Beam]bool{}
	for _, x := range a.house.Beams {
		a.hangOn(x, out, done, 0)
	}
	return out
}

// wallsOnBeams adds the dead load of walls, with what they carry, that stand on joists which
// a beam carries.
func (a *analysis) wallsOnBeams(out map[*framing.Beam][]beamPush) {
	for _, p := range a.paths {
		for _, c := range p.carriers {
			if peak := a.peaks[c.base]; peak != nil && c.base.Level.Index > 0 {
				for _, y := range c.joists {
					if x := a.beamOf(y.joint); x != nil {
						out[x] = append(out[x], beamPush{"dead load of wall " + p.w.Name, y.joint.Station, y.k * peak.force.D, 0})
					}
				}
			}
		}
	}
}

// beamOf is the beam that a joist's joint is on; nil of one on a wall.
func (m *model) beamOf(j *framing.Joint) *framing.Beam {
	for _, x := range m.house.Beams {
		if j.Wall == nil && x.Name == j.Host && slices.Contains(x.Pieces, j.Members[1]) {
			return x
		}
	}
	return nil
}

// hangOn adds to the beams that one hangs on what it brings them, those that hang on it first.
func (a *analysis) hangOn(x *framing.Beam, out map[*framing.Beam][]beamPush, done map[*framing.Beam]bool, depth int) {
	if done[x] || depth > deepest {
		return
	}
	done[x] = true
	for _, o := range a.house.Beams {
		if slices.ContainsFunc(o.Supports, func(u framing.BeamSupport) bool { return u.Beam == x }) {
			a.hangOn(o, out, done, depth+1)
		}
	}
	for i, u := range x.Supports {
		if u.Beam != nil {
			of := func(f func(beamPush) float64) float64 { return reactionOf(x, i, out[x], f) }
			dead, live := of(func(p beamPush) float64 { return p.dead }), of(func(p beamPush) float64 { return p.live })
			out[u.Beam] = append(out[u.Beam], beamPush{"beam " + x.Name + " that hangs on it", u.Station, dead, live})
		}
	}
}

// reactionOf is what a beam brings to one of its supports of the part of the loads, lb.
func reactionOf(x *framing.Beam, i int, loads []beamPush, part func(beamPush) float64) (lb float64) {
	at := supportsAlong(x)
	for _, p := range loads {
		for _, y := range lever(at, p.at) {
			if y.i == i {
				lb += y.k * part(p)
			}
		}
	}
	if i > 0 && i < len(at)-1 && pieceOver(x, at[i]) {
		lb *= runsOn
	}
	return lb
}

// pieceOver tells whether a beam goes on in one piece over a place.
func pieceOver(x *framing.Beam, s float64) bool {
	return slices.ContainsFunc(x.Pieces, func(m *framing.Member) bool {
		p, _ := x.Frame.Local(m.A.Flat())
		q, _ := x.Frame.Local(m.B.Flat())
		return math.Min(p, q) < s-1 && math.Max(p, q) > s+1
	})
}

// beamLink is that of one support; nil where no joint is there, nothing presses, or it hangs
// from pieces for which the catalog gives no load downward.
func (a *analysis) beamLink(c *Check, x *framing.Beam, i int, loads []beamPush) *Link {
	u := x.Supports[i]
	j, lb := a.jointAt(x, u), reactionOf(x, i, loads, beamPush.asd)
	if j == nil || lb <= least {
		return nil
	}
	l := &Link{Check: c, ID: j.ID, Joint: j, Wall: j.Wall, Host: j.HostName(), Where: whereOf(a.u, j), Unit: "lb", Case: "D + L, without wind", Demand: lb, Strength: reactionOf(x, i, loads, beamPush.strength)}
	l.Terms = append(a.beamTerms(x, i, loads), Term{"D + L on this support", lb, "lb"})
	held := a.hangerDown(j)
	if u.Seat {
		held = a.seated(x, u)
	}
	if held == nil {
		return nil
	}
	l.close(held)
	return l
}

// beamTerms sums up the loads at a support by their words.
func (a *analysis) beamTerms(x *framing.Beam, i int, loads []beamPush) (out []Term) {
	for k, p := range loads {
		if slices.ContainsFunc(loads[:k], func(o beamPush) bool { return o.text == p.text }) {
			continue
		}
		same := slices.DeleteFunc(slices.Clone(loads), func(o beamPush) bool { return o.text != p.text })
		all := 0.0
		for _, o := range same {
			all += o.asd()
		}
		if lb := reactionOf(x, i, same, beamPush.asd); math.Abs(lb) > 0.5 {
			out = append(out, Term{a.u.Sprintf("%s: of %.0f{lb} on the beam", p.text, all), lb, "lb"})
		}
	}
	return out
}

// jointAt is the joint of a beam and what carries it at a place.
func (a *analysis) jointAt(x *framing.Beam, u framing.BeamSupport) *framing.Joint {
	for _, j := range a.house.Joints {
		switch j.Kind {
		case plan.BeamEnd, plan.BeamSeat, plan.BeamHung, plan.BeamToPost:
			if slices.Contains(j.Members, u.On) && slices.ContainsFunc(j.Members, func(m *framing.Member) bool { return slices.Contains(x.Pieces, m) }) && j.At.Sub(u.At).Len() < 6 {
				return j
			}
		}
	}
	return nil
}

// hangerDown is the load downward that the catalog gives for the hangers at a joint; nil for
// none.
func (a *analysis) hangerDown(j *framing.Joint) *Capacity {
	var best *Capacity
	for _, p := range a.placed.At(j) {
		down := p.Item.Load.Down
		if p.Item.Kind.Shape != hardware.Body || down == 0 || best != nil && best.Value >= down {
			continue
		}
		best = &Capacity{
			Value: down, Mark: p.Item.Mark, Pieces: 1, Governs: "maker's allowable load, down", Source: "maker's value: " + p.Item.Load.Source,
			Terms: []capacity.Term{{Text: "maker's down, allowable stress level, " + p.Item.Load.Source, Value: down, Unit: "lb"}},
		}
	}
	return best
}

// seated is what beam and plate or post bear across the grain where one lies on the other.
func (a *analysis) seated(x *framing.Beam, u framing.BeamSupport) *Capacity {
	if a.species.FcPerp == 0 {
		return &Capacity{Unknown: "no compression across the grain is carried for " + a.species.Name}
	}
	area := touch(x, u.On)
	v := area * a.species.FcPerp
	on := "plate"
	if u.On.Role == plan.BeamPost {
		on = "post"
	}
	return &Capacity{
		Value: v, Governs: "bearing of the beam on its " + on, Source: "computed", Pieces: 1,
		Terms: ofCapacity(Term{a.u.Sprintf("%.2f in² on its "+on+", Fc perpendicular %.0f psi (%s, from memory), Cb 1 (NDS 2018 3.10.4, read), no duration factor; the beam taken as of the same species", area, a.species.FcPerp, a.species.Name), v, "lb"}),
	}
}

// touch is the area over which a beam lies on a member, in²: an inch of its foot within that
// member's sides.
func touch(x *framing.Beam, on *framing.Member) (area float64) {
	for _, m := range x.Pieces {
		foot := m.Solid[0].Clip(geom.PlaneAt(geom.Vec3{Z: m.Z0 + 1}, geom.Vec3{Z: 1}))
		for _, p := range on.Solid[0].Planes() {
			if math.Abs(p.N.Z) < 0.5 {
				foot = foot.Clip(p)
			}
		}
		if !foot.Empty() {
			area += foot.Volume()
		}
	}
	return area
}
