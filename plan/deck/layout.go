package deck

import (
	"math"
	"slices"

	"galewright/plan/geom"
)

// A panel is 4 by 8 ft, its long side across the rafters (common practice, no
// published source).
const (
	PanelWide = 48.0 // up the slope, in
	PanelLong = 96.0 // along the eave, in
)

// Piece is one panel as it is laid: whole, or cut.
type Piece struct {
	Face    *Face
	Course  int         // from the eave, from 1
	Lo, Hi  geom.Vec2   // its extent in the face's axes
	Outline []geom.Vec2 // on plan
	Nails   []Nail
	shape   []geom.Vec2 // in the face's axes
	left    *line       // the framing under its ends; nil where an end hangs
	right   *line
}

// Whole tells whether the piece is a panel as it comes.
func (p *Piece) Whole() bool { return area(p.shape) > PanelWide*PanelLong-1 }

// lay lays courses of panels from the eave to the ridge. A panel ends over the
// last rafter that it reaches; the first one of every other course is half as
// long, so that joints are staggered. At hips, valleys and rakes panels are
// cut to the edge of the face.
func (x *Face) lay() {
	lo, hi := bounds(x.shape)
	var before []float64
	high := starter(hi.Y - lo.Y)
	for n, v0 := 0, lo.Y; v0 < hi.Y-touch; n, v0, high = n+1, v0+high, PanelWide {
		v1 := min(v0+high, hi.Y)
		strip := box(x.shape, geom.Vec2{X: lo.X, Y: v0}, geom.Vec2{X: hi.X, Y: v1})
		if len(strip) < 3 || area(strip) < 1 {
			continue
		}
		before = x.course(n, strip, v0, v1, before)
	}
}

// narrow is what a course at the ridge should not be less than, in (common
// practice, no published source).
const narrow = 16.0

// starter returns the width of the first course of a face of a height: a whole
// panel, or less where else a narrow strip would be left at the ridge.
func starter(height float64) float64 {
	if left := math.Mod(height, PanelWide); height > PanelWide && left > touch && left < narrow {
		return (PanelWide + left) / 2
	}
	return PanelWide
}

// course lays one course and returns its joints.
func (x *Face) course(n int, strip []geom.Vec2, v0, v1 float64, before []float64) (joints []float64) {
	lo, hi := bounds(strip)
	reach := PanelLong
	if n%2 == 1 {
		reach = PanelLong / 2
	}
	var left *line
	for u := lo.X; u < hi.X-touch; {
		end, under := x.joint(u, u+reach, v0, v1, before)
		if u+reach >= hi.X-touch {
			end, under = hi.X, nil
		}
		shape := box(strip, geom.Vec2{X: u, Y: v0}, geom.Vec2{X: end, Y: v1})
		if len(shape) > 2 && area(shape) > 1 {
			p := &Piece{Face: x, Course: n + 1, shape: shape, left: left, right: under}
			p.Lo, p.Hi = bounds(shape)
			for _, q := range shape {
				p.Outline = append(p.Outline, x.at(q))
			}
			x.Pieces = append(x.Pieces, p)
		}
		if end < hi.X-touch {
			joints = append(joints, end)
		}
		u, left, reach = end, under, PanelLong
	}
	return joints
}

// joint returns where a panel from u ends: over the last rafter up to most
// that carries it all the height of the course, and not over one that the
// course before ends on. Without one it ends at most and hangs.
func (x *Face) joint(u, most, v0, v1 float64, before []float64) (float64, *line) {
	var best *line
	for _, l := range x.lines {
		at := l.a.X
		if !l.rafter() || at <= u+touch || at > most+touch || slices.ContainsFunc(before, func(b float64) bool { return math.Abs(b-at) < touch }) {
			continue
		}
		if overlapsCourse(l, v0, v1) && (best == nil || at > best.a.X) {
			best = l
		}
	}
	if best == nil {
		return most, nil
	}
	return best.a.X, best
}

// rafter tells whether a line runs straight up the slope and carries.
func (l *line) rafter() bool {
	return l.bears() && math.Abs(l.a.X-l.b.X) < touch && !slanted(l.role)
}

// overlapsCourse tells whether a line is there for half the height of a
// course at least.
func overlapsCourse(l *line, v0, v1 float64) bool {
	return min(l.b.Y, v1)-max(l.a.Y, v0) > (v1-v0)/2
}
