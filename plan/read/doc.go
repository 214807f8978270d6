// Package read reads a plan: TOML text flows in, a plan.Plan flows out with
// every fault found, each at the line and column of its key. It keeps the
// table of all keys with what each means, fills in what a plan leaves out,
// and checks what can be checked without framing.
//
// Invariants: a key is read by the same value that documents it; one fault
// hides no other, and what only follows from a fault is not told.
package read
