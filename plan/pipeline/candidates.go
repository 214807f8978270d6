package pipeline

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/loadpath"
	"galewright/plan/placement"
)

// Candidate is an item of the catalog tried at a joint, alone and by its usual
// face: what the load path finds there with it. The engineer chooses, nobody else.
type Candidate struct {
	Mark     string
	Demand   float64 // ASD, lb
	Capacity float64 // 0 where Gap
	Ratio    float64 // +Inf where Gap
	Gap      string  // why it holds nothing there, "" when it does
	Stars    bool    // the capacity is not its maker's value
}

// Candidates tries each item of the catalog that belongs at the kind of a joint,
// and returns those that can be placed there, the lowest ratio first; nil where the
// joint is not known or has no link with a demand.
func (r *Result) Candidates(joint string) (out []Candidate) {
	if r.House == nil || r.Catalog == nil {
		return nil
	}
	i := slices.IndexFunc(r.House.Joints, func(j *framing.Joint) bool { return j.ID == joint })
	if i < 0 {
		return nil
	}
	j := r.House.Joints[i]
	for _, it := range r.Catalog.Items {
		if !slices.Contains(it.Kind.On, j.Kind) {
			continue
		}
		if c, ok := r.try(j, it.Mark); ok {
			out = append(out, c)
		}
	}
	slices.SortStableFunc(out, func(a, b Candidate) int { return cmp.Or(cmp.Compare(a.Ratio, b.Ratio), cmp.Compare(a.Mark, b.Mark)) })
	return out
}

// try places one item at all joints of a joint's kind and host, in place of what
// the plan has there, and reads what the load path finds at the joint.
func (r *Result) try(j *framing.Joint, mark string) (c Candidate, ok bool) {
	p, h := *r.House.Plan, *r.House
	h.Plan = &p
	rule := &plan.Rule{Name: "candidate", At: j.Kind, Use: mark}
	switch {
	case j.Wall != nil:
		rule.Where.Wall = []string{j.Wall.Name}
	case j.Roof != nil:
		rule.Where.Roof = []string{j.Roof.Name}
	}
	p.Rules = append(slices.DeleteFunc(slices.Clone(p.Rules), func(x *plan.Rule) bool { return x.At == j.Kind }), rule)
	p.Places = slices.DeleteFunc(slices.Clone(p.Places), func(x *plan.Place) bool { return x.On == j.Kind && x.Action != plan.Remove })
	pl, _ := placement.Place(&h, r.Catalog)
	at := pl.At(j)
	if !slices.ContainsFunc(at, func(x *placement.Piece) bool { return x.Item.Mark == mark && x.Rule == rule }) {
		return c, false
	}
	report, _ := loadpath.Run(pl)
	for _, l := range report.At(j) {
		if l.Demand <= 0 || l.Capacity == nil || c.Demand >= l.Demand {
			continue
		}
		c = Candidate{Mark: mark, Demand: l.Demand, Capacity: l.Capacity.Value, Ratio: l.Ratio, Gap: l.Gap, Stars: l.Capacity.NotMakers}
		if l.Gap != "" {
			c.Capacity, c.Ratio = 0, math.Inf(1)
		}
		ok = true
	}
	return c, ok
}
