package plan

import "math"

// TopLevel returns the level whose top the studs of w reach.
func (w *Wall) TopLevel() *Level {
	if w.ToLevel != nil {
		return w.ToLevel
	}
	return w.Level
}

// Passes tells whether the studs of w run past the floor of level l.
func (w *Wall) Passes(l *Level) bool { return w.On(l) && w.Level.Index < l.Index }

// PlateTop returns the top of a wall's plates above grade, in; of a rake
// wall, of its lowest place.
func (w *Wall) PlateTop() float64 {
	if w.Height > 0 {
		return w.Level.Floor + w.Height
	}
	return w.TopLevel().Top()
}

// Above returns the level over l, or nil.
func (p *Plan) Above(l *Level) *Level {
	for _, x := range p.Levels {
		if x.Index == l.Index+1 {
			return x
		}
	}
	return nil
}

// End returns the station of an opening's far side, the right jack's inside
// face, in; At is that of its near side.
func (o *Opening) End() float64 { return o.At + o.Width }

// Angle returns the angle of the steeper side of r, degrees.
func (r *Roof) Angle() float64 {
	return math.Atan(math.Max(r.Pitch, r.PitchOther)/12) * 180 / math.Pi
}

// RidgeAxis returns the axis that the ridge (of a shed: the high wall) runs
// along: 0 for x, 1 for y.
func (r *Roof) RidgeAxis() int {
	if r.Ridge == AxisY {
		return 1
	}
	return 0
}

// IsWindow tells whether the opening is a window: by its kind, or where a
// program left that out, by its sill.
func (o *Opening) IsWindow() bool { return o.Kind == Window || o.Kind == "" && o.Sill > 0 }
