package lumber

import (
	"cmp"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/units"
)

// Truss is a number of trusses of one shape, as they are ordered.
type Truss struct {
	Role    plan.Role
	Chords  string     // section of one ply, "2x4"
	Plies   int        // of each
	Span    float64    // length of the bottom chord, in
	Slopes  [2]float64 // of its top chords, rise in 12; of a half truss the first alone
	Height  float64    // overall, from the lowest point of its tails, in
	Level   float64    // length of a level top chord, in; 0 for none
	Count   int
	Numbers []string // on the roof plan
	Members []string // IDs
}

// Trusses gathers the trusses of a house by shape, in the order of their roles.
func Trusses(h *framing.House) (out []*Truss) {
	for _, m := range h.Members {
		if !m.Role.IsTruss() {
			continue
		}
		x := shapeOf(m)
		i := slices.IndexFunc(out, func(o *Truss) bool { return o.same(x) })
		if i < 0 {
			out, i = append(out, x), len(out)
		}
		out[i].Count++
		out[i].Numbers, out[i].Members = append(out[i].Numbers, m.Ref), append(out[i].Members, m.ID)
	}
	slices.SortStableFunc(out, func(a, b *Truss) int {
		return cmp.Or(cmp.Compare(slices.Index(plan.TrussRoles, a.Role), slices.Index(plan.TrussRoles, b.Role)), cmp.Compare(b.Span, a.Span), cmp.Compare(b.Height, a.Height))
	})
	return out
}

// shapeOf reads the shape of a truss.
func shapeOf(m *framing.Member) *Truss {
	lo, hi := m.Bounds()
	x := &Truss{Role: m.Role, Chords: onePly(m.Section), Plies: max(m.Section.Ply, 1), Span: tape(m.Length), Height: tape(hi.Z - lo.Z), Level: tape(m.Flat[1].Sub(m.Flat[0]).Len())}
	if d := m.B.Sub(m.A); m.Role == plan.JackTruss || m.Role == plan.CornerJack {
		x.Slopes[0] = 12 * d.Z / d.Flat().Len()
	} else if m.Roof != nil {
		x.Slopes = [2]float64{m.Roof.Pitch, cmp.Or(m.Roof.PitchOther, m.Roof.Pitch)}
	}
	return x
}

// same tells whether two trusses are ordered as one.
func (x *Truss) same(o *Truss) bool {
	near := func(a, b float64) bool { return math.Abs(a-b) < 1.0/8 }
	return x.Role == o.Role && x.Chords == o.Chords && x.Plies == o.Plies && near(x.Span, o.Span) && near(x.Height, o.Height) &&
		near(x.Level, o.Level) && near(x.Slopes[0], o.Slopes[0]) && near(x.Slopes[1], o.Slopes[1])
}

// trussTitle heads the list of trusses.
const trussTitle = "TRUSSES: ordered by shape, from the truss designer's own drawings; sizes of chords as the plan takes them"

// trussTable prints the trusses.
func (c *Cut) trussTable(w io.Writer) {
	if len(c.Trusses) == 0 {
		return
	}
	fmt.Fprintln(w, trussTitle)
	fmt.Fprintln(w, "truss\tchords\tplies\tspan\tslope\theight\tlevel top\tpieces\tnumbers\t")
	for _, x := range c.Trusses {
		fmt.Fprintln(w, strings.Join(append(x.Row(c.Units), ""), "\t"))
	}
	fmt.Fprintln(w)
}

// Row is the row of a truss in a table: its role, chords, plies, span, slope, height,
// level top, pieces and numbers.
func (x *Truss) Row(u units.System) []string {
	level := "-"
	if x.Level > 0 {
		level = u.Length(x.Level)
	}
	return []string{
		string(x.Role), x.Chords, fmt.Sprint(x.Plies), u.Length(x.Span), x.slope(), u.Length(x.Height), level,
		fmt.Sprint(x.Count), strings.Join(x.Numbers, " "),
	}
}

// slope prints the slopes of the top chords, both where they differ.
func (x *Truss) slope() string {
	s := twelve(x.Slopes[0])
	if x.Slopes[1] > 0 && math.Abs(x.Slopes[1]-x.Slopes[0]) > 1e-6 {
		s += " and " + twelve(x.Slopes[1])
	}
	return s
}

// twelve prints a rise in 12 to the hundredth.
func twelve(rise float64) string { return fmt.Sprintf("%g in 12", hundredth(rise)) }
