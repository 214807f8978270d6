package loadpath_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/lift"
	"galewright/plan/loadpath"
	"galewright/plan/placement"
	"galewright/plan/steel"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// laid places the hardware of an example.
func laid(t *testing.T, example string) *placement.Placement {
	w := loadpath.WorkOut(example+".toml", string(loadpath.Source(t, example+".toml")))
	require.False(t, w.Faults.Errors(), "%v", w.Faults)
	return w.Placed
}

// fault is something wrong with one piece: the body as it is then.
type fault struct {
	what string
	body *steel.Body
}

// faultsOf plants every fault in a piece: all of it gone, one end's fasteners
// gone, a nut gone, the rod cut shorter by a foot, its faces turned.
func faultsOf(h *framing.House, b *steel.Body) (out []fault) {
	tag := b.Piece.Tag
	out = append(out, fault{tag + " gone", &steel.Body{Piece: b.Piece}})
	for end := range b.Piece.Item.Ends() {
		less := *b
		less.Fasteners = slices.DeleteFunc(slices.Clone(b.Fasteners), func(f steel.Fastener) bool { return f.End == end })
		out = append(out, fault{fmt.Sprintf("%s without the fasteners of end %d", tag, end), &less})
	}
	for i, r := range b.Rods {
		for end := range r.Ends {
			rod, less := *r, *b
			rod.Ends[end] = steel.Bearing{Kind: steel.Nothing, At: rod.Ends[end].At}
			less.Rods = slices.Clone(b.Rods)
			less.Rods[i] = &rod
			out = append(out, fault{fmt.Sprintf("%s without nut %d", tag, end), &less})
		}
	}
	if p := b.Piece; p.Rod != nil {
		short := *p
		short.Rod = &placement.Axis{A: p.Rod.A, B: p.Rod.B.Add(p.Rod.A.Sub(p.Rod.B).Unit().Mul(min(12, p.Rod.A.Sub(p.Rod.B).Len()-1)))}
		out = append(out, fault{tag + " cut short", steel.New(placement.Of(h, &short)).Bodies[0]})
	}
	turned := *b.Piece
	turned.Bands = nil
	for _, band := range b.Piece.Bands {
		var other geom.Band
		for _, x := range band {
			x.N = x.N.Mul(-1)
			other = append(other, x)
		}
		turned.Bands = append(turned.Bands, other)
	}
	if len(turned.Bands) > 0 {
		out = append(out, fault{tag + " turned", steel.New(placement.Of(h, &turned)).Bodies[0]})
	}
	return out
}

// unheld returns what of the lifted no way of ties that never climbs holds to
// the ground, by going over all ties until nothing is new.
func unheld(lifted []*framing.Member, ties []lift.Tie) map[*framing.Member]bool {
	held := map[*framing.Member]bool{}
	for before := -1; before != len(held); {
		before = len(held)
		for _, x := range ties {
			switch {
			case x.B == nil:
				held[x.A] = true
			case held[x.B] && lift.Rank(x.B) <= lift.Rank(x.A)+0.5:
				held[x.A] = true
			case held[x.A] && lift.Rank(x.A) <= lift.Rank(x.B)+0.5:
				held[x.B] = true
			}
		}
	}
	out := map[*framing.Member]bool{}
	for _, m := range lifted {
		if !held[m] {
			out[m] = true
		}
	}
	return out
}

// ending returns all whose uplift ends at the gaps.
func ending(gaps []lift.Gap, lifted []*framing.Member) map[*framing.Member]bool {
	out := map[*framing.Member]bool{}
	for _, g := range gaps {
		for _, m := range append([]*framing.Member{g.Member}, g.Above...) {
			if slices.Contains(lifted, m) {
				out[m] = true
			}
		}
	}
	return out
}

// ids names the members of gaps.
func ids(gaps []lift.Gap) (out []string) {
	for _, g := range gaps {
		out = append(out, g.Member.ID)
	}
	return out
}

// A fault planted in a piece opens exactly what hung on it, there: what no way
// of ties holds to the ground ends at a gap, a gap that comes is at one of the
// piece's own members or at one nailed to them, and where another way still holds all, none comes. In a
// chain that is open below, the force ends higher up: at the piece too. What
// goes on by another way to a gap that was there before ends there: the piece's
// own joint tells of it (TestAPieceLeavesAGapAtItsOwnJoint).
// Pieces are drawn at random, the same at every run.
func TestPlantedFaultsAreFoundAndNothingElse(t *testing.T) {
	for _, name := range []string{"shed", "marsh-wren", "curlew-row", "sanderling", "dunlin", "turnstone"} {
		t.Run(name, func(t *testing.T) {
			p := laid(t, name)
			report := reported(t, name+".toml", "")
			base := report.Lift()
			s := steel.New(p)
			others := slices.DeleteFunc(slices.Clone(base.Ties), func(x lift.Tie) bool { return s.Placed.Piece(x.By) != nil })
			was := unheld(base.Lifted, base.Ties)
			draw, opened := rand.New(rand.NewPCG(7, 7)), 0
			for range 60 {
				i := draw.IntN(len(s.Bodies))
				for _, f := range faultsOf(p.House, s.Bodies[i]) {
					ties := slices.Clone(others)
					for k, b := range s.Bodies {
						if k == i {
							b = f.body
						}
						ties = append(ties, b.Ties()...)
					}
					if planted(t, p.House, base, f, ties, others, was) {
						opened++
					}
				}
			}
			require.Positive(t, opened, "some fault opens a chain")
			t.Logf("%d faults opened a chain", opened)
		})
	}
}

// planted holds the lift test to a fault and tells whether it opened a chain;
// nails are the ties that no piece makes.
func planted(t *testing.T, h *framing.House, base *loadpath.LiftTest, f fault, ties, nails []lift.Tie, was map[*framing.Member]bool) bool {
	now := unheld(base.Lifted, ties)
	gaps := lift.New(h.Members, ties).Gaps(base.Lifted)
	assert.Equal(t, now, ending(gaps, base.Lifted), "%s: all that is held no longer ends at a gap, and nothing else", f.what)
	own := nailedTo(slices.Concat(f.body.Piece.Joint.Members, f.body.Piece.Members()), nails, func(*framing.Member) bool { return true })
	own = nailedTo(own, nails, func(m *framing.Member) bool { return m.Role == plan.Jack }) // a second jack is nailed to the first
	opened := false
	for _, g := range gaps {
		if !slices.Contains(ids(base.Gaps), g.Member.ID) {
			assert.Contains(t, own, g.Member, "%s: the gap at %s is at the piece", f.what, g.Member.ID)
			opened = true
		}
	}
	return opened || len(now) > len(was)
}

// nailedTo adds to members what of a sort is nailed to them and hangs on them with
// them.
func nailedTo(own []*framing.Member, nails []lift.Tie, sort func(*framing.Member) bool) []*framing.Member {
	var hung []*framing.Member
	for _, x := range nails {
		if a, b := slices.Contains(own, x.A), slices.Contains(own, x.B); a && !b && sort(x.B) || b && !a && sort(x.A) {
			hung = append(hung, x.A, x.B)
		}
	}
	return append(own, hung...)
}

// A piece that is all there is at a joint with a demand leaves a gap at that
// joint when it is taken away; nothing elsewhere comes but what the lift test
// finds at its members, and what it finds at the segment whose end it held. Where the plan orders nails that hold there too, as in
// the lap of two plates, they are what is left; of a bolt through a sill plate the bolts beside it take the share.
func TestAPieceLeavesAGapAtItsOwnJoint(t *testing.T) {
	for name, n := range map[string]int{"shed": 6, "marsh-wren": 6, "dunlin": 4, "turnstone": 4, "sanderling": 4, "curlew-row": 6} {
		t.Run(name, func(t *testing.T) {
			p := laid(t, name)
			whole := reported(t, name+".toml", "")
			before := gapSet(whole)
			draw := rand.New(rand.NewPCG(3, 3))
			for tried := 0; tried < n; {
				q := p.Pieces[draw.IntN(len(p.Pieces))]
				if len(p.At(q.Joint)) != 1 || !asks(whole, q.Joint) {
					continue
				}
				tried++
				rest := slices.DeleteFunc(slices.Clone(p.Pieces), func(x *placement.Piece) bool { return x == q })
				fewer := placement.Of(p.House, rest...)
				fewer.Catalog = p.Catalog
				report, _ := loadpath.Run(fewer)
				after := gapSet(report)
				found := false
				for _, l := range whole.Joint(q.Joint.ID) {
					found = found || after[l.Check.ID+" "+l.ID]
				}
				for _, l := range report.Joint(q.Joint.ID) { // ordered nails hold in its place
					found = found || l.Capacity != nil && l.Capacity.Source == "ordered nailing"
				}
				if q.Joint.Kind == plan.SillFoundation { // the plate's other bolts take its share
					found = found || sillAsksMore(report, whole, q.Joint.Wall)
				}
				assert.True(t, found, "%s taken away", q.Tag)
				for id := range after {
					check, _, _ := strings.Cut(id, " ")
					end := q.Joint.Kind == plan.WallEnd && strings.HasPrefix(id, "twist "+q.Joint.Wall.Name+"/") // the segment that the end is of
					assert.True(t, before[id] || check == "lift" || end || strings.Contains(id, q.Joint.ID), "%s taken away, and %s opened", q.Tag, id)
				}
			}
		})
	}
}

// sillAsksMore tells whether some bolt of a wall's bottom plate has more to hold in one
// report than in another.
func sillAsksMore(now, before *loadpath.Report, w *plan.Wall) bool {
	was := map[string]float64{}
	for _, l := range before.Links {
		if l.Check.ID == "sill-anchors" && l.Wall == w {
			was[l.ID] = l.Demand
		}
	}
	return slices.ContainsFunc(now.Links, func(l *loadpath.Link) bool {
		old, ok := was[l.ID]
		return ok && l.Check.ID == "sill-anchors" && l.Wall == w && l.Demand > old+0.01
	})
}

// asks tells whether a load check asks for something at a joint and has it.
func asks(r *loadpath.Report, j *framing.Joint) bool {
	return slices.ContainsFunc(r.Joint(j.ID), func(l *loadpath.Link) bool { return l.Joint == j && l.Demand > 1 && l.Gap == "" })
}

func gapSet(r *loadpath.Report) map[string]bool {
	out := map[string]bool{}
	for _, l := range r.Links {
		if l.Gap != "" {
			out[l.Check.ID+" "+l.ID] = true
		}
	}
	return out
}
