package read

import (
	"math"

	"galewright/plan"
	"galewright/plan/geom"
)

// plateThickness is one dressed 2x plate, in.
const plateThickness = 1.5

// slope returns the length along a slope for 1 of run at a pitch in 12.
func slope(pitch float64) float64 { return math.Hypot(12, pitch) / 12 }

// checkWall looks at one wall with its openings and shear segments.
func (r *reader) checkWall(w *plan.Wall) {
	where := "wall " + w.Name
	if w.Level == nil || r.broken[w] {
		return
	}
	if w.ToLevel != nil && w.ToLevel.Index < w.Level.Index {
		r.fail(w.Pos, "balloon-down", where, "balloon_to names a level above", "balloon_to is %s, below its own level %s", w.ToLevel.Name, w.Level.Name)
		return
	}
	if w.Layout > w.Length() {
		r.fail(w.Pos, "layout-off-wall", where, "layout is a station of the wall", "layout starts at %s on a wall of %s", r.units().Length(w.Layout), r.units().Length(w.Length()))
	}
	if h := w.TopHeight(); h > 0 && h < 3*plateThickness+1 {
		r.fail(w.Pos, "low-wall", where, "give it a greater height", "a height of %s holds three plates and no stud", r.units().Length(h))
	}
	for i, o := range w.Openings {
		r.checkOpening(w, o, where)
		for _, before := range w.Openings[:i] {
			r.checkApart(before, o, where)
		}
	}
	for i, s := range w.Shear {
		r.checkShear(w, s, where)
		for _, before := range w.Shear[:i] {
			r.checkBeside(before, s, where)
		}
	}
}

// checkBeside refuses two shear segments that share a length of wall: it would
// count twice.
func (r *reader) checkBeside(a, b *plan.Shear, wall string) {
	if across := min(a.To, b.To) - max(a.From, b.From); across > tolerance && !r.broken[a] && !r.broken[b] {
		r.fail(b.Pos, "segments-overlap", wall+", shear wall "+b.Name, "let one end where the other begins; sheathing on both faces is both_faces = true",
			"it runs from %s to %s and overlaps %s, which runs from %s to %s, by %s: that length would resist twice",
			r.units().Length(b.From), r.units().Length(b.To), a.Name, r.units().Length(a.From), r.units().Length(a.To), r.units().Length(across))
	}
}

// checkTwice refuses two walls of one level that stand on one line.
func (r *reader) checkTwice() {
	type line struct {
		level *plan.Level
		a, b  geom.Vec2
	}
	seen := map[line]*plan.Wall{}
	for _, w := range r.plan.Walls {
		if w.Level == nil || r.broken[w] {
			continue
		}
		a, b := w.From, w.To
		if b.X < a.X || b.X == a.X && b.Y < a.Y {
			a, b = b, a
		}
		key := line{w.Level, a, b}
		if before := seen[key]; before != nil {
			r.fail(w.Pos, "wall-twice", "wall "+w.Name, "take one of them out", "it stands where wall %s stands (%s)", before.Name, lineIn(before.Pos, w.Pos))
			continue
		}
		seen[key] = w
	}
}

// checkOpening looks at one opening in its wall.
func (r *reader) checkOpening(w *plan.Wall, o *plan.Opening, wall string) {
	where := wall + ", opening " + o.Name
	if r.broken[o] {
		return
	}
	if end := o.At + o.Width; o.Width > 0 && end > w.Length()+tolerance {
		r.fail(o.Pos, "opening-off-wall", where, "move it, narrow it, or lengthen the wall",
			"it runs from %s to %s, and the wall ends at %s", r.units().Length(o.At), r.units().Length(end), r.units().Length(w.Length()))
	}
	h := w.TopHeight()
	if w.Top == plan.RakeTop || h == 0 || r.broken[w.Level] || r.broken[w.ToLevel] {
		return
	}
	room := h - 2*plateThickness
	if top := o.Sill + o.Height + o.Header.Depth; top > room+tolerance {
		r.fail(o.Pos, "header-through-plate", where, "lower the opening, or take a shallower header",
			"sill %s, opening %s and header %s reach %s; under the plates there are %s: %s too much",
			r.units().Length(o.Sill), r.units().Length(o.Height), r.units().Length(o.Header.Depth), r.units().Length(top), r.units().Length(room), r.units().Length(top-room))
	}
	if o.Header.Width() > w.Depth()+tolerance {
		r.fail(o.Pos, "header-too-thick", where, "take fewer plies",
			"the header %s is %s thick, the wall %s deep", o.Header.Text, r.units().Length(o.Header.Width()), r.units().Length(w.Depth()))
	}
}

// checkApart refuses two openings that share a place.
func (r *reader) checkApart(a, b *plan.Opening, wall string) {
	across := min(a.At+a.Width, b.At+b.Width) - max(a.At, b.At)
	up := min(a.Sill+a.Height, b.Sill+b.Height) - max(a.Sill, b.Sill)
	if across > tolerance && up > tolerance && !r.broken[a] && !r.broken[b] {
		r.fail(b.Pos, "openings-overlap", wall+", opening "+b.Name, "move one of them",
			"it runs from %s to %s and overlaps opening %s, which runs from %s to %s, by %s",
			r.units().Length(b.At), r.units().Length(b.At+b.Width), a.Name, r.units().Length(a.At), r.units().Length(a.At+a.Width), r.units().Length(across))
	}
}

// checkShear looks at one shear wall segment.
func (r *reader) checkShear(w *plan.Wall, s *plan.Shear, wall string) {
	where := wall + ", shear wall " + s.Name
	switch {
	case r.broken[s]:
		return
	case s.To <= s.From:
		r.fail(s.Pos, "shear-off-wall", where, "to must be more than from", "it runs from %s to %s", r.units().Length(s.From), r.units().Length(s.To))
	case s.To > w.Length()+tolerance:
		r.fail(s.Pos, "shear-off-wall", where, "shorten it", "it ends at %s, and the wall at %s", r.units().Length(s.To), r.units().Length(w.Length()))
	}
	for _, o := range w.Openings {
		if across := min(s.To, o.At+o.Width) - max(s.From, o.At); across > tolerance && !s.Perforated && !r.broken[o] {
			r.fail(s.Pos, "opening-in-shear", where, "end it at the opening, or write perforated = true",
				"opening %s reaches %s into it", o.Name, r.units().Length(across))
		}
	}
}
