package timber

import (
	"fmt"
	"math"
)

// WoodTension is a wood member in tension through a group of bolts or lag
// screws, NDS 2018 Appendix E. Stresses are adjusted ones, psi; lengths inches.
type WoodTension struct {
	Thickness float64 // of the member, along the fasteners
	Width     float64
	Hole      float64   // diameter
	Rows      int       // rows along the grain, side by side
	N         int       // fasteners in each row
	Critical  float64   // the less of end distance and spacing in the row
	Across    float64   // between the outer rows, center to center; 0 = one row
	Ft, Fv    float64   // adjusted tension and shear along the grain
	Z         []float64 // nothing, or the adjusted value of each fastener, lb
}

// WoodTensionValue is the allowable tension of the wood, lb.
type WoodTensionValue struct {
	Net      float64 // tension on the net section
	Row      float64 // one row torn out
	RowSum   float64 // all rows torn out
	GroupOut float64 // the group torn out as one; +Inf where there is one row
	Yield    float64 // sum of the fasteners; +Inf where they were not given
	Allow    float64
	Governs  string
	Source   string
}

// Value returns the least of net tension, row tear-out (n Fv t s), group
// tear-out (half of the two outer rows and the net wood between them) and
// the fasteners: NDS 2018 Appendix E. Net section and row are checked against its
// example E.7 (AWC errata of March 2019, read); the group is from memory.
func (w WoodTension) Value() (WoodTensionValue, error) {
	net := w.Width - float64(w.Rows)*w.Hole
	if w.Rows < 1 || w.N < 1 || w.Thickness <= 0 || net <= 0 {
		return WoodTensionValue{}, fmt.Errorf("%d rows of %d holes of %.3f in leave nothing of %.2f x %.2f in", w.Rows, w.N, w.Hole, w.Thickness, w.Width)
	}
	v := WoodTensionValue{Net: w.Ft * w.Thickness * net, GroupOut: math.Inf(1), Yield: math.Inf(1), Source: "NDS 2018 Appendix E"}
	v.Row = float64(w.N) * w.Fv * w.Thickness * w.Critical
	v.RowSum = v.Row * float64(w.Rows)
	if w.Rows > 1 {
		v.GroupOut = v.Row + w.Ft*w.Thickness*math.Max(0, w.Across-float64(w.Rows-1)*w.Hole)
	}
	if len(w.Z) > 0 {
		v.Yield = 0
		for _, z := range w.Z {
			v.Yield += z
		}
	}
	v.least()
	return v, nil
}

func (v *WoodTensionValue) least() {
	v.Allow = math.Inf(1)
	for _, m := range []Mode{{"net section", v.Net}, {"row tear-out", v.RowSum}, {"group tear-out", v.GroupOut}, {"fasteners", v.Yield}} {
		if m.Z < v.Allow {
			v.Allow, v.Governs = m.Z, m.Name
		}
	}
}
