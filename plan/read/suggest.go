package read

import (
	"fmt"
	"strings"

	"galewright/plan"
)

// suggest returns "did you mean ...?" for the word of the list that is
// nearest to s, or "" when none is near.
func suggest(s string, words []string) string {
	for _, w := range words {
		if strings.EqualFold(s, w) {
			return fmt.Sprintf("did you mean %q?", w)
		}
	}
	if best := plan.Nearest(s, words); best != "" {
		return fmt.Sprintf("did you mean %q?", best)
	}
	return ""
}

// nearest is suggest, or the list itself when nothing is near.
func nearest(s string, words []string) string {
	if len(words) == 0 {
		return "the plan has none"
	}
	if hint := suggest(s, words); hint != "" {
		return hint
	}
	words = distinct(words)
	if len(words) > 12 {
		words = append(words[:12], "...")
	}
	return "known: " + strings.Join(words, ", ")
}

// distinct returns the words without doubles, in their order.
func distinct(words []string) (out []string) {
	seen := map[string]bool{}
	for _, w := range words {
		if !seen[w] {
			seen[w] = true
			out = append(out, w)
		}
	}
	return out
}
