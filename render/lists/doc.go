// Package lists makes the sheets that are read rather than measured: cover with
// its key plans, count schedule, load path with its chains, check sheets. A
// context flows in; pages of tables and figures flow out, lettered as large as
// one sheet allows. The invariant: what they count is the pieces of the
// placement, each with one box to tick, and no sheet says that a house is safe.
package lists
