package lists

import (
	"fmt"

	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/render/table"
)

// orderSpare is the part added to pieces and nails on the order list.
const orderSpare = 0.05

// orderTable is what to buy, section by section.
func orderTable(c *page.Context) *table.Table {
	t := &table.Table{Title: fmt.Sprintf("Order list, with %.0f%% spare", orderSpare*100), Cols: []table.Column{
		{Head: "Item", Wrap: true}, {Head: "Size", Wrap: true}, {Head: "Count", Align: sheet.Right}, {Head: "With spare", Align: sheet.Right}, {Head: "Order", Align: sheet.Right, Wrap: true},
	}}
	section := ""
	for _, r := range c.Schedule.Orders(orderSpare) {
		if r.Section != section {
			section = r.Section
			t.Rows = append(t.Rows, table.Row{Group: true, Cells: table.Texts(title(section))})
		}
		name, size := r.Name, r.Detail
		if r.Number > 0 {
			name = fmt.Sprintf("No. %d, %s", r.Number, name)
		}
		if r.Section == "pieces" {
			size = itemSize(c, c.Schedule.Lines[r.Number-1].Item)
		} else if s := r.Material(); s != "" {
			size = page.Join(size, s)
		}
		t.Rows = append(t.Rows, table.Row{Cells: table.Texts(name, size, blankZero(r.Count), blankZero(r.Spare), r.Buy())})
	}
	return t
}

func blankZero(n int) string {
	if n == 0 {
		return ""
	}
	return fmt.Sprint(n)
}

// shearTable lists the sheathed segments with their nailing; nil when there
// are none.
func shearTable(c *page.Context) *table.Table {
	t := &table.Table{Title: "Shear walls", Cols: []table.Column{
		{Head: "Wall"}, {Head: "Name"}, {Head: "From"}, {Head: "To"}, {Head: "Panel"}, {Head: "Faces"}, {Head: "Nail", Wrap: true}, {Head: "Edges"}, {Head: "Field"}, {Head: "Panels", Align: sheet.Right}, {Head: "Nails", Align: sheet.Right},
	}}
	own := false
	for _, s := range c.Schedule.Sheathing {
		faces := "one"
		if s.Shear.BothFaces {
			faces = "both"
		}
		name := s.Shear.Name
		if s.Shear.Perforated {
			name = page.Join(name, "perforated")
		}
		if s.Own {
			name, own = "no shear wall", true
		}
		t.Rows = append(t.Rows, table.Row{Cells: table.Texts(s.Wall.Name, name, c.Length(s.Shear.From), c.Length(s.Shear.To), s.Shear.Panel, faces, s.Shear.Nail,
			c.Spacing(s.Shear.Edge)+" o.c.", c.Spacing(s.Shear.Field)+" o.c.", fmt.Sprint(s.Panels), fmt.Sprint(s.Nails))})
	}
	if len(t.Rows) == 0 {
		return nil
	}
	if own {
		t.Title = "Wall sheathing: shear walls, and panels outside of them"
	}
	return t
}
