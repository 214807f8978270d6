package floorplan

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
	"galewright/render/label"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/render/table"
)

// RoofPages makes the plan of the roofs: faces, rafters with their
// numbers, and the pieces that have their home here.
func RoofPages(c *page.Context) []*page.Page {
	if len(c.House.Roof) == 0 {
		return nil
	}
	lo, hi := roofBounds(c)
	top, left, m := openMargins(c, numberRoom(c)+c.Size.Note*1.5+1, numberRoom(c)+overhangRoom(c)+1)
	return planPages(c, layPlan(c, lo, hi, m, leastOpenScale(c)), planKind{
		title: "Roof plan", key: "roof", top: top, left: left,
		draw:   func(v *planView, s planSheet) { v.drawRoof(s) },
		tables: []*table.Table{table.Numbered("Notes", roofNotes(c))},
	})
}

// roofBounds returns the extent of all faces on plan.
func roofBounds(c *page.Context) (lo, hi geom.Vec2) {
	lo, hi = geom.Vec2{X: math.Inf(1), Y: math.Inf(1)}, geom.Vec2{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, f := range c.House.Roof {
		for _, p := range f.Outline {
			lo = geom.Vec2{X: min(lo.X, p.X), Y: min(lo.Y, p.Y)}
			hi = geom.Vec2{X: max(hi.X, p.X), Y: max(hi.Y, p.Y)}
		}
	}
	return lo, hi
}

// drawRoof draws everything of the roofs that this sheet shows.
func (v *planView) drawRoof(s planSheet) {
	v.board.Block(v.Block)
	v.drawGrid(gridOf(v.Context), s)
	for _, f := range v.House.Roof {
		v.drawFace(f)
	}
	v.dashedWalls()
	for _, m := range v.House.Members {
		v.drawRoofMember(m)
	}
	for _, f := range v.House.Roof {
		v.faceEdges(f)
	}
	v.roofHardware()
	for _, f := range v.House.Roof {
		v.faceWords(f)
		v.overhang(f)
	}
	v.numberRafters()
	v.trimmers()
}

// trimmers letters along each doubled rafter at a dormer the station of its middle: along the
// eave from the west or south end, as the plan counts the dormer's.
func (v *planView) trimmers() {
	told := map[string]bool{}
	for _, d := range v.House.Dormers {
		for _, m := range v.House.Members {
			if m.Role != plan.Rafter || m.Roof != d.Roof || m.Section.Ply < 2 || told[m.ID] {
				continue
			}
			told[m.ID] = true
			a, b := m.A.Flat(), m.B.Flat()
			p, q := v.pt(a), v.pt(b)
			if v.sees(a) && v.sees(b) {
				v.edgeName("doubled, "+v.Length(trimmerAt(m)), p, q, b.Sub(a).Unit())
			}
		}
	}
}

// trimmerAt is the station of a doubled rafter's middle along the eave of its roof, in.
func trimmerAt(m *framing.Member) float64 {
	i := 1 - m.B.Sub(m.A).Flat().MainAxis()
	return m.A.Flat().Along(i) - m.Roof.Area[0].Along(i)
}

// drawFace draws the outline of a face over the paper's white.
func (v *planView) drawFace(f *framing.Face) {
	for i, p := range f.Outline {
		if f.Edges[i].Kind == "" { // joins a dormer's opening to the outline
			continue
		}
		q := f.Outline[(i+1)%len(f.Outline)]
		v.stroke(sheet.PenMember, sheet.LayerMember, p.Flat(), q.Flat())
	}
}

// edgePen returns the pen of an edge of a face and whether it is lettered.
func edgePen(kind roofplan.EdgeKind) (sheet.Pen, bool) {
	switch kind {
	case roofplan.Ridge, roofplan.Hip, roofplan.Valley: // their members are drawn too
		return sheet.PenMember, true
	case roofplan.Eave, roofplan.Rake:
		return sheet.PenCut, false
	}
	return sheet.PenMember, false
}

// faceEdges draws a face's edges by what they are and letters ridge, hips and
// valleys once each.
func (v *planView) faceEdges(f *framing.Face) {
	for i, e := range f.Edges {
		if e.Kind == "" {
			continue
		}
		a, b := f.Outline[i].Flat(), f.Outline[(i+1)%len(f.Outline)].Flat()
		pen, lettered := edgePen(e.Kind)
		p, q, ok := v.stroke(pen, sheet.LayerMember, a, b)
		if !ok || !lettered || !firstSide(a, b) {
			continue
		}
		v.board.BlockLine(p, q)
		v.edgeName(string(e.Kind), p, q, b.Sub(a).Unit())
	}
}

// firstSide picks one of the two faces that share an edge.
func firstSide(a, b geom.Vec2) bool {
	if math.Abs(a.X-b.X) > geom.Eps {
		return a.X < b.X
	}
	return a.Y < b.Y
}

// edgeName queues the name of a ridge, hip or valley along it.
func (v *planView) edgeName(s string, p, q sheet.Pt, d geom.Vec2) {
	var mids []sheet.Pt
	for _, t := range []sheet.MM{0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9} {
		mids = append(mids, sheet.Pt{X: p.X + (q.X-p.X)*t, Y: p.Y + (q.Y-p.Y)*t})
	}
	v.turnedWords(page.Lettered{S: s}, v.angleOn(d), 1.2, mids, []sheet.Pt{mids[0], mids[3]})
}

// ground whitens what lies under lettering, turned with it.
func (v *planView) ground(r sheet.Rect, angle float64, w, h sheet.MM) {
	sin, cos := math.Sincos(angle * math.Pi / 180)
	c := r.Center()
	var pts []sheet.Pt
	for _, q := range [][2]sheet.MM{{-w, -h}, {w, -h}, {w, h}, {-w, h}} {
		p := sheet.Turn(sheet.Pt{X: q[0] / 2, Y: q[1] / 2}, sin, cos, 1)
		pts = append(pts, c.Add(p))
	}
	v.Polygon(sheet.Style{Fill: sheet.White, Layer: sheet.LayerLabel}, pts...)
}

// dashedWalls draws the walls under the roofs, hidden by them.
func (v *planView) dashedWalls() {
	seen := map[*plan.Level]bool{}
	for _, r := range v.House.Plan.Roofs {
		if r.Over == nil || seen[r.Over] {
			continue
		}
		seen[r.Over] = true
		for _, w := range v.WallsOn(r.Over) {
			v.dashedWall(w)
		}
	}
}

func (v *planView) dashedWall(w *plan.Wall) {
	pts := wallPoly(w.Frame(), 0, w.Length(), 0, w.Depth())
	for i, p := range pts {
		v.stroke(sheet.PenHidden, sheet.LayerHidden, p, pts[(i+1)%len(pts)])
	}
}

// drawRoofMember draws a member of the roof from above.
func (v *planView) drawRoofMember(m *framing.Member) {
	fill := sheet.White
	switch m.Role {
	case plan.Rafter, plan.Truss, plan.HipTruss, plan.JackTruss, plan.ValleyFrame, plan.Outlooker, plan.Blocking, plan.RoofHeader, plan.ValleyBoard:
	case plan.HipRafter, plan.ValleyRafter, plan.Ridge, plan.CornerJack, plan.GirderTruss:
		fill = sheet.Pale
	default:
		return
	}
	breadth := m.Section.Width()
	if m.Role == plan.ValleyBoard { // laid flat
		breadth = m.Section.Depth
	}
	if breadth <= 0 {
		breadth = 1.5
	}
	v.bar(sheet.Style{Pen: sheet.PenDim, Fill: fill, Layer: sheet.LayerMember}, m.A.Flat(), m.B.Flat(), breadth)
}

// roofHardware draws the clips at the plates again and, at home here, the
// pieces at the ridge and whatever has no wall; these move off those.
func (v *planView) roofHardware() {
	var again, home []spot
	for _, pc := range v.Placement.Pieces {
		away := geom.Vec2{X: 1}
		if m := pc.Joint.First(); m != nil && m.B.Sub(m.A).Flat().Len() > 1 {
			away = m.A.Sub(m.B).Flat().Unit() // downhill, on its own rafter
		}
		s := spot{piece: pc, at: pc.Joint.At.Flat(), away: away}
		switch {
		case page.HomeOf(pc) == page.OnRoof:
			s.home = true
			home = append(home, s)
		case pc.Joint.Kind.Shown() == plan.RoofSheet:
			again = append(again, s)
		}
	}
	v.drawSpots(append(again, home...))
}

// overhang dimensions how far a face's eaves and rakes stand out from the walls.
func (v *planView) overhang(f *framing.Face) {
	if f.Roof == nil {
		return
	}
	for i, e := range f.Edges {
		d, words := f.Roof.Overhang, "overhang "
		if e.Kind == roofplan.Rake {
			d, words = f.Roof.Rake, "rake "
		}
		if (e.Kind != roofplan.Eave && e.Kind != roofplan.Rake) || d < 1 {
			continue
		}
		a, b := f.Outline[i].Flat(), f.Outline[(i+1)%len(f.Outline)].Flat()
		in := b.Sub(a).Unit().Left() // outlines run counterclockwise
		at := a.Add(b.Sub(a).Mul(0.27))
		if !v.sees(at) {
			continue
		}
		p, q, ok := v.stroke(sheet.PenDim, sheet.LayerDimension, at, at.Add(in.Mul(d)))
		if !ok {
			continue
		}
		v.Tick(p)
		v.Tick(q)
		v.board.BlockLine(p, q)
		s := words + v.Length(d)
		w, h := page.TextWidth(s, v.Size.Note, false)+0.8, v.Size.Note*1.4
		out := v.dir(in.Mul(-1))
		var near []sheet.Pt
		for _, off := range []sheet.MM{0, 2, 4, 7, 11} {
			off += numberRoom(v.Context)
			near = append(near, sheet.Pt{X: p.X + out.X*(off+w/2), Y: p.Y + out.Y*(off+h/2)})
		}
		v.words(s, page.Lettered{Role: "dimension"}, near, []sheet.Pt{p})
	}
}

// numberRafters sets each rafter's number outside its low end, turned along
// it; where they stand too close, every second or fifth.
func (v *planView) numberRafters() {
	var list []*framing.Member
	for _, m := range v.House.Members {
		if m.Ref != "" && (m.Role == plan.Rafter || m.Role.IsTruss() || m.Role == plan.HipRafter || m.Role == plan.ValleyRafter) {
			list = append(list, m)
		}
	}
	z := v.Size.Note
	for _, m := range list {
		low, d := m.A.Flat(), m.A.Sub(m.B).Flat().Unit()
		if !v.sees(low) {
			continue
		}
		out := v.dir(d)
		p := v.pt(low)
		w := page.TextWidth(m.Ref, z, false)
		a := v.angleOn(d)
		sin, cos := math.Sincos(a * math.Pi / 180)
		bw := sheet.MM(math.Abs(float64(w)*cos)+math.Abs(float64(z)*sin)) + 0.3
		bh := sheet.MM(math.Abs(float64(w)*sin)+math.Abs(float64(z)*cos)) + 0.3
		l := label.Label{Name: "rafter " + m.Ref, W: bw, H: bh, Anchors: []sheet.Pt{p}}
		for _, off := range []sheet.MM{1, 2.5, 4.5, -6, -10, -14, -20} {
			l.Near = append(l.Near, sheet.Pt{X: p.X + out.X*(off+w/2), Y: p.Y + out.Y*(off+w/2)})
		}
		v.later(l, func(r sheet.Rect) {
			c := r.Center()
			at := sheet.Pt{X: c.X + z*0.5*sheet.MM(sin), Y: c.Y + z*0.5*sheet.MM(cos)}
			v.ground(r, a, w+0.3, z+0.3)
			v.Text(page.Lettered{S: m.Ref, At: at, Anchor: sheet.Middle, Angle: a, Role: "label"})
			v.Box("label", "rafter "+m.Ref, r)
		})
	}
}

// overhangRoom is the width of the longest lettering of an overhang, mm.
func overhangRoom(c *page.Context) (w sheet.MM) {
	for _, r := range c.House.Plan.Roofs {
		w = max(w, page.TextWidth("overhang "+c.Length(r.Overhang), c.Size.Note, false), page.TextWidth("rake "+c.Length(r.Rake), c.Size.Note, false))
	}
	return w
}

// numberRoom is the room that rafter numbers take outside the eaves, mm.
func numberRoom(c *page.Context) sheet.MM { return page.TextWidth("000", c.Size.Note, false) + 2 }

// roofNotes says how to read the roof plan, and what each roof is.
func roofNotes(c *page.Context) []string {
	if len(c.House.Roof) == 0 {
		return nil
	}
	notes := []string{
		c.House.Plan.InRoofWords("Rafters are numbered at the low end. Walls below are dashed."),
		"Pieces at ridge, hips and valleys are counted here. Clips at the plates are shown again; the elevation of their wall counts them.",
	}
	for _, r := range c.House.Plan.Roofs {
		s := fmt.Sprintf("Roof %s: %s, %s in 12, %s, overhang %s at eaves", r.Name, r.Kind, trimFloat(r.Pitch), madeOf(c, r), c.Length(r.Overhang))
		if r.Kind != plan.HipRoof && r.Rake > 0 {
			s += ", " + c.Length(r.Rake) + " at rakes"
		}
		s += "."
		notes = append(notes, s)
		if words := c.House.BlocksOf(r); words != "" {
			notes = append(notes, fmt.Sprintf("Roof %s: %s.", r.Name, c.House.Plan.InRoofWords(words)))
		}
	}
	notes = append(notes, trussNotes(c)...)
	for _, d := range c.House.Dormers {
		notes = append(notes, dormerNote(c, d))
	}
	return notes
}

// dormerNote says where a dormer stands and of what it is made.
func dormerNote(c *page.Context, d *framing.Dormer) string {
	front := "its front over the wall below"
	if d.SetBack > 0 {
		front = "its front " + c.Length(d.SetBack) + " in from the wall below"
	}
	end := "west"
	if d.Side == plan.East || d.Side == plan.West {
		end = "south"
	}
	made := ""
	if len(d.Headers) > 0 && d.Trimmers[0] != nil {
		at := []float64{trimmerAt(d.Trimmers[0]), trimmerAt(d.Trimmers[1])}
		slices.Sort(at)
		made = fmt.Sprintf(", trimmers %s with their middles %s and %s from the %s end, headers %s", d.Trimmers[0].Section.Text, c.Length(at[0]), c.Length(at[1]), end, d.Headers[0].Section.Text)
	}
	over := "The main rafters above its opening go on under its roof: valley boards 2x8 lie flat on the main deck, ripped to no bevel, and the jacks stand on them."
	if d.Kind == plan.ShedRoof {
		over = fmt.Sprintf("A shed: its rafters hang on the upper header, %s in from the wall below, their tops flush with the main roof's there; those over its side walls are cut long onto the trimmers.", c.Length(d.Upper))
	}
	return fmt.Sprintf("Dormer %s on roof %s, %s side: middle %s from the %s end, %s wide, %s, plates %s over those below; %s in 12, %s%s. %s",
		d.Name, d.Roof.Name, d.Side, c.Length(d.Center), end, c.Length(d.Width), front, c.Length(d.PlateHeight), trimFloat(d.Pitch), madeOf(c, d.Own), made, over)
}

// madeOf says what a roof is made of, at which spacing, and from where it is
// counted where the plan says so.
func madeOf(c *page.Context, r *plan.Roof) string {
	from := ""
	if r.Layout != nil {
		end := map[plan.Axis]string{plan.AxisX: "west", plan.AxisY: "south"}[r.Ridge]
		from = fmt.Sprintf(" from %s off the %s end", c.Length(*r.Layout), end)
	}
	if r.Trusses {
		return fmt.Sprintf("trusses with chords %s at %s o.c.%s", r.Rafters.Text, c.Spacing(r.Spacing), from)
	}
	s := fmt.Sprintf("rafters %s at %s o.c.%s", r.Rafters.Text, c.Spacing(r.Spacing), from)
	if r.RidgeMember.Text == "" { // the shed of a dormer
		return s
	}
	return s + ", ridge " + r.RidgeMember.Text
}
