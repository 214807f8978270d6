package deck

import (
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// Row is what a nail of the deck goes into.
type Row string

// The rows of a panel's nails.
const (
	EndRow   Row = "panel end"  // over the rafter that a panel ends on, and over hips, valleys and fly rafters
	FieldRow Row = "field"      // over the rafters between
	GableRow Row = "gable end"  // over the framing of a gable wall
	LookRow  Row = "outlookers" // across the overhang of a gable
)

// Nail is one nail of the deck.
type Nail struct {
	At    geom.Vec2 // on plan
	Row   Row
	Zone  int     // of the plan's nail zones; 0 = the deck's own spacing, 1 its first zone
	Along float64 // larger of its distances to the next nails of its row, in
	// Width is the deck across its row that it holds, in: half way to the next
	// rafters under its panel. Where the panel hangs out beyond the row, all
	// that hangs, with the lever that it has about the next rafter.
	Width float64
	Depth float64 // of the wood it goes into, in
	Into  *framing.Member
	rise  float64 // up the slope that Along takes, in
	reach [2]float64
}

// Area returns the deck that the nail holds, ft².
func (n Nail) Area() float64 { return n.Width * n.rise / 144 }

// margin is how far a nail stands from the edge of its panel, in (common
// practice, no published source).
const margin = 0.375

// nail nails a piece: on each line under it from edge to edge.
func (d *Deck) nail(p *Piece) {
	for _, l := range p.Face.lines {
		for _, s := range p.over(l) {
			d.row(p, l, s[0], s[1])
		}
	}
}

// over returns the stretches of a line that lie under the piece.
func (p *Piece) over(l *line) (out [][2]geom.Vec2) {
	a, b, ok := p.along(l.a, l.b)
	if !ok {
		return nil
	}
	d := b.Sub(a)
	for _, s := range stretches(p.shape, a, b, 1.5) {
		out = append(out, [2]geom.Vec2{a.Add(d.Mul(s[0])), a.Add(d.Mul(s[1]))})
	}
	return out
}

// along returns the part of the segment from a to b within the extent of the
// piece, and whether there is one.
func (p *Piece) along(a, b geom.Vec2) (from, to geom.Vec2, ok bool) {
	d, t := b.Sub(a), [2]float64{0, 1}
	for _, side := range [4][2]float64{{d.X, a.X - p.Lo.X}, {-d.X, p.Hi.X - a.X}, {d.Y, a.Y - p.Lo.Y}, {-d.Y, p.Hi.Y - a.Y}} {
		switch grows, inside := side[0], side[1]; { // inside + t grows >= 0
		case math.Abs(grows) < 1e-9:
			if inside < -touch {
				return a, b, false
			}
		case grows > 0:
			t[0] = max(t[0], -inside/grows)
		default:
			t[1] = min(t[1], -inside/grows)
		}
	}
	return a.Add(d.Mul(t[0])), a.Add(d.Mul(t[1])), t[1] > t[0]
}

// rowOf says what a line is to a piece.
func (p *Piece) rowOf(l *line) Row {
	switch {
	case l.gable:
		return GableRow
	case l.role == plan.Outlooker:
		return LookRow
	case !l.rafter(), l.role == plan.FlyRafter, math.Abs(l.a.X-p.Lo.X) < touch, math.Abs(l.a.X-p.Hi.X) < touch:
		return EndRow
	}
	return FieldRow
}

// row drives the nails of one line from a to b.
func (d *Deck) row(p *Piece, l *line, a, b geom.Vec2) {
	long, dir := b.Sub(a).Len(), b.Sub(a).Unit()
	if long < 2*margin {
		return
	}
	kind, first := p.rowOf(l), len(p.Nails)
	put := func(t float64) float64 {
		at := p.Face.at(a.Add(dir.Mul(t)))
		z := d.ZoneAt(p.Face, at)
		p.Nails = append(p.Nails, Nail{At: at, Row: kind, Zone: z, Depth: l.depth, Into: l.member})
		return d.Spacing(z, kind)
	}
	last := margin
	for t := margin; t < long-margin-1e-6; {
		s := put(t)
		last, t = t, t+s
	}
	if long-margin-last > 1e-6 || len(p.Nails) == first {
		put(long - margin)
	}
	p.measure(p.Nails[first:], l, dir)
}

// measure gives the nails of a row what they hold.
func (p *Piece) measure(row []Nail, l *line, dir geom.Vec2) {
	for i := range row {
		n := &row[i]
		for _, j := range []int{i - 1, i + 1} {
			if j >= 0 && j < len(row) {
				n.Along = max(n.Along, p.Face.own(row[j].At).Sub(p.Face.own(n.At)).Len())
			}
		}
		if n.Along == 0 {
			n.Along = min(p.Hi.Y-p.Lo.Y, p.Hi.X-p.Lo.X)
		}
		n.rise = n.Along * math.Abs(dir.Y)
		switch {
		case l.level:
			n.Width, n.reach = n.Along, [2]float64{n.Along / 2, n.Along / 2}
			n.rise = p.slopeOver(l)
		case l.bears():
			n.Width, n.reach = p.width(l, p.Face.own(n.At))
		}
	}
}

// slopeOver returns how much of the piece up the slope the level top l of a truss holds:
// half way to the next ones, above the last one all; below the first one jacks do.
func (p *Piece) slopeOver(l *line) float64 {
	lo, hi := math.Inf(-1), p.Hi.Y
	for _, o := range p.Face.lines {
		switch {
		case !o.level || o == l:
		case o.a.Y < l.a.Y:
			lo = max(lo, p.Lo.Y, (o.a.Y+l.a.Y)/2)
		default:
			hi = min(hi, (o.a.Y+l.a.Y)/2)
		}
	}
	if math.IsInf(lo, -1) {
		lo = l.a.Y
	}
	return max(0, hi-lo)
}

// width returns what a nail of line l at q holds across its row, and how far
// that reaches to both sides.
func (p *Piece) width(l *line, q geom.Vec2) (w float64, reach [2]float64) {
	v := min(max(q.Y, p.Lo.Y+0.1), p.Hi.Y-0.1)
	ends := [2]float64{math.Inf(1), math.Inf(-1)} // of the piece at v
	for i, a := range p.shape {
		b := p.shape[(i+1)%len(p.shape)]
		if (a.Y > v) != (b.Y > v) {
			u := a.X + (b.X-a.X)*(v-a.Y)/(b.Y-a.Y)
			ends = [2]float64{min(ends[0], u), max(ends[1], u)}
		}
	}
	next := [2]float64{math.Inf(1), math.Inf(1)} // distance to the next line on each side
	for _, o := range p.Face.lines {
		u, ok := o.crosses(v)
		if o == l || !ok || !o.bears() || u < ends[0]-1.5 || u > ends[1]+1.5 {
			continue
		}
		if side := 0; math.Abs(u-q.X) > touch {
			if u > q.X {
				side = 1
			}
			next[side] = min(next[side], math.Abs(u-q.X))
		}
	}
	for side, gap := range next {
		reach[side] = gap / 2
		if math.IsInf(gap, 1) {
			reach[side] = max(0, []float64{q.X - ends[0], ends[1] - q.X}[side])
		}
		part := reach[side]
		if other := next[1-side]; math.IsInf(gap, 1) && !math.IsInf(other, 1) {
			part *= 1 + part/(2*other)
		}
		w += part
	}
	return w, reach
}
