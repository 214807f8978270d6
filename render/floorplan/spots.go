package floorplan

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/render/label"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/symbols"
)

// spot is a piece drawn at its own place on a plan, not in a lane.
type spot struct {
	piece *placement.Piece
	at    geom.Vec2
	away  geom.Vec2 // the way a second piece at one place moves, unit
	home  bool      // this sheet is the piece's own
}

// spotOf places a piece where its steel is; one off its joint to a side moves
// on that way, others along.
func spotOf(pc *placement.Piece, along geom.Vec2) spot {
	s := spot{piece: pc, at: pc.Joint.At.Flat(), away: along, home: true}
	if n := len(pc.Path); n > 0 {
		mid := pc.Path[0].Add(pc.Path[n-1]).Mul(0.5).Flat()
		if off := mid.Sub(s.at); off.Len() > 0.5 {
			s.away = off.Unit()
		}
		s.at = mid
	}
	return s
}

// spotDrawn is a spot's piece with its place on paper.
type spotDrawn struct {
	piece *placement.Piece
	at    sheet.Pt
	sym   sheet.Symbol
	scale float64
	home  bool
}

// box is what the piece takes on paper.
func (s spotDrawn) box() sheet.Rect { return symbolBox(s.sym, s.at, s.scale) }

// drawSpots draws pieces at their places; those that would cover each other
// move away in turn. Each host's pieces get legend circles.
func (v *planView) drawSpots(spots []spot) {
	on := map[string][]spotDrawn{} // by host
	var hosts []string
	drawn := v.spread(spots)
	for _, s := range drawn { // heavy members lie under some
		v.Rect(sheet.Style{Fill: sheet.White, Layer: sheet.LayerMember}, s.box().Inset(-0.35))
	}
	for _, s := range drawn {
		v.drawPiece(s.sym, s.at, s.scale, s.piece, s.home)
		h := s.piece.Joint.Host
		if on[h] == nil {
			hosts = append(hosts, h)
		}
		on[h] = append(on[h], s)
	}
	for _, h := range hosts {
		v.circleSpots(h, on[h])
	}
}

// spread gives the pieces on this sheet their places on paper.
func (v *planView) spread(spots []spot) (out []spotDrawn) {
	taken := label.NewBoard(sheet.Rect{X: -1e4, Y: -1e4, W: 2e4, H: 2e4})
	for _, s := range spots {
		sym, ok := symbols.For(s.piece.Item.Kind.Symbol)
		if !ok || !v.sees(s.at) {
			continue
		}
		size := symbolSize(v.Context)
		p := clearOf(taken, v.pt(s.at), v.dir(s.away), size)
		taken.Block(around(p, size))
		out = append(out, spotDrawn{s.piece, p, sym, float64(size / max(sym.Box.W, sym.Box.H)), s.home})
	}
	return out
}

// circleSpots queues the legend circles of a host's pieces.
func (v *planView) circleSpots(host string, list []spotDrawn) {
	slices.SortStableFunc(list, func(a, b spotDrawn) int { return cmp.Compare(a.piece.Joint.Station, b.piece.Joint.Station) })
	item := func(i int) *hardware.Item { return list[i].piece.Item }
	for _, idx := range stretches(len(list), func(i int) string { return item(i).Mark }, func(i int) string { return item(i).Kind.Symbol }) {
		mark := item(idx[0]).Mark
		g := &circled{name: "legend of " + mark + " at " + host, number: v.Schedule.Number(mark), along: sheet.Pt{X: 1}, loose: true}
		for _, i := range idx {
			g.at = append(g.at, list[i].at)
		}
		if d := g.at[len(g.at)-1].Add(stretched(g.at[0], -1)); d != (sheet.Pt{}) {
			g.along = stretched(d, 1/sheet.MM(math.Hypot(float64(d.X), float64(d.Y))))
		}
		v.circleFor(g)
	}
}

// clearOf moves p along k until a symbol of that size there covers none of
// those taken.
func clearOf(taken *label.Board, p, k sheet.Pt, size sheet.MM) sheet.Pt {
	for range 8 {
		if taken.Free(around(p, size).Inset(label.Gap + 0.01)) {
			return p
		}
		p = p.Add(stretched(k, size+0.4))
	}
	return p
}

// around is the square of a size about p.
func around(p sheet.Pt, size sheet.MM) sheet.Rect {
	return sheet.Rect{X: p.X - size/2, Y: p.Y - size/2, W: size, H: size}
}

// bar draws a member seen from above: a bar of its breadth along its line.
func (v *planView) bar(s sheet.Style, a, b geom.Vec2, breadth float64) (sheet.Rect, bool) {
	n := b.Sub(a).Unit().Left().Mul(breadth / 2)
	return v.shape(s, a.Add(n), a.Sub(n), b.Sub(n), b.Add(n))
}

// angleOn returns the angle on paper at which text runs along a direction of
// the plan and is read upright.
func (v *planView) angleOn(d geom.Vec2) float64 {
	q := v.dir(d)
	return page.AngleOf(geom.Vec2{X: float64(q.X), Y: -float64(q.Y)})
}

// turnedWords queues text at an angle, off mm to one side or the other of
// the first of mids where it finds room, on a ground of its own.
func (v *planView) turnedWords(t page.Lettered, angle float64, off sheet.MM, mids, anchors []sheet.Pt) {
	z := v.Size.Note
	w, h := page.TextWidth(t.S, z, false)+1, z*1.4
	sin, cos := math.Sincos(angle * math.Pi / 180)
	l := label.Label{
		Name: t.S, Anchors: anchors,
		W: sheet.MM(math.Abs(float64(w)*cos) + math.Abs(float64(h)*sin)),
		H: sheet.MM(math.Abs(float64(w)*sin) + math.Abs(float64(h)*cos)),
	}
	for _, m := range mids {
		for _, side := range []sheet.MM{1, -1} {
			d := side * (h/2 + off)
			l.Near = append(l.Near, sheet.Pt{X: m.X - d*sheet.MM(sin), Y: m.Y - d*sheet.MM(cos)})
		}
	}
	v.later(l, func(r sheet.Rect) {
		c := r.Center()
		v.ground(r, angle, w, h)
		t.At = sheet.Pt{X: c.X + z*0.42*sheet.MM(sin), Y: c.Y + z*0.42*sheet.MM(cos)}
		t.Anchor, t.Angle, t.Role = sheet.Middle, angle, "label"
		v.Text(t)
		v.Box("label", t.S, r)
	})
}
