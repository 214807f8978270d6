package timber

// Grade says in a word how a number came here. It stands in every source
// that a check names, so that nobody takes a remembered value for one read.
type Grade string

// The grades, from the best down. Calculated is no grade of a source at all:
// the number is arithmetic of equations given here and proves nothing beyond
// that arithmetic.
const (
	Read        Grade = "read"        // in the publication or a scan of it
	Transcribed Grade = "transcribed" // a copy that cites table and page, or two sources that agree
	SecondHand  Grade = "second-hand" // one secondary source
	FromMemory  Grade = "from memory" // not found in any source at hand
	Calculated  Grade = "calculated"
)

// cite joins a place in a document with the grade of the copy used.
func cite(where string, g Grade) string { return where + ", " + string(g) }
