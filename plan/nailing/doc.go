// Package nailing finds where members are nailed to each other and counts the
// nails that the plan orders there. A framed house goes in; lines of a nailing
// schedule come out, each with its connections, its nails and what one of them
// holds, and the connections for which the plan orders nothing. The invariant:
// what no line orders is counted nowhere and holds nothing.
package nailing
