// Package pipeline runs a plan through its stages in the one order they have:
// read, frame, furnish with hardware, count. Source text flows in; a Result
// and every diagnostic of every stage flow out. It decides nothing itself.
package pipeline

import (
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/read"
	"galewright/plan/schedule"
)

// Result is a plan with all that follows from it. A stage that could not run
// because the one before it found errors leaves its field nil.
type Result struct {
	Plan      *plan.Plan
	House     *framing.House
	Catalog   *hardware.Catalog
	Placement *placement.Placement
	Schedule  *schedule.Schedule
	file      string
	src       []byte // nil of a plan that was not read from text
}

// Load reads a file that a plan names.
type Load func(name string) ([]byte, error)

// Run takes the source of a plan as far as its faults allow. Stages that can
// run beside an error do, so that all faults come out at once; the schedule
// is there only when no stage found an error.
func Run(file string, src []byte, load Load) (*Result, plan.Diagnostics) {
	p, faults := read.Plan(file, src, load)
	r := &Result{Plan: p, file: file, src: src}
	if faults.Errors() {
		whole := slices.DeleteFunc(slices.Clone(p.Items), func(it *plan.Item) bool { return it.Broken })
		_, more := hardware.New(whole)
		return r, append(faults, more...).Sorted()
	}
	more := r.from(p)
	return r, append(faults, more...).Sorted()
}

// From runs a plan that is already read.
func From(p *plan.Plan) (*Result, plan.Diagnostics) {
	r := &Result{Plan: p}
	return r, r.from(p).Sorted()
}

func (r *Result) from(p *plan.Plan) plan.Diagnostics {
	house, faults := framing.Frame(p)
	catalog, more := hardware.New(p.Items)
	faults = append(faults, more...)
	r.House, r.Catalog = house, catalog
	if faults.Errors() {
		return faults
	}
	placed, more := placement.Place(house, catalog)
	faults = append(faults, more...)
	r.Placement = placed
	if !faults.Errors() {
		r.Schedule = schedule.New(placed)
	}
	return faults
}

// Bare returns the house with no hardware on it, for what does not ask for
// any: wind loads are there before the first piece is placed, and whatever is
// wrong with hardware. It is nil when the house itself could not be read or
// framed, and of a plan that was not read from text.
func (r *Result) Bare() *placement.Placement {
	p, faults := read.House(r.file, r.src)
	if faults.Errors() {
		return nil
	}
	house, faults := framing.Frame(p)
	if faults.Errors() {
		return nil
	}
	none, _ := hardware.New(nil)
	bare, _ := placement.Place(house, none)
	return bare
}
