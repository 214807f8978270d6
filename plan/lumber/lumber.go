package lumber

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/units"
)

// Cut is the cut list of a house.
type Cut struct {
	Stock    []float64  // the yard's lengths, in, shortest first
	Sections []*Section // thinnest and shallowest first
	Long     []*Part    // members longer than the longest stock: to be ordered to length
	Made     []*Part    // trusses, piles: counted, not cut
	Trusses  []*Truss   // those by shape
	Units    units.System
}

// Section is all lumber of one section.
type Section struct {
	Name           string // of one ply, "2x6"
	Breadth, Depth float64
	Parts          []*Part  // in order of role and length, longest first
	Sticks         []*Stick // longest stock first
	Need           float64  // total length of the pieces, in
	Bought         float64  // total length of the sticks, in
	Bound          float64  // total length that no cutting can stay under, in
}

// Part is a number of equal pieces.
type Part struct {
	Section string
	Role    plan.Role
	Bevel   float64 // of a plate's end or along a stud, degrees off square; 0 for none
	Length  float64 // cut length, long point to long point, to the next 1/16 in
	Count   int
	Members []string // IDs; a member of several plies comes once for each
}

// Stick is a number of equal pieces of stock with one pattern of cuts.
type Stick struct {
	Length float64
	Count  int
	Cuts   []float64 // longest first
	Left   float64   // what is left over of one
}

// Waste returns the share of what is bought that does not go into the house,
// in per cent.
func (s *Section) Waste() float64 {
	if s.Bought == 0 {
		return 0
	}
	return 100 * (s.Bought - s.Need) / s.Bought
}

// madeUp lists the roles that no yard length is cut for.
var madeUp = append(slices.Clone(plan.TrussRoles), plan.Pile)

// List returns the cut list of the house.
func List(h *framing.House) *Cut {
	c := &Cut{Stock: yard(h.Plan), Units: h.Plan.Project.Units}
	longest := c.Stock[len(c.Stock)-1]
	sections := map[string]*Section{}
	for _, m := range h.Members {
		if m.Length <= 0 {
			continue
		}
		length := tape(m.Length)
		switch {
		case slices.Contains(madeUp, m.Role):
			c.Made = tally(c.Made, m, m.Section.Text, length, 1)
		case length > longest:
			c.Long = tally(c.Long, m, onePly(m.Section), length, max(m.Section.Ply, 1))
		default:
			name := onePly(m.Section)
			if sections[name] == nil {
				sections[name] = &Section{Name: name, Breadth: m.Section.Breadth, Depth: m.Section.Depth}
				c.Sections = append(c.Sections, sections[name])
			}
			s := sections[name]
			s.Parts = tally(s.Parts, m, name, length, max(m.Section.Ply, 1))
		}
	}
	slices.SortFunc(c.Sections, func(a, b *Section) int {
		return cmp.Or(cmp.Compare(a.Breadth, b.Breadth), cmp.Compare(a.Depth, b.Depth), cmp.Compare(a.Name, b.Name))
	})
	for _, s := range c.Sections {
		s.cut(c.Stock)
	}
	inOrder(c.Long)
	inOrder(c.Made)
	c.Trusses = Trusses(h)
	return c
}

// yard returns the stock lengths of the plan, or 8 to 20 ft by 2 ft.
func yard(p *plan.Plan) []float64 {
	stock := slices.Clone(p.Lumber.Stock)
	if len(stock) == 0 {
		stock = []float64{96, 120, 144, 168, 192, 216, 240}
	}
	slices.Sort(stock)
	return slices.Compact(stock)
}

// tape rounds a length up to the next 1/16 in, unless it is one already.
func tape(in float64) float64 { return math.Ceil(in*16-1e-4) / 16 }

// onePly names the section of one ply of a member.
func onePly(l plan.Lumber) string {
	if ply, rest, ok := strings.Cut(l.Text, "-"); ok && ply == fmt.Sprint(l.Ply) {
		return rest
	}
	if l.Text == "" {
		return fmt.Sprintf("%gx%g", l.Breadth, l.Depth)
	}
	return l.Text
}

// tally counts n pieces of member m in list.
func tally(list []*Part, m *framing.Member, section string, length float64, n int) []*Part {
	i := slices.IndexFunc(list, func(p *Part) bool {
		return p.Role == m.Role && tenth(p.Bevel) == tenth(m.Bevel) && p.Length == length && p.Section == section
	})
	if i < 0 {
		list, i = append(list, &Part{Section: section, Role: m.Role, Bevel: m.Bevel, Length: length}), len(list)
	}
	list[i].Count += n
	for range n {
		list[i].Members = append(list[i].Members, m.ID)
	}
	return list
}

// tenth is an angle in whole tenths of a degree, as the list prints it.
func tenth(degrees float64) float64 { return math.Round(10 * degrees) }

// inOrder sorts parts by section, role and length, longest first.
func inOrder(parts []*Part) {
	slices.SortStableFunc(parts, func(a, b *Part) int {
		return cmp.Or(cmp.Compare(a.Section, b.Section), cmp.Compare(a.Role, b.Role), cmp.Compare(b.Length, a.Length), cmp.Compare(a.Bevel, b.Bevel))
	})
}

// cut fills in the sticks of a section.
func (s *Section) cut(stock []float64) {
	inOrder(s.Parts)
	var pieces, lengths []int
	for _, l := range stock {
		lengths = append(lengths, sixteenths(l))
	}
	for _, p := range s.Parts {
		for range p.Count {
			pieces = append(pieces, sixteenths(p.Length))
		}
		s.Need += p.Length * float64(p.Count)
	}
	sticks, least := pack(pieces, lengths)
	s.Bound = float64(least) / 16
	for _, k := range sticks {
		s.add(k)
	}
}

// add counts a stick with the last one when both are cut alike; they come
// sorted.
func (s *Section) add(k stick) {
	cuts := make([]float64, len(k.cuts))
	for i, c := range k.cuts {
		cuts[i] = float64(c) / 16
	}
	length := float64(k.stock) / 16
	s.Bought += length
	if n := len(s.Sticks); n > 0 && s.Sticks[n-1].Length == length && slices.Equal(s.Sticks[n-1].Cuts, cuts) {
		s.Sticks[n-1].Count++
		return
	}
	s.Sticks = append(s.Sticks, &Stick{Length: length, Count: 1, Cuts: cuts, Left: float64(waste(k.stock, k.cuts)) / 16})
}

func sixteenths(in float64) int { return int(math.Round(in * 16)) }

// Order is how many of one stock length of a section to buy.
type Order struct {
	Section string
	Length  float64 // in
	Count   int
}

// Orders returns what to buy, by section and length, longest first.
func (c *Cut) Orders() (out []Order) {
	for _, s := range c.Sections {
		for _, k := range s.Sticks {
			n := len(out)
			if n > 0 && out[n-1].Section == s.Name && out[n-1].Length == k.Length {
				out[n-1].Count += k.Count
				continue
			}
			out = append(out, Order{s.Name, k.Length, k.Count})
		}
	}
	return out
}
