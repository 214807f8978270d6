package loadpath

import (
	"strings"

	"galewright/plan"
	"galewright/plan/capacity"
	"galewright/plan/deck"
	"galewright/plan/framing"
	"galewright/plan/placement"
	"galewright/plan/source"
	"galewright/plan/wind"
)

// Force is a wind force and a dead load at one place, unfactored: W at
// strength level, positive upward; D positive downward.
type Force struct{ W, D float64 }

func (f Force) add(g Force) Force     { return Force{f.W + g.W, f.D + g.D} }
func (f Force) times(k float64) Force { return Force{f.W * k, f.D * k} }
func (f *Force) take(g Force)         { f.W, f.D = f.W+g.W, f.D+g.D }
func (f Force) still() Force          { return Force{D: f.D} }
func down(weight float64) Force       { return Force{D: weight} }

// net is the force upward of a combination, lb: dead load that lifts counts with the factor
// of one that presses.
func (f Force) net(c Combo) float64 {
	if f.D < 0 {
		return c.W*f.W - c.Lever*f.D
	}
	return c.W*f.W - c.D*f.D
}

// said names the combination as net counts it for a force.
func (c Combo) said(f Force) string {
	if f.D < 0 {
		return c.Lifted + ", dead load that lifts whole, positive upward"
	}
	return c.Name + ", net of dead load, positive upward"
}

// Combo is a load combination.
type Combo struct {
	Name   string
	W, D   float64
	Lever  float64 // on dead load that lifts, by a lever
	Lifted string  // the combination that this is of
	Source string  // document and clause
	Grade  source.Grade
}

// The combinations: ASD compares with allowable loads; Strength is given
// beside it on request.
var (
	ASD      = Combo{"0.6 D + 0.6 W", 0.6, 0.6, 1.0, "D + 0.6 W", "ASCE 7-16 2.4.1", source.SecondHand}
	Strength = Combo{"0.9 D + 1.0 W", 1.0, 0.9, 1.2, "1.2 D + 1.0 W", "ASCE 7-16 2.3.1", source.SecondHand}
)

// source cites a combination by the edition of the set that was read.
func (r *Report) source(c Combo) string {
	grade := string(c.Grade)
	if r.Basis.Edition != plan.ASCE716 {
		grade += "; " + string(r.Basis.Edition) + " not read"
	}
	return c.Source + " (" + grade + ")"
}

// Report is the whole load path of a house.
type Report struct {
	Placement *placement.Placement
	Missing   string // why there are no numbers, "" when there are
	Basis     wind.Basis
	Choice    wind.Choice // of procedures, and why
	Main      *plan.Roof  // the roof that mean height and angle are of; nil without one
	Limits    []string
	Dead      []DeadLine
	Uplift    []UpliftLine
	Ridges    []RidgeLine
	Stories   []StoryShear
	Bays      []Bay        // of all decks
	Base      [2]BaseShear // along x and along y
	Lines     []*LineShear
	Balance   []Balance
	Torsion   []string
	Links     []*Link // in the order of the checks, then of the joints
	Chains    []*Chain
	Deck      *deck.Winds // the roof deck with its zones
	Assumed   []string
	Unchecked []string
	byJoint   map[*framing.Joint][]*Link
	work      *analysis // for the arithmetic of Explain; only read
}

// Link is one place on the load path with its demand and its capacity.
type Link struct {
	Check    *Check
	ID       string         // of the joint or the shear wall segment
	Joint    *framing.Joint // nil for a segment
	Wall     *plan.Wall
	Host     string // the wall, roof, girder, porch, story or line it is on: "wall 1S"
	Where    string // Host and the place on it
	Unit     string // "lb", "plf" or "psf"
	Force    Force  // of the governing case, for uplift links
	Demand   float64
	Strength float64 // demand at strength level
	Case     string  // wind case that governs
	Terms    []Term  // what the demand is made of
	Capacity *Capacity
	Ratio    float64 // demand over capacity; +Inf with neither
	Gap      string  // why nothing carries the demand, "" when something does
	Notes    []string
	Zone     *deck.Zone // of the roof deck; nil elsewhere
	uplift   bool       // the demand is wind followed from the roof
}

// Term is one part of a demand or capacity.
type Term struct {
	Text  string
	Value float64
	Unit  string
}

// ofCapacity returns terms as those of a capacity.
func ofCapacity(list ...Term) (out []capacity.Term) {
	for _, t := range list {
		out = append(out, capacity.Term(t))
	}
	return out
}

// Capacity is what the hardware at a link holds.
type Capacity = capacity.Capacity

// UpliftLine is the uplift along one wall under a roof.
type UpliftLine struct {
	Wall     *plan.Wall
	Dormer   string // whose plates they are; "" of none
	Roof     string
	Joints   int
	Largest  Force   // of one joint, in its governing case
	At       string  // the joint
	Width    float64 // of the roof its rafter serves, in; 0 of a hip or valley, which only gathers
	Case     string
	SumASD   float64 // of all joints of the wall, each in its own governing case
	PerFoot  float64 // largest over that width, plf; 0 without one
	Strength float64 // largest, lb at strength level
}

// RidgeLine is what a ridge asks for.
type RidgeLine struct {
	Roof    string
	Bearing bool
	Joints  int
	Tension float64 // largest across the ridge (or uplift where it is a beam), lb, ASD
	Case    string
	Thrust  float64 // at the heel from dead load, lb a pair, unfactored
	Note    string
}

// Balance is the account of one wind case at one story: what goes in equals
// what the joints carry.
type Balance struct {
	Case      string
	Level     *plan.Level
	Roof      Force // from roofs that bear on this story's plates
	Above     Force // from the story above, through the floor
	Weight    Force // walls and floors of this story
	Tops      Force // through the stud-top and opening-head joints
	Bases     Force // at the joints at the foot of the story
	Elsewhere Force // what found no member below
}

// Joint returns the links at the joint, or of the segment or place, with the
// ID, or nil; deck-ROOF gives all zones of a roof's deck.
func (r *Report) Joint(id string) []*Link {
	var out []*Link
	for _, l := range r.Links {
		if l.ID == id || l.Joint != nil && l.Joint.ID == id || l.Check.ID == deckCheck && strings.HasPrefix(l.ID, id+"-") {
			out = append(out, l)
		}
	}
	return out
}

// At returns the links of a joint, in the order of the checks.
func (r *Report) At(j *framing.Joint) []*Link { return r.byJoint[j] }

// Uplift tells whether the demand is wind followed from the roof, which lifts.
func (l *Link) Uplift() bool { return l.uplift }
