package detail

import (
	"math"

	"galewright/plan/geom"
	"galewright/render/page"
	"galewright/render/sheet"
)

// draft is a detail while it is drawn: marks at a scale about an origin of
// its own, measured and then moved to where there is room for it. u runs to
// the right and v up, in inches of the house.
type draft struct {
	*page.Page // scratch page that gathers marks and boxes
	k          float64
	origin     sheet.Pt        // where the present view's middle stands
	named      map[string]bool // members that have their name
	drawn      []stroke        // lines of wood of the present view
	cutsU      []cut
	cutsV      []cut
	notes      []callout
	heads      []viewHead
}

// cut is a length left out between two break lines, in.
type cut struct{ from, to float64 }

// cutGap is what a cut takes on paper.
const cutGap sheet.MM = 4

// callout is a note with a leader to a point.
type callout struct {
	at    sheet.Pt
	lines []string
}

// viewHead is the name of a view over its middle.
type viewHead struct {
	x sheet.MM
	s string
}

func newDraft(c *page.Context, s page.Scale) *draft {
	return &draft{Page: c.NewPage("", ""), k: s.K(), named: map[string]bool{}}
}

// squeeze maps a model length onto paper with the cuts taken out, mm.
func squeeze(x, k float64, cuts []cut) sheet.MM {
	out := x * k
	for _, c := range cuts {
		gone := (c.to-c.from)*k - float64(cutGap)
		out -= gone * max(0, min(1, (x-c.from)/(c.to-c.from)))
	}
	return sheet.MM(out)
}

// at returns the place on paper of a point of the present view.
func (d *draft) at(u, v float64) sheet.Pt {
	return sheet.Pt{X: d.origin.X + squeeze(u, d.k, d.cutsU), Y: d.origin.Y - squeeze(v, d.k, d.cutsV)}
}

func (d *draft) pts(ps ...geom.Vec2) []sheet.Pt {
	out := make([]sheet.Pt, len(ps))
	for i, p := range ps {
		out[i] = d.at(p.X, p.Y)
	}
	return out
}

// grainLines returns how many grain lines a face of that width on paper
// takes without turning gray.
func grainLines(mm float64) int { return min(4, int(mm/2.4)) }

// fiber returns where along a face the i-th grain line begins and ends.
func fiber(i int) (from, to float64) {
	return [...]float64{0.08, 0.2, 0.04, 0.3}[i%4], [...]float64{0.7, 0.94, 0.85, 0.97}[i%4]
}

// broken draws the two break lines of each cut across u0..u1.
func (d *draft) broken(u0, u1 float64) {
	for _, c := range d.cutsV {
		lo, hi := d.at(0, c.from).Y-cutGap*0.2, d.at(0, c.to).Y+cutGap*0.2
		x0, x1 := d.at(u0, 0).X-1.5, d.at(u1, 0).X+1.5
		zig := func(y sheet.MM) []sheet.Pt {
			m := (x0 + x1) / 2
			return []sheet.Pt{{X: x0, Y: y}, {X: m - 1, Y: y}, {X: m - 0.4, Y: y - 1}, {X: m + 0.4, Y: y + 1}, {X: m + 1, Y: y}, {X: x1, Y: y}}
		}
		a, b := zig(lo), zig(hi)
		d.gap(a, b)
	}
}

// brokenU is broken for cuts along u, across v0..v1.
func (d *draft) brokenU(v0, v1 float64) {
	for _, c := range d.cutsU {
		lo, hi := d.at(c.from, 0).X+cutGap*0.2, d.at(c.to, 0).X-cutGap*0.2
		y0, y1 := d.at(0, v0).Y+1.5, d.at(0, v1).Y-1.5
		zig := func(x sheet.MM) []sheet.Pt {
			m := (y0 + y1) / 2
			return []sheet.Pt{{X: x, Y: y0}, {X: x, Y: m + 1}, {X: x - 1, Y: m + 0.4}, {X: x + 1, Y: m - 0.4}, {X: x, Y: m - 1}, {X: x, Y: y1}}
		}
		d.gap(zig(lo), zig(hi))
	}
}

// gap whitens what lies between two break lines and draws them.
func (d *draft) gap(a, b []sheet.Pt) {
	mask := append([]sheet.Pt{}, a...)
	for i := len(b) - 1; i >= 0; i-- {
		mask = append(mask, b[i])
	}
	d.Polygon(sheet.Style{Fill: sheet.White, Layer: sheet.LayerMember}, mask...)
	d.Polyline(sheet.PenDim, sheet.LayerMember, a...)
	d.Polyline(sheet.PenDim, sheet.LayerMember, b...)
}

// hole draws a hole; a filled one, which takes a fastener, is black, one that
// something hides dashed.
func (d *draft) hole(u, v, dia float64, filled, seen bool) {
	s := sheet.Style{Pen: sheet.PenDim, Fill: sheet.White, Layer: sheet.LayerHardware}
	switch {
	case !seen:
		s = sheet.Style{Pen: sheet.PenHidden, Layer: sheet.LayerHardware}
	case filled:
		s = sheet.Style{Fill: sheet.Black, Layer: sheet.LayerHardware}
	}
	d.Circle(s, d.at(u, v), max(0.45, sheet.MM(dia/2*d.k)))
}

// head names the view that was drawn about u.
func (d *draft) head(u float64, s string) {
	d.heads = append(d.heads, viewHead{d.at(u, 0).X, s})
}

// say adds a note with a leader to u, v of the present view.
func (d *draft) say(u, v float64, s string) {
	d.notes = append(d.notes, callout{at: d.at(u, v), lines: page.Wrap(s, d.Size.Note, false, d.noteWidth())})
}

func (d *draft) noteWidth() sheet.MM { return 19 * d.Size.Note }

// extent measures what has been drawn.
func (d *draft) extent() sheet.Rect {
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	grow := func(r sheet.Rect) {
		x0, y0 = min(x0, float64(r.X)), min(y0, float64(r.Y))
		x1, y1 = max(x1, float64(r.X+r.W)), max(y1, float64(r.Y+r.H))
	}
	for _, m := range d.Marks {
		grow(sheet.Bounds(m, nil))
	}
	for _, b := range d.Boxes {
		grow(b.Rect)
	}
	return sheet.Rect{X: sheet.MM(x0), Y: sheet.MM(y0), W: sheet.MM(x1 - x0), H: sheet.MM(y1 - y0)}
}
