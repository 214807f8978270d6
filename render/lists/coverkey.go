package lists

import (
	"fmt"
	"math"
	"strings"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/render/label"
	"galewright/render/page"
	"galewright/render/sheet"
)

// keyPlans returns a small outline of each level with the name of each wall
// and the sheet of its elevation.
func keyPlans(c *page.Context, w sheet.MM) (out []page.Block) {
	lo, hi, ok := c.WallBounds()
	if !ok {
		return nil
	}
	cap := c.ReadingCap()
	head := cap * 1.4
	title := head*1.65 + 2
	sheets := c.Foreseen
	mx, my := sheet.MM(0), cap*1.35+3 // room for names outside
	for _, w := range c.House.Plan.Walls {
		mx = max(mx, nameWidth(w.Name, strings.Join(sheets.Of("wall "+w.Name), ", "), cap)+3)
	}
	mx = min(mx, w/3)
	k := float64(w-2*mx) / math.Max(hi.X-lo.X, 1)
	limit := float64(c.DrawingArea().H)*0.46 - float64(2*my+title)
	if h := (hi.Y - lo.Y) * k; h > limit && limit > 0 {
		k *= limit / h
	}
	h := title + 2*my + sheet.MM((hi.Y-lo.Y)*k)
	for _, l := range c.House.Plan.Levels {
		walls := c.WallsOn(l)
		if len(walls) == 0 {
			continue
		}
		out = append(out, &page.Figure{W: w, H: h, Draw: func(p *page.Page, at sheet.Pt) {
			r := sheet.Rect{X: at.X, Y: at.Y + title, W: w, H: h - title}
			origin := sheet.Pt{X: r.X + r.W/2 - sheet.MM((lo.X+hi.X)/2*k), Y: r.Y + r.H/2 + sheet.MM((lo.Y+hi.Y)/2*k)}
			kp := &keyPlan{Page: p, cap: cap, sheets: sheets, k: k, origin: origin, board: label.NewBoard(r)}
			name := "Key plan, " + l.Name + ", not to scale"
			if n := kp.draw(r, walls); n > 0 {
				name += fmt.Sprintf(", %d names left out", n)
			}
			p.Text(page.Lettered{S: page.FitText(name, head, true, w), Cap: head, At: sheet.Pt{X: at.X, Y: at.Y + head*1.1}, Bold: true, Role: "note"})
		}})
	}
	return out
}

// keyPlan draws one level.
type keyPlan struct {
	*page.Page
	cap    sheet.MM
	sheets page.Outlook
	k      float64 // mm of paper an inch of house
	origin sheet.Pt
	board  *label.Board
}

func (kp *keyPlan) pt(p geom.Vec2) sheet.Pt {
	return sheet.Pt{X: kp.origin.X + sheet.MM(p.X*kp.k), Y: kp.origin.Y - sheet.MM(p.Y*kp.k)}
}

// draw draws the walls and their names; it returns how many names found no
// place. Where names would fill half the room, each is tried beside its wall
// alone, without leaders.
func (kp *keyPlan) draw(r sheet.Rect, walls []*plan.Wall) (left int) {
	for _, w := range walls {
		kp.wall(w)
	}
	a := sheet.Rect{X: r.X + r.W - 13, Y: r.Y, W: 13, H: 13}
	kp.NorthArrow(a.Center(), 0)
	kp.board.Block(a)
	labels, area := make([]label.Label, len(walls)), sheet.MM(0)
	for i, w := range walls {
		labels[i] = kp.name(w)
		area += labels[i].W * labels[i].H
	}
	if area > r.W*r.H/2 {
		for i := range labels {
			labels[i].Anchors = nil
		}
	}
	for i, pl := range kp.board.Place(labels) {
		if pl.OK {
			kp.set(walls[i], pl)
		} else {
			left++
		}
	}
	return left
}

// wall draws a wall to its true place, at least a pen wide so that it is
// seen: outer walls solid, inner walls open.
func (kp *keyPlan) wall(w *plan.Wall) {
	f, n := w.Frame(), w.Length()
	t := math.Max(w.Depth(), 1.0/kp.k)
	var pts []sheet.Pt
	for _, q := range [][2]float64{{0, 0}, {n, 0}, {n, t}, {0, t}} {
		pts = append(pts, kp.pt(f.At(q[0], q[1], 0).Flat()))
	}
	s := sheet.Style{Pen: sheet.PenMember, Fill: sheet.White, Layer: sheet.LayerMember}
	if w.Exterior {
		s.Fill = sheet.Black
	}
	kp.Polygon(s, pts...)
	kp.board.Block(page.Bounds(pts))
}

// text of a wall's label: its name, and the sheets of its elevation.
func (kp *keyPlan) label(w *plan.Wall) (name, sheets, first string) {
	of := kp.sheets.Of("wall " + w.Name)
	if len(of) > 0 {
		first = of[0]
	}
	return w.Name, strings.Join(of, ", "), first
}

// nameWidth is the width of a wall's label.
func nameWidth(name, sheets string, cap sheet.MM) sheet.MM {
	return page.TextWidth(name, cap, true) + 1.5 + page.TextWidth(sheets, cap, false)
}

// name returns the label of a wall: beside its middle on the side it is seen
// from, then along it, then inside.
func (kp *keyPlan) name(w *plan.Wall) label.Label {
	name, sheets, _ := kp.label(w)
	z := kp.cap
	lw := nameWidth(name, sheets, z)
	lh := z * 1.35
	l := label.Label{Name: "wall " + w.Name, W: lw + 0.6, H: lh + 0.4}
	f, n := w.Frame(), w.Length()
	out := geom.Vec2{X: -f.In.X, Y: -f.In.Y}
	for _, side := range []float64{1, -1} {
		for _, s := range []float64{0.5, 0.35, 0.65, 0.2, 0.8} {
			depth := 0.0
			if side < 0 {
				depth = math.Max(w.Depth(), 1/kp.k)
			}
			p := kp.pt(f.At(n*s, depth, 0).Flat())
			dx := math.Abs(out.X)*float64(l.W/2) + 1.2*math.Abs(out.X)
			dy := math.Abs(out.Y)*float64(l.H/2) + 1.2*math.Abs(out.Y)
			l.Near = append(l.Near, sheet.Pt{X: p.X + sheet.MM(side*sign(out.X)*dx), Y: p.Y - sheet.MM(side*sign(out.Y)*dy)})
		}
	}
	l.Anchors = []sheet.Pt{kp.pt(f.At(n/2, w.Depth()/2, 0).Flat()), kp.pt(f.At(n/4, w.Depth()/2, 0).Flat())}
	return l
}

func sign(x float64) float64 {
	switch {
	case x > geom.Eps:
		return 1
	case x < -geom.Eps:
		return -1
	}
	return 0
}

// set letters a wall where its label went.
func (kp *keyPlan) set(w *plan.Wall, pl label.Place) {
	name, sheets, link := kp.label(w)
	z := kp.cap
	if len(pl.Leader) > 1 {
		kp.Polyline(sheet.PenDim, sheet.LayerLabel, pl.Leader...)
	}
	at := sheet.Pt{X: pl.Rect.X + 0.3, Y: pl.Rect.Y + pl.Rect.H/2 + z/2}
	kp.Text(page.Lettered{S: name, Cap: z, At: at, Bold: true, Role: "label"})
	if sheets != "" {
		kp.Text(page.Lettered{S: sheets, Cap: z, At: at.Add(sheet.Pt{X: page.TextWidth(name, z, true) + 1.5}), Role: "label", Link: link})
	}
	kp.Box("label", "key plan wall "+w.Name, pl.Rect)
}
