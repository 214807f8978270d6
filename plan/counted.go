package plan

import (
	"fmt"
	"strings"
)

// Counted prints a number with its word, which is given in the singular:
// "1 gap", "0 gaps", "3 boxes".
func Counted(n int, word string) string {
	switch {
	case n == 1:
	case strings.HasSuffix(word, "x") || strings.HasSuffix(word, "ch"):
		word += "es"
	default:
		word += "s"
	}
	return fmt.Sprintf("%d %s", n, word)
}

// CountedFasteners returns a number of fasteners of a size: "9 of 10d x 1 1/2",
// "27 screws No. 12 x 1 1/2".
func CountedFasteners(n int, size string) string {
	for _, word := range []string{"screw", "lag", "bolt", "rod"} {
		if rest, ok := strings.CutPrefix(size, word+" "); ok {
			return Counted(n, word) + " " + rest
		}
	}
	return fmt.Sprintf("%d of %s", n, size)
}
