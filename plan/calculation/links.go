package calculation

import (
	"galewright/plan/loadpath"
	"galewright/plan/units"
)

// Check is all links of one load check, in the order of the load path.
type Check struct {
	*loadpath.Check
	Links []*Link
	Worst *Link // the first gap with the largest demand, else the largest ratio; nil without demand
}

// Link is a link with its arithmetic.
type Link struct {
	*loadpath.Link
	Line     *loadpath.LineShear // whose force it carries; nil of others
	Workings []string            // what its demand is made of, besides the line's
	Units    units.System        // of its text
}

// checks gathers the links by check.
func checks(r *loadpath.Report) (out []*Check) {
	e := r.Explainer()
	for _, c := range loadpath.ChecksFor(r.Placement.House.Plan) {
		x := &Check{Check: c}
		for _, l := range r.Links {
			if l.Check.ID == c.ID {
				x.Links = append(x.Links, &Link{Link: l, Line: r.LineOf(l), Workings: e.Workings(l), Units: r.Units()})
			}
		}
		if len(x.Links) > 0 {
			x.Worst = worst(x.Links)
			out = append(out, x)
		}
	}
	return out
}

// worst returns the link that stands for its check.
func worst(list []*Link) (most *Link) {
	for _, l := range list {
		switch {
		case l.Demand <= 0:
		case most == nil, worse(l, most):
			most = l
		}
	}
	return most
}

// worse tells whether a link is worse than another: a gap over any ratio, of two
// gaps the larger demand.
func worse(a, b *Link) bool {
	if (a.Gap != "") != (b.Gap != "") {
		return a.Gap != ""
	}
	if a.Gap != "" {
		return a.Demand > b.Demand
	}
	return a.Ratio > b.Ratio
}
