// Package plantest is for tests alone: it reads the program's own code, for
// tests that hold it to a rule (what its constants are, where a field is
// used), holds the wording that no text of the program may have, compares
// lists, and changes the text of example plans.
package plantest
