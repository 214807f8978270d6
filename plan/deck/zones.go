package deck

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/source"
	"galewright/plan/wind"
)

// Zone is a zone of components and cladding at a place of the roof.
type Zone struct {
	Name  string // of the figure: "2e"
	Over  bool   // outside of the walls, with wind on its underside too
	GCp   float64
	Below float64 // what acts from below: GCpi, or wall GCp on an overhang; 0 where GCp holds both
	From  string  // what Below is
	// Suction is the net pressure away from the roof, psf at strength level.
	Suction float64
	Raised  bool // the least pressure of components and cladding governs
}

// Winds finds the zones of a deck.
type Winds struct {
	Basis   wind.Basis
	A       float64 // width a of the edge strips, in
	Deck    *Deck
	figures []wind.Figure               // of each face
	Faults  map[*plan.Roof]error        // of roofs that no figure has
	walls   map[*plan.Level]*geom.Rings // exterior walls that reach the plates of a level
	q       float64                     // velocity pressure at mean roof height with Kd, psf
	soffit  float64                     // GCp on the underside of an overhang
}

// nailArea is the effective wind area of a nail, ft²: less than the least of
// any figure, so that the largest coefficient of a curve holds (ASCE 7-16
// 26.2: of a fastener of cladding, no more than what it holds; from memory).
const nailArea = 1.0

// Blow returns the zones of the deck in the wind of a basis.
func (d *Deck) Blow(b wind.Basis) *Winds {
	w := &Winds{
		Basis: b, A: 12 * b.EdgeStrip(), Deck: d, figures: make([]wind.Figure, len(d.Faces)), Faults: map[*plan.Roof]error{}, q: b.At(b.Height).QKd,
		walls: outlines(d.House.Plan),
		// the reduction of wall coefficients to 10 degrees is not taken
		soffit: wind.WallFigure(b.Edition, 45).Zones[0].Positive.At(nailArea),
	}
	for i, x := range d.Faces {
		f, err := wind.RoofFigure(b.Edition, x.Roof.Kind, x.angle(), b.Height/math.Max(1, math.Min(b.Length, b.Width)))
		if err != nil {
			w.Faults[x.Roof] = err
			continue
		}
		w.figures[i] = f
	}
	return w
}

// outlines returns the exterior walls that reach the plates of each level.
func outlines(p *plan.Plan) map[*plan.Level]*geom.Rings {
	sides := map[*plan.Level][][2]geom.Vec2{}
	for _, x := range p.Walls {
		if l := x.TopLevel(); x.Exterior {
			sides[l] = append(sides[l], [2]geom.Vec2{x.From, x.To})
		}
	}
	out := map[*plan.Level]*geom.Rings{}
	for l, list := range sides {
		out[l] = geom.NewRings(list)
	}
	return out
}

// Figure returns the figure of a roof's first face.
func (w *Winds) Figure(r *plan.Roof) wind.Figure {
	for _, x := range w.Deck.Faces {
		if x.Roof == r {
			return w.figures[x.n]
		}
	}
	return wind.Figure{}
}

// angle returns the slope of a face, degrees.
func (x *Face) angle() float64 { return math.Acos(1/x.k) * 180 / math.Pi }

// Layout tells what the zones of a roof's figure are measured by.
func (w *Winds) Layout(r *plan.Roof) string {
	f := w.Figure(r)
	grade := "zone layout " + string(source.FromMemory)
	switch {
	case has(f, "1'"):
		return fmt.Sprintf("zone 2 within 0.6 h of an edge, 1' beyond 1.2 h, 3 in corners 0.6 h long and 0.2 h wide; %s", grade)
	case r.Kind == plan.ShedRoof:
		return fmt.Sprintf("strips of 2a along all edges, corners 2a by 4a at the high edge and 2a by 2a at the low one: the larger of what is remembered; %s", grade)
	case has(f, "3r"), has(f, "2r"):
		return fmt.Sprintf("strips of a along eaves (e), gable ends (n), ridges and hips (r), corners where two meet; %s", grade)
	}
	return fmt.Sprintf("strips of a along eaves, gable ends, ridges and hips, zone 3 where two meet: as in the editions before, which is not less than the figure; %s", grade)
}

func has(f wind.Figure, zone string) bool {
	for _, z := range f.Zones {
		if z.Zone == zone {
			return true
		}
	}
	return false
}

// At returns the zone at a plan point of a face: of those whose strips reach
// it, the one with the largest suction.
func (w *Winds) At(x *Face, p geom.Vec2) (out Zone) {
	over := !w.inside(x.Roof.Over, p)
	names := w.names(x, p)
	for _, c := range w.figures[x.n].Zones {
		for _, n := range names {
			if n != c.Zone {
				continue
			}
			if z := w.zone(c, over); z.Suction > out.Suction {
				out = z
			}
		}
	}
	return out
}

// zone returns the net suction of a zone: by ASCE 7-22 30.3 inside; on an
// overhang the figure's own curve, which holds both faces, else roof and wall
// coefficients together without internal pressure (ASCE 7-22 30.7 by two
// programs, transcribed).
func (w *Winds) zone(c wind.Clad, over bool) Zone {
	z := Zone{Name: c.Zone, Over: over, GCp: c.Negative.At(nailArea), Below: wind.GCpi(w.Basis.Enclosure), From: "internal pressure GCpi"}
	switch {
	case over && c.Overhang != nil:
		z.GCp, z.Below, z.From = c.Overhang.At(nailArea), 0, "overhang coefficient, both faces"
	case over:
		z.Below, z.From = w.soffit, "wall GCp on the underside"
	}
	z.Suction = w.q * (z.Below - z.GCp)
	if z.Suction < wind.LeastClad {
		z.Suction, z.Raised = wind.LeastClad, true
	}
	return z
}

// inside tells whether p lies within the exterior walls that reach the plates
// of a level: a ray to the east crosses an odd number of them.
func (w *Winds) inside(l *plan.Level, p geom.Vec2) bool {
	return w.walls[l] != nil && w.walls[l].Inside(p)
}

// sort of edge a zone is measured from.
type along int

const (
	low  along = iota // eaves
	side              // gable ends, and where a roof ends at a wall
	high              // ridges, the top of a shed
	hips
)

// sortOf returns the sort of an edge to a face; ok is false of those that no zone is
// measured from.
func (x *Face) sortOf(e *edge) (s along, ok bool) {
	level := e.Kind == plan.WallEdge && math.Abs(e.dir.Dot(x.up)) < 0.1
	switch {
	case e.Kind == plan.EaveEdge:
		return low, true
	case e.Kind == plan.RidgeEdge, level:
		return high, true
	case e.Kind == plan.HipEdge:
		return hips, true
	case e.Kind == plan.RakeEdge, e.Kind == plan.WallEdge:
		return side, true
	}
	return 0, false
}

// strips tells for each sort of edges whether p lies within d of one.
func (x *Face) strips(p geom.Vec2, d float64) (in [hips + 1]bool) {
	x.edges.near(p, d, func(e *edge) {
		if s, ok := x.sortOf(e); ok {
			in[s] = true
		}
	})
	return in
}

// strip tells whether p lies within d of an edge of a sort.
func (x *Face) strip(s along, p geom.Vec2, d float64) bool { return x.strips(p, d)[s] }

// names returns the zones of the roof's figure whose strips reach p. Their
// layout on the roof is from memory for every figure; see Layout.
func (w *Winds) names(x *Face, p geom.Vec2) []string {
	f, a := w.figures[x.n], w.A
	if has(f, "1'") {
		return w.flatNames(x, p)
	}
	if x.Roof.Kind == plan.ShedRoof {
		return shedNames(x, p, a, has(f, "3'"))
	}
	in := x.strips(p, a)
	e, r, g, h := in[low], in[side], in[high], in[hips]
	out := []string{"1"}
	put := func(yes bool, names ...string) {
		if yes {
			out = append(out, names...)
		}
	}
	put(e, "2", "2e")
	put(r, "2", "2n")
	put(r && !has(f, "2n"), "2e")
	put(g || h, "2", "2r")
	put(e && r || e && h, "3", "3e")
	put(r && g, "3", "3r")
	return out
}

// flatNames lays zones out by the mean roof height, on roofs to 7 degrees.
func (w *Winds) flatNames(x *Face, p geom.Vec2) []string {
	h := 12 * w.Basis.Height
	free := func(d float64) bool { return x.strip(low, p, d) || x.strip(side, p, d) }
	corner := func(long, wide float64) bool { return x.strip(low, p, long) && x.strip(side, p, wide) }
	if x.Roof.Kind == plan.ShedRoof {
		free = func(d float64) bool { return x.strip(low, p, d) || x.strip(side, p, d) || x.strip(high, p, d) }
		corner = func(long, wide float64) bool {
			return (x.strip(low, p, long) || x.strip(high, p, long)) && x.strip(side, p, wide)
		}
	}
	switch {
	case corner(0.6*h, 0.2*h), corner(0.2*h, 0.6*h):
		return []string{"3"}
	case free(0.6 * h):
		return []string{"2"}
	case free(1.2 * h):
		return []string{"1"}
	}
	return []string{"1'"}
}

// shedNames lays zones out on a monoslope roof. The figure has no hips: along one that
// turns a corner the roof is taken as along a free edge, and its foot as a corner.
func shedNames(x *Face, p geom.Vec2, a float64, primed bool) []string {
	out := []string{"1"}
	in := x.strips(p, 2*a)
	top, l, s := in[high], in[low], in[side]
	if top || l || s || in[hips] {
		out = append(out, "2")
	}
	if l && (s || in[hips]) {
		out = append(out, "3")
	}
	if wide := x.strip(side, p, 4*a); top {
		out = append(out, "2'")
		if wide && primed {
			out = append(out, "3'")
		} else if wide {
			out = append(out, "3")
		}
	}
	return out
}

// raster is how close places are looked at where no nails are known, in.
const raster = 12.0

// Most returns the zone with the largest suction on a roof, at the edge of its
// faces and on a raster of a foot.
func (w *Winds) Most(r *plan.Roof) (worst Zone) {
	for _, x := range w.Deck.Faces {
		if x.Roof != r || w.Faults[r] != nil {
			continue
		}
		lo, hi := bounds(x.shape)
		for u := lo.X + touch; u < hi.X; u += raster {
			for v := lo.Y + touch; v < hi.Y; v += raster {
				q := geom.Vec2{X: u, Y: v}
				if z := w.At(x, x.at(q)); holds(x.shape, q, 0) && z.Suction > worst.Suction {
					worst = z
				}
			}
		}
	}
	return worst
}
