package elevation

import (
	"math"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/steel"
	"galewright/render/page"
	"galewright/render/scene"
	"galewright/render/sheet"
	"galewright/symbols"
)

// pose is how a piece's symbol lies on the sheet: turned and mirrored as its steel.
type pose struct {
	symbol string
	angle  float64 // deg, counterclockwise on paper
	mirror bool
	k      float64    // its size over that of its definition
	box    sheet.Rect // about the symbol's origin, as it lies
	off    sheet.Pt   // from the middle of the piece's line to that of the box
	angled bool       // it is an angle in its corner
}

// rect returns where the symbol stands for a piece whose line on paper is given.
func (q pose) rect(line []sheet.Pt) sheet.Rect {
	c := along(line, 0.5).Add(q.off)
	return sheet.Rect{X: c.X - q.box.W/2, Y: c.Y - q.box.H/2, W: q.box.W, H: q.box.H}
}

// anchors are where a leader may end on the symbol in its place: its middle, or the legs of
// an angle, which has nothing there.
func (q pose) anchors(r sheet.Rect) []sheet.Pt {
	c := r.Center()
	if !q.angled {
		return []sheet.Pt{c}
	}
	sin, cos := math.Sincos(q.angle * math.Pi / 180)
	const leg = 0.35 // of the box, from its middle to that of a leg
	up, aside := sheet.Pt{X: -leg * r.W, Y: -leg * r.H / 2}, sheet.Pt{X: leg * r.W / 2, Y: leg * r.H}
	return []sheet.Pt{c.Add(sheet.Turn(up, sin, cos, 1)), c.Add(sheet.Turn(aside, sin, cos, 1)), c}
}

// use returns the symbol with the middle of its box at a point.
func (q pose) use(at sheet.Pt, pc *sheet.Piece) sheet.Use {
	c := q.box.Center()
	return sheet.Use{
		Style: page.Style(sheet.PenHardware, sheet.LayerHardware), Symbol: q.symbol,
		At: sheet.Pt{X: at.X - c.X, Y: at.Y - c.Y}, Angle: q.angle, Mirror: q.mirror, Scale: q.k, Piece: pc,
	}
}

// pose returns how the symbol of a piece lies.
func (p *part) pose(v *page.Viewport, pc *placement.Piece) pose {
	s, _ := symbols.For(symbolOf(pc))
	q := pose{symbol: s.ID, k: symbolScale(p.Context)}
	b, path := p.Schedule.Steel.Body(pc), p.path(pc)
	corner, legs, angle := bend(p.elev, b)
	seat, side := p.seat(b)
	switch {
	case angle:
		q.angle, q.angled = quarter(legs), true
	case pc.Item.Kind.Strap && len(path) > 1:
		q.angle = slopeOf(path, s.Box)
	case pc.Item.Kind.Name == plan.ClipItem || pc.Item.Kind.Shape == hardware.Rod:
		q.k = min(q.k, p.inside(v, pc, s.Box))
	default:
		q.mirror = side < 0
	}
	q.box = sheet.Bounds(sheet.Use{Symbol: s.ID, Angle: q.angle, Mirror: q.mirror, Scale: q.k}, map[string]sheet.Symbol{s.ID: s})
	pts := p.centerLine(v, pc)
	if len(pts) == 0 {
		return q
	}
	mid := along(pts, 0.5)
	switch {
	case angle:
		q.off = v.Pt(corner.X, corner.Y).Add(sheet.Pt{X: q.box.W/2*sign(legs.X) - mid.X, Y: -q.box.H/2*sign(legs.Y) - mid.Y})
	case side != 0:
		at, k := v.Pt(seat.X, seat.Y), sheet.MM(q.k)
		q.off = sheet.Pt{X: at.X - mid.X - sheet.MM(side)*k*rodOf[q.symbol].X + q.box.Center().X}
		if pc.Item.Kind.Name == plan.HoldDownItem {
			q.off.Y = at.Y - mid.Y - k*rodOf[q.symbol].Y + q.box.Center().Y
		}
	}
	return q
}

// inside returns the size at which a symbol stands inside of the steel it is for, where
// that is drawn as it is.
func (p *part) inside(v *page.Viewport, pc *placement.Piece, box sheet.Rect) float64 {
	if len(p.metal[pc]) == 0 {
		return math.Inf(1)
	}
	return float64(max(bandLeast, v.Len(p.metal[pc][0].across)) / max(box.W, box.H))
}

// rodOf is where the symbols of hold-downs have the rod under the seat, from their
// origins.
var rodOf = map[string]sheet.Pt{"sym-hold-down": {X: 0.75, Y: 1}, "sym-hold-down-pair": {X: 0.6}}

// bend returns the corner of a clip that is an angle as it is seen, and which way its two
// legs go from it: one that lies flat on the near or the far face goes to the side. It is
// none where a leg goes toward the eye, or both lie in one line.
func bend(e *elev, b *steel.Body) (corner, legs geom.Vec2, ok bool) {
	if b == nil || b.Piece.Item.Kind.Name != plan.ClipItem || len(b.Bands) == 0 || len(b.Bands[0]) != 2 {
		return corner, legs, false
	}
	one, two := b.Bands[0][0], b.Bands[0][1]
	toward := e.view().Toward
	flat := func(p geom.Plate) bool { return abs(p.N.Dot(toward)) > edgeOn }
	corner = e.flat(one.B)
	up, aside := e.flat(one.A).Sub(corner), e.flat(two.B).Sub(corner)
	switch {
	case flat(one) && flat(two):
		return corner, legs, false
	case flat(one):
		corner = e.flat(two.A)
		legs = geom.Vec2{X: e.flat(one.At(one.Len()/2, 0)).X - corner.X, Y: aside.Y}
	case flat(two):
		legs = geom.Vec2{X: e.flat(two.At(two.Len()/2, 0)).X - corner.X, Y: up.Y}
	default:
		legs = up.Add(aside)
	}
	return corner, legs, abs(legs.X) > hair && abs(legs.Y) > hair
}

// quarter returns the angle by which an angle that lies up and to the right is turned to
// lie as legs go.
func quarter(legs geom.Vec2) float64 {
	switch {
	case legs.X > 0 && legs.Y > 0:
		return 0
	case legs.X < 0 && legs.Y > 0:
		return 90
	case legs.Y < 0 && legs.X < 0:
		return 180
	}
	return 270
}

func sign(x float64) sheet.MM { return sheet.MM(math.Copysign(1, x)) }

// seat returns where the rod of a hold-down goes through the seat of its first body, and
// on which side of the flange that is: 1 to the right, -1 to the left, 0 before or behind.
func (e *elev) seat(b *steel.Body) (at geom.Vec2, side float64) {
	if b == nil || b.Piece.Item.Kind.Name != plan.HoldDownItem && b.Piece.Item.Kind.Name != plan.HoldDownPairItem {
		return at, 0
	}
	seats := scene.Seats(b)
	if len(seats) == 0 {
		return at, 0
	}
	from, to := e.flat(seats[0].A), e.flat(seats[0].B)
	if d := to.X - from.X; abs(d) > hair {
		return from.Add(to).Mul(0.5), math.Copysign(1, d)
	}
	return at, 0
}

// slopeOf returns the angle by which a symbol is turned to lie along a path: from
// upright or level, as its box is, and never upside down.
func slopeOf(path []geom.Vec2, box sheet.Rect) float64 {
	d := path[len(path)-1].Sub(path[0])
	deg := math.Atan2(d.Y, d.X) * 180 / math.Pi
	if box.H > box.W {
		deg -= 90
	}
	for deg <= -90 {
		deg += 180
	}
	for deg > 90 {
		deg -= 180
	}
	return math.Round(deg*1000) / 1000
}
