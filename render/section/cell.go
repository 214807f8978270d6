package section

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan/loadpath"
	"galewright/render/page"
	"galewright/render/sheet"
)

// cell is a section with what stands beside it, on a sheet.
type cell struct {
	*slice
	paper *paper
	at    sheet.Pt // upper left corner on the sheet
	w, h  sheet.MM
	sides [2]column // outward, inward
	names sheet.MM  // room for the heights beside the picture
	wide  sheet.MM  // of the picture
	high  sheet.MM
	base  sheet.MM // of what stands under the picture
	c     *page.Context
}

// column is what is said of joints at one side of the picture.
type column struct {
	notes []note
	w     sheet.MM
}

// note is what is said of a joint.
type note struct {
	row
	numbers []int
	lines   [2]string
	w       sheet.MM
}

// lead is the room for leaders between the picture and what is said, mm; arrowRoom that
// of the arrow of a force.
const lead, arrowRoom sheet.MM = 9, 3

// newCell lays a section out at a scale.
func newCell(c *page.Context, s *slice, scale page.Scale) *cell {
	x := &cell{slice: s, c: c, paper: &paper{scale: scale, lo: s.lo, breaks: [2][]stretch{s.plain(0), s.plain(1)}}}
	x.wide, x.high = x.paper.along(0, s.hi.X), x.paper.along(1, s.hi.Y)
	for _, r := range s.rows {
		side := 0
		if x.paper.along(0, r.at.X) > x.wide/2 {
			side = 1
		}
		x.sides[side].add(c, r)
	}
	for _, l := range s.levels(c) {
		x.names = max(x.names, page.TextWidth(l.name+" "+c.Length(l.z), c.Size.Dim, false)+1)
	}
	_, title := c.ViewTitleSize(s.name(c), scale)
	x.base = title + 5
	x.sides[1].w = max(x.sides[1].w, x.names)
	x.w = x.sides[0].width() + x.wide + lead + x.sides[1].w
	x.w = max(x.w, page.TextWidth(s.name(c)+"  "+scale.Name, c.Size.Head, true)+10)
	need := max(x.sides[0].height(c), x.sides[1].height(c)+sheet.MM(len(s.levels(c)))*c.Size.Dim*1.8)
	x.h = max(x.high, need) + x.base
	return x
}

// add puts what is said of a joint into a column.
func (k *column) add(c *page.Context, r row) {
	n := note{row: r, numbers: numbers(c, r.link)}
	n.lines = [2]string{r.link.ID, force(c, r.link)}
	if r.of > 1 {
		n.lines[0] += fmt.Sprintf(", worst of %d", r.of)
	}
	for _, s := range n.lines {
		n.w = max(n.w, page.TextWidth(s, c.Size.Note, true))
	}
	n.w += arrowRoom + sheet.MM(len(n.numbers))*(2*c.LegendRadius()+0.8) + 1.5
	k.notes = append(k.notes, n)
	k.w = max(k.w, n.w)
}

func (k *column) width() sheet.MM {
	if len(k.notes) == 0 {
		return 2
	}
	return k.w + lead
}

// noteHigh is the room that one note takes, mm.
func noteHigh(c *page.Context) sheet.MM { return max(c.Size.Note*3.6, 2*c.LegendRadius()) + 1.6 }

func (k *column) height(c *page.Context) sheet.MM { return sheet.MM(len(k.notes)) * noteHigh(c) }

// numbers are the legend numbers of the pieces at a link, lowest first.
func numbers(c *page.Context, l *loadpath.Link) (out []int) {
	for _, pc := range c.Placement.At(l.Joint) {
		if n := c.Legend(pc); !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	slices.Sort(out)
	return out
}

// force says what a link is asked and holds.
func force(c *page.Context, l *loadpath.Link) string {
	demand := loadpath.Amount(c.Units(), l.Demand, l.Unit)
	if l.Gap != "" {
		return demand + ": gap"
	}
	return demand + " / " + loadpath.Amount(c.Units(), l.Capacity.Value, l.Unit) + " = " + page.Ratio(l.Ratio) + l.Capacity.Starred()
}

// largestUplift is the largest that a joint of the section is lifted by, lb.
func (s *slice) largestUplift() (most float64) {
	for _, r := range s.rows {
		if r.link.Uplift() && r.link.Unit == "lb" {
			most = math.Max(most, r.link.Demand)
		}
	}
	return most
}
