package page

import (
	"galewright/plan/units"
	"galewright/render/sheet"
)

// Scale is a drawing scale: Ratio inches of house to one inch of paper.
type Scale struct {
	Name  string // as the title block has it: `1/2" = 1'-0"`, "1:25"
	Ratio float64
}

// K returns the millimeters of paper that one inch of house takes.
func (s Scale) K() float64 { return 25.4 / s.Ratio }

// MemberPen returns the pen for lumber at the scale: at 1/4 in to the foot and
// smaller the two sides of a 2-by or of a subfloor would run together in the
// heavier one.
func (s Scale) MemberPen() sheet.Pen {
	if s.Ratio >= 48 {
		return sheet.PenDim
	}
	return sheet.PenMember
}

// The drawing scales, largest first. Architectural: the fractions of an inch
// to a foot of an architect's scale rule; metric: ISO 5455:1979 with 1:25,
// which building drawings keep (from memory).
var (
	architectural = []Scale{
		{`1" = 1'-0"`, 12},
		{`3/4" = 1'-0"`, 16},
		{`1/2" = 1'-0"`, 24},
		{`3/8" = 1'-0"`, 32},
		{`1/4" = 1'-0"`, 48},
		{`3/16" = 1'-0"`, 64},
		{`1/8" = 1'-0"`, 96},
		{`1/16" = 1'-0"`, 192},
	}
	metricScales = []Scale{{"1:20", 20}, {"1:25", 25}, {"1:50", 50}, {"1:100", 100}, {"1:200", 200}}

	// DetailScales are for details of one piece.
	detailScales = []Scale{
		{`6" = 1'-0"`, 2},
		{`3" = 1'-0"`, 4},
		{`1 1/2" = 1'-0"`, 8},
		{`1" = 1'-0"`, 12},
	}
	metricDetailScales = []Scale{{"1:2", 2}, {"1:5", 5}, {"1:10", 10}, {"1:20", 20}}
)

// Scales returns the list for views of the house.
func (c *Context) Scales() []Scale {
	if c.Metric() {
		return metricScales
	}
	return architectural
}

// DetailScales returns the list for details.
func (c *Context) DetailScales() []Scale {
	if c.Metric() {
		return metricDetailScales
	}
	return detailScales
}

// Units is the system of the plan's words.
func (c *Context) Units() units.System { return c.House.Plan.Project.Units }

// Metric tells whether the plan is in metric units.
func (c *Context) Metric() bool { return c.Units().Is() }

// Fit returns the largest scale at which w by h inches of house go onto W by
// H millimeters of paper; ok is false when none of the list does.
func Fit(list []Scale, w, h float64, W, H sheet.MM) (s Scale, ok bool) {
	for _, s := range list {
		if w*s.K() <= float64(W) && h*s.K() <= float64(H) {
			return s, true
		}
	}
	return Scale{}, false
}
