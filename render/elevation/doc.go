// Package elevation draws wall elevations, the sheets that a framer stands
// before: every stack of walls seen from outside, its lumber projected with what is
// hidden dashed, its steel and rods where their bodies are, dimensions at the feet of the studs and strips of where each piece
// goes. A context flows in; pages, with several small walls on one, flow out.
// The invariant: every piece of a wall is at home on one part once, nothing is
// drawn at a scale that is not on the list, and where a wall is parted both
// parts say where it goes on.
package elevation
