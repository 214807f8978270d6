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
