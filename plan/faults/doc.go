// Package faults lists every fault that the program can tell: its code, what
// it means on the house and how to fix it, with one example as it was told.
// `galewright keys --faults` prints the list.
//
// The stages raise faults by code (plan.Code) and know nothing of the list;
// tests here find each code in the program and hold it to the list, and
// provoke each by a plan. Those plans write the examples too:
// `go test ./plan/faults -update`.
package faults
