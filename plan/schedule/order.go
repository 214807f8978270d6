package schedule

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/deck"
	"galewright/plan/hardware"
	"galewright/plan/units"
)

// OrderRow is one line of the order list.
type OrderRow struct {
	Section string       // "pieces", "coil", "nails", "screws", "bolts", "rods", "nuts", "washers", "panels", "hours"
	Number  int          // of the legend; 0 when it is none of its lines
	Name    string       // what to ask for
	Detail  string       // size, or how it is driven
	Coating plan.Coating // "" where the plan gives none, or it has none
	Count   int          // what the sheets show
	Spare   int          // what to have with the spare added
	Order   float64      // how much to buy, in Unit
	Unit    string       // "each", "lb", "roll", "panel", "hours"
	Packs   int          // 0 when it is not packed
	Pack    string       // what one pack holds
	Source  string       // of a number that is not a count
}

// Buy says how much to buy: "15.4 lb, 4 boxes of 5 lb", "34 panels".
func (r OrderRow) Buy() string {
	s := strings.TrimSuffix(r.amount(), " each")
	if packs := r.packs(); packs != "" && r.Unit != "roll" {
		s += ", " + packs
	}
	return s
}

// amount is what to order in its unit: "15.4 lb", "100 each", "1 panel".
func (r OrderRow) amount() string {
	switch r.Unit {
	case "roll", "panel":
		return plan.Counted(int(r.Order), r.Unit)
	}
	return strings.TrimSpace(number(r.Order) + " " + r.Unit)
}

// packs says how many packs: "4 boxes of 5 lb"; "" when it is not packed.
func (r OrderRow) packs() string {
	if r.Packs == 0 {
		return ""
	}
	noun, holds, _ := strings.Cut(r.Pack, " ")
	return strings.TrimSpace(plan.Counted(r.Packs, noun) + " " + holds)
}

// Box is the weight of one box of nails, lb (common practice, no published
// source).
const Box = 5

// Orders returns the order list, with the spare part (0.05 is 5 percent)
// added to pieces, nails and panels and each rounded up.
func (s *Schedule) Orders(spare float64) []OrderRow { return s.orders(spare, s.units("table")) }

// orders is Orders in the words of a system; what is bought by weight in its unit.
func (s *Schedule) orders(spare float64, u units.System) []OrderRow {
	rows := s.orderPieces(spare, u)
	rows = append(rows, s.orderNails(spare, u)...)
	rows = append(rows, s.orderRods(spare, u)...)
	rows = append(rows, s.orderPanels(spare, u)...)
	return append(rows, s.hours()...)
}

// more returns n with the spare part added, rounded up. The spare is rounded
// to a millionth first, so that 5 percent of 100 is 5 and not 5.0000001.
func more(n int, spare float64) int {
	return n + int(math.Ceil(math.Round(float64(n)*spare*1e6)/1e6))
}

func (s *Schedule) orderPieces(spare float64, u units.System) (out []OrderRow) {
	var coils []OrderRow
	for _, l := range s.Lines {
		if l.Item.Coil > 0 {
			coils = append(coils, coilRow(u, l, spare))
			continue
		}
		n := len(l.Pieces) * max(l.Item.Bodies, 1)
		r := OrderRow{Section: "pieces", Number: l.Number, Name: l.Item.Mark, Detail: Size(u, l.Item), Coating: l.Item.Coating, Count: n, Spare: more(n, spare), Unit: "each"}
		if l.Item.Bodies > 1 {
			r.Detail += fmt.Sprintf(", %d bodies each", l.Item.Bodies)
		}
		r.Order = float64(r.Spare)
		if l.Item.Pack > 1 {
			r.Packs = (r.Spare + l.Item.Pack - 1) / l.Item.Pack
			r.Pack = fmt.Sprintf("pack of %d", l.Item.Pack)
			r.Order = float64(r.Packs * l.Item.Pack)
		}
		out = append(out, r)
	}
	return append(out, coils...)
}

// coilRow cuts a coil strap's pieces, and as many of the longest as spare
// asks, from rolls.
func coilRow(u units.System, l *Line, spare float64) OrderRow {
	var cuts []float64
	for _, p := range l.Pieces {
		cuts = append(cuts, p.Cut)
	}
	n := len(cuts)
	long := slices.Max(cuts)
	for range more(n, spare) - n {
		cuts = append(cuts, long)
	}
	rolls, bound := Rolls(cuts, l.Item.Coil)
	total := 0.0
	for _, c := range cuts {
		total += c
	}
	return OrderRow{
		Section: "coil", Number: l.Number, Name: l.Item.Mark, Coating: l.Item.Coating, Detail: fmt.Sprintf("%s of strap, %s", u.Length(total), Size(u, l.Item)),
		Count: n, Spare: len(cuts), Order: float64(len(rolls)), Unit: "roll", Packs: len(rolls), Pack: "roll of " + u.Length(l.Item.Coil),
		Source: fmt.Sprintf("cut longest first, best fit; at least %d needed however they are cut", bound),
	}
}

// allNails adds up the fasteners of pieces, of sheathing and between members,
// and the bolts that items themselves are not.
func (s *Schedule) allNails() []NailCount {
	var t tally
	for _, n := range s.Nails() {
		t.add(n.Size, n.Hand, n.Count)
	}
	bare := func(n hardware.Nail, count int) { // no item brings them
		n.Coating = s.Placement.House.Plan.Salt.Nailing
		t.add(n, false, count)
	}
	for _, h := range s.Sheathing {
		if h.Nails > 0 && h.Nail.Diameter > 0 {
			bare(h.Nail, h.Nails)
		}
	}
	if spec := s.Deck.Spec; spec != nil && s.Deck.Nails() > 0 {
		if n, err := hardware.ParseNail(spec.Nail); err == nil {
			bare(n, s.Deck.Nails())
		}
	}
	for _, f := range s.Floors {
		if n, err := hardware.ParseNail(f.Spec.Nail); err == nil {
			bare(n, f.Nails)
		}
	}
	for _, l := range s.Nailing.Lines {
		if n, err := hardware.ParseNail(l.Order.Nail); err == nil && l.Nails > 0 {
			bare(n, l.Nails)
		}
	}
	slices.SortStableFunc(t.list, func(a, b NailCount) int {
		return cmp.Or(cmp.Compare(a.Size.Diameter, b.Size.Diameter), cmp.Compare(a.Size.Length, b.Size.Length), cmp.Compare(a.Size.Coating, b.Size.Coating))
	})
	return t.list
}

func (s *Schedule) orderNails(spare float64, u units.System) (out []OrderRow) {
	for _, n := range s.allNails() {
		r := OrderRow{Section: "nails", Name: n.Label(u), Detail: "by hand or gun", Coating: n.Size.Coating, Count: n.Count, Spare: more(n.Count, spare), Unit: "lb"}
		if n.Hand {
			r.Detail = "by hand only"
		}
		per, source := PerPound(n.Size)
		if per == 0 {
			r.Section, r.Detail, r.Unit, r.Order = threaded(n.Size), "", "each", float64(r.Spare)
			out = append(out, r)
			continue
		}
		r.Order = math.Ceil(float64(r.Spare)/per*10-1e-9) / 10
		r.Packs = int(math.Ceil(r.Order/Box - 1e-9))
		r.Pack = "box of " + u.BoughtMass(Box)
		r.Source = fmt.Sprintf("%s: %s", u.PerMass(per), u.Words(source))
		r.Order, r.Unit = u.MassOf(r.Order)
		out = append(out, r)
	}
	return out
}

// threaded names the section of a fastener that is not sold by weight.
func threaded(n hardware.Nail) string {
	if n.Screw() {
		return "screws"
	}
	return "bolts"
}

// rod is a size of rod with its coating; long is its length, or the side of a
// washer.
type rod struct {
	diameter, long float64
	coating        plan.Coating
	beveled        bool // a washer cut to the rod's slope
}

// coatingOf returns the coating of an item's rod, nuts and washers.
func coatingOf(it *hardware.Item) plan.Coating {
	if it.Kind.Shape == hardware.Rod {
		return it.Coating
	}
	return it.RodCoating
}

// orderRods lists the rods that are cut to length, and the nuts and washers of
// all rods and bolts, as the bodies have them.
func (s *Schedule) orderRods(spare float64, u units.System) (out []OrderRow) {
	rods, nuts, washers := map[rod]int{}, map[rod]int{}, map[rod]int{}
	for _, r := range s.Steel.Rods() {
		c := coatingOf(r.For.Item)
		if r.For.Cut > 0 {
			rods[rod{diameter: r.Diameter, long: CutRod(r.Length()), coating: c}]++
		}
		for _, e := range r.Ends {
			if e.Nuts > 0 {
				nuts[rod{diameter: r.Diameter, coating: c}] += e.Nuts
			}
			if e.Washers > 0 {
				washers[rod{r.Diameter, e.Washer, c, r.For.Joint.Kind == plan.BraceRod}] += e.Washers
			}
		}
	}
	order := func(a, b rod) int {
		return cmp.Or(cmp.Compare(a.diameter, b.diameter), cmp.Compare(a.long, b.long), cmp.Compare(a.coating, b.coating), cmp.Compare(beveledFirst(a), beveledFirst(b)))
	}
	for _, k := range sorted(rods, order) {
		out = append(out, k.row("rods", u.Bought(k.diameter)+" threaded rod", u.Length(k.long)+" long", rods[k], 0))
	}
	for _, k := range sorted(nuts, order) {
		out = append(out, k.row("nuts", fmt.Sprintf("nut for %s rod", u.Bought(k.diameter)), "", nuts[k], spare))
	}
	for _, k := range sorted(washers, order) {
		detail := "cut washer"
		if k.long > 0 {
			detail = fmt.Sprintf("%s square plate, %s thick", u.Bought(k.long), u.Bought(hardware.WasherThick(k.long)))
		}
		if k.beveled {
			detail += ", beveled to the rod's slope"
		}
		out = append(out, k.row("washers", fmt.Sprintf("washer for %s rod", u.Bought(k.diameter)), detail, washers[k], spare))
	}
	return out
}

// beveledFirst sorts washers that are alike but for their bevel.
func beveledFirst(k rod) int {
	if k.beveled {
		return 0
	}
	return 1
}

// CutRod returns the length that a rod is listed with, in: as long as its body,
// to the next quarter inch.
func CutRod(long float64) float64 { return math.Ceil(long*4-1e-6) / 4 }

func (k rod) row(section, name, detail string, n int, spare float64) OrderRow {
	m := more(n, spare)
	return OrderRow{Section: section, Name: name, Detail: detail, Coating: k.coating, Count: n, Spare: m, Order: float64(m), Unit: "each"}
}

// sorted returns the keys of m in order.
func sorted[K comparable, V any](m map[K]V, order func(a, b K) int) []K {
	keys := make([]K, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.SortFunc(keys, order)
	return keys
}

func (s *Schedule) orderPanels(spare float64, u units.System) (out []OrderRow) {
	type panel struct {
		thick      string
		wide, tall float64
	}
	n := map[panel]int{}
	var order []panel
	source := "shear wall segments only, upright, cut at the segment's end"
	for _, h := range s.Sheathing {
		if h.Own {
			source = "shear wall segments and the sheathing outside of them, upright, each stretch cut by itself from the subfloor to the top of its plates"
		}
		k := panel{h.Shear.Panel, h.Size[0], h.Size[1]}
		if n[k] == 0 {
			order = append(order, k)
		}
		n[k] += h.Panels
	}
	for _, k := range order {
		m := more(n[k], spare)
		out = append(out, OrderRow{
			Section: "panels", Name: panelName(u, k.thick) + " structural panel", Detail: u.Length(k.wide) + " x " + u.Length(k.tall),
			Count: n[k], Spare: m, Order: float64(m), Unit: "panel", Source: source,
		})
	}
	return append(append(out, s.orderDeck(spare, u)...), s.orderFloors(spare, u)...)
}

// orderFloors lists the panels of the floors.
func (s *Schedule) orderFloors(spare float64, u units.System) (out []OrderRow) {
	for _, f := range s.Floors {
		m, x := more(f.Sheets, spare), plan.PanelOfInches(f.Level.Subfloor)
		out = append(out, OrderRow{
			Section: "panels", Name: fmt.Sprintf("%s %s, floor of %s", u.Beside(strings.TrimSuffix(x.Text, " in")+" in", x.Thick), f.Spec.Kind, f.Level.Name), Detail: u.Length(deck.PanelWide) + " x " + u.Length(deck.PanelLong),
			Count: f.Sheets, Spare: m, Order: float64(m), Unit: "panel",
			Source: u.Sprintf("%d pieces laid for %.0f ft² of floor, each course cut by itself; stairs not taken out", f.Pieces, f.Area),
		})
	}
	return out
}

// orderDeck lists the panels of the roof deck: the count is that of the panels
// that its pieces are cut from.
func (s *Schedule) orderDeck(spare float64, u units.System) []OrderRow {
	d := s.Deck
	pieces, whole := d.Pieces()
	if pieces == 0 {
		return nil
	}
	n := d.Sheets()
	m := more(n, spare)
	return []OrderRow{{
		Section: "panels", Name: fmt.Sprintf("%s %s, roof deck", panelName(u, d.Spec.Panel), d.Spec.Kind), Detail: u.Length(deck.PanelWide) + " x " + u.Length(deck.PanelLong),
		Count: n, Spare: m, Order: float64(m), Unit: "panel",
		Source: u.Sprintf("%d pieces laid, %d of them whole, for %.0f ft² of roof; cut one after the other along a panel, narrow ones in two rows: %.0f%% waste", pieces, whole, d.Area(), 100*d.Waste()),
	}}
}

// panelName is the thickness that a panel is bought by: 15/32 in.
func panelName(u units.System, text string) string {
	return u.Beside(text+" in", plan.PanelOf(text).Thick)
}

// hours adds up the minutes from the catalog by phase, in hours; nothing when
// no item placed has any.
func (s *Schedule) hours() (out []OrderRow) {
	if !slices.ContainsFunc(s.Lines, func(l *Line) bool { return l.Item.Minutes > 0 }) {
		return nil
	}
	for _, g := range s.By("phase") {
		minutes, timed := 0.0, 0
		for _, l := range g.Lines {
			minutes += l.Item.Minutes * float64(len(l.Pieces))
			if l.Item.Minutes > 0 {
				timed += len(l.Pieces)
			}
		}
		r := OrderRow{Section: "hours", Name: "install " + g.Name, Count: timed, Spare: timed, Order: math.Round(minutes/60*10) / 10, Unit: "hours", Source: "minutes from the catalog"}
		if rest := g.Pieces() - timed; rest > 0 {
			r.Detail = fmt.Sprintf("without %s that have no minutes", plan.Counted(rest, "piece"))
		}
		out = append(out, r)
	}
	return out
}
