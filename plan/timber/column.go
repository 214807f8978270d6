package timber

import "math"

// Column is a stud of sawn lumber pressed along its grain and held by sheathing
// along its narrow faces, so that it buckles only across its depth.
type Column struct {
	Along
	Length   float64 // between the plates, in
	Depth    float64 // across which it may buckle, in
	Duration Duration
}

// ColumnValue is what a column bears and why.
type ColumnValue struct {
	FcStar float64 // Fc with the duration factor, psi
	FcE    float64 // critical buckling value, psi
	Cp     float64
	Stress float64 // psi
	Slim   float64 // length over depth
	Source string
}

// sawn is c of sawn lumber.
const sawn = 0.8

// Value returns the stress that a column bears by Cp, its ends held sideways: NDS
// 2018 3.7.1 (from memory). Over 50 times as long as deep it bears nothing.
func (c Column) Value() ColumnValue {
	v := ColumnValue{FcStar: c.Fc * float64(c.Duration), Slim: c.Length / c.Depth, Source: "NDS 2018 3.7.1, from memory"}
	if v.Slim > 50 {
		return v
	}
	v.FcE = 0.822 * c.Emin / (v.Slim * v.Slim)
	r := v.FcE / v.FcStar
	b := (1 + r) / (2 * sawn)
	v.Cp = b - math.Sqrt(b*b-r/sawn)
	v.Stress = v.FcStar * v.Cp
	return v
}
