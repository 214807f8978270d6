package loadpath

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/nailing"
)

// Eave is how the roof's deck hands its shear to the plates of one line of walls,
// through what stands between both.
type Eave struct {
	Line    *LineShear
	Roof    *plan.Roof
	Long    float64 // of the deck's edge along the line, in
	PerFoot float64 // plf ASD, even along it
	Rafters int     // that bear on its plates
	Each    float64 // lb ASD at one of them, its spacing of the edge
	Rise    float64 // from the plates to the top of a rafter over them, the most, in
	Blocks  int     // that stand between them
}

// Roll is the moment that turns a rafter over where the deck's shear passes it and
// no block does, lb-in ASD.
func (e *Eave) Roll() float64 { return e.Each * e.Rise }

// Held says what the plan has against it.
func (e *Eave) Held() string {
	switch {
	case e.Blocks == 0:
		return "nothing: no blocks between the rafters"
	case e.Roof.Blocking == plan.FullBlocking:
		return fmt.Sprintf("%s up to the deck", plan.Counted(e.Blocks, "block"))
	}
	return fmt.Sprintf("%s under an air gap", plan.Counted(e.Blocks, "block"))
}

// Eaves lists the lines whose plates rafters or trusses cross under the roof's deck.
func (r *Report) Eaves() (out []*Eave) {
	for _, x := range r.Lines {
		if e := r.work.eaveOf(x); e != nil {
			out = append(out, e)
		}
	}
	return out
}

// eaveOf reads a line's eave; nil where no rafter crosses its plates, as under a
// gable and under a floor.
func (a *analysis) eaveOf(x *LineShear) *Eave {
	on := x.walls()
	e := &Eave{Line: x, Long: x.hi - x.lo}
	for _, w := range on {
		for _, j := range a.joints[w] {
			if !j.Kind.OnPlate() || j.Roof == nil || j.Roof.Over != x.Level || !crossesWall(j) {
				continue
			}
			e.Rafters++
			e.Roof = j.Roof
			e.Rise = math.Max(e.Rise, topOver(j)-j.At.Z)
		}
	}
	if e.Rafters < 2 || e.Long <= 0 {
		return nil
	}
	for _, b := range a.house.Blocks {
		if slices.Contains(on, b.Wall) {
			e.Blocks++
		}
	}
	e.PerFoot = ASD.W * math.Abs(x.Deck) / e.Long * 12
	e.Each = e.PerFoot * e.Roof.Spacing / 12
	return e
}

// bareEaves tells whether deck shear goes through rafters that no block keeps
// upright.
func (a *analysis) bareEaves() bool {
	return slices.ContainsFunc(a.lateral.lines, func(x *LineShear) bool {
		e := a.eaveOf(x)
		return e != nil && e.Blocks == 0
	})
}

// walls are those that the line's segments are of.
func (x *LineShear) walls() (out []*plan.Wall) {
	for _, g := range x.Segments {
		if !slices.Contains(out, g.Wall) {
			out = append(out, g.Wall)
		}
	}
	return out
}

// crossesWall tells whether the rafter of a joint runs square across its wall.
func crossesWall(j *framing.Joint) bool {
	m := j.First()
	if m == nil || m.Role != plan.Rafter && !m.Role.IsTruss() {
		return false
	}
	d := m.B.Sub(m.A).Flat()
	return d.Len() > 1 && math.Abs(d.Unit().Dot(j.Wall.Frame().D)) < 0.1
}

// topOver is the height of a rafter's top over its bearing, above grade, in; of a
// truss that of its chord there.
func topOver(j *framing.Joint) float64 {
	m, s := j.First(), j.Share
	if s == nil {
		return m.Z1
	}
	u := j.At.Flat().Sub(s.Low).Dot(s.Up)
	low := m.A.Z
	if m.B.Flat().Sub(s.Low).Len() < m.A.Flat().Sub(s.Low).Len() {
		low = m.B.Z
	}
	return low + s.Tan*u
}

// terms tell the eave's demand.
func (e *Eave) terms(a *analysis) []Term {
	return []Term{
		{a.u.Sprintf("of it the deck over the eave, even over %s, ASD", a.u.Length(e.Long)), e.PerFoot, "plf"},
		{a.u.Sprintf("at each rafter at %s", a.u.Length(e.Roof.Spacing)), e.Each, "lb"},
	}
}

// note says what keeps the rafters upright, and what turns them over.
func (e *Eave) note(a *analysis) string {
	if e.Blocks == 0 {
		return a.u.Sprintf("no blocks stand between the rafters: the deck's shear goes through each of them, on edge, and turns it over with %.0f lb-in, %.0f{lb} times the %.2f in from the plates to its top; nothing in the plan is counted against that. Write blocking under [[roof]], or have the engineer hold the rafters otherwise", e.Roll(), e.Each, e.Rise)
	}
	if e.Roof.Blocking == plan.FullBlocking {
		return fmt.Sprintf("%s between the rafters bring it down by the deck's nails into them and theirs into the plates, the lesser of both at each block; the rafters' own nails beside them are not counted, nor is the shear of a block itself", plan.Counted(e.Blocks, "block"))
	}
	return a.u.Sprintf("%s between the rafters, lower than the deck, keep them upright against %.0f lb-in each, which is not computed; the deck's shear goes through the rafters and their nails", plan.Counted(e.Blocks, "block"), e.Roll())
}

// overEave is what holds the shear of a line under an eave: with full blocks the
// lesser of the deck's nails into each block and its own into the plates; else the
// rafters' nails. What else the deck is nailed to there counts with both.
func (a *analysis) overEave(x *LineShear, e *Eave) *Capacity {
	full := e.Roof.Blocking == plan.FullBlocking && e.Blocks > 0
	other := onPlates(x, deckRole)
	onPlate := other.is
	other.is = func(s *nailing.Spot) bool {
		c := s.Row.Connection
		return c != plan.BlockingToPlate && (!full || c != plan.RafterToPlate) && onPlate(s)
	}
	out := a.handed(other)
	if !full {
		return out
	}
	in := a.throughBlocks(x.walls())
	switch {
	case out == nil:
		return in
	case in == nil:
		return out
	}
	in.Value, in.Pieces, in.Governs = in.Value+out.Value, in.Pieces+out.Pieces, in.Governs+" + "+out.Governs
	in.Terms = append(append(in.Terms, out.Terms...), ofCapacity(Term{"together", in.Value, "lb"})...)
	return in
}

// throughBlocks is what the blocks on some walls hand from the deck to the plates:
// of each the lesser of its two rows of nails; nil where one of the rows is not
// ordered.
func (a *analysis) throughBlocks(on []*plan.Wall) *Capacity {
	deck, plate := a.nails.Line(plan.DeckToBlocking), a.nails.Line(plan.BlockingToPlate)
	if deck == nil || plate == nil {
		return nil
	}
	into := map[*framing.Member]*nailing.Spot{}
	for _, s := range deck.Spots {
		into[s.Main] = s
	}
	out := &Capacity{Source: "ordered nailing"}
	var top, low, blocks, nails float64
	var one [2]nailing.Value
	for _, s := range plate.Spots {
		d := into[s.Side]
		if d == nil || !slices.Contains(on, s.Wall) {
			continue
		}
		one = [2]nailing.Value{deck.One(d, a.species), plate.One(s, a.species)}
		over, under := float64(d.Nails(deck.Order))*one[0].Lateral, float64(s.Nails(plate.Order))*one[1].Lateral
		out.Value += min(over, under, a.blockWood(s))
		top, low, blocks, nails = top+over, low+under, blocks+1, nails+float64(s.Nails(plate.Order))
	}
	if out.Value == 0 {
		return nil
	}
	out.Pieces = int(nails)
	governs, row := plate, "into the plates"
	if top < low {
		governs, row = deck, "of the deck"
	}
	out.Governs = fmt.Sprintf("%s in %s, nails %s: %s", governs.Mark(), plan.Counted(int(blocks), "block"), row, governs.Row.One)
	out.Terms = ofCapacity(
		Term{a.u.Sprintf("%s, %s: one holds %.0f lb, %s; all", deck.Mark(), deck.Row.One, one[0].Lateral, one[0].Text), top, "lb"},
		Term{a.u.Sprintf("%s, %s: one holds %.0f lb, %s; all", plate.Mark(), plate.Row.One, one[1].Lateral, one[1].Text), low, "lb"},
		Term{"the lesser of both at each block, and of its own wood in shear along the grain, together", out.Value, "lb"},
	)
	return out
}
