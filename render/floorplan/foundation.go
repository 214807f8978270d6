package floorplan

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/render/table"
)

// FoundationPages makes the plan of what carries the lowest floor: piles,
// girders, porch posts and the pieces at home on them, and what is cast into the
// concrete under the walls.
func FoundationPages(c *page.Context) []*page.Page {
	lo, hi, ok := c.WallBounds()
	anchors := anchorsOf(c)
	found := len(anchors) > 0
	for _, m := range c.House.Members {
		if !onFoundationPlan(m.Role) {
			continue
		}
		found = true
		for _, p := range []geom.Vec3{m.A, m.B} {
			lo = geom.Vec2{X: min(lo.X, p.X-6), Y: min(lo.Y, p.Y-6)}
			hi = geom.Vec2{X: max(hi.X, p.X+6), Y: max(hi.Y, p.Y+6)}
		}
	}
	if !found || !ok {
		return nil
	}
	top, left, m := openMargins(c, c.Size.Note*3, page.TextWidth(c.Length(hi.X-lo.X), c.Size.Note, false)+4)
	kind := planKind{title: "Foundation plan", key: "foundation", tables: []*table.Table{table.Numbered("Notes", foundationNotes(c))}}
	least := leastOpenScale(c)
	if len(anchors) > 0 {
		least = min(least, anchorScale(c, anchors))
		top, left, m = planMargins(c, anchorRoom(c, anchors))
		kind.title, kind.tables = "Foundation and anchor plan", append([]*table.Table{anchorTable(c, anchors)}, kind.tables...)
	}
	room := top.step + 2 // of the girders' dimensions
	m.right, m.bottom = m.right+room, m.bottom+room
	kind.top, kind.left = top, left
	kind.draw = func(v *planView, s planSheet) {
		v.drawFoundation(s)
		v.girderDims(s, m, room)
		v.drawAnchors(anchors, anchorRoom(c, anchors), s)
	}
	return planPages(c, layPlan(c, lo, hi, m, least), kind)
}

func onFoundationPlan(r plan.Role) bool {
	switch r {
	case plan.GirderBeam, plan.Pile, plan.Beam, plan.PorchPost, plan.RidgePole:
		return true
	}
	return slices.Contains(plan.DeckRoles, r)
}

// drawFoundation draws everything of the foundation that this sheet shows.
func (v *planView) drawFoundation(s planSheet) {
	v.board.Block(v.Block)
	v.drawGrid(gridOf(v.Context), s)
	for _, w := range v.House.Plan.Walls {
		if w.Level.Index == 0 {
			v.dashedWall(w)
		}
	}
	v.breakaways()
	for _, r := range []plan.Role{plan.Beam, plan.DeckGirder, plan.DeckJoist, plan.DeckRim, plan.RailPost, plan.GirderBeam, plan.BraceBoard, plan.Pile, plan.PorchPost, plan.RidgePole} {
		for _, m := range v.House.Members {
			if m.Role == r {
				v.drawSupport(m)
			}
		}
	}
	v.bracingLines()
	v.girderNames()
	v.pileStations()
	v.poleStations()
	v.clearOfBeams()
	var spots []spot
	for _, pc := range v.Placement.Pieces {
		if page.HomeOf(pc) != page.OnFoundation {
			continue
		}
		away := geom.Vec2{X: 1, Y: 0}
		for _, m := range pc.Joint.Members {
			if m.Role == plan.GirderBeam || m.Role == plan.Beam || m.Role == plan.DeckGirder {
				away = m.B.Sub(m.A).Flat().Unit()
			}
		}
		s := spotOf(pc, away)
		s.at = s.at.Add(away.Mul(v.besidePole(pc)))
		spots = append(spots, s)
	}
	v.drawSpots(spots)
}

// clearOfBeams keeps labels off the beams of porches: they stand where walls have theirs.
func (v *planView) clearOfBeams() {
	for _, m := range v.House.Members {
		if m.Role != plan.Beam {
			continue
		}
		side := m.B.Sub(m.A).Flat().Unit().Left().Mul(m.Section.Width() / 2)
		for _, k := range []float64{-1, 0, 1} {
			off := side.Mul(k)
			if p, q, ok := v.vp.Segment(uv(m.A.Flat().Add(off), v.turned), uv(m.B.Flat().Add(off), v.turned)); ok {
				v.board.BlockLine(p, q)
			}
		}
	}
}

// drawSupport draws a girder or beam as a bar, a pile or post as its section.
func (v *planView) drawSupport(m *framing.Member) {
	b := math.Max(m.Section.Width(), 1.5)
	switch m.Role {
	case plan.BraceBoard:
		v.dashedBoard(m)
	case plan.DeckJoist, plan.DeckRim:
		v.bar(sheet.Style{Pen: sheet.PenDim, Fill: sheet.White, Layer: sheet.LayerMember}, m.A.Flat(), m.B.Flat(), b)
	case plan.GirderBeam, plan.Beam, plan.DeckGirder:
		v.bar(sheet.Style{Pen: sheet.PenMember, Fill: sheet.White, Layer: sheet.LayerMember}, m.A.Flat(), m.B.Flat(), b)
		for i := 1; i < m.Section.Ply; i++ {
			n := m.B.Sub(m.A).Flat().Unit().Left().Mul(b * (float64(i)/float64(m.Section.Ply) - 0.5))
			v.stroke(sheet.PenDim, sheet.LayerMember, m.A.Flat().Add(n), m.B.Flat().Add(n))
		}
	default:
		h, d := b/2, math.Max(m.Section.Depth, b)/2
		c := m.A.Flat()
		if r, ok := v.boxOf(wallPoly(geom.NewFrame(c, c.Add(geom.Vec2{X: 1})), -h, h, -d, d)); ok {
			v.board.Block(r)
		}
		v.shape(sheet.Style{Pen: sheet.PenCut, Fill: sheet.Pale, Layer: sheet.LayerMember},
			c.Add(geom.Vec2{X: -h, Y: -d}), c.Add(geom.Vec2{X: h, Y: -d}), c.Add(geom.Vec2{X: h, Y: d}), c.Add(geom.Vec2{X: -h, Y: d}))
	}
}

// girderDims dimensions the center lines of girders and porch beams between
// the outermost grid lines: those that run across the sheet at its right,
// those that run up it below.
func (v *planView) girderDims(s planSheet, m margins, room sheet.MM) {
	across, up := v.girderLines(s)
	c := v.vp.Clip
	if lines := v.toFaces(across, s, false); len(lines) > 0 {
		slices.Reverse(lines) // down the paper
		var ys []sheet.MM
		x := c.X + c.W + m.right - room + v.Size.Note*1.4 + 2
		for _, l := range lines {
			y := v.vp.Y(l.at)
			ys = append(ys, y)
			v.witness(sheet.Pt{X: c.X + c.W + 3, Y: y}, sheet.Pt{X: x + 1, Y: y})
		}
		v.stringV(lines, ys, x)
	}
	if lines := v.toFaces(up, s, true); len(lines) > 0 {
		var xs []sheet.MM
		y := c.Y + c.H + m.bottom - 1
		for _, l := range lines {
			x := v.vp.X(l.at)
			xs = append(xs, x)
			v.witness(sheet.Pt{X: x, Y: c.Y + c.H + 3}, sheet.Pt{X: x, Y: y + 1})
		}
		v.stringU(lines, xs, y)
	}
}

// witness draws a line from what a dimension measures to the dimension.
func (v *planView) witness(a, b sheet.Pt) {
	v.Line(sheet.PenDim, sheet.LayerDimension, a, b)
	v.board.BlockLine(a, b)
}

// girderLines returns where the girders and porch beams on the sheet run
// across it and up it.
func (v *planView) girderLines(s planSheet) (across, up []gridLine) {
	add := func(a, b geom.Vec2) {
		p, q := uv(a, v.turned), uv(b, v.turned)
		switch {
		case math.Abs(p.Y-q.Y) < 1 && p.Y > s.v0-geom.Eps && p.Y < s.v1+geom.Eps:
			across = append(across, gridLine{at: p.Y})
		case math.Abs(p.X-q.X) < 1 && p.X > s.u0-geom.Eps && p.X < s.u1+geom.Eps:
			up = append(up, gridLine{at: p.X})
		}
	}
	for _, g := range v.House.Plan.Girders {
		add(g.From, g.To)
	}
	for _, p := range v.House.Plan.Porches {
		add(p.From, p.To)
	}
	return across, up
}

// toFaces adds to lines the outermost grid lines on the sheet that run the
// same way, and sorts them; none when there are no lines.
func (v *planView) toFaces(lines []gridLine, s planSheet, upright bool) []gridLine {
	if len(lines) == 0 {
		return nil
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, g := range gridOf(v.Context) {
		q := uv(geom.Vec2{X: g.at, Y: g.at}, v.turned)
		at, from, to := q.Y, s.v0, s.v1
		if upright {
			at, from, to = q.X, s.u0, s.u1
		}
		if (g.alongY != v.turned) == upright && at > from-1 && at < to+1 {
			lo, hi = min(lo, at), max(hi, at)
		}
	}
	if lo <= hi {
		lines = append(lines, gridLine{at: lo}, gridLine{at: hi})
	}
	slices.SortFunc(lines, func(a, b gridLine) int { return cmp.Compare(a.at, b.at) })
	return slices.CompactFunc(lines, func(a, b gridLine) bool { return math.Abs(a.at-b.at) < 0.25 })
}

// girderNames sets each girder's and porch beam's name and section along it.
func (v *planView) girderNames() {
	for _, g := range v.House.Plan.Girders {
		v.nameBeam(g.Name+"  "+g.Member.Text, g.From, g.To, g.Member.Width())
	}
	for _, p := range v.House.Plan.Porches {
		v.nameBeam(p.Name+"  beam "+p.Beam.Text+", posts "+p.Post.Text, p.From, p.To, 2*p.Beam.Width())
	}
}

func (v *planView) nameBeam(s string, a, b geom.Vec2, wide float64) {
	p, q, ok := v.vp.Segment(uv(a, v.turned), uv(b, v.turned))
	if !ok {
		return
	}
	var mids []sheet.Pt
	for _, t := range []sheet.MM{0.5, 0.42, 0.58, 0.35, 0.65, 0.25, 0.75, 0.15, 0.85} {
		mids = append(mids, sheet.Pt{X: p.X + (q.X-p.X)*t, Y: p.Y + (q.Y-p.Y)*t})
	}
	v.turnedWords(page.Lettered{S: s}, v.angleOn(b.Sub(a).Unit()), v.vp.Len(max(wide, 14))/2+0.6, mids, mids[:1])
}

// pileStations letters at each pile and post how far its center is from the
// start of its girder or porch: the tape is hooked once.
func (v *planView) pileStations() {
	at := func(from, to geom.Vec2, stations []float64) {
		d := to.Sub(from).Unit()
		for _, s := range stations {
			c := from.Add(d.Mul(s))
			if !v.sees(c) {
				continue
			}
			p := v.pt(c)
			text := v.Length(s)
			w, h := page.TextWidth(text, v.Size.Note, false)+0.8, v.Size.Note*1.4
			half := v.vp.Len(7)
			var near []sheet.Pt
			for _, off := range []sheet.MM{0.6, 2.5, 5} {
				ends := []sheet.Pt{{X: p.X, Y: p.Y - half - off - h/2}, {X: p.X, Y: p.Y + half + off + h/2}}
				if q := v.pt(c.Add(d)); math.Abs(float64(q.Y-p.Y)) > math.Abs(float64(q.X-p.X)) { // beside a girder up the sheet, not on it
					ends = []sheet.Pt{{X: p.X + half + off + w/2, Y: p.Y}, {X: p.X - half - off - w/2, Y: p.Y}}
				}
				near = append(append(near, ends...), aroundPoint(p, w, h, half+off)...)
			}
			v.words(text, page.Lettered{Role: "dimension"}, near, []sheet.Pt{p})
		}
	}
	for _, g := range v.House.Plan.Girders {
		at(g.From, g.To, g.Piles)
	}
	for _, p := range v.House.Plan.Porches {
		at(p.From, p.To, p.Posts)
	}
}

// pileTops returns the heights of the piles' tops above grade as they stand, each
// once, the lowest first.
func pileTops(c *page.Context) (tops []string) {
	var heights []float64
	for _, m := range c.House.Members {
		if m.Role == plan.Pile {
			heights = append(heights, m.Z1)
		}
	}
	slices.Sort(heights)
	for _, z := range heights {
		if s := c.Length(z); !slices.Contains(tops, s) {
			tops = append(tops, s)
		}
	}
	return tops
}

// foundationNotes says how to read the foundation plan.
func foundationNotes(c *page.Context) []string {
	fnd := c.House.Plan.Foundation
	notes := []string{
		"Walls of the lowest floor are dashed. Figures at piles and posts run along each girder or porch from its start to the center of the pile or post.",
		"Pieces on girders, piles and the feet of posts are counted here.",
	}
	if fnd.Kind == plan.Piles && fnd.Pile.Text != "" {
		s := "Piles " + fnd.Pile.Text
		if tops := pileTops(c); len(tops) > 0 {
			s += ", tops at " + strings.Join(tops, " and ") + " above grade"
		}
		notes = append(notes, s+".")
		notes = append(notes, seatNotes(c)...)
		notes = append(notes, bracingNotes(c)...)
	}
	if len(anchorsOf(c)) > 0 {
		notes = append(notes, anchorNote)
	}
	return append(notes, porchDeckNotes(c)...)
}

// porchDeckNotes tells the decks of porches, each once.
func porchDeckNotes(c *page.Context) (notes []string) {
	var told []*plan.PorchDeck
	for _, p := range c.House.Plan.Porches {
		d := p.Deck
		if d == nil || slices.Contains(told, d) {
			continue
		}
		told = append(told, d)
		boards := "along the house"
		if d.Boards == plan.BoardsDiagonal {
			boards = "diagonal"
		}
		s := "Deck of porch " + strings.TrimSuffix(p.Name, "-"+string(p.Side())) + ": boards " + c.Length(d.Board) + " thick, " + boards + ", their top at " + c.Length(d.Top) + " above grade; joists " +
			d.Joists.Text + " at " + c.Length(d.Space) + " o.c., girder " + d.Girder.Text + " against the inside of the posts."
		if d.Rail > 0 {
			s += " Posts of rails at most " + c.Length(d.Rail) + " apart; rails are no load path, and openings in them for stairs are not drawn."
		}
		notes = append(notes, s+" Not checked: wind on the deck, what lies and stands on it, and what leans on its rails.")
	}
	return notes
}

// seatNotes says how the girders' seats are cut into the piles, those alike together.
func seatNotes(c *page.Context) (notes []string) {
	names, order := map[string][]string{}, []string{}
	for _, g := range c.House.Plan.Girders {
		words := g.SeatWords(c.House.Plan.Foundation.Pile.Depth, c.Length)
		if words == "" {
			continue
		}
		if names[words] == nil {
			order = append(order, words)
		}
		names[words] = append(names[words], g.Name)
	}
	for _, words := range order {
		notes = append(notes, "On their piles "+strings.Join(names[words], ", ")+words+".")
	}
	if len(order) > 0 {
		notes = append(notes, "Treat every field cut and hole in piles again; cut no pile deeper than shown.")
	}
	return notes
}
