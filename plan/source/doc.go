// Package source grades where values come from: one scale, in words, for
// code, comments, tests and outputs. A value names the document, the edition
// that was seen, and the table, then the grade: "NDS 2018 Table 12.2C
// (transcribed)". The package knows nothing of what it
// grades.
package source
