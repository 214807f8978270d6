package framing

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/geom"
)

// railPost is the lumber of the posts of rails, and railHigh how far they stand over the
// boards, in (common practice, no published source).
var railPost = plan.Lumber{Ply: 1, Breadth: 3.5, Depth: 3.5, Text: "4x4"}

const railHigh = 36.0

// deckLeg is the deck along one side of a porch. Places along it, s, count from the side's
// beginning as its plan writes it, and t from the outside face of the porch's beam in.
type deckLeg struct {
	*plan.PorchDeck
	p             *plan.Porch
	f             geom.Frame
	long          float64
	mirrored      bool
	before, after *deckLeg
	wall          float64 // t of the house's face
	off           float64 // sheathing behind the ledger
	lo, hi        float64 // of the ledger
	first, last   endWall // the house across its ends
	post          float64 // t of the inside face of the posts
	top, foot     float64 // of the joists, above grade
	ledger, twin  *Member // twin is the doubled joist at a corner
	girders       []*Member
}

// porchDecks adds the decks of porches, side by side: joists from a ledger on the house's
// rim to a rim over a girder that is bolted to the inside of the posts. At a corner the
// girder of the first side runs through to the post, that of the next hangs on it; past the
// corner of the house the next one's joists hang on a doubled joist of the first (common
// practice, no published source).
func (b *builder) porchDecks() {
	legs := map[*plan.Porch]*deckLeg{}
	var all []*deckLeg
	for _, p := range b.plan.Porches {
		if p.Deck == nil {
			continue
		}
		if d := b.deckAlong(p); d != nil {
			legs[p] = d
			all = append(all, d)
		}
	}
	for _, d := range all {
		before, after := b.plan.PorchCorners(d.p)
		if d.mirrored {
			before, after = after, before
		}
		d.before, d.after = legs[before], legs[after]
	}
	for _, d := range all {
		d.reach()
		d.first, d.last = b.endWall(d, d.lo, d.before), b.endWall(d, d.hi, d.after)
		b.layDeck(d)
	}
}

// deckAlong resolves the deck of one side; nil where it cannot lie, which it tells.
func (b *builder) deckAlong(p *plan.Porch) *deckLeg {
	d := &deckLeg{
		PorchDeck: p.Deck, p: p, f: geom.NewFrame(p.From, p.To), long: p.To.Sub(p.From).Len(), mirrored: b.plan.Lay.Mirrored,
		post: p.Beam.Width()/2 + p.Post.Depth/2, top: p.Deck.Top - p.Deck.Board,
	}
	d.foot = d.top - d.Joists.Depth
	fault := func(code plan.Code, what, mend string) *deckLeg {
		b.fault(plan.Diagnostic{Code: code, Pos: d.Pos, Where: "porch " + p.Name + ", deck", Summary: "the deck of porch " + p.Name + " " + what, Mend: mend})
		return nil
	}
	l := d.Level
	if l.Joists.Depth == 0 {
		return fault("deck-off-rim", "has no rim to hang its ledger on: the floor of level "+l.Name+" has no joists", "name a level with joists; a slab beside a slab is not framed here")
	}
	lo, hi := l.Floor-l.Subfloor-l.Joists.Depth, l.Floor-l.Subfloor
	if share := min(hi, d.top) - max(lo, d.foot); share < 1.5 {
		return fault("deck-off-rim", fmt.Sprintf("lies beside the rim of level %s for %s only, at %s to %s above grade and the rim at %s to %s", l.Name, b.inches(max(share, 0)), b.inches(d.foot), b.inches(d.top), b.inches(lo), b.inches(hi)),
			"set top nearer to the level's floor")
	}
	if d.foot-d.Girder.Depth < p.Base {
		return fault("deck-below-posts", fmt.Sprintf("has its girder at %s above grade, below the foot of its posts at %s", b.inches(d.foot-d.Girder.Depth), b.inches(p.Base)), "set base lower, or the deck higher")
	}
	if d.Girder.Width() < plate+minSeat-geom.Eps {
		return fault("deck-girder-narrow", fmt.Sprintf("has a girder %s wide: behind its rim its joists bear on %s", b.inches(d.Girder.Width()), b.inches(max(d.Girder.Width()-plate, 0))), "take two plies or more")
	}
	if !b.deckWall(d) {
		return fault("deck-without-wall", "has no exterior wall of level "+l.Name+" behind it", "let the porch run along a wall, from left to right as seen from outside")
	}
	return d
}

// deckWall finds the walls that a deck lies against.
func (b *builder) deckWall(d *deckLeg) bool {
	d.lo, d.hi = math.Inf(1), math.Inf(-1)
	for _, w := range b.walls {
		if !w.Exterior || !w.On(d.Level) || !geom.With(w.frame.D, d.f.D) {
			continue
		}
		a, t := d.f.Local(w.From)
		z, _ := d.f.Local(w.To)
		switch {
		case t < d.post || z < near || a > d.long-near || d.wall > 0 && t > d.wall+near:
			continue
		case d.wall == 0 || t < d.wall-near:
			d.wall, d.lo, d.hi = t, math.Inf(1), math.Inf(-1)
		}
		d.lo, d.hi = min(d.lo, a), max(d.hi, z)
		_, thick := b.plan.WallPanels(w.Wall)
		d.off = max(d.off, thick.Thick)
	}
	d.lo, d.hi = max(d.lo, 0), min(d.hi, d.long)
	if d.mirrored {
		d.lo, d.hi = d.long-d.hi, d.long-d.lo
	}
	return d.hi-d.lo > 12
}

// reach ends the ledger at the corners of the house.
func (d *deckLeg) reach() {
	if d.before != nil {
		d.lo = d.before.wall
	}
	if d.after != nil {
		d.hi = d.long - d.after.wall
	}
}

// endWall is what a wall of the house leaves of the end of a deck that it stands across, as
// at an inside corner.
type endWall struct {
	open float64 // how far in from the porch's face the end is open; infinite where no wall is
	off  float64 // the wall's sheathing
}

// endWall finds the wall of the house that stands across the end of a deck at s: of the sides
// that come from it there, which face the deck, the first counted from the porch's face.
func (b *builder) endWall(d *deckLeg, s float64, next *deckLeg) endWall {
	end := endWall{open: math.Inf(1)}
	for _, w := range b.walls {
		if next != nil || !w.Exterior || !w.On(d.Level) || !geom.Square(w.frame.D, d.f.D) {
			continue
		}
		a, t := d.f.Local(w.From)
		z, u := d.f.Local(w.To)
		if math.Abs(d.at(a)-s) > near || math.Abs(d.at(z)-s) > near || max(t, u) < d.post || min(t, u) > d.wall-near || min(t, u) > end.open {
			continue
		}
		_, panel := b.plan.WallPanels(w.Wall)
		end = endWall{open: min(t, u), off: panel.Thick}
	}
	return end
}

// at is the station of s from the porch's start where it stands.
func (d *deckLeg) at(s float64) float64 {
	if d.mirrored {
		return d.long - s
	}
	return s
}

// deckStick makes a member of a deck from s0 to s1, t0 to t1, z0 to z1, along the side or across.
func (b *builder) deckStick(d *deckLeg, role plan.Role, section plan.Lumber, s0, s1, t0, t1, z0, z1 float64) *Member {
	a, z := min(d.at(s0), d.at(s1)), max(d.at(s0), d.at(s1))
	m := b.lying(role, d.f, a, z, t0, t1, z0, z1)
	if role == plan.DeckJoist {
		m.A, m.B, m.Length = d.f.At((a+z)/2, t1, (z0+z1)/2), d.f.At((a+z)/2, t0, (z0+z1)/2), t1-t0
	}
	m.ID, m.Section, m.Level = fmt.Sprintf("%s/%s@%s", d.p.Name, role, at(a)), section, d.Level
	return b.member(m)
}

// layDeck adds the members and joints of one side.
func (b *builder) layDeck(d *deckLeg) {
	one := plan.Lumber{Ply: 1, Breadth: d.Joists.Breadth, Depth: d.Joists.Depth, Text: nominal(d.Joists.Breadth, d.Joists.Depth)}
	half := one.Breadth / 2
	face := d.wall - d.off - plate
	d.ledger = b.deckStick(d, plan.Ledger, one, d.lo+d.first.off, d.hi-d.last.off, face, d.wall-d.off, d.foot, d.top)
	b.deckGirder(d)
	first, last := d.lo+d.first.off+half, d.hi-d.last.off-half
	if d.before != nil {
		first = d.before.post + plate + half
	}
	rimFrom, rimTo := first-half, last+half
	if d.after != nil {
		rimTo, last = d.long-d.after.post, d.hi-one.Breadth
		twin := one
		twin.Ply, twin.Text = 2, "2-"+one.Text
		d.twin = b.deckStick(d, plan.DeckJoist, twin, d.hi-2*one.Breadth, d.hi, d.post+plate, face, d.foot, d.top)
		b.deckJoist(d, d.twin, d.hi-one.Breadth, face, d.ledger)
	}
	at := d.joists(first, last, half)
	for _, s := range at {
		to, on := face, d.ledger
		if s < d.lo {
			to, on = d.wall, d.before.twin
		}
		m := b.deckStick(d, plan.DeckJoist, one, s-half, s+half, d.post+plate, to, d.foot, d.top)
		b.deckJoist(d, m, s, to, on)
	}
	cuts := append(append([]float64{rimFrom}, cutsOver(at, rimFrom, rimTo, b.longest())...), rimTo)
	for i := 1; i < len(cuts); i++ {
		b.deckStick(d, plan.DeckRim, one, cuts[i-1], cuts[i], d.post, d.post+plate, d.foot, d.top)
	}
	b.railPosts(d)
}

// joists lists the places of the joists: one at each end, those between on the module from
// the corner of the house, clear of a doubled one and of the ledger's end.
func (d *deckLeg) joists(first, last, half float64) (out []float64) {
	clear := last - 2*half
	if d.after != nil {
		clear -= half
	} else {
		out = append(out, last)
	}
	if d.before == nil { // else the rim of the side before is there
		out = append(out, first)
	}
	from := math.Ceil((first + 2*half - d.lo) / d.Space)
	for k := from; ; k++ {
		s := d.lo + k*d.Space
		if s > clear {
			break
		}
		if s+half > d.lo-d.off-plate-geom.Eps && s-half < d.lo { // no ledger yet, no doubled joist any more
			s = d.lo + half
		}
		if s >= first+2*half {
			out = append(out, s)
		}
	}
	slices.Sort(out)
	d.spread(out, last)
	return out
}

// spread moves the last joist before the doubled one at a corner half way to the one before it
// where the two stand so near that their hangers have no room beside each other.
func (d *deckLeg) spread(at []float64, twin float64) {
	if n := len(at); d.after != nil && n > 1 && twin-at[n-1] < hangersApart {
		at[n-1] = (at[n-2] + twin) / 2
	}
}

// hangersApart is how near the middle lines of two joists that hang beside each other may
// stand, in: their own halves, a flange each and a finger (common practice, no published source).
const hangersApart = 7.0

// deckJoist adds the joints of a joist: hung at its inner end, over the girder at the outer.
func (b *builder) deckJoist(d *deckLeg, m *Member, s, to float64, on *Member) {
	at := d.at(s)
	b.joint(&Joint{Kind: plan.DeckHung, Host: d.p.Name, Station: at, At: d.f.At(at, to, d.foot), Members: []*Member{m, on}, Below: true, Tributary: d.Space})
	for _, g := range d.girders {
		if lo, hi := d.span(g); at >= lo-geom.Eps && at <= hi+geom.Eps {
			b.joint(&Joint{Kind: plan.DeckOver, Host: d.p.Name, Station: at, At: d.f.At(at, d.post+(plate+d.Girder.Width())/2, d.foot), Members: []*Member{m, g}, Below: true, Tributary: d.Space})
			return
		}
	}
}

// span returns the stations between which a member along the side lies.
func (d *deckLeg) span(m *Member) (lo, hi float64) {
	lo, _ = d.f.Local(m.A.Flat())
	hi, _ = d.f.Local(m.B.Flat())
	return lo, hi
}

// deckGirder adds the girder along the inside of the posts, with its joints.
func (b *builder) deckGirder(d *deckLeg) {
	wide, deep := d.Girder.Width(), d.Girder.Depth
	from, to := d.lo, d.hi
	if d.before != nil {
		from = d.before.post + d.before.Girder.Width()
	}
	if d.after != nil {
		to = d.long - d.after.p.Beam.Width()/2 + d.p.Post.Width()/2
	}
	var posts []float64
	for _, s := range d.p.Posts {
		if s = d.at(s); s > from && s < to {
			posts = append(posts, s)
		}
	}
	slices.Sort(posts)
	cuts := append(append([]float64{from}, cutsOver(posts, from, to, b.longest())...), to)
	for i := 1; i < len(cuts); i++ {
		d.girders = append(d.girders, b.deckStick(d, plan.DeckGirder, d.Girder, cuts[i-1], cuts[i], d.post, d.post+wide, d.foot-deep, d.foot))
	}
	for _, s := range posts {
		at := d.at(s)
		post := b.postAt(d.f.At(at, d.p.Beam.Width()/2, d.p.Top-d.p.Beam.Depth))
		var on []*Member
		for _, g := range d.girders {
			if lo, hi := d.span(g); at >= lo-geom.Eps && at <= hi+geom.Eps {
				on = append(on, g)
			}
		}
		if post != nil && len(on) > 0 {
			b.joint(&Joint{Kind: plan.DeckPost, Host: d.p.Name, Station: at, At: d.f.At(at, d.post, d.foot-deep/2), Members: append([]*Member{on[0], post}, on[1:]...), Below: true, Seat: Beside})
		}
	}
	if d.before != nil && len(d.before.girders) > 0 {
		at := d.at(from)
		b.joint(&Joint{Kind: plan.DeckHung, Host: d.p.Name, Station: at, At: d.f.At(at, d.post+wide/2, d.foot-deep), Members: []*Member{d.girders[0], d.before.girders[len(d.before.girders)-1]}, Below: true})
	}
}

// railPosts adds the posts of the rails, between the porch's own along the outside and from
// the outermost back to the house at an open end, no further apart than the plan says.
func (b *builder) railPosts(d *deckLeg) {
	if d.Rail == 0 {
		return
	}
	half, foot, head := railPost.Breadth/2, d.foot, d.Top+railHigh
	var posts []float64
	for _, s := range d.p.Posts {
		posts = append(posts, d.at(s))
	}
	slices.Sort(posts)
	add := func(s0, s1, t0, t1 float64) {
		m := b.deckStick(d, plan.RailPost, railPost, s0, s1, t0, t1, foot, head)
		mid := m.A.Add(m.B).Mul(0.5).Flat()
		m.A, m.B, m.Length = mid.Up(foot), mid.Up(head), head-foot
		m.ID += "/" + at(t0)
	}
	for i := 1; i < len(posts); i++ {
		for _, s := range inBetween(posts[i-1], posts[i], d.Rail) {
			add(s-half, s+half, d.post-railPost.Depth, d.post)
		}
	}
	for _, t := range inBetween(d.p.Beam.Width()/2, d.wall, d.Rail) {
		if d.before == nil && t < d.first.open {
			add(d.lo-railPost.Depth, d.lo, t-half, t+half)
		}
		if d.after == nil && t < d.last.open {
			add(d.hi, d.hi+railPost.Depth, t-half, t+half)
		}
	}
}

// inBetween returns the places that part the way from a to z evenly, no further apart than most.
func inBetween(a, z, most float64) (out []float64) {
	n := math.Ceil((z - a - geom.Eps) / most)
	for k := 1.0; k < n; k++ {
		out = append(out, a+(z-a)*k/n)
	}
	return out
}

// ofDeck tells whether a ledger carries a porch's deck: it goes on over the wall's sheathing.
func (b *builder) ofDeck(m *Member) bool {
	host, _, _ := strings.Cut(m.ID, "/")
	return slices.ContainsFunc(b.plan.Porches, func(p *plan.Porch) bool { return p.Deck != nil && p.Name == host })
}
