// Package calculation puts the numbers of a house in the order in which an
// engineer files them: basis, limits, geometry, pressures, tributary widths, dead
// loads, uplift and lateral lines, then every link with its arithmetic, what was
// assumed and not checked, and all sources. A load path flows in; a Set flows
// out, of which text, JSON and sheets are written, so that all three carry the
// same figures.
//
// It computes nothing: every number is one that the load path used.
package calculation
