package steel

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// steelInWood is the check of steel that lies inside a member.
var steelInWood = &Check{
	ID: "steel-in-wood", Severity: plan.Warning, Title: "steel that lies inside a member",
	Doc: "The piece can lie only on a face, or flat between two members that touch. Here part of it would have to go through a member that has no slot for it: it cannot be put on as drawn.",
	run: func(s *Steel, tell func(finding)) {
		for _, b := range s.Bodies {
			if b.Piece.Item.Kind.Name == plan.LongStrapItem { // goes through slots that are cut for it
				continue
			}
			if m, deep := s.inside(b); m != nil {
				tell(finding{
					piece: b.Piece, cause: fmt.Sprintf("its steel lies inside the %s there", m.Role), detail: fmt.Sprintf("first in %s, over %s", m.ID, b.Piece.Units().Length(deep)),
					mend: "another face, a shorter piece or another place; or take the joint out of the rule and tie it by a piece that fits",
				})
			}
		}
	},
}

// inWood is how long a stretch of steel inside a member is told, in.
const inWood = 0.3

// skin is how far inside and outside the steel wood must be found for the steel to
// lie in it, in.
const skin = 1.0 / 16

// inside returns the member that most of a body's steel lies inside of, and over
// what length, in; nil where it lies on faces.
func (s *Steel) inside(b *Body) (in *framing.Member, deep float64) {
	for _, band := range b.Bands {
		for _, p := range band {
			for _, across := range []float64{-0.4, 0, 0.4} {
				under := s.lengthwise(p, across*p.Width, -skin)
				for _, r := range s.lengthwise(p, across*p.Width, p.Thickness+skin) {
					for _, u := range under {
						if l := math.Min(r.To, u.To) - math.Max(r.From, u.From); u.Member == r.Member && l > math.Max(deep, inWood) {
							in, deep = r.Member, l
						}
					}
				}
			}
		}
	}
	return in, deep
}

// lengthwise returns the runs of wood along a plate, across off its middle line
// and out from the face, in.
func (s *Steel) lengthwise(p geom.Plate, across, out float64) []Run {
	off := p.N.Unit().Mul(out)
	return s.Wood.Through(p.At(0, across).Add(off), p.At(p.Len(), across).Add(off))
}
