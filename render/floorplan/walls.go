package floorplan

import (
	"math"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/render/label"
	"galewright/render/page"
	"galewright/render/sheet"
)

// wallPoly returns the corners of a part of a wall between stations and
// depths.
func wallPoly(f geom.Frame, s0, s1, t0, t1 float64) []geom.Vec2 {
	return []geom.Vec2{f.At(s0, t0, 0).Flat(), f.At(s1, t0, 0).Flat(), f.At(s1, t1, 0).Flat(), f.At(s0, t1, 0).Flat()}
}

// footprint returns the extent of a member in a wall's frame.
func footprint(m *framing.Member, f geom.Frame) (s0, s1, t0, t1 float64) {
	s0, t0 = math.Inf(1), math.Inf(1)
	s1, t1 = math.Inf(-1), math.Inf(-1)
	for _, solid := range m.Solid {
		solid.Points(func(p geom.Vec3) {
			s, t := f.Local(p.Flat())
			s0, s1, t0, t1 = min(s0, s), max(s1, s), min(t0, t), max(t1, t)
		})
	}
	return s0, s1, t0, t1
}

// outline returns the corners on plan of what stands or lies level and is cut at an
// angle: those of its top.
func outline(m *framing.Member) (out []geom.Vec2) {
	_, hi := m.Solid[0].Bounds()
	for _, face := range m.Solid[0].Faces {
		if slices.ContainsFunc(face, func(p geom.Vec3) bool { return p.Z < hi.Z-geom.Eps }) {
			continue
		}
		for _, p := range face {
			out = append(out, p.Flat())
		}
	}
	return out
}

// studFill says how a member cut by the plan is filled: what runs from plate
// to plate darker than what stops under a header.
func studFill(r plan.Role) (sheet.Fill, bool) {
	switch {
	case r.FullHeight(), r == plan.BeveledStud:
		return sheet.Mid, true
	case r == plan.Jack:
		return sheet.Pale, true
	}
	return sheet.NoFill, false
}

// drawWall draws a wall cut above its sills: plates as outline, studs, jacks
// and posts as rectangles, openings as gaps, sheathed lengths hatched.
func (v *planView) drawWall(w *plan.Wall, members []*framing.Member) {
	f, d := w.Frame(), w.Depth()
	for _, m := range members {
		if m.Role == plan.BottomPlate || m.Role == plan.SillPlate && len(members) > 0 {
			v.memberShape(m, f, sheet.Style{Pen: sheet.PenCut, Fill: sheet.White, Layer: sheet.LayerMember})
		}
	}
	for _, s := range w.Shear {
		v.hatch(f, s.From, s.To, d)
	}
	for _, m := range members {
		if fill, ok := studFill(m.Role); ok {
			v.memberShape(m, f, sheet.Style{Pen: sheet.PenDim, Fill: fill, Layer: sheet.LayerMember})
		}
	}
	for _, o := range w.Openings {
		v.drawOpening(w, o)
	}
	if r, ok := v.boxOf(wallPoly(f, 0, w.Length(), 0, d)); ok {
		v.board.Block(r)
	}
}

// boxOf returns the box on paper of a part of the plan that is on the sheet.
func (v *planView) boxOf(pts []geom.Vec2) (sheet.Rect, bool) {
	on := v.cut(pts)
	if on == nil {
		return sheet.Rect{}, false
	}
	return page.Bounds(on), true
}

func (v *planView) memberShape(m *framing.Member, f geom.Frame, s sheet.Style) {
	if m.Bevel > 0 {
		v.shape(s, outline(m)...)
		return
	}
	s0, s1, t0, t1 := footprint(m, f)
	if s0 < s1 {
		v.shape(s, wallPoly(f, s0, s1, t0, t1)...)
	}
}

// drawOpening draws a gap: a window with the lines of its sill, a door or
// plain opening with the header's faces dashed.
func (v *planView) drawOpening(w *plan.Wall, o *plan.Opening) {
	frame, depth := w.Frame(), w.Depth()
	start, end := o.At, o.End()
	if _, ok := v.shape(sheet.Style{Pen: sheet.PenDim, Fill: sheet.White, Layer: sheet.LayerMember}, wallPoly(frame, start, end, 0, depth)...); !ok {
		return
	}
	pen, layer, depths := sheet.PenHidden, sheet.LayerHidden, []float64{0, depth}
	if o.IsWindow() {
		pen, layer, depths = sheet.PenMember, sheet.LayerMember, []float64{0, depth * 0.35, depth * 0.5, depth}
	}
	for _, t := range depths {
		v.stroke(pen, layer, frame.At(start, t, 0).Flat(), frame.At(end, t, 0).Flat())
	}
	mid := (start + end) / 2
	if !v.sees(frame.At(mid, 0, 0).Flat()) {
		return
	}
	var near, anchors []sheet.Pt
	for _, s := range []float64{mid, mid - o.Width*0.3, mid + o.Width*0.3} {
		for _, off := range []sheet.MM{3.2, 5.5, 8, 11, 14} {
			in := v.dir(frame.In)
			p := v.pt(frame.At(s, depth, 0).Flat())
			tw := page.TextWidth(o.Name, v.Size.Note, false)
			near = append(near, sheet.Pt{X: p.X + in.X*(off+tw/2), Y: p.Y + in.Y*off})
		}
	}
	anchors = append(anchors, v.pt(frame.At(mid, depth/2, 0).Flat()))
	v.words(o.Name, page.Lettered{Role: "label"}, near, anchors)
}

// hatch draws the slanting lines of a sheathed length over a wall's depth.
func (v *planView) hatch(f geom.Frame, s0, s1, d float64) {
	step := 2.2 / v.vp.Scale.K()
	for s := s0 - d; s < s1; s += step {
		a, b := s, s+d // from the outside face at a to the inside face at b
		ta, tb := 0.0, d
		if a < s0 {
			ta, a = s0-s, s0
		}
		if b > s1 {
			tb, b = s1-s, s1
		}
		if b > a {
			v.stroke(sheet.PenDim, sheet.LayerMember, f.At(a, ta, 0).Flat(), f.At(b, tb, 0).Flat())
		}
	}
}

// shearWords says how a sheathed length is nailed.
func shearWords(c *page.Context, s *plan.Shear) string {
	w := "shear " + s.Name
	if s.Edge > 0 && s.Field > 0 {
		w += " " + c.Spacing(s.Edge) + "/" + c.Spacing(s.Field)
	}
	if s.BothFaces {
		w += ", both faces"
	}
	return strings.TrimSpace(w)
}

// labelShear names the sheathed lengths of a wall.
func (v *planView) labelShear(w *plan.Wall) {
	f, d := w.Frame(), w.Depth()
	for _, s := range w.Shear {
		mid := (s.From + s.To) / 2
		if !v.sees(f.At(mid, d/2, 0).Flat()) {
			continue
		}
		text := shearWords(v.Context, s)
		if !strings.HasPrefix(s.Name, w.Name) { // in a corner two walls' names meet
			text = w.Name + " " + text
		}
		var near []sheet.Pt
		for _, u := range []float64{mid, mid - (s.To-s.From)*0.25, mid + (s.To-s.From)*0.25} {
			near = append(near, v.beside(f, u, d, 1, page.TextWidth(text, v.Size.Note, false), 4, 6)...)
			near = append(near, v.beside(f, u, 0, -1, page.TextWidth(text, v.Size.Note, false), 3, 3)...)
		}
		v.words(text, page.Lettered{Role: "label"}, near, []sheet.Pt{v.pt(f.At(mid, d, 0).Flat()), v.pt(f.At(mid, 0, 0).Flat())})
	}
}

// beside returns n places ever farther from a wall's face at depth t, inward
// (side 1) or outward, for a text of width tw.
func (v *planView) beside(f geom.Frame, s, t, side float64, tw, first sheet.MM, n int) (out []sheet.Pt) {
	p, in := v.pt(f.At(s, t, 0).Flat()), v.dir(f.In)
	for i := range n {
		off := first + sheet.MM(i)*2.5
		k := sheet.MM(side)
		out = append(out, sheet.Pt{X: p.X + in.X*k*(off+tw/2), Y: p.Y + in.Y*k*off})
	}
	return out
}

// sheetRange lists sheet numbers: one or two by themselves, more as a range.
func sheetRange(ns []string) string {
	if len(ns) > 2 {
		return ns[0] + " to " + ns[len(ns)-1]
	}
	return strings.Join(ns, ", ")
}

// inside returns places for a wall's label on its inner side.
func (v *planView) inside(w *plan.Wall, width, height sheet.MM) (near []sheet.Pt) {
	f, in := w.Frame(), v.dir(w.Frame().In)
	for _, share := range []float64{0.5, 0.3, 0.7, 0.15, 0.85} {
		s := w.Length() * share
		if !v.sees(f.At(s, 0, 0).Flat()) {
			continue
		}
		p := v.pt(f.At(s, w.Depth(), 0).Flat())
		for i := range 6 {
			off := height/2 + sheet.MM(1+3*i)
			near = append(near, sheet.Pt{X: p.X + in.X*(off+(width-height)/2), Y: p.Y + in.Y*off})
		}
	}
	return near
}

// wallMark is the arrow that stands before a wall's name, mm.
const wallMark sheet.MM = 5

// labelWall sets a wall's name with the arrow and the number of the sheet
// that shows its elevation, on the side it is seen from.
func (v *planView) labelWall(w *plan.Wall, lanes sheet.MM) {
	z := v.Size
	sheets := v.SheetsOf("wall " + w.Name)
	text := sheetRange(sheets)
	width, height := wallMark+1+page.TextWidth(w.Name, z.Dim, true), max(wallMark, z.Dim*1.4)
	if text != "" {
		width += 1.6 + page.TextWidth(text, z.Note, false)
	}
	l := label.Label{Name: "wall " + w.Name, W: width, H: height, Reach: 90}
	l.Near, l.Anchors = v.outside(w, lanes, width, height)
	l.Near = append(l.Near, v.inside(w, width, height)...)
	if len(l.Anchors) == 0 {
		return // none of it is on this sheet
	}
	v.later(l, func(r sheet.Rect) { v.setWallLabel(w, text, sheets, r) })
}

// outside returns places for a wall's label beyond its lanes, and where a
// leader may end.
func (v *planView) outside(w *plan.Wall, lanes, width, height sheet.MM) (near, anchors []sheet.Pt) {
	f, out := w.Frame(), v.dir(w.Frame().In.Mul(-1))
	for _, share := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9} {
		s := w.Length() * share
		if !v.sees(f.At(s, 0, 0).Flat()) {
			continue
		}
		p := v.pt(f.At(s, 0, 0).Flat())
		for i := range 5 {
			off := lanes + height/2 + 1 + sheet.MM(i)*2
			near = append(near, sheet.Pt{X: p.X + out.X*(off+(width-height)/2), Y: p.Y + out.Y*off})
		}
		anchors = append(anchors, p)
	}
	return near, anchors
}

// setWallLabel draws what labelWall laid out.
func (v *planView) setWallLabel(w *plan.Wall, text string, sheets []string, r sheet.Rect) {
	z, in, mid := v.Size, v.dir(w.Frame().In), r.Y+r.H/2
	angle := math.Atan2(-float64(in.X), -float64(in.Y)) * 180 / math.Pi
	v.Use("sym-view", sheet.Pt{X: r.X + wallMark/2, Y: mid}, angle, 1, nil)
	at := sheet.Pt{X: r.X + wallMark + 1, Y: mid + z.Dim/2}
	link := ""
	if len(sheets) > 0 {
		link = sheets[0]
	}
	v.Text(page.Lettered{S: w.Name, Cap: z.Dim, At: at, Bold: true, Role: "label", Link: link})
	if text != "" {
		v.Text(page.Lettered{S: text, At: at.Add(sheet.Pt{X: page.TextWidth(w.Name, z.Dim, true) + 1.6}), Role: "label", Link: link})
	}
	v.Box("label", "wall "+w.Name, r)
}
