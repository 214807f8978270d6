package render

import (
	"fmt"
	"math"

	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/render/sheet"
)

var _ = register(view{Series: 1, Order: 5, Name: "foundation plan", Pages: foundationPages})

// foundationPages makes the plan of what carries the lowest floor: piles,
// girders, porch posts and the pieces at home on them.
func foundationPages(c *context) []*page {
	lo, hi, ok := c.wallBounds()
	found := false
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
	top, left, m := c.openMargins(c.Size.Note * 3)
	sheets := c.layPlan(lo, hi, m, c.leastOpenScale())
	var pages []*page
	for i, s := range sheets {
		name := "Foundation plan"
		if len(sheets) > 1 {
			name += fmt.Sprintf(", part %d of %d", i+1, len(sheets))
		}
		p := c.newPage(name, s.scale.Name, "foundation")
		p.Draw = func(p *page) {
			v := p.newPlanView(s)
			v.gridTop, v.gridLeft = top, left
			v.drawFoundation(s)
			v.matchLines(s, pages, i)
			v.placeLabels()
			v.planTables(name, s, []*table{numbered("Notes", c.foundationNotes())})
		}
		pages = append(pages, p)
	}
	return pages
}

func onFoundationPlan(r framing.Role) bool {
	switch r {
	case framing.Girder, framing.Pile, framing.Beam, framing.Column:
		return true
	}
	return false
}

// drawFoundation draws everything of the foundation that this sheet shows.
func (v *planView) drawFoundation(s planSheet) {
	v.board.Block(v.block)
	v.drawGrid(v.gridOf(), s)
	for _, w := range v.House.Plan.Walls {
		if w.Level.Index == 0 {
			v.dashedWall(w)
		}
	}
	for _, r := range []framing.Role{framing.Beam, framing.Girder, framing.Pile, framing.Column} {
		for _, m := range v.House.Members {
			if m.Role == r {
				v.drawSupport(m)
			}
		}
	}
	v.girderNames()
	v.pileStations()
	var spots []spot
	for _, pc := range v.Placement.Pieces {
		if homeOf(pc) != onFoundation {
			continue
		}
		away := geom.Vec2{X: 1, Y: 0}
		for _, m := range pc.Joint.Members {
			if m.Role == framing.Girder || m.Role == framing.Beam {
				away = m.B.Sub(m.A).Flat().Unit()
			}
		}
		spots = append(spots, spotOf(pc, away))
	}
	v.drawSpots(spots, true)
}

// drawSupport draws a girder or beam as a bar, a pile or post as its section.
func (v *planView) drawSupport(m *framing.Member) {
	b := math.Max(m.Section.Width(), 1.5)
	switch m.Role {
	case framing.Girder, framing.Beam:
		v.bar(sheet.Style{Pen: sheet.PenMember, Fill: sheet.White, Layer: sheet.LayerMember}, m.A.Flat(), m.B.Flat(), b)
		for i := 1; i < m.Section.Ply; i++ {
			n := m.B.Sub(m.A).Flat().Unit().Left().Mul(b * (float64(i)/float64(m.Section.Ply) - 0.5))
			v.stroke(sheet.PenDim, sheet.LayerMember, m.A.Flat().Add(n), m.B.Flat().Add(n))
		}
	default:
		h, d := b/2, math.Max(m.Section.Depth, b)/2
		c := m.A.Flat()
		v.shape(sheet.Style{Pen: sheet.PenCut, Fill: sheet.Pale, Layer: sheet.LayerMember},
			c.Add(geom.Vec2{X: -h, Y: -d}), c.Add(geom.Vec2{X: h, Y: -d}), c.Add(geom.Vec2{X: h, Y: d}), c.Add(geom.Vec2{X: -h, Y: d}))
	}
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
	v.turnedWords(lettered{S: s}, v.angleOn(b.Sub(a).Unit()), v.vp.Len(max(wide, 14))/2+0.6, mids, mids[:1])
}

// pileStations letters at each pile and post how far its centre is from the
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
			text := v.length(s)
			w, h := textWidth(text, v.Size.Note, false)+0.8, v.Size.Note*1.4
			half := v.vp.Len(7)
			var near []sheet.Pt
			for _, off := range []sheet.MM{0.6, 2.5, 5} {
				near = append(near, sheet.Pt{X: p.X, Y: p.Y - half - off - h/2}, sheet.Pt{X: p.X, Y: p.Y + half + off + h/2})
				near = append(near, aroundPoint(p, w, h, half+off)...)
			}
			v.words(text, lettered{Role: "dimension"}, near, []sheet.Pt{p})
		}
	}
	for _, g := range v.House.Plan.Girders {
		at(g.From, g.To, g.Piles)
	}
	for _, p := range v.House.Plan.Porches {
		at(p.From, p.To, p.Posts)
	}
}

// foundationNotes says how to read the foundation plan.
func (c *context) foundationNotes() []string {
	fnd := c.House.Plan.Foundation
	notes := []string{
		"Walls of the lowest floor are dashed. Figures at piles and posts run along each girder or porch from its start to the centre of the pile or post.",
		"Pieces on girders, piles and porch posts are counted here.",
	}
	if fnd.Kind == "piles" && fnd.Pile.Text != "" {
		s := "Piles " + fnd.Pile.Text
		if fnd.PileTop > 0 {
			s += ", tops at " + c.length(fnd.PileTop) + " above grade"
		}
		notes = append(notes, s+".")
	}
	return notes
}
