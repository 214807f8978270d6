//go:build !race

package golden

// readPapers are those that sheets are read back from.
var readPapers = []string{"arch-d", "ansi-b", "letter"}
