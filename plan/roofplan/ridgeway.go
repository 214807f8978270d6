package roofplan

import "galewright/plan"

// short is how much shorter than nothing the ridge of a hip may come out, in:
// over a square house walls of two depths lift one pair of planes a little
// over the other, and the ridge is a point all the same.
const short = 6

// checkRidge refuses a body whose hip ends climb past each other, or past the
// far gable, before its sides meet: its ridge cannot run along its axis.
func (b *Body) checkRidge() []Fault {
	sides, ends := eaves(b.Axis)
	if !b.Sloped(sides[0]) || !b.Sloped(sides[1]) {
		return nil // no ridge
	}
	from, to := -b.edge(ends[0])-b.overhang(ends[0]), b.edge(ends[1])+b.overhang(ends[1])
	if b.Sloped(ends[0]) {
		from = b.hipEnd(ends[0])
	}
	if b.Sloped(ends[1]) {
		to = b.hipEnd(ends[1])
	}
	if from < to+short {
		return nil
	}
	mend := "give it a longer area along " + string(b.Axis) + ", or a gable at both ends of the ridge"
	if b.Sloped(ends[0]) && b.Sloped(ends[1]) {
		mend = `write ridge = "` + string(across(b.Axis)) + `", or leave ridge out: it runs along the longer side`
	}
	return []Fault{{
		b, "ridge-has-no-room",
		"the ridge of roof " + b.Name + " cannot run along " + string(b.Axis) + ": its hip ends climb past each other before the sides meet",
		mend,
	}}
}

// across returns the other axis.
func across(axis plan.Axis) plan.Axis {
	if axis == plan.AxisX {
		return plan.AxisY
	}
	return plan.AxisX
}
