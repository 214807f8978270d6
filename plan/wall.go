package plan

import (
	"cmp"
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
	if x := w.Breaks; x != nil {
		h.Breaks = &PlateBreaks{Bottom: shifted(x.Bottom, shift), Top: shifted(x.Top, shift), Upper: shifted(x.Upper, shift), Pos: x.Pos}
	}
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

// Panels returns the stretches of the wall that its own sheathing covers, from station to
// station in, as segments without a name: those from From to To that no shear segment
// covers. None where the plan says nothing of such sheathing.
func (w *Wall) Panels() (out []*Shear) {
	x := w.Sheathing
	if x == nil {
		return nil
	}
	covered := slices.Clone(w.Shear)
	slices.SortFunc(covered, func(a, b *Shear) int { return cmp.Compare(a.From, b.From) })
	from := w.Hook
	stretch := func(to float64) {
		if to-from > sliver {
			out = append(out, &Shear{From: from, To: to, Panel: x.Panel, Nail: x.Nail, Edge: x.Edge, Field: x.Field, Pos: x.Pos})
		}
	}
	for _, s := range covered {
		stretch(s.From)
		from = max(from, s.To)
	}
	stretch(w.Length())
	return out
}

// sliver is the length of wall beside a shear segment, in, under which no panel is cut for it.
const sliver = 1

// shifted returns the stations moved by a length, in; nil stays nil.
func shifted(list []float64, by float64) []float64 {
	out := slices.Clone(list)
	for i := range out {
		out[i] += by
	}
	return out
}

// Sheathing is the panels of a wall outside of its shear segments, on the outside face of
// its studs, and their nails. They resist no lateral load and tie nothing.
type Sheathing struct {
	Panel string  // "7/16"
	Nail  string  // "8d common"
	Edge  float64 // nails along panel edges, on center, in
	Field float64 // nails along the studs between, on center, in
	Pos   Pos
}

// PlateBreaks says where the plates of a wall are spliced: stations, in. A list that is nil
// leaves that plate to the rule, an empty one asks for no break.
type PlateBreaks struct {
	Bottom, Top, Upper []float64
	Pos                Pos
}
