// Package loadpath follows wind force from the roof deck to the foundation:
// uplift per rafter down through plates, studs, stories and girders, and
// shear from the walls through diaphragms, collectors and shear walls to
// their ends. A placement flows in; a Report flows out with demand, capacity,
// ratio and what governs at each joint, the gaps, and a chain for each
// bearing line. It gives numbers and never a verdict, and every output
// carries the caution, the assumptions and what was not checked.
//
// The invariant: force is passed on and never lost. In each wind case the
// uplift that reaches the joints of a story is the roof's uplift less the
// dead load above; the shear of the lines of a story is the wind on it; a
// collector's force starts and ends at zero. Wind and dead load travel apart,
// unfactored, to the joint, and are combined there.
//
// A model is built once and holds no force. Each wind case makes a caseState,
// each gust of the lateral path a gustState; the worst of them are folded into
// uplift and lateral. Checks and explanations read these and change nothing:
// a Report may be read from several goroutines.
//
// Lengths are inches as in the plan, forces pounds, pressures pounds per
// square foot.
package loadpath
