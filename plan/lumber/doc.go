// Package lumber makes the cut list of a framed house: members by section,
// role and cut length, and how they are cut from the yard's stock lengths
// with little waste. A House flows in, a Cut flows out; the lower bound that
// no cutting can beat is printed beside what was found. Every ply of a
// built-up member is a piece of its own. What is made up elsewhere (trusses)
// or driven (piles) is counted and not cut.
package lumber
