package source

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
	Transcribed: "from a copy by another hand that cites table and page, or that two hands agree on, or that a published example comes out with",
	SecondHand:  "from a report, a program or a check record that names the document; compare the document before use",
	FromMemory:  "not looked up; check it before use",
}

// Meaning says in one clause what the grade promises.
func (g Grade) Meaning() string { return meanings[g] }
