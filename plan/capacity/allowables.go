package capacity

import (
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/steel"
	"galewright/plan/timber"
	"galewright/plan/units"
)

// Context is what the pieces of a house are fastened to.
type Context struct {
	Species timber.Species // of the framing
	Pile    plan.Lumber    // section of the piles; zero when the plan gives none
	Wet     Damp           // members taken as wet; nil = those of plan.WetRoles
	Units   units.System   // of the terms' words
}

// Allowables answers what the pieces of a placement hold. It is worked out
// once and then only read.
type Allowables struct {
	placed  *placement.Placement
	steel   *steel.Steel
	fasten  Fastening
	species timber.Species
	pile    plan.Lumber
	units   units.System
	worked  map[key]Capacity                 // of pieces alike, by the catalog
	bodied  map[*placement.Piece][2]Capacity // of each where it is
}

// New works out what each piece holds, and that no more than its body does
// where it is.
func New(bodies *steel.Steel, c Context) *Allowables {
	a := &Allowables{
		placed: bodies.Placed, steel: bodies, species: c.Species, pile: c.Pile, units: c.Units, worked: map[key]Capacity{},
		fasten: Fastening{Species: c.Species, Wet: c.Wet, Units: c.Units, singles: map[lone]single{}}, bodied: make(map[*placement.Piece][2]Capacity, len(bodies.Bodies)),
	}
	for _, p := range bodies.Placed.Pieces {
		var both [2]Capacity
		for _, dir := range []Direction{Upward, Endways} {
			k := a.keyOf(p, dir)
			if _, ok := a.worked[k]; !ok {
				c := a.piece(p, dir)
				c.Terms = slices.Clip(c.Terms)
				a.worked[k] = c
			}
			both[dir] = a.where(p, a.worked[k], dir)
		}
		a.bodied[p] = both
	}
	return a
}

// At returns the capacity of the pieces at a joint: pieces of one mark add
// up, of different marks the best counts, for they do not take load together.
// It is nil when there is no piece.
func (a *Allowables) At(j *framing.Joint, dir Direction) *Capacity {
	return a.Of(j, dir, func(*placement.Piece) bool { return true })
}

// Held is what the fasteners of a body hold of one member against a force along
// the direction, unit.
func (a *Allowables) Held(b *steel.Body, m *framing.Member, force geom.Vec3) Held {
	return Fastening{Species: a.fasten.Species, Wet: a.fasten.Wet, Units: a.units}.Of(b, m, force)
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
		c := a.sum(j, mark, dir)
		if best == nil || best.Unknown != "" && c.Unknown == "" || c.Unknown == best.Unknown && c.Value > best.Value {
			best = &c
		}
	}
	return best
}

// sum returns the capacity of all pieces of a mark at a joint, each as it is;
// terms and what governs are those of the weakest that holds anything.
func (a *Allowables) sum(j *framing.Joint, mark string, dir Direction) Capacity {
	var all Capacity
	n, total := 0, 0.0
	var none []Term
	for _, q := range a.placed.At(j) {
		if q.Item.Mark != mark {
			continue
		}
		c := a.One(q, dir)
		if c.Unknown != "" {
			none = append(none, Term{q.Tag + " holds nothing: " + c.Unknown, 0, "lb"})
		}
		if n == 0 || all.Unknown != "" || c.Unknown == "" && c.Value < all.Value {
			all = c
		}
		n++
		total += c.Value
	}
	all.Pieces = n
	if n > 1 && total > 0 {
		all.Terms = append(append(slices.Clip(all.Terms), none...), Term{plan.Counted(n, "piece"), total, "lb"})
		all.Value, all.Unknown = total, ""
	}
	return all
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
	bolt   crossed // what such a bolt goes through
	dir    Direction
}

func (a *Allowables) keyOf(p *placement.Piece, dir Direction) key {
	k := key{item: p.Item, wood: behindSteel(p), panel: a.panel(p), across: crosses(p.Joint), dir: dir}
	if k.across {
		k.bolt = a.crossing(p)
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
	both, ok := a.bodied[p]
	c := both[dir]
	if !ok {
		c = a.piece(p, dir)
	}
	c.Pieces, c.Mark = 1, p.Item.Mark
	return c
}
