package model

import (
	"math"
	"strconv"

	"galewright/plan/geom"
)

// inch is a length or a coordinate in inches, or a part of a unit direction;
// it is written to a ten-thousandth.
type inch float64

const places = 4

// MarshalJSON writes no minus zero, and NaN or infinity never: they are zero.
func (v inch) MarshalJSON() ([]byte, error) {
	x := float64(v)
	if math.IsNaN(x) || math.IsInf(x, 0) {
		x = 0
	}
	p := math.Pow10(places)
	return strconv.AppendFloat(nil, math.Round(x*p)/p+0, 'f', -1, 64), nil
}

// point is a place or a direction: x and y on plan, z above grade.
type point [3]inch

func at(v geom.Vec3) point { return point{inch(v.X), inch(v.Y), inch(v.Z)} }

func points(list []geom.Vec3) []point {
	out := make([]point, len(list))
	for i, v := range list {
		out[i] = at(v)
	}
	return out
}
