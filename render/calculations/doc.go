// Package calculations makes the sheets that an engineer files: the calculation
// set as tables, with a diagram of level force for each wind, every link of the
// load path, and the whole arithmetic of the worst of each kind. A context flows
// in, pages flow out. The invariant: a figure on these sheets is the one that
// loads --calculations prints, for both are written from one calculation.Set.
package calculations
