package page

import (
	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/placement"
)

// The sheets that are a home to pieces.
const (
	OnElevation  = plan.ElevationSheet
	OnRoof       = plan.RoofSheet
	OnDormer     = plan.DormerSheet
	OnFoundation = plan.FoundationSheet
	OnFloor      = plan.FloorSheet
)

// HomeOf returns the sheet that is the piece's home, as the table of joints
// says for the host of its joint. It is empty for a kind that the table has
// not.
func HomeOf(pc *placement.Piece) plan.JointSheet {
	return pc.Joint.Place(HomeWall(pc.Joint) != nil).Home
}

// HomeWall returns the wall whose elevation shows the joint: its host, of two
// stories that meet the upper one.
func HomeWall(j *framing.Joint) *plan.Wall {
	if j.Wall != nil {
		return j.Wall
	}
	for _, m := range j.Members {
		if m.Wall != nil {
			return m.Wall
		}
	}
	return nil
}
