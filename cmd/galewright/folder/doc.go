// Package folder writes a set of files that is whole or not there. The files
// are written aside, into a hidden folder beside the one asked for, and the two
// change places in one step: a run that is killed, fails or finds the disk full
// leaves the earlier set as it was, and sheets of two revisions never lie in one
// folder. What a dead run left beside it, the next one clears away.
//
// What the set did not write stays: a user's notes in the folder go along.
package folder
