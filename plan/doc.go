// Package plan is the model of a house as its TOML plan writes it: project,
// site, levels, walls, openings, roofs, floors, catalog, rules and the
// engineer's places. It reads the plan, keeps the place of every key, checks
// what can be checked without framing, and reports every fault at once.
//
// All lengths are inches, weights lb, pressures psf, angles degrees. x is
// east, y north, z up from grade. Names are unique in their kind.
package plan
