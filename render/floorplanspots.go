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

// alongText sets text along a direction, off mm to the reader's upper side of
// p, and blocks its place.
func (v *planView) alongText(s string, p sheet.Pt, d geom.Vec2, off sheet.MM) {
	a := v.angleOn(d)
	sin, cos := math.Sincos(a * math.Pi / 180)
	at := sheet.Pt{X: p.X - off*sheet.MM(sin), Y: p.Y - off*sheet.MM(cos)}
	t := lettered{S: s, Cap: v.Size.Note, At: at, Anchor: sheet.Middle, Angle: a, Role: "label"}
	v.board.BlockText(v.boxedText("label", t))
}
