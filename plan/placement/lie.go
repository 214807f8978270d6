package placement

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
)

// Lie is how one piece lies in the house: the faces it takes, its steel in
// space, and the members it is fastened to. A shape makes it whole and nothing
// changes it: a piece that moves takes another one.
type Lie struct {
	Face plan.Face
	// Bands are its steel: a strap is one band, bent where it bends; a clip one
	// of its two legs; a hold-down is one plate on its post, a pair two bands of
	// one plate; of a hanger, base or cap each flange is a band. A rod has none.
	Bands []geom.Band
	// Ends say for each of the item's Ends where its fasteners start.
	Ends []EndAt
	// Laid are the members it is nailed or bolted to, the one held down first.
	Laid []Laid
	// Gap is what the steel bridges between them; Cut the length to cut from a
	// coil, or of a hold-down's rod, 0 for none; in.
	Gap, Cut float64
	Rod      *Axis // of rods, bolts and hold-downs; else nil
	// Path is the line by which it is drawn, in space: of a strap its middle line
	// from end to end; for a clip, hanger, base or cap its place; for a
	// hold-down pair four points: foot of the lower body, lower nut, upper nut,
	// head of the upper body.
	Path []geom.Vec3
	// Station is along the joint's host from its measuring end, in; Z0 and Z1
	// are the lowest and highest height of the piece above grade, in.
	Station, Z0, Z1 float64
	Moved           string // why it is not in its first place
	Tight           bool   // a bolt for which no clear place was found

	tied [2]int // which of Laid its two ends hold, that held down first
}

// Laid is one member under a piece's steel.
type Laid struct {
	Member *framing.Member
	// Lap is how much of the steel is meant for it; Room how far its wood really
	// goes on there along the steel, from where the lap begins, with what goes on
	// from it, such as a plate past its splice; of a rod both are its length in
	// the member, in. A Room of 0 says that there is none.
	Lap, Room float64
	// Others are what else the same end is meant for, each as good as Member: the
	// second of the two rafters between which a hip's end is hung.
	Others []*framing.Member

	starts []Start
	of     int // places that its end's fasteners are meant for; 0 = as many as starts
}

// with notes that a member's end is meant for m as well.
func (l *Laid) with(m *framing.Member) {
	if m != l.Member && !in(l.Others, m) {
		l.Others = append(l.Others, m)
	}
}

// Start is an end of a band from which fasteners are laid along it.
type Start struct {
	Band int  // of Lie.Bands
	Far  bool // from the band's last point, not its first
}

// EndAt is where the fasteners of one of the item's ends go. Those of an end
// with several starts are shared evenly over them, the first has the odd ones.
type EndAt struct {
	Laid   int // of Lie.Laid: the member they are meant for
	Starts []Start
	// Of is how many flanges the catalog means the fasteners for, where some of them
	// find nothing to lie on: their share is not driven; else 0.
	Of int
}

// LeftOut returns how many fasteners the catalog has at one of the item's Ends that
// are not driven, for the flange that they are meant for has no wood.
func (p *Piece) LeftOut(end int) int {
	if end >= len(p.Ends) {
		return 0
	}
	at := p.Ends[end]
	if at.Of <= len(at.Starts) {
		return 0
	}
	n := p.Item.Ends()[end].Count
	return n - n*len(at.Starts)/at.Of
}

// Driven returns how many fasteners go in, by line of the item's Fasteners.
func (p *Piece) Driven() []int {
	out := make([]int, len(p.Item.Fasteners))
	for i, f := range p.Item.Fasteners {
		out[i] = f.Total()
	}
	for i := range p.Ends {
		if n := p.LeftOut(i); n > 0 {
			out[p.Item.Ends()[i].Row] -= n
		}
	}
	return out
}

// Axis is the middle line of a rod from end to end, thread beyond the nuts
// included: A is the upper or outer end. Where a hold-down's Cut is 0 it has no
// rod of its own: the axis is that of the anchor, as far as its sill plate.
type Axis struct{ A, B geom.Vec3 }

// Strip returns the band as it runs from a start.
func (l *Lie) Strip(s Start) geom.Band {
	if s.Far {
		return l.Bands[s.Band].Turned()
	}
	return l.Bands[s.Band]
}

// Members returns the members of Laid, each once.
func (l *Lie) Members() (out []*framing.Member) {
	for _, x := range l.Laid {
		for _, m := range append([]*framing.Member{x.Member}, x.Others...) {
			if m != nil && !in(out, m) {
				out = append(out, m)
			}
		}
	}
	return out
}

// ties returns the two members that a piece's ends hold, that held down first;
// of one with a single end both are the same.
func (l *Lie) ties() [2]Laid {
	if len(l.Laid) == 0 {
		return [2]Laid{}
	}
	return [2]Laid{l.Laid[l.tied[0]], l.Laid[min(l.tied[1], len(l.Laid)-1)]}
}

// Laps returns the lengths of steel on the two members that a strap ties, the
// one held down first, in; zero for what is no strap.
func (l *Lie) Laps() [2]float64 {
	t := l.ties()
	return [2]float64{t[0].Lap, t[1].Lap}
}

// plates returns all stretches of the steel.
func (l *Lie) plates() (out []geom.Plate) {
	for _, b := range l.Bands {
		out = append(out, b...)
	}
	return out
}

// Steel returns the developed length of the longest band, in; 0 for a rod.
func (l *Lie) Steel() (long float64) {
	for _, b := range l.Bands {
		long = max(long, b.Len())
	}
	return long
}

// nailed returns the stretches of the steel but those that only bridge what
// lies between two laps: they take no fasteners, and other steel may cross them.
func (l *Lie) nailed() (out []geom.Plate) {
	for i, b := range l.Bands {
		for k, p := range b {
			if k == 0 || k == len(b)-1 || len(l.Bands) > 1 || !l.bridges(i, k) {
				out = append(out, p)
			}
		}
	}
	return out
}

// bridges tells whether the kth plate of a band lies wholly between its laps.
func (l *Lie) bridges(band, k int) bool {
	b := l.Bands[band]
	before, after := b[:k].Len(), b[k+1:].Len()
	for _, x := range l.Laid {
		for _, s := range x.starts {
			if s.Band == band && (s.Far && x.Lap > after+geom.Eps || !s.Far && x.Lap > before+geom.Eps) {
				return false
			}
		}
	}
	return true
}

// want is what a shape is asked for: an item at a joint, on a face or "" for
// the first that is free, the kth of n there.
type want struct {
	joint *framing.Joint
	item  *hardware.Item
	face  plan.Face
	k, n  int
	to    plan.Role // the member that its lower end is meant for, "" = the next below
	other bool      // on the second of two sides that are free
	onTop bool      // over a break that its face does not reach: no face that does is free
}

func (w want) wide() float64 { return w.item.Across() }

// on returns w on another face.
func (w want) on(face plan.Face) want {
	w.face = face
	return w
}

// plate returns a stretch of w's steel on a face of normal n from a to b.
func (w want) plate(n, a, b geom.Vec3) geom.Plate {
	return geom.Plate{A: a, B: b, N: n, Width: w.wide(), Thickness: w.item.Thickness}
}

// whole fills in what follows from the rest of a lie, and tells what it lacks.
func (w want) whole(l Lie) (Lie, *plan.Diagnostic) {
	if l.tied == [2]int{} && len(l.Laid) > 1 {
		l.tied[1] = 1
	}
	t := l.ties()
	at := w.item.On(t[0].Member, t[1].Member)
	if len(l.Laid) < 2 {
		at = make([]int, len(at))
	}
	for _, i := range at {
		on := l.Laid[l.tied[i]]
		e := EndAt{Laid: l.tied[i], Starts: on.starts}
		if on.of > len(on.starts) {
			e.Of = on.of
		}
		l.Ends = append(l.Ends, e)
	}
	l.Z0, l.Z1 = l.heights()
	if what := w.lacks(&l); what != "" {
		return l, &plan.Diagnostic{
			Code: "no-way-to-lie", Summary: "a " + string(w.item.Kind.Name) + " has " + what + " at this " + string(w.joint.Kind) + " joint",
			Mend: "leave the joint out with except, or use an item of another kind there",
		}
	}
	return l, nil
}

// lacks says what a lie misses that its kind needs, or "".
func (w want) lacks(l *Lie) string {
	k := w.item.Kind
	rod := k.Shape == hardware.Rod
	switch {
	case l.Face == "":
		return "no face to lie on"
	case len(l.Laid) == 0 || l.Laid[0].Member == nil:
		return "no member to be fastened to"
	case (rod || w.item.Bodies > 0) && l.Rod == nil:
		return "no line for its rod"
	case !rod && len(l.plates()) == 0:
		return "no place for its steel"
	case (k.Strap || k.Shape == hardware.Pair) && len(l.Laid) < 2:
		return "nothing for its second end to be fastened to"
	case len(l.Path) == 0:
		return "no line in space"
	}
	for _, x := range l.Laid {
		if x.Member == nil {
			return "nothing for its second end to be fastened to"
		}
	}
	for _, e := range l.Ends {
		if len(e.Starts) == 0 && !rod {
			return "no steel for one of its ends"
		}
	}
	return ""
}

// heights returns the heights between which the piece lies.
func (l *Lie) heights() (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, p := range l.plates() {
		a, b := heights(p)
		lo, hi = min(lo, a), max(hi, b)
	}
	for _, q := range l.Path {
		lo, hi = min(lo, q.Z), max(hi, q.Z)
	}
	return lo, hi
}

// lap is one end of a band that lies on a member.
type lap struct {
	m   *framing.Member
	len float64 // in
	far bool    // at the band's last point
}

// strap gives a lie its band, with a lap at each end: held is that on the
// member held down.
func (x *placer) strap(l Lie, b geom.Band, held, other lap) Lie {
	l.Bands = append(l.Bands, b)
	for _, g := range []lap{held, other} {
		l.Laid = append(l.Laid, Laid{Member: g.m, Lap: g.len, Room: x.roomUnder(b, g), starts: []Start{{len(l.Bands) - 1, g.far}}})
	}
	if l.Path == nil {
		l.Path = middle(b)
	}
	return l
}

// roomUnder returns how far wood goes on under a lap, from where it begins.
func (w *world) roomUnder(b geom.Band, g lap) float64 {
	if !g.far {
		b = b.Turned()
	}
	if g.m == nil || len(b) == 0 {
		return 0
	}
	return w.room(g.m, w.through(g.m, b), b.Len()-max(g.len, 0))
}

// through returns a band as it would lie on a girder without the packing under it.
func (w *world) through(m *framing.Member, b geom.Band) geom.Band {
	if m.Role != plan.GirderBeam || len(w.packing) == 0 {
		return b
	}
	last := b[len(b)-1]
	for _, p := range w.packing {
		thick := p.Section.Breadth
		lo, hi := p.Bounds()
		at := last.B.Sub(last.N.Unit().Mul(thick / 2))
		if at.X < lo.X-touch || at.Y < lo.Y-touch || at.Z < lo.Z-touch || at.X > hi.X+touch || at.Y > hi.Y+touch || at.Z > hi.Z+touch {
			continue
		}
		out := make(geom.Band, len(b))
		for i, x := range b {
			in := x.N.Unit().Mul(-thick)
			x.A, x.B = x.A.Add(in), x.B.Add(in)
			out[i] = x
		}
		return out
	}
	return b
}

// middle returns the middle line of a band, without doubled points.
func middle(b geom.Band) (out []geom.Vec3) {
	for _, p := range b {
		if len(out) == 0 || out[len(out)-1].Sub(p.A).Len() > geom.Eps {
			out = append(out, p.A)
		}
		out = append(out, p.B)
	}
	return out
}

// tryTop lays a piece whose break is covered at its top back over it, where that
// is clear, and says so.
func (x *placer) tryTop(p *Piece) {
	w := want{joint: p.Joint, item: p.Item, face: plan.Top, n: 1, onTop: true, to: p.to()}
	lie, fault := x.shape(w)
	if fault != nil {
		return
	}
	lie.Moved = fmt.Sprintf("it does not reach the %s that breaks here: other pieces take the faces that do", p.Joint.First().Role)
	q := *p
	q.Lie = lie
	if x.clear(p, q.nailed()) && x.lies(&q) {
		p.Lie = lie
	}
}
