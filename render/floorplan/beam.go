package floorplan

import (
	"fmt"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/render/table"
)

// beamsOf lists the beams that a level's plan shows: the dropped ones at its plates,
// those flush in its ceiling, and those flush in its floor.
func beamsOf(c *page.Context, l *plan.Level) (out []*framing.Beam) {
	for _, x := range c.House.Beams {
		if x.Pieces[0].Level == l {
			out = append(out, x)
		}
	}
	return out
}

// drawBeams draws a level's beams, which the plan is cut below or the subfloor hides, as
// bars with dashed edges, their name and section along them, and the posts under those
// that stand on this floor.
func (v *planView) drawBeams(l *plan.Level) {
	for _, m := range v.House.Members {
		if m.Role == plan.BeamPost && m.Level == l {
			lo, hi := m.Bounds()
			a, b := lo.Flat(), hi.Flat()
			v.shape(sheet.Style{Pen: sheet.PenCut, Fill: sheet.White, Layer: sheet.LayerMember}, a, geom.Vec2{X: b.X, Y: a.Y}, b, geom.Vec2{X: a.X, Y: b.Y})
			v.stroke(sheet.PenDim, sheet.LayerMember, a, b)
		}
	}
	for _, x := range beamsOf(v.Context, l) {
		first, last := x.Pieces[0], x.Pieces[len(x.Pieces)-1]
		for _, m := range x.Pieces {
			f, half := geom.NewFrame(m.A.Flat(), m.B.Flat()), m.Section.Width()/2
			for _, t := range []float64{-half, half} {
				if p, q, ok := v.stroke(sheet.PenHidden, sheet.LayerMember, f.At(0, t, 0).Flat(), f.At(m.Length, t, 0).Flat()); ok {
					v.board.BlockLine(p, q)
				}
			}
			for _, s := range []float64{0, m.Length} {
				v.stroke(sheet.PenHidden, sheet.LayerMember, f.At(s, -half, 0).Flat(), f.At(s, half, 0).Flat())
			}
		}
		set := plan.SetDropped
		if x.Set == plan.SetFlush {
			set = x.Set
		}
		v.nameBeam(fmt.Sprintf("%s  %s, %s", x.Name, x.Member.Text, set), first.A.Flat(), last.B.Flat(), x.Member.Width())
	}
}

// drawAdded draws the joists and blocks that the plan adds to a level's floor, which the
// subfloor hides, with their names.
func (v *planView) drawAdded(l *plan.Level) {
	for _, x := range v.House.Added {
		if x.Level != l || len(x.Members) == 0 {
			continue
		}
		first, last := x.Members[0], x.Members[len(x.Members)-1]
		for _, m := range x.Members {
			v.dashedJoist(m)
		}
		what := "joist "
		if x.Blocks {
			what = "blocking "
		}
		v.nameBeam(x.Name+"  "+what+first.Section.Text, first.A.Flat(), last.B.Flat(), first.Section.Width())
	}
}

// dashed lists the beams and added joists that a level's plan draws.
func (v *planView) dashed(l *plan.Level) (out []*framing.Member) {
	for _, x := range v.House.Added {
		if x.Level == l {
			out = append(out, x.Members...)
		}
	}
	for _, x := range beamsOf(v.Context, l) {
		out = append(out, x.Pieces...)
	}
	return out
}

// namePosts letters the posts on a level whose beam lies in the floor above, and is
// drawn there.
func (v *planView) namePosts(l *plan.Level) {
	for _, x := range v.House.Beams {
		for _, u := range x.Supports {
			if u.On.Role != plan.BeamPost || u.On.Level != l || x.Pieces[0].Level == l || !v.sees(u.At.Flat()) {
				continue
			}
			p, half := v.pt(u.At.Flat()), v.vp.Len(x.Post.Depth/2)
			s := "post " + x.Post.Text + " of " + x.Name
			w := page.TextWidth(s, v.Size.Note, false)/2 + half + 1
			v.words(s, page.Lettered{Role: "label"}, []sheet.Pt{
				{X: p.X + w, Y: p.Y}, {X: p.X - w, Y: p.Y}, {X: p.X, Y: p.Y - half - v.Size.Note}, {X: p.X, Y: p.Y + half + v.Size.Note*2},
			}, []sheet.Pt{p})
		}
	}
}

// setWords say how a beam lies to what it carries.
func setWords(x *framing.Beam) string {
	switch {
	case x.Set != plan.SetFlush:
		return "dropped: top at the plates' top"
	case x.Carries == nil:
		return "flush with the ceiling joists"
	}
	return "flush with the joists"
}

// beamTable lists the beams that a level's plan shows, with their places from the outside
// faces of the walls at the west and the south.
func beamTable(c *page.Context, l *plan.Level) *table.Table {
	t := &table.Table{
		Title: "Beams of floor and ceiling",
		Cols:  []table.Column{{Head: "Beam", Wrap: true}, {Head: "Center line, from west, south", Wrap: true}, {Head: "Carried by", Wrap: true, Grow: true}},
	}
	lo, _, _ := c.WallBounds()
	for _, x := range beamsOf(c, l) {
		a, b := x.Pieces[0].A.Flat().Sub(lo), x.Pieces[len(x.Pieces)-1].B.Flat().Sub(lo)
		t.Rows = append(t.Rows, table.Row{Cells: []table.Cell{
			{S: fmt.Sprintf("%s, %s, %s", x.Name, x.Member.Text, setWords(x))},
			{S: fmt.Sprintf("%s, %s to %s, %s; %s long", c.Length(a.X), c.Length(a.Y), c.Length(b.X), c.Length(b.Y), c.Length(b.Sub(a).Len()))},
			{S: carriedBy(c, x)},
		}})
	}
	return t
}

// carriedBy lists what carries a beam, from its beginning on, by the way from there.
func carriedBy(c *page.Context, x *framing.Beam) string {
	from, _ := x.Frame.Local(x.Pieces[0].A.Flat())
	var out []string
	for _, u := range x.Supports {
		at := c.Length(max(0, u.Along-from))
		switch {
		case u.On.Role == plan.BeamPost:
			out = append(out, fmt.Sprintf("post %s at %s", x.Post.Text, at))
		case u.Beam != nil:
			out = append(out, fmt.Sprintf("hung from beam %s at %s", u.Beam.Name, at))
		case u.Seat:
			out = append(out, fmt.Sprintf("plates of wall %s at %s", u.Wall.Name, at))
		default:
			out = append(out, fmt.Sprintf("hung from wall %s at %s", u.Wall.Name, at))
		}
	}
	return strings.Join(out, "; ")
}
