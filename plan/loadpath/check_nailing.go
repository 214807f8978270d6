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
	steps map[*framing.Member]int // nailed ties to the nearest member that hands on without nails
	load  map[*framing.Member]float64
	from  map[*framing.Member][]string // what load is made of
	down  map[*framing.Member][]nailTie
	at    map[*framing.Joint][]*framing.Member // what the pieces of a joint hold
}

// nailFlow finds the members that nails alone keep from flying, beside the ties
// of steel, and what comes on each.
func (a *analysis) nailFlow(steel []lift.Tie) *nailFlow {
	ties := a.nailTies()
	f := &nailFlow{
		a: a, steel: lift.New(a.house.Members, steel), both: lift.New(a.house.Members, append(slices.Clone(steel), nailEdges(ties)...)),
		steps: map[*framing.Member]int{}, load: map[*framing.Member]float64{}, from: map[*framing.Member][]string{}, down: map[*framing.Member][]nailTie{}, at: map[*framing.Joint][]*framing.Member{},
	}
	f.count(ties)
	for _, t := range ties {
		f.join(t.spot.Side, t.spot.Main, t)
		f.join(t.spot.Main, t.spot.Side, t)
	}
	f.loads()
	return f
}

// hangs tells whether no steel leads on from a member, or none that gets to
// the ground where nails do.
func (f *nailFlow) hangs(m *framing.Member) bool {
	return !f.steel.Held(m) && (f.steel.Ends(m) || f.both.Held(m))
}

// join lets m hand its load to n by a tie when that leads nearer to what needs
// no nails.
func (f *nailFlow) join(m, n *framing.Member, t nailTie) {
	to, known := f.steps[n]
	if from, ok := f.steps[m]; known && ok && to < from && f.both.Leads(m, n) {
		f.down[m] = append(f.down[m], t)
	}
}

// count finds how many nailed ties each member is from one that hands on
// without: by steel, or not at all.
func (f *nailFlow) count(ties []nailTie) {
	over, leads := map[*framing.Member][]*framing.Member{}, map[*framing.Member]bool{}
	for _, t := range ties {
		for _, p := range [][2]*framing.Member{{t.spot.Side, t.spot.Main}, {t.spot.Main, t.spot.Side}} {
			if f.both.Leads(p[0], p[1]) {
				over[p[1]], leads[p[0]] = append(over[p[1]], p[0]), true
			}
		}
	}
	var next []*framing.Member
	for _, m := range f.a.house.Members {
		if !f.hangs(m) || !leads[m] {
			f.steps[m], next = 0, append(next, m)
		}
	}
	for ; len(next) > 0; next = next[1:] {
		for _, o := range over[next[0]] {
			if _, ok := f.steps[o]; !ok {
				f.steps[o] = f.steps[next[0]] + 1
				next = append(next, o)
			}
		}
	}
}

// loads brings what pieces tie to each hanging member, and hands it on from
// tie to tie.
func (f *nailFlow) loads() {
	for _, b := range f.a.steel.Bodies {
		j, held := b.Piece.Joint, lift.MembersOf(b.Ties())
		m := f.ends(held)
		if m != nil && !slices.Contains(f.at[j], m) && f.a.peaks[j] != nil { // once, however many pieces
			f.bring(m, math.Max(0, f.a.peaks[j].demand), "uplift of %s by %s, in its own worst case", j.ID, b.Piece.Item.Mark)
		}
		f.at[j] = append(f.at[j], held...)
	}
	known, order := f.known(), f.hanging()
	slices.SortStableFunc(order, func(a, b *framing.Member) int { return f.steps[b] - f.steps[a] })
	for _, m := range order {
		f.atLeast(m, known[m])
		sum := f.capacity(m)
		for _, t := range f.down[m] {
			n := t.spot.Main
			if n == m {
				n = t.spot.Side
			}
			f.bring(n, f.load[m]*t.lb/sum, "from the %s %s by %s, %.3f of its uplift", m.Role, m.ID, t.by(), t.lb/sum)
		}
	}
}

// ends returns the member of a piece at which its force ends: the lowest, if
// it hangs on nails; nil where steel goes on with it.
func (f *nailFlow) ends(held []*framing.Member) *framing.Member {
	if len(held) < 2 {
		return nil
	}
	low := slices.MinFunc(held, func(a, b *framing.Member) int { return cmpFloat(lift.Rank(a), lift.Rank(b)) })
	if !f.hangs(low) {
		return nil
	}
	return low
}

// hanging lists the members that hand their load on through nails, in the
// order of the house.
func (f *nailFlow) hanging() (out []*framing.Member) {
	for _, m := range f.a.house.Members {
		if len(f.down[m]) > 0 {
			out = append(out, m)
		}
	}
	return out
}

// used returns the ties by which members hand their load on.
func (f *nailFlow) used() (out []nailTie) {
	for _, m := range f.hanging() {
		out = append(out, f.down[m]...)
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
	f := a.flow
	for _, m := range f.hanging() {
		if f.load[m] > least {
			out = append(out, f.link(c, m, f.load[m]))
		}
	}
	return out
}

// known returns, for each member that would end at a gap without nails, the
// largest uplift known of one thing that ends there, as the lift test gives it,
// lb ASD: no less is asked of its nails. Where the gap itself has none, those
// over it that have some are asked for it.
func (f *nailFlow) known() map[*framing.Member]float64 {
	out := map[*framing.Member]float64{}
	for _, gap := range f.steel.Gaps(f.a.lifted()) {
		largest := 0.0
		for _, x := range append([]*framing.Member{gap.Member}, gap.Above...) {
			for _, j := range f.a.byFirst[x] {
				if p := f.a.peaks[j]; p != nil {
					largest = math.Max(largest, p.demand)
				}
			}
		}
		takes := []*framing.Member{gap.Member}
		if len(f.down[gap.Member]) == 0 {
			takes = gap.Above
		}
		for _, x := range takes {
			if len(f.down[x]) > 0 {
				out[x] = math.Max(out[x], largest)
			}
		}
	}
	return out
}

// link is the link of a member that hangs on nails.
func (f *nailFlow) link(c *Check, m *framing.Member, load float64) *Link {
	first := f.down[m][0]
	l := &Link{
		Check: c, ID: f.idOf(m), Wall: m.Wall, Unit: "lb", Demand: load, Strength: load / ASD.W, Case: "each joint in its own worst case",
		Host: "floor", Where: fmt.Sprintf("the %s %s", m.Role, m.ID),
	}
	if m.Wall != nil {
		l.Host = "wall " + m.Wall.Name
	}
	l.Terms = []Term{{"uplift that pieces and nails bring to it, or the largest known of what hangs on it, ASD", load, "lb"}}
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
