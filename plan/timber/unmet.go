package timber

import (
	"fmt"
	"math"

	"galewright/plan/source"
)

// Far is the distance of something that is not there: no second fastener in
// the row, no end nearby. Distances left at 0 are read as 0, so a distance
// that was forgotten is told and never passes.
var Far = math.Inf(1)

// Unmet is one distance that a rule of placement wants and the fastener has
// not.
type Unmet struct {
	Rule       string
	Have, Want float64 // in
	// Advisory marks a rule of the commentary: the standard itself only asks
	// for enough to keep the wood from splitting.
	Advisory bool
	Source   string
}

func (u Unmet) String() string {
	return fmt.Sprintf("%s %.2f in, want %.2f in (%s)", u.Rule, u.Have, u.Want, u.Source)
}

// rules collects what is not met.
type rules struct {
	source   string
	advisory bool
	unmet    []Unmet
}

// slack is how far a distance may fall short of its rule by rounding, in.
const slack = 1e-6

func (r *rules) want(rule string, have, want float64, where string) {
	if have < want-slack {
		r.unmet = append(r.unmet, Unmet{rule, have, want, r.advisory, cite(r.source+where, source.Transcribed)})
	}
}

// along and across tell whether a load at an angle to grain counts as along
// and as across it: between the two it is held to the rules of both.
func along(angle float64) bool  { return angle < 90-slack }
func across(angle float64) bool { return angle > slack }
