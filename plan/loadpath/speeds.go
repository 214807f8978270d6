package loadpath

import (
	"cmp"
	"math"
	"slices"
	"sync"

	"galewright/plan"
)

// Overtaken is the wind speed at which a link's demand meets its capacity.
type Overtaken struct {
	*Link           // as it is at the design wind
	From  plan.Side // the side that wind comes from; "" for any
	Speed float64   // mph, of the same kind as the plan's (ultimate, 3 s gust)
	// Under tells that demand is over capacity at the lowest speed looked at,
	// Over that it is not at the highest; Speed is that one.
	Under, Over bool
}

// steps are the speeds looked at, as shares of the design speed.
var steps = []float64{0.4, 0.55, 0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.35, 1.6, 2, 2.5}

// Speeds returns for each link that has a capacity the speed at which the wind
// from a side overtakes it, the first to be overtaken first; with the side "" from
// any. The whole load path is worked out at each step. Between two steps demand over
// velocity pressure is convex, the greatest of straight lines: a chord of it lies
// over it, so the speed told is the true one where one wind case governs at both
// steps, else a little lower.
func (r *Report) Speeds(side plan.Side) []Overtaken {
	if r.work == nil {
		return nil
	}
	design := r.Placement.House.Plan.Site.WindSpeed
	tables := make([]map[linkKey]*Link, len(steps))
	var wait sync.WaitGroup
	for i, k := range steps {
		wait.Go(func() { tables[i] = keyed(r.blown(design*k, side)) })
	}
	wait.Wait()
	var out []Overtaken
	for key, l := range keyed(r.Links) {
		if l.Check.ID == limitCheck || l.Check.ID == beamCheck || l.Capacity == nil || l.Capacity.Unknown != "" || l.Capacity.Value <= 0 {
			continue
		}
		o := Overtaken{Link: l, From: side}
		ratios := make([]float64, len(steps))
		for i := range steps {
			if x := tables[i][key]; x != nil {
				ratios[i] = x.Demand / l.Capacity.Value
			}
		}
		if o.meet(design, ratios) {
			out = append(out, o)
		}
	}
	slices.SortFunc(out, func(a, b Overtaken) int {
		return cmp.Or(cmp.Compare(a.Speed, b.Speed), cmp.Compare(a.Check.ID, b.Check.ID), cmp.Compare(a.Host, b.Host), cmp.Compare(a.ID, b.ID))
	})
	return out
}

// meet finds the speed at which the ratio comes to 1; false where wind never
// asks anything of the link.
func (o *Overtaken) meet(design float64, ratios []float64) bool {
	if slices.Max(ratios) <= 0 {
		return false
	}
	if ratios[0] >= 1 {
		o.Speed, o.Under = design*steps[0], true
		return true
	}
	for i := 1; i < len(ratios); i++ {
		if ratios[i] < 1 {
			continue
		}
		q0, q1 := steps[i-1]*steps[i-1], steps[i]*steps[i]
		q := q0 + (q1-q0)*(1-ratios[i-1])/(ratios[i]-ratios[i-1])
		o.Speed = design * math.Sqrt(q)
		return true
	}
	o.Speed, o.Over = design*steps[len(steps)-1], true
	return true
}

// linkKey names a link in reports of one house.
type linkKey struct {
	check, id, host string
	nth             int
}

func keyed(list []*Link) map[linkKey]*Link {
	out := make(map[linkKey]*Link, len(list))
	for _, l := range list {
		k := linkKey{check: l.Check.ID, id: l.ID, host: l.Host}
		for out[k] != nil {
			k.nth++
		}
		out[k] = l
	}
	return out
}

// blown works out the links of the house in wind of a speed, mph, from a side or
// from any. Nothing of the report changes.
func (r *Report) blown(speed float64, side plan.Side) (out []*Link) {
	p, h, pl := *r.Placement.House.Plan, *r.Placement.House, *r.Placement
	p.Site.WindSpeed = speed
	h.Plan, pl.House = &p, &h
	a := r.work.fittings.analyze(&pl, side)
	for _, c := range Checks() {
		if c.ID != liftCheck && c.ID != twistCheck && c.ID != limitCheck {
			out = append(out, c.run(c, a)...)
		}
	}
	return out
}
