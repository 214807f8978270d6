package plan

import "strings"

// Nearest returns the one of names that word was likely meant to be, or "":
// the same but for capitals, else the least edits, at most a third of the word's letters, the first of equals.
func Nearest[W ~string](word string, names []W) W {
	best, least := W(""), len([]rune(word))/3+1
	for _, n := range names {
		if strings.EqualFold(word, string(n)) {
			return n
		}
	}
	for _, n := range names {
		if d := edits(word, string(n), least); d < least {
			best, least = n, d
		}
	}
	return best
}

// edits counts insertions, deletions, changes and swaps of neighbors that
// turn a into b; it gives up at limit.
func edits(a, b string, limit int) int {
	ar, br := []rune(a), []rune(b)
	if len(ar)-len(br) >= limit || len(br)-len(ar) >= limit {
		return limit
	}
	before, above, row := make([]int, len(br)+1), make([]int, len(br)+1), make([]int, len(br)+1)
	for j := range row {
		row[j] = j
	}
	for i, x := range ar {
		before, above, row = above, row, before
		row[0] = i + 1
		for j, y := range br {
			change := above[j]
			if x != y {
				change++
			}
			row[j+1] = min(change, row[j]+1, above[j+1]+1)
			if i > 0 && j > 0 && x == br[j-1] && ar[i-1] == y {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
	}
	return row[len(br)]
}
