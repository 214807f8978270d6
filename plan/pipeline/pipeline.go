// Package pipeline runs a plan through its stages in the one order they have:
// read, frame, furnish with hardware, make bodies of it, count, look at salt, work out the load
// path, cut the lumber. Source text flows in; a Result and every diagnostic of
// every stage flow out. Load path and lumber list are worked out when they are
// first asked for, since most that reads a plan wants neither. It decides nothing
// itself.
package pipeline

import (
	"slices"
	"sync"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
	"galewright/plan/loadpath"
	"galewright/plan/lumber"
	"galewright/plan/placement"
	"galewright/plan/read"
	"galewright/plan/salt"
	"galewright/plan/schedule"
	"galewright/plan/steel"
	"galewright/plan/units"
)

// Result is a plan with all that follows from it. A stage that could not run
// because the one before it found errors leaves its field nil.
type Result struct {
	Plan      *plan.Plan
	House     *framing.House
	Catalog   *hardware.Catalog
	Placement *placement.Placement
	Steel     *steel.Steel
	Schedule  *schedule.Schedule

	loads  func() (*loadpath.Report, plan.Diagnostics)
	lumber func() *lumber.Cut
	Salt   *salt.Report
	file   string
	load   Load
	src    []byte // nil of a plan that was not read from text
	us     bool   // what is still to be worked out speaks US units
}

// Loads returns the load path and what it has to tell of the plan, which Run
// does not. The report is nil where a stage before it did not run, or where the
// plan keeps loads from being computed.
func (r *Result) Loads() (*loadpath.Report, plan.Diagnostics) { return r.loads() }

// InUS makes what is worked out from now on speak US units, whatever the plan
// says: the keys of JSON name those, and the words beside them go with the keys.
func (r *Result) InUS() {
	r.us = true
	if r.Plan != nil {
		r.Plan.Project.Units = units.Imperial
	}
}

// Lumber returns the cut list, nil where the plan was not framed.
func (r *Result) Lumber() *lumber.Cut { return r.lumber() }

// Load reads a file that a plan names.
type Load func(name string) ([]byte, error)

// Run takes the source of a plan as far as its faults allow. Stages that can
// run beside an error do, so that all faults come out at once; the schedule
// is there only when no stage found an error.
func Run(file string, src []byte, load Load) (*Result, plan.Diagnostics) {
	p, faults := read.Plan(file, src, load)
	r := newResult(p)
	r.file, r.src, r.load = file, src, load
	if faults.Errors() {
		whole := slices.DeleteFunc(slices.Clone(p.Items), func(it *plan.Item) bool { return it.Broken })
		_, more := hardware.NewIn(p.Project.Units, whole)
		return r, append(faults, more...).Sorted()
	}
	more := r.from(p)
	return r, append(faults, more...).Sorted()
}

// From runs a plan that is already read.
func From(p *plan.Plan) (*Result, plan.Diagnostics) {
	r := newResult(p)
	return r, r.from(p).Sorted()
}

// newResult returns a result whose last stages wait to be asked.
func newResult(p *plan.Plan) *Result {
	r := &Result{Plan: p}
	r.loads = sync.OnceValues(r.runLoads)
	r.lumber = sync.OnceValue(r.runLumber)
	return r
}

func (r *Result) runLoads() (*loadpath.Report, plan.Diagnostics) {
	if r.Placement == nil {
		return nil, nil
	}
	bodies := r.Steel
	if bodies == nil {
		bodies = steel.New(r.Placement)
	}
	report, faults := loadpath.RunOn(bodies)
	if faults.Errors() {
		return nil, faults.Sorted()
	}
	return report, faults.Sorted()
}

func (r *Result) runLumber() *lumber.Cut {
	if r.House == nil {
		return nil
	}
	return lumber.List(r.House)
}

func (r *Result) from(p *plan.Plan) plan.Diagnostics {
	house, faults := framing.Frame(p)
	catalog, more := hardware.NewIn(p.Project.Units, p.Items)
	faults = append(faults, more...)
	r.House, r.Catalog = house, catalog
	if faults.Errors() {
		return faults
	}
	placed, more := placement.Place(house, catalog)
	faults = append(faults, more...)
	r.Placement = placed
	if faults.Errors() {
		return faults
	}
	r.Steel = steel.New(placed)
	faults = append(faults, r.Steel.Check()...)
	if !faults.Errors() {
		r.Schedule = schedule.New(r.Steel)
		faults = append(faults, r.Schedule.Nailing.Faults()...)
		r.Salt, more = salt.Run(r.Steel)
		faults = append(faults, more...)
	}
	return faults
}

// BareLoads returns the load path of the house with no hardware on it and
// what it has to tell: wind loads are there before the first piece is placed,
// and whatever is wrong with hardware. The report is nil when the house itself
// could not be read or framed, or its wind, and of a plan that was not read
// from text.
func (r *Result) BareLoads() (*loadpath.Report, plan.Diagnostics) {
	p, faults := read.House(r.file, r.src, r.load)
	if faults.Errors() {
		return nil, nil // the plan's own run tells them
	}
	if r.us {
		p.Project.Units = units.Imperial
	}
	house, faults := framing.Frame(p)
	if faults.Errors() {
		return nil, nil
	}
	none, _ := hardware.New(nil)
	bare := &Result{House: house}
	bare.Placement, _ = placement.Place(house, none)
	return bare.runLoads()
}
