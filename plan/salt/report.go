package salt

import (
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/placement"
	"galewright/plan/steel"
)

// Report is what salt air and treated wood are to the steel of a house.
type Report struct {
	Pieces []*Piece // in the placement's order
	house  *framing.House
	site   *site
	of     map[*placement.Piece]*Piece
}

// Run looks at all pieces and tells what falls short, what is blank, which
// metals meet and what is not for treated wood.
func Run(bodies *steel.Steel) (*Report, plan.Diagnostics) {
	h := bodies.Placed.House
	r := &Report{house: h, site: newSite(h), of: map[*placement.Piece]*Piece{}}
	for _, b := range bodies.Bodies {
		p := r.piece(b)
		r.Pieces = append(r.Pieces, p)
		r.of[b.Piece] = p
	}
	t := &teller{}
	r.blanks(t)
	for _, p := range r.Pieces {
		r.check(t, p)
	}
	r.joints(t, bodies.Placed)
	r.idle(t)
	return r, t.list()
}

// Of returns what is known of a piece, or nil.
func (r *Report) Of(p *placement.Piece) *Piece { return r.of[p] }

// Row is one class of places with what is there.
type Row struct {
	Class     plan.SaltClass // "" for what is all in concrete
	Materials []plan.Coating // what the engineer takes; none is a blank
	Pieces    []*Piece       // whose worst part is in the class
	Where     []string       // where that is in this house
}

// Rows returns the classes in which there are pieces, the worst first.
func (r *Report) Rows() (out []Row) {
	for _, c := range append(plan.SaltClasses[:len(plan.SaltClasses):len(plan.SaltClasses)], "") {
		row := Row{Class: c}
		if c != "" {
			row.Materials = r.house.Plan.Salt.Materials(c)
		}
		for _, p := range r.Pieces {
			if p.Class == c {
				row.Pieces = append(row.Pieces, p)
				row.where(p)
			}
		}
		if len(row.Pieces) > 0 {
			out = append(out, row)
		}
	}
	return out
}

// where notes where the parts of a piece are that are in the row's class.
func (r *Row) where(p *Piece) {
	for _, x := range p.Parts {
		for _, a := range x.In {
			if a.Class == r.Class && !slices.Contains(r.Where, a.Where) {
				r.Where = append(r.Where, a.Where)
			}
		}
	}
}
