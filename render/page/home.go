package page

import (
	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/placement"
)

// home says on which view a piece has its one home instance.
type home uint8

// The views that are a home to pieces.
const (
	OnElevation home = iota
	OnRoof
	OnFoundation
)

// HomeOf returns the view that is the piece's home: ridge joints the roof
// plan, joints on piles and porch posts the foundation plan, all others the
// elevation of their wall, and the roof plan where there is no wall.
func HomeOf(pc *placement.Piece) home {
	switch pc.Joint.Kind {
	case plan.RafterRidge:
		return OnRoof
	case plan.GirderPile, plan.PostBase, plan.PostCap:
		return OnFoundation
	}
	if HomeWall(pc.Joint) == nil {
		return OnRoof
	}
	return OnElevation
}

// HomeWall returns the wall whose elevation shows the joint: the upper one
// where two stories meet, the bearing wall under a rafter.
func HomeWall(j *framing.Joint) *plan.Wall {
	if j.Kind == plan.StudStud && j.First() != nil && j.First().Wall != nil {
		return j.First().Wall
	}
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
