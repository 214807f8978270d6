package plan

// Brace is bracing between piles under the lowest floor: along one girder's line of
// piles, or across from its piles to those of another.
type Brace struct {
	Name   string
	Kind   BraceKind
	Girder string // on whose piles it is
	Across string // girder whose piles it goes across to; "" = along the line
	// Bays are the numbers of the bays that have it, from the girder's start, 1 the first;
	// of a brace across, of the piles. Empty = all.
	Bays   []int
	Member Lumber // of boards and knees
	// Top is how far below the girder's underside its upper ends are held, Bottom how far
	// above grade its lower ends, in.
	Top, Bottom float64
	Reach       float64 // of a knee, from the pile's middle out to its bolt in the girder, and as much down, in
	Pos         Pos
}

// BraceKind is how piles are braced.
type BraceKind string

// The kinds of bracing.
const (
	RodBrace   BraceKind = "rods"   // two rods crossed in a bay
	BoardBrace BraceKind = "boards" // two boards crossed in a bay, one on each face of the piles
	KneeBrace  BraceKind = "knees"  // a short board at each pile of a bay, up to the girder
)

// BraceKinds are the kinds that a plan may name.
var BraceKinds = []BraceKind{RodBrace, BoardBrace, KneeBrace}

// Breakaway is a light wall between piles below the lowest floor that gives way to flood:
// it carries nothing and is in no load path.
type Breakaway struct {
	Name   string
	Girder string  // under which it stands
	Bays   []int   // the numbers of the bays that have it, from the girder's start; empty = all
	Base   float64 // its foot above grade, in
	Note   string  // what it is made of, in the words of its designer
	Pos    Pos
}

// In tells whether a bay is one of those named, or all are.
func In(bays []int, n int) bool {
	for _, b := range bays {
		if b == n {
			return true
		}
	}
	return len(bays) == 0
}
