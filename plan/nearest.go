package plan

// Nearest returns the one of names that word was likely meant to be, or "":
// the least edits, at most a third of the word's letters, the first of equals.
func Nearest(word string, names []string) string {
	best, least := "", len([]rune(word))/3+1
	for _, n := range names {
		if d := edits(word, n, least); d < least {
			best, least = n, d
		}
	}
	return best
}

// edits counts insertions, deletions and changes that turn a into b; it
// gives up at limit.
func edits(a, b string, limit int) int {
	ar, br := []rune(a), []rune(b)
	if len(ar)-len(br) >= limit || len(br)-len(ar) >= limit {
		return limit
	}
	row := make([]int, len(br)+1)
	for j := range row {
		row[j] = j
	}
	for i, x := range ar {
		diagonal := row[0]
		row[0] = i + 1
		for j, y := range br {
			change := diagonal
			if x != y {
				change++
			}
			diagonal = row[j+1]
			row[j+1] = min(change, row[j]+1, diagonal+1)
		}
	}
	return row[len(br)]
}
