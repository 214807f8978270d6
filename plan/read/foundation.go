package read

import (
	"math"

	"galewright/plan"
)

// foundationKeys fill what carries the lowest floor.
var foundationKeys = []binding[plan.Foundation]{
	choiceKey("kind", plan.FoundationKinds, "piles with girders, a slab on grade, or a stem wall", func(f *plan.Foundation) *plan.FoundationKind { return &f.Kind }).
		otherwise("piles when there are girders, else a slab"),
	lumberKey("pile", `"12.0x12.0"`, "section of a pile", func(f *plan.Foundation) *plan.Lumber { return &f.Pile }).or("10x10", `"10x10"`),
	lengthKey("pile_top", `"8'"`, "top of the piles above grade", func(f *plan.Foundation) *float64 { return &f.PileTop }).within(0, 600).usual(0, 300).
		otherwise("under the deepest girder"),
	lumberKey("sill", `"2x6"`, "sill plate on slab or stem wall", func(f *plan.Foundation) *plan.Lumber { return &f.Sill }).
		otherwise("2x, as wide as the studs of the lowest exterior walls"),
}

// settleFoundation fills what follows from girders, levels and walls.
func (r *reader) settleFoundation() {
	p := r.plan
	f := &p.Foundation
	if f.Kind == "" {
		f.Kind = plan.Slab
		if len(p.Girders) > 0 {
			f.Kind = plan.Piles
		}
	}
	if f.Sill.Ply == 0 {
		f.Sill = plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 5.5, Text: "2x6"}
		for _, w := range p.Walls {
			if w.Exterior && w.Level == p.Levels[0] {
				f.Sill.Depth, f.Sill.Text = w.Studs.Depth, w.Studs.Text
				break
			}
		}
	}
}

// settlePiles puts the piles under the deepest girder when the plan does not say.
func (r *reader) settlePiles() {
	p := r.plan
	if p.Foundation.Kind != plan.Piles || p.Foundation.PileTop > 0 || len(p.Levels) == 0 {
		return
	}
	deepest := 0.0
	for _, g := range p.Girders {
		deepest = max(deepest, g.Member.Depth)
	}
	p.Foundation.PileTop = math.Max(0, p.Levels[0].Floor-p.Levels[0].FloorDepth-deepest)
}

// lumberKeys fill what the yard stocks.
var lumberKeys = []binding[plan.LumberYard]{
	sizeKey("plate", `"16'"`, "longest plate", func(y *plan.LumberYard) *float64 { return &y.Plate }).within(24, 1200).usual(96, 480).or("16'", `"16'"`),
	sizeKey("stud", `"20'"`, "longest stud", func(y *plan.LumberYard) *float64 { return &y.Stud }).within(24, 1200).usual(72, 480).or("20'", `"20'"`),
	custom("stock", "lengths", `["8'", "10'", "12'", "16'"]`, "stock lengths", func(v value, y *plan.LumberYard) {
		y.Stock, _ = v.lengths()
		for i := 1; i < len(y.Stock); i++ {
			if y.Stock[i] <= y.Stock[i-1] {
				v.bad("bad-order", "write them from short to long", "the lengths do not rise")
				return
			}
		}
	}).within(24, 1200).usual(72, 480).or([]any{"8'", "10'", "12'", "14'", "16'", "18'", "20'"}, "8' to 20' by 2'"),
	choiceKey("species", plan.Species, "species of the framing, for nail values", func(y *plan.LumberYard) *string { return &y.Species }).
		or("southern pine", `"southern pine"`),
	field("tension", "stress", `"850 psi"`, "reference design tension Ft of the posts at the ends of shear walls, in psi or MPa", func(v value) (float64, bool) { return v.quantity(stresses) },
		func(y *plan.LumberYard) *float64 { return &y.Tension }).otherwise("that of No. 2 of the species"),
}

// stresses are the units of stress, in psi: 1 MPa is 1 N/mm².
var stresses = []unit{{"psi", 1}, {"MPa", 25.4 * 25.4 / 4.4482216152605}}
