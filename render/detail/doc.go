// Package detail draws each mark of the schedule once, large: front and side of
// the commonest of its pieces on the members it holds, with the catalog's nails
// in their holes. A context flows in; pages packed with details flow out. The
// invariant: filled holes are as many as the catalog counts, and a pattern or
// a length that is not the catalog's own is said to be so.
package detail
