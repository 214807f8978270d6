package plan

import (
	"slices"

	"galewright/plan/geom"
)

// Length returns the station of To: the length of the wall's line from where
// the tape hooks, in.
func (w *Wall) Length() float64 { return w.Hook + w.To.Sub(w.From).Len() }

// Frame returns the wall's frame on plan, which begins where the tape hooks.
func (w *Wall) Frame() geom.Frame {
	f := geom.NewFrame(w.From, w.To)
	if w.Hook != 0 {
		f.Origin = f.At(-w.Hook, 0, 0).Flat()
	}
	return f
}

// Hooked returns the wall with its stations counted from a point that lies by
// inches before From; w itself is left as it is.
func (w *Wall) Hooked(by float64) *Wall {
	h, shift := *w, by-w.Hook
	h.Hook, h.Layout = by, w.Layout+shift
	h.Openings, h.Shear, h.Posts = slices.Clone(w.Openings), slices.Clone(w.Shear), slices.Clone(w.Posts)
	for i, o := range w.Openings {
		moved := *o
		moved.At += shift
		h.Openings[i] = &moved
	}
	for i, p := range w.Posts {
		moved := *p
		moved.At += shift
		h.Posts[i] = &moved
	}
	for i, s := range w.Shear {
		moved := *s
		moved.From, moved.To = s.From+shift, s.To+shift
		h.Shear[i] = &moved
	}
	return &h
}
