// Package deck lays the panels of a house's roofs on the real rafters, nails
// them, finds the zones of wind pressure on the faces, and weighs each nail's
// share of suction against its withdrawal and the pull-through of its head.
// Wall panels are weighed the same way. A framed house flows in; panels,
// nails, zones, demands and capacities flow out. It decides no spacing: the
// plan does.
//
// A face is worked in its own axes: u along the eave, v up the slope, true
// inches both. Places that leave the package are inches on plan. Pressures are
// pounds per square foot, forces pounds.
package deck
