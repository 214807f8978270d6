package loadpath

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/lift"
	"galewright/plan/nailing"
)

// nailingCheck is the ID of the check of nails that hold uplift.
const nailingCheck = "nailing-uplift"

// nailTie is ordered nailing that holds one member to another against uplift.
type nailTie struct {
	line *nailing.Line
	spot *nailing.Spot
	lb   float64 // all its nails, ASD
	how  string  // one nail's value
}

// by names the tie: "N4 jack to king".
func (t nailTie) by() string { return t.line.Mark() + " " + t.line.Row.One }

// nailTies returns the nailing that holds uplift; what the plan does not order
// is not among it.
func (a *analysis) nailTies() (out []nailTie) {
	for _, l := range a.nails.Lines {
		for _, s := range l.Spots {
			if one, how := l.Uplift(s, a.species); one > 0 && s.Side != s.Main {
				out = append(out, nailTie{l, s, one * float64(s.Nails(l.Order)), how})
			}
		}
	}
	return out
}

// nailEdges are the ties as the lift test takes them.
func nailEdges(ties []nailTie) (out []lift.Tie) {
	for _, t := range ties {
		out = append(out, lift.Tie{A: t.spot.Side, B: t.spot.Main, By: t.by()})
	}
	return out
}

// nailFlow is how uplift goes on through nails where no steel takes it.
type nailFlow struct {
	a     *analysis
	steel *lift.Graph // without nails
	both  *lift.Graph
	steps map[*framing.Member]int // ties to the nearest member that steel holds
	load  map[*framing.Member]float64
	down  map[*framing.Member][]nailTie
}

// nailFlow finds the members that nails alone keep from flying, and what comes
// on each.
func (a *analysis) nailFlow() *nailFlow {
	ties, steel := a.nailTies(), a.steel.Ties()
	f := &nailFlow{a: a, steel: lift.New(a.house.Members, steel), both: lift.New(a.house.Members, append(slices.Clone(steel), nailEdges(ties)...))}
	f.count(append(slices.Clone(steel), nailEdges(ties)...))
	f.down = map[*framing.Member][]nailTie{}
	for _, t := range ties {
		f.join(t.spot.Side, t.spot.Main, t)
		f.join(t.spot.Main, t.spot.Side, t)
	}
	f.loads()
	return f
}

// hangs tells whether nails alone hold a member to the ground.
func (f *nailFlow) hangs(m *framing.Member) bool { return f.both.Held(m) && !f.steel.Held(m) }

// join lets m hand its load to n by a tie when that leads nearer to what steel
// holds.
func (f *nailFlow) join(m, n *framing.Member, t nailTie) {
	if f.hangs(m) && f.both.Held(n) && f.both.Leads(m, n) && f.steps[n] < f.steps[m] {
		f.down[m] = append(f.down[m], t)
	}
}

// count finds how many ties each member is from one that steel holds.
func (f *nailFlow) count(ties []lift.Tie) {
	over := map[*framing.Member][]*framing.Member{}
	for _, t := range ties {
		if t.A == nil || t.B == nil {
			continue
		}
		for _, p := range [][2]*framing.Member{{t.A, t.B}, {t.B, t.A}} {
			if f.both.Leads(p[0], p[1]) {
				over[p[1]] = append(over[p[1]], p[0])
			}
		}
	}
	f.steps = map[*framing.Member]int{}
	var next []*framing.Member
	for _, m := range f.a.house.Members {
		if f.steel.Held(m) {
			f.steps[m], next = 0, append(next, m)
		}
	}
	for len(next) > 0 {
		m := next[0]
		next = next[1:]
		for _, o := range over[m] {
			if _, ok := f.steps[o]; !ok {
				f.steps[o] = f.steps[m] + 1
				next = append(next, o)
			}
		}
	}
}

// loads brings what pieces tie to each hanging member, and hands it on from
// tie to tie.
func (f *nailFlow) loads() {
	f.load = map[*framing.Member]float64{}
	for _, b := range f.a.steel.Bodies {
		if m := f.ends(lift.MembersOf(b.Ties())); m != nil {
			if p := f.a.peaks[b.Piece.Joint]; p != nil {
				f.load[m] += math.Max(0, p.demand) / float64(max(1, len(f.a.placed.At(b.Piece.Joint))))
			}
		}
	}
	order := f.hanging()
	slices.SortStableFunc(order, func(a, b *framing.Member) int { return f.steps[b] - f.steps[a] })
	for _, m := range order {
		sum := f.capacity(m)
		for _, t := range f.down[m] {
			n := t.spot.Main
			if n == m {
				n = t.spot.Side
			}
			f.load[n] += f.load[m] * t.lb / sum
		}
	}
}

// ends returns the member of a piece at which its force ends: the lowest, if
// it hangs on nails; nil where steel goes on with it.
func (f *nailFlow) ends(held []*framing.Member) (low *framing.Member) {
	for _, m := range held {
		if f.steel.Held(m) {
			return nil
		}
		if low == nil || lift.Rank(m) < lift.Rank(low) {
			low = m
		}
	}
	if len(held) < 2 || !f.hangs(low) {
		return nil
	}
	return low
}

// hanging lists the members that nails alone hold, in the order of the house.
func (f *nailFlow) hanging() (out []*framing.Member) {
	for _, m := range f.a.house.Members {
		if f.hangs(m) && len(f.down[m]) > 0 {
			out = append(out, m)
		}
	}
	return out
}

// capacity adds up the nails by which a member hands its load on, lb.
func (f *nailFlow) capacity(m *framing.Member) (lb float64) {
	for _, t := range f.down[m] {
		lb += t.lb
	}
	return lb
}

// nailUplift checks each member that hangs on nails alone.
func nailUplift(c *Check, a *analysis) (out []*Link) {
	f := a.nailFlow()
	floor := f.known()
	for _, m := range f.hanging() {
		load := math.Max(f.load[m], floor[m])
		if load <= least {
			continue
		}
		out = append(out, f.link(c, m, load))
	}
	return out
}

// known returns, for each member at which the lift test would see a gap
// without nails, the largest uplift known of what ends there, lb ASD: no less
// is asked of its nails.
func (f *nailFlow) known() map[*framing.Member]float64 {
	out := map[*framing.Member]float64{}
	for _, gap := range f.steel.Gaps(f.a.lifted()) {
		for _, x := range append([]*framing.Member{gap.Member}, gap.Above...) {
			for _, j := range f.a.byFirst[x] {
				if p := f.a.peaks[j]; p != nil && f.touches(j, gap.Member) {
					out[gap.Member] = math.Max(out[gap.Member], p.demand)
				}
			}
		}
	}
	return out
}

// touches tells whether a piece at a joint holds a member.
func (f *nailFlow) touches(j *framing.Joint, m *framing.Member) bool {
	for _, b := range f.a.steel.Bodies {
		if b.Piece.Joint == j && slices.Contains(lift.MembersOf(b.Ties()), m) {
			return true
		}
	}
	return false
}

// link is the link of a member that hangs on nails.
func (f *nailFlow) link(c *Check, m *framing.Member, load float64) *Link {
	first := f.down[m][0]
	l := &Link{
		Check: c, ID: m.ID + ", " + first.by(), Wall: m.Wall, Unit: "lb", Demand: load, Strength: load / ASD.W, Case: "each joint in its own worst case",
		Host: "floor", Where: fmt.Sprintf("the %s %s", m.Role, m.ID),
	}
	if m.Wall != nil {
		l.Host = "wall " + m.Wall.Name
	}
	l.Terms = []Term{{"uplift that pieces and nails bring to it, each joint in its own worst case, ASD", load, "lb"}}
	n := 0
	for _, t := range f.down[m] {
		n += t.spot.Nails(t.line.Order)
	}
	held := &Capacity{Value: f.capacity(m), Source: "ordered nailing", Pieces: n, Mark: first.line.Mark(), Governs: fmt.Sprintf("%s of %s, %s", plan.Counted(n, "nail"), first.line.Mark(), first.line.Row.One)}
	held.Terms = ofCapacity(
		Term{"one nail, " + first.how, first.lb / float64(first.spot.Nails(first.line.Order)), "lb"},
		Term{fmt.Sprintf("%s at %s", plan.Counted(n, "nail"), plan.Counted(len(f.down[m]), "connection")), held.Value, "lb"},
	)
	l.close(held)
	if len(f.down[m]) > 1 {
		l.Notes = append(l.Notes, "the nails are taken to share evenly along the member")
	}
	return l
}
