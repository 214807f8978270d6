package loadpath

import (
	"math"

	"galewright/plan"
	"galewright/plan/wind"
)

// Alternative is the house under one other assumption about the wind.
type Alternative struct {
	Name   string
	Values []float64 // by the rows of Comparison; NaN where there is none
}

// Comparison is what other assumptions would ask of the house: the largest
// demand of each kind, ASD, without hardware.
type Comparison struct {
	Rows []ComparisonRow
	As   []float64 // as the plan has it
	Alts []Alternative
}

// ComparisonRow names one number of a comparison.
type ComparisonRow struct{ Name, Unit string }

// upliftRows are the kinds of joints whose largest uplift is compared.
var upliftRows = []plan.JointKind{plan.RafterPlate, plan.GirderPlate, plan.JackGirder, plan.JackCorner, plan.ValleyTruss, plan.RafterLedger, plan.RafterRidge, plan.StudTop, plan.OpeningHead, plan.StudStud, plan.StudBase, plan.GirderPile, plan.PostBase}

// compare works the house out as the plan has it, partially enclosed, and by
// each procedure by itself that the building allows.
func (r *Report) compare() *Comparison {
	a := r.work
	c := &Comparison{As: a.figures(a.uplift, a.lateral)}
	for _, k := range upliftRows {
		c.Rows = append(c.Rows, ComparisonRow{"largest uplift (at a ridge, tension), " + a.plan.InRoofWords(k.Row().Many), "lb"})
	}
	for _, ax := range plan.Axes {
		c.Rows = append(c.Rows, ComparisonRow{"shear of the lowest story, wind along " + string(ax), "lb"})
	}
	add := func(name string, change func(m *model)) {
		m := *a.model
		change(&m)
		c.Alts = append(c.Alts, Alternative{name, m.figures(m.allUplift(), m.allGusts())})
	}
	if a.basis.Enclosure != plan.PartiallyEnclosed {
		add("partially enclosed", func(m *model) { m.basis.Enclosure = plan.PartiallyEnclosed })
	}
	if len(a.choice.Use) > 1 {
		for _, p := range a.choice.Use {
			add(string(p)+" procedure only", func(m *model) { m.choice = wind.Choice{Use: []plan.Procedure{p}} })
		}
	}
	return c
}

// figures returns the numbers of a comparison.
func (m *model) figures(u *uplift, l *lateral) (out []float64) {
	for _, k := range upliftRows {
		most := math.NaN()
		for j, p := range u.peaks {
			if j.Kind == k && !(p.demand <= most) {
				most = p.demand
			}
		}
		out = append(out, math.Max(0, most))
	}
	for _, ax := range plan.Axes {
		low := math.NaN()
		for _, s := range l.stories {
			if s.Axis == ax && len(m.plan.Levels) > 0 && s.Level == m.plan.Levels[0] {
				low = s.ASD
			}
		}
		out = append(out, low)
	}
	return out
}
