package plan

import (
	"fmt"
	"slices"
	"strings"
)

// suggest returns "did you mean ...?" for the word of the list that is
// nearest to s, or "" when none is near.
func suggest(s string, words []string) string {
	for _, w := range words {
		if strings.EqualFold(s, w) {
			return fmt.Sprintf("did you mean %q?", w)
		}
	}
	if best := Nearest(s, words); best != "" {
		return fmt.Sprintf("did you mean %q?", best)
	}
	return ""
}

// nearest is suggest, or the list itself when nothing is near.
func nearest(s string, words []string) string {
	hint := suggest(s, words)
	if hint != "" || len(words) == 0 {
		return hint
	}
	words = slices.Clone(words)
	if len(words) > 12 {
		words = append(words[:12], "...")
	}
	return "known: " + strings.Join(words, ", ")
}
