// Package plan is the model of a house as its TOML plan writes it: project,
// site, levels, walls, openings, roofs, floors, catalog, rules and the
// engineer's places; the words it is written in, the sizes of its lumber,
// steel and nails, and the diagnostics by which every stage tells a fault.
// Package read fills it.
//
// All lengths are inches, weights lb, pressures psf, angles degrees. x is
// east, y north, z up from grade. Names are unique in their kind.
package plan
