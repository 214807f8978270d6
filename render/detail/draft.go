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
	du         float64 // added to u: where the present view stands
	cutsU      []cut
	cutsV      []cut
	notes      []callout
	heads      []viewHead
}

// cut is a length left out between two break lines, in.
type cut struct{ from, to float64 }

// cutGap is what a cut takes on paper.
const cutGap sheet.MM = 4

// grain is what the surface of a member shows.
type grain uint8

const (
	plain    grain = iota
	alongU         // grain runs to the right
	alongV         // grain runs up
	endGrain       // cut across: the cross of common drafting practice
)

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
	return &draft{Page: c.NewPage("", ""), k: s.K()}
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
	return sheet.Pt{X: squeeze(u, d.k, d.cutsU) + sheet.MM(d.du*d.k), Y: -squeeze(v, d.k, d.cutsV)}
}

func (d *draft) pts(ps ...geom.Vec2) []sheet.Pt {
	out := make([]sheet.Pt, len(ps))
	for i, p := range ps {
		out[i] = d.at(p.X, p.Y)
	}
	return out
}

func box2(u0, u1, v0, v1 float64) []geom.Vec2 {
	return []geom.Vec2{{X: u0, Y: v0}, {X: u1, Y: v0}, {X: u1, Y: v1}, {X: u0, Y: v1}}
}

// wood draws a member's face. Its ends are square; see ragged.
func (d *draft) wood(u0, u1, v0, v1 float64, g grain) {
	d.Polygon(sheet.Style{Pen: sheet.PenMember, Fill: sheet.White, Layer: sheet.LayerMember}, d.pts(box2(u0, u1, v0, v1)...)...)
	d.grain(u0, u1, v0, v1, g)
}

// grain draws the lines that tell which way the wood runs.
func (d *draft) grain(u0, u1, v0, v1 float64, g grain) {
	thin := func(a, b sheet.Pt) { d.Line(sheet.PenDim, sheet.LayerMember, a, b) }
	switch g {
	case endGrain:
		thin(d.at(u0, v0), d.at(u1, v1))
		thin(d.at(u0, v1), d.at(u1, v0))
	case alongU:
		for i, n := 1, grainLines((v1-v0)*d.k); i <= n; i++ {
			v := v0 + (v1-v0)*float64(i)/float64(n+1)
			f, t := fiber(i)
			thin(d.at(u0+(u1-u0)*f, v), d.at(u0+(u1-u0)*t, v))
		}
	case alongV:
		for i, n := 1, grainLines((u1-u0)*d.k); i <= n; i++ {
			u := u0 + (u1-u0)*float64(i)/float64(n+1)
			f, t := fiber(i)
			thin(d.at(u, v0+(v1-v0)*f), d.at(u, v0+(v1-v0)*t))
		}
	}
}

// grainLines returns how many grain lines a face of that width on paper
// takes without turning gray.
func grainLines(mm float64) int { return min(4, int(mm/2.4)) }

// fiber returns where along a face the i-th grain line begins and ends.
func fiber(i int) (from, to float64) {
	return [...]float64{0.08, 0.2, 0.04, 0.3}[i%4], [...]float64{0.7, 0.94, 0.85, 0.97}[i%4]
}

// ragged draws the break line over a member that goes on past v.
func (d *draft) ragged(u0, u1, v float64, up bool) {
	a, b := d.at(u0, v), d.at(u1, v)
	dy := sheet.MM(1.2)
	if up {
		dy = -dy
	}
	m := (a.X + b.X) / 2
	wave := []sheet.Pt{{X: a.X - 1, Y: a.Y}, {X: m - 0.9, Y: a.Y}, {X: m - 0.3, Y: a.Y - 1.1}, {X: m + 0.3, Y: a.Y + 1.1}, {X: m + 0.9, Y: a.Y}, {X: b.X + 1, Y: a.Y}}
	mask := append(append([]sheet.Pt{}, wave...), sheet.Pt{X: b.X + 1, Y: a.Y + dy}, sheet.Pt{X: a.X - 1, Y: a.Y + dy})
	d.Polygon(sheet.Style{Fill: sheet.White, Layer: sheet.LayerMember}, mask...)
	d.Polyline(sheet.PenDim, sheet.LayerMember, wave...)
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

// steel draws an outline of steel.
func (d *draft) steel(ps ...geom.Vec2) {
	d.Polygon(sheet.Style{Pen: sheet.PenHardware, Fill: sheet.White, Layer: sheet.LayerHardware}, d.pts(ps...)...)
}

// edge draws steel seen on its edge: the heaviest line.
func (d *draft) edge(ps ...geom.Vec2) {
	d.Polyline(sheet.PenHardware, sheet.LayerHardware, d.pts(ps...)...)
}

// hole draws a hole; a filled one, which takes a nail, is black.
func (d *draft) hole(u, v, dia float64, filled bool) {
	s := sheet.Style{Pen: sheet.PenDim, Fill: sheet.White, Layer: sheet.LayerHardware}
	if filled {
		s = sheet.Style{Fill: sheet.Black, Layer: sheet.LayerHardware}
	}
	d.Circle(s, d.at(u, v), max(0.45, sheet.MM(dia/2*d.k)))
}

// nail draws a fastener from the side: its head at u, v, its shank running
// along direction dir for its length.
func (d *draft) nail(u, v, length float64, dir geom.Vec2) {
	side := dir.Left().Mul(0.16)
	head, tip := geom.Vec2{X: u, Y: v}, geom.Vec2{X: u, Y: v}.Add(dir.Mul(length))
	p := d.pts(head, tip, head.Add(side), head.Sub(side))
	d.Line(sheet.PenMember, sheet.LayerHardware, p[0], p[1])
	d.Line(sheet.PenHardware, sheet.LayerHardware, p[2], p[3])
}

// rod draws a threaded rod standing between v0 and v1 with its center at u.
func (d *draft) rod(u, v0, v1, dia float64) {
	d.steel(box2(u-dia/2, u+dia/2, v0, v1)...)
	for v := v0 + dia*0.4; v < v1-dia*0.2; v += max(dia*0.5, 1.5/d.k) {
		d.Line(sheet.PenDim, sheet.LayerHardware, d.at(u-dia/2, v-dia*0.1), d.at(u+dia/2, v+dia*0.1))
	}
}

// nut draws a nut standing on v.
func (d *draft) nut(u, v, dia float64) {
	d.Polygon(sheet.Style{Fill: sheet.Black, Layer: sheet.LayerHardware}, d.pts(box2(u-dia*0.9, u+dia*0.9, v, v+dia*0.85)...)...)
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
