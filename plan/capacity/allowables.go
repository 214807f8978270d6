package capacity

import (
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/timber"
)

// Context is what the pieces of a house are fastened to.
type Context struct {
	Species timber.Species // of the framing
	Pile    plan.Lumber    // section of the piles; zero when the plan gives none
}

// Allowables answers what the pieces of a placement hold. It is worked out
// once and then only read.
type Allowables struct {
	placed  *placement.Placement
	species timber.Species
	pile    plan.Lumber
	worked  map[key]Capacity // of pieces alike
}

// New works out what each piece of a placement holds.
func New(placed *placement.Placement, c Context) *Allowables {
	a := &Allowables{placed: placed, species: c.Species, pile: c.Pile, worked: map[key]Capacity{}}
	for _, p := range placed.Pieces {
		for _, dir := range []Direction{Upward, Endways} {
			k := keyOf(p, dir)
			if _, ok := a.worked[k]; !ok {
				c := a.piece(p, dir)
				c.Terms = slices.Clip(c.Terms)
				a.worked[k] = c
			}
		}
	}
	return a
}

// At returns the capacity of the pieces at a joint: pieces of one mark add
// up, of different marks the best counts, for they do not take load together.
// It is nil when there is no piece.
func (a *Allowables) At(j *framing.Joint, dir Direction) *Capacity {
	return a.Of(j, dir, func(*placement.Piece) bool { return true })
}

// Of is At for the pieces that use allows.
func (a *Allowables) Of(j *framing.Joint, dir Direction, use func(*placement.Piece) bool) *Capacity {
	var best *Capacity
	seen := map[string]bool{}
	for _, p := range a.placed.At(j) {
		mark := p.Item.Mark
		if seen[mark] || !use(p) || !holdsMember(p, j) {
			continue
		}
		seen[mark] = true
		c := a.times(p, dir, a.count(j, mark))
		if best == nil || best.Unknown != "" && c.Unknown == "" || c.Unknown == best.Unknown && c.Value > best.Value {
			best = &c
		}
	}
	return best
}

// count returns the pieces of a mark at a joint.
func (a *Allowables) count(j *framing.Joint, mark string) (n int) {
	for _, q := range a.placed.At(j) {
		if q.Item.Mark == mark {
			n++
		}
	}
	return n
}

// times returns the capacity of n pieces like p.
func (a *Allowables) times(p *placement.Piece, dir Direction, n int) Capacity {
	c := a.One(p, dir)
	if n > 1 && c.Unknown == "" {
		c.Terms = append(c.Terms, Term{plan.Counted(n, "piece"), c.Value * float64(n), "lb"})
		c.Value *= float64(n)
	}
	c.Pieces = n
	return c
}

// holdsMember tells whether a piece holds the member that the joint is about:
// a bolt at the foot of a stud holds the plate under it, and the stud only
// through whatever ties it to that plate.
func holdsMember(p *placement.Piece, j *framing.Joint) bool {
	return p.Item.Kind.Shape != hardware.Rod || j.Kind != plan.StudBase && j.Kind != plan.WallEnd
}

// key is all that the capacity of a piece depends on.
type key struct {
	item   *hardware.Item
	wood   float64
	panel  float64 // sheathing between steel and wood
	across bool    // a bolt across girder and pile, or a post's foot
	girder float64 // what such a bolt passes in the girder, in
	dir    Direction
}

func keyOf(p *placement.Piece, dir Direction) key {
	k := key{item: p.Item, wood: wood(p), panel: panel(p), across: crosses(p.Joint), dir: dir}
	if k.across {
		k.girder = girder(p)
	}
	return k
}

// crosses tells whether a bolt at a joint goes across girder and pile, or a
// post's foot.
func crosses(j *framing.Joint) bool {
	return j.Kind == plan.GirderPile || j.Kind == plan.PostBase
}

// One returns the capacity of one piece of the placement.
func (a *Allowables) One(p *placement.Piece, dir Direction) Capacity {
	c, ok := a.worked[keyOf(p, dir)]
	if !ok {
		c = a.piece(p, dir)
	}
	c.Pieces, c.Mark = 1, p.Item.Mark
	return c
}
