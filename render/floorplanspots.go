package render

import (
	"math"
	"slices"

	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/render/label"
	"galewright/render/sheet"
	"galewright/symbols"
)

// spot is a piece drawn at its own place on a plan, not in a lane.
type spot struct {
	piece *placement.Piece
	at    geom.Vec2
	away  geom.Vec2 // the way a second piece at one place moves, unit
}

// spotOf places a piece where its steel is; one off its joint to a side moves
// on that way, others along.
func spotOf(pc *placement.Piece, along geom.Vec2) spot {
	s := spot{piece: pc, at: pc.Joint.At.Flat(), away: along}
	if n := len(pc.Path); n > 0 {
		mid := pc.Path[0].Add(pc.Path[n-1]).Mul(0.5).Flat()
		if off := mid.Sub(s.at); off.Len() > 0.5 {
			s.away = off.Unit()
		}
		s.at = mid
	}
	return s
}

// drawSpots draws pieces at their places; those that would cover each other
// move away in turn. Each host's pieces of one mark get a legend circle.
func (v *planView) drawSpots(spots []spot, home bool) {
	type group struct {
		host string
		item *hardware.Item
		at   []sheet.Pt
		// marks are the pieces, for the circle that stands for one
		piece *placement.Piece
	}
	var groups []*group
	var taken []sheet.Rect
	for _, s := range spots {
		sym, ok := symbols.For(s.piece.Item.Kind.Symbol)
		if !ok || !v.sees(s.at) {
			continue
		}
		size := v.symbolSize()
		scale := float64(size / max(sym.Box.W, sym.Box.H))
		p, k := v.pt(s.at), v.dir(s.away)
		p = v.clearOf(taken, p, k, size)
		taken = append(taken, sheet.Rect{X: p.X - size/2, Y: p.Y - size/2, W: size, H: size})
		v.drawSpot(sym, p, scale, s.piece, home)
		i := slices.IndexFunc(groups, func(g *group) bool { return g.host == s.piece.Joint.Host && g.item == s.piece.Item })
		if i < 0 {
			groups = append(groups, &group{host: s.piece.Joint.Host, item: s.piece.Item, piece: s.piece})
			i = len(groups) - 1
		}
		groups[i].at = append(groups[i].at, p)
	}
	for _, g := range groups {
		v.circleNear(g.piece, g.at)
	}
}

// clearOf moves p along k until a symbol of that size there covers none of
// those taken.
func (v *planView) clearOf(taken []sheet.Rect, p, k sheet.Pt, size sheet.MM) sheet.Pt {
	for range 8 {
		r := sheet.Rect{X: p.X - size/2, Y: p.Y - size/2, W: size, H: size}
		if !slices.ContainsFunc(taken, r.Overlaps) {
			return p
		}
		p = sheet.Pt{X: p.X + k.X*(size+0.4), Y: p.Y + k.Y*(size+0.4)}
	}
	return p
}

func (v *planView) drawSpot(sym sheet.Symbol, p sheet.Pt, scale float64, pc *placement.Piece, home bool) {
	k := sheet.MM(scale)
	v.use(sym.ID, p, 0, scale, v.pieceMark(pc, home))
	b := sheet.Rect{X: p.X + sym.Box.X*k, Y: p.Y + sym.Box.Y*k, W: sym.Box.W * k, H: sym.Box.H * k}
	v.box("piece", pc.Tag, b)
	v.board.Block(b)
	v.showPiece(pc.Item)
}

// circleNear queues a legend circle beside the first or last of some places.
func (v *planView) circleNear(pc *placement.Piece, at []sheet.Pt) {
	rad := v.legendRadius()
	first, last := at[0], at[len(at)-1]
	l := label.Label{Name: "legend " + pc.Item.Mark + " of " + pc.Joint.Host, W: 2 * rad, H: 2 * rad,
		Anchors: []sheet.Pt{first, last, at[len(at)/2]}}
	for _, d := range []sheet.MM{0.4, 2, 4, 7} {
		l.Near = append(l.Near, aroundPoint(first, 2*rad, 2*rad, v.symbolSize()/2+d)...)
		l.Near = append(l.Near, aroundPoint(last, 2*rad, 2*rad, v.symbolSize()/2+d)...)
	}
	n := v.legend(pc)
	v.later(l, func(b sheet.Rect) { v.legendCircle(n, b.Centre(), "legend of "+pc.Item.Mark+" at "+pc.Joint.Host, nil) })
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
	return angleOf(geom.Vec2{X: float64(q.X), Y: -float64(q.Y)})
}

// turnedWords queues text at an angle, off mm to one side or the other of
// the first of mids where it finds room, on a ground of its own.
func (v *planView) turnedWords(t lettered, angle float64, off sheet.MM, mids, anchors []sheet.Pt) {
	z := v.Size.Note
	w, h := textWidth(t.S, z, false)+1, z*1.4
	sin, cos := math.Sincos(angle * math.Pi / 180)
	l := label.Label{Name: t.S, Anchors: anchors,
		W: sheet.MM(math.Abs(float64(w)*cos) + math.Abs(float64(h)*sin)),
		H: sheet.MM(math.Abs(float64(w)*sin) + math.Abs(float64(h)*cos))}
	for _, m := range mids {
		for _, side := range []sheet.MM{1, -1} {
			d := side * (h/2 + off)
			l.Near = append(l.Near, sheet.Pt{X: m.X - d*sheet.MM(sin), Y: m.Y - d*sheet.MM(cos)})
		}
	}
	v.later(l, func(r sheet.Rect) {
		c := r.Centre()
		v.ground(r, angle, w, h)
		t.At = sheet.Pt{X: c.X + z*0.42*sheet.MM(sin), Y: c.Y + z*0.42*sheet.MM(cos)}
		t.Anchor, t.Angle, t.Role = sheet.Middle, angle, "label"
		v.text(t)
		v.box("label", t.S, r)
	})
}
