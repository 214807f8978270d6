// Package lift pulls a house up by its roof. Members are nodes; what takes
// tension between two of them is a tie: fasteners and rods where they are,
// nailing that the sheets order, sheathing that is checked. Weight and bearing
// are none. Members and ties go in; what nothing holds to the ground comes
// out, wherever it is. The invariant: a member is held only by a way down that
// never climbs, so that one stud's strap does not stand in for its neighbor's.
package lift
