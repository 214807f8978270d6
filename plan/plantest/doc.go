// Package plantest reads the program's own code for tests that hold it to a
// rule: what its constants are, where a field is used. Nothing but tests
// imports it.
package plantest
