package section

import (
	"fmt"

	"galewright/plan"
	"galewright/render/excerpt"
	"galewright/render/page"
	"galewright/render/sheet"
)

// largest are the largest scales of a section, inches of house to one of paper.
func largest(c *page.Context) float64 {
	if c.Metric() {
		return 20
	}
	return 16
}

// Pages makes the sections of all lines of bearing walls. Without a report there is none.
func Pages(c *page.Context) []*page.Page {
	if c.Loads == nil || len(c.Loads.Chains) == 0 {
		return nil
	}
	h := excerpt.New(c.Model)
	var list []*slice
	for _, ch := range c.Loads.Chains {
		list = append(list, slicesOf(c, h, ch)...)
	}
	if len(list) == 0 {
		return nil
	}
	cells, ok := fit(c, list)
	if !ok {
		c.Tell(plan.Diagnostic{
			Severity: plan.Warning, Code: "paper-too-small", Summary: "the sections from ridge to foundation fit this paper at no scale",
			Where: "sections", Mend: "take larger paper", Pos: c.PlanPos(),
		})
		return nil
	}
	return laid(c, cells)
}

// fit lays all sections out at the largest scale at which each fits a sheet.
func fit(c *page.Context, list []*slice) (cells []*cell, ok bool) {
	a := c.DrawingArea()
	for _, scale := range c.Scales() {
		if scale.Ratio < largest(c) {
			continue
		}
		cells, ok = nil, true
		for _, s := range list {
			x := newCell(c, s, scale)
			cells, ok = append(cells, x), ok && x.w <= a.W && x.h <= a.H
		}
		if ok {
			return cells, true
		}
	}
	return nil, false
}

// laid puts the sections on sheets, side by side, and below each other where there is
// room.
func laid(c *page.Context, cells []*cell) (pages []*page.Page) {
	a := c.DrawingArea()
	var on [][]*cell
	at, high := sheet.Pt{}, sheet.MM(0)
	for _, x := range cells {
		if at.X > 0 && at.X+x.w > a.W { // the next shelf
			at, high = sheet.Pt{Y: at.Y + high + apart}, 0
		}
		if len(on) == 0 || at.Y+x.h > a.H {
			on = append(on, nil)
			at, high = sheet.Pt{}, 0
		}
		x.at = sheet.Pt{X: a.X + at.X, Y: a.Y + at.Y}
		on[len(on)-1] = append(on[len(on)-1], x)
		at.X, high = at.X+x.w+apart, max(high, x.h)
	}
	for i, list := range on {
		name := "Sections, ridge to foundation"
		keys := []string{"sections"}
		for _, x := range list {
			keys = append(keys, "section "+x.chain.Name)
		}
		if len(on) > 1 {
			name += fmt.Sprintf(", %d of %d", i+1, len(on))
		}
		p := c.NewPage(name, list[0].paper.scale.Name, keys...)
		p.Draw = func(p *page.Page) {
			for _, x := range list {
				x.draw(p)
			}
			notes(p)
		}
		pages = append(pages, p)
	}
	return pages
}

// apart is the room between two sections, mm.
const apart sheet.MM = 10

// What to know of the sections: all of it, and what of it small paper has room for.
const (
	allNotes = "Each section shows one stud spacing of its line as it stands, cut open and seen along the wall, outside to the left where the line is an outside wall. " +
		"Beside each joint: its pieces, its tag, demand / capacity = ratio at allowable stress level of its link with the least to spare; * stands for a capacity that is no manufacturer's. Arrows up: uplift, longer where it is more. Boxed: the least to spare in the section. " +
		"Between zigzag lines a part is left out; heights are above grade. Preliminary numbers for the engineer of record; assumptions and what was not checked are on the load path sheet."
	fewNotes = "Demand / capacity = ratio of each joint's link with the least to spare; boxed, of the section. * no manufacturer's. Zigzag: a part is left out. Heights are above grade. For the engineer of record; see the load path sheet."
)

// notes says what the sections are, beside the title block.
func notes(p *page.Page) {
	z := p.Size.Note
	list := page.Wrap(allNotes, z, false, p.Band.W)
	if sheet.MM(len(list))*z*1.7 > p.Band.H {
		list = page.Wrap(fewNotes, z, false, p.Band.W)
	}
	y := p.Band.Y + z
	for _, line := range list {
		p.BoxedText("label", page.Lettered{S: line, At: sheet.Pt{X: p.Band.X, Y: y}, Role: "note"})
		y += z * 1.7
	}
}
