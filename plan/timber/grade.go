package timber

import "galewright/plan/source"

// cite joins a place in a document with the grade of the copy used.
func cite(where string, g source.Grade) string { return where + " (" + string(g) + ")" }
