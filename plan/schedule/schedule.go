// Package schedule counts pieces: the legend numbers, the fasteners, what to
// order. A placement flows in; tables flow out as data, text, CSV and JSON.
// It counts what is placed and nothing else, so sheets and order agree.
package schedule

import (
	"galewright/plan/hardware"
	"galewright/plan/placement"
)

// Line is one line of the schedule; its Number stands in a circle at every
// piece on every sheet.
type Line struct {
	Number int // 1.. without gaps, in catalogue order of the items used
	Item   *hardware.Item
	Pieces []*placement.Piece
	Nails  []NailCount
}

// NailCount is a number of one fastener.
type NailCount struct {
	Nail  string // "10d x 1-1/2 (0.148 x 1.5)"
	Count int
	Hand  bool // driven by hand only
}

// Schedule is the count of a placement.
type Schedule struct {
	Placement *placement.Placement
	Lines     []*Line
	byMark    map[string]*Line
}

// Number returns the legend number of a mark, 0 when none is placed.
func (s *Schedule) Number(mark string) int {
	if l := s.byMark[mark]; l != nil {
		return l.Number
	}
	return 0
}
