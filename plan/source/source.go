package source

import (
	"fmt"
	"regexp"
	"strings"
)

// Grade says how a value was come by, in a word that outputs print.
type Grade string

// The grades, best first.
const (
	Read        Grade = "read"
	Transcribed Grade = "transcribed"
	SecondHand  Grade = "second-hand"
	FromMemory  Grade = "from memory"
)

// Grades lists the grades, best first, for the key of an output.
func Grades() []Grade { return []Grade{Read, Transcribed, SecondHand, FromMemory} }

// meanings tells what each grade promises.
var meanings = map[Grade]string{
	Read:        "from a page of the document named, or a scan of it",
	Transcribed: "from someone else's copy that cites table and page, from two copies that agree, or from one that reproduces a published example",
	SecondHand:  "from a report, a program or a check record that names the document; verify against the document before use",
	FromMemory:  "not looked up; verify before use",
}

// Meaning says in one clause what the grade promises.
func (g Grade) Meaning() string { return meanings[g] }

// graded finds grades as texts carry them: "NDS 2018 Table L4 (transcribed)",
// "Table 12E, from memory".
var graded = regexp.MustCompile(`(?:\(|, |; )(read|transcribed|second-hand|from memory)\b`)

// Key returns the lines that explain the grades a text uses, best first; ""
// when it uses none.
func Key(text string) string {
	used := map[Grade]bool{}
	for _, m := range graded.FindAllStringSubmatch(text, -1) {
		used[Grade(m[1])] = true
	}
	var b strings.Builder
	for _, g := range Grades() {
		if used[g] {
			fmt.Fprintf(&b, "source %s: %s\n", g, g.Meaning())
		}
	}
	return b.String()
}
