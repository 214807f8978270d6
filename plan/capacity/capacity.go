package capacity

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/timber"
)

// Term is one part of a demand or capacity.
type Term struct {
	Text  string
	Value float64
	Unit  string
}

// Capacity is what the hardware at a joint holds, ASD at wind duration.
type Capacity struct {
	Value   float64 // lb (plf for sheathing)
	Governs string
	Source  string // "maker's value", "computed", "assumed nailing"
	Terms   []Term // the least last
	Unknown string // why no number can be given, "" when there is one
	Pieces  int
	Mark    string
	// NotMakers tells that the piece is a bent body, as a clip, hanger, base, cap
	// or hold-down, and the value is computed here, not its maker's.
	NotMakers bool
}

// Star marks a value, and a ratio with it, that is NotMakers.
const Star = "*"

// StarNote says what the mark means.
const StarNote = Star + " not a maker's value: computed from its fasteners and rod where they are; how its own bent steel yields or tears is not in it. Its maker's tested load governs."

// Starred returns the mark of the value: Star or "".
func (c *Capacity) Starred() string {
	if c != nil && c.NotMakers && c.Unknown == "" {
		return Star
	}
	return ""
}

// Direction is the way a piece is pulled.
type Direction uint8

// The directions.
const (
	Upward  Direction = iota
	Endways           // along the member: collector, splice, ridge strap
)

// piece works out the capacity of one piece.
func (a *Allowables) piece(p *placement.Piece, dir Direction) Capacity {
	if c, ok := given(p.Item, dir); ok {
		return c
	}
	c := Capacity{Value: math.Inf(1), Source: "computed", NotMakers: p.Item.Kind.Shape == hardware.Body || p.Item.Kind.Shape == hardware.Pair}
	a.nailTerms(&c, p)
	a.steelTerms(&c, p.Item)
	a.rodTerms(&c, p)
	switch k := p.Item.Kind; {
	case c.Unknown != "":
	case len(p.Item.Fasteners) == 0 && (k.Strap || k.Shape == hardware.Pair || k.Name == plan.HoldDownItem):
		c.Unknown = "the catalog gives no nails to hold the " + string(k.Name) + " to the wood"
	case k.Strap && p.Item.Width == 0:
		c.Unknown = "the catalog gives no width of the steel"
	case math.IsInf(c.Value, 1):
		c.Unknown = "the catalog gives neither a load nor nails, steel or rod to compute one from"
	}
	if c.Unknown != "" {
		c.Value = 0
	}
	return c
}

// given returns the maker's allowable load for a direction, if the catalog
// has a table of loads. A strap pulls along itself either way, so one of
// uplift and along is enough; any other piece holds only what its maker says,
// and a load of 0 or none holds nothing.
func given(it *hardware.Item, dir Direction) (Capacity, bool) {
	l := it.Load
	if l.Pos.Line == 0 && l.Uplift == 0 && l.Along == 0 && l.Across == 0 {
		return Capacity{}, false
	}
	v, word := l.Uplift, "uplift"
	if dir == Endways {
		v, word = l.Along, "along"
	}
	if v == 0 && it.Kind.Strap {
		v, word = math.Max(l.Uplift, l.Along), "tension"
	}
	if v <= 0 {
		return Capacity{Unknown: "the maker's loads give nothing for " + word}, true
	}
	return Capacity{
		Value: v, Governs: "maker's allowable load, " + word, Source: "maker's value: " + l.Source,
		Terms: []Term{{"maker's " + word + ", allowable stress level, " + l.Source, v, "lb"}},
	}, true
}

// least adds a term and lets it govern if it is the smallest.
func (c *Capacity) least(t Term, governs string) {
	c.Terms = append(c.Terms, t)
	if t.Value < c.Value {
		c.Value, c.Governs = t.Value, governs
	}
}

// screwRoot is the root diameter of a screw in parts of its size: assumed.
// Bending yield and bearing are those of a nail of that diameter (NDS 2018 Table
// I1 covers wood screws in the same rows, from memory).
const screwRoot = 0.75

// nailTerms adds the nails of each part: each end of a strap, each leg of a
// clip, must hold the whole force.
func (a *Allowables) nailTerms(c *Capacity, p *placement.Piece) {
	ends := p.Item.Ends()
	for i, f := range ends {
		if i > 0 && f == ends[i-1] {
			continue // both ends alike
		}
		n := f.Size
		switch word := word(n); {
		case numbered(n):
			n.Name += a.units.Sprintf(" (root %.3f in, NDS 2018 Table L3)", timber.ScrewRoot(n.Diameter))
		case word == "screw" || word == "lag":
			n.Diameter *= screwRoot
			n.Name += " (root 0.75 of its size, assumed; Fyb as of a nail, from memory)"
		case n.Bolt():
			a.boltTerm(c, p, f.Part, n, f.Count)
			continue
		}
		a.nailTerm(c, p, f.Part, n, f.Count)
	}
}

// word returns the first word of a fastener's name: "bolt" of "bolt 5/8 x 8".
func word(n hardware.Nail) string {
	w, _, _ := strings.Cut(strings.TrimSpace(n.Name), " ")
	return w
}

// numbered tells whether a fastener is a wood screw by its number, "No. 14",
// whose root is known.
func numbered(n hardware.Nail) bool {
	return strings.HasPrefix(strings.TrimPrefix(strings.TrimSpace(n.Name), "screw "), "No. ")
}

// behindSteel returns the thickness of wood that a nail of the piece finds, in: the
// least of the members it is nailed to.
func behindSteel(p *placement.Piece) float64 {
	members := p.Members()
	if len(members) == 0 {
		members = p.Joint.Members[:min(1, len(p.Joint.Members))]
	}
	least := math.Inf(1)
	for _, m := range members {
		if t := across(m, p.Face); t > 0 {
			least = math.Min(least, t)
		}
	}
	if math.IsInf(least, 1) {
		return 1.5
	}
	return least
}

// across returns how thick a member is behind a face, in: the depth of what
// stands or lies flat in a wall, the breadth of all else; 0 where the nail
// runs along it.
func across(m *framing.Member, face plan.Face) float64 {
	if m == nil || m.Section.Depth == 0 {
		return 0
	}
	lying := m.Role == plan.TopPlate || m.Role == plan.UpperPlate || m.Role == plan.BottomPlate || m.Role == plan.SillPlate
	switch side := face == plan.Left || face == plan.Right; {
	case side && lying:
		return 0
	case !side && (lying || m.Wall != nil && m.Role.FullHeight()):
		return m.Section.Depth
	}
	return math.Max(1.5, m.Section.Width())
}

// panel returns the sheathing that the nails of a piece pass first, in.
func (a *Allowables) panel(p *placement.Piece) float64 {
	x, _ := a.steel.Sheathing(p)
	return x.Thick
}

func (a *Allowables) nailTerm(c *Capacity, p *placement.Piece, part string, n hardware.Nail, count int) {
	steel := timber.Part{Thickness: baseThickness(p.Item), Steel: true}
	if steel.Thickness == 0 {
		c.Unknown = "the catalog gives no thickness of the steel"
		return
	}
	what := "nails"
	if n.Bolt() {
		what = "screws"
	}
	nail := timber.Nail{Name: n.Name, Length: n.Length - a.panel(p), Diameter: n.Diameter}
	if numbered(n) {
		nail.Root = timber.ScrewRoot(n.Diameter)
	}
	z, err := timber.SingleNail(nail, steel, timber.Part{Thickness: behindSteel(p), G: a.species.G})
	if err != nil {
		c.Unknown = fmt.Sprintf("nail %s: %s", n.Name, err)
		return
	}
	chain := timber.Condition{Duration: timber.WindDuration}.Chain()
	value := z.Z * chain.Product() * float64(count)
	c.least(Term{a.units.Sprintf("%d of %s %s: Z %.1f lb (mode %s; %.3f in, Fyb %.0f{+psi}; steel %.4f in, Fe %.0f{+psi}; wood G %.2f, Fe %.0f{+psi}, %.2f in of penetration%s), %s", count, n.Name, part, z.Z, z.Mode,
		z.D, z.Fyb, steel.Thickness, z.Fes, a.species.G, z.Fem, z.Lm, a.behind(p), chain), value, "lb"},
		fmt.Sprintf("%s %s, mode %s", what, part, z.Mode))
}

// behind tells of sheathing that the nails pass.
func (a *Allowables) behind(p *placement.Piece) string {
	x, ok := a.steel.Sheathing(p)
	if !ok {
		return ""
	}
	return fmt.Sprintf(" behind %s in of sheathing%s, which is counted as nothing", x.Text, map[bool]string{false: ", assumed"}[x.Given])
}

// boltYield is Fyb of bolts, psi (NDS 2018 Appendix I, from memory).
const boltYield = 45_000

// boltTerm adds bolts in single shear: through a post the load lies along its
// grain, through a beam across; the group factor is left at 1.
func (a *Allowables) boltTerm(c *Capacity, p *placement.Piece, part string, n hardware.Nail, count int) {
	t := baseThickness(p.Item)
	if t == 0 {
		c.Unknown = "the catalog gives no thickness of the steel"
		return
	}
	fes, _ := timber.SteelBearing(t)
	grain := 0.0
	if strings.Contains(part, "beam") || strings.Contains(part, "girder") || strings.Contains(part, "header") {
		grain = 90
	}
	d := timber.Dowel{D: n.Diameter, Fyb: boltYield, Fem: timber.DowelBearing(a.species.G, n.Diameter, grain), Fes: fes, Lm: behindSteel(p), Ls: t, Angle: grain}
	y := d.SingleShear()
	c.least(Term{a.units.Sprintf("%s %s %s, load at %.0f degrees to grain: Z %.0f lb (mode %s), CD 1.6, Fyb 45 ksi from memory", plan.Counted(count, "bolt"), n.Name, part, grain, y.Z, y.Mode), y.Z * 1.6 * float64(count), "lb"},
		fmt.Sprintf("bolts %s, mode %s", part, y.Mode))
}

// baseThickness returns the thickness of the bare steel of an item that its
// strength is computed with, in: as the catalog gives it in inches; of a gauge
// the design thickness of structural sheet, never more than the plain table has.
func baseThickness(it *hardware.Item) float64 {
	number := strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(it.Gauge), "ga"))
	plain, _, err := plan.Thickness(number+" ga", false)
	if err != nil {
		return it.Thickness
	}
	gauge, _ := strconv.Atoi(number)
	if s, ok := timber.SheetOf(0, gauge); ok {
		return math.Min(plain, s.Design)
	}
	return leastOfGauge * plain
}

// leastOfGauge is the part of a plain gauge that is taken for strength where
// no structural sheet has that gauge: the least of those that have one, 10
// gauge with 0.1242 of 0.1345 in.
const leastOfGauge = 0.1242 / 0.1345

// hole is how much wider than its nail a hole is taken, in: assumed.
const hole = 0.022

// grade returns the steel of an item, and its words where it is not sheet of
// carbon steel.
func grade(it *hardware.Item) (timber.Steel, string) {
	if it.Coating.Stainless() {
		return timber.A240, " of stainless steel, Fy 30 ksi from memory"
	}
	return timber.Gr33, ""
}

// steelTerms adds the tension of a strap on its gross and net section.
func (a *Allowables) steelTerms(c *Capacity, it *hardware.Item) {
	if !it.Kind.Strap || it.Width == 0 || baseThickness(it) == 0 {
		return
	}
	rows, d := 1, 0.0
	for _, f := range it.Ends() {
		rows = max(rows, f.Rows) // staggered too: the zigzag's gain in length is not taken
		d = math.Max(d, f.Size.Diameter+hole)
	}
	grade, of := grade(it)
	t := timber.StrapTension(it.Width, baseThickness(it), rows, d, grade)
	c.least(Term{a.units.Sprintf("strap %.3f{in} x %.4f in%s, %s of %.3f in across: gross yielding %.0f{lb}, net rupture %.0f lb (AISI S100-16 D2, D3)",
		it.Width, baseThickness(it), of, plan.Counted(rows, "hole"), d, t.Yield, t.Rupture), t.Allow, "lb"}, "strap, "+t.Governs)
}

// rodTerms adds the tension of a rod; what its washer bears on is its body's.
func (a *Allowables) rodTerms(c *Capacity, p *placement.Piece) {
	it := p.Item
	if it.Rod == 0 {
		return
	}
	if it.Kind.Shape == hardware.Rod && crosses(p.Joint) {
		a.crossBolt(c, p)
		return
	}
	c.least(Term{a.units.Sprintf("rod %.3f in, A36: 0.75 Fu A/2 (AISC 360-16 Table J3.2, from memory)", it.Rod), timber.RodTension(it.Rod, timber.A36), "lb"}, "rod tension")
}
