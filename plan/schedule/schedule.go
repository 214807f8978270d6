package schedule

import (
	"cmp"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/deck"
	"galewright/plan/hardware"
	"galewright/plan/length"
	"galewright/plan/nailing"
	"galewright/plan/placement"
	"galewright/plan/steel"
	"galewright/plan/units"
)

// Line is one line of the schedule; its Number stands in a circle at every
// piece on every sheet.
type Line struct {
	Number int // 1.. without gaps, in catalog order of the items used
	Item   *hardware.Item
	Pieces []*placement.Piece
	Nails  []NailCount
	Driven []int // fasteners of all pieces, by line of the item's Fasteners
}

// NailCount is a number of one fastener.
type NailCount struct {
	Nail  string // "10d x 1 1/2 (0.148 x 1 1/2)"
	Count int
	Hand  bool // driven by hand only
	Size  hardware.Nail
}

// Schedule is the count of a placement.
type Schedule struct {
	Placement *placement.Placement
	Steel     *steel.Steel
	Lines     []*Line
	Sheathing []*Sheathing     // of the walls' shear segments, and outside of them
	Nailing   *nailing.Nailing // between members, as the plan orders it
	Deck      *deck.Deck       // of the roofs; without panels where the plan says nothing of them
	Floors    []*deck.Floor    // whose nails the plan orders
	byMark    map[string]*Line
}

// New counts bodies and their pieces.
func New(bodies *steel.Steel) *Schedule {
	p := bodies.Placed
	s := &Schedule{Placement: p, Steel: bodies, byMark: map[string]*Line{}}
	for _, q := range p.Pieces {
		l := s.byMark[q.Item.Mark]
		if l == nil {
			l = &Line{Item: q.Item}
			s.byMark[q.Item.Mark] = l
		}
		l.Pieces = append(l.Pieces, q)
	}
	for _, it := range p.Catalog.Items {
		if l := s.byMark[it.Mark]; l != nil {
			s.Lines = append(s.Lines, l)
			l.Number = len(s.Lines)
			l.fill()
		}
	}
	s.Sheathing = sheathing(p)
	s.Deck = deck.New(p.House)
	s.Floors = deck.Floors(p.House)
	s.Nailing = nailing.New(p.House)
	return s
}

// units is the system that a format is written in: JSON keeps US units.
func (s *Schedule) units(format string) units.System {
	if format == "json" {
		return units.Imperial
	}
	return s.Placement.House.Plan.Project.Units
}

// Number returns the legend number of a mark, 0 when none is placed.
func (s *Schedule) Number(mark string) int {
	if l := s.byMark[mark]; l != nil {
		return l.Number
	}
	return 0
}

// Line returns the line of a mark, or nil when none is placed.
func (s *Schedule) Line(mark string) *Line { return s.byMark[mark] }

// Pieces returns how many pieces are placed.
func (s *Schedule) Pieces() int { return len(s.Placement.Pieces) }

// Nails returns all fasteners of the pieces placed, those of sheathing and
// between members not among them.
func (s *Schedule) Nails() []NailCount { return nails(s.Placement.Pieces) }

// fill adds up the fasteners of a line's pieces.
func (l *Line) fill() {
	l.Nails, l.Driven = nails(l.Pieces), make([]int, len(l.Item.Fasteners))
	for _, p := range l.Pieces {
		for i, n := range p.Driven() {
			l.Driven[i] += n
		}
	}
}

// nails adds up the fasteners that go in at pieces by size, coating and how they are
// driven, in the order they first come.
func nails(pieces []*placement.Piece) []NailCount {
	var t tally
	for _, p := range pieces {
		for i, n := range p.Driven() {
			t.add(p.Item.Nails[i], p.Item.Fasteners[i].HandOnly, n)
		}
	}
	return t.list
}

// tally adds up fasteners of one size, coating and way of driving.
type tally struct {
	list []NailCount
	at   map[nailKey]int
}

type nailKey struct {
	diameter, length float64
	bolt, hand, ring bool
	coating          plan.Coating
}

func (t *tally) add(n hardware.Nail, hand bool, count int) {
	k := nailKey{n.Diameter, n.Length, n.Bolt(), hand, n.Ring(), n.Coating}
	i, ok := t.at[k]
	if !ok {
		if t.at == nil {
			t.at = map[nailKey]int{}
		}
		i = len(t.list)
		t.at[k] = i
		t.list = append(t.list, NailCount{Nail: nailLabel(n), Hand: hand, Size: n})
	}
	t.list[i].Count += count
}

// Label names the fastener in the words of a system: 8d common (0.131 x 2 1/2); in the
// metric one 8d common (3.3 x 64 mm), for it is bought by its US name.
func (n NailCount) Label(u units.System) string {
	return u.Sized(n.Nail, n.Size.Name, n.Size.Diameter, n.Size.Length)
}

// nailLabel names a nail with its size: 8d common (0.131" x 2 1/2").
func nailLabel(n hardware.Nail) string {
	if n.Name == "" || n.Name[0] == '0' || n.Name[0] == '.' || n.Bolt() || strings.HasPrefix(n.Name, "ring 0") {
		return n.Name
	}
	return n.Name + " (" + number(n.Diameter) + " x " + inches(n.Length) + ")"
}

// inches prints a length without its mark, as boxes of nails do: 2 1/2.
func inches(in float64) string {
	s := length.Feet(in)
	return s[:len(s)-1]
}

// Group is one part of a breakdown.
type Group struct {
	Name  string
	Lines []*Line // with only the pieces of this group; numbers as in the legend
}

// Pieces returns how many pieces the group has.
func (g *Group) Pieces() (n int) {
	for _, l := range g.Lines {
		n += len(l.Pieces)
	}
	return n
}

// Keys lists the breakdowns that By knows.
var Keys = []string{"item", "wall", "level", "phase"}

// By breaks the count down by item, wall (or roof, girder, porch), level or
// phase; groups of walls and levels come in the order of the house, phases in
// the order of work. It returns nil for another key.
func (s *Schedule) By(key string) []*Group {
	if !slices.Contains(Keys, key) {
		return nil
	}
	order := map[string]int{}
	pieces := map[string][]*placement.Piece{}
	var names []string
	for _, p := range s.Placement.Pieces {
		name, rank := s.groupOf(key, p)
		if _, ok := order[name]; !ok {
			order[name] = rank
			names = append(names, name)
		}
		pieces[name] = append(pieces[name], p)
	}
	slices.SortStableFunc(names, func(a, b string) int { return cmp.Compare(order[a], order[b]) })
	out := make([]*Group, len(names))
	for i, n := range names {
		out[i] = &Group{Name: n, Lines: s.split(pieces[n])}
	}
	return out
}

// groupOf names the group of a piece and its place among the groups.
func (s *Schedule) groupOf(key string, p *placement.Piece) (string, int) {
	switch key {
	case "item":
		return p.Item.Mark, s.Number(p.Item.Mark)
	case "wall":
		return p.Joint.Host, 0
	case "phase":
		return string(p.Item.Phase.Name), p.Item.Phase.Order()
	}
	switch j := p.Joint; {
	case j.Level != nil:
		l := s.Placement.House.Story(j)
		return l.Name, l.Index
	case j.Roof != nil:
		return "roof", len(s.Placement.House.Plan.Levels)
	}
	return "foundation", -1
}

// split counts some pieces by item, in the order of the legend.
func (s *Schedule) split(pieces []*placement.Piece) (out []*Line) {
	by := map[*hardware.Item]*Line{}
	for _, p := range pieces {
		l := by[p.Item]
		if l == nil {
			l = &Line{Number: s.Number(p.Item.Mark), Item: p.Item}
			by[p.Item] = l
			out = append(out, l)
		}
		l.Pieces = append(l.Pieces, p)
	}
	slices.SortFunc(out, func(a, b *Line) int { return cmp.Compare(a.Number, b.Number) })
	for _, l := range out {
		l.fill()
	}
	return out
}
