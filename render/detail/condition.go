package detail

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/length"
	"galewright/plan/placement"
	"galewright/plan/schedule"
	"galewright/plan/steel"
)

// condition is what one detail shows: a mark as it lies on members of their
// sizes, wherever in the house it lies so.
type condition struct {
	*schedule.Line
	Letter string // of several conditions of one mark: "a", "b"; else ""
	Body   *steel.Body
	Pieces []*placement.Piece // all that lie so, either hand
	Both   bool               // some lie the other hand
	axes   axes
}

// axes are three directions square to each other: along the wall, or across
// what the piece lies on; in; up.
type axes struct{ along, in, up geom.Vec3 }

// local returns a direction's or point's coordinates.
func (a axes) local(p geom.Vec3) geom.Vec3 {
	return geom.Vec3{X: p.Dot(a.along), Y: p.Dot(a.in), Z: p.Dot(a.up)}
}

// axesOf returns the axes of a piece: of its wall, or of the member held.
func axesOf(p *placement.Piece) axes {
	up := geom.Vec3{Z: 1}
	if w := p.Joint.Wall; w != nil {
		f := w.Frame()
		return axes{f.D.Up(0), f.In.Up(0), up}
	}
	d := geom.Vec2{X: 1}
	for _, m := range p.Members() {
		if x := m.B.Sub(m.A).Flat(); x.Len() > 1 {
			d = x.Unit()
			break
		}
	}
	if p.Joint.Kind == plan.RafterRidge || p.Joint.Roof != nil {
		return axes{d.Left().Mul(-1).Up(0), d.Up(0), up}
	}
	return axes{d.Up(0), d.Left().Up(0), up}
}

// conditionsOf sorts the pieces of a line by how they lie, the commonest first.
func conditionsOf(l *schedule.Line, st *steel.Steel) (out []condition) {
	at := map[string]int{}
	hand := map[string]string{}
	for _, p := range l.Pieces {
		b := st.Body(p)
		key, mine := keyOf(b)
		key += cutKey(st.Placed, b)
		i, ok := at[key]
		if !ok {
			i = len(out)
			at[key], hand[key] = i, mine
			out = append(out, condition{Line: l, Body: b, axes: axesOf(p)})
		}
		out[i].Pieces = append(out[i].Pieces, p)
		out[i].Both = out[i].Both || hand[key] != mine
	}
	for i := range out { // one from the middle of a run shows what most are like
		mid := out[i].Pieces[len(out[i].Pieces)/2]
		out[i].Body, out[i].axes = st.Body(mid), axesOf(mid)
	}
	slices.SortStableFunc(out, func(a, b condition) int { return -cmp.Compare(len(a.Pieces), len(b.Pieces)) })
	if len(out) > 1 {
		for i := range out {
			out[i].Letter = letter(i)
		}
	}
	return out
}

// letter returns a, b, … z, aa, ab …
func letter(i int) string {
	if i >= 26 {
		return letter(i/26-1) + letter(i%26)
	}
	return string(rune('a' + i))
}

// keyOf says how a body lies, in words that are equal for all that lie so:
// either hand has the same key, and its own word for the hand. On a wall inside
// and outside differ; elsewhere a piece may be seen from either side.
func keyOf(b *steel.Body) (key, hand string) {
	a := axesOf(b.Piece)
	flips := [][2]float64{{1, 1}, {-1, 1}, {-1, -1}, {1, -1}}
	if b.Piece.Joint.Wall != nil {
		flips = flips[:2]
	}
	for _, f := range flips {
		k := keyIn(b, axes{a.along.Mul(f[0]), a.in.Mul(f[1]), a.up})
		if key == "" || k < key {
			key, hand = k, "as drawn"
			if f[0]*f[1] < 0 {
				hand = "opposite"
			}
		}
	}
	return key, hand
}

// keyIn says how a body lies along axes: what it is fastened to and how each
// plate and rod lies from the first, to the half inch.
func keyIn(b *steel.Body, a axes) string {
	var s strings.Builder
	p := b.Piece
	fmt.Fprintf(&s, "%s;", p.Joint.Kind)
	for _, l := range p.Laid {
		fmt.Fprintf(&s, "%s %s %.0f;", alike(l.Member), l.Member.Section.Text, 2*l.Lap)
	}
	for _, e := range p.Ends {
		fmt.Fprintf(&s, "%d,", e.Laid)
	}
	from := origin(b)
	put := func(v geom.Vec3) {
		v = a.local(v)
		fmt.Fprintf(&s, "%d,%d,%d;", half(v.X), half(v.Y), half(v.Z))
	}
	for _, band := range b.Bands {
		for _, x := range band {
			put(x.A.Sub(from))
			put(x.B.Sub(from))
			put(x.N.Mul(4))
		}
	}
	for _, r := range b.Rods {
		put(r.A.Sub(from))
		put(r.B.Sub(from))
	}
	return s.String()
}

// cutKey says what is cut for a body, in words that are equal for all cut alike.
func cutKey(p *placement.Placement, b *steel.Body) string {
	var s strings.Builder
	for _, x := range b.Slots {
		fmt.Fprintf(&s, "%s %s;", x.Member.Role, x.Words(length.Feet))
	}
	if floorHole(p, b) != nil {
		s.WriteString("floor;")
	}
	if packed(b) {
		s.WriteString("packed;")
	}
	return s.String()
}

// packed tells whether some fastener of a body reaches a girder through packing.
func packed(b *steel.Body) bool {
	return slices.ContainsFunc(b.Fasteners, func(f steel.Fastener) bool {
		return len(f.Runs) > 0 && f.Runs[0].Member.Role == plan.GirderBeam && f.Runs[0].From > b.PlateOf(f).Thickness+1.0/16
	})
}

// half counts half inches; never a minus zero.
func half(v float64) int { return int(math.Round(2 * v)) }

// origin is a point of a body from which the rest of it is told.
func origin(b *steel.Body) geom.Vec3 {
	if len(b.Bands) > 0 {
		return b.Bands[0][0].A
	}
	if len(b.Rods) > 0 {
		return b.Rods[0].A
	}
	return b.Piece.Joint.At
}

// alike names members that a framer nails to in the same way: any upright is
// one, any top plate.
func alike(m *framing.Member) string {
	switch {
	case m.Role.FullHeight():
		return "upright"
	case m.Role == plan.TopPlate || m.Role == plan.UpperPlate:
		return "top plate"
	}
	return string(m.Role)
}
