package render

// view is one kind of sheet.
type view struct {
	Series int // 0 general, 1 plans, 2 elevations, 3 chains of the load path, 5 details, 6 schedules, 7 check sheets
	// Pages lays the view out on c.Paper: makes pages with c.newPage and
	// gives each its title, scale, keys and Draw. Nothing is drawn yet, and
	// no sheet number is known.
	Pages func(c *context) []*page
}

// views are all views of a set, in the order of their sheets.
var views = []view{
	{0, coverPages},
	{1, foundationPages},
	{1, floorPlanPages},
	{1, roofPlanPages},
	{1, planNotePages},
	{2, elevationPages},
	{3, chainPages},
	{5, detailPages},
	{6, schedulePages},
	{6, loadPages},
	{7, checkPages},
}
