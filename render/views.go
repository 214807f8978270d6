package render

import (
	"galewright/render/calculations"
	"galewright/render/detail"
	"galewright/render/elevation"
	"galewright/render/floorplan"
	"galewright/render/frame"
	"galewright/render/lists"
	"galewright/render/page"
	"galewright/render/piling"
	"galewright/render/porch"
	"galewright/render/section"
)

// view is one kind of sheet.
type view struct {
	Series int // 0 general, 1 plans, 2 elevations, 3 sections, 5 details, 6 schedules, 7 check sheets, 8 calculations
	// Pages lays the view out on c.Paper: makes pages with c.NewPage and
	// gives each its title, scale, keys and Draw. Nothing is drawn yet, and
	// no sheet number is known.
	Pages func(c *page.Context) []*page.Page
}

// views are all views of a set, in the order of their sheets.
var views = []view{
	{0, lists.CoverPages},
	{0, frame.Pages},
	{1, floorplan.FoundationPages},
	{1, floorplan.FloorPages},
	{1, floorplan.RoofPages},
	{1, floorplan.DeckPages},
	{1, floorplan.NotePages},
	{2, elevation.Pages},
	{2, porch.Pages},
	{2, piling.Pages},
	{3, section.Pages},
	{5, detail.Pages},
	{5, frame.CornerPages},
	{6, lists.SchedulePages},
	{6, lists.LoadPages},
	{6, lists.ChainPages},
	{6, lists.StormPages},
	{7, lists.CheckPages},
	{calculations.Series, calculations.Pages},
}
